//! How much there is to do by worker: children for whom something is due up to a day.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::ids::PersonId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::QueryFilter;
use sea_orm::QuerySelect;

use crate::store::codes::uuid;
use crate::store::entity::child_summary;
use crate::store::error::StoreError;

#[derive(FromQueryResult)]
struct Row {
    worker_id: uuid::Uuid,
    children: i64,
}

/// What a worker has.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Load {
    /// Active children.
    pub children: u64,
    /// Of them, those with a follow-up or a visit due by the day.
    pub due: u64,
}

/// What these workers have, whoever may see the children: numbers only.
///
/// # Errors
/// [`StoreError`].
pub async fn load_until(c: &impl ConnectionTrait, workers: &[PersonId], until: NaiveDate) -> Result<BTreeMap<PersonId, Load>, StoreError> {
    use child_summary::Column as S;
    let mut loads: BTreeMap<PersonId, Load> = BTreeMap::new();
    let of_them = || {
        child_summary::Entity::find()
            .select_only()
            .column(S::WorkerId)
            .column_as(S::ChildId.count(), "children")
            .filter(S::WorkerId.is_in(workers.iter().map(|id| uuid(id.0))))
            .filter(S::Status.eq(ChildStatus::Active.code()))
            .group_by(S::WorkerId)
    };
    for row in of_them().into_model::<Row>().all(c).await? {
        loads.entry(PersonId(row.worker_id.as_u128())).or_default().children = row.children.unsigned_abs();
    }
    let due = Condition::any().add(S::TopDueOn.lte(until)).add(S::SlotOpens.lte(until));
    for row in of_them().filter(due).into_model::<Row>().all(c).await? {
        loads.entry(PersonId(row.worker_id.as_u128())).or_default().due = row.children.unsigned_abs();
    }
    Ok(loads)
}

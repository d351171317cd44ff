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
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;

use crate::store::codes::uuid;
use crate::store::entity::area;
use crate::store::entity::child_summary;
use crate::store::error::StoreError;

#[derive(FromQueryResult)]
struct Row {
    worker_id: uuid::Uuid,
    children: i64,
}

#[derive(FromQueryResult)]
struct DueRow {
    worker_id: uuid::Uuid,
    children: i64,
    walk_minutes: Option<i32>,
}

/// What a worker has.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Load {
    /// Active children.
    pub children: u64,
    /// Of them, those with a follow-up or a visit due by the day.
    pub due: u64,
    /// The way to these, as far as it is known.
    pub walk_minutes: u64,
    /// Those of them in areas of which nobody has said how long the way is.
    pub way_unknown: u64,
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
    let area: RelationDef = child_summary::Entity::belongs_to(area::Entity).from(S::AreaId).to(area::Column::Id).into();
    let by_way = of_them().join(JoinType::InnerJoin, area).column(area::Column::WalkMinutes).group_by(area::Column::WalkMinutes);
    for row in by_way.filter(due).into_model::<DueRow>().all(c).await? {
        let load = loads.entry(PersonId(row.worker_id.as_u128())).or_default();
        let due = row.children.unsigned_abs();
        load.due += due;
        match row.walk_minutes {
            Some(minutes) => load.walk_minutes += due * u64::from(minutes.unsigned_abs()),
            None => load.way_unknown += due,
        }
    }
    Ok(loads)
}

//! What a day's round asks besides its homes: one worker's part of it, who was seen on the day, who comes next.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::ids::PersonId;
use domain::visit::Contact;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use sea_orm::Select;

use super::RoundRow;
use super::Row;
use super::lines;
use super::rows;
use crate::store::codes::uuid;
use crate::store::entity::child;
use crate::store::entity::child_summary;
use crate::store::entity::visit;
use crate::store::error::StoreError;
use crate::store::scope::Scope;
use crate::store::summaries::NOTHING_DUE;

fn of_worker(query: Select<child::Entity>, worker: Option<PersonId>) -> Select<child::Entity> {
    match worker {
        Some(worker) => query.filter(child::Column::WorkerId.eq(uuid(worker.0))),
        None => query,
    }
}

/// As [`round`](super::round), of one worker where one is named.
///
/// # Errors
/// [`StoreError`].
pub async fn round_of_worker(
    c: &impl ConnectionTrait,
    scope: Scope,
    worker: Option<PersonId>,
    after: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    let key = child_summary::Column::WorkKey;
    let query = of_worker(lines(scope), worker).filter(key.gt(after.unwrap_or_default())).filter(key.lt(NOTHING_DUE.to_string()));
    rows(c, query.order_by_asc(key), limit).await
}

/// The active child whose visit window opens next, among those with nothing to do.
///
/// # Errors
/// [`StoreError`].
pub async fn next_due(c: &impl ConnectionTrait, scope: Scope, worker: Option<PersonId>) -> Result<Option<RoundRow>, StoreError> {
    let key = child_summary::Column::WorkKey;
    let query = of_worker(lines(scope), worker)
        .filter(key.gte(NOTHING_DUE.to_string()))
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(child_summary::Column::SlotOpens.is_not_null());
    Ok(rows(c, query.order_by_asc(key), 1).await?.pop())
}

/// Every child of the scope, or of one worker in it, by code; also those who left.
///
/// # Errors
/// [`StoreError`].
pub async fn everyone(
    c: &impl ConnectionTrait,
    scope: Scope,
    worker: Option<PersonId>,
    after: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    let code = child::Column::Code;
    rows(c, of_worker(lines(scope), worker).filter(code.gt(after.unwrap_or_default())).order_by_asc(code), limit).await
}

/// What was checked at the visits of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Checked {
    /// Weight.
    pub weight: bool,
    /// Length.
    pub length: bool,
    /// Arm circumference.
    pub arm: bool,
    /// Swelling of the feet.
    pub feet: bool,
    /// Danger signs.
    pub signs: bool,
}

#[derive(FromQueryResult)]
struct SeenRow {
    #[sea_orm(nested)]
    line: Row,
    weight_g: Option<i32>,
    length_mm: Option<i32>,
    muac_mm: Option<i32>,
    oedema: Option<bool>,
    danger_signs: Option<String>,
}

/// Children met at home or at a clinic on this day, by name and code, with what was checked at any visit of the day.
///
/// # Errors
/// [`StoreError`].
pub async fn seen_on(
    c: &impl ConnectionTrait,
    scope: Scope,
    worker: Option<PersonId>,
    day: NaiveDate,
    limit: u64,
) -> Result<Vec<(RoundRow, Checked)>, StoreError> {
    use visit::Column as V;
    let visits: RelationDef = child::Entity::belongs_to(visit::Entity).from(child::Column::Id).to(V::ChildId).into();
    let query = of_worker(lines(scope), worker)
        .columns([V::WeightG, V::LengthMm, V::MuacMm, V::Oedema, V::DangerSigns])
        .join(JoinType::InnerJoin, visits)
        .filter(V::VisitedOn.eq(day))
        .filter(V::VoidedAt.is_null())
        .filter(V::Contact.ne(Contact::Phone.code()))
        .order_by_asc(child::Column::NameKey)
        .order_by_asc(child::Column::Code)
        .limit(limit);
    let mut seen: Vec<(RoundRow, Checked)> = Vec::new();
    for row in query.into_model::<SeenRow>().all(c).await? {
        let checked = Checked {
            weight: row.weight_g.is_some(),
            length: row.length_mm.is_some(),
            arm: row.muac_mm.is_some(),
            feet: row.oedema.is_some(),
            signs: row.danger_signs.is_some(),
        };
        let line: RoundRow = row.line.try_into()?;
        match seen.last_mut().filter(|(last, _)| last.child == line.child) {
            Some((_, sofar)) => {
                *sofar = Checked {
                    weight: sofar.weight || checked.weight,
                    length: sofar.length || checked.length,
                    arm: sofar.arm || checked.arm,
                    feet: sofar.feet || checked.feet,
                    signs: sofar.signs || checked.signs,
                };
            }
            None => seen.push((line, checked)),
        }
    }
    Ok(seen)
}

//! Visits: recording, correcting with the old version kept, taking back, reading a child's story. It knows no rule.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::Sex;
use domain::counsel::Talk;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::visit::Measurement;
use domain::visit::Visit;
use sea_orm::ActiveModelTrait;
use sea_orm::ActiveValue::NotSet;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::sea_query::Expr;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::visit;
use crate::store::entity::visit_food;
use crate::store::entity::visit_outcome;
use crate::store::entity::visit_version;
use crate::store::error::StoreError;
use crate::store::rows;

#[cfg(test)]
pub use crate::store::visit_text::columns;
pub use crate::store::visit_text::content;

mod lines;

/// How many children's visits are read by one statement: well below the engines' limit of bound values.
const CHILDREN_AT_A_TIME: usize = 500;

/// z-scores in hundredths, as computed when the visit was last judged; `None` = not computable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Indices {
    /// Weight for age.
    pub waz: Option<i32>,
    /// Length for age.
    pub laz: Option<i32>,
    /// Weight for length.
    pub wlz: Option<i32>,
    /// BMI for age.
    pub bmiz: Option<i32>,
    /// Arm circumference for age.
    pub mauz: Option<i32>,
    /// Head circumference for age.
    pub hcz: Option<i32>,
}

/// A visit with what surrounds it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitRecord {
    /// What was measured, asked and seen.
    pub visit: Visit,
    /// Whose.
    pub child: ChildId,
    /// The child's area on that day.
    pub area: AreaId,
    /// The child's worker on that day.
    pub worker: PersonId,
    /// Who entered it.
    pub recorded_by: PersonId,
    /// The child's sex, for counting without a join.
    pub sex: Sex,
    /// Chronological age on that day.
    pub age_days: u16,
    /// When it was entered.
    pub recorded_at: DateTime<Utc>,
    /// Order of entry, given by the database; whatever stands here before the insert is ignored.
    pub entry_seq: i64,
    /// Counts corrections, from 1.
    pub version: u32,
    /// When it was taken back as never having happened.
    pub voided_at: Option<DateTime<Utc>>,
    /// What was talked about and agreed.
    pub talk: Talk,
    /// Free note.
    pub note: Option<String>,
    /// A note for each of `visit.outcomes`, in their order; may be shorter.
    pub outcome_notes: Vec<Option<String>>,
    /// z-scores.
    pub indices: Indices,
    /// Measurements held to be suspect.
    pub suspect: BTreeSet<Measurement>,
    /// The protocol that judged it.
    pub protocol_id: String,
    /// Its version.
    pub protocol_version: String,
    /// Code of the feeding stage on that day.
    pub stage: String,
}

/// An earlier version of a visit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VersionRecord {
    /// Its number.
    pub version: u32,
    /// Every answer, one a line: column, tab, value.
    pub content: String,
    /// Who replaced it.
    pub replaced_by: PersonId,
    /// When.
    pub replaced_at: DateTime<Utc>,
    /// Why.
    pub reason: String,
}

/// Who corrects a visit, when and why.
#[derive(Debug, Clone, Copy)]
pub struct Correction<'a> {
    /// Who.
    pub by: PersonId,
    /// When.
    pub at: DateTime<Utc>,
    /// Why.
    pub reason: &'a str,
}

/// Records a visit; answers its place in the order of entry.
///
/// # Errors
/// [`StoreError::Conflict`] when a visit with this key is there already.
pub async fn insert(c: &impl ConnectionTrait, record: &VisitRecord) -> Result<i64, StoreError> {
    let mut row = rows::visit::write(record).into_active_model().reset_all();
    row.entry_seq = NotSet;
    let stored = visit::Entity::insert(row).exec_with_returning(c).await?;
    insert_lines(c, record).await?;
    Ok(stored.entry_seq)
}

/// Replaces a visit at version `record.version` by this content; the old one is kept, and the version becomes one more.
/// Child, order of entry and first recording stay as they were.
///
/// # Errors
/// [`StoreError::Conflict`] when somebody corrected it meanwhile or it is not there.
pub async fn replace(c: &impl ConnectionTrait, record: &VisitRecord, correction: Correction<'_>) -> Result<(), StoreError> {
    let old = keep_version(c, record.visit.id, record.version, correction).await?;
    let mut row = rows::visit::write(record);
    row.entry_seq = old.entry_seq;
    row.child_id = old.child_id;
    row.recorded_at = old.recorded_at;
    row.recorded_by = old.recorded_by;
    row.version += 1;
    let mut row = row.into_active_model().reset_all();
    row.entry_seq = NotSet;
    visit::Entity::update_many().set(row).filter(visit::Column::Id.eq(old.id)).exec(c).await?;
    visit_food::Entity::delete_many().filter(visit_food::Column::VisitId.eq(old.id)).exec(c).await?;
    visit_outcome::Entity::delete_many().filter(visit_outcome::Column::VisitId.eq(old.id)).exec(c).await?;
    rows::talk::delete(c, old.id).await?;
    insert_lines(c, record).await
}

/// Takes a visit back: it stays, but no reading of the story finds it.
///
/// # Errors
/// [`StoreError::Conflict`] when it is not at this version any more.
pub async fn void(c: &impl ConnectionTrait, id: VisitId, version: u32, correction: Correction<'_>) -> Result<(), StoreError> {
    keep_version(c, id, version, correction).await?;
    visit::Entity::update_many()
        .col_expr(visit::Column::VoidedAt, Expr::value(Some(whole_second(correction.at))))
        .col_expr(visit::Column::Version, Expr::value(i32::try_from(version).unwrap_or(i32::MAX).saturating_add(1)))
        .filter(visit::Column::Id.eq(uuid(id.0)))
        .exec(c)
        .await?;
    Ok(())
}

/// Gives a visit at version `record.version` the child, place, sex and age of `record`: what was told stays. The old version is
/// kept, and the version becomes one more.
///
/// # Errors
/// [`StoreError::Conflict`] when it is not at this version any more.
pub async fn rehome(c: &impl ConnectionTrait, record: &VisitRecord, correction: Correction<'_>) -> Result<(), StoreError> {
    keep_version(c, record.visit.id, record.version, correction).await?;
    let row = rows::visit::write(record);
    visit::Entity::update_many()
        .col_expr(visit::Column::ChildId, Expr::value(row.child_id))
        .col_expr(visit::Column::AreaId, Expr::value(row.area_id))
        .col_expr(visit::Column::WorkerId, Expr::value(row.worker_id))
        .col_expr(visit::Column::Sex, Expr::value(row.sex))
        .col_expr(visit::Column::AgeDays, Expr::value(row.age_days))
        .col_expr(visit::Column::Version, Expr::value(row.version.saturating_add(1)))
        .filter(visit::Column::Id.eq(row.id))
        .exec(c)
        .await?;
    Ok(())
}

/// Counts a visit's age and sex anew after the child's own facts were corrected. No new version: nothing was told anew.
///
/// # Errors
/// [`StoreError`].
pub async fn born_otherwise(c: &impl ConnectionTrait, record: &VisitRecord) -> Result<(), StoreError> {
    let row = rows::visit::write(record);
    visit::Entity::update_many()
        .col_expr(visit::Column::Sex, Expr::value(row.sex))
        .col_expr(visit::Column::AgeDays, Expr::value(row.age_days))
        .filter(visit::Column::Id.eq(row.id))
        .exec(c)
        .await?;
    Ok(())
}

/// Notes what the judgement found on a visit: z-scores, suspects, protocol and stage. No new version: nothing was told anew.
///
/// # Errors
/// [`StoreError`].
pub async fn judged(c: &impl ConnectionTrait, record: &VisitRecord) -> Result<(), StoreError> {
    let row = rows::visit::write(record);
    visit::Entity::update_many()
        .col_expr(visit::Column::WazH, Expr::value(row.waz_h))
        .col_expr(visit::Column::LazH, Expr::value(row.laz_h))
        .col_expr(visit::Column::WlzH, Expr::value(row.wlz_h))
        .col_expr(visit::Column::BmizH, Expr::value(row.bmiz_h))
        .col_expr(visit::Column::MauzH, Expr::value(row.mauz_h))
        .col_expr(visit::Column::HczH, Expr::value(row.hcz_h))
        .col_expr(visit::Column::Suspect, Expr::value(row.suspect))
        .col_expr(visit::Column::ProtocolId, Expr::value(row.protocol_id))
        .col_expr(visit::Column::ProtocolVersion, Expr::value(row.protocol_version))
        .col_expr(visit::Column::Stage, Expr::value(row.stage))
        .filter(visit::Column::Id.eq(row.id))
        .exec(c)
        .await?;
    Ok(())
}

/// A child's visits dated on or before `as_of`, by date and order of entry, without those taken back.
///
/// # Errors
/// [`StoreError`].
pub async fn of_child_up_to(c: &impl ConnectionTrait, child: ChildId, as_of: NaiveDate) -> Result<Vec<VisitRecord>, StoreError> {
    Ok(of_children_up_to(c, &[child], as_of).await?.remove(&child).unwrap_or_default())
}

/// The same for many children at once; a child without visits is absent.
///
/// # Errors
/// [`StoreError`].
pub async fn of_children_up_to(
    c: &impl ConnectionTrait,
    children: &[ChildId],
    as_of: NaiveDate,
) -> Result<BTreeMap<ChildId, Vec<VisitRecord>>, StoreError> {
    let mut stories: BTreeMap<ChildId, Vec<VisitRecord>> = BTreeMap::new();
    for some in children.chunks(CHILDREN_AT_A_TIME) {
        let query = visit::Entity::find()
            .filter(visit::Column::ChildId.is_in(some.iter().map(|id| uuid(id.0))))
            .filter(visit::Column::VisitedOn.lte(as_of))
            .filter(visit::Column::VoidedAt.is_null())
            .order_by_asc(visit::Column::ChildId)
            .order_by_asc(visit::Column::VisitedOn)
            .order_by_asc(visit::Column::EntrySeq);
        for record in lines::read(c, query).await? {
            stories.entry(record.child).or_default().push(record);
        }
    }
    Ok(stories)
}

/// One visit of a child, taken back or not.
///
/// # Errors
/// [`StoreError`].
pub async fn by_id(c: &impl ConnectionTrait, child: ChildId, id: VisitId) -> Result<Option<VisitRecord>, StoreError> {
    let query = visit::Entity::find_by_id(uuid(id.0)).filter(visit::Column::ChildId.eq(uuid(child.0)));
    Ok(lines::read(c, query).await?.pop())
}

/// The visit with this number in the order of entry, whosever it is, taken back or not.
///
/// # Errors
/// [`StoreError`].
pub async fn by_entry(c: &impl ConnectionTrait, seq: i64) -> Result<Option<VisitRecord>, StoreError> {
    Ok(lines::read(c, visit::Entity::find().filter(visit::Column::EntrySeq.eq(seq))).await?.pop())
}

/// A child's visits that were taken back, by date and order of entry.
///
/// # Errors
/// [`StoreError`].
pub async fn voided_of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Vec<VisitRecord>, StoreError> {
    let query = visit::Entity::find()
        .filter(visit::Column::ChildId.eq(uuid(child.0)))
        .filter(visit::Column::VoidedAt.is_not_null())
        .order_by_asc(visit::Column::VisitedOn)
        .order_by_asc(visit::Column::EntrySeq);
    lines::read(c, query).await
}

/// Earlier versions of a visit, oldest first.
///
/// # Errors
/// [`StoreError`].
pub async fn versions_of(c: &impl ConnectionTrait, id: VisitId) -> Result<Vec<VersionRecord>, StoreError> {
    let query =
        visit_version::Entity::find().filter(visit_version::Column::VisitId.eq(uuid(id.0))).order_by_asc(visit_version::Column::Version);
    let read = |row: visit_version::Model| VersionRecord {
        version: row.version.unsigned_abs(),
        content: row.content,
        replaced_by: PersonId(row.recorded_by.as_u128()),
        replaced_at: row.recorded_at,
        reason: row.reason,
    };
    Ok(query.all(c).await?.into_iter().map(read).collect())
}

async fn insert_lines(c: &impl ConnectionTrait, record: &VisitRecord) -> Result<(), StoreError> {
    let foods = rows::visit::write_foods(record).into_iter().map(|row| row.into_active_model().reset_all());
    if foods.len() > 0 {
        visit_food::Entity::insert_many(foods).exec_without_returning(c).await?;
    }
    let outcomes = rows::visit::write_outcomes(record).into_iter().map(|row| row.into_active_model().reset_all());
    if outcomes.len() > 0 {
        visit_outcome::Entity::insert_many(outcomes).exec_without_returning(c).await?;
    }
    rows::talk::insert(c, record.visit.id, &record.talk).await
}

/// Keeps the visit as it stands at `version`; answers its row.
async fn keep_version(c: &impl ConnectionTrait, id: VisitId, version: u32, correction: Correction<'_>) -> Result<visit::Model, StoreError> {
    let stale = || StoreError::Conflict { what: "visits".to_owned() };
    let old = visit::Entity::find_by_id(uuid(id.0)).one(c).await?.ok_or_else(stale)?;
    if old.version.unsigned_abs() != version || old.voided_at.is_some() {
        return Err(stale());
    }
    let record = lines::read(c, visit::Entity::find_by_id(uuid(id.0))).await?;
    let kept = visit_version::Model {
        visit_id: old.id,
        version: old.version,
        content: record.first().map(crate::store::visit_text::content).unwrap_or_default(),
        recorded_by: uuid(correction.by.0),
        recorded_at: whole_second(correction.at),
        reason: correction.reason.to_owned(),
    };
    visit_version::Entity::insert(kept.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(old)
}

#[cfg(test)]
mod tests;

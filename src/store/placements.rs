//! A child moves to another area or worker, or leaves: the child, its lists and the history change together.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::ChildStatus;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::child;
use crate::store::entity::child_summary;
use crate::store::entity::follow_up;
use crate::store::entity::placement;
use crate::store::entity::status_change;
use crate::store::error::StoreError;

/// Where a child was, and with whom.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlacementRecord {
    /// First day.
    pub from_on: NaiveDate,
    /// Last day; `None` = still.
    pub to_on: Option<NaiveDate>,
    /// Area.
    pub area: AreaId,
    /// Worker.
    pub worker: PersonId,
    /// Who decided.
    pub by: PersonId,
    /// Why.
    pub reason: String,
}

/// A change of a child's status.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StatusRecord {
    /// The new status.
    pub status: ChildStatus,
    /// The day it happened.
    pub on: NaiveDate,
    /// Who recorded it; `None` = worked out by the program.
    pub by: Option<PersonId>,
    /// Note.
    pub note: Option<String>,
    /// When it was recorded.
    pub at: DateTime<Utc>,
}

/// Moves a child at `version` to an area and worker from this day on. Open follow-ups and its line in the lists go along.
///
/// # Errors
/// [`StoreError::Conflict`] when somebody changed the child meanwhile.
pub async fn place(c: &impl ConnectionTrait, id: ChildId, version: u32, to: &PlacementRecord) -> Result<(), StoreError> {
    let key = uuid(id.0);
    let (area, worker) = (uuid(to.area.0), uuid(to.worker.0));
    let moved = child::Entity::update_many()
        .col_expr(child::Column::AreaId, Expr::value(area))
        .col_expr(child::Column::WorkerId, Expr::value(worker))
        .col_expr(child::Column::Version, Expr::col(child::Column::Version).add(1))
        .filter(at_version(id, version))
        .exec(c)
        .await?;
    changed_one(moved.rows_affected)?;
    let last = placement::Entity::find()
        .filter(placement::Column::ChildId.eq(key))
        .order_by_desc(placement::Column::Seq)
        .one(c)
        .await?
        .ok_or_else(|| StoreError::corrupt("placements", key, "the child has no placement"))?;
    // The day before the move is the last day of the old placement; a move on its first day leaves it one day long.
    let until = Ord::max(to.from_on.pred_opt().unwrap_or(to.from_on), last.from_on);
    placement::Entity::update_many()
        .col_expr(placement::Column::ToOn, Expr::value(Some(until)))
        .filter(placement::Column::ChildId.eq(key))
        .filter(placement::Column::Seq.eq(last.seq))
        .exec(c)
        .await?;
    let next = placement::Model {
        child_id: key,
        seq: last.seq + 1,
        from_on: to.from_on,
        to_on: to.to_on,
        area_id: area,
        worker_id: worker,
        by_person: uuid(to.by.0),
        reason: to.reason.clone(),
    };
    placement::Entity::insert(next.into_active_model().reset_all()).exec_without_returning(c).await?;
    follow_up::Entity::update_many()
        .col_expr(follow_up::Column::AreaId, Expr::value(area))
        .col_expr(follow_up::Column::WorkerId, Expr::value(worker))
        .filter(follow_up::Column::ChildId.eq(key))
        .filter(follow_up::Column::State.eq("open"))
        .exec(c)
        .await?;
    child_summary::Entity::update_many()
        .col_expr(child_summary::Column::AreaId, Expr::value(area))
        .col_expr(child_summary::Column::WorkerId, Expr::value(worker))
        .filter(child_summary::Column::ChildId.eq(key))
        .exec(c)
        .await?;
    Ok(())
}

/// Puts places before those a child has: it was known there, in another record of it, before.
///
/// # Errors
/// [`StoreError`].
pub async fn precede(c: &impl ConnectionTrait, id: ChildId, earlier: &[PlacementRecord]) -> Result<(), StoreError> {
    let own = of_child(c, id).await?;
    placement::Entity::delete_many().filter(placement::Column::ChildId.eq(uuid(id.0))).exec(c).await?;
    for (seq, place) in (1_i32..).zip(earlier.iter().chain(&own)) {
        let row = placement::Model {
            child_id: uuid(id.0),
            seq,
            from_on: place.from_on,
            to_on: place.to_on,
            area_id: uuid(place.area.0),
            worker_id: uuid(place.worker.0),
            by_person: uuid(place.by.0),
            reason: place.reason.clone(),
        };
        placement::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    }
    Ok(())
}

/// Changes a child's status at `version`. Its follow-ups and its line in the lists are worked out anew by the caller.
///
/// # Errors
/// [`StoreError::Conflict`] when somebody changed the child meanwhile.
pub async fn change_status(c: &impl ConnectionTrait, id: ChildId, version: u32, change: &StatusRecord) -> Result<(), StoreError> {
    let key = uuid(id.0);
    let left_on = (change.status != ChildStatus::Active).then_some(change.on);
    let left = child::Entity::update_many()
        .col_expr(child::Column::Status, Expr::value(change.status.code()))
        .col_expr(child::Column::LeftOn, Expr::value(left_on))
        .col_expr(child::Column::LeftNote, Expr::value(left_on.and(change.note.clone())))
        .col_expr(child::Column::Version, Expr::col(child::Column::Version).add(1))
        .filter(at_version(id, version))
        .exec(c)
        .await?;
    changed_one(left.rows_affected)?;
    let child = child::Entity::find_by_id(key).one(c).await?.ok_or_else(|| StoreError::Conflict { what: "children".to_owned() })?;
    let last = status_change::Entity::find()
        .filter(status_change::Column::ChildId.eq(key))
        .order_by_desc(status_change::Column::Seq)
        .one(c)
        .await?;
    let row = status_change::Model {
        child_id: key,
        seq: last.map_or(1, |row| row.seq + 1),
        area_id: child.area_id,
        status: change.status.code().to_owned(),
        happened_on: change.on,
        by_person: change.by.map(|id| uuid(id.0)),
        note: change.note.clone(),
        at: whole_second(change.at),
    };
    status_change::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// Where a child has been, first to last.
///
/// # Errors
/// [`StoreError`].
pub async fn of_child(c: &impl ConnectionTrait, id: ChildId) -> Result<Vec<PlacementRecord>, StoreError> {
    let query = placement::Entity::find().filter(placement::Column::ChildId.eq(uuid(id.0))).order_by_asc(placement::Column::Seq);
    let read = |row: placement::Model| PlacementRecord {
        from_on: row.from_on,
        to_on: row.to_on,
        area: AreaId(row.area_id.as_u128()),
        worker: PersonId(row.worker_id.as_u128()),
        by: PersonId(row.by_person.as_u128()),
        reason: row.reason,
    };
    Ok(query.all(c).await?.into_iter().map(read).collect())
}

/// How a child's status changed, first to last.
///
/// # Errors
/// [`StoreError`].
pub async fn statuses_of(c: &impl ConnectionTrait, id: ChildId) -> Result<Vec<StatusRecord>, StoreError> {
    let query =
        status_change::Entity::find().filter(status_change::Column::ChildId.eq(uuid(id.0))).order_by_asc(status_change::Column::Seq);
    let read = |row: status_change::Model| {
        let reading = Reading { table: "status_changes", id: row.child_id };
        Ok(StatusRecord {
            status: reading.code(&row.status, ChildStatus::from_code)?,
            on: row.happened_on,
            by: row.by_person.map(|id| PersonId(id.as_u128())),
            note: row.note,
            at: row.at,
        })
    };
    query.all(c).await?.into_iter().map(read).collect()
}

fn at_version(id: ChildId, version: u32) -> sea_orm::Condition {
    sea_orm::Condition::all()
        .add(child::Column::Id.eq(uuid(id.0)))
        .add(child::Column::Version.eq(i32::try_from(version).unwrap_or(i32::MAX)))
}

fn changed_one(rows: u64) -> Result<(), StoreError> {
    if rows == 1 { Ok(()) } else { Err(StoreError::Conflict { what: "children".to_owned() }) }
}

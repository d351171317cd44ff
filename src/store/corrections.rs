//! Corrections of the record itself: visits taken back or moved, records merged. The table only grows. It knows no rule, and
//! moves nothing: what is corrected stands with [`visits`](crate::store::visits) and [`children`](crate::store::children).

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use sea_orm::ActiveModelTrait;
use sea_orm::ActiveValue::NotSet;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Query;
use sea_orm::sea_query::SelectStatement;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::child;
use crate::store::entity::record_correction;
use crate::store::error::StoreError;

/// How many merges are followed from one record to the next before the chain counts as broken.
const LONGEST_CHAIN: usize = 64;

/// What was corrected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Corrected {
    /// A visit was taken back.
    Void {
        /// The visit.
        visit: VisitId,
    },
    /// A visit went to another child.
    Move {
        /// The visit.
        visit: VisitId,
        /// To whom.
        to: ChildId,
    },
    /// The whole record was merged into another one of the same child.
    Merge {
        /// The record that goes on.
        into: ChildId,
    },
}

impl Corrected {
    const fn kind(self) -> &'static str {
        match self {
            Self::Void { .. } => "void",
            Self::Move { .. } => "move",
            Self::Merge { .. } => "merge",
        }
    }

    /// The visit, where it is about one.
    #[must_use]
    pub const fn visit(self) -> Option<VisitId> {
        match self {
            Self::Void { visit } | Self::Move { visit, .. } => Some(visit),
            Self::Merge { .. } => None,
        }
    }

    /// The record that received something.
    #[must_use]
    pub const fn to(self) -> Option<ChildId> {
        match self {
            Self::Void { .. } => None,
            Self::Move { to, .. } | Self::Merge { into: to } => Some(to),
        }
    }
}

/// A correction of the record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecordCorrection {
    /// What.
    pub what: Corrected,
    /// The record that it was taken from.
    pub child: ChildId,
    /// The day of the visit, or the first day of what was merged: the rules ran again from it.
    pub from_on: NaiveDate,
    /// Code of the kind of reason.
    pub reason: String,
    /// Why, in words.
    pub note: String,
    /// Who.
    pub by: PersonId,
    /// When.
    pub at: DateTime<Utc>,
}

/// Adds a correction.
///
/// # Errors
/// [`StoreError::Conflict`] when the record was merged into another one before.
pub async fn append(c: &impl ConnectionTrait, correction: &RecordCorrection) -> Result<(), StoreError> {
    let mut row = record_correction::Model {
        seq: 0,
        kind: correction.what.kind().to_owned(),
        child_id: uuid(correction.child.0),
        to_child_id: correction.what.to().map(|id| uuid(id.0)),
        visit_id: correction.what.visit().map(|id| uuid(id.0)),
        from_on: correction.from_on,
        reason: correction.reason.clone(),
        note: correction.note.clone(),
        by_person: uuid(correction.by.0),
        at: whole_second(correction.at),
    }
    .into_active_model()
    .reset_all();
    row.seq = NotSet;
    record_correction::Entity::insert(row).exec_without_returning(c).await?;
    Ok(())
}

/// Every correction that took something from one of these records or brought something to it, in the order they were made.
///
/// # Errors
/// [`StoreError`].
pub async fn of_children(c: &impl ConnectionTrait, children: &[ChildId]) -> Result<Vec<RecordCorrection>, StoreError> {
    use record_correction::Column as R;
    let keys: Vec<uuid::Uuid> = children.iter().map(|id| uuid(id.0)).collect();
    let query = record_correction::Entity::find()
        .filter(Condition::any().add(R::ChildId.is_in(keys.iter().copied())).add(R::ToChildId.is_in(keys.iter().copied())))
        .order_by_asc(R::Seq);
    query.all(c).await?.into_iter().map(read).collect()
}

/// Whether a correction took something from a child or brought something to it, as a part of a question about children.
pub(super) fn any_of_the_child() -> SelectStatement {
    use record_correction::Column as R;
    let child = (child::Entity, child::Column::Id);
    let of_it = Condition::any().add(Expr::col(R::ChildId).equals(child)).add(Expr::col(R::ToChildId).equals(child));
    Query::select().expr(Expr::val(1)).from(record_correction::Entity).cond_where(of_it).to_owned()
}

/// The last correction of a visit that took it from this child: it is no longer among the child's visits.
///
/// # Errors
/// [`StoreError`].
pub async fn taken_from(c: &impl ConnectionTrait, child: ChildId, visit: VisitId) -> Result<Option<RecordCorrection>, StoreError> {
    use record_correction::Column as R;
    let query =
        record_correction::Entity::find().filter(R::ChildId.eq(uuid(child.0))).filter(R::VisitId.eq(uuid(visit.0))).order_by_desc(R::Seq);
    query.one(c).await?.map(read).transpose()
}

/// The record that goes on for this one: itself, unless it was merged, once or several times.
///
/// # Errors
/// [`StoreError::Corrupt`] when merges lead in a circle.
pub async fn leads_to(c: &impl ConnectionTrait, child: ChildId) -> Result<ChildId, StoreError> {
    use record_correction::Column as R;
    let mut at = child;
    for _ in 0..LONGEST_CHAIN {
        let merged = record_correction::Entity::find().filter(R::Kind.eq("merge")).filter(R::ChildId.eq(uuid(at.0))).one(c).await?;
        match merged.and_then(|row| row.to_child_id) {
            Some(next) => at = ChildId(next.as_u128()),
            None => return Ok(at),
        }
    }
    Err(StoreError::corrupt("record_corrections", uuid(child.0), "merges lead in a circle"))
}

/// Keys of the records that were merged into another one: they are in no list and no count.
pub(crate) fn merged_away() -> SelectStatement {
    Query::select()
        .column(record_correction::Column::ChildId)
        .from(record_correction::Entity)
        .and_where(record_correction::Column::Kind.eq("merge"))
        .take()
}

fn read(row: record_correction::Model) -> Result<RecordCorrection, StoreError> {
    let visit = row.visit_id.map(|id| VisitId(id.as_u128()));
    let to = row.to_child_id.map(|id| ChildId(id.as_u128()));
    let what = match (row.kind.as_str(), visit, to) {
        ("void", Some(visit), None) => Corrected::Void { visit },
        ("move", Some(visit), Some(to)) => Corrected::Move { visit, to },
        ("merge", None, Some(into)) => Corrected::Merge { into },
        (kind, ..) => return Err(StoreError::corrupt("record_corrections", row.seq, format!("{kind} does not fit what it names"))),
    };
    Ok(RecordCorrection {
        what,
        child: ChildId(row.child_id.as_u128()),
        from_on: row.from_on,
        reason: row.reason,
        note: row.note,
        by: PersonId(row.by_person.as_u128()),
        at: row.at,
    })
}

//! Follow-ups as stored: what the judgement found, kept in step with it, with a history that only grows.
//! It judges nothing: which follow-ups there are comes from outside.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::FollowUpState;
use domain::rule::RuleId;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;

use crate::store::codes::uuid;
use crate::store::entity::follow_up;
use crate::store::entity::follow_up_event;
use crate::store::error::StoreError;
use crate::store::scope::Scope;

pub mod desk;
mod late;
mod sync;
#[cfg(test)]
mod tests;

pub use late::FollowUpLine;
pub use late::by_id_in_scope;
pub use late::late_in_scope;
pub use late::open_in_scope;
pub use sync::Recorded;
pub use sync::bring_together;
pub use sync::close_by_supervisor;
pub use sync::loses_its_cause;
pub use sync::replace_all_of_child;

/// A follow-up. One with closing is never open.
#[derive(Debug, Clone, PartialEq)]
pub struct FollowUpRecord {
    /// Key.
    pub id: FollowUpId,
    /// Whose.
    pub child: ChildId,
    /// The child's area while it is open.
    pub area: AreaId,
    /// The child's worker while it is open.
    pub worker: PersonId,
    /// Rule that opened it.
    pub rule: RuleId,
    /// Urgency.
    pub class: Class,
    /// The visit that opened it.
    pub opened_by_visit: VisitId,
    /// That visit's day.
    pub opened_on: NaiveDate,
    /// Day of the check.
    pub due_on: NaiveDate,
    /// Day on which the rule last fired.
    pub last_fired_on: NaiveDate,
    /// The visit at which it last fired.
    pub last_fired_visit: VisitId,
    /// How it ended; `None` = open.
    pub closing: Option<Closing>,
    /// The numbers it rests on.
    pub evidence: Evidence,
    /// Rules silenced or muted by it.
    pub also_true: BTreeSet<RuleId>,
    /// The protocol that judged it.
    pub protocol_id: String,
    /// Its version.
    pub protocol_version: String,
    /// First visit after opening that counts as followed up.
    pub first_followed_up_on: Option<NaiveDate>,
    /// The due day that stood until then.
    pub first_followed_up_due: Option<NaiveDate>,
    /// Day of the first outcome told.
    pub first_outcome_on: Option<NaiveDate>,
    /// Day of the first referral.
    pub referred_on: Option<NaiveDate>,
}

/// How a follow-up ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closing {
    /// Why.
    pub reason: CloseReason,
    /// The day.
    pub on: NaiveDate,
    /// The person who decided; `None` = worked out.
    pub by: Option<PersonId>,
    /// A supervisor's category.
    pub category: Option<String>,
    /// A supervisor's words.
    pub note: Option<String>,
    /// The rule that took over.
    pub replaced_by: Option<RuleId>,
}

impl FollowUpRecord {
    /// Where it stands: the reason for closing says which end it is.
    #[must_use]
    pub fn state(&self) -> FollowUpState {
        use CloseReason as R;
        match self.closing.as_ref().map(|c| c.reason) {
            None => FollowUpState::Open,
            Some(R::ResolvedByVisit | R::SeenOutcomeRecorded | R::InCareElsewhere | R::RecordCorrected | R::Replaced) => {
                FollowUpState::Done
            }
            Some(R::SupervisorDecision) => FollowUpState::ClosedBySupervisor,
            Some(R::TransferredOut | R::Moved | R::ConsentWithdrawn | R::AgedOut | R::Refused | R::Died) => FollowUpState::Ended,
        }
    }
}

/// What happened to a follow-up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EventKind {
    /// Opened.
    Opened,
    /// Fired again, or its due day moved.
    Refreshed,
    /// Became more urgent.
    Raised,
    /// Something told of it changed: its numbers, what is also true, a referral.
    Changed,
    /// A first outcome was told.
    Outcome,
    /// Closed.
    Closed,
    /// What had closed it was corrected away.
    Reopened,
}

impl EventKind {
    /// Every kind with its permanent code.
    const CODES: [(Self, &str); 7] = [
        (Self::Opened, "opened"),
        (Self::Refreshed, "refreshed"),
        (Self::Raised, "raised"),
        (Self::Changed, "changed"),
        (Self::Outcome, "outcome"),
        (Self::Closed, "closed"),
        (Self::Reopened, "reopened"),
    ];

    /// The permanent code.
    #[must_use]
    pub fn code(self) -> &'static str {
        Self::CODES.iter().find(|(kind, _)| *kind == self).map_or("", |(_, code)| code)
    }

    /// The kind with this code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::CODES.iter().find(|(_, known)| *known == code).map(|(kind, _)| *kind)
    }
}

/// A line of a follow-up's history.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FollowUpEvent {
    /// Of which follow-up.
    pub follow_up: FollowUpId,
    /// Its place, from 1.
    pub seq: u32,
    /// When it was recorded.
    pub at: DateTime<Utc>,
    /// The day it happened.
    pub on: NaiveDate,
    /// What happened.
    pub kind: EventKind,
    /// Urgency from then on.
    pub class: Class,
    /// Due day from then on.
    pub due_on: NaiveDate,
    /// The visit that caused it.
    pub visit: Option<VisitId>,
    /// Who recorded it; `None` = the program.
    pub by: Option<PersonId>,
    /// Why it closed.
    pub reason: Option<CloseReason>,
    /// A supervisor's words.
    pub note: Option<String>,
}

/// All follow-ups of a child, open first by urgency and due day, then closed ones, latest first.
///
/// # Errors
/// [`StoreError`].
pub async fn of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Vec<FollowUpRecord>, StoreError> {
    in_order(follow_up::Entity::find().filter(follow_up::Column::ChildId.eq(uuid(child.0))).all(c).await?)
}

/// Rows of one child, open first by urgency and due day, then closed ones, latest first.
pub(in crate::store) fn in_order(rows: Vec<follow_up::Model>) -> Result<Vec<FollowUpRecord>, StoreError> {
    let mut records: Vec<FollowUpRecord> = rows.into_iter().map(TryInto::try_into).collect::<Result<_, _>>()?;
    records.sort_by_key(|f| {
        let closed = f.closing.as_ref().map(|c| std::cmp::Reverse(c.on));
        (closed.is_some(), closed, f.class, f.due_on, f.opened_on, f.rule)
    });
    Ok(records)
}

/// All follow-ups of these children, by child.
///
/// # Errors
/// [`StoreError`].
pub async fn of_children(c: &impl ConnectionTrait, children: &[ChildId]) -> Result<BTreeMap<ChildId, Vec<FollowUpRecord>>, StoreError> {
    let mut all: BTreeMap<ChildId, Vec<FollowUpRecord>> = BTreeMap::new();
    let query = follow_up::Entity::find().filter(follow_up::Column::ChildId.is_in(children.iter().map(|id| uuid(id.0))));
    for row in query.all(c).await? {
        let record = FollowUpRecord::try_from(row)?;
        all.entry(record.child).or_default().push(record);
    }
    Ok(all)
}

/// The last line of the history of each follow-up of these children.
///
/// # Errors
/// [`StoreError`].
pub async fn last_events(c: &impl ConnectionTrait, children: &[ChildId]) -> Result<BTreeMap<FollowUpId, FollowUpEvent>, StoreError> {
    let of_children = sea_orm::sea_query::Query::select()
        .column(follow_up::Column::Id)
        .from(follow_up::Entity)
        .and_where(follow_up::Column::ChildId.is_in(children.iter().map(|id| uuid(id.0))))
        .take();
    let query = follow_up_event::Entity::find()
        .filter(follow_up_event::Column::FollowUpId.in_subquery(of_children))
        .order_by_asc(follow_up_event::Column::Seq);
    let mut last = BTreeMap::new();
    for row in query.all(c).await? {
        let event = FollowUpEvent::try_from(row)?;
        last.insert(event.follow_up, event);
    }
    Ok(last)
}

/// The follow-ups of these children that a supervisor closed.
///
/// # Errors
/// [`StoreError`].
pub async fn closed_by_supervisors(c: &impl ConnectionTrait, children: &[ChildId]) -> Result<Vec<FollowUpRecord>, StoreError> {
    let query = follow_up::Entity::find()
        .filter(follow_up::Column::ChildId.is_in(children.iter().map(|id| uuid(id.0))))
        .filter(follow_up::Column::CloseReason.eq(CloseReason::SupervisorDecision.code()));
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// The history of a child's follow-ups, each in its order.
///
/// # Errors
/// [`StoreError`].
pub async fn history_of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Vec<FollowUpEvent>, StoreError> {
    let of_child = sea_orm::sea_query::Query::select()
        .column(follow_up::Column::Id)
        .from(follow_up::Entity)
        .and_where(follow_up::Column::ChildId.eq(uuid(child.0)))
        .take();
    let query = follow_up_event::Entity::find()
        .filter(follow_up_event::Column::FollowUpId.in_subquery(of_child))
        .order_by_asc(follow_up_event::Column::FollowUpId)
        .order_by_asc(follow_up_event::Column::Seq);
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

pub(super) fn in_scope(scope: Scope) -> sea_orm::Condition {
    scope.on((follow_up::Entity, follow_up::Column::AreaId), (follow_up::Entity, follow_up::Column::WorkerId))
}

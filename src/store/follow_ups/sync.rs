//! Bringing the stored follow-ups of a child in step with what the judgement found, and a supervisor's closing.
//! Nothing is ever deleted; each difference becomes a line of the history.

use std::collections::BTreeMap;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::rule::CloseReason;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QuerySelect;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::follow_up;
use crate::store::entity::follow_up_event;
use crate::store::error::StoreError;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::in_scope;
use crate::store::scope::Scope;

/// Who caused a change, when, and on which programme day.
#[derive(Debug, Clone, Copy)]
pub struct Recorded {
    /// Instant.
    pub at: DateTime<Utc>,
    /// Day.
    pub today: NaiveDate,
    /// Person; `None` = the program.
    pub by: Option<PersonId>,
}

/// Makes the stored follow-ups of a child those given. One is the same as a stored one when rule and opening visit are;
/// it then keeps the stored key, otherwise the key given is used. One that is no longer found has lost its cause: it is closed as
/// `record_corrected`, also when it had closed otherwise; a supervisor's decision stays as it is, and holds again if the cause
/// comes back. Supervisors' decisions must be among what is given: whoever judges knows them from
/// [`of_child`](crate::store::follow_ups::of_child).
///
/// # Errors
/// [`StoreError::Conflict`] when two open ones of one rule are given.
pub async fn replace_all_of_child(
    c: &impl ConnectionTrait,
    child: ChildId,
    found: &[FollowUpRecord],
    recorded: Recorded,
) -> Result<(), StoreError> {
    replace(c, child, None, found, recorded).await
}

/// The same for a child whose record takes over that of `other`, the same child: what was stored there comes over with its
/// history. One that both have, by rule and opening visit, stays where it is.
///
/// # Errors
/// [`StoreError::Conflict`] when two open ones of one rule are given.
pub async fn bring_together(
    c: &impl ConnectionTrait,
    child: ChildId,
    other: ChildId,
    found: &[FollowUpRecord],
    recorded: Recorded,
) -> Result<(), StoreError> {
    replace(c, child, Some(other), found, recorded).await
}

async fn replace(
    c: &impl ConnectionTrait,
    child: ChildId,
    other: Option<ChildId>,
    found: &[FollowUpRecord],
    recorded: Recorded,
) -> Result<(), StoreError> {
    let mut stored: BTreeMap<_, FollowUpRecord> = BTreeMap::new();
    for whose in [Some(child), other].into_iter().flatten() {
        for row in follow_up::Entity::find().filter(follow_up::Column::ChildId.eq(uuid(whose.0))).all(c).await? {
            let record = FollowUpRecord::try_from(row)?;
            stored.entry((record.rule, record.opened_by_visit)).or_insert(record);
        }
    }
    let mut changes: Vec<(Option<FollowUpRecord>, FollowUpRecord)> = Vec::new();
    for record in found {
        let before = stored.remove(&(record.rule, record.opened_by_visit));
        let mut after = record.clone();
        if let Some(before) = &before {
            after.id = before.id;
            if before.closing.is_some() && after.closing.is_some() {
                // Closed ones stay where they were when they closed.
                (after.area, after.worker) = (before.area, before.worker);
            }
        }
        if before.as_ref() != Some(&after) {
            changes.push((before, after));
        }
    }
    for (_, before) in stored {
        let mut after = FollowUpRecord { child, ..before.clone() };
        if loses_its_cause(&before) {
            after.closing = Some(Closing {
                reason: CloseReason::RecordCorrected,
                on: before.closing.as_ref().map_or(recorded.today, |closing| closing.on),
                by: None,
                category: None,
                note: None,
                replaced_by: None,
            });
        }
        if after != before {
            changes.push((Some(before), after));
        }
    }
    // One rule has one open follow-up: what closes goes first.
    changes.sort_by_key(|(_, after)| after.closing.is_none());
    let known: Vec<FollowUpId> = changes.iter().filter_map(|(before, _)| before.as_ref()).map(|f| f.id).collect();
    let mut last = last_seqs(c, &known).await?;
    for (before, after) in &changes {
        let seq = last.entry(after.id).or_default();
        save(c, before.as_ref(), after, seq, recorded).await?;
    }
    Ok(())
}

/// Whether a follow-up that no judgement finds any more is closed as `record_corrected`: all but those that a supervisor closed,
/// and those closed so before.
#[must_use]
pub fn loses_its_cause(f: &FollowUpRecord) -> bool {
    let stays = [CloseReason::SupervisorDecision, CloseReason::RecordCorrected];
    f.closing.as_ref().is_none_or(|closing| !stays.contains(&closing.reason))
}

/// Closes an open follow-up by a supervisor's decision, if the scope reaches it; answers the follow-up as closed.
/// Whether the class allows it is the caller's to decide.
///
/// # Errors
/// [`StoreError::Conflict`] when it is not open any more; `None` when the scope does not reach it.
pub async fn close_by_supervisor(
    c: &impl ConnectionTrait,
    scope: Scope,
    id: FollowUpId,
    by: PersonId,
    category: &str,
    note: &str,
    recorded: Recorded,
) -> Result<Option<FollowUpRecord>, StoreError> {
    let Some(row) = follow_up::Entity::find_by_id(uuid(id.0)).filter(in_scope(scope)).one(c).await? else { return Ok(None) };
    let before = FollowUpRecord::try_from(row)?;
    if before.closing.is_some() {
        return Err(StoreError::Conflict { what: "follow_ups".to_owned() });
    }
    let closing = Closing {
        reason: CloseReason::SupervisorDecision,
        on: recorded.today,
        by: Some(by),
        category: Some(category.to_owned()),
        note: Some(note.to_owned()),
        replaced_by: None,
    };
    let after = FollowUpRecord { closing: Some(closing), ..before.clone() };
    let mut last = last_seqs(c, &[id]).await?.remove(&id).unwrap_or_default();
    save(c, Some(&before), &after, &mut last, recorded).await?;
    Ok(Some(after))
}

async fn save(
    c: &impl ConnectionTrait,
    before: Option<&FollowUpRecord>,
    after: &FollowUpRecord,
    seq: &mut i32,
    recorded: Recorded,
) -> Result<(), StoreError> {
    let row = follow_up::Model::from(after).into_active_model().reset_all();
    if before.is_none() {
        follow_up::Entity::insert(row).exec_without_returning(c).await?;
    } else {
        follow_up::Entity::update_many().set(row).filter(follow_up::Column::Id.eq(uuid(after.id.0))).exec(c).await?;
    }
    for event in events(before, after, recorded) {
        *seq += 1;
        let row = follow_up_event::Model {
            follow_up_id: uuid(after.id.0),
            seq: *seq,
            area_id: uuid(after.area.0),
            at: whole_second(recorded.at),
            on_date: event.on,
            kind: event.kind.code().to_owned(),
            class: after.class.code().to_owned(),
            due_on: after.due_on,
            visit_id: event.visit.map(|id| uuid(id.0)),
            by_person: recorded.by.map(|id| uuid(id.0)),
            reason: event.reason.map(|r| r.code().to_owned()),
            note: event.note,
        };
        follow_up_event::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    }
    Ok(())
}

struct Happened {
    kind: EventKind,
    on: NaiveDate,
    visit: Option<VisitId>,
    reason: Option<CloseReason>,
    note: Option<String>,
}

/// What turned the one into the other, in the order it is told.
fn events(before: Option<&FollowUpRecord>, after: &FollowUpRecord, recorded: Recorded) -> Vec<Happened> {
    let plain = |kind, on, visit| Happened { kind, on, visit, reason: None, note: None };
    let mut happened = Vec::new();
    match before {
        None => {
            happened.push(plain(EventKind::Opened, after.opened_on, Some(after.opened_by_visit)));
            if after.last_fired_visit != after.opened_by_visit {
                happened.push(plain(EventKind::Refreshed, after.last_fired_on, Some(after.last_fired_visit)));
            }
        }
        Some(before) => {
            if before.closing.is_some() && after.closing.is_none() {
                happened.push(plain(EventKind::Reopened, recorded.today, None));
            }
            let fired = Some(after.last_fired_visit);
            if after.class < before.class {
                happened.push(plain(EventKind::Raised, after.last_fired_on, fired));
            } else if (after.last_fired_visit, after.due_on) != (before.last_fired_visit, before.due_on) {
                happened.push(plain(EventKind::Refreshed, after.last_fired_on, fired));
            } else if before.closing == after.closing && before.first_outcome_on == after.first_outcome_on {
                happened.push(plain(EventKind::Changed, recorded.today, None));
            }
        }
    }
    if let Some(on) = after.first_outcome_on
        && before.and_then(|f| f.first_outcome_on) != Some(on)
    {
        happened.push(plain(EventKind::Outcome, on, None));
    }
    if let Some(closing) = &after.closing
        && before.and_then(|f| f.closing.as_ref()) != Some(closing)
    {
        // That it had closed before, for a cause that is gone, is told on the day of the correction.
        let again = before.is_some_and(|f| f.closing.is_some()) && closing.reason == CloseReason::RecordCorrected;
        happened.push(Happened {
            kind: EventKind::Closed,
            on: if again { recorded.today } else { closing.on },
            visit: None,
            reason: Some(closing.reason),
            note: closing.note.clone(),
        });
    }
    happened
}

async fn last_seqs(c: &impl ConnectionTrait, ids: &[FollowUpId]) -> Result<BTreeMap<FollowUpId, i32>, StoreError> {
    if ids.is_empty() {
        return Ok(BTreeMap::new());
    }
    let rows: Vec<(uuid::Uuid, Option<i32>)> = follow_up_event::Entity::find()
        .select_only()
        .column(follow_up_event::Column::FollowUpId)
        .column_as(follow_up_event::Column::Seq.max(), "last")
        .filter(follow_up_event::Column::FollowUpId.is_in(ids.iter().map(|id| uuid(id.0))))
        .group_by(follow_up_event::Column::FollowUpId)
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().map(|(id, last)| (FollowUpId(id.as_u128()), last.unwrap_or(0))).collect())
}

//! Rows of follow-ups and of their history.

use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::FollowUpState;
use domain::rule::RuleId;

use crate::store::codes::Reading;
use crate::store::codes::join;
use crate::store::codes::uuid;
use crate::store::entity::follow_up;
use crate::store::entity::follow_up_event;
use crate::store::error::StoreError;
use crate::store::evidence_text;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpEvent;
use crate::store::follow_ups::FollowUpRecord;

impl TryFrom<follow_up::Model> for FollowUpRecord {
    type Error = StoreError;

    fn try_from(row: follow_up::Model) -> Result<Self, StoreError> {
        let r = Reading { table: "follow_ups", id: row.id };
        let reason = r.maybe_code(row.close_reason.as_deref(), CloseReason::from_code)?;
        let closing = match (reason, row.closed_on) {
            (None, None) => None,
            (Some(reason), Some(on)) => Some(Closing {
                reason,
                on,
                by: row.closed_by.map(|id| PersonId(id.as_u128())),
                category: row.close_category,
                note: row.close_note,
                replaced_by: r.maybe_code(row.replaced_by_rule.as_deref(), RuleId::from_code)?,
            }),
            _ => return Err(r.corrupt("closed without reason or day")),
        };
        let record = Self {
            id: FollowUpId(row.id.as_u128()),
            child: ChildId(row.child_id.as_u128()),
            area: AreaId(row.area_id.as_u128()),
            worker: PersonId(row.worker_id.as_u128()),
            rule: r.code(&row.rule, RuleId::from_code)?,
            class: r.code(&row.class, Class::from_code)?,
            opened_by_visit: VisitId(row.opened_by_visit.as_u128()),
            opened_on: row.opened_on,
            due_on: row.due_on,
            last_fired_on: row.last_fired_on,
            last_fired_visit: VisitId(row.last_fired_visit.as_u128()),
            closing,
            evidence: evidence_text::read(&row.evidence).map_err(|what| r.corrupt(what))?,
            also_true: r.codes(&row.also_true, RuleId::from_code)?,
            protocol_id: row.protocol_id,
            protocol_version: row.protocol_version,
            first_followed_up_on: row.first_followed_up_on,
            first_followed_up_due: row.first_followed_up_due,
            first_outcome_on: row.first_outcome_on,
            referred_on: row.referred_on,
        };
        let state = r.code(&row.state, FollowUpState::from_code)?;
        if state == record.state() { Ok(record) } else { Err(r.corrupt(format!("state {} does not fit its closing", state.code()))) }
    }
}

impl From<&FollowUpRecord> for follow_up::Model {
    fn from(record: &FollowUpRecord) -> Self {
        let closing = record.closing.as_ref();
        Self {
            id: uuid(record.id.0),
            child_id: uuid(record.child.0),
            area_id: uuid(record.area.0),
            worker_id: uuid(record.worker.0),
            rule: record.rule.code().to_owned(),
            class: record.class.code().to_owned(),
            opened_by_visit: uuid(record.opened_by_visit.0),
            opened_on: record.opened_on,
            due_on: record.due_on,
            last_fired_on: record.last_fired_on,
            last_fired_visit: uuid(record.last_fired_visit.0),
            state: record.state().code().to_owned(),
            close_reason: closing.map(|c| c.reason.code().to_owned()),
            closed_on: closing.map(|c| c.on),
            closed_by: closing.and_then(|c| c.by).map(|id| uuid(id.0)),
            close_category: closing.and_then(|c| c.category.clone()),
            close_note: closing.and_then(|c| c.note.clone()),
            replaced_by_rule: closing.and_then(|c| c.replaced_by).map(|r| r.code().to_owned()),
            evidence: evidence_text::write(&record.evidence),
            also_true: join(record.also_true.iter().map(|r| r.code())),
            protocol_id: record.protocol_id.clone(),
            protocol_version: record.protocol_version.clone(),
            first_followed_up_on: record.first_followed_up_on,
            first_followed_up_due: record.first_followed_up_due,
            first_outcome_on: record.first_outcome_on,
            referred_on: record.referred_on,
        }
    }
}

impl TryFrom<follow_up_event::Model> for FollowUpEvent {
    type Error = StoreError;

    fn try_from(row: follow_up_event::Model) -> Result<Self, StoreError> {
        let r = Reading { table: "follow_up_events", id: row.follow_up_id };
        Ok(Self {
            follow_up: FollowUpId(row.follow_up_id.as_u128()),
            seq: r.number("seq", row.seq)?,
            at: row.at,
            on: row.on_date,
            kind: EventKind::from_code(&row.kind).ok_or_else(|| r.corrupt(format!("unknown kind {:?}", row.kind)))?,
            class: r.code(&row.class, Class::from_code)?,
            due_on: row.due_on,
            visit: row.visit_id.map(|id| VisitId(id.as_u128())),
            by: row.by_person.map(|id| PersonId(id.as_u128())),
            reason: r.maybe_code(row.reason.as_deref(), CloseReason::from_code)?,
            note: row.note,
        })
    }
}

//! Keeps a child's follow-ups and its line in the lists in step after a decision of people that changes no measurement:
//! a closing or a leaving. It judges nothing.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::ids::ChildId;
use domain::rule::CloseReason;

use crate::service::Context;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::follow_ups;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::Recorded;
use crate::store::summaries;
use crate::store::summaries::TopFollowUp;

/// Who changes something, when.
pub const fn recorded(ctx: &Context) -> Recorded {
    Recorded { at: ctx.now, today: ctx.today, by: Some(ctx.actor.person) }
}

/// Brings the line in the lists in step with the follow-ups that are open now.
///
/// # Errors
/// [`StoreError`].
pub async fn summary(tx: &Tx, child: ChildId, status: ChildStatus) -> Result<(), StoreError> {
    let Some(mut line) = summaries::of_child(tx, child).await? else { return Ok(()) };
    let open: Vec<FollowUpRecord> = follow_ups::of_child(tx, child).await?.into_iter().filter(|f| f.closing.is_none()).collect();
    line.status = status;
    line.open_count = u16::try_from(open.len()).unwrap_or(u16::MAX);
    // Open ones come most urgent first, then first due.
    line.top = open.first().map(|f| TopFollowUp { class: f.class, rule: f.rule, due_on: f.due_on, evidence: f.evidence.clone() });
    line.urgent_unanswered_since = open
        .iter()
        .filter(|f| f.class.is_urgent() && f.first_outcome_on.is_none_or(|on| on < f.last_fired_on))
        .map(|f| f.last_fired_on)
        .min();
    if open.is_empty() {
        line.referral_due_on = None;
    }
    if status != ChildStatus::Active {
        (line.slot, line.overdue_since, line.next_change_on) = (None, None, None);
    }
    summaries::upsert(tx, &line).await
}

/// Ends every open follow-up of a child that left on a day.
///
/// # Errors
/// [`StoreError`].
pub async fn end_all(tx: &Tx, child: ChildId, reason: CloseReason, on: NaiveDate, recorded: Recorded) -> Result<(), StoreError> {
    let all: Vec<FollowUpRecord> = follow_ups::of_child(tx, child)
        .await?
        .into_iter()
        .map(|f| match f.closing {
            Some(_) => f,
            None => {
                let closing = Closing { reason, on: on.max(f.opened_on), by: recorded.by, category: None, note: None, replaced_by: None };
                FollowUpRecord { closing: Some(closing), ..f }
            }
        })
        .collect();
    follow_ups::replace_all_of_child(tx, child, &all, recorded).await
}

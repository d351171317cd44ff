//! Ends a child's follow-ups after a decision of people that changes no measurement: a leaving. It judges nothing.

use chrono::NaiveDate;
use domain::ids::ChildId;
use domain::rule::CloseReason;

use crate::service::Context;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::follow_ups;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::Recorded;

/// Who changes something, when.
pub const fn recorded(ctx: &Context) -> Recorded {
    Recorded { at: ctx.now, today: ctx.today, by: Some(ctx.actor.person) }
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

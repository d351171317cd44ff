//! A child leaves the programme: open follow-ups end, the day and the way stay on record. That a child died is recorded by a
//! supervisor, who has spoken with the family.

use domain::child::ChildStatus;
use domain::draft::desk::read_leave;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::role::Action;
use domain::rule::CloseReason;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::in_step;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::service::why;
use crate::store::children::ChildRecord;
use crate::store::placements;
use crate::store::placements::StatusRecord;

/// The child about to leave.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str) -> Result<ChildRecord, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    why::child(ctx.db.direct(), ctx, code).await
}

/// Records the leaving; answers the way, also when the same form was sent before.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault, also when the child has left before or a worker records a death;
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn leave(ctx: &Context, sent: Sent, code: &str, pairs: &[(String, String)]) -> Result<(), Refusal> {
    ctx.needs(Action::RecordVisit)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let child = why::child(tx, ctx, code).await?;
            if child.facts.status != ChildStatus::Active {
                return Err(Refusal::Invalid(Faults::one("status", Fault::AlreadyLeft)));
            }
            let form = read_leave(pairs, child.facts.born, ctx.today).map_err(Refusal::Invalid)?;
            if form.status == ChildStatus::Died && ctx.needs(Action::Supervise).is_err() {
                return Err(Refusal::Invalid(Faults::one("status", Fault::SupervisorOnly)));
            }
            let change = StatusRecord { status: form.status, on: form.on, by: Some(ctx.actor.person), note: form.note, at: ctx.now };
            placements::change_status(tx, child.id, child.version, &change).await?;
            if let Some(reason) = reason_of(form.status) {
                in_step::end_all(tx, child.id, reason, form.on, in_step::recorded(ctx)).await?;
            }
            reassess::reassess(tx, &ctx.protocols, child.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "child.leave", "child", &child.code, &["status", "left_on", "left_note"]).await?;
            once::remember(tx, ctx, sent, &format!("/children/{}/leave", child.code)).await
        })
        .await
}

/// Why its follow-ups end.
pub(super) const fn reason_of(status: ChildStatus) -> Option<CloseReason> {
    match status {
        ChildStatus::Active => None,
        ChildStatus::TransferredOut => Some(CloseReason::TransferredOut),
        ChildStatus::Moved => Some(CloseReason::Moved),
        ChildStatus::Died => Some(CloseReason::Died),
        ChildStatus::ConsentWithdrawn => Some(CloseReason::ConsentWithdrawn),
        ChildStatus::AgedOut => Some(CloseReason::AgedOut),
        ChildStatus::Refused => Some(CloseReason::Refused),
    }
}

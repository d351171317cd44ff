//! A supervisor closes a follow-up with a reason. An urgent one is not closed before somebody has written what became of it.

use domain::draft::desk::CloseForm;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::role::Action;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::in_step;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::service::why;
use crate::service::why::Which;
use crate::store::follow_ups;
use crate::store::follow_ups::Closing;
use crate::store::people;
use crate::store::visits;

/// What came of it.
#[derive(Debug, Clone)]
pub enum Closed {
    /// Closed now, or by the same form before; where to look.
    Done(String),
    /// It was closed before by somebody else or by itself; nothing was changed.
    Before {
        /// How.
        closing: Closing,
        /// Who, if a person.
        by: Option<String>,
    },
}

/// Closes it.
///
/// # Errors
/// [`Refusal::Invalid`] for an urgent one without an outcome; [`Refusal::NotFound`], [`Refusal::Forbidden`],
/// [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn close(ctx: &Context, sent: Sent, code: &str, rule: RuleId, which: Which, form: &CloseForm) -> Result<Closed, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(Closed::Done(outcome));
            }
            let child = why::child(tx, ctx, code).await?;
            let stored = follow_ups::of_child(tx, child.id).await?;
            let (number, follow_up) = why::pick(&stored, rule, which).ok_or(Refusal::NotFound)?;
            if let Some(closing) = follow_up.closing {
                let by = match closing.by {
                    Some(id) => people::by_id(tx, id).await?.map(|p| p.full_name),
                    None => None,
                };
                return Ok(Closed::Before { closing, by });
            }
            let visits = visits::of_child_up_to(tx, child.id, ctx.today).await?;
            let judged = reassess::judge(&ctx.protocols, &child, &visits, &stored, ctx.today);
            let meant = judged.follow_ups.iter().find(|f| (f.rule, f.opened_by) == (follow_up.rule, follow_up.opened_by_visit));
            if why::lacks_outcome(meant) {
                return Err(Refusal::Invalid(Faults::one("category", Fault::NeedsOutcome)));
            }
            let category = form.category.code();
            follow_ups::close_by_supervisor(
                tx,
                why::scope(ctx),
                follow_up.id,
                ctx.actor.person,
                category,
                &form.note,
                in_step::recorded(ctx),
            )
            .await?
            .ok_or(Refusal::NotFound)?;
            reassess::reassess(tx, &ctx.protocols, child.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "follow_up.close", "child", &child.code, &["category", "note"]).await?;
            let path = format!("/children/{}/why/{}/{number}", child.code, rule.code());
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Closed::Done(path))
        })
        .await
}

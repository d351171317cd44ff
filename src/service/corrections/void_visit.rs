//! Taking a visit back: entered for the wrong child, or it never happened. It stays on record with the reason; the rules run
//! again without it.

use std::ops::ControlFlow;

use domain::child_code::ChildCode;
use domain::draft::correction::read_void;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file::ChildFile;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::corrections::begin;
use crate::service::corrections::effect::Effect;
use crate::service::corrections::shown;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::store::corrections;
use crate::store::corrections::Corrected;
use crate::store::corrections::RecordCorrection;
use crate::store::visits;
use crate::store::visits::Correction;
use crate::store::visits::VisitRecord;

/// A visit about to be taken back.
#[derive(Debug, Clone)]
pub struct ToVoid {
    /// The child's file today.
    pub file: ChildFile,
    /// The visit.
    pub visit: VisitRecord,
    /// What would change.
    pub effect: Effect,
}

/// The visit and what taking it back would change; `None` when it was taken back or moved meanwhile.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &ChildCode, seq: i64) -> Result<Option<ToVoid>, Refusal> {
    let Some((file, visit)) = shown(ctx, code, seq).await? else { return Ok(None) };
    let left: Vec<VisitRecord> = file.visits.iter().filter(|v| v.visit.id != visit.visit.id).cloned().collect();
    let without = reassess::judge(&ctx.protocols, &file.record, &left, &file.follow_ups, ctx.today);
    let effect = Effect::between(&file.assessment, &without);
    Ok(Some(ToVoid { file, visit, effect }))
}

/// Takes the visit back, if it is as it was when the form was shown.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`],
/// [`Refusal::Store`].
pub async fn void(ctx: &Context, sent: Sent, about: About<'_>, pairs: &[(String, String)]) -> Result<Done, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    ctx.db
        .write(async |tx| {
            let (child, visit) = match begin(tx, ctx, sent, about).await? {
                ControlFlow::Break(done) => return Ok(done),
                ControlFlow::Continue(found) => found,
            };
            let form = read_void(pairs).map_err(Refusal::Invalid)?;
            let why = Correction { by: ctx.actor.person, at: ctx.now, reason: &form.note };
            visits::void(tx, visit.visit.id, visit.version, why).await?;
            let correction = RecordCorrection {
                what: Corrected::Void { visit: visit.visit.id },
                child: child.id,
                from_on: visit.visit.on,
                reason: form.reason.code().to_owned(),
                note: form.note.clone(),
                by: ctx.actor.person,
                at: ctx.now,
            };
            corrections::append(tx, &correction).await?;
            reassess::reassess(tx, &ctx.protocols, child.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "visit.void", "child", &child.code, &["reason", "note"]).await?;
            let path = format!("/children/{}?done=voided", child.code);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Done::At(path))
        })
        .await
}

//! Moving a visit to the child it is really about: both children's rules run again, and nothing measured is lost.

use std::ops::ControlFlow;

use domain::calendar::days_between;
use domain::child_code::ChildCode;
use domain::draft::correction::read_move_visit;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::record::Doubt;
use domain::record::Obstacle;
use domain::record::against_moving;
use domain::role::Action;
use domain::visit::Visit;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::corrections::begin;
use crate::service::corrections::effect::Effect;
use crate::service::corrections::shown;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::service::record_visit;
use crate::store::Connection;
use crate::store::StoreError;
use crate::store::children::ChildRecord;
use crate::store::corrections;
use crate::store::corrections::Corrected;
use crate::store::corrections::RecordCorrection;
use crate::store::visits;
use crate::store::visits::Correction;
use crate::store::visits::VisitRecord;

/// What kind of reason every move has.
const WRONG_CHILD: &str = "wrong_child";

/// The child that the visit would go to.
#[derive(Debug, Clone)]
pub struct Target {
    /// Its file today.
    pub file: ChildFile,
    /// What has to be looked at again, or why it cannot be.
    pub against: Result<Vec<Doubt>, Obstacle>,
    /// What would change for the child that the visit leaves.
    pub leaves: Effect,
    /// What would change for the child that it goes to.
    pub arrives: Effect,
}

/// A visit about to be moved.
#[derive(Debug, Clone)]
pub struct ToMove {
    /// The child's file today.
    pub file: ChildFile,
    /// The visit.
    pub visit: VisitRecord,
    /// Where to, once chosen.
    pub target: Option<Target>,
}

/// The visit, and what moving it to the child with the code `to` would change; `None` when it was taken back or moved meanwhile.
///
/// # Errors
/// [`Refusal::NotFound`] when one of the children is outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &ChildCode, seq: i64, to: Option<&ChildCode>) -> Result<Option<ToMove>, Refusal> {
    let Some((file, visit)) = shown(ctx, code, seq).await? else { return Ok(None) };
    let target = match to {
        None => None,
        Some(to) => {
            let there = child_file::open(ctx, to, ctx.today).await?;
            (there.record.id != file.record.id).then(|| target(ctx, &file, there, &visit))
        }
    };
    Ok(Some(ToMove { file, visit, target }))
}

fn target(ctx: &Context, from: &ChildFile, there: ChildFile, visit: &VisitRecord) -> Target {
    let judge = |file: &ChildFile, records: &[VisitRecord]| {
        Effect::between(&file.assessment, &reassess::judge(&ctx.protocols, &file.record, records, &file.follow_ups, ctx.today))
    };
    let left: Vec<VisitRecord> = from.visits.iter().filter(|v| v.visit.id != visit.visit.id).cloned().collect();
    let mut with: Vec<VisitRecord> = there.visits.iter().chain([visit]).cloned().collect();
    with.sort_by_key(|v| (v.visit.on, v.entry_seq));
    let against = against(ctx, &visit.visit, &from.record, &there.record, &there.visits);
    let (leaves, arrives) = (judge(from, &left), judge(&there, &with));
    Target { file: there, against, leaves, arrives }
}

fn against(ctx: &Context, visit: &Visit, from: &ChildRecord, to: &ChildRecord, visits: &[VisitRecord]) -> Result<Vec<Doubt>, Obstacle> {
    let story: Vec<Visit> = visits.iter().map(|v| v.visit.clone()).collect();
    against_moving(visit, &from.facts, &to.facts, to.left_on, &story, ctx.protocols.on(visit.on))
}

/// Moves the visit, if it is as it was when the form was shown.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`],
/// [`Refusal::Store`].
pub async fn move_visit(ctx: &Context, sent: Sent, about: About<'_>, to: &ChildCode, pairs: &[(String, String)]) -> Result<Done, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    ctx.db
        .write(async |tx| {
            let (child, visit) = match begin(tx, ctx, sent, about).await? {
                ControlFlow::Break(done) => return Ok(done),
                ControlFlow::Continue(found) => found,
            };
            let target = child_file::find(tx, ctx, to).await?;
            let form = read_move_visit(pairs);
            let allowed = allowed(tx, ctx, &child, &target, &visit.visit, form.as_ref().is_ok_and(|f| f.sure)).await?;
            let form = match (form, allowed) {
                (Ok(form), None) => form,
                (Ok(_), Some(fault)) => return Err(Refusal::Invalid(fault)),
                (Err(mut faults), fault) => {
                    fault.iter().flat_map(Faults::iter).for_each(|(field, fault)| faults.add(field, fault.clone()));
                    return Err(Refusal::Invalid(faults));
                }
            };
            let (area, worker) = record_visit::placed_on(tx, &target, &visit.visit).await?;
            let moved = VisitRecord {
                child: target.id,
                area,
                worker,
                sex: target.facts.sex,
                age_days: u16::try_from(days_between(target.facts.born, visit.visit.on)).unwrap_or(0),
                ..visit.clone()
            };
            visits::rehome(tx, &moved, Correction { by: ctx.actor.person, at: ctx.now, reason: &form.note }).await?;
            let correction = RecordCorrection {
                what: Corrected::Move { visit: visit.visit.id, to: target.id },
                child: child.id,
                from_on: visit.visit.on,
                reason: WRONG_CHILD.to_owned(),
                note: form.note.clone(),
                by: ctx.actor.person,
                at: ctx.now,
            };
            corrections::append(tx, &correction).await?;
            for record in [&child, &target] {
                reassess::reassess(tx, &ctx.protocols, record.id, reassess::Moment::of(ctx)).await?;
                audit::note(tx, ctx, "visit.move", "child", &record.code, &["child", "note"]).await?;
            }
            let path = format!("/children/{}?done=moved", target.code);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Done::At(path))
        })
        .await
}

/// Why the visit may not go there as the form was sent.
async fn allowed(
    c: &impl Connection,
    ctx: &Context,
    child: &ChildRecord,
    target: &ChildRecord,
    visit: &Visit,
    sure: bool,
) -> Result<Option<Faults>, StoreError> {
    if child.id == target.id {
        return Ok(Some(Faults::one("to", Fault::NoChange)));
    }
    let there = visits::of_child_up_to(c, target.id, ctx.today).await?;
    Ok(match against(ctx, visit, child, target, &there) {
        Err(Obstacle::BeforeBirth(_)) => Some(Faults::one("to", Fault::BeforeBirth)),
        Err(Obstacle::AfterDeath(_)) => Some(Faults::one("to", Fault::AfterDeath)),
        Ok(doubts) if !doubts.is_empty() && !sure => Some(Faults::one("sure", Fault::LookFirst)),
        Ok(_) => None,
    })
}

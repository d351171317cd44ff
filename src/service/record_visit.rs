//! Recording a visit, and correcting one. Nothing ticked or typed keeps a visit from being saved.

use std::ops::ControlFlow;

use domain::assess::Assessment;
use domain::calendar::days_between;
use domain::child_code::ChildCode;
use domain::counsel::Talk;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::role::Action;
use domain::visit::Visit;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file;
use crate::service::corrections;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::reassess;
use crate::store::Tx;
use crate::store::children::ChildRecord;
use crate::store::placements;
use crate::store::visits;
use crate::store::visits::Correction;
use crate::store::visits::Indices;
use crate::store::visits::VisitRecord;

/// A visit as saved.
#[derive(Debug, Clone)]
pub struct Saved {
    /// Its number in the order of entry.
    pub seq: i64,
    /// The judgement after it; none when the same form had been saved before.
    pub assessment: Option<Assessment>,
}

/// What a form tells of a visit.
#[derive(Debug, Clone, Copy)]
pub struct Written<'a> {
    /// What was measured, asked and seen.
    pub visit: &'a Visit,
    /// What was talked about and agreed.
    pub talk: &'a Talk,
    /// A note.
    pub note: Option<&'a str>,
}

/// The path that shows what to do after a visit.
#[must_use]
pub fn outcome_path(code: &ChildCode, seq: i64) -> String {
    format!("/children/{}/visits/{seq}/now", code.as_str())
}

fn seq_of(outcome: &str) -> Option<i64> {
    outcome.rsplit('/').nth(1)?.parse().ok()
}

/// The id of the visit that a form with this submission key makes: the same each time it is sent.
#[must_use]
pub const fn visit_id(sent: Sent) -> VisitId {
    VisitId(sent.key.0)
}

/// Records a visit.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Conflict`] when the key came with other content, [`Refusal::Invalid`] for an impossible day.
pub async fn record(ctx: &Context, sent: Sent, code: &ChildCode, written: Written<'_>) -> Result<Saved, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    let Written { visit, talk, note } = written;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(Saved { seq: seq_of(&outcome).ok_or(Refusal::NotFound)?, assessment: None });
            }
            let child = child_file::find(tx, ctx, code).await?;
            possible_day(ctx, &child, visit)?;
            let (area, worker) = placed_on(tx, &child, visit).await?;
            let record = VisitRecord {
                visit: Visit { id: visit_id(sent), ..visit.clone() },
                child: child.id,
                area,
                worker,
                recorded_by: ctx.actor.person,
                sex: child.facts.sex,
                age_days: u16::try_from(days_between(child.facts.born, visit.on)).unwrap_or(0),
                recorded_at: ctx.now,
                entry_seq: 0,
                version: 1,
                voided_at: None,
                talk: of_this_child(talk, &visits::of_child_up_to(tx, child.id, ctx.today).await?),
                note: note.map(str::to_owned),
                outcome_notes: Vec::new(),
                indices: Indices::default(),
                suspect: std::collections::BTreeSet::new(),
                protocol_id: String::new(),
                protocol_version: String::new(),
                stage: String::new(),
            };
            let seq = visits::insert(tx, &record).await?;
            let assessment = reassess::reassess(tx, &ctx.protocols, child.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "record_visit", "child", code.as_str(), &[]).await?;
            once::remember(tx, ctx, sent, &outcome_path(code, seq)).await?;
            Ok(Saved { seq, assessment: Some(assessment) })
        })
        .await
}

/// Replaces a visit's content, if it is as it was when the form was shown; the old version is kept and the rules run again from its
/// day.
///
/// # Errors
/// As [`record`].
pub async fn correct(ctx: &Context, sent: Sent, about: About<'_>, written: Written<'_>, reason: &str) -> Result<Done, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    let Written { visit, talk, note } = written;
    ctx.db
        .write(async |tx| {
            let (child, before) = match corrections::begin(tx, ctx, sent, about).await? {
                ControlFlow::Break(done) => return Ok(done),
                ControlFlow::Continue(found) => found,
            };
            possible_day(ctx, &child, visit)?;
            // On the same day it stays with the village and worker it was recorded for.
            let (area, worker) =
                if visit.on == before.visit.on { (before.area, before.worker) } else { placed_on(tx, &child, visit).await? };
            let record = VisitRecord {
                visit: Visit { id: before.visit.id, ..visit.clone() },
                area,
                worker,
                age_days: u16::try_from(days_between(child.facts.born, visit.on)).unwrap_or(0),
                talk: of_this_child(talk, &visits::of_child_up_to(tx, child.id, ctx.today).await?),
                note: note.map(str::to_owned),
                outcome_notes: Vec::new(),
                ..before
            };
            visits::replace(tx, &record, Correction { by: ctx.actor.person, at: ctx.now, reason }).await?;
            reassess::reassess(tx, &ctx.protocols, child.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "correct_visit", "child", &child.code, &[]).await?;
            let path = outcome_path(about.code, about.seq);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Done::At(path))
        })
        .await
}

/// The talk without answers about steps that were agreed at no visit of this child.
fn of_this_child(talk: &Talk, visits: &[VisitRecord]) -> Talk {
    let mut talk = talk.clone();
    talk.told.retain(|id, _| visits.iter().any(|record| record.visit.id == id.visit));
    talk
}

fn possible_day(ctx: &Context, child: &ChildRecord, visit: &Visit) -> Result<(), Refusal> {
    let fault = if visit.on > ctx.today {
        Fault::InFuture
    } else if visit.on < child.facts.born {
        Fault::BeforeBirth
    } else {
        return Ok(());
    };
    Err(Refusal::Invalid(Faults::one("day", fault)))
}

/// Area and worker of the child on the day of the visit: a later move does not carry history along.
pub(super) async fn placed_on(tx: &Tx, child: &ChildRecord, visit: &Visit) -> Result<(AreaId, PersonId), Refusal> {
    let placed = placements::of_child(tx, child.id).await?;
    let then = placed.iter().rev().find(|p| p.from_on <= visit.on).or_else(|| placed.first());
    Ok(then.map_or((child.area, child.worker), |p| (p.area, p.worker)))
}

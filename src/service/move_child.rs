//! A child moves to another worker or village from a day on. Where it was stays on record; open follow-ups go along.

use chrono::NaiveDate;
use domain::draft::desk::read_move;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::receiver::receiver;
use crate::service::why;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::areas::AreaRecord;
use crate::store::children::ChildRecord;
use crate::store::people;
use crate::store::people::PersonRecord;
use crate::store::placements;
use crate::store::placements::PlacementRecord;

/// Where a child is, was, and may go.
#[derive(Debug, Clone)]
pub struct Places {
    /// The child.
    pub child: ChildRecord,
    /// Where it has been, first to last, with names of village and worker.
    pub history: Vec<(PlacementRecord, String, String)>,
    /// Workers who may be given a child.
    pub workers: Vec<PersonRecord>,
    /// Areas in use.
    pub areas: Vec<AreaRecord>,
}

impl Places {
    /// The first day of where it is now.
    #[must_use]
    pub fn since(&self) -> NaiveDate {
        self.history.last().map_or(self.child.facts.registered_on, |(p, ..)| p.from_on)
    }
}

/// Opens the form's facts.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str) -> Result<Places, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .read(async |tx| {
            let child = why::child(tx, ctx, code).await?;
            let all_areas = areas::list(tx).await?;
            let mut history = Vec::new();
            for placement in placements::of_child(tx, child.id).await? {
                let area = all_areas.iter().find(|a| a.id == placement.area).map_or_else(String::new, |a| a.name.clone());
                let worker = people::by_id(tx, placement.worker).await?.map_or_else(String::new, |p| p.full_name);
                history.push((placement, area, worker));
            }
            let mut workers = people::active_of_role(tx, Role::Worker).await?;
            workers.retain(|p| p.works_on(ctx.today));
            Ok(Places { child, history, workers, areas: all_areas.into_iter().filter(|a| a.active).collect() })
        })
        .await
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Moved {
    /// Moved; where to look. The child may be outside the scope now.
    Done(String),
    /// Somebody changed the child since the form was shown at `version`.
    Changed,
}

/// Moves the child, if nobody has changed it since the form was shown at `version`.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`],
/// [`Refusal::Store`].
pub async fn move_child(ctx: &Context, sent: Sent, code: &str, version: u32, pairs: &[(String, String)]) -> Result<Moved, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(Moved::Done(outcome));
            }
            let child = why::child(tx, ctx, code).await?;
            if child.version != version {
                return Ok(Moved::Changed);
            }
            let since = placements::of_child(tx, child.id).await?.last().map_or(child.facts.registered_on, |p| p.from_on);
            let form = read_move(pairs, since, ctx.today).map_err(Refusal::Invalid)?;
            let mut faults = Faults::new();
            let worker = match receiver(tx, &form.worker, ctx.today).await? {
                Ok(worker) => Some(worker),
                Err(fault) => {
                    faults.add("worker", fault);
                    None
                }
            };
            let area = areas::list(tx).await?.into_iter().find(|a| a.active && a.code == form.area);
            if area.is_none() {
                faults.add("area", Fault::UnknownChoice);
            }
            if let (Some(worker), Some(area)) = (&worker, &area)
                && (worker.id, area.id) == (child.worker, child.area)
            {
                faults.add("worker", Fault::NoChange);
            }
            let (worker, area) = faults.or(worker.zip(area)).map_err(Refusal::Invalid)?;
            let placement = PlacementRecord {
                from_on: form.from_on,
                to_on: None,
                area: area.id,
                worker: worker.id,
                by: ctx.actor.person,
                reason: form.reason,
            };
            match placements::place(tx, child.id, version, &placement).await {
                Ok(()) => {}
                Err(StoreError::Conflict { .. }) => return Ok(Moved::Changed),
                Err(other) => return Err(other.into()),
            }
            audit::note(tx, ctx, "child.move", "child", &child.code, &["worker", "area"]).await?;
            // Whoever moved the child may not reach it any more: the answer is on a page that is always there.
            let path = format!("/late?moved={}&to={}", worker.sign_in_name, area.code);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(Moved::Done(path))
        })
        .await
}

//! A supervisor's team: the workers assigned and those with children in the areas assigned; and a one-time code for one of them.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::once::Sent;
use crate::service::people::access::Code;
use crate::service::people::access::Given;
use crate::service::people::access::hand_over;
use crate::service::supervise;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::areas::AreaRecord;
use crate::store::follow_ups::desk;
use crate::store::follow_ups::desk::Tally;
use crate::store::people;
use crate::store::people::CoverRecord;
use crate::store::people::PersonRecord;

/// Who and where a supervisor looks after.
#[derive(Debug, Clone, Default)]
pub struct Team {
    /// Workers.
    pub workers: BTreeMap<PersonId, PersonRecord>,
    /// Areas.
    pub areas: BTreeMap<AreaId, AreaRecord>,
    /// Children and follow-ups of each worker in each area.
    pub tallies: Vec<Tally>,
    /// Who stands in for whom today.
    pub covers: Vec<CoverRecord>,
    /// Everybody who stands in today, of whichever team.
    pub stand_ins: BTreeMap<PersonId, PersonRecord>,
}

/// Children whose worker is not there, with nobody standing in today.
#[derive(Debug, Clone)]
pub struct Unattended {
    /// Their worker.
    pub worker: PersonRecord,
    /// How many of them the supervisor sees.
    pub children: u64,
    /// Why the worker is not there.
    pub gone: Gone,
}

/// Why a worker is not there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gone {
    /// Left the programme: the last day.
    Left(NaiveDate),
    /// May not sign in.
    MayNotSignIn,
    /// Away until this day, and who stands in is not there either.
    Away(NaiveDate),
}

impl Team {
    /// Names of the areas in which a worker has children.
    #[must_use]
    pub fn villages(&self, worker: PersonId) -> Vec<String> {
        let mut names: Vec<String> = self
            .tallies
            .iter()
            .filter(|t| t.worker == worker && t.class.is_none())
            .filter_map(|t| self.areas.get(&t.area))
            .map(|a| a.name.clone())
            .collect();
        names.sort();
        names
    }

    /// Workers who are not there today and still have children for whom nobody stands in, by name.
    #[must_use]
    pub fn unattended(&self, today: NaiveDate) -> Vec<Unattended> {
        let away = |id: PersonId| self.covers.iter().filter(|c| c.worker == id).map(|c| c.to_on).max();
        let here = |id: &PersonId| self.stand_ins.get(id).is_some_and(|p| p.works_on(today)) && away(*id).is_none();
        let looked_after = |id: PersonId| self.covers.iter().any(|c| c.worker == id && here(&c.covered_by));
        let gone = |p: &PersonRecord| match p.ended_on {
            Some(last) if last < today => Some(Gone::Left(last)),
            _ if !p.active => Some(Gone::MayNotSignIn),
            _ => away(p.id).map(Gone::Away),
        };
        let children = |id| self.tallies.iter().filter(|t| t.worker == id && t.class.is_none()).map(|t| t.count).sum();
        let mut found: Vec<Unattended> = (self.workers.values().filter(|p| !looked_after(p.id)))
            .filter_map(|p| Some(Unattended { worker: p.clone(), children: children(p.id), gone: gone(p)? }))
            .filter(|line| line.children > 0)
            .collect();
        found.sort_by(|a, b| a.worker.full_name.cmp(&b.worker.full_name));
        found
    }
}

/// The team of who asks.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context) -> Result<Team, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db.read(async |tx| Ok(load(tx, ctx).await?)).await
}

/// The same inside a view of the database.
pub(crate) async fn load(c: &impl Connection, ctx: &Context) -> Result<Team, StoreError> {
    let clock = supervise::clock(&ctx.protocols, ctx.today);
    let tallies = desk::tallies_in_scope(c, Scope::Supervisor { person: ctx.actor.person }, &clock, ctx.today).await?;
    let (assigned_areas, assigned_workers) = people::assigned(c, ctx.actor.person).await?;
    let ids: BTreeSet<PersonId> = tallies.iter().map(|t| t.worker).chain(assigned_workers).collect();
    let mut workers: BTreeMap<PersonId, PersonRecord> =
        people::active_of_role(c, Role::Worker).await?.into_iter().filter(|p| ids.contains(&p.id)).map(|p| (p.id, p)).collect();
    // Somebody who left still has children until they are moved: they must not vanish from view.
    for id in ids {
        if let std::collections::btree_map::Entry::Vacant(place) = workers.entry(id)
            && let Some(person) = people::by_id(c, id).await?
        {
            place.insert(person);
        }
    }
    let here: BTreeSet<AreaId> = tallies.iter().map(|t| t.area).chain(assigned_areas).collect();
    let areas = areas::list(c).await?.into_iter().filter(|a| here.contains(&a.id)).map(|a| (a.id, a)).collect();
    let covers: Vec<_> = people::covers_from(c, ctx.today).await?.into_iter().filter(|c| c.from_on <= ctx.today).collect();
    let standing: Vec<PersonId> = covers.iter().map(|cover| cover.covered_by).collect();
    let stand_ins = if standing.is_empty() { BTreeMap::new() } else { people::by_ids(c, &standing).await? };
    Ok(Team { workers, areas, tallies, covers, stand_ins })
}

/// Makes a one-time code for a worker of the team, to hand over in person.
///
/// # Errors
/// [`Refusal::NotFound`] for anybody else; [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn new_code(ctx: &Context, sent: Sent, sign_in_name: &str) -> Result<Given, Refusal> {
    ctx.needs(Action::Supervise)?;
    let code = Code::fresh(ctx.now)?;
    ctx.db
        .write(async |tx| {
            let team = load(tx, ctx).await?;
            let own = |p: &PersonRecord| p.active && p.role == Role::Worker && p.sign_in_name == sign_in_name;
            let person = team.workers.into_values().find(own).ok_or(Refusal::NotFound)?;
            hand_over(ctx, tx, sent, person, &code).await
        })
        .await
}

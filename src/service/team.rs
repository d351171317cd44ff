//! A supervisor's team: the workers assigned and those with children in the areas assigned; and a one-time code for one of them.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

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
    /// Who stands in for whom.
    pub covers: Vec<CoverRecord>,
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
    let covers = people::covers_from(c, ctx.today).await?.into_iter().filter(|c| c.from_on <= ctx.today).collect();
    Ok(Team { workers, areas, tallies, covers })
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

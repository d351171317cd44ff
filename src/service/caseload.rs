//! A worker's children as the supervisor sees them, and giving several of them to a colleague at once: all of them or none.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::child::both_names;
use domain::draft::give::read_give;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::receiver::receiver;
use crate::service::team;
use crate::service::team::Team;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::lists::week;
use crate::store::lists::week::Load;
use crate::store::people;
use crate::store::people::CoverRecord;
use crate::store::people::PersonRecord;
use crate::store::placements;
use crate::store::placements::PlacementRecord;

/// Children shown; more than any worker should have (our own choice).
const MOST_SHOWN: u64 = 300;
/// What counts as the work ahead, in days.
const AHEAD_DAYS: i32 = 7;

/// A worker with everything a supervisor weighs before giving children away or finding a stand-in.
#[derive(Debug, Clone)]
pub struct Caseload {
    /// The worker.
    pub worker: PersonRecord,
    /// The active children that the supervisor may see, most urgent first, each with the version of its record.
    pub children: Vec<(RoundRow, u32)>,
    /// Colleagues whose last day is not over, by name.
    pub colleagues: Vec<PersonRecord>,
    /// What each of them, and the worker, has.
    pub loads: BTreeMap<PersonId, Load>,
    /// Names of the areas that the supervisor looks after and in which each colleague has children.
    pub villages: BTreeMap<PersonId, Vec<String>>,
    /// Until when the colleagues are away for whom somebody stands in today.
    pub away: BTreeMap<PersonId, NaiveDate>,
    /// Who stands in now and later.
    pub covers: Vec<(CoverRecord, PersonRecord)>,
}

/// A worker of the team by sign-in name.
///
/// # Errors
/// [`Refusal::NotFound`] for anybody else.
pub(crate) async fn of_team(c: &impl Connection, ctx: &Context, sign_in_name: &str) -> Result<PersonRecord, Refusal> {
    worker_of(&team::load(c, ctx).await?, sign_in_name)
}

fn worker_of(team: &Team, sign_in_name: &str) -> Result<PersonRecord, Refusal> {
    team.workers.values().find(|p| p.role == Role::Worker && p.sign_in_name == sign_in_name).cloned().ok_or(Refusal::NotFound)
}

/// Opens it.
///
/// # Errors
/// [`Refusal::NotFound`] for nobody of the team; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, sign_in_name: &str) -> Result<Caseload, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    ctx.db
        .read(async |tx| {
            let team = team::load(tx, ctx).await?;
            let worker = worker_of(&team, sign_in_name)?;
            let rows = lists::of_worker_in_scope(tx, scope, worker.id, MOST_SHOWN).await?;
            let ids: Vec<_> = rows.iter().map(|row| row.child).collect();
            let versions: BTreeMap<_, u32> = children::by_ids(tx, &ids).await?.into_iter().map(|r| (r.id, r.version)).collect();
            let children = rows.into_iter().filter_map(|row| versions.get(&row.child).map(|version| (row, *version)));
            let children = Vec::from_iter(children);
            let mut colleagues = people::active_of_role(tx, Role::Worker).await?;
            colleagues.retain(|p| p.id != worker.id && p.works_on(ctx.today));
            colleagues.sort_by(|a, b| a.full_name.cmp(&b.full_name));
            let everybody: Vec<PersonId> = colleagues.iter().map(|p| p.id).chain([worker.id]).collect();
            let loads = week::load_until(tx, &everybody, add_days(ctx.today, AHEAD_DAYS)).await?;
            let (covers, others): (Vec<_>, Vec<_>) =
                people::covers_from(tx, ctx.today).await?.into_iter().partition(|c| c.worker == worker.id);
            let away = away_today(&others, ctx.today);
            let villages = colleagues.iter().map(|p| (p.id, team.villages(p.id))).collect();
            // Whoever stands in may have left the programme meanwhile: they are looked up, not sought among the colleagues.
            let standing: Vec<PersonId> = covers.iter().map(|c| c.covered_by).collect();
            let by = people::by_ids(tx, &standing).await?;
            let covers = covers.into_iter().filter_map(|cover| Some((cover, by.get(&cover.covered_by)?.clone()))).collect();
            Ok(Caseload { worker, children, colleagues, loads, villages, away, covers })
        })
        .await
}

/// Who is away on a day, until the last day of those that cover it.
fn away_today(covers: &[CoverRecord], today: NaiveDate) -> BTreeMap<PersonId, NaiveDate> {
    let mut away = BTreeMap::new();
    for cover in covers.iter().filter(|c| (c.from_on..=c.to_on).contains(&today)) {
        let until = away.entry(cover.worker).or_insert(cover.to_on);
        *until = cover.to_on.max(*until);
    }
    away
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Given {
    /// All were given; where to look.
    Done(String),
    /// One of them, by what it is called, was changed or moved by somebody else meanwhile: none was given.
    Changed(String),
}

/// Gives children to a colleague from today on; their villages stay.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`] for a child or worker outside the scope; [`Refusal::Forbidden`],
/// [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn give(ctx: &Context, sent: Sent, sign_in_name: &str, pairs: &[(String, String)]) -> Result<Given, Refusal> {
    ctx.needs(Action::Supervise)?;
    let mut changed = None;
    let written = ctx
        .db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let worker = of_team(tx, ctx, sign_in_name).await?;
            let form = read_give(pairs).map_err(Refusal::Invalid)?;
            let to = receiver(tx, &form.to, ctx.today).await?;
            let to = to.and_then(|p| if p.id == worker.id { Err(Fault::UnknownChoice) } else { Ok(p) });
            let to = to.map_err(|fault| Refusal::Invalid(Faults::one("colleague", fault)))?;
            for (code, version) in &form.children {
                let scope = Scope::Supervisor { person: ctx.actor.person };
                let child = children::by_code_in_scope(tx, scope, code).await?.ok_or(Refusal::NotFound)?;
                if child.version != *version || child.worker != worker.id || !place(tx, ctx, &child, &to, &form.reason).await? {
                    changed = Some(both_names(&child.name, child.known_as.as_deref()));
                    // An error takes everything back: nothing is half given.
                    return Err(Refusal::Conflict(String::new()));
                }
                audit::note(tx, ctx, "child.move", "child", &child.code, &["worker"]).await?;
            }
            let path = format!("/team/{}?given={}&to={}", worker.sign_in_name, form.children.len(), to.sign_in_name);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(path)
        })
        .await;
    match (written, changed) {
        (Err(Refusal::Conflict(_)), Some(child)) => Ok(Given::Changed(child)),
        (written, _) => written.map(Given::Done),
    }
}

/// Whether the child could be placed: nobody changed it in the same moment.
async fn place(tx: &crate::store::Tx, ctx: &Context, child: &ChildRecord, to: &PersonRecord, reason: &str) -> Result<bool, StoreError> {
    let placement = PlacementRecord {
        from_on: ctx.today,
        to_on: None,
        area: child.area,
        worker: to.id,
        by: ctx.actor.person,
        reason: reason.to_owned(),
    };
    match placements::place(tx, child.id, child.version, &placement).await {
        Ok(()) => Ok(true),
        Err(StoreError::Conflict { .. }) => Ok(false),
        Err(other) => Err(other),
    }
}

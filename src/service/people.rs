//! The people of a programme, managed by an administrator, who never sees a child. Passwords are known to nobody: a new or
//! forgotten one begins with a one-time code that is shown once.

pub mod access;
pub mod cover;
pub(crate) mod receiver;

use domain::draft::office::PersonForm;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::access::Code;
use crate::store::Connection;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::areas;
use crate::store::areas::AreaRecord;
use crate::store::people;
use crate::store::people::CoverRecord;
use crate::store::people::PersonRecord;
use crate::store::sessions;

/// People shown on one page.
pub const A_PAGE: u64 = 200;

/// A page of people.
#[derive(Debug, Clone)]
pub struct PeopleList {
    /// By sign-in name.
    pub people: Vec<PersonRecord>,
    /// Covers that touch today or come later.
    pub covers: Vec<CoverRecord>,
    /// Whether more follow after the last one.
    pub more: bool,
}

/// People by sign-in name, from after `after`.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn list(ctx: &Context, after: Option<&str>) -> Result<PeopleList, Refusal> {
    ctx.needs(Action::Administer)?;
    let mut people = people::list(ctx.db.direct(), after, A_PAGE + 1).await?;
    let more = people.len() > usize::try_from(A_PAGE).unwrap_or(usize::MAX);
    if more {
        people.pop();
    }
    Ok(PeopleList { people, more, covers: people::covers_from(ctx.db.direct(), ctx.today).await? })
}

/// What a form about a person offers to choose from.
#[derive(Debug, Clone, Default)]
pub struct Offered {
    /// Areas in use.
    pub areas: Vec<AreaRecord>,
    /// Active workers.
    pub workers: Vec<PersonRecord>,
}

/// What the form for a person offers.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn offered(ctx: &Context) -> Result<Offered, Refusal> {
    ctx.needs(Action::Administer)?;
    let areas = areas::list(ctx.db.direct()).await?.into_iter().filter(|a| a.active).collect();
    Ok(Offered { areas, workers: people::active_of_role(ctx.db.direct(), Role::Worker).await? })
}

/// Everything about one person.
#[derive(Debug, Clone)]
pub struct PersonFile {
    /// The person.
    pub person: PersonRecord,
    /// Areas looked after as a supervisor.
    pub areas: Vec<AreaId>,
    /// Workers looked after as a supervisor.
    pub workers: Vec<PersonId>,
    /// Who stands in for them now or later, with the name of each.
    pub covers: Vec<(CoverRecord, PersonRecord)>,
    /// Phones and browsers signed in.
    pub sessions: usize,
    /// What the form offers.
    pub offered: Offered,
}

/// Opens a person.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, sign_in_name: &str) -> Result<PersonFile, Refusal> {
    ctx.needs(Action::Administer)?;
    let c = ctx.db.direct();
    let person = people::by_sign_in_name(c, sign_in_name).await?.ok_or(Refusal::NotFound)?;
    let (areas, workers) = people::assigned(c, person.id).await?;
    let mut covers = Vec::new();
    for cover in people::covers_from(c, ctx.today).await?.into_iter().filter(|cover| cover.worker == person.id) {
        if let Some(colleague) = people::by_id(c, cover.covered_by).await? {
            covers.push((cover, colleague));
        }
    }
    let sessions = sessions::of_person(c, person.id).await?.iter().filter(|s| s.expires_at > ctx.now).count();
    Ok(PersonFile { person, areas, workers, covers, sessions, offered: offered(ctx).await? })
}

/// Somebody added, or the same form sent again.
#[derive(Debug, Clone)]
pub enum Added {
    /// With the code to hand over.
    Now(Box<PersonRecord>, Code),
    /// Added before; their page.
    Before(String),
}

/// Adds a person, who signs in first with the code in the answer.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn add(ctx: &Context, sent: Sent, form: &PersonForm) -> Result<Added, Refusal> {
    ctx.needs(Action::Administer)?;
    let code = Code::fresh(ctx.now)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(Added::Before(outcome));
            }
            let mut faults = Faults::new();
            if people::by_sign_in_name(tx, &form.sign_in_name).await?.is_some() {
                faults.add("sign_in_name", Fault::Taken);
            }
            let team = team_of(tx, form, &mut faults).await?;
            if !faults.is_empty() {
                return Err(Refusal::Invalid(faults));
            }
            let mut person = PersonRecord {
                id: PersonId(uuid::Uuid::now_v7().as_u128()),
                sign_in_name: String::new(),
                full_name: String::new(),
                role: form.role,
                language: None,
                phone: None,
                password_hash: None,
                must_change_password: true,
                one_time_code_hash: None,
                one_time_code_expires_at: None,
                active: true,
                started_on: form.started_on,
                ended_on: None,
                failed_sign_ins: 0,
                locked_until: None,
                created_at: ctx.now,
            };
            fill(&mut person, form);
            code.give_to(&mut person);
            people::insert(tx, &person).await?;
            people::assign(tx, person.id, &team.0, &team.1).await?;
            audit::note(tx, ctx, "person.add", "person", &key(&person), &[]).await?;
            once::remember(tx, ctx, sent, &path(&person)).await?;
            Ok(Added::Now(Box::new(person), code.clone()))
        })
        .await
}

/// Changes a person; answers their page.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault, also when nobody could manage people any more; [`Refusal::NotFound`],
/// [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn change(ctx: &Context, sent: Sent, sign_in_name: &str, form: &PersonForm) -> Result<String, Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let mut person = people::by_sign_in_name(tx, sign_in_name).await?.ok_or(Refusal::NotFound)?;
            let before = (person.clone(), people::assigned(tx, person.id).await?);
            let mut faults = Faults::new();
            if form.sign_in_name != person.sign_in_name && people::by_sign_in_name(tx, &form.sign_in_name).await?.is_some() {
                faults.add("sign_in_name", Fault::Taken);
            }
            if form.role != Role::Administrator && is_last_administrator(tx, &person).await? {
                faults.add("role", Fault::LastAdministrator);
            }
            let team = team_of(tx, form, &mut faults).await?;
            if !faults.is_empty() {
                return Err(Refusal::Invalid(faults));
            }
            fill(&mut person, form);
            people::update(tx, &person).await?;
            people::assign(tx, person.id, &team.0, &team.1).await?;
            audit::note(tx, ctx, "person.change", "person", &key(&person), &changed(&before, &person, &team)).await?;
            once::remember(tx, ctx, sent, &path(&person)).await?;
            Ok(path(&person))
        })
        .await
}

/// Their page.
#[must_use]
pub fn path(person: &PersonRecord) -> String {
    format!("/people/{}", person.sign_in_name)
}

/// Names a person in the audit, whatever they are called.
pub(crate) fn key(person: &PersonRecord) -> String {
    uuid::Uuid::from_u128(person.id.0).to_string()
}

/// Whether nobody else who may sign in manages people.
pub(crate) async fn is_last_administrator(c: &impl Connection, person: &PersonRecord) -> Result<bool, StoreError> {
    if person.role != Role::Administrator || !person.active {
        return Ok(false);
    }
    Ok(people::active_of_role(c, Role::Administrator).await?.iter().all(|other| other.id == person.id))
}

type Team = (Vec<AreaId>, Vec<PersonId>);

/// The areas and workers ticked; nothing for those who supervise nobody.
async fn team_of(tx: &Tx, form: &PersonForm, faults: &mut Faults) -> Result<Team, StoreError> {
    if form.role != Role::Supervisor {
        return Ok(Team::default());
    }
    let areas = areas::list(tx).await?;
    let mut team = Team::default();
    for code in &form.areas {
        match areas.iter().find(|a| a.code == *code) {
            Some(area) => team.0.push(area.id),
            None => faults.add("areas", Fault::UnknownChoice),
        }
    }
    for name in &form.workers {
        match people::by_sign_in_name(tx, name).await?.filter(|p| p.role == Role::Worker) {
            Some(worker) => team.1.push(worker.id),
            None => faults.add("workers", Fault::UnknownChoice),
        }
    }
    team.0.sort_unstable();
    team.0.dedup();
    team.1.sort_unstable();
    team.1.dedup();
    Ok(team)
}

fn fill(person: &mut PersonRecord, form: &PersonForm) {
    person.full_name.clone_from(&form.full_name);
    person.sign_in_name.clone_from(&form.sign_in_name);
    person.role = form.role;
    person.phone.clone_from(&form.phone);
    person.language.clone_from(&form.language);
    person.started_on = form.started_on;
    person.ended_on = form.ended_on;
}

/// Names of what changed, for the audit.
fn changed(before: &(PersonRecord, Team), person: &PersonRecord, team: &Team) -> Vec<&'static str> {
    let (old, (areas, workers)) = before;
    let sorted = |ids: &[PersonId]| ids.iter().copied().collect::<std::collections::BTreeSet<_>>();
    let sorted_areas = |ids: &[AreaId]| ids.iter().copied().collect::<std::collections::BTreeSet<_>>();
    [
        (old.full_name != person.full_name, "full_name"),
        (old.sign_in_name != person.sign_in_name, "sign_in_name"),
        (old.role != person.role, "role"),
        (old.phone != person.phone, "phone"),
        (old.language != person.language, "language"),
        (old.started_on != person.started_on, "started_on"),
        (old.ended_on != person.ended_on, "ended_on"),
        (sorted_areas(areas) != sorted_areas(&team.0), "areas"),
        (sorted(workers) != sorted(&team.1), "workers"),
    ]
    .into_iter()
    .filter_map(|(differs, name)| differs.then_some(name))
    .collect()
}

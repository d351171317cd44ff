//! Registering an infant: who may be the same child is shown first, and the worker decides.

use domain::calendar::add_days;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child_code::ChildCode;
use domain::draft::child::NewChild;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::household;
use crate::service::household::Sibling;
use crate::service::name_key::folded;
use crate::service::name_key::skeleton;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::receiver::receiver;
use crate::service::reassess;
use crate::store::areas;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::duplicates;

/// Similar records looked at before the nearest are shown.
const MOST_CANDIDATES: u64 = 500;
/// Similar records shown.
const MOST_SHOWN: usize = 3;
/// Names at least this alike count as similar (Jaro–Winkler, 0–1; our own choice).
const ALIKE: f64 = 0.85;

/// A child already in the programme that may be the same. No more is told than is needed to tell them apart, since it may
/// be outside the worker's own list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SimilarChild {
    /// Its key.
    pub child: ChildId,
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Its birth date.
    pub born: chrono::NaiveDate,
    /// Its caregiver.
    pub caregiver: String,
}

/// Where a child is placed.
#[derive(Debug, Clone, Copy)]
struct Place {
    area: AreaId,
    worker: PersonId,
}

/// Children that may be the one about to be registered, nearest first; one of the home it is born into is a sibling unless the names are
/// alike.
///
/// # Errors
/// [`Refusal::Invalid`] for an area that does not exist, [`Refusal::Store`].
pub async fn similar(ctx: &Context, new: &NewChild, sibling: Option<&Sibling>) -> Result<Vec<SimilarChild>, Refusal> {
    ctx.needs(Action::Register)?;
    let area = areas::by_code(ctx.db.direct(), &new.area).await?.ok_or_else(unknown_area)?;
    let born = (add_days(new.born, -31), add_days(new.born, 31));
    let found = duplicates::possible_duplicates(ctx.db.direct(), area.id, born, &skeleton(&new.name), MOST_CANDIDATES).await?;
    let (name, caregiver) = (folded(&new.name), folded(&new.caregiver));
    let mut near: Vec<(f64, SimilarChild)> = found
        .into_iter()
        .filter_map(|c| {
            let names = strsim::jaro_winkler(&name, &folded(&c.name));
            let carers = strsim::jaro_winkler(&caregiver, &folded(&c.caregiver_name));
            let same_day = c.born == new.born && c.sex == new.sex;
            let same_phone = new.phone.is_some() && c.phone == new.phone;
            // A twin shares day and caregiver but not the name: it is shown too, and told apart by the worker.
            let similar = names >= ALIKE || (same_day && carers >= ALIKE) || (same_phone && same_day);
            let child = SimilarChild { child: c.child, code: c.code, name: c.name, born: c.born, caregiver: c.caregiver_name };
            let known = sibling.is_some_and(|sibling| household::is_sibling(new, &child, sibling, ALIKE));
            (similar && !known).then_some((names + carers + if same_day { 1.0 } else { 0.0 }, child))
        })
        .collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0));
    Ok(near.into_iter().take(MOST_SHOWN).map(|(_, child)| child).collect())
}

fn unknown_area() -> Refusal {
    Refusal::Invalid(Faults::one("area", Fault::UnknownChoice))
}

/// Registers the child and answers the code. `looks_like` is the nearest similar record when the worker has not said that
/// it is another child.
///
/// # Errors
/// [`Refusal::Invalid`] for an area or worker that does not exist; [`Refusal::Conflict`] and [`Refusal::Store`].
pub async fn register(
    ctx: &Context,
    sent: Sent,
    new: &NewChild,
    worker: Option<&str>,
    looks_like: Option<ChildId>,
    sibling: Option<&Sibling>,
) -> Result<ChildCode, Refusal> {
    ctx.needs(Action::Register)?;
    let code = fresh_code()?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                let code = outcome.rsplit('/').next().unwrap_or_default();
                return ChildCode::parse(code).map_err(|_| Refusal::NotFound);
            }
            let area = areas::by_code(tx, &new.area).await?.filter(|a| a.active).ok_or_else(unknown_area)?;
            let place = Place { area: area.id, worker: worker_of(ctx, tx, worker).await? };
            let record = record_of(ctx, new, &code, place, looks_like);
            children::insert(tx, &record).await?;
            if let Some(sibling) = sibling {
                household::born_into(tx, ctx, &record, sibling).await?;
            }
            reassess::reassess(tx, &ctx.protocols, record.id, reassess::Moment::of(ctx)).await?;
            audit::note(tx, ctx, "register", "child", code.as_str(), &[]).await?;
            once::remember(tx, ctx, sent, &format!("/children/{}", code.as_str())).await?;
            Ok(code.clone())
        })
        .await
}

/// A worker registers for herself; a supervisor names the worker.
async fn worker_of(ctx: &Context, tx: &crate::store::Tx, named: Option<&str>) -> Result<PersonId, Refusal> {
    if ctx.actor.role == Role::Worker {
        return Ok(ctx.actor.person);
    }
    let name = named.filter(|n| !n.is_empty()).ok_or_else(|| Refusal::Invalid(Faults::one("worker", Fault::Missing)))?;
    match receiver(tx, name, ctx.today).await? {
        Ok(person) => Ok(person.id),
        Err(fault) => Err(Refusal::Invalid(Faults::one("worker", fault))),
    }
}

fn record_of(ctx: &Context, new: &NewChild, code: &ChildCode, place: Place, looks_like: Option<ChildId>) -> ChildRecord {
    ChildRecord {
        id: ChildId(uuid::Uuid::now_v7().as_u128()),
        code: code.as_str().to_owned(),
        name: new.name.clone(),
        known_as: new.known_as.clone(),
        name_key: skeleton(&new.name),
        facts: Child {
            sex: new.sex,
            born: new.born,
            birth_day_known: new.birth_day_known,
            gestation_days: new.gestation_days,
            birth_weight: new.birth_weight,
            registered_on: ctx.today,
            ever_breastfed: new.ever_breastfed,
            severe_eczema: new.severe_eczema,
            known_food_allergy: new.food_allergy,
            status: ChildStatus::Active,
            looks_like_another: looks_like.is_some() && !new.other_child,
        },
        gestation_source: new.gestation_source,
        caregiver_name: new.caregiver.clone(),
        caregiver_relation: new.relation.clone(),
        phone: new.phone.clone(),
        directions: new.directions.clone(),
        area: place.area,
        worker: place.worker,
        registered_by: ctx.actor.person,
        recorded_at: ctx.now,
        consent_on: ctx.today,
        consent_by: new.consent_by.clone(),
        early_breastfeeding: new.early_breastfeeding,
        first_two_days_milk_only: new.first_days_milk_only,
        returns_to_work_on: new.returns_to_work_on,
        looks_like,
        different_child_decided: new.other_child,
        left_on: None,
        left_note: None,
        version: 1,
    }
}

fn fresh_code() -> Result<ChildCode, Refusal> {
    let mut bytes = [0; 8];
    getrandom::fill(&mut bytes).map_err(|e| Refusal::Broken(e.to_string()))?;
    Ok(ChildCode::from_random(u64::from_be_bytes(bytes)))
}

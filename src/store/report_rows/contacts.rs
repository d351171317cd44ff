//! The contacts that monthly reports are counted from, a page of children at a time: those of the month with their answers,
//! those before with weights and dates alone. It judges nothing.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::child::Sex;
use domain::food::FoodGroup;
use domain::food::Response;
use domain::food::Texture;
use domain::growth::Indicator;
use domain::growth::ZHundredths;
use domain::growth::outside_limits;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::report::rows::ReportAnswers;
use domain::report::rows::ReportVisit;
use domain::report::rows::ReportZ;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::FoodOffer;
use domain::visit::Measurement;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use uuid::Uuid;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::entity::visit;
use crate::store::entity::visit_food;
use crate::store::error::StoreError;
use crate::store::rows::visit::read_food;

/// A contact of the month. What needs more than its own row stands empty: birth date, slot, pair of weights, solids started,
/// texture of the stage.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MonthContact {
    /// As the reports count it.
    pub visit: ReportVisit,
    /// Code of the feeding stage when it was judged.
    pub stage: String,
}

/// A contact as far as others are judged by it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Passed {
    /// Key.
    pub id: VisitId,
    /// Day.
    pub on: NaiveDate,
    /// By phone.
    pub phone: bool,
    /// Weight, if it is not in doubt and there is no swelling of both feet.
    pub weight: Option<Weight>,
    /// The start of solids that was stated.
    pub solids_started_on: Option<NaiveDate>,
    /// Any solid food the day before.
    pub solids_yesterday: Option<bool>,
    /// Solid feeds the day before.
    pub meals: Option<i32>,
}

/// Children with keys from after `after` up to `upto`.
pub type Keys = (Option<ChildId>, ChildId);

/// The contacts of the month of these children, by child, day and order of entry, without those taken back.
///
/// # Errors
/// [`StoreError`].
pub async fn of_month(
    c: &impl ConnectionTrait,
    keys: Keys,
    (first, last): (NaiveDate, NaiveDate),
) -> Result<BTreeMap<ChildId, Vec<MonthContact>>, StoreError> {
    let mut of: BTreeMap<ChildId, Vec<MonthContact>> = BTreeMap::new();
    for row in ordered(keys, (first, last)).all(c).await? {
        let contact = read(row)?;
        of.entry(contact.visit.child).or_default().push(contact);
    }
    Ok(of)
}

/// The contacts from `first` to `last` of these children with weights and dates alone.
///
/// # Errors
/// [`StoreError`].
pub async fn passed(
    c: &impl ConnectionTrait,
    keys: Keys,
    (first, last): (NaiveDate, NaiveDate),
) -> Result<BTreeMap<ChildId, Vec<Passed>>, StoreError> {
    use visit::Column as V;
    let rows = ordered(keys, (first, last))
        .select_only()
        .columns([
            V::Id,
            V::ChildId,
            V::VisitedOn,
            V::Contact,
            V::WeightG,
            V::Oedema,
            V::Suspect,
            V::SolidsStartedOn,
            V::SolidsYesterday,
            V::Meals,
        ])
        .into_model::<PassedRow>()
        .all(c)
        .await?;
    let mut of: BTreeMap<ChildId, Vec<Passed>> = BTreeMap::new();
    for row in rows {
        let r = Reading { table: "visits", id: row.id };
        let suspect: BTreeSet<Measurement> = r.codes(&row.suspect, Measurement::from_code)?;
        let sound = !suspect.contains(&Measurement::Weight) && row.oedema != Some(true);
        of.entry(ChildId(row.child_id.as_u128())).or_default().push(Passed {
            id: VisitId(row.id.as_u128()),
            on: row.visited_on,
            phone: row.contact == Contact::Phone.code(),
            weight: r.maybe_measure("weight_g", row.weight_g.filter(|_| sound), Weight::from_grams)?,
            solids_started_on: row.solids_started_on,
            solids_yesterday: row.solids_yesterday,
            meals: row.meals,
        });
    }
    Ok(of)
}

/// Which of these visits had a food offered that is not one of `drinks`.
///
/// # Errors
/// [`StoreError`].
pub async fn with_solid_offers(c: &impl ConnectionTrait, visits: &[VisitId], drinks: &[String]) -> Result<BTreeSet<VisitId>, StoreError> {
    use visit_food::Column as F;
    let mut found = BTreeSet::new();
    for some in visits.chunks(500) {
        let ids: Vec<Uuid> = visit_food::Entity::find()
            .select_only()
            .column(F::VisitId)
            .distinct()
            .filter(F::VisitId.is_in(some.iter().map(|id| uuid(id.0))))
            .filter(F::Offers.gt(0))
            .filter(F::FoodCode.is_not_in(drinks.iter().map(String::as_str)))
            .into_tuple()
            .all(c)
            .await?;
        found.extend(ids.into_iter().map(|id| VisitId(id.as_u128())));
    }
    Ok(found)
}

/// The foods of these visits that a reaction followed, with the visit of each.
///
/// # Errors
/// [`StoreError`].
pub async fn reactions(c: &impl ConnectionTrait, visits: &[VisitId]) -> Result<Vec<(VisitId, FoodOffer)>, StoreError> {
    use visit_food::Column as F;
    let mut found = Vec::new();
    for some in visits.chunks(500) {
        let rows = visit_food::Entity::find()
            .filter(F::VisitId.is_in(some.iter().map(|id| uuid(id.0))))
            .filter(F::Response.eq(Response::Reaction.code()))
            .order_by_asc(F::VisitId)
            .order_by_asc(F::Seq)
            .all(c)
            .await?;
        for row in rows {
            found.push((VisitId(row.visit_id.as_u128()), read_food(row)?));
        }
    }
    Ok(found)
}

fn ordered((after, upto): Keys, (first, last): (NaiveDate, NaiveDate)) -> sea_orm::Select<visit::Entity> {
    use visit::Column as V;
    let mut query = visit::Entity::find()
        .filter(V::ChildId.lte(uuid(upto.0)))
        .filter(V::VisitedOn.gte(first))
        .filter(V::VisitedOn.lte(last))
        .filter(V::VoidedAt.is_null())
        .order_by_asc(V::ChildId)
        .order_by_asc(V::VisitedOn)
        .order_by_asc(V::EntrySeq);
    if let Some(after) = after {
        query = query.filter(V::ChildId.gt(uuid(after.0)));
    }
    query
}

#[derive(FromQueryResult)]
struct PassedRow {
    id: Uuid,
    child_id: Uuid,
    visited_on: NaiveDate,
    contact: String,
    weight_g: Option<i32>,
    oedema: Option<bool>,
    suspect: String,
    solids_started_on: Option<NaiveDate>,
    solids_yesterday: Option<bool>,
    meals: Option<i32>,
}

fn read(row: visit::Model) -> Result<MonthContact, StoreError> {
    let r = Reading { table: "visits", id: row.id };
    let suspect = r.codes(&row.suspect, Measurement::from_code)?;
    let confirmed = r.codes(&row.confirmed, Measurement::from_code)?;
    let z = |indicator, hundredths: Option<i32>, rests_on: &[Measurement]| {
        hundredths.map(|hundredths| ReportZ {
            hundredths,
            flagged: outside_limits(indicator, ZHundredths::new(hundredths)),
            confirmed: rests_on.iter().all(|measurement| confirmed.contains(measurement)),
        })
    };
    let weight = r.maybe_measure("weight_g", row.weight_g, Weight::from_grams)?;
    let length = r.maybe_measure("length_mm", row.length_mm, Length::from_mm)?;
    let texture = |value| r.maybe_measure("texture_best", value, |level: u8| Texture::new(level).ok_or(()));
    let visit = ReportVisit {
        id: VisitId(row.id.as_u128()),
        entry: row.entry_seq,
        child: ChildId(row.child_id.as_u128()),
        sex: r.code(&row.sex, Sex::from_code)?,
        born: row.visited_on,
        area: AreaId(row.area_id.as_u128()),
        worker: PersonId(row.worker_id.as_u128()),
        on: row.visited_on,
        contact: r.code(&row.contact, Contact::from_code)?,
        weight: weight.filter(|_| !suspect.contains(&Measurement::Weight)),
        length: length.filter(|_| !suspect.contains(&Measurement::Length)),
        muac: r.maybe_measure("muac_mm", row.muac_mm, Muac::from_mm)?,
        oedema: row.oedema,
        waz: z(Indicator::Waz, row.waz_h, &[Measurement::Weight]),
        wlz: z(Indicator::Wlz, row.wlz_h, &[Measurement::Weight, Measurement::Length]),
        laz: z(Indicator::Laz, row.laz_h, &[Measurement::Length]),
        age_corrected: false,
        slow_or_lost: None,
        slot: None,
        fills_slot: false,
        answers: ReportAnswers {
            breastfed: row.breastfed,
            breast_only: row.breast_only,
            formula_times: r.maybe_number("formula_times", row.formula_times)?,
            animal_milk_times: r.maybe_number("animal_milk_times", row.animal_milk_times)?,
            drink_yogurt_times: r.maybe_number("drink_yogurt_times", row.drink_yogurt_times)?,
            spoon_yogurt_times: r.maybe_number("spoon_yogurt_times", row.spoon_yogurt_times)?,
            solids_yesterday: row.solids_yesterday,
            solids_started: None,
            meals: r.maybe_number("meals", row.meals)?,
            groups: r.maybe_codes(row.food_groups.as_deref(), FoodGroup::from_code)?,
            sweet_drink: row.sweet_drink,
            unhealthy_food: row.unhealthy_food,
            bottle: row.bottle,
            texture_best: texture(row.texture_best)?,
            texture_expected: None,
        },
    };
    Ok(MonthContact { visit, stage: row.stage })
}

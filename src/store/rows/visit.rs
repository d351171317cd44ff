//! Rows of visits, with their foods and outcomes.

use domain::child::Sex;
use domain::counsel::Talk;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::food::Texture;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::rule::RuleId;
use domain::units::HeadCircumference;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::DangerSign;
use domain::visit::FoodOffer;
use domain::visit::LowValue;
use domain::visit::Measurement;
use domain::visit::Outcome;
use domain::visit::Position;
use domain::visit::ReadinessSign;
use domain::visit::SwallowTrouble;
use domain::visit::ToldOutcome;
use domain::visit::Visit;

use crate::store::codes::Reading;
use crate::store::codes::join;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::visit;
use crate::store::entity::visit_food;
use crate::store::entity::visit_outcome;
use crate::store::error::StoreError;
use crate::store::visits::Indices;
use crate::store::visits::VisitRecord;

type Row = Reading<uuid::Uuid>;

/// A visit from its row, still without its talk; `foods` and `outcomes` in their order.
pub fn read(row: visit::Model, foods: Vec<visit_food::Model>, outcomes: Vec<visit_outcome::Model>) -> Result<VisitRecord, StoreError> {
    let r = Reading { table: "visits", id: row.id };
    let told: Vec<(ToldOutcome, Option<String>)> = outcomes.into_iter().map(read_outcome).collect::<Result<_, _>>()?;
    Ok(VisitRecord {
        child: ChildId(row.child_id.as_u128()),
        area: AreaId(row.area_id.as_u128()),
        worker: PersonId(row.worker_id.as_u128()),
        recorded_by: PersonId(row.recorded_by.as_u128()),
        sex: r.code(&row.sex, Sex::from_code)?,
        age_days: r.number("age_days", row.age_days)?,
        recorded_at: row.recorded_at,
        entry_seq: row.entry_seq,
        version: r.number("version", row.version)?,
        voided_at: row.voided_at,
        outcome_notes: told.iter().map(|(_, note)| note.clone()).collect(),
        indices: Indices { waz: row.waz_h, laz: row.laz_h, wlz: row.wlz_h, bmiz: row.bmiz_h, mauz: row.mauz_h, hcz: row.hcz_h },
        suspect: r.codes(&row.suspect, Measurement::from_code)?,
        visit: Visit {
            id: VisitId(row.id.as_u128()),
            on: row.visited_on,
            contact: r.code(&row.contact, Contact::from_code)?,
            weight: r.maybe_measure("weight_g", row.weight_g, Weight::from_grams)?,
            length: r.maybe_measure("length_mm", row.length_mm, Length::from_mm)?,
            position: r.maybe_code(row.position.as_deref(), Position::from_code)?,
            muac: r.maybe_measure("muac_mm", row.muac_mm, Muac::from_mm)?,
            head: r.maybe_measure("head_mm", row.head_mm, HeadCircumference::from_mm)?,
            oedema: row.oedema,
            confirmed: r.codes(&row.confirmed, Measurement::from_code)?,
            danger_signs: r.maybe_codes(row.danger_signs.as_deref(), DangerSign::from_code)?,
            readiness_signs: r.maybe_codes(row.readiness_signs.as_deref(), ReadinessSign::from_code)?,
            ill: row.ill,
            breastfed: row.breastfed,
            breast_only: row.breast_only,
            breastfeeding_trouble: row.breastfeeding_trouble,
            formula_times: r.maybe_number("formula_times", row.formula_times)?,
            animal_milk_times: r.maybe_number("animal_milk_times", row.animal_milk_times)?,
            drink_yogurt_times: r.maybe_number("drink_yogurt_times", row.drink_yogurt_times)?,
            spoon_yogurt_times: r.maybe_number("spoon_yogurt_times", row.spoon_yogurt_times)?,
            other_drink: row.other_drink,
            solids_started_on: row.solids_started_on,
            solids_yesterday: row.solids_yesterday,
            meals: r.maybe_number("meals", row.meals)?,
            texture_usual: texture(r, "texture_usual", row.texture_usual)?,
            texture_best: texture(r, "texture_best", row.texture_best)?,
            recipes: row.recipes.iter().flat_map(|codes| codes.split(' ')).map(str::to_owned).collect(),
            groups: r.maybe_codes(row.food_groups.as_deref(), FoodGroup::from_code)?,
            iron_source: row.iron_source,
            sweet_drink: row.sweet_drink,
            unhealthy_food: row.unhealthy_food,
            bottle: row.bottle,
            low_value: r.maybe_codes(row.low_value.as_deref(), LowValue::from_code)?,
            swallow_trouble: r.maybe_code(row.swallow_trouble.as_deref(), SwallowTrouble::from_code)?,
            appetite_poor_days: r.maybe_number("appetite_poor_days", row.appetite_poor_days)?,
            plans: r.maybe_codes(row.plans.as_deref(), RuleId::from_code)?,
            referrals: r.codes(&row.referrals, RuleId::from_code)?,
            outcomes: told.into_iter().map(|(told, _)| told).collect(),
            foods: foods.into_iter().map(read_food).collect::<Result<_, _>>()?,
        },
        talk: Talk::default(),
        note: row.note,
        protocol_id: row.protocol_id,
        protocol_version: row.protocol_version,
        stage: row.stage,
    })
}

fn texture(r: Row, what: &str, value: Option<i32>) -> Result<Option<Texture>, StoreError> {
    r.maybe_measure(what, value, |level: u8| Texture::new(level).ok_or(()))
}

/// A food of a visit.
///
/// # Errors
/// [`StoreError::Corrupt`] if a code is not known.
pub fn read_food(row: visit_food::Model) -> Result<FoodOffer, StoreError> {
    let r = Reading { table: "visit_foods", id: row.visit_id };
    Ok(FoodOffer {
        offers: r.number("offers", row.offers)?,
        response: r.maybe_code(row.response.as_deref(), Response::from_code)?,
        unsafe_form: row.unsafe_form,
        signs: r.maybe_codes(row.signs.as_deref(), ReactionSign::from_code)?,
        minutes_after: r.maybe_number("minutes_after", row.minutes_after)?,
        hold_lifted: row.hold_lifted,
        code: FoodCode(row.food_code),
    })
}

fn read_outcome(row: visit_outcome::Model) -> Result<(ToldOutcome, Option<String>), StoreError> {
    let r = Reading { table: "visit_outcomes", id: row.visit_id };
    Ok((ToldOutcome { rule: r.code(&row.rule, RuleId::from_code)?, outcome: r.code(&row.outcome, Outcome::from_code)? }, row.note))
}

/// The row of a visit. Its `entry_seq` is given by the database at the first insert.
pub fn write(record: &VisitRecord) -> visit::Model {
    let visit = &record.visit;
    visit::Model {
        id: uuid(visit.id.0),
        entry_seq: record.entry_seq,
        child_id: uuid(record.child.0),
        area_id: uuid(record.area.0),
        worker_id: uuid(record.worker.0),
        recorded_by: uuid(record.recorded_by.0),
        sex: record.sex.code().to_owned(),
        age_days: i32::from(record.age_days),
        visited_on: visit.on,
        recorded_at: whole_second(record.recorded_at),
        version: i32::try_from(record.version).unwrap_or(i32::MAX),
        voided_at: record.voided_at.map(whole_second),
        contact: visit.contact.code().to_owned(),
        weight_g: visit.weight.map(|w| w.grams().cast_signed()),
        length_mm: visit.length.map(|l| i32::from(l.mm())),
        position: visit.position.map(|p| p.code().to_owned()),
        muac_mm: visit.muac.map(|m| i32::from(m.mm())),
        head_mm: visit.head.map(|h| i32::from(h.mm())),
        oedema: visit.oedema,
        confirmed: join(visit.confirmed.iter().map(|m| m.code())),
        danger_signs: visit.danger_signs.as_ref().map(|s| join(s.iter().map(|s| s.code()))),
        readiness_signs: visit.readiness_signs.as_ref().map(|s| join(s.iter().map(|s| s.code()))),
        ill: visit.ill,
        breastfed: visit.breastfed,
        breast_only: visit.breast_only,
        breastfeeding_trouble: visit.breastfeeding_trouble,
        formula_times: visit.formula_times.map(i32::from),
        animal_milk_times: visit.animal_milk_times.map(i32::from),
        drink_yogurt_times: visit.drink_yogurt_times.map(i32::from),
        spoon_yogurt_times: visit.spoon_yogurt_times.map(i32::from),
        other_drink: visit.other_drink,
        solids_started_on: visit.solids_started_on,
        solids_yesterday: visit.solids_yesterday,
        meals: visit.meals.map(i32::from),
        texture_usual: visit.texture_usual.map(|t| i32::from(t.level())),
        texture_best: visit.texture_best.map(|t| i32::from(t.level())),
        recipes: (!visit.recipes.is_empty()).then(|| join(visit.recipes.iter().map(String::as_str))),
        food_groups: visit.groups.as_ref().map(|g| join(g.iter().map(|g| g.code()))),
        iron_source: visit.iron_source,
        sweet_drink: visit.sweet_drink,
        unhealthy_food: visit.unhealthy_food,
        bottle: visit.bottle,
        low_value: visit.low_value.as_ref().map(|l| join(l.iter().map(|l| l.code()))),
        swallow_trouble: visit.swallow_trouble.map(|s| s.code().to_owned()),
        appetite_poor_days: visit.appetite_poor_days.map(i32::from),
        plans: visit.plans.as_ref().map(|p| join(p.iter().map(|p| p.code()))),
        referrals: join(visit.referrals.iter().map(|r| r.code())),
        note: record.note.clone(),
        waz_h: record.indices.waz,
        laz_h: record.indices.laz,
        wlz_h: record.indices.wlz,
        bmiz_h: record.indices.bmiz,
        mauz_h: record.indices.mauz,
        hcz_h: record.indices.hcz,
        suspect: join(record.suspect.iter().map(|m| m.code())),
        protocol_id: record.protocol_id.clone(),
        protocol_version: record.protocol_version.clone(),
        stage: record.stage.clone(),
    }
}

/// The rows of its foods.
pub fn write_foods(record: &VisitRecord) -> Vec<visit_food::Model> {
    let row = |(seq, food): (i32, &FoodOffer)| visit_food::Model {
        visit_id: uuid(record.visit.id.0),
        seq,
        food_code: food.code.as_str().to_owned(),
        offers: i32::from(food.offers),
        response: food.response.map(|r| r.code().to_owned()),
        unsafe_form: food.unsafe_form,
        signs: food.signs.as_ref().map(|s| join(s.iter().map(|s| s.code()))),
        minutes_after: food.minutes_after.map(i32::from),
        hold_lifted: food.hold_lifted,
    };
    (1..).zip(&record.visit.foods).map(row).collect()
}

/// The rows of its outcomes, with their notes.
pub fn write_outcomes(record: &VisitRecord) -> Vec<visit_outcome::Model> {
    let row = |(seq, told): (i32, &ToldOutcome)| visit_outcome::Model {
        visit_id: uuid(record.visit.id.0),
        seq,
        rule: told.rule.code().to_owned(),
        outcome: told.outcome.code().to_owned(),
        note: usize::try_from(seq - 1).ok().and_then(|at| record.outcome_notes.get(at)).cloned().flatten(),
    };
    (1..).zip(&record.visit.outcomes).map(row).collect()
}

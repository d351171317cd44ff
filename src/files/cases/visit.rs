//! Reads one visit of a case.

use std::collections::BTreeSet;

use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::food::Texture;
use domain::ids::VisitId;
use domain::rule::RuleId;
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

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::expect;
use super::expect::Expected;

/// Rules that a clinic's plan can cover.
const PLANS: [RuleId; 4] = [RuleId::SolidsEarly, RuleId::MilkAnimalEarly, RuleId::BirthLow, RuleId::BreastfeedingStopped];

/// Reads a `[[case.visit]]`; unknown keys are reported by the caller.
pub fn visit(t: &mut Table<'_, '_>, f: &mut Faults<'_>, id: VisitId) -> Option<(Visit, Expected)> {
    t.need(f, "date", say("the day of the visit, e.g. 2025-10-10"));
    let on = t.date(f, "date");
    let contact = t.word(f, "contact", Contact::from_code).unwrap_or(Contact::Home);
    let mut visit = Visit::empty(id, on.unwrap_or_default(), contact);
    measurements(t, f, &mut visit);
    visit.confirmed = set(t, f, "confirmed", Measurement::from_code).unwrap_or_default();
    visit.danger_signs = set(t, f, "danger_signs", DangerSign::from_code);
    visit.readiness_signs = set(t, f, "readiness_signs", ReadinessSign::from_code);
    visit.oedema = t.flag(f, "oedema");
    visit.ill = t.flag(f, "ill");
    visit.breastfed = t.flag(f, "breastfed");
    visit.breast_only = t.flag(f, "breast_only");
    visit.breastfeeding_trouble = t.flag(f, "breastfeeding_trouble");
    visit.formula_times = times(t, f, "formula_times");
    visit.animal_milk_times = times(t, f, "animal_milk_times");
    visit.drink_yogurt_times = times(t, f, "drink_yogurt_times");
    visit.spoon_yogurt_times = times(t, f, "spoon_yogurt_times");
    visit.other_drink = t.flag(f, "other_drink");
    visit.solids_started_on = t.date(f, "solids_started_on");
    if let (Some(start), Some(on)) = (visit.solids_started_on, on)
        && start > on
    {
        t.fault(f, "solids_started_on", Saying::plain(format!("lies after the visit, {on}")));
    }
    visit.solids_yesterday = t.flag(f, "solids_yesterday");
    visit.meals = times(t, f, "meals");
    visit.texture_usual = texture(t, f, "texture_usual");
    visit.texture_best = texture(t, f, "texture_best");
    visit.groups = set(t, f, "groups", FoodGroup::from_code);
    visit.iron_source = t.flag(f, "iron_source");
    visit.sweet_drink = t.flag(f, "sweet_drink");
    visit.unhealthy_food = t.flag(f, "unhealthy_food");
    visit.bottle = t.flag(f, "bottle");
    visit.low_value = set(t, f, "low_value", LowValue::from_code);
    visit.swallow_trouble = t.word(f, "swallow_trouble", SwallowTrouble::from_code);
    visit.appetite_poor_days = count(t, f, "appetite_poor_days");
    visit.plans = set(t, f, "plans", RuleId::from_code);
    if visit.plans.as_ref().is_some_and(|plans| plans.iter().any(|rule| !PLANS.contains(rule))) {
        let known = PLANS.map(RuleId::code).join(", ");
        t.fault(f, "plans", Saying::plain(format!("a clinic's plan can cover only {known}")));
    }
    visit.referrals = set(t, f, "referrals", RuleId::from_code).unwrap_or_default();
    outcomes(t, f, &mut visit);
    foods(t, f, &mut visit);
    let path = t.path().to_owned();
    let expected = t.table(f, "expect").map_or_else(Expected::default, |mut table| {
        table.rename(format!("{path}, expect"));
        expect::at_visit(table, f)
    });
    on.map(|_| (visit, expected))
}

fn measurements(t: &mut Table<'_, '_>, f: &mut Faults<'_>, visit: &mut Visit) {
    let mut measured =
        |key: &str, least: u32, most: u32| t.whole(f, key, i64::from(least)..=i64::from(most)).and_then(|value| u32::try_from(value).ok());
    visit.weight = measured("weight_g", Weight::LEAST, Weight::MOST).and_then(|grams| Weight::from_grams(grams).ok());
    let short = |value: Option<u32>| value.and_then(|value| u16::try_from(value).ok());
    visit.length = short(measured("length_mm", u32::from(Length::LEAST), u32::from(Length::MOST))).and_then(|mm| Length::from_mm(mm).ok());
    visit.muac = short(measured("muac_mm", u32::from(Muac::LEAST), u32::from(Muac::MOST))).and_then(|mm| Muac::from_mm(mm).ok());
    visit.position = t.flag(f, "lying").map(|lying| if lying { Position::Lying } else { Position::Standing });
}

fn times(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Option<u8> {
    t.whole(f, key, 0..=255).and_then(|n| u8::try_from(n).ok())
}

fn count(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Option<u16> {
    t.whole(f, key, 0..=65_535).and_then(|n| u16::try_from(n).ok())
}

fn texture(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Option<Texture> {
    t.whole(f, key, 0..=4).and_then(|level| Texture::new(u8::try_from(level).ok()?))
}

fn set<T: Ord>(
    t: &mut Table<'_, '_>,
    f: &mut Faults<'_>,
    key: &str,
    read: impl Fn(&str) -> Result<T, domain::UnknownCode>,
) -> Option<BTreeSet<T>> {
    t.words(f, key, read).map(|words| words.into_iter().collect())
}

fn outcomes(t: &mut Table<'_, '_>, f: &mut Faults<'_>, visit: &mut Visit) {
    for mut told in t.tables(f, "outcomes") {
        told.need(f, "rule", say("the rule of the follow-up"));
        told.need(f, "outcome", say("what became of it, e.g. \"treated\""));
        let rule = told.word(f, "rule", RuleId::from_code);
        let outcome = told.word(f, "outcome", Outcome::from_code);
        if let (Some(rule), Some(outcome)) = (rule, outcome) {
            visit.outcomes.push(ToldOutcome { rule, outcome });
        }
        told.finish(f);
    }
}

fn foods(t: &mut Table<'_, '_>, f: &mut Faults<'_>, visit: &mut Visit) {
    let path = t.path().to_owned();
    for mut food in t.tables(f, "food") {
        let code = food.need_text(f, "code", say("the code of a food of the protocol"));
        food.rename(format!("{path}, food {code}"));
        visit.foods.push(FoodOffer {
            code: FoodCode(code),
            offers: count(&mut food, f, "offers").unwrap_or(1),
            response: food.word(f, "response", Response::from_code),
            unsafe_form: food.flag(f, "unsafe_form"),
            signs: set(&mut food, f, "signs", ReactionSign::from_code),
            minutes_after: count(&mut food, f, "minutes_after"),
            hold_lifted: food.flag(f, "hold_lifted").unwrap_or(false),
        });
        food.finish(f);
    }
}

//! Tests of the rules at their limits and of the engine as a whole, with the protocol that the program ships with.

mod cases;
mod clearing;
mod danger;
mod data;
mod eating;
mod engine;
mod growth_level;
mod growth_pair;
mod lists;
mod milk;
mod practice;
mod properties;
mod reaction;
mod scale;
mod solids;
mod way;

use std::sync::LazyLock;

use chrono::NaiveDate;

use super::types::{Answer, FollowUp, Standing};
use crate::assess::{Assessment, assess};
use crate::calendar::{add_days, add_months};
use crate::child::{Child, ChildStatus, Sex};
use crate::food::{FoodCode, Response};
use crate::growth::{Measured, Scores, growth_age, scores};
use crate::ids::VisitId;
use crate::protocol::Protocols;
use crate::protocol_toml::default_protocol;
use crate::rule::{Class, RuleId};
use crate::units::{Length, Muac, Weight};
use crate::visit::{Contact, FoodOffer, Outcome, ToldOutcome, Visit};

pub(crate) fn protocols() -> &'static Protocols {
    static PROTOCOLS: LazyLock<Protocols> = LazyLock::new(|| Protocols::one(default_protocol().clone()));
    &PROTOCOLS
}

pub(crate) fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

/// A girl born at term on 10 January 2025, in the programme since birth.
pub(crate) fn girl() -> Child {
    Child {
        sex: Sex::Female,
        born: day("2025-01-10"),
        birth_day_known: true,
        gestation_days: Some(280),
        birth_weight: None,
        registered_on: day("2025-01-10"),
        ever_breastfed: None,
        severe_eczema: None,
        known_food_allergy: None,
        status: ChildStatus::Active,
        looks_like_another: false,
    }
}

/// The day on which the child of these tests is so many completed months old.
pub(crate) fn months(months: u32) -> NaiveDate {
    add_months(girl().born, months)
}

/// The day on which it is so many days old.
pub(crate) fn days(days: i32) -> NaiveDate {
    add_days(girl().born, days)
}

/// A home visit at which nothing was asked, then what a test fills in.
pub(crate) fn visit(on: NaiveDate, fill: impl FnOnce(&mut Visit)) -> Visit {
    let mut visit = Visit::empty(VisitId(0), on, Contact::Home);
    fill(&mut visit);
    visit
}

pub(crate) fn grams(grams: u32) -> Option<Weight> {
    Some(Weight::from_grams(grams).expect("a weight"))
}

pub(crate) fn length(mm: u16) -> Option<Length> {
    Some(Length::from_mm(mm).expect("a length"))
}

pub(crate) fn muac(mm: u16) -> Option<Muac> {
    Some(Muac::from_mm(mm).expect("an arm"))
}

pub(crate) fn told(rule: RuleId, outcome: Outcome) -> ToldOutcome {
    ToldOutcome { rule, outcome }
}

/// A food offered once.
pub(crate) fn food(code: &str, response: Option<Response>) -> FoodOffer {
    FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: 1,
        response,
        unsafe_form: None,
        signs: None,
        minutes_after: None,
        hold_lifted: false,
    }
}

/// Judges visits, named by their place from 1, on the day of the last.
pub(crate) fn judge(child: &Child, mut visits: Vec<Visit>) -> Assessment {
    for (at, visit) in visits.iter_mut().enumerate() {
        visit.id = VisitId(u128::try_from(at).expect("small") + 1);
    }
    let as_of = visits.iter().map(|visit| visit.on).max().expect("a visit");
    assess(child, &visits, protocols(), as_of)
}

/// What a rule answers at the last visit.
pub(crate) fn answer(child: &Child, rule: RuleId, visits: Vec<Visit>) -> Answer {
    let judged = judge(child, visits);
    judged.visits.last().and_then(|visit| visit.answer(rule)).expect("an answer")
}

/// The class of a rule that holds at the only visit.
pub(crate) fn class(rule: RuleId, on: NaiveDate, fill: impl FnOnce(&mut Visit)) -> Option<Class> {
    answer(&girl(), rule, vec![visit(on, fill)]).class()
}

/// How a rule that holds stands at the last visit.
pub(crate) fn standing(judged: &Assessment, rule: RuleId) -> Option<Standing> {
    judged.visits.last()?.finding(rule).map(|finding| finding.standing)
}

/// The only follow-up of a rule.
pub(crate) fn follow_up(judged: &Assessment, rule: RuleId) -> &FollowUp {
    let mut of_rule = judged.follow_ups.iter().filter(|follow_up| follow_up.rule == rule);
    let first = of_rule.next().expect("a follow-up");
    assert!(of_rule.next().is_none(), "more than one follow-up of {rule:?}");
    first
}

fn measured(child: &Child, on: NaiveDate, weight_g: u32, length_mm: Option<u16>) -> Scores {
    scores(&Measured {
        sex: child.sex,
        age_days: growth_age(child, on).days,
        weight: grams(weight_g),
        length: length_mm.and_then(length),
        position: None,
        muac: None,
        head: None,
        oedema: None,
    })
}

/// A weight whose rounded weight-for-age is exactly this.
pub(crate) fn weight_at(child: &Child, on: NaiveDate, waz_hundredths: i32) -> Option<Weight> {
    let found = (500..25_000).find(|g| measured(child, on, *g, None).waz.rounded().map(|z| z.hundredths()) == Some(waz_hundredths));
    grams(found.expect("a weight with this z"))
}

/// A weight whose rounded weight-for-length is exactly this at a length.
pub(crate) fn weight_for(child: &Child, on: NaiveDate, mm: u16, wlz_hundredths: i32) -> Option<Weight> {
    let found = (500..25_000).find(|g| measured(child, on, *g, Some(mm)).wlz.rounded().map(|z| z.hundredths()) == Some(wlz_hundredths));
    grams(found.expect("a weight with this z"))
}

/// A day from 90 days on and a length whose rounded length-for-age is exactly this; the child is under 12 months then.
pub(crate) fn length_at(child: &Child, laz_hundredths: i32) -> (NaiveDate, Option<Length>) {
    let laz = |age: i32, mm: u16| measured(child, days(age), 5_000, Some(mm)).laz.rounded().map(|z| z.hundredths());
    let found = (90..360).find_map(|age| (400..900).find(|mm| laz(age, *mm) == Some(laz_hundredths)).map(|mm| (days(age), mm)));
    let (on, mm) = found.expect("a day and a length with this z");
    (on, length(mm))
}

//! The visit form: names of its fields and what they become.
//!
//! Field names: `day` (`today`, `yesterday`, `other` with `on_day`, `on_month`, `on_year`), `contact`, `weight` (kg), `length` (cm),
//! `position`, `arm` (mm; cm understood), `head` (cm), `feet`, `confirmed`, `danger` with `danger_none`, `readiness` with `readiness_none`,
//! yes/no answers and counts named like the fields of [`Visit`], `recipes` (see [`recipes`]), `started_day/_month/_year`, `texture_usual`, `texture_best` (or `same`),
//! `groups` with `groups_none`, `low_value` with `low_value_none`, `plans` with `plans_none`, `referrals`, `outcome_RULE`; for each food
//! `food_CODE`, `offers_CODE`, `unsafe_CODE`, `rsign_CODE` with `rsign_none_CODE`, `minutes_CODE`, `lifted_CODE`; for any other food
//! `other1_food`, `other1_taken` and so on; what was talked about (see [`talk`]); `also` with `also_shown` and `also_all`; `other_milk` (`no`: none of the milks); `note`.

pub mod also;
pub mod foods;
pub mod recipes;
pub mod talk;

pub use foods::FoodFields;
use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::add_days;
use crate::counsel::Talk;
use crate::draft::MOST_NOTE;
use crate::draft::Reader;
use crate::fault::Fault;
use crate::fault::Faults;
use crate::food::FoodGroup;
use crate::food::Response;
use crate::food::Texture;
use crate::ids::VisitId;
use crate::number_text::parse_scaled;
use crate::protocol::Eaten;
use crate::rule::RuleId;
use crate::units::HeadCircumference;
use crate::units::Length;
use crate::units::Muac;
use crate::units::Weight;
use crate::visit::Contact;
use crate::visit::DangerSign;
use crate::visit::LowValue;
use crate::visit::Measurement;
use crate::visit::Outcome;
use crate::visit::Position;
use crate::visit::ReadinessSign;
use crate::visit::SwallowTrouble;
use crate::visit::ToldOutcome;
use crate::visit::Visit;

/// What the form is read against.
#[derive(Clone, Copy)]
pub struct VisitFrame<'a> {
    /// The id the visit has or will have.
    pub id: VisitId,
    /// The child's birth date.
    pub born: NaiveDate,
    /// The programme's day.
    pub today: NaiveDate,
    /// Codes of the foods that exist.
    pub foods: &'a dyn Fn(&str) -> bool,
    /// What a child has eaten that was given the recipe of this code, if there is one.
    pub eaten: &'a dyn Fn(&str) -> Option<Eaten>,
    /// The food, as it is called on the page, that reads most like one there is not.
    pub like: &'a dyn Fn(&str) -> Option<String>,
}

/// A visit as read from a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitRead {
    /// What could be read. With faults it holds everything else, so that danger is never lost to a slip elsewhere.
    pub visit: Visit,
    /// What was talked about and agreed.
    pub talk: Talk,
    /// Free text.
    pub note: Option<String>,
    /// The food groups are only those of recipes: what else was eaten was not said.
    pub only_recipes: bool,
    /// What could not be read.
    pub faults: Faults,
}

impl VisitRead {
    /// Whether something was ticked that must not wait for the rest of the form to be mended.
    #[must_use]
    pub fn has_danger(&self) -> bool {
        let v = &self.visit;
        v.danger_signs.as_ref().is_some_and(|signs| !signs.is_empty())
            || v.oedema == Some(true)
            || matches!(v.swallow_trouble, Some(SwallowTrouble::Blue))
            || v.foods.iter().any(|f| f.response == Some(Response::Reaction))
    }
}

/// Reads the visit form. Never fails as a whole: what is wrong stands in `faults`, everything else is read.
#[must_use]
pub fn read_visit(pairs: &[(String, String)], frame: &VisitFrame<'_>) -> VisitRead {
    let mut r = Reader::new(pairs);
    let on = visit_day(&mut r, frame);
    let contact = r.choice("contact", |c| Contact::from_code(c).ok()).unwrap_or(Contact::Home);
    let mut visit = Visit::empty(frame.id, on, contact);
    measurements(&mut r, &mut visit);
    let eaten = recipes::read(&mut r, frame, &mut visit);
    yesterday(&mut r, &mut visit, &eaten);
    visit.solids_started_on = started_on(&mut r, frame, on);
    visit.danger_signs = asked(&mut r, "danger", |c| DangerSign::from_code(c).ok());
    visit.readiness_signs = asked(&mut r, "readiness", |c| ReadinessSign::from_code(c).ok());
    visit.swallow_trouble = r.choice("swallow_trouble", |c| SwallowTrouble::from_code(c).ok());
    visit.plans = asked(&mut r, "plans", |c| RuleId::from_code(c).ok());
    visit.referrals = ticked(&mut r, "referrals", |c| RuleId::from_code(c).ok());
    visit.outcomes = outcomes(&mut r);
    visit.foods = foods::read(&mut r, frame);
    recipes::tick_foods(&eaten, &mut visit.foods);
    let talk = talk::read(&mut r);
    let note = r.optional("note", MOST_NOTE);
    let only_recipes = !visit.recipes.is_empty() && r.all("groups").next().is_none() && r.text("groups_none") != "yes";
    VisitRead { visit, talk, note, only_recipes, faults: r.faults }
}

fn visit_day(r: &mut Reader<'_>, frame: &VisitFrame<'_>) -> NaiveDate {
    let (field, on) = match r.text("day") {
        "" | "today" => ("day", Some(frame.today)),
        "yesterday" => ("day", Some(add_days(frame.today, -1))),
        "other" => {
            let on = r.date("on");
            if on.is_none() && r.faults.of("on_day").is_none() {
                r.fault("on_day", Fault::Missing);
            }
            ("on_day", on)
        }
        _ => {
            r.fault("day", Fault::UnknownChoice);
            ("day", None)
        }
    };
    match on {
        Some(on) if on > frame.today => r.fault(field, Fault::InFuture),
        Some(on) if on < frame.born => r.fault(field, Fault::BeforeBirth),
        Some(on) => return on,
        None => {}
    }
    frame.today
}

fn measurements(r: &mut Reader<'_>, visit: &mut Visit) {
    visit.weight = r
        .number("weight", 3, u64::from(Weight::LEAST), u64::from(Weight::MOST), "kg")
        .and_then(|g| Weight::from_grams(u32::try_from(g).ok()?).ok());
    visit.length = length_mm(r, "length").and_then(|mm| Length::from_mm(mm).ok());
    visit.position = r.choice("position", |c| Position::from_code(c).ok());
    visit.muac = arm_mm(r).and_then(|mm| Muac::from_mm(mm).ok());
    visit.head = r
        .number("head", 1, u64::from(HeadCircumference::LEAST), u64::from(HeadCircumference::MOST), "cm")
        .and_then(|mm| HeadCircumference::from_mm(u16::try_from(mm).ok()?).ok());
    visit.oedema = r.yes_no("feet");
    visit.confirmed = ticked(r, "confirmed", |c| Measurement::from_code(c).ok());
    // The tick "I weighed again" beside one measurement.
    visit.confirmed.extend(Measurement::ALL.iter().filter(|m| r.text(&format!("confirmed_{}", m.code())) == "yes"));
}

/// Centimetres with one decimal; a whole number from 300 on was typed in millimetres.
fn length_mm(r: &mut Reader<'_>, field: &str) -> Option<u16> {
    let text = r.text(field);
    if let Ok(mm) = parse_scaled(text, 0)
        && (u64::from(Length::LEAST)..=u64::from(Length::MOST)).contains(&mm)
    {
        return u16::try_from(mm).ok();
    }
    r.number(field, 1, u64::from(Length::LEAST), u64::from(Length::MOST), "cm").and_then(|mm| u16::try_from(mm).ok())
}

/// Whole millimetres; a number below 30 was typed in centimetres.
fn arm_mm(r: &mut Reader<'_>) -> Option<u16> {
    let text = r.text("arm");
    if let Ok(tenths) = parse_scaled(text, 1)
        && tenths < 300
        && (u64::from(Muac::LEAST)..=u64::from(Muac::MOST)).contains(&tenths)
    {
        return u16::try_from(tenths).ok();
    }
    r.number("arm", 0, u64::from(Muac::LEAST), u64::from(Muac::MOST), "mm").and_then(|mm| u16::try_from(mm).ok())
}

fn yesterday(r: &mut Reader<'_>, v: &mut Visit, eaten: &Eaten) {
    v.ill = r.yes_no("ill");
    v.breastfed = r.yes_no("breastfed");
    v.breast_only = r.yes_no("breast_only");
    v.breastfeeding_trouble = r.yes_no("breastfeeding_trouble");
    v.other_drink = r.yes_no("other_drink");
    v.solids_yesterday = r.yes_no("solids_yesterday");
    v.iron_source = r.yes_no("iron_source");
    v.sweet_drink = r.yes_no("sweet_drink");
    v.unhealthy_food = r.yes_no("unhealthy_food");
    v.bottle = r.yes_no("bottle");
    // Thirty feeds or meals a day is more than any family will name; the bound only catches slips.
    v.formula_times = times(r, "formula_times");
    v.animal_milk_times = times(r, "animal_milk_times");
    v.drink_yogurt_times = times(r, "drink_yogurt_times");
    v.spoon_yogurt_times = times(r, "spoon_yogurt_times");
    v.meals = times(r, "meals");
    v.appetite_poor_days = r.count("appetite_poor_days", 365).and_then(|n| u16::try_from(n).ok());
    v.texture_usual = texture(r, "texture_usual");
    // A step further than the usual one is asked for; "no" means that the usual one is the best.
    v.texture_best = if r.text("texture_best") == "same" { v.texture_usual } else { texture(r, "texture_best") };
    v.groups = asked(r, "groups", |c| FoodGroup::from_code(c).ok());
    v.low_value = asked(r, "low_value", |c| LowValue::from_code(c).ok());
    recipes::tick(eaten, v);
    also::read(r, v);
    follows(r, v);
}

/// What one answer says of others that were left open. What was answered itself stays as it was answered.
fn follows(r: &Reader<'_>, v: &mut Visit) {
    if v.breast_only == Some(true) {
        for drunk in [&mut v.other_drink, &mut v.sweet_drink, &mut v.solids_yesterday] {
            drunk.get_or_insert(false);
        }
    }
    if v.breast_only == Some(true) || r.text("other_milk") == "no" {
        for times in [&mut v.formula_times, &mut v.animal_milk_times, &mut v.drink_yogurt_times] {
            times.get_or_insert(0);
        }
    }
}

fn times(r: &mut Reader<'_>, field: &str) -> Option<u8> {
    r.count(field, 30).and_then(|n| u8::try_from(n).ok())
}

fn texture(r: &mut Reader<'_>, field: &str) -> Option<Texture> {
    r.choice(field, |text| text.parse().ok().and_then(Texture::new))
}

fn started_on(r: &mut Reader<'_>, frame: &VisitFrame<'_>, on: NaiveDate) -> Option<NaiveDate> {
    let started = r.date("started")?;
    if started < frame.born {
        r.fault("started_day", Fault::BeforeBirth);
        return None;
    }
    if started > on {
        r.fault("started_day", Fault::AfterVisit);
        return None;
    }
    Some(started)
}

/// Ticks of a list. A tick counts even beside "none of these"; neither means not asked.
pub(super) fn asked<T: Ord>(r: &mut Reader<'_>, field: &str, from_code: impl Fn(&str) -> Option<T>) -> Option<BTreeSet<T>> {
    let set = ticked(r, field, from_code);
    if !set.is_empty() || r.text(&format!("{field}_none")) == "yes" { Some(set) } else { None }
}

pub(super) fn ticked<T: Ord>(r: &mut Reader<'_>, field: &str, from_code: impl Fn(&str) -> Option<T>) -> BTreeSet<T> {
    let mut set = BTreeSet::new();
    let mut unknown = false;
    for text in r.all(field) {
        match from_code(text) {
            Some(value) => {
                set.insert(value);
            }
            None => unknown = true,
        }
    }
    if unknown {
        r.fault(field, Fault::UnknownChoice);
    }
    set
}

fn outcomes(r: &mut Reader<'_>) -> Vec<ToldOutcome> {
    let told: Vec<(&str, &str)> = r.named("outcome_").filter(|(_, value)| !value.is_empty()).collect();
    let mut outcomes = Vec::new();
    for (rule, value) in told {
        match (RuleId::from_code(rule), Outcome::from_code(value)) {
            (Ok(rule), Ok(outcome)) => outcomes.push(ToldOutcome { rule, outcome }),
            _ => r.fault(&format!("outcome_{rule}"), Fault::UnknownChoice),
        }
    }
    outcomes
}

#[cfg(test)]
mod tests;

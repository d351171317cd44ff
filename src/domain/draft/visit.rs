//! The visit form: names of its fields and what they become.
//!
//! Field names: `day` (`today`, `yesterday`, `other` with `on_day`, `on_month`, `on_year`), `contact`, `weight` (kg), `length` (cm),
//! `position`, `arm` (mm; cm understood), `head` (cm), `feet`, `confirmed`, `danger` with `danger_none`, `readiness` with `readiness_none`,
//! yes/no answers and counts named like the fields of [`Visit`], `started_day/_month/_year`, `texture_usual`, `texture_best`, `groups` with
//! `groups_none`, `low_value` with `low_value_none`, `plans` with `plans_none`, `referrals`, `outcome_RULE`, and for each food
//! `food_CODE`, `offers_CODE`, `unsafe_CODE`, `rsign_CODE` with `rsign_none_CODE`, `minutes_CODE`, `lifted_CODE`; `note`.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::add_days;
use crate::draft::MOST_NOTE;
use crate::draft::Reader;
use crate::fault::Fault;
use crate::fault::Faults;
use crate::food::FoodCode;
use crate::food::FoodGroup;
use crate::food::ReactionSign;
use crate::food::Response;
use crate::food::Texture;
use crate::ids::VisitId;
use crate::number_text::parse_scaled;
use crate::rule::RuleId;
use crate::units::HeadCircumference;
use crate::units::Length;
use crate::units::Muac;
use crate::units::Weight;
use crate::visit::Contact;
use crate::visit::DangerSign;
use crate::visit::FoodOffer;
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
}

/// A visit as read from a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitRead {
    /// What could be read. With faults it holds everything else, so that danger is never lost to a slip elsewhere.
    pub visit: Visit,
    /// Free text.
    pub note: Option<String>,
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
    yesterday(&mut r, &mut visit);
    visit.solids_started_on = started_on(&mut r, frame, on);
    visit.danger_signs = asked(&mut r, "danger", |c| DangerSign::from_code(c).ok());
    visit.readiness_signs = asked(&mut r, "readiness", |c| ReadinessSign::from_code(c).ok());
    visit.swallow_trouble = r.choice("swallow_trouble", |c| SwallowTrouble::from_code(c).ok());
    visit.plans = asked(&mut r, "plans", |c| RuleId::from_code(c).ok());
    visit.referrals = ticked(&mut r, "referrals", |c| RuleId::from_code(c).ok());
    visit.outcomes = outcomes(&mut r);
    visit.foods = foods(&mut r, frame);
    let note = r.optional("note", MOST_NOTE);
    VisitRead { visit, note, faults: r.faults }
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

fn yesterday(r: &mut Reader<'_>, v: &mut Visit) {
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
    v.texture_best = texture(r, "texture_best");
    // A step further than the usual one is asked for; "no" means that the usual one is the best.
    if v.texture_best.is_none() && r.text("texture_best_same") == "yes" {
        v.texture_best = v.texture_usual;
    }
    v.groups = asked(r, "groups", |c| FoodGroup::from_code(c).ok());
    v.low_value = asked(r, "low_value", |c| LowValue::from_code(c).ok());
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
fn asked<T: Ord>(r: &mut Reader<'_>, field: &str, from_code: impl Fn(&str) -> Option<T>) -> Option<BTreeSet<T>> {
    let set = ticked(r, field, from_code);
    if !set.is_empty() || r.text(&format!("{field}_none")) == "yes" { Some(set) } else { None }
}

fn ticked<T: Ord>(r: &mut Reader<'_>, field: &str, from_code: impl Fn(&str) -> Option<T>) -> BTreeSet<T> {
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

fn foods(r: &mut Reader<'_>, frame: &VisitFrame<'_>) -> Vec<FoodOffer> {
    let mut codes: Vec<&str> = Vec::new();
    for (code, value) in r.named("food_") {
        if !value.is_empty() && !codes.contains(&code) {
            codes.push(code);
        }
    }
    // A hold may be lifted without the food having been offered.
    for (code, value) in r.named("lifted_") {
        if value == "yes" && !codes.contains(&code) {
            codes.push(code);
        }
    }
    codes.into_iter().filter_map(|code| food(r, frame, code)).collect()
}

fn food(r: &mut Reader<'_>, frame: &VisitFrame<'_>, code: &str) -> Option<FoodOffer> {
    let field = format!("food_{code}");
    if !(frame.foods)(code) {
        r.fault(&field, Fault::UnknownChoice);
        return None;
    }
    let response = r.choice(&field, |c| Response::from_code(c).ok());
    let signs = if response == Some(Response::Reaction) {
        asked(r, &format!("rsign_{code}"), |c| ReactionSign::from_code(c).ok())
            .or_else(|| (r.text(&format!("rsign_none_{code}")) == "yes").then(BTreeSet::new))
    } else {
        None
    };
    let offered = if response.is_some() { 1 } else { 0 };
    Some(FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: r.count(&format!("offers_{code}"), 200).and_then(|n| u16::try_from(n).ok()).unwrap_or(offered),
        response,
        unsafe_form: r.yes_no(&format!("unsafe_{code}")),
        signs,
        // Two days: later signs are not linked to the food by the person asking.
        minutes_after: r.count(&format!("minutes_{code}"), 2 * 24 * 60).and_then(|n| u16::try_from(n).ok()),
        hold_lifted: r.text(&format!("lifted_{code}")) == "yes",
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn read(pairs: &[(&str, &str)]) -> VisitRead {
        let pairs: Vec<(String, String)> = pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        let frame = VisitFrame { id: VisitId(1), born: d("2026-03-14"), today: d("2026-11-25"), foods: &|code| code != "stone" };
        read_visit(&pairs, &frame)
    }

    #[test]
    fn an_empty_form_is_a_visit_at_which_nothing_was_asked() {
        let read = read(&[]);
        assert!(read.faults.is_empty());
        assert_eq!(read.visit, Visit::empty(VisitId(1), d("2026-11-25"), Contact::Home));
    }

    #[test]
    fn measurements_are_understood_in_the_units_people_type() {
        let r = read(&[("weight", "7,35"), ("length", "655"), ("arm", "13.4"), ("feet", "no")]);
        assert!(r.faults.is_empty(), "{:?}", r.faults);
        assert_eq!(r.visit.weight.map(Weight::grams), Some(7350));
        assert_eq!(r.visit.length.map(Length::mm), Some(655));
        assert_eq!(r.visit.muac.map(Muac::mm), Some(134));
        assert_eq!(r.visit.oedema, Some(false));
        assert_eq!(read(&[("length", "65,5"), ("arm", "134")]).visit, {
            let mut v = read(&[]).visit;
            v.length = Length::from_mm(655).ok();
            v.muac = Muac::from_mm(134).ok();
            v
        });
    }

    #[test]
    fn all_faults_come_at_once_and_the_rest_is_kept() {
        let r = read(&[
            ("weight", "735"),
            ("length", "lang"),
            ("arm", "5"),
            ("meals", "31"),
            ("contact", "dream"),
            ("breastfed", "yes"),
            ("danger", "fits_now"),
            ("food_stone", "accepted"),
        ]);
        let fields: Vec<&str> = r.faults.iter().map(|(f, _)| f).collect();
        assert_eq!(fields, ["contact", "weight", "length", "arm", "meals", "food_stone"]);
        assert_eq!(r.faults.of("weight"), Some(&Fault::Outside { least: "0.5".into(), most: "25".into(), unit: "kg" }));
        assert_eq!(r.visit.breastfed, Some(true));
        assert!(r.has_danger(), "danger is not lost to a slip elsewhere");
    }

    #[test]
    fn not_asked_is_not_no() {
        let r = read(&[("danger_none", "yes"), ("groups", "dairy"), ("groups_none", "yes")]);
        assert_eq!(r.visit.danger_signs, Some(BTreeSet::new()));
        assert_eq!(r.visit.groups, Some(BTreeSet::from([FoodGroup::Dairy])), "a tick counts even beside none-of-these");
        assert_eq!(r.visit.low_value, None);
        assert_eq!(r.visit.plans, None);
    }

    #[test]
    fn days_must_be_possible() {
        let day = |y: &str, m: &str, dd: &str| read(&[("day", "other"), ("on_day", dd), ("on_month", m), ("on_year", y)]);
        assert_eq!(day("2026", "11", "3").visit.on, d("2026-11-03"));
        assert_eq!(day("26", "11", "٣").visit.on, d("2026-11-03"));
        assert_eq!(day("2026", "2", "30").faults.of("on_day"), Some(&Fault::NotADate));
        assert_eq!(day("2026", "11", "26").faults.of("on_day"), Some(&Fault::InFuture));
        assert_eq!(day("2026", "3", "13").faults.of("on_day"), Some(&Fault::BeforeBirth));
        assert_eq!(day("", "", "").faults.of("on_day"), Some(&Fault::Missing));
        let started = read(&[("day", "yesterday"), ("started_day", "25"), ("started_month", "11"), ("started_year", "2026")]);
        assert_eq!(started.faults.of("started_day"), Some(&Fault::AfterVisit));
    }

    #[test]
    fn foods_and_reactions() {
        let r = read(&[
            ("food_beans", "accepted"),
            ("food_mango", ""),
            ("food_egg", "reaction"),
            ("rsign_egg", "wheeze"),
            ("minutes_egg", "15"),
            ("lifted_fish", "yes"),
            ("outcome_weight.low", "seen"),
        ]);
        assert!(r.faults.is_empty(), "{:?}", r.faults);
        let by: Vec<(&str, u16, bool)> = r.visit.foods.iter().map(|f| (f.code.as_str(), f.offers, f.hold_lifted)).collect();
        assert_eq!(by, [("beans", 1, false), ("egg", 1, false), ("fish", 0, true)]);
        assert_eq!(r.visit.foods[1].signs, Some(BTreeSet::from([ReactionSign::Wheeze])));
        assert_eq!(r.visit.outcomes, [ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen }]);
    }
}

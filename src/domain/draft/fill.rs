//! A stored visit as the pairs of its form, so that it can be shown and corrected. Reading them again gives the same visit.

use std::collections::BTreeSet;

use chrono::Datelike;
use chrono::NaiveDate;

use crate::calendar::add_days;
use crate::draft::plain;
use crate::draft::visit::recipes;
use crate::visit::FoodOffer;
use crate::visit::Visit;

struct Pairs(Vec<(String, String)>);

impl Pairs {
    fn put(&mut self, name: &str, value: impl ToString) {
        self.0.push((name.to_owned(), value.to_string()));
    }

    fn put_some<T: ToString>(&mut self, name: &str, value: Option<T>) {
        if let Some(value) = value {
            self.put(name, value.to_string());
        }
    }

    fn yes_no(&mut self, name: &str, value: Option<bool>) {
        self.put_some(name, value.map(|yes| if yes { "yes" } else { "no" }));
    }

    fn date(&mut self, name: &str, date: NaiveDate) {
        self.put(&format!("{name}_day"), date.day());
        self.put(&format!("{name}_month"), date.month());
        self.put(&format!("{name}_year"), date.year());
    }

    /// Ticks, with "none of these" where the list was asked and nothing was found.
    fn asked<T: Copy>(&mut self, name: &str, set: Option<&BTreeSet<T>>, code: impl Fn(T) -> &'static str) {
        let Some(set) = set else { return };
        if set.is_empty() {
            self.put(&format!("{name}_none"), "yes");
        }
        for value in set {
            self.put(name, code(*value));
        }
    }
}

/// The pairs of a visit's form. `today` decides whether the day is said as today, yesterday or a date.
#[must_use]
pub fn pairs_of(v: &Visit, note: Option<&str>, today: NaiveDate) -> Vec<(String, String)> {
    let mut p = Pairs(Vec::new());
    if v.on == today {
        p.put("day", "today");
    } else if v.on == add_days(today, -1) {
        p.put("day", "yesterday");
    } else {
        p.put("day", "other");
        p.date("on", v.on);
    }
    p.put("contact", v.contact.code());
    measures(&mut p, v);
    yesterday(&mut p, v);
    p.asked("danger", v.danger_signs.as_ref(), |s| s.code());
    if v.danger_signs.is_none() {
        p.put("danger_none", "not");
    }
    p.asked("readiness", v.readiness_signs.as_ref(), |s| s.code());
    p.put_some("swallow_trouble", v.swallow_trouble.map(|s| s.code()));
    p.asked("plans", v.plans.as_ref(), |rule| rule.code());
    for rule in &v.referrals {
        p.put("referrals", rule.code());
    }
    for told in &v.outcomes {
        p.put(&format!("outcome_{}", told.rule.code()), told.outcome.code());
    }
    if !v.foods.is_empty() {
        p.put("new_food", "yes");
    }
    for food in &v.foods {
        offer(&mut p, food);
    }
    p.put_some("note", note);
    p.0
}

fn measures(p: &mut Pairs, v: &Visit) {
    p.put_some("weight", v.weight.map(|w| plain(u64::from(w.grams()), 3)));
    p.put_some("length", v.length.map(|l| plain(u64::from(l.mm()), 1)));
    p.put_some("position", v.position.map(|x| x.code()));
    p.put_some("arm", v.muac.map(|m| m.mm()));
    p.put_some("head", v.head.map(|h| plain(u64::from(h.mm()), 1)));
    p.yes_no("feet", v.oedema);
    for measurement in &v.confirmed {
        p.put(&format!("confirmed_{}", measurement.code()), "yes");
    }
}

fn yesterday(p: &mut Pairs, v: &Visit) {
    for (name, answer) in [
        ("ill", v.ill),
        ("breastfed", v.breastfed),
        ("breast_only", v.breast_only),
        ("breastfeeding_trouble", v.breastfeeding_trouble),
        ("other_drink", v.other_drink),
        ("solids_yesterday", v.solids_yesterday),
        ("iron_source", v.iron_source),
        ("sweet_drink", v.sweet_drink),
        ("unhealthy_food", v.unhealthy_food),
        ("bottle", v.bottle),
    ] {
        p.yes_no(name, answer);
    }
    let milks = [v.formula_times, v.animal_milk_times, v.drink_yogurt_times];
    if milks.iter().flatten().any(|n| *n > 0) || v.spoon_yogurt_times.is_some_and(|n| n > 0) {
        p.put("other_milk", "yes");
    } else if milks.iter().all(|n| *n == Some(0)) {
        p.put("other_milk", "no");
    }
    for (name, times) in [
        ("formula_times", v.formula_times),
        ("animal_milk_times", v.animal_milk_times),
        ("drink_yogurt_times", v.drink_yogurt_times),
        ("spoon_yogurt_times", v.spoon_yogurt_times),
        ("meals", v.meals),
    ] {
        p.put_some(name, times);
    }
    p.put_some("appetite_poor_days", v.appetite_poor_days);
    p.put_some("texture_usual", v.texture_usual.map(|t| t.level()));
    p.put_some("texture_best", v.texture_best.map(|t| t.level()));
    for recipe in &v.recipes {
        p.put(recipes::FIELD, recipe);
    }
    p.asked("groups", v.groups.as_ref(), |g| g.code());
    p.asked("low_value", v.low_value.as_ref(), |l| l.code());
    if let Some(started) = v.solids_started_on {
        p.date("started", started);
    }
}

fn offer(p: &mut Pairs, food: &FoodOffer) {
    let code = food.code.as_str();
    match food.response {
        Some(response) => p.put(&format!("food_{code}"), response.code()),
        None if food.offers > 0 => p.put(&format!("food_{code}"), "given"),
        None => {}
    }
    p.put(&format!("offers_{code}"), food.offers);
    p.yes_no(&format!("unsafe_{code}"), food.unsafe_form);
    if let Some(signs) = &food.signs {
        if signs.is_empty() {
            p.put(&format!("rsign_none_{code}"), "yes");
        }
        for sign in signs {
            p.put(&format!("rsign_{code}"), sign.code());
        }
    }
    p.put_some(&format!("minutes_{code}"), food.minutes_after);
    if food.hold_lifted {
        p.put(&format!("lifted_{code}"), "yes");
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draft::visit::VisitFrame;
    use crate::draft::visit::read_visit;
    use crate::food::*;
    use crate::ids::VisitId;
    use crate::protocol::Eaten;
    use crate::rule::RuleId;
    use crate::units::*;
    use crate::visit::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn full() -> Visit {
        let mut v = Visit::empty(VisitId(7), d("2026-11-03"), Contact::Clinic);
        v.weight = Weight::from_grams(7350).ok();
        v.length = Length::from_mm(655).ok();
        v.position = Some(Position::Standing);
        v.muac = Muac::from_mm(134).ok();
        v.head = HeadCircumference::from_mm(431).ok();
        v.oedema = Some(false);
        v.confirmed = BTreeSet::from([Measurement::Weight, Measurement::Muac]);
        v.danger_signs = Some(BTreeSet::from([DangerSign::BloodInStool, DangerSign::Constipation]));
        v.readiness_signs = Some(BTreeSet::from([ReadinessSign::Swallows]));
        v.ill = Some(true);
        v.breastfed = Some(true);
        v.breast_only = Some(false);
        v.breastfeeding_trouble = Some(false);
        v.formula_times = Some(1);
        v.animal_milk_times = Some(0);
        v.drink_yogurt_times = None;
        v.spoon_yogurt_times = Some(2);
        v.other_drink = Some(true);
        v.solids_started_on = Some(d("2026-09-18"));
        v.solids_yesterday = Some(true);
        v.meals = Some(2);
        v.texture_usual = Texture::new(1);
        v.texture_best = Texture::new(2);
        v.recipes = BTreeSet::from(["egg_porridge".to_owned(), "fish_stew".to_owned()]);
        v.groups = Some(BTreeSet::from([FoodGroup::Dairy, FoodGroup::BreastMilk]));
        v.iron_source = Some(false);
        v.sweet_drink = Some(true);
        v.unhealthy_food = None;
        v.bottle = Some(false);
        v.low_value = Some(BTreeSet::new());
        v.swallow_trouble = Some(SwallowTrouble::Repeated);
        v.appetite_poor_days = Some(3);
        v.plans = Some(BTreeSet::from([RuleId::SolidsEarly]));
        v.referrals = BTreeSet::from([RuleId::WeightLow]);
        v.outcomes = vec![ToldOutcome { rule: RuleId::DangerGeneral, outcome: Outcome::Treated }];
        let offer = |code: &str, offers, response, signs: Option<&[ReactionSign]>| FoodOffer {
            code: FoodCode(code.to_owned()),
            offers,
            response,
            unsafe_form: Some(false),
            signs: signs.map(|s| s.iter().copied().collect()),
            minutes_after: signs.map(|_| 15),
            hold_lifted: offers == 0,
        };
        v.foods = vec![
            offer("egg", 2, Some(Response::Reaction), Some(&[ReactionSign::Wheeze])),
            offer("mango", 1, Some(Response::Reaction), Some(&[])),
            offer("honey", 1, None, None),
            offer("fish", 0, None, None),
        ];
        v
    }

    fn again(v: &Visit) -> Visit {
        let pairs = pairs_of(v, Some("cold"), d("2026-11-25"));
        let frame = VisitFrame {
            id: v.id,
            born: d("2026-03-14"),
            today: d("2026-11-25"),
            foods: &|_| true,
            eaten: &|_| Some(Eaten::default()),
            like: &|_| None,
        };
        let read = read_visit(&pairs, &frame);
        assert!(read.faults.is_empty(), "{:?}", read.faults);
        assert_eq!(read.note.as_deref(), Some("cold"));
        read.visit
    }

    #[test]
    fn a_filled_form_gives_the_visit_back() {
        assert_eq!(again(&full()), full());
    }

    #[test]
    fn every_milk_that_was_given_is_told_and_none_only_where_all_were_asked() {
        let milks = |formula, animal, drunk, spooned| {
            let mut v = Visit::empty(VisitId(7), d("2026-11-25"), Contact::Home);
            (v.formula_times, v.animal_milk_times, v.drink_yogurt_times, v.spoon_yogurt_times) = (formula, animal, drunk, spooned);
            assert_eq!(again(&v), v);
            let pairs = pairs_of(&v, None, d("2026-11-25"));
            pairs.iter().find(|(name, _)| name == "other_milk").map(|(_, value)| value.clone())
        };
        let (yes, no) = (Some("yes".to_owned()), Some("no".to_owned()));
        assert_eq!(milks(Some(1), None, None, None), yes);
        assert_eq!(milks(None, None, None, Some(1)), yes);
        assert_eq!(milks(Some(0), Some(0), Some(0), Some(0)), no);
        assert_eq!(milks(Some(0), Some(0), None, None), None, "not all were asked");
    }

    #[test]
    fn what_was_not_asked_stays_not_asked() {
        let mut v = Visit::empty(VisitId(7), d("2026-11-25"), Contact::Phone);
        assert_eq!(again(&v), v);
        v.danger_signs = Some(BTreeSet::new());
        v.groups = Some(BTreeSet::new());
        v.on = d("2026-11-24");
        assert_eq!(again(&v), v);
    }
}

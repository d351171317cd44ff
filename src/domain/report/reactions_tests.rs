//! Small examples worked by hand for the reactions.

use super::*;
use crate::food::{FoodCode, ReactionSign as S, Response};
use crate::protocol_toml::default_protocol;
use crate::report::counted::alone;
use crate::report::sample::{d, october, villages};
use crate::report::sample_month::follow_up;
use crate::report::suppress::Reason;
use crate::rule::Class;

fn offer(food: &str, signs: &[S], minutes: u16) -> FoodOffer {
    FoodOffer {
        code: FoodCode(food.to_owned()),
        offers: 1,
        response: Some(Response::Reaction),
        unsafe_form: None,
        signs: Some(signs.iter().copied().collect()),
        minutes_after: Some(minutes),
        hold_lifted: false,
    }
}

fn told(child: u128, area: u128, offer: &FoodOffer) -> Option<ReportReaction> {
    ReportReaction::told(ChildId(child), AreaId(area), d("2025-10-08"), offer, default_protocol())
}

#[test]
fn a_reaction_is_as_serious_as_the_rules_say() {
    // Hives and vomiting within four hours: severe, an emergency. Hives alone: spreading, refer today. A rash round the mouth: mild.
    let of = |signs: &[S]| told(1, 0, &offer("groundnut_paste", signs, 30)).map(|r| (r.level, r.referred, r.allergen));
    let peanut = Some(Allergen::Peanut);
    assert_eq!(of(&[S::HivesWidespread, S::VomitingOnce]), Some((ReactionLevel::Severe, true, peanut)));
    assert_eq!(of(&[S::HivesWidespread]), Some((ReactionLevel::Spreading, true, peanut)));
    assert_eq!(of(&[S::RashLocal]), Some((ReactionLevel::Mild, false, peanut)));
    assert_eq!(told(1, 0, &FoodOffer { response: Some(Response::Accepted), ..offer("groundnut_paste", &[], 30) }), None);
}

#[test]
fn counted_by_group_allergen_and_class_with_severe_ones_apart() {
    let mut reactions = Vec::new();
    for child in 0..7 {
        reactions.extend(told(child, 0, &offer("groundnut_paste", &[S::RashLocal], 30)));
        reactions.extend(told(child, 1, &offer("groundnut_paste", &[S::HivesWidespread], 30)));
    }
    reactions.extend(told(9, 0, &offer("groundnut_paste", &[S::Wheeze], 5)));
    // A month before, and not counted.
    reactions.push(ReportReaction { on: d("2025-09-30"), ..reactions[0] });
    let mut answered = follow_up(1, RuleId::ReactionSpreading, Class::Today, "2025-10-09");
    (answered.child, answered.opened_on, answered.outcome_on) = (ChildId(3), d("2025-10-08"), Some(d("2025-10-20")));
    let mut too_late = answered.clone();
    (too_late.child, too_late.outcome_on) = (ChildId(4), Some(d("2025-11-01")));
    let areas = Areas::new(&villages());
    let counted = count(october().period, &areas, &reactions, &[answered, too_late]);
    let table = alone::in_full(&counted, &october(), &areas).remove(0);
    let row = |area: &str, food: [&str; 3]| {
        let [group, allergen, class] = food;
        let row = table.find(&[("area", area), ("food_group", group), ("allergen", allergen), ("class", class)]).expect("a row");
        MEASURES.iter().map(|measure| table.cell(row, measure).cloned().expect("a cell")).collect::<Vec<_>>()
    };
    let counts = |counts: [u64; 3]| counts.map(Cell::Count).to_vec();
    assert_eq!(row("Ulopi", ["pulses_nuts", "peanut", "mild"]), counts([7, 0, 0]));
    assert_eq!(row("Sanga Point", ["pulses_nuts", "peanut", "spreading"]), counts([7, 7, 1]));
    assert_eq!(row(ALL, [ALL, ALL, ALL]), counts([14, 7, 1]), "without the severe one");
    assert_eq!(row(ALL, [ALL, ALL, "severe"]), counts([1, 1, 0]));
    let released = alone::released(&counted, &october(), &areas).remove(0);
    let severe = released.find(&[("class", "severe")]).expect("a row");
    assert_eq!(released.cell(severe, "n"), Some(&Cell::Withheld(Reason::Private)));
}

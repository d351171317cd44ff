//! Reactions to foods: levels, holds, foods given again.

use ReactionSign as S;

use super::*;
use crate::feeding::{FoodState, ReactionLevel};
use crate::food::ReactionSign;
use crate::visit::SwallowTrouble;

fn reaction(code: &str, signs: Option<&[ReactionSign]>, minutes_after: Option<u16>) -> FoodOffer {
    let signs = signs.map(|signs| signs.iter().copied().collect());
    FoodOffer { signs, minutes_after, ..food(code, Some(Response::Reaction)) }
}

const LEVELS: [RuleId; 3] = [RuleId::ReactionSevere, RuleId::ReactionSpreading, RuleId::ReactionMild];

/// The rules and classes of one reaction at 8 months.
fn levels(offer: FoodOffer) -> Vec<(RuleId, Class)> {
    let judged = judge(&girl(), vec![visit(months(8), |v| v.foods.push(offer))]);
    let class = |rule: &RuleId| judged.visits[0].finding(*rule).map(|finding| (*rule, finding.class));
    LEVELS.iter().filter_map(class).collect()
}

#[test]
fn each_reaction_makes_the_worst_rule_fire_that_it_meets() {
    let severe = vec![(RuleId::ReactionSevere, Class::Now)];
    let spreading = vec![(RuleId::ReactionSpreading, Class::Today)];
    let mild = vec![(RuleId::ReactionMild, Class::Fortnight)];
    for sign in [S::Wheeze, S::BreathingTrouble, S::HoarseCry, S::SwollenTongueThroat, S::PaleFloppy, S::Collapse, S::SleepyPale] {
        assert_eq!(levels(reaction("rice", Some(&[sign]), Some(2_000))), severe, "{sign:?}");
    }
    for (skin, gut) in [(S::RashLocal, S::VomitingOnce), (S::HivesWidespread, S::LooseStools), (S::SwellingFace, S::VomitingRepeated)] {
        let both = [skin, gut];
        assert_eq!(levels(reaction("rice", Some(&both), Some(239))), severe);
        assert_eq!(levels(reaction("rice", Some(&both), Some(240))), severe);
        assert_ne!(levels(reaction("rice", Some(&both), Some(241))), severe);
        assert_eq!(levels(reaction("rice", Some(&both), None)), severe, "an unknown time is never milder");
    }
    for sign in [S::HivesWidespread, S::SwellingFace, S::VomitingRepeated] {
        assert_eq!(levels(reaction("rice", Some(&[sign]), Some(10))), spreading, "{sign:?}");
    }
    assert_eq!(levels(reaction("rice", None, Some(10))), spreading, "signs that nobody recorded");
    for signs in [&[S::RashLocal][..], &[S::EczemaFlare], &[S::VomitingOnce], &[S::LooseStools], &[S::EczemaFlare, S::VomitingOnce], &[]] {
        assert_eq!(levels(reaction("rice", Some(signs), Some(10))), mild, "{signs:?}");
    }
    assert_eq!(levels(reaction("egg", Some(&[S::RashLocal]), None)), vec![(RuleId::ReactionMild, Class::Week)], "a common allergen");
    assert_eq!(levels(food("egg", Some(Response::Accepted))), vec![]);
}

#[test]
fn a_food_that_was_only_named_made_no_reaction() {
    let named = FoodOffer { offers: 0, hold_lifted: true, ..reaction("rice", Some(&[S::Wheeze]), Some(10)) };
    assert_eq!(levels(named.clone()), vec![]);
    let judged = judge(&girl(), vec![visit(months(8), |v| v.foods.push(named)), visit(months(9), |v| v.foods.push(food("rice", None)))]);
    assert_eq!(judged.foods[0].state, FoodState::Trying);
    assert!(judged.visits[1].finding(RuleId::ReactionGivenAgain).is_none());
}

#[test]
fn different_foods_make_different_rules_fire() {
    let judged = judge(
        &girl(),
        vec![visit(months(8), |v| {
            v.foods.push(reaction("egg", Some(&[S::Wheeze]), None));
            v.foods.push(reaction("rice", Some(&[S::RashLocal]), None));
        })],
    );
    assert_eq!(follow_up(&judged, RuleId::ReactionSevere).class, Class::Now);
    assert_eq!(follow_up(&judged, RuleId::ReactionMild).class, Class::Fortnight);
}

#[test]
fn a_food_on_hold_given_again() {
    let first = |signs: &'static [ReactionSign]| visit(months(8), move |v| v.foods.push(reaction("egg", Some(signs), None)));
    let again = |on| visit(on, |v| v.foods.push(food("egg", Some(Response::Accepted))));
    let given = |visits| answer(&girl(), RuleId::ReactionGivenAgain, visits).class();
    let next = add_days(months(8), 10);
    assert_eq!(given(vec![first(&[S::RashLocal]), again(next)]), Some(Class::Week));
    assert_eq!(given(vec![first(&[S::SwellingFace]), again(next)]), Some(Class::TwoDays));
    // On the very day there is no hold from an earlier day yet.
    assert_eq!(given(vec![first(&[S::RashLocal]), again(months(8))]), None);
    // Time does not lift a hold.
    assert_eq!(given(vec![first(&[S::RashLocal]), again(months(15))]), Some(Class::Week));
    let lifted = |on, offers| visit(on, move |v| v.foods.push(FoodOffer { hold_lifted: true, offers, ..food("egg", None) }));
    assert_eq!(given(vec![first(&[S::SwellingFace]), lifted(next, 1)]), None, "lifted before this visit's offers");
    assert_eq!(given(vec![first(&[S::SwellingFace]), lifted(next, 0), again(months(9))]), None);
    // A worse reaction while on hold counts, also one at this visit.
    let worse = visit(next, |v| v.foods.push(reaction("egg", Some(&[S::Wheeze]), None)));
    assert_eq!(given(vec![first(&[S::RashLocal]), worse.clone()]), Some(Class::TwoDays));
    assert_eq!(given(vec![first(&[S::RashLocal]), worse, again(months(10))]), Some(Class::TwoDays));
    // Not offered, nothing given again.
    let named = visit(next, |v| v.foods.push(FoodOffer { offers: 0, ..food("egg", None) }));
    assert_eq!(given(vec![first(&[S::RashLocal]), named]), None);
}

#[test]
fn the_state_of_a_food() {
    let state = |visits: Vec<Visit>| judge(&girl(), visits).foods[0].state;
    let offer = |on, offers, response| visit(on, move |v| v.foods.push(FoodOffer { offers, ..food("egg", response) }));
    let (one, two) = (months(8), months(9));
    assert_eq!(state(vec![offer(one, 2, Some(Response::Accepted))]), FoodState::Trying);
    assert_eq!(state(vec![offer(one, 3, Some(Response::Accepted))]), FoodState::Accepted);
    assert_eq!(state(vec![offer(one, 2, Some(Response::Accepted)), offer(two, 1, Some(Response::Accepted))]), FoodState::Accepted);
    assert_eq!(state(vec![offer(one, 1, Some(Response::Refused))]), FoodState::Refused { retry_on: add_days(one, 14) });
    let reacted = || visit(one, |v| v.foods.push(reaction("egg", Some(&[S::RashLocal]), None)));
    let hold = FoodState::OnHold { since: one, worst: ReactionLevel::Mild };
    assert_eq!(state(vec![reacted(), offer(two, 5, Some(Response::Accepted))]), hold, "only a named person lifts it");
    let lifted = || visit(two, |v| v.foods.push(FoodOffer { hold_lifted: true, offers: 0, ..food("egg", None) }));
    assert_eq!(state(vec![reacted(), lifted()]), FoodState::Cleared { on: two });
    assert_eq!(state(vec![reacted(), lifted(), offer(months(10), 3, Some(Response::Accepted))]), FoodState::Accepted);
}

#[test]
fn trouble_swallowing() {
    let at = |trouble| class(RuleId::FeedingSwallowTrouble, months(9), |v| v.swallow_trouble = Some(trouble));
    assert_eq!(at(SwallowTrouble::Blue), Some(Class::Now));
    assert_eq!(at(SwallowTrouble::Repeated), Some(Class::Week));
    assert_eq!(at(SwallowTrouble::None), None);
}

#[test]
fn a_reaction_closes_by_care_and_a_mild_one_by_a_decision() {
    let first = |signs: &'static [ReactionSign]| visit(months(8), move |v| v.foods.push(reaction("rice", Some(signs), None)));
    let after = |rule, outcome| visit(months(9), move |v| v.outcomes.push(told(rule, outcome)));
    let open = |signs, rule, outcome| follow_up(&judge(&girl(), vec![first(signs), after(rule, outcome)]), rule).is_open();
    assert!(!open(&[S::Wheeze], RuleId::ReactionSevere, Outcome::Seen));
    assert!(open(&[S::Wheeze], RuleId::ReactionSevere, Outcome::Decision));
    assert!(open(&[S::RashLocal], RuleId::ReactionMild, Outcome::Seen));
    assert!(!open(&[S::RashLocal], RuleId::ReactionMild, Outcome::Decision));
}

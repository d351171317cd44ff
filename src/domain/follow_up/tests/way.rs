//! The way of a follow-up to its end, as it is told: what is behind, what is missing, what happened at each visit.

use proptest::prelude::*;

use super::properties::story;
use super::*;
use crate::assess::{Acts, assess_with};
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::{Kept, Needed, Standing, Step, SupervisorAct, TestResult, ToClose, Way, What, Why, steps, to_close};
use crate::rule::CloseReason;
use crate::visit::DangerSign;

/// The way of the only follow-up of a rule.
fn way_of(child: &Child, rule: RuleId, visits: Vec<Visit>) -> Option<ToClose> {
    let mut stored = visits.clone();
    for (at, visit) in stored.iter_mut().enumerate() {
        visit.id = VisitId(u128::try_from(at).expect("small") + 1);
    }
    let judged = judge(child, visits);
    to_close(follow_up(&judged, rule), child, &judged, |id| stored.iter().find(|visit| visit.id == id))
}

fn arm(day: i32, mm: Option<u16>, oedema: Option<bool>) -> Visit {
    visit(add_days(months(8), day), |v| {
        v.muac = mm.and_then(muac);
        v.oedema = oedema;
    })
}

#[test]
fn two_clear_visits_are_counted_and_start_again_when_it_fires() {
    let thin = || arm(0, Some(112), None);
    let way = |later: Vec<Visit>| way_of(&girl(), RuleId::WastingSevere, std::iter::once(thin()).chain(later).collect()).expect("open");
    let alone = way(vec![]);
    assert_eq!((alone.way, alone.first_clear_on, alone.newest), (Way::TwoVisits, None, None));
    assert_eq!(alone.numbers.get(K::Muac), Some(&Quantity::Millimetres(125)));
    let one = way(vec![arm(10, Some(125), Some(false))]);
    let first = add_days(months(8), 10);
    assert_eq!((one.first_clear_on, one.second_from), (Some(first), Some(add_days(first, 7))));
    assert_eq!(one.newest.map(|newest| (newest.result, newest.lacking)), Some((Some(TestResult::Met), vec![])));
    // The day told is the first that closes it.
    let closed =
        |day| way_of(&girl(), RuleId::WastingSevere, vec![thin(), arm(10, Some(125), Some(false)), arm(day, Some(125), Some(false))]);
    assert_eq!((closed(17).is_none(), closed(16).is_none()), (true, false));
    let unasked = way(vec![arm(10, Some(125), None)]).newest.expect("a visit");
    assert_eq!((unasked.result, unasked.lacking), (Some(TestResult::Unknown(Why::Missing)), vec![Needed::Feet]));
    let nothing = way(vec![arm(10, None, None)]).newest.expect("a visit");
    assert_eq!(nothing.lacking, [Needed::Arm, Needed::Feet]);
    let not_yet = way(vec![arm(10, Some(124), Some(false))]);
    assert_eq!((not_yet.first_clear_on, not_yet.newest.and_then(|newest| newest.result)), (None, Some(TestResult::NotMet)));
    let again = way(vec![arm(10, Some(125), Some(false)), arm(20, Some(113), None)]);
    assert_eq!((again.first_clear_on, again.newest), (None, None));
}

#[test]
fn an_outcome_is_missing_until_it_is_told_after_the_last_firing() {
    let sign = |day: i32, signs: &[DangerSign], outcome: Option<Outcome>| {
        visit(add_days(months(8), day), |v| {
            v.danger_signs = Some(signs.iter().copied().collect());
            v.outcomes = outcome.map(|outcome| told(RuleId::DangerGeneral, outcome)).into_iter().collect();
        })
    };
    let lethargic = [DangerSign::Lethargic];
    let way = |visits| way_of(&girl(), RuleId::DangerGeneral, visits);
    let open = way(vec![sign(0, &lethargic, None), sign(3, &[], None)]).expect("open");
    assert_eq!((open.way, open.care_told), (Way::CareAndTest, false));
    assert_eq!(open.newest.and_then(|newest| newest.result), Some(TestResult::Met));
    let unasked = visit(add_days(months(8), 3), |v| v.outcomes = vec![told(RuleId::DangerGeneral, Outcome::Seen)]);
    let told_only = way(vec![sign(0, &lethargic, None), unasked]).expect("open");
    assert!(told_only.care_told);
    assert_eq!(told_only.newest.map(|newest| newest.lacking), Some(vec![Needed::Signs]));
    assert!(way(vec![sign(0, &lethargic, None), sign(3, &[], Some(Outcome::Refused))]).is_some_and(|way| !way.care_told));
    assert_eq!(way(vec![sign(0, &lethargic, None), sign(3, &[], Some(Outcome::Seen))]), None, "closed");
}

#[test]
fn the_numbers_told_are_those_that_close() {
    let child = girl();
    let at = |day: i32, g| visit(days(day), move |v| v.weight = grams(g));
    let loss = |later: Option<Visit>| {
        let visits = [at(250, 8_000), at(280, 7_800)].into_iter().chain(later).collect();
        way_of(&child, RuleId::WeightLoss, visits)
    };
    let open = loss(None).expect("open");
    assert_eq!(open.numbers.get(K::Weight), Some(&Quantity::Grams(7_900)));
    assert_eq!(open.numbers.get(K::Date), Some(&Quantity::On(days(294))));
    assert!(loss(Some(at(294, 7_901))).is_none() && loss(Some(at(294, 7_900))).is_some() && loss(Some(at(293, 7_901))).is_some());
    let early = visit(days(100), |v| v.solids_yesterday = Some(true));
    let open = way_of(&child, RuleId::SolidsEarly, vec![early]).expect("open");
    assert_eq!(open.numbers.get(K::Date), Some(&Quantity::On(days(180))));
    let drift_child = Child { birth_weight: grams(3_200), ..girl() };
    let fell = visit(days(120), |v| v.weight = weight_at(&drift_child, days(120), -145));
    let open = way_of(&drift_child, RuleId::WeightDrift, vec![fell.clone()]).expect("open");
    let Some(Quantity::ZHundredths(above)) = open.numbers.get(K::Waz).cloned() else { panic!("a z") };
    let now_at = |z| visit(days(121), |v| v.weight = weight_at(&drift_child, days(121), z));
    assert!(way_of(&drift_child, RuleId::WeightDrift, vec![fell.clone(), now_at(above)]).is_some());
    assert!(way_of(&drift_child, RuleId::WeightDrift, vec![fell, now_at(above + 1)]).is_none());
}

#[test]
fn a_gain_that_is_still_to_come_is_told_with_its_days_and_grams() {
    let at = |day: i32, g| visit(days(day), move |v| v.weight = grams(g));
    for (first, second, least) in [(100, 120, 7), (220, 260, 28), (380, 460, 56)] {
        let open = way_of(&girl(), RuleId::WeightStatic, vec![at(first, 8_000), at(second, 8_000)]).expect("open");
        assert_eq!(open.numbers.lines(), [(K::Days, Quantity::Days(least))], "{second}");
    }
    let slow = way_of(&girl(), RuleId::WeightSlowGain, vec![at(94, 5_900), at(122, 5_950)]).expect("open");
    assert_eq!((slow.numbers.get(K::Days), slow.numbers.get(K::IntervalDays)), (Some(&Quantity::Days(14)), Some(&Quantity::Days(28))));
    assert!(matches!(slow.numbers.get(K::Floor), Some(Quantity::GramsExact(_))), "{:?}", slow.numbers);
}

/// What the rule closes by, told as numbers; the figures are those of the shipped protocol, written out.
#[test]
fn each_rule_tells_the_numbers_of_its_own_test() {
    type Fill = Box<dyn Fn(&mut Visit)>;
    /// What makes a rule fire: on a day, at a visit so filled in.
    type Firing = (Child, RuleId, NaiveDate, Fill);
    let small = Child { birth_weight: grams(2_400), ..girl() };
    let z = |rule, on, hundredths| (girl(), rule, on, Box::new(move |v: &mut Visit| v.weight = weight_at(&girl(), on, hundredths)) as Fill);
    let (short_on, short) = length_at(&girl(), -250);
    let fed = |meals| move |v: &mut Visit| (v.breastfed, v.solids_yesterday, v.meals) = (Some(true), Some(true), Some(meals));
    let no_breast = |v: &mut Visit| {
        v.breastfed = Some(false);
        (v.formula_times, v.animal_milk_times, v.drink_yogurt_times, v.spoon_yogurt_times) = (Some(1), Some(0), Some(0), Some(0));
    };
    let date = |on| (K::Date, Quantity::On(on));
    let limit = |hundredths| (K::Limit, Quantity::ZHundredths(hundredths));
    let cases: Vec<(Firing, Vec<(K, Quantity)>)> = vec![
        (z(RuleId::WeightVeryLow, months(8), -301), vec![limit(-300)]),
        (z(RuleId::WeightLow, months(8), -250), vec![limit(-200)]),
        (z(RuleId::WeightHigh, months(8), 250), vec![limit(200)]),
        ((girl(), RuleId::LengthLow, short_on, Box::new(move |v| v.length = short)), vec![limit(-200)]),
        (
            (girl(), RuleId::WastingModerate, months(8), Box::new(|v| v.muac = muac(120))),
            vec![(K::Muac, Quantity::Millimetres(125)), (K::Wlz, Quantity::ZHundredths(-200))],
        ),
        (
            (girl(), RuleId::WastingYoung, months(4), Box::new(|v| v.muac = muac(109))),
            vec![(K::Muac, Quantity::Millimetres(110)), (K::Wlz, Quantity::ZHundredths(-200))],
        ),
        (
            (small.clone(), RuleId::BirthWeightNotRegained, days(20), Box::new(|v| v.weight = grams(2_300))),
            vec![(K::BirthWeight, Quantity::Grams(2_400))],
        ),
        ((small, RuleId::BirthLow, days(20), Box::new(|_| {})), vec![date(days(62))]),
        ((girl(), RuleId::LiquidsEarly, days(100), Box::new(|v| v.other_drink = Some(true))), vec![date(days(180))]),
        ((girl(), RuleId::MilkAnimalEarly, days(100), Box::new(|v| v.animal_milk_times = Some(1))), vec![date(months(6))]),
        (
            (
                girl(),
                RuleId::TextureBehind,
                months(10),
                Box::new(|v| (v.solids_yesterday, v.texture_best) = (Some(true), crate::food::Texture::new(1))),
            ),
            vec![(K::TextureExpected, Quantity::Texture(2))],
        ),
        ((girl(), RuleId::MealsFew, months(7), Box::new(fed(1))), vec![(K::Least, Quantity::Count(2))]),
        ((girl(), RuleId::MealsFew, months(9), Box::new(fed(2))), vec![(K::Least, Quantity::Count(3))]),
        ((girl(), RuleId::MilkFew, add_days(months(6), -1), Box::new(no_breast)), vec![(K::Least, Quantity::Count(6))]),
        ((girl(), RuleId::MilkFew, months(6), Box::new(no_breast)), vec![(K::Least, Quantity::Count(2))]),
        (
            (girl(), RuleId::DiversityLow, months(8), Box::new(|v| v.groups = Some([crate::food::FoodGroup::Eggs].into()))),
            vec![(K::Least, Quantity::Count(5))],
        ),
        (
            (girl(), RuleId::FoodHoney, months(8), Box::new(|v| v.foods.push(food(FoodCode::HONEY, None)))),
            vec![date(add_days(months(8), 30))],
        ),
        ((girl(), RuleId::AppetitePoor, months(8), Box::new(|v| v.appetite_poor_days = Some(4))), vec![(K::Days, Quantity::Count(3))]),
        ((girl(), RuleId::DrinkSweet, months(8), Box::new(|v| v.sweet_drink = Some(true))), vec![]),
    ];
    for ((child, rule, on, fill), numbers) in cases {
        let open = way_of(&child, rule, vec![visit(on, fill)]).unwrap_or_else(|| panic!("{rule:?} is open"));
        assert_eq!(open.numbers.lines(), numbers, "{rule:?}");
    }
    let weight = |on, z| visit(on, |v| v.weight = weight_at(&girl(), on, z));
    let fallen = way_of(&girl(), RuleId::WeightDrop, vec![weight(days(60), 0), weight(days(100), -80)]).expect("open");
    assert_eq!(fallen.numbers.lines(), [limit(67)], "a fall is told without its sign");
    // From 6 months on the thin young infant is tested as an older child.
    let young = visit(months(4), |v| v.muac = muac(109));
    for (on, clear_mm) in [(add_days(months(6), -1), 110), (months(6), 125)] {
        let older = way_of(&girl(), RuleId::WastingYoung, vec![young.clone(), visit(on, |_| {})]).expect("open");
        assert_eq!(older.numbers.get(K::Muac), Some(&Quantity::Millimetres(clear_mm)), "{on}");
    }
}

fn whats(judged: &Assessment, rule: RuleId) -> Vec<(What, Class)> {
    steps(&judged.visits, follow_up(judged, rule)).into_iter().map(|step| (step.what, step.class)).collect()
}

#[test]
fn every_visit_says_why_it_stayed_as_it_was() {
    let low = |z: i32, month: u32| visit(months(month), |v| v.weight = weight_at(&girl(), months(month), z));
    // From 6 months -3.01 is within 2 days; the chain hands it on to the lower rule only when it clears.
    let visits = vec![
        low(-301, 8),
        visit(months(9), |v| v.meals = Some(2)),
        visit(months(10), |v| v.outcomes = vec![told(RuleId::WeightVeryLow, Outcome::NotReached)]),
        low(-310, 11),
        low(-290, 12),
    ];
    let judged = judge(&girl(), visits);
    let class = Class::TwoDays;
    assert_eq!(
        whats(&judged, RuleId::WeightVeryLow),
        [
            (What::Opened, class),
            (What::Kept(Kept::CannotTell(Why::Missing)), class),
            (What::Outcome(Outcome::NotReached), class),
            (What::Kept(Kept::CannotTell(Why::Missing)), class),
            (What::Refreshed { milder: None }, class),
            (What::Closed(CloseReason::ResolvedByVisit, None), class),
        ]
    );
}

#[test]
fn a_milder_visit_a_raise_and_a_higher_rule_are_told() {
    // No meal twice in a row is more urgent; two meals of three at nine months are milder and keep it so.
    let meals = |month: u32, n: u8| {
        visit(months(month), move |v| {
            v.breastfed = Some(true);
            v.solids_yesterday = Some(true);
            v.meals = Some(n);
        })
    };
    let judged = judge(&girl(), vec![meals(9, 2), meals(10, 0), meals(11, 0), meals(12, 2)]);
    assert_eq!(
        whats(&judged, RuleId::MealsFew),
        [
            (What::Opened, Class::Fortnight),
            (What::Refreshed { milder: None }, Class::Fortnight),
            (What::Raised, Class::Week),
            (What::Refreshed { milder: Some(Class::Fortnight) }, Class::Week),
        ]
    );
    let judged = judge(&girl(), vec![arm(0, Some(120), None), arm(10, Some(112), None)]);
    let replaced = whats(&judged, RuleId::WastingModerate);
    assert_eq!(replaced.last().map(|(what, _)| *what), Some(What::Closed(CloseReason::Replaced, Some(RuleId::WastingSevere))));
    let late = |month: u32, fill: fn(&mut Visit)| {
        visit(months(month), move |v| {
            v.solids_yesterday = Some(false);
            fill(v);
        })
    };
    // Muted while solids are late: it holds, opens nothing, and an open one stays as it was.
    let first = visit(months(8), |v| {
        v.groups = Some(std::iter::once(crate::food::FoodGroup::BreastMilk).collect());
    });
    let judged = judge(&girl(), vec![first, late(9, |v| v.groups = Some(std::iter::once(crate::food::FoodGroup::BreastMilk).collect()))]);
    assert_eq!(
        whats(&judged, RuleId::DiversityLow).last().map(|(what, _)| *what),
        Some(What::Kept(Kept::Covered(Standing::Muted(RuleId::SolidsLate))))
    );
}

#[test]
fn nothing_is_told_of_a_follow_up_after_a_supervisor_closed_it() {
    let mut visits = vec![visit(months(8), |v| v.sweet_drink = Some(true)), visit(months(9), |_| {}), visit(months(10), |_| {})];
    for (visit, id) in visits.iter_mut().zip(1..) {
        visit.id = VisitId(id);
    }
    // The act comes after the visit of its day.
    let closed_on = months(9);
    let act = SupervisorAct { rule: RuleId::DrinkSweet, opened_by: VisitId(1), closed_on };
    let acts = Acts { supervisor: &[act], left_on: None };
    let judged = assess_with(&girl(), &visits, protocols(), &acts, months(10));
    let told: Vec<_> = steps(&judged.visits, follow_up(&judged, RuleId::DrinkSweet)).iter().map(|step| (step.on, step.what)).collect();
    assert_eq!(
        told,
        [
            (months(8), What::Opened),
            (months(9), What::Kept(Kept::CannotTell(Why::Missing))),
            (months(9), What::Closed(CloseReason::SupervisorDecision, None)),
        ]
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn steps_tell_the_whole_life_of_every_follow_up((child, visits) in story()) {
        let as_of = visits.last().expect("a visit").on;
        let judged = assess(&child, &visits, protocols(), as_of);
        for follow_up in &judged.follow_ups {
            let told: Vec<Step> = steps(&judged.visits, follow_up);
            let (first, last) = (told.first().expect("a step"), told.last().expect("a step"));
            prop_assert_eq!(first.what, What::Opened);
            prop_assert_eq!((last.class, last.due_on), (follow_up.class, follow_up.due_on), "{:?}", follow_up.rule);
            prop_assert!(told.windows(2).all(|pair| pair[0].on <= pair[1].on && pair[1].class <= pair[0].class));
            let closings = told.iter().filter(|step| matches!(step.what, What::Closed(..))).count();
            prop_assert_eq!(closings, usize::from(!follow_up.is_open()));
            prop_assert!(follow_up.is_open() || matches!(last.what, What::Closed(..)));
            // Every visit from the opening to the end has its step.
            let opened = judged.visits.iter().position(|visit| visit.visit == follow_up.opened_by).expect("its visit");
            let ended = follow_up.closed.and_then(|closed| closed.by_visit);
            let end = ended.and_then(|id| judged.visits.iter().position(|visit| visit.visit == id)).unwrap_or(judged.visits.len() - 1);
            for visit in &judged.visits[opened..=end] {
                prop_assert!(told.iter().any(|step| step.visit == Some(visit.visit)), "{:?} on {}", follow_up.rule, visit.on);
            }
            let find = |id: VisitId| visits.iter().find(|visit| visit.id == id);
            let way = to_close(follow_up, &child, &judged, find);
            prop_assert_eq!(way.is_some(), follow_up.is_open());
            // What is told as missing is not there: an open follow-up that needs care alone never has it.
            if let Some(way) = way {
                prop_assert!(way.way != Way::Care || !way.care_told);
                prop_assert!(way.second_from.is_none_or(|from| way.newest.as_ref().is_none_or(|n| n.result != Some(TestResult::Met) || n.on < from)));
            }
        }
    }
}

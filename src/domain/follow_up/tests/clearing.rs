//! How follow-ups clear: two visits, the same evidence again, outcomes that count.

use super::*;
use crate::follow_up::EventKind;
use crate::rule::CloseReason;

fn arm(on: NaiveDate, mm: Option<u16>, oedema: Option<bool>) -> Visit {
    visit(on, |v| {
        v.muac = mm.and_then(muac);
        v.oedema = oedema;
    })
}

#[test]
fn wasting_clears_at_two_visits_a_week_apart() {
    let first = months(8);
    let closed = |later: &[(i32, Option<u16>, Option<bool>)]| {
        let mut visits = vec![arm(first, Some(112), None)];
        visits.extend(later.iter().map(|(days, mm, oedema)| arm(add_days(first, *days), *mm, *oedema)));
        follow_up(&judge(&girl(), visits), RuleId::WastingSevere).closed.map(|closed| closed.reason)
    };
    let done = Some(CloseReason::ResolvedByVisit);
    let no = Some(false);
    assert_eq!(closed(&[(10, Some(125), no), (17, Some(125), no)]), done);
    assert_eq!(closed(&[(10, Some(125), no), (16, Some(125), no)]), None, "6 days apart");
    assert_eq!(closed(&[(10, Some(125), no), (16, Some(125), no), (17, Some(126), no)]), done, "the first and the third");
    assert_eq!(closed(&[(10, Some(125), no)]), None);
    assert_eq!(closed(&[(10, Some(124), no), (20, Some(125), no)]), None);
    assert_eq!(closed(&[(10, Some(125), None), (20, Some(125), no)]), None, "swelling not asked");
    assert_eq!(closed(&[(10, Some(125), no), (20, Some(125), Some(true)), (30, Some(125), no)]), None, "swelling breaks the row");
    assert_eq!(closed(&[(10, Some(125), no), (20, Some(124), no), (30, Some(125), no)]), None, "known to fail breaks the row");
    assert_eq!(closed(&[(10, Some(125), no), (20, None, None), (30, Some(125), no)]), done, "a visit that cannot tell does not");
    assert_eq!(closed(&[(0, Some(125), no), (10, Some(125), no)]), None, "the day of opening does not count");
    assert_eq!(closed(&[(5, Some(125), no), (10, Some(114), no), (15, Some(125), no), (21, Some(125), no)]), None, "it fired again");
    assert_eq!(closed(&[(5, Some(125), no), (10, Some(114), no), (15, Some(125), no), (22, Some(125), no)]), done);
}

#[test]
fn a_young_infant_clears_by_the_evidence_that_made_it_fire() {
    let on = days(60);
    let first = visit(on, |v| v.muac = muac(105));
    let with = |age: i32, mm: Option<u16>, with_weight: bool| {
        let on = days(age);
        visit(on, |v| {
            v.muac = mm.and_then(muac);
            if with_weight {
                v.length = length(580);
                v.weight = weight_for(&girl(), on, 580, 0);
            }
        })
    };
    let open = |second, third| follow_up(&judge(&girl(), vec![first.clone(), second, third]), RuleId::WastingYoung).is_open();
    assert!(open(with(70, None, true), with(80, None, true)), "the arm is not known again");
    assert!(!open(with(70, Some(112), false), with(80, Some(112), false)));
}

#[test]
fn a_high_weight_clears_by_what_it_rested_on() {
    let (one, two) = (months(8), months(9));
    let by_age = |on, z| visit(on, |v| v.weight = weight_at(&girl(), on, z));
    let by_length = |on, z| {
        visit(on, |v| {
            v.length = length(690);
            v.weight = weight_for(&girl(), on, 690, z);
        })
    };
    let open = |first, second| follow_up(&judge(&girl(), vec![first, second]), RuleId::WeightHigh).is_open();
    assert!(!open(by_age(one, 250), by_age(two, 150)));
    assert!(open(by_length(one, 250), by_age(two, 150)), "weight for length is not known again");
    assert!(!open(by_length(one, 250), by_length(two, 150)));
}

#[test]
fn a_loss_is_regained_only_well_above_the_weight_of_the_loss() {
    let at = |day: i32, g| visit(days(day), move |v| v.weight = grams(g));
    let open = |day, g| follow_up(&judge(&girl(), vec![at(250, 8_000), at(280, 7_800), at(day, g)]), RuleId::WeightLoss).is_open();
    assert!(open(293, 8_200), "13 days after");
    assert!(open(294, 7_900), "100 g may be the scale");
    assert!(!open(294, 7_901));
}

#[test]
fn a_muted_or_missing_answer_closes_nothing() {
    let first = visit(months(7), |v| v.sweet_drink = Some(true));
    let open = |second: Visit| follow_up(&judge(&girl(), vec![first.clone(), second]), RuleId::DrinkSweet).is_open();
    assert!(open(visit(months(8), |_| {})));
    assert!(!open(visit(months(8), |v| v.sweet_drink = Some(false))));
    assert!(open(visit(months(7), |v| v.sweet_drink = Some(false))), "the day of opening");
    assert!(open(visit(months(24), |v| v.sweet_drink = Some(false))), "feeding rules end at 24 months; leaving ends what is left");
}

#[test]
fn wasting_treatment_closes_and_mutes_for_four_weeks() {
    let first = months(8);
    let treated = |on, outcomes: &'static [Outcome]| {
        visit(on, move |v| {
            v.muac = muac(112);
            v.outcomes = outcomes.iter().map(|outcome| told(RuleId::WastingSevere, *outcome)).collect();
        })
    };
    let start = add_days(first, 5);
    let visits =
        |day, outcomes| vec![arm(first, Some(112), None), treated(start, &[Outcome::InTreatment]), treated(add_days(start, day), outcomes)];
    let judged = judge(&girl(), visits(28, &[]));
    assert_eq!(follow_up(&judged, RuleId::WastingSevere).closed.map(|closed| closed.reason), Some(CloseReason::InCareElsewhere));
    assert_eq!(standing(&judged, RuleId::WastingSevere), Some(Standing::InTreatment));
    assert_eq!(standing(&judge(&girl(), visits(29, &[])), RuleId::WastingSevere), Some(Standing::Stands));
    let discharged = judge(&girl(), visits(10, &[Outcome::Discharged]));
    assert_eq!(standing(&discharged, RuleId::WastingSevere), Some(Standing::Stands));
    let again = judge(&girl(), visits(29, &[Outcome::InTreatment]));
    assert_eq!(standing(&again, RuleId::WastingSevere), Some(Standing::InTreatment));
}

#[test]
fn a_closed_follow_up_is_never_opened_again() {
    let at = |month, sweet| visit(months(month), move |v| v.sweet_drink = Some(sweet));
    let judged = judge(&girl(), vec![at(7, true), at(8, false), at(9, true)]);
    let states: Vec<_> = judged
        .follow_ups
        .iter()
        .filter(|follow_up| follow_up.rule == RuleId::DrinkSweet)
        .map(|follow_up| (follow_up.opened_on, follow_up.is_open()))
        .collect();
    assert_eq!(states, [(months(7), false), (months(9), true)]);
    let kinds: Vec<_> = judged
        .visits
        .iter()
        .flat_map(|visit| &visit.events)
        .filter(|event| event.rule == RuleId::DrinkSweet)
        .map(|event| event.kind)
        .collect();
    assert_eq!(kinds, [EventKind::Opened, EventKind::Closed(CloseReason::ResolvedByVisit), EventKind::Opened]);
}

//! The engine as a whole: chains, takeovers, rising and due days, what counts as followed up, supervisors, leaving.

use super::*;
use crate::assess::{Acts, assess_with};
use crate::follow_up::{SupervisorAct, may_close};
use crate::rule::{CloseReason, FollowUpState};

/// A visit weighed at a z.
fn weighed(on: NaiveDate, waz: i32) -> Visit {
    visit(on, |v| v.weight = weight_at(&girl(), on, waz))
}

#[test]
fn the_higher_rule_takes_over_with_the_more_severe_class() {
    // Under 6 months low weight is "week"; from 6 months very low weight is "two_days".
    let (one, two) = (months(5), months(6));
    let judged = judge(&girl(), vec![weighed(one, -250), weighed(two, -310)]);
    let low = follow_up(&judged, RuleId::WeightLow);
    let closed = low.closed.expect("closed");
    assert_eq!((closed.reason, closed.on, closed.replaced_by), (CloseReason::Replaced, two, Some((RuleId::WeightVeryLow, VisitId(2)))));
    assert_eq!(follow_up(&judged, RuleId::WeightVeryLow).class, Class::TwoDays);
    // The other way round: standstill under 6 months is "two_days", a loss from 6 months on "week"; the class is kept.
    let weights = [(months(5), 7_000), (add_days(months(5), 20), 7_000), (months(6), 6_850)];
    let judged = judge(&girl(), weights.map(|(on, g)| visit(on, |v| v.weight = grams(g))).into());
    let loss = follow_up(&judged, RuleId::WeightLoss);
    assert_eq!(judged.visits[2].finding(RuleId::WeightLoss).map(|finding| finding.class), Some(Class::Week));
    assert_eq!((loss.class, loss.due_on), (Class::TwoDays, add_days(months(6), 2)));
}

#[test]
fn lower_rules_that_hold_are_told_as_also_true() {
    let (one, two) = (months(8), add_days(months(8), 30));
    let judged = judge(&girl(), vec![visit(one, |v| v.weight = grams(8_000)), visit(two, |v| v.weight = grams(7_800))]);
    assert_eq!(standing(&judged, RuleId::WeightStatic), Some(Standing::Silenced(RuleId::WeightLoss)));
    assert_eq!(follow_up(&judged, RuleId::WeightLoss).also_true, [RuleId::WeightStatic]);
    assert!(judged.follow_ups.iter().all(|follow_up| follow_up.rule != RuleId::WeightStatic));
}

#[test]
fn late_solids_mute_the_rules_on_food() {
    let quiet = |v: &mut Visit| {
        v.solids_yesterday = Some(false);
        v.groups = Some([].into());
        v.iron_source = Some(false);
    };
    let judged = judge(&girl(), vec![visit(months(8), quiet)]);
    for rule in [RuleId::DiversityLow, RuleId::IronNone, RuleId::AnimalFoodNone, RuleId::VegFruitNone] {
        assert_eq!(standing(&judged, rule), Some(Standing::Muted(RuleId::SolidsLate)), "{rule:?}");
    }
    assert_eq!(judged.follow_ups.len(), 1);
}

#[test]
fn the_class_only_rises_and_the_due_day_follows() {
    let first = months(8);
    let groups = |days, n: usize| {
        let all = [crate::food::FoodGroup::BreastMilk, crate::food::FoodGroup::Flesh, crate::food::FoodGroup::VitA];
        visit(add_days(first, days), |v| v.groups = Some(all.into_iter().take(n).collect()))
    };
    let of = |visits| {
        let judged = judge(&girl(), visits);
        let low = follow_up(&judged, RuleId::DiversityLow);
        (low.class, low.due_on)
    };
    // A month falls on the next slot, never sooner than a week: the slot of 9 months here.
    assert_eq!(of(vec![groups(0, 3)]), (Class::Month, add_days(first, 30).min(months(9))));
    // Raised while the old day is still to come: the earlier of the two.
    assert_eq!(of(vec![groups(0, 3), groups(20, 1)]), (Class::Fortnight, months(9).min(add_days(first, 30))));
    assert_eq!(of(vec![groups(0, 3), groups(2, 1)]), (Class::Fortnight, add_days(first, 16)));
    // Refreshed at the same class: counted from the visit.
    assert_eq!(of(vec![groups(0, 1), groups(5, 1)]), (Class::Fortnight, add_days(first, 19)));
    // A milder firing never lowers it.
    let trouble = |on| visit(on, |v| v.breastfeeding_trouble = Some(true));
    let judged = judge(&girl(), vec![trouble(months(5)), trouble(months(6))]);
    let kept = follow_up(&judged, RuleId::BreastfeedingTrouble);
    assert_eq!((kept.class, kept.due_on), (Class::TwoDays, add_days(months(6), 2)));
}

#[test]
fn the_month_falls_on_the_next_slot_but_never_within_a_week() {
    let due = |on| follow_up(&judge(&girl(), vec![visit(on, |v| v.bottle = Some(true))]), RuleId::BottleUsed).due_on;
    // Slots at 8 and 9 months: 10 September and 10 October.
    assert_eq!(due(day("2025-09-02")), day("2025-09-10"));
    assert_eq!(due(day("2025-09-03")), day("2025-09-10"));
    assert_eq!(due(day("2025-09-04")), day("2025-09-11"), "the slot is 6 days ahead");
    assert_eq!(due(day("2025-09-10")), day("2025-10-10"), "the slot of the day itself is no later one");
    // From 12 months slots are two months apart: 30 days.
    assert_eq!(due(day("2026-01-12")), day("2026-02-11"));
}

#[test]
fn what_counts_as_followed_up() {
    let at = |days, answer| visit(add_days(months(8), days), move |v| v.sweet_drink = answer);
    let judged = judge(&girl(), vec![at(0, Some(true)), at(0, Some(true)), at(3, None), at(10, Some(true)), at(40, Some(false))]);
    let sweet = follow_up(&judged, RuleId::DrinkSweet);
    let followed: Vec<_> = sweet.followed_up.iter().map(|done| (done.visit, done.on_time())).collect();
    // The day of opening and a visit without the answer do not count; the last one comes after the slot of 9 months.
    assert_eq!(followed, [(VisitId(4), true), (VisitId(5), false)]);
    assert_eq!(sweet.state(), FollowUpState::Done);
}

#[test]
fn outcomes_count_only_after_the_last_firing() {
    let fires = |on| visit(on, |v| v.swallow_trouble = Some(crate::visit::SwallowTrouble::Repeated));
    let told_at = |on, mut v: Visit| {
        v.on = on;
        v.outcomes.push(told(RuleId::FeedingSwallowTrouble, Outcome::Seen));
        v
    };
    let open = |visits| {
        let judged = judge(&girl(), visits);
        let trouble = follow_up(&judged, RuleId::FeedingSwallowTrouble);
        (trouble.is_open(), trouble.outcome_since_fired, trouble.outcomes.len())
    };
    let none = visit(months(9), |_| {});
    assert_eq!(open(vec![fires(months(8)), told_at(months(9), none.clone())]), (false, true, 1));
    assert_eq!(open(vec![told_at(months(8), fires(months(8)))]), (true, false, 0), "told at the visit that opens it");
    let again = told_at(months(9), fires(months(9)));
    assert_eq!(open(vec![fires(months(8)), again]), (true, false, 1), "told at a visit at which it fires again");
    assert_eq!(open(vec![fires(months(8)), told_at(months(8), none)]), (false, true, 1), "a second visit of the day tells of it");
}

#[test]
fn a_supervisor_closes_and_a_later_visit_opens_a_new_one() {
    let child = girl();
    let sweet = |number, on| {
        let mut visit = visit(on, |v| v.sweet_drink = Some(true));
        visit.id = VisitId(number);
        visit
    };
    let act = SupervisorAct { rule: RuleId::DrinkSweet, opened_by: VisitId(1), closed_on: add_days(months(8), 9) };
    let judge = |visits: &[Visit], acts: &[SupervisorAct], as_of| {
        assess_with(&child, visits, protocols(), &Acts { supervisor: acts, left_on: None }, as_of)
    };
    let one = sweet(1, months(8));
    let closed = judge(std::slice::from_ref(&one), &[act], months(9));
    assert_eq!(closed.follow_ups[0].state(), FollowUpState::ClosedBySupervisor);
    assert_eq!(judge(std::slice::from_ref(&one), &[act], add_days(months(8), 8)).follow_ups[0].state(), FollowUpState::Open);
    // A visit before the act, entered later, refreshes what was open then; one after it opens a new follow-up.
    let visits = [one.clone(), sweet(2, add_days(months(8), 5)), sweet(3, months(9))];
    let states: Vec<_> = judge(&visits, &[act], months(9))
        .follow_ups
        .iter()
        .filter(|f| f.rule == RuleId::DrinkSweet)
        .map(|f| (f.opened_by, f.state()))
        .collect();
    assert_eq!(states, [(VisitId(1), FollowUpState::ClosedBySupervisor), (VisitId(3), FollowUpState::Open)]);
    assert_eq!(judge(&visits[..2], &[act], months(9)).follow_ups[0].last_fired_by, VisitId(2));
}

#[test]
fn what_is_urgent_is_not_closed_by_a_supervisor_without_an_outcome() {
    let child = girl();
    let mut danger = visit(months(8), |v| v.danger_signs = Some([crate::visit::DangerSign::FitsNow].into()));
    danger.id = VisitId(1);
    let act = SupervisorAct { rule: RuleId::DangerGeneral, opened_by: VisitId(1), closed_on: months(9) };
    let acts = Acts { supervisor: &[act], left_on: None };
    let judged = assess_with(&child, std::slice::from_ref(&danger), protocols(), &acts, months(10));
    assert!(judged.follow_ups[0].is_open() && !may_close(&judged.follow_ups[0]));
    let mut refused = visit(add_days(months(8), 1), |v| v.outcomes.push(told(RuleId::DangerGeneral, Outcome::Refused)));
    refused.id = VisitId(2);
    let judged = assess_with(&child, &[danger, refused], protocols(), &acts, months(10));
    assert_eq!(judged.follow_ups[0].state(), FollowUpState::ClosedBySupervisor);
}

#[test]
fn leaving_ends_what_is_open() {
    let mut child = girl();
    child.status = ChildStatus::Moved;
    let visits = [visit(months(8), |v| v.sweet_drink = Some(true))];
    let acts = Acts { supervisor: &[], left_on: Some(months(9)) };
    let before = assess_with(&child, &visits, protocols(), &acts, add_days(months(9), -1));
    assert!(before.follow_ups[0].is_open() && before.next_visit.is_some());
    let after = assess_with(&child, &visits, protocols(), &acts, months(9));
    let closed = after.follow_ups[0].closed.expect("closed");
    assert_eq!((closed.reason, closed.on, after.follow_ups[0].state()), (CloseReason::Moved, months(9), FollowUpState::Ended));
    assert!(after.lists.is_empty() && after.next_visit.is_none());
}

#[test]
fn a_rule_switched_off_says_nothing_and_closes_nothing() {
    let mut off = default_protocol().clone();
    off.rules.drink_sweet.on = false;
    off.effective_from = months(9);
    let mut first = default_protocol().clone();
    first.effective_from = months(0);
    let protocols = Protocols::new(vec![off, first]).expect("two protocols");
    let mut visits = vec![visit(months(8), |v| v.sweet_drink = Some(true)), visit(months(9), |v| v.sweet_drink = Some(false))];
    visits[1].id = VisitId(1);
    let judged = assess(&girl(), &visits, &protocols, months(9));
    assert!(follow_up(&judged, RuleId::DrinkSweet).is_open());
    let off = judged.visits[1].answer(RuleId::DrinkSweet);
    assert_eq!(off, Some(Answer::CannotTell(crate::follow_up::Why::Off)));
}

#[test]
fn a_follow_up_keeps_the_protocol_of_the_visit_at_which_it_last_fired() {
    let version = |name: &str, from: NaiveDate| {
        let mut protocol = default_protocol().clone();
        (protocol.version, protocol.effective_from) = (name.to_owned(), from);
        protocol
    };
    let protocols = Protocols::new(vec![version("first", months(0)), version("second", months(9))]).expect("two protocols");
    let sweet = |on, id| {
        let mut visit = visit(on, |v| v.sweet_drink = Some(true));
        visit.id = VisitId(id);
        visit
    };
    let last_fired = |visits: &[Visit], as_of| {
        let judged = assess(&girl(), visits, &protocols, as_of);
        follow_up(&judged, RuleId::DrinkSweet).protocol.version.clone()
    };
    let mut visits = vec![sweet(months(7), 1), sweet(months(8), 2)];
    assert_eq!(last_fired(&visits, months(10)), "first", "a newer one changes nothing by itself");
    visits.push(sweet(months(9), 3));
    assert_eq!(last_fired(&visits, months(10)), "second");
}

#[test]
fn what_stands_at_a_visit_is_told_most_severe_first_and_without_what_is_silenced() {
    // Neither iron nor food of animals: the second is silenced by the first.
    let judged = judge(
        &girl(),
        vec![visit(months(8), |v| {
            (v.sweet_drink, v.muac) = (Some(true), muac(112));
            (v.groups, v.iron_source) = (Some([crate::food::FoodGroup::VitA].into()), Some(false));
        })],
    );
    let judged = &judged.visits[0];
    assert_eq!(judged.finding(RuleId::AnimalFoodNone).map(|finding| finding.standing), Some(Standing::Silenced(RuleId::IronNone)));
    let standing: Vec<_> = judged.standing().iter().map(|finding| (finding.class, finding.rule)).collect();
    let rules: Vec<_> = standing.iter().map(|(_, rule)| *rule).collect();
    assert_eq!(rules[0], RuleId::WastingSevere);
    assert!(rules.contains(&RuleId::IronNone) && rules.contains(&RuleId::DrinkSweet) && !rules.contains(&RuleId::AnimalFoodNone));
    assert_eq!(rules.len(), judged.findings.len() - 1);
    assert!(standing.is_sorted_by_key(|(class, _)| *class), "{standing:?}");
}

#[test]
fn a_visit_has_an_answer_of_every_rule_but_the_lists() {
    let judged = judge(&girl(), vec![visit(months(8), |v| (v.bottle, v.sweet_drink) = (Some(true), Some(true)))]);
    let judged = &judged.visits[0];
    for rule in RuleId::ALL {
        assert_eq!(judged.answer(*rule).is_none(), rule.is_list(), "{rule:?}");
        let fires = judged.answer(*rule).and_then(Answer::class);
        assert_eq!(judged.finding(*rule).map(|finding| finding.class), fires, "{rule:?}");
    }
    assert_eq!(judged.findings.iter().map(|finding| finding.rule).collect::<Vec<_>>(), [RuleId::DrinkSweet, RuleId::BottleUsed]);
}

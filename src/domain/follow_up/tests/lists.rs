//! The three lists and the visit slots on their first and last days.

use super::*;
use crate::schedule::SlotState;

/// Lists on a day, with days over.
fn lists(child: &Child, visits: &[Visit], as_of: NaiveDate) -> Vec<(RuleId, i32)> {
    assess(child, visits, protocols(), as_of).lists.iter().map(|list| (list.rule, list.days_over(as_of))).collect()
}

#[test]
fn a_slot_is_overdue_the_day_after_it_closes() {
    // Slot of 6 months: 10 July, closes 20 July; the visit of 5 months filled the slot before.
    let visits = [visit(months(5), |_| {})];
    assert_eq!(lists(&girl(), &visits, day("2025-07-20")), []);
    assert_eq!(lists(&girl(), &visits, day("2025-07-21")), [(RuleId::VisitOverdue, 1)]);
    // A visit nearest to the slot of 6 months and 14 days passes over the one of 6 months.
    let later = [visits[0].clone(), visit(day("2025-07-18"), |_| {})];
    let judged = assess(&girl(), &later, protocols(), day("2025-07-21"));
    assert_eq!(judged.lists, []);
    let six = judged.slots.iter().find(|slot| slot.window.target == months(6)).expect("a slot");
    assert_eq!(six.state, SlotState::Skipped);
    // As near to both: the later slot.
    let between = [visits[0].clone(), visit(day("2025-07-17"), |_| {})];
    let judged = assess(&girl(), &between, protocols(), day("2025-07-21"));
    assert_eq!(
        judged.slots.iter().find(|slot| slot.filled.is_some() && slot.plan.days == 14 && slot.plan.months == 6).map(|slot| slot.state),
        Some(SlotState::Seen)
    );
    // A phone contact fills nothing.
    let phone = [visits[0].clone(), visit(day("2025-07-18"), |v| v.contact = Contact::Phone)];
    assert_eq!(lists(&girl(), &phone, day("2025-07-21")), [(RuleId::VisitOverdue, 1)]);
}

#[test]
fn slots_long_before_registration_are_not_expected() {
    let mut child = girl();
    child.registered_on = add_days(months(6), 7);
    let expected = |child: &Child| {
        let judged = assess(child, &[], protocols(), months(7));
        judged.slots.iter().find(|slot| slot.expected).map(|slot| slot.window.target)
    };
    assert_eq!(expected(&child), Some(months(6)));
    child.registered_on = add_days(months(6), 8);
    assert_eq!(expected(&child), Some(add_days(months(6), 14)));
}

#[test]
fn windows_widen_with_age() {
    let judged = assess(&girl(), &[], protocols(), months(0));
    let window = |target| judged.slots.iter().find(|slot| slot.window.target == target).expect("a slot").window;
    for (target, closes) in
        [(days(98), 7), (months(5), 7), (months(6), 10), (add_days(months(6), 14), 10), (months(11), 10), (months(12), 14)]
    {
        assert_eq!((window(target).opens(), window(target).closes()), (add_days(target, -7), add_days(target, closes)), "{target}");
    }
    assert_eq!(judged.ages_out_on, Some(add_days(months(24), 15)));
}

#[test]
fn not_seen_for_long() {
    let lost =
        |last: NaiveDate, as_of| lists(&girl(), &[visit(last, |_| {})], as_of).into_iter().find(|(rule, _)| *rule == RuleId::VisitLost);
    let young = months(3);
    assert_eq!(lost(young, add_days(young, 59)), None);
    assert_eq!(lost(young, add_days(young, 60)), Some((RuleId::VisitLost, 0)));
    let old = months(12);
    assert_eq!(lost(old, add_days(old, 89)), None);
    assert_eq!(lost(old, add_days(old, 92)), Some((RuleId::VisitLost, 2)));
    // At the age on the day, not at the visit: listed at 11 months, no longer at 12.
    let last = add_days(months(12), -61);
    assert_eq!(lost(last, add_days(months(12), -1)), Some((RuleId::VisitLost, 0)));
    assert_eq!(lost(last, months(12)), None);
    // Never seen: counted from registration.
    let listed = lists(&girl(), &[], days(60)).into_iter().find(|(rule, _)| *rule == RuleId::VisitLost);
    assert_eq!(listed, Some((RuleId::VisitLost, 0)));
}

#[test]
fn referrals_without_an_outcome() {
    let waits = |visits: Vec<Visit>, as_of| {
        lists(&girl(), &visits, as_of).into_iter().find(|(rule, _)| *rule == RuleId::ReferralNoOutcome).map(|(_, days)| days)
    };
    let on = months(8);
    let urgent = || visit(on, |v| v.muac = muac(112));
    assert_eq!(waits(vec![urgent()], add_days(on, 2)), None);
    assert_eq!(waits(vec![urgent()], add_days(on, 3)), Some(1));
    let told_at = |days: i32| visit(add_days(on, days), |v| v.outcomes.push(told(RuleId::WastingSevere, Outcome::NotReached)));
    assert_eq!(waits(vec![urgent(), told_at(1)], add_days(on, 9)), None, "any outcome counts");
    let again = visit(add_days(on, 5), |v| v.muac = muac(112));
    assert_eq!(waits(vec![urgent(), told_at(1), again], add_days(on, 9)), Some(2), "it fired again since");
    // What is not urgent counts once it is referred, 7 days.
    let week = |referred: bool| {
        visit(on, move |v| {
            v.muac = muac(120);
            v.referrals = if referred { [RuleId::WastingModerate].into() } else { [].into() };
        })
    };
    assert_eq!(waits(vec![week(false)], add_days(on, 20)), None);
    assert_eq!(waits(vec![week(true)], add_days(on, 7)), None);
    assert_eq!(waits(vec![week(true)], add_days(on, 8)), Some(1));
    // Referred again later: still the first day since it fired.
    let referred_again = visit(add_days(on, 6), |v| v.referrals = [RuleId::WastingModerate].into());
    assert_eq!(waits(vec![week(true), referred_again], add_days(on, 9)), Some(2));
}

#[test]
fn the_last_slot_passes_also_when_it_was_filled() {
    let exit = visit(months(24), |_| {});
    let judged = |as_of| assess(&girl(), std::slice::from_ref(&exit), protocols(), as_of);
    let closes = add_days(months(24), 14);
    assert!(!judged(closes).now.past_last_slot && judged(add_days(closes, 1)).now.past_last_slot);
    assert_eq!(judged(closes).next_change, Some(add_days(closes, 1)));
    assert_eq!(judged(closes).next_visit, None);
}

//! Danger signs at the ages where their rules change.

use DangerSign as S;

use super::*;
use crate::follow_up::types::Why;
use crate::visit::DangerSign;

fn seen(rule: RuleId, on: NaiveDate, signs: &[DangerSign]) -> Option<Class> {
    class(rule, on, |v| v.danger_signs = Some(signs.iter().copied().collect()))
}

#[test]
fn general_signs_are_an_emergency_at_any_age() {
    for sign in [S::CannotFeed, S::VomitsEverything, S::FitsInIllness, S::FitsNow, S::Unconscious, S::Lethargic, S::TroubleBreathing] {
        for age in [0, 59, 200, 730] {
            assert_eq!(seen(RuleId::DangerGeneral, days(age), &[sign]), Some(Class::Now), "{sign:?} at {age} days");
        }
    }
    // Moves only when touched: from 2 completed months; before that it belongs to the young infant's rule.
    assert_eq!(seen(RuleId::DangerGeneral, months(2), &[S::MovesOnlyWhenTouched]), Some(Class::Now));
    assert_eq!(seen(RuleId::DangerGeneral, add_days(months(2), -1), &[S::MovesOnlyWhenTouched]), None);
    assert_eq!(seen(RuleId::DangerGeneral, days(60), &[]), None);
}

#[test]
fn the_young_infants_own_signs_count_below_two_months() {
    let list =
        [S::NotFeedingWell, S::FitsInIllness, S::FitsNow, S::FastBreathing, S::ChestIndrawing, S::FeverOrCold, S::MovesOnlyWhenTouched];
    for sign in list {
        assert_eq!(seen(RuleId::DangerYoungInfant, add_days(months(2), -1), &[sign]), Some(Class::Now), "{sign:?}");
        assert_eq!(seen(RuleId::DangerYoungInfant, months(2), &[sign]), None, "{sign:?}");
    }
    assert_eq!(seen(RuleId::DangerYoungInfant, days(10), &[S::BloodInStool]), None);
}

#[test]
fn other_signs_by_age() {
    let young = add_days(months(2), -1);
    let three = months(3);
    for (sign, on, expected) in [
        (S::StridorCalm, young, Some(Class::Now)),
        (S::SunkenEyesSlowPinch, young, Some(Class::Now)),
        (S::StiffNeck, young, Some(Class::Now)),
        (S::BloodInStool, young, Some(Class::Today)),
        (S::WeakCry, young, Some(Class::Today)),
        (S::DroopyLids, three, Some(Class::Today)),
        (S::ChestIndrawing, young, None),
        (S::ChestIndrawing, months(2), Some(Class::Now)),
        (S::FastBreathing, young, None),
        (S::FastBreathing, months(2), Some(Class::Today)),
        (S::FeverOrCold, young, None),
        (S::FeverOrCold, add_days(three, -1), Some(Class::Today)),
        (S::FeverOrCold, three, Some(Class::TwoDays)),
        (S::NotFeedingWell, young, None),
        (S::NotFeedingWell, months(2), Some(Class::TwoDays)),
        // Hard stools without honey are the only sign without effect.
        (S::Constipation, three, None),
    ] {
        assert_eq!(seen(RuleId::DangerOther, on, &[sign]), expected, "{sign:?} on {on}");
    }
    assert_eq!(seen(RuleId::DangerOther, three, &[S::FeverOrCold, S::StiffNeck]), Some(Class::Now));
}

#[test]
fn limpness_belongs_to_the_rule_on_honey_while_that_fires() {
    let both = |v: &mut Visit| {
        v.foods.push(food("honey", None));
        v.danger_signs = Some([S::Floppy].into());
    };
    assert_eq!(class(RuleId::FoodHoney, months(8), both), Some(Class::Today));
    assert_eq!(class(RuleId::DangerOther, months(8), both), None);
    // From 12 months honey is no longer too early.
    assert_eq!(class(RuleId::FoodHoney, months(12), both), None);
    assert_eq!(class(RuleId::DangerOther, months(12), both), Some(Class::Today));
}

#[test]
fn signs_not_asked_are_no_answer() {
    for rule in [RuleId::DangerGeneral, RuleId::DangerYoungInfant, RuleId::DangerOther] {
        let at = |signs: Option<&[DangerSign]>| {
            answer(&girl(), rule, vec![visit(days(30), |v| v.danger_signs = signs.map(|signs| signs.iter().copied().collect()))])
        };
        assert_eq!(at(None), Answer::CannotTell(Why::Missing));
        assert_eq!(at(Some(&[])), Answer::Clear);
    }
}

#[test]
fn swelling_of_both_feet_counts_at_any_age() {
    for age in [0, 100, 500] {
        assert_eq!(class(RuleId::OedemaBothFeet, days(age), |v| v.oedema = Some(true)), Some(Class::Today));
        assert_eq!(class(RuleId::OedemaBothFeet, days(age), |v| v.oedema = Some(false)), None);
    }
    assert_eq!(answer(&girl(), RuleId::OedemaBothFeet, vec![visit(days(9), |_| {})]), Answer::CannotTell(Why::Missing));
}

#[test]
fn danger_closes_after_care_and_a_clear_visit_and_not_before() {
    let signs = |on, signs: &[DangerSign]| visit(on, |v| v.danger_signs = Some(signs.iter().copied().collect()));
    let first = || signs(days(40), &[S::FitsNow]);
    let care = |on| visit(on, |v| v.outcomes.push(told(RuleId::DangerGeneral, Outcome::Treated)));
    let open = |visits| follow_up(&judge(&girl(), visits), RuleId::DangerGeneral).is_open();
    // No sign, but nobody knows of care.
    assert!(open(vec![first(), signs(days(41), &[])]));
    // Care, but the signs were not asked.
    assert!(open(vec![first(), care(days(41))]));
    assert!(!open(vec![first(), care(days(41)), signs(days(42), &[])]));
    // Refused is an outcome, not care.
    let refused = visit(days(41), |v| {
        v.outcomes.push(told(RuleId::DangerGeneral, Outcome::Refused));
        v.danger_signs = Some([].into());
    });
    assert!(open(vec![first(), refused]));
    // Care told before it fired again does not count.
    assert!(open(vec![first(), care(days(41)), signs(days(42), &[S::FitsNow]), signs(days(43), &[])]));
}

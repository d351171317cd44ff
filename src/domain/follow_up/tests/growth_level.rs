//! Growth rules of one visit: a z on the limit, a hundredth below, a hundredth above; an arm a millimetre off.

use super::*;
use crate::visit::Measurement;

const W: RuleId = RuleId::WeightLow;
const VL: RuleId = RuleId::WeightVeryLow;

#[test]
fn weight_for_age_at_its_limits() {
    let (young, old) = (add_days(months(6), -1), months(6));
    for (waz, low_young, low_old, very_young, very_old) in [
        (-199, None, None, None, None),
        (-200, None, None, None, None),
        (-201, Some(Class::Week), Some(Class::Fortnight), None, None),
        (-300, Some(Class::Week), Some(Class::Fortnight), None, None),
        (-301, None, None, Some(Class::Today), Some(Class::TwoDays)),
        (-600, None, None, Some(Class::Today), Some(Class::TwoDays)),
    ] {
        let at = |rule, on| class(rule, on, |v| v.weight = weight_at(&girl(), on, waz));
        assert_eq!((at(W, young), at(W, old)), (low_young, low_old), "weight.low at {waz}");
        assert_eq!((at(VL, young), at(VL, old)), (very_young, very_old), "weight.very_low at {waz}");
    }
}

#[test]
fn an_implausibly_low_weight_counts_once_it_is_measured_again_and_kept() {
    let on = months(8);
    let at = |rule, kept: bool| {
        class(rule, on, |v| {
            v.weight = weight_at(&girl(), on, -601);
            if kept {
                v.confirmed.insert(Measurement::Weight);
            }
        })
    };
    assert_eq!((at(VL, false), at(RuleId::DataZOutside, false)), (None, Some(Class::Today)));
    assert_eq!((at(VL, true), at(RuleId::DataZOutside, true)), (Some(Class::Today), None));
}

#[test]
fn swelling_of_the_feet_hides_the_weight() {
    let at = |oedema| {
        class(VL, months(8), |v| {
            v.weight = weight_at(&girl(), months(8), -350);
            v.oedema = oedema;
        })
    };
    assert_eq!(at(Some(true)), None);
    assert_eq!(at(Some(false)), Some(Class::TwoDays));
    assert_eq!(at(None), Some(Class::TwoDays), "not asked is no reason to say nothing");
}

#[test]
fn wasting_by_the_arm_from_six_months() {
    let on = months(6);
    for (mm, severe, moderate) in
        [(114, Some(Class::Today), None), (115, None, Some(Class::Week)), (124, None, Some(Class::Week)), (125, None, None)]
    {
        assert_eq!(class(RuleId::WastingSevere, on, |v| v.muac = muac(mm)), severe, "{mm} mm");
        assert_eq!(class(RuleId::WastingModerate, on, |v| v.muac = muac(mm)), moderate, "{mm} mm");
        let young = add_days(on, -1);
        assert_eq!(class(RuleId::WastingSevere, young, |v| v.muac = muac(mm)), None, "under 6 months, {mm} mm");
        assert_eq!(class(RuleId::WastingModerate, young, |v| v.muac = muac(mm)), None, "under 6 months, {mm} mm");
    }
}

#[test]
fn wasting_by_weight_for_length() {
    let (young, old) = (add_days(months(6), -1), months(6));
    for (wlz, severe, moderate, infant) in [
        (-200, None, None, None),
        (-201, None, Some(Class::Week), Some(Class::TwoDays)),
        (-300, None, Some(Class::Week), Some(Class::TwoDays)),
        (-301, Some(Class::Today), None, Some(Class::Today)),
    ] {
        let at = |rule, on| {
            class(rule, on, |v| {
                v.length = length(650);
                v.weight = weight_for(&girl(), on, 650, wlz);
            })
        };
        assert_eq!(at(RuleId::WastingSevere, old), severe, "{wlz}");
        assert_eq!(at(RuleId::WastingModerate, old), moderate, "{wlz}");
        assert_eq!(at(RuleId::WastingYoung, young), infant, "{wlz}");
        assert_eq!(at(RuleId::WastingYoung, old), None, "{wlz}");
    }
}

#[test]
fn the_arm_of_a_young_infant_counts_from_six_weeks() {
    let at = |age, mm| class(RuleId::WastingYoung, days(age), |v| v.muac = muac(mm));
    assert_eq!(at(41, 109), None);
    assert_eq!(at(42, 109), Some(Class::TwoDays));
    assert_eq!(at(42, 110), None);
    assert_eq!(at(180, 109), Some(Class::TwoDays));
    assert_eq!(at(181, 109), None, "6 completed months");
}

#[test]
fn length_for_age_at_its_limits() {
    for (laz, expected) in [(-200, None), (-201, Some(Class::Month)), (-300, Some(Class::Month)), (-301, Some(Class::Fortnight))] {
        let (on, length) = length_at(&girl(), laz);
        assert_eq!(class(RuleId::LengthLow, on, |v| v.length = length), expected, "{laz}");
    }
}

#[test]
fn high_weight_for_length_or_without_a_length() {
    let on = months(8);
    for (z, by_length, by_age) in [
        (200, None, None),
        (201, Some(Class::Month), Some(Class::Month)),
        (300, Some(Class::Month), Some(Class::Month)),
        (301, Some(Class::Fortnight), Some(Class::Month)),
    ] {
        let long = class(RuleId::WeightHigh, on, |v| {
            v.length = length(680);
            v.weight = weight_for(&girl(), on, 680, z);
        });
        assert_eq!(long, by_length, "{z}");
        assert_eq!(class(RuleId::WeightHigh, on, |v| v.weight = weight_at(&girl(), on, z)), by_age, "{z}");
    }
}

#[test]
fn ages_of_a_child_born_early_are_corrected_below_37_weeks() {
    // Born at 258 days: corrected by 22 days; at 259 days: not at all.
    let mut early = girl();
    early.gestation_days = Some(258);
    let mut at_term = girl();
    at_term.gestation_days = Some(259);
    let on = days(120);
    let as_if = |child: &Child| judge(child, vec![visit(on, |v| v.weight = grams(5_000))]).visits[0].growth_age;
    assert_eq!((as_if(&early).days, as_if(&early).corrected_by_days), (98, 22));
    assert_eq!((as_if(&at_term).days, as_if(&at_term).corrected_by_days), (120, 0));
}

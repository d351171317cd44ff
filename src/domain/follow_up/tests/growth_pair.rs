//! Growth rules of two visits: intervals at both ends, gains at the floor, falls at each step; and the time after birth.

use super::*;
use crate::growth::least_expected_gain_grams;

/// A rule's class at a second visit, from two weights in grams.
fn pair(rule: RuleId, first: NaiveDate, before: u32, second: NaiveDate, now: u32) -> Option<Class> {
    let visits = vec![visit(first, |v| v.weight = grams(before)), visit(second, |v| v.weight = grams(now))];
    answer(&girl(), rule, visits).class()
}

#[test]
fn loss_beyond_the_tolerance() {
    let loss = |first, before, second, now| pair(RuleId::WeightLoss, first, before, second, now);
    let (old, later) = (months(8), add_days(months(8), 30));
    assert_eq!(loss(old, 8_000, later, 7_900), None, "100 g may be the scale");
    assert_eq!(loss(old, 8_000, later, 7_899), Some(Class::Week));
    assert_eq!(loss(old, 8_000, later, 7_601), Some(Class::Week), "4.99 %");
    assert_eq!(loss(old, 8_000, later, 7_600), Some(Class::TwoDays), "5 %");
    assert_eq!(loss(days(60), 5_000, days(90), 4_899), Some(Class::Today), "under 6 months");
    for (interval, expected) in [(4, None), (5, Some(Class::Week)), (122, Some(Class::Week)), (123, None)] {
        assert_eq!(loss(old, 8_000, add_days(old, interval), 7_800), expected, "{interval} days");
    }
    assert_eq!(loss(days(13), 4_000, days(30), 3_800), None, "the first days of life");
    assert_eq!(loss(days(14), 4_000, days(30), 3_800), Some(Class::Today));
}

#[test]
fn the_latest_weight_within_the_interval_counts_and_no_older_one() {
    // The visit 3 days before lies outside the interval: the one before it is compared.
    let visits = |ages: [i32; 3]| {
        let weights = [8_000, 7_700, 7_700];
        ages.into_iter().zip(weights).map(|(age, g)| visit(days(age), move |v| v.weight = grams(g))).collect::<Vec<_>>()
    };
    assert_eq!(answer(&girl(), RuleId::WeightLoss, visits([250, 277, 280])).class(), Some(Class::Week));
    assert_eq!(answer(&girl(), RuleId::WeightLoss, visits([250, 270, 280])).class(), None, "compared with the visit 10 days before");
    // Of two weights on one day the last entered counts.
    let mut same_day = visits([270, 270, 280]);
    same_day[0].weight = grams(7_700);
    same_day[1].weight = grams(8_000);
    assert_eq!(answer(&girl(), RuleId::WeightLoss, same_day).class(), Some(Class::Week));
}

#[test]
fn standstill_over_an_interval_that_grows_with_age() {
    let still = |on, interval: i32, gain: u32| pair(RuleId::WeightStatic, add_days(on, -interval), 7_000, on, 7_000 + gain);
    for (on, least, class) in [(months(5), 7, Class::TwoDays), (months(8), 28, Class::Fortnight), (months(12), 56, Class::Fortnight)] {
        assert_eq!(still(on, least - 1, 0), None, "{on}");
        assert_eq!(still(on, least, 0), Some(class), "{on}");
        assert_eq!(still(on, least, 1), None, "{on}");
        assert_eq!(still(on, 122, 0), Some(class), "{on}");
        assert_eq!(still(on, 123, 0), None, "{on}");
    }
}

#[test]
fn slow_gain_at_the_floor() {
    // A girl from 94 to 122 days: 28 × 259 / 31 = 233.9 g.
    let floor = least_expected_gain_grams(Sex::Female, 94, 122);
    assert!((floor - 233.935).abs() < 0.001);
    let slow = |gain: u32| pair(RuleId::WeightSlowGain, days(94), 5_900, days(122), 5_900 + gain);
    assert_eq!(slow(233), Some(Class::Week));
    assert_eq!(slow(234), None);
    assert_eq!(slow(1), Some(Class::Week));
    assert_eq!(slow(0), None, "that is standstill");
    // Girls from 28 to 61 days: exactly 578 g; the sum of shares is equal to it.
    assert_eq!(pair(RuleId::WeightSlowGain, days(28), 4_000, days(61), 4_577), Some(Class::Week));
    assert_eq!(pair(RuleId::WeightSlowGain, days(28), 4_000, days(61), 4_578), None);
    for (first, second, expected) in [
        (13, 60, None),
        (14, 60, Some(Class::Week)),
        (46, 60, Some(Class::Week)),
        (47, 60, None),
        (180, 212, Some(Class::Fortnight)),
        (180, 213, None),
    ] {
        assert_eq!(pair(RuleId::WeightSlowGain, days(first), 6_000, days(second), 6_001), expected, "{first} to {second} days");
    }
}

#[test]
fn a_fall_of_the_weight_line() {
    let fall = |first, second, by: i32| {
        let visits =
            vec![visit(first, |v| v.weight = weight_at(&girl(), first, 0)), visit(second, |v| v.weight = weight_at(&girl(), second, -by))];
        answer(&girl(), RuleId::WeightDrop, visits).class()
    };
    for (by, young, old) in [
        (66, None, None),
        (67, Some(Class::Week), Some(Class::Fortnight)),
        (99, Some(Class::Week), Some(Class::Fortnight)),
        (100, Some(Class::TwoDays), Some(Class::Week)),
    ] {
        assert_eq!(fall(days(100), days(150), by), young, "{by}");
        assert_eq!(fall(days(200), days(250), by), old, "{by}");
    }
    for (first, second, expected) in [
        (100, 127, None),
        (100, 128, Some(Class::TwoDays)),
        (100, 222, Some(Class::Week)),
        (100, 223, None),
        (27, 100, None),
        (28, 100, Some(Class::TwoDays)),
    ] {
        assert_eq!(fall(days(first), days(second), 100), expected, "{first} to {second} days");
    }
}

#[test]
fn a_drift_since_birth_depends_on_where_it_began() {
    let on = days(100);
    let drift = |start: i32, now: i32| {
        let mut child = girl();
        child.birth_weight = weight_at(&child, child.born, start);
        answer(&child, RuleId::WeightDrift, vec![visit(on, |v| v.weight = weight_at(&child, on, now))]).class()
    };
    let yes = Some(Class::Fortnight);
    for (start, now, expected) in [
        (-135, -201, None),
        (-135, -202, yes),
        (-134, -266, None),
        (-134, -267, yes),
        (134, 2, None),
        (134, 1, yes),
        (135, -64, None),
        (135, -65, yes),
    ] {
        assert_eq!(drift(start, now), expected, "from {start} to {now}");
    }
}

#[test]
fn a_drift_without_a_birth_weight_begins_at_four_weeks() {
    let story = |child: &Child, first: i32, second: i32| {
        let (one, two) = (days(first), days(second));
        let visits = vec![visit(one, |v| v.weight = weight_at(child, one, 0)), visit(two, |v| v.weight = weight_at(child, two, -140))];
        answer(child, RuleId::WeightDrift, visits).class()
    };
    assert_eq!(story(&girl(), 27, 100), None);
    assert_eq!(story(&girl(), 28, 100), Some(Class::Fortnight));
    assert_eq!(story(&girl(), 28, 41), None, "from 42 days of growth age on");
    assert_eq!(story(&girl(), 28, 42), Some(Class::Fortnight));
    // A child born early has no use for its birth weight, and ages are corrected: 27 days more.
    let mut early = girl();
    early.gestation_days = Some(253);
    early.birth_weight = grams(2_000);
    assert_eq!(story(&early, 54, 100), None);
    assert_eq!(story(&early, 55, 100), Some(Class::Fortnight));
}

#[test]
fn no_z_is_compared_with_a_corrected_one() {
    let mut early = girl();
    early.gestation_days = Some(230);
    let (before, after) = (add_days(months(24), -60), months(24));
    let fall = |child: &Child| {
        let visits =
            vec![visit(before, |v| v.weight = weight_at(child, before, 0)), visit(after, |v| v.weight = weight_at(child, after, -120))];
        answer(child, RuleId::WeightDrop, visits).class()
    };
    assert_eq!(fall(&early), None);
    assert_eq!(fall(&girl()), Some(Class::Week));
}

#[test]
fn birth_weight_regained_in_time() {
    let mut child = girl();
    child.birth_weight = grams(3_000);
    let at = |age, g| answer(&child, RuleId::BirthWeightNotRegained, vec![visit(days(age), |v| v.weight = grams(g))]).class();
    for (age, weight, expected) in [
        (-1, 2_500, None),
        (0, 2_699, Some(Class::Today)),
        (13, 2_700, None),
        (13, 2_699, Some(Class::Today)),
        (14, 2_999, Some(Class::TwoDays)),
        (14, 3_000, None),
        (20, 2_999, Some(Class::TwoDays)),
        (21, 2_999, Some(Class::Today)),
        (42, 2_999, Some(Class::Today)),
        (43, 2_999, None),
        (0, 2_699, Some(Class::Today)),
    ] {
        assert_eq!(at(age, weight), expected, "{weight} g at {age} days");
    }
}

#[test]
fn born_small_or_early_without_a_plan() {
    let low = |weight: Option<u32>, gestation: Option<u16>, age, registered: i32| {
        let mut child = girl();
        child.birth_weight = weight.and_then(grams);
        child.gestation_days = gestation;
        child.registered_on = days(registered);
        answer(&child, RuleId::BirthLow, vec![visit(days(age), |_| {})]).class()
    };
    let (week, two) = (Some(Class::Week), Some(Class::TwoDays));
    for (weight, gestation, expected) in [
        (Some(2_500), None, None),
        (Some(2_499), None, week),
        (Some(1_500), None, week),
        (Some(1_499), None, two),
        (None, Some(259), None),
        (None, Some(258), week),
        (None, Some(224), week),
        (None, Some(223), two),
        (Some(3_000), Some(223), two),
        (None, None, None),
    ] {
        assert_eq!(low(weight, gestation, 10, 5), expected, "{weight:?} g, {gestation:?} days");
    }
    assert_eq!(low(Some(2_000), None, 61, 61), week);
    assert_eq!(low(Some(2_000), None, 62, 61), None);
    assert_eq!(low(Some(2_000), None, 61, 62), None);
    let mut child = girl();
    child.birth_weight = grams(2_000);
    let planned = visit(days(9), |v| v.plans = Some([RuleId::BirthLow].into()));
    assert_eq!(answer(&child, RuleId::BirthLow, vec![planned.clone(), visit(days(20), |_| {})]), Answer::Clear);
    let withdrawn = visit(days(20), |v| v.plans = Some([].into()));
    assert_eq!(answer(&child, RuleId::BirthLow, vec![planned, withdrawn]).class(), week, "the newest answer stands");
}

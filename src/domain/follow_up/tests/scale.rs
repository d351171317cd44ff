//! The error of measuring beside findings: at, just below and just above it; and that it changes no class.

use proptest::prelude::*;

use super::properties::story;
use super::*;
use crate::evidence::Evidence;
use crate::follow_up::{Change, ScaleError, Verdict, may_be_error, scale_error};
use crate::protocol::Protocol;

/// Tolerances of the WHO growth study (de Onis 2004, from memory): 100 g, 0.7 cm, 5 mm.
const TOLERANCE_G: i64 = 100;

fn protocol() -> &'static Protocol {
    default_protocol()
}

/// What the error says of a rule's finding at the last visit, with the finding's class.
fn told_of(child: &Child, rule: RuleId, visits: Vec<Visit>) -> Option<(ScaleError, Class)> {
    let judged = judge(child, visits);
    let visit = judged.visits.last().expect("a visit");
    let finding = visit.finding(rule)?;
    Some((scale_error(rule, &finding.evidence, child, visit.on, &visit.protocol)?, finding.class))
}

fn pair(rule: RuleId, first: NaiveDate, before: u32, second: NaiveDate, now: u32) -> Option<(Verdict, Class)> {
    let visits = vec![visit(first, |v| v.weight = grams(before)), visit(second, |v| v.weight = grams(now))];
    told_of(&girl(), rule, visits).map(|(error, class)| (error.verdict(), class))
}

#[test]
fn a_difference_up_to_the_tolerance_may_be_the_scale() {
    for (difference, may) in [(0, true), (99, true), (100, true), (101, false), (-99, true), (-100, true), (-101, false)] {
        assert_eq!(may_be_error(difference, TOLERANCE_G), may, "{difference} g");
    }
}

#[test]
fn standing_still_and_loss() {
    let (on, later) = (months(8), add_days(months(8), 30));
    let still = |now| pair(RuleId::WeightStatic, on, 8_000, later, now);
    assert_eq!(still(8_001), None, "a gain is no standstill");
    assert_eq!(still(8_000), Some((Verdict::Within, Class::Fortnight)));
    assert_eq!(still(7_901), Some((Verdict::Within, Class::Fortnight)));
    assert_eq!(still(7_900), Some((Verdict::Within, Class::Fortnight)), "100 g is still allowed between two measurers");
    assert_eq!(still(7_899), Some((Verdict::Beyond, Class::Fortnight)));
    // What the rule calls a loss is more than the error already.
    assert_eq!(pair(RuleId::WeightLoss, on, 8_000, later, 7_900), None);
    assert_eq!(pair(RuleId::WeightLoss, on, 8_000, later, 7_899), Some((Verdict::Beyond, Class::Week)));
}

#[test]
fn a_slow_gain_is_measured_against_what_was_hoped_for() {
    // Girls from 28 to 61 days: exactly 578 g hoped for (WHO 2009, 5th centile).
    let slow = |gain: u32| pair(RuleId::WeightSlowGain, days(28), 4_000, days(61), 4_000 + gain);
    assert_eq!(slow(578), None);
    assert_eq!(slow(577), Some((Verdict::Within, Class::Week)));
    assert_eq!(slow(478), Some((Verdict::Within, Class::Week)), "100 g less than hoped for");
    assert_eq!(slow(477), Some((Verdict::Beyond, Class::Week)));
    // Very little gain may be no gain at all, but it is surely too little.
    assert_eq!(slow(20), Some((Verdict::Beyond, Class::Week)));
}

#[test]
fn a_drop_is_told_in_z_at_both_ends() {
    let (on, later) = (days(40), days(150));
    let drop = |after: i32| {
        let first = visit(on, |v| v.weight = weight_at(&girl(), on, 50));
        let second = visit(later, |v| v.weight = weight_at(&girl(), later, after));
        told_of(&girl(), RuleId::WeightDrop, vec![first, second])
    };
    let (error, _) = drop(-30).expect("a drop of 0.80");
    let Change::WeightForAge { change, limit, before, now } = error.change else { panic!("a change of weight for age") };
    assert_eq!((change.hundredths(), limit.hundredths()), (-80, -67));
    assert_eq!((before.on, now.on), (on, later));
    // Read off the curves of girls: 100 g at 40 days and +0.5, and at 150 days and -0.3.
    assert_eq!((before.z.hundredths(), now.z.hundredths()), (16, 12));
    assert_eq!(error.error_z().map(|z| z.hundredths()), Some(16), "the greater of the two");
    let verdict = |after| drop(after).map(|(error, class)| (error.verdict(), class));
    // Limit -0.67: falls to 0.83 lie within 0.16 of it, one of 0.84 does not.
    assert_eq!(verdict(-16), None, "0.66 is no drop");
    assert_eq!(verdict(-17), Some((Verdict::Within, Class::Week)));
    assert_eq!(verdict(-32), Some((Verdict::Within, Class::Week)));
    assert_eq!(verdict(-33), Some((Verdict::Within, Class::Week)));
    assert_eq!(verdict(-34), Some((Verdict::Beyond, Class::Week)));
    // A steep one is still compared with where the rule begins.
    assert_eq!(verdict(-52), Some((Verdict::Beyond, Class::TwoDays)));
}

#[test]
fn a_drift_is_measured_from_its_own_allowance() {
    let child = Child { birth_weight: grams(3_200), ..girl() };
    let later = days(120);
    let drift = |now| {
        let visits = vec![visit(later, |v| v.weight = weight_at(&child, later, now))];
        told_of(&child, RuleId::WeightDrift, visits)
    };
    // 3.20 kg is -0.07 for a girl: 1.33 are allowed.
    let (error, class) = drift(-145).expect("a drift");
    let Change::WeightForAge { change, limit, before, .. } = error.change else { panic!("a change of weight for age") };
    assert_eq!((change.hundredths(), limit.hundredths(), before.on), (-138, -133, child.born));
    assert_eq!((error.verdict(), class), (Verdict::Within, Class::Fortnight));
    let error_z = error.error_z().expect("an error").hundredths();
    let at = |away: i32| drift(-140 - away).map(|(error, _)| error.verdict());
    assert_eq!([at(error_z - 1), at(error_z), at(error_z + 1)], [Some(Verdict::Within), Some(Verdict::Within), Some(Verdict::Beyond)]);
}

#[test]
fn birth_weight_and_length() {
    let child = Child { birth_weight: grams(3_000), ..girl() };
    let at = |day: i32, now: u32| {
        let visits = vec![visit(days(day), |v| v.weight = grams(now))];
        told_of(&child, RuleId::BirthWeightNotRegained, visits).map(|(error, _)| error.verdict())
    };
    assert_eq!([at(16, 2_999), at(16, 2_900), at(16, 2_899)], [Some(Verdict::Within), Some(Verdict::Within), Some(Verdict::Beyond)]);
    // In the first days the limit is a tenth less: 2.70 kg.
    assert_eq!([at(8, 2_699), at(8, 2_600), at(8, 2_599)], [Some(Verdict::Within), Some(Verdict::Within), Some(Verdict::Beyond)]);
    let shrunk = |mm: u16| {
        let visits = vec![visit(months(8), |v| v.length = length(700)), visit(months(9), |v| v.length = length(mm))];
        told_of(&girl(), RuleId::DataLengthShrunk, visits).map(|(error, _)| (error.change, error.verdict(), error.tolerance))
    };
    assert_eq!(shrunk(693), None, "0.7 cm is still allowed");
    assert_eq!(shrunk(692), Some((Change::Length { change_mm: -8 }, Verdict::Beyond, 7)));
}

#[test]
fn what_rests_on_more_than_the_grams_is_not_judged_by_them() {
    let visits = vec![visit(months(8), |v| v.weight = grams(7_000)), visit(add_days(months(8), 30), |v| v.weight = grams(12_000))];
    let (error, _) = told_of(&girl(), RuleId::DataWeightJump, visits).expect("a jump");
    assert_eq!(error.verdict(), Verdict::Untold);
    assert_eq!(scale_error(RuleId::WastingSevere, &Evidence::default(), &girl(), months(8), protocol()), None);
    assert_eq!(
        scale_error(RuleId::WeightLoss, &Evidence::default(), &girl(), months(8), protocol()),
        None,
        "without numbers nothing is said"
    );
}

#[test]
fn a_finer_scale_leaves_less_to_the_scale() {
    let mut finer = protocol().clone();
    finer.tolerance.weight_g = 50;
    let (on, later) = (months(8), add_days(months(8), 30));
    let visits = vec![visit(on, |v| v.weight = grams(8_000)), visit(later, |v| v.weight = grams(7_940))];
    let judged = judge(&girl(), visits);
    let finding = judged.visits[1].finding(RuleId::WeightStatic).expect("a finding");
    let verdict = |protocol| scale_error(RuleId::WeightStatic, &finding.evidence, &girl(), later, protocol).map(|error| error.verdict());
    assert_eq!((verdict(protocol()), verdict(&finer)), (Some(Verdict::Within), Some(Verdict::Beyond)));
}

/// Rules that compare two measurements; a loss is left out, whose limit is the tolerance itself.
const COMPARING: [RuleId; 6] = [
    RuleId::WeightStatic,
    RuleId::WeightSlowGain,
    RuleId::WeightDrop,
    RuleId::WeightDrift,
    RuleId::BirthWeightNotRegained,
    RuleId::DataWeightJump,
];

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn no_class_depends_on_the_error_of_the_scale((child, visits) in story(), tolerance in 1_i64..=1_000) {
        let as_of = visits.last().expect("a visit").on;
        let mut other = protocol().clone();
        other.tolerance.weight_g = tolerance;
        let usual = assess(&child, &visits, protocols(), as_of);
        let with = assess(&child, &visits, &Protocols::one(other.clone()), as_of);
        for (a, b) in usual.visits.iter().zip(&with.visits) {
            for rule in COMPARING {
                prop_assert_eq!(a.answer(rule), b.answer(rule), "{:?}", rule);
                let (Some(a), Some(_)) = (a.finding(rule), b.finding(rule)) else { continue };
                // More tolerance never makes a finding surer.
                let within = |protocol: &Protocol| {
                    scale_error(rule, &a.evidence, &child, as_of_visit(&usual, a), protocol).map(|error| error.verdict() == Verdict::Within)
                };
                let (less, more) = if tolerance < TOLERANCE_G { (&other, protocol()) } else { (protocol(), &other) };
                prop_assert!(within(less) <= within(more), "{:?}", rule);
            }
        }
    }
}

/// The day of the visit a finding belongs to.
fn as_of_visit(judged: &Assessment, finding: &crate::follow_up::Finding) -> NaiveDate {
    let of = judged.visits.iter().find(|visit| visit.findings.iter().any(|other| std::ptr::eq(other, finding)));
    of.expect("its visit").on
}

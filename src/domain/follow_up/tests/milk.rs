//! Milk and other drinks, breastfeeding.

use super::*;
use crate::visit::LowValue;

#[test]
fn drinks_besides_milk() {
    let early = |on, fill: fn(&mut Visit)| answer(&girl(), RuleId::LiquidsEarly, vec![visit(on, fill)]);
    let fires = Answer::Fires(Class::Fortnight);
    for fill in [
        |v: &mut Visit| v.other_drink = Some(true),
        |v: &mut Visit| v.sweet_drink = Some(true),
        |v: &mut Visit| v.low_value = Some([LowValue::TeaCoffee].into()),
    ] {
        assert_eq!(early(days(179), fill), fires);
        assert_eq!(early(days(180), fill), Answer::Clear, "the age clears it");
    }
    assert_eq!(early(days(100), |v| v.low_value = Some([LowValue::Salt].into())).class(), None);
    assert_eq!(early(days(100), |v| v.other_drink = Some(false)), Answer::Clear);
    assert_eq!(early(days(100), |v| v.breast_only = Some(true)), Answer::Clear);
    assert!(matches!(early(days(100), |_| {}), Answer::CannotTell(_)));
}

#[test]
fn animal_milk_as_a_drink() {
    let early = |on, fill: fn(&mut Visit)| class(RuleId::MilkAnimalEarly, on, fill);
    assert_eq!(early(add_days(months(6), -1), |v| v.animal_milk_times = Some(1)), Some(Class::Week));
    assert_eq!(early(months(6), |v| v.animal_milk_times = Some(1)), None);
    assert_eq!(early(months(3), |v| v.animal_milk_times = Some(0)), None);
    assert_eq!(early(months(3), |v| v.formula_times = Some(4)), None, "formula is exempt");
    let planned = |v: &mut Visit| {
        v.animal_milk_times = Some(3);
        v.plans = Some([RuleId::MilkAnimalEarly].into());
    };
    assert_eq!(early(months(3), planned), None);
}

#[test]
fn milk_feeds_without_breastfeeding() {
    let feeds = |on, breastfed, feeds: [Option<u8>; 4]| {
        answer(
            &girl(),
            RuleId::MilkFew,
            vec![visit(on, |v| {
                v.breastfed = breastfed;
                [v.formula_times, v.animal_milk_times, v.drink_yogurt_times, v.spoon_yogurt_times] = feeds;
            })],
        )
    };
    let sum = |on, n| feeds(on, Some(false), [Some(n), Some(0), Some(0), Some(0)]).class();
    let young = add_days(months(6), -1);
    for (on, n, expected) in [
        (young, 2, Some(Class::Today)),
        (young, 3, Some(Class::TwoDays)),
        (young, 5, Some(Class::TwoDays)),
        (young, 6, None),
        (months(6), 1, Some(Class::Week)),
        (months(6), 2, None),
        (add_days(months(12), -1), 1, Some(Class::Week)),
        (months(12), 1, Some(Class::Fortnight)),
        (months(12), 2, None),
        (months(24), 0, None),
    ] {
        assert_eq!(sum(on, n), expected, "{n} feeds on {on}");
    }
    let on = months(8);
    assert_eq!(feeds(on, Some(false), [Some(1), Some(0), Some(0), Some(1)]), Answer::Clear, "yoghurt on a spoon counts here");
    assert!(matches!(feeds(on, Some(false), [Some(1), None, Some(0), Some(0)]), Answer::CannotTell(_)));
    assert_eq!(feeds(on, Some(false), [Some(2), None, None, None]), Answer::Clear, "what is missing cannot change it");
    assert_eq!(feeds(on, Some(true), [None; 4]), Answer::Clear);
    assert!(matches!(feeds(on, None, [Some(3), Some(0), Some(0), Some(0)]), Answer::CannotTell(_)));
}

#[test]
fn breastfeeding_stopped() {
    let stopped = |ever, on| {
        let mut child = girl();
        child.ever_breastfed = ever;
        answer(&child, RuleId::BreastfeedingStopped, vec![visit(on, |v| v.breastfed = Some(false))]).class()
    };
    for (on, expected) in [
        (add_days(months(6), -1), Some(Class::TwoDays)),
        (months(6), Some(Class::Week)),
        (add_days(months(12), -1), Some(Class::Week)),
        (months(12), Some(Class::Month)),
        (add_days(months(24), -1), Some(Class::Month)),
        (months(24), None),
    ] {
        assert_eq!(stopped(Some(true), on), expected, "{on}");
    }
    assert_eq!(stopped(None, months(8)), None);
    let before = |on| visit(on, |v| v.breastfed = Some(true));
    let now = visit(months(8), |v| v.breastfed = Some(false));
    let seen = |first| answer(&girl(), RuleId::BreastfeedingStopped, vec![first, now.clone()]).class();
    assert_eq!(seen(before(months(7))), Some(Class::Week));
    assert_eq!(seen(before(months(8))), None, "the same day is not earlier");
}

#[test]
fn breastfeeding_is_difficult() {
    let at = |on, trouble| class(RuleId::BreastfeedingTrouble, on, |v| v.breastfeeding_trouble = Some(trouble));
    assert_eq!(at(add_days(months(6), -1), true), Some(Class::TwoDays));
    assert_eq!(at(months(6), true), Some(Class::Week));
    assert_eq!(at(months(2), false), None);
}

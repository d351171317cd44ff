//! Rules about the data: jumps, shrinking, repeats, contradictions, missing weights.

use super::*;
use crate::food::{FoodGroup, Texture};
use crate::visit::Measurement;

#[test]
fn a_z_beyond_the_limits() {
    let on = months(8);
    let weight = |z| class(RuleId::DataZOutside, on, |v| v.weight = weight_at(&girl(), on, z));
    for (z, expected) in [(-601, Some(Class::Today)), (-600, None), (500, None), (501, Some(Class::TwoDays))] {
        assert_eq!(weight(z), expected, "weight-for-age {z}");
    }
    let for_length = |z, kept: &[Measurement]| {
        class(RuleId::DataZOutside, on, |v| {
            v.length = length(680);
            v.weight = weight_for(&girl(), on, 680, z);
            v.confirmed = kept.iter().copied().collect();
        })
    };
    assert_eq!(for_length(-500, &[]), None);
    assert_eq!(for_length(501, &[Measurement::Weight]), Some(Class::TwoDays), "the length was not measured again");
    assert_eq!(for_length(501, &[Measurement::Weight, Measurement::Length]), None);
}

#[test]
fn a_jump_of_weight() {
    let jump = |first: i32, second: i32, change: i32| {
        let (one, two) = (days(first), days(second));
        let visits =
            vec![visit(one, |v| v.weight = weight_at(&girl(), one, 0)), visit(two, |v| v.weight = weight_at(&girl(), two, change))];
        answer(&girl(), RuleId::DataWeightJump, visits).class()
    };
    let yes = Some(Class::TwoDays);
    for change in [-200, 200] {
        assert_eq!(jump(200, 261, change), yes, "{change}");
        assert_eq!(jump(200, 262, change), None, "{change} in 62 days");
        assert_eq!(jump(28, 60, change), yes, "{change}");
        assert_eq!(jump(27, 60, change), None, "{change} from 27 days");
    }
    assert_eq!(jump(200, 261, 199), None);
    let gain = |interval, gained: u32| {
        let visits = vec![visit(days(5), |v| v.weight = grams(3_000)), visit(days(5 + interval), |v| v.weight = grams(3_000 + gained))];
        answer(&girl(), RuleId::DataWeightJump, visits).class()
    };
    assert_eq!((gain(3, 300), gain(3, 301), gain(2, 500)), (None, yes, None));
    let kept = vec![
        visit(days(200), |v| v.weight = grams(6_000)),
        visit(days(230), |v| {
            v.weight = grams(9_900);
            v.confirmed.insert(Measurement::Weight);
        }),
    ];
    assert_eq!(answer(&girl(), RuleId::DataWeightJump, kept), Answer::Clear);
}

#[test]
fn a_jump_up_waits_before_it_is_called_high() {
    let (one, two) = (days(200), days(230));
    let up = judge(
        &girl(),
        vec![visit(one, |v| v.weight = weight_at(&girl(), one, 0)), visit(two, |v| v.weight = weight_at(&girl(), two, 300))],
    );
    assert_eq!(standing(&up, RuleId::WeightHigh), Some(Standing::Muted(RuleId::DataWeightJump)));
    let down = judge(
        &girl(),
        vec![visit(one, |v| v.weight = weight_at(&girl(), one, 490)), visit(two, |v| v.weight = weight_at(&girl(), two, 250))],
    );
    assert_eq!(standing(&down, RuleId::WeightHigh), Some(Standing::Stands), "a fall may be real");
}

#[test]
fn length_shrinks_and_jumps() {
    let shrunk = |before, now, kept: bool| {
        let second = visit(days(230), |v| {
            v.length = length(now);
            if kept {
                v.confirmed.insert(Measurement::Length);
            }
        });
        answer(&girl(), RuleId::DataLengthShrunk, vec![visit(days(200), |v| v.length = length(before)), second]).class()
    };
    assert_eq!((shrunk(650, 643, false), shrunk(650, 642, false), shrunk(650, 642, true)), (None, Some(Class::Fortnight), None));
    let jump = |interval| {
        let visits = vec![visit(days(200), |v| v.length = length(620)), visit(days(200 + interval), |v| v.length = length(760))];
        answer(&girl(), RuleId::DataLengthJump, visits).class()
    };
    assert_eq!((jump(30), jump(92), jump(93)), (Some(Class::Fortnight), Some(Class::Fortnight), None));
    // Exactly 2.00 apart: a length with −1.00 and one with +1.00, some days later.
    let (on, short) = length_at(&girl(), -100);
    let next = |z: i32| {
        let found =
            (400..900).find(|mm| measured(&girl(), add_days(on, 20), 5_000, Some(*mm)).laz.rounded().map(|z| z.hundredths()) >= Some(z));
        length(found.expect("a length"))
    };
    let by = |laz| {
        let visits = vec![visit(on, |v| v.length = short), visit(add_days(on, 20), |v| v.length = next(laz))];
        answer(&girl(), RuleId::DataLengthJump, visits).class()
    };
    assert_eq!((by(100), by(93)), (Some(Class::Fortnight), None));
}

#[test]
fn the_same_weight_three_times() {
    let same = |weights: [u32; 3], on: NaiveDate| {
        let at = |days_before: i32, g| visit(add_days(on, -days_before), move |v| v.weight = grams(g));
        let visits = vec![at(60, weights[0]), at(30, weights[1]), at(0, weights[2])];
        answer(&girl(), RuleId::DataSameAgain, visits).class()
    };
    let yes = Some(Class::Fortnight);
    assert_eq!(same([7_000, 7_000, 7_000], months(9)), yes);
    assert_eq!(same([6_995, 7_004, 7_000], months(9)), yes, "to the nearest 10 g, half up");
    assert_eq!(same([6_994, 7_000, 7_000], months(9)), None);
    assert_eq!(same([7_000, 7_005, 7_000], months(9)), None);
    assert_eq!(same([7_000, 7_000, 7_000], add_days(months(12), -1)), yes);
    assert_eq!(same([7_000, 7_000, 7_000], months(12)), None);
}

#[test]
fn answers_that_contradict_each_other() {
    let conflict = |fill: fn(&mut Visit)| answer(&girl(), RuleId::DataConflict, vec![visit(months(9), fill)]);
    let fires = Answer::Fires(Class::Week);
    let meals: fn(&mut Visit) = |v| (v.solids_yesterday, v.meals) = (Some(false), Some(1));
    assert_eq!(conflict(meals), fires);
    assert_eq!(conflict(|v| (v.solids_yesterday, v.meals) = (Some(false), Some(0))), Answer::Clear);
    assert_eq!(conflict(|v| (v.breast_only, v.groups) = (Some(true), Some([FoodGroup::BreastMilk].into()))).class(), None);
    assert_eq!(conflict(|v| (v.breast_only, v.groups) = (Some(true), Some([FoodGroup::Eggs].into()))), fires);
    assert_eq!(conflict(|v| (v.solids_yesterday, v.texture_usual) = (Some(false), Texture::new(1))), fires);
    assert!(matches!(conflict(|v| v.texture_usual = Texture::new(1)), Answer::CannotTell(_)), "whether they started is not known");
}

#[test]
fn two_visits_of_one_day() {
    let twice = |contact| {
        let second = visit(months(4), |v| v.contact = contact);
        answer(&girl(), RuleId::DataTwinRecord, vec![visit(months(4), |_| {}), second]).class()
    };
    assert_eq!((twice(Contact::Clinic), twice(Contact::Phone)), (Some(Class::Week), None));
    let mut child = girl();
    child.looks_like_another = true;
    assert_eq!(answer(&child, RuleId::DataTwinRecord, vec![visit(months(4), |_| {})]).class(), Some(Class::Week));
    let judged = judge(&child, vec![visit(months(4), |_| {}), visit(months(5), |_| {})]);
    assert_eq!(follow_up(&judged, RuleId::DataTwinRecord).last_fired_on, months(4), "told once");
}

#[test]
fn no_weight_at_two_contacts() {
    let at = |fill: fn(&mut Visit), second: fn(&mut Visit)| {
        answer(&girl(), RuleId::MeasureMissing, vec![visit(months(4), fill), visit(months(5), second)]).class()
    };
    assert_eq!(at(|_| {}, |_| {}), Some(Class::Fortnight));
    assert_eq!(at(|v| v.weight = grams(6_000), |_| {}), None);
    assert_eq!(at(|_| {}, |v| v.weight = grams(6_000)), None);
    assert_eq!(at(|v| v.contact = Contact::Phone, |_| {}), None, "a phone contact is not the contact before");
    assert_eq!(at(|_| {}, |v| v.contact = Contact::Phone), None);
    assert_eq!(class(RuleId::MeasureMissing, months(4), |_| {}), None, "the first visit");
    // A weight entered before on the same day counts.
    let weighed = visit(months(5), |v| v.weight = grams(6_000));
    assert_eq!(answer(&girl(), RuleId::MeasureMissing, vec![visit(months(4), |_| {}), weighed, visit(months(5), |_| {})]).class(), None);
}

#[test]
fn a_short_pregnancy_with_a_heavy_baby() {
    let at = |gestation, weight| {
        let mut child = girl();
        (child.gestation_days, child.birth_weight) = (Some(gestation), grams(weight));
        answer(&child, RuleId::DataAgeProblem, vec![visit(months(20), |_| {})]).class()
    };
    assert_eq!((at(195, 2_501), at(196, 2_501), at(195, 2_500)), (Some(Class::Week), None, None));
}

//! The start of solids, textures and the stage of a child.

use super::*;
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::types::Why;
use crate::food::Texture;
use crate::protocol::{Protocol, Stage, StageId, Stages};
use crate::visit::ReadinessSign;

fn best(level: u8) -> Option<Texture> {
    Texture::new(level)
}

#[test]
fn early_solids_are_told_with_the_foods_that_were_given_and_the_stated_start() {
    let (on, start) = (days(120), days(110));
    let given = visit(on, |v| {
        v.solids_started_on = Some(start);
        let named_only = FoodOffer { offers: 0, ..food("beans", None) };
        v.foods = vec![food("millet_porridge", None), named_only, food("animal_milk", None)];
    });
    let judged = judge(&girl(), vec![given]);
    let evidence = &judged.visits[0].finding(RuleId::SolidsEarly).expect("it fires").evidence;
    let told = [
        (K::AgeDays, Quantity::Days(120)),
        (K::Limit, Quantity::Days(180)),
        (K::Date, Quantity::On(start)),
        (K::Foods, Quantity::Codes(vec!["millet_porridge".to_owned()])),
    ];
    assert_eq!(evidence.lines(), told, "a drink and a food that was only named are no solid food given");
}

#[test]
fn solids_too_early() {
    let given = |age, fill: fn(&mut Visit)| class(RuleId::SolidsEarly, days(age), fill);
    let (week, fortnight) = (Some(Class::Week), Some(Class::Fortnight));
    for (age, expected) in [(118, week), (119, fortnight), (179, fortnight), (180, None)] {
        assert_eq!(given(age, |v| v.solids_yesterday = Some(true)), expected, "{age} days");
        assert_eq!(given(age, |v| v.meals = Some(1)), expected, "{age} days");
        assert_eq!(given(age, |v| v.foods.push(food("rice", None))), expected, "{age} days");
    }
    assert_eq!(given(100, |v| v.foods.push(food("animal_milk", None))), None, "a drink is no solid food");
    assert_eq!(given(100, |v| v.foods.push(FoodOffer { offers: 0, ..food("rice", None) })), None);
    assert_eq!(given(100, |v| v.plans = Some([RuleId::SolidsEarly].into())), None);
    // A food offered outweighs the answer for yesterday.
    let both = |v: &mut Visit| {
        v.solids_yesterday = Some(false);
        v.foods.push(food("rice", None));
    };
    assert_eq!(given(100, both), week);
    // A stated start counts if it lies after the visit before.
    let started = |start: i32| {
        let first = visit(days(90), |v| v.solids_yesterday = Some(false));
        let second = visit(days(110), |v| {
            v.solids_yesterday = Some(false);
            v.solids_started_on = Some(days(start));
        });
        answer(&girl(), RuleId::SolidsEarly, vec![first, second]).class()
    };
    assert_eq!((started(90), started(91)), (None, week));
}

#[test]
fn solids_too_late() {
    let late = |on, signs: Option<&[ReadinessSign]>| {
        class(RuleId::SolidsLate, on, |v| {
            v.solids_yesterday = Some(false);
            v.readiness_signs = signs.map(|signs| signs.iter().copied().collect());
        })
    };
    let (week, fortnight) = (Some(Class::Week), Some(Class::Fortnight));
    let grace = add_days(months(6), 14);
    assert_eq!(late(add_days(grace, -1), None), None);
    assert_eq!(late(grace, None), fortnight);
    assert_eq!(late(add_days(months(7), -1), None), fortnight);
    assert_eq!(late(months(7), None), week);
    use ReadinessSign::{HeadSteady, MouthsObjects, SitsSupported, Swallows, TurnsToFood};
    assert_eq!(late(grace, Some(&[HeadSteady, SitsSupported, MouthsObjects])), fortnight);
    assert_eq!(late(grace, Some(&[HeadSteady, SitsSupported])), None, "two signs");
    assert_eq!(late(grace, Some(&[Swallows, SitsSupported, MouthsObjects, TurnsToFood])), None, "head not steady");
    assert_eq!(late(months(7), Some(&[])), week, "from 7 months readiness does not wait");
    assert_eq!(answer(&girl(), RuleId::SolidsLate, vec![visit(months(9), |_| {})]), Answer::CannotTell(Why::Missing));
}

#[test]
fn late_solids_of_a_child_born_early_go_by_the_stage_age_up_to_eight_months() {
    let mut early = girl();
    early.gestation_days = Some(220);
    let late = |on| answer(&early, RuleId::SolidsLate, vec![visit(on, |v| v.solids_yesterday = Some(false))]).class();
    // Corrected by 60 days: due on 11 March, 6 months and 14 days on 25 September, 7 months on 11 October.
    assert_eq!(late(day("2025-09-09")), None);
    assert_eq!(late(months(8)), Some(Class::Week), "8 months by the calendar");
    early.gestation_days = Some(240);
    let late = |on| answer(&early, RuleId::SolidsLate, vec![visit(on, |v| v.solids_yesterday = Some(false))]).class();
    // Corrected by 40 days: due on 19 February, 6 months and 14 days on 2 September.
    assert_eq!((late(day("2025-09-01")), late(day("2025-09-02"))), (None, Some(Class::Fortnight)));
}

#[test]
fn textures_behind_the_stage() {
    let behind = |on, level| {
        class(RuleId::TextureBehind, on, |v| {
            v.solids_yesterday = Some(true);
            v.texture_best = best(level);
        })
    };
    let (week, fortnight, month) = (Some(Class::Week), Some(Class::Fortnight), Some(Class::Month));
    for (age, level, expected) in [
        (7, 0, None),
        (8, 1, month),
        (8, 2, None),
        (9, 1, fortnight),
        (9, 2, None),
        (10, 1, week),
        (10, 2, None),
        (11, 1, week),
        (11, 2, month),
        (11, 3, None),
        (12, 2, fortnight),
        (12, 3, None),
        (14, 2, fortnight),
        (15, 3, fortnight),
        (15, 4, None),
        (15, 1, week),
        (23, 3, fortnight),
        (24, 0, None),
    ] {
        assert_eq!(behind(months(age), level), expected, "texture {level} at {age} months");
    }
    let not_started = |v: &mut Visit| {
        v.solids_yesterday = Some(false);
        v.texture_best = best(1);
    };
    assert_eq!(class(RuleId::TextureBehind, months(10), not_started), None);
}

#[test]
fn watery_food() {
    let watery = |on, level| {
        class(RuleId::TextureWatery, on, |v| {
            v.solids_yesterday = Some(true);
            v.texture_usual = best(level);
        })
    };
    assert_eq!(watery(add_days(months(6), -1), 0), None);
    assert_eq!(watery(months(6), 0), Some(Class::Fortnight));
    assert_eq!(watery(months(6), 1), None);
}

#[test]
fn the_stage_is_that_of_the_age_or_of_the_first_tastes() {
    let stage = |on, fill: fn(&mut Visit)| judge(&girl(), vec![visit(on, fill)]).visits[0].stage;
    let not_asked: fn(&mut Visit) = |_| {};
    for (on, expected) in [
        (add_days(months(6), -1), Some(StageId::MilkOnly)),
        (months(6), Some(StageId::Early67)),
        (months(8), Some(StageId::Mid8)),
        (months(9), Some(StageId::Lumps911)),
        (months(12), Some(StageId::Family1214)),
        (months(15), Some(StageId::Family1523)),
        (add_days(months(24), -1), Some(StageId::Family1523)),
        (months(24), None),
    ] {
        assert_eq!(stage(on, not_asked), expected, "{on}");
    }
    assert_eq!(stage(months(13), |v| v.solids_yesterday = Some(false)), Some(StageId::FirstTastes));
    assert_eq!(stage(months(5), |v| v.solids_yesterday = Some(false)), Some(StageId::MilkOnly));
    let started = |days_before: i32| {
        let on = months(9);
        judge(&girl(), vec![visit(on, |v| v.solids_started_on = Some(add_days(on, -days_before)))]).visits[0].stage
    };
    assert_eq!((started(13), started(14)), (Some(StageId::FirstTastes), Some(StageId::Lumps911)));
    // A protocol may end the first tastes earlier: at that age the stage is that of the age, whatever is eaten.
    let shipped = default_protocol();
    let by_age = shipped.stages.iter().skip(1).cloned().collect();
    let until_a_year = Stages::new(by_age, Stage { to_months: 12, ..shipped.stages.first_tastes().clone() });
    let protocols = Protocols::one(Protocol { stages: until_a_year, ..shipped.clone() });
    let not_started = |on| {
        let milk_only = visit(on, |v| v.solids_yesterday = Some(false));
        assess(&girl(), &[milk_only], &protocols, on).visits[0].stage
    };
    assert_eq!(not_started(add_days(months(12), -1)), Some(StageId::FirstTastes));
    assert_eq!(not_started(months(12)), Some(StageId::Family1214));
    // A statement of the same day, entered before, counts.
    let on = months(9);
    let judged =
        judge(&girl(), vec![visit(on, |v| v.solids_started_on = Some(add_days(on, -3))), visit(on, |v| v.solids_yesterday = Some(true))]);
    assert_eq!(judged.visits[1].stage, Some(StageId::FirstTastes));
}

#[test]
fn before_the_due_date_there_is_milk_and_no_stage_age() {
    let mut early = girl();
    early.gestation_days = Some(220);
    let judged = judge(&early, vec![visit(days(59), |v| v.weight = grams(2_500)), visit(days(60), |_| {})]);
    assert_eq!((judged.visits[0].stage_months, judged.visits[0].stage), (None, Some(StageId::MilkOnly)));
    assert!(judged.visits[0].scores.waz.value().is_none());
    assert_eq!(judged.visits[1].stage_months, Some(0));
}

//! Sweet drinks, bottles, honey, choking, low-value foods, local waiting ages, appetite.

use DangerSign as S;

use super::*;
use crate::evidence::{EvidenceKey, Quantity};
use crate::protocol::{Food, HoldPolicy};
use crate::visit::{DangerSign, LowValue};

#[test]
fn sweet_drinks_and_bottles() {
    let young = add_days(months(6), -1);
    for (on, expected) in [(young, Some(Class::Fortnight)), (months(6), Some(Class::Month)), (months(24), None)] {
        assert_eq!(class(RuleId::DrinkSweet, on, |v| v.sweet_drink = Some(true)), expected);
        assert_eq!(class(RuleId::BottleUsed, on, |v| v.bottle = Some(true)), expected);
    }
}

fn honey(on: NaiveDate, signs: Option<&[DangerSign]>) -> Visit {
    visit(on, |v| {
        v.foods.push(food("honey", None));
        v.danger_signs = signs.map(|signs| signs.iter().copied().collect());
    })
}

fn signs(on: NaiveDate, signs: &[DangerSign]) -> Visit {
    visit(on, |v| v.danger_signs = Some(signs.iter().copied().collect()))
}

#[test]
fn honey_before_twelve_months_and_the_weeks_after() {
    let at = |visits| answer(&girl(), RuleId::FoodHoney, visits).class();
    let last_day = add_days(months(12), -1);
    assert_eq!(at(vec![honey(last_day, None)]), Some(Class::Week));
    assert_eq!(at(vec![honey(months(12), None)]), None);
    for sign in [S::Constipation, S::WeakCry, S::Floppy, S::PoorSuck, S::DroopyLids] {
        assert_eq!(at(vec![honey(last_day, Some(&[sign]))]), Some(Class::Today), "{sign:?}");
        let after = |days| at(vec![honey(last_day, Some(&[])), signs(add_days(last_day, days), &[sign])]);
        assert_eq!((after(30), after(31)), (Some(Class::Today), None), "{sign:?}");
    }
    assert_eq!(at(vec![honey(last_day, Some(&[S::FastBreathing]))]), Some(Class::Week));
}

#[test]
fn honey_clears_after_thirty_days_without_a_sign_or_by_care() {
    let open = |visits| follow_up(&judge(&girl(), visits), RuleId::FoodHoney).is_open();
    let first = months(8);
    assert!(open(vec![honey(first, Some(&[])), signs(add_days(first, 29), &[])]));
    assert!(!open(vec![honey(first, Some(&[])), signs(add_days(first, 30), &[])]));
    assert!(open(vec![honey(first, Some(&[])), visit(add_days(first, 40), |_| {})]), "signs not asked");
    let care = visit(add_days(first, 2), |v| v.outcomes.push(told(RuleId::FoodHoney, Outcome::Seen)));
    assert!(!open(vec![honey(first, Some(&[])), care]));
}

#[test]
fn foods_that_can_choke() {
    let form = |unsafe_form| FoodOffer { unsafe_form, ..food("meat", None) };
    let at = |offers: Vec<FoodOffer>| answer(&girl(), RuleId::FoodChoking, vec![visit(months(9), |v| v.foods = offers)]);
    assert_eq!(at(vec![form(Some(true))]).class(), Some(Class::Fortnight));
    assert_eq!(at(vec![form(Some(false))]), Answer::Clear);
    assert!(matches!(at(vec![form(None)]), Answer::CannotTell(_)));
    assert_eq!(at(vec![food("rice", None)]), Answer::Clear);
    assert!(matches!(at(vec![]), Answer::CannotTell(_)));
    let soft = FoodOffer { unsafe_form: Some(true), ..food("rice", None) };
    assert_eq!(at(vec![soft.clone()]), Answer::Clear, "not a food that chokes");
    // Only those that were given in such a form are named.
    let named_only = FoodOffer { offers: 0, unsafe_form: Some(true), ..food("fish", None) };
    let safe = FoodOffer { unsafe_form: Some(false), ..food("groundnut_whole", None) };
    let judged = judge(&girl(), vec![visit(months(9), |v| v.foods = vec![soft, safe, form(Some(true)), named_only])]);
    let evidence = &judged.visits[0].finding(RuleId::FoodChoking).expect("it fires").evidence;
    assert_eq!(evidence.lines(), [(EvidenceKey::Foods, Quantity::Codes(vec!["meat".to_owned()]))]);
}

#[test]
fn foods_and_drinks_of_low_value() {
    let at = |on, what| class(RuleId::FoodLowValue, on, |v| v.low_value = Some([what].into()));
    let last = |months_: u32| add_days(months(months_), -1);
    assert_eq!((at(last(24), LowValue::TeaCoffee), at(months(24), LowValue::TeaCoffee)), (Some(Class::Month), None));
    for what in [LowValue::Salt, LowValue::Sugar] {
        assert_eq!((at(last(12), what), at(months(12), what)), (Some(Class::Month), None));
    }
}

#[test]
fn a_food_before_the_local_waiting_age() {
    let mut protocol = default_protocol().clone();
    let wait =
        |code: &str, months, policy| Food { local_wait_months: months, hold_policy: policy, ..Food::plain(FoodCode(code.to_owned())) };
    protocol.foods.add(vec![
        wait("greens", 9, HoldPolicy::Flag),
        wait("duck_egg", 12, HoldPolicy::Flag),
        wait("sour_milk", 10, HoldPolicy::Advise),
    ]);
    let protocols = Protocols::one(protocol);
    let judged = |visits: Vec<Visit>| {
        let as_of = visits.last().expect("a visit").on;
        assess(&girl(), &visits, &protocols, as_of)
    };
    let offered = |code, on| visit(on, |v| v.foods.push(food(code, None)));
    let fires = |code, on| judged(vec![offered(code, on)]).follow_ups.len() == 1;
    assert!(fires("greens", add_days(months(9), -1)));
    assert!(!fires("greens", months(9)));
    assert!(!fires("sour_milk", months(8)), "advice only");
    // Named are those that were given too early.
    let several = visit(months(8), |v| {
        let named_only = FoodOffer { offers: 0, ..food("duck_egg", None) };
        v.foods = vec![food("greens", None), named_only, food("sour_milk", None)];
    });
    let evidence = &judged(vec![several]).follow_ups[0].evidence;
    assert_eq!(evidence.lines(), [(EvidenceKey::Foods, Quantity::Codes(vec!["greens".to_owned()]))]);
    // Clear at the age of every food given too early so far.
    let mut visits = vec![offered("greens", months(7)), offered("duck_egg", months(8)), visit(months(9), |_| {})];
    for (at, visit) in visits.iter_mut().enumerate() {
        visit.id = VisitId(u128::try_from(at).expect("small"));
    }
    assert!(judged(visits.clone()).follow_ups[0].is_open());
    visits.push(Visit::empty(VisitId(9), months(12), Contact::Home));
    assert!(!judged(visits).follow_ups[0].is_open());
}

#[test]
fn poor_appetite_is_more_urgent_with_a_follow_up_on_growth() {
    let at = |on, days, fill: fn(&mut Visit)| {
        class(RuleId::AppetitePoor, on, |v| {
            v.appetite_poor_days = Some(days);
            fill(v);
        })
    };
    assert_eq!(at(months(9), 2, |_| {}), None);
    assert_eq!(at(months(9), 3, |_| {}), Some(Class::Week));
    assert_eq!(at(months(9), 3, |v| v.muac = muac(120)), Some(Class::TwoDays), "wasting opens at the same visit");
    assert_eq!(at(months(9), 3, |v| v.danger_signs = Some([S::StiffNeck].into())), Some(Class::Week), "not a rule on growth");
    // The follow-up on growth closes at this very visit: it is no longer open after it.
    let first = visit(months(8), |v| v.weight = weight_at(&girl(), months(8), -250));
    let second = visit(months(9), |v| {
        v.weight = weight_at(&girl(), months(9), -100);
        v.appetite_poor_days = Some(4);
    });
    assert_eq!(answer(&girl(), RuleId::AppetitePoor, vec![first, second]).class(), Some(Class::Week));
}

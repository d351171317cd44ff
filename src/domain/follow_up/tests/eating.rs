//! Meals, food groups, iron, animal foods, fruit and vegetables.

use FoodGroup as G;

use super::*;
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::food::FoodGroup;

fn meals(on: NaiveDate, breastfed: Option<bool>, meals: Option<u8>, milk: [Option<u8>; 3], fill: impl FnOnce(&mut Visit)) -> Option<Class> {
    class(RuleId::MealsFew, on, |v| {
        v.solids_yesterday = Some(true);
        v.breastfed = breastfed;
        v.meals = meals;
        [v.formula_times, v.animal_milk_times, v.drink_yogurt_times] = milk;
        fill(v);
    })
}

#[test]
fn meals_of_a_breastfed_child() {
    let at = |on, n| meals(on, Some(true), Some(n), [None; 3], |_| {});
    let few = Some(Class::Fortnight);
    for (on, least) in [(months(6), 2), (add_days(months(9), -1), 2), (months(9), 3), (add_days(months(24), -1), 3)] {
        assert_eq!(at(on, least - 1), few, "{on}");
        assert_eq!(at(on, least), None, "{on}");
    }
    assert_eq!(at(add_days(months(6), -1), 0), None);
    assert_eq!(at(months(24), 0), None);
}

#[test]
fn meals_and_milk_feeds_of_a_child_not_breastfed() {
    let few = Some(Class::Fortnight);
    let at = |n, milk| meals(months(10), Some(false), n, milk, |_| {});
    assert_eq!(at(Some(1), [Some(2), Some(0), Some(0)]), few);
    assert_eq!(at(Some(1), [Some(2), Some(1), Some(0)]), None);
    assert_eq!(at(Some(1), [Some(2), Some(0), None]), None, "the missing part could be the fourth feed");
    assert_eq!(at(Some(2), [Some(2), None, None]), None, "four feeds are known");
    assert_eq!(at(Some(0), [Some(9), None, None]), few, "no meal at all");
    assert_eq!(at(None, [Some(0), Some(0), Some(0)]), None);
}

#[test]
fn milk_feeds_are_told_where_they_count_as_meals() {
    let told = |breastfed| {
        let eaten = visit(months(10), |v| {
            (v.solids_yesterday, v.breastfed, v.meals) = (Some(true), breastfed, Some(0));
            (v.formula_times, v.animal_milk_times) = (Some(2), Some(1));
        });
        let judged = judge(&girl(), vec![eaten]);
        judged.visits[0].finding(RuleId::MealsFew).expect("it fires").evidence.lines().to_vec()
    };
    let count = |key, n| (key, Quantity::Count(n));
    assert_eq!(told(Some(false)), [count(K::Meals, 0), count(K::MilkFeeds, 3), count(K::Least, 4)]);
    assert_eq!(told(Some(true)), [count(K::Meals, 0), count(K::Least, 3)]);
    assert_eq!(told(None), [count(K::Meals, 0), count(K::Least, 3)]);
}

#[test]
fn no_meal_at_all_is_told_whatever_else_is_known() {
    let few = Some(Class::Fortnight);
    let week = Some(Class::Week);
    assert_eq!(meals(months(10), None, Some(0), [None; 3], |_| {}), few);
    assert_eq!(meals(months(10), None, Some(1), [None; 3], |_| {}), None);
    assert_eq!(meals(months(10), Some(true), Some(0), [None; 3], |v| v.ill = Some(true)), week);
    assert_eq!(meals(months(10), Some(true), Some(1), [None; 3], |v| v.ill = Some(true)), few);
    let with_before = |before: Option<u8>| {
        let at = |on, n| {
            visit(on, |v| {
                v.solids_yesterday = Some(true);
                v.breastfed = Some(true);
                v.meals = n;
            })
        };
        let middle = at(add_days(months(9), 20), None);
        answer(&girl(), RuleId::MealsFew, vec![at(months(9), before), middle, at(months(10), Some(0))]).class()
    };
    assert_eq!((with_before(Some(0)), with_before(Some(1)), with_before(None)), (week, few, few));
}

#[test]
fn meals_wait_while_the_child_settles_in() {
    let started = |days_before: i32| {
        meals(months(8), Some(true), Some(0), [None; 3], |v| v.solids_started_on = Some(add_days(months(8), -days_before)))
    };
    assert_eq!((started(13), started(14)), (None, Some(Class::Fortnight)));
    let not_started = |v: &mut Visit| v.solids_yesterday = Some(false);
    assert_eq!(meals(months(8), Some(true), Some(0), [None; 3], not_started), None);
}

const ALL: [FoodGroup; 8] = [G::BreastMilk, G::GrainsRoots, G::PulsesNuts, G::Dairy, G::Flesh, G::Eggs, G::VitA, G::OtherFv];

fn groups(on: NaiveDate, n: usize) -> Visit {
    visit(on, |v| v.groups = Some(ALL.into_iter().take(n).collect()))
}

#[test]
fn few_food_groups() {
    let low = |visits| answer(&girl(), RuleId::DiversityLow, visits).class();
    let (fortnight, month) = (Some(Class::Fortnight), Some(Class::Month));
    for (n, expected) in [(2, fortnight), (3, month), (4, month), (5, None), (8, None)] {
        assert_eq!(low(vec![groups(months(8), n)]), expected, "{n} groups");
    }
    assert_eq!(low(vec![groups(add_days(months(8), -1), 1)]), None);
    assert_eq!(low(vec![groups(months(24), 1)]), None);
    assert_eq!(low(vec![groups(months(8), 4), groups(months(9), 4)]), fortnight, "held before");
    assert_eq!(low(vec![groups(months(8), 4), visit(add_days(months(8), 5), |_| {}), groups(months(9), 4)]), fortnight);
    assert_eq!(low(vec![groups(months(8), 4), groups(months(9), 5), groups(months(10), 4)]), month);
    assert_eq!(low(vec![groups(months(8), 4), groups(months(8), 4)]), month, "the same day is not earlier");
}

#[test]
fn no_iron() {
    let iron = |on, flesh: Option<bool>, source: Option<bool>| {
        visit(on, move |v| {
            v.groups = flesh.map(|flesh| if flesh { [G::Flesh].into() } else { [G::GrainsRoots].into() });
            v.iron_source = source;
        })
    };
    let none = |visits| answer(&girl(), RuleId::IronNone, visits).class();
    let (fortnight, month) = (Some(Class::Fortnight), Some(Class::Month));
    assert_eq!(none(vec![iron(months(7), Some(false), Some(false))]), month);
    assert_eq!(none(vec![iron(add_days(months(7), -1), Some(false), Some(false))]), None);
    assert_eq!(none(vec![iron(months(7), Some(true), Some(false))]), None);
    assert_eq!(none(vec![iron(months(7), Some(false), Some(true))]), None);
    assert_eq!(none(vec![iron(months(7), Some(false), None)]), None, "drops were not asked about");
    assert_eq!(none(vec![iron(months(7), None, Some(false))]), None);
    let again = |gap: i32| none(vec![iron(add_days(months(9), -gap), Some(false), Some(false)), iron(months(9), Some(false), Some(false))]);
    assert_eq!((again(13), again(14)), (month, fortnight));
}

#[test]
fn no_animal_food_and_no_fruit_or_vegetable() {
    let with = |rule, on, group: FoodGroup| class(rule, on, |v| v.groups = Some([group].into()));
    let month = Some(Class::Month);
    assert_eq!(with(RuleId::AnimalFoodNone, months(8), G::GrainsRoots), month);
    assert_eq!(with(RuleId::AnimalFoodNone, add_days(months(8), -1), G::GrainsRoots), None);
    for group in [G::Eggs, G::Flesh, G::Dairy] {
        assert_eq!(with(RuleId::AnimalFoodNone, months(8), group), None);
    }
    assert_eq!(with(RuleId::VegFruitNone, months(7), G::GrainsRoots), month);
    assert_eq!(with(RuleId::VegFruitNone, add_days(months(7), -1), G::GrainsRoots), None);
    for group in [G::VitA, G::OtherFv] {
        assert_eq!(with(RuleId::VegFruitNone, months(7), group), None);
    }
}

//! Recipes for one child: what is on hold or may harm comes first, and what is not known is never taken for safe.

use std::collections::BTreeMap;

use super::*;
use crate::follow_up::tests::{day, girl, protocols};
use crate::protocol::{Keeping, RecipePart, RecipeText};

fn code(text: &str) -> FoodCode {
    FoodCode(text.to_owned())
}

/// The shipped protocol with an ingredient of beans and one of fish.
fn protocol() -> Protocol {
    let mut protocol = (**protocols().on(day("2026-06-01"))).clone();
    let form = |name: &str, of: &str| Food { form_of: Some(code(of)), ..Food::plain(code(name)) };
    let fish_oil = Food { allergen: Some(Allergen::Fish), ..Food::plain(code("fish_sauce")) };
    protocol.foods.add(vec![form("bean_flour", "beans"), fish_oil, Food::plain(code("plain_oil"))]);
    protocol
}

fn recipe(parts: &[&str], textures: &[usize]) -> Recipe {
    Recipe {
        code: "r".to_owned(),
        parts: parts.iter().map(|food| RecipePart { food: code(food), grams: 40, flavour: false }).collect(),
        water_ml: 300,
        cooked_g: 300,
        given_energy: None,
        textures: textures.iter().map(|level| Texture::ALL[*level]).collect(),
        keeps: Keeping { flour_days: None, cooked_room_hours: 2, cooked_cold_hours: 24 },
        text: RecipeText::default(),
        texts: BTreeMap::new(),
        source: String::new(),
    }
}

fn line(food: &str, state: FoodState) -> FoodLine {
    FoodLine {
        code: code(food),
        state,
        first_on: day("2025-08-01"),
        last_on: day("2025-09-01"),
        offers: 3,
        accepted_offers: 3,
        refused_offers: 0,
        cleared_on: None,
    }
}

fn taken(foods: &[&str]) -> Vec<FoodLine> {
    foods.iter().map(|food| line(food, FoodState::Accepted)).collect()
}

fn held(food: &str) -> FoodLine {
    line(food, FoodState::OnHold { since: day("2025-09-01"), worst: ReactionLevel::Spreading })
}

/// Remarks for a girl of 9 months who was asked about allergies.
fn said(change: impl FnOnce(&mut Child), foods: &[FoodLine], recipe: &Recipe) -> Vec<Remark> {
    let mut child = girl();
    (child.known_food_allergy, child.severe_eczema) = (Some(false), Some(false));
    change(&mut child);
    let eater = Eater { child: &child, on: day("2025-10-15"), stage: Some(StageId::Lumps911), foods, usual: None, swallow_trouble: false };
    remarks(&eater, recipe, &protocol())
}

#[test]
fn a_recipe_of_foods_taken_well_has_no_remark() {
    let remarks = said(|_| {}, &taken(&["millet_porridge", "beans"]), &recipe(&["millet_porridge", "bean_flour", "plain_oil"], &[2, 3]));
    assert_eq!((remarks.as_slice(), fit(&remarks)), (&[][..], Fit::Suits));
}

#[test]
fn a_hold_reaches_ingredients_and_every_food_with_the_allergen() {
    for (on_hold, part) in [("beans", "beans"), ("beans", "bean_flour"), ("fish", "small_dried_fish"), ("small_dried_fish", "fish_sauce")] {
        let remarks = said(|_| {}, &[held(on_hold)], &recipe(&["millet_porridge", part], &[2, 3]));
        let first = Remark::OnHold { food: code(part), held: code(on_hold), since: day("2025-09-01"), worst: ReactionLevel::Spreading };
        assert_eq!((remarks.first(), fit(&remarks)), (Some(&first), Fit::No), "{on_hold} {part}");
    }
    let other = said(|_| {}, &[held("beans")], &recipe(&["small_dried_fish"], &[2, 3]));
    assert!(fit(&other) < Fit::No, "{other:?}");
}

#[test]
fn nobody_is_told_how_to_try_a_food_that_is_on_hold() {
    let remarks = said(|child| child.known_food_allergy = None, &[held("fish")], &recipe(&["millet_porridge", "beans", "fish"], &[2, 3]));
    assert!(remarks.iter().all(|remark| matches!(remark, Remark::OnHold { .. })), "{remarks:?}");
}

#[test]
fn a_hold_that_was_lifted_is_no_hold() {
    let lifted = line("beans", FoodState::Cleared { on: day("2025-10-01") });
    assert_eq!(fit(&said(|_| {}, &[lifted], &recipe(&["bean_flour"], &[2, 3]))), Fit::Suits);
}

#[test]
fn ages_of_foods_and_of_the_local_protocol() {
    let honey = said(|_| {}, &taken(&["millet_porridge"]), &recipe(&["millet_porridge", "honey"], &[2, 3]));
    assert_eq!(honey.first(), Some(&Remark::TooYoung { food: code("honey"), from: day("2026-01-10") }));
    assert_eq!(fit(&honey), Fit::Later);
    let mut local = protocol();
    local.foods.add(vec![Food { local_wait_months: 10, ..Food::plain(code("rice")) }]);
    let child = girl();
    let eater = |on| Eater { child: &child, on, stage: Some(StageId::Lumps911), foods: &[], usual: None, swallow_trouble: false };
    let waits = |on| remarks(&eater(on), &recipe(&["rice"], &[2, 3]), &local);
    assert_eq!(waits(day("2025-11-09")), [Remark::Waits { food: code("rice"), from: day("2025-11-10") }]);
    assert_eq!(waits(day("2025-11-10")), []);
}

#[test]
fn a_known_allergy_and_severe_eczema_ask_first() {
    let fish = recipe(&["small_dried_fish"], &[2, 3]);
    let allergy = said(|child| child.known_food_allergy = Some(true), &taken(&["small_dried_fish"]), &fish);
    assert_eq!(allergy, [Remark::KnownAllergy { allergens: vec![Allergen::Fish] }]);
    let eczema = said(|child| child.severe_eczema = Some(true), &[], &fish);
    assert_eq!((eczema.as_slice(), fit(&eczema)), (&[Remark::Eczema { allergens: vec![Allergen::Fish] }][..], Fit::AskFirst));
    assert_eq!(said(|child| child.severe_eczema = Some(true), &taken(&["small_dried_fish"]), &fish), []);
}

#[test]
fn an_allergy_that_nobody_asked_about_is_not_taken_for_none() {
    let fish = recipe(&["small_dried_fish"], &[2, 3]);
    let not_asked = said(|child| child.known_food_allergy = None, &[], &fish);
    assert_eq!(not_asked, [Remark::NewAllergen { allergens: vec![Allergen::Fish], allergy_not_asked: true }]);
    assert_eq!(said(|_| {}, &[], &fish), [Remark::NewAllergen { allergens: vec![Allergen::Fish], allergy_not_asked: false }]);
}

#[test]
fn two_new_foods_at_once_are_one_too_many() {
    let two = said(|_| {}, &[], &recipe(&["millet_porridge", "bean_flour", "plain_oil"], &[2, 3]));
    assert_eq!(
        (two.first(), fit(&two)),
        (Some(&Remark::NewTogether { foods: vec![code("millet_porridge"), code("beans")] }), Fit::AskFirst)
    );
    assert_eq!(said(|_| {}, &taken(&["millet_porridge"]), &recipe(&["millet_porridge", "bean_flour", "plain_oil"], &[2, 3])), []);
    // Beans and their flour are one food.
    assert_eq!(said(|_| {}, &[], &recipe(&["beans", "bean_flour"], &[2, 3])), []);
}

#[test]
fn textures_by_stage_and_by_swallowing() {
    let child = girl();
    let told = |stage, usual: Option<usize>, swallow_trouble, textures: &[usize]| {
        let usual = usual.map(|level| Texture::ALL[level]);
        let eater = Eater { child: &child, on: day("2025-10-15"), stage: Some(stage), foods: &[], usual, swallow_trouble };
        remarks(&eater, &recipe(&["rice"], textures), &protocol())
    };
    let ahead = |level: usize, swallowing| Remark::TextureAhead { texture: Texture::ALL[level], swallowing };
    assert_eq!(told(StageId::Early67, None, false, &[3, 4]), [ahead(3, false)]);
    assert_eq!(told(StageId::Early67, None, false, &[2, 3]), []);
    assert_eq!(told(StageId::Lumps911, None, false, &[1, 2]), [Remark::Smoother { hoped: Texture::ALL[3] }]);
    assert_eq!(told(StageId::Lumps911, Some(1), true, &[2, 3]), [ahead(2, true)]);
    assert_eq!(told(StageId::Lumps911, None, true, &[2, 3]), [ahead(2, true)]);
    assert_eq!(told(StageId::Lumps911, Some(2), true, &[2, 3]), []);
    assert_eq!(told(StageId::MilkOnly, None, false, &[1]), [Remark::MilkOnly]);
}

#[test]
fn while_milk_is_all_only_that_and_holds_are_said() {
    let child = girl();
    let foods = [held("beans")];
    let eater =
        Eater { child: &child, on: day("2025-04-15"), stage: Some(StageId::MilkOnly), foods: &foods, usual: None, swallow_trouble: false };
    let milk = remarks(&eater, &recipe(&["millet_porridge", "small_dried_fish", "honey"], &[3]), &protocol());
    assert_eq!((milk.as_slice(), fit(&milk)), (&[Remark::MilkOnly][..], Fit::Later));
    assert_eq!(fit(&remarks(&eater, &recipe(&["bean_flour"], &[1]), &protocol())), Fit::No);
}

#[test]
fn of_several_foods_the_one_that_waits_longest_is_named() {
    let honey = said(|_| {}, &taken(&["millet_porridge"]), &recipe(&["millet_porridge", "honey", "honey"], &[2, 3]));
    assert_eq!(honey.iter().filter(|remark| matches!(remark, Remark::TooYoung { .. })).count(), 1);
}

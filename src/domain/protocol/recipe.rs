//! Recipes of a protocol, and what follows from their parts: energy, groups, allergens, ages. It knows no child and no file.

use std::collections::{BTreeMap, BTreeSet};

use super::food::{Food, Foods, Iron};
use crate::food::{Allergen, FoodCode, FoodGroup, Texture};

/// A part of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecipePart {
    /// Food, as weighed before cooking.
    pub food: FoodCode,
    /// Grams.
    pub grams: u32,
    /// Only flavours: it counts in no food group (WHO/UNICEF 2021, indicators; from memory). Its allergen counts all the same.
    pub flavour: bool,
}

/// The words of a recipe in one language.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RecipeText {
    /// Name.
    pub name: String,
    /// The measure of each part in a household, in the order of the parts: `5 level tablespoons`.
    pub measures: Vec<String>,
    /// How it is made, a short sentence a step.
    pub steps: Vec<String>,
    /// What to beware of.
    pub warnings: Vec<String>,
}

/// How long a recipe keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Keeping {
    /// Its flour at room temperature and in the cold, days; `None` = it has no flour to keep.
    pub flour_days: Option<(u32, u32)>,
    /// Cooked, at room temperature, hours; never more than 2 (WHO, Five keys to safer food; from memory).
    pub cooked_room_hours: u32,
    /// Cooked, in the cold, hours.
    pub cooked_cold_hours: u32,
}

/// An energy density that the file gives instead of letting it be worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct GivenEnergy {
    /// Energy density, kcal/g.
    pub kcal_per_g: f64,
    /// Where it comes from.
    pub source: String,
}

/// A recipe.
#[derive(Debug, Clone, PartialEq)]
pub struct Recipe {
    /// Its permanent code.
    pub code: String,
    /// What goes in.
    pub parts: Vec<RecipePart>,
    /// Water, ml.
    pub water_ml: u32,
    /// Weight when cooked, g.
    pub cooked_g: u32,
    /// An energy density measured or published, if there is one.
    pub given_energy: Option<GivenEnergy>,
    /// Textures it can have, at least one, thinnest first.
    pub textures: Vec<Texture>,
    /// How long it keeps.
    pub keeps: Keeping,
    /// Its words in the language of the file.
    pub text: RecipeText,
    /// Its words by language.
    pub texts: BTreeMap<String, RecipeText>,
    /// Where it comes from.
    pub source: String,
}

/// What a child has eaten that was given a recipe.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Eaten {
    /// Its food groups; flavourings do not count.
    pub groups: BTreeSet<FoodGroup>,
    /// Its foods as they are tracked (beans, not their flour): those offered for choice, and whatever carries a common allergen.
    pub foods: BTreeSet<FoodCode>,
    /// Iron was added to a part of it. The iron of meat, fish and liver goes with their group.
    pub added_iron: bool,
}

impl Recipe {
    /// Its words in a language, else in that of the file.
    #[must_use]
    pub fn text(&self, lang: &str) -> &RecipeText {
        self.texts.get(lang).unwrap_or(&self.text)
    }

    /// Energy of the whole, kcal, from that of its parts; `None` if the energy of a part is not known.
    #[must_use]
    pub fn kcal(&self, foods: &Foods) -> Option<f64> {
        self.parts.iter().map(|part| Some(f64::from(part.grams) / 100.0 * f64::from(foods.get(&part.food)?.kcal_per_100g?))).sum()
    }

    /// Energy density, kcal/g: the one given, else that of the parts over the weight when cooked; `None` if it cannot be told.
    #[must_use]
    pub fn kcal_per_g(&self, foods: &Foods) -> Option<f64> {
        match &self.given_energy {
            Some(given) => Some(given.kcal_per_g),
            None => (self.cooked_g > 0).then(|| self.kcal(foods)).flatten().map(|kcal| kcal / f64::from(self.cooked_g)),
        }
    }

    /// The food groups in it; flavourings do not count.
    #[must_use]
    pub fn groups(&self, foods: &Foods) -> BTreeSet<FoodGroup> {
        self.parts.iter().filter(|part| !part.flavour).flat_map(|part| foods.kinds(&part.food)).filter_map(|food| food.group).collect()
    }

    /// Whether it holds iron that is well absorbed; flavourings do not count.
    #[must_use]
    pub fn has_iron(&self, foods: &Foods) -> bool {
        self.parts.iter().filter(|part| !part.flavour).flat_map(|part| foods.kinds(&part.food)).any(|food| food.iron != Iron::None)
    }

    /// The common allergens in it, of flavourings too.
    #[must_use]
    pub fn allergens(&self, foods: &Foods) -> BTreeSet<Allergen> {
        self.foods(foods).filter_map(|food| food.allergen).collect()
    }

    /// What a child has eaten that was given it.
    #[must_use]
    pub fn eaten(&self, foods: &Foods) -> Eaten {
        let counted = self.parts.iter().filter(|part| !part.flavour).flat_map(|part| foods.kinds(&part.food));
        let added_iron = counted.into_iter().any(|food| food.iron == Iron::Fortified);
        // The tracked food of a part comes last of its kinds.
        let tracked = self.parts.iter().filter_map(|part| foods.kinds(&part.food).last());
        let told = tracked.filter(|food| food.active || food.allergen.is_some()).map(|food| food.code.clone());
        Eaten { groups: self.groups(foods), foods: told.collect(), added_iron }
    }

    /// From this chronological age in days: the latest of its foods.
    #[must_use]
    pub fn earliest_days(&self, foods: &Foods) -> u32 {
        self.foods(foods).map(|food| food.earliest_days).max().unwrap_or(0)
    }

    /// Its foods, each with the tracked food of which it is an ingredient.
    pub fn foods<'a>(&'a self, foods: &'a Foods) -> impl Iterator<Item = &'a Food> {
        self.parts.iter().flat_map(|part| foods.kinds(&part.food))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn food(code: &str, kcal: u32) -> Food {
        Food { kcal_per_100g: Some(kcal), ..Food::plain(FoodCode(code.to_owned())) }
    }

    fn foods() -> Foods {
        let beans = Food { group: Some(FoodGroup::PulsesNuts), ..food("beans", 333) };
        let flour = Food { form_of: Some(FoodCode("beans".to_owned())), ..food("bean_flour", 333) };
        let fish = Food {
            group: Some(FoodGroup::Flesh),
            iron: Iron::Heme,
            allergen: Some(Allergen::Fish),
            earliest_days: 200,
            ..food("fish", 330)
        };
        Foods::new(vec![beans, flour, fish, food("oil", 884), Food::plain(FoodCode("herb".to_owned()))])
    }

    fn recipe(parts: &[(&str, u32, bool)]) -> Recipe {
        let part = |(code, grams, flavour): &(&str, u32, bool)| RecipePart {
            food: FoodCode((*code).to_owned()),
            grams: *grams,
            flavour: *flavour,
        };
        Recipe {
            code: "r".to_owned(),
            parts: parts.iter().map(part).collect(),
            water_ml: 300,
            cooked_g: 400,
            given_energy: None,
            textures: vec![Texture::ALL[1]],
            keeps: Keeping { flour_days: None, cooked_room_hours: 2, cooked_cold_hours: 24 },
            text: RecipeText::default(),
            texts: BTreeMap::new(),
            source: String::new(),
        }
    }

    #[test]
    fn energy_is_that_of_the_parts_over_the_weight_when_cooked() {
        // 60 g x 3.33 + 10 g x 8.84 = 199.8 + 88.4 = 288.2 kcal in 400 g.
        let recipe = recipe(&[("bean_flour", 60, false), ("oil", 10, false)]);
        assert!((recipe.kcal(&foods()).expect("known") - 288.2).abs() < 1e-9);
        assert!((recipe.kcal_per_g(&foods()).expect("known") - 0.7205).abs() < 1e-9);
    }

    #[test]
    fn a_given_density_wins_and_an_unknown_part_leaves_it_unknown() {
        let mut recipe = recipe(&[("bean_flour", 60, false), ("herb", 1, false)]);
        assert_eq!((recipe.kcal(&foods()), recipe.kcal_per_g(&foods())), (None, None));
        recipe.given_energy = Some(GivenEnergy { kcal_per_g: 0.9, source: "weighed".to_owned() });
        assert_eq!(recipe.kcal_per_g(&foods()), Some(0.9));
    }

    #[test]
    fn an_ingredient_counts_as_the_food_it_is_made_of() {
        let foods = foods();
        let recipe = recipe(&[("bean_flour", 60, false), ("fish", 10, false)]);
        assert_eq!(recipe.groups(&foods), BTreeSet::from([FoodGroup::PulsesNuts, FoodGroup::Flesh]));
        assert_eq!((recipe.has_iron(&foods), recipe.earliest_days(&foods)), (true, 200));
    }

    #[test]
    fn who_ate_it_ate_its_foods_as_they_are_tracked() {
        let mut foods = foods();
        let oil = Food { active: false, ..food("oil", 884) };
        let flour = Food { iron: Iron::Fortified, ..food("flour_with_iron", 360) };
        foods.add(vec![oil, flour]);
        let code = |text: &str| FoodCode(text.to_owned());
        let eaten = recipe(&[("bean_flour", 60, false), ("oil", 10, false), ("fish", 2, true), ("flour_with_iron", 1, true)]).eaten(&foods);
        assert_eq!(eaten.groups, BTreeSet::from([FoodGroup::PulsesNuts]), "a pinch of fish is no flesh food");
        assert_eq!(
            eaten.foods,
            BTreeSet::from([code("beans"), code("fish"), code("flour_with_iron")]),
            "oil is not tracked, fish can harm"
        );
        assert!(!eaten.added_iron, "nor does a pinch of it give iron");
        assert!(recipe(&[("flour_with_iron", 50, false)]).eaten(&foods).added_iron);
        assert!(!recipe(&[("fish", 50, false)]).eaten(&foods).added_iron, "its iron goes with its group");
    }

    #[test]
    fn a_flavouring_is_no_food_group_and_no_iron_but_still_an_allergen() {
        let foods = foods();
        let recipe = recipe(&[("bean_flour", 60, false), ("fish", 2, true)]);
        assert_eq!(recipe.groups(&foods), BTreeSet::from([FoodGroup::PulsesNuts]));
        assert!(!recipe.has_iron(&foods));
        assert_eq!((recipe.allergens(&foods), recipe.earliest_days(&foods)), (BTreeSet::from([Allergen::Fish]), 200));
    }
}

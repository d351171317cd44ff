//! What a protocol holds for advice: modes where sources disagree, energy, coaching lines, recipes. No rule reads it.

use std::collections::BTreeMap;

use crate::code::codes;
use crate::food::{FoodCode, Texture};
use crate::protocol::StageId;

codes! {
    /// How common allergens are introduced.
    AllergenMode, "allergen mode" {
        /// Not later than other solids.
        WithSolids => "with_solids",
        /// As the local protocol says; needs an approving clinician.
        LocalWait => "local_wait",
    }
}

codes! {
    /// What is said about animal milk as the main drink from 6 to 11 months when the child is not breastfed.
    MilkMode, "milk mode" {
        /// Formula or animal milk (WHO 2023).
        Who2023 => "who2023",
        /// Advised against as the main drink before 12 months.
        AvoidMainDrink => "avoid_main_drink",
    }
}

/// How thick food and body weight make the number of meals.
#[derive(Debug, Clone, PartialEq)]
pub struct Energy {
    /// Energy density by texture, kcal/g: watery, smooth, mashed or richer.
    pub density: [f64; 3],
    /// Stomach capacity, g per kg of body weight.
    pub stomach_g_per_kg: f64,
    /// Below this a recipe is too thin, kcal/g.
    pub least_density: f64,
    /// Where the figures come from.
    pub source: String,
}

impl Energy {
    /// The density of a texture, kcal/g.
    #[must_use]
    pub fn density_of(&self, texture: Texture) -> f64 {
        self.density[usize::from(texture.level().min(2))]
    }

    /// How many meals give the energy needed, at least `least`. An estimate for the talk with the family.
    #[must_use]
    pub fn meals_needed(&self, kcal: u32, weight_g: u32, texture: Texture, least: u8) -> u8 {
        let a_meal = f64::from(weight_g) / 1000.0 * self.stomach_g_per_kg * self.density_of(texture);
        if a_meal <= 0.0 {
            return least;
        }
        // Saturates; nobody is advised more meals than a byte holds.
        let meals = (f64::from(kcal) / a_meal).ceil() as u8;
        meals.max(least)
    }
}

codes! {
    /// What a coaching line rests on.
    CoachMark, "mark" {
        /// A published source that was read.
        Source => "source",
        /// A published source from memory.
        Memory => "memory",
        /// Common practice.
        Practice => "practice",
        /// Our own choice.
        Own => "own",
    }
}

/// One short piece of advice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoachingLine {
    /// Its permanent key.
    pub key: String,
    /// For these stages.
    pub stages: Vec<StageId>,
    /// The words in the language of the file.
    pub text: String,
    /// The words by language.
    pub texts: BTreeMap<String, String>,
    /// About danger: told first.
    pub danger: bool,
    /// What it rests on.
    pub mark: CoachMark,
    /// Where it comes from.
    pub source: String,
}

impl CoachingLine {
    /// The words in a language, else in that of the file.
    #[must_use]
    pub fn text(&self, lang: &str) -> &str {
        self.texts.get(lang).map_or(&self.text, String::as_str)
    }
}

/// A part of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecipePart {
    /// Food.
    pub food: FoodCode,
    /// Grams.
    pub grams: u32,
}

/// How long a recipe keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Keeping {
    /// Its flour at room temperature, days.
    pub flour_room_days: u32,
    /// Its flour in the cold, days.
    pub flour_cold_days: u32,
    /// Cooked, at room temperature, hours; never more than 2 (WHO, Five keys to safer food; from memory).
    pub cooked_room_hours: u32,
    /// Cooked, in the cold, hours.
    pub cooked_cold_hours: u32,
}

/// A recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    /// Its permanent code.
    pub code: String,
    /// Name in the language of the file.
    pub name: String,
    /// Names by language.
    pub names: BTreeMap<String, String>,
    /// What goes in.
    pub parts: Vec<RecipePart>,
    /// Water, ml.
    pub water_ml: u32,
    /// Weight when cooked, g.
    pub cooked_g: u32,
    /// Textures it can have.
    pub textures: Vec<Texture>,
    /// How long it keeps.
    pub keeps: Keeping,
    /// The steps in the language of the file.
    pub steps: String,
    /// The steps by language.
    pub steps_by_language: BTreeMap<String, String>,
    /// Where it comes from.
    pub source: String,
}

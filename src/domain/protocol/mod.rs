//! The written feeding protocol a programme owns, as values. It knows neither the file it was read from nor any child.

mod food;
mod material;
mod parts;
mod read;
mod recipe;
mod rules;
mod slots;
mod stage;
mod thresholds;

use std::sync::Arc;

use chrono::NaiveDate;

pub use food::{Food, Foods, HoldPolicy, Iron};
pub use material::{AllergenMode, CoachMark, CoachingLine, Energy, MilkMode};
pub use parts::{Ages, ClassTimes, Clearing, Clock, Tolerance};
pub use read::{DayRange, Figure, ReadRule, ReadRules, TextureStep, Threshold};
pub use recipe::{Eaten, GivenEnergy, Keeping, Recipe, RecipePart, RecipeText};
pub use rules::{Rule, Rules};
pub use slots::{CloseBand, Schedule, SlotPlan};
pub use stage::{Stage, StageId, Stages};
pub use thresholds::*;

use crate::food::FoodCode;
use crate::rule::Class;

/// One version of a protocol.
#[derive(Debug, Clone, PartialEq)]
pub struct Protocol {
    /// Its name, e.g. `default-6-23`.
    pub id: String,
    /// Its version.
    pub version: String,
    /// Visits on or after this day are judged by it.
    pub effective_from: NaiveDate,
    /// Language of its texts where nothing else is said, e.g. `en`.
    pub language: String,
    /// The clinician who approved it, if any.
    pub approved_by: Option<String>,
    /// The day of approval.
    pub approved_on: Option<NaiveDate>,
    /// The local protocol that it follows, if named.
    pub local_protocol_name: Option<String>,
    /// Ages at which something begins or ends.
    pub ages: Ages,
    /// Days to the check and to the supervisor, for each class.
    pub classes: ClassTimes,
    /// How far two measurers may differ.
    pub tolerance: Tolerance,
    /// How follow-ups clear.
    pub clearing: Clearing,
    /// How common allergens are introduced.
    pub allergens: AllergenMode,
    /// What is said about animal milk as the main drink from 6 to 11 months.
    pub milk: MilkMode,
    /// Thickness and energy.
    pub energy: Energy,
    /// Stages by age.
    pub stages: Stages,
    /// When visits are expected.
    pub schedule: Schedule,
    /// Thresholds and classes of the rules.
    pub rules: Rules,
    /// Advice by stage.
    pub coaching: Vec<CoachingLine>,
    /// Recipes.
    pub recipes: Vec<Recipe>,
    /// Foods.
    pub foods: Foods,
}

impl Protocol {
    /// The food with this code.
    #[must_use]
    pub fn food(&self, code: &FoodCode) -> Option<&Food> {
        self.foods.get(code)
    }

    /// The name of a food in a language, or its code if the protocol does not know the food.
    #[must_use]
    pub fn food_name<'a>(&'a self, code: &'a FoodCode, lang: &str) -> &'a str {
        self.food(code).map_or(code.as_str(), |food| food.name(lang))
    }

    /// The recipe with this code.
    #[must_use]
    pub fn recipe(&self, code: &str) -> Option<&Recipe> {
        self.recipes.iter().find(|recipe| recipe.code == code)
    }

    /// Days from a visit to the check of a class.
    #[must_use]
    pub const fn class_days(&self, class: Class) -> i32 {
        self.classes.of(class).check_days
    }
}

/// All adopted protocols, at least one, by date of effect. Cheap to clone.
#[derive(Debug, Clone, PartialEq)]
pub struct Protocols(Vec<Arc<Protocol>>);

impl Protocols {
    /// Sorts by date of effect; of two of one date the later given counts. `None` if there is none.
    #[must_use]
    pub fn new(mut all: Vec<Protocol>) -> Option<Self> {
        all.sort_by_key(|p| p.effective_from);
        (!all.is_empty()).then_some(Self(all.into_iter().map(Arc::new).collect()))
    }

    /// A single one, for every day.
    #[must_use]
    pub fn one(protocol: Protocol) -> Self {
        Self(vec![Arc::new(protocol)])
    }

    /// The one in force on a day; the first one for days before any.
    #[must_use]
    pub fn on(&self, day: NaiveDate) -> &Arc<Protocol> {
        let after = self.0.partition_point(|p| p.effective_from <= day);
        &self.0[after.saturating_sub(1)]
    }

    /// Every one, by date of effect.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Protocol>> {
        self.0.iter()
    }
}

//! Feeding stages: what texture, how many meals and how much is hoped for at an age. It knows no child.

use crate::code::codes;
use crate::food::Texture;

codes! {
    /// A feeding stage. Their ages are data, their number is not: advice and pictures hang on them.
    StageId, "stage" {
        /// Milk only.
        MilkOnly => "milk_only",
        /// Solids not started, or in their first days.
        FirstTastes => "first_tastes",
        /// Early solids.
        Early67 => "early_6_7",
        /// Mashed, soft finger foods begin.
        Mid8 => "mid_8",
        /// Lumps and finger foods.
        Lumps911 => "lumps_9_11",
        /// Chopped, towards family food.
        Family1214 => "family_12_14",
        /// Family food.
        Family1523 => "family_15_23",
    }
}

/// What is hoped for at a stage. Pairs are "from, to".
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// Which.
    pub id: StageId,
    /// First completed month of stage age.
    pub from_months: u32,
    /// The month after the last.
    pub to_months: u32,
    /// Texture hoped for; `None` while milk is all.
    pub texture_expected: Option<(Texture, Texture)>,
    /// Below this something is behind.
    pub texture_floor: Option<Texture>,
    /// Meals a day, breastfed.
    pub meals_expected_bf: (u8, u8),
    /// Meals and milk feeds a day, not breastfed.
    pub meals_expected_nbf: (u8, u8),
    /// Fewest meals a day, breastfed.
    pub meals_min_bf: u8,
    /// Fewest meals and milk feeds a day, not breastfed.
    pub feeds_min_nbf: u8,
    /// Fewest milk feeds a day, not breastfed.
    pub milk_feeds_min_nbf: u8,
    /// Snacks a day.
    pub snacks: (u8, u8),
    /// Amount a meal in 250 ml cups, where cups are counted.
    pub cups: Option<(f64, f64)>,
    /// Amount a meal in tablespoons, where spoons are counted.
    pub tablespoons: Option<(u8, u8)>,
    /// Energy a day from food, breastfed, kcal.
    pub kcal_bf: u32,
    /// Energy a day in all, not breastfed, kcal.
    pub kcal_nbf: u32,
    /// Where the figures come from.
    pub source: String,
}

/// The stages: a row by age without gap or overlap, and the first tastes, which lie over whatever stage the age gives.
#[derive(Debug, Clone, PartialEq)]
pub struct Stages {
    by_age: Vec<Stage>,
    first_tastes: Stage,
}

impl Stages {
    /// Puts them together. Ages are checked by whoever reads them.
    #[must_use]
    pub fn new(mut by_age: Vec<Stage>, first_tastes: Stage) -> Self {
        by_age.sort_by_key(|stage| stage.from_months);
        Self { by_age, first_tastes }
    }

    /// The stage of an age in completed months.
    #[must_use]
    pub fn at(&self, months: u32) -> Option<&Stage> {
        self.by_age.iter().find(|stage| stage.from_months <= months && months < stage.to_months)
    }

    /// The first tastes.
    #[must_use]
    pub const fn first_tastes(&self) -> &Stage {
        &self.first_tastes
    }

    /// The stage with this id.
    #[must_use]
    pub fn get(&self, id: StageId) -> Option<&Stage> {
        self.iter().find(|stage| stage.id == id)
    }

    /// Every stage: the first tastes, then by age.
    pub fn iter(&self) -> impl Iterator<Item = &Stage> {
        std::iter::once(&self.first_tastes).chain(&self.by_age)
    }
}

//! How many meals give a child the energy it needs, by the thickness of its food, with the arithmetic: an estimate for the talk with
//! the family. It opens no follow-up, and it never makes less enough: the least number of meals of a stage always holds.

use chrono::NaiveDate;

use crate::code::codes;
use crate::food::Texture;
use crate::protocol::{Energy, Stage, StageId};
use crate::units::Weight;

codes! {
    /// Why the meals of a child are not estimated.
    NotEstimated, "reason without an estimate" {
        /// Milk is all.
        MilkOnly => "milk_only",
        /// First tastes: how much grows at the child's pace.
        FirstTastes => "first_tastes",
        /// No weight has been taken.
        NoWeight => "no_weight",
        /// The only weights are unlikely and have to be taken again.
        WeightSuspect => "weight_suspect",
        /// Both feet are swollen: water is weighed too.
        Swollen => "swollen",
        /// Nobody knows whether the child is breastfed.
        MilkUnknown => "milk_unknown",
    }
}

/// One visit as far as the weight goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weighing {
    /// Its day.
    pub on: NaiveDate,
    /// Weight.
    pub weight: Option<Weight>,
    /// Swelling of both feet.
    pub swollen: Option<bool>,
    /// The weight is unlikely and was not confirmed.
    pub suspect: bool,
}

/// The weight to reckon with and its day, from weighings by date: the last that is not suspect. An older one is lighter as a rule,
/// which asks for more meals and not for fewer, so no age of a weight is too old.
///
/// # Errors
/// Why there is none; swollen feet at the last look say more than any weight before them.
pub fn weight_of(weighings: &[Weighing]) -> Result<(Weight, NaiveDate), NotEstimated> {
    let mut none = NotEstimated::NoWeight;
    for one in weighings.iter().rev() {
        match (one.weight, one.swollen) {
            (_, Some(true)) => return Err(NotEstimated::Swollen),
            (Some(_), _) if one.suspect => none = NotEstimated::WeightSuspect,
            (Some(weight), _) => return Ok((weight, one.on)),
            (None, _) => {}
        }
    }
    Err(none)
}

/// The meals needed and each figure on the way to them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MealsNeeded {
    /// The stage whose needs these are.
    pub stage: StageId,
    /// Whether breast milk gives the rest. If not, the energy is all that the child needs, and milk feeds count among the meals.
    pub breastfed: bool,
    /// Energy needed a day, kcal.
    pub kcal_a_day: u32,
    /// Body weight.
    pub weight: Weight,
    /// What the stomach holds at a meal, g.
    pub meal_g: f64,
    /// Energy density, kcal/g.
    pub kcal_per_g: f64,
    /// Energy of a full meal, kcal.
    pub meal_kcal: f64,
    /// Energy needed over energy of a full meal, before rounding up.
    pub exact: f64,
    /// The least number of meals of the stage.
    pub least: u8,
    /// Meals a day.
    pub meals: u8,
}

impl MealsNeeded {
    /// The quotient, rounded up.
    #[must_use]
    pub fn rounded_up(&self) -> u8 {
        // A hair above a whole number is the number: 216 / 72.00000000000001 is 3 meals. Saturates at what a byte holds.
        (self.exact - 1e-9).ceil() as u8
    }

    /// Whether the least of the stage is more than the quotient asks for.
    #[must_use]
    pub fn raised(&self) -> bool {
        self.least > self.rounded_up()
    }
}

/// The meals a day that food of this energy density (kcal/g) takes at a stage: energy needed over stomach capacity times density,
/// rounded up, at least the stage's least number (the method of PAHO/WHO 2003, guiding principle on meal frequency, with the child's
/// own weight).
///
/// # Errors
/// Why it is not estimated.
pub fn meals_needed(
    energy: &Energy,
    stage: &Stage,
    weight: Result<Weight, NotEstimated>,
    breastfed: Option<bool>,
    kcal_per_g: f64,
) -> Result<MealsNeeded, NotEstimated> {
    match stage.id {
        StageId::MilkOnly => return Err(NotEstimated::MilkOnly),
        StageId::FirstTastes => return Err(NotEstimated::FirstTastes),
        _ => {}
    }
    let weight = weight?;
    let breastfed = breastfed.ok_or(NotEstimated::MilkUnknown)?;
    let (kcal_a_day, least) = if breastfed { (stage.kcal_bf, stage.meals_min_bf) } else { (stage.kcal_nbf, stage.feeds_min_nbf) };
    let meal_g = f64::from(weight.grams()) / 1000.0 * energy.stomach_g_per_kg;
    let meal_kcal = meal_g * kcal_per_g;
    let mut needed = MealsNeeded {
        stage: stage.id,
        breastfed,
        kcal_a_day,
        weight,
        meal_g,
        kcal_per_g,
        meal_kcal,
        exact: f64::from(kcal_a_day) / meal_kcal,
        least,
        meals: least,
    };
    needed.meals = needed.rounded_up().max(least);
    Ok(needed)
}

/// The same for watery food, for smooth and thick, and for mashed or richer.
///
/// # Errors
/// Why it is not estimated.
pub fn by_thickness(
    energy: &Energy,
    stage: &Stage,
    weight: Result<Weight, NotEstimated>,
    breastfed: Option<bool>,
) -> Result<[MealsNeeded; 3], NotEstimated> {
    let of = |level: usize| meals_needed(energy, stage, weight, breastfed, energy.density[level]);
    Ok([of(0)?, of(1)?, of(2)?])
}

/// What thickness changes for one child, for a sentence to the family.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThickerHelps {
    /// Food as thin as now takes more meals than food as thick as hoped for.
    ThanNow {
        /// The thickness now.
        usual: Texture,
        /// Meals with it.
        meals_usual: u8,
        /// The thickness hoped for.
        hoped: Texture,
        /// Meals with it.
        meals_hoped: u8,
    },
    /// It is thick enough, or nobody asked: watery food would take more.
    ThanWatery {
        /// Meals with watery food.
        meals_watery: u8,
        /// The thickness to keep or to aim at.
        hoped: Texture,
        /// Meals with it.
        meals_hoped: u8,
    },
}

/// What to say of thickness; `None` when it changes no number.
#[must_use]
pub fn thicker_helps(meals: &[MealsNeeded; 3], stage: &Stage, usual: Option<Texture>) -> Option<ThickerHelps> {
    let of = |texture: Texture| meals[usize::from(texture.level().min(2))].meals;
    let watery = Texture::ALL[0];
    let hoped = stage.texture_expected.map_or(Texture::ALL[1], |(from, _)| from.max(Texture::ALL[1]));
    let meals_hoped = of(hoped);
    match usual {
        Some(usual) if of(usual) > meals_hoped => Some(ThickerHelps::ThanNow { usual, meals_usual: of(usual), hoped, meals_hoped }),
        _ if of(watery) > meals_hoped => {
            let hoped = usual.filter(|usual| *usual > watery).unwrap_or(hoped);
            Some(ThickerHelps::ThanWatery { meals_watery: of(watery), hoped, meals_hoped: of(hoped) })
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests;

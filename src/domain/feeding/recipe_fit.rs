//! Whether a recipe suits one child on a day, and what to beware of: foods on hold, allergies, ages, textures, new foods. It advises; it
//! opens no follow-up and keeps nobody from recording what was eaten.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use super::{FoodLine, FoodState, ReactionLevel};
use crate::calendar::{add_days, add_months, completed_months, days_between};
use crate::child::Child;
use crate::food::{Allergen, FoodCode, Texture};
use crate::protocol::{Food, Foods, Protocol, Recipe, StageId};

/// The child, as far as a recipe asks.
#[derive(Debug, Clone, Copy)]
pub struct Eater<'a> {
    /// Facts of birth and registration.
    pub child: &'a Child,
    /// The day.
    pub on: NaiveDate,
    /// Stage; `None` from the exit age on.
    pub stage: Option<StageId>,
    /// Foods offered so far.
    pub foods: &'a [FoodLine],
    /// Usual texture as last told.
    pub usual: Option<Texture>,
    /// A follow-up on swallowing is open: the child is not moved on to the next texture.
    pub swallow_trouble: bool,
}

/// Something to know before giving a recipe, gravest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remark {
    /// A food in it is on hold after a reaction, or carries the allergen of one that is.
    OnHold {
        /// The food of the recipe.
        food: FoodCode,
        /// The food on hold.
        held: FoodCode,
        /// Since when.
        since: NaiveDate,
        /// The worst reaction.
        worst: ReactionLevel,
    },
    /// Milk is all that is needed.
    MilkOnly,
    /// A food in it is for older children.
    TooYoung {
        /// Which.
        food: FoodCode,
        /// Allowed from this day.
        from: NaiveDate,
    },
    /// The local protocol says to wait with a food in it.
    Waits {
        /// Which.
        food: FoodCode,
        /// Until this day.
        from: NaiveDate,
    },
    /// A clinician has named a food allergy; which food is not recorded.
    KnownAllergy {
        /// Common allergens in it.
        allergens: Vec<Allergen>,
    },
    /// Severe eczema, and allergens that the child has not taken well yet: a clinician is asked first.
    Eczema {
        /// Those allergens.
        allergens: Vec<Allergen>,
    },
    /// Lumpier than this child takes yet.
    TextureAhead {
        /// The smoothest it can be.
        texture: Texture,
        /// Because of trouble with swallowing, rather than by age.
        swallowing: bool,
    },
    /// More than one food in it is new: each is given alone first (common practice).
    NewTogether {
        /// The new foods.
        foods: Vec<FoodCode>,
    },
    /// Allergens that the child has not taken well yet: first taste in the morning, at home, watched for two hours (common practice).
    NewAllergen {
        /// Those allergens.
        allergens: Vec<Allergen>,
        /// Nobody has written down whether the child has a food allergy.
        allergy_not_asked: bool,
    },
    /// Smoother than hoped for at the stage.
    Smoother {
        /// The texture hoped for.
        hoped: Texture,
    },
}

/// How a recipe stands with a child, best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// It suits.
    Suits,
    /// Ask first, or give something else first.
    AskFirst,
    /// Later: for an older child or a later texture.
    Later,
    /// Not to be given.
    No,
}

impl Remark {
    /// A hold, an allergy or severe eczema: nobody is told how to try the food at home.
    #[must_use]
    pub const fn asks_about_allergy(&self) -> bool {
        matches!(self, Self::OnHold { .. } | Self::KnownAllergy { .. } | Self::Eczema { .. })
    }

    /// How far it keeps a recipe from suiting.
    #[must_use]
    pub const fn fit(&self) -> Fit {
        match self {
            Self::OnHold { .. } => Fit::No,
            Self::MilkOnly | Self::TooYoung { .. } | Self::Waits { .. } | Self::TextureAhead { .. } => Fit::Later,
            Self::KnownAllergy { .. } | Self::Eczema { .. } | Self::NewTogether { .. } => Fit::AskFirst,
            Self::NewAllergen { .. } | Self::Smoother { .. } => Fit::Suits,
        }
    }
}

/// How the recipe stands with the child: the gravest of its remarks.
#[must_use]
pub fn fit(remarks: &[Remark]) -> Fit {
    remarks.iter().map(Remark::fit).max().unwrap_or(Fit::Suits)
}

/// What to know before giving a recipe to a child, gravest first.
#[must_use]
pub fn remarks(eater: &Eater<'_>, recipe: &Recipe, protocol: &Protocol) -> Vec<Remark> {
    let foods = &protocol.foods;
    let mut remarks: Vec<Remark> = recipe.parts.iter().filter_map(|part| on_hold(eater, &part.food, foods)).collect();
    if eater.stage == Some(StageId::MilkOnly) {
        // How a food is tried later is said later.
        remarks.push(Remark::MilkOnly);
        return remarks;
    }
    remarks.extend(ages(eater, recipe, foods));
    remarks.extend(allergies(eater, recipe, foods));
    remarks.extend(textures(eater, recipe, protocol));
    // What says how to try a food is not said of one that is on hold.
    if !remarks.iter().any(|remark| matches!(remark, Remark::OnHold { .. })) {
        let new = new_foods(eater, recipe, foods);
        if new.len() > 1 {
            remarks.push(Remark::NewTogether { foods: new });
        }
        if !remarks.iter().any(Remark::asks_about_allergy) {
            remarks.extend(first_taste(eater, recipe, foods));
        }
    }
    remarks.sort_by_key(|remark| std::cmp::Reverse(remark.fit()));
    remarks
}

/// The hold that a food of a recipe falls under: of itself, of what it is made of, or of any food with its allergen.
fn on_hold(eater: &Eater<'_>, food: &FoodCode, foods: &Foods) -> Option<Remark> {
    let allergens: BTreeSet<Allergen> = foods.kinds(food).filter_map(|kind| kind.allergen).collect();
    eater.foods.iter().find_map(|line| {
        let FoodState::OnHold { since, worst } = line.state else { return None };
        let same = *food == line.code || foods.kinds(food).any(|kind| kind.code == line.code);
        let alike = foods.kinds(&line.code).filter_map(|kind| kind.allergen).any(|allergen| allergens.contains(&allergen));
        (same || alike).then(|| Remark::OnHold { food: food.clone(), held: line.code.clone(), since, worst })
    })
}

/// The food of a recipe that must wait longest for age, and the one that must wait longest by the local protocol.
fn ages(eater: &Eater<'_>, recipe: &Recipe, foods: &Foods) -> Vec<Remark> {
    let born = eater.child.born;
    let (days, months) = (days_between(born, eater.on), completed_months(born, eater.on).unwrap_or(0));
    let too_young = recipe.foods(foods).filter(|food| i64::from(food.earliest_days) > i64::from(days));
    let waits = recipe.foods(foods).filter(|food| food.local_wait_months > months);
    // Of equals the first counts: `max_by_key` would take the last.
    let too_young = too_young.min_by_key(|food| std::cmp::Reverse(food.earliest_days));
    let waits = waits.min_by_key(|food| std::cmp::Reverse(food.local_wait_months));
    let day = |food: &Food| add_days(born, i32::try_from(food.earliest_days).unwrap_or(i32::MAX));
    let too_young = too_young.map(|food| Remark::TooYoung { food: food.code.clone(), from: day(food) });
    let waits = waits.map(|food| Remark::Waits { food: food.code.clone(), from: add_months(born, food.local_wait_months) });
    too_young.into_iter().chain(waits).collect()
}

/// Whether the child has taken this food, or what it is made of, often enough without a reaction.
fn taken_well(eater: &Eater<'_>, food: &Food, foods: &Foods) -> bool {
    let line = |code: &FoodCode| eater.foods.iter().find(|line| line.code == *code);
    foods.kinds(&food.code).any(|kind| line(&kind.code).is_some_and(|line| line.state == FoodState::Accepted))
}

fn allergies(eater: &Eater<'_>, recipe: &Recipe, foods: &Foods) -> Vec<Remark> {
    let all: Vec<Allergen> = recipe.allergens(foods).into_iter().collect();
    let new = new_allergens(eater, recipe, foods);
    let mut remarks = Vec::new();
    if eater.child.known_food_allergy == Some(true) && !all.is_empty() {
        remarks.push(Remark::KnownAllergy { allergens: all });
    }
    if eater.child.severe_eczema == Some(true) && !new.is_empty() {
        remarks.push(Remark::Eczema { allergens: new });
    }
    remarks
}

/// The allergens in a recipe that the child has not taken well yet.
fn new_allergens(eater: &Eater<'_>, recipe: &Recipe, foods: &Foods) -> Vec<Allergen> {
    let new: BTreeSet<Allergen> =
        recipe.foods(foods).filter(|food| !taken_well(eater, food, foods)).filter_map(|food| food.allergen).collect();
    new.into_iter().collect()
}

fn first_taste(eater: &Eater<'_>, recipe: &Recipe, foods: &Foods) -> Option<Remark> {
    let allergens = new_allergens(eater, recipe, foods);
    let allergy_not_asked = eater.child.known_food_allergy.is_none();
    (!allergens.is_empty()).then_some(Remark::NewAllergen { allergens, allergy_not_asked })
}

fn textures(eater: &Eater<'_>, recipe: &Recipe, protocol: &Protocol) -> Option<Remark> {
    let (smoothest, roughest) = (*recipe.textures.first()?, *recipe.textures.last()?);
    let stage = protocol.stages.get(eater.stage?)?;
    let (least, most) = stage.texture_expected?;
    if eater.swallow_trouble && eater.usual.is_none_or(|usual| smoothest > usual) && smoothest > Texture::ALL[1] {
        return Some(Remark::TextureAhead { texture: smoothest, swallowing: true });
    }
    if smoothest > most {
        return Some(Remark::TextureAhead { texture: smoothest, swallowing: false });
    }
    (roughest < least).then_some(Remark::Smoother { hoped: least })
}

/// Foods of the recipe that were never offered, each named by the tracked food. What counts in no group and carries no allergen (oil) is
/// not waited for.
fn new_foods(eater: &Eater<'_>, recipe: &Recipe, foods: &Foods) -> Vec<FoodCode> {
    let mut new: Vec<FoodCode> = Vec::new();
    for part in &recipe.parts {
        let known = foods.kinds(&part.food).any(|kind| eater.foods.iter().any(|line| line.code == kind.code && line.offers > 0));
        let counts = foods.kinds(&part.food).any(|kind| kind.group.is_some() || kind.allergen.is_some());
        let Some(tracked) = foods.kinds(&part.food).last() else { continue };
        if counts && !known && !new.contains(&tracked.code) {
            new.push(tracked.code.clone());
        }
    }
    new
}

#[cfg(test)]
mod tests;

//! What a child's file says for its meals: the weight to reckon with, milk, thickness, and what a recipe has to know. It reads; it
//! writes nothing and opens no follow-up.

use chrono::NaiveDate;
use domain::feeding::recipe_fit::Eater;
use domain::feeding::thickness::MealsNeeded;
use domain::feeding::thickness::NotEstimated;
use domain::feeding::thickness::Weighing;
use domain::feeding::thickness::by_thickness;
use domain::feeding::thickness::meals_needed;
use domain::feeding::thickness::weight_of;
use domain::food::Texture;
use domain::protocol::Protocol;
use domain::protocol::Stage;
use domain::protocol::StageId;
use domain::rule::RuleId;
use domain::units::Weight;

use crate::service::child_file::ChildFile;

/// What was told and measured up to a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Told {
    /// The weight to reckon with and its day, or why there is none.
    pub weight: Result<(Weight, NaiveDate), NotEstimated>,
    /// Breastfed, as last told.
    pub breastfed: Option<bool>,
    /// Usual texture, as last told.
    pub usual: Option<Texture>,
}

/// What the visits up to a day say.
#[must_use]
pub fn told(file: &ChildFile, until: NaiveDate) -> Told {
    let visits = || file.visits.iter().filter(|record| record.visit.on <= until);
    let weighings: Vec<Weighing> = visits()
        .map(|record| Weighing {
            on: record.visit.on,
            weight: record.visit.weight,
            swollen: record.visit.oedema,
            suspect: file.assessment.visit(record.visit.id).is_some_and(|judged| judged.suspect.weight),
        })
        .collect();
    Told {
        weight: weight_of(&weighings),
        breastfed: visits().rev().find_map(|record| record.visit.breastfed),
        usual: visits().rev().find_map(|record| record.visit.texture_usual),
    }
}

impl Told {
    /// Meals for watery, for smooth and for mashed food at a stage.
    ///
    /// # Errors
    /// Why they are not estimated.
    pub fn by_thickness(&self, protocol: &Protocol, stage: &Stage) -> Result<[MealsNeeded; 3], NotEstimated> {
        by_thickness(&protocol.energy, stage, self.weight.map(|(weight, _)| weight), self.breastfed)
    }

    /// Meals for food of an energy density (kcal/g) at a stage.
    ///
    /// # Errors
    /// Why they are not estimated.
    pub fn of_density(&self, protocol: &Protocol, stage: &Stage, kcal_per_g: f64) -> Result<MealsNeeded, NotEstimated> {
        meals_needed(&protocol.energy, stage, self.weight.map(|(weight, _)| weight), self.breastfed, kcal_per_g)
    }
}

/// The stage after the one of a day: by age, or for first tastes the one of the age.
#[must_use]
pub fn next_stage<'a>(file: &ChildFile, protocol: &'a Protocol) -> Option<&'a Stage> {
    let now = &file.assessment.now;
    match now.stage? {
        StageId::FirstTastes => protocol.stages.at(now.stage_months?),
        id => protocol.stages.at(protocol.stages.get(id)?.to_months),
    }
}

/// The child, as far as a recipe asks.
#[must_use]
pub fn eater(file: &ChildFile) -> Eater<'_> {
    let assessment = &file.assessment;
    Eater {
        child: &file.record.facts,
        on: file.as_of,
        stage: assessment.now.stage,
        foods: &assessment.foods,
        usual: told(file, file.as_of).usual,
        swallow_trouble: assessment.open().iter().any(|f| f.rule == RuleId::FeedingSwallowTrouble),
    }
}

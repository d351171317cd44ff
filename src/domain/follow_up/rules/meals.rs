//! Too few meals.

use super::{Clears, Tested};
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;

/// A sum of answers: what is known of it, and whether that is all.
#[derive(Clone, Copy)]
pub(super) struct Sum {
    known: u32,
    whole: bool,
}

impl Sum {
    /// Adds up answers.
    pub(super) fn of(answers: &[Option<u8>]) -> Self {
        Self { known: answers.iter().flatten().map(|n| u32::from(*n)).sum(), whole: answers.iter().all(Option::is_some) }
    }

    /// What is known of it.
    pub(super) const fn known(self) -> u32 {
        self.known
    }

    /// Whether it reaches a number; `None` where a missing part could change that.
    pub(super) const fn reaches(self, least: u32) -> Option<bool> {
        if self.known >= least {
            Some(true)
        } else if self.whole {
            Some(false)
        } else {
            None
        }
    }
}

/// Fewer meals (and milk feeds, if not breastfed) than the least of the age.
pub(super) fn few(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.meals_few.limits;
    let stage = now.protocol.stages.at(now.months);
    let Some(stage) = stage.filter(|_| now.months >= limits.from_months && !now.settling_in()) else {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    };
    if !now.started() {
        return Tested::Not(Clears::Unknown(Why::Missing));
    }
    let visit = now.visit;
    let (meals, least, met) = match visit.breastfed {
        Some(true) => {
            let least = u32::from(stage.meals_min_bf);
            (Sum::of(&[visit.meals]), least, Sum::of(&[visit.meals]).reaches(least))
        }
        Some(false) => {
            let feeds = Sum::of(&[visit.meals, visit.formula_times, visit.animal_milk_times, visit.drink_yogurt_times]);
            let least = u32::from(stage.feeds_min_nbf);
            (feeds, least, feeds.reaches(least))
        }
        None => (Sum::of(&[visit.meals]), u32::from(stage.meals_min_bf), None),
    };
    let none = visit.meals == Some(0);
    if !none && met != Some(false) {
        return Tested::Not(Clears::known(met));
    }
    let again = none && (visit.ill == Some(true) || none_before(story, at));
    let class = if again { limits.class_none_again } else { limits.class };
    let eaten = (K::Meals, Quantity::Count(visit.meals.map_or(0, u32::from)));
    if visit.breastfed == Some(false) {
        let milk = meals.known().saturating_sub(visit.meals.map_or(0, u32::from));
        return Tested::holds(class, [eaten, (K::MilkFeeds, Quantity::Count(milk)), (K::Least, Quantity::Count(least))]);
    }
    Tested::holds(class, [eaten, (K::Least, Quantity::Count(least))])
}

/// Whether the latest earlier visit that recorded meals recorded none.
fn none_before(story: &Story<'_>, at: usize) -> bool {
    let meals = |facts: &Facts<'_>| facts.visit.meals;
    story.earlier(at).find_map(meals) == Some(0)
}

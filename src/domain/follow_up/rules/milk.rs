//! Rules about milk: other drinks too early, animal milk, milk feeds without breastfeeding, breastfeeding itself.

use super::meals::Sum;
use super::{Clears, Tested, by_age};
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::rule::RuleId;
use crate::visit::LowValue;

/// Water, juice, tea, sweet or other drinks besides milk, too early.
pub(super) fn liquids_early(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.liquids_early.limits;
    if now.age_days >= limits.under_age_days {
        return Tested::Not(Clears::Yes);
    }
    let visit = now.visit;
    let tea = visit.low_value.as_ref().map(|given| given.contains(&LowValue::TeaCoffee));
    if [visit.other_drink, visit.sweet_drink, tea].contains(&Some(true)) {
        return Tested::holds(limits.class, [(K::AgeDays, Quantity::Days(now.age_days))]);
    }
    Tested::Not(Clears::if_met(visit.other_drink == Some(false) || visit.breast_only == Some(true), Why::Missing))
}

/// Animal milk as a drink, too early, without a clinic's plan.
pub(super) fn animal_early(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.milk_animal_early.limits;
    if now.months >= limits.under_months || now.planned(RuleId::MilkAnimalEarly) {
        return Tested::Not(Clears::Yes);
    }
    match now.visit.animal_milk_times {
        Some(0) => Tested::Not(Clears::Yes),
        Some(times) => Tested::holds(limits.class, [(K::MilkFeeds, Quantity::Count(u32::from(times)))]),
        None => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

/// Not breastfed and few milk feeds.
pub(super) fn few(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.milk_few.limits;
    let visit = now.visit;
    let feeds = Sum::of(&[visit.formula_times, visit.animal_milk_times, visit.drink_yogurt_times, visit.spoon_yogurt_times]);
    let least = if now.months < 6 {
        limits.least_under_6m
    } else {
        now.protocol.stages.at(now.months).map_or(0, |stage| u32::from(stage.milk_feeds_min_nbf))
    };
    let enough = feeds.reaches(least);
    match (visit.breastfed, enough) {
        (Some(true), _) | (Some(false), Some(true)) => return Tested::Not(Clears::Yes),
        (None, _) | (_, None) => return Tested::Not(Clears::Unknown(Why::Missing)),
        (Some(false), Some(false)) => {}
    }
    let class = match now.months {
        0..6 if feeds.known() <= limits.very_few_under_6m => limits.class_very_few_under_6m,
        0..6 => limits.class_under_6m,
        6..12 => limits.class_6_to_11m,
        _ => limits.class_from_12m,
    };
    Tested::holds(class, [(K::MilkFeeds, Quantity::Count(feeds.known())), (K::Least, Quantity::Count(least))])
}

/// Not breastfed now, but once, and no clinic's plan.
pub(super) fn breastfeeding_stopped(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.breastfeeding_stopped.limits;
    if now.visit.breastfed == Some(true) || now.planned(RuleId::BreastfeedingStopped) {
        return Tested::Not(Clears::Yes);
    }
    let once = story.child.ever_breastfed == Some(true) || story.earlier(at).any(|before| before.visit.breastfed == Some(true));
    if now.visit.breastfed.is_none() || !once {
        return Tested::Not(Clears::Unknown(Why::Missing));
    }
    let class = match now.months {
        0..6 => limits.class_under_6m,
        6..12 => limits.class_6_to_11m,
        _ => limits.class_from_12m,
    };
    Tested::holds(class, [(K::AgeMonths, Quantity::Months(now.months))])
}

/// Pain, low supply or poor attachment.
pub(super) fn breastfeeding_trouble(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.breastfeeding_trouble.limits;
    match now.visit.breastfeeding_trouble {
        Some(true) => Tested::holds(by_age(now, limits.class_under_6m, limits.class_from_6m), []),
        Some(false) => Tested::Not(Clears::Yes),
        None => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

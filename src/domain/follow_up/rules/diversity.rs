//! Rules about what was eaten yesterday: number of groups, iron, animal foods, fruit and vegetables.

use super::{Clears, Tested};
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::food::FoodGroup as G;

/// Whether there are too few groups; `None` where the rule cannot tell.
fn few_groups(now: &Facts<'_>) -> Option<bool> {
    let limits = &now.protocol.rules.diversity_low.limits;
    let count = u32::try_from(now.visit.groups.as_ref()?.len()).unwrap_or(u32::MAX);
    let applies = now.months >= limits.from_months && now.feeding_age() && !now.settling_in();
    applies.then_some(count < limits.least)
}

/// Fewer than five groups; more urgent when very few, or when it held before.
pub(super) fn low(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.diversity_low.limits;
    let Some(groups) = &now.visit.groups else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    match few_groups(now) {
        Some(true) => {}
        Some(false) => return Tested::Not(Clears::Yes),
        None => return Tested::Not(Clears::Unknown(Why::NotNow)),
    }
    let count = u32::try_from(groups.len()).unwrap_or(u32::MAX);
    let before = story.earlier(at).filter(|facts| facts.protocol.rules.diversity_low.on).find_map(few_groups) == Some(true);
    let class = if count <= limits.very_few {
        limits.class_very_few
    } else if before {
        limits.class_again
    } else {
        limits.class
    };
    Tested::holds(
        class,
        [(K::Groups, Quantity::Count(count)), (K::Least, Quantity::Count(limits.least)), (K::HeldBefore, Quantity::Flag(before))],
    )
}

/// Whether no iron source was recorded; `None` where the rule cannot tell.
fn no_iron(now: &Facts<'_>) -> Option<bool> {
    let flesh = now.visit.groups.as_ref().map(|groups| groups.contains(&G::Flesh));
    if flesh == Some(true) || now.visit.iron_source == Some(true) {
        return Some(false);
    }
    let applies = now.months >= now.protocol.rules.iron_none.limits.from_months && now.feeding_age();
    (applies && flesh.is_some() && now.visit.iron_source.is_some()).then_some(true)
}

/// No flesh food and no other iron source.
pub(super) fn iron_none(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.iron_none.limits;
    match no_iron(now) {
        Some(true) => {}
        Some(false) => return Tested::Not(Clears::Yes),
        None => return Tested::Not(Clears::Unknown(Why::Missing)),
    }
    let long_enough = |facts: &&Facts<'_>| now.days_since(facts) >= limits.again_after_days;
    let before = story.earlier(at).filter(long_enough).filter(|facts| facts.protocol.rules.iron_none.on).find_map(no_iron) == Some(true);
    let class = if before { limits.class_again } else { limits.class };
    Tested::holds(class, [(K::AgeMonths, Quantity::Months(now.months)), (K::HeldBefore, Quantity::Flag(before))])
}

/// None of these groups, from an age on.
fn none_of(now: &Facts<'_>, wanted: &[G], from_months: u32, class: crate::rule::Class) -> Tested {
    let Some(groups) = &now.visit.groups else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if wanted.iter().any(|group| groups.contains(group)) {
        return Tested::Not(Clears::Yes);
    }
    if now.months < from_months {
        return Tested::Not(Clears::No);
    }
    Tested::holds(class, [(K::AgeMonths, Quantity::Months(now.months))])
}

/// No egg, flesh food or dairy.
pub(super) fn animal_food_none(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.animal_food_none.limits;
    none_of(now, &[G::Eggs, G::Flesh, G::Dairy], limits.from_months, limits.class)
}

/// Neither fruit nor vegetable.
pub(super) fn veg_fruit_none(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.veg_fruit_none.limits;
    none_of(now, &[G::VitA, G::OtherFv], limits.from_months, limits.class)
}

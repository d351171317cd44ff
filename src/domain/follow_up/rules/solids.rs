//! Rules about the start of solids and the texture of food.

use super::{Clears, Tested};
use crate::calendar::{add_days, add_months};
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::feeding::Solids;
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::growth::corrected_birth_date;
use crate::rule::RuleId;
use crate::visit::ReadinessSign;

/// Solids given, or said to have started since the visit before, before the start age.
pub(super) fn early(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.solids_early.limits;
    if now.age_days >= now.protocol.ages.start_age_days || now.planned(RuleId::SolidsEarly) {
        return Tested::Not(Clears::Yes);
    }
    let before = story.earlier(at).next().map(Facts::on);
    let new_start = now.visit.solids_started_on.filter(|start| before.is_none_or(|before| *start > before));
    if now.solids_given != Some(true) && new_start.is_none() {
        return Tested::Not(Clears::if_met(now.solids_given == Some(false), Why::Missing));
    }
    let class = if now.age_days < limits.very_early_under_days { limits.class_very_early } else { limits.class };
    let mut evidence = vec![(K::AgeDays, Quantity::Days(now.age_days))];
    evidence.push((K::Limit, Quantity::Days(now.protocol.ages.start_age_days)));
    if let Some(start) = new_start {
        evidence.push((K::Date, Quantity::On(start)));
    }
    let solid = |offer: &&crate::visit::FoodOffer| offer.offers > 0 && !now.protocol.food(&offer.code).is_some_and(|food| food.drink);
    let foods: Vec<String> = now.visit.foods.iter().filter(solid).map(|offer| offer.code.0.clone()).collect();
    if !foods.is_empty() {
        evidence.push((K::Foods, Quantity::Codes(foods)));
    }
    Tested::Holds { class, evidence: Evidence::from(evidence), by: 0 }
}

/// Solids not started in time, by stage age or by the calendar.
pub(super) fn late(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.solids_late.limits;
    match now.solids {
        Solids::Started(_) => return Tested::Not(Clears::Yes),
        Solids::Unknown => return Tested::Not(Clears::Unknown(Why::Missing)),
        Solids::NotStarted => {}
    }
    let stage = now.stage_months.unwrap_or(0);
    let first_step_on =
        add_days(add_months(corrected_birth_date(story.child, now.on()), limits.from_months), now.protocol.ages.late_start_grace_days);
    let class = if stage >= limits.later_from_months || now.months >= limits.chronological_from_months {
        limits.class
    } else if now.on() >= first_step_on && ready(now, limits.readiness_signs_least) != Some(false) {
        limits.class_first
    } else {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    };
    Tested::holds(class, [(K::StageMonths, Quantity::Months(stage)), (K::AgeMonths, Quantity::Months(now.months))])
}

/// Whether the baby was found ready: enough signs, a steady head among them. `None` = not asked.
fn ready(now: &Facts<'_>, least: u32) -> Option<bool> {
    let signs = now.visit.readiness_signs.as_ref()?;
    Some(u32::try_from(signs.len()).unwrap_or(u32::MAX) >= least && signs.contains(&ReadinessSign::HeadSteady))
}

/// The best texture taken is below the step of the stage age; the first step that matches counts.
pub(super) fn texture_behind(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.texture_behind.limits;
    let (true, Some(best), Some(months)) = (now.started(), now.visit.texture_best, now.stage_months) else {
        return Tested::Not(Clears::Unknown(Why::Missing));
    };
    let matches = |step: &&crate::protocol::TextureStep| (step.from_months..step.to_months).contains(&months) && best.level() < step.below;
    let Some(step) = limits.steps.iter().find(matches) else { return Tested::Not(Clears::Yes) };
    Tested::holds(
        step.class,
        [
            (K::Texture, Quantity::Texture(best.level())),
            (K::TextureExpected, Quantity::Texture(step.below)),
            (K::StageMonths, Quantity::Months(months)),
        ],
    )
}

/// The usual food runs off the spoon.
pub(super) fn texture_watery(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.texture_watery.limits;
    let Some(usual) = now.visit.texture_usual else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if usual.level() >= 1 {
        return Tested::Not(Clears::Yes);
    }
    match now.stage_months {
        Some(months) if months >= limits.from_months && now.started() => {
            Tested::holds(limits.class, [(K::Texture, Quantity::Texture(0)), (K::StageMonths, Quantity::Months(months))])
        }
        _ => Tested::Not(Clears::No),
    }
}

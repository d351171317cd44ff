//! Rules about the time after birth: birth weight not regained, born small or early.

use super::{Clears, Tested};
use crate::calendar::days_between;
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Story, grams};
use crate::follow_up::types::Why;
use crate::rule::RuleId;

/// More than a tenth lost in the first days; less than the birth weight later.
pub(super) fn not_regained(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.birth_weight_not_regained.limits;
    let (Some(weight), Some(birth)) = (now.weight_g, story.child.birth_weight.map(grams)) else {
        return Tested::Not(Clears::Unknown(Why::Missing));
    };
    if weight >= birth {
        return Tested::Not(Clears::Yes);
    }
    // Grams fit a double exactly.
    let (lost, born_with) = ((birth - weight) as f64, birth as f64);
    let class = match now.age_days {
        days if days < 0 => None,
        days if days <= limits.first_days_to => (lost * 100.0 > limits.loss_percent * born_with).then_some(limits.class_first),
        days if days <= limits.second_days_to => Some(limits.class_second),
        days if days <= limits.third_days_to => Some(limits.class_third),
        _ => None,
    };
    let Some(class) = class else { return Tested::Not(Clears::No) };
    Tested::holds(
        class,
        [
            (K::Weight, Quantity::Grams(weight)),
            (K::BirthWeight, Quantity::Grams(birth)),
            (K::LossPercent, Quantity::Percent(lost * 100.0 / born_with)),
            (K::AgeDays, Quantity::Days(now.age_days)),
        ],
    )
}

/// Born small or early, in the programme and seen before 62 days, no clinic's plan.
pub(super) fn low(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let child = story.child;
    let limits = &now.protocol.rules.birth_low.limits;
    if now.planned(RuleId::BirthLow) || now.age_days >= limits.under_age_days {
        return Tested::Not(Clears::Yes);
    }
    if days_between(child.born, child.registered_on) >= limits.under_age_days {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let weight = child.birth_weight.map(|weight| weight.grams());
    let gestation = child.gestation_days.map(u32::from);
    let below = |value: Option<u32>, limit: u32| value.is_some_and(|value| value < limit);
    let very = below(weight, limits.very_weight_below_g) || below(gestation, limits.very_gestation_below_days);
    if !very && !below(weight, limits.weight_below_g) && !below(gestation, limits.gestation_below_days) {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let mut evidence = Vec::with_capacity(3);
    if let Some(grams) = weight {
        evidence.push((K::BirthWeight, Quantity::Grams(i64::from(grams))));
    }
    if let Some(days) = child.gestation_days {
        evidence.push((K::GestationDays, Quantity::Days(i32::from(days))));
    }
    evidence.push((K::AgeDays, Quantity::Days(now.age_days)));
    Tested::Holds { class: if very { limits.class_very } else { limits.class }, evidence: Evidence::from(evidence), by: 0 }
}

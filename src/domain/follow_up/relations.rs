//! Which rules silence and which mute one another. It tests nothing.

use super::facts::Story;
use super::rules::weight_went_up;
use super::types::Standing;
use crate::rule::RuleId;
use crate::rule_set::RuleSet;
use crate::visit::{Outcome, Visit};

/// Chains, the higher rule first: of those that fire the highest stands.
pub(super) const CHAINS: [&[RuleId]; 5] = [
    &[RuleId::WeightVeryLow, RuleId::WeightLow],
    &[RuleId::WastingSevere, RuleId::WastingModerate],
    &[RuleId::WeightLoss, RuleId::WeightStatic, RuleId::WeightSlowGain],
    &[RuleId::WeightDrop, RuleId::WeightDrift],
    &[RuleId::IronNone, RuleId::AnimalFoodNone],
];

/// The rules of each chain.
pub(super) const OF_CHAIN: [RuleSet; CHAINS.len()] = {
    let (mut sets, mut at) = ([RuleSet::of(&[]); CHAINS.len()], 0);
    while at < CHAINS.len() {
        sets[at] = RuleSet::of(CHAINS[at]);
        at += 1;
    }
    sets
};

/// Rules on wasting, muted while the child is in treatment for it.
pub(super) const WASTING: [RuleId; 3] = [RuleId::WastingSevere, RuleId::WastingModerate, RuleId::WastingYoung];

const fn is_wasting(rule: RuleId) -> bool {
    RuleSet::of(&WASTING).has(rule)
}

/// Rules that wait until solids are started.
const fn waits_for_solids(rule: RuleId) -> bool {
    matches!(
        rule,
        RuleId::TextureBehind
            | RuleId::TextureWatery
            | RuleId::MealsFew
            | RuleId::DiversityLow
            | RuleId::IronNone
            | RuleId::AnimalFoodNone
            | RuleId::VegFruitNone
    )
}

/// What mutes a rule that holds, if anything does.
pub(super) fn muted(story: &Story<'_>, at: usize, rule: RuleId, holds: RuleSet) -> Option<Standing> {
    if waits_for_solids(rule) && holds.has(RuleId::SolidsLate) {
        return Some(Standing::Muted(RuleId::SolidsLate));
    }
    if rule == RuleId::TextureBehind && holds.has(RuleId::FeedingSwallowTrouble) {
        return Some(Standing::Muted(RuleId::FeedingSwallowTrouble));
    }
    if rule == RuleId::WeightHigh && holds.has(RuleId::DataWeightJump) && weight_went_up(story, at) {
        return Some(Standing::Muted(RuleId::DataWeightJump));
    }
    (is_wasting(rule) && in_treatment(story, at)).then_some(Standing::InTreatment)
}

/// Whether an outcome of a wasting rule was told at a visit.
pub(super) fn wasting_outcome(visit: &Visit, outcome: Outcome) -> bool {
    visit.outcomes.iter().any(|told| is_wasting(told.rule) && told.outcome == outcome)
}

/// In wasting treatment: from an outcome that says so, that visit included, to a discharge, not included, and no longer than some weeks.
fn in_treatment(story: &Story<'_>, at: usize) -> bool {
    let now = &story.visits[at];
    for facts in story.visits[..=at].iter().rev() {
        if wasting_outcome(facts.visit, Outcome::Discharged) {
            return false;
        }
        if wasting_outcome(facts.visit, Outcome::InTreatment) {
            let days = crate::calendar::days_between(facts.on(), now.on());
            return days <= now.protocol.clearing.treatment_mutes_days;
        }
    }
    false
}

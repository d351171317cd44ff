//! One test for each rule: a pure function of the visits up to one. What becomes of a rule that fires is not known here.

mod birth;
mod danger;
mod data;
mod diversity;
mod growth_level;
mod growth_pair;
mod meals;
mod milk;
mod practice;
mod reaction;
mod solids;

use super::facts::{Facts, Story};
use super::types::Why;
use crate::evidence::{Evidence, EvidenceKey, Quantity};
use crate::rule::{Class, RuleId};

pub(super) use data::z_known_again;
pub(super) use growth_level::wasting_known_again;
pub(super) use growth_pair::regained;
pub(crate) use reaction::level as reaction_level;

/// Whether a clearing test is met.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Clears {
    /// Known to be met.
    Yes,
    /// Known to fail.
    No,
    /// Cannot tell, and why.
    Unknown(Why),
}

impl Clears {
    /// Known either way, or something is missing.
    fn known(met: Option<bool>) -> Self {
        match met {
            Some(true) => Self::Yes,
            Some(false) => Self::No,
            None => Self::Unknown(Why::Missing),
        }
    }

    /// Met, or nothing can be said.
    const fn if_met(met: bool, else_why: Why) -> Self {
        if met { Self::Yes } else { Self::Unknown(else_why) }
    }
}

/// Which of a rule's measures made it fire, one bit each.
pub(crate) type Measures = u8;

/// Weight-for-age made it fire.
pub(super) const BY_WAZ: Measures = 1;
/// Length-for-age made it fire.
pub(super) const BY_LAZ: Measures = 2;
/// Weight-for-length made it fire.
pub(super) const BY_WLZ: Measures = 4;
/// The arm made it fire.
pub(super) const BY_MUAC: Measures = 8;

/// What a rule's test says at a visit.
pub(crate) enum Tested {
    /// It holds.
    Holds {
        /// Class at this visit.
        class: Class,
        /// Numbers used.
        evidence: Evidence,
        /// What made it hold, for rules with several measures.
        by: Measures,
    },
    /// It is not known to hold.
    Not(Clears),
}

impl Tested {
    fn holds<const N: usize>(class: Class, evidence: [(EvidenceKey, Quantity); N]) -> Self {
        Self::Holds { class, evidence: Evidence(Vec::from(evidence)), by: 0 }
    }

    /// Whether it holds.
    pub const fn is_held(&self) -> bool {
        matches!(self, Self::Holds { .. })
    }
}

/// Tests a rule at a visit.
pub(super) fn test(rule: RuleId, story: &Story<'_>, at: usize) -> Tested {
    use RuleId as R;
    let now = &story.visits[at];
    if !now.protocol.rules.is_on(rule) {
        return Tested::Not(Clears::Unknown(Why::Off));
    }
    if is_feeding_rule(rule) && !now.feeding_age() {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    match rule {
        R::DangerGeneral => danger::general(now),
        R::DangerYoungInfant => danger::young_infant(now),
        R::DangerOther => danger::other(story, at),
        R::OedemaBothFeet => danger::oedema(now),
        R::ReactionSevere | R::ReactionSpreading | R::ReactionMild => reaction::of_level(rule, now),
        R::ReactionGivenAgain => reaction::given_again(story, at),
        R::FeedingSwallowTrouble => reaction::swallow_trouble(now),
        R::WeightVeryLow => growth_level::weight_very_low(now),
        R::WeightLow => growth_level::weight_low(now),
        R::WastingSevere => growth_level::wasting_severe(now),
        R::WastingModerate => growth_level::wasting_moderate(now),
        R::WastingYoung => growth_level::wasting_young(now),
        R::LengthLow => growth_level::length_low(now),
        R::WeightHigh => growth_level::weight_high(now),
        R::WeightLoss => growth_pair::loss(story, at),
        R::WeightStatic => growth_pair::stands_still(story, at),
        R::WeightSlowGain => growth_pair::slow_gain(story, at),
        R::WeightDrop => growth_pair::drop(story, at),
        R::WeightDrift => growth_pair::drift(story, at),
        R::BirthWeightNotRegained => birth::not_regained(story, at),
        R::BirthLow => birth::low(story, at),
        R::SolidsEarly => solids::early(story, at),
        R::SolidsLate => solids::late(story, at),
        R::TextureBehind => solids::texture_behind(now),
        R::TextureWatery => solids::texture_watery(now),
        R::MealsFew => meals::few(story, at),
        R::LiquidsEarly => milk::liquids_early(now),
        R::MilkAnimalEarly => milk::animal_early(now),
        R::MilkFew => milk::few(now),
        R::BreastfeedingStopped => milk::breastfeeding_stopped(story, at),
        R::BreastfeedingTrouble => milk::breastfeeding_trouble(now),
        R::DiversityLow => diversity::low(story, at),
        R::IronNone => diversity::iron_none(story, at),
        R::AnimalFoodNone => diversity::animal_food_none(now),
        R::VegFruitNone => diversity::veg_fruit_none(now),
        R::DrinkSweet => practice::drink_sweet(now),
        R::BottleUsed => practice::bottle_used(now),
        R::FoodHoney => practice::honey(story, at),
        R::FoodChoking => practice::choking(now),
        R::FoodLowValue => practice::low_value(now),
        R::FoodLocalWait => practice::local_wait(story, at),
        R::AppetitePoor => practice::appetite_poor(now),
        R::DataZOutside => data::z_outside(now),
        R::DataWeightJump => data::weight_jump(story, at),
        R::DataLengthShrunk => data::length_shrunk(story, at),
        R::DataLengthJump => data::length_jump(story, at),
        R::DataAgeProblem => data::age_problem(story, at),
        R::DataTwinRecord => data::twin_record(story, at),
        R::DataSameAgain => data::same_again(story, at),
        R::DataConflict => data::conflict(now),
        R::MeasureMissing => data::measure_missing(story, at),
        R::VisitOverdue | R::VisitLost | R::ReferralNoOutcome => Tested::Not(Clears::Unknown(Why::NotNow)),
    }
}

/// Rules about feeding: none of them applies from the exit age on.
const fn is_feeding_rule(rule: RuleId) -> bool {
    matches!(rule.theme(), crate::rule::Theme::Feeding)
}

/// A class that depends on six completed months.
fn by_age(now: &Facts<'_>, under_6m: Class, from_6m: Class) -> Class {
    if now.months < 6 { under_6m } else { from_6m }
}

/// Whether a weight jumped up: a rule on high weight then waits for a second weighing.
pub(super) fn weight_went_up(story: &Story<'_>, at: usize) -> bool {
    data::weight_went_up(story, at)
}

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
use super::types::{Answer, Finding, Standing, Why};
use crate::evidence::{Evidence, EvidenceKey, Quantity};
use crate::rule::{Class, RuleId};
use crate::rule_set::RuleSet;

pub(super) use data::z_known_again;
pub(super) use growth_level::wasting_known_again;
pub(super) use growth_pair::regained;
pub(crate) use reaction::level as reaction_level;
pub use reaction::told_reaction;

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
    /// As told to others, for a rule that does not hold.
    pub const fn answer(self) -> Answer {
        match self {
            Self::Yes => Answer::Clear,
            Self::No => Answer::CannotTell(Why::NotYet),
            Self::Unknown(why) => Answer::CannotTell(why),
        }
    }

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

/// How many rules open follow-ups.
pub(super) const STORED: usize = RuleId::STORED.len();

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
        Self::Holds { class, evidence: Evidence::from(evidence), by: 0 }
    }

    /// Whether it holds.
    pub const fn is_held(&self) -> bool {
        matches!(self, Self::Holds { .. })
    }
}

/// What every rule says at a visit.
pub(super) struct Tests {
    /// What fires, in the order of the rules. Whether it stands is not decided here.
    pub findings: Vec<Finding>,
    /// The rules of the findings.
    pub holds: RuleSet,
    /// What made each of them hold, by place of the rule.
    pub by: [Measures; STORED],
    /// The clearing tests of the others, by place of the rule.
    pub clears: [Clears; STORED],
}

impl Tests {
    fn note(&mut self, rule: RuleId, tested: Tested) {
        match tested {
            Tested::Holds { class, evidence, by } => {
                self.findings.push(Finding { rule, class, standing: Standing::Stands, evidence });
                self.holds.insert(rule);
                self.by[rule as usize] = by;
            }
            Tested::Not(clears) => self.clears[rule as usize] = clears,
        }
    }
}

/// Tests every rule that opens follow-ups at a visit.
pub(super) fn test_all(story: &Story<'_>, at: usize) -> Tests {
    let now = &story.visits[at];
    let feeding_age = now.feeding_age();
    let mut all = Tests { findings: Vec::new(), holds: RuleSet::default(), by: [0; STORED], clears: [Clears::No; STORED] };
    // The rules are written out one after the other: choosing the test by the rule would take longer than most tests.
    macro_rules! tests {
        ($($rule:ident => $test:expr,)+) => {
            const { assert_in_order(&[$(RuleId::$rule),+]) };
            $(
                let tested = if !now.protocol.rules.is_on(RuleId::$rule) {
                    Tested::Not(Clears::Unknown(Why::Off))
                } else if !feeding_age && const { is_feeding_rule(RuleId::$rule) } {
                    Tested::Not(Clears::Unknown(Why::NotNow))
                } else {
                    $test
                };
                all.note(RuleId::$rule, tested);
            )+
        };
    }
    tests! {
        DangerGeneral => danger::general(now),
        DangerYoungInfant => danger::young_infant(now),
        DangerOther => danger::other(story, at),
        OedemaBothFeet => danger::oedema(now),
        ReactionSevere => reaction::of_level(RuleId::ReactionSevere, now),
        ReactionSpreading => reaction::of_level(RuleId::ReactionSpreading, now),
        ReactionMild => reaction::of_level(RuleId::ReactionMild, now),
        ReactionGivenAgain => reaction::given_again(story, at),
        FeedingSwallowTrouble => reaction::swallow_trouble(now),
        WeightVeryLow => growth_level::weight_very_low(now),
        WeightLow => growth_level::weight_low(now),
        WastingSevere => growth_level::wasting_severe(now),
        WastingModerate => growth_level::wasting_moderate(now),
        WastingYoung => growth_level::wasting_young(now),
        WeightLoss => growth_pair::loss(story, at),
        WeightStatic => growth_pair::stands_still(story, at),
        WeightSlowGain => growth_pair::slow_gain(story, at),
        WeightDrop => growth_pair::drop(story, at),
        WeightDrift => growth_pair::drift(story, at),
        BirthWeightNotRegained => birth::not_regained(story, at),
        BirthLow => birth::low(story, at),
        LengthLow => growth_level::length_low(now),
        WeightHigh => growth_level::weight_high(now),
        SolidsEarly => solids::early(story, at),
        LiquidsEarly => milk::liquids_early(now),
        MilkAnimalEarly => milk::animal_early(now),
        SolidsLate => solids::late(story, at),
        TextureBehind => solids::texture_behind(now),
        TextureWatery => solids::texture_watery(now),
        MealsFew => meals::few(story, at),
        MilkFew => milk::few(now),
        DiversityLow => diversity::low(story, at),
        IronNone => diversity::iron_none(story, at),
        AnimalFoodNone => diversity::animal_food_none(now),
        VegFruitNone => diversity::veg_fruit_none(now),
        DrinkSweet => practice::drink_sweet(now),
        BottleUsed => practice::bottle_used(now),
        FoodHoney => practice::honey(story, at),
        FoodChoking => practice::choking(now),
        FoodLowValue => practice::low_value(now),
        FoodLocalWait => practice::local_wait(now),
        BreastfeedingStopped => milk::breastfeeding_stopped(story, at),
        BreastfeedingTrouble => milk::breastfeeding_trouble(now),
        AppetitePoor => practice::appetite_poor(now),
        DataZOutside => data::z_outside(now),
        DataWeightJump => data::weight_jump(story, at),
        DataLengthShrunk => data::length_shrunk(story, at),
        DataLengthJump => data::length_jump(story, at),
        DataAgeProblem => data::age_problem(story, at),
        DataTwinRecord => data::twin_record(story, at),
        DataSameAgain => data::same_again(story, at),
        DataConflict => data::conflict(now),
        MeasureMissing => data::measure_missing(story, at),
    }
    all
}

/// Every rule is tested once, in the order of findings.
const fn assert_in_order(rules: &[RuleId]) {
    assert!(rules.len() == STORED);
    let mut at = 0;
    while at < STORED {
        assert!(rules[at] as usize == at);
        at += 1;
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

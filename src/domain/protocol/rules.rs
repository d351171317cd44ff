//! Which rules a protocol has, each with its switch, its thresholds and their source. It tests nothing.

use super::read::{Figure, ReadRules};
use super::thresholds as t;
use crate::rule::RuleId;

/// A rule as a protocol sets it.
#[derive(Debug, Clone, PartialEq)]
pub struct Rule<T> {
    /// Whether it is used. Safety rules always are.
    pub on: bool,
    /// Where its figures come from.
    pub source: String,
    /// Its figures.
    pub limits: T,
}

macro_rules! rules {
    ($($field:ident: $limits:ident = $id:ident),+ $(,)?) => {
        /// All rules, each with figures of its own kind.
        #[derive(Debug, Clone, PartialEq)]
        pub struct Rules {
            $(
                #[doc = concat!("[`RuleId::", stringify!($id), "`].")]
                pub $field: Rule<t::$limits>,
            )+
        }

        impl Rules {
            /// Asks for every rule and every figure.
            pub fn read(source: &mut impl ReadRules) -> Self {
                Self {
                    $($field: {
                        let (on, from, mut one) = source.rule(RuleId::$id);
                        Rule { on, source: from, limits: t::$limits::read(&mut one) }
                    },)+
                }
            }

            /// Whether a rule is used.
            #[must_use]
            pub const fn is_on(&self, id: RuleId) -> bool {
                match id { $(RuleId::$id => self.$field.on,)+ }
            }

            /// Where the figures of a rule come from.
            #[must_use]
            pub fn source(&self, id: RuleId) -> &str {
                match id { $(RuleId::$id => &self.$field.source,)+ }
            }

            /// The figures of a rule, each with its key.
            #[must_use]
            pub fn figures(&self, id: RuleId) -> Vec<(&'static str, Figure)> {
                match id { $(RuleId::$id => self.$field.limits.figures(),)+ }
            }

            /// The keys of a rule's figures.
            #[must_use]
            pub const fn keys(id: RuleId) -> &'static [&'static str] {
                match id { $(RuleId::$id => t::$limits::KEYS,)+ }
            }
        }
    };
}

rules! {
    danger_general: DangerGeneral = DangerGeneral,
    danger_young_infant: DangerYoungInfant = DangerYoungInfant,
    danger_other: DangerOther = DangerOther,
    oedema_both_feet: OedemaBothFeet = OedemaBothFeet,
    reaction_severe: ReactionSevere = ReactionSevere,
    reaction_spreading: ReactionSpreading = ReactionSpreading,
    reaction_mild: ReactionMild = ReactionMild,
    reaction_given_again: ReactionGivenAgain = ReactionGivenAgain,
    feeding_swallow_trouble: SwallowTrouble = FeedingSwallowTrouble,
    weight_very_low: WeightVeryLow = WeightVeryLow,
    weight_low: WeightLow = WeightLow,
    wasting_severe: WastingSevere = WastingSevere,
    wasting_moderate: WastingModerate = WastingModerate,
    wasting_young: WastingYoung = WastingYoung,
    weight_loss: WeightLoss = WeightLoss,
    weight_static: WeightStatic = WeightStatic,
    weight_slow_gain: WeightSlowGain = WeightSlowGain,
    weight_drop: WeightDrop = WeightDrop,
    weight_drift: WeightDrift = WeightDrift,
    birth_weight_not_regained: BirthWeightNotRegained = BirthWeightNotRegained,
    birth_low: BirthLow = BirthLow,
    length_low: LengthLow = LengthLow,
    weight_high: WeightHigh = WeightHigh,
    solids_early: SolidsEarly = SolidsEarly,
    liquids_early: LiquidsEarly = LiquidsEarly,
    milk_animal_early: MilkAnimalEarly = MilkAnimalEarly,
    solids_late: SolidsLate = SolidsLate,
    texture_behind: TextureBehind = TextureBehind,
    texture_watery: TextureWatery = TextureWatery,
    meals_few: MealsFew = MealsFew,
    milk_few: MilkFew = MilkFew,
    diversity_low: DiversityLow = DiversityLow,
    iron_none: IronNone = IronNone,
    animal_food_none: AnimalFoodNone = AnimalFoodNone,
    veg_fruit_none: VegFruitNone = VegFruitNone,
    drink_sweet: DrinkSweet = DrinkSweet,
    bottle_used: BottleUsed = BottleUsed,
    food_honey: FoodHoney = FoodHoney,
    food_choking: FoodChoking = FoodChoking,
    food_low_value: FoodLowValue = FoodLowValue,
    food_local_wait: FoodLocalWait = FoodLocalWait,
    breastfeeding_stopped: BreastfeedingStopped = BreastfeedingStopped,
    breastfeeding_trouble: BreastfeedingTrouble = BreastfeedingTrouble,
    appetite_poor: AppetitePoor = AppetitePoor,
    data_z_outside: DataZOutside = DataZOutside,
    data_weight_jump: DataWeightJump = DataWeightJump,
    data_length_shrunk: DataLengthShrunk = DataLengthShrunk,
    data_length_jump: DataLengthJump = DataLengthJump,
    data_age_problem: DataAgeProblem = DataAgeProblem,
    data_twin_record: DataTwinRecord = DataTwinRecord,
    data_same_again: DataSameAgain = DataSameAgain,
    data_conflict: DataConflict = DataConflict,
    measure_missing: MeasureMissing = MeasureMissing,
    visit_overdue: VisitOverdue = VisitOverdue,
    visit_lost: VisitLost = VisitLost,
    referral_no_outcome: ReferralNoOutcome = ReferralNoOutcome,
}

impl RuleId {
    /// Rules that no protocol can switch off: danger, oedema, severe reactions, honey, severe wasting.
    #[must_use]
    pub const fn is_safety(self) -> bool {
        matches!(
            self,
            Self::DangerGeneral
                | Self::DangerYoungInfant
                | Self::DangerOther
                | Self::OedemaBothFeet
                | Self::ReactionSevere
                | Self::FoodHoney
                | Self::WastingSevere
        )
    }
}

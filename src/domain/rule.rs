//! Names of the rules, their themes, urgency classes and the reasons for closing.

use crate::code::codes;

codes! {
    /// A rule that can open a follow-up or put a child on a list.
    RuleId, "rule" {
        /// General danger sign.
        DangerGeneral => "danger.general",
        /// Danger sign of a young infant.
        DangerYoungInfant => "danger.young_infant",
        /// Another danger sign.
        DangerOther => "danger.other",
        /// Swelling of both feet.
        OedemaBothFeet => "oedema.both_feet",
        /// Severe food reaction.
        ReactionSevere => "reaction.severe",
        /// Spreading food reaction.
        ReactionSpreading => "reaction.spreading",
        /// Mild food reaction.
        ReactionMild => "reaction.mild",
        /// A food on hold was given again.
        ReactionGivenAgain => "reaction.given_again",
        /// Trouble swallowing.
        FeedingSwallowTrouble => "feeding.swallow_trouble",
        /// Weight-for-age below −3.
        WeightVeryLow => "weight.very_low",
        /// Weight-for-age below −2.
        WeightLow => "weight.low",
        /// Severe wasting from 6 months.
        WastingSevere => "wasting.severe",
        /// Moderate wasting from 6 months.
        WastingModerate => "wasting.moderate",
        /// Thinness under 6 months.
        WastingYoung => "wasting.young",
        /// Weight lost.
        WeightLoss => "weight.loss",
        /// No weight gained.
        WeightStatic => "weight.static",
        /// Less gained than expected.
        WeightSlowGain => "weight.slow_gain",
        /// Weight line fell between two visits.
        WeightDrop => "weight.drop",
        /// Weight line fell since birth.
        WeightDrift => "weight.drift",
        /// Birth weight not regained.
        BirthWeightNotRegained => "birth_weight.not_regained",
        /// Born small or early, no plan yet.
        BirthLow => "birth.low",
        /// Length-for-age below −2.
        LengthLow => "length.low",
        /// Weight high for length.
        WeightHigh => "weight.high",
        /// Solids before the start age.
        SolidsEarly => "solids.early",
        /// Drinks besides milk before the start age.
        LiquidsEarly => "liquids.early",
        /// Animal milk as a drink before 6 months.
        MilkAnimalEarly => "milk.animal_early",
        /// Solids not started in time.
        SolidsLate => "solids.late",
        /// Texture behind the stage.
        TextureBehind => "texture.behind",
        /// Food too watery.
        TextureWatery => "texture.watery",
        /// Too few meals.
        MealsFew => "meals.few",
        /// Too few milk feeds, not breastfed.
        MilkFew => "milk.few",
        /// Too few food groups.
        DiversityLow => "diversity.low",
        /// No iron source.
        IronNone => "iron.none",
        /// No animal food.
        AnimalFoodNone => "animal_food.none",
        /// No fruit or vegetable.
        VegFruitNone => "veg_fruit.none",
        /// Sweet drink.
        DrinkSweet => "drink.sweet",
        /// Bottle with a teat.
        BottleUsed => "bottle.used",
        /// Honey before 12 months.
        FoodHoney => "food.honey",
        /// A food in a form that can choke.
        FoodChoking => "food.choking",
        /// Tea, coffee, salt or sugar.
        FoodLowValue => "food.low_value",
        /// A food before the local waiting age.
        FoodLocalWait => "food.local_wait",
        /// Breastfeeding stopped.
        BreastfeedingStopped => "breastfeeding.stopped",
        /// Breastfeeding is difficult.
        BreastfeedingTrouble => "breastfeeding.trouble",
        /// Refuses most food.
        AppetitePoor => "appetite.poor",
        /// A z-score outside plausible limits.
        DataZOutside => "data.z_outside",
        /// An unlikely jump of weight.
        DataWeightJump => "data.weight_jump",
        /// Length got shorter.
        DataLengthShrunk => "data.length_shrunk",
        /// An unlikely jump of length.
        DataLengthJump => "data.length_jump",
        /// Age facts that do not fit together.
        DataAgeProblem => "data.age_problem",
        /// Two records that may be one.
        DataTwinRecord => "data.twin_record",
        /// The same weight three times.
        DataSameAgain => "data.same_again",
        /// Answers that contradict each other.
        DataConflict => "data.conflict",
        /// No weight at two contacts.
        MeasureMissing => "measure.missing",
        /// A visit slot passed without a visit (a list).
        VisitOverdue => "visit.overdue",
        /// Not seen for a long time (a list).
        VisitLost => "visit.lost",
        /// Referred, no outcome known (a list).
        ReferralNoOutcome => "referral.no_outcome",
    }
}

codes! {
    /// What a rule is about.
    Theme, "theme" {
        /// Danger signs.
        Danger => "danger",
        /// Food reactions.
        Reaction => "reaction",
        /// Growth.
        Growth => "growth",
        /// Feeding.
        Feeding => "feeding",
        /// Data quality.
        Data => "data",
        /// Visits.
        Visit => "visit",
    }
}

codes! {
    /// Urgency, most severe first (so `Now < Today` in sort order).
    Class, "class" {
        /// Emergency: call from the home.
        Now => "now",
        /// Refer today.
        Today => "today",
        /// See again within 2 days.
        TwoDays => "two_days",
        /// Within 7 days.
        Week => "week",
        /// Within 14 days.
        Fortnight => "fortnight",
        /// At the next routine visit.
        Month => "month",
    }
}

impl Class {
    /// The more severe of two.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        self.min(other)
    }

    /// Whether it is `now` or `today`: a referral without being named one.
    #[must_use]
    pub const fn is_urgent(self) -> bool {
        matches!(self, Self::Now | Self::Today)
    }
}

codes! {
    /// Why a follow-up is no longer open.
    CloseReason, "closing reason" {
        /// A later visit met the test.
        ResolvedByVisit => "resolved_by_visit",
        /// A care outcome or decision counts.
        SeenOutcomeRecorded => "seen_outcome_recorded",
        /// In wasting treatment elsewhere.
        InCareElsewhere => "in_care_elsewhere",
        /// Its cause went away by a correction.
        RecordCorrected => "record_corrected",
        /// A higher rule of the chain took over.
        Replaced => "replaced",
        /// Closed by a supervisor, with reasons.
        SupervisorDecision => "supervisor_decision",
        /// Child left: other programme.
        TransferredOut => "transferred_out",
        /// Child left: moved away.
        Moved => "moved",
        /// Child left: consent withdrawn.
        ConsentWithdrawn => "consent_withdrawn",
        /// Child left: exit age.
        AgedOut => "aged_out",
        /// Child left: family does not want visits.
        Refused => "refused",
        /// Child died.
        Died => "died",
    }
}

codes! {
    /// Where a follow-up stands.
    FollowUpState, "follow-up state" {
        /// Open.
        Open => "open",
        /// Done.
        Done => "done",
        /// Closed by a supervisor.
        ClosedBySupervisor => "closed_by_supervisor",
        /// Ended because the child left.
        Ended => "ended",
    }
}

impl CloseReason {
    /// Which end it is.
    #[must_use]
    pub const fn state(self) -> FollowUpState {
        match self {
            Self::ResolvedByVisit | Self::SeenOutcomeRecorded | Self::InCareElsewhere | Self::RecordCorrected | Self::Replaced => {
                FollowUpState::Done
            }
            Self::SupervisorDecision => FollowUpState::ClosedBySupervisor,
            Self::TransferredOut | Self::Moved | Self::ConsentWithdrawn | Self::AgedOut | Self::Refused | Self::Died => {
                FollowUpState::Ended
            }
        }
    }
}

impl RuleId {
    /// Every rule that opens follow-ups: all but the lists, which stand last. Each stands at the place of its number.
    pub const STORED: &'static [RuleId] = Self::ALL.split_at(Self::ALL.len() - 3).0;

    /// Whether it is a list worked out for a day, not a follow-up.
    #[must_use]
    pub const fn is_list(self) -> bool {
        matches!(self, Self::VisitOverdue | Self::VisitLost | Self::ReferralNoOutcome)
    }

    /// The theme, which is the same in every protocol.
    #[must_use]
    pub const fn theme(self) -> Theme {
        use RuleId as R;
        match self {
            R::DangerGeneral | R::DangerYoungInfant | R::DangerOther | R::OedemaBothFeet => Theme::Danger,
            R::ReactionSevere | R::ReactionSpreading | R::ReactionMild | R::ReactionGivenAgain | R::FeedingSwallowTrouble => {
                Theme::Reaction
            }
            R::WeightVeryLow
            | R::WeightLow
            | R::WastingSevere
            | R::WastingModerate
            | R::WastingYoung
            | R::WeightLoss
            | R::WeightStatic
            | R::WeightSlowGain
            | R::WeightDrop
            | R::WeightDrift
            | R::BirthWeightNotRegained
            | R::BirthLow
            | R::LengthLow
            | R::WeightHigh => Theme::Growth,
            R::SolidsEarly
            | R::LiquidsEarly
            | R::MilkAnimalEarly
            | R::SolidsLate
            | R::TextureBehind
            | R::TextureWatery
            | R::MealsFew
            | R::MilkFew
            | R::DiversityLow
            | R::IronNone
            | R::AnimalFoodNone
            | R::VegFruitNone
            | R::DrinkSweet
            | R::BottleUsed
            | R::FoodHoney
            | R::FoodChoking
            | R::FoodLowValue
            | R::FoodLocalWait
            | R::BreastfeedingStopped
            | R::BreastfeedingTrouble
            | R::AppetitePoor => Theme::Feeding,
            R::DataZOutside
            | R::DataWeightJump
            | R::DataLengthShrunk
            | R::DataLengthJump
            | R::DataAgeProblem
            | R::DataTwinRecord
            | R::DataSameAgain
            | R::DataConflict
            | R::MeasureMissing => Theme::Data,
            R::VisitOverdue | R::VisitLost | R::ReferralNoOutcome => Theme::Visit,
        }
    }
}

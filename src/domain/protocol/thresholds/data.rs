//! Figures of the rules on data and visits. It tests nothing.

use crate::growth::ZHundredths;
use crate::rule::Class;

use super::thresholds;

thresholds! {
    /// A z-score outside plausible limits.
    DataZOutside {
        /// Urgency if weight is implausibly low for age or length.
        class_low: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// An unlikely jump of weight.
    DataWeightJump {
        /// A change of weight-for-age of at least this, up or down.
        change_z: ZHundredths,
        /// Within so many days.
        within_days: i32,
        /// Growth age in days at the earlier weight.
        earlier_from_growth_days: i32,
        /// Or a daily gain above this.
        gain_above_g_per_day: u32,
        /// Over at least so many days.
        gain_over_days: i32,
        /// Urgency.
        class: Class,
    }
    /// Length got shorter, by more than the tolerance.
    DataLengthShrunk {
        /// Urgency.
        class: Class,
    }
    /// An unlikely jump of length.
    DataLengthJump {
        /// A change of length-for-age of at least this, up or down.
        change_z: ZHundredths,
        /// Within so many days.
        within_days: i32,
        /// Urgency.
        class: Class,
    }
    /// Age facts that do not fit together.
    DataAgeProblem {
        /// Pregnancy shorter than this.
        gestation_below_days: u32,
        /// With a birth weight above this.
        birth_weight_above_g: u32,
        /// Urgency.
        class: Class,
    }
    /// Two records that may be one.
    DataTwinRecord {
        /// Urgency.
        class: Class,
    }
    /// The same weight three times.
    DataSameAgain {
        /// Weights are compared to the nearest so many grams, half up.
        nearest_g: u32,
        /// Below this completed month.
        under_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Answers that contradict each other.
    DataConflict {
        /// Urgency.
        class: Class,
    }
    /// No weight at two contacts.
    MeasureMissing {
        /// Urgency.
        class: Class,
    }
    /// A visit slot passed without a visit (a list).
    VisitOverdue {
        /// The supervisor sees it after so many days.
        supervisor_after_days: i32,
    }
    /// Not seen for a long time (a list).
    VisitLost {
        /// From so many days on, under 12 completed months.
        after_days_under_12m: i32,
        /// The same, from 12 months on.
        after_days_from_12m: i32,
        /// Urgency for the supervisor.
        class: Class,
    }
    /// Referred, no outcome known (a list).
    ReferralNoOutcome {
        /// Past so many days since it last fired, if urgent.
        urgent_after_days: i32,
        /// Past so many days since it was first referred, if not.
        other_after_days: i32,
        /// Urgency.
        class: Class,
    }
}

//! Figures of the rules on growth. It tests nothing.

use crate::growth::ZHundredths;
use crate::protocol::read::DayRange;
use crate::rule::Class;

use super::thresholds;

thresholds! {
    /// Weight-for-age very low.
    WeightVeryLow {
        /// Below this.
        below_z: ZHundredths,
        /// Below this (measured again and kept) it is as urgent as under 6 months.
        urgent_below_z: ZHundredths,
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Weight-for-age low.
    WeightLow {
        /// From this.
        from_z: ZHundredths,
        /// Below this.
        below_z: ZHundredths,
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Severe wasting; its clearing test serves the other wasting rules too.
    WastingSevere {
        /// From this completed month.
        from_months: u32,
        /// Weight-for-length below this.
        below_z: ZHundredths,
        /// Or arm below this.
        muac_below_mm: u32,
        /// Clear: arm at least this.
        clear_muac_from_mm: u32,
        /// Clear: weight-for-length at least this, where computed.
        clear_z_from: ZHundredths,
        /// Urgency.
        class: Class,
    }
    /// Moderate wasting.
    WastingModerate {
        /// From this completed month.
        from_months: u32,
        /// Weight-for-length from this.
        from_z: ZHundredths,
        /// And below this.
        below_z: ZHundredths,
        /// Or arm from this.
        muac_from_mm: u32,
        /// And below this.
        muac_below_mm: u32,
        /// Urgency.
        class: Class,
    }
    /// Thinness of a young infant.
    WastingYoung {
        /// Below this completed month.
        under_months: u32,
        /// Weight-for-length below this is severe.
        severe_below_z: ZHundredths,
        /// Weight-for-length below this.
        below_z: ZHundredths,
        /// Or arm below this.
        muac_below_mm: u32,
        /// The arm counts from this age in days.
        muac_from_age_days: i32,
        /// Urgency if severe.
        class_severe: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// Weight lost.
    WeightLoss {
        /// Between the two weights.
        interval_days: DayRange,
        /// Age in days at the earlier weight.
        earlier_from_age_days: i32,
        /// A loss of at least this share is large.
        large_loss_percent: f64,
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency of a large loss from 6 months on.
        class_large: Class,
        /// Urgency of another loss.
        class: Class,
        /// Clear: regained at least so many days after it last fired.
        clear_after_days: i32,
    }
    /// No weight gained.
    WeightStatic {
        /// Age in days at the earlier weight.
        earlier_from_age_days: i32,
        /// Between the two weights, under 6 completed months.
        interval_days_under_6m: DayRange,
        /// The same, 6 to 11 months.
        interval_days_6_to_11m: DayRange,
        /// The same, from 12 months.
        interval_days_from_12m: DayRange,
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Less gained than expected.
    WeightSlowGain {
        /// Between the two weights.
        interval_days: DayRange,
        /// Growth age in days at the earlier weight.
        earlier_from_growth_days: i32,
        /// Growth age in days at the visit is below this.
        under_growth_days: i32,
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// The weight line fell between two visits.
    WeightDrop {
        /// Between the two visits.
        interval_days: DayRange,
        /// Age and growth age in days at the earlier visit.
        earlier_from_age_days: i32,
        /// A change down to this or below is steep.
        steep_change_z: ZHundredths,
        /// A change down to this or below counts.
        change_z: ZHundredths,
        /// Urgency of a steep fall under 6 completed months.
        class_steep_under_6m: Class,
        /// The same from 6 months on.
        class_steep_from_6m: Class,
        /// Urgency of another fall under 6 completed months.
        class_under_6m: Class,
        /// Urgency of another fall from 6 months on.
        class_from_6m: Class,
    }
    /// The weight line fell since birth.
    WeightDrift {
        /// From this growth age in days.
        from_growth_days: i32,
        /// Where birth weight does not serve: the first z from this growth age in days.
        first_from_growth_days: i32,
        /// A start below this is low.
        low_start_below_z: ZHundredths,
        /// A start above this is high.
        high_start_above_z: ZHundredths,
        /// Fall that counts from a low start.
        fall_low_start_z: ZHundredths,
        /// Fall that counts from a middle start.
        fall_z: ZHundredths,
        /// Fall that counts from a high start.
        fall_high_start_z: ZHundredths,
        /// Urgency.
        class: Class,
    }
    /// Birth weight not regained.
    BirthWeightNotRegained {
        /// Last day of age of the first step.
        first_days_to: i32,
        /// In the first step: a loss of more than this share of the birth weight.
        loss_percent: f64,
        /// Last day of age of the second step: less than the birth weight.
        second_days_to: i32,
        /// Last day of age of the third step: less than the birth weight.
        third_days_to: i32,
        /// Urgency in the first step.
        class_first: Class,
        /// Urgency in the second step.
        class_second: Class,
        /// Urgency in the third step.
        class_third: Class,
    }
    /// Born small or early, no plan yet.
    BirthLow {
        /// At registration and at the visit younger than this, in days.
        under_age_days: i32,
        /// Birth weight below this.
        weight_below_g: u32,
        /// Or pregnancy shorter than this.
        gestation_below_days: u32,
        /// Birth weight below this is very low.
        very_weight_below_g: u32,
        /// A pregnancy shorter than this is very short.
        very_gestation_below_days: u32,
        /// Urgency if very small or very early.
        class_very: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// Length-for-age low.
    LengthLow {
        /// Below this it is severe.
        severe_below_z: ZHundredths,
        /// Below this.
        below_z: ZHundredths,
        /// Urgency if severe.
        class_severe: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// Weight high for length.
    WeightHigh {
        /// Above this.
        above_z: ZHundredths,
        /// Above this it is very high.
        very_above_z: ZHundredths,
        /// Urgency if very high.
        class_very: Class,
        /// Urgency otherwise.
        class: Class,
    }
}

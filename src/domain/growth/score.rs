//! What a z-score is: its kinds, its rounding, its plausible limits and the reasons for having none. It knows no table.

use crate::code::codes;

codes! {
    /// A growth index.
    Indicator, "growth index" {
        /// Weight for age.
        Waz => "waz",
        /// Length or height for age.
        Laz => "laz",
        /// Weight for length or height.
        Wlz => "wlz",
        /// Body mass index for age.
        Bmiz => "bmiz",
        /// Mid-upper-arm circumference for age.
        Mauz => "mauz",
        /// Head circumference for age.
        Hcz => "hcz",
    }
}

codes! {
    /// Why an index has no value.
    NotComputable, "reason for no z-score" {
        /// Nothing of what the index needs was measured.
        NotMeasured => "not_measured",
        /// The weight is missing.
        NoWeight => "no_weight",
        /// The length is missing.
        NoLength => "no_length",
        /// Swelling of both feet: the weight is not that of the body.
        Oedema => "oedema",
        /// Corrected age below 0: the tables start at the due date.
        BeforeDueDate => "before_due_date",
        /// The table has no such day of age.
        AgeOutsideTable => "age_outside_table",
        /// The table has no such length.
        LengthOutsideTable => "length_outside_table",
    }
}

/// A z-score rounded to two decimals, half away from zero: what is shown and what is compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ZHundredths(i32);

impl ZHundredths {
    /// From hundredths: −233 is −2.33.
    #[must_use]
    pub const fn new(hundredths: i32) -> Self {
        Self(hundredths)
    }

    /// In hundredths.
    #[must_use]
    pub const fn hundredths(self) -> i32 {
        self.0
    }

    /// The difference to an earlier z, in hundredths: the difference of the rounded ones, so that it is the one people read off.
    #[must_use]
    pub const fn since(self, earlier: Self) -> i32 {
        self.0.saturating_sub(earlier.0)
    }
}

impl std::fmt::Display for ZHundredths {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let whole = self.0.unsigned_abs();
        write!(f, "{sign}{}.{:02}", whole / 100, whole % 100)
    }
}

/// A z-score in full precision.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Z(pub(super) f64);

impl Z {
    /// In full precision: for charts and exports, never for decisions.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// Rounded to two decimals, half away from zero: compare this.
    #[must_use]
    pub fn rounded(self) -> ZHundredths {
        ZHundredths((self.0 * 100.0).round() as i32)
    }
}

/// An index: a value, or the reason for having none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Score {
    /// Computed; may still be outside the plausible limits.
    Value(Z),
    /// Not computable, and why.
    None(NotComputable),
}

impl Score {
    /// The value in full precision.
    #[must_use]
    pub const fn value(self) -> Option<Z> {
        match self {
            Self::Value(z) => Some(z),
            Self::None(_) => None,
        }
    }

    /// The value rounded to two decimals.
    #[must_use]
    pub fn rounded(self) -> Option<ZHundredths> {
        self.value().map(Z::rounded)
    }

    /// Why there is no value.
    #[must_use]
    pub const fn reason(self) -> Option<NotComputable> {
        match self {
            Self::Value(_) => None,
            Self::None(reason) => Some(reason),
        }
    }
}

/// Whether a z is implausible: outside the limits at which the WHO analysis code sets its flags (a z on the limit is plausible).
///
/// Weight for age −6 to +5, length for age −6 to +6, weight for length, body mass index and arm circumference −5 to +5 (WHO Child
/// Growth Standards, analysis code, 2006 and 2007); head circumference −5 to +5 (the same, from memory).
#[must_use]
pub const fn outside_limits(indicator: Indicator, z: ZHundredths) -> bool {
    let (least, most) = match indicator {
        Indicator::Waz => (-600, 500),
        Indicator::Laz => (-600, 600),
        Indicator::Wlz | Indicator::Bmiz | Indicator::Mauz | Indicator::Hcz => (-500, 500),
    };
    z.0 < least || z.0 > most
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounding_is_half_away_from_zero_and_reads_back() {
        for (z, hundredths, text) in [
            (-2.004, -200, "-2.00"),
            (-2.005_000_1, -201, "-2.01"),
            (-0.125, -13, "-0.13"),
            (0.125, 13, "0.13"),
            (-0.05, -5, "-0.05"),
            (-0.004, 0, "0.00"),
            (12.3, 1230, "12.30"),
        ] {
            assert_eq!(Z(z).rounded().hundredths(), hundredths, "{z}");
            assert_eq!(Z(z).rounded().to_string(), text, "{z}");
        }
        assert!(ZHundredths::new(-201) < ZHundredths::new(-200));
    }

    #[test]
    fn a_difference_is_that_of_the_rounded_figures() {
        // −0.004 → 0.00 and −0.676 → −0.68: 0.68 apart on the screen, though 0.672 before rounding.
        assert_eq!(Z(-0.676).rounded().since(Z(-0.004).rounded()), -68);
    }

    #[test]
    fn a_z_on_the_limit_is_plausible_and_one_hundredth_beyond_is_not() {
        use Indicator::{Bmiz, Hcz, Laz, Mauz, Waz, Wlz};
        for (indicator, least, most) in
            [(Waz, -600, 500), (Laz, -600, 600), (Wlz, -500, 500), (Bmiz, -500, 500), (Mauz, -500, 500), (Hcz, -500, 500)]
        {
            assert!(!outside_limits(indicator, ZHundredths::new(least)) && !outside_limits(indicator, ZHundredths::new(most)));
            assert!(outside_limits(indicator, ZHundredths::new(least - 1)) && outside_limits(indicator, ZHundredths::new(most + 1)));
        }
        // Tested after rounding: 5.0049 is 5.00.
        assert!(!outside_limits(Wlz, Z(5.0049).rounded()) && outside_limits(Wlz, Z(5.0051).rounded()));
    }
}

//! How far a share of few children can be trusted: the score interval of Wilson. It knows only two counts.

/// The 97.5th centile of the standard normal distribution, for an interval of 95 %.
const Z: f64 = 1.959_963_984_540_054;

/// A 95 % interval of a share, both ends between 0 and 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Lower end.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// The score interval for `n` of `den`; `None` when `den` is 0 or `n` is more than `den`.
///
/// Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the American
/// Statistical Association 22 (1927), 209–212.
#[must_use]
pub fn wilson(n: u32, den: u32) -> Option<Interval> {
    if den == 0 || n > den {
        return None;
    }
    let (n, den) = (f64::from(n), f64::from(den));
    let share = n / den;
    let z2 = Z * Z;
    let middle = (share + z2 / (2.0 * den)) / (1.0 + z2 / den);
    let half = Z / (1.0 + z2 / den) * (share * (1.0 - share) / den + z2 / (4.0 * den * den)).sqrt();
    // For none and for all, that end is exact; rounding must not push it off the edge, on either side.
    let low = if n > 0.0 { (middle - half).max(0.0) } else { 0.0 };
    let high = if n < den { (middle + half).min(1.0) } else { 1.0 };
    Some(Interval { low, high })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in
    /// Medicine 17 (1998), 857–872, table I, method 3 (score without continuity correction); figures from memory, and the same
    /// to four places from SciPy's `binomtest(n, den).proportion_ci(method="wilson")`.
    #[test]
    fn agrees_with_a_published_table() {
        for (n, den, low, high) in [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)] {
            let it = wilson(n, den).expect("an interval");
            assert!((it.low - low).abs() < 5e-5 && (it.high - high).abs() < 5e-5, "{n} of {den}: {it:?}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn holds_the_share_within_nought_and_one_and_is_the_same_for_the_others(den in 1_u32..100_000, part in 0.0..=1.0_f64) {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and den")]
            let n = (f64::from(den) * part).round() as u32;
            let (it, others) = (wilson(n, den).expect("an interval"), wilson(den - n, den).expect("an interval"));
            let share = f64::from(n) / f64::from(den);
            prop_assert!(0.0 <= it.low && it.low <= share && share <= it.high && it.high <= 1.0, "{:?} of {}", it, share);
            prop_assert!((it.low + others.high - 1.0).abs() < 1e-9 && (it.high + others.low - 1.0).abs() < 1e-9, "{:?} {:?}", it, others);
        }

        #[test]
        fn more_children_make_it_narrower(n in 0_u32..1_000, more in 0_u32..1_000) {
            let den = n + more + 1;
            let width = |it: Interval| it.high - it.low;
            let (few, many) = (wilson(n, den).expect("an interval"), wilson(4 * n, 4 * den).expect("an interval"));
            prop_assert!(width(many) < width(few), "{:?} {:?}", few, many);
        }
    }

    #[test]
    fn agrees_with_figures_worked_by_hand() {
        // 12 of 45: p = 0.26667, z² = 3.84146; middle = (0.26667 + 0.042683) / 1.085366 = 0.285021;
        // half = 1.959964/1.085366 × √(0.0043457 + 0.00047426) = 1.805809 × 0.0694259 = 0.125370.
        let it = wilson(12, 45).expect("an interval");
        assert!((it.low - 0.159_65).abs() < 1e-4 && (it.high - 0.410_39).abs() < 1e-4, "{it:?}");
        // 0 of 10: the upper end is z² / (10 + z²) = 3.84146 / 13.84146 = 0.277533.
        let it = wilson(0, 10).expect("an interval");
        assert!(it.low.abs() < 1e-12 && (it.high - 0.277_533).abs() < 1e-6, "{it:?}");
        assert_eq!(wilson(1, 0), None);
        assert_eq!(wilson(3, 2), None);
    }
}

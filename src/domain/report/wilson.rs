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
    // At 0 and at all, the end is exact; rounding must not push it past the edge.
    Some(Interval { low: (middle - half).max(0.0), high: (middle + half).min(1.0) })
}

#[cfg(test)]
mod tests {
    use super::*;

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

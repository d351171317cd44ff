//! Tops of scales: round numbers whose half is round too.

/// Shares: the least of these fifths that holds it.
const SHARES: [f64; 4] = [0.2, 0.4, 0.6, 0.8];
/// Counts: these times a power of ten.
const COUNTS: [f64; 4] = [2.0, 4.0, 6.0, 10.0];

/// The top of a scale of shares between 0 and 1.
pub(super) fn share_top(reach: f64) -> f64 {
    SHARES.into_iter().find(|top| reach <= *top).unwrap_or(1.0)
}

/// The top of a scale of counts.
pub(super) fn count_top(reach: f64) -> f64 {
    let mut power = 1.0;
    // A count of children or follow-ups is far below ten to the twelfth.
    for _ in 0..12 {
        if let Some(top) = COUNTS.into_iter().map(|top| top * power).find(|top| reach <= *top) {
            return top;
        }
        power *= 10.0;
    }
    reach
}

/// A count as a place on a scale: far below 2^32 here.
pub(super) fn float(count: u64) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tops_hold_what_they_show_and_halve_well() {
        for (reach, top) in [(0.0, 2.0), (2.0, 2.0), (3.0, 4.0), (7.0, 10.0), (52.0, 60.0), (61.0, 100.0), (1_201.0, 2_000.0)] {
            assert!((count_top(reach) - top).abs() < 1e-9, "{reach}: {}", count_top(reach));
        }
        for (reach, top) in [(0.0, 0.2), (0.2, 0.2), (0.21, 0.4), (0.81, 1.0), (1.0, 1.0)] {
            assert!((share_top(reach) - top).abs() < 1e-9, "{reach}");
        }
    }
}

//! How far a z-score moves when the scale is a little off. It knows no rule, no protocol and no child.

use super::score::{Z, ZHundredths};
use super::tables;
use crate::child::Sex;

/// By how much weight-for-age moves at most when the weight is `by_g` grams more or less than the one that has this z at this growth
/// age in days. Rounded to two decimals, so that the number shown is the one compared. `None` where the table has no such day.
#[must_use]
pub fn weight_error_z(sex: Sex, age_days: i32, waz: ZHundredths, by_g: i64) -> Option<ZHundredths> {
    let row = tables::WEIGHT_FOR_AGE.row(sex, age_days)?;
    let kg = row.at_restricted(f64::from(waz.hundredths()) / 100.0);
    // A tolerance is at most some hundred grams: a float holds it exactly.
    let by_kg = by_g.unsigned_abs() as f64 / 1000.0;
    if !kg.is_finite() || kg <= by_kg {
        return None;
    }
    // From the weight there and back, so that the rounding of the z does not count twice.
    let here = row.z_restricted(kg);
    let moved = (row.z_restricted(kg + by_kg) - here).max(here - row.z_restricted(kg - by_kg));
    moved.is_finite().then(|| Z(moved).rounded())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::growth::{Indicator, reference_value};
    use proptest::prelude::*;

    fn error(sex: Sex, days: i32, z: i32, g: i64) -> Option<i32> {
        weight_error_z(sex, days, ZHundredths::new(z), g).map(ZHundredths::hundredths)
    }

    #[test]
    fn a_hundred_grams_weigh_more_on_a_younger_child() {
        // WHO weight for age, boys: day 0 median 3.3464 kg, SD about 0.49 kg; day 365 median 9.65 kg, SD about 1.06 kg.
        assert_eq!(error(Sex::Male, 0, 0, 100), Some(21));
        assert_eq!(error(Sex::Male, 365, 0, 100), Some(10));
        assert_eq!(error(Sex::Male, 365, 0, 50), Some(5));
        // Below the line the same grams are more z: the spread is narrower there.
        assert!(error(Sex::Female, 180, -300, 100) > error(Sex::Female, 180, 300, 100));
        assert_eq!(error(Sex::Male, -1, 0, 100), None, "before the due date there is no table");
        assert_eq!(error(Sex::Male, 365, 0, 0), Some(0));
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn it_is_the_distance_to_the_weight_so_far_away(days in 0_i32..731, z in -500_i32..500, g in 10_i64..200) {
            let found = error(Sex::Female, days, z, g).expect("inside the table");
            // Read the other way: of the two weights so far up and down in z, the nearer one lies about g away.
            let kg = |z: i32| reference_value(Indicator::Waz, Sex::Female, days, f64::from(z) / 100.0).expect("a weight") * 1000.0;
            let away = (kg(z + found) - kg(z)).min(kg(z) - kg(z - found));
            let hundredth = kg(z + 1) - kg(z - 1);
            prop_assert!((away - g as f64).abs() <= hundredth, "{away} for {g}");
        }
    }
}

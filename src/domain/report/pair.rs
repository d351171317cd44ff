//! Whether a child gained as it should between two weighings, for counting. The follow-up rules have finer limits of their
//! own; this measure is one line, so that a reader can work it out again.

use chrono::NaiveDate;

use crate::calendar::days_between;
use crate::growth::least_expected_gain_grams;
use crate::report::rows::ReportChild;
use crate::units::Weight;

/// Fewest and most days between the two weighings (our own choice).
const APART_DAYS: std::ops::RangeInclusive<i32> = 14..=122;
/// Youngest growth age in days at the earlier one: weight falls in the first days of life (common practice).
const FROM_DAY: i32 = 14;
/// How far a gain may lie below the floor by the arithmetic alone, in grams.
const SLACK_GRAMS: f64 = 1e-6;

/// No gain, a loss, or less than the least expected gain (5th centile of the WHO 2009 one-month increments, 0 from 7 months),
/// against the latest earlier valid weight 14 to 122 days before. `None` = no such pair. `earlier` by day.
#[must_use]
pub fn slow_or_lost(child: &ReportChild, earlier: &[(NaiveDate, Weight)], (on, now): (NaiveDate, Weight)) -> Option<bool> {
    let (before_on, before) = earlier.iter().rfind(|(before, _)| APART_DAYS.contains(&days_between(*before, on)))?;
    let growth_day = |day: NaiveDate| days_between(child.born, day) - i32::from(child.correction_days);
    if growth_day(*before_on) < FROM_DAY {
        return None;
    }
    let gain = f64::from(now.grams()) - f64::from(before.grams());
    let floor = least_expected_gain_grams(child.sex, growth_day(*before_on), growth_day(on));
    Some(gain <= 0.0 || gain < floor - SLACK_GRAMS)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::Sex;
    use crate::report::sample::{child, d};

    fn grams(grams: u32) -> Weight {
        Weight::from_grams(grams).expect("a weight")
    }

    #[test]
    fn against_the_floor() {
        // Girl born 10 June: 94 days on 12 September, 122 on 10 October; floor 28 × 259 / 31 = 233.9 g.
        let baby = child(1, Sex::Female, "2025-06-10", "2025-06-20", 0);
        let earlier = [(d("2025-09-12"), grams(5_900))];
        let at = |now: u32| slow_or_lost(&baby, &earlier, (d("2025-10-10"), grams(now)));
        assert_eq!((at(6_000), at(6_133), at(6_134), at(5_900), at(5_800)), (Some(true), Some(true), Some(false), Some(true), Some(true)));
    }

    #[test]
    fn only_a_fitting_pair() {
        let baby = child(1, Sex::Female, "2025-06-10", "2025-06-20", 0);
        let at = |before: &str, on: &str| slow_or_lost(&baby, &[(d(before), grams(3_000))], (d(on), grams(9_000)));
        assert_eq!(at("2025-07-01", "2025-07-14"), None, "13 days apart");
        assert_eq!(at("2025-07-01", "2025-07-15"), Some(false));
        assert_eq!(at("2025-07-01", "2025-11-01"), None, "123 days apart");
        assert_eq!(at("2025-06-23", "2025-07-23"), None, "13 days old");
        let early = ReportChild { correction_days: 30, ..baby.clone() };
        assert_eq!(slow_or_lost(&early, &[(d("2025-07-10"), grams(3_000))], (d("2025-08-10"), grams(9_000))), None, "day 0 of growth age");
    }
}

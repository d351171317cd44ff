//! Weight gain over an interval: the least expected, and the z-score of a 1- or 2-month increment. It knows no visit and no rule.
//!
//! Source: WHO Child Growth Standards, growth velocity, 2009. The table of L, M and S inside the program is second-hand; three copies
//! of different origin agree (see `tables/README.md`).

use std::sync::LazyLock;

use super::lms::Lms;
use super::score::Z;
use crate::child::Sex;

/// Where the least expected gain comes from.
pub const FLOOR_SOURCE: &str = "WHO growth velocity standards 2009, 5th centile of 1-month weight increments";

/// One band of growth age with the least expected gain a band: the 5th centile of WHO's 1-month increments, in grams.
struct Band {
    from_day: i32,
    days: i32,
    boys_g: u16,
    girls_g: u16,
}

/// From 7 months the 5th centile is below 0 and nothing is expected.
const NOTHING_FROM_DAY: i32 = 213;

#[rustfmt::skip]
const BANDS: [Band; 7] = [
    Band { from_day: 0,   days: 28, boys_g: 460, girls_g: 446 },
    Band { from_day: 28,  days: 33, boys_g: 713, girls_g: 578 },
    Band { from_day: 61,  days: 30, boys_g: 446, girls_g: 369 },
    Band { from_day: 91,  days: 31, boys_g: 285, girls_g: 259 },
    Band { from_day: 122, days: 30, boys_g: 194, girls_g: 172 },
    Band { from_day: 152, days: 31, boys_g: 103, girls_g: 93 },
    Band { from_day: 183, days: 30, boys_g: 42,  girls_g: 37 },
];

/// The least weight gain expected from one growth age to a later one, in grams: for each band the days in it times its grams over
/// its length. A sum of 5th centiles is lenient over several months, as real longer-term 5th centiles are higher.
#[must_use]
pub fn least_expected_gain_grams(sex: Sex, from_growth_days: i32, to_growth_days: i32) -> f64 {
    if from_growth_days >= NOTHING_FROM_DAY {
        return 0.0;
    }
    let share = |band: &Band| {
        let days = to_growth_days.min(band.from_day + band.days) - from_growth_days.max(band.from_day);
        let grams = match sex {
            Sex::Female => band.girls_g,
            Sex::Male => band.boys_g,
        };
        f64::from(days.max(0)) * f64::from(grams) / f64::from(band.days)
    };
    BANDS.iter().map(share).sum()
}

/// An end of an interval of the velocity table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum IncrementMark {
    /// 28 days.
    FourWeeks,
    /// Whole months of 30.4375 days; 0 is birth.
    Months(u8),
}

impl IncrementMark {
    /// As a day of age.
    #[must_use]
    pub fn day(self) -> i32 {
        match self {
            Self::FourWeeks => 28,
            Self::Months(months) => (f64::from(months) * 30.4375).round() as i32,
        }
    }
}

/// One row of the velocity table: what children of one sex gain between two ages.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeightIncrement {
    /// 1 or 2 months.
    pub months: u8,
    /// Start of the interval.
    pub from: IncrementMark,
    /// End of the interval.
    pub to: IncrementMark,
    row: Lms,
    /// Added to each gain before the transformation, so that losses can be transformed too.
    added_g: f64,
}

impl WeightIncrement {
    /// z of a gain in grams (negative = loss); `None` for a loss so large that the formula has no answer.
    #[must_use]
    pub fn z(&self, gain_grams: i32) -> Option<Z> {
        let shifted = f64::from(gain_grams) + self.added_g;
        (shifted > 0.0).then(|| Z(self.row.z(shifted)))
    }

    /// The gain with this z, in grams.
    #[must_use]
    pub fn grams_at(&self, z: f64) -> f64 {
        self.row.at(z) - self.added_g
    }
}

/// How far a weighing may lie from the end of an interval of the table, in days (our own choice).
const NEAR_DAYS: i32 = 3;

/// The rows of the velocity table for one sex: 1-month intervals, then 2-month ones, each by age.
#[must_use]
pub fn weight_increments(sex: Sex) -> &'static [WeightIncrement] {
    let (girls, boys) = &*INCREMENTS;
    match sex {
        Sex::Female => girls,
        Sex::Male => boys,
    }
}

/// z of the weight gained between two growth ages, by the interval of the table whose ends both lie within 3 days of them
/// (the nearest, if several do); `None` if there is none.
#[must_use]
pub fn weight_increment_z(sex: Sex, from_growth_days: i32, to_growth_days: i32, gain_grams: i32) -> Option<Z> {
    let off = |row: &WeightIncrement| {
        let (start, end) = ((row.from.day() - from_growth_days).abs(), (row.to.day() - to_growth_days).abs());
        (start <= NEAR_DAYS && end <= NEAR_DAYS).then_some(start + end)
    };
    let (_, row) = weight_increments(sex).iter().filter_map(|row| Some((off(row)?, row))).min_by_key(|(off, _)| *off)?;
    row.z(gain_grams)
}

static INCREMENTS: LazyLock<(Vec<WeightIncrement>, Vec<WeightIncrement>)> = LazyLock::new(|| {
    let (mut girls, mut boys) = (Vec::new(), Vec::new());
    let text = include_str!("tables/who_weight_velocity_1_2_month.csv");
    for (number, line) in text.lines().enumerate().skip(1) {
        let (sex, row) = read_increment(line).unwrap_or_else(|| panic!("velocity table, line {}: {line}", number + 1));
        match sex {
            Sex::Female => girls.push(row),
            Sex::Male => boys.push(row),
        }
    }
    (girls, boys)
});

fn read_increment(line: &str) -> Option<(Sex, WeightIncrement)> {
    let cells: Vec<&str> = line.split(',').collect();
    let [sex, months, from, to, l, m, s, added] = cells.as_slice() else { return None };
    let mark = |text: &str| match text {
        "28d" => Some(IncrementMark::FourWeeks),
        months => months.parse().ok().map(IncrementMark::Months),
    };
    let row = Lms { l: l.parse().ok()?, m: m.parse().ok()?, s: s.parse().ok()? };
    let increment = WeightIncrement { months: months.parse().ok()?, from: mark(from)?, to: mark(to)?, row, added_g: added.parse().ok()? };
    Some((Sex::from_code(sex).ok()?, increment))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// z of the 5th centile.
    const FIFTH_CENTILE: f64 = -1.64485;

    #[test]
    fn the_velocity_table_reproduces_every_figure_of_the_floor() {
        for sex in Sex::ALL {
            for (band, row) in BANDS.iter().zip(weight_increments(*sex)) {
                let printed = if *sex == Sex::Male { band.boys_g } else { band.girls_g };
                assert_eq!((row.months, row.from.day(), row.to.day()), (1, band.from_day, band.from_day + band.days));
                assert_eq!(row.grams_at(FIFTH_CENTILE).round() as u16, printed, "{sex:?} from day {}", band.from_day);
            }
            // From 7 months the centile itself is a loss, and the floor nothing.
            for row in weight_increments(*sex).iter().filter(|row| row.months == 1).skip(BANDS.len()) {
                assert!(row.grams_at(FIFTH_CENTILE) < 0.0, "{sex:?} {:?}", row.from);
            }
        }
    }

    /// What WHO prints for boys in 1 month (2009, weight velocity, z-scores), in grams; a public copy of that table.
    const PRINTED_FOR_BOYS: &str = include_str!("../../../tests/data/growth/velocity_checks_boys_1_month.csv");

    #[test]
    fn the_velocity_table_gives_every_figure_that_who_prints_for_boys_in_one_month() {
        let mut compared = 0;
        for (line, row) in PRINTED_FOR_BOYS.lines().skip(1).zip(weight_increments(Sex::Male)) {
            for (z, printed) in (-3..=3).zip(line.split(',').skip(2)) {
                let printed: i32 = printed.parse().expect("grams");
                assert_eq!(row.grams_at(f64::from(z)).round() as i32, printed, "{line} at {z} SD");
                compared += 1;
            }
        }
        assert_eq!(compared, 84);
    }

    #[test]
    fn the_bands_follow_each_other() {
        for pair in BANDS.windows(2) {
            assert_eq!(pair[0].from_day + pair[0].days, pair[1].from_day);
        }
    }

    #[test]
    fn the_floor_sums_the_days_of_each_band() {
        let floor = least_expected_gain_grams;
        // A girl from 94 to 122 days: 28 days of the band 91-121.
        assert!((floor(Sex::Female, 94, 122) - 28.0 * 259.0 / 31.0).abs() < 1e-9);
        // A boy from 31 to 121 days: 30 of 33, 30 of 30 and 30 of 31 days, 1,370 g.
        assert!((floor(Sex::Male, 31, 121) - (30.0 * 713.0 / 33.0 + 446.0 + 30.0 * 285.0 / 31.0)).abs() < 1e-9);
        assert_eq!(floor(Sex::Male, 31, 121).round() as i32, 1370);
        assert_eq!(floor(Sex::Male, 213, 400), 0.0);
        assert_eq!(floor(Sex::Male, 0, 28), 460.0);
        assert_eq!(floor(Sex::Male, 27, 29), 460.0 / 28.0 + 713.0 / 33.0);
        assert_eq!(floor(Sex::Male, -10, 28), 460.0);
        assert_eq!(floor(Sex::Male, 40, 40), 0.0);
    }

    #[test]
    fn the_velocity_table_is_whole() {
        for sex in Sex::ALL {
            let rows = weight_increments(*sex);
            assert_eq!((rows.iter().filter(|r| r.months == 1).count(), rows.iter().filter(|r| r.months == 2).count()), (12, 23));
            for row in rows {
                let days = row.to.day() - row.from.day();
                assert!((i32::from(row.months) * 28..=i32::from(row.months) * 30 + 3).contains(&days), "{:?}–{:?}", row.from, row.to);
                let median = row.grams_at(0.0).round() as i32;
                assert!(row.z(median).is_some_and(|z| z.value().abs() < 0.01));
            }
        }
    }

    #[test]
    fn the_interval_is_the_nearest_one_close_enough() {
        let z = |from, to| weight_increment_z(Sex::Male, from, to, 600);
        assert_eq!(z(61, 91), z(63, 90));
        assert_ne!(z(61, 91), z(91, 122));
        assert_ne!(z(61, 122), z(61, 91));
        assert_eq!(z(65, 91), None);
        assert_eq!(z(61, 100), None);
        assert_eq!(weight_increment_z(Sex::Male, 61, 91, -400), None);
        assert!(weight_increment_z(Sex::Male, 61, 91, -399).is_some());
    }
}

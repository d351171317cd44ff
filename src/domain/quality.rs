//! How well measuring goes, to see where a scale, a board or a hand needs help: last digits, repeats, gaps, values outside the limits,
//! how late records arrive. It says what to look at again and judges nobody; it knows no names.

pub mod figures;

use chrono::NaiveDate;

use crate::calendar::days_between;
use crate::child::Sex;
use crate::growth::ZHundredths;
use crate::ids::ChildId;
use crate::units::Length;
use crate::units::Muac;
use crate::units::Weight;

/// Fewer measurements than this are not judged (our own choice: with fewer, the index is mostly chance).
pub const LEAST: usize = 50;
/// A digit index above this asks to look again, in percent (our own choice; the index itself: WHO and UNICEF, Recommendations for data
/// collection, analysis and reporting on anthropometric indicators, 2019, from memory).
pub const UNEVEN_ABOVE: f64 = 20.0;
/// More than this share outside the plausible limits is poor, in percent (WHO and UNICEF 2019, as above, from memory).
pub const OUTSIDE_ABOVE: f64 = 1.0;
/// More than this share of weights that repeat the one before exactly asks to look again, in percent (our own choice).
pub const REPEATED_ABOVE: f64 = 5.0;
/// Less than this share of visits at which a thing was measured asks to look again, in percent (common practice).
pub const COMPLETE_FROM: f64 = 90.0;

/// A visit at home or clinic as far as measuring goes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measured {
    /// Of whom.
    pub child: ChildId,
    /// Sex.
    pub sex: Sex,
    /// The day of the month of birth, where it is known.
    pub birth_day: Option<u32>,
    /// Completed months at the visit.
    pub age_months: u32,
    /// Day of the visit.
    pub on: NaiveDate,
    /// Day on which the record arrived.
    pub arrived_on: NaiveDate,
    /// Weight.
    pub weight: Option<Weight>,
    /// The child's weight at the visit before, if there is one.
    pub weight_before: Option<Weight>,
    /// Length or height.
    pub length: Option<Length>,
    /// Arm, where it is measured: from 6 months.
    pub muac: Option<Muac>,
    /// The arm is measured at this age.
    pub arm_due: bool,
    /// Weight for age.
    pub waz: Option<ZHundredths>,
    /// Length or height for age.
    pub laz: Option<ZHundredths>,
    /// Weight for length or height.
    pub wlz: Option<ZHundredths>,
    /// The weight jumped from the line: a second weighing was asked for.
    pub jump: bool,
    /// A z-score lies outside the plausible limits and was not measured again.
    pub outside: bool,
    /// The record was corrected later.
    pub corrected: bool,
}

/// What can be said of a share or an index.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Said {
    /// Fewer than [`LEAST`] measurements.
    TooFew,
    /// As it should be.
    Even(f64),
    /// Worth looking at together.
    LookAgain(f64),
}

/// Something that is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Item {
    /// Last digit of weights.
    DigitsWeight,
    /// Last digit of lengths.
    DigitsLength,
    /// Last digit of arms.
    DigitsArm,
    /// Visits with a weight.
    CompleteWeight,
    /// Visits with a length.
    CompleteLength,
    /// Visits from 6 months on with an arm.
    CompleteArm,
    /// Values outside the plausible limits.
    Outside,
    /// Weights that repeat the one before.
    Repeated,
}

impl Item {
    /// All, in the order shown.
    pub const ALL: [Self; 8] = [
        Self::DigitsWeight,
        Self::DigitsLength,
        Self::DigitsArm,
        Self::CompleteWeight,
        Self::CompleteLength,
        Self::CompleteArm,
        Self::Outside,
        Self::Repeated,
    ];

    /// Its permanent code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::DigitsWeight => "digits_weight",
            Self::DigitsLength => "digits_length",
            Self::DigitsArm => "digits_arm",
            Self::CompleteWeight => "complete_weight",
            Self::CompleteLength => "complete_length",
            Self::CompleteArm => "complete_arm",
            Self::Outside => "outside",
            Self::Repeated => "repeated",
        }
    }

    /// From where on it asks to look again.
    #[must_use]
    pub const fn limit(self) -> Limit {
        match self {
            Self::DigitsWeight | Self::DigitsLength | Self::DigitsArm => Limit::Above(UNEVEN_ABOVE),
            Self::CompleteWeight | Self::CompleteLength | Self::CompleteArm => Limit::Below(COMPLETE_FROM),
            Self::Outside => Limit::Above(OUTSIDE_ABOVE),
            Self::Repeated => Limit::Above(REPEATED_ABOVE),
        }
    }
}

/// From where on something asks to look again, in percent or of the index of last digits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Limit {
    /// Above it.
    Above(f64),
    /// Below it.
    Below(f64),
}

impl Limit {
    fn judge(self, value: f64) -> Said {
        let again = match self {
            Self::Above(limit) => value > limit,
            Self::Below(limit) => value < limit,
        };
        if again { Said::LookAgain(value) } else { Said::Even(value) }
    }
}

/// What is said of somebody's visits.
#[derive(Debug, Clone, PartialEq)]
pub struct Quality {
    /// Visits looked at.
    pub visits: usize,
    /// Each item.
    pub items: Vec<(Item, Said)>,
    /// Middle of the days from visit to arrival, by nearest rank; none without visits.
    pub arrival_days: Option<i32>,
    /// Records corrected later.
    pub corrected: usize,
}

/// Looks at visits.
#[must_use]
pub fn quality(visits: &[Measured]) -> Quality {
    let weights: Vec<u32> = visits.iter().filter_map(|v| v.weight.map(Weight::grams)).collect();
    let lengths: Vec<u32> = visits.iter().filter_map(|v| v.length.map(|l| u32::from(l.mm()))).collect();
    let arms: Vec<u32> = visits.iter().filter_map(|v| v.muac.map(|m| u32::from(m.mm()))).collect();
    let arm_due = visits.iter().filter(|v| v.arm_due).count();
    let arm_done = visits.iter().filter(|v| v.arm_due && v.muac.is_some()).count();
    let pairs: Vec<(Weight, Weight)> = visits.iter().filter_map(|v| v.weight.zip(v.weight_before)).collect();
    let repeated = pairs.iter().filter(|(now, before)| now == before).count();
    let measured = visits.iter().filter(|v| v.weight.is_some() || v.length.is_some()).count();
    let outside = visits.iter().filter(|v| v.outside).count();
    let digits = |values: &[u32], unit: u32| digit_index(values, unit).filter(|_| values.len() >= LEAST);
    let share = |n: usize, of: usize| (of >= LEAST).then(|| percent(n, of));
    let items = Item::ALL
        .into_iter()
        .map(|item| {
            let value = match item {
                Item::DigitsWeight => digits(&weights, scale_division(&weights)),
                Item::DigitsLength => digits(&lengths, 1),
                Item::DigitsArm => digits(&arms, 1),
                Item::CompleteWeight => share(weights.len(), visits.len()),
                Item::CompleteLength => share(lengths.len(), visits.len()),
                Item::CompleteArm => share(arm_done, arm_due),
                Item::Outside => share(outside, measured),
                Item::Repeated => share(repeated, pairs.len()),
            };
            (item, value.map_or(Said::TooFew, |value| item.limit().judge(value)))
        })
        .collect();
    let mut delays: Vec<i32> = visits.iter().map(|v| days_between(v.on, v.arrived_on).max(0)).collect();
    delays.sort_unstable();
    let middle = delays.len().div_ceil(2).checked_sub(1).and_then(|at| delays.get(at)).copied();
    Quality { visits: visits.len(), items, arrival_days: middle, corrected: visits.iter().filter(|v| v.corrected).count() }
}

fn percent(n: usize, of: usize) -> f64 {
    // Counts of visits are far below what a float holds exactly.
    #[expect(clippy::cast_precision_loss, reason = "counts of visits")]
    let (n, of) = (n as f64, of as f64);
    100.0 * n / of
}

/// What a scale shows: 100 g if every weight is a multiple of it, else 10 g. The last digit is that of this step.
fn scale_division(grams: &[u32]) -> u32 {
    if grams.iter().all(|g| g % 100 == 0) { 100 } else { 10 }
}

/// Index of dissimilarity of last digits: half the sum of the distances of their shares from a tenth each, in percent, 0 to 90.
/// `unit` is the step whose digit counts. `None` without values. Source: WHO and UNICEF 2019, as [`UNEVEN_ABOVE`].
#[must_use]
pub fn digit_index(values: &[u32], unit: u32) -> Option<f64> {
    if values.is_empty() || unit == 0 {
        return None;
    }
    let mut counts = [0_usize; 10];
    for value in values {
        if let Some(count) = counts.get_mut(usize::try_from(value / unit % 10).unwrap_or(0)) {
            *count += 1;
        }
    }
    Some(counts.iter().map(|count| (percent(*count, values.len()) - 10.0).abs()).sum::<f64>() / 2.0)
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    fn values(counts: [usize; 10]) -> Vec<u32> {
        (0_u32..10).zip(counts).flat_map(|(digit, count)| std::iter::repeat_n(650 + digit, count)).collect()
    }

    /// Worked by hand: half the sum of |share − 10 %|.
    #[test]
    fn the_index_of_last_digits_is_that_worked_by_hand() {
        let near = |counts: [usize; 10], expected: f64| {
            let index = digit_index(&values(counts), 1).expect("values");
            assert!((index - expected).abs() < 1e-9, "{counts:?}: {index}");
        };
        near([6, 5, 4, 6, 5, 5, 6, 4, 5, 4], 6.0);
        near([30, 1, 2, 1, 2, 18, 1, 2, 1, 2], 60.0);
        near([50, 0, 0, 0, 0, 0, 0, 0, 0, 0], 90.0);
        assert_eq!(digit_index(&[], 1), None);
    }

    fn day(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    pub(crate) fn visit(grams: u32) -> Measured {
        Measured {
            child: ChildId(1),
            sex: Sex::Female,
            birth_day: Some(9),
            age_months: 8,
            on: day("2026-11-02"),
            arrived_on: day("2026-11-02"),
            weight: Weight::from_grams(grams).ok(),
            weight_before: Weight::from_grams(7_000).ok(),
            length: None,
            muac: None,
            arm_due: false,
            waz: None,
            laz: None,
            wlz: None,
            jump: false,
            outside: false,
            corrected: false,
        }
    }

    fn said(visits: &[Measured], item: Item) -> Said {
        quality(visits).items.into_iter().find(|(of, _)| *of == item).expect("every item").1
    }

    #[test]
    fn fewer_than_fifty_are_not_judged_and_fifty_are() {
        let even = |n: u32| (0..n).map(|at| visit(6_000 + at * 10)).collect::<Vec<_>>();
        assert_eq!(said(&even(49), Item::DigitsWeight), Said::TooFew);
        assert_eq!(said(&even(50), Item::DigitsWeight), Said::Even(0.0));
        assert_eq!(said(&even(50), Item::CompleteLength), Said::LookAgain(0.0));
        assert_eq!(said(&even(50), Item::CompleteWeight), Said::Even(100.0));
        assert_eq!(said(&even(50), Item::CompleteArm), Said::TooFew, "no child was old enough");
    }

    #[test]
    fn each_limit_is_the_last_that_is_even() {
        // A scale that shows 100 g: its digit is that of 100 g.
        let coarse: Vec<Measured> = (0..50).map(|at| visit(6_000 + at % 10 * 100)).collect();
        assert_eq!(said(&coarse, Item::DigitsWeight), Said::Even(0.0));
        // 3 of 60 repeat: 5.0 %; 4 of 60: more.
        let repeats = |n: u32| (0..60).map(|at| if at < n { visit(7_000) } else { visit(6_000 + at * 10) }).collect::<Vec<_>>();
        assert_eq!(said(&repeats(3), Item::Repeated), Said::Even(5.0));
        assert!(matches!(said(&repeats(4), Item::Repeated), Said::LookAgain(_)));
        // 1 of 100 outside is the limit.
        let outside = |n: usize| {
            (0..100).map(|at| Measured { outside: at < n, ..visit(6_000 + u32::try_from(at).expect("small") * 10) }).collect::<Vec<_>>()
        };
        assert_eq!(said(&outside(1), Item::Outside), Said::Even(1.0));
        assert_eq!(said(&outside(2), Item::Outside), Said::LookAgain(2.0));
        // 45 of 50 weighed: 90 %; 44: less.
        let weighed =
            |n: usize| (0..50).map(|at| if at < n { visit(6_010) } else { Measured { weight: None, ..visit(6_010) } }).collect::<Vec<_>>();
        assert_eq!(said(&weighed(45), Item::CompleteWeight), Said::Even(90.0));
        assert_eq!(said(&weighed(44), Item::CompleteWeight), Said::LookAgain(88.0));
    }

    #[test]
    fn the_middle_delay_is_by_nearest_rank() {
        let late = |days: u64| Measured { arrived_on: day("2026-11-02") + chrono::Days::new(days), ..visit(6_000) };
        assert_eq!(quality(&[late(9), late(0), late(2), late(4)]).arrival_days, Some(2));
        assert_eq!(quality(&[]).arrival_days, None);
    }
}

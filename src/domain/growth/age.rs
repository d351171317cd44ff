//! Ages of children born early: how much is corrected, for whom and until when. It knows no measurement.

use chrono::NaiveDate;

use crate::calendar::{add_days, completed_months, days_between};
use crate::child::Child;

/// A pregnancy at term, in days: 40 weeks. Correction brings a child born early up to it.
pub const TERM_DAYS: u16 = 280;

/// Born before this many days of pregnancy is born early: 37 weeks and 0 days (WHO definition of preterm birth).
const EARLY_BEFORE_DAYS: u16 = 259;

/// Ages are corrected below this chronological age in completed months (common practice).
const CORRECTED_BELOW_MONTHS: u32 = 24;

/// The age that weight and length for age are read at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GrowthAge {
    /// In days; negative before the due date.
    pub days: i32,
    /// By how many days it is less than the chronological age; 0 = not corrected.
    pub corrected_by_days: u16,
}

/// By how many days the ages of this child are corrected while it is young enough; 0 if it was not born early or nobody knows.
#[must_use]
pub const fn correction_days(child: &Child) -> u16 {
    match child.gestation_days {
        Some(days) if days < EARLY_BEFORE_DAYS => TERM_DAYS - days,
        _ => 0,
    }
}

/// The correction at a chronological age: none from 24 completed months on.
const fn correction_at(child: &Child, months: Option<u32>) -> u16 {
    match months {
        Some(CORRECTED_BELOW_MONTHS..) => 0,
        _ => correction_days(child),
    }
}

/// Every age of a child on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AgesOn {
    /// Chronological, in days; negative before birth.
    pub days: i32,
    /// Chronological, in completed months; `None` before birth.
    pub months: Option<u32>,
    /// Growth age.
    pub growth: GrowthAge,
    /// Stage age in completed months; `None` before the due date.
    pub stage_months: Option<u32>,
}

/// Every age on a day.
#[must_use]
pub fn ages_on(child: &Child, on: NaiveDate) -> AgesOn {
    let (days, months) = (days_between(child.born, on), completed_months(child.born, on));
    let corrected_by_days = correction_at(child, months);
    let correction = i32::from(corrected_by_days);
    let stage_months = if correction == 0 { months } else { completed_months(add_days(child.born, correction), on) };
    AgesOn { days, months, growth: GrowthAge { days: days - correction, corrected_by_days }, stage_months }
}

/// The birth date that growth age and stage age are counted from on a day: the due date for a child born early and
/// below 24 chronological months, else the birth date.
#[must_use]
pub fn corrected_birth_date(child: &Child, on: NaiveDate) -> NaiveDate {
    add_days(child.born, i32::from(correction_at(child, completed_months(child.born, on))))
}

/// The growth age on a day.
#[must_use]
pub fn growth_age(child: &Child, on: NaiveDate) -> GrowthAge {
    ages_on(child, on).growth
}

/// The stage age in completed months on a day; `None` before the due date.
#[must_use]
pub fn stage_months(child: &Child, on: NaiveDate) -> Option<u32> {
    ages_on(child, on).stage_months
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::{ChildStatus, Sex};

    fn day(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn born(on: &str, gestation_days: Option<u16>) -> Child {
        Child {
            sex: Sex::Female,
            born: day(on),
            birth_day_known: true,
            gestation_days,
            birth_weight: None,
            registered_on: day(on),
            ever_breastfed: None,
            severe_eczema: None,
            known_food_allergy: None,
            status: ChildStatus::Active,
            looks_like_another: false,
        }
    }

    #[test]
    fn born_early_is_below_37_weeks_and_known() {
        let on = day("2025-10-20");
        for (gestation, corrected) in [(Some(258), 22), (Some(259), 0), (Some(280), 0), (Some(294), 0), (Some(224), 56), (None, 0)] {
            let age = growth_age(&born("2025-04-01", gestation), on);
            assert_eq!((age.days, age.corrected_by_days), (202 - i32::from(corrected), corrected), "{gestation:?}");
        }
    }

    #[test]
    fn a_girl_born_at_32_weeks_is_eight_weeks_younger_by_growth() {
        let child = born("2025-04-01", Some(224));
        let on = day("2025-10-20");
        assert_eq!(corrected_birth_date(&child, on), day("2025-05-27"));
        assert_eq!(growth_age(&child, on).days, 146);
        assert_eq!(stage_months(&child, on), Some(4));
    }

    #[test]
    fn before_the_due_date_there_is_no_stage_age() {
        let child = born("2025-04-01", Some(224));
        assert_eq!((growth_age(&child, day("2025-05-26")).days, stage_months(&child, day("2025-05-26"))), (-1, None));
        assert_eq!((growth_age(&child, day("2025-05-27")).days, stage_months(&child, day("2025-05-27"))), (0, Some(0)));
    }

    #[test]
    fn from_24_chronological_months_nothing_is_corrected() {
        let child = born("2023-11-30", Some(224));
        let (before, from) = (day("2025-11-29"), day("2025-11-30"));
        assert_eq!(growth_age(&child, before), GrowthAge { days: 730 - 56, corrected_by_days: 56 });
        assert_eq!(growth_age(&child, from), GrowthAge { days: 731, corrected_by_days: 0 });
        assert_eq!((stage_months(&child, before), stage_months(&child, from)), (Some(22), Some(24)));
        assert_eq!(corrected_birth_date(&child, from), child.born);
    }
}

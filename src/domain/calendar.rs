//! Ages and calendar months: the only place that knows how months are counted.

use chrono::{Datelike, Days, Months, NaiveDate};

/// Whole days from `born` to `on`; negative before birth.
#[must_use]
pub fn days_between(born: NaiveDate, on: NaiveDate) -> i32 {
    // Any two dates chrono can hold are less than 2^31 days apart.
    on.num_days_from_ce() - born.num_days_from_ce()
}

/// Calendar months completed since `born`, the day clamped to the last day of a short month
/// (born 31 August: 6 completed months on 28 February). `None` before birth.
#[must_use]
pub fn completed_months(born: NaiveDate, on: NaiveDate) -> Option<u32> {
    if on < born {
        return None;
    }
    let whole = (on.year() - born.year()) * 12 + on.month0().cast_signed() - born.month0().cast_signed();
    let whole = u32::try_from(whole).unwrap_or(0);
    // The day of birth has come in this month, or the month is too short to have it and is at its last day.
    let complete = born.day() <= on.day() || is_last_of_month(on);
    Some(if complete { whole } else { whole.saturating_sub(1) })
}

fn is_last_of_month(day: NaiveDate) -> bool {
    day.succ_opt().is_none_or(|next| next.day() == 1)
}

/// The date `months` calendar months after `date`, the day clamped to the last day of a short month.
#[must_use]
pub fn add_months(date: NaiveDate, months: u32) -> NaiveDate {
    date.checked_add_months(Months::new(months)).unwrap_or(NaiveDate::MAX)
}

/// The date `days` later (earlier if negative).
#[must_use]
pub fn add_days(date: NaiveDate, days: i32) -> NaiveDate {
    let step = Days::new(u64::from(days.unsigned_abs()));
    if days >= 0 { date.checked_add_days(step).unwrap_or(NaiveDate::MAX) } else { date.checked_sub_days(step).unwrap_or(NaiveDate::MIN) }
}

/// A calendar month, e.g. of a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Month {
    year: i32,
    month: u32,
}

impl Month {
    /// The month with this year and number (1–12), if there is one.
    #[must_use]
    pub fn new(year: i32, month: u32) -> Option<Self> {
        NaiveDate::from_ymd_opt(year, month, 1).map(|_| Self { year, month })
    }

    /// The month that holds `date`.
    #[must_use]
    pub fn of(date: NaiveDate) -> Self {
        Self { year: date.year(), month: date.month() }
    }

    /// Reads `2026-11`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (year, month) = text.split_once('-')?;
        if year.len() != 4 || month.len() != 2 {
            return None;
        }
        Self::new(year.parse().ok()?, month.parse().ok()?)
    }

    /// The year.
    #[must_use]
    pub const fn year(self) -> i32 {
        self.year
    }

    /// The number of the month, 1–12.
    #[must_use]
    pub const fn number(self) -> u32 {
        self.month
    }

    /// Its first day.
    #[must_use]
    pub fn first(self) -> NaiveDate {
        NaiveDate::from_ymd_opt(self.year, self.month, 1).unwrap_or(NaiveDate::MIN)
    }

    /// Its last day.
    #[must_use]
    pub fn last(self) -> NaiveDate {
        add_days(self.next().first(), -1)
    }

    /// The month after it.
    #[must_use]
    pub const fn next(self) -> Self {
        if self.month == 12 { Self { year: self.year + 1, month: 1 } } else { Self { year: self.year, month: self.month + 1 } }
    }

    /// The month before it.
    #[must_use]
    pub const fn previous(self) -> Self {
        if self.month == 1 { Self { year: self.year - 1, month: 12 } } else { Self { year: self.year, month: self.month - 1 } }
    }

    /// Whether the date lies in it.
    #[must_use]
    pub fn contains(self, date: NaiveDate) -> bool {
        Self::of(date) == self
    }
}

impl std::fmt::Display for Month {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}", self.year, self.month)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    #[test]
    fn months_clamp_to_the_end_of_short_months() {
        // Feeding protocol §1.2: born 31 August, 6 completed months on 28 February.
        for (born, on, months) in [
            ("2025-08-31", "2026-02-27", Some(5)),
            ("2025-08-31", "2026-02-28", Some(6)),
            ("2024-02-29", "2025-02-28", Some(12)),
            ("2024-02-29", "2025-02-27", Some(11)),
            ("2025-03-14", "2025-10-02", Some(6)),
            ("2025-03-14", "2025-03-14", Some(0)),
            ("2025-03-14", "2025-03-13", None),
        ] {
            assert_eq!(completed_months(d(born), d(on)), months, "born {born}, on {on}");
        }
    }

    #[test]
    fn months_later_is_the_same_day_or_the_last_of_a_short_month() {
        for (date, months, later) in [
            ("2025-08-31", 0, "2025-08-31"),
            ("2025-08-31", 1, "2025-09-30"),
            ("2025-08-31", 6, "2026-02-28"),
            ("2023-08-31", 6, "2024-02-29"),
            ("2024-02-29", 12, "2025-02-28"),
            ("2024-12-15", 1, "2025-01-15"),
        ] {
            assert_eq!(add_months(d(date), months), d(later), "{months} months after {date}");
        }
        assert_eq!(add_months(d("2025-01-01"), u32::MAX), NaiveDate::MAX);
    }

    #[test]
    fn a_month_knows_its_days() {
        let feb = Month::parse("2024-02").expect("a month");
        assert_eq!((feb.first(), feb.last()), (d("2024-02-01"), d("2024-02-29")));
        assert_eq!(feb.previous().to_string(), "2024-01");
        assert_eq!(Month::parse("2024-12").map(|m| m.next().to_string()), Some("2025-01".to_owned()));
        assert_eq!(Month::parse("2024-13"), None);
        assert_eq!(Month::parse("24-1"), None);
    }
}

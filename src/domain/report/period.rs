//! The time that a report is about: a month, or a quarter or year counted anew from the rows of all its months.
//! It knows no today.

use std::fmt;

use chrono::NaiveDate;

use crate::calendar::Month;

/// A calendar month, quarter or year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Period {
    /// A month.
    Month(Month),
    /// Three months from January, April, July or October on.
    Quarter(Quarter),
    /// Twelve months from this January on.
    Year(Month),
}

/// A calendar quarter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Quarter {
    first: Month,
}

impl Quarter {
    /// The quarter that holds a month.
    #[must_use]
    pub fn of(month: Month) -> Self {
        let back = (month.number() - 1) % 3;
        Self { first: (0..back).fold(month, |month, _| month.previous()) }
    }

    /// Its number, 1–4.
    #[must_use]
    pub const fn number(self) -> u32 {
        self.first.number().div_ceil(3)
    }
}

impl Period {
    /// The quarter that holds a month.
    #[must_use]
    pub fn quarter_of(month: Month) -> Self {
        Self::Quarter(Quarter::of(month))
    }

    /// The year that holds a month.
    #[must_use]
    pub fn year_of(month: Month) -> Self {
        Self::Year((1..month.number()).fold(month, |month, _| month.previous()))
    }

    /// Reads `2026-10`, `2026-Q3` or `2026`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let january = |year: &str| Month::parse(&format!("{year}-01"));
        match text.split_once("-Q") {
            Some((year, number @ ("1" | "2" | "3" | "4"))) => {
                let number: u32 = number.parse().ok()?;
                january(year).map(|january| Self::quarter_of((1..3 * number).fold(january, |month, _| month.next())))
            }
            Some(_) => None,
            None if text.len() == 4 => january(text).map(Self::Year),
            None => Month::parse(text).map(Self::Month),
        }
    }

    /// The year in which it lies.
    #[must_use]
    pub const fn year(self) -> i32 {
        self.first_month().year()
    }

    /// Its first month.
    #[must_use]
    pub const fn first_month(self) -> Month {
        match self {
            Self::Month(month) | Self::Year(month) | Self::Quarter(Quarter { first: month }) => month,
        }
    }

    /// Its months in order.
    pub fn months(self) -> impl Iterator<Item = Month> {
        let count = match self {
            Self::Month(_) => 1,
            Self::Quarter(_) => 3,
            Self::Year(_) => 12,
        };
        std::iter::successors(Some(self.first_month()), |month| Some(month.next())).take(count)
    }

    /// Its last month.
    #[must_use]
    pub fn last_month(self) -> Month {
        self.months().last().unwrap_or(self.first_month())
    }

    /// Its first day.
    #[must_use]
    pub fn first(self) -> NaiveDate {
        self.first_month().first()
    }

    /// Its last day.
    #[must_use]
    pub fn last(self) -> NaiveDate {
        self.last_month().last()
    }

    /// Whether the day lies in it.
    #[must_use]
    pub fn contains(self, day: NaiveDate) -> bool {
        (self.first()..=self.last()).contains(&day)
    }

    /// The one of the same length before it.
    #[must_use]
    pub fn previous(self) -> Self {
        let before = self.first_month().previous();
        match self {
            Self::Month(_) => Self::Month(before),
            Self::Quarter(_) => Self::quarter_of(before),
            Self::Year(_) => Self::year_of(before),
        }
    }
}

impl fmt::Display for Period {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Month(month) => month.fmt(f),
            Self::Quarter(quarter) => write!(f, "{:04}-Q{}", self.year(), quarter.number()),
            Self::Year(_) => write!(f, "{:04}", self.year()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_period_is_written_as_it_is_read() {
        for (text, first, last) in [
            ("2026-10", "2026-10-01", "2026-10-31"),
            ("2026-Q1", "2026-01-01", "2026-03-31"),
            ("2026-Q3", "2026-07-01", "2026-09-30"),
            ("2028-02", "2028-02-01", "2028-02-29"),
            ("2026", "2026-01-01", "2026-12-31"),
        ] {
            let period = Period::parse(text).unwrap_or_else(|| panic!("{text}"));
            assert_eq!(
                (period.to_string().as_str(), period.first().to_string(), period.last().to_string()),
                (text, first.into(), last.into())
            );
        }
        for text in ["2026-13", "2026-Q0", "2026-Q5", "2026-Q", "26", "2026-", "", "20261", "-2026", "2026-Q1-", "2026-1"] {
            assert_eq!(Period::parse(text), None, "{text:?}");
        }
    }

    #[test]
    fn a_month_lies_in_its_quarter_and_year() {
        let month = Month::parse("2026-11").expect("a month");
        assert_eq!(Period::quarter_of(month).to_string(), "2026-Q4");
        assert_eq!(Period::year_of(month).to_string(), "2026");
        let months: Vec<String> = Period::quarter_of(month).months().map(|month| month.to_string()).collect();
        assert_eq!(months, ["2026-10", "2026-11", "2026-12"]);
        assert!(Period::quarter_of(month).contains(month.last()));
        for (text, before) in [("2026-01", "2025-12"), ("2026-Q1", "2025-Q4"), ("2026", "2025")] {
            assert_eq!(Period::parse(text).expect("a period").previous().to_string(), before);
        }
    }
}

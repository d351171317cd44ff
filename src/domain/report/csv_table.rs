//! A typed table of a release: what stands in each cell, before it becomes text. It knows no file and no screen.

use chrono::{NaiveDate, NaiveDateTime};

use crate::report::period::Period;
use crate::report::suppress::Reason;

/// The version of the definitions of all columns. It changes whenever a figure would be counted or told
/// differently.
pub const DEFINITIONS_VERSION: &str = "2";

/// The code of a total over a split.
pub const ALL: &str = "all";

/// The first columns of every file.
const FIRST: [&str; 7] = ["programme", "period", "area", "protocol_id", "protocol_version", "generated_at", "definitions_version"];

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cell {
    /// A code or another text.
    Text(String),
    /// A count.
    Count(u64),
    /// A percentage, in tenths of a percent.
    Percent(u32),
    /// A day.
    Date(NaiveDate),
    /// An instant, UTC.
    Instant(NaiveDateTime),
    /// Private.
    Withheld(Reason),
    /// Nothing to say: nobody could be counted here.
    Empty,
}

impl Cell {
    const PRIVATE: Self = Self::Withheld(Reason::Private);

    /// A count as the release shows it.
    #[must_use]
    pub const fn shown(count: u64, withheld: bool) -> Self {
        if withheld { Self::PRIVATE } else { Self::Count(count) }
    }

    /// A text.
    #[must_use]
    pub fn text(text: &str) -> Self {
        Self::Text(text.to_owned())
    }

    /// The share of `n` in `den`: withheld with either of them and for fewer than 10 (our own choice: one child more or less
    /// would move it by more than ten points); empty when there is nobody. One decimal, halves away from nought.
    #[must_use]
    pub fn percent(n: &Self, den: &Self) -> Self {
        match (n, den) {
            (Self::Withheld(_), _) | (_, Self::Withheld(_)) => Self::PRIVATE,
            (Self::Count(n), Self::Count(den)) => match *den {
                0 => Self::Empty,
                1..10 => Self::Withheld(Reason::Few),
                den => u32::try_from((u128::from(*n) * 2000 + u128::from(den)) / (2 * u128::from(den))).map_or(Self::Empty, Self::Percent),
            },
            _ => Self::Empty,
        }
    }

    /// The sum of two shown counts; withheld when one of them is.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        match (self, other) {
            (Self::Withheld(_), _) | (_, Self::Withheld(_)) => Self::PRIVATE,
            (Self::Count(a), Self::Count(b)) => Self::Count(a + b),
            _ => Self::Empty,
        }
    }

    /// What is left of a shown count; withheld when one of them is.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        match (self, other) {
            (Self::Withheld(_), _) | (_, Self::Withheld(_)) => Self::PRIVATE,
            (Self::Count(a), Self::Count(b)) => Self::Count(a.saturating_sub(*b)),
            _ => Self::Empty,
        }
    }
}

/// What is the same in every row of a release.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Release {
    /// The programme's name or code.
    pub programme: String,
    /// The month, quarter or year.
    pub period: Period,
    /// The protocol in force at the end of the month.
    pub protocol_id: String,
    /// Its version.
    pub protocol_version: String,
    /// The instant of release of this revision, UTC, whole seconds. The same for a file made twice.
    pub generated_at: NaiveDateTime,
}

/// One file of a release.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Its permanent name, without ending.
    pub name: &'static str,
    /// Its header row.
    pub columns: Vec<&'static str>,
    /// Its rows, as long as the header.
    pub rows: Vec<Vec<Cell>>,
}

impl Table {
    /// An empty table: the first columns of every file, its own, and `withheld`.
    #[must_use]
    pub fn new(name: &'static str, own: &[&'static str]) -> Self {
        Self { name, columns: [&FIRST[..], own, &["withheld"]].concat(), rows: Vec::new() }
    }

    /// Adds a row with the table's own cells; says in the last column which are withheld and why.
    pub fn push(&mut self, release: &Release, area: &str, own: Vec<Cell>) {
        let mut row = vec![
            Cell::text(&release.programme),
            Cell::Text(release.period.to_string()),
            Cell::text(area),
            Cell::text(&release.protocol_id),
            Cell::text(&release.protocol_version),
            Cell::Instant(release.generated_at),
            Cell::text(DEFINITIONS_VERSION),
        ];
        row.extend(own);
        let withheld: Vec<String> = self
            .columns
            .iter()
            .zip(&row)
            .filter_map(|(column, cell)| match cell {
                Cell::Withheld(reason) => Some(format!("{column}:{}", reason.code())),
                _ => None,
            })
            .collect();
        row.push(if withheld.is_empty() { Cell::Empty } else { Cell::Text(withheld.join(";")) });
        self.rows.push(row);
    }

    /// The place of a column.
    #[must_use]
    pub fn column(&self, name: &str) -> Option<usize> {
        self.columns.iter().position(|column| *column == name)
    }

    /// The cell of a row under a column's name.
    #[must_use]
    pub fn cell<'a>(&self, row: &'a [Cell], name: &str) -> Option<&'a Cell> {
        self.column(name).and_then(|at| row.get(at))
    }

    /// The first row whose cells under these columns hold these codes.
    #[must_use]
    pub fn find(&self, wanted: &[(&str, &str)]) -> Option<&[Cell]> {
        let is = |row: &[Cell], name: &str, code: &str| matches!(self.cell(row, name), Some(Cell::Text(text)) if text == code);
        self.rows.iter().find(|row| wanted.iter().all(|(name, code)| is(row, name, code))).map(Vec::as_slice)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentages_round_half_away_from_nought() {
        for (n, den, tenths) in [(12, 45, 267), (1, 16, 63), (0, 10, 0), (10, 10, 1000), (7, 21, 333)] {
            assert_eq!(Cell::percent(&Cell::Count(n), &Cell::Count(den)), Cell::Percent(tenths), "{n} of {den}");
        }
    }

    #[test]
    fn a_percentage_goes_with_its_counts() {
        let hidden = Cell::Withheld(Reason::Private);
        assert_eq!(Cell::percent(&hidden, &Cell::Count(21)), hidden);
        assert_eq!(Cell::percent(&Cell::Count(5), &Cell::Count(9)), Cell::Withheld(Reason::Few));
        assert_eq!(Cell::percent(&Cell::Count(0), &Cell::Count(0)), Cell::Empty);
    }
}

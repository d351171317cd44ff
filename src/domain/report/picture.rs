//! What the pictures of the reports draw: of one place and time, how many of how many, taken from published tables as they are.
//! It knows no drawing and no words, and counts nothing anew.

use crate::report::csv_table::{ALL, Cell, Table};
use crate::report::visits;
use crate::report::wilson::{Interval, wilson};
use crate::rule::Class;

/// What a picture is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Visits done, of those due.
    Visits,
    /// Follow-ups past their day at the end, of those open.
    Overdue,
    /// Children of low weight for their age, of those weighed.
    Underweight,
    /// Children who had five or more food groups, of those who were asked.
    Diversity,
}

impl Measure {
    /// All of them, in the order in which they are shown.
    pub const ALL: [Self; 4] = [Self::Visits, Self::Overdue, Self::Underweight, Self::Diversity];

    /// The permanent code, as in files and addresses.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Visits => "visits",
            Self::Overdue => "overdue",
            Self::Underweight => "underweight",
            Self::Diversity => "diversity",
        }
    }

    /// The measure of a code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|measure| measure.code() == code)
    }

    /// Whether it says something of children, each counted once, so that a share and its interval make sense. Visits and
    /// follow-ups are events, several of one child: an interval would promise too much.
    #[must_use]
    pub const fn is_of_children(self) -> bool {
        matches!(self, Self::Underweight | Self::Diversity)
    }
}

/// A count as far as it may be drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Published {
    /// It is shown.
    Shown(u64),
    /// It is kept private: drawn as a gap with a word, never as nought.
    Withheld,
    /// Nothing was counted.
    Nothing,
}

/// The one way from a published cell to what may be drawn of it, whatever the reason is called for which it is withheld.
#[must_use]
pub const fn published(cell: &Cell) -> Published {
    match cell {
        Cell::Count(count) => Published::Shown(*count),
        Cell::Withheld(_) => Published::Withheld,
        Cell::Text(_) | Cell::Percent(_) | Cell::Date(_) | Cell::Instant(_) | Cell::Empty => Published::Nothing,
    }
}

impl Published {
    /// The count, if it is shown.
    #[must_use]
    pub const fn count(self) -> Option<u64> {
        match self {
            Self::Shown(count) => Some(count),
            Self::Withheld | Self::Nothing => None,
        }
    }
}

/// A share as far as it may be drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Share {
    /// In tenths of a percent, with the interval of 95 % that belongs to it.
    Drawn {
        /// Tenths of a percent.
        tenths: u32,
        /// How far it can be trusted.
        interval: Interval,
    },
    /// Of too few to mean anything.
    Few,
    /// One of its counts is private.
    Private,
    /// Of nobody.
    Nobody,
}

/// How many of how many.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// How many.
    pub n: Published,
    /// Of how many.
    pub den: Published,
    /// The share of the one in the other.
    pub share: Share,
}

impl Part {
    /// Nothing was counted.
    pub const NONE: Self = Self { n: Published::Nothing, den: Published::Nothing, share: Share::Nobody };

    /// Of two published cells: the share goes by the rule of the published percentages.
    #[must_use]
    pub fn of_cells(n: &Cell, den: &Cell) -> Self {
        let (shown_n, shown_den) = (published(n), published(den));
        let share = match (Cell::percent(n, den), shown_n, shown_den) {
            (Cell::Percent(_), Published::Shown(n), Published::Shown(den)) => share_of(n, den),
            (_, Published::Withheld, _) | (_, _, Published::Withheld) => Share::Private,
            (Cell::Withheld(_), _, _) => Share::Few,
            _ => Share::Nobody,
        };
        Self { n: shown_n, den: shown_den, share }
    }

    /// Of two counts that stay inside a team: nothing is withheld.
    #[must_use]
    pub fn inside(n: u64, den: u64) -> Self {
        Self { n: Published::Shown(n), den: Published::Shown(den), share: share_of(n, den) }
    }
}

fn share_of(n: u64, den: u64) -> Share {
    let interval = u32::try_from(n).ok().zip(u32::try_from(den).ok()).and_then(|(n, den)| wilson(n, den));
    match (tenths(n, den), interval) {
        (Some(tenths), Some(interval)) => Share::Drawn { tenths, interval },
        _ => Share::Nobody,
    }
}

/// Tenths of a percent, halves away from nought, as in [`Cell::percent`]; `None` of nobody.
fn tenths(n: u64, den: u64) -> Option<u32> {
    let (n, den) = (u128::from(n), u128::from(den));
    (n * 2000 + den).checked_div(2 * den).and_then(|tenths| u32::try_from(tenths).ok())
}

/// The four measures of one place and time.
#[derive(Debug, Clone, PartialEq)]
pub struct Measures {
    /// Visits done of those due.
    pub visits: Part,
    /// Follow-ups past their day, of those open, of all classes together.
    pub overdue: Part,
    /// The same by class, in the order of urgency.
    pub overdue_by_class: [(Class, Part); CLASSES],
    /// Children of low weight for their age, of those weighed.
    pub underweight: Part,
    /// Children who had five or more food groups, of those asked.
    pub diversity: Part,
}

/// How many classes there are.
pub const CLASSES: usize = Class::ALL.len();

impl Measures {
    /// The part that a measure is about, all classes together.
    #[must_use]
    pub const fn part(&self, measure: Measure) -> Part {
        match measure {
            Measure::Visits => self.visits,
            Measure::Overdue => self.overdue,
            Measure::Underweight => self.underweight,
            Measure::Diversity => self.diversity,
        }
    }
}

/// The measures of an area (or of all of them, under `all`) in the tables of a release; `None` where the area is not published.
#[must_use]
pub fn measures(tables: &[Table], area: &str) -> Option<Measures> {
    let table = |name: &str| tables.iter().find(|table| table.name == name);
    let cell = |name: &str, row: &[(&str, &str)], column: &str| {
        table(name).and_then(|table| table.cell(table.find(row)?, column)).cloned().unwrap_or(Cell::Empty)
    };
    let slots = [("area", area), ("slot", ALL)];
    table("visits")?.find(&slots)?;
    let visit = |column| cell("visits", &slots, column);
    let overdue = |class: &str| {
        let row = [("area", area), ("class", class)];
        let open = cell("followups_stock", &row, "open");
        Part::of_cells(&open.minus(&cell("followups_stock", &row, "late_0")), &open)
    };
    let children = [("area", area), ("sex", ALL), ("age_band_at_visit", ALL)];
    let diverse = [&children[..], &[("indicator", "MDD")]].concat();
    Some(Measures {
        visits: Part::of_cells(&visits::done(visit), &visit("due")),
        overdue: overdue(ALL),
        overdue_by_class: by_class(|class| overdue(class.code())),
        underweight: Part::of_cells(&cell("growth", &children, "waz_lt_m2"), &cell("growth", &children, "waz_n")),
        diversity: Part::of_cells(&cell("feeding", &diverse, "n"), &cell("feeding", &diverse, "den")),
    })
}

/// What is known of a place in a month of a trend.
#[derive(Debug, Clone, PartialEq)]
pub enum Known {
    /// Its figures.
    Figures(Box<Measures>),
    /// The place is not published in that month.
    NotPublished,
    /// The month has ended and was never counted.
    NotCounted,
    /// The month lies before the programme.
    BeforeStart,
}

impl Known {
    /// What the tables of a month say of a place.
    #[must_use]
    pub fn of(tables: &[Table], place: &str) -> Self {
        measures(tables, place).map_or(Self::NotPublished, |measures| Self::Figures(Box::new(measures)))
    }
}

/// A part for each class.
pub fn by_class(part: impl Fn(Class) -> Part) -> [(Class, Part); CLASSES] {
    std::array::from_fn(|at| (Class::ALL[at], part(Class::ALL[at])))
}

#[cfg(test)]
#[path = "picture_tests.rs"]
mod tests;

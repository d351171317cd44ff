//! What two releases of a period say differently. It looks at what was shown, never behind a withheld cell.

use std::collections::BTreeMap;

use crate::report::csv_table::{ALL, Cell, Table};
use crate::report::definitions::{Holds, holds, key, parts_named, tells};
use crate::report::suppress::Reason;

/// A figure that one release shows otherwise than an earlier one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The table.
    pub table: &'static str,
    /// The codes of the row, by column.
    pub row: Vec<(&'static str, String)>,
    /// The column.
    pub column: &'static str,
    /// What was shown.
    pub was: Cell,
    /// What is shown now: a figure, or withheld.
    pub now: Cell,
}

/// Whether a column holds a figure.
#[must_use]
pub fn is_figure(column: &str) -> bool {
    matches!(holds(column), Some(Holds::Count | Holds::Days | Holds::Percent))
}

/// A row as its key and its figures by column.
type Figures<'a> = BTreeMap<&'static str, &'a Cell>;

fn rows(table: &Table) -> BTreeMap<Vec<(&'static str, &str)>, Figures<'_>> {
    let figures = |row: &'_ [Cell]| -> Vec<usize> { (0..row.len()).filter(|at| is_figure(table.columns[*at])).collect() };
    table.rows.iter().map(|row| (key(table, row), figures(row).into_iter().map(|at| (table.columns[at], &row[at])).collect())).collect()
}

/// Every figure that was shown, or stood for nothing, and is now another one or withheld. A row that is not there counts
/// nobody, unless no row of such splits is told. What was withheld stays so (see [`inherit`](crate::report::inherit)) and is not told.
#[must_use]
pub fn changes(earlier: &[Table], later: &[Table]) -> Vec<Change> {
    let mut found = Vec::new();
    for table in later {
        let other = earlier.iter().find(|other| other.name == table.name);
        let before = other.map(rows).unwrap_or_default();
        let after = rows(table);
        for (row, now) in &after {
            let was = before.get(row);
            if was.is_none() && other.is_some_and(|other| !tells(other, &parts_named(row))) {
                continue;
            }
            for (column, now) in now {
                let was = was.and_then(|was| was.get(column)).copied();
                record(&mut found, table.name, row, column, was, Some(now));
            }
        }
        for (row, was) in before.iter().filter(|(row, _)| !after.contains_key(*row)) {
            let not_told = (!tells(table, &parts_named(row))).then_some(&Cell::Withheld(Reason::Private));
            was.iter().for_each(|(column, was)| record(&mut found, table.name, row, column, Some(was), not_told));
        }
    }
    found
}

fn record(
    found: &mut Vec<Change>,
    table: &'static str,
    row: &[(&'static str, &str)],
    column: &'static str,
    was: Option<&Cell>,
    now: Option<&Cell>,
) {
    // A row that is not there: nobody, of whom there is no share either.
    let nobody = if holds(column) == Some(Holds::Count) { Cell::Count(0) } else { Cell::Empty };
    let (was, now) = (was.unwrap_or(&nobody), now.unwrap_or(&nobody));
    if was != now && !matches!(was, Cell::Withheld(_)) {
        let row = row.iter().map(|(column, code)| (*column, (*code).to_owned())).collect();
        found.push(Change { table, row, column, was: was.clone(), now: now.clone() });
    }
}

/// The counts of the whole programme that differ most from another period's, greatest difference first; of equal ones in the
/// order of the tables. Only what both show.
#[must_use]
pub fn largest_moves(before: &[Table], now: &[Table], most: usize) -> Vec<Change> {
    let whole = |change: &Change| change.row.iter().all(|(column, code)| code == ALL || *column == "indicator");
    let by = |change: &Change| match (&change.was, &change.now) {
        (Cell::Count(was), Cell::Count(now)) => was.abs_diff(*now),
        _ => 0,
    };
    let counted = |change: &Change| holds(change.column) == Some(Holds::Count) && by(change) > 0;
    let mut moves: Vec<Change> = changes(before, now).into_iter().filter(|change| whole(change) && counted(change)).collect();
    moves.sort_by_key(|change| std::cmp::Reverse(by(change)));
    moves.truncate(most);
    moves
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sample::october;

    fn visits(rows: &[(&str, &str, Cell)]) -> Table {
        let mut table = Table::new("visits", &["slot", "due"]);
        rows.iter().for_each(|(area, slot, due)| table.push(&october(), area, vec![Cell::text(slot), due.clone()]));
        table
    }

    #[test]
    fn what_was_shown_and_is_not_the_same_is_told() {
        let hidden = || Cell::Withheld(Reason::Few);
        let was = visits(&[("ulopi", "m06", Cell::Count(7)), ("sanga", "m06", hidden()), ("mbiro", "m06", Cell::Count(9))]);
        let now = visits(&[("ulopi", "m06", Cell::Count(8)), ("sanga", "m06", hidden()), ("tenzu", "m06", Cell::Count(6))]);
        let told: Vec<(String, Cell, Cell)> = changes(&[was], &[now]).into_iter().map(|c| (c.row[0].1.clone(), c.was, c.now)).collect();
        let wanted = [("tenzu", 0, 6), ("ulopi", 7, 8), ("mbiro", 9, 0)].map(|(a, x, y)| (a.to_owned(), Cell::Count(x), Cell::Count(y)));
        assert_eq!(told, wanted);
    }

    #[test]
    fn rows_that_are_not_told_are_withheld_and_no_nought() {
        let fine = visits(&[("ulopi", "m06", Cell::Count(7)), ("ulopi", "all", Cell::Count(9))]);
        let coarse = visits(&[("ulopi", "all", Cell::Count(9))]);
        assert_eq!(changes(std::slice::from_ref(&coarse), std::slice::from_ref(&fine)), []);
        let told = changes(&[fine], &[coarse]);
        assert_eq!(told.len(), 1);
        assert_eq!((&told[0].was, &told[0].now), (&Cell::Count(7), &Cell::Withheld(Reason::Private)));
    }

    #[test]
    fn another_instant_is_no_change() {
        let was = visits(&[("ulopi", "m06", Cell::Count(7))]);
        let mut now = was.clone();
        let at = now.column("generated_at").expect("a column");
        now.rows[0][at] = Cell::Empty;
        assert_eq!(changes(&[was], &[now]), []);
    }

    #[test]
    fn the_largest_moves_are_those_of_the_whole_programme() {
        let was = visits(&[("ulopi", "m06", Cell::Count(7)), ("all", "all", Cell::Count(90)), ("all", "m06", Cell::Count(9))]);
        let now = visits(&[("ulopi", "m06", Cell::Count(70)), ("all", "all", Cell::Count(80)), ("all", "m06", Cell::Count(90))]);
        let moves = largest_moves(&[was], &[now], 5);
        assert_eq!(moves.len(), 1);
        assert_eq!((&moves[0].was, &moves[0].now), (&Cell::Count(90), &Cell::Count(80)));
    }
}

//! What one release withholds, the releases after it withhold too, so that nobody learns by subtracting one from another.
//!
//! Three rules, all our own choice:
//!
//! 1. A figure that an earlier revision withheld stays withheld.
//! 2. Where a figure that was shown becomes private, every figure of its table that changed is withheld with it: else those that
//!    did not change would complete the new sums, and give the private one away.
//! 3. A quarter and a year withhold what any of their months withholds in tables that add up over time, and tell rows of two
//!    splits only if all of them do: else the other months would be taken away from the sum.
//!
//! Withholding more never tells more about the figures of the same release. A difference between two shown figures tells of the late
//! records behind it, and is not hidden; those of a whole month are therefore told together, and only once they are of as many
//! children as a shown figure needs.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::report::compare::{changes, is_figure};
use crate::report::csv_table::{Cell, Release, Table};
use crate::report::definitions::{Holds, adds_up_over_time, holds, key, parts_named, tells};
use crate::report::suppress::Reason;

/// How an inherited cell is marked: the word says nothing about the figure now.
const INHERITED: Cell = Cell::Withheld(Reason::Private);

/// A row's codes, owned.
type Key = Vec<(&'static str, String)>;

fn owned(key: &[(&'static str, &str)]) -> Key {
    key.iter().map(|(column, code)| (*column, (*code).to_owned())).collect()
}

/// Withholds in a revision what the revision before it withheld, and what would complete it (rules 1 and 2).
#[must_use]
pub fn after_revision(release: &Release, tables: Vec<Table>, before: &[Table]) -> Vec<Table> {
    let kept = |table: Table| {
        let name = table.name;
        withholding(release, table, before.iter().filter(|other| other.name == name))
    };
    let kept: Vec<Table> = tables.into_iter().map(kept).collect();
    let changes = changes(before, &kept);
    // Tables of which one binds the other are one set of figures.
    let family = |table: &'static str| match table {
        "programme" | "growth" | "feeding" => "enrolment",
        "followups_stock" | "referrals" | "reactions" => "followups",
        other => other,
    };
    let newly: BTreeSet<&str> = changes
        .iter()
        .filter(|change| matches!(change.now, Cell::Withheld(_)) && holds(change.column) == Some(Holds::Count))
        .map(|change| family(change.table))
        .collect();
    let mut changed: BTreeMap<&str, BTreeSet<(Key, &str)>> = BTreeMap::new();
    for change in changes.into_iter().filter(|change| newly.contains(family(change.table))) {
        changed.entry(change.table).or_default().insert((change.row, change.column));
    }
    let hide = |table: Table| match changed.get(table.name) {
        Some(changed) => rewritten(release, table, &|key, column| changed.contains(&(key.clone(), column))),
        None => table,
    };
    kept.into_iter().map(hide).collect()
}

/// Withholds in a longer period what its months withhold (rule 3).
#[must_use]
pub fn after_months(release: &Release, tables: Vec<Table>, months: &[&[Table]]) -> Vec<Table> {
    let one = |mut table: Table| {
        if !adds_up_over_time(table.name) {
            return table;
        }
        let of_months: Vec<&Table> = months.iter().flat_map(|month| month.iter()).filter(|other| other.name == table.name).collect();
        let told = |row: &Vec<Cell>| of_months.iter().all(|month| tells(month, &parts_named(&key(&table, row))));
        let rows = table.rows.iter().filter(|row| told(row)).cloned().collect();
        table.rows = rows;
        withholding(release, table, of_months.into_iter())
    };
    tables.into_iter().map(one).collect()
}

/// The table with every cell withheld that is so in one of the others; rows that only they have are added with what they keep.
fn withholding<'a>(release: &Release, mut table: Table, others: impl Iterator<Item = &'a Table>) -> Table {
    let mut hidden: BTreeMap<Key, BTreeSet<&'static str>> = BTreeMap::new();
    for other in others {
        for row in &other.rows {
            // Shares and medians go with the counts they rest on.
            let secret = |(column, cell): &(&&'static str, &Cell)| matches!(cell, Cell::Withheld(_)) && holds(column) == Some(Holds::Count);
            let columns = other.columns.iter().zip(row).filter(secret);
            let columns: BTreeSet<&'static str> = columns.map(|(column, _)| *column).collect();
            if !columns.is_empty() {
                hidden.entry(owned(&key(other, row))).or_default().extend(columns);
            }
        }
    }
    let there: BTreeSet<Key> = table.rows.iter().map(|row| owned(&key(&table, row))).collect();
    let told = |row: &Key| tells(&table, &parts_named(&row.iter().map(|(column, code)| (*column, code.as_str())).collect::<Vec<_>>()));
    let added: Vec<&Key> = hidden.keys().filter(|key| !there.contains(*key) && told(key)).collect();
    for key in added {
        let own = own_columns(&table);
        let cells = own.map(|column| match key.iter().find(|(name, _)| *name == column) {
            Some((_, code)) => Cell::text(code),
            None if holds(column) == Some(Holds::Count) => Cell::Count(0),
            None => Cell::Empty,
        });
        let cells = cells.collect();
        let area = key.iter().find(|(name, _)| *name == "area").map_or("", |(_, code)| code);
        table.push(release, area, cells);
    }
    rewritten(release, table, &|key, column| hidden.get(key).is_some_and(|columns| columns.contains(column)))
}

/// The columns between the first ones of every file and the last.
fn own_columns(table: &Table) -> impl Iterator<Item = &'static str> + use<> {
    let empty = Table::new(table.name, &[]);
    let own: Vec<&'static str> = table.columns.iter().copied().filter(|column| !empty.columns.contains(column)).collect();
    own.into_iter()
}

/// The table with these cells withheld, and with them every share and median of the row, which rest on them.
fn rewritten(release: &Release, table: Table, hide: &dyn Fn(&Key, &str) -> bool) -> Table {
    let own: Vec<&'static str> = own_columns(&table).collect();
    let mut fresh = Table::new(table.name, &own);
    for row in &table.rows {
        let codes = owned(&key(&table, row));
        let hidden: BTreeSet<&str> = own.iter().copied().filter(|column| is_figure(column) && hide(&codes, column)).collect();
        // What is withheld anyway has taken along what rests on it.
        let newly = |column: &&&str| !matches!(table.cell(row, column), Some(Cell::Withheld(_)));
        let counts = hidden.iter().filter(newly).any(|column| holds(column) == Some(Holds::Count));
        let cells = own.iter().map(|column| {
            let cell = table.cell(row, column).cloned().unwrap_or(Cell::Empty);
            let rests = counts && matches!(holds(column), Some(Holds::Percent | Holds::Days)) && cell != Cell::Empty;
            if (rests || hidden.contains(column)) && !matches!(cell, Cell::Withheld(_)) { INHERITED } else { cell }
        });
        let cells = cells.collect();
        let area = codes.iter().find(|(name, _)| *name == "area").map_or("", |(_, code)| code);
        fresh.push(release, area, cells);
    }
    fresh
}

#[cfg(test)]
#[path = "inherit_tests.rs"]
mod tests;

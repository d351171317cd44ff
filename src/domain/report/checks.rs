//! Checks of a release before anybody gets it. They read the tables as the reader will, and know nothing of how they were counted.

use std::collections::{BTreeMap, BTreeSet};

use crate::feeding::ReactionLevel;
use crate::report::csv_table::{ALL, Cell, Table};
use crate::report::suppress::Threshold;

/// What is wrong with a table.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
    /// A part is greater than its whole.
    PartExceedsWhole {
        /// Table.
        table: &'static str,
        /// Row, from 0.
        row: usize,
        /// Column of the part.
        part: &'static str,
        /// Column of the whole.
        whole: &'static str,
    },
    /// The rows of a split do not add up to their total.
    DoesNotAddUp {
        /// Table.
        table: &'static str,
        /// Row of the total, from 0.
        row: usize,
        /// The split.
        split: &'static str,
        /// The column.
        column: &'static str,
    },
    /// The columns of a row do not add up (those who joined and left; what became of follow-ups).
    RowDoesNotAddUp {
        /// Table.
        table: &'static str,
        /// Row, from 0.
        row: usize,
    },
    /// A count that should have been withheld.
    SmallShown {
        /// Table.
        table: &'static str,
        /// Row, from 0.
        row: usize,
        /// The column.
        column: &'static str,
    },
    /// More than one programme, month, protocol, instant or set of definitions in a file.
    MixedRelease {
        /// Table.
        table: &'static str,
        /// The column.
        column: &'static str,
    },
    /// A text that is no code: it might be somebody's name.
    TextLikeAName {
        /// Table.
        table: &'static str,
        /// Row, from 0.
        row: usize,
        /// The column.
        column: &'static str,
    },
    /// More children have an acceptable diet than a diverse one or enough meals. Only a warning when denominators differ, which
    /// they do through missing answers; this is raised when they are equal.
    MadExceeds {
        /// Row of `MAD`, from 0.
        row: usize,
    },
}

/// Columns that hold the same text in every row of a file.
const SAME: [&str; 6] = ["programme", "period", "protocol_id", "protocol_version", "generated_at", "definitions_version"];

/// Splits with their totals, and the tables' columns that are no counts to be added.
const SPLITS: [&str; 6] = ["area", "sex", "age_band_at_period_end", "age_band_at_visit", "slot", "class"];

/// Parts and wholes by table.
const WITHIN: &[(&str, &str, &str)] = &[
    ("enrolment", "preterm_n", "active_end"),
    ("enrolment", "lbw_n", "active_end"),
    ("enrolment", "active_no_visit_60d", "active_end"),
    ("growth", "weight_n", "children_visited"),
    ("growth", "waz_lt_m2", "waz_n"),
    ("growth", "waz_lt_m3", "waz_lt_m2"),
    ("growth", "wlz_lt_m2", "wlz_n"),
    ("growth", "wlz_lt_m3", "wlz_lt_m2"),
    ("growth", "wlz_gt_2", "wlz_n"),
    ("growth", "wlz_gt_3", "wlz_gt_2"),
    ("growth", "laz_lt_m2", "laz_n"),
    ("growth", "laz_lt_m3", "laz_lt_m2"),
    ("growth", "muac_lt_115", "muac_den_6_23"),
    ("growth", "muac_115_124", "muac_den_6_23"),
    ("growth", "slow_or_lost_n", "slow_or_lost_den"),
    ("growth", "slow_or_lost_den", "children_visited"),
    ("feeding", "n", "den"),
    ("feeding", "visits_used_not_last", "den"),
    ("referrals", "reached_same_day", "made"),
    ("referrals", "outcome_known_7d", "made"),
    ("reactions", "referred_n", "n"),
    ("reactions", "outcome_known_n", "n"),
];

/// Columns that add up within a row: the one side, the other side.
const ROWS: &[(&str, &[&str], &[&str])] = &[
    ("enrolment", &["active_end", "left", "area_out"], &["active_start", "joined", "area_in"]),
    ("visits", &["due"], &["done", "skipped", "overdue_at_end"]),
    ("visits", &["done"], &["done_on_time", "done_early_late"]),
    (
        "followups",
        &["opened"],
        &["met_on_time", "met_late", "still_open_not_due", "still_open_overdue", "closed_by_supervisor", "ended_exit", "closed_other"],
    ),
    ("followups_stock", &["open"], &["late_0", "late_1_7", "late_8_14", "late_15_30", "late_over_30"]),
];

/// Columns that the programme's row alone prints.
const OF_PROGRAMME: [&str; 2] = ["missing_n", "visits_used_not_last"];

/// Columns that are numbers but no counts of children or events.
const NOT_COUNTS: [&str; 1] = ["median_days_to_check"];

/// Everything that is wrong with the tables; empty = fit for release.
#[must_use]
pub fn faults(tables: &[Table], threshold: Threshold, area_codes: &BTreeSet<String>) -> Vec<Fault> {
    let mut found = Vec::new();
    for table in tables {
        same(table, &mut found);
        texts(table, area_codes, &mut found);
        within(table, &mut found);
        small(table, threshold, &mut found);
        rows_add_up(table, &mut found);
        for split in SPLITS {
            adds_up(table, split, &mut found);
        }
        acceptable_diet(table, &mut found);
    }
    found.sort();
    found
}

fn same(table: &Table, found: &mut Vec<Fault>) {
    for column in SAME {
        let Some(at) = table.column(column) else { continue };
        if table.rows.windows(2).any(|pair| pair[0].get(at) != pair[1].get(at)) {
            found.push(Fault::MixedRelease { table: table.name, column });
        }
    }
}

/// Codes have no spaces and no capital words; areas and the programme are known names.
fn texts(table: &Table, area_codes: &BTreeSet<String>, found: &mut Vec<Fault>) {
    let plain = |text: &str| text.chars().all(|c| c.is_ascii_alphanumeric() || "_-.+:;".contains(c));
    for (row, cells) in table.rows.iter().enumerate() {
        for (column, cell) in table.columns.iter().zip(cells) {
            let Cell::Text(text) = cell else { continue };
            let fine = match *column {
                "programme" => true,
                "area" => text == ALL || area_codes.contains(text),
                _ => plain(text),
            };
            if !fine {
                found.push(Fault::TextLikeAName { table: table.name, row, column });
            }
        }
    }
}

fn count(table: &Table, row: &[Cell], column: &str) -> Option<u64> {
    match table.cell(row, column) {
        Some(Cell::Count(count)) => Some(*count),
        _ => None,
    }
}

fn within(table: &Table, found: &mut Vec<Fault>) {
    for (_, part, whole) in WITHIN.iter().filter(|(name, ..)| *name == table.name) {
        for (row, cells) in table.rows.iter().enumerate() {
            if let (Some(n), Some(den)) = (count(table, cells, part), count(table, cells, whole))
                && n > den
            {
                found.push(Fault::PartExceedsWhole { table: table.name, row, part, whole });
            }
        }
    }
}

fn small(table: &Table, threshold: Threshold, found: &mut Vec<Fault>) {
    for (row, cells) in table.rows.iter().enumerate() {
        for (column, cell) in table.columns.iter().zip(cells) {
            if let Cell::Count(count) = cell
                && threshold.hides(*count)
                && !NOT_COUNTS.contains(column)
            {
                found.push(Fault::SmallShown { table: table.name, row, column });
            }
        }
    }
}

fn rows_add_up(table: &Table, found: &mut Vec<Fault>) {
    for (_, one, other) in ROWS.iter().filter(|(name, ..)| *name == table.name) {
        for (row, cells) in table.rows.iter().enumerate() {
            let sum = |columns: &[&str]| columns.iter().map(|column| count(table, cells, column)).sum::<Option<u64>>();
            if let (Some(one), Some(other)) = (sum(one), sum(other))
                && one != other
            {
                found.push(Fault::RowDoesNotAddUp { table: table.name, row });
            }
        }
    }
}

/// Severe reactions stand in a row of their own and in no total.
fn stands_apart(table: &Table, cells: &[Cell]) -> bool {
    let severe = |cell: &Cell| matches!(cell, Cell::Text(class) if class == ReactionLevel::Severe.code());
    table.name == "reactions" && table.cell(cells, "class").is_some_and(severe)
}

/// Wherever all figures of a sum are shown, they add up.
fn adds_up(table: &Table, split: &'static str, found: &mut Vec<Fault>) {
    let Some(at) = table.column(split) else { return };
    let keys: Vec<usize> = ["area", "sex", "age_band_at_period_end", "age_band_at_visit", "slot", "rule", "class", "indicator"]
        .iter()
        .filter(|column| **column != split)
        .filter_map(|column| table.column(column))
        .collect();
    let text = |cells: &[Cell], at: usize| match cells.get(at) {
        Some(Cell::Text(text)) => text.clone(),
        _ => String::new(),
    };
    let mut groups: BTreeMap<Vec<String>, (Option<usize>, Vec<usize>)> = BTreeMap::new();
    for (row, cells) in table.rows.iter().enumerate().filter(|(_, cells)| !stands_apart(table, cells)) {
        let group = groups.entry(keys.iter().map(|key| text(cells, *key)).collect()).or_default();
        if text(cells, at) == ALL { group.0 = Some(row) } else { group.1.push(row) }
    }
    for (total, parts) in groups.into_values() {
        let Some(total) = total.filter(|_| !parts.is_empty()) else { continue };
        for column in table.columns.iter().filter(|column| !NOT_COUNTS.contains(column) && !OF_PROGRAMME.contains(column)) {
            let shown = |row: usize| match table.cell(&table.rows[row], column) {
                Some(Cell::Count(count)) => Some(*count),
                // What cannot be counted in a row is nobody.
                Some(Cell::Empty) => Some(0),
                _ => None,
            };
            let Some(Cell::Count(all)) = table.cell(&table.rows[total], column) else { continue };
            if (split == "slot" || split == "class") && *column == "phone_contacts" {
                continue;
            }
            if parts.iter().map(|row| shown(*row)).sum::<Option<u64>>().is_some_and(|sum| sum != *all) {
                found.push(Fault::DoesNotAddUp { table: table.name, row: total, split, column });
            }
        }
    }
}

fn acceptable_diet(table: &Table, found: &mut Vec<Fault>) {
    if table.name != "feeding" {
        return;
    }
    let text = |cells: &[Cell], column: &str| match table.cell(cells, column) {
        Some(Cell::Text(text)) => text.clone(),
        _ => String::new(),
    };
    let place = |cells: &[Cell]| ["area", "sex", "age_band_at_visit"].map(|column| text(cells, column));
    for (row, cells) in table.rows.iter().enumerate().filter(|(_, cells)| text(cells, "indicator") == "MAD") {
        let of = |indicator: &str| table.rows.iter().find(|other| text(other, "indicator") == indicator && place(other) == place(cells));
        let (Some(mdd), Some(mmf)) = (of("MDD"), of("MMF")) else { continue };
        let figures = |column| [cells, mdd, mmf].map(|row| count(table, row, column));
        let [Some(den), Some(mdd_den), Some(mmf_den)] = figures("den") else { continue };
        let [Some(n), Some(mdd_n), Some(mmf_n)] = figures("n") else { continue };
        if den == mdd_den && den == mmf_den && n > mdd_n.min(mmf_n) {
            found.push(Fault::MadExceeds { row });
        }
    }
}

#[cfg(test)]
#[path = "checks_tests.rs"]
mod tests;

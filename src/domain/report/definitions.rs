//! What stands in the columns of the files: which tell rows apart, which count, which are shares. Names and codes are permanent;
//! a column that is no longer made stays listed here, so that releases kept from before can be read.

use crate::report::csv_table::{ALL, Cell, Table};
use crate::report::{enrolment, followups, growth, reactions, visits};

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// The programme's name.
    Name,
    /// The month, quarter or year.
    Period,
    /// An instant, UTC.
    Instant,
    /// A code that tells rows apart.
    Split,
    /// Another code: a protocol's name, a version.
    Code,
    /// How many.
    Count,
    /// Days.
    Days,
    /// A share in percent, one decimal.
    Percent,
    /// Which columns of the row are withheld, and why.
    Withheld,
}

/// Names of the tables.
pub const TABLES: [&str; 9] =
    ["enrolment", "programme", "visits", "growth", "feeding", "followups", "followups_stock", "referrals", "reactions"];

/// Columns of which each row of a table has its own codes.
pub const SPLITS: [&str; 10] =
    ["area", "sex", "age_band_at_period_end", "age_band_at_visit", "slot", "rule", "class", "indicator", "food_group", "allergen"];

/// Why children left, in `programme.csv`, and severe reactions.
const PROGRAMME: [&str; 7] = ["transferred_out", "moved", "died", "withdrawn", "refused", "aged_out", "severe_reactions"];
/// Counts that stand in no list of a table's measures.
const OTHER_COUNTS: [&str; 5] = ["phone_contacts", "n", "den", "missing_n", "visits_used_not_last"];
/// Shares.
const PERCENTS: [&str; 3] = ["pct", "coverage_pct", "timely_pct"];
/// Days, which are no counts of children or events.
const DAYS: &str = "median_days_to_check";

fn counts() -> impl Iterator<Item = &'static str> {
    [
        enrolment::MEASURES,
        visits::MEASURES,
        growth::MEASURES,
        followups::MEASURES,
        followups::STOCK,
        followups::REFERRALS,
        reactions::MEASURES,
    ]
    .into_iter()
    .flatten()
    .chain(&PROGRAMME)
    .chain(&OTHER_COUNTS)
    .copied()
}

/// What a column holds; `None` if no table has such a column.
#[must_use]
pub fn holds(column: &str) -> Option<Holds> {
    Some(match column {
        "programme" => Holds::Name,
        "period" => Holds::Period,
        "generated_at" => Holds::Instant,
        "protocol_id" | "protocol_version" | "definitions_version" => Holds::Code,
        "withheld" => Holds::Withheld,
        DAYS => Holds::Days,
        split if SPLITS.contains(&split) => Holds::Split,
        share if PERCENTS.contains(&share) => Holds::Percent,
        count if counts().any(|known| known == count) => Holds::Count,
        _ => return None,
    })
}

/// The permanent name of a table that is written so.
#[must_use]
pub fn table_named(text: &str) -> Option<&'static str> {
    TABLES.into_iter().find(|name| *name == text)
}

/// The permanent name of a column of a table's own that is written so.
#[must_use]
pub fn column_named(text: &str) -> Option<&'static str> {
    SPLITS.into_iter().chain(PERCENTS).chain([DAYS]).chain(counts()).find(|name| *name == text)
}

/// The codes that tell a row of a table from the others, in the order of the columns.
#[must_use]
pub fn key<'a>(table: &Table, row: &'a [Cell]) -> Vec<(&'static str, &'a str)> {
    let code = |(column, cell): (&&'static str, &'a Cell)| match cell {
        Cell::Text(text) if SPLITS.contains(column) => Some((*column, text.as_str())),
        _ => None,
    };
    table.columns.iter().zip(row).filter_map(code).collect()
}

/// The splits of which a row names a part, besides what it is about. Rows of two splits or more are told all or not at all.
#[must_use]
pub fn parts_named(key: &[(&'static str, &str)]) -> Vec<&'static str> {
    // A rule and its class are one split; so are the group, the allergen and the class of a reaction.
    let has = |wanted: &str| key.iter().any(|(column, _)| *column == wanted);
    let (by_rule, by_food) = (has("rule"), has("food_group"));
    let split = |column: &'static str| match column {
        "indicator" => None,
        "class" if by_rule => None,
        "allergen" | "class" if by_food => Some("food_group"),
        other => Some(other),
    };
    let mut named: Vec<&'static str> = key.iter().filter(|(_, code)| *code != ALL).filter_map(|(column, _)| split(column)).collect();
    named.dedup();
    named
}

/// Whether a table tells rows of such splits.
#[must_use]
pub fn tells(table: &Table, parts: &[&'static str]) -> bool {
    parts.len() < 2 || table.rows.iter().any(|row| parts_named(&key(table, row)) == parts)
}

/// Whether the figures of a table are events, or children at a day, that those of a longer period contain or add up; the others
/// count each child once by its last visit of the period, whatever its length.
#[must_use]
pub fn adds_up_over_time(table: &str) -> bool {
    !matches!(table, "growth" | "feeding")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::month::{MonthRows, tables};
    use crate::report::sample::{october, villages};
    use crate::report::suppress::Threshold;

    #[test]
    fn every_column_of_every_table_is_defined() {
        let rows = MonthRows { areas: villages(), schedule: vec!["m06".to_owned()], ..MonthRows::default() };
        let tables = tables(&october(), Threshold::LEAST, &rows);
        assert_eq!(tables.iter().map(|table| table.name).collect::<Vec<_>>(), TABLES);
        for table in &tables {
            for column in &table.columns {
                let held = holds(column).unwrap_or_else(|| panic!("{} {column} is not defined", table.name));
                for row in &table.rows {
                    let fits = match table.cell(row, column) {
                        Some(Cell::Text(_)) => matches!(held, Holds::Name | Holds::Period | Holds::Split | Holds::Code | Holds::Withheld),
                        Some(Cell::Count(_)) => matches!(held, Holds::Count | Holds::Days),
                        Some(Cell::Percent(_)) => held == Holds::Percent,
                        Some(Cell::Instant(_)) => held == Holds::Instant,
                        _ => true,
                    };
                    assert!(fits, "{} {column}: {row:?}", table.name);
                }
            }
            let mut keys: Vec<_> = table.rows.iter().map(|row| key(table, row)).collect();
            keys.sort_unstable();
            keys.dedup();
            assert_eq!(keys.len(), table.rows.len(), "{}: the key tells all rows apart", table.name);
        }
    }
}

//! The tables of a release as text, as the database keeps them: each figure with its kind, so that they come back as they were.
//! A line `= table column …`, then a line a row: the area, and the cells of the table's own columns, apart by tabs.
//!
//! | Cell | Written |
//! |---|---|
//! | text | `'ulopi` |
//! | count | `12` |
//! | percent | `267%` (tenths) |
//! | withheld | `!` and the reason |
//! | empty | nothing |

use domain::report::csv_table::Cell;
use domain::report::csv_table::Release;
use domain::report::csv_table::Table;
use domain::report::definitions::column_named;
use domain::report::definitions::table_named;
use domain::report::suppress::Reason;

/// Columns before a table's own, and the one behind.
fn common() -> Vec<&'static str> {
    Table::new("", &[]).columns
}

/// Writes the tables.
#[must_use]
pub fn write(tables: &[Table]) -> String {
    let common = common();
    let mut text = String::new();
    for table in tables {
        let own: Vec<usize> = (0..table.columns.len()).filter(|at| !common.contains(&table.columns[*at])).collect();
        text.push_str(&format!("= {}", table.name));
        own.iter().for_each(|at| text.push_str(&format!("\t{}", table.columns[*at])));
        text.push('\n');
        for row in &table.rows {
            text.push_str(&table.cell(row, "area").map(cell_text).unwrap_or_default());
            own.iter().filter_map(|at| row.get(*at)).for_each(|cell| text.push_str(&format!("\t{}", cell_text(cell))));
            text.push('\n');
        }
    }
    text
}

fn cell_text(cell: &Cell) -> String {
    match cell {
        Cell::Text(text) => format!("'{}", text.replace(['\t', '\n', '\r'], " ")),
        Cell::Count(count) => count.to_string(),
        Cell::Percent(tenths) => format!("{tenths}%"),
        Cell::Withheld(reason) => format!("!{}", reason.code()),
        // No table has a day or an instant of its own.
        Cell::Date(_) | Cell::Instant(_) | Cell::Empty => String::new(),
    }
}

/// Reads the tables of a release, counted by these definitions.
///
/// # Errors
/// The line that cannot be read.
pub fn read(text: &str, release: &Release, definitions_version: &str) -> Result<Vec<Table>, String> {
    let mut tables: Vec<Table> = Vec::new();
    for (at, line) in text.lines().enumerate() {
        let bad = || format!("line {}: {line:?}", at + 1);
        if let Some(head) = line.strip_prefix("= ") {
            let mut names = head.split('\t');
            let name = names.next().and_then(table_named).ok_or_else(bad)?;
            let own = names.map(column_named).collect::<Option<Vec<_>>>().ok_or_else(bad)?;
            tables.push(Table::new(name, &own));
            continue;
        }
        let table = tables.last_mut().ok_or_else(bad)?;
        let mut cells = line.split('\t').map(cell).collect::<Option<Vec<_>>>().ok_or_else(bad)?;
        let Cell::Text(area) = cells.remove(0) else { return Err(bad()) };
        if cells.len() + common().len() != table.columns.len() {
            return Err(bad());
        }
        table.push(release, &area, cells);
    }
    for table in &mut tables {
        let Some(at) = table.column("definitions_version") else { continue };
        table.rows.iter_mut().for_each(|row| row[at] = Cell::text(definitions_version));
    }
    Ok(tables)
}

fn cell(text: &str) -> Option<Cell> {
    if text.is_empty() {
        return Some(Cell::Empty);
    }
    if let Some(text) = text.strip_prefix('\'') {
        return Some(Cell::text(text));
    }
    if let Some(code) = text.strip_prefix('!') {
        return match code {
            // Definitions of version 1 told the small from those that would give them away.
            "private" | "small" | "linked" => Some(Cell::Withheld(Reason::Private)),
            "few" => Some(Cell::Withheld(Reason::Few)),
            _ => None,
        };
    }
    match text.strip_suffix('%') {
        Some(tenths) => tenths.parse().ok().map(Cell::Percent),
        None => text.parse().ok().map(Cell::Count),
    }
}

#[cfg(test)]
mod tests {
    use domain::report::csv_table::DEFINITIONS_VERSION;
    use domain::report::period::Period;

    use super::*;

    fn release() -> Release {
        Release {
            programme: "kesara".to_owned(),
            period: Period::parse("2026-10").expect("a month"),
            protocol_id: "default".to_owned(),
            protocol_version: "1".to_owned(),
            generated_at: "2026-11-10T06:00:00".parse().expect("an instant"),
        }
    }

    fn tables() -> Vec<Table> {
        let mut visits = Table::new("visits", &["slot", "due", "coverage_pct"]);
        visits.push(&release(), "ulopi", vec![Cell::text("m06"), Cell::Count(12), Cell::Percent(267)]);
        visits.push(&release(), "all", vec![Cell::text("all"), Cell::Withheld(Reason::Private), Cell::Empty]);
        let mut referrals = Table::new("referrals", &["made"]);
        referrals.push(&release(), "all", vec![Cell::Withheld(Reason::Few)]);
        vec![visits, referrals]
    }

    #[test]
    fn what_is_written_reads_back() {
        assert_eq!(read(&write(&tables()), &release(), DEFINITIONS_VERSION), Ok(tables()));
        let older = read(&write(&tables()), &release(), "0.9").expect("read");
        assert_eq!(older[0].cell(&older[0].rows[0], "definitions_version"), Some(&Cell::text("0.9")));
    }

    #[test]
    fn what_is_no_release_is_refused_with_its_line() {
        for bad in [
            "'ulopi\t1",
            "= children\tname",
            "= visits\tname",
            "= visits\tdue\n'ulopi\t1\t2",
            "= visits\tdue\n'ulopi\tseven",
            "= visits\tdue\n3\t4",
        ] {
            let told = read(bad, &release(), "1").expect_err(bad);
            assert!(told.starts_with("line "), "{told}");
        }
    }
}

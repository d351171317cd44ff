//! Writes a table of a release as CSV: UTF-8 without a mark, CRLF, quoted where needed, the same bytes every time.
//! It counts nothing and withholds nothing; a withheld cell is empty here, its reason stands in the last column.

use domain::report::csv_table::Cell;
use domain::report::csv_table::Table;

use crate::files::csv_text;

/// U+FEFF in UTF-8. Machines may take it for a part of the first column's name, so that only spreadsheets are given it.
const UTF_8_MARK: &[u8] = b"\xEF\xBB\xBF";

/// The bytes of a file.
///
/// # Errors
/// What the writing failed of; rows of different length are refused.
pub fn write(table: &Table) -> Result<Vec<u8>, csv::Error> {
    let mut csv = csv_text::writer(Vec::new());
    csv.write_record(&table.columns)?;
    for row in &table.rows {
        csv.write_record(row.iter().map(text))?;
    }
    csv.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

/// The bytes of a file for a spreadsheet: the same, begun with the mark by which spreadsheets know UTF-8.
///
/// # Errors
/// As [`write()`].
pub fn write_for_spreadsheet(table: &Table) -> Result<Vec<u8>, csv::Error> {
    Ok([UTF_8_MARK, &write(table)?].concat())
}

fn text(cell: &Cell) -> String {
    match cell {
        Cell::Text(text) => csv_text::text(text),
        Cell::Count(count) => count.to_string(),
        Cell::Percent(tenths) => format!("{}.{}", tenths / 10, tenths % 10),
        Cell::Date(day) => day.format("%Y-%m-%d").to_string(),
        Cell::Instant(instant) => instant.format("%Y-%m-%dT%H:%M:%SZ").to_string(),
        Cell::Withheld(_) | Cell::Empty => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use domain::report::suppress::Reason;

    use super::*;

    fn table(cells: Vec<Cell>) -> Table {
        Table { name: "growth", columns: vec!["area", "n", "pct", "at", "withheld"], rows: vec![cells] }
    }

    #[test]
    fn each_kind_of_cell_has_its_form() {
        let at = "2026-11-10T06:00:00".parse().expect("an instant");
        let bytes = write(&table(vec![
            Cell::text("Sanga \"Point\", lower"),
            Cell::Count(12),
            Cell::Percent(267),
            Cell::Instant(at),
            Cell::text("n:private;pct:private"),
        ]))
        .expect("written");
        let text = String::from_utf8(bytes).expect("UTF-8");
        assert_eq!(
            text,
            "area,n,pct,at,withheld\r\n\"Sanga \"\"Point\"\", lower\",12,26.7,2026-11-10T06:00:00Z,\"n:private;pct:private\"\r\n"
        );
    }

    #[test]
    fn a_withheld_cell_is_empty_and_never_a_word_in_a_column_of_numbers() {
        let row = vec![
            Cell::text("Ulopi"),
            Cell::Withheld(Reason::Private),
            Cell::Withheld(Reason::Private),
            Cell::Empty,
            Cell::text("n:private"),
        ];
        let text = String::from_utf8(write(&table(row)).expect("written")).expect("UTF-8");
        assert!(text.ends_with("\r\nUlopi,,,,n:private\r\n"), "{text:?}");
    }

    #[test]
    fn no_text_becomes_a_formula() {
        let row = vec![Cell::text("=1+1"), Cell::Count(1), Cell::Percent(5), Cell::Empty, Cell::text("a;-1")];
        let text = String::from_utf8(write(&table(row)).expect("written")).expect("UTF-8");
        assert!(text.ends_with("\r\n'=1+1,1,0.5,,\"a;'-1\"\r\n"), "{text:?}");
    }

    #[test]
    fn a_spreadsheet_gets_its_mark_and_a_machine_none() {
        let one = table(vec![Cell::text("Ulopi"), Cell::Count(3), Cell::Percent(5), Cell::Empty, Cell::Empty]);
        let (plain, marked) = (write(&one).expect("written"), write_for_spreadsheet(&one).expect("written"));
        assert!(plain.starts_with(b"area,"));
        assert_eq!(marked.strip_prefix("\u{feff}".as_bytes()), Some(plain.as_slice()));
    }

    #[test]
    fn twice_the_same_bytes() {
        let one = table(vec![Cell::text("Ulopi"), Cell::Count(3), Cell::Percent(5), Cell::Empty, Cell::Empty]);
        assert_eq!(write(&one).expect("written"), write(&one.clone()).expect("written"));
    }
}

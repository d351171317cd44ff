//! The files of a report: each table for machines and for spreadsheets, its description, and for people the definitions and one
//! page of totals; all of them in one archive. The same bytes each time for the same release and language.

use domain::report::compare::Change;
use domain::report::csv_table::Release;
use domain::report::csv_table::Table;

use crate::files::archive;
use crate::files::csvw;
use crate::files::csvw::Described;
use crate::files::csvw::Texts;
use crate::files::report_csv;
use crate::i18n::Lang;
use crate::i18n::Words;
use crate::i18n::words;
use crate::view::report::papers;

/// What the files are made from.
#[derive(Debug, Clone, Copy)]
pub struct Bundle<'a> {
    /// What is the same in every row.
    pub release: &'a Release,
    /// The revision; `None` = provisional.
    pub revision: Option<u32>,
    /// Counts below this are withheld.
    pub threshold: u64,
    /// The tables.
    pub tables: &'a [Table],
    /// What this revision changed.
    pub changes: &'a [Change],
    /// Code and name of each area.
    pub areas: &'a [(String, String)],
    /// The tables of the period before, as they were known at this release; `None` where there are none.
    pub before: Option<&'a [Table]>,
}

/// A file: its type for browsers, and its bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// The media type.
    pub media: &'static str,
    /// The content.
    pub bytes: Vec<u8>,
}

const CSV: &str = "text/csv; charset=utf-8; header=present";
const TEXT: &str = "text/plain; charset=utf-8";
/// The description of a table has a media type of its own (CSV on the Web, 2015).
const CSVW: &str = "application/csvm+json";

/// The name of the archive.
pub const ARCHIVE: &str = "all.zip";
/// The name of the definitions.
pub const README: &str = "README.txt";
/// The name of the page of totals.
pub const SUMMARY: &str = "summary.txt";

/// The name of a table's file for spreadsheets.
#[must_use]
pub fn for_spreadsheet(table: &Table) -> String {
    format!("{}-spreadsheet.csv", table.name)
}

/// The name of a table's file.
#[must_use]
pub fn for_machines(table: &Table) -> String {
    format!("{}.csv", table.name)
}

/// The file of this name; `None` if there is none.
///
/// # Errors
/// What the writing failed of, for the log.
pub fn file(w: &Words, bundle: Bundle<'_>, name: &str) -> Result<Option<File>, String> {
    let table = |file: &dyn Fn(&Table) -> String| bundle.tables.iter().find(|table| file(table) == name);
    let broken = |e: csv::Error| format!("writing {name}: {e}");
    let (media, bytes) = if name == ARCHIVE {
        ("application/zip", archive::zip(&folder(bundle), &all(w, bundle)?).map_err(|e| format!("writing {name}: {e}"))?)
    } else if name == README {
        (TEXT, papers::readme(w, bundle).into_bytes())
    } else if name == SUMMARY {
        (TEXT, papers::summary(w, bundle).into_bytes())
    } else if let Some(table) = table(&for_machines) {
        (CSV, report_csv::write(table).map_err(broken)?)
    } else if let Some(table) = table(&for_spreadsheet) {
        (CSV, report_csv::write_for_spreadsheet(table).map_err(broken)?)
    } else if let Some(table) = table(&csvw::name) {
        (CSVW, description(table, bundle.release))
    } else {
        return Ok(None);
    };
    Ok(Some(File { media, bytes }))
}

/// Every file of the archive: for people first, then each table and its description.
///
/// # Errors
/// What the writing failed of, for the log.
pub fn all(w: &Words, bundle: Bundle<'_>) -> Result<Vec<(String, Vec<u8>)>, String> {
    let names = [README.to_owned(), SUMMARY.to_owned()];
    let tables = bundle.tables.iter().flat_map(|table| [for_machines(table), csvw::name(table)]);
    let written = |name: String| match file(w, bundle, &name)? {
        Some(file) => Ok((name, file.bytes)),
        None => Err(format!("no file {name}")),
    };
    names.into_iter().chain(tables).map(written).collect()
}

/// The name under which this release is kept: `2026-10`, `2026-10-revision-1`, `2026-10-provisional`.
#[must_use]
pub fn folder(bundle: Bundle<'_>) -> String {
    let period = bundle.release.period;
    match bundle.revision {
        None => format!("{period}-provisional"),
        Some(0) => period.to_string(),
        Some(revision) => format!("{period}-revision-{revision}"),
    }
}

fn description(table: &Table, release: &Release) -> Vec<u8> {
    let in_all = |say: &dyn Fn(&Words) -> String| -> Texts { Lang::OFFERED.iter().map(|lang| (lang.code(), say(words(*lang)))).collect() };
    let described = Described {
        table: in_all(&|w| papers::table_words(w, table.name)),
        column: &|column| in_all(&|w| papers::column_words(w, column)),
    };
    csvw::write(table, release.period, &described)
}

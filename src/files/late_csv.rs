//! The late follow-ups of a day as CSV, for a supervisor's own spreadsheet: codes instead of names, so that a file that goes astray
//! tells of nobody. The form is that of the reports: UTF-8, CRLF, one header row.

use chrono::NaiveDate;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::files::csv_text;

/// One late follow-up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LateRow<'a> {
    /// Code of the child.
    pub child_code: &'a str,
    /// Code of the village.
    pub village: &'a str,
    /// Sign-in name of the worker.
    pub worker: &'a str,
    /// Rule.
    pub rule: RuleId,
    /// Class.
    pub class: Class,
    /// The day of the check.
    pub due_on: NaiveDate,
    /// Days past it.
    pub days_late: i32,
}

const COLUMNS: [&str; 7] = ["child_code", "village", "worker", "rule", "class", "due_on", "days_late"];

/// The bytes of the file.
///
/// # Errors
/// What the writing failed of.
pub fn write(rows: &[LateRow<'_>]) -> Result<Vec<u8>, csv::Error> {
    let mut csv = csv_text::writer(Vec::new());
    csv.write_record(COLUMNS)?;
    for row in rows {
        let (due_on, days) = (row.due_on.to_string(), row.days_late.to_string());
        let [child, village, worker] = [row.child_code, row.village, row.worker].map(csv_text::text);
        csv.write_record([&*child, &village, &worker, row.rule.code(), row.class.code(), &due_on, &days])?;
    }
    csv.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

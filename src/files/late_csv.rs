//! The urgent referrals without an answer and the late follow-ups of a day as CSV, for a supervisor's own spreadsheet: codes instead of names, so that a file that goes astray
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
    /// Rule, class and the day of the check; none where an answer is waited for and nothing is open.
    pub what: Option<(RuleId, Class, NaiveDate)>,
    /// Days past it.
    pub days_late: i32,
    /// An urgent referral of which nobody has written what became of it.
    pub unanswered: bool,
}

const COLUMNS: [&str; 8] = ["child_code", "village", "worker", "rule", "class", "due_on", "days_late", "unanswered"];

/// The bytes of the file.
///
/// # Errors
/// What the writing failed of.
pub fn write(rows: &[LateRow<'_>]) -> Result<Vec<u8>, csv::Error> {
    let mut csv = csv_text::writer(Vec::new());
    csv.write_record(COLUMNS)?;
    for row in rows {
        let (rule, class, due_on) =
            row.what.map_or(("", "", String::new()), |(rule, class, due_on)| (rule.code(), class.code(), due_on.to_string()));
        let (days, unanswered) = (row.days_late.to_string(), if row.unanswered { "yes" } else { "no" });
        let [child, village, worker] = [row.child_code, row.village, row.worker].map(csv_text::text);
        csv.write_record([&*child, &village, &worker, rule, class, &due_on, &days, unanswered])?;
    }
    csv.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

//! The form that adopts a protocol. Field names: `approved_by`, `from_*`, `reason`.

use chrono::NaiveDate;

use crate::draft::Reader;
use crate::draft::desk::reason;
use crate::draft::office::required_day;
use crate::fault::Fault;
use crate::fault::Faults;

/// The longest name with title, in characters (our own choice).
const MOST_NAME: usize = 120;

/// Who approved a protocol, from when it counts, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AdoptForm {
    /// The clinician or responsible person.
    pub approved_by: String,
    /// First day in force.
    pub from: NaiveDate,
    /// What changes and who asked for it.
    pub reason: String,
}

/// Reads an adoption. It counts from `today` at the earliest: what was said at visits that have been made stays as it was said.
///
/// # Errors
/// Every fault at once.
pub fn read_adopt(pairs: &[(String, String)], today: NaiveDate) -> Result<AdoptForm, Faults> {
    let mut r = Reader::new(pairs);
    let approved_by = r.required("approved_by", MOST_NAME);
    let from = required_day(&mut r, "from");
    if from.is_some_and(|from| from < today) {
        r.fault("from", Fault::Over);
    }
    let reason = reason(&mut r, "reason");
    let form = (|| Some(AdoptForm { approved_by: approved_by?, from: from?, reason: reason? }))();
    r.faults.or(form)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(list: &[(&str, &str)]) -> Result<AdoptForm, Vec<String>> {
        let pairs: Vec<(String, String)> = list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        read_adopt(&pairs, "2026-11-25".parse().expect("a date"))
            .map_err(|faults| faults.iter().map(|(field, fault)| format!("{field} {}", fault.code())).collect())
    }

    #[test]
    fn all_faults_come_at_once_and_a_day_that_is_over_is_refused() {
        assert_eq!(read(&[]), Err(vec!["approved_by missing".to_owned(), "from missing".to_owned(), "reason missing".to_owned()]));
        let typed = |day: &'static str| {
            [("approved_by", "Dr Oru"), ("from_day", day), ("from_month", "11"), ("from_year", "2026"), ("reason", "Arm limit as agreed")]
        };
        assert_eq!(read(&typed("24")), Err(vec!["from over".to_owned()]));
        assert_eq!(read(&typed("31")), Err(vec!["from not-a-date".to_owned()]));
        let form = read(&typed("25")).expect("read");
        assert_eq!((form.approved_by.as_str(), form.from.to_string()), ("Dr Oru", "2026-11-25".to_owned()));
    }
}

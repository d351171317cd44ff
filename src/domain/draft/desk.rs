//! The forms of the desk: closing a follow-up, moving a child, leaving. Names of their fields and what they become.
//! Whether the follow-up may be closed or the person may record it is decided elsewhere.
//!
//! Field names: close `category`, `note`; move `worker`, `area`, `from_*`, `reason`; leave `status`, `on_*`, `note`.

use chrono::NaiveDate;

use crate::child::ChildStatus;
use crate::code::codes;
use crate::draft::MOST_NOTE;
use crate::draft::Reader;
use crate::draft::office::MOST_AREA_CODE;
use crate::draft::office::MOST_SIGN_IN_NAME;
use crate::draft::office::required_day;
use crate::fault::Fault;
use crate::fault::Faults;

/// The fewest characters of a supervisor's reason (our own choice: one word explains nothing to the next reader).
pub const LEAST_REASON: usize = 10;

codes! {
    /// What kind of reason a supervisor has for closing a follow-up.
    CloseCategory, "closing category" {
        /// A clinician saw the child and decided.
        ClinicianDecided => "clinician_decided",
        /// Looked at at home: the child is well.
        SeenWell => "seen_well",
        /// Looked after by another programme or clinic.
        CareElsewhere => "care_elsewhere",
        /// What was written is wrong and cannot be corrected any more.
        WrongRecord => "wrong_record",
        /// The family does not want this followed up.
        FamilyDeclines => "family_declines",
        /// Something else, told in words.
        Other => "other",
    }
}

/// A supervisor's decision to close.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CloseForm {
    /// What kind of reason.
    pub category: CloseCategory,
    /// In words.
    pub note: String,
}

/// Reads a closing.
///
/// # Errors
/// Every fault at once.
pub fn read_close(pairs: &[(String, String)]) -> Result<CloseForm, Faults> {
    let mut r = Reader::new(pairs);
    let category = r.choice("category", |code| CloseCategory::from_code(code).ok());
    if category.is_none() && r.text("category").is_empty() {
        r.fault("category", Fault::Missing);
    }
    let note = reason(&mut r, "note");
    let form = (|| Some(CloseForm { category: category?, note: note? }))();
    r.faults.or(form)
}

/// Where a child goes and from when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MoveForm {
    /// Sign-in name of the worker.
    pub worker: String,
    /// Code of the area.
    pub area: String,
    /// First day there.
    pub from_on: NaiveDate,
    /// Why.
    pub reason: String,
}

/// Reads a move. It lies between `earliest`, when the child came to where it is now, and `today`: the lists follow at once.
///
/// # Errors
/// Every fault at once.
pub fn read_move(pairs: &[(String, String)], earliest: NaiveDate, today: NaiveDate) -> Result<MoveForm, Faults> {
    let mut r = Reader::new(pairs);
    let worker = r.required("worker", MOST_SIGN_IN_NAME);
    let area = r.required("area", MOST_AREA_CODE);
    let from_on = required_day(&mut r, "from");
    match from_on {
        Some(on) if on > today => r.fault("from", Fault::InFuture),
        Some(on) if on < earliest => r.fault("from", Fault::BeforeStart),
        _ => {}
    }
    let reason = r.required("reason", MOST_NOTE);
    let form = (|| Some(MoveForm { worker: worker?, area: area?, from_on: from_on?, reason: reason? }))();
    r.faults.or(form)
}

/// How a child left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeaveForm {
    /// How; never still in the programme, never by age, which needs no telling.
    pub status: ChildStatus,
    /// The day.
    pub on: NaiveDate,
    /// What the family wants known.
    pub note: Option<String>,
}

/// The ways of leaving that people tell of, in the order asked.
pub const WAYS_OF_LEAVING: [ChildStatus; 5] =
    [ChildStatus::Moved, ChildStatus::TransferredOut, ChildStatus::Refused, ChildStatus::ConsentWithdrawn, ChildStatus::Died];

/// Reads a leaving, between birth and `today`.
///
/// # Errors
/// Every fault at once.
pub fn read_leave(pairs: &[(String, String)], born: NaiveDate, today: NaiveDate) -> Result<LeaveForm, Faults> {
    let mut r = Reader::new(pairs);
    let status = r.choice("status", |code| ChildStatus::from_code(code).ok().filter(|s| WAYS_OF_LEAVING.contains(s)));
    if status.is_none() && r.text("status").is_empty() {
        r.fault("status", Fault::Missing);
    }
    let on = required_day(&mut r, "on");
    match on {
        Some(on) if on > today => r.fault("on", Fault::InFuture),
        Some(on) if on < born => r.fault("on", Fault::BeforeBirth),
        _ => {}
    }
    let note = r.optional("note", MOST_NOTE);
    let form = (|| Some(LeaveForm { status: status?, on: on?, note }))();
    r.faults.or(form)
}

/// A reason long enough to explain something.
pub(super) fn reason(r: &mut Reader<'_>, field: &str) -> Option<String> {
    let text = r.required(field, MOST_NOTE)?;
    if text.chars().count() < LEAST_REASON {
        r.fault(field, Fault::TooShort { least: LEAST_REASON });
        return None;
    }
    Some(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
        list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect()
    }

    fn day(text: &str) -> NaiveDate {
        text.parse().expect("a day")
    }

    fn fields(faults: &Faults) -> Vec<String> {
        faults.iter().map(|(field, fault)| format!("{field} {}", fault.code())).collect()
    }

    #[test]
    fn closing_needs_a_kind_and_ten_characters() {
        for (note, expected) in [("123456789", false), ("1234567890", true), ("  12345678  ", false), ("ééééééééé", false)] {
            assert_eq!(read_close(&pairs(&[("category", "other"), ("note", note)])).is_ok(), expected, "{note:?}");
        }
        assert_eq!(fields(&read_close(&[]).expect_err("faults")), ["category missing", "note missing"]);
        assert_eq!(
            fields(&read_close(&pairs(&[("category", "x"), ("note", "short")])).expect_err("faults")),
            ["category unknown-choice", "note too-short"]
        );
    }

    #[test]
    fn a_move_lies_between_the_last_one_and_today() {
        let typed = |d: &'static str| {
            pairs(&[
                ("worker", "tamsi"),
                ("area", "ulopi"),
                ("from_day", d),
                ("from_month", "11"),
                ("from_year", "2026"),
                ("reason", "far"),
            ])
        };
        let read = |d| read_move(&typed(d), day("2026-11-10"), day("2026-11-25"));
        assert!(read("10").is_ok() && read("25").is_ok());
        assert_eq!(fields(&read("9").expect_err("faults")), ["from before-start"]);
        assert_eq!(fields(&read("26").expect_err("faults")), ["from in-future"]);
    }

    #[test]
    fn nobody_leaves_before_birth_or_by_age() {
        let typed =
            |status: &'static str, d: &'static str| pairs(&[("status", status), ("on_day", d), ("on_month", "11"), ("on_year", "2026")]);
        let read = |status, d| read_leave(&typed(status, d), day("2026-11-10"), day("2026-11-25"));
        assert_eq!(read("moved", "10").map(|f| f.status), Ok(ChildStatus::Moved));
        assert_eq!(fields(&read("aged_out", "10").expect_err("faults")), ["status unknown-choice"]);
        assert_eq!(fields(&read("moved", "9").expect_err("faults")), ["on before-birth"]);
        assert_eq!(fields(&read("active", "26").expect_err("faults")), ["status unknown-choice", "on in-future"]);
    }
}

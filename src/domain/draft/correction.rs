//! The forms that correct the record itself: taking a visit back, moving it to another child, merging two records of one child. Names of their fields and what
//! they become. Whether the visit is there and who may correct it is decided elsewhere.
//!
//! Field names: take back `reason`, `note`; move `note`, `sure`; merge `survivor`, `right_*`, `note`, `sure`.

use crate::code::codes;
use crate::draft::Reader;
use crate::draft::desk::reason;
use crate::fault::Fault;
use crate::fault::Faults;
use crate::record::Answers;
use crate::record::Question;
use crate::record::Side;

codes! {
    /// Why a visit is taken back.
    VoidReason, "reason for taking back" {
        /// It was entered for the wrong child, and whose it is is not known here.
        WrongChild => "wrong_child",
        /// It never happened.
        NeverHappened => "never_happened",
        /// The same visit was entered twice.
        EnteredTwice => "entered_twice",
        /// Something else, told in words.
        Other => "other",
    }
}

/// A visit that is taken back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VoidForm {
    /// What kind of reason.
    pub reason: VoidReason,
    /// In words.
    pub note: String,
}

/// Reads the taking back of a visit.
///
/// # Errors
/// Every fault at once.
pub fn read_void(pairs: &[(String, String)]) -> Result<VoidForm, Faults> {
    let mut r = Reader::new(pairs);
    let kind = r.choice("reason", |code| VoidReason::from_code(code).ok());
    if kind.is_none() && r.text("reason").is_empty() {
        r.fault("reason", Fault::Missing);
    }
    let note = reason(&mut r, "note");
    let form = (|| Some(VoidForm { reason: kind?, note: note? }))();
    r.faults.or(form)
}

/// A visit that goes to the child it is really about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MoveVisitForm {
    /// Why, in words.
    pub note: String,
    /// What speaks against it was read.
    pub sure: bool,
}

/// Reads the move of a visit.
///
/// # Errors
/// Every fault at once.
pub fn read_move_visit(pairs: &[(String, String)]) -> Result<MoveVisitForm, Faults> {
    let mut r = Reader::new(pairs);
    let sure = r.yes_no("sure") == Some(true);
    let note = reason(&mut r, "note");
    let form = note.map(|note| MoveVisitForm { note, sure });
    r.faults.or(form)
}

/// Two records that become one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MergeForm {
    /// Which goes on.
    pub survivor: Side,
    /// Which is right, for each question asked.
    pub answers: Answers,
    /// Why, in words.
    pub note: String,
}

/// Reads a merge with an answer to every question asked.
///
/// # Errors
/// Every fault at once.
pub fn read_merge(pairs: &[(String, String)], asked: &[Question]) -> Result<MergeForm, Faults> {
    let mut r = Reader::new(pairs);
    let survivor = side(&mut r, "survivor");
    let mut answers = Answers::default();
    for question in asked {
        if let Some(side) = side(&mut r, &format!("right_{}", question.code())) {
            answers.set(*question, side);
        }
    }
    let note = reason(&mut r, "note");
    if r.yes_no("sure") != Some(true) {
        r.fault("sure", Fault::LookFirst);
    }
    let form = (|| Some(MergeForm { survivor: survivor?, answers, note: note? }))();
    r.faults.or(form)
}

fn side(r: &mut Reader<'_>, field: &str) -> Option<Side> {
    let side = r.choice(field, Side::from_code);
    if side.is_none() && r.text(field).is_empty() {
        r.fault(field, Fault::Missing);
    }
    side
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
        list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect()
    }

    fn fields(faults: &Faults) -> Vec<String> {
        faults.iter().map(|(field, fault)| format!("{field} {}", fault.code())).collect()
    }

    #[test]
    fn taking_back_needs_a_kind_and_ten_characters() {
        let read = |reason, note| read_void(&pairs(&[("reason", reason), ("note", note)]));
        let form = read("wrong_child", " It was for her sister. ").expect("no fault");
        assert_eq!(form, VoidForm { reason: VoidReason::WrongChild, note: "It was for her sister.".to_owned() });
        assert_eq!(fields(&read("", "").expect_err("faults")), ["reason missing", "note missing"]);
        assert_eq!(fields(&read("gone", "123456789").expect_err("faults")), ["reason unknown-choice", "note too-short"]);
    }

    #[test]
    fn moving_needs_a_reason_and_says_whether_it_was_read() {
        let read = |sure, note| read_move_visit(&pairs(&[("sure", sure), ("note", note)]));
        assert!(read("yes", "1234567890").expect("no fault").sure && !read("", "1234567890").expect("no fault").sure);
        assert_eq!(fields(&read("x", "").expect_err("faults")), ["sure unknown-choice", "note missing"]);
    }

    #[test]
    fn merging_needs_an_answer_to_every_question_and_a_second_look() {
        let all = [("survivor", "second"), ("right_born", "first"), ("note", "1234567890"), ("sure", "yes")];
        let form = read_merge(&pairs(&all), &[Question::Born]).expect("no fault");
        assert_eq!((form.survivor, form.answers.born, form.answers.sex), (Side::Second, Some(Side::First), None));
        assert_eq!(read_merge(&pairs(&all), &[]).map(|f| f.answers.born), Ok(None), "nobody asked");
        let faults = read_merge(&pairs(&[("right_sex", "third")]), &[Question::Born, Question::Sex]).expect_err("faults");
        let expected = ["survivor missing", "right_born missing", "right_sex unknown-choice", "note missing", "sure look-first"];
        assert_eq!(fields(&faults), expected);
    }
}

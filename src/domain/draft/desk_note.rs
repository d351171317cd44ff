//! What a supervisor writes to the worker about a child. Field names: `words`, `together_*`.

use chrono::NaiveDate;

use crate::draft::MOST_NOTE;
use crate::draft::Reader;
use crate::draft::office::day;
use crate::fault::Fault;
use crate::fault::Faults;

/// A note as it is to be kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoteForm {
    /// What is written.
    pub words: String,
    /// The day of a visit made together, if one is planned.
    pub together_on: Option<NaiveDate>,
}

/// Reads a note. A visit together is not planned for a day before `today`.
///
/// # Errors
/// Every fault at once.
pub fn read_note(pairs: &[(String, String)], today: NaiveDate) -> Result<NoteForm, Faults> {
    let mut r = Reader::new(pairs);
    let words = r.required("words", MOST_NOTE);
    let together_on = day(&mut r, "together");
    if together_on.is_some_and(|on| on < today) {
        r.fault("together", Fault::Over);
    }
    let form = words.map(|words| NoteForm { words, together_on });
    r.faults.or(form)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(list: &[(&str, &str)]) -> Result<NoteForm, Vec<(String, &'static str)>> {
        let pairs: Vec<(String, String)> = list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        let today = NaiveDate::from_ymd_opt(2026, 11, 25).expect("a date");
        read_note(&pairs, today).map_err(|faults| faults.iter().map(|(field, fault)| (field.to_owned(), fault.code())).collect())
    }

    #[test]
    fn words_must_be_there_and_a_day_together_lies_ahead() {
        let day = |d| [("words", "I come along"), ("together_day", d), ("together_month", "11"), ("together_year", "2026")];
        assert_eq!(read(&day("25")).expect("today").together_on, NaiveDate::from_ymd_opt(2026, 11, 25));
        assert_eq!(read(&day("24")), Err(vec![("together".to_owned(), Fault::Over.code())]));
        assert_eq!(read(&[("words", " Look at her feet. ")]).expect("words").words, "Look at her feet.");
        assert_eq!(read(&[("words", " "), ("together_day", "40")]).expect_err("two faults").len(), 2);
    }
}

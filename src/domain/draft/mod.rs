//! From text as typed to values: every fault of a form at once, each with its field. Nothing is guessed and nothing lost;
//! the caller keeps the text to show the form again.

pub mod adopt;
pub mod child;
pub mod correction;
pub mod desk;
pub mod desk_note;
pub mod fill;
pub mod give;
pub mod office;
pub mod pressing;
pub mod questions;
pub mod unchecked;
pub mod visit;

use chrono::NaiveDate;

use crate::fault::Fault;
use crate::fault::Faults;
use crate::number_text::NumberFault;
use crate::number_text::parse_scaled;

/// The longest free text that is kept, in characters.
pub const MOST_NOTE: usize = 2000;
/// The longest name that is kept, in characters.
pub const MOST_NAME: usize = 120;

/// The pairs of a form, with what is wrong so far.
pub(crate) struct Reader<'a> {
    pairs: &'a [(String, String)],
    /// What is wrong so far, in the order of reading.
    pub(crate) faults: Faults,
}

impl<'a> Reader<'a> {
    pub(crate) const fn new(pairs: &'a [(String, String)]) -> Self {
        Self { pairs, faults: Faults::new() }
    }

    /// The first value of a field, without blanks around; empty if absent.
    pub(crate) fn text(&self, field: &str) -> &'a str {
        self.pairs.iter().find(|(name, _)| name == field).map_or("", |(_, value)| value.trim())
    }

    /// All values of a field that are not empty.
    pub(crate) fn all(&self, field: &str) -> impl Iterator<Item = &'a str> {
        self.pairs.iter().filter(move |(name, value)| name == field && !value.trim().is_empty()).map(|(_, value)| value.trim())
    }

    /// Names of fields that begin so, without the beginning.
    pub(crate) fn named(&self, beginning: &str) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.pairs.iter().filter_map(move |(name, value)| Some((name.strip_prefix(beginning)?, value.trim())))
    }

    pub(crate) fn fault(&mut self, field: &str, fault: Fault) {
        self.faults.add(field, fault);
    }

    /// A text that may be absent but not too long.
    pub(crate) fn optional(&mut self, field: &str, most: usize) -> Option<String> {
        let text = self.text(field);
        if text.chars().count() > most {
            self.fault(field, Fault::TooLong { most });
            return None;
        }
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// A text that must be there.
    pub(crate) fn required(&mut self, field: &str, most: usize) -> Option<String> {
        if self.text(field).is_empty() {
            self.fault(field, Fault::Missing);
            return None;
        }
        self.optional(field, most)
    }

    /// `yes`, `no`, or nothing for "not asked".
    pub(crate) fn yes_no(&mut self, field: &str) -> Option<bool> {
        match self.text(field) {
            "yes" => Some(true),
            "no" => Some(false),
            "" => None,
            _ => {
                self.fault(field, Fault::UnknownChoice);
                None
            }
        }
    }

    /// One code of a list, or nothing.
    pub(crate) fn choice<T>(&mut self, field: &str, from_code: impl Fn(&str) -> Option<T>) -> Option<T> {
        let text = self.text(field);
        if text.is_empty() {
            return None;
        }
        let value = from_code(text);
        if value.is_none() {
            self.fault(field, Fault::UnknownChoice);
        }
        value
    }

    /// A number as typed, scaled by `10^decimals`, within bounds.
    pub(crate) fn number(&mut self, field: &str, decimals: u32, least: u64, most: u64, unit: &'static str) -> Option<u64> {
        let text = self.text(field);
        if text.is_empty() {
            return None;
        }
        match parse_scaled(text, decimals) {
            Ok(value) if (least..=most).contains(&value) => Some(value),
            Ok(_) => {
                self.fault(field, Fault::Outside { least: plain(least, decimals), most: plain(most, decimals), unit });
                None
            }
            Err(fault) => {
                self.fault(field, number_fault(fault, decimals));
                None
            }
        }
    }

    /// A count of times or days, at most `most`.
    pub(crate) fn count(&mut self, field: &str, most: u64) -> Option<u64> {
        self.number(field, 0, 0, most, "")
    }

    /// A date typed in three boxes: `…_day`, `…_month`, `…_year`. Nothing typed is no date; part of it is a fault.
    pub(crate) fn date(&mut self, field: &str) -> Option<NaiveDate> {
        let boxes = [format!("{field}_day"), format!("{field}_month"), format!("{field}_year")];
        let texts = boxes.each_ref().map(|name| self.text(name));
        if texts.iter().all(|t| t.is_empty()) {
            return None;
        }
        let date = date_of(texts[0], texts[1], texts[2]);
        if date.is_none() {
            self.fault(&format!("{field}_day"), Fault::NotADate);
        }
        date
    }
}

/// A date from day, month and year as typed; the year with two or four digits, any script's digits.
#[must_use]
pub fn date_of(day: &str, month: &str, year: &str) -> Option<NaiveDate> {
    let number = |text: &str| parse_scaled(text, 0).ok();
    let year = i32::try_from(number(year)?).ok()?;
    let year = if year < 100 { year + 2000 } else { year };
    if !(1900..=2200).contains(&year) {
        return None;
    }
    NaiveDate::from_ymd_opt(year, u32::try_from(number(month)?).ok()?, u32::try_from(number(day)?).ok()?)
}

const fn number_fault(fault: NumberFault, decimals: u32) -> Fault {
    match fault {
        NumberFault::TooManyDecimals => Fault::TooManyDecimals { most: decimals },
        NumberFault::NotANumber | NumberFault::TooLong => Fault::NotANumber,
    }
}

/// A scaled number as people write it: 500 with 3 decimals is `0.5`.
pub(crate) fn plain(value: u64, decimals: u32) -> String {
    let scale = 10_u64.pow(decimals);
    let whole = value / scale;
    let rest = value % scale;
    if rest == 0 {
        return whole.to_string();
    }
    let digits = format!("{rest:0width$}", width = usize::try_from(decimals).unwrap_or(0));
    format!("{whole}.{}", digits.trim_end_matches('0'))
}

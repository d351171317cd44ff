//! Small readings shared by all tables: keys, instants, lists of codes, whole numbers. It knows no table and no domain word.

use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::DurationRound;
use chrono::TimeDelta;
use chrono::Utc;
use domain::UnknownCode;
use uuid::Uuid;

use crate::store::error::StoreError;

/// A key as the engine's own type.
pub fn uuid(id: u128) -> Uuid {
    Uuid::from_u128(id)
}

/// An instant in whole seconds, so that text order on SQLite is time order.
pub fn whole_second(at: DateTime<Utc>) -> DateTime<Utc> {
    at.duration_trunc(TimeDelta::seconds(1)).unwrap_or(at)
}

/// Codes joined by one space; an empty list is an empty text.
pub fn join<'a>(codes: impl IntoIterator<Item = &'a str>) -> String {
    codes.into_iter().collect::<Vec<_>>().join(" ")
}

/// Reads codes joined by one space.
pub fn split<T: Ord>(text: &str, read: impl Fn(&str) -> Result<T, UnknownCode>) -> Result<BTreeSet<T>, UnknownCode> {
    text.split(' ').filter(|code| !code.is_empty()).map(read).collect()
}

/// A row being read: names itself when something in it does not parse.
#[derive(Debug, Clone, Copy)]
pub struct Reading<I> {
    /// The table.
    pub table: &'static str,
    /// The row's key.
    pub id: I,
}

impl<I: ToString + Copy> Reading<I> {
    /// A failure of this row.
    pub fn corrupt(self, what: impl ToString) -> StoreError {
        StoreError::corrupt(self.table, self.id, what)
    }

    /// A word with a permanent code.
    pub fn code<T>(self, text: &str, read: impl Fn(&str) -> Result<T, UnknownCode>) -> Result<T, StoreError> {
        read(text).map_err(|e| self.corrupt(e))
    }

    /// A word that may be absent.
    pub fn maybe_code<T>(self, text: Option<&str>, read: impl Fn(&str) -> Result<T, UnknownCode>) -> Result<Option<T>, StoreError> {
        text.map(|text| self.code(text, read)).transpose()
    }

    /// A list of words.
    pub fn codes<T: Ord>(self, text: &str, read: impl Fn(&str) -> Result<T, UnknownCode>) -> Result<BTreeSet<T>, StoreError> {
        split(text, read).map_err(|e| self.corrupt(e))
    }

    /// A list of words that may not have been asked for.
    pub fn maybe_codes<T: Ord>(
        self,
        text: Option<&str>,
        read: impl Fn(&str) -> Result<T, UnknownCode>,
    ) -> Result<Option<BTreeSet<T>>, StoreError> {
        text.map(|text| self.codes(text, read)).transpose()
    }

    /// A number that fits its type in the program.
    pub fn number<N: TryFrom<i32>>(self, what: &str, value: i32) -> Result<N, StoreError> {
        N::try_from(value).map_err(|_| self.corrupt(format!("{what} is {value}")))
    }

    /// A number that may be absent.
    pub fn maybe_number<N: TryFrom<i32>>(self, what: &str, value: Option<i32>) -> Result<Option<N>, StoreError> {
        value.map(|value| self.number(what, value)).transpose()
    }

    /// A measurement within its bounds, made from whole units.
    pub fn maybe_measure<N: TryFrom<i32>, T, E>(
        self,
        what: &str,
        value: Option<i32>,
        make: impl Fn(N) -> Result<T, E>,
    ) -> Result<Option<T>, StoreError> {
        let Some(number) = self.maybe_number(what, value)? else { return Ok(None) };
        make(number).map(Some).map_err(|_| self.corrupt(format!("{what} is out of range")))
    }
}

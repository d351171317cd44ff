//! Reads what a case expects. A key that is absent is not checked.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::UnknownCode;
use domain::protocol::StageId;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::RuleId;

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Item;
use super::super::toml_reader::Table;
use super::super::toml_reader::unknown_word;

/// Rule, class kept, due day.
pub type OpenLine = (RuleId, Class, NaiveDate);

/// What is expected at a visit; the outer `None` is "not checked", an inner one "none".
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Expected {
    /// Weight-for-age, hundredths.
    pub waz: Option<Option<i32>>,
    /// Length-for-age, hundredths.
    pub laz: Option<Option<i32>>,
    /// Weight-for-length, hundredths.
    pub wlz: Option<Option<i32>>,
    /// Chronological months.
    pub completed_months: Option<u32>,
    /// Corrected months.
    pub stage_months: Option<Option<u32>>,
    /// Stage.
    pub stage: Option<Option<StageId>>,
    /// Exactly the rules that fire and stand, with the class of this visit.
    pub fires: Option<BTreeSet<(RuleId, Class)>>,
    /// At least these hold but are silenced or muted.
    pub silenced: Option<BTreeSet<RuleId>>,
    /// Exactly the follow-ups open after the visit.
    pub open: Option<BTreeSet<OpenLine>>,
    /// Exactly those that it closed.
    pub closed: Option<BTreeSet<(RuleId, CloseReason)>>,
}

/// What is expected at `as_of`.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ExpectedNow {
    /// Exactly the lists that hold, with days over.
    pub visits: Option<BTreeSet<(RuleId, i32)>>,
    /// Target, opening and closing of the next visit.
    pub next_visit: Option<Option<[NaiveDate; 3]>>,
    /// Exactly the follow-ups that are open.
    pub open: Option<BTreeSet<OpenLine>>,
}

/// Reads a `[case.visit.expect]`.
pub fn at_visit(mut t: Table<'_, '_>, f: &mut Faults<'_>) -> Expected {
    let expected = Expected {
        waz: z(&mut t, f, "waz"),
        laz: z(&mut t, f, "laz"),
        wlz: z(&mut t, f, "wlz"),
        completed_months: months(&mut t, f, "completed_months"),
        stage_months: or_none(&mut t, f, "stage_months", months),
        stage: or_none(&mut t, f, "stage", |t, f, key| t.word(f, key, StageId::from_code)),
        fires: rows(&mut t, f, "fires", "[rule, class]", |row| Ok((rule(row, 0)?, class(row, 1)?)), 2),
        silenced: t.words(f, "silenced", RuleId::from_code).map(|rules| rules.into_iter().collect()),
        open: open(&mut t, f),
        closed: rows(&mut t, f, "closed", "[rule, reason]", |row| Ok((rule(row, 0)?, word(row, 1, CloseReason::from_code)?)), 2),
    };
    t.finish(f);
    expected
}

/// Reads a `[case.expect]`.
pub fn now(mut t: Table<'_, '_>, f: &mut Faults<'_>) -> ExpectedNow {
    let days = |row: &[Item<'_, '_>]| {
        let rule = Some(rule(row, 0)?).filter(|rule| rule.is_list()).ok_or(Wrong::Form)?;
        let days = row.get(1).and_then(Item::as_whole).and_then(|days| i32::try_from(days).ok());
        Ok((rule, days.ok_or(Wrong::Form)?))
    };
    let expected = ExpectedNow {
        visits: rows(&mut t, f, "visits", "[list, days overdue]", days, 2),
        next_visit: next_visit(&mut t, f),
        open: open(&mut t, f),
    };
    t.finish(f);
    expected
}

fn open(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<BTreeSet<OpenLine>> {
    let line = |row: &[Item<'_, '_>]| Ok((rule(row, 0)?, class(row, 1)?, row.get(2).and_then(Item::as_date).ok_or(Wrong::Form)?));
    rows(t, f, "open", "[rule, class, due date]", line, 3)
}

/// Why a short list cannot be read.
enum Wrong {
    /// It is not of the form that is asked for.
    Form,
    /// It holds a word that is not known.
    Word(UnknownCode),
}

fn word<T>(row: &[Item<'_, '_>], at: usize, read: impl Fn(&str) -> Result<T, UnknownCode>) -> Result<T, Wrong> {
    read(row.get(at).and_then(Item::as_text).ok_or(Wrong::Form)?).map_err(Wrong::Word)
}

fn rule(row: &[Item<'_, '_>], at: usize) -> Result<RuleId, Wrong> {
    word(row, at, RuleId::from_code)
}

fn class(row: &[Item<'_, '_>], at: usize) -> Result<Class, Wrong> {
    word(row, at, Class::from_code)
}

/// A list of short lists.
fn rows<T: Ord>(
    t: &mut Table<'_, '_>,
    f: &mut Faults<'_>,
    key: &str,
    what: &str,
    read: impl Fn(&[Item<'_, '_>]) -> Result<T, Wrong>,
    columns: usize,
) -> Option<BTreeSet<T>> {
    let path = t.key(key);
    let mut rows = BTreeSet::new();
    for item in t.list(f, key)? {
        let row = item.as_list().filter(|row| row.len() == columns);
        match row.as_deref().map_or(Err(Wrong::Form), &read) {
            Ok(row) => {
                rows.insert(row);
            }
            Err(Wrong::Form) => f.add(&item.span(), &path, Saying::plain(format!("must hold lists of the form {what}"))),
            Err(Wrong::Word(unknown)) => f.add(&item.span(), &path, unknown_word(&unknown)),
        }
    }
    Some(rows)
}

fn next_visit(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<Option<[NaiveDate; 3]>> {
    let items = t.list(f, "next_visit")?;
    if items.is_empty() {
        return Some(None);
    }
    let days: Option<Vec<NaiveDate>> = items.iter().map(Item::as_date).collect();
    match days.as_deref() {
        Some(&[target, opens, closes]) => Some(Some([target, opens, closes])),
        _ => {
            t.fault(f, "next_visit", say("must be [target, opens, closes], or [] for none"));
            None
        }
    }
}

fn months(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Option<u32> {
    t.whole(f, key, 0..=60).and_then(|months| u32::try_from(months).ok())
}

/// A value, or the word `"none"`.
fn or_none<'a, 't, 'f, T>(
    t: &mut Table<'a, 't>,
    f: &mut Faults<'f>,
    key: &str,
    read: impl FnOnce(&mut Table<'a, 't>, &mut Faults<'f>, &str) -> Option<T>,
) -> Option<Option<T>> {
    if t.is_text(key, "none") {
        t.text(f, key);
        return Some(None);
    }
    read(t, f, key).map(Some)
}

fn z(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Option<Option<i32>> {
    or_none(t, f, key, |t, f, key| {
        let hundredths = t.number(f, key)? * 100.0;
        if (hundredths - hundredths.round()).abs() > 1e-6 || hundredths.abs() > 100_000.0 {
            t.fault(f, key, say("must be a z-score with at most two decimals, or \"none\""));
            return None;
        }
        // Within ±100,000 by the check above.
        Some(hundredths.round() as i32)
    })
}

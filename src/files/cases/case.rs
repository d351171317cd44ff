//! Reads one case: the child, its visits, what is expected.

use chrono::NaiveDate;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::ids::VisitId;
use domain::units::Weight;
use domain::visit::Visit;

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::expect;
use super::expect::Expected;
use super::expect::ExpectedNow;
use super::visit;

/// One child's story and what the rules must say about it.
#[derive(Debug, Clone)]
pub struct Case {
    /// Unique in the file.
    pub id: String,
    /// Free text.
    pub note: String,
    /// The child.
    pub child: Child,
    /// Its visits in the order of the file, each named by its place from 1.
    pub visits: Vec<Visit>,
    /// What is expected at each visit.
    pub expected: Vec<Expected>,
    /// The day on which the rest is judged.
    pub as_of: NaiveDate,
    /// What is expected then.
    pub expected_now: ExpectedNow,
}

/// Reads a `[[case]]`.
pub fn case(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<Case> {
    let id = t.need_text(f, "id", say("a name for the case, unique in the file"));
    if !id.is_empty() {
        t.rename(format!("case {id}"));
    }
    let note = t.text(f, "note").unwrap_or_default();
    let mut tables = t.tables(f, "visit");
    let mut read = Vec::new();
    for (at, table) in tables.iter_mut().enumerate() {
        table.rename(format!("case {id}, visit {}", at + 1));
        let number = u128::try_from(at).unwrap_or(0) + 1;
        read.push(visit::visit(table, f, VisitId(number)));
    }
    let infant = if t.need(f, "infant", say("the child as a table [case.infant]")) { t.table(f, "infant") } else { None };
    let first = read.iter().flatten().map(|(visit, _)| visit.on).min();
    let last = read.iter().flatten().map(|(visit, _)| visit.on).max();
    let as_of_given = t.date(f, "as_of");
    let mut infant = infant?;
    infant.rename(format!("case {id}, infant"));
    let child = child(&mut infant, f, first.or(as_of_given));
    infant.finish(f);
    if let (Some(as_of), Some(last)) = (as_of_given, last)
        && as_of < last
    {
        t.fault(f, "as_of", Saying::plain(format!("lies before the last visit, {last}; it must be that day or later")));
    }
    let Some(as_of) = as_of_given.or(last) else {
        t.fault(f, "as_of", say("is needed in a case without visits"));
        return None;
    };
    let expected_now = t.table(f, "expect").map_or_else(ExpectedNow::default, |mut table| {
        table.rename(format!("case {id}, expect"));
        expect::now(table, f)
    });
    let mut child = child?;
    for (table, read) in tables.into_iter().zip(&read) {
        if let Some((visit, _)) = read
            && visit.on < child.born
        {
            table.fault(f, "date", Saying::plain(format!("lies before birth, {}", child.born)));
        }
        table.finish(f);
    }
    child.registered_on = child.registered_on.max(child.born);
    let (visits, expected) = read.into_iter().flatten().unzip();
    Some(Case { id, note, child, visits, expected, as_of, expected_now })
}

fn child(t: &mut Table<'_, '_>, f: &mut Faults<'_>, first_visit: Option<NaiveDate>) -> Option<Child> {
    t.need(f, "sex", say("\"F\" or \"M\""));
    t.need(f, "birth_date", say("the birth date, e.g. 2025-06-10"));
    let sex = t.word(f, "sex", Sex::from_code);
    let born = t.date(f, "birth_date");
    let gestation_days = t.whole(f, "gestation_days", 140..=310).and_then(|days| u16::try_from(days).ok());
    let weight = t.whole(f, "birth_weight_g", i64::from(Weight::LEAST)..=i64::from(Weight::MOST));
    let birth_weight = weight.and_then(|grams| Weight::from_grams(u32::try_from(grams).ok()?).ok());
    let registered_on = t.date(f, "registered_on");
    if let (Some(registered), Some(born)) = (registered_on, born)
        && registered < born
    {
        t.fault(f, "registered_on", Saying::plain(format!("lies before birth, {born}")));
    }
    let ever_breastfed = t.flag(f, "ever_breastfed");
    let severe_eczema = t.flag(f, "severe_eczema");
    let status = t.word(f, "status", ChildStatus::from_code).unwrap_or(ChildStatus::Active);
    let born = born?;
    Some(Child {
        sex: sex?,
        born,
        birth_day_known: true,
        gestation_days,
        birth_weight,
        registered_on: registered_on.or(first_visit).unwrap_or(born),
        ever_breastfed,
        severe_eczema,
        known_food_allergy: None,
        status,
        looks_like_another: false,
    })
}

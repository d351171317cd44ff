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

/// Reads a `[[case]]`: its name, and the case if nothing that it needs is missing or wrong.
pub fn case(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> (String, Option<Case>) {
    let id = t.need_text(f, "id", say("a name for the case, unique in the file"));
    let case = named(t, f, &id);
    (id, case)
}

fn named(t: &mut Table<'_, '_>, f: &mut Faults<'_>, id: &str) -> Option<Case> {
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
    // Every table is read to its end, whatever is wrong with another: all faults of a case are told at once.
    let (child, born) = match infant {
        Some(mut infant) => {
            infant.rename(format!("case {id}, infant"));
            let read = child(&mut infant, f, first.or(as_of_given));
            infant.finish(f);
            read
        }
        None => (None, None),
    };
    if let (Some(as_of), Some(last)) = (as_of_given, last)
        && as_of < last
    {
        t.fault(f, "as_of", Saying::plain(format!("lies before the last visit, {last}; it must be that day or later")));
    }
    let as_of = as_of_given.or(last);
    if as_of.is_none() && tables.is_empty() && !t.has("as_of") {
        t.fault(f, "as_of", say("is needed in a case without visits"));
    }
    let expected_now = t.table(f, "expect").map_or_else(ExpectedNow::default, |mut table| {
        table.rename(format!("case {id}, expect"));
        expect::now(table, f)
    });
    for (table, read) in tables.into_iter().zip(&read) {
        if let (Some((visit, _)), Some(born)) = (read, born)
            && visit.on < born
        {
            table.fault(f, "date", Saying::plain(format!("lies before birth, {born}")));
        }
        table.finish(f);
    }
    let (mut child, as_of) = (child?, as_of?);
    child.registered_on = child.registered_on.max(child.born);
    let (visits, expected) = read.into_iter().flatten().unzip();
    Some(Case { id: id.to_owned(), note, child, visits, expected, as_of, expected_now })
}

/// The child, and the day of birth also where something else about the child cannot be read.
fn child(t: &mut Table<'_, '_>, f: &mut Faults<'_>, first_visit: Option<NaiveDate>) -> (Option<Child>, Option<NaiveDate>) {
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
    let (Some(sex), Some(day)) = (sex, born) else { return (None, born) };
    let child = Child {
        sex,
        born: day,
        birth_day_known: true,
        gestation_days,
        birth_weight,
        registered_on: registered_on.or(first_visit).unwrap_or(day),
        ever_breastfed,
        severe_eczema,
        known_food_allergy: None,
        status,
        looks_like_another: false,
    };
    (Some(child), born)
}

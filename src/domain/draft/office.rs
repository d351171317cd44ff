//! The forms of the office: a person, a cover, an area. Names of their fields and what they become. Knows nobody's role:
//! who may send them is decided elsewhere.
//!
//! Field names: person `full_name`, `sign_in_name`, `role`, `phone`, `language`, `start_*`, `end_*`, `areas`, `workers`;
//! cover `covered_by`, `from_*`, `to_*`; area `name`, `code`, `parent`, `active`.

use chrono::NaiveDate;

use crate::draft::MOST_NAME;
use crate::draft::Reader;
use crate::draft::date_of;
use crate::fault::Fault;
use crate::fault::Faults;
use crate::role::Role;

/// The longest sign-in name, in characters.
pub const MOST_SIGN_IN_NAME: usize = 40;
/// The longest area code, as the database holds it.
pub const MOST_AREA_CODE: usize = 40;
/// The longest telephone number, in characters as typed.
pub const MOST_PHONE: usize = 30;
/// Names that are addresses of their own.
const ADDRESSES: [&str; 1] = ["new"];

/// A person as written down by an administrator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonForm {
    /// The name people call them by.
    pub full_name: String,
    /// The name typed at sign-in.
    pub sign_in_name: String,
    /// What they are in the programme.
    pub role: Role,
    /// Phone.
    pub phone: Option<String>,
    /// Chosen language; `None` = the programme's.
    pub language: Option<String>,
    /// First day.
    pub started_on: NaiveDate,
    /// Last day.
    pub ended_on: Option<NaiveDate>,
    /// Codes of the areas a supervisor looks after.
    pub areas: Vec<String>,
    /// Sign-in names of the workers a supervisor looks after.
    pub workers: Vec<String>,
}

/// Reads a person. Languages offered are given: this room knows none.
///
/// # Errors
/// Every fault at once.
pub fn read_person(pairs: &[(String, String)], languages: &[&str]) -> Result<PersonForm, Faults> {
    let mut r = Reader::new(pairs);
    let full_name = r.required("full_name", MOST_NAME);
    let sign_in_name = r.required("sign_in_name", MOST_SIGN_IN_NAME).map(|name| name.to_lowercase());
    if let Some(name) = &sign_in_name {
        if !is_plain(name, &['.', '-', '_']) {
            r.fault("sign_in_name", Fault::PlainLetters);
        } else if ADDRESSES.contains(&name.as_str()) {
            r.fault("sign_in_name", Fault::Taken);
        }
    }
    let role = r.choice("role", |code| Role::from_code(code).ok());
    if role.is_none() && r.text("role").is_empty() {
        r.fault("role", Fault::Missing);
    }
    let phone = r.optional("phone", MOST_PHONE);
    let language = r.choice("language", |code| languages.contains(&code).then(|| code.to_owned()));
    let started_on = required_day(&mut r, "start");
    let ended_on = day(&mut r, "end");
    if let (Some(start), Some(end)) = (started_on, ended_on)
        && end < start
    {
        r.fault("end", Fault::BeforeStart);
    }
    let (areas, workers) = (r.all("areas").map(str::to_owned).collect(), r.all("workers").map(str::to_owned).collect());
    let form = (|| {
        Some(PersonForm {
            full_name: full_name?,
            sign_in_name: sign_in_name?,
            role: role?,
            phone,
            language,
            started_on: started_on?,
            ended_on,
            areas,
            workers,
        })
    })();
    r.faults.or(form)
}

/// Somebody standing in for a worker, both days included.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverForm {
    /// Sign-in name of who stands in.
    pub covered_by: String,
    /// First day.
    pub from_on: NaiveDate,
    /// Last day.
    pub to_on: NaiveDate,
}

/// Reads a cover. It must not have ended before `today`: nobody stood in on days that are over.
///
/// # Errors
/// Every fault at once.
pub fn read_cover(pairs: &[(String, String)], today: NaiveDate) -> Result<CoverForm, Faults> {
    let mut r = Reader::new(pairs);
    let covered_by = r.required("covered_by", MOST_SIGN_IN_NAME);
    let from_on = required_day(&mut r, "from");
    let to_on = required_day(&mut r, "to");
    match (from_on, to_on) {
        (Some(from), Some(to)) if to < from => r.fault("to", Fault::BeforeStart),
        (_, Some(to)) if to < today => r.fault("to", Fault::Over),
        _ => {}
    }
    let form = (|| Some(CoverForm { covered_by: covered_by?, from_on: from_on?, to_on: to_on? }))();
    r.faults.or(form)
}

/// An area as written down by an administrator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AreaForm {
    /// Name as people say it.
    pub name: String,
    /// Permanent short code, as in exports; `None` where it is not asked because it cannot change.
    pub code: Option<String>,
    /// Code of the area it lies in.
    pub parent: Option<String>,
    /// Whether children may be registered there.
    pub active: bool,
    /// Minutes of walking that a visit there takes, there and back, on average.
    pub walk_minutes: Option<u16>,
}

/// The longest way that is believed, in minutes (our own choice: more than a day's work is a slip of the pen).
const MOST_WALK_MINUTES: u64 = 600;

/// Reads an area; the code is asked for a new one only, because exports refer to it for good.
///
/// # Errors
/// Every fault at once.
pub fn read_area(pairs: &[(String, String)], new: bool) -> Result<AreaForm, Faults> {
    let mut r = Reader::new(pairs);
    let name = r.required("name", MOST_NAME);
    let code = if new { r.required("code", MOST_AREA_CODE).map(|code| code.to_lowercase()) } else { None };
    if let Some(code) = &code
        && !is_plain(code, &['-', '_'])
    {
        r.fault("code", Fault::PlainLetters);
    }
    let parent = r.optional("parent", MOST_AREA_CODE);
    let active = new || r.yes_no("active").unwrap_or(true);
    let walk_minutes = r.number("walk", 0, 0, MOST_WALK_MINUTES, "min").and_then(|minutes| u16::try_from(minutes).ok());
    let form = (|| Some(AreaForm { name: name?, code: code.clone(), parent, active, walk_minutes }))();
    r.faults.or(form.filter(|f| !new || f.code.is_some()))
}

/// Small letters, digits and these signs between them, so that it can stand in an address and be told on the phone.
fn is_plain(text: &str, signs: &[char]) -> bool {
    let ends = |c: Option<char>| c.is_some_and(|c| c.is_ascii_lowercase() || c.is_ascii_digit());
    let mut chars = text.chars();
    ends(chars.clone().next())
        && ends(chars.clone().next_back())
        && chars.all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || signs.contains(&c))
}

/// A day in three boxes; its fault is the field's, so that the summary leads to the first box.
pub(crate) fn day(r: &mut Reader<'_>, field: &str) -> Option<NaiveDate> {
    let texts = ["day", "month", "year"].map(|part| r.text(&format!("{field}_{part}")));
    if texts.iter().all(|text| text.is_empty()) {
        return None;
    }
    let date = date_of(texts[0], texts[1], texts[2]);
    if date.is_none() {
        r.fault(field, Fault::NotADate);
    }
    date
}

/// The same where it must be given.
pub(crate) fn required_day(r: &mut Reader<'_>, field: &str) -> Option<NaiveDate> {
    let date = day(r, field);
    if date.is_none() && r.faults.of(field).is_none() {
        r.fault(field, Fault::Missing);
    }
    date
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
    fn a_person_is_read_whole() {
        let typed = [
            ("full_name", " Mireni Osa "),
            ("sign_in_name", "Mireni"),
            ("role", "supervisor"),
            ("language", "fr"),
            ("start_day", "1"),
            ("start_month", "2"),
            ("start_year", "26"),
            ("areas", "ulopi"),
            ("areas", "mbiro"),
            ("workers", "tamsi"),
        ];
        let person = read_person(&pairs(&typed), &["en", "fr"]).expect("read");
        assert_eq!((person.full_name.as_str(), person.sign_in_name.as_str()), ("Mireni Osa", "mireni"));
        assert_eq!((person.started_on, person.ended_on), (NaiveDate::from_ymd_opt(2026, 2, 1).expect("a day"), None));
        assert_eq!((person.areas, person.workers), (vec!["ulopi".to_owned(), "mbiro".to_owned()], vec!["tamsi".to_owned()]));
    }

    #[test]
    fn all_faults_of_a_person_come_at_once() {
        let typed = [("sign_in_name", "two words"), ("role", "king"), ("start_day", "31"), ("start_month", "2"), ("start_year", "2026")];
        let faults = read_person(&pairs(&typed), &["en"]).expect_err("faults");
        assert_eq!(fields(&faults), ["full_name missing", "sign_in_name plain-letters", "role unknown-choice", "start not-a-date"]);
        let typed = [
            ("full_name", "A"),
            ("sign_in_name", "new"),
            ("role", "worker"),
            ("start_day", "2"),
            ("start_month", "2"),
            ("start_year", "2026"),
            ("end_day", "1"),
            ("end_month", "2"),
            ("end_year", "2026"),
        ];
        assert_eq!(fields(&read_person(&pairs(&typed), &[]).expect_err("faults")), ["sign_in_name taken", "end before-start"]);
    }

    #[test]
    fn a_cover_lies_ahead_and_the_right_way_round() {
        let today = NaiveDate::from_ymd_opt(2026, 11, 25).expect("a day");
        let cover = |from: &'static str, to: &'static str| {
            let typed = [("covered_by", "tamsi"), ("from_day", from), ("from_month", "11"), ("from_year", "2026")];
            let rest = [("to_day", to), ("to_month", "11"), ("to_year", "2026")];
            read_cover(&pairs(&[&typed[..], &rest[..]].concat()), today)
        };
        assert!(cover("20", "25").is_ok());
        assert_eq!(fields(&cover("26", "25").expect_err("faults")), ["to before-start"]);
        assert_eq!(fields(&cover("20", "24").expect_err("faults")), ["to over"]);
        assert_eq!(fields(&read_cover(&[], today).expect_err("faults")), ["covered_by missing", "from missing", "to missing"]);
    }

    #[test]
    fn an_area_needs_a_code_once() {
        let area = read_area(&pairs(&[("name", "Sanga Point"), ("code", "Sanga-Point")]), true).expect("read");
        assert_eq!((area.code.as_deref(), area.active), (Some("sanga-point"), true));
        assert_eq!(fields(&read_area(&pairs(&[("name", "X"), ("code", "-x")]), true).expect_err("faults")), ["code plain-letters"]);
        assert_eq!(fields(&read_area(&[], true).expect_err("faults")), ["name missing", "code missing"]);
        let kept = read_area(&pairs(&[("name", "X"), ("active", "no")]), false).expect("read");
        assert_eq!((kept.code, kept.active), (None, false));
    }
}

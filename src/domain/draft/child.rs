//! The registration form: names of its fields and what they become.
//!
//! Field names: `name`, `known_as`, `sex`, `born_day` (may be empty: day not known), `born_month`, `born_year`, `birth_weight` (kg), `weeks` and
//! `weeks_days`, `gestation_source`, `caregiver`, `relation`, `phone`, `directions`, `area`, `worker`, `consent` (`yes`), `consent_by`,
//! `ever_breastfed`, `early_breastfeeding`, `first_days_milk_only`, `severe_eczema`, `food_allergy`, `work_day/_month/_year`,
//! `other_child` (`yes`: the likely duplicates are different children).

use chrono::NaiveDate;

use crate::calendar::completed_months;
use crate::child::GestationSource;
use crate::child::Sex;
use crate::draft::MOST_NAME;
use crate::draft::MOST_NOTE;
use crate::draft::Reader;
use crate::draft::date_of;
use crate::fault::Fault;
use crate::fault::Faults;
use crate::units::Weight;

/// The greatest age at registration, in completed months: the programme's exit age.
pub const MOST_MONTHS: u32 = 24;

/// A child as registered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewChild {
    /// Full name, as the family says it.
    pub name: String,
    /// What the child is called, if different.
    pub known_as: Option<String>,
    /// Sex.
    pub sex: Sex,
    /// Birth date; the earlier of the 15th and today when the day is not known.
    pub born: NaiveDate,
    /// Whether the day is known.
    pub birth_day_known: bool,
    /// Birth weight.
    pub birth_weight: Option<Weight>,
    /// Length of pregnancy in days.
    pub gestation_days: Option<u16>,
    /// How that is known.
    pub gestation_source: GestationSource,
    /// Caregiver's name.
    pub caregiver: String,
    /// What the caregiver is to the child.
    pub relation: Option<String>,
    /// Caregiver's phone, as typed.
    pub phone: Option<String>,
    /// How to find the home.
    pub directions: Option<String>,
    /// Code of the area.
    pub area: String,
    /// Who gave consent.
    pub consent_by: String,
    /// Ever breastfed.
    pub ever_breastfed: Option<bool>,
    /// Put to the breast within the first hour.
    pub early_breastfeeding: Option<bool>,
    /// Nothing but breast milk in the first two days.
    pub first_days_milk_only: Option<bool>,
    /// Severe eczema.
    pub severe_eczema: Option<bool>,
    /// Known food allergy.
    pub food_allergy: Option<bool>,
    /// Caregiver goes back to work on this day.
    pub returns_to_work_on: Option<NaiveDate>,
    /// The family or the worker says that a similar record is another child.
    pub other_child: bool,
}

/// Reads the registration form.
///
/// # Errors
/// Every fault at once. Only what makes the record impossible is a fault: no name, sex, birth month, caregiver, area or
/// consent; a birth in the future; a child older than the programme takes in.
pub fn read_child(pairs: &[(String, String)], today: NaiveDate) -> Result<NewChild, Faults> {
    let mut r = Reader::new(pairs);
    let name = r.required("name", MOST_NAME);
    let known_as = r.optional("known_as", MOST_NAME);
    let sex = chosen(&mut r, "sex", |c| Sex::from_code(c).ok());
    let born = birth(&mut r, today);
    let birth_weight =
        r.number("birth_weight", 3, u64::from(Weight::LEAST), 7_000, "kg").and_then(|g| Weight::from_grams(u32::try_from(g).ok()?).ok());
    let gestation_days = gestation(&mut r);
    let gestation_source = r.choice("gestation_source", |c| GestationSource::from_code(c).ok()).unwrap_or(GestationSource::Unknown);
    let caregiver = r.required("caregiver", MOST_NAME);
    let relation = r.optional("relation", MOST_NAME);
    let phone = r.optional("phone", 40);
    let directions = r.optional("directions", MOST_NOTE);
    let area = r.required("area", 80);
    if r.text("consent") != "yes" {
        r.fault("consent", Fault::NoConsent);
    }
    let consent_by = r.optional("consent_by", MOST_NAME);
    let draft = NewChildParts {
        ever_breastfed: r.yes_no("ever_breastfed"),
        early_breastfeeding: r.yes_no("early_breastfeeding"),
        first_days_milk_only: r.yes_no("first_days_milk_only"),
        severe_eczema: r.yes_no("severe_eczema"),
        food_allergy: r.yes_no("food_allergy"),
        returns_to_work_on: r.date("work"),
    };
    let other_child = r.text("other_child") == "yes";
    let value =
        name.zip(sex).zip(born).zip(caregiver).zip(area).map(|((((name, sex), (born, birth_day_known)), caregiver), area)| NewChild {
            name,
            known_as,
            sex,
            born,
            birth_day_known,
            birth_weight,
            gestation_days: if gestation_source == GestationSource::Unknown { None } else { gestation_days },
            gestation_source,
            consent_by: consent_by.unwrap_or_else(|| caregiver.clone()),
            caregiver,
            relation,
            phone,
            directions,
            area,
            ever_breastfed: draft.ever_breastfed,
            early_breastfeeding: draft.early_breastfeeding,
            first_days_milk_only: draft.first_days_milk_only,
            severe_eczema: draft.severe_eczema,
            food_allergy: draft.food_allergy,
            returns_to_work_on: draft.returns_to_work_on,
            other_child,
        });
    r.faults.or(value)
}

struct NewChildParts {
    ever_breastfed: Option<bool>,
    early_breastfeeding: Option<bool>,
    first_days_milk_only: Option<bool>,
    severe_eczema: Option<bool>,
    food_allergy: Option<bool>,
    returns_to_work_on: Option<NaiveDate>,
}

fn chosen<T>(r: &mut Reader<'_>, field: &str, from_code: impl Fn(&str) -> Option<T>) -> Option<T> {
    if r.text(field).is_empty() {
        r.fault(field, Fault::Missing);
        return None;
    }
    r.choice(field, from_code)
}

/// Birth date and whether the day is known. An empty day box means "day not known": the 15th then stands in, or today
/// where that is earlier, so that an estimated birth never lies after the first contact.
fn birth(r: &mut Reader<'_>, today: NaiveDate) -> Option<(NaiveDate, bool)> {
    let (day, month, year) = (r.text("born_day"), r.text("born_month"), r.text("born_year"));
    if month.is_empty() || year.is_empty() {
        r.fault(if month.is_empty() { "born_month" } else { "born_year" }, Fault::Missing);
        return None;
    }
    let known = !day.is_empty();
    let Some(typed) = date_of(if known { day } else { "15" }, month, year) else {
        r.fault(if known { "born_day" } else { "born_month" }, Fault::NotADate);
        return None;
    };
    let first_of_month = date_of("1", month, year)?;
    let born = if !known && first_of_month <= today { typed.min(today) } else { typed };
    let field = if known { "born_day" } else { "born_month" };
    if born > today {
        r.fault(field, Fault::InFuture);
        return None;
    }
    if completed_months(born, today)
        .is_some_and(|m| m > MOST_MONTHS || (m == MOST_MONTHS && crate::calendar::add_months(born, MOST_MONTHS) < today))
    {
        r.fault(field, Fault::TooOld { months: MOST_MONTHS });
        return None;
    }
    Some((born, known))
}

/// Weeks and days of pregnancy, 22 weeks 0 days to 44 weeks 6 days (bounds: our own choice, to catch slips).
fn gestation(r: &mut Reader<'_>) -> Option<u16> {
    let weeks = r.number("weeks", 0, 22, 44, "")?;
    let days = r.number("weeks_days", 0, 0, 6, "").unwrap_or(0);
    u16::try_from(weeks * 7 + days).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    const FULL: [(&str, &str); 8] = [
        ("name", "Neruka"),
        ("sex", "F"),
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("caregiver", "Teveli"),
        ("area", "ulopi"),
        ("consent", "yes"),
    ];

    fn read(changes: &[(&str, &str)]) -> Result<NewChild, Faults> {
        let mut pairs: Vec<(String, String)> = changes.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        pairs.extend(FULL.iter().filter(|(k, _)| !changes.iter().any(|(c, _)| c == k)).map(|(k, v)| ((*k).to_owned(), (*v).to_owned())));
        read_child(&pairs, d("2026-11-25"))
    }

    #[test]
    fn the_least_that_registers_a_child() {
        let child = read(&[]).expect("read");
        assert_eq!((child.born, child.birth_day_known, child.gestation_days), (d("2026-03-14"), true, None));
        assert_eq!(child.consent_by, "Teveli", "the caregiver consents unless somebody else is named");
    }

    #[test]
    fn a_day_not_known_is_the_fifteenth_or_today() {
        assert_eq!(read(&[("born_day", "")]).map(|c| (c.born, c.birth_day_known)), Ok((d("2026-03-15"), false)));
        let pairs = [("born_day", ""), ("born_month", "11")];
        assert_eq!(read(&pairs).map(|c| c.born), Ok(d("2026-11-15")));
        let early = read_child(
            &FULL
                .iter()
                .map(|(k, v)| ((*k).to_owned(), if *k == "born_day" { String::new() } else { (*v).to_owned() }))
                .collect::<Vec<_>>(),
            d("2026-03-09"),
        );
        assert_eq!(early.map(|c| c.born), Ok(d("2026-03-09")), "never after the first contact");
    }

    #[test]
    fn impossible_births_are_refused() {
        assert_eq!(read(&[("born_month", "12")]).expect_err("future").of("born_day"), Some(&Fault::InFuture));
        assert_eq!(read(&[("born_day", ""), ("born_month", "12")]).expect_err("future").of("born_month"), Some(&Fault::InFuture));
        assert_eq!(read(&[("born_day", "31"), ("born_month", "4")]).expect_err("no such day").of("born_day"), Some(&Fault::NotADate));
        assert_eq!(read(&[("born_year", "2024")]).expect_err("too old").of("born_day"), Some(&Fault::TooOld { months: 24 }));
        assert!(read(&[("born_year", "2024"), ("born_month", "11"), ("born_day", "25")]).is_ok(), "exactly 24 months is still taken in");
        assert!(read(&[("born_year", "2024"), ("born_month", "11"), ("born_day", "24")]).is_err());
    }

    #[test]
    fn every_fault_at_once() {
        let faults = read(&[("name", " "), ("sex", ""), ("consent", ""), ("weeks", "50"), ("birth_weight", "3100")]).expect_err("faults");
        let fields: Vec<&str> = faults.iter().map(|(f, _)| f).collect();
        assert_eq!(fields, ["name", "sex", "birth_weight", "weeks", "consent"]);
    }

    #[test]
    fn weeks_without_a_source_correct_nothing() {
        assert_eq!(read(&[("weeks", "32")]).map(|c| c.gestation_days), Ok(None));
        assert_eq!(read(&[("weeks", "32"), ("weeks_days", "3"), ("gestation_source", "card")]).map(|c| c.gestation_days), Ok(Some(227)));
    }
}

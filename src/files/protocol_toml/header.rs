//! Reads the plain parts of a protocol file: header, ages, classes, tolerances, schedule, energy, modes.

use chrono::NaiveDate;
use domain::protocol::Ages;
use domain::protocol::AllergenMode;
use domain::protocol::ClassTimes;
use domain::protocol::Clearing;
use domain::protocol::Clock;
use domain::protocol::CloseBand;
use domain::protocol::Energy;
use domain::protocol::MilkMode;
use domain::protocol::Schedule;
use domain::protocol::SlotPlan;
use domain::protocol::Tolerance;
use domain::rule::Class;

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Table;

const SOURCE: Saying = say("where the figure comes from: name, year, table, or \"common practice\", or \"our own choice\"");

/// The head of the file.
pub struct Header {
    pub id: String,
    pub version: String,
    pub effective_from: NaiveDate,
    pub language: String,
    pub approved_by: Option<String>,
    pub approved_on: Option<NaiveDate>,
    pub local_protocol_name: Option<String>,
}

/// A table that must be there.
fn part<'a, 't>(root: &mut Table<'a, 't>, f: &mut Faults<'_>, name: &str) -> Option<Table<'a, 't>> {
    if !root.need(f, name, say("a table {name}, as in the default protocol").with("name", format!("[{name}]"))) {
        return None;
    }
    root.table(f, name)
}

/// The source of a table, which must not be empty.
pub fn source(table: &mut Table<'_, '_>, f: &mut Faults<'_>) -> String {
    table.need_text(f, "source", SOURCE)
}

/// A number of days, months, grams and the like that must be there, from 0.
pub fn whole(table: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str, most: i64) -> i32 {
    i32::try_from(table.need_whole(f, key, 0..=most)).unwrap_or(i32::MAX)
}

/// `[protocol]`.
pub fn header(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Header {
    let mut header = Header {
        id: String::new(),
        version: String::new(),
        effective_from: NaiveDate::MIN,
        language: String::new(),
        approved_by: None,
        approved_on: None,
        local_protocol_name: None,
    };
    let Some(mut t) = part(root, f, "protocol") else { return header };
    header.id = t.need_text(f, "id", say("a short name for this protocol, e.g. {example}").with("example", "\"district-2026\""));
    header.version = t.need_text(f, "version", say("a version like {example}").with("example", "\"1.0.0\""));
    let parts: Vec<&str> = header.version.split('.').collect();
    if !header.version.is_empty() && (parts.len() != 3 || parts.iter().any(|part| part.parse::<u32>().is_err())) {
        t.fault(f, "version", say("must be three numbers with points between, like {example}").with("example", "\"1.0.0\""));
    }
    if t.need(
        f,
        "effective_from",
        say("the first day on which visits are judged by this version, e.g. {example}").with("example", "2026-01-01"),
    ) {
        header.effective_from = t.date(f, "effective_from").unwrap_or(NaiveDate::MIN);
    }
    header.language = t.need_text(f, "language", say("the language of the texts, e.g. {example}").with("example", "\"en\""));
    header.approved_by = t.text(f, "approved_by").filter(|name| !name.trim().is_empty());
    header.approved_on = approved_on(&mut t, f);
    header.local_protocol_name = t.text(f, "local_protocol_name").filter(|name| !name.trim().is_empty());
    t.finish(f);
    header
}

/// A date, or empty text while nobody has approved it.
fn approved_on(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<NaiveDate> {
    let mut empty = Faults::new("", "");
    if t.text(&mut empty, "approved_on").is_some_and(|text| text.is_empty()) {
        return None;
    }
    t.date(f, "approved_on")
}

/// `[ages]`.
pub fn ages(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Ages {
    let mut ages = Ages { start_age_days: 180, late_start_grace_days: 0, settling_in_days: 0, exit_age_months: 24, source: String::new() };
    let Some(mut t) = part(root, f, "ages") else { return ages };
    ages.start_age_days = i32::try_from(t.need_whole(f, "start_age_days", 119..=184)).unwrap_or(180);
    ages.late_start_grace_days = whole(&mut t, f, "late_start_grace_days", 366);
    ages.settling_in_days = whole(&mut t, f, "settling_in_days", 366);
    ages.exit_age_months = u32::try_from(t.need_whole(f, "exit_age_months", 24..=24)).unwrap_or(24);
    // Ages of children born early are corrected by the growth standards' own rule; the file states it and cannot change it.
    for (key, only) in [("preterm_below_days", 259), ("term_days", 280), ("correct_until_months", 24)] {
        t.whole(f, key, only..=only);
    }
    ages.source = source(&mut t, f);
    t.finish(f);
    ages
}

/// `[[class]]` and `[classes]`.
pub fn classes(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> ClassTimes {
    let clock = Clock { check_days: 0, supervisor_after_days: 0, manager_after_days: 0 };
    let mut times = ClassTimes { clocks: [clock; 6], month_at_least_days: 0, source: String::new() };
    let Some(mut t) = part(root, f, "classes") else { return times };
    let mut before = 0;
    for class in Class::ALL {
        if !t.need(
            f,
            class.code(),
            say("its days: {example}").with("example", "{ check_days = 1, supervisor_after_days = 0, manager_after_days = 1 }"),
        ) {
            continue;
        }
        let Some(mut one) = t.table(f, class.code()) else { continue };
        let clock = Clock {
            check_days: whole(&mut one, f, "check_days", 366),
            supervisor_after_days: whole(&mut one, f, "supervisor_after_days", 366),
            manager_after_days: whole(&mut one, f, "manager_after_days", 366),
        };
        if clock.check_days < before {
            one.fault(
                f,
                "check_days",
                say("must not be less than the {before} days of the more urgent class before it").with("before", before),
            );
        }
        before = clock.check_days;
        times.clocks[*class as usize] = clock;
        one.finish(f);
    }
    times.month_at_least_days = whole(&mut t, f, "month_at_least_days", 366);
    times.source = source(&mut t, f);
    t.finish(f);
    times
}

/// `[tolerance]`.
pub fn tolerance(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Tolerance {
    let mut tolerance = Tolerance { weight_g: 0, length_mm: 0, muac_mm: 0, source: String::new() };
    let Some(mut t) = part(root, f, "tolerance") else { return tolerance };
    tolerance.weight_g = t.need_whole(f, "weight_g", 1..=1_000);
    tolerance.length_mm = i32::try_from(t.need_whole(f, "length_mm", 1..=50)).unwrap_or(7);
    tolerance.muac_mm = i32::try_from(t.need_whole(f, "muac_mm", 1..=50)).unwrap_or(5);
    tolerance.source = source(&mut t, f);
    t.finish(f);
    tolerance
}

/// `[clearing]`.
pub fn clearing(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Clearing {
    let mut clearing = Clearing { two_visits_days_apart: 0, treatment_mutes_days: 0, source: String::new() };
    let Some(mut t) = part(root, f, "clearing") else { return clearing };
    clearing.two_visits_days_apart = i32::try_from(t.need_whole(f, "two_visits_days_apart", 1..=60)).unwrap_or(7);
    clearing.treatment_mutes_days = whole(&mut t, f, "treatment_mutes_days", 60);
    clearing.source = source(&mut t, f);
    t.finish(f);
    clearing
}

/// `[schedule]`.
pub fn schedule(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Schedule {
    let mut schedule = Schedule {
        slots: Vec::new(),
        opens_before_days: 0,
        closes_after: Vec::new(),
        expected_from_days_before_registration: 0,
        source: String::new(),
    };
    let Some(mut t) = part(root, f, "schedule") else { return schedule };
    schedule.opens_before_days = whole(&mut t, f, "opens_before_days", 60);
    schedule.expected_from_days_before_registration = whole(&mut t, f, "expected_from_days_before_registration", 366);
    t.need(f, "closes_after", say("the days of the windows by age: {example}").with("example", "[ { from_months = 0, days = 7 } ]"));
    for mut band in t.tables(f, "closes_after") {
        let (from_months, days) = (whole(&mut band, f, "from_months", 60), whole(&mut band, f, "days", 60));
        let from_months = from_months.cast_unsigned();
        if schedule.closes_after.last().is_some_and(|last: &CloseBand| last.from_months >= from_months) {
            band.fault(f, "from_months", say("must be more than that of the band before it"));
        }
        schedule.closes_after.push(CloseBand { from_months, days });
        band.finish(f);
    }
    if schedule.closes_after.first().is_some_and(|first| first.from_months != 0) {
        t.fault(f, "closes_after", say("must begin with {value}").with("value", "from_months = 0"));
    }
    t.need(f, "slots", say("the visits: {example}").with("example", "[ { days = 3 }, { months = 6 }, { months = 6, days = 14 } ]"));
    let mut before = -1;
    for mut slot in t.tables(f, "slots") {
        let months = slot.whole(f, "months", 0..=60).unwrap_or(0);
        let days = slot.whole(f, "days", 0..=366).unwrap_or(0);
        // By the mean length of a month, 30.4375 days: the order is that of every child but for a day or two.
        let nominal = months * 304_375 + days * 10_000;
        if nominal <= before {
            f.add(slot.span(), slot.path(), say("must be later than the visit before it"));
        }
        before = nominal;
        schedule.slots.push(SlotPlan { months: u32::try_from(months).unwrap_or(0), days: i32::try_from(days).unwrap_or(0) });
        slot.finish(f);
    }
    if t.has("slots") && schedule.slots.is_empty() {
        t.fault(f, "slots", say("holds no visit; name at least the exit visit"));
    }
    schedule.source = source(&mut t, f);
    t.finish(f);
    schedule
}

/// `[energy]`.
pub fn energy(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Energy {
    let mut energy = Energy { density: [0.0; 3], stomach_g_per_kg: 0.0, least_density: 0.0, source: String::new() };
    let Some(mut t) = part(root, f, "energy") else { return energy };
    let mut positive = |t: &mut Table<'_, '_>, key: &str| {
        if !t.need(f, key, say("a number above 0")) {
            return 0.0;
        }
        let number = t.number(f, key).unwrap_or(1.0);
        if number <= 0.0 {
            t.fault(f, key, say("must be above 0"));
        }
        number
    };
    energy.density = ["watery_kcal_per_g", "smooth_kcal_per_g", "mashed_kcal_per_g"].map(|key| positive(&mut t, key));
    energy.stomach_g_per_kg = positive(&mut t, "stomach_g_per_kg");
    energy.least_density = positive(&mut t, "least_kcal_per_g");
    energy.source = source(&mut t, f);
    t.finish(f);
    energy
}

/// `[allergen]`.
pub fn allergens(root: &mut Table<'_, '_>, f: &mut Faults<'_>, approved: bool) -> AllergenMode {
    let Some(mut t) = part(root, f, "allergen") else { return AllergenMode::WithSolids };
    t.need(f, "mode", say("{one} or {other}").with("one", "\"with_solids\"").with("other", "\"local_wait\""));
    let mode = t.word(f, "mode", AllergenMode::from_code).unwrap_or(AllergenMode::WithSolids);
    if mode == AllergenMode::LocalWait && !approved {
        t.fault(
            f,
            "mode",
            say("{mode} needs the approving clinician's name in {key}").with("mode", "\"local_wait\"").with("key", "protocol.approved_by"),
        );
    }
    source(&mut t, f);
    t.finish(f);
    mode
}

/// `[milk]`.
pub fn milk(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> MilkMode {
    let Some(mut t) = part(root, f, "milk") else { return MilkMode::Who2023 };
    t.need(f, "main_drink_6_to_11_months", say("{one} or {other}").with("one", "\"who2023\"").with("other", "\"avoid_main_drink\""));
    let mode = t.word(f, "main_drink_6_to_11_months", MilkMode::from_code).unwrap_or(MilkMode::Who2023);
    source(&mut t, f);
    t.finish(f);
    mode
}

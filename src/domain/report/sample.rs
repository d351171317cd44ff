//! Small children, visits and follow-ups for the tests of the reports.

use chrono::{NaiveDate, NaiveDateTime};

use crate::child::Sex;
use crate::ids::{AreaId, ChildId, PersonId, VisitId};
use crate::report::csv_table::Release;
use crate::report::period::Period;
use crate::report::rows::{Placement, ReportAnswers, ReportArea, ReportChild, ReportVisit, ReportZ};
use crate::visit::Contact;

pub(crate) fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

pub(crate) fn instant(text: &str) -> NaiveDateTime {
    text.parse().expect("an instant")
}

/// October 2025 of the invented programme.
pub(crate) fn october() -> Release {
    Release {
        programme: "kesara".to_owned(),
        period: Period::parse("2025-10").expect("a month"),
        protocol_id: "default-6-23".to_owned(),
        protocol_version: "1.0.0".to_owned(),
        generated_at: instant("2025-11-10T06:00:00"),
    }
}

/// The four villages; their codes come in the order Mbiro Hill, Sanga Point, Tenzu Ridge, Ulopi.
pub(crate) fn villages() -> Vec<ReportArea> {
    ["Ulopi", "Sanga Point", "Mbiro Hill", "Tenzu Ridge"]
        .iter()
        .enumerate()
        .map(|(at, code)| ReportArea { id: AreaId(at as u128), code: (*code).to_owned() })
        .collect()
}

pub(crate) fn child(id: u128, sex: Sex, born: &str, registered: &str, area: u128) -> ReportChild {
    ReportChild {
        id: ChildId(id),
        sex,
        born: d(born),
        preterm: false,
        correction_days: 0,
        low_birth_weight: false,
        registered_on: d(registered),
        statuses: Vec::new(),
        placements: vec![Placement { from: d(registered), area: AreaId(area), worker: PersonId(1) }],
        last_visit_on: None,
        ever_breastfed: None,
        breastfed_within_hour: None,
        only_breast_milk_two_days: None,
    }
}

pub(crate) fn visit(id: u128, child: &ReportChild, on: &str) -> ReportVisit {
    let place = child.place_on(d(on)).expect("a place");
    ReportVisit {
        id: VisitId(id),
        entry: i64::try_from(id).expect("small"),
        child: child.id,
        sex: child.sex,
        born: child.born,
        area: place.area,
        worker: place.worker,
        on: d(on),
        contact: Contact::Home,
        weight: None,
        length: None,
        muac: None,
        oedema: None,
        waz: None,
        wlz: None,
        laz: None,
        age_corrected: false,
        slow_or_lost: None,
        slot: None,
        fills_slot: true,
        answers: ReportAnswers::default(),
    }
}

pub(crate) fn z(hundredths: i32) -> Option<ReportZ> {
    Some(ReportZ { hundredths, flagged: false, confirmed: false })
}

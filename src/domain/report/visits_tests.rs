//! Small examples worked by hand for the visits table.

use super::*;
use crate::child::Sex;
use crate::ids::{AreaId, PersonId};
use crate::report::counted::alone;
use crate::report::rows::SlotEnd;
use crate::report::sample::{child, d, october, villages, visit};

fn slot(area: u128, slot: &str, closes: &str, end: SlotEnd) -> ReportSlot {
    ReportSlot { area: AreaId(area), worker: PersonId(1), slot: slot.to_owned(), closes: d(closes), end }
}

#[test]
fn slots_count_in_the_month_in_which_their_window_closes() {
    let schedule = ["m06".to_owned(), "m07".to_owned()];
    let mut slots = Vec::new();
    for _ in 0..12 {
        slots.push(slot(0, "m06", "2025-10-05", SlotEnd::OnTime));
        slots.push(slot(0, "m06", "2025-11-01", SlotEnd::OnTime));
    }
    slots.extend((0..6).map(|_| slot(0, "m06", "2025-10-31", SlotEnd::EarlyOrLate)));
    slots.extend((0..7).map(|_| slot(0, "m06", "2025-10-31", SlotEnd::Overdue)));
    let baby = child(1, Sex::Male, "2025-02-10", "2025-03-01", 0);
    let mut contacts = Vec::new();
    for at in 0..5 {
        let mut extra = visit(at, &baby, "2025-10-08");
        extra.fills_slot = false;
        extra.slot = Some("m07".to_owned());
        let mut phone = visit(100 + at, &baby, "2025-10-09");
        phone.contact = Contact::Phone;
        contacts.extend([extra, phone]);
    }
    let areas = Areas::new(&villages());
    let counted = count(october().period, &areas, &schedule, &slots, &contacts);
    let table = alone::in_full(&counted, &october(), &areas).remove(0);
    let row = |slot: &str| table.find(&[("area", "Ulopi"), ("slot", slot)]).expect("a row");
    let cell = |at: &str, name: &str| table.cell(row(at), name).cloned().expect("a cell");
    // Due 25 = 18 + 0 + 7, done 18 = 12 + 6; coverage 18 / 25 = 72.0 %, timely 12 / 25 = 48.0 %.
    let counts: Vec<Cell> = MEASURES.iter().map(|name| cell("m06", name)).collect();
    assert_eq!(counts, [25, 18, 12, 6, 0, 7, 0].map(Cell::Count));
    assert_eq!((cell("m06", "coverage_pct"), cell("m06", "timely_pct")), (Cell::Percent(720), Cell::Percent(480)));
    assert_eq!(
        (cell("m07", "due"), cell("m07", "extra_visits"), cell("m07", "coverage_pct")),
        (Cell::Count(0), Cell::Count(5), Cell::Empty)
    );
    assert_eq!((cell("m06", "phone_contacts"), cell("all", "phone_contacts")), (Cell::Empty, Cell::Count(5)));
}

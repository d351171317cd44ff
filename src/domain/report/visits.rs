//! Visits due and done by slot of the schedule, contacts beyond them. It knows no child and no measurement.

use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Cube, Relation, everywhere};
use crate::report::layout::Areas;
use crate::report::rows::{ReportSlot, ReportVisit, SlotEnd};
use crate::report::suppress::{Threshold, withhold};
use crate::visit::Contact;

/// Counted columns, in order.
pub const MEASURES: &[&str] = &["due", "done_on_time", "done_early_late", "skipped", "overdue_at_end", "extra_visits"];

const DUE: usize = 0;
const ON_TIME: usize = 1;
const EARLY_LATE: usize = 2;
const SKIPPED: usize = 3;
const OVERDUE: usize = 4;
const EXTRA: usize = 5;

/// The code of the row for visits outside the schedule in use (one that has changed since).
const OTHER: &str = "other";

/// `visits.csv` of a month. `schedule` names the slots in order.
///
/// A slot counts in the month in which its window closes, so nothing is pending: due = on time + early or late + skipped +
/// overdue. Extra visits and phone contacts count by their own date; phone contacts belong to no slot, so they stand in the
/// rows of all slots only. coverage = done ÷ due, timely = done on time ÷ due.
#[must_use]
pub fn visits(
    release: &Release,
    areas: &Areas,
    threshold: Threshold,
    schedule: &[String],
    slots: &[ReportSlot],
    visits: &[ReportVisit],
) -> Table {
    let mut cube = Cube::new(&[areas.len(), schedule.len() + 1], MEASURES.len());
    let mut phone = Cube::new(&[areas.len()], 1);
    let at = |slot: &str| Some(schedule.iter().position(|listed| listed == slot).unwrap_or(schedule.len()));
    for slot in slots.iter().filter(|slot| release.period.contains(slot.closes)) {
        let levels = [areas.level(slot.area), at(&slot.slot)];
        cube.add(&levels, DUE, 1);
        let end = match slot.end {
            SlotEnd::OnTime => ON_TIME,
            SlotEnd::EarlyOrLate => EARLY_LATE,
            SlotEnd::Skipped => SKIPPED,
            SlotEnd::Overdue => OVERDUE,
        };
        cube.add(&levels, end, 1);
    }
    for visit in visits.iter().filter(|visit| release.period.contains(visit.on)) {
        let area = areas.level(visit.area);
        if visit.contact == Contact::Phone {
            phone.add(&[area], 0, 1);
        } else if !visit.fills_slot {
            cube.add(&[area, at(visit.slot.as_deref().unwrap_or(OTHER))], EXTRA, 1);
        }
    }
    let verdict = withhold(&cube.system(&[Relation::equal(&[DUE], &[ON_TIME, EARLY_LATE, SKIPPED, OVERDUE])], &[], &everywhere), threshold);
    let phone_verdict = withhold(&phone.system(&[], &[], &everywhere), threshold);
    let mut table = Table::new("visits", &[&["slot"], MEASURES, &["phone_contacts", "coverage_pct", "timely_pct"]].concat());
    for position in cube.positions() {
        let all_slots = position[1] == cube.total(1);
        let shown = |m: usize| Cell::shown(cube.count(&position, m), verdict[cube.place(&position, m)]);
        let slot = if all_slots { ALL } else { schedule.get(position[1]).map_or(OTHER, String::as_str) };
        let mut cells = vec![Cell::text(slot)];
        cells.extend((0..MEASURES.len()).map(shown));
        let area = &position[..1];
        cells.push(if all_slots { Cell::shown(phone.count(area, 0), phone_verdict[phone.place(area, 0)]) } else { Cell::Empty });
        cells.push(Cell::percent(&shown(ON_TIME).plus(&shown(EARLY_LATE)), &shown(DUE)));
        cells.push(Cell::percent(&shown(ON_TIME), &shown(DUE)));
        table.push(release, areas.code(position[0]), cells);
    }
    table
}

#[cfg(test)]
#[path = "visits_tests.rs"]
mod tests;

//! Visits due and done by slot of the schedule, contacts beyond them. It knows no child and no measurement.

use crate::report::counted::Counted;
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation};
use crate::report::layout::Areas;
use crate::report::period::Period;
use crate::report::rows::{ReportSlot, ReportVisit, SlotEnd};
use crate::report::sheet::{Axis, Dimension};
use crate::report::system::System;
use crate::visit::Contact;

/// Counted columns, in order.
pub const MEASURES: &[&str] = &["due", "done", "done_on_time", "done_early_late", "skipped", "overdue_at_end", "extra_visits"];

const DUE: usize = 0;
const DONE: usize = 1;
const ON_TIME: usize = 2;
const EARLY_LATE: usize = 3;
const SKIPPED: usize = 4;
const OVERDUE: usize = 5;
const EXTRA: usize = 6;

/// The code of the row for visits outside the schedule in use (one that has changed since).
const OTHER: &str = "other";

/// Visits done, by their column; releases made before it was there have the two that it adds up.
#[must_use]
pub fn done(figure: impl Fn(&'static str) -> Cell) -> Cell {
    match figure("done") {
        Cell::Empty => figure("done_on_time").plus(&figure("done_early_late")),
        done => done,
    }
}

/// What `visits.csv` of a month is printed from.
pub(crate) struct Visits {
    cube: Cube,
    phone: Cube,
    schedule: Vec<String>,
}

/// Counts a month. `schedule` names the slots in order.
///
/// A slot counts in the month in which its window closes, so nothing is pending: due = done + skipped + overdue, done = on time +
/// early or late. Done stands beside its parts because it can often be told where they cannot. Extra visits and phone contacts count by their own date; phone contacts belong to no slot, so they stand in the
/// rows of all slots only. coverage = done ÷ due, timely = done on time ÷ due.
pub(crate) fn count(period: Period, areas: &Areas, schedule: &[String], slots: &[ReportSlot], visits: &[ReportVisit]) -> Visits {
    let mut cube = Cube::new(&[areas.len(), schedule.len() + 1], MEASURES.len());
    let mut phone = Cube::new(&[areas.len()], 1);
    let at = |slot: &str| Some(schedule.iter().position(|listed| listed == slot).unwrap_or(schedule.len()));
    for slot in slots.iter().filter(|slot| period.contains(slot.closes)) {
        let levels = [areas.level(slot.area), at(&slot.slot)];
        cube.add(&levels, DUE, 1);
        let end = match slot.end {
            SlotEnd::OnTime => ON_TIME,
            SlotEnd::EarlyOrLate => EARLY_LATE,
            SlotEnd::Skipped => SKIPPED,
            SlotEnd::Overdue => OVERDUE,
        };
        cube.add(&levels, end, 1);
        if matches!(end, ON_TIME | EARLY_LATE) {
            cube.add(&levels, DONE, 1);
        }
    }
    for visit in visits.iter().filter(|visit| period.contains(visit.on)) {
        let area = areas.level(visit.area);
        if visit.contact == Contact::Phone {
            phone.add(&[area], 0, 1);
        } else if !visit.fills_slot {
            cube.add(&[area, at(visit.slot.as_deref().unwrap_or(OTHER))], EXTRA, 1);
        }
    }
    Visits { cube, phone, schedule: schedule.to_vec() }
}

impl Counted for Visits {
    fn put(&self, system: &mut System) -> Put {
        let axes = [Axis::of(Dimension::Area, self.cube.total(0)), Axis::of(Dimension::Slot, self.cube.total(1))];
        let phone = self.phone.put(system, &Bonds::new(&axes[..1], &[]));
        let add_up = [Relation::equal(&[DUE], &[DONE, SKIPPED, OVERDUE]), Relation::equal(&[DONE], &[ON_TIME, EARLY_LATE])];
        self.cube.put(system, &Bonds { of_much_worth: &[DUE, DONE], ..Bonds::new(&axes, &add_up) });
        phone
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let (phone, table) = withheld.split_at(self.phone.positions().len());
        vec![self.table(release, areas, phone, table)]
    }
}

impl Visits {
    fn table(&self, release: &Release, areas: &Areas, phone: &[bool], withheld: &[bool]) -> Table {
        let mut table = Table::new("visits", &[&["slot"], MEASURES, &["phone_contacts", "coverage_pct", "timely_pct"]].concat());
        for position in self.cube.told(withheld) {
            let all_slots = position[1] == self.cube.total(1);
            let shown = |m: usize| self.cube.shown(withheld, &position, m);
            let slot = if all_slots { ALL } else { self.schedule.get(position[1]).map_or(OTHER, String::as_str) };
            let mut cells = vec![Cell::text(slot)];
            cells.extend((0..MEASURES.len()).map(shown));
            cells.push(if all_slots { self.phone.shown(phone, &position[..1], 0) } else { Cell::Empty });
            cells.push(Cell::percent(&shown(DONE), &shown(DUE)));
            cells.push(Cell::percent(&shown(ON_TIME), &shown(DUE)));
            table.push(release, areas.code(position[0]), cells);
        }
        table
    }
}

#[cfg(test)]
#[path = "visits_tests.rs"]
mod tests;

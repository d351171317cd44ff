//! Who is in the programme: at the start and the end of a month, who joined, who left and who moved between areas.
//! Reasons for leaving, deaths and severe reactions stand in one row for the whole programme. It knows no visits but the last.

use chrono::NaiveDate;

use crate::calendar::{add_days, completed_months};
use crate::child::ChildStatus;
use crate::ids::AreaId;
use crate::report::counted::Counted;
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation, Rest};
use crate::report::layout::{Areas, ENROLMENT_BANDS, band_code, band_of, sex_code, sex_level};
use crate::report::period::Period;
use crate::report::rows::{ReportChild, ReportFollowUp};
use crate::report::sheet::{Axis, Bond, Dimension};
use crate::report::system::System;
use crate::rule::RuleId;

/// Measures of the table, in the order of its columns.
pub const MEASURES: &[&str] =
    &["active_start", "joined", "left", "area_in", "area_out", "active_end", "preterm_n", "lbw_n", "active_no_visit_60d"];

const START: usize = 0;
const JOINED: usize = 1;
const LEFT: usize = 2;
const AREA_IN: usize = 3;
const AREA_OUT: usize = 4;
const END: usize = 5;
const PRETERM: usize = 6;
const LBW: usize = 7;
const NO_VISIT: usize = 8;

/// Days without a visit after which a child counts as not visited (the figure of the list of children not seen, our own choice).
const NOT_VISITED_DAYS: i32 = 60;

/// Reasons of the programme's row, in the order of its columns.
const LEAVING: &[(ChildStatus, &str)] = &[
    (ChildStatus::TransferredOut, "transferred_out"),
    (ChildStatus::Moved, "moved"),
    (ChildStatus::Died, "died"),
    (ChildStatus::ConsentWithdrawn, "withdrawn"),
    (ChildStatus::Refused, "refused"),
    (ChildStatus::AgedOut, "aged_out"),
];

/// What a month was to one child.
struct Passage {
    /// In the programme the day before the month began.
    start: bool,
    /// In the programme on its last day.
    end: Option<ChildStatus>,
    first_area: Option<AreaId>,
    last_area: Option<AreaId>,
}

/// How the child passed the month; `None` if it was not in the programme on any day of it.
fn passage(child: &ReportChild, period: Period) -> Option<Passage> {
    let before = add_days(period.first(), -1);
    let start = child.status_on(before) == Some(ChildStatus::Active);
    let entered: Option<NaiveDate> = if start {
        Some(before)
    } else if period.contains(child.registered_on) {
        Some(child.registered_on)
    } else {
        child.statuses.iter().find(|(on, status)| period.contains(*on) && *status == ChildStatus::Active).map(|(on, _)| *on)
    };
    let entered = entered?;
    let end = child.status_on(period.last());
    let gone = child.statuses.iter().rfind(|(on, status)| period.contains(*on) && *status != ChildStatus::Active).map(|(on, _)| *on);
    let last_day = if end == Some(ChildStatus::Active) { period.last() } else { gone.unwrap_or(period.last()) };
    let area = |day| child.place_on(day).map(|place| place.area);
    Some(Passage { start, end, first_area: area(entered), last_area: area(last_day) })
}

/// What `enrolment.csv` and `programme.csv` of a month are printed from.
pub(crate) struct Enrolment {
    cube: Cube,
    /// Who left for each reason, then severe reactions.
    programme: Cube,
}

/// Counts a month.
///
/// A child stands in the row of its sex and its age at the end of the month; its area is that at the start (or joining) for
/// `active_start`, `joined` and `area_out`, and that at the end (or leaving) for the others. So in every row
/// `active_end = active_start + joined + area_in − left − area_out`.
pub(crate) fn count(period: Period, areas: &Areas, children: &[ReportChild], follow_ups: &[ReportFollowUp]) -> Enrolment {
    let mut cube = Cube::new(&[areas.len(), 2, ENROLMENT_BANDS.len()], MEASURES.len());
    let mut programme = Cube::new(&[], LEAVING.len() + 1);
    for child in children {
        let Some(passage) = passage(child, period) else { continue };
        let months = completed_months(child.born, period.last()).unwrap_or(0);
        let level = |area: Option<AreaId>| area.and_then(|area| areas.level(area));
        let (first, last) = (level(passage.first_area), level(passage.last_area));
        let mut count = |area: Option<usize>, measure| {
            cube.add(&[area, Some(sex_level(child.sex)), band_of(ENROLMENT_BANDS, months)], measure, 1);
        };
        count(first, if passage.start { START } else { JOINED });
        if passage.first_area != passage.last_area {
            count(first, AREA_OUT);
            count(last, AREA_IN);
        }
        if passage.end == Some(ChildStatus::Active) {
            count(last, END);
            if child.preterm {
                count(last, PRETERM);
            }
            if child.low_birth_weight {
                count(last, LBW);
            }
            let seen = child.last_visit_on.unwrap_or(child.registered_on);
            if add_days(seen, NOT_VISITED_DAYS) <= period.last() {
                count(last, NO_VISIT);
            }
        } else {
            count(last, LEFT);
            if let Some(at) = LEAVING.iter().position(|(status, _)| Some(*status) == passage.end) {
                programme.add(&[], at, 1);
            }
        }
    }
    let severe = |f: &&ReportFollowUp| f.rule == RuleId::ReactionSevere && period.contains(f.opened_on);
    programme.add(&[], LEAVING.len(), follow_ups.iter().filter(severe).count() as u64);
    Enrolment { cube, programme }
}

/// Figures, and variables, that stand before those of the table: the reasons and severe reactions.
const BEFORE: usize = LEAVING.len() + 1;
/// The variable of those who joined, from the first.
pub(crate) const JOINED_VARIABLE: usize = BEFORE + JOINED;

impl Enrolment {
    /// The figure and the variable of severe reactions.
    pub(crate) const fn severe(&self, put: Put) -> (usize, usize) {
        (put.first + LEAVING.len(), put.variable + LEAVING.len())
    }

    /// The place of those who joined at a position, from the first figure.
    pub(crate) fn joined(&self, position: &[usize]) -> usize {
        BEFORE + self.cube.place(position, JOINED)
    }
}

impl Counted for Enrolment {
    fn put(&self, system: &mut System) -> Put {
        let axes = [
            Axis::of(Dimension::Area, self.cube.total(0)),
            Axis::of(Dimension::Sex, 2),
            Axis::of(Dimension::BandAtEnd, ENROLMENT_BANDS.len()),
        ];
        let relations = [
            Relation::equal(&[END, LEFT, AREA_OUT], &[START, JOINED, AREA_IN]),
            Relation::within(END, &[PRETERM], Rest::Guarded),
            Relation::within(END, &[LBW], Rest::Guarded),
            Relation::within(END, &[NO_VISIT], Rest::Guarded),
        ];
        let programme = self.programme.put(system, &Bonds::new(&[], &[]));
        let table = self.cube.put(system, &Bonds { of_much_worth: &[START, END], ..Bonds::new(&axes, &relations) });
        // The reasons add up to those who left, who stand in the other file.
        let everybody = [self.cube.total(0), self.cube.total(1), self.cube.total(2)];
        let reasons: Vec<usize> = (0..LEAVING.len()).collect();
        let places: Vec<usize> = reasons.iter().map(|at| programme.first + at).collect();
        system.sum(table.first + self.cube.place(&everybody, LEFT), &places);
        let left = (table.variable + LEFT, -1);
        let members = reasons.iter().map(|at| (programme.variable + at, 1)).chain([left]).collect();
        system.bonds.push(Bond { members, only: Vec::new() });
        programme
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let (programme, by_area) = withheld.split_at(BEFORE);
        vec![self.by_area(release, areas, by_area), self.programme(release, programme)]
    }
}

impl Enrolment {
    fn by_area(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Table {
        let mut table = Table::new("enrolment", &[&["sex", "age_band_at_period_end"], MEASURES].concat());
        for position in self.cube.told(withheld) {
            let mut cells = vec![Cell::text(sex_code(position[1])), Cell::text(band_code(ENROLMENT_BANDS, position[2]))];
            cells.extend((0..MEASURES.len()).map(|m| self.cube.shown(withheld, &position, m)));
            table.push(release, areas.code(position[0]), cells);
        }
        table
    }

    fn programme(&self, release: &Release, withheld: &[bool]) -> Table {
        let names: Vec<&'static str> = LEAVING.iter().map(|(_, name)| *name).chain(["severe_reactions"]).collect();
        let mut table = Table::new("programme", &names);
        let cells = (0..BEFORE).map(|at| self.programme.shown(withheld, &[], at)).collect();
        table.push(release, ALL, cells);
        table
    }
}

#[cfg(test)]
#[path = "enrolment_tests.rs"]
mod tests;

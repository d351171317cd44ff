//! Who is in the programme: at the start and the end of a month, who joined, who left and who moved between areas.
//! Reasons for leaving, deaths and severe reactions stand in one row for the whole programme. It knows no visits but the last.

use chrono::NaiveDate;

use crate::calendar::{add_days, completed_months};
use crate::child::ChildStatus;
use crate::ids::AreaId;
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Cube, Relation, Rest, everywhere};
use crate::report::layout::{Areas, ENROLMENT_BANDS, band_code, band_of, sex_code, sex_level};
use crate::report::period::Period;
use crate::report::rows::{ReportChild, ReportFollowUp};
use crate::report::suppress::{Kind, Reason, Threshold, withhold};
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

/// `enrolment.csv` and `programme.csv` of a month.
///
/// A child stands in the row of its sex and its age at the end of the month; its area is that at the start (or joining) for
/// `active_start`, `joined` and `area_out`, and that at the end (or leaving) for the others. So in every row
/// `active_end = active_start + joined + area_in − left − area_out`.
#[must_use]
pub fn enrolment(
    release: &Release,
    areas: &Areas,
    threshold: Threshold,
    children: &[ReportChild],
    follow_ups: &[ReportFollowUp],
) -> [Table; 2] {
    let period = release.period;
    let mut cube = Cube::new(&[areas.len(), 2, ENROLMENT_BANDS.len()], MEASURES.len());
    let mut reasons = vec![0_u64; LEAVING.len()];
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
                reasons[at] += 1;
            }
        }
    }
    let relations = [
        Relation::equal(&[END, LEFT, AREA_OUT], &[START, JOINED, AREA_IN]),
        Relation::within(END, &[PRETERM], Rest::Guarded),
        Relation::within(END, &[LBW], Rest::Guarded),
        Relation::within(END, &[NO_VISIT], Rest::Guarded),
    ];
    let mut system = cube.system(&relations, &[], &everywhere);
    // The reasons add up to those who left: one set of equations, or one file would give the other away.
    let everybody = [areas.len(), 2, ENROLMENT_BANDS.len()];
    let places: Vec<usize> = reasons.iter().map(|count| system.figure(*count, Kind::Printed)).collect();
    system.sum(cube.place(&everybody, LEFT), &places);
    let verdict = withhold(&system, threshold);
    let severe = follow_ups.iter().filter(|f| f.rule == RuleId::ReactionSevere && period.contains(f.opened_on)).count() as u64;
    [by_area(release, areas, &cube, &verdict), programme(release, threshold, &places, &verdict, &reasons, severe)]
}

fn by_area(release: &Release, areas: &Areas, cube: &Cube, verdict: &[Option<Reason>]) -> Table {
    let mut table = Table::new("enrolment", &[&["sex", "age_band_at_period_end"], MEASURES].concat());
    for position in cube.positions() {
        let mut cells = vec![Cell::text(sex_code(position[1])), Cell::text(band_code(ENROLMENT_BANDS, position[2]))];
        cells.extend((0..MEASURES.len()).map(|m| Cell::shown(cube.count(&position, m), verdict[cube.place(&position, m)])));
        table.push(release, areas.code(position[0]), cells);
    }
    table
}

fn programme(release: &Release, threshold: Threshold, places: &[usize], verdict: &[Option<Reason>], reasons: &[u64], severe: u64) -> Table {
    let names: Vec<&'static str> = LEAVING.iter().map(|(_, name)| *name).chain(["severe_reactions"]).collect();
    let mut table = Table::new("programme", &names);
    let mut cells: Vec<Cell> = places.iter().zip(reasons).map(|(place, count)| Cell::shown(*count, verdict[*place])).collect();
    cells.push(Cell::shown(severe, threshold.hides(severe).then_some(Reason::Small)));
    table.push(release, ALL, cells);
    table
}

#[cfg(test)]
#[path = "enrolment_tests.rs"]
mod tests;

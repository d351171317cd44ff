//! All tables of a month at once, and what everybody who prints them must check first.

use crate::report::counted::Counted;
use crate::report::csv_table::{Release, Table};
use crate::report::cube::Put;
use crate::report::enrolment::Enrolment;
use crate::report::feeding::Feeding;
use crate::report::growth::Growth;
use crate::report::layout::{Areas, ENROLMENT_BANDS, FEEDING_BANDS, GROWTH_BANDS};
use crate::report::period::Period;
use crate::report::reactions::ReportReaction;
use crate::report::rows::{ReportArea, ReportChild, ReportFollowUp, ReportSlot, ReportVisit};
use crate::report::sheet::Bond;
use crate::report::suppress::{Threshold, withhold};
use crate::report::system::{Figure, Kind, System};
use crate::report::{enrolment, feeding, followups, growth, reactions, visits};

/// Everything that a month is counted from.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MonthRows {
    /// Every area in which a row of this month may stand, closed ones too.
    pub areas: Vec<ReportArea>,
    /// Codes of the slots of the schedule, in order.
    pub schedule: Vec<String>,
    /// Children registered up to the end of the month.
    pub children: Vec<ReportChild>,
    /// Contacts of the month.
    pub visits: Vec<ReportVisit>,
    /// Expected slots whose window closed in the month.
    pub slots: Vec<ReportSlot>,
    /// Follow-ups opened in the month, or opened before and open at its end.
    pub follow_ups: Vec<ReportFollowUp>,
    /// Reactions told at the visits of the month.
    pub reactions: Vec<ReportReaction>,
}

/// The tables of a month, in the order in which they are listed for people.
#[must_use]
pub fn tables(release: &Release, threshold: Threshold, rows: &MonthRows) -> Vec<Table> {
    let month = Counts::of(release.period, threshold, rows);
    month.tables(release, &withhold(&month.system, threshold))
}

/// What a reader of all tables of a month holds: every figure, the equations between them, and which are withheld. For those who
/// attack the release.
#[must_use]
pub fn as_read(period: Period, threshold: Threshold, rows: &MonthRows) -> (System, Vec<bool>) {
    let system = Counts::of(period, threshold, rows).system;
    let withheld = withhold(&system, threshold);
    (system, withheld)
}

/// The tables as they would be if just these figures of the system were withheld. For those who attack the release: so they find
/// the figure of a cell.
#[must_use]
pub fn tables_withholding(release: &Release, threshold: Threshold, rows: &MonthRows, withheld: &[bool]) -> Vec<Table> {
    Counts::of(release.period, threshold, rows).tables(release, withheld)
}

/// Everything counted, and the one system of equations that a reader of all tables holds.
struct Counts {
    areas: Areas,
    /// Tables with the place of the first figure of each.
    parts: Vec<(Box<dyn Counted>, usize)>,
    system: System,
}

impl Counts {
    fn of(period: Period, threshold: Threshold, rows: &MonthRows) -> Self {
        let areas = Areas::new(&rows.areas);
        let mut system = System::default();
        let enrolment = enrolment::count(period, &areas, &rows.children, &rows.follow_ups);
        let visits = visits::count(period, &areas, &rows.schedule, &rows.slots, &rows.visits);
        let growth = growth::count(period, &areas, &rows.visits);
        let feeding = feeding::count(period, &areas, &rows.children, &rows.visits);
        let follow_ups = followups::count(period, &areas, threshold, &rows.follow_ups);
        let reactions = reactions::count(period, &areas, &rows.reactions, &rows.follow_ups);
        let mut put = |counted: &dyn Counted| counted.put(&mut system);
        let put = [put(&enrolment), put(&visits), put(&growth), put(&feeding), put(&follow_ups), put(&reactions)];
        arms(&mut system, &areas, (&growth, put[2]));
        reactions.tie(&mut system, put[5], (&follow_ups, put[4]));
        reactions.tie_severe(&mut system, put[5], enrolment.severe(put[0]));
        same_children(&mut system, (&enrolment, put[0]), (&growth, put[2]), (&feeding, put[3]));
        let parts: [Box<dyn Counted>; 6] =
            [Box::new(enrolment), Box::new(visits), Box::new(growth), Box::new(feeding), Box::new(follow_ups), Box::new(reactions)];
        Self { areas, parts: parts.into_iter().zip(put.map(|put| put.first)).collect(), system }
    }

    fn tables(&self, release: &Release, withheld: &[bool]) -> Vec<Table> {
        let of = |(counted, first): &(Box<dyn Counted>, usize)| counted.tables(release, &self.areas, &withheld[*first..]);
        self.parts.iter().flat_map(of).collect()
    }
}

/// Arms are those under 6 months and those of the denominator from 6 months on, in the total too.
fn arms(system: &mut System, areas: &Areas, (growth, put): (&Growth, Put)) {
    for (area, sex) in (0..=areas.len()).flat_map(|area| (0..=2).map(move |sex| (area, sex))) {
        let [whole, older, young] = growth.arms(area, sex).map(|place| put.first + place);
        system.sum(whole, &[older, young]);
    }
}

/// Ties the tables that count the same children: those visited, by growth and by feeding; those registered, by feeding and,
/// with those who came back, as joined. Whoever knows the definitions can subtract one from the other.
fn same_children(
    system: &mut System,
    (enrolment, enrolled): (&Enrolment, Put),
    (growth, grown): (&Growth, Put),
    (feeding, fed): (&Feeding, Put),
) {
    for position in growth.positions() {
        let [area, sex, band] = position[..] else { continue };
        let visited = |band: usize| fed.first + feeding.visited(&[area, sex, band]);
        let parts: Vec<usize> = FEEDING_OF_GROWTH[band].iter().map(|band| visited(*band)).collect();
        system.sum(grown.first + growth.visited(&position), &parts);
        if band == GROWTH_BANDS.len() {
            let joined = enrolled.first + enrolment.joined(&[area, sex, ENROLMENT_BANDS.len()]);
            let registered = fed.first + feeding.registered(&[area, sex, FEEDING_BANDS.len()]);
            // Most readers will guess who came back or was too old to be counted; so those are no secret here.
            let back = system.figures[joined].value.saturating_sub(system.figures[registered].value);
            let back = system.push(Figure { value: back, kind: Kind::Known, ..system.figures[joined] });
            system.sum(joined, &[registered, back]);
        }
    }
    let mut same = |one: usize, other: usize| system.bonds.push(Bond { members: vec![(one, 1), (other, -1)], only: Vec::new() });
    same(grown.variable + growth::VISITED_VARIABLE, fed.variable + feeding::visited());
    same(enrolled.variable + enrolment::JOINED_VARIABLE, fed.variable + feeding::registered());
}

/// The bands of feeding that make up each band of growth, and all.
const FEEDING_OF_GROWTH: [&[usize]; GROWTH_BANDS.len() + 1] = [&[0], &[1, 2], &[3], &[FEEDING_BANDS.len()]];

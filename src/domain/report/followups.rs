//! Follow-ups opened in a month and what became of them, those open at its end by lateness, and referrals. It knows no child.
//! Severe food reactions are left out: so few and so grave that they stand in the programme's row alone.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::{add_days, days_between};
use crate::report::counted::Counted;
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation, Rest};
use crate::report::layout::Areas;
use crate::report::period::Period;
use crate::report::rows::ReportFollowUp;
use crate::report::sheet::{Axis, Bond, Dimension};
use crate::report::suppress::{Reason, Threshold};
use crate::report::system::System;
use crate::rule::{Class, FollowUpState, RuleId};

crate::report::measures! {
    /// Counted columns of `followups.csv`, in order. They add up: opened is the sum of the others.
    MEASURES = opened OPENED, met_on_time ON_TIME, met_late LATE, still_open_not_due NOT_DUE, still_open_overdue OVERDUE,
    closed_by_supervisor BY_SUPERVISOR, ended_exit ENDED, closed_other OTHER
}

/// Counted columns of `followups_stock.csv`, in order: those open, and by days late.
pub const STOCK: &[&str] = &["open", "late_0", "late_1_7", "late_8_14", "late_15_30", "late_over_30"];

/// Counted columns of `referrals.csv`, in order.
pub const REFERRALS: &[&str] = &["made", "reached_same_day", "outcome_known_7d"];

/// Days after a referral within which an outcome is counted as known.
const OUTCOME_DAYS: i32 = 7;

/// What became of a follow-up by the last day of the month.
fn fate(follow_up: &ReportFollowUp, last: NaiveDate) -> usize {
    if let Some(met) = met_on(follow_up, last) {
        return if met <= follow_up.first_due_on { ON_TIME } else { LATE };
    }
    if follow_up.closed_on.is_some_and(|on| on <= last) {
        return match follow_up.state {
            FollowUpState::ClosedBySupervisor => BY_SUPERVISOR,
            FollowUpState::Ended => ENDED,
            FollowUpState::Open | FollowUpState::Done => OTHER,
        };
    }
    if last > follow_up.due_on { OVERDUE } else { NOT_DUE }
}

/// The first visit at which it was looked at again, or the first outcome, whichever came first, up to `last`.
fn met_on(follow_up: &ReportFollowUp, last: NaiveDate) -> Option<NaiveDate> {
    [follow_up.followed_up_on, follow_up.outcome_on].into_iter().flatten().min().filter(|on| *on <= last)
}

fn counted(follow_ups: &[ReportFollowUp]) -> impl Iterator<Item = &ReportFollowUp> {
    follow_ups.iter().filter(|follow_up| follow_up.rule != RuleId::ReactionSevere)
}

/// What `followups.csv`, `followups_stock.csv` and `referrals.csv` of a month are printed from.
pub(crate) struct FollowUps {
    cohort: Cohort,
    stock: Cube,
    referrals: Cube,
}

/// Those opened in the month.
struct Cohort {
    cube: Cube,
    /// Rules and classes at opening, in order.
    kinds: Vec<(RuleId, Class)>,
    /// Days from opening to the first look by position, in order.
    days: Vec<Vec<u64>>,
    threshold: Threshold,
}

/// Counts a month.
pub(crate) fn count(period: Period, areas: &Areas, threshold: Threshold, follow_ups: &[ReportFollowUp]) -> FollowUps {
    FollowUps {
        cohort: cohort(period, areas, threshold, follow_ups),
        stock: stock(period, areas, follow_ups),
        referrals: referrals(period, areas, follow_ups),
    }
}

/// Of those opened in the month, by rule and class at opening.
///
/// Met: looked at again at a later visit, or an outcome told, by the end of the month; on time by the due day that stood until
/// then. coverage = met ÷ (opened − ended − not yet due − closed otherwise), timely = met on time ÷ the same. The median of
/// the days from opening to the first look is by nearest rank.
fn cohort(period: Period, areas: &Areas, threshold: Threshold, follow_ups: &[ReportFollowUp]) -> Cohort {
    let last = period.last();
    let cohort: Vec<&ReportFollowUp> = counted(follow_ups).filter(|f| period.contains(f.opened_on)).collect();
    let kinds: Vec<(RuleId, Class)> = cohort.iter().map(|f| (f.rule, f.class)).collect::<BTreeSet<_>>().into_iter().collect();
    let kind_of = |f: &ReportFollowUp| kinds.binary_search(&(f.rule, f.class)).ok();
    let mut cube = Cube::new(&[areas.len(), kinds.len()], MEASURES.len());
    for f in &cohort {
        let levels = [areas.level(f.area), kind_of(f)];
        cube.add(&levels, OPENED, 1);
        cube.add(&levels, fate(f, last), 1);
    }
    let days_at = |position: &Vec<usize>| {
        let here = cohort.iter().filter(|f| {
            (position[0] == cube.total(0) || areas.level(f.area) == Some(position[0]))
                && (position[1] == cube.total(1) || kind_of(f) == Some(position[1]))
        });
        let mut days: Vec<u64> =
            here.filter_map(|f| met_on(f, last).map(|on| u64::from(days_between(f.opened_on, on).unsigned_abs()))).collect();
        days.sort_unstable();
        days
    };
    let days = cube.positions().iter().map(days_at).collect();
    Cohort { cube, kinds, days, threshold }
}

/// Those open at the end of the month, by class and days late.
fn stock(period: Period, areas: &Areas, follow_ups: &[ReportFollowUp]) -> Cube {
    let last = period.last();
    let mut cube = Cube::new(&[areas.len(), Class::ALL.len()], STOCK.len());
    for f in counted(follow_ups).filter(|f| f.opened_on <= last && f.closed_on.is_none_or(|on| on > last)) {
        let levels = [areas.level(f.area), Class::ALL.iter().position(|class| *class == f.class)];
        let late = match days_between(f.due_on, last) {
            ..=0 => 1,
            1..=7 => 2,
            8..=14 => 3,
            15..=30 => 4,
            _ => 5,
        };
        cube.add(&levels, 0, 1);
        cube.add(&levels, late, 1);
    }
    cube
}

/// Those sent on the same day (emergency or refer today) in the month, who reached care that day, and of how many an outcome
/// was known within 7 days.
fn referrals(period: Period, areas: &Areas, follow_ups: &[ReportFollowUp]) -> Cube {
    let mut cube = Cube::new(&[areas.len()], REFERRALS.len());
    for f in counted(follow_ups).filter(|f| f.class.is_urgent() && period.contains(f.opened_on)) {
        let levels = [areas.level(f.area)];
        cube.add(&levels, 0, 1);
        let reached = f.reached_on == Some(f.opened_on);
        if reached {
            cube.add(&levels, 1, 1);
        }
        if reached || f.outcome_on.is_some_and(|on| on <= add_days(f.opened_on, OUTCOME_DAYS)) {
            cube.add(&levels, 2, 1);
        }
    }
    cube
}

/// What relations of the stock and the referrals to those opened in the month leave over.
const STOCK_RESTS: usize = 2;
const REFERRAL_RESTS: usize = 1;

impl Counted for FollowUps {
    fn put(&self, system: &mut System) -> Put {
        let kinds = &self.cohort.kinds;
        let areas = Axis::of(Dimension::Area, self.referrals.total(0));
        // Behind the kinds opened in the month stands each class by itself, for those opened before.
        let classes: Vec<Class> = kinds.iter().map(|(_, class)| *class).chain(Class::ALL.iter().copied()).collect();
        let class_of = |class: &Class| Class::ALL.iter().position(|listed| listed == class);
        let by_class = Axis { dimension: Dimension::Rule, level_of: classes.iter().map(class_of).collect() };
        let opened = (0..classes.len()).map(|at| Some(at).filter(|at| *at < kinds.len())).collect();
        let by_kind = Axis { dimension: Dimension::Rule, level_of: opened };
        let relations = [
            Relation::within(0, &[1], Rest::Guarded),
            Relation::within(0, &[2], Rest::Guarded),
            // Whoever reached care that day has an outcome within the week.
            Relation::within(2, &[1], Rest::Guarded),
        ];
        let fates: Vec<usize> = (ON_TIME..=OTHER).collect();
        let in_area = [areas.clone()];
        let referrals = self.referrals.put(system, &Bonds { rests: REFERRAL_RESTS, ..Bonds::new(&in_area, &relations) });
        let (by_class, by_kind) = ([areas.clone(), by_class], [areas, by_kind]);
        let add_up = [Relation::equal(&[0], &[1, 2, 3, 4, 5])];
        let stock = self.stock.put(system, &Bonds { rests: STOCK_RESTS, of_much_worth: &[0], ..Bonds::new(&by_class, &add_up) });
        let add_up = [Relation::equal(&[OPENED], &fates)];
        let cohort = self.cohort.cube.put(system, &Bonds { of_much_worth: &[OPENED], ..Bonds::new(&by_kind, &add_up) });
        self.tie_referrals(system, &classes, referrals, cohort);
        self.tie_stock(system, &classes, stock, cohort);
        referrals
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let figures = |cube: &Cube, measures: usize, relations: usize| cube.positions().len() * (measures + relations);
        let (referrals, others) = withheld.split_at(figures(&self.referrals, REFERRALS.len(), 3 + REFERRAL_RESTS));
        let (stock, cohort) = others.split_at(figures(&self.stock, STOCK.len(), 1 + STOCK_RESTS));
        vec![
            self.cohort.table(release, areas, cohort),
            counts("followups_stock", STOCK, &self.stock, release, areas, stock),
            counts("referrals", REFERRALS, &self.referrals, release, areas, referrals),
        ]
    }
}

impl FollowUps {
    /// Where those opened in the month stand, from where all begins.
    pub(crate) fn cohort(&self, put: Put) -> Put {
        let before = [(&self.referrals, REFERRALS.len() + 3 + REFERRAL_RESTS), (&self.stock, STOCK.len() + 1 + STOCK_RESTS)];
        let figures: usize = before.iter().map(|(cube, variables)| cube.positions().len() * variables).sum();
        let variables: usize = before.iter().map(|(_, variables)| variables).sum();
        Put { first: put.first + figures, variable: put.variable + variables }
    }

    /// For a rule: the variable of those opened, where they are counted along [`Dimension::Rule`], and the places of their figures in
    /// an area.
    pub(crate) fn opened_by(&self, rule: RuleId, put: Put, area: usize) -> (usize, Vec<bool>, Vec<usize>) {
        let cohort = self.cohort(put);
        let kinds = &self.cohort.kinds;
        let is_rule: Vec<bool> = kinds.iter().map(|(of, _)| *of == rule).chain(Class::ALL.iter().map(|_| false)).collect();
        let places = (0..kinds.len()).filter(|at| is_rule[*at]);
        let places = places.map(|kind| cohort.first + self.cohort.cube.place(&[area, kind], OPENED)).collect();
        (cohort.variable + OPENED, is_rule, places)
    }

    /// Places of a measure of those opened, in an area, of the kinds of some classes.
    fn opened(&self, cohort: Put, area: usize, of_class: impl Fn(Class) -> bool, measure: usize) -> Vec<usize> {
        let kinds = self.cohort.kinds.iter().enumerate().filter(|(_, (_, class))| of_class(*class));
        kinds.map(|(kind, _)| cohort.first + self.cohort.cube.place(&[area, kind], measure)).collect()
    }

    /// Whoever was sent on the same day has an urgent follow-up; who reached care that day has it met on time.
    fn tie_referrals(&self, system: &mut System, classes: &[Class], referrals: Put, cohort: Put) {
        let rest = self.referrals.positions().len() * REFERRALS.len() + 3;
        for area in 0..=self.referrals.total(0) {
            let urgent = |measure| self.opened(cohort, area, Class::is_urgent, measure);
            system.sum(referrals.first + self.referrals.place(&[area], 0), &urgent(OPENED));
            let reached = referrals.first + self.referrals.place(&[area], 1);
            system.parts(&urgent(ON_TIME), &[reached], referrals.first + rest + area * (3 + REFERRAL_RESTS));
        }
        let is_urgent: Vec<bool> = classes.iter().map(|class| class.is_urgent()).collect();
        let others = is_urgent.iter().map(|urgent| !urgent).collect();
        let (made, reached, rest) = (referrals.variable, referrals.variable + 1, referrals.variable + REFERRALS.len() + 3);
        let mut bond = |members: &[(usize, i8)], only: &Vec<bool>| {
            system.bonds.push(Bond { members: members.to_vec(), only: vec![(Dimension::Rule, only.clone())] });
        };
        bond(&[(made, 1), (cohort.variable + OPENED, -1)], &is_urgent);
        bond(&[(reached, 1), (rest, 1), (cohort.variable + ON_TIME, -1)], &is_urgent);
        bond(&[(made, 1)], &others);
        bond(&[(reached, 1), (rest, 1)], &others);
    }

    /// Those opened in the month and not met are open at its end, if not overdue then not late. Others may be open too.
    fn tie_stock(&self, system: &mut System, classes: &[Class], stock: Put, cohort: Put) {
        let rests = self.stock.positions().len() * STOCK.len();
        for position in self.stock.positions() {
            let row = self.stock.place(&position, 0);
            let of_class = |class: Class| Class::ALL.get(position[1]).is_none_or(|here| *here == class);
            let opened = |measure| self.opened(cohort, position[0], of_class, measure);
            let rest = stock.first + rests + row / STOCK.len() * (1 + STOCK_RESTS) + 1;
            system.parts(&[stock.first + row], &[opened(NOT_DUE), opened(OVERDUE)].concat(), rest);
            system.parts(&[stock.first + row + 1], &opened(NOT_DUE), rest + 1);
        }
        let rest = stock.variable + STOCK.len() + 1;
        let everywhere = vec![true; classes.len()];
        let mut bond = |members: &[(usize, i8)]| {
            system.bonds.push(Bond { members: members.to_vec(), only: vec![(Dimension::Rule, everywhere.clone())] });
        };
        bond(&[(stock.variable, 1), (cohort.variable + NOT_DUE, -1), (cohort.variable + OVERDUE, -1), (rest, -1)]);
        bond(&[(stock.variable + 1, 1), (cohort.variable + NOT_DUE, -1), (rest + 1, -1)]);
    }
}

/// A table of counts alone, by area and, if there is a second split, by class.
fn counts(name: &'static str, measures: &[&'static str], cube: &Cube, release: &Release, areas: &Areas, withheld: &[bool]) -> Table {
    let by_class = cube.positions().first().is_some_and(|position| position.len() > 1);
    let mut table = Table::new(name, &[if by_class { &["class"][..] } else { &[] }, measures].concat());
    for position in cube.told(withheld) {
        let class = position.get(1).map(|class| Cell::text(Class::ALL.get(*class).map_or(ALL, |class| class.code())));
        let counts = (0..measures.len()).map(|m| cube.shown(withheld, &position, m));
        table.push(release, areas.code(position[0]), class.into_iter().chain(counts).collect());
    }
    table
}

impl Cohort {
    fn table(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Table {
        let mut table =
            Table::new("followups", &[&["rule", "class"], MEASURES, &["median_days_to_check", "coverage_pct", "timely_pct"]].concat());
        let told = self.cube.told(withheld);
        for (position, days) in self.cube.positions().iter().zip(&self.days).filter(|(position, _)| told.contains(*position)) {
            let shown = |m: usize| self.cube.shown(withheld, position, m);
            let met = shown(ON_TIME).plus(&shown(LATE));
            let den = shown(OPENED).minus(&shown(ENDED)).minus(&shown(NOT_DUE)).minus(&shown(OTHER));
            let (rule, class) = self.kinds.get(position[1]).map_or((ALL, ALL), |(rule, class)| (rule.code(), class.code()));
            let mut cells = vec![Cell::text(rule), Cell::text(class)];
            cells.extend((0..MEASURES.len()).map(shown));
            cells.push(self.median(days, &met));
            cells.push(Cell::percent(&met, &den));
            cells.push(Cell::percent(&shown(ON_TIME), &den));
            table.push(release, areas.code(position[0]), cells);
        }
        table
    }

    /// The middle of the days by nearest rank; it goes with the count it rests on.
    fn median(&self, days: &[u64], met: &Cell) -> Cell {
        if let Cell::Withheld(reason) = met {
            return Cell::Withheld(*reason);
        }
        if self.threshold.hides(days.len() as u64) {
            return Cell::Withheld(Reason::Few);
        }
        days.len().checked_sub(1).map_or(Cell::Empty, |top| Cell::Count(days[top / 2]))
    }
}

#[cfg(test)]
#[path = "followups_tests.rs"]
mod tests;

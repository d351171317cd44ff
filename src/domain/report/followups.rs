//! Follow-ups opened in a month and what became of them, those open at its end by lateness, and referrals. It knows no child.
//! Severe food reactions are left out: so few and so grave that they stand in the programme's row alone.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::{add_days, days_between};
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Cube, Relation, Rest, everywhere};
use crate::report::layout::Areas;
use crate::report::rows::ReportFollowUp;
use crate::report::suppress::{Reason, Threshold, withhold};
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

/// `followups.csv` of a month: of those opened in it, by rule and class at opening.
///
/// Met: looked at again at a later visit, or an outcome told, by the end of the month; on time by the due day that stood until
/// then. coverage = met ÷ (opened − ended − not yet due − closed otherwise), timely = met on time ÷ the same. The median of
/// the days from opening to the first look is by nearest rank.
#[must_use]
pub fn followups(release: &Release, areas: &Areas, threshold: Threshold, follow_ups: &[ReportFollowUp]) -> Table {
    let last = release.period.last();
    let cohort: Vec<&ReportFollowUp> = counted(follow_ups).filter(|f| release.period.contains(f.opened_on)).collect();
    let kinds: Vec<(RuleId, Class)> = cohort.iter().map(|f| (f.rule, f.class)).collect::<BTreeSet<_>>().into_iter().collect();
    let kind_of = |f: &ReportFollowUp| kinds.binary_search(&(f.rule, f.class)).ok();
    let mut cube = Cube::new(&[areas.len(), kinds.len()], MEASURES.len());
    for f in &cohort {
        let levels = [areas.level(f.area), kind_of(f)];
        cube.add(&levels, OPENED, 1);
        cube.add(&levels, fate(f, last), 1);
    }
    let parts: Vec<usize> = (ON_TIME..=OTHER).collect();
    let verdict = withhold(&cube.system(&[Relation::equal(&[OPENED], &parts)], &[], &everywhere), threshold);
    let mut table =
        Table::new("followups", &[&["rule", "class"], MEASURES, &["median_days_to_check", "coverage_pct", "timely_pct"]].concat());
    for position in cube.positions() {
        let shown = |m: usize| Cell::shown(cube.count(&position, m), verdict[cube.place(&position, m)]);
        let met = shown(ON_TIME).plus(&shown(LATE));
        let den = shown(OPENED).minus(&shown(ENDED)).minus(&shown(NOT_DUE)).minus(&shown(OTHER));
        let here = cohort.iter().filter(|f| {
            (position[0] == cube.total(0) || areas.level(f.area) == Some(position[0]))
                && (position[1] == cube.total(1) || kind_of(f) == Some(position[1]))
        });
        let days: Vec<u64> =
            here.filter_map(|f| met_on(f, last).map(|on| u64::from(days_between(f.opened_on, on).unsigned_abs()))).collect();
        let (rule, class) = kinds.get(position[1]).map_or((ALL, ALL), |(rule, class)| (rule.code(), class.code()));
        let mut cells = vec![Cell::text(rule), Cell::text(class)];
        cells.extend((0..MEASURES.len()).map(shown));
        cells.push(median(days, &met, threshold));
        cells.push(Cell::percent(&met, &den));
        cells.push(Cell::percent(&shown(ON_TIME), &den));
        table.push(release, areas.code(position[0]), cells);
    }
    table
}

/// The middle of the days by nearest rank; it goes with the count it rests on.
fn median(mut days: Vec<u64>, met: &Cell, threshold: Threshold) -> Cell {
    if let Cell::Withheld(reason) = met {
        return Cell::Withheld(*reason);
    }
    if threshold.hides(days.len() as u64) {
        return Cell::Withheld(Reason::Few);
    }
    days.sort_unstable();
    days.len().checked_sub(1).map_or(Cell::Empty, |top| Cell::Count(days[top / 2]))
}

/// `followups_stock.csv`: those open at the end of the month, by class and days late.
#[must_use]
pub fn stock(release: &Release, areas: &Areas, threshold: Threshold, follow_ups: &[ReportFollowUp]) -> Table {
    let last = release.period.last();
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
    let verdict = withhold(&cube.system(&[Relation::equal(&[0], &[1, 2, 3, 4, 5])], &[], &everywhere), threshold);
    let mut table = Table::new("followups_stock", &[&["class"], STOCK].concat());
    for position in cube.positions() {
        let mut cells = vec![Cell::text(Class::ALL.get(position[1]).map_or(ALL, |class| class.code()))];
        cells.extend((0..STOCK.len()).map(|m| Cell::shown(cube.count(&position, m), verdict[cube.place(&position, m)])));
        table.push(release, areas.code(position[0]), cells);
    }
    table
}

/// `referrals.csv`: those sent on the same day (emergency or refer today) in the month, who reached care that day, and of how
/// many an outcome was known within 7 days.
#[must_use]
pub fn referrals(release: &Release, areas: &Areas, threshold: Threshold, follow_ups: &[ReportFollowUp]) -> Table {
    let mut cube = Cube::new(&[areas.len()], REFERRALS.len());
    for f in counted(follow_ups).filter(|f| f.class.is_urgent() && release.period.contains(f.opened_on)) {
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
    let relations = [
        Relation::within(0, &[1], Rest::Guarded),
        Relation::within(0, &[2], Rest::Guarded),
        // Whoever reached care that day has an outcome within the week.
        Relation::within(2, &[1], Rest::Guarded),
    ];
    let verdict = withhold(&cube.system(&relations, &[], &everywhere), threshold);
    let mut table = Table::new("referrals", REFERRALS);
    for position in cube.positions() {
        let cells = (0..REFERRALS.len()).map(|m| Cell::shown(cube.count(&position, m), verdict[cube.place(&position, m)])).collect();
        table.push(release, areas.code(position[0]), cells);
    }
    table
}

#[cfg(test)]
#[path = "followups_tests.rs"]
mod tests;

//! All tables of a month at once, and what everybody who prints them must check first.

use crate::report::csv_table::{Release, Table};
use crate::report::layout::Areas;
use crate::report::rows::{ReportArea, ReportChild, ReportFollowUp, ReportSlot, ReportVisit};
use crate::report::suppress::Threshold;
use crate::report::{enrolment, feeding, followups, growth, visits};

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
}

/// The tables of a month, in the order in which they are listed for people.
#[must_use]
pub fn tables(release: &Release, threshold: Threshold, rows: &MonthRows) -> Vec<Table> {
    let areas = Areas::new(&rows.areas);
    let [enrolment, programme] = enrolment::enrolment(release, &areas, threshold, &rows.children, &rows.follow_ups);
    vec![
        enrolment,
        programme,
        visits::visits(release, &areas, threshold, &rows.schedule, &rows.slots, &rows.visits),
        growth::growth(release, &areas, threshold, &rows.visits),
        feeding::feeding(release, &areas, threshold, &rows.children, &rows.visits),
        followups::followups(release, &areas, threshold, &rows.follow_ups),
        followups::stock(release, &areas, threshold, &rows.follow_ups),
        followups::referrals(release, &areas, threshold, &rows.follow_ups),
    ]
}

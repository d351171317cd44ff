//! Small examples worked by hand for the follow-up tables.

use super::*;
use crate::report::counted::alone;
use crate::report::sample::{d, october, villages};
use crate::report::sample_month;
use crate::rule::CloseReason;

/// `followups`, `followups_stock`, `referrals`.
fn in_full(all: &[ReportFollowUp]) -> Vec<Table> {
    let areas = Areas::new(&villages());
    alone::in_full(&count(october().period, &areas, Threshold::LEAST, all), &october(), &areas)
}

fn follow_up(rule: RuleId, class: Class, opened: &str, due: &str) -> ReportFollowUp {
    ReportFollowUp { opened_on: d(opened), ..sample_month::follow_up(1, rule, class, due) }
}

fn weight_low() -> ReportFollowUp {
    follow_up(RuleId::WeightLow, Class::Fortnight, "2025-10-02", "2025-10-16")
}

#[test]
fn each_has_one_fate() {
    let last = d("2025-10-31");
    let seen = |on: &str| ReportFollowUp { followed_up_on: Some(d(on)), ..weight_low() };
    assert_eq!(MEASURES[fate(&seen("2025-10-16"), last)], "met_on_time", "the due day is on time");
    assert_eq!(MEASURES[fate(&seen("2025-10-17"), last)], "met_late");
    assert_eq!(MEASURES[fate(&seen("2025-11-01"), last)], "still_open_overdue", "what comes after the month does not count");
    let told = ReportFollowUp { outcome_on: Some(d("2025-10-10")), ..seen("2025-10-20") };
    assert_eq!(MEASURES[fate(&told, last)], "met_on_time", "an outcome counts");
    assert_eq!(MEASURES[fate(&ReportFollowUp { due_on: d("2025-10-31"), ..weight_low() }, last)], "still_open_not_due");
    let closed =
        |state, on: &str| ReportFollowUp { state, closed_on: Some(d(on)), reason: Some(CloseReason::SupervisorDecision), ..weight_low() };
    assert_eq!(MEASURES[fate(&closed(FollowUpState::ClosedBySupervisor, "2025-10-20"), last)], "closed_by_supervisor");
    assert_eq!(MEASURES[fate(&closed(FollowUpState::Ended, "2025-10-20"), last)], "ended_exit");
    assert_eq!(MEASURES[fate(&closed(FollowUpState::Done, "2025-10-20"), last)], "closed_other");
    assert_eq!(MEASURES[fate(&closed(FollowUpState::Done, "2025-11-02"), last)], "still_open_overdue");
}

#[test]
fn the_cohort_of_a_month() {
    let mut all = Vec::new();
    // 12 on time after 3 days, 6 late after 20, 7 overdue, 5 ended: opened 30, coverage 18 / 25, timely 12 / 25.
    all.extend((0..12).map(|_| ReportFollowUp { followed_up_on: Some(d("2025-10-05")), ..weight_low() }));
    all.extend((0..6).map(|_| ReportFollowUp { followed_up_on: Some(d("2025-10-22")), ..weight_low() }));
    all.extend((0..7).map(|_| weight_low()));
    all.extend((0..5).map(|_| ReportFollowUp { state: FollowUpState::Ended, closed_on: Some(d("2025-10-12")), ..weight_low() }));
    all.push(follow_up(RuleId::WeightLow, Class::Fortnight, "2025-09-30", "2025-10-14"));
    all.push(follow_up(RuleId::ReactionSevere, Class::Now, "2025-10-03", "2025-10-04"));
    let table = in_full(&all).swap_remove(0);
    let row = table.find(&[("area", "Ulopi"), ("rule", "weight.low"), ("class", "fortnight")]).expect("a row");
    let cell = |name: &str| table.cell(row, name).cloned().expect("a cell");
    let counts: Vec<Cell> = MEASURES.iter().map(|name| cell(name)).collect();
    assert_eq!(counts, [30, 12, 6, 0, 7, 0, 5, 0].map(Cell::Count));
    assert_eq!((cell("coverage_pct"), cell("timely_pct")), (Cell::Percent(720), Cell::Percent(480)));
    // 18 waits, the 9th by rank: 3 days.
    assert_eq!(cell("median_days_to_check"), Cell::Count(3));
    assert!(table.find(&[("rule", "reaction.severe")]).is_none());
    let total = table.find(&[("area", "all"), ("rule", "all")]).expect("a row");
    assert_eq!(table.cell(total, "opened"), Some(&Cell::Count(30)), "severe reactions are in no total here");
}

#[test]
fn stock_by_days_late() {
    let open = |due: &str| follow_up(RuleId::WeightLow, Class::Fortnight, "2025-08-01", due);
    let mut all = Vec::new();
    for (due, count) in [("2025-10-31", 5), ("2025-10-30", 6), ("2025-10-24", 5), ("2025-10-23", 7), ("2025-10-16", 8), ("2025-09-30", 9)] {
        all.extend((0..count).map(|_| open(due)));
    }
    all.push(ReportFollowUp { closed_on: Some(d("2025-10-31")), state: FollowUpState::Done, ..open("2025-10-31") });
    let table = in_full(&all).swap_remove(1);
    let row = table.find(&[("area", "Ulopi"), ("class", "fortnight")]).expect("a row");
    let counts: Vec<Cell> = STOCK.iter().map(|name| table.cell(row, name).cloned().expect("a cell")).collect();
    // Days late on 31 October: 0, 1, 7, 8, 15, 31.
    assert_eq!(counts, [40, 5, 11, 7, 8, 9].map(Cell::Count));
}

#[test]
fn referrals_and_their_outcomes() {
    let sent = follow_up(RuleId::WastingSevere, Class::Today, "2025-10-29", "2025-10-31");
    let mut all = Vec::new();
    all.extend((0..6).map(|_| ReportFollowUp { reached_on: Some(d("2025-10-29")), outcome_on: Some(d("2025-10-29")), ..sent.clone() }));
    all.extend((0..7).map(|_| ReportFollowUp { outcome_on: Some(d("2025-11-05")), ..sent.clone() }));
    all.extend((0..8).map(|_| ReportFollowUp { outcome_on: Some(d("2025-11-06")), ..sent.clone() }));
    all.push(weight_low());
    let table = in_full(&all).swap_remove(2);
    let row = table.find(&[("area", "all")]).expect("a row");
    let counts: Vec<Cell> = REFERRALS.iter().map(|name| table.cell(row, name).cloned().expect("a cell")).collect();
    assert_eq!(counts, [21, 6, 13].map(Cell::Count));
}

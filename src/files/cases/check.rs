//! Holds the judgement of a case beside what it expects.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::fmt::Debug;

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::assess::VisitAssessment;
use domain::assess::assess;
use domain::follow_up::EventKind;
use domain::growth::Score;
use domain::ids::VisitId;
use domain::protocol::Protocols;
use domain::rule::Class;
use domain::rule::RuleId;

use super::case::Case;
use super::expect::OpenLine;

/// One key of a case that disagrees.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Disagreement {
    /// Where: `visit 2 (2025-10-10), fires` or `next_visit`.
    pub place: String,
    /// As the case has it.
    pub expected: String,
    /// As judged.
    pub got: String,
}

/// Judges a case; empty if all agrees.
#[must_use]
pub fn check(case: &Case, protocols: &Protocols) -> Vec<Disagreement> {
    let judged = assess(&case.child, &case.visits, protocols, case.as_of);
    let open_after = open_after(&judged);
    let mut found = Vec::new();
    for (at, (visit, expected)) in case.visits.iter().zip(&case.expected).enumerate() {
        let Some(got) = judged.visit(visit.id) else { continue };
        let place = |key: &str| format!("visit {} ({}), {key}", at + 1, visit.on);
        let z = |score: Score| score.rounded().map(|z| z.hundredths());
        let show_z = |z: &Option<i32>| z.map_or_else(|| "none".to_owned(), |z| domain::growth::ZHundredths::new(z).to_string());
        differs(&mut found, place("waz"), expected.waz.as_ref(), &z(got.scores.waz), show_z);
        differs(&mut found, place("laz"), expected.laz.as_ref(), &z(got.scores.laz), show_z);
        differs(&mut found, place("wlz"), expected.wlz.as_ref(), &z(got.scores.wlz), show_z);
        differs(&mut found, place("completed_months"), expected.completed_months.as_ref(), &got.completed_months, show);
        let show_none = |months: &Option<u32>| months.map_or_else(|| "none".to_owned(), |months| months.to_string());
        differs(&mut found, place("stage_months"), expected.stage_months.as_ref(), &got.stage_months, show_none);
        let stage = |stage: &Option<domain::protocol::StageId>| stage.map_or("none", |stage| stage.code()).to_owned();
        differs(&mut found, place("stage"), expected.stage.as_ref(), &got.stage, stage);
        differs(&mut found, place("fires"), expected.fires.as_ref(), &fires(got), |rows| {
            rules(rows, |(r, c)| format!("{} {}", r.code(), c.code()))
        });
        let silenced = silenced(got);
        if let Some(wanted) = &expected.silenced
            && !wanted.is_subset(&silenced)
        {
            let show = |rows: &BTreeSet<RuleId>| rules(rows, |rule| rule.code().to_owned());
            found.push(Disagreement { place: place("silenced"), expected: show(wanted), got: show(&silenced) });
        }
        let open = open_after.get(&visit.id).cloned().unwrap_or_default();
        differs(&mut found, place("open"), expected.open.as_ref(), &open, show_open);
        let closed: BTreeSet<_> = got
            .events
            .iter()
            .filter_map(|event| match event.kind {
                EventKind::Closed(reason) => Some((event.rule, reason)),
                _ => None,
            })
            .collect();
        differs(&mut found, place("closed"), expected.closed.as_ref(), &closed, |rows| {
            rules(rows, |(rule, reason)| format!("{} {}", rule.code(), reason.code()))
        });
    }
    at_the_end(case, &judged, &mut found);
    found
}

fn at_the_end(case: &Case, judged: &Assessment, found: &mut Vec<Disagreement>) {
    let expected = &case.expected_now;
    let lists: BTreeSet<(RuleId, i32)> = judged.lists.iter().map(|list| (list.rule, list.days_over(case.as_of))).collect();
    let place = |key: &str| format!("as of {}, {key}", case.as_of);
    differs(found, place("visits"), expected.visits.as_ref(), &lists, |rows| rules(rows, |(rule, days)| format!("{} {days}", rule.code())));
    let next = judged.next_visit.map(|slot| [slot.window.target, slot.window.opens(), slot.window.closes()]);
    differs(found, place("next_visit"), expected.next_visit.as_ref(), &next, |days: &Option<[NaiveDate; 3]>| {
        days.map_or_else(|| "none".to_owned(), |[target, opens, closes]| format!("{target} ({opens} to {closes})"))
    });
    let open: BTreeSet<OpenLine> = judged.open().iter().map(|open| (open.rule, open.class, open.due_on)).collect();
    differs(found, place("open"), expected.open.as_ref(), &open, show_open);
}

fn differs<T: PartialEq>(found: &mut Vec<Disagreement>, place: String, expected: Option<&T>, got: &T, show: impl Fn(&T) -> String) {
    if let Some(expected) = expected
        && expected != got
    {
        found.push(Disagreement { place, expected: show(expected), got: show(got) });
    }
}

fn show(value: &impl Debug) -> String {
    format!("{value:?}")
}

fn rules<T>(rows: &BTreeSet<T>, show: impl Fn(&T) -> String) -> String {
    if rows.is_empty() { "none".to_owned() } else { rows.iter().map(show).collect::<Vec<_>>().join(", ") }
}

fn show_open(rows: &BTreeSet<OpenLine>) -> String {
    rules(rows, |(rule, class, due)| format!("{} {} due {due}", rule.code(), class.code()))
}

fn fires(got: &VisitAssessment) -> BTreeSet<(RuleId, Class)> {
    got.findings.iter().filter(|finding| finding.stands()).map(|finding| (finding.rule, finding.class)).collect()
}

fn silenced(got: &VisitAssessment) -> BTreeSet<RuleId> {
    got.findings.iter().filter(|finding| !finding.stands()).map(|finding| finding.rule).collect()
}

/// The follow-ups open after each visit: from the visits' events and the history of each follow-up.
fn open_after(judged: &Assessment) -> BTreeMap<VisitId, BTreeSet<OpenLine>> {
    let mut open: BTreeMap<(RuleId, VisitId), OpenLine> = BTreeMap::new();
    let mut after = BTreeMap::new();
    for visit in &judged.visits {
        for event in &visit.events {
            let name = (event.rule, event.opened_by);
            if matches!(event.kind, EventKind::Closed(_)) {
                open.remove(&name);
                continue;
            }
            let named = judged.follow_ups.iter().find(|follow_up| (follow_up.rule, follow_up.opened_by) == name);
            let change = named.and_then(|follow_up| follow_up.history.iter().rfind(|change| change.visit == visit.visit));
            if let Some(change) = change {
                open.insert(name, (event.rule, change.class, change.due_on));
            }
        }
        after.insert(visit.visit, open.values().copied().collect());
    }
    after
}

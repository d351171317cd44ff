//! What happened to a follow-up, visit by visit: opened, still so, raised, kept and why, told, closed. It judges nothing anew.

use chrono::NaiveDate;

use super::types::{Answer, EventKind, FollowUp, Standing, Why};
use crate::assess::VisitAssessment;
use crate::ids::VisitId;
use crate::rule::{Class, CloseReason, RuleId};
use crate::visit::Outcome;

/// Why a follow-up stayed as it was at a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// The rule could not tell.
    CannotTell(Why),
    /// The visit was clear; that was not all that is needed.
    ClearButMore,
    /// The rule held and was silenced, muted, or the child is in treatment.
    Covered(Standing),
}

/// What happened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Opened.
    Opened,
    /// Fired again: still so; `milder`: the class of this visit alone, where the more severe one was kept.
    Refreshed {
        /// A milder class that changed nothing.
        milder: Option<Class>,
    },
    /// Fired again, more urgent than before.
    Raised,
    /// Stayed as it was.
    Kept(Kept),
    /// What became of it was told.
    Outcome(Outcome),
    /// Closed; with the rule that took over, if one did.
    Closed(CloseReason, Option<RuleId>),
}

/// One line of a follow-up's history.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// The day.
    pub on: NaiveDate,
    /// The visit; `None` for a supervisor's act or a child that left.
    pub visit: Option<VisitId>,
    /// What happened.
    pub what: What,
    /// Urgency from then on.
    pub class: Class,
    /// Day of the check from then on.
    pub due_on: NaiveDate,
}

/// Every step of a follow-up, in order.
#[must_use]
pub fn steps(visits: &[VisitAssessment], follow_up: &FollowUp) -> Vec<Step> {
    let first = follow_up.history.opening;
    let mut standing = (first.class, first.due_on);
    let mut steps = Vec::new();
    let opening = visits.iter().position(|visit| visit.visit == follow_up.opened_by).unwrap_or(visits.len());
    for visit in &visits[opening..] {
        let told = follow_up.outcomes.iter().filter(|told| told.visit == visit.visit);
        let step = |what, (class, due_on)| Step { on: visit.on, visit: Some(visit.visit), what, class, due_on };
        steps.extend(told.map(|told| step(What::Outcome(told.outcome), standing)));
        if let Some(change) = follow_up.history.iter().find(|change| change.visit == visit.visit) {
            standing = (change.class, change.due_on);
        }
        let event = visit.events.iter().find(|event| (event.rule, event.opened_by) == (follow_up.rule, follow_up.opened_by));
        match event.map(|event| event.kind) {
            Some(EventKind::Opened) => steps.push(step(What::Opened, standing)),
            Some(EventKind::Raised) => steps.push(step(What::Raised, standing)),
            Some(EventKind::Refreshed) => {
                let found = visit.finding(follow_up.rule).map(|finding| finding.class);
                steps.push(step(What::Refreshed { milder: found.filter(|found| *found > standing.0) }, standing));
            }
            Some(EventKind::Closed(reason)) => {
                steps.push(step(closed(follow_up, reason), standing));
                return steps;
            }
            None => {
                if follow_up.closed.is_some_and(|closed| closed.by_visit.is_none() && closed.on < visit.on) {
                    break;
                }
                let kept = match (visit.finding(follow_up.rule), visit.answer(follow_up.rule)) {
                    (Some(finding), _) => Some(Kept::Covered(finding.standing)),
                    (None, Some(Answer::Clear)) => Some(Kept::ClearButMore),
                    (None, Some(Answer::CannotTell(why))) => Some(Kept::CannotTell(why)),
                    (None, Some(Answer::Fires(_)) | None) => None,
                };
                steps.extend(kept.map(|kept| step(What::Kept(kept), standing)));
            }
        }
    }
    if let Some(end) = follow_up.closed {
        let (class, due_on) = standing;
        steps.push(Step { on: end.on, visit: end.by_visit, what: closed(follow_up, end.reason), class, due_on });
    }
    steps
}

fn closed(follow_up: &FollowUp, reason: CloseReason) -> What {
    What::Closed(reason, follow_up.closed.and_then(|closed| closed.replaced_by).map(|(rule, _)| rule))
}

//! The judgement of one child: all visits up to a day, by the protocol in force at each, in one pure function.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::child::Child;
use crate::feeding::{FoodLine, Solids};
use crate::follow_up::{Event, Finding, FollowUp, SupervisorAct};
use crate::growth::{GrowthAge, Scores};
use crate::ids::VisitId;
use crate::protocol::{Protocol, Protocols, StageId};
use crate::rule::{Class, RuleId};
use crate::schedule::Slot;
use crate::visit::Visit;

/// What people decided outside visits.
#[derive(Debug, Clone, Copy, Default)]
pub struct Acts<'a> {
    /// Follow-ups a supervisor closed.
    pub supervisor: &'a [SupervisorAct],
    /// The day on which a child that is no longer active left; `None` = not known, taken as the day of the last visit.
    pub left_on: Option<NaiveDate>,
}

/// Which measurements are taken as missing until corrected or confirmed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Suspect {
    /// Weight-for-age lies outside the limits: the weight.
    pub weight: bool,
    /// Length-for-age lies outside the limits: the length.
    pub length: bool,
    /// Weight-for-length lies outside the limits, or one of its two measurements is suspect.
    pub wlz: bool,
}

/// A visit as judged.
#[derive(Debug, Clone, PartialEq)]
pub struct VisitAssessment {
    /// Which visit.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// Chronological age in days.
    pub age_days: i32,
    /// Chronological age in completed months.
    pub completed_months: u32,
    /// Stage age in completed months; `None` before the due date.
    pub stage_months: Option<u32>,
    /// Growth age and its correction.
    pub growth_age: GrowthAge,
    /// z-scores as computed, suspect ones too.
    pub scores: Scores,
    /// Which measurements are suspect.
    pub suspect: Suspect,
    /// Stage; `None` from the exit age on.
    pub stage: Option<StageId>,
    /// Whether solids have been started by then.
    pub solids: Solids,
    /// The protocol that judged it.
    pub protocol: Arc<Protocol>,
    /// What each rule found, in the order of [`RuleId::ALL`], lists left out.
    pub findings: Vec<Finding>,
    /// What it did to follow-ups, in the order it was done.
    pub events: Vec<Event>,
}

impl VisitAssessment {
    /// The finding of a rule.
    #[must_use]
    pub fn finding(&self, rule: RuleId) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.rule == rule)
    }

    /// Findings that fire and stand, most severe first.
    #[must_use]
    pub fn standing(&self) -> Vec<&Finding> {
        let mut standing: Vec<&Finding> = self.findings.iter().filter(|finding| finding.stands()).collect();
        standing.sort_by_key(|finding| finding.answer.class());
        standing
    }
}

/// A list the child is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Listed {
    /// Which list: `visit.overdue`, `visit.lost` or `referral.no_outcome`.
    pub rule: RuleId,
    /// The day from which days over are counted.
    pub counted_from: NaiveDate,
    /// For `referral.no_outcome`: the follow-up that has waited longest.
    pub of: Option<(RuleId, VisitId)>,
}

impl Listed {
    /// Days over on a day.
    #[must_use]
    pub fn days_over(self, on: NaiveDate) -> i32 {
        crate::calendar::days_between(self.counted_from, on)
    }
}

/// Where a child stands on the day.
#[derive(Debug, Clone, PartialEq)]
pub struct Now {
    /// Chronological age in completed months.
    pub completed_months: u32,
    /// Stage age in completed months; `None` before the due date.
    pub stage_months: Option<u32>,
    /// By how many days ages are corrected for early birth; 0 = not corrected.
    pub corrected_by_days: u16,
    /// Stage; `None` from the exit age on.
    pub stage: Option<StageId>,
    /// Whether solids have been started.
    pub solids: Solids,
    /// The protocol in force.
    pub protocol: Arc<Protocol>,
    /// The last slot has closed: time to leave by age.
    pub past_last_slot: bool,
}

/// The whole judgement of one child on a day.
#[derive(Debug, Clone, PartialEq)]
pub struct Assessment {
    /// The day.
    pub as_of: NaiveDate,
    /// Every visit up to the day, by date, then in the order given.
    pub visits: Vec<VisitAssessment>,
    /// Every follow-up, in the order of opening; open and closed ones.
    pub follow_ups: Vec<FollowUp>,
    /// Lists the child is on.
    pub lists: Vec<Listed>,
    /// Visit slots, in order of age.
    pub slots: Vec<Slot>,
    /// The next visit; `None` for a child that left.
    pub next_visit: Option<Slot>,
    /// Where the child stands.
    pub now: Now,
    /// Foods offered so far, by code.
    pub foods: Vec<FoodLine>,
    /// The day after the window of the last slot closes: a child still in the programme leaves by age.
    pub ages_out_on: Option<NaiveDate>,
    /// The earliest later day on which this could read differently though nothing new is recorded; `None` = never.
    pub next_change: Option<NaiveDate>,
}

impl Assessment {
    /// Open follow-ups, most urgent first, then by due day.
    #[must_use]
    pub fn open(&self) -> Vec<&FollowUp> {
        let mut open: Vec<&FollowUp> = self.follow_ups.iter().filter(|follow_up| follow_up.is_open()).collect();
        open.sort_by_key(|follow_up| (follow_up.class, follow_up.due_on, follow_up.rule));
        open
    }

    /// The class of the child: the most severe of its open follow-ups.
    #[must_use]
    pub fn class(&self) -> Option<Class> {
        self.follow_ups.iter().filter(|follow_up| follow_up.is_open()).map(|follow_up| follow_up.class).min()
    }

    /// When the child is due: the earliest due day of its open follow-ups.
    #[must_use]
    pub fn due_on(&self) -> Option<NaiveDate> {
        self.follow_ups.iter().filter(|follow_up| follow_up.is_open()).map(|follow_up| follow_up.due_on).min()
    }

    /// The judgement of a visit.
    #[must_use]
    pub fn visit(&self, id: VisitId) -> Option<&VisitAssessment> {
        self.visits.iter().find(|visit| visit.visit == id)
    }
}

/// Judges a child without its rules: visits, slots and ages only, until the rules are in.
#[must_use]
pub fn assess_with(child: &Child, visits: &[Visit], protocols: &Protocols, _acts: &Acts<'_>, as_of: NaiveDate) -> Assessment {
    let protocol = Arc::clone(protocols.on(as_of));
    let mut ordered: Vec<&Visit> = visits.iter().filter(|v| v.on <= as_of).collect();
    ordered.sort_by_key(|v| v.on);
    let met = ordered.iter().filter(|v| v.contact != crate::visit::Contact::Phone).map(|v| (v.id, v.on));
    let slots = crate::schedule::slots(&protocol.schedule, child.born, child.registered_on, met, as_of);
    let age = crate::growth::growth_age(child, as_of);
    Assessment {
        as_of,
        visits: Vec::new(),
        follow_ups: Vec::new(),
        lists: Vec::new(),
        next_visit: slots.iter().copied().find(|s| s.expected && s.filled.is_none() && s.window.closes >= as_of),
        slots,
        now: Now {
            completed_months: crate::calendar::completed_months(child.born, as_of).unwrap_or(0),
            stage_months: crate::growth::stage_months(child, as_of),
            corrected_by_days: age.corrected_by_days,
            stage: None,
            solids: Solids::Unknown,
            protocol,
            past_last_slot: false,
        },
        foods: Vec::new(),
        ages_out_on: None,
        next_change: None,
    }
}

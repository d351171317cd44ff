//! The judgement of one child: all visits up to a day, by the protocol in force at each, in one pure function.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::calendar::{add_days, add_months, completed_months, days_between};
use crate::child::{Child, ChildStatus};
use crate::feeding::{FoodLine, FoodState, Solids, food_lines};
use crate::follow_up::{
    Answer, Clears, Closed, Event, Facts, Finding, FollowUp, Found, Story, SupervisorAct, lists, next_list_change, run, settled_on, stage,
};
use crate::growth::{GrowthAge, VisitScores, corrected_birth_date, growth_age, stage_months};
use crate::ids::VisitId;
use crate::protocol::{Protocol, Protocols, StageId};
use crate::rule::{Class, CloseReason, RuleId};
use crate::schedule::{Slot, SlotState, fill, next_visit};
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
    pub scores: VisitScores,
    /// Which measurements are suspect.
    pub suspect: Suspect,
    /// Stage; `None` from the exit age on.
    pub stage: Option<StageId>,
    /// Whether solids have been started by then.
    pub solids: Solids,
    /// The protocol that judged it.
    pub protocol: Arc<Protocol>,
    /// What fires, in the order of the rules.
    pub findings: Vec<Finding>,
    /// What it did to follow-ups, in the order it was done.
    pub events: Vec<Event>,
    /// What is known of the rules that do not fire.
    clears: [Clears; RuleId::STORED.len()],
}

impl VisitAssessment {
    /// The finding of a rule, if it fires.
    #[must_use]
    pub fn finding(&self, rule: RuleId) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.rule == rule)
    }

    /// What a rule says; `None` for lists, which no visit decides.
    #[must_use]
    pub fn answer(&self, rule: RuleId) -> Option<Answer> {
        let not_fired = self.clears.get(rule as usize)?.answer();
        Some(self.finding(rule).map_or(not_fired, |finding| Answer::Fires(finding.class)))
    }

    /// Findings that stand, most severe first.
    #[must_use]
    pub fn standing(&self) -> Vec<&Finding> {
        let mut standing: Vec<&Finding> = self.findings.iter().filter(|finding| finding.stands()).collect();
        standing.sort_by_key(|finding| finding.class);
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
        days_between(self.counted_from, on)
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

/// Judges a child on a day from its visits, in the order they were entered; those dated later do not count.
#[must_use]
pub fn assess(child: &Child, visits: &[Visit], protocols: &Protocols, as_of: NaiveDate) -> Assessment {
    assess_with(child, visits, protocols, &Acts::default(), as_of)
}

/// As [`assess`], with what people decided outside visits.
#[must_use]
pub fn assess_with(child: &Child, visits: &[Visit], protocols: &Protocols, acts: &Acts<'_>, as_of: NaiveDate) -> Assessment {
    let mut story = Story::new(child, visits, protocols, as_of);
    let mut judged = Vec::with_capacity(story.visits.len());
    let mut follow_ups = run(&story, acts.supervisor, as_of, |facts, found| judged.push(visit(facts, found)));
    let left = left(child, &story, acts, as_of);
    if let Some((reason, on)) = left {
        for follow_up in follow_ups.iter_mut().filter(|follow_up| follow_up.is_open()) {
            follow_up.closed = Some(Closed { reason, on: on.max(follow_up.last_fired_on), by_visit: None, replaced_by: None });
        }
    }
    let protocol = story.protocol;
    let mut slots = std::mem::take(&mut story.slots);
    let seen = || story.visits.iter().filter(|facts| facts.in_person());
    let last_seen_on = seen().next_back().map(Facts::on);
    fill(&mut slots, seen().map(|facts| (facts.visit.id, facts.on(), facts.age_days)), days_between(child.born, as_of));
    let now = now(&story, protocol, &slots, as_of);
    let foods = food_lines(&story.visits);
    let active = left.is_none();
    let lists = if active { lists(child, protocol, &slots, last_seen_on, &follow_ups, as_of) } else { Vec::new() };
    let list_change = if active { next_list_change(child, protocol, last_seen_on, &follow_ups, as_of) } else { None };
    let next_change = [list_change, next_new(visits, protocols, acts, as_of), next_by_age(child, &now, &slots, &foods, as_of)];
    Assessment {
        as_of,
        visits: judged,
        follow_ups,
        lists,
        next_visit: if active { next_visit(&slots).copied() } else { None },
        ages_out_on: slots.last().map(|slot| add_days(slot.window.closes(), 1)),
        slots,
        now,
        foods,
        next_change: next_change.into_iter().flatten().min(),
    }
}

/// Why and when a child left that is no longer in the programme on the day.
fn left(child: &Child, story: &Story<'_>, acts: &Acts<'_>, as_of: NaiveDate) -> Option<(CloseReason, NaiveDate)> {
    let reason = match child.status {
        ChildStatus::Active => return None,
        ChildStatus::TransferredOut => CloseReason::TransferredOut,
        ChildStatus::Moved => CloseReason::Moved,
        ChildStatus::Died => CloseReason::Died,
        ChildStatus::ConsentWithdrawn => CloseReason::ConsentWithdrawn,
        ChildStatus::AgedOut => CloseReason::AgedOut,
        ChildStatus::Refused => CloseReason::Refused,
    };
    let last_visit = || story.visits.last().map_or(child.registered_on, Facts::on);
    let on = acts.left_on.unwrap_or_else(last_visit);
    (acts.left_on.is_none() || on <= as_of).then_some((reason, on))
}

fn visit(facts: &Facts<'_>, Found { findings, clears, events }: Found) -> VisitAssessment {
    VisitAssessment {
        visit: facts.visit.id,
        on: facts.on(),
        age_days: facts.age_days,
        completed_months: facts.months,
        stage_months: facts.stage_months,
        growth_age: facts.growth,
        scores: facts.scores,
        suspect: facts.suspect,
        stage: facts.stage(),
        solids: facts.solids,
        protocol: Arc::clone(facts.protocol),
        findings,
        events,
        clears,
    }
}

fn now(story: &Story<'_>, protocol: &Arc<Protocol>, slots: &[Slot], as_of: NaiveDate) -> Now {
    let child = story.child;
    let months = completed_months(child.born, as_of).unwrap_or(0);
    let stage_months = stage_months(child, as_of);
    let solids = solids_now(story);
    Now {
        completed_months: months,
        stage_months,
        corrected_by_days: growth_age(child, as_of).corrected_by_days,
        stage: stage(protocol, months, stage_months, solids, as_of),
        solids,
        protocol: Arc::clone(protocol),
        past_last_slot: slots.last().is_some_and(|slot| as_of > slot.window.closes()),
    }
}

/// What is known of solids after the last visit: what was once started stays so, and the newest answer counts otherwise.
fn solids_now(story: &Story<'_>) -> Solids {
    let newest_first = story.visits.iter().rev().map(|facts| facts.solids);
    newest_first.into_iter().find(|solids| *solids != Solids::Unknown).unwrap_or(Solids::Unknown)
}

/// The next day on which something already recorded begins to count.
fn next_new(visits: &[Visit], protocols: &Protocols, acts: &Acts<'_>, as_of: NaiveDate) -> Option<NaiveDate> {
    let visits = visits.iter().map(|visit| visit.on);
    let acted = acts.supervisor.iter().map(|act| act.closed_on);
    let in_force = protocols.iter().map(|protocol| protocol.effective_from);
    visits.chain(acted).chain(acts.left_on).chain(in_force).filter(|day| *day > as_of).min()
}

/// The next day on which age, stage, a slot or a food's waiting time turns.
fn next_by_age(child: &Child, now: &Now, slots: &[Slot], foods: &[FoodLine], as_of: NaiveDate) -> Option<NaiveDate> {
    let month = add_months(child.born, now.completed_months + 1);
    let stage_born = corrected_birth_date(child, as_of);
    let stage_month = now.stage_months.map_or(stage_born, |months| add_months(stage_born, months + 1));
    let age = days_between(child.born, as_of);
    // Windows are compared by age, which takes no calendar; only the earliest day is looked up.
    let turns = slots.iter().filter(|slot| matches!(slot.state, SlotState::NotYet | SlotState::Open)).flat_map(Slot::turns_at_ages);
    let windows = turns.filter(|turn| *turn > age).min().map(|turn| add_days(child.born, turn));
    let retries = foods.iter().filter_map(|line| match line.state {
        FoodState::Refused { retry_on } => Some(retry_on),
        _ => None,
    });
    let past_last = slots.last().map(|slot| add_days(slot.window.closes(), 1));
    [Some(child.born), Some(month), Some(stage_month), settled_on(&now.protocol, now.solids), past_last]
        .into_iter()
        .flatten()
        .chain(windows)
        .chain(retries)
        .filter(|day| *day > as_of)
        .min()
}

//! Goes through the visits of a child and opens, refreshes, raises and closes follow-ups. It knows no threshold.

use std::sync::Arc;

use chrono::NaiveDate;

use super::clearing;
use super::facts::{Facts, Story};
use super::relations::{CHAINS, OF_CHAIN, WASTING, muted, wasting_outcome};
use super::rules::{Clears, Measures, STORED, Tests, test_all};
use super::types::{
    Closed, DueChange, Event, EventKind, Finding, FollowUp, FollowedUp, History, OutcomeTold, Progress, Standing, SupervisorAct, may_close,
};
use crate::calendar::add_days;
use crate::evidence::Evidence;
use crate::ids::VisitId;
use crate::rule::{Class, CloseReason, RuleId, Theme};
use crate::rule_set::RuleSet;
use crate::visit::Outcome;

/// An open follow-up: where it stands among all of the child, and what only its clearing needs.
#[derive(Clone, Copy)]
pub(super) struct Open {
    place: usize,
    /// The visit at which it last fired, by place.
    pub(super) last_fired_at: usize,
    /// What made it fire since it opened.
    pub(super) by: Measures,
    /// The first clear visit of the unbroken row.
    pub(super) clear_since: Option<NaiveDate>,
    /// A care outcome was told since it last fired.
    pub(super) care_told: bool,
    /// A decision was told since it last fired.
    pub(super) decision_told: bool,
}

/// What one visit led to.
pub(crate) struct Found {
    /// What fires, in the order of the rules.
    pub findings: Vec<Finding>,
    /// What is known of the clearing of the other rules.
    pub clears: [Clears; STORED],
    /// What it did to follow-ups.
    pub events: Vec<Event>,
}

struct Engine<'s, 'a> {
    story: &'s Story<'a>,
    all: Vec<FollowUp>,
    open: [Option<Open>; STORED],
    is_open: RuleSet,
    events: Vec<Event>,
}

/// Follow-ups that most children have at most: room for them is taken at once.
const ROOM: usize = 16;

/// Goes through all visits, with what supervisors closed in between. Hands on what each visit led to, and answers all follow-ups in the
/// order of opening.
pub(crate) fn run(story: &Story<'_>, acts: &[SupervisorAct], as_of: NaiveDate, mut found: impl FnMut(&Facts<'_>, Found)) -> Vec<FollowUp> {
    let mut engine = Engine { story, all: Vec::with_capacity(ROOM), open: [None; STORED], is_open: RuleSet::default(), events: Vec::new() };
    let mut acts: Vec<&SupervisorAct> = acts.iter().filter(|act| act.closed_on <= as_of).collect();
    acts.sort_by_key(|act| act.closed_on);
    let mut acts = acts.into_iter().peekable();
    for (at, facts) in story.visits.iter().enumerate() {
        // A supervisor's act comes after the visits of its day.
        while let Some(act) = acts.next_if(|act| act.closed_on < facts.on()) {
            engine.close_by_supervisor(act);
        }
        let Tests { findings, clears, .. } = engine.visit(at);
        found(facts, Found { findings, clears, events: std::mem::take(&mut engine.events) });
    }
    for act in acts {
        engine.close_by_supervisor(act);
    }
    for rule in engine.is_open {
        engine.note_progress(rule);
    }
    engine.all
}

/// Rules on growth.
const GROWTH: RuleSet = {
    let (mut set, mut at) = (RuleSet::of(&[]), 0);
    while at < STORED {
        let rule = RuleId::STORED[at];
        if matches!(rule.theme(), Theme::Growth) {
            set.insert(rule);
        }
        at += 1;
    }
    set
};

/// Judged last of all: its class depends on what is open after the visit.
const LAST: RuleId = RuleId::AppetitePoor;

impl Engine<'_, '_> {
    fn visit(&mut self, at: usize) -> Tests {
        self.hear_outcomes(at);
        let mut tests = test_all(self.story, at);
        let visit = self.story.visits[at].visit;
        // Told of both, the discharge is the newer: nobody treats the child any more.
        if wasting_outcome(visit, Outcome::InTreatment) && !wasting_outcome(visit, Outcome::Discharged) {
            for rule in WASTING {
                self.close(at, rule, CloseReason::InCareElsewhere, None);
            }
        }
        self.relate(at, &mut tests);
        let takes_over = self.silence(at, &mut tests);
        let of_the_others = |finding: &&Finding| finding.stands() && finding.rule != LAST;
        for finding in tests.findings.iter().filter(of_the_others) {
            self.fire(at, finding, &tests, takes_over[finding.rule as usize]);
        }
        self.link_replaced(at);
        for rule in self.is_open.without(RuleSet::of(&[LAST])) {
            self.clear(at, rule, &tests);
        }
        // Poor appetite is more urgent while a follow-up on growth is open, as they stand after this visit.
        if self.is_open.meets(GROWTH)
            && let Some(last) = tests.findings.iter_mut().find(|finding| finding.rule == LAST)
        {
            last.class = self.story.visits[at].protocol.rules.appetite_poor.limits.class_with_growth;
        }
        if let Some(last) = tests.findings.iter().find(|finding| finding.rule == LAST && finding.stands()) {
            self.fire(at, last, &tests, None);
        }
        self.clear(at, LAST, &tests);
        self.note_referrals(at);
        tests
    }

    /// Outcomes told at this visit, of follow-ups opened before it.
    fn hear_outcomes(&mut self, at: usize) {
        let facts = &self.story.visits[at];
        for told in &facts.visit.outcomes {
            let Some(Some(open)) = self.open.get_mut(told.rule as usize) else { continue };
            open.care_told |= told.outcome.is_care();
            open.decision_told |= told.outcome == Outcome::Decision;
            let follow_up = &mut self.all[open.place];
            follow_up.outcome_since_fired = true;
            follow_up.outcomes.push(OutcomeTold { visit: facts.visit.id, on: facts.on(), outcome: told.outcome });
        }
    }

    /// Mutes.
    fn relate(&self, at: usize, tests: &mut Tests) {
        for finding in &mut tests.findings {
            if let Some(standing) = muted(self.story, at, finding.rule, tests.holds) {
                finding.standing = standing;
            }
        }
    }

    /// Chains: the highest that stands silences the lower ones and takes over what is open of them. Answers the class taken over.
    fn silence(&mut self, at: usize, tests: &mut Tests) -> [Option<Class>; STORED] {
        let mut takes_over = [None; STORED];
        for (chain, rules) in CHAINS.iter().zip(OF_CHAIN) {
            if !tests.holds.meets(rules) {
                continue;
            }
            let stands = |rule: &RuleId| tests.findings.iter().any(|finding| finding.rule == *rule && finding.stands());
            let Some(place) = chain.iter().position(stands) else { continue };
            let (higher, lower) = (chain[place], &chain[place + 1..]);
            for finding in tests.findings.iter_mut().filter(|finding| finding.stands() && lower.contains(&finding.rule)) {
                finding.standing = Standing::Silenced(higher);
            }
            for &lower in lower {
                if let Some(open) = self.open[lower as usize] {
                    let class = self.all[open.place].class;
                    self.close(at, lower, CloseReason::Replaced, Some(higher));
                    let taken = &mut takes_over[higher as usize];
                    *taken = Some(taken.map_or(class, |taken: Class| taken.worse(class)));
                }
            }
        }
        takes_over
    }

    /// Opens the follow-up of a rule that fires, or refreshes the open one.
    fn fire(&mut self, at: usize, finding: &Finding, tests: &Tests, takes_over: Option<Class>) {
        let facts = &self.story.visits[at];
        let &Finding { rule, class, ref evidence, .. } = finding;
        let by = tests.by[rule as usize];
        let also_true = also_true(rule, &tests.findings);
        let new = takes_over.map_or(class, |taken| taken.worse(class));
        let Some(open) = &mut self.open[rule as usize] else {
            let due_on = due(self.story, facts, new);
            let place = self.all.len();
            self.open[rule as usize] =
                Some(Open { place, last_fired_at: at, by, clear_since: None, care_told: false, decision_told: false });
            self.is_open.insert(rule);
            self.all.push(opened(facts, rule, new, due_on, evidence.clone(), also_true));
            self.event(rule, facts.visit.id, EventKind::Opened);
            return;
        };
        let place = open.place;
        *open = Open { place, last_fired_at: at, by: open.by | by, clear_since: None, care_told: false, decision_told: false };
        let follow_up = &mut self.all[place];
        let old = follow_up.class;
        let kept = old.worse(new);
        let raised = kept < old;
        let mut due_on = due(self.story, facts, kept);
        if raised && takes_over.is_none() && follow_up.due_on > facts.on() {
            due_on = due_on.min(follow_up.due_on);
        }
        follow_up_visit(follow_up, facts);
        follow_up.class = kept;
        follow_up.due_on = due_on;
        follow_up.last_fired_by = facts.visit.id;
        follow_up.last_fired_on = facts.on();
        follow_up.evidence = evidence.clone();
        follow_up.also_true = also_true;
        if !Arc::ptr_eq(&follow_up.protocol, facts.protocol) {
            follow_up.protocol = Arc::clone(facts.protocol);
        }
        follow_up.outcome_since_fired = false;
        follow_up.referred_since_fired = None;
        if kept.is_urgent() {
            follow_up.referred_on.get_or_insert(facts.on());
        }
        follow_up.history.later.push(DueChange { visit: facts.visit.id, on: facts.on(), class: kept, due_on });
        let opened_by = follow_up.opened_by;
        self.event(rule, opened_by, if raised { EventKind::Raised } else { EventKind::Refreshed });
    }

    /// Closes an open follow-up whose rule does not hold, where its way of clearing says so.
    fn clear(&mut self, at: usize, rule: RuleId, tests: &Tests) {
        let Some(open) = &mut self.open[rule as usize] else { return };
        if tests.holds.has(rule) {
            // Where it stands as well, firing has begun the row anew.
            open.clear_since = None;
            return;
        }
        let clears = tests.clears[rule as usize];
        let follow_up = &mut self.all[open.place];
        let verdict = clearing::judge(self.story, at, follow_up, open, clears);
        if verdict.clear {
            follow_up_visit(follow_up, &self.story.visits[at]);
        }
        if let Some(reason) = verdict.closes {
            self.close(at, rule, reason, None);
        }
    }

    fn close(&mut self, at: usize, rule: RuleId, reason: CloseReason, replaced_by: Option<RuleId>) {
        self.note_progress(rule);
        let Some(open) = self.open[rule as usize].take() else { return };
        self.is_open.remove(rule);
        let facts = &self.story.visits[at];
        let follow_up = &mut self.all[open.place];
        if reason == CloseReason::Replaced {
            follow_up_visit(follow_up, facts);
        }
        // The follow-up that takes over opens later at this visit: its opening visit is filled in then.
        let replaced_by = replaced_by.map(|rule| (rule, facts.visit.id));
        follow_up.closed = Some(Closed { reason, on: facts.on(), by_visit: Some(facts.visit.id), replaced_by });
        let opened_by = follow_up.opened_by;
        self.event(rule, opened_by, EventKind::Closed(reason));
    }

    /// Names, in what was replaced at this visit, the visit that opened the follow-up that took over.
    fn link_replaced(&mut self, at: usize) {
        let replaced = |event: &&Event| event.kind == EventKind::Closed(CloseReason::Replaced);
        if !self.events.iter().any(|event| replaced(&event)) {
            return;
        }
        let id = self.story.visits[at].visit.id;
        for place in 0..self.all.len() {
            let Some(Closed { by_visit, replaced_by: Some((rule, _)), .. }) = self.all[place].closed else { continue };
            if by_visit != Some(id) {
                continue;
            }
            if let Some(taker) = self.open[rule as usize] {
                let opened_by = self.all[taker.place].opened_by;
                if let Some(closed) = &mut self.all[place].closed {
                    closed.replaced_by = Some((rule, opened_by));
                }
            }
        }
    }

    /// Follow-ups open after this visit that are referred at it.
    fn note_referrals(&mut self, at: usize) {
        let facts = &self.story.visits[at];
        for rule in &facts.visit.referrals {
            let Some(Some(open)) = self.open.get(*rule as usize) else { continue };
            let follow_up = &mut self.all[open.place];
            follow_up.referred_on.get_or_insert(facts.on());
            follow_up.referred_since_fired.get_or_insert(facts.on());
        }
    }

    fn close_by_supervisor(&mut self, act: &SupervisorAct) {
        let Some(Some(open)) = self.open.get(act.rule as usize) else { return };
        let follow_up = &mut self.all[open.place];
        if follow_up.opened_by == act.opened_by && may_close(follow_up) {
            follow_up.closed =
                Some(Closed { reason: CloseReason::SupervisorDecision, on: act.closed_on, by_visit: None, replaced_by: None });
            self.note_progress(act.rule);
            self.open[act.rule as usize] = None;
            self.is_open.remove(act.rule);
        }
    }

    /// What is behind of an open follow-up's way, told when it closes or the visits end.
    fn note_progress(&mut self, rule: RuleId) {
        if let Some(Some(open)) = self.open.get(rule as usize) {
            clearing::told(&mut self.all[open.place], open);
        }
    }

    fn event(&mut self, rule: RuleId, opened_by: VisitId, kind: EventKind) {
        self.events.push(Event { rule, opened_by, kind });
    }
}

fn opened(facts: &Facts<'_>, rule: RuleId, class: Class, due_on: NaiveDate, evidence: Evidence, also_true: Vec<RuleId>) -> FollowUp {
    let (visit, on) = (facts.visit.id, facts.on());
    FollowUp {
        rule,
        class,
        opened_by: visit,
        opened_on: on,
        due_on,
        last_fired_by: visit,
        last_fired_on: on,
        closed: None,
        history: History { opening: DueChange { visit, on, class, due_on }, later: Vec::new() },
        evidence,
        also_true,
        protocol: Arc::clone(facts.protocol),
        followed_up: Vec::new(),
        outcomes: Vec::new(),
        outcome_since_fired: false,
        // What is urgent is a referral without being named one.
        referred_on: class.is_urgent().then_some(on),
        referred_since_fired: None,
        progress: Progress::default(),
    }
}

/// A visit after the day of opening at which the rule was tested counts as followed up.
fn follow_up_visit(follow_up: &mut FollowUp, facts: &Facts<'_>) {
    let new = follow_up.followed_up.last().is_none_or(|last| last.visit != facts.visit.id);
    if facts.on() > follow_up.opened_on && new {
        follow_up.followed_up.push(FollowedUp { visit: facts.visit.id, on: facts.on(), due_on: follow_up.due_on });
    }
}

/// The day of the check: days of the class after the visit; for the next routine visit the first slot target if that comes sooner,
/// but not at once.
fn due(story: &Story<'_>, facts: &Facts<'_>, class: Class) -> NaiveDate {
    let protocol = facts.protocol;
    let due = add_days(facts.on(), protocol.class_days(class));
    if class != Class::Month {
        return due;
    }
    let soonest = add_days(facts.on(), protocol.classes.month_at_least_days);
    story.first_target_after(facts).map_or(due, |target| due.min(target)).max(soonest)
}

/// Rules that hold at a visit and are silenced or muted by one.
fn also_true(by: RuleId, findings: &[Finding]) -> Vec<RuleId> {
    let set_back = |finding: &&Finding| matches!(finding.standing, Standing::Silenced(higher) | Standing::Muted(higher) if higher == by);
    findings.iter().filter(set_back).map(|finding| finding.rule).collect()
}

//! Goes through the visits of a child and opens, refreshes, raises and closes follow-ups. It knows no threshold.

use std::sync::Arc;

use chrono::NaiveDate;

use super::clearing;
use super::facts::{Facts, Story};
use super::relations::{CHAINS, is_wasting, muted, wasting_outcome};
use super::rules::{self, Clears, Measures, Tested};
use super::types::{
    Answer, Closed, DueChange, Event, EventKind, Finding, FollowUp, FollowedUp, OutcomeTold, Progress, Standing, SupervisorAct, Why,
    may_close,
};
use crate::calendar::add_days;
use crate::evidence::Evidence;
use crate::rule::{Class, CloseReason, RuleId, Theme};
use crate::visit::Outcome;

/// Every rule and list.
const RULES: usize = RuleId::ALL.len();

/// A follow-up with what only its clearing needs.
pub(super) struct Open {
    pub(super) follow_up: FollowUp,
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

/// What the visits led to.
pub(crate) struct Run {
    /// For each visit its findings and events.
    pub visits: Vec<(Vec<Finding>, Vec<Event>)>,
    /// All follow-ups, in the order of opening.
    pub follow_ups: Vec<FollowUp>,
}

/// The tests of one visit, with what becomes of those that hold. By place in [`RuleId::ALL`].
struct Tests {
    tested: Vec<Tested>,
    standing: [Standing; RULES],
}

impl Tests {
    fn holds(&self, rule: RuleId) -> bool {
        self.tested[rule as usize].is_held()
    }

    fn stands(&self, rule: RuleId) -> bool {
        self.holds(rule) && self.standing[rule as usize] == Standing::Stands
    }
}

struct Engine<'s, 'a> {
    story: &'s Story<'a>,
    all: Vec<Open>,
    open: [Option<usize>; RULES],
    events: Vec<Event>,
    room: Vec<Tested>,
}

/// Goes through all visits, with what supervisors closed in between.
pub(crate) fn run(story: &Story<'_>, acts: &[SupervisorAct], as_of: NaiveDate) -> Run {
    let mut engine = Engine { story, all: Vec::new(), open: [None; RULES], events: Vec::new(), room: Vec::new() };
    let mut visits = Vec::with_capacity(story.visits.len());
    let mut acts: Vec<&SupervisorAct> = acts.iter().filter(|act| act.closed_on <= as_of).collect();
    acts.sort_by_key(|act| act.closed_on);
    let mut acts = acts.into_iter().peekable();
    for at in 0..story.visits.len() {
        // A supervisor's act comes after the visits of its day.
        while let Some(act) = acts.next_if(|act| act.closed_on < story.visits[at].on()) {
            engine.close_by_supervisor(act);
        }
        let findings = engine.visit(at);
        visits.push((findings, std::mem::take(&mut engine.events)));
    }
    for act in acts {
        engine.close_by_supervisor(act);
    }
    Run { visits, follow_ups: engine.all.into_iter().map(clearing::told).collect() }
}

impl Engine<'_, '_> {
    fn visit(&mut self, at: usize) -> Vec<Finding> {
        self.hear_outcomes(at);
        let mut tests = self.test_all(at);
        let visit = self.story.visits[at].visit;
        // Told of both, the discharge is the newer: nobody treats the child any more.
        if wasting_outcome(visit, Outcome::InTreatment) && !wasting_outcome(visit, Outcome::Discharged) {
            for rule in RuleId::ALL.iter().copied().filter(|rule| is_wasting(*rule)) {
                self.close(at, rule, CloseReason::InCareElsewhere, None);
            }
        }
        self.relate(at, &mut tests);
        let takes_over = self.silence(at, &mut tests);
        for rule in stored_rules().filter(|rule| *rule != RuleId::AppetitePoor) {
            if tests.stands(rule) {
                self.fire(at, rule, &tests, takes_over[rule as usize]);
            }
        }
        self.link_replaced(at);
        for rule in stored_rules().filter(|rule| *rule != RuleId::AppetitePoor) {
            self.clear(at, rule, &tests);
        }
        // Poor appetite is more urgent while a follow-up on growth is open, as they stand after this visit.
        let growth_open = self.open.iter().flatten().any(|&open| self.all[open].follow_up.rule.theme() == Theme::Growth);
        if let Tested::Holds { class, .. } = &mut tests.tested[RuleId::AppetitePoor as usize]
            && growth_open
        {
            *class = self.story.visits[at].protocol.rules.appetite_poor.limits.class_with_growth;
        }
        if tests.stands(RuleId::AppetitePoor) {
            self.fire(at, RuleId::AppetitePoor, &tests, None);
        }
        self.clear(at, RuleId::AppetitePoor, &tests);
        self.note_referrals(at);
        let findings = findings(&mut tests);
        self.room = tests.tested;
        findings
    }

    /// Outcomes told at this visit, of follow-ups opened before it.
    fn hear_outcomes(&mut self, at: usize) {
        let facts = &self.story.visits[at];
        for told in &facts.visit.outcomes {
            let Some(open) = self.open[told.rule as usize] else { continue };
            let open = &mut self.all[open];
            open.care_told |= told.outcome.is_care();
            open.decision_told |= told.outcome == Outcome::Decision;
            open.follow_up.outcome_since_fired = true;
            open.follow_up.outcomes.push(OutcomeTold { visit: facts.visit.id, on: facts.on(), outcome: told.outcome });
        }
    }

    /// Tests every rule. The room of the visit before is used again.
    fn test_all(&mut self, at: usize) -> Tests {
        let mut tested = std::mem::take(&mut self.room);
        tested.clear();
        tested.extend(RuleId::ALL.iter().map(|rule| rules::test(*rule, self.story, at)));
        Tests { tested, standing: [Standing::Stands; RULES] }
    }

    /// Mutes.
    fn relate(&self, at: usize, tests: &mut Tests) {
        for rule in stored_rules() {
            if tests.holds(rule)
                && let Some(standing) = muted(self.story, at, rule, &|rule| tests.holds(rule))
            {
                tests.standing[rule as usize] = standing;
            }
        }
    }

    /// Chains: the highest that stands silences the lower ones and takes over what is open of them. Answers the class taken over.
    fn silence(&mut self, at: usize, tests: &mut Tests) -> [Option<Class>; RULES] {
        let mut takes_over = [None; RULES];
        for chain in CHAINS {
            let Some(place) = chain.iter().position(|rule| tests.stands(*rule)) else { continue };
            let higher = chain[place];
            for &lower in &chain[place + 1..] {
                if tests.stands(lower) {
                    tests.standing[lower as usize] = Standing::Silenced(higher);
                }
                if let Some(open) = self.open[lower as usize] {
                    let class = self.all[open].follow_up.class;
                    self.close(at, lower, CloseReason::Replaced, Some(higher));
                    let taken = &mut takes_over[higher as usize];
                    *taken = Some(taken.map_or(class, |taken: Class| taken.worse(class)));
                }
            }
        }
        takes_over
    }

    /// Opens the follow-up of a rule that fires, or refreshes the open one.
    fn fire(&mut self, at: usize, rule: RuleId, tests: &Tests, takes_over: Option<Class>) {
        let facts = &self.story.visits[at];
        let Tested::Holds { class, evidence, by } = &tests.tested[rule as usize] else { return };
        let also_true = also_true(rule, tests);
        let new = takes_over.map_or(*class, |taken| taken.worse(*class));
        let Some(place) = self.open[rule as usize] else {
            let due_on = due(self.story, facts, new);
            self.open[rule as usize] = Some(self.all.len());
            self.all.push(opened(at, facts, rule, new, due_on, evidence.clone(), *by, also_true));
            self.event(rule, facts.visit.id, EventKind::Opened);
            return;
        };
        let open = &mut self.all[place];
        let old = open.follow_up.class;
        let kept = old.worse(new);
        let raised = kept < old;
        let mut due_on = due(self.story, facts, kept);
        if raised && takes_over.is_none() && open.follow_up.due_on > facts.on() {
            due_on = due_on.min(open.follow_up.due_on);
        }
        follow_up_visit(open, facts);
        open.last_fired_at = at;
        open.by |= by;
        open.clear_since = None;
        open.care_told = false;
        open.decision_told = false;
        let follow_up = &mut open.follow_up;
        follow_up.class = kept;
        follow_up.due_on = due_on;
        follow_up.last_fired_by = facts.visit.id;
        follow_up.last_fired_on = facts.on();
        follow_up.evidence = evidence.clone();
        follow_up.also_true = also_true;
        follow_up.protocol = Arc::clone(facts.protocol);
        follow_up.outcome_since_fired = false;
        follow_up.referred_since_fired = None;
        if kept.is_urgent() {
            follow_up.referred_on.get_or_insert(facts.on());
        }
        follow_up.history.push(DueChange { visit: facts.visit.id, on: facts.on(), class: kept, due_on });
        let opened_by = follow_up.opened_by;
        self.event(rule, opened_by, if raised { EventKind::Raised } else { EventKind::Refreshed });
    }

    /// Closes an open follow-up whose rule does not hold, where its way of clearing says so.
    fn clear(&mut self, at: usize, rule: RuleId, tests: &Tests) {
        let Some(place) = self.open[rule as usize] else { return };
        let facts = &self.story.visits[at];
        let open = &mut self.all[place];
        match &tests.tested[rule as usize] {
            Tested::Holds { .. } if tests.standing[rule as usize] != Standing::Stands => open.clear_since = None,
            Tested::Holds { .. } => {}
            Tested::Not(clears) => {
                let verdict = clearing::judge(self.story, at, open, *clears);
                if verdict.clear {
                    follow_up_visit(open, facts);
                }
                if let Some(reason) = verdict.closes {
                    self.close(at, rule, reason, None);
                }
            }
        }
    }

    fn close(&mut self, at: usize, rule: RuleId, reason: CloseReason, replaced_by: Option<RuleId>) {
        let Some(place) = self.open[rule as usize].take() else { return };
        let facts = &self.story.visits[at];
        let open = &mut self.all[place];
        if reason == CloseReason::Replaced {
            follow_up_visit(open, facts);
        }
        // The follow-up that takes over opens later at this visit: its opening visit is filled in then.
        let replaced_by = replaced_by.map(|rule| (rule, facts.visit.id));
        open.follow_up.closed = Some(Closed { reason, on: facts.on(), by_visit: Some(facts.visit.id), replaced_by });
        let opened_by = open.follow_up.opened_by;
        self.event(rule, opened_by, EventKind::Closed(reason));
    }

    /// Names, in what was replaced at this visit, the visit that opened the follow-up that took over.
    fn link_replaced(&mut self, at: usize) {
        let id = self.story.visits[at].visit.id;
        for place in 0..self.all.len() {
            let Some(Closed { by_visit, replaced_by: Some((rule, _)), .. }) = self.all[place].follow_up.closed else { continue };
            if by_visit != Some(id) {
                continue;
            }
            if let Some(taker) = self.open[rule as usize] {
                let opened_by = self.all[taker].follow_up.opened_by;
                if let Some(closed) = &mut self.all[place].follow_up.closed {
                    closed.replaced_by = Some((rule, opened_by));
                }
            }
        }
    }

    /// Follow-ups open after this visit that are referred at it.
    fn note_referrals(&mut self, at: usize) {
        let facts = &self.story.visits[at];
        for rule in &facts.visit.referrals {
            let Some(open) = self.open[*rule as usize] else { continue };
            let follow_up = &mut self.all[open].follow_up;
            follow_up.referred_on.get_or_insert(facts.on());
            follow_up.referred_since_fired.get_or_insert(facts.on());
        }
    }

    fn close_by_supervisor(&mut self, act: &SupervisorAct) {
        let Some(place) = self.open[act.rule as usize] else { return };
        let follow_up = &mut self.all[place].follow_up;
        if follow_up.opened_by == act.opened_by && may_close(follow_up) {
            follow_up.closed =
                Some(Closed { reason: CloseReason::SupervisorDecision, on: act.closed_on, by_visit: None, replaced_by: None });
            self.open[act.rule as usize] = None;
        }
    }

    fn event(&mut self, rule: RuleId, opened_by: crate::ids::VisitId, kind: EventKind) {
        self.events.push(Event { rule, opened_by, kind });
    }
}

/// Every rule that opens follow-ups: all but the lists, which stand last.
const STORED: &[RuleId] = RuleId::ALL.split_at(RULES - 3).0;

fn stored_rules() -> impl Iterator<Item = RuleId> {
    STORED.iter().copied()
}

#[expect(clippy::too_many_arguments, reason = "a follow-up begins with all of them")]
fn opened(
    at: usize,
    facts: &Facts<'_>,
    rule: RuleId,
    class: Class,
    due_on: NaiveDate,
    evidence: Evidence,
    by: Measures,
    also_true: Vec<RuleId>,
) -> Open {
    let (visit, on) = (facts.visit.id, facts.on());
    let follow_up = FollowUp {
        rule,
        class,
        opened_by: visit,
        opened_on: on,
        due_on,
        last_fired_by: visit,
        last_fired_on: on,
        closed: None,
        history: vec![DueChange { visit, on, class, due_on }],
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
    };
    Open { follow_up, last_fired_at: at, by, clear_since: None, care_told: false, decision_told: false }
}

/// A visit after the day of opening at which the rule was tested counts as followed up.
fn follow_up_visit(open: &mut Open, facts: &Facts<'_>) {
    let follow_up = &mut open.follow_up;
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
    let target = protocol.schedule.first_target_after(story.child.born, facts.on());
    let soonest = add_days(facts.on(), protocol.classes.month_at_least_days);
    target.map_or(due, |target| due.min(target)).max(soonest)
}

/// Rules that hold at this visit and are silenced or muted by one.
fn also_true(by: RuleId, tests: &Tests) -> Vec<RuleId> {
    let silenced = |rule: &RuleId| {
        tests.holds(*rule) && matches!(tests.standing[*rule as usize], Standing::Silenced(higher) | Standing::Muted(higher) if higher == by)
    };
    stored_rules().filter(silenced).collect()
}

/// What a visit's tests found, lists left out. Their evidence moves into the findings.
fn findings(tests: &mut Tests) -> Vec<Finding> {
    let stored = tests.tested.iter_mut().zip(&tests.standing).zip(STORED);
    let finding = |((tested, standing), rule): ((&mut Tested, &Standing), &RuleId)| {
        let (answer, evidence) = match tested {
            Tested::Holds { class, evidence, .. } => (Answer::Fires(*class), std::mem::take(evidence)),
            Tested::Not(Clears::Yes) => (Answer::Clear, Evidence::default()),
            Tested::Not(Clears::No) => (Answer::CannotTell(Why::NotYet), Evidence::default()),
            Tested::Not(Clears::Unknown(why)) => (Answer::CannotTell(*why), Evidence::default()),
        };
        Finding { rule: *rule, answer, standing: *standing, evidence }
    };
    stored.map(finding).collect()
}

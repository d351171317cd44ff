//! Follow-ups of one child: what a rule found, since when, by when, and how it ended. It knows no storage and no people.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::evidence::Evidence;
use crate::ids::VisitId;
use crate::protocol::Protocol;
use crate::rule::{Class, CloseReason, FollowUpState, RuleId};
use crate::visit::Outcome;

/// What a rule says at a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Its condition is known to hold.
    Fires(Class),
    /// Its clearing test is known to be met.
    Clear,
    /// Anything else, and why.
    CannotTell(Why),
}

impl Answer {
    /// The class, if it fires.
    #[must_use]
    pub const fn class(self) -> Option<Class> {
        match self {
            Self::Fires(class) => Some(class),
            Self::Clear | Self::CannotTell(_) => None,
        }
    }
}

/// Why a rule cannot tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// A value that it needs is missing, was not asked, or is suspect.
    Missing,
    /// It does not apply at this age or at such a visit.
    NotNow,
    /// It does not hold, yet its clearing test is known to fail.
    NotYet,
    /// Only an outcome or a correction clears it.
    NeedsOutcome,
    /// The protocol has it switched off.
    Off,
}

/// What becomes of a rule that fires.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// It stands by itself: opens a follow-up or keeps one open.
    Stands,
    /// A higher rule of its chain fires.
    Silenced(RuleId),
    /// Another rule that holds mutes it.
    Muted(RuleId),
    /// The child is in wasting treatment.
    InTreatment,
}

/// A rule that fires at a visit.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Rule.
    pub rule: RuleId,
    /// Its class at this visit; the class of the follow-up may be more severe.
    pub class: Class,
    /// What becomes of it.
    pub standing: Standing,
    /// The numbers used.
    pub evidence: Evidence,
}

impl Finding {
    /// Whether it stands by itself.
    #[must_use]
    pub const fn stands(&self) -> bool {
        matches!(self.standing, Standing::Stands)
    }
}

/// What a visit did to a follow-up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Event {
    /// Rule of the follow-up.
    pub rule: RuleId,
    /// The visit that opened it: with the rule, its name among the child's follow-ups.
    pub opened_by: VisitId,
    /// What happened.
    pub kind: EventKind,
}

/// What can happen to a follow-up at a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EventKind {
    /// Opened.
    Opened,
    /// Fired again.
    Refreshed,
    /// Fired again and is more urgent now.
    Raised,
    /// Closed.
    Closed(CloseReason),
}

/// Class and due day from a visit on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DueChange {
    /// The visit.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// Class from then on.
    pub class: Class,
    /// Due day from then on.
    pub due_on: NaiveDate,
}

/// Class and due day of a follow-up, one line for each visit that set them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct History {
    /// The line of its opening.
    pub opening: DueChange,
    /// Later lines, in order.
    pub later: Vec<DueChange>,
}

impl History {
    /// Every line, in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &DueChange> {
        std::iter::once(&self.opening).chain(&self.later)
    }

    /// The line that stands.
    #[must_use]
    pub fn last(&self) -> &DueChange {
        self.later.last().unwrap_or(&self.opening)
    }
}

/// How a follow-up ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Closed {
    /// Why.
    pub reason: CloseReason,
    /// The day.
    pub on: NaiveDate,
    /// The visit that closed it; `None` for a supervisor's act or a child that left.
    pub by_visit: Option<VisitId>,
    /// The rule that took over, and the visit that opened its follow-up.
    pub replaced_by: Option<(RuleId, VisitId)>,
}

/// A visit after opening at which the rule was tested.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FollowedUp {
    /// The visit.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// The due day that stood until then.
    pub due_on: NaiveDate,
}

impl FollowedUp {
    /// On or before the due day that stood until then.
    #[must_use]
    pub fn on_time(self) -> bool {
        self.on <= self.due_on
    }
}

/// An outcome and the day it was told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutcomeTold {
    /// The visit.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// The outcome.
    pub outcome: Outcome,
}

/// A follow-up. Rule and opening visit name it among those of the child.
#[derive(Debug, Clone, PartialEq)]
pub struct FollowUp {
    /// The rule.
    pub rule: RuleId,
    /// The class kept: the most severe since it opened.
    pub class: Class,
    /// The visit that opened it.
    pub opened_by: VisitId,
    /// That visit's day.
    pub opened_on: NaiveDate,
    /// The day of the check.
    pub due_on: NaiveDate,
    /// The visit at which the rule last fired.
    pub last_fired_by: VisitId,
    /// That visit's day.
    pub last_fired_on: NaiveDate,
    /// How it ended; `None` = open.
    pub closed: Option<Closed>,
    /// Class and due day, from opening on.
    pub history: History,
    /// The numbers of the last firing.
    pub evidence: Evidence,
    /// Rules that it silenced or muted when it last fired.
    pub also_true: Vec<RuleId>,
    /// The protocol of the visit at which it last fired.
    pub protocol: Arc<Protocol>,
    /// Visits after the day of opening at which the rule fired or was clear.
    pub followed_up: Vec<FollowedUp>,
    /// Every outcome told of it, in order.
    pub outcomes: Vec<OutcomeTold>,
    /// Whether an outcome of any kind was told since it last fired.
    pub outcome_since_fired: bool,
    /// The first day it was referred, of all.
    pub referred_on: Option<NaiveDate>,
    /// The first day it was referred since it last fired.
    pub referred_since_fired: Option<NaiveDate>,
    /// What of its way to the end is behind.
    pub progress: Progress,
}

/// What a clearing test said at a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TestResult {
    /// Known to be met.
    Met,
    /// Known to fail.
    NotMet,
    /// Cannot tell, and why.
    Unknown(Why),
}

/// A clearing test at a visit after the rule last fired.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LastTest {
    /// The visit.
    pub visit: VisitId,
    /// What it said.
    pub result: TestResult,
}

/// What of an open follow-up's way to its end is behind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Progress {
    /// The first clear visit of an unbroken row.
    pub first_clear_on: Option<NaiveDate>,
    /// A care outcome was told since it last fired.
    pub care_told: bool,
    /// The newest clearing test since it last fired.
    pub last_test: Option<LastTest>,
}

impl FollowUp {
    /// Where it stands: the reason for closing says which end it is.
    #[must_use]
    pub fn state(&self) -> FollowUpState {
        self.closed.map_or(FollowUpState::Open, |closed| closed.reason.state())
    }

    /// Whether it is open.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        self.closed.is_none()
    }

    /// The class it opened with.
    #[must_use]
    pub fn class_at_opening(&self) -> Class {
        self.history.opening.class
    }

    /// The first visit that counts as followed up.
    #[must_use]
    pub fn first_followed_up(&self) -> Option<FollowedUp> {
        self.followed_up.first().copied()
    }

    /// The first outcome told.
    #[must_use]
    pub fn first_outcome(&self) -> Option<OutcomeTold> {
        self.outcomes.first().copied()
    }

    /// The first outcome that says the child reached care.
    #[must_use]
    pub fn reached_care(&self) -> Option<OutcomeTold> {
        self.outcomes.iter().find(|told| told.outcome.is_care()).copied()
    }
}

/// A supervisor's closing, kept outside the visits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SupervisorAct {
    /// Rule of the follow-up.
    pub rule: RuleId,
    /// The visit that opened it.
    pub opened_by: VisitId,
    /// The day. It comes after the visits of that day.
    pub closed_on: NaiveDate,
}

/// Whether a supervisor may close it: it is open, and not `now` or `today` without an outcome since it last fired.
#[must_use]
pub const fn may_close(follow_up: &FollowUp) -> bool {
    follow_up.is_open() && (!follow_up.class.is_urgent() || follow_up.outcome_since_fired)
}

//! Counselling that closes its own loop: lines told once, steps agreed with the family, and what became of each at a later visit.
//! No rule reads any of it, and it knows no page: an answer nobody gave stays unknown.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::code::codes;
use crate::ids::VisitId;
use crate::protocol::CoachingLine;
use crate::protocol::StageId;
use crate::rule::RuleId;

/// Lines offered at a visit (our own choice: more than five are not listened to).
pub const MOST_LINES: usize = 5;

/// One of the places for a step agreed at a visit. There are three (common practice: few small steps), so that a fourth cannot be
/// written at all and no visit is refused for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place(u8);

impl Place {
    /// The three places.
    pub const ALL: [Self; 3] = [Self(1), Self(2), Self(3)];

    /// The place with this number, from 1.
    #[must_use]
    pub fn of(number: u8) -> Option<Self> {
        Self::ALL.into_iter().find(|place| place.0 == number)
    }

    /// Its number, from 1.
    #[must_use]
    pub const fn number(self) -> u8 {
        self.0
    }
}

codes! {
    /// What became of an agreed step.
    StepAnswer, "step answer" {
        /// Done.
        Done => "done",
        /// Done in part, or on some days.
        Partly => "partly",
        /// Not done.
        Not => "not",
    }
}

/// A small step that family and worker agreed to try.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// From a coaching line.
    Line {
        /// The key of the line.
        key: String,
        /// What was added: when, who, with what.
        words: Option<String>,
    },
    /// From an open follow-up: what its rule asks to be done.
    FollowUp {
        /// Its rule.
        rule: RuleId,
        /// What was added.
        words: Option<String>,
    },
    /// In the worker's own words.
    Own {
        /// The words.
        words: String,
    },
}

/// Which step: the visit at which it was agreed, and its place there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StepId {
    /// The visit at which it was agreed.
    pub visit: VisitId,
    /// Its place there.
    pub place: Place,
}

/// What was told of a step: an answer, what was in the way, or both; never neither.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    answer: Option<StepAnswer>,
    in_the_way: Option<String>,
}

impl Told {
    /// What was told; `None` when nothing was.
    #[must_use]
    pub fn of(answer: Option<StepAnswer>, in_the_way: Option<String>) -> Option<Self> {
        let in_the_way = in_the_way.filter(|words| !words.trim().is_empty());
        (answer.is_some() || in_the_way.is_some()).then_some(Self { answer, in_the_way })
    }

    /// The answer; `None` when only a reason was told.
    #[must_use]
    pub const fn answer(&self) -> Option<StepAnswer> {
        self.answer
    }

    /// What was in the way, in the family's words.
    #[must_use]
    pub fn in_the_way(&self) -> Option<&str> {
        self.in_the_way.as_deref()
    }
}

/// What was talked about at a visit.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Talk {
    /// Keys of the coaching lines told.
    pub lines: BTreeSet<String>,
    /// Steps agreed.
    pub agreed: BTreeMap<Place, Step>,
    /// What became of steps agreed before.
    pub told: BTreeMap<StepId, Told>,
}

impl Talk {
    /// Whether nothing was talked about, or nothing of it was written down.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty() && self.agreed.is_empty() && self.told.is_empty()
    }
}

/// The talk of a visit, in its place in the child's story.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TalkAt<'a> {
    /// The visit.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// What was talked about.
    pub talk: &'a Talk,
}

/// What was last told of a step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToldOn {
    /// What was told.
    pub told: Told,
    /// At the visit of this day.
    pub on: NaiveDate,
}

/// A step with what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepLine {
    /// Which.
    pub id: StepId,
    /// The day on which it was agreed.
    pub agreed_on: NaiveDate,
    /// The step.
    pub step: Step,
    /// What was told of it at later visits, the last that has an answer, else the last; `None`: nobody asked.
    pub told: Option<ToldOn>,
}

impl StepLine {
    /// What became of it; `None`: not known.
    #[must_use]
    pub fn answer(&self) -> Option<StepAnswer> {
        self.told.as_ref().and_then(|told| told.told.answer())
    }
}

/// Every step agreed so far with what became of it, the latest visit first and in the order of their places there. `talks` stand by
/// date, then in the order of entry. What was told before a step was agreed, or at that very visit, says nothing of it.
#[must_use]
pub fn steps(talks: &[TalkAt<'_>]) -> Vec<StepLine> {
    let mut lines = Vec::new();
    for (at, agreed) in talks.iter().enumerate().rev() {
        for (place, step) in &agreed.talk.agreed {
            let id = StepId { visit: agreed.visit, place: *place };
            let mut told: Option<ToldOn> = None;
            for later in &talks[at + 1..] {
                if let Some(words) = later.talk.told.get(&id)
                    && (words.answer.is_some() || told.as_ref().is_none_or(|before| before.told.answer.is_none()))
                {
                    told = Some(ToldOn { told: words.clone(), on: later.on });
                }
            }
            lines.push(StepLine { id, agreed_on: agreed.on, step: step.clone(), told });
        }
    }
    lines
}

/// The steps that a visit opens with.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ToAsk {
    /// Those of the latest visit at which steps were agreed, as far as nothing is known of them.
    pub last: Vec<StepLine>,
    /// Older ones of which nothing is known.
    pub earlier: Vec<StepLine>,
}

/// What a visit after these asks about.
#[must_use]
pub fn to_ask(talks: &[TalkAt<'_>]) -> ToAsk {
    let all = steps(talks);
    let latest = all.first().map(|line| line.id.visit);
    let (last, earlier) = all.into_iter().filter(|line| line.answer().is_none()).partition(|line| Some(line.id.visit) == latest);
    ToAsk { last, earlier }
}

/// The keys of the lines given so far: told, or agreed on as a step.
#[must_use]
pub fn given<'a>(talks: &[TalkAt<'a>]) -> BTreeSet<&'a str> {
    let told = talks.iter().flat_map(|at| at.talk.lines.iter().map(String::as_str));
    let agreed = talks.iter().flat_map(|at| at.talk.agreed.values()).filter_map(|step| match step {
        Step::Line { key, .. } => Some(key.as_str()),
        _ => None,
    });
    told.chain(agreed).collect()
}

/// Whether an open follow-up says that a line is not to be told or tried now.
#[must_use]
pub fn silenced(line: &CoachingLine, open: &BTreeSet<RuleId>) -> bool {
    line.not_with.iter().any(|rule| open.contains(rule))
}

/// The lines a visit offers: those of the stage not given yet and not silenced by an open follow-up, danger first, then as the
/// protocol orders them; at most [`MOST_LINES`]. No stage, from the exit age on, has no line.
#[must_use]
pub fn offered<'p>(
    lines: &'p [CoachingLine],
    stage: Option<StageId>,
    given: &BTreeSet<&str>,
    open: &BTreeSet<RuleId>,
) -> Vec<&'p CoachingLine> {
    let Some(stage) = stage else { return Vec::new() };
    let fits = |line: &&CoachingLine| line.stages.contains(&stage) && !given.contains(line.key.as_str()) && !silenced(line, open);
    let mut offered: Vec<&CoachingLine> = lines.iter().filter(fits).collect();
    // Stable: within danger, and within the rest, the order of the protocol stays.
    offered.sort_by_key(|line| !line.danger);
    offered.truncate(MOST_LINES);
    offered
}

#[cfg(test)]
mod tests;

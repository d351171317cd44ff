//! One follow-up with everything that explains it, as it stood on a day: the visit, the numbers, the way to its end, its history.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::child_code::ChildCode;
use domain::follow_up::FollowUp;
use domain::follow_up::ScaleError;
use domain::follow_up::Step;
use domain::follow_up::ToClose;
use domain::follow_up::may_close;
use domain::follow_up::scale_error;
use domain::follow_up::steps;
use domain::follow_up::to_close;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::protocol::Protocol;
use domain::role::Action;
use domain::role::Role;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::reassess::follow_up_record;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::follow_ups::FollowUpEvent;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::people;
use crate::store::people::PersonRecord;
use crate::store::visits::VisitRecord;

/// Which of a child's follow-ups of a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// The one that is open.
    Open,
    /// By number from 1, in the order they opened.
    Number(u32),
}

impl Which {
    /// Reads the last part of an address.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        if text == "open" { Some(Self::Open) } else { text.parse().ok().filter(|n| *n > 0).map(Self::Number) }
    }
}

/// A follow-up explained.
#[derive(Debug, Clone)]
pub struct Explained {
    /// Whose, with all visits up to the day and the judgement of it.
    pub file: ChildFile,
    /// The worker.
    pub worker: Option<PersonRecord>,
    /// The follow-up as it stood on the day.
    pub follow_up: FollowUpRecord,
    /// Its number among the child's of this rule.
    pub number: u32,
    /// The same as judged from the visits; `None` when a correction took its cause away and only the record is left.
    pub judged: Option<FollowUp>,
    /// What happened to it, visit by visit.
    pub steps: Vec<Step>,
    /// What is still to happen before it closes.
    pub to_close: Option<ToClose>,
    /// Beside a gain, loss or drop: the error of measuring.
    pub scale: Option<ScaleError>,
    /// The record's history up to the day, first to last.
    pub history: Vec<FollowUpEvent>,
    /// Names of the people in it.
    pub names: BTreeMap<PersonId, String>,
    /// Whether who asks may close it now.
    pub may_close: bool,
    /// Whether only a missing outcome keeps it from being closed.
    pub needs_outcome: bool,
}

impl Explained {
    /// A visit of the child by its key.
    #[must_use]
    pub fn visit(&self, id: VisitId) -> Option<&VisitRecord> {
        self.file.visits.iter().find(|v| v.visit.id == id)
    }

    /// The protocol that judged the visit at which it last fired.
    #[must_use]
    pub fn protocol(&self) -> &Protocol {
        self.judged.as_ref().map_or(&self.file.assessment.now.protocol, |judged| &judged.protocol)
    }
}

/// Which children the person reaches today.
#[must_use]
pub const fn scope(ctx: &Context) -> Scope {
    match ctx.actor.role {
        Role::Supervisor => Scope::Supervisor { person: ctx.actor.person },
        Role::Worker | Role::Manager | Role::Administrator => Scope::Worker { person: ctx.actor.person, today: ctx.today },
    }
}

/// The child with this code in scope.
///
/// # Errors
/// [`Refusal::NotFound`], also for what is no code; [`Refusal::Store`].
pub async fn child(c: &impl Connection, ctx: &Context, code: &str) -> Result<ChildRecord, Refusal> {
    let code = ChildCode::parse(code).map_err(|_| Refusal::NotFound)?;
    children::by_code_in_scope(c, scope(ctx), code.as_str()).await?.ok_or(Refusal::NotFound)
}

/// A child's follow-ups of a rule, numbered from 1 in the order they opened.
fn numbered(all: &[FollowUpRecord], rule: RuleId) -> Vec<(u32, FollowUpRecord)> {
    let mut of_rule: Vec<FollowUpRecord> = all.iter().filter(|f| f.rule == rule).cloned().collect();
    of_rule.sort_by_key(|f| (f.opened_on, f.id));
    (1_u32..).zip(of_rule).collect()
}

/// The follow-up meant, with its number.
pub(crate) fn pick(all: &[FollowUpRecord], rule: RuleId, which: Which) -> Option<(u32, FollowUpRecord)> {
    let mut numbered = numbered(all, rule).into_iter();
    match which {
        Which::Open => numbered.find(|(_, f)| f.closing.is_none()),
        Which::Number(wanted) => numbered.find(|(n, _)| *n == wanted),
    }
}

/// Whether only a missing outcome keeps an open one from being closed, as the judgement of the child's story has it.
pub(crate) fn lacks_outcome(judged: Option<&FollowUp>) -> bool {
    judged.is_some_and(|judged| judged.is_open() && !may_close(judged))
}

/// The follow-up on the day, as stored and as judged. On a past day only what the visits up to it say counts.
fn on_the_day(file: &ChildFile, rule: RuleId, which: Which, past: bool) -> Option<(u32, FollowUpRecord, Option<FollowUp>)> {
    let judged_of = |f: &FollowUpRecord| {
        file.assessment.follow_ups.iter().find(|judged| (judged.rule, judged.opened_by) == (f.rule, f.opened_by_visit)).cloned()
    };
    if !past {
        let (number, stored) = pick(&file.follow_ups, rule, which)?;
        let judged = judged_of(&stored);
        return Some((number, stored, judged));
    }
    numbered(&file.follow_ups, rule)
        .into_iter()
        .filter_map(|(number, stored)| Some((number, judged_of(&stored)?, stored)))
        .find(|(number, judged, _)| match which {
            Which::Open => judged.is_open(),
            Which::Number(wanted) => *number == wanted,
        })
        .map(|(number, judged, stored)| (number, follow_up_record(&file.record, &judged, Some(&stored)), Some(judged)))
}

/// Opens a follow-up as it stood on a day.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope, and on a day on which it was not there yet; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str, rule: RuleId, which: Which, as_of: NaiveDate) -> Result<Explained, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    let code = ChildCode::parse(code).map_err(|_| Refusal::NotFound)?;
    let past = as_of < ctx.today;
    ctx.db
        .read(async |tx| {
            let file = child_file::read(tx, &ctx.protocols, scope(ctx), code.as_str(), as_of).await?;
            let (number, follow_up, judged) = on_the_day(&file, rule, which, past).ok_or(Refusal::NotFound)?;
            let mut history = follow_ups::history_of_child(tx, file.record.id).await?;
            history.retain(|event| event.follow_up == follow_up.id && event.on <= as_of);
            let named = history.iter().filter_map(|e| e.by).chain(file.visits.iter().map(|v| v.recorded_by));
            let named: Vec<PersonId> = named.chain(follow_up.closing.iter().filter_map(|c| c.by)).collect();
            let names = people::names(tx, &named).await?;
            let worker = people::by_id(tx, file.record.worker).await?;
            let needs_outcome = follow_up.closing.is_none() && lacks_outcome(judged.as_ref());
            let may_close = !past && ctx.needs(Action::Supervise).is_ok() && follow_up.closing.is_none() && !needs_outcome;
            let facts = &file.record.facts;
            let visit = |id: VisitId| file.visits.iter().find(|v| v.visit.id == id).map(|v| &v.visit);
            let to_close = judged.as_ref().and_then(|judged| to_close(judged, facts, &file.assessment, visit));
            let steps = judged.as_ref().map_or_else(Vec::new, |judged| steps(&file.assessment.visits, judged));
            let protocol = judged.as_ref().map_or(&file.assessment.now.protocol, |judged| &judged.protocol);
            let scale = scale_error(rule, &follow_up.evidence, facts, follow_up.last_fired_on, protocol);
            Ok(Explained { worker, follow_up, number, judged, steps, to_close, scale, history, names, may_close, needs_outcome, file })
        })
        .await
}

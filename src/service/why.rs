//! One follow-up with everything that explains it: the visit, the earlier ones of the same rule, and its history.

use std::collections::BTreeMap;

use domain::child_code::ChildCode;
use domain::ids::PersonId;
use domain::role::Action;
use domain::role::Role;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::areas;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::follow_ups::FollowUpEvent;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::people;
use crate::store::people::PersonRecord;
use crate::store::visits;
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
    /// Whose.
    pub child: ChildRecord,
    /// Name of the village.
    pub area_name: String,
    /// The worker.
    pub worker: Option<PersonRecord>,
    /// The follow-up.
    pub follow_up: FollowUpRecord,
    /// Its number among the child's of this rule.
    pub number: u32,
    /// The visit at which it last fired, if it is still there.
    pub visit: Option<VisitRecord>,
    /// Its history, first to last.
    pub history: Vec<FollowUpEvent>,
    /// Names of the people in it.
    pub names: BTreeMap<PersonId, String>,
    /// Whether who asks may close it now.
    pub may_close: bool,
    /// Whether only a missing outcome keeps it from being closed.
    pub needs_outcome: bool,
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

/// The follow-up meant, with its number.
pub(crate) fn pick(all: Vec<FollowUpRecord>, rule: RuleId, which: Which) -> Option<(u32, FollowUpRecord)> {
    let mut of_rule: Vec<FollowUpRecord> = all.into_iter().filter(|f| f.rule == rule).collect();
    of_rule.sort_by_key(|f| (f.opened_on, f.id));
    let mut numbered = (1_u32..).zip(of_rule);
    match which {
        Which::Open => numbered.find(|(_, f)| f.closing.is_none()),
        Which::Number(wanted) => numbered.find(|(n, _)| *n == wanted),
    }
}

/// Whether an urgent one has no outcome since it last fired.
pub(crate) fn lacks_outcome(f: &FollowUpRecord, visits: &[VisitRecord]) -> bool {
    // An outcome told at a later visit than the one at which the rule last fired; order of entry decides within a day.
    let fired = visits.iter().position(|v| v.visit.id == f.last_fired_visit);
    let told = visits.iter().skip(fired.map_or(0, |at| at + 1)).any(|v| v.visit.outcomes.iter().any(|o| o.rule == f.rule));
    f.class.is_urgent() && !told
}

/// Opens a follow-up.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str, rule: RuleId, which: Which) -> Result<Explained, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    ctx.db
        .read(async |tx| {
            let child = child(tx, ctx, code).await?;
            let (number, follow_up) = pick(follow_ups::of_child(tx, child.id).await?, rule, which).ok_or(Refusal::NotFound)?;
            let visits = visits::of_child_up_to(tx, child.id, ctx.today).await?;
            let mut history = follow_ups::history_of_child(tx, child.id).await?;
            history.retain(|event| event.follow_up == follow_up.id);
            let needs_outcome = follow_up.closing.is_none() && lacks_outcome(&follow_up, &visits);
            let visit = visits.into_iter().find(|v| v.visit.id == follow_up.last_fired_visit);
            let mut names = BTreeMap::new();
            let named = history.iter().filter_map(|e| e.by).chain(visit.iter().map(|v| v.recorded_by));
            for id in named.chain(follow_up.closing.iter().filter_map(|c| c.by)) {
                if let std::collections::btree_map::Entry::Vacant(place) = names.entry(id)
                    && let Some(person) = people::by_id(tx, id).await?
                {
                    place.insert(person.full_name);
                }
            }
            let area_name = areas::by_id(tx, child.area).await?.map_or_else(String::new, |a| a.name);
            let worker = people::by_id(tx, child.worker).await?;
            let may_close = ctx.needs(Action::Supervise).is_ok() && follow_up.closing.is_none() && !needs_outcome;
            Ok(Explained { child, area_name, worker, follow_up, number, visit, history, names, may_close, needs_outcome })
        })
        .await
}

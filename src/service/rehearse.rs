//! How the follow-up list of a day would change under another protocol. Each child's whole story is judged twice: by the protocols
//! adopted, and as if the new one had been in force throughout. Nothing is written.

mod count;

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::protocol::Protocol;
use domain::protocol::Protocols;
use domain::role::Action;
use domain::role::Role;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::reassess::judge;
use crate::store::Db;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups;
use crate::store::people;
use crate::store::visits;

/// Children judged at a time.
const AT_A_TIME: u64 = 200;
/// The weeks over which new follow-ups are counted (our own choice: long enough for the slow classes, short enough to be today's work).
pub const WEEKS: i32 = 4;

/// Numbers of the list: follow-ups, and children on the lists of visits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// On the list now.
    pub now: u64,
    /// On it then.
    pub then: u64,
    /// On it only then.
    pub opened: u64,
    /// On it only now.
    pub closed: u64,
    /// More urgent then.
    pub raised: u64,
    /// Less urgent then.
    pub lowered: u64,
    /// As urgent, with another day.
    pub moved: u64,
    /// Follow-ups opened in the last [`WEEKS`] weeks, now.
    pub new_now: u64,
    /// The same, then.
    pub new_then: u64,
}

/// What would become of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// It would be new.
    Opened,
    /// It would be gone.
    Closed,
    /// More urgent.
    Raised,
    /// Less urgent.
    Lowered,
    /// Another day.
    Moved,
}

/// An entry of the list: class (none for lists of visits) and due day.
pub type Entry = (Option<Class>, NaiveDate);

/// An entry that would change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// Code of the child.
    pub child: String,
    /// What the child is called.
    pub called: String,
    /// Name of its village.
    pub area: String,
    /// Its worker.
    pub worker: String,
    /// The rule.
    pub rule: RuleId,
    /// What.
    pub kind: Kind,
    /// Now.
    pub now: Option<Entry>,
    /// Then.
    pub then: Option<Entry>,
}

/// What a rehearsal found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rehearsal {
    /// The day.
    pub as_of: NaiveDate,
    /// Id and version of the protocol in force on it.
    pub from: (String, String),
    /// Id and version of the new one.
    pub to: (String, String),
    /// Children judged.
    pub children: u64,
    /// Children of whom something would change.
    pub touched: u64,
    /// Children on the list now, and then.
    pub on_list: (u64, u64),
    /// Everything.
    pub all: Tally,
    /// On the list now, and then, by class.
    pub by_class: BTreeMap<Class, (u64, u64)>,
    /// By rule.
    pub by_rule: BTreeMap<RuleId, Tally>,
    /// By village: names.
    pub by_area: BTreeMap<String, Tally>,
    /// By worker: names.
    pub by_worker: BTreeMap<String, Tally>,
    /// The entries that would change, by rule and kind; empty for those who may not see children.
    pub changes: Vec<Change>,
}

impl Rehearsal {
    /// Whether nothing would change.
    #[must_use]
    pub const fn changes_nothing(&self) -> bool {
        self.touched == 0
    }
}

/// Names of places and people.
struct Names {
    areas: BTreeMap<AreaId, String>,
    people: BTreeMap<PersonId, String>,
}

/// A rehearsal as of today for somebody who may: a supervisor sees the own children, an administrator counts only.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, new: &Protocol) -> Result<Rehearsal, Refusal> {
    ctx.needs(Action::RehearseProtocol)?;
    let scope = match ctx.actor.role {
        Role::Administrator => Scope::Everything,
        Role::Supervisor | Role::Worker | Role::Manager => Scope::Supervisor { person: ctx.actor.person },
    };
    let mut found = rehearse(&ctx.db, &ctx.protocols, new, scope, ctx.today, &mut |_, _| {}).await?;
    if ctx.needs(Action::SeeChildren).is_err() {
        found.changes.clear();
    }
    Ok(found)
}

/// Judges every child in scope that is in the programme on a day. `progress` is told how many are done, and of how many.
///
/// # Errors
/// [`StoreError`].
pub async fn rehearse(
    db: &Db,
    adopted: &Protocols,
    new: &Protocol,
    scope: Scope,
    as_of: NaiveDate,
    progress: &mut dyn FnMut(u64, u64),
) -> Result<Rehearsal, StoreError> {
    let throughout = Protocols::one(new.clone());
    let in_force = adopted.on(as_of);
    let mut found = Rehearsal {
        as_of,
        from: (in_force.id.clone(), in_force.version.clone()),
        to: (new.id.clone(), new.version.clone()),
        children: 0,
        touched: 0,
        on_list: (0, 0),
        all: Tally::default(),
        by_class: BTreeMap::new(),
        by_rule: BTreeMap::new(),
        by_area: BTreeMap::new(),
        by_worker: BTreeMap::new(),
        changes: Vec::new(),
    };
    let mut names =
        Names { areas: areas::list(db.direct()).await?.into_iter().map(|area| (area.id, area.name)).collect(), people: BTreeMap::new() };
    let (mut done, all) = (0, children::count_in_scope(db.direct(), scope).await?);
    let mut after: Option<ChildId> = None;
    loop {
        let page = children::page_in_scope(db.direct(), scope, after, AT_A_TIME).await?;
        let Some(last) = page.last() else { break };
        after = Some(last.id);
        done += u64::try_from(page.len()).unwrap_or(0);
        let here: Vec<&ChildRecord> = page.iter().filter(|child| in_programme(child, as_of)).collect();
        let ids: Vec<ChildId> = here.iter().map(|child| child.id).collect();
        let unknown: Vec<PersonId> = here.iter().map(|child| child.worker).filter(|id| !names.people.contains_key(id)).collect();
        names.people.extend(people::names(db.direct(), &unknown).await?);
        let mut stories = visits::of_children_up_to(db.direct(), &ids, as_of).await?;
        let decided = follow_ups::closed_by_supervisors(db.direct(), &ids).await?;
        for child in here {
            let story = stories.remove(&child.id).unwrap_or_default();
            let decided: Vec<_> = decided.iter().filter(|f| f.child == child.id).cloned().collect();
            let judged = |protocols: &Protocols| -> Assessment { judge(protocols, child, &story, &decided, as_of) };
            count::add(&mut found, &names, child, &judged(adopted), &judged(&throughout));
        }
        progress(done, Ord::max(all, done));
    }
    found.changes.sort_by(|a, b| (a.rule, a.kind, &a.area, &a.worker, &a.child).cmp(&(b.rule, b.kind, &b.area, &b.worker, &b.child)));
    Ok(found)
}

/// Whether a child was in the programme on a day.
fn in_programme(child: &ChildRecord, as_of: NaiveDate) -> bool {
    let left = child.facts.status != domain::child::ChildStatus::Active && child.left_on.is_none_or(|on| on <= as_of);
    child.facts.registered_on <= as_of && !left
}

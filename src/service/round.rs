//! A worker's day: the homes with something to do in the order of work, those seen, and who comes next.

mod past;

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::errand::Errand;
use domain::errand::FollowUpDue;
use domain::errand::VisitDue;
use domain::errand::village_by_village;
use domain::household::side_by_side;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::ids::PersonId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::child_file::scope;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::households;
use crate::store::households::Named;
use crate::store::lists;
use crate::store::lists::Checked;
use crate::store::lists::RoundRow;
use crate::store::people;

/// Homes on a page.
pub const PAGE: usize = 50;
/// Homes seen on a day that are listed; nobody visits more.
pub(crate) const MOST_SEEN: u64 = 50;

/// A home with something to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Home {
    /// The child.
    pub row: RoundRow,
    /// What is to be done.
    pub errand: Errand,
}

/// A home seen on the day.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenHome {
    /// The child.
    pub row: RoundRow,
    /// What was checked.
    pub checked: Checked,
    /// What stays to be followed up.
    pub errand: Option<Errand>,
}

/// A page of the round.
#[derive(Debug, Clone, PartialEq)]
pub struct Round {
    /// The worker, when it is somebody else's round.
    pub whose: Option<String>,
    /// In the order of work.
    pub homes: Vec<Home>,
    /// Due in more than a week.
    pub later: Vec<Home>,
    /// Seen on the day; on the first page only.
    pub seen: Vec<SeenHome>,
    /// The child whose visit comes next, when nothing is to be done.
    pub next_due: Option<RoundRow>,
    /// Where the next page begins.
    pub more: Option<String>,
    /// The active children of the homes on the page that several children share.
    pub named: BTreeMap<HouseholdId, Vec<Named>>,
}

/// Which round is asked for.
#[derive(Debug, Clone, Default)]
pub struct Asked {
    /// One worker's, for a supervisor.
    pub worker: Option<PersonId>,
    /// The key of the last home seen on the page before.
    pub after: Option<String>,
}

/// The round of `day`: today's from the lists, a past day's worked out anew from the visits up to it.
///
/// # Errors
/// [`Refusal::NotFound`] for a worker who has no child in the asker's scope.
pub async fn round(ctx: &Context, asked: &Asked, day: NaiveDate) -> Result<Round, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    let scope = scope(ctx);
    let asked = Asked { worker: asked.worker.filter(|worker| *worker != ctx.actor.person), ..asked.clone() };
    ctx.db
        .read(
            async |c| {
                if day == ctx.today { of_today(c, scope, &asked, day).await } else { past::of_past_day(c, ctx, scope, &asked, day).await }
            },
        )
        .await
}

async fn of_today(c: &impl Connection, scope: Scope, asked: &Asked, day: NaiveDate) -> Result<Round, Refusal> {
    let limit = u64::try_from(PAGE + 1).unwrap_or(u64::MAX);
    let mut rows = lists::round_of_worker(c, scope, asked.worker, asked.after.as_deref(), limit).await?;
    let more = (rows.len() > PAGE).then(|| {
        rows.truncate(PAGE);
        rows.last().map(|row| row.work_key.clone()).unwrap_or_default()
    });
    let seen = lists::seen_on(c, scope, asked.worker, day, MOST_SEEN).await?;
    let next_due = if rows.is_empty() && seen.is_empty() { lists::next_due(c, scope, asked.worker).await? } else { None };
    let whose = whose(c, scope, asked, rows.first().or(seen.first().map(|(row, _)| row)).or(next_due.as_ref())).await?;
    let named = named(c, scope, &rows, &seen).await?;
    Ok(arrange(rows, seen, Shown { named, day, whose, next_due, more, first_page: asked.after.is_none() }))
}

/// Who shares the homes of these rows; nothing is asked where no home is shared.
async fn named(
    c: &impl Connection,
    scope: Scope,
    rows: &[RoundRow],
    seen: &[(RoundRow, Checked)],
) -> Result<BTreeMap<HouseholdId, Vec<Named>>, StoreError> {
    let homes = rows.iter().chain(seen.iter().map(|(row, _)| row)).filter_map(|row| row.household).collect();
    households::named_in_scope(c, scope, &homes).await
}

/// The name of the worker asked for: only where the asker reaches a child of theirs.
async fn whose(c: &impl Connection, scope: Scope, asked: &Asked, row: Option<&RoundRow>) -> Result<Option<String>, Refusal> {
    let Some(worker) = asked.worker else { return Ok(None) };
    if let Some(row) = row {
        return Ok(Some(row.worker_name.clone()));
    }
    if let Some(row) = lists::everyone(c, scope, asked.worker, None, 1).await?.pop() {
        return Ok(Some(row.worker_name));
    }
    let assigned = match scope {
        Scope::Supervisor { person } => people::assigned(c, person).await?.1.contains(&worker),
        _ => false,
    };
    let known = if assigned { people::by_id(c, worker).await? } else { None };
    known.map(|person| Some(person.full_name)).ok_or(Refusal::NotFound)
}

struct Shown {
    day: NaiveDate,
    whose: Option<String>,
    next_due: Option<RoundRow>,
    more: Option<String>,
    first_page: bool,
    named: BTreeMap<HouseholdId, Vec<Named>>,
}

/// Parts what is left from what is done and what can wait. A home seen on the day is done, unless an emergency or a referral
/// of today stays open.
fn arrange(rows: Vec<RoundRow>, seen: Vec<(RoundRow, Checked)>, shown: Shown) -> Round {
    let day = shown.day;
    let done: BTreeSet<ChildId> =
        seen.iter().filter(|(row, _)| !errand_of(row, day).is_some_and(|e| is_urgent(&e))).map(|(row, _)| row.child).collect();
    let left = rows.into_iter().filter(|row| !done.contains(&row.child));
    let homes: Vec<Home> = left.filter_map(|row| errand_of(&row, day).map(|errand| Home { row, errand })).collect();
    let (later, homes): (Vec<Home>, Vec<Home>) = homes.into_iter().partition(|home| home.errand.can_wait(day));
    let seen = if shown.first_page { seen } else { Vec::new() };
    let seen = seen.into_iter().filter(|(row, _)| done.contains(&row.child));
    Round {
        homes: home_by_home(village_by_village(homes, |home| home.errand.rank(), |home| home.row.area)),
        later,
        seen: seen.map(|(row, checked)| SeenHome { errand: errand_of(&row, day), row, checked }).collect(),
        whose: shown.whose,
        next_due: shown.next_due,
        more: shown.more,
        named: shown.named,
    }
}

/// Children of one home stand together within their class and village.
fn home_by_home(homes: Vec<Home>) -> Vec<Home> {
    side_by_side(homes, |home| home.row.household.map(|id| (home.errand.rank(), home.row.area, id)))
}

fn is_urgent(errand: &Errand) -> bool {
    errand.class().is_some_and(domain::rule::Class::is_urgent)
}

/// What the lists know of a child, as an errand of the day.
pub(crate) fn errand_of(row: &RoundRow, day: NaiveDate) -> Option<Errand> {
    let follow_up = row.top.as_ref().map(|top| FollowUpDue {
        class: top.class,
        rule: top.rule,
        due_on: top.due_on,
        evidence: top.evidence.clone(),
        open_count: row.open_count.max(1),
        unanswered_since: row.urgent_unanswered_since,
    });
    let late = row.overdue_since.map(|closed_on| VisitDue::Late { closed_on });
    let open = row.slot.filter(|slot| slot.opens <= day).map(|slot| VisitDue::Open { target: slot.target, until: slot.closes });
    Errand::of(follow_up, late.or(open))
}

#[cfg(test)]
mod tests {
    use domain::ids::AreaId;
    use domain::ids::PersonId;

    use super::*;
    use crate::store::children;
    use crate::store::counting::Counting;
    use crate::store::summaries;
    use crate::store::summaries::SlotDays;
    use crate::store::summaries::SummaryRecord;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_child;
    use crate::store::testing::a_summary;
    use crate::store::testing::day;
    use crate::store::testing::two_families;

    #[tokio::test]
    async fn a_page_of_fifty_homes_takes_two_questions_and_an_empty_one_three() {
        let test = TestDb::new().await;
        two_families(&test.db).await.expect("two children");
        let today = day("2026-11-25");
        let scope = Scope::Worker { person: PersonId(1), today };
        let questions = async || {
            let counting = Counting::new(test.db.direct());
            let round = of_today(&counting, scope, &Asked::default(), today).await.expect("readable");
            (round.homes.len(), counting.sent())
        };
        assert_eq!(questions().await, (0, 3));
        for n in 10..62 {
            let child = a_child(n, AreaId(1), PersonId(1));
            children::insert(test.db.direct(), &child).await.expect("registered");
            let slot = Some(SlotDays { target: today, opens: today, closes: today });
            summaries::upsert(test.db.direct(), &SummaryRecord { slot, ..a_summary(&child, "2026-11-25") }).await.expect("a line");
        }
        assert_eq!(questions().await, (PAGE, 2));
    }
}

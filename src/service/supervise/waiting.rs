//! The lists beside the late follow-ups, a page at a time: urgent referrals without an answer, children not seen for long, foods
//! long on hold. Today comes from the lists; the lines of a past day are worked out anew.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::protocol::Protocol;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::past_day;
use crate::service::supervise::DeskChild;
use crate::service::supervise::Reason;
use crate::service::supervise::Sieve;
use crate::service::supervise::narrowed;
use crate::service::team;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::lists;
use crate::store::lists::DayKey;
use crate::store::lists::LostDays;
use crate::store::lists::RoundRow;

/// Lines on a page of one of these lists.
pub const A_PAGE: usize = 50;
/// Lines of each on the desk itself.
pub(super) const SHORT_LIST: usize = 20;
/// A food on hold for more days than this comes to the supervisor, so that egg, fish and beans are not lost for good (our own choice).
pub const HELD_DAYS: i32 = 14;
/// Under this age, in completed months, a child counts as not seen sooner (our own choice).
const YOUNG_MONTHS: u32 = 12;

/// An urgent referral without an answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Unanswered {
    /// Whose.
    pub child: DeskChild,
    /// What for; `None` when nothing is open.
    pub reason: Option<Reason>,
    /// Since when nobody wrote an outcome, for an emergency or a referral of the day; `None`: a referral of a lesser class waits.
    pub since: Option<NaiveDate>,
}

/// A child not seen for long.
#[derive(Debug, Clone, PartialEq)]
pub struct Unseen {
    /// Who.
    pub child: DeskChild,
    /// Days since the last visit, or since registration.
    pub days: i32,
    /// Whether it was ever seen.
    pub ever: bool,
}

/// A child with a food on hold for long.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Who.
    pub child: DeskChild,
    /// Since when the oldest waits.
    pub since: NaiveDate,
}

/// A page of a list.
#[derive(Debug, Clone, PartialEq)]
pub struct Part<L, K> {
    /// Its lines.
    pub lines: Vec<L>,
    /// Where the next page begins, if there is one.
    pub next: Option<K>,
}

impl<L, K> Part<L, K> {
    fn none() -> Self {
        Self { lines: Vec::new(), next: None }
    }

    fn of(mut rows: Vec<RoundRow>, most: usize, key: impl Fn(&RoundRow) -> K, line: impl Fn(RoundRow) -> L) -> Self {
        let more = rows.len() > most;
        rows.truncate(most);
        let next = rows.last().filter(|_| more).map(key);
        Self { lines: rows.into_iter().map(line).collect(), next }
    }
}

/// Where the lines of a day come from.
pub(super) enum Lines {
    /// From the lists, which know today.
    Kept,
    /// Worked out for a past day: every child of the scope.
    Stood(Vec<RoundRow>),
}

impl Lines {
    /// Of this day.
    async fn of(c: &impl Connection, ctx: &Context, scope: Scope, as_of: NaiveDate) -> Result<Self, StoreError> {
        if as_of >= ctx.today {
            return Ok(Self::Kept);
        }
        let mut rows = Vec::new();
        past_day::each(c, ctx, scope, None, as_of, |stood| rows.push(stood.row)).await?;
        Ok(Self::Stood(rows))
    }
}

/// The day that is asked about, and what it is asked of.
pub(super) struct Day<'a, C> {
    /// The database.
    pub c: &'a C,
    /// Whose children.
    pub scope: Scope,
    /// The protocol of the day.
    pub protocol: &'a Protocol,
    /// The day.
    pub as_of: NaiveDate,
    /// Its lines.
    pub lines: &'a Lines,
}

impl<C: Connection> Day<'_, C> {
    /// Urgent referrals without an answer, most urgent first; of one worker or area where it is narrowed so.
    pub async fn urgent(&self, of: Narrowed, after: Option<&str>, most: usize) -> Result<Part<Unanswered, String>, StoreError> {
        let key = |row: &RoundRow| row.work_key.clone();
        let rows = match self.lines {
            Lines::Kept => lists::unanswered_in_scope(self.c, self.scope, of, self.as_of, after, one_more(most)).await?,
            Lines::Stood(rows) => {
                let whose = |row: &RoundRow| of.worker.is_none_or(|w| w == row.worker) && of.area.is_none_or(|a| a == row.area);
                let late = |row: &RoundRow| row.referral_due_on.is_some_and(|by| by < self.as_of);
                sorted(
                    rows,
                    |row| whose(row) && (row.urgent_unanswered_since.is_some() || late(row)),
                    key,
                    after.map(str::to_owned).as_ref(),
                )
            }
        };
        Ok(Part::of(rows, most, key, unanswered))
    }

    /// Children not seen for long, longest first.
    pub async fn unseen(&self, after: Option<&DayKey>, most: usize) -> Result<Part<Unseen, DayKey>, StoreError> {
        let Some(days) = not_seen_days(self.protocol) else { return Ok(Part::none()) };
        let days = lost_days(self.as_of, days);
        let key = |row: &RoundRow| DayKey { on: counted_from(row), code: row.code.clone() };
        let rows = match self.lines {
            Lines::Kept => lists::lost_in_scope(self.c, self.scope, days, after, one_more(most)).await?,
            Lines::Stood(rows) => sorted(rows, |row| days.hold(row.born, counted_from(row)), key, after),
        };
        Ok(Part::of(rows, most, key, |row| Unseen {
            days: days_between(counted_from(&row), self.as_of),
            ever: row.last_seen_on.is_some(),
            child: DeskChild::of(&row),
        }))
    }

    /// Children with a food long on hold, longest first.
    pub async fn held(&self, after: Option<&DayKey>, most: usize) -> Result<Part<Held, DayKey>, StoreError> {
        let by = add_days(self.as_of, -(HELD_DAYS + 1));
        // A row without such a day is on no page of this list.
        let since = |row: &RoundRow| row.hold_since.unwrap_or(by);
        let key = |row: &RoundRow| DayKey { on: since(row), code: row.code.clone() };
        let rows = match self.lines {
            Lines::Kept => lists::held_in_scope(self.c, self.scope, by, after, one_more(most)).await?,
            Lines::Stood(rows) => sorted(rows, |row| row.hold_since.is_some_and(|since| since <= by), key, after),
        };
        Ok(Part::of(rows, most, key, |row| Held { since: since(&row), child: DeskChild::of(&row) }))
    }
}

/// One more than is shown tells whether there is another page.
fn one_more(most: usize) -> u64 {
    u64::try_from(most + 1).unwrap_or(u64::MAX)
}

/// The rows of a list in its order, from after a key.
fn sorted<K: Ord>(rows: &[RoundRow], on_it: impl Fn(&RoundRow) -> bool, key: impl Fn(&RoundRow) -> K, after: Option<&K>) -> Vec<RoundRow> {
    let mut rows: Vec<RoundRow> =
        rows.iter().filter(|row| on_it(row)).filter(|row| after.is_none_or(|after| key(row) > *after)).cloned().collect();
    rows.sort_by_cached_key(key);
    rows
}

fn unanswered(row: RoundRow) -> Unanswered {
    let child = DeskChild::of(&row);
    let reason = row.top.map(|top| Reason { rule: top.rule, class: top.class, evidence: top.evidence, due_on: top.due_on });
    Unanswered { child, reason, since: row.urgent_unanswered_since }
}

/// The last visit, or else the registration.
fn counted_from(row: &RoundRow) -> NaiveDate {
    row.last_seen_on.unwrap_or(row.registered_on)
}

/// Days after which a child counts as not seen, under and from 12 months; `None` when the protocol has the list switched off.
#[must_use]
pub fn not_seen_days(protocol: &Protocol) -> Option<(i32, i32)> {
    let rule = &protocol.rules.visit_lost;
    rule.on.then_some((rule.limits.after_days_under_12m, rule.limits.after_days_from_12m))
}

fn lost_days(today: NaiveDate, (young, older): (i32, i32)) -> LostDays {
    LostDays {
        // Born after this day: not yet 12 completed months.
        young_born_after: born_by(today, YOUNG_MONTHS),
        young_seen_by: add_days(today, -young),
        older_seen_by: add_days(today, -older),
    }
}

/// The latest birth date with so many completed months on a day. Going back in months clamps to the end of a short one and may
/// miss it by some days, so it is looked for.
fn born_by(today: NaiveDate, months: u32) -> NaiveDate {
    let about = today.checked_sub_months(chrono::Months::new(months)).unwrap_or(NaiveDate::MIN);
    let completed = |born: NaiveDate| domain::calendar::completed_months(born, today).is_some_and(|m| m >= months);
    (-1..=3).rev().map(|days| add_days(about, days)).find(|born| completed(*born)).unwrap_or(about)
}

/// A page of the urgent referrals without an answer, of the worker and area asked for.
///
/// # Errors
/// [`Refusal::NotFound`] for a worker or area outside the team; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn urgent(ctx: &Context, sieve: &Sieve, after: Option<&str>, as_of: NaiveDate) -> Result<Part<Unanswered, String>, Refusal> {
    ctx.needs(Action::Supervise)?;
    let of = match (&sieve.worker, &sieve.area) {
        (None, None) => Narrowed::default(),
        _ => narrowed(&team::open(ctx).await?, sieve, as_of)?,
    };
    on_day(ctx, as_of, async |day| day.urgent(of, after, A_PAGE).await).await
}

/// A page of the children not seen for long.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn unseen(ctx: &Context, after: Option<&DayKey>, as_of: NaiveDate) -> Result<Part<Unseen, DayKey>, Refusal> {
    on_day(ctx, as_of, async |day| day.unseen(after, A_PAGE).await).await
}

/// A page of the children with a food long on hold.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn held(ctx: &Context, after: Option<&DayKey>, as_of: NaiveDate) -> Result<Part<Held, DayKey>, Refusal> {
    on_day(ctx, as_of, async |day| day.held(after, A_PAGE).await).await
}

async fn on_day<T>(
    ctx: &Context,
    as_of: NaiveDate,
    ask: impl AsyncFnOnce(Day<'_, crate::store::Tx>) -> Result<T, StoreError>,
) -> Result<T, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    ctx.db
        .read(async |c| {
            let lines = &Lines::of(c, ctx, scope, as_of).await?;
            Ok(ask(Day { c, scope, protocol: ctx.protocols.on(as_of), as_of, lines }).await?)
        })
        .await
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twelve_months_are_completed_on_the_birthday_even_in_short_months() {
        // Born on 29 February: the year is completed on the last day of the next February.
        for (today, born) in
            [("2026-11-25", "2025-11-25"), ("2025-02-28", "2024-02-29"), ("2024-02-29", "2023-02-28"), ("2026-03-31", "2025-03-31")]
        {
            let today: NaiveDate = today.parse().expect("a day");
            assert_eq!(born_by(today, 12).to_string(), born, "{today}");
        }
    }
}

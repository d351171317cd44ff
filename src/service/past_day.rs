//! Children as they stood on a past day: each is judged anew from the visits up to it, with the corrections known today.
//! A handful of statements for each two hundred children, however many there are, so that no more than so many stories are held at
//! a time.

use std::collections::BTreeMap;

use chrono::Datelike;
use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::child::ChildStatus;
use domain::ids::ChildId;
use domain::ids::PersonId;

use crate::service::Context;
use crate::service::reassess::judge;
use crate::service::reassess::summary;
use crate::service::round::errand_of;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::children;
use crate::store::follow_ups;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::visits;

/// Children judged at a time.
const AT_A_TIME: u64 = 200;

/// A child as it stood.
pub struct Stood {
    /// Its line, as the lists would have had it; without a key of work where nothing was to be done.
    pub row: RoundRow,
    /// What it was made of.
    pub assessment: Assessment,
}

/// Shows every child of the scope, or of one worker in it, that was in the programme on the day.
pub async fn each(
    c: &impl Connection,
    ctx: &Context,
    scope: Scope,
    worker: Option<PersonId>,
    day: NaiveDate,
    mut show: impl FnMut(Stood),
) -> Result<(), StoreError> {
    let mut after: Option<String> = None;
    loop {
        let rows = lists::everyone(c, scope, worker, after.as_deref(), AT_A_TIME).await?;
        let Some(last) = rows.last() else { return Ok(()) };
        after = Some(last.code.clone());
        judged(c, ctx, rows, day, &mut show).await?;
    }
}

async fn judged(
    c: &impl Connection,
    ctx: &Context,
    rows: Vec<RoundRow>,
    day: NaiveDate,
    show: &mut impl FnMut(Stood),
) -> Result<(), StoreError> {
    let ids: Vec<ChildId> = rows.iter().map(|row| row.child).collect();
    let records: BTreeMap<ChildId, _> = children::by_ids(c, &ids).await?.into_iter().map(|record| (record.id, record)).collect();
    let stories = visits::of_children_up_to(c, &ids, day).await?;
    // Of what is stored the judgement needs only what supervisors closed.
    let closed = follow_ups::closed_by_supervisors(c, &ids).await?;
    for row in rows {
        let Some(record) = records.get(&row.child) else { continue };
        let there = record.facts.registered_on <= day && record.left_on.is_none_or(|left| left > day);
        if !there || (record.facts.status != ChildStatus::Active && record.left_on.is_none()) {
            continue;
        }
        let story = stories.get(&row.child).map(Vec::as_slice).unwrap_or_default();
        let decided: Vec<_> = closed.iter().filter(|f| f.child == row.child).cloned().collect();
        let assessment = judge(&ctx.protocols, record, story, &decided, day);
        let stood = summary(record, story, &assessment);
        let row = RoundRow {
            work_key: String::new(),
            status: ChildStatus::Active,
            top: stood.top,
            open_count: stood.open_count,
            urgent_unanswered_since: stood.urgent_unanswered_since,
            referral_due_on: stood.referral_due_on,
            slot: stood.slot,
            overdue_since: stood.overdue_since,
            hold_since: stood.hold_since,
            last_seen_on: stood.last_seen_on,
            ..row
        };
        show(Stood { row: RoundRow { work_key: key_of(&row, day), ..row }, assessment });
    }
    Ok(())
}

/// The order of work as one text, as the lists keep it for today; empty when nothing is to be done.
fn key_of(row: &RoundRow, day: NaiveDate) -> String {
    let Some(errand) = errand_of(row, day) else { return String::new() };
    let youngest = 9_999_999 - row.born.num_days_from_ce();
    format!("{}{}{youngest:07}{}", errand.rank(), errand.day(), row.code)
}

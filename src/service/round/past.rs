//! The round of a past day, worked out anew from the visits up to it, with the corrections known now.

use std::collections::BTreeMap;

use chrono::Datelike;
use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::ids::ChildId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::reassess::judge;
use crate::service::reassess::summary;
use crate::service::round::Asked;
use crate::service::round::MOST_SEEN;
use crate::service::round::PAGE;
use crate::service::round::Round;
use crate::service::round::Shown;
use crate::service::round::arrange;
use crate::service::round::errand_of;
use crate::service::round::named;
use crate::service::round::whose;
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

/// The round of a past day.
pub async fn of_past_day(c: &impl Connection, ctx: &Context, scope: Scope, asked: &Asked, day: NaiveDate) -> Result<Round, Refusal> {
    let mut all: BTreeMap<ChildId, RoundRow> = BTreeMap::new();
    let mut after: Option<String> = None;
    loop {
        let rows = lists::everyone(c, scope, asked.worker, after.as_deref(), AT_A_TIME).await?;
        let Some(last) = rows.last() else { break };
        after = Some(last.code.clone());
        for row in as_of(c, ctx, rows, day).await? {
            all.insert(row.child, row);
        }
    }
    let mut rows: Vec<RoundRow> = all.values().filter(|row| !row.work_key.is_empty()).cloned().collect();
    rows.sort_by(|a, b| a.work_key.cmp(&b.work_key));
    if let Some(after) = &asked.after {
        rows.retain(|row| row.work_key > *after);
    }
    let more = (rows.len() > PAGE).then(|| {
        rows.truncate(PAGE);
        rows.last().map(|row| row.work_key.clone()).unwrap_or_default()
    });
    let seen = lists::seen_on(c, scope, asked.worker, day, MOST_SEEN).await?;
    let seen: Vec<_> = seen.into_iter().filter_map(|(row, checked)| Some((all.get(&row.child)?.clone(), checked))).collect();
    let next_due = if rows.is_empty() && seen.is_empty() {
        let waiting = all.values().filter(|row| row.slot.is_some());
        waiting.min_by_key(|row| (row.slot.map(|slot| slot.opens), row.code.clone())).cloned()
    } else {
        None
    };
    let whose = whose(c, scope, asked, all.values().next()).await?;
    let named = named(c, scope, &rows, &seen).await?;
    Ok(arrange(rows, seen, Shown { named, day, whose, next_due, more, first_page: asked.after.is_none() }))
}

/// The lines as they read on the day; a child not in the programme then has none.
async fn as_of(c: &impl Connection, ctx: &Context, rows: Vec<RoundRow>, day: NaiveDate) -> Result<Vec<RoundRow>, StoreError> {
    let ids: Vec<ChildId> = rows.iter().map(|row| row.child).collect();
    let records: BTreeMap<ChildId, _> = children::by_ids(c, &ids).await?.into_iter().map(|record| (record.id, record)).collect();
    let stories = visits::of_children_up_to(c, &ids, day).await?;
    let closed = follow_ups::closed_by_supervisors(c, &ids).await?;
    let mut lines = Vec::new();
    for row in rows {
        let Some(record) = records.get(&row.child) else { continue };
        let there = record.facts.registered_on <= day && record.left_on.is_none_or(|left| left > day);
        if !there || (record.facts.status != ChildStatus::Active && record.left_on.is_none()) {
            continue;
        }
        let story = stories.get(&row.child).map(Vec::as_slice).unwrap_or_default();
        let decided: Vec<_> = closed.iter().filter(|f| f.child == row.child).cloned().collect();
        let stood = summary(record, story, &judge(&ctx.protocols, record, story, &decided, day));
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
        lines.push(RoundRow { work_key: key_of(&row, day), ..row });
    }
    Ok(lines)
}

/// The order of work as one text, as the lists keep it for today; empty when nothing is to be done.
fn key_of(row: &RoundRow, day: NaiveDate) -> String {
    let Some(errand) = errand_of(row, day) else { return String::new() };
    let youngest = 9_999_999 - row.born.num_days_from_ce();
    format!("{}{}{youngest:07}{}", errand.rank(), errand.day(), row.code)
}

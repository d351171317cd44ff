//! The round of a past day, worked out anew from the visits up to it, with the corrections known now.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::ids::ChildId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::past_day;
use crate::service::round::Asked;
use crate::service::round::MOST_SEEN;
use crate::service::round::PAGE;
use crate::service::round::Round;
use crate::service::round::Shown;
use crate::service::round::arrange;
use crate::service::round::named;
use crate::service::round::whose;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::lists;
use crate::store::lists::RoundRow;

/// The round of a past day.
pub async fn of_past_day(c: &impl Connection, ctx: &Context, scope: Scope, asked: &Asked, day: NaiveDate) -> Result<Round, Refusal> {
    let mut all: BTreeMap<ChildId, RoundRow> = BTreeMap::new();
    past_day::each(c, ctx, scope, asked.worker, day, |stood| {
        all.insert(stood.row.child, stood.row);
    })
    .await?;
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

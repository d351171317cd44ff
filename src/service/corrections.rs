//! Corrections of the record itself: what they have in common, and their history as a child's page tells it.

pub mod effect;
pub mod merge_children;
pub mod move_visit;
#[cfg(test)]
mod tests;
pub mod void_visit;

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child_code::ChildCode;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::child_file::scope;
use crate::service::once;
use crate::service::once::Sent;
use crate::store::Connection;
use crate::store::Tx;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::corrections;
use crate::store::corrections::Corrected;
use crate::store::corrections::RecordCorrection;
use crate::store::people;
use crate::store::visits;
use crate::store::visits::VisitRecord;

/// What came of a correction.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Done {
    /// Done now, or by the same form before; where to look.
    At(String),
    /// Somebody changed the visit or the child since the form was shown; nothing was done.
    Changed,
    /// Somebody took the visit back or moved it since the form was shown; nothing was done.
    Gone,
}

/// The file of a child and one of its visits, for a page that corrects it; `None` when it was taken back or moved meanwhile.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
async fn shown(ctx: &Context, code: &ChildCode, seq: i64) -> Result<Option<(ChildFile, VisitRecord)>, Refusal> {
    ctx.needs(Action::RecordVisit)?;
    let file = child_file::open(ctx, code, ctx.today).await?;
    match visit_of(ctx.db.direct(), &file.record, seq).await? {
        Standing::Gone => Ok(None),
        Standing::There(visit) => Ok(Some((file, *visit))),
    }
}

/// Refuses a visit that never was one of the child's.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Store`].
pub async fn was_of(ctx: &Context, child: &ChildRecord, seq: i64) -> Result<(), Refusal> {
    visit_of(ctx.db.direct(), child, seq).await.map(|_| ())
}

/// A form about a visit as it was at one version.
#[derive(Debug, Clone, Copy)]
pub struct About<'a> {
    /// The child's code.
    pub code: &'a ChildCode,
    /// The visit's number.
    pub seq: i64,
    /// The version that the form was shown at.
    pub version: u32,
}

/// The first thing that a correction of a visit does in its transaction: the child and the visit, if the form was not sent before
/// and the visit is as the form showed it; otherwise what the form has come to.
pub(super) async fn begin(
    tx: &Tx,
    ctx: &Context,
    sent: Sent,
    about: About<'_>,
) -> Result<ControlFlow<Done, (ChildRecord, VisitRecord)>, Refusal> {
    if let Some(outcome) = once::before(tx, ctx, sent).await? {
        return Ok(ControlFlow::Break(Done::At(outcome)));
    }
    let child = child_file::find(tx, ctx, about.code).await?;
    Ok(match visit_of(tx, &child, about.seq).await? {
        Standing::Gone => ControlFlow::Break(Done::Gone),
        Standing::There(visit) if visit.version != about.version => ControlFlow::Break(Done::Changed),
        Standing::There(visit) => ControlFlow::Continue((child, *visit)),
    })
}

/// A visit of a child, or what became of it.
enum Standing {
    /// It is there.
    There(Box<VisitRecord>),
    /// It was taken back or moved away.
    Gone,
}

/// The visit with this number, if it is or was one of the child's.
///
/// # Errors
/// [`Refusal::NotFound`] when it never was; [`Refusal::Store`].
async fn visit_of(c: &impl Connection, child: &ChildRecord, seq: i64) -> Result<Standing, Refusal> {
    let record = visits::by_entry(c, seq).await?.ok_or(Refusal::NotFound)?;
    if record.child == child.id && record.voided_at.is_none() {
        return Ok(Standing::There(Box::new(record)));
    }
    match corrections::taken_from(c, child.id, record.visit.id).await? {
        Some(_) => Ok(Standing::Gone),
        None => Err(Refusal::NotFound),
    }
}

/// Another record that a correction led to or came from; only what the reader may see of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherRecord {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
}

/// What happened to the record, as the record itself tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Told {
    /// A visit was taken back; code of the reason.
    Void(String),
    /// A visit went to another record.
    MovedTo(Option<OtherRecord>),
    /// A visit came from another record.
    MovedFrom(Option<OtherRecord>),
    /// Another record of the same child was merged into this one: its code and name as they were.
    Merged(OtherRecord),
}

/// A line of the history of a record's corrections.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HistoryLine {
    /// What.
    pub told: Told,
    /// The visit, where it is about one.
    pub visit: Option<VisitId>,
    /// The day of the visit, or the first day of what came with a merge.
    pub from_on: NaiveDate,
    /// Why, in words.
    pub note: String,
    /// Who.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
}

/// The corrections of a record and of those merged into it, latest first. A record that was never corrected asks nothing.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn history(ctx: &Context, file: &ChildFile) -> Result<Vec<HistoryLine>, Refusal> {
    if !file.corrected {
        return Ok(Vec::new());
    }
    let c = ctx.db.direct();
    let (own, found) = gathered(c, file.record.id).await?;
    let ids: Vec<ChildId> = found.iter().flat_map(|line| [Some(line.child), line.what.to()]).flatten().collect();
    let others: BTreeMap<ChildId, ChildRecord> = children::by_ids(c, &ids).await?.into_iter().map(|record| (record.id, record)).collect();
    let names = people::names(c, &found.iter().map(|line| line.by).collect::<Vec<PersonId>>()).await?;
    let mut lines = Vec::with_capacity(found.len());
    for line in found.into_iter().rev() {
        let Some(told) = told(c, ctx, &own, &others, &line).await? else { continue };
        let by = names.get(&line.by).cloned().unwrap_or_default();
        lines.push(HistoryLine { told, visit: line.what.visit(), from_on: line.from_on, note: line.note, by, at: line.at });
    }
    Ok(lines)
}

/// The record and those merged into it, with all their corrections.
async fn gathered(c: &impl Connection, child: ChildId) -> Result<(Vec<ChildId>, Vec<RecordCorrection>), Refusal> {
    let mut own = vec![child];
    loop {
        let found = corrections::of_children(c, &own).await?;
        let merged = |line: &RecordCorrection| matches!(line.what, Corrected::Merge { into } if own.contains(&into));
        let more: Vec<ChildId> = found.iter().filter(|line| merged(line)).map(|line| line.child).filter(|id| !own.contains(id)).collect();
        if more.is_empty() {
            return Ok((own, found));
        }
        own.extend(more);
    }
}

async fn told(
    c: &impl Connection,
    ctx: &Context,
    own: &[ChildId],
    others: &BTreeMap<ChildId, ChildRecord>,
    line: &RecordCorrection,
) -> Result<Option<Told>, Refusal> {
    let named = |record: &ChildRecord| OtherRecord { code: record.code.clone(), name: record.name.clone() };
    Ok(match line.what {
        Corrected::Void { .. } => Some(Told::Void(line.reason.clone())),
        Corrected::Merge { into } => others.get(&line.child).filter(|_| own.contains(&into)).map(|record| Told::Merged(named(record))),
        Corrected::Move { to, .. } if own.contains(&line.child) && own.contains(&to) => None,
        Corrected::Move { to, .. } => {
            let away = own.contains(&line.child);
            let other = corrections::leads_to(c, if away { to } else { line.child }).await?;
            // What lies outside the reader's scope is not named.
            let seen = children::by_id_in_scope(c, scope(ctx), other).await?.map(|record| named(&record));
            Some(if away { Told::MovedTo(seen) } else { Told::MovedFrom(seen) })
        }
    })
}

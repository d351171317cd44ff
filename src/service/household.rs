//! The children of one home: twins and siblings share a caregiver and an address, and are seen one after the other. Linking and
//! unlinking is for whoever reaches both; a child outside the scope is not told of.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::draft::child::NewChild;
use domain::errand::Errand;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::household::AtHome;
use domain::household::in_order;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file::ChildFile;
use crate::service::child_file::scope;
use crate::service::name_key::folded;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::round::errand_of;
use crate::service::why;
use crate::store::Connection;
use crate::store::StoreError;
use crate::store::Tx;
use crate::store::children::ChildRecord;
use crate::store::households;
use crate::store::lists::RoundRow;

/// Likely members looked at before the nearest are shown.
const MOST_CANDIDATES: u64 = 300;
/// Likely members shown.
const MOST_SHOWN: usize = 5;
/// Caregivers' names at least this alike count as one person's (Jaro–Winkler, 0–1; our own choice).
const ALIKE: f64 = 0.93;
/// So many first letters of a caregiver's name are sought.
const FIRST_LETTERS: usize = 3;

/// An active child of a home, with what is to be done for it.
#[derive(Debug, Clone, PartialEq)]
pub struct HomeChild {
    /// The child.
    pub row: RoundRow,
    /// What is to be done.
    pub errand: Option<Errand>,
    /// Met on the day already.
    pub seen: bool,
}

impl HomeChild {
    fn at(&self) -> AtHome<'_> {
        AtHome { errand: self.errand.as_ref(), born: self.row.born, seen: self.seen }
    }

    /// What the child is called.
    #[must_use]
    pub fn called(&self) -> &str {
        self.row.known_as.as_deref().unwrap_or(&self.row.name)
    }

    /// Whether something is to be done in the days ahead.
    #[must_use]
    pub fn is_due(&self, day: NaiveDate) -> bool {
        self.at().is_due(day)
    }
}

/// A home.
#[derive(Debug, Clone, PartialEq)]
pub struct Home {
    /// The child from whose page it was opened.
    pub from: RoundRow,
    /// Active children in the order of work.
    pub children: Vec<HomeChild>,
    /// Children who left; never one whose family took back its consent.
    pub left: Vec<RoundRow>,
    /// Children who likely live here too.
    pub likely: Vec<RoundRow>,
}

/// The home of a child.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str) -> Result<Home, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    ctx.db
        .read(async |tx| {
            let child = why::child(tx, ctx, code).await?;
            let from = households::line_of(tx, scope(ctx), child.id).await?.ok_or(Refusal::NotFound)?;
            let mut members = members(tx, ctx, &child).await?;
            if members.is_empty() && child.facts.status != ChildStatus::ConsentWithdrawn {
                members.push(from.clone());
            }
            let likely = likely(tx, ctx, &child, &members).await?;
            let (active, left) = members.into_iter().partition(|row| row.status == ChildStatus::Active);
            Ok(Home { children: arranged(tx, active, ctx.today, ctx.today).await?, left, likely, from })
        })
        .await
}

async fn members(c: &impl Connection, ctx: &Context, child: &ChildRecord) -> Result<Vec<RoundRow>, StoreError> {
    match households::of_child(c, child.id).await? {
        Some(home) => households::members_in_scope(c, scope(ctx), home).await,
        None => Ok(Vec::new()),
    }
}

/// `met_on`: the day of which it is said who was seen.
async fn arranged(c: &impl Connection, rows: Vec<RoundRow>, met_on: NaiveDate, day: NaiveDate) -> Result<Vec<HomeChild>, StoreError> {
    if rows.is_empty() {
        return Ok(Vec::new());
    }
    let ids: Vec<ChildId> = rows.iter().map(|row| row.child).collect();
    let seen = households::seen_on(c, &ids, met_on).await?;
    let with = |row: RoundRow| HomeChild { errand: errand_of(&row, day), seen: seen.contains(&row.child), row };
    Ok(in_order(rows.into_iter().map(with).collect(), HomeChild::at))
}

/// The other active children of a child's home, in the order of work today; who was met on `met_on` comes last. A child without one
/// asks nothing.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn others(ctx: &Context, file: &ChildFile, met_on: NaiveDate) -> Result<Vec<HomeChild>, Refusal> {
    let Some(home) = file.home else { return Ok(Vec::new()) };
    let c = ctx.db.direct();
    let mut rows = households::members_in_scope(c, scope(ctx), home).await?;
    rows.retain(|row| row.child != file.record.id && row.status == ChildStatus::Active);
    Ok(arranged(c, rows, met_on, ctx.today).await?)
}

/// Children who likely live in the same home: of the same area, with the same phone or a caregiver of nearly the same name.
async fn likely(c: &impl Connection, ctx: &Context, child: &ChildRecord, members: &[RoundRow]) -> Result<Vec<RoundRow>, StoreError> {
    if child.facts.status != ChildStatus::Active {
        return Ok(Vec::new());
    }
    let begins: String = child.caregiver_name.chars().take(FIRST_LETTERS).collect();
    let found = households::likely_in_scope(c, scope(ctx), child.area, &begins, child.phone.as_deref(), MOST_CANDIDATES).await?;
    let here: BTreeSet<ChildId> = members.iter().map(|row| row.child).chain([child.id]).collect();
    let caregiver = folded(&child.caregiver_name);
    let mut near: Vec<(f64, RoundRow)> = found
        .into_iter()
        .filter(|row| !here.contains(&row.child))
        .filter_map(|row| {
            let names = strsim::jaro_winkler(&caregiver, &folded(&row.caregiver_name));
            let same_phone = child.phone.is_some() && row.phone == child.phone;
            (same_phone || names >= ALIKE).then_some((names + if same_phone { 1.0 } else { 0.0 }, row))
        })
        .collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0));
    Ok(near.into_iter().take(MOST_SHOWN).map(|(_, row)| row).collect())
}

/// Another child moves into the home of this one. A home that the other one shared before loses it; one that only the other one had is
/// joined by this one.
///
/// # Errors
/// [`Refusal::Invalid`] for an unknown code, for the child itself, and for one that lives here already; [`Refusal::NotFound`],
/// [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn link(ctx: &Context, sent: Sent, code: &str, other: &str) -> Result<(), Refusal> {
    ctx.needs(Action::RecordVisit)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let child = why::child(tx, ctx, code).await?;
            let wrong = |fault| Refusal::Invalid(Faults::one("other", fault));
            let typed: String = other.chars().filter(|c| c.is_ascii_alphanumeric()).collect::<String>().to_ascii_uppercase();
            let other = why::child(tx, ctx, &typed).await.map_err(|refusal| match refusal {
                Refusal::NotFound => wrong(Fault::UnknownCode),
                other => other,
            })?;
            let homes = (households::of_child(tx, child.id).await?, households::of_child(tx, other.id).await?);
            if child.id == other.id || (homes.0.is_some() && homes.0 == homes.1) {
                return Err(wrong(Fault::NoChange));
            }
            for id in together(tx, ctx, &child, &other, homes).await? {
                audit::note(tx, ctx, "household.link", "child", id, &["household"]).await?;
            }
            once::remember(tx, ctx, sent, &format!("/children/{}/home", child.code)).await
        })
        .await
}

/// Brings two children into one home; answers the codes of those whose home changed.
async fn together<'a>(
    tx: &Tx,
    ctx: &Context,
    child: &'a ChildRecord,
    other: &'a ChildRecord,
    homes: (Option<HouseholdId>, Option<HouseholdId>),
) -> Result<Vec<&'a str>, StoreError> {
    let join = async |who: &ChildRecord, home| households::join(tx, who.id, home, ctx.actor.person, ctx.now).await;
    match homes {
        (Some(home), _) => {
            join(other, home).await?;
            Ok(vec![&other.code])
        }
        (None, Some(home)) => {
            join(child, home).await?;
            Ok(vec![&child.code])
        }
        (None, None) => {
            let home = HouseholdId(uuid::Uuid::now_v7().as_u128());
            join(child, home).await?;
            join(other, home).await?;
            Ok(vec![&child.code, &other.code])
        }
    }
}

/// A child that lives in this home does so no more.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn unlink(ctx: &Context, sent: Sent, code: &str, other: &str) -> Result<(), Refusal> {
    ctx.needs(Action::RecordVisit)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let child = why::child(tx, ctx, code).await?;
            let other = why::child(tx, ctx, other).await?;
            let home = households::of_child(tx, child.id).await?;
            if home.is_some() && home == households::of_child(tx, other.id).await? {
                households::leave(tx, other.id).await?;
                audit::note(tx, ctx, "household.unlink", "child", &other.code, &["household"]).await?;
            }
            once::remember(tx, ctx, sent, &format!("/children/{}/home", child.code)).await
        })
        .await
}

/// The child from whose page another child of the home is registered, with the codes of what they share.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sibling {
    /// The child.
    pub record: ChildRecord,
    /// The code of its area.
    pub area: String,
    /// The sign-in name of its worker.
    pub worker: String,
    /// All children of the home that the actor reaches.
    pub home: BTreeSet<ChildId>,
}

/// The child whose home a new one shares; `None` when nobody is named or who is named is out of reach.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn sibling(ctx: &Context, code: &str) -> Result<Option<Sibling>, Refusal> {
    if code.is_empty() {
        return Ok(None);
    }
    let c = ctx.db.direct();
    let record = match why::child(c, ctx, code).await {
        Ok(record) => record,
        Err(Refusal::NotFound) => return Ok(None),
        Err(other) => return Err(other),
    };
    let area = crate::store::areas::by_id(c, record.area).await?.map(|area| area.code).unwrap_or_default();
    let worker = crate::store::people::by_id(c, record.worker).await?.map(|person| person.sign_in_name).unwrap_or_default();
    let home = members(c, ctx, &record).await?.into_iter().map(|row| row.child).chain([record.id]).collect();
    Ok(Some(Sibling { record, area, worker, home }))
}

/// Brings a child that is just being registered into the home of another, in the transaction that registers it.
///
/// # Errors
/// [`StoreError`].
pub(crate) async fn born_into(tx: &Tx, ctx: &Context, new: &ChildRecord, sibling: &Sibling) -> Result<(), StoreError> {
    let homes = (households::of_child(tx, sibling.record.id).await?, None);
    together(tx, ctx, &sibling.record, new, homes).await.map(drop)
}

/// Whether a similar record is one of the home whose name is another: then it is a sibling, not the same child twice.
#[must_use]
pub fn is_sibling(new: &NewChild, similar: &crate::service::register_child::SimilarChild, sibling: &Sibling, alike: f64) -> bool {
    sibling.home.contains(&similar.child) && strsim::jaro_winkler(&folded(&new.name), &folded(&similar.name)) < alike
}

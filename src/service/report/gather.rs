//! Gathers what a month, quarter or year is counted from: children by the page, with their contacts, slots and follow-ups. It counts nothing.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::child::ChildStatus;
use domain::ids::ChildId;
use domain::ids::VisitId;
use domain::protocol::Protocol;
use domain::protocol::Protocols;
use domain::protocol::StageId;
use domain::report::month::MonthRows;
use domain::report::pair::slow_or_lost;
use domain::report::period::Period;
use domain::report::reactions::ReportReaction;
use domain::report::rows::ReportArea;
use domain::report::rows::ReportChild;
use domain::report::rows::ReportSlot;
use domain::report::rows::ReportVisit;
use domain::report::rows::SlotEnd;
use domain::schedule::Slot;
use domain::schedule::SlotState;
use domain::schedule::slots;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::FoodOffer;

use crate::store::Connection;
use crate::store::Db;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::report_rows;
use crate::store::report_rows::contacts;
use crate::store::report_rows::contacts::MonthContact;
use crate::store::report_rows::contacts::Passed;

/// Children or follow-ups read at once.
const PAGE: u64 = 1_000;
/// Days before the month from which contacts are read: more than the whole life of a child of 7 months, and than the longest
/// interval between two weights that are compared.
const LOOK_BACK_DAYS: i32 = 250;
/// The age at which it is asked whether solids have been started.
const SOLIDS_ASKED_AT_MONTHS: u32 = 7;

/// Reads everything of the children in scope in one view of the database.
pub async fn gather(db: &Db, protocols: &Protocols, scope: Scope, period: Period) -> Result<MonthRows, StoreError> {
    db.read(async |c| load(c, protocols, scope, period).await).await
}

async fn load(c: &impl Connection, protocols: &Protocols, scope: Scope, period: Period) -> Result<MonthRows, StoreError> {
    let protocol = protocols.on(period.last());
    let mut rows = MonthRows { schedule: protocol.schedule.slots.iter().map(|plan| plan.code()).collect(), ..MonthRows::default() };
    rows.areas = areas::list(c).await?.into_iter().map(|area| ReportArea { id: area.id, code: area.code }).collect();
    let span = (period.first(), period.last());
    // A slot whose window closes in the month may have been due, on its target day, of a child that left before the month.
    let reach = protocol.schedule.closes_after.iter().map(|band| band.days).max().unwrap_or(0);
    let in_reach = (add_days(period.first(), -reach), period.last());
    let mut after = None;
    loop {
        let page = report_rows::children(c, scope, in_reach, after, PAGE).await?;
        let Some(upto) = page.last().map(|child| child.id) else { break };
        read_contacts(c, (after, upto), protocols, period, &page, &mut rows).await?;
        after = Some(upto);
        rows.children.extend(page);
    }
    let mut after = None;
    loop {
        let page = report_rows::follow_ups(c, scope, span, after, PAGE).await?;
        let Some(upto) = page.last().map(|(key, _)| *key) else { break };
        after = Some(upto);
        rows.follow_ups.extend(page.into_iter().map(|(_, follow_up)| follow_up));
    }
    Ok(rows)
}

async fn read_contacts(
    c: &impl Connection,
    keys: (Option<ChildId>, ChildId),
    protocols: &Protocols,
    period: Period,
    page: &[ReportChild],
    rows: &mut MonthRows,
) -> Result<(), StoreError> {
    let mut of_month = contacts::of_month(c, keys, (period.first(), period.last())).await?;
    let mut passed = contacts::passed(c, keys, (add_days(period.first(), -LOOK_BACK_DAYS), period.last())).await?;
    let asked: Vec<VisitId> = page
        .iter()
        .filter(|child| of_month.get(&child.id).is_some_and(|met| met.iter().any(|contact| aged(child, contact.visit.on))))
        .flat_map(|child| passed.get(&child.id).into_iter().flatten().map(|contact| contact.id))
        .collect();
    let drinks: Vec<String> =
        protocols.on(period.last()).foods.iter().filter(|food| food.drink).map(|food| food.code.as_str().to_owned()).collect();
    let solid = contacts::with_solid_offers(c, &asked, &drinks).await?;
    let met: Vec<VisitId> = of_month.values().flatten().map(|contact| contact.visit.id).collect();
    let mut reacted: BTreeMap<VisitId, Vec<FoodOffer>> = BTreeMap::new();
    for (visit, offer) in contacts::reactions(c, &met).await? {
        reacted.entry(visit).or_default().push(offer);
    }
    for child in page {
        let passed: Vec<Passed> =
            passed.remove(&child.id).unwrap_or_default().into_iter().filter(|contact| in_programme(child, contact.on)).collect();
        let plan = slots_of(child, &passed, protocols.on(period.last()), period.last());
        rows.slots.extend(closed_in(child, &plan, period));
        for contact in of_month.remove(&child.id).unwrap_or_default() {
            if in_programme(child, contact.visit.on) {
                let seen = &contact.visit;
                let told = |offer: &FoodOffer| ReportReaction::told(child.id, seen.area, seen.on, offer, protocols.on(seen.on));
                rows.reactions.extend(reacted.get(&seen.id).into_iter().flatten().filter_map(told));
                rows.visits.push(completed(contact, child, &passed, &plan, protocols, &solid));
            }
        }
    }
    Ok(())
}

/// Whether the child was in the programme on the day or left on it: only such contacts are the programme's.
fn in_programme(child: &ReportChild, on: NaiveDate) -> bool {
    on == child.registered_on || [on, add_days(on, -1)].iter().any(|day| child.status_on(*day) == Some(ChildStatus::Active))
}

fn aged(child: &ReportChild, on: NaiveDate) -> bool {
    domain::calendar::completed_months(child.born, on) == Some(SOLIDS_ASKED_AT_MONTHS)
}

fn slots_of(child: &ReportChild, passed: &[Passed], protocol: &Protocol, last: NaiveDate) -> Vec<Slot> {
    let met = passed.iter().filter(|contact| !contact.phone).map(|contact| (contact.id, contact.on));
    slots(&protocol.schedule, child.born, child.registered_on, met, last)
}

/// Expected slots whose window closed in the month, of children in the programme on the target day (or, where the target lies
/// in the week before registration, on the day of registration).
fn closed_in(child: &ReportChild, plan: &[Slot], period: Period) -> Vec<ReportSlot> {
    let of = |slot: &Slot| {
        let day = slot.window.target.max(child.registered_on);
        let place = child.place_on(day)?;
        let end = match (slot.state, slot.filled) {
            (SlotState::Seen, Some(filled)) if filled.on_time => SlotEnd::OnTime,
            (SlotState::Seen, _) => SlotEnd::EarlyOrLate,
            (SlotState::Skipped, _) => SlotEnd::Skipped,
            (SlotState::Late | SlotState::Open | SlotState::NotYet, _) => SlotEnd::Overdue,
        };
        let due = slot.expected && period.contains(slot.window.closes()) && child.status_on(day) == Some(ChildStatus::Active);
        due.then(|| ReportSlot { area: place.area, worker: place.worker, slot: slot.plan.code(), closes: slot.window.closes(), end })
    };
    plan.iter().filter_map(of).collect()
}

/// A contact of the month with what its own row does not hold.
fn completed(
    contact: MonthContact,
    child: &ReportChild,
    passed: &[Passed],
    plan: &[Slot],
    protocols: &Protocols,
    solid: &BTreeSet<VisitId>,
) -> ReportVisit {
    let mut visit = contact.visit;
    visit.born = child.born;
    visit.age_corrected = child.correction_days > 0;
    if visit.contact != Contact::Phone {
        visit.slot = nearest(plan, visit.on);
        visit.fills_slot = plan.iter().any(|slot| slot.filled.is_some_and(|filled| filled.visit == visit.id));
    }
    let weights: Vec<(NaiveDate, Weight)> =
        passed.iter().filter(|p| p.on < visit.on).filter_map(|p| p.weight.map(|weight| (p.on, weight))).collect();
    visit.slow_or_lost =
        visit.weight.filter(|_| visit.oedema != Some(true)).and_then(|weight| slow_or_lost(child, &weights, (visit.on, weight)));
    if aged(child, visit.on) {
        visit.answers.solids_started = solids_started(passed, &visit, solid);
    }
    visit.answers.texture_expected = StageId::from_code(&contact.stage)
        .ok()
        .and_then(|stage| protocols.on(visit.on).stages.get(stage).and_then(|stage| stage.texture_expected))
        // "From, to": the child is on its stage from the first of the two on.
        .map(|(from, _)| from);
    visit
}

/// The slot with the nearest target; of two as near the later. The same as for filling them.
fn nearest(plan: &[Slot], on: NaiveDate) -> Option<String> {
    plan.iter().rev().min_by_key(|slot| (slot.window.target - on).num_days().abs()).map(|slot| slot.plan.code())
}

/// Yes if solids were given, or their start was stated, by this contact; no if it was told that there were none and never
/// before; else not known.
fn solids_started(passed: &[Passed], visit: &ReportVisit, solid: &BTreeSet<VisitId>) -> Option<bool> {
    let told = |p: &Passed| p.solids_yesterday.or_else(|| p.meals.map(|meals| meals > 0));
    let given = |p: &Passed| solid.contains(&p.id) || p.solids_started_on.is_some_and(|on| on <= visit.on) || told(p) == Some(true);
    if passed.iter().filter(|p| p.on <= visit.on).any(given) {
        return Some(true);
    }
    passed.iter().find(|p| p.id == visit.id).and_then(told).filter(|told| !told)
}

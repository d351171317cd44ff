//! What the monthly reports are counted from, a page of children or follow-ups at a time: no names, no addresses.
//! It counts nothing and knows no protocol. Visits are read with [`visits`](crate::store::visits) for the same page.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::growth::TERM_DAYS;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::report::rows::Placement;
use domain::report::rows::ReportChild;
use domain::report::rows::ReportFollowUp;
use domain::rule::Class;
use domain::rule::FollowUpState;
use domain::visit::Contact;
use domain::visit::Outcome;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Query;
use sea_orm::sea_query::SimpleExpr;
use uuid::Uuid;

use crate::store::children::in_scope;
use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::entity::child;
use crate::store::entity::follow_up;
use crate::store::entity::follow_up_event;
use crate::store::entity::placement;
use crate::store::entity::status_change;
use crate::store::entity::visit;
use crate::store::entity::visit_outcome;
use crate::store::error::StoreError;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::scope::Scope;

pub mod contacts;
#[cfg(test)]
mod tests;

/// Born before 37 weeks of pregnancy is early (WHO definition of preterm birth: fewer than 37 completed weeks).
const EARLY_BEFORE_DAYS: i32 = 259;
/// Born with less than this is low birth weight (WHO definition: less than 2,500 g).
const LOW_BIRTH_WEIGHT_G: i32 = 2_500;

/// Days by which ages are corrected for early birth: up to 40 weeks, 280 days.
fn correction(gestation_days: i32) -> u16 {
    u16::try_from(i32::from(TERM_DAYS) - gestation_days).unwrap_or(0)
}

/// A page of children in scope who were in the programme at some time from `first` to `last`, by key, from after the last one seen. A
/// record that was merged into another one is not a child.
///
/// # Errors
/// [`StoreError`].
pub async fn children(
    c: &impl ConnectionTrait,
    scope: Scope,
    (first, last): (NaiveDate, NaiveDate),
    after: Option<ChildId>,
    limit: u64,
) -> Result<Vec<ReportChild>, StoreError> {
    use child::Column as C;
    let mut query = child::Entity::find()
        .filter(C::RegisteredOn.lte(last))
        .filter(in_scope(scope))
        .filter(Condition::any().add(C::LeftOn.is_null()).add(C::LeftOn.gte(first)))
        .order_by_asc(C::Id)
        .limit(limit);
    if let Some(after) = after {
        query = query.filter(C::Id.gt(uuid(after.0)));
    }
    let rows = query.all(c).await?;
    let ids: Vec<Uuid> = rows.iter().map(|row| row.id).collect();
    let mut statuses = statuses_of(c, &ids).await?;
    let mut placements = placements_of(c, &ids).await?;
    let mut seen = last_seen(c, &ids, last).await?;
    let read = |row: child::Model| {
        Ok(ReportChild {
            id: ChildId(row.id.as_u128()),
            sex: Reading { table: "children", id: row.id }.code(&row.sex, Sex::from_code)?,
            born: row.born,
            preterm: row.gestation_days.is_some_and(|days| days < EARLY_BEFORE_DAYS),
            correction_days: row.gestation_days.filter(|days| *days < EARLY_BEFORE_DAYS).map_or(0, correction),
            low_birth_weight: row.birth_weight_g.is_some_and(|grams| grams < LOW_BIRTH_WEIGHT_G),
            registered_on: row.registered_on,
            statuses: statuses.remove(&row.id).unwrap_or_default(),
            placements: placements.remove(&row.id).unwrap_or_default(),
            last_visit_on: seen.remove(&row.id),
            ever_breastfed: row.ever_breastfed,
            breastfed_within_hour: row.early_breastfeeding,
            only_breast_milk_two_days: row.first_two_days_milk_only,
        })
    };
    rows.into_iter().map(read).collect()
}

/// A page of follow-ups of children in scope, opened from `first` to `last`, or open at the end of `last`, as they stood at its end; by key, from
/// after the last one seen. With each its key. What a visit opened that was taken back, or moved to another child, does not count.
///
/// # Errors
/// [`StoreError`].
pub async fn follow_ups(
    c: &impl ConnectionTrait,
    scope: Scope,
    (first, last): (NaiveDate, NaiveDate),
    after: Option<FollowUpId>,
    limit: u64,
) -> Result<Vec<(FollowUpId, ReportFollowUp)>, StoreError> {
    use follow_up::Column as F;
    let mut query = follow_up::Entity::find()
        .filter(F::OpenedOn.lte(last))
        .filter(opened_by_own_visit())
        .filter(Condition::any().add(F::OpenedOn.gte(first)).add(F::ClosedOn.is_null()).add(F::ClosedOn.gt(last)))
        .order_by_asc(F::Id)
        .limit(limit);
    if scope != Scope::Everything {
        let children = Query::select().column((child::Entity, child::Column::Id)).from(child::Entity).cond_where(in_scope(scope)).take();
        query = query.filter(F::ChildId.in_subquery(children));
    }
    if let Some(after) = after {
        query = query.filter(F::Id.gt(uuid(after.0)));
    }
    let records: Vec<FollowUpRecord> = query.all(c).await?.into_iter().map(TryInto::try_into).collect::<Result<_, _>>()?;
    let openings: Vec<Uuid> = records.iter().map(|f| uuid(f.opened_by_visit.0)).collect();
    let places = places_of(c, &openings).await?;
    let histories = histories_of(c, &records).await?;
    let care = care_of(c, &records, last).await?;
    let read = |record: FollowUpRecord| {
        let key = uuid(record.id.0);
        let history = histories.get(&key).map(Vec::as_slice).unwrap_or_default();
        let until = |day: Option<NaiveDate>| day.filter(|day| *day <= last);
        let closing = record.closing.as_ref().filter(|closing| closing.on <= last);
        let due_then = history.iter().rfind(|event| event.on <= last).map_or(record.due_on, |event| event.due_on);
        let followed_up_on = until(record.first_followed_up_on);
        let (area, worker) = places.get(&uuid(record.opened_by_visit.0)).copied().unwrap_or((record.area, record.worker));
        let report = ReportFollowUp {
            child: record.child,
            area,
            worker,
            rule: record.rule,
            class: history.first().map_or(record.class, |event| event.class),
            opened_on: record.opened_on,
            due_on: due_then,
            first_due_on: followed_up_on.and(record.first_followed_up_due).unwrap_or(due_then),
            followed_up_on,
            outcome_on: until(record.first_outcome_on),
            reached_on: care.iter().filter(|told| told.answers(&record)).map(|told| told.on).min(),
            closed_on: closing.map(|closing| closing.on),
            state: if closing.is_some() { record.state() } else { FollowUpState::Open },
            reason: closing.map(|closing| closing.reason),
        };
        (record.id, report)
    };
    Ok(records.into_iter().map(read).collect())
}

/// The visit that opened the follow-up is still one of the child's.
fn opened_by_own_visit() -> SimpleExpr {
    Expr::col((follow_up::Entity, follow_up::Column::OpenedByVisit)).in_subquery(
        Query::select()
            .column((visit::Entity, visit::Column::Id))
            .from(visit::Entity)
            .and_where(visit::Column::VoidedAt.is_null())
            .and_where(Expr::col((visit::Entity, visit::Column::ChildId)).equals((follow_up::Entity, follow_up::Column::ChildId)))
            .take(),
    )
}

async fn statuses_of(c: &impl ConnectionTrait, ids: &[Uuid]) -> Result<BTreeMap<Uuid, Vec<(NaiveDate, ChildStatus)>>, StoreError> {
    use status_change::Column as S;
    let rows = status_change::Entity::find()
        .filter(S::ChildId.is_in(ids.iter().copied()))
        // The first one is the registration itself.
        .filter(S::Seq.gt(1))
        .order_by_asc(S::HappenedOn)
        .order_by_asc(S::Seq)
        .all(c)
        .await?;
    let mut of: BTreeMap<Uuid, Vec<_>> = BTreeMap::new();
    for row in rows {
        let status = Reading { table: "status_changes", id: row.child_id }.code(&row.status, ChildStatus::from_code)?;
        of.entry(row.child_id).or_default().push((row.happened_on, status));
    }
    Ok(of)
}

async fn placements_of(c: &impl ConnectionTrait, ids: &[Uuid]) -> Result<BTreeMap<Uuid, Vec<Placement>>, StoreError> {
    use placement::Column as P;
    let rows = placement::Entity::find().filter(P::ChildId.is_in(ids.iter().copied())).order_by_asc(P::Seq).all(c).await?;
    let mut of: BTreeMap<Uuid, Vec<_>> = BTreeMap::new();
    for row in rows {
        let place = Placement { from: row.from_on, area: AreaId(row.area_id.as_u128()), worker: PersonId(row.worker_id.as_u128()) };
        of.entry(row.child_id).or_default().push(place);
    }
    Ok(of)
}

async fn last_seen(c: &impl ConnectionTrait, ids: &[Uuid], last: NaiveDate) -> Result<BTreeMap<Uuid, NaiveDate>, StoreError> {
    use visit::Column as V;
    let rows: Vec<(Uuid, NaiveDate)> = visit::Entity::find()
        .select_only()
        .column(V::ChildId)
        .column_as(V::VisitedOn.max(), "last")
        .filter(V::ChildId.is_in(ids.iter().copied()))
        .filter(V::VisitedOn.lte(last))
        .filter(V::VoidedAt.is_null())
        .filter(V::Contact.ne(Contact::Phone.code()))
        .group_by(V::ChildId)
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().collect())
}

/// Area and worker on the day of these visits.
async fn places_of(c: &impl ConnectionTrait, visits: &[Uuid]) -> Result<BTreeMap<Uuid, (AreaId, PersonId)>, StoreError> {
    use visit::Column as V;
    let rows: Vec<(Uuid, Uuid, Uuid)> = visit::Entity::find()
        .select_only()
        .columns([V::Id, V::AreaId, V::WorkerId])
        .filter(V::Id.is_in(visits.iter().copied()))
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().map(|(id, area, worker)| (id, (AreaId(area.as_u128()), PersonId(worker.as_u128())))).collect())
}

/// Class and due day as a line of a history left them.
struct Event {
    on: NaiveDate,
    class: Class,
    due_on: NaiveDate,
}

async fn histories_of(c: &impl ConnectionTrait, records: &[FollowUpRecord]) -> Result<BTreeMap<Uuid, Vec<Event>>, StoreError> {
    use follow_up_event::Column as E;
    let rows = follow_up_event::Entity::find()
        .filter(E::FollowUpId.is_in(records.iter().map(|f| uuid(f.id.0))))
        .order_by_asc(E::FollowUpId)
        .order_by_asc(E::Seq)
        .all(c)
        .await?;
    let mut of: BTreeMap<Uuid, Vec<Event>> = BTreeMap::new();
    for row in rows {
        let class = Reading { table: "follow_up_events", id: row.follow_up_id }.code(&row.class, Class::from_code)?;
        of.entry(row.follow_up_id).or_default().push(Event { on: row.on_date, class, due_on: row.due_on });
    }
    Ok(of)
}

/// An outcome that says the child reached care.
struct Reached {
    child: ChildId,
    rule: String,
    on: NaiveDate,
}

impl Reached {
    /// Whether it was told of this follow-up: of its rule, after it opened and while it was open.
    fn answers(&self, follow_up: &FollowUpRecord) -> bool {
        self.child == follow_up.child
            && self.rule == follow_up.rule.code()
            && self.on > follow_up.opened_on
            && follow_up.closing.as_ref().is_none_or(|closing| self.on <= closing.on)
    }
}

async fn care_of(c: &impl ConnectionTrait, records: &[FollowUpRecord], last: NaiveDate) -> Result<Vec<Reached>, StoreError> {
    let care = Outcome::ALL.iter().filter(|outcome| outcome.is_care()).map(|outcome| outcome.code());
    let rows: Vec<(Uuid, NaiveDate, String)> = visit::Entity::find()
        .select_only()
        .columns([visit::Column::ChildId, visit::Column::VisitedOn])
        .column(visit_outcome::Column::Rule)
        .join(
            sea_orm::JoinType::InnerJoin,
            visit::Entity::belongs_to(visit_outcome::Entity).from(visit::Column::Id).to(visit_outcome::Column::VisitId).into(),
        )
        .filter(visit::Column::ChildId.is_in(records.iter().map(|f| uuid(f.child.0))))
        .filter(visit::Column::VisitedOn.lte(last))
        .filter(visit::Column::VoidedAt.is_null())
        .filter(visit_outcome::Column::Outcome.is_in(care))
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().map(|(child, on, rule)| Reached { child: ChildId(child.as_u128()), rule, on }).collect())
}

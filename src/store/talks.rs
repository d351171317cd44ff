//! What a supervisor asks of agreed steps: which were difficult and why, and how many were agreed and told of, by worker.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::both_names;
use domain::counsel::Step;
use domain::counsel::StepAnswer;
use domain::counsel::StepId;
use domain::counsel::Told;
use domain::ids::PersonId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use std::collections::BTreeMap;

use crate::store::codes::Reading;
use crate::store::entity::area;
use crate::store::entity::child;
use crate::store::entity::person;
use crate::store::entity::visit;
use crate::store::entity::visit_step;
use crate::store::entity::visit_step_told;
use crate::store::error::StoreError;
use crate::store::latest_first::LatestKey;
use crate::store::rows::talk;
use crate::store::scope::Scope;

/// A step that was done in part or not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DifficultStep {
    /// The child's code.
    pub code: String,
    /// What it is called.
    pub called: String,
    /// Birth date.
    pub born: NaiveDate,
    /// Village.
    pub area_name: String,
    /// Worker.
    pub worker_name: String,
    /// The step; `None` when a correction took it away since.
    pub step: Option<Step>,
    /// What was told.
    pub told: Told,
    /// The day of the visit at which it was told.
    pub told_on: NaiveDate,
    /// Where a page that ends with this line goes on.
    pub key: LatestKey,
}

#[derive(FromQueryResult)]
struct Row {
    #[sea_orm(nested)]
    told: visit_step_told::Model,
    code: String,
    name: String,
    known_as: Option<String>,
    born: NaiveDate,
    area_name: String,
    worker_name: String,
    visited_on: NaiveDate,
    entry_seq: i64,
}

/// Days from which and up to which visits count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Between {
    /// First day.
    pub from: NaiveDate,
    /// Last day.
    pub to: NaiveDate,
}

fn counted(scope: Scope, days: Between) -> Condition {
    Condition::all()
        .add(scope.on((child::Entity, child::Column::AreaId), (child::Entity, child::Column::WorkerId)))
        .add(visit::Column::VoidedAt.is_null())
        .add(visit::Column::VisitedOn.between(days.from, days.to))
}

fn child_of_visit() -> RelationDef {
    visit::Entity::belongs_to(child::Entity).from(visit::Column::ChildId).to(child::Column::Id).into()
}

/// Steps of active children told as done in part or not done, the latest told first; from after the key `after`.
///
/// # Errors
/// [`StoreError`].
pub async fn difficult_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    days: Between,
    after: Option<LatestKey>,
    limit: u64,
) -> Result<Vec<DifficultStep>, StoreError> {
    use visit_step_told::Column as T;
    let visits: RelationDef = visit_step_told::Entity::belongs_to(visit::Entity).from(T::VisitId).to(visit::Column::Id).into();
    let area: RelationDef = child::Entity::belongs_to(area::Entity).from(child::Column::AreaId).to(area::Column::Id).into();
    let worker: RelationDef = child::Entity::belongs_to(person::Entity).from(child::Column::WorkerId).to(person::Column::Id).into();
    let rows = visit_step_told::Entity::find()
        .join(JoinType::InnerJoin, visits)
        .join(JoinType::InnerJoin, child_of_visit())
        .join(JoinType::InnerJoin, area)
        .join(JoinType::InnerJoin, worker)
        .columns([child::Column::Code, child::Column::Name, child::Column::KnownAs, child::Column::Born])
        .column_as(area::Column::Name, "area_name")
        .column_as(person::Column::FullName, "worker_name")
        .columns([visit::Column::VisitedOn, visit::Column::EntrySeq])
        .filter(counted(scope, days))
        .filter(Condition::all().add_option(after.map(|key| key.further(T::OfPlace))))
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(T::Answer.is_in([StepAnswer::Partly.code(), StepAnswer::Not.code()]))
        .order_by_desc(visit::Column::VisitedOn)
        .order_by_desc(visit::Column::EntrySeq)
        .order_by_asc(T::OfPlace)
        .limit(limit)
        .into_model::<Row>()
        .all(c)
        .await?;
    let of: Vec<_> = rows.iter().map(|row| row.told.of_visit_id).collect();
    let mut agreed: BTreeMap<StepId, Step> = BTreeMap::new();
    for row in visit_step::Entity::find().filter(visit_step::Column::VisitId.is_in(of)).all(c).await? {
        let visit = domain::ids::VisitId(row.visit_id.as_u128());
        let (place, step) = talk::step(row)?;
        agreed.insert(StepId { visit, place }, step);
    }
    let line = |row: Row| {
        let key = LatestKey { on: row.visited_on, entry_seq: row.entry_seq, place: row.told.of_place };
        let (id, told) = talk::told(row.told)?;
        Ok(DifficultStep {
            code: row.code,
            called: both_names(&row.name, row.known_as.as_deref()),
            born: row.born,
            area_name: row.area_name,
            worker_name: row.worker_name,
            step: agreed.get(&id).cloned(),
            told,
            told_on: row.visited_on,
            key,
        })
    };
    rows.into_iter().map(line).collect()
}

/// Steps of a worker's children.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct StepTally {
    /// Agreed in these days.
    pub agreed: u64,
    /// Told of in these days: done, in part, not done.
    pub told: [u64; 3],
}

#[derive(FromQueryResult)]
struct Count {
    worker_id: uuid::Uuid,
    answer: Option<String>,
    steps: i64,
}

/// How many steps were agreed and told of, by the worker the children have now.
///
/// # Errors
/// [`StoreError`].
pub async fn tallies_in_scope(c: &impl ConnectionTrait, scope: Scope, days: Between) -> Result<BTreeMap<PersonId, StepTally>, StoreError> {
    let mut tallies: BTreeMap<PersonId, StepTally> = BTreeMap::new();
    let visits: RelationDef = visit_step::Entity::belongs_to(visit::Entity).from(visit_step::Column::VisitId).to(visit::Column::Id).into();
    let agreed = visit_step::Entity::find()
        .select_only()
        .column(child::Column::WorkerId)
        .column_as(visit_step::Column::Place.count(), "steps")
        .expr_as(sea_orm::sea_query::Expr::value(None::<String>), "answer")
        .join(JoinType::InnerJoin, visits)
        .join(JoinType::InnerJoin, child_of_visit())
        .filter(counted(scope, days))
        .group_by(child::Column::WorkerId);
    for row in agreed.into_model::<Count>().all(c).await? {
        tallies.entry(PersonId(row.worker_id.as_u128())).or_default().agreed = row.steps.unsigned_abs();
    }
    use visit_step_told::Column as T;
    let visits: RelationDef = visit_step_told::Entity::belongs_to(visit::Entity).from(T::VisitId).to(visit::Column::Id).into();
    let told = visit_step_told::Entity::find()
        .select_only()
        .column(child::Column::WorkerId)
        .column(T::Answer)
        .column_as(T::OfPlace.count(), "steps")
        .join(JoinType::InnerJoin, visits)
        .join(JoinType::InnerJoin, child_of_visit())
        .filter(counted(scope, days))
        .filter(T::Answer.is_not_null())
        .group_by(child::Column::WorkerId)
        .group_by(T::Answer);
    for row in told.into_model::<Count>().all(c).await? {
        let r = Reading { table: "visit_steps_told", id: row.worker_id };
        let tally = tallies.entry(PersonId(row.worker_id.as_u128())).or_default();
        if let Some(answer) = r.maybe_code(row.answer.as_deref(), StepAnswer::from_code)? {
            let [done, partly, not] = &mut tally.told;
            *match answer {
                StepAnswer::Done => done,
                StepAnswer::Partly => partly,
                StepAnswer::Not => not,
            } = row.steps.unsigned_abs();
        }
    }
    Ok(tallies)
}

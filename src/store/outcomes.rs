//! What became of follow-ups, as told at visits: for a supervisor who tracks referrals.

use chrono::NaiveDate;
use domain::child::both_names;
use domain::ids::ChildId;
use domain::rule::RuleId;
use domain::visit::Outcome;
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

use crate::store::codes::Reading;
use crate::store::entity::area;
use crate::store::entity::child;
use crate::store::entity::person;
use crate::store::entity::visit;
use crate::store::entity::visit_outcome;
use crate::store::error::StoreError;
use crate::store::latest_first::LatestKey;
use crate::store::scope::Scope;

/// An outcome of a child in scope.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OutcomeLine {
    /// The child.
    pub child: ChildId,
    /// In links.
    pub code: String,
    /// What it is called.
    pub called: String,
    /// Birth date.
    pub born: NaiveDate,
    /// Village.
    pub area_name: String,
    /// Worker.
    pub worker_name: String,
    /// Of which follow-up.
    pub rule: RuleId,
    /// What.
    pub outcome: Outcome,
    /// The day of the visit at which it was told.
    pub told_on: NaiveDate,
    /// Where a page that ends with this line goes on.
    pub key: LatestKey,
}

#[derive(FromQueryResult)]
struct Row {
    rule: String,
    outcome: String,
    seq: i32,
    child_id: uuid::Uuid,
    entry_seq: i64,
    visited_on: NaiveDate,
    code: String,
    name: String,
    known_as: Option<String>,
    born: NaiveDate,
    area_name: String,
    worker_name: String,
}

/// Outcomes told from this day on, latest first; from after the key `after`.
///
/// # Errors
/// [`StoreError`].
pub async fn told_since(
    c: &impl ConnectionTrait,
    scope: Scope,
    from: NaiveDate,
    after: Option<LatestKey>,
    limit: u64,
) -> Result<Vec<OutcomeLine>, StoreError> {
    use child::Column as C;
    use visit_outcome::Column as O;
    let at: RelationDef = visit_outcome::Entity::belongs_to(visit::Entity).from(O::VisitId).to(visit::Column::Id).into();
    let of: RelationDef = visit::Entity::belongs_to(child::Entity).from(visit::Column::ChildId).to(C::Id).into();
    let area: RelationDef = child::Entity::belongs_to(area::Entity).from(C::AreaId).to(area::Column::Id).into();
    let worker: RelationDef = child::Entity::belongs_to(person::Entity).from(C::WorkerId).to(person::Column::Id).into();
    let rows = visit_outcome::Entity::find()
        .select_only()
        .columns([O::Rule, O::Outcome, O::Seq])
        .join(JoinType::InnerJoin, at)
        .join(JoinType::InnerJoin, of)
        .join(JoinType::InnerJoin, area)
        .join(JoinType::InnerJoin, worker)
        .columns([visit::Column::ChildId, visit::Column::VisitedOn, visit::Column::EntrySeq])
        .columns([C::Code, C::Name, C::KnownAs, C::Born])
        .column_as(area::Column::Name, "area_name")
        .column_as(person::Column::FullName, "worker_name")
        .filter(crate::store::children::in_scope(scope))
        .filter(visit::Column::VoidedAt.is_null())
        .filter(visit::Column::VisitedOn.gte(from))
        .filter(Condition::all().add_option(after.map(|key| key.further(O::Seq))))
        .order_by_desc(visit::Column::VisitedOn)
        .order_by_desc(visit::Column::EntrySeq)
        .order_by_asc(O::Seq)
        .limit(limit)
        .into_model::<Row>()
        .all(c)
        .await?;
    let read = |row: Row| {
        let reading = Reading { table: "visit_outcomes", id: row.child_id };
        Ok(OutcomeLine {
            child: ChildId(row.child_id.as_u128()),
            code: row.code,
            called: both_names(&row.name, row.known_as.as_deref()),
            born: row.born,
            area_name: row.area_name,
            worker_name: row.worker_name,
            rule: reading.code(&row.rule, RuleId::from_code)?,
            outcome: reading.code(&row.outcome, Outcome::from_code)?,
            told_on: row.visited_on,
            key: LatestKey { on: row.visited_on, entry_seq: row.entry_seq, place: row.seq },
        })
    };
    rows.into_iter().map(read).collect()
}

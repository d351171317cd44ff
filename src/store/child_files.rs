//! A child with the names and follow-ups that its page shows: one statement. Its visits are the next one.

use domain::ids::HouseholdId;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::IdenStatic;
use sea_orm::Iterable;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use sea_orm::prelude::Uuid;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::SimpleExpr;

use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::codes::uuid;
use crate::store::corrections;
use crate::store::desk_notes;
use crate::store::entity::area;
use crate::store::entity::child;
use crate::store::entity::follow_up;
use crate::store::entity::household_member;
use crate::store::entity::person;
use crate::store::error::StoreError;
use crate::store::follow_ups;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::scope::Scope;

/// A child's registration and what surrounds it today.
#[derive(Debug, Clone)]
pub struct Opened {
    /// Registration.
    pub record: ChildRecord,
    /// Name of the area.
    pub area_name: String,
    /// Name of the worker.
    pub worker_name: String,
    /// Open first by urgency and due day, then closed ones, latest first.
    pub follow_ups: Vec<FollowUpRecord>,
    /// The home, if another child is known to live there.
    pub home: Option<HouseholdId>,
    /// A supervisor wrote to the worker, and it waits; only then are the notes asked for.
    pub noted: bool,
    /// A correction took something from the record or brought something to it; only then is its history asked for.
    pub corrected: bool,
}

/// One follow-up beside its child; a child without any has one row.
#[derive(FromQueryResult)]
struct Row {
    #[sea_orm(nested)]
    child: child::Model,
    area_name: String,
    worker_name: String,
    home: Option<Uuid>,
    corrected: bool,
    noted: bool,
    #[sea_orm(nested(prefix = "follow_up_"))]
    follow_up: Option<follow_up::Model>,
}

/// The child with this code, if the scope reaches it. The code of a record that was merged leads to the one that goes on.
///
/// # Errors
/// [`StoreError`].
pub async fn open(c: &impl ConnectionTrait, scope: Scope, code: &str) -> Result<Option<Opened>, StoreError> {
    if let Some(opened) = of_child(c, scope, child::Column::Code.eq(code)).await? {
        return Ok(Some(opened));
    }
    match children::led_from(c, code).await? {
        Some(goes_on) => of_child(c, scope, child::Column::Id.eq(uuid(goes_on.0))).await,
        None => Ok(None),
    }
}

async fn of_child(c: &impl ConnectionTrait, scope: Scope, which: SimpleExpr) -> Result<Option<Opened>, StoreError> {
    let area: RelationDef = child::Entity::belongs_to(area::Entity).from(child::Column::AreaId).to(area::Column::Id).into();
    let worker: RelationDef = child::Entity::belongs_to(person::Entity).from(child::Column::WorkerId).to(person::Column::Id).into();
    let theirs: RelationDef = child::Entity::belongs_to(follow_up::Entity).from(child::Column::Id).to(follow_up::Column::ChildId).into();
    let lives: RelationDef =
        child::Entity::belongs_to(household_member::Entity).from(child::Column::Id).to(household_member::Column::ChildId).into();
    let query = child::Entity::find()
        .join(JoinType::InnerJoin, area)
        .join(JoinType::InnerJoin, worker)
        .join(JoinType::LeftJoin, theirs)
        .join(JoinType::LeftJoin, lives)
        .column_as(area::Column::Name, "area_name")
        .column_as(person::Column::FullName, "worker_name")
        .column_as(household_member::Column::HouseholdId, "home")
        .column_as(Expr::exists(corrections::any_of_the_child()), "corrected")
        .column_as(Expr::exists(desk_notes::any_on_the_child()), "noted")
        .filter(which)
        .filter(children::in_scope(scope));
    let query = follow_up::Column::iter().fold(query, |query, column| query.column_as(column, format!("follow_up_{}", column.as_str())));
    let mut rows = query.into_model::<Row>().all(c).await?.into_iter();
    let Some(first) = rows.next() else { return Ok(None) };
    let theirs = first.follow_up.into_iter().chain(rows.filter_map(|row| row.follow_up)).collect();
    Ok(Some(Opened {
        record: first.child.try_into()?,
        area_name: first.area_name,
        worker_name: first.worker_name,
        follow_ups: follow_ups::in_order(theirs)?,
        home: first.home.map(|home| HouseholdId(home.as_u128())),
        corrected: first.corrected,
        noted: first.noted,
    }))
}

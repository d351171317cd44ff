//! Lists of open follow-ups with the names a list shows: one query a page, the next page after the last line's key.

use chrono::NaiveDate;
use domain::ids::FollowUpId;
use domain::rule::Class;
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
use sea_orm::Select;

use crate::store::codes::uuid;
use crate::store::entity::area;
use crate::store::entity::child;
use crate::store::entity::follow_up;
use crate::store::entity::person;
use crate::store::error::StoreError;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::follow_ups::in_scope;
use crate::store::scope::Scope;

/// A follow-up with the names a list shows.
#[derive(Debug, Clone, PartialEq)]
pub struct FollowUpLine {
    /// The follow-up.
    pub follow_up: FollowUpRecord,
    /// The child's code.
    pub child_code: String,
    /// The child's name.
    pub child_name: String,
    /// What the family calls the child.
    pub known_as: Option<String>,
    /// Birth date.
    pub born: NaiveDate,
    /// Name of the area.
    pub area_name: String,
    /// Name of the worker.
    pub worker_name: String,
}

#[derive(FromQueryResult)]
struct Row {
    #[sea_orm(nested)]
    follow_up: follow_up::Model,
    child_code: String,
    child_name: String,
    known_as: Option<String>,
    born: NaiveDate,
    area_name: String,
    worker_name: String,
}

impl TryFrom<Row> for FollowUpLine {
    type Error = StoreError;

    fn try_from(row: Row) -> Result<Self, StoreError> {
        Ok(Self {
            follow_up: row.follow_up.try_into()?,
            child_code: row.child_code,
            child_name: row.child_name,
            known_as: row.known_as,
            born: row.born,
            area_name: row.area_name,
            worker_name: row.worker_name,
        })
    }
}

pub(super) fn lines(scope: Scope) -> Select<follow_up::Entity> {
    let child: RelationDef = follow_up::Entity::belongs_to(child::Entity).from(follow_up::Column::ChildId).to(child::Column::Id).into();
    let area: RelationDef = follow_up::Entity::belongs_to(area::Entity).from(follow_up::Column::AreaId).to(area::Column::Id).into();
    let worker: RelationDef = follow_up::Entity::belongs_to(person::Entity).from(follow_up::Column::WorkerId).to(person::Column::Id).into();
    follow_up::Entity::find()
        .join(JoinType::InnerJoin, child)
        .join(JoinType::InnerJoin, area)
        .join(JoinType::InnerJoin, worker)
        .column_as(child::Column::Code, "child_code")
        .column_as(child::Column::Name, "child_name")
        .column_as(child::Column::KnownAs, "known_as")
        .column_as(child::Column::Born, "born")
        .column_as(area::Column::Name, "area_name")
        .column_as(person::Column::FullName, "worker_name")
        .filter(in_scope(scope))
}

async fn page(
    c: &impl ConnectionTrait,
    query: Select<follow_up::Entity>,
    after: Option<(NaiveDate, FollowUpId)>,
    limit: u64,
) -> Result<Vec<FollowUpLine>, StoreError> {
    let mut query = query.filter(follow_up::Column::State.eq("open"));
    if let Some((due_on, id)) = after {
        query = query.filter(
            Condition::any()
                .add(follow_up::Column::DueOn.gt(due_on))
                .add(Condition::all().add(follow_up::Column::DueOn.eq(due_on)).add(follow_up::Column::Id.gt(uuid(id.0)))),
        );
    }
    let query = query.order_by_asc(follow_up::Column::DueOn).order_by_asc(follow_up::Column::Id).limit(limit);
    read_lines(c, query).await
}

/// Lines as a query orders them.
pub(super) async fn read_lines(c: &impl ConnectionTrait, query: Select<follow_up::Entity>) -> Result<Vec<FollowUpLine>, StoreError> {
    query.into_model::<Row>().all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// A page of open follow-ups, first due first, from after the key of the last line seen.
///
/// # Errors
/// [`StoreError`].
pub async fn open_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    after: Option<(NaiveDate, FollowUpId)>,
    limit: u64,
) -> Result<Vec<FollowUpLine>, StoreError> {
    page(c, lines(scope), after, limit).await
}

/// A page of open follow-ups past their clock: for each class the last due day that counts as late. First due first.
///
/// # Errors
/// [`StoreError`].
pub async fn late_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    last_late_due: &[(Class, NaiveDate)],
    after: Option<(NaiveDate, FollowUpId)>,
    limit: u64,
) -> Result<Vec<FollowUpLine>, StoreError> {
    if last_late_due.is_empty() {
        return Ok(Vec::new());
    }
    let late = last_late_due.iter().fold(Condition::any(), |late, (class, due_on)| {
        late.add(Condition::all().add(follow_up::Column::Class.eq(class.code())).add(follow_up::Column::DueOn.lte(*due_on)))
    });
    page(c, lines(scope).filter(late), after, limit).await
}

/// One follow-up, open or closed, if the scope reaches it.
///
/// # Errors
/// [`StoreError`].
pub async fn by_id_in_scope(c: &impl ConnectionTrait, scope: Scope, id: FollowUpId) -> Result<Option<FollowUpLine>, StoreError> {
    let row = lines(scope).filter(follow_up::Column::Id.eq(uuid(id.0))).into_model::<Row>().one(c).await?;
    row.map(TryInto::try_into).transpose()
}

//! What supervisors wrote to the worker about a child. A note that is done stays on record. It knows no rule and no scope: who may see
//! the child is asked before.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::ChildId;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::IntoActiveModel;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Query;
use sea_orm::sea_query::SelectStatement;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::child;
use crate::store::entity::desk_note;
use crate::store::entity::person;
use crate::store::error::StoreError;

/// A note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DeskNote {
    /// Key.
    pub id: u128,
    /// About whom.
    pub child: ChildId,
    /// Who wrote.
    pub by: PersonId,
    /// When.
    pub at: DateTime<Utc>,
    /// What.
    pub words: String,
    /// The day of a visit made together.
    pub together_on: Option<NaiveDate>,
}

#[derive(FromQueryResult)]
struct Row {
    #[sea_orm(nested)]
    note: desk_note::Model,
    by_name: String,
}

/// Keeps a note.
///
/// # Errors
/// [`StoreError`].
pub async fn insert(c: &impl ConnectionTrait, note: &DeskNote) -> Result<(), StoreError> {
    let row = desk_note::Model {
        id: uuid(note.id),
        child_id: uuid(note.child.0),
        by_person: uuid(note.by.0),
        at: whole_second(note.at),
        words: note.words.clone(),
        together_on: note.together_on,
        done_by: None,
        done_at: None,
    };
    desk_note::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// The notes on a child that nobody has set aside, oldest first, each with the name of who wrote it.
///
/// # Errors
/// [`StoreError`].
pub async fn open_of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Vec<(DeskNote, String)>, StoreError> {
    let by: RelationDef = desk_note::Entity::belongs_to(person::Entity).from(desk_note::Column::ByPerson).to(person::Column::Id).into();
    let rows = desk_note::Entity::find()
        .join(JoinType::InnerJoin, by)
        .column_as(person::Column::FullName, "by_name")
        .filter(desk_note::Column::ChildId.eq(uuid(child.0)))
        .filter(desk_note::Column::DoneAt.is_null())
        .order_by_asc(desk_note::Column::At)
        .order_by_asc(desk_note::Column::Id)
        .into_model::<Row>()
        .all(c)
        .await?;
    let read = |Row { note, by_name }: Row| {
        let told = DeskNote {
            id: note.id.as_u128(),
            child: ChildId(note.child_id.as_u128()),
            by: PersonId(note.by_person.as_u128()),
            at: note.at,
            words: note.words,
            together_on: note.together_on,
        };
        (told, by_name)
    };
    Ok(rows.into_iter().map(read).collect())
}

/// A note that was set aside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadNote {
    /// Who wrote it.
    pub by: PersonId,
    /// What.
    pub words: String,
    /// Who set it aside.
    pub read_by: PersonId,
    /// When.
    pub read_at: DateTime<Utc>,
}

/// The notes on a child that were set aside at or after an instant, the first read first.
///
/// # Errors
/// [`StoreError`].
pub async fn read_since(c: &impl ConnectionTrait, child: ChildId, since: DateTime<Utc>) -> Result<Vec<ReadNote>, StoreError> {
    use desk_note::Column as N;
    let query = desk_note::Entity::find()
        .filter(N::ChildId.eq(uuid(child.0)))
        .filter(N::DoneAt.gte(whole_second(since)))
        .order_by_asc(N::DoneAt)
        .order_by_asc(N::Id);
    let read = |note: desk_note::Model| {
        let (read_by, read_at) = note.done_by.zip(note.done_at)?;
        Some(ReadNote { by: PersonId(note.by_person.as_u128()), words: note.words, read_by: PersonId(read_by.as_u128()), read_at })
    };
    Ok(query.all(c).await?.into_iter().filter_map(read).collect())
}

/// Sets a note on this child aside. Whether there was one to set aside.
///
/// # Errors
/// [`StoreError`].
pub async fn done(c: &impl ConnectionTrait, child: ChildId, note: u128, by: PersonId, at: DateTime<Utc>) -> Result<bool, StoreError> {
    use desk_note::Column as N;
    let done = desk_note::Entity::update_many()
        .col_expr(N::DoneBy, Expr::value(Some(uuid(by.0))))
        .col_expr(N::DoneAt, Expr::value(Some(whole_second(at))))
        .filter(N::Id.eq(uuid(note)))
        .filter(N::ChildId.eq(uuid(child.0)))
        .filter(N::DoneAt.is_null())
        .exec(c)
        .await?;
    Ok(done.rows_affected > 0)
}

/// Whether a note on a child waits, as a part of a question about children.
pub(super) fn any_on_the_child() -> SelectStatement {
    use desk_note::Column as N;
    let on_it = Expr::col((desk_note::Entity, N::ChildId)).equals((child::Entity, child::Column::Id));
    let waits = Expr::col((desk_note::Entity, N::DoneAt)).is_null();
    Query::select().expr(Expr::val(1)).from(desk_note::Entity).and_where(on_it).and_where(waits).to_owned()
}

//! Sessions, revocable at once: a row holds the hash of the key, never the key. It decides no lifetime.

use chrono::DateTime;
use chrono::Utc;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::sea_query::Expr;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::person;
use crate::store::entity::session;
use crate::store::error::StoreError;
use crate::store::people::PersonRecord;

/// A session.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionRecord {
    /// SHA-256 of the key in the visitor's cookie.
    pub key_hash: [u8; 32],
    /// Whose.
    pub person: PersonId,
    /// When it began.
    pub created_at: DateTime<Utc>,
    /// Last request, to a minute or so.
    pub last_seen_at: DateTime<Utc>,
    /// Ends at the latest.
    pub expires_at: DateTime<Utc>,
}

/// Begins a session.
///
/// # Errors
/// [`StoreError`].
pub async fn insert(c: &impl ConnectionTrait, session: &SessionRecord) -> Result<(), StoreError> {
    let row = session::Model {
        key_hash: session.key_hash.to_vec(),
        person_id: uuid(session.person.0),
        created_at: whole_second(session.created_at),
        last_seen_at: whole_second(session.last_seen_at),
        expires_at: whole_second(session.expires_at),
    };
    session::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// The session with this key's hash and its person: not past its end at `now`, and the person still active. One query.
///
/// # Errors
/// [`StoreError`].
pub async fn find_live(
    c: &impl ConnectionTrait,
    key_hash: &[u8; 32],
    now: DateTime<Utc>,
) -> Result<Option<(SessionRecord, PersonRecord)>, StoreError> {
    let owner = session::Entity::belongs_to(person::Entity).from(session::Column::PersonId).to(person::Column::Id).into();
    let found = session::Entity::find_by_id(key_hash.to_vec())
        .join(JoinType::InnerJoin, owner)
        .select_also(person::Entity)
        .filter(session::Column::ExpiresAt.gt(whole_second(now)))
        .filter(person::Column::Active.eq(true))
        .one(c)
        .await?;
    match found {
        Some((session, Some(person))) => Ok(Some((session.try_into()?, person.try_into()?))),
        _ => Ok(None),
    }
}

/// Whose session has this key's hash, even when it is past its end.
///
/// # Errors
/// [`StoreError`].
pub async fn owner_of(c: &impl ConnectionTrait, key_hash: &[u8; 32]) -> Result<Option<PersonId>, StoreError> {
    Ok(session::Entity::find_by_id(key_hash.to_vec()).one(c).await?.map(|row| PersonId(row.person_id.as_u128())))
}

/// Notes a request.
///
/// # Errors
/// [`StoreError`].
pub async fn touch(c: &impl ConnectionTrait, key_hash: &[u8; 32], now: DateTime<Utc>) -> Result<(), StoreError> {
    session::Entity::update_many()
        .col_expr(session::Column::LastSeenAt, Expr::value(whole_second(now)))
        .filter(session::Column::KeyHash.eq(key_hash.to_vec()))
        .exec(c)
        .await?;
    Ok(())
}

/// Ends one session.
///
/// # Errors
/// [`StoreError`].
pub async fn end(c: &impl ConnectionTrait, key_hash: &[u8; 32]) -> Result<(), StoreError> {
    session::Entity::delete_by_id(key_hash.to_vec()).exec(c).await?;
    Ok(())
}

/// Ends every session of a person, but the one to keep.
///
/// # Errors
/// [`StoreError`].
pub async fn end_all_of(c: &impl ConnectionTrait, person: PersonId, keep: Option<&[u8; 32]>) -> Result<u64, StoreError> {
    let mut query = session::Entity::delete_many().filter(session::Column::PersonId.eq(uuid(person.0)));
    if let Some(keep) = keep {
        query = query.filter(session::Column::KeyHash.ne(keep.to_vec()));
    }
    Ok(query.exec(c).await?.rows_affected)
}

/// A person's sessions, latest used first.
///
/// # Errors
/// [`StoreError`].
pub async fn of_person(c: &impl ConnectionTrait, person: PersonId) -> Result<Vec<SessionRecord>, StoreError> {
    let query = session::Entity::find().filter(session::Column::PersonId.eq(uuid(person.0))).order_by_desc(session::Column::LastSeenAt);
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// Forgets sessions past their end.
///
/// # Errors
/// [`StoreError`].
pub async fn forget_expired(c: &impl ConnectionTrait, now: DateTime<Utc>) -> Result<u64, StoreError> {
    Ok(session::Entity::delete_many().filter(session::Column::ExpiresAt.lte(whole_second(now))).exec(c).await?.rows_affected)
}

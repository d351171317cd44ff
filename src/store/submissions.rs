//! Forms already sent, so that a form sent twice has one effect. Written in the same transaction as the effect.

use chrono::DateTime;
use chrono::Utc;
use domain::ids::PersonId;
use domain::ids::SubmissionKey;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::submission;
use crate::store::error::StoreError;

/// A form that has had its effect.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Submission {
    /// The form's key.
    pub key: SubmissionKey,
    /// Who sent it.
    pub person: PersonId,
    /// SHA-256 of what was sent.
    pub payload_hash: [u8; 32],
    /// The path to show afterwards.
    pub outcome: String,
    /// When.
    pub created_at: DateTime<Utc>,
}

/// The form with this key, if it was sent before.
///
/// # Errors
/// [`StoreError`].
pub async fn find(c: &impl ConnectionTrait, key: SubmissionKey) -> Result<Option<Submission>, StoreError> {
    let Some(row) = submission::Entity::find_by_id(uuid(key.0)).one(c).await? else { return Ok(None) };
    let payload_hash =
        <[u8; 32]>::try_from(row.payload_hash).map_err(|_| StoreError::corrupt("submissions", row.key, "the hash is not 32 bytes"))?;
    Ok(Some(Submission {
        key: SubmissionKey(row.key.as_u128()),
        person: PersonId(row.person_id.as_u128()),
        payload_hash,
        outcome: row.outcome,
        created_at: row.created_at,
    }))
}

/// Remembers a form.
///
/// # Errors
/// [`StoreError::Conflict`] when the key was used before.
pub async fn insert(c: &impl ConnectionTrait, sent: &Submission) -> Result<(), StoreError> {
    let row = submission::Model {
        key: uuid(sent.key.0),
        person_id: uuid(sent.person.0),
        payload_hash: sent.payload_hash.to_vec(),
        outcome: sent.outcome.clone(),
        created_at: whole_second(sent.created_at),
    };
    submission::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// Forgets forms sent before `instant`; answers how many.
///
/// # Errors
/// [`StoreError`].
pub async fn forget_before(c: &impl ConnectionTrait, instant: DateTime<Utc>) -> Result<u64, StoreError> {
    let gone = submission::Entity::delete_many().filter(submission::Column::CreatedAt.lt(whole_second(instant))).exec(c).await?;
    Ok(gone.rows_affected)
}

//! Failed sign-ins by the visitor's address, so that guessing many names from one place is slowed too. It decides no delay.

use chrono::DateTime;
use chrono::Utc;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::sea_query::OnConflict;

use crate::store::codes::whole_second;
use crate::store::entity::sign_in_throttle;
use crate::store::error::StoreError;

/// How an address has fared.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThrottleRecord {
    /// The address, or the part of it that one visitor holds.
    pub address: String,
    /// Failures since the last success.
    pub failures: u32,
    /// No try before this instant.
    pub locked_until: Option<DateTime<Utc>>,
    /// The last failure.
    pub last_failure_at: DateTime<Utc>,
}

/// What is known of an address.
///
/// # Errors
/// [`StoreError`].
pub async fn of_address(c: &impl ConnectionTrait, address: &str) -> Result<Option<ThrottleRecord>, StoreError> {
    let read = |row: sign_in_throttle::Model| ThrottleRecord {
        address: row.address,
        failures: row.failures.unsigned_abs(),
        locked_until: row.locked_until,
        last_failure_at: row.last_failure_at,
    };
    Ok(sign_in_throttle::Entity::find_by_id(address).one(c).await?.map(read))
}

/// Writes what is known of an address.
///
/// # Errors
/// [`StoreError`].
pub async fn set(c: &impl ConnectionTrait, record: &ThrottleRecord) -> Result<(), StoreError> {
    let row = sign_in_throttle::Model {
        address: record.address.clone(),
        failures: i32::try_from(record.failures).unwrap_or(i32::MAX),
        locked_until: record.locked_until.map(whole_second),
        last_failure_at: whole_second(record.last_failure_at),
    };
    let columns = [sign_in_throttle::Column::Failures, sign_in_throttle::Column::LockedUntil, sign_in_throttle::Column::LastFailureAt];
    sign_in_throttle::Entity::insert(row.into_active_model().reset_all())
        .on_conflict(OnConflict::column(sign_in_throttle::Column::Address).update_columns(columns).to_owned())
        .exec_without_returning(c)
        .await?;
    Ok(())
}

/// Forgets an address that signed in.
///
/// # Errors
/// [`StoreError`].
pub async fn clear(c: &impl ConnectionTrait, address: &str) -> Result<(), StoreError> {
    sign_in_throttle::Entity::delete_by_id(address).exec(c).await?;
    Ok(())
}

/// Forgets addresses whose last failure was before `instant`.
///
/// # Errors
/// [`StoreError`].
pub async fn forget_before(c: &impl ConnectionTrait, instant: DateTime<Utc>) -> Result<u64, StoreError> {
    let gone =
        sign_in_throttle::Entity::delete_many().filter(sign_in_throttle::Column::LastFailureAt.lt(whole_second(instant))).exec(c).await?;
    Ok(gone.rows_affected)
}

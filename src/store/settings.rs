//! The programme's settings as plain texts under permanent names. What they mean is decided by those who read them.

use std::collections::BTreeMap;

use sea_orm::ActiveModelTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::sea_query::OnConflict;

use crate::store::entity::setting;
use crate::store::error::StoreError;

/// The programme's name.
pub const PROGRAMME_NAME: &str = "programme_name";
/// IANA name of the time zone that decides the day.
pub const TIME_ZONE: &str = "time_zone";
/// The number to call in danger.
pub const EMERGENCY_NUMBER: &str = "emergency_number";
/// Language of people who have not chosen one.
pub const LANGUAGE: &str = "language";
/// Counts below it are withheld in reports.
pub const SMALL_NUMBER_THRESHOLD: &str = "small_number_threshold";
/// `yes` when all data is invented.
pub const DEMO: &str = "demo";

/// Every setting that has been set.
///
/// # Errors
/// [`StoreError`].
pub async fn all(c: &impl ConnectionTrait) -> Result<BTreeMap<String, String>, StoreError> {
    Ok(setting::Entity::find().all(c).await?.into_iter().map(|row| (row.name, row.value)).collect())
}

/// One setting.
///
/// # Errors
/// [`StoreError`].
pub async fn get(c: &impl ConnectionTrait, name: &str) -> Result<Option<String>, StoreError> {
    Ok(setting::Entity::find_by_id(name).one(c).await?.map(|row| row.value))
}

/// Sets one, whatever it was.
///
/// # Errors
/// [`StoreError`].
pub async fn set(c: &impl ConnectionTrait, name: &str, value: &str) -> Result<(), StoreError> {
    let row = setting::Model { name: name.to_owned(), value: value.to_owned() }.into_active_model().reset_all();
    setting::Entity::insert(row)
        .on_conflict(OnConflict::column(setting::Column::Name).update_column(setting::Column::Value).to_owned())
        .exec_without_returning(c)
        .await?;
    Ok(())
}

/// Takes one back to "not set".
///
/// # Errors
/// [`StoreError`].
pub async fn clear(c: &impl ConnectionTrait, name: &str) -> Result<(), StoreError> {
    setting::Entity::delete_by_id(name).exec(c).await?;
    Ok(())
}

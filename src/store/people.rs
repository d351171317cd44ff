//! People who sign in, whom they supervise and whom they stand in for. It knows no password rule: hashes pass through.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::role::Role;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;

use crate::store::codes::uuid;
use crate::store::entity::cover;
use crate::store::entity::person;
use crate::store::entity::supervised_area;
use crate::store::entity::supervised_worker;
use crate::store::error::StoreError;

/// Somebody who signs in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonRecord {
    /// Key.
    pub id: PersonId,
    /// The name typed at sign-in, in small letters.
    pub sign_in_name: String,
    /// The name people call them by.
    pub full_name: String,
    /// What they are in the programme.
    pub role: Role,
    /// Chosen language, `None` = the programme's.
    pub language: Option<String>,
    /// Phone.
    pub phone: Option<String>,
    /// PHC string; `None` until a first password is set.
    pub password_hash: Option<String>,
    /// Must choose a new password at the next sign-in.
    pub must_change_password: bool,
    /// Hash of a one-time code handed over in person.
    pub one_time_code_hash: Option<String>,
    /// When that code ends.
    pub one_time_code_expires_at: Option<DateTime<Utc>>,
    /// May sign in.
    pub active: bool,
    /// First day in the programme.
    pub started_on: NaiveDate,
    /// Last day in the programme.
    pub ended_on: Option<NaiveDate>,
    /// Wrong passwords since the last right one.
    pub failed_sign_ins: u32,
    /// No sign-in before this instant.
    pub locked_until: Option<DateTime<Utc>>,
    /// When the row was made.
    pub created_at: DateTime<Utc>,
}

impl PersonRecord {
    /// Whether they may be given work on a day: active, and their last day is not over.
    #[must_use]
    pub fn works_on(&self, day: NaiveDate) -> bool {
        self.active && self.ended_on.is_none_or(|last| last >= day)
    }
}

/// A colleague standing in for a worker, both days included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CoverRecord {
    /// Key.
    pub id: u128,
    /// Who is away.
    pub worker: PersonId,
    /// Who stands in.
    pub covered_by: PersonId,
    /// First day.
    pub from_on: NaiveDate,
    /// Last day.
    pub to_on: NaiveDate,
}

/// Adds a person.
///
/// # Errors
/// [`StoreError::Conflict`] when the sign-in name is taken.
pub async fn insert(c: &impl ConnectionTrait, person: &PersonRecord) -> Result<(), StoreError> {
    person::Entity::insert(person::Model::from(person).into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// Writes everything about a person anew.
///
/// # Errors
/// [`StoreError::Conflict`] when the sign-in name is taken.
pub async fn update(c: &impl ConnectionTrait, person: &PersonRecord) -> Result<(), StoreError> {
    let row = person::Model::from(person).into_active_model().reset_all();
    person::Entity::update_many().set(row).filter(person::Column::Id.eq(uuid(person.id.0))).exec(c).await?;
    Ok(())
}

/// The person with this key.
///
/// # Errors
/// [`StoreError`].
pub async fn by_id(c: &impl ConnectionTrait, id: PersonId) -> Result<Option<PersonRecord>, StoreError> {
    person::Entity::find_by_id(uuid(id.0)).one(c).await?.map(TryInto::try_into).transpose()
}

/// The names of these people.
///
/// # Errors
/// [`StoreError`].
pub async fn names(c: &impl ConnectionTrait, ids: &[PersonId]) -> Result<std::collections::BTreeMap<PersonId, String>, StoreError> {
    let query = person::Entity::find().filter(person::Column::Id.is_in(ids.iter().map(|id| uuid(id.0))));
    Ok(query.all(c).await?.into_iter().map(|row| (PersonId(row.id.as_u128()), row.full_name)).collect())
}

/// These people.
///
/// # Errors
/// [`StoreError`].
pub async fn by_ids(c: &impl ConnectionTrait, ids: &[PersonId]) -> Result<std::collections::BTreeMap<PersonId, PersonRecord>, StoreError> {
    let query = person::Entity::find().filter(person::Column::Id.is_in(ids.iter().map(|id| uuid(id.0))));
    query.all(c).await?.into_iter().map(|row| PersonRecord::try_from(row).map(|person| (person.id, person))).collect()
}

/// The person who signs in with this name (small letters).
///
/// # Errors
/// [`StoreError`].
pub async fn by_sign_in_name(c: &impl ConnectionTrait, name: &str) -> Result<Option<PersonRecord>, StoreError> {
    person::Entity::find().filter(person::Column::SignInName.eq(name)).one(c).await?.map(TryInto::try_into).transpose()
}

/// A page of people by sign-in name, from after `after`.
///
/// # Errors
/// [`StoreError`].
pub async fn list(c: &impl ConnectionTrait, after: Option<&str>, limit: u64) -> Result<Vec<PersonRecord>, StoreError> {
    let mut query = person::Entity::find().order_by_asc(person::Column::SignInName).limit(limit);
    if let Some(after) = after {
        query = query.filter(person::Column::SignInName.gt(after));
    }
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// Active people of a role by name. A programme has hundreds at most.
///
/// # Errors
/// [`StoreError`].
pub async fn active_of_role(c: &impl ConnectionTrait, role: Role) -> Result<Vec<PersonRecord>, StoreError> {
    let query = person::Entity::find()
        .filter(person::Column::Role.eq(role.code()))
        .filter(person::Column::Active.eq(true))
        .order_by_asc(person::Column::FullName)
        .order_by_asc(person::Column::Id);
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// Replaces what a supervisor is assigned.
///
/// # Errors
/// [`StoreError`].
pub async fn assign(c: &impl ConnectionTrait, supervisor: PersonId, areas: &[AreaId], workers: &[PersonId]) -> Result<(), StoreError> {
    let id = uuid(supervisor.0);
    supervised_area::Entity::delete_many().filter(supervised_area::Column::PersonId.eq(id)).exec(c).await?;
    supervised_worker::Entity::delete_many().filter(supervised_worker::Column::PersonId.eq(id)).exec(c).await?;
    for area in areas {
        let row = supervised_area::Model { person_id: id, area_id: uuid(area.0) };
        supervised_area::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    }
    for worker in workers {
        let row = supervised_worker::Model { person_id: id, worker_id: uuid(worker.0) };
        supervised_worker::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    }
    Ok(())
}

/// The areas and workers assigned to a supervisor.
///
/// # Errors
/// [`StoreError`].
pub async fn assigned(c: &impl ConnectionTrait, supervisor: PersonId) -> Result<(Vec<AreaId>, Vec<PersonId>), StoreError> {
    let id = uuid(supervisor.0);
    let areas = supervised_area::Entity::find().filter(supervised_area::Column::PersonId.eq(id)).all(c).await?;
    let workers = supervised_worker::Entity::find().filter(supervised_worker::Column::PersonId.eq(id)).all(c).await?;
    Ok((
        areas.into_iter().map(|row| AreaId(row.area_id.as_u128())).collect(),
        workers.into_iter().map(|row| PersonId(row.worker_id.as_u128())).collect(),
    ))
}

/// Lets a colleague stand in.
///
/// # Errors
/// [`StoreError`].
pub async fn insert_cover(c: &impl ConnectionTrait, cover: &CoverRecord) -> Result<(), StoreError> {
    let row = cover::Model {
        id: uuid(cover.id),
        worker_id: uuid(cover.worker.0),
        covered_by: uuid(cover.covered_by.0),
        from_on: cover.from_on,
        to_on: cover.to_on,
    };
    cover::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// Covers that touch this day or come later, by first day.
///
/// # Errors
/// [`StoreError`].
pub async fn covers_from(c: &impl ConnectionTrait, day: NaiveDate) -> Result<Vec<CoverRecord>, StoreError> {
    let rows = cover::Entity::find()
        .filter(cover::Column::ToOn.gte(day))
        .order_by_asc(cover::Column::FromOn)
        .order_by_asc(cover::Column::Id)
        .all(c)
        .await?;
    Ok(rows
        .into_iter()
        .map(|row| CoverRecord {
            id: row.id.as_u128(),
            worker: PersonId(row.worker_id.as_u128()),
            covered_by: PersonId(row.covered_by.as_u128()),
            from_on: row.from_on,
            to_on: row.to_on,
        })
        .collect())
}

/// Takes a cover back.
///
/// # Errors
/// [`StoreError`].
pub async fn delete_cover(c: &impl ConnectionTrait, id: u128) -> Result<(), StoreError> {
    cover::Entity::delete_by_id(uuid(id)).exec(c).await?;
    Ok(())
}

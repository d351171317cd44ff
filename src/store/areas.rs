//! Villages and other areas. It knows nothing of children.

use domain::ids::AreaId;
use sea_orm::ActiveModelTrait;
use sea_orm::ActiveValue::Set;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;

use crate::store::codes::uuid;
use crate::store::entity::area;
use crate::store::error::StoreError;

/// An area.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AreaRecord {
    /// Key.
    pub id: AreaId,
    /// Permanent short code, as in exports.
    pub code: String,
    /// Name as people say it.
    pub name: String,
    /// The area it lies in.
    pub parent: Option<AreaId>,
    /// Whether children may be registered there.
    pub active: bool,
    /// Minutes of walking that a visit there takes, there and back, on average; `None` = nobody has said.
    pub walk_minutes: Option<u16>,
}

impl From<area::Model> for AreaRecord {
    fn from(row: area::Model) -> Self {
        Self {
            id: AreaId(row.id.as_u128()),
            code: row.code,
            name: row.name,
            parent: row.parent_id.map(|id| AreaId(id.as_u128())),
            active: row.active,
            walk_minutes: row.walk_minutes.and_then(|minutes| u16::try_from(minutes).ok()),
        }
    }
}

fn row(area: &AreaRecord) -> area::ActiveModel {
    area::Model {
        id: uuid(area.id.0),
        code: area.code.clone(),
        name: area.name.clone(),
        parent_id: area.parent.map(|id| uuid(id.0)),
        active: area.active,
        walk_minutes: area.walk_minutes.map(i32::from),
    }
    .into_active_model()
    .reset_all()
}

/// Adds an area.
///
/// # Errors
/// [`StoreError::Conflict`] when the code is taken.
pub async fn insert(c: &impl ConnectionTrait, area: &AreaRecord) -> Result<(), StoreError> {
    area::Entity::insert(row(area)).exec_without_returning(c).await?;
    Ok(())
}

/// Changes name, code, parent, the way, or whether it is in use.
///
/// # Errors
/// [`StoreError::Conflict`] when the code is taken.
pub async fn update(c: &impl ConnectionTrait, area: &AreaRecord) -> Result<(), StoreError> {
    let mut changed = row(area);
    changed.id = Set(uuid(area.id.0));
    area::Entity::update_many().set(changed).filter(area::Column::Id.eq(uuid(area.id.0))).exec(c).await?;
    Ok(())
}

/// All areas by name. A programme has tens of them.
///
/// # Errors
/// [`StoreError`].
pub async fn list(c: &impl ConnectionTrait) -> Result<Vec<AreaRecord>, StoreError> {
    Ok(area::Entity::find()
        .order_by_asc(area::Column::Name)
        .order_by_asc(area::Column::Code)
        .all(c)
        .await?
        .into_iter()
        .map(Into::into)
        .collect())
}

/// The area with this code.
///
/// # Errors
/// [`StoreError`].
pub async fn by_code(c: &impl ConnectionTrait, code: &str) -> Result<Option<AreaRecord>, StoreError> {
    Ok(area::Entity::find().filter(area::Column::Code.eq(code)).one(c).await?.map(Into::into))
}

/// The area with this key.
///
/// # Errors
/// [`StoreError`].
pub async fn by_id(c: &impl ConnectionTrait, id: AreaId) -> Result<Option<AreaRecord>, StoreError> {
    Ok(area::Entity::find_by_id(uuid(id.0)).one(c).await?.map(Into::into))
}

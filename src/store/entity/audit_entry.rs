//! The table `audit`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "audit")]
pub struct Model {
    #[sea_orm(primary_key)]
    pub seq: i64,
    pub at: DateTimeUtc,
    pub actor: Option<Uuid>,
    pub action: String,
    pub object_kind: String,
    pub object_id: String,
    pub fields: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

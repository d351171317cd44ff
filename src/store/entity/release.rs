//! The table `releases`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "releases")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub period: String,
    #[sea_orm(primary_key, auto_increment = false)]
    pub revision: i32,
    pub released_at: DateTimeUtc,
    pub released_by: Option<Uuid>,
    pub programme: String,
    pub protocol_id: String,
    pub protocol_version: String,
    pub definitions_version: String,
    pub threshold: i32,
    pub body: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

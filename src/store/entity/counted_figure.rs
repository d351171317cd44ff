//! The table `counted_figures`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "counted_figures")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub period: String,
    pub mark: String,
    pub counted_at: DateTimeUtc,
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

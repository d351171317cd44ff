//! The table `visit_versions`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visit_versions")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub version: i32,
    pub content: String,
    pub recorded_by: Uuid,
    pub recorded_at: DateTimeUtc,
    pub reason: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

//! The table `record_corrections`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "record_corrections")]
pub struct Model {
    #[sea_orm(primary_key)]
    pub seq: i64,
    pub kind: String,
    pub child_id: Uuid,
    pub to_child_id: Option<Uuid>,
    pub visit_id: Option<Uuid>,
    pub from_on: Date,
    pub reason: String,
    pub note: String,
    pub by_person: Uuid,
    pub at: DateTimeUtc,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

//! The table `household_members`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "household_members")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub child_id: Uuid,
    pub household_id: Uuid,
    pub by_person: Uuid,
    pub at: DateTimeUtc,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

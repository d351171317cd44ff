//! The table `visit_lines`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visit_lines")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub line_key: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

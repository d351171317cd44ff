//! The table `visit_steps`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visit_steps")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub place: i32,
    pub line_key: Option<String>,
    pub rule: Option<String>,
    pub words: Option<String>,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

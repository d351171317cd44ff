//! The table `visit_steps_told`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visit_steps_told")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub of_visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub of_place: i32,
    pub answer: Option<String>,
    pub in_the_way: Option<String>,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

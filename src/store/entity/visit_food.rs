//! The table `visit_foods`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visit_foods")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub visit_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub seq: i32,
    pub food_code: String,
    pub offers: i32,
    pub response: Option<String>,
    pub unsafe_form: Option<bool>,
    pub signs: Option<String>,
    pub minutes_after: Option<i32>,
    pub hold_lifted: bool,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

//! The table `follow_up_events`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "follow_up_events")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub follow_up_id: Uuid,
    #[sea_orm(primary_key, auto_increment = false)]
    pub seq: i32,
    pub area_id: Uuid,
    pub at: DateTimeUtc,
    pub on_date: Date,
    pub kind: String,
    pub class: String,
    pub due_on: Date,
    pub visit_id: Option<Uuid>,
    pub by_person: Option<Uuid>,
    pub reason: Option<String>,
    pub note: Option<String>,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

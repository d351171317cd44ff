//! The table `follow_ups`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "follow_ups")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub id: Uuid,
    pub child_id: Uuid,
    pub area_id: Uuid,
    pub worker_id: Uuid,
    pub rule: String,
    pub class: String,
    pub opened_by_visit: Uuid,
    pub opened_on: Date,
    pub due_on: Date,
    pub last_fired_on: Date,
    pub last_fired_visit: Uuid,
    pub state: String,
    pub close_reason: Option<String>,
    pub closed_on: Option<Date>,
    pub closed_by: Option<Uuid>,
    pub close_category: Option<String>,
    pub close_note: Option<String>,
    pub replaced_by_rule: Option<String>,
    pub evidence: String,
    pub also_true: String,
    pub protocol_id: String,
    pub protocol_version: String,
    pub first_followed_up_on: Option<Date>,
    pub first_followed_up_due: Option<Date>,
    pub first_outcome_on: Option<Date>,
    pub referred_on: Option<Date>,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

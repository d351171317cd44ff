//! The table `child_summaries`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "child_summaries")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub child_id: Uuid,
    pub area_id: Uuid,
    pub worker_id: Uuid,
    pub born: Date,
    pub status: String,
    pub name_key: String,
    pub work_key: String,
    pub top_class: Option<String>,
    pub top_rule: Option<String>,
    pub top_due_on: Option<Date>,
    pub top_evidence: Option<String>,
    pub open_count: i32,
    pub urgent_unanswered_since: Option<Date>,
    pub referral_due_on: Option<Date>,
    pub slot_target: Option<Date>,
    pub slot_opens: Option<Date>,
    pub slot_closes: Option<Date>,
    pub overdue_since: Option<Date>,
    pub hold_since: Option<Date>,
    pub last_seen_on: Option<Date>,
    pub last_weight_g: Option<i32>,
    pub last_weight_on: Option<Date>,
    pub last_waz_h: Option<i32>,
    pub next_change_on: Option<Date>,
    pub assessed_on: Date,
    pub protocol_version: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

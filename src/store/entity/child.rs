//! The table `children`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "children")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub id: Uuid,
    pub code: String,
    pub name: String,
    pub known_as: Option<String>,
    pub name_key: String,
    pub sex: String,
    pub born: Date,
    pub birth_day_known: bool,
    pub birth_weight_g: Option<i32>,
    pub gestation_days: Option<i32>,
    pub gestation_source: String,
    pub caregiver_name: String,
    pub caregiver_relation: Option<String>,
    pub phone: Option<String>,
    pub directions: Option<String>,
    pub area_id: Uuid,
    pub worker_id: Uuid,
    pub registered_on: Date,
    pub registered_by: Uuid,
    pub recorded_at: DateTimeUtc,
    pub consent_on: Date,
    pub consent_by: String,
    pub ever_breastfed: Option<bool>,
    pub early_breastfeeding: Option<bool>,
    pub first_two_days_milk_only: Option<bool>,
    pub severe_eczema: Option<bool>,
    pub known_food_allergy: Option<bool>,
    pub returns_to_work_on: Option<Date>,
    pub looks_like_id: Option<Uuid>,
    pub different_child_decided: bool,
    pub status: String,
    pub left_on: Option<Date>,
    pub left_note: Option<String>,
    pub version: i32,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

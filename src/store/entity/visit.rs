//! The table `visits`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "visits")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub id: Uuid,
    pub entry_seq: i64,
    pub child_id: Uuid,
    pub area_id: Uuid,
    pub worker_id: Uuid,
    pub recorded_by: Uuid,
    pub sex: String,
    pub age_days: i32,
    pub visited_on: Date,
    pub recorded_at: DateTimeUtc,
    pub version: i32,
    pub voided_at: Option<DateTimeUtc>,
    pub contact: String,
    pub weight_g: Option<i32>,
    pub length_mm: Option<i32>,
    pub position: Option<String>,
    pub muac_mm: Option<i32>,
    pub head_mm: Option<i32>,
    pub oedema: Option<bool>,
    pub confirmed: String,
    pub danger_signs: Option<String>,
    pub readiness_signs: Option<String>,
    pub ill: Option<bool>,
    pub breastfed: Option<bool>,
    pub breast_only: Option<bool>,
    pub breastfeeding_trouble: Option<bool>,
    pub formula_times: Option<i32>,
    pub animal_milk_times: Option<i32>,
    pub drink_yogurt_times: Option<i32>,
    pub spoon_yogurt_times: Option<i32>,
    pub other_drink: Option<bool>,
    pub solids_started_on: Option<Date>,
    pub solids_yesterday: Option<bool>,
    pub meals: Option<i32>,
    pub texture_usual: Option<i32>,
    pub texture_best: Option<i32>,
    pub recipes: Option<String>,
    pub food_groups: Option<String>,
    pub iron_source: Option<bool>,
    pub sweet_drink: Option<bool>,
    pub unhealthy_food: Option<bool>,
    pub bottle: Option<bool>,
    pub low_value: Option<String>,
    pub swallow_trouble: Option<String>,
    pub appetite_poor_days: Option<i32>,
    pub plans: Option<String>,
    pub referrals: String,
    pub note: Option<String>,
    pub waz_h: Option<i32>,
    pub laz_h: Option<i32>,
    pub wlz_h: Option<i32>,
    pub bmiz_h: Option<i32>,
    pub mauz_h: Option<i32>,
    pub hcz_h: Option<i32>,
    pub suspect: String,
    pub protocol_id: String,
    pub protocol_version: String,
    pub stage: String,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

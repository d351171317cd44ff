//! The table `people`, column for column.

use sea_orm::entity::prelude::*;

#[derive(Clone, Debug, PartialEq, Eq, DeriveEntityModel)]
#[sea_orm(table_name = "people")]
pub struct Model {
    #[sea_orm(primary_key, auto_increment = false)]
    pub id: Uuid,
    pub sign_in_name: String,
    pub full_name: String,
    pub role: String,
    pub language: Option<String>,
    pub phone: Option<String>,
    pub password_hash: Option<String>,
    pub must_change_password: bool,
    pub one_time_code_hash: Option<String>,
    pub one_time_code_expires_at: Option<DateTimeUtc>,
    pub active: bool,
    pub started_on: Date,
    pub ended_on: Option<Date>,
    pub failed_sign_ins: i32,
    pub locked_until: Option<DateTimeUtc>,
    pub created_at: DateTimeUtc,
}

#[derive(Copy, Clone, Debug, EnumIter, DeriveRelation)]
pub enum Relation {}

impl ActiveModelBehavior for ActiveModel {}

//! Which recipes of the programme a child ate, as named at a visit. What they hold is kept in the answers of the visit as well.

use sea_orm_migration::prelude::*;

use crate::words;

const COLUMN: &str = "
ALTER TABLE visits ADD COLUMN
  recipes TEXT
;
";

#[derive(DeriveMigrationName)]
pub struct Migration;

#[async_trait::async_trait]
impl MigrationTrait for Migration {
    fn use_transaction(&self) -> Option<bool> {
        Some(true)
    }

    async fn up(&self, manager: &SchemaManager) -> Result<(), DbErr> {
        words::run(manager, COLUMN).await
    }
}

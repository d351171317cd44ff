//! How long the way to the homes of an area is, so that whoever gives children to a colleague sees the hours of walking.

use sea_orm_migration::prelude::*;

use crate::words;

const COLUMN: &str = "
ALTER TABLE areas ADD COLUMN
  walk_minutes INTEGER CHECK (walk_minutes BETWEEN 0 AND 600)
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

//! Why a protocol was adopted, in words.

use sea_orm_migration::prelude::*;

use crate::words;

const COLUMN: &str = "
ALTER TABLE protocols ADD COLUMN reason TEXT NOT NULL DEFAULT '';
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

//! A child's line knows since when its oldest food on hold waits, so that a supervisor can be shown what nobody came back to.

use sea_orm_migration::prelude::*;

use crate::words;

/// Lines made before know nothing of it: the next daily tick makes them anew.
const COLUMN: &str = "
ALTER TABLE child_summaries ADD COLUMN
  hold_since !date
;
CREATE INDEX child_summaries_by_hold ON child_summaries (hold_since, child_id);
UPDATE child_summaries SET next_change_on = assessed_on WHERE next_change_on IS NOT NULL;
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

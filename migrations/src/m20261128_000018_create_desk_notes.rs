//! What a supervisor writes to the worker about a child, and a visit they make together.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE desk_notes (
  id !uuid NOT NULL PRIMARY KEY,
  child_id !uuid NOT NULL REFERENCES children (id),
  by_person !uuid NOT NULL REFERENCES people (id),
  at !instant NOT NULL,
  words TEXT NOT NULL,
  together_on !date,
  done_by !uuid REFERENCES people (id),
  done_at !instant,
  CHECK ((done_by IS NULL) = (done_at IS NULL))
);
CREATE INDEX desk_notes_open_by_child ON desk_notes (child_id) WHERE done_at IS NULL;
";

#[derive(DeriveMigrationName)]
pub struct Migration;

#[async_trait::async_trait]
impl MigrationTrait for Migration {
    fn use_transaction(&self) -> Option<bool> {
        Some(true)
    }

    async fn up(&self, manager: &SchemaManager) -> Result<(), DbErr> {
        words::run(manager, TABLES).await
    }
}

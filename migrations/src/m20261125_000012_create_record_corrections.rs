//! Corrections of the record itself: a visit taken back, a visit moved to another child, two records of one child merged.
//! Who, when, why, from where to where; it only grows.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE record_corrections (
  seq !counter,
  kind TEXT NOT NULL CHECK (kind IN ('void', 'move', 'merge')),
  child_id !uuid NOT NULL REFERENCES children (id),
  to_child_id !uuid REFERENCES children (id),
  visit_id !uuid REFERENCES visits (id),
  from_on !date NOT NULL,
  reason TEXT NOT NULL,
  note TEXT NOT NULL,
  by_person !uuid NOT NULL REFERENCES people (id),
  at !instant NOT NULL,
  CHECK ((kind = 'void') = (to_child_id IS NULL)),
  CHECK ((kind = 'merge') = (visit_id IS NULL)),
  CHECK (to_child_id <> child_id)
);
CREATE INDEX record_corrections_by_child ON record_corrections (child_id, seq);
CREATE INDEX record_corrections_by_other ON record_corrections (to_child_id, seq);
CREATE UNIQUE INDEX record_corrections_one_merge ON record_corrections (child_id) WHERE kind = 'merge';
";

#[derive(DeriveMigrationName)]
pub struct Migration;

#[async_trait::async_trait]
impl MigrationTrait for Migration {
    fn use_transaction(&self) -> Option<bool> {
        Some(true)
    }

    async fn up(&self, manager: &SchemaManager) -> Result<(), DbErr> {
        words::run(manager, TABLES).await?;
        words::append_only(manager, "record_corrections").await
    }
}

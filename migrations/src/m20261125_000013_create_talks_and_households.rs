//! What was talked about at a visit: lines told, steps agreed, what became of earlier steps; and which children live in one home.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE visit_lines (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  line_key TEXT NOT NULL CHECK (length(line_key) > 0),
  PRIMARY KEY (visit_id, line_key)
);

CREATE TABLE visit_steps (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  place INTEGER NOT NULL CHECK (place BETWEEN 1 AND 3),
  line_key TEXT,
  rule TEXT,
  words TEXT CHECK (length(words) > 0),
  PRIMARY KEY (visit_id, place),
  CHECK (line_key IS NULL OR rule IS NULL),
  CHECK (line_key IS NOT NULL OR rule IS NOT NULL OR words IS NOT NULL)
);

CREATE TABLE visit_steps_told (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  of_visit_id !uuid NOT NULL REFERENCES visits (id),
  of_place INTEGER NOT NULL CHECK (of_place BETWEEN 1 AND 3),
  answer TEXT CHECK (answer IN ('done', 'partly', 'not')),
  in_the_way TEXT CHECK (length(in_the_way) > 0),
  PRIMARY KEY (visit_id, of_visit_id, of_place),
  CHECK (answer IS NOT NULL OR in_the_way IS NOT NULL)
);
CREATE INDEX visit_steps_told_by_step ON visit_steps_told (of_visit_id, of_place);

CREATE TABLE household_members (
  child_id !uuid NOT NULL PRIMARY KEY REFERENCES children (id),
  household_id !uuid NOT NULL,
  by_person !uuid NOT NULL REFERENCES people (id),
  at !instant NOT NULL
);
CREATE INDEX household_members_by_household ON household_members (household_id);
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

//! The figures of months, quarters and years: each revision as it was released, which only grows, and as they were last counted.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE releases (
  period TEXT NOT NULL CHECK (length(period) >= 4),
  revision INTEGER NOT NULL CHECK (revision >= 0),
  released_at !instant NOT NULL,
  released_by !uuid REFERENCES people (id),
  programme TEXT NOT NULL,
  protocol_id TEXT NOT NULL,
  protocol_version TEXT NOT NULL,
  definitions_version TEXT NOT NULL,
  threshold INTEGER NOT NULL CHECK (threshold >= 5),
  body TEXT NOT NULL,
  PRIMARY KEY (period, revision)
);

CREATE TABLE counted_figures (
  period TEXT NOT NULL CHECK (length(period) >= 4),
  mark TEXT NOT NULL,
  counted_at !instant NOT NULL,
  programme TEXT NOT NULL,
  protocol_id TEXT NOT NULL,
  protocol_version TEXT NOT NULL,
  definitions_version TEXT NOT NULL,
  threshold INTEGER NOT NULL CHECK (threshold >= 5),
  body TEXT NOT NULL,
  PRIMARY KEY (period)
);
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
        words::append_only(manager, "releases").await
    }
}

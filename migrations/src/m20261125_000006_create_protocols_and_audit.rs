//! Adopted protocols as they were, and who did what, which only grows.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE protocols (
  id TEXT NOT NULL,
  version TEXT NOT NULL,
  body TEXT NOT NULL,
  effective_from !date NOT NULL,
  adopted_at !instant NOT NULL,
  adopted_by !uuid REFERENCES people (id),
  approved_by TEXT NOT NULL,
  PRIMARY KEY (id, version)
);

CREATE TABLE audit (
  seq !counter,
  at !instant NOT NULL,
  actor !uuid REFERENCES people (id),
  action TEXT NOT NULL CHECK (length(action) > 0),
  object_kind TEXT NOT NULL,
  object_id TEXT NOT NULL,
  fields TEXT NOT NULL
);
CREATE INDEX audit_by_object ON audit (object_kind, object_id, seq);
CREATE INDEX audit_by_actor ON audit (actor, seq);
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
        words::append_only(manager, "protocols").await?;
        words::append_only(manager, "audit").await
    }
}

//! One row a child for lists, worked out from visits and follow-ups; it can be made again at any time.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE child_summaries (
  child_id !uuid PRIMARY KEY REFERENCES children (id),
  area_id !uuid NOT NULL REFERENCES areas (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  born !date NOT NULL,
  status TEXT NOT NULL,
  name_key TEXT NOT NULL,
  work_key TEXT NOT NULL,
  top_class TEXT CHECK (top_class IN ('now', 'today', 'two_days', 'week', 'fortnight', 'month')),
  top_rule TEXT,
  top_due_on !date,
  top_evidence TEXT,
  open_count INTEGER NOT NULL CHECK (open_count >= 0),
  urgent_unanswered_since !date,
  referral_due_on !date,
  slot_target !date,
  slot_opens !date,
  slot_closes !date,
  overdue_since !date,
  last_seen_on !date,
  last_weight_g INTEGER,
  last_weight_on !date,
  last_waz_h INTEGER,
  next_change_on !date,
  assessed_on !date NOT NULL,
  protocol_version TEXT NOT NULL,
  CHECK ((top_class IS NULL) = (top_rule IS NULL)),
  CHECK ((top_class IS NULL) = (top_due_on IS NULL))
);
CREATE INDEX child_summaries_by_worker ON child_summaries (worker_id, work_key);
CREATE INDEX child_summaries_by_area ON child_summaries (area_id, work_key);
CREATE INDEX child_summaries_by_work ON child_summaries (work_key);
CREATE INDEX child_summaries_by_change ON child_summaries (next_change_on, child_id);
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

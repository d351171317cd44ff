//! Follow-ups of a child and their history, which only grows.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE follow_ups (
  id !uuid PRIMARY KEY,
  child_id !uuid NOT NULL REFERENCES children (id),
  area_id !uuid NOT NULL REFERENCES areas (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  rule TEXT NOT NULL,
  class TEXT NOT NULL CHECK (class IN ('now', 'today', 'two_days', 'week', 'fortnight', 'month')),
  opened_by_visit !uuid NOT NULL REFERENCES visits (id),
  opened_on !date NOT NULL,
  due_on !date NOT NULL,
  last_fired_on !date NOT NULL,
  last_fired_visit !uuid NOT NULL REFERENCES visits (id),
  state TEXT NOT NULL CHECK (state IN ('open', 'done', 'closed_by_supervisor', 'ended')),
  close_reason TEXT CHECK (close_reason IN ('resolved_by_visit', 'seen_outcome_recorded', 'in_care_elsewhere', 'record_corrected', 'replaced', 'supervisor_decision', 'transferred_out', 'moved', 'consent_withdrawn', 'aged_out', 'refused', 'died')),
  closed_on !date,
  closed_by !uuid REFERENCES people (id),
  close_category TEXT,
  close_note TEXT,
  replaced_by_rule TEXT,
  evidence TEXT NOT NULL,
  also_true TEXT NOT NULL,
  protocol_id TEXT NOT NULL,
  protocol_version TEXT NOT NULL,
  first_followed_up_on !date,
  first_followed_up_due !date,
  first_outcome_on !date,
  referred_on !date,
  UNIQUE (child_id, rule, opened_by_visit),
  CHECK ((state = 'open') = (close_reason IS NULL)),
  CHECK ((state = 'open') = (closed_on IS NULL)),
  CHECK (state <> 'closed_by_supervisor' OR (closed_by IS NOT NULL AND close_note IS NOT NULL AND close_category IS NOT NULL))
);
CREATE UNIQUE INDEX follow_ups_one_open ON follow_ups (child_id, rule) WHERE state = 'open';
CREATE INDEX follow_ups_open_by_worker ON follow_ups (worker_id, due_on, id) WHERE state = 'open';
CREATE INDEX follow_ups_open_by_area ON follow_ups (area_id, due_on, id) WHERE state = 'open';
CREATE INDEX follow_ups_by_opening ON follow_ups (opened_on, area_id);

CREATE TABLE follow_up_events (
  follow_up_id !uuid NOT NULL REFERENCES follow_ups (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  area_id !uuid NOT NULL REFERENCES areas (id),
  at !instant NOT NULL,
  on_date !date NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('opened', 'refreshed', 'raised', 'changed', 'outcome', 'closed', 'reopened')),
  class TEXT NOT NULL CHECK (class IN ('now', 'today', 'two_days', 'week', 'fortnight', 'month')),
  due_on !date NOT NULL,
  visit_id !uuid REFERENCES visits (id),
  by_person !uuid REFERENCES people (id),
  reason TEXT,
  note TEXT,
  PRIMARY KEY (follow_up_id, seq)
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
        words::append_only(manager, "follow_up_events").await
    }
}

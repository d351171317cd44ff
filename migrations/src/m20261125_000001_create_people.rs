//! Settings, areas, and the people who sign in: who works where, who stands in for whom, sessions, sent forms.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE settings (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL
);

CREATE TABLE areas (
  id !uuid PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) BETWEEN 1 AND 40),
  name TEXT NOT NULL CHECK (length(name) > 0),
  parent_id !uuid REFERENCES areas (id),
  active !bool NOT NULL
);

CREATE TABLE people (
  id !uuid PRIMARY KEY,
  sign_in_name TEXT NOT NULL UNIQUE CHECK (length(sign_in_name) > 0 AND sign_in_name = lower(sign_in_name)),
  full_name TEXT NOT NULL CHECK (length(full_name) > 0),
  role TEXT NOT NULL CHECK (role IN ('worker', 'supervisor', 'manager', 'administrator')),
  language TEXT,
  phone TEXT,
  password_hash TEXT,
  must_change_password !bool NOT NULL,
  one_time_code_hash TEXT,
  one_time_code_expires_at !instant,
  active !bool NOT NULL,
  started_on !date NOT NULL,
  ended_on !date,
  failed_sign_ins INTEGER NOT NULL CHECK (failed_sign_ins >= 0),
  locked_until !instant,
  created_at !instant NOT NULL
);

CREATE TABLE supervised_areas (
  person_id !uuid NOT NULL REFERENCES people (id),
  area_id !uuid NOT NULL REFERENCES areas (id),
  PRIMARY KEY (person_id, area_id)
);

CREATE TABLE supervised_workers (
  person_id !uuid NOT NULL REFERENCES people (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  PRIMARY KEY (person_id, worker_id)
);

CREATE TABLE covers (
  id !uuid PRIMARY KEY,
  worker_id !uuid NOT NULL REFERENCES people (id),
  covered_by !uuid NOT NULL REFERENCES people (id),
  from_on !date NOT NULL,
  to_on !date NOT NULL,
  CHECK (to_on >= from_on),
  CHECK (worker_id <> covered_by)
);
CREATE INDEX covers_by_colleague ON covers (covered_by, from_on, to_on);

CREATE TABLE sessions (
  key_hash !bytes PRIMARY KEY CHECK (length(key_hash) = 32),
  person_id !uuid NOT NULL REFERENCES people (id),
  created_at !instant NOT NULL,
  last_seen_at !instant NOT NULL,
  expires_at !instant NOT NULL
);
CREATE INDEX sessions_by_person ON sessions (person_id);
CREATE INDEX sessions_by_expiry ON sessions (expires_at);

CREATE TABLE submissions (
  key !uuid PRIMARY KEY,
  person_id !uuid NOT NULL REFERENCES people (id),
  payload_hash !bytes NOT NULL CHECK (length(payload_hash) = 32),
  outcome TEXT NOT NULL,
  created_at !instant NOT NULL
);
CREATE INDEX submissions_by_age ON submissions (created_at);

CREATE TABLE sign_in_throttle (
  address TEXT PRIMARY KEY,
  failures INTEGER NOT NULL CHECK (failures >= 0),
  locked_until !instant,
  last_failure_at !instant NOT NULL
);
CREATE INDEX sign_in_throttle_by_age ON sign_in_throttle (last_failure_at);
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

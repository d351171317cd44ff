//! Children, the history of their area and worker, and how their status changed.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE children (
  id !uuid PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) BETWEEN 4 AND 20),
  name TEXT NOT NULL CHECK (length(name) > 0),
  known_as TEXT,
  name_key TEXT NOT NULL,
  sex TEXT NOT NULL CHECK (sex IN ('F', 'M')),
  born !date NOT NULL,
  birth_day_known !bool NOT NULL,
  birth_weight_g INTEGER CHECK (birth_weight_g > 0),
  gestation_days INTEGER CHECK (gestation_days > 0),
  gestation_source TEXT NOT NULL CHECK (gestation_source IN ('scan', 'card', 'last_period', 'family', 'unknown')),
  caregiver_name TEXT NOT NULL,
  caregiver_relation TEXT,
  phone TEXT,
  directions TEXT,
  area_id !uuid NOT NULL REFERENCES areas (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  registered_on !date NOT NULL,
  registered_by !uuid NOT NULL REFERENCES people (id),
  recorded_at !instant NOT NULL,
  consent_on !date NOT NULL,
  consent_by TEXT NOT NULL,
  ever_breastfed !bool,
  early_breastfeeding !bool,
  first_two_days_milk_only !bool,
  severe_eczema !bool,
  known_food_allergy !bool,
  returns_to_work_on !date,
  looks_like_id !uuid REFERENCES children (id),
  different_child_decided !bool NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('active', 'transferred_out', 'moved', 'died', 'consent_withdrawn', 'aged_out', 'refused')),
  left_on !date,
  left_note TEXT,
  version INTEGER NOT NULL CHECK (version >= 1),
  CHECK ((status = 'active') = (left_on IS NULL)),
  CHECK (registered_on >= born)
);
CREATE INDEX children_by_area ON children (area_id, name_key, code);
CREATE INDEX children_by_worker ON children (worker_id, name_key, code);
CREATE INDEX children_by_name ON children (name_key, code);
CREATE INDEX children_by_birth ON children (born, area_id);
CREATE INDEX children_by_registration ON children (registered_on, area_id);

CREATE TABLE placements (
  child_id !uuid NOT NULL REFERENCES children (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  from_on !date NOT NULL,
  to_on !date,
  area_id !uuid NOT NULL REFERENCES areas (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  by_person !uuid NOT NULL REFERENCES people (id),
  reason TEXT NOT NULL,
  PRIMARY KEY (child_id, seq),
  CHECK (to_on >= from_on)
);
CREATE INDEX placements_by_area ON placements (area_id, from_on);

CREATE TABLE status_changes (
  child_id !uuid NOT NULL REFERENCES children (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  area_id !uuid NOT NULL REFERENCES areas (id),
  status TEXT NOT NULL CHECK (status IN ('active', 'transferred_out', 'moved', 'died', 'consent_withdrawn', 'aged_out', 'refused')),
  happened_on !date NOT NULL,
  by_person !uuid REFERENCES people (id),
  note TEXT,
  at !instant NOT NULL,
  PRIMARY KEY (child_id, seq)
);
CREATE INDEX status_changes_by_day ON status_changes (happened_on, area_id);
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
        words::append_only(manager, "status_changes").await
    }
}

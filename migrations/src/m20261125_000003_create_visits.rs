//! Contacts with a child: what was measured, asked and seen, and every earlier version of a corrected one.

use sea_orm_migration::prelude::*;

use crate::words;

const TABLES: &str = "
CREATE TABLE visits (
  entry_seq !counter,
  id !uuid NOT NULL UNIQUE,
  child_id !uuid NOT NULL REFERENCES children (id),
  area_id !uuid NOT NULL REFERENCES areas (id),
  worker_id !uuid NOT NULL REFERENCES people (id),
  recorded_by !uuid NOT NULL REFERENCES people (id),
  sex TEXT NOT NULL CHECK (sex IN ('F', 'M')),
  age_days INTEGER NOT NULL CHECK (age_days >= 0),
  visited_on !date NOT NULL,
  recorded_at !instant NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  voided_at !instant,
  contact TEXT NOT NULL CHECK (contact IN ('home', 'clinic', 'phone')),
  weight_g INTEGER CHECK (weight_g > 0),
  length_mm INTEGER CHECK (length_mm > 0),
  position TEXT CHECK (position IN ('lying', 'standing')),
  muac_mm INTEGER CHECK (muac_mm > 0),
  head_mm INTEGER CHECK (head_mm > 0),
  oedema !bool,
  confirmed TEXT NOT NULL,
  danger_signs TEXT,
  readiness_signs TEXT,
  ill !bool,
  breastfed !bool,
  breast_only !bool,
  breastfeeding_trouble !bool,
  formula_times INTEGER CHECK (formula_times >= 0),
  animal_milk_times INTEGER CHECK (animal_milk_times >= 0),
  drink_yogurt_times INTEGER CHECK (drink_yogurt_times >= 0),
  spoon_yogurt_times INTEGER CHECK (spoon_yogurt_times >= 0),
  other_drink !bool,
  solids_started_on !date,
  solids_yesterday !bool,
  meals INTEGER CHECK (meals >= 0),
  texture_usual INTEGER CHECK (texture_usual BETWEEN 0 AND 4),
  texture_best INTEGER CHECK (texture_best BETWEEN 0 AND 4),
  food_groups TEXT,
  iron_source !bool,
  sweet_drink !bool,
  unhealthy_food !bool,
  bottle !bool,
  low_value TEXT,
  swallow_trouble TEXT CHECK (swallow_trouble IN ('none', 'repeated', 'blue')),
  appetite_poor_days INTEGER CHECK (appetite_poor_days >= 0),
  plans TEXT,
  referrals TEXT NOT NULL,
  note TEXT,
  waz_h INTEGER,
  laz_h INTEGER,
  wlz_h INTEGER,
  bmiz_h INTEGER,
  mauz_h INTEGER,
  hcz_h INTEGER,
  suspect TEXT NOT NULL,
  protocol_id TEXT NOT NULL,
  protocol_version TEXT NOT NULL,
  stage TEXT NOT NULL
);
CREATE INDEX visits_by_child ON visits (child_id, visited_on, entry_seq);
CREATE INDEX visits_by_day ON visits (visited_on, area_id);

CREATE TABLE visit_foods (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  food_code TEXT NOT NULL CHECK (length(food_code) > 0),
  offers INTEGER NOT NULL CHECK (offers >= 0),
  response TEXT CHECK (response IN ('accepted', 'refused', 'reaction')),
  unsafe_form !bool,
  signs TEXT,
  minutes_after INTEGER CHECK (minutes_after >= 0),
  hold_lifted !bool NOT NULL,
  PRIMARY KEY (visit_id, seq)
);

CREATE TABLE visit_outcomes (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  rule TEXT NOT NULL,
  outcome TEXT NOT NULL CHECK (outcome IN ('seen', 'treated', 'admitted', 'in_treatment', 'discharged', 'decision', 'refused', 'not_reached')),
  note TEXT,
  PRIMARY KEY (visit_id, seq)
);

CREATE TABLE visit_versions (
  visit_id !uuid NOT NULL REFERENCES visits (id),
  version INTEGER NOT NULL CHECK (version >= 1),
  content TEXT NOT NULL,
  recorded_by !uuid NOT NULL REFERENCES people (id),
  recorded_at !instant NOT NULL,
  reason TEXT NOT NULL,
  PRIMARY KEY (visit_id, version)
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
        words::append_only(manager, "visit_versions").await
    }
}

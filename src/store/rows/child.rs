//! Rows of children.

use domain::child::Child;
use domain::child::ChildStatus;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::units::Weight;

use crate::store::children::ChildRecord;
use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::child;
use crate::store::error::StoreError;

impl TryFrom<child::Model> for ChildRecord {
    type Error = StoreError;

    fn try_from(row: child::Model) -> Result<Self, StoreError> {
        let reading = Reading { table: "children", id: row.id };
        Ok(Self {
            id: ChildId(row.id.as_u128()),
            facts: Child {
                sex: reading.code(&row.sex, Sex::from_code)?,
                born: row.born,
                birth_day_known: row.birth_day_known,
                gestation_days: reading.maybe_number("gestation_days", row.gestation_days)?,
                birth_weight: reading.maybe_measure("birth_weight_g", row.birth_weight_g, Weight::from_grams)?,
                registered_on: row.registered_on,
                ever_breastfed: row.ever_breastfed,
                severe_eczema: row.severe_eczema,
                known_food_allergy: row.known_food_allergy,
                status: reading.code(&row.status, ChildStatus::from_code)?,
                looks_like_another: row.looks_like_id.is_some() && !row.different_child_decided,
            },
            gestation_source: reading.code(&row.gestation_source, GestationSource::from_code)?,
            version: reading.number("version", row.version)?,
            code: row.code,
            name: row.name,
            known_as: row.known_as,
            name_key: row.name_key,
            caregiver_name: row.caregiver_name,
            caregiver_relation: row.caregiver_relation,
            phone: row.phone,
            directions: row.directions,
            area: AreaId(row.area_id.as_u128()),
            worker: PersonId(row.worker_id.as_u128()),
            registered_by: PersonId(row.registered_by.as_u128()),
            recorded_at: row.recorded_at,
            consent_on: row.consent_on,
            consent_by: row.consent_by,
            early_breastfeeding: row.early_breastfeeding,
            first_two_days_milk_only: row.first_two_days_milk_only,
            returns_to_work_on: row.returns_to_work_on,
            looks_like: row.looks_like_id.map(|id| ChildId(id.as_u128())),
            different_child_decided: row.different_child_decided,
            left_on: row.left_on,
            left_note: row.left_note,
        })
    }
}

impl From<&ChildRecord> for child::Model {
    fn from(child: &ChildRecord) -> Self {
        let facts = &child.facts;
        Self {
            id: uuid(child.id.0),
            code: child.code.clone(),
            name: child.name.clone(),
            known_as: child.known_as.clone(),
            name_key: child.name_key.clone(),
            sex: facts.sex.code().to_owned(),
            born: facts.born,
            birth_day_known: facts.birth_day_known,
            birth_weight_g: facts.birth_weight.map(|w| w.grams().cast_signed()),
            gestation_days: facts.gestation_days.map(i32::from),
            gestation_source: child.gestation_source.code().to_owned(),
            caregiver_name: child.caregiver_name.clone(),
            caregiver_relation: child.caregiver_relation.clone(),
            phone: child.phone.clone(),
            directions: child.directions.clone(),
            area_id: uuid(child.area.0),
            worker_id: uuid(child.worker.0),
            registered_on: facts.registered_on,
            registered_by: uuid(child.registered_by.0),
            recorded_at: whole_second(child.recorded_at),
            consent_on: child.consent_on,
            consent_by: child.consent_by.clone(),
            ever_breastfed: facts.ever_breastfed,
            early_breastfeeding: child.early_breastfeeding,
            first_two_days_milk_only: child.first_two_days_milk_only,
            severe_eczema: facts.severe_eczema,
            known_food_allergy: facts.known_food_allergy,
            returns_to_work_on: child.returns_to_work_on,
            looks_like_id: child.looks_like.map(|id| uuid(id.0)),
            different_child_decided: child.different_child_decided,
            status: facts.status.code().to_owned(),
            left_on: child.left_on,
            left_note: child.left_note.clone(),
            version: i32::try_from(child.version).unwrap_or(i32::MAX),
        }
    }
}

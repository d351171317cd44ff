//! Rows of people and their sessions.

use domain::ids::PersonId;
use domain::role::Role;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::person;
use crate::store::entity::session;
use crate::store::error::StoreError;
use crate::store::people::PersonRecord;
use crate::store::sessions::SessionRecord;

impl TryFrom<person::Model> for PersonRecord {
    type Error = StoreError;

    fn try_from(row: person::Model) -> Result<Self, StoreError> {
        let reading = Reading { table: "people", id: row.id };
        Ok(Self {
            id: PersonId(row.id.as_u128()),
            role: reading.code(&row.role, Role::from_code)?,
            failed_sign_ins: reading.number("failed_sign_ins", row.failed_sign_ins)?,
            sign_in_name: row.sign_in_name,
            full_name: row.full_name,
            language: row.language,
            phone: row.phone,
            password_hash: row.password_hash,
            must_change_password: row.must_change_password,
            one_time_code_hash: row.one_time_code_hash,
            one_time_code_expires_at: row.one_time_code_expires_at,
            active: row.active,
            started_on: row.started_on,
            ended_on: row.ended_on,
            locked_until: row.locked_until,
            created_at: row.created_at,
        })
    }
}

impl From<&PersonRecord> for person::Model {
    fn from(person: &PersonRecord) -> Self {
        Self {
            id: uuid(person.id.0),
            sign_in_name: person.sign_in_name.clone(),
            full_name: person.full_name.clone(),
            role: person.role.code().to_owned(),
            language: person.language.clone(),
            phone: person.phone.clone(),
            password_hash: person.password_hash.clone(),
            must_change_password: person.must_change_password,
            one_time_code_hash: person.one_time_code_hash.clone(),
            one_time_code_expires_at: person.one_time_code_expires_at.map(whole_second),
            active: person.active,
            started_on: person.started_on,
            ended_on: person.ended_on,
            failed_sign_ins: i32::try_from(person.failed_sign_ins).unwrap_or(i32::MAX),
            locked_until: person.locked_until.map(whole_second),
            created_at: whole_second(person.created_at),
        }
    }
}

impl TryFrom<session::Model> for SessionRecord {
    type Error = StoreError;

    fn try_from(row: session::Model) -> Result<Self, StoreError> {
        Ok(Self {
            key_hash: <[u8; 32]>::try_from(row.key_hash)
                .map_err(|_| StoreError::corrupt("sessions", row.person_id, "the key's hash is not 32 bytes"))?,
            person: PersonId(row.person_id.as_u128()),
            created_at: row.created_at,
            last_seen_at: row.last_seen_at,
            expires_at: row.expires_at,
        })
    }
}

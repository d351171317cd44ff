//! The programme the families are in: settings, villages, people. It knows no child.

use std::collections::BTreeMap;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::AreaId;
use domain::ids::PersonId;
use spoonround::files::protocol_toml::DEFAULT_TEXT;
use spoonround::service::settings::Settings;
use spoonround::store::Connection;
use spoonround::store::StoreError;
use spoonround::store::areas;
use spoonround::store::areas::AreaRecord;
use spoonround::store::people;
use spoonround::store::people::CoverRecord;
use spoonround::store::people::PersonRecord;
use spoonround::store::settings;

use crate::story::cast::Cast;
use crate::story::cast::Person;
use crate::story::cast::VILLAGES;
use crate::story::dice::Dice;

/// Name of the invented programme.
pub const NAME: &str = "Kesara Lake and Tenzu hills";
/// Three hours ahead of UTC all year: a zone of no particular country.
const TIME_ZONE: &str = "Etc/GMT-3";
/// Nobody's number.
const EMERGENCY_NUMBER: &str = "000";

/// Name of the demo's protocol in messages.
pub const PROTOCOL_NAME: &str = "the demo's protocol";

/// What the invented programme changes in the protocol that the program ships with: its name, and a local age for wheat bread, so
/// that the demo shows local advice too.
const CHANGES: [(&str, &str); 3] = [
    ("id = \"default-6-23\"", "id = \"kesara-tenzu\""),
    ("local_protocol_name = \"\"", "local_protocol_name = \"the Kesara feeding card\""),
    ("allergen = \"wheat\"", "allergen = \"wheat\"\nlocal_wait_months = 10\nhold_policy = \"flag\""),
];

/// The protocol of the invented programme.
#[must_use]
pub fn protocol_text() -> String {
    CHANGES.iter().fold(DEFAULT_TEXT.to_owned(), |text, (from, to)| text.replacen(from, to, 1))
}

/// Keys of villages and people, by their place in the cast.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Keys {
    /// Villages.
    pub areas: Vec<AreaId>,
    /// Workers.
    pub workers: Vec<PersonId>,
    /// Supervisors.
    pub supervisors: Vec<PersonId>,
}

impl Keys {
    /// The supervisor of a village.
    #[must_use]
    pub fn supervisor_of(&self, village: usize) -> PersonId {
        self.supervisors.get(village / 2).or(self.supervisors.first()).copied().unwrap_or(PersonId(0))
    }
}

/// The settings of the demo.
#[must_use]
pub fn demo_settings() -> Settings {
    let usual = Settings::default();
    Settings {
        programme_name: NAME.to_owned(),
        time_zone: TIME_ZONE.parse().unwrap_or(usual.time_zone),
        emergency_number: Some(EMERGENCY_NUMBER.to_owned()),
        demo: true,
        ..usual
    }
}

/// Writes settings, villages and people.
///
/// # Errors
/// [`StoreError`].
pub async fn fill(c: &impl Connection, cast: &Cast, today: NaiveDate, now: DateTime<Utc>) -> Result<Keys, StoreError> {
    let stored: BTreeMap<String, String> = demo_settings().to_stored();
    for (name, value) in &stored {
        settings::set(c, name, value).await?;
    }
    let mut dice = Dice::of(u32::MAX - 1);
    let mut keys = Keys { areas: Vec::new(), workers: Vec::new(), supervisors: Vec::new() };
    for village in VILLAGES {
        let id = AreaId(dice.key());
        let area = AreaRecord {
            id,
            code: village.code.to_owned(),
            name: village.name.to_owned(),
            parent: None,
            active: true,
            walk_minutes: village.walk_minutes,
        };
        areas::insert(c, &area).await?;
        keys.areas.push(id);
    }
    let started_on = Cast::started_on(today);
    for worker in &cast.workers {
        keys.workers.push(add(c, worker, &mut dice, started_on, now).await?);
    }
    for supervisor in &cast.supervisors {
        let id = add(c, supervisor, &mut dice, started_on, now).await?;
        let villages: Vec<AreaId> = supervisor.villages.iter().filter_map(|&village| keys.areas.get(village).copied()).collect();
        people::assign(c, id, &villages, &[]).await?;
        keys.supervisors.push(id);
    }
    add(c, &cast.manager, &mut dice, started_on, now).await?;
    add(c, &cast.administrator, &mut dice, started_on, now).await?;
    for cover in &cast.covers {
        let record = CoverRecord {
            id: dice.key(),
            worker: keys.workers[cover.worker],
            covered_by: keys.workers[cover.covered_by],
            from_on: cover.from_on,
            to_on: cover.to_on,
        };
        people::insert_cover(c, &record).await?;
    }
    Ok(keys)
}

async fn add(
    c: &impl Connection,
    person: &Person,
    dice: &mut Dice,
    started_on: NaiveDate,
    now: DateTime<Utc>,
) -> Result<PersonId, StoreError> {
    let id = PersonId(dice.key());
    let record = PersonRecord {
        id,
        sign_in_name: person.sign_in_name.clone(),
        full_name: person.full_name.clone(),
        role: person.role,
        language: None,
        phone: None,
        password_hash: None,
        must_change_password: false,
        one_time_code_hash: None,
        one_time_code_expires_at: None,
        active: true,
        started_on,
        ended_on: None,
        failed_sign_ins: 0,
        locked_until: None,
        created_at: now,
    };
    people::insert(c, &record).await?;
    Ok(id)
}

#[cfg(test)]
mod tests {
    use spoonround::files::protocol_toml::parse_protocol;

    use super::*;

    #[test]
    fn the_programmes_protocol_is_the_shipped_one_with_its_changes() {
        for (from, _) in CHANGES {
            assert_eq!(DEFAULT_TEXT.matches(from).count(), 1, "{from}");
        }
        let protocol = parse_protocol(&protocol_text(), PROTOCOL_NAME).expect("no fault");
        assert_eq!(protocol.id, "kesara-tenzu");
        assert!(demo_settings().demo && demo_settings().time_zone.name() == TIME_ZONE);
    }
}

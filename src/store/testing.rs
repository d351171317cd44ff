//! For tests: a migrated database in a file of its own, and the smallest people, areas, children and visits to fill it.

use std::path::PathBuf;
use std::sync::atomic::AtomicU32;
use std::sync::atomic::Ordering;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::role::Role;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::visit::Contact;
use domain::visit::Visit;
use tokio::sync::OnceCell;

use crate::store::areas::AreaRecord;
use crate::store::children::ChildRecord;
use crate::store::db::Db;
use crate::store::error::StoreError;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::people::PersonRecord;
use crate::store::summaries::SummaryRecord;
use crate::store::visits::Indices;
use crate::store::visits::VisitRecord;

/// A database of its own, removed when dropped.
#[derive(Debug)]
pub struct TestDb {
    /// The open database.
    pub db: Db,
    folder: PathBuf,
}

static TEMPLATE: OnceCell<Vec<u8>> = OnceCell::const_new();
static COUNT: AtomicU32 = AtomicU32::new(0);

impl TestDb {
    /// A fresh migrated database: the schema is made once a process, then copied.
    ///
    /// # Panics
    /// When the temporary folder cannot be written.
    pub async fn new() -> Self {
        let template = TEMPLATE.get_or_init(template).await;
        let folder = folder();
        let file = folder.join("test.db");
        std::fs::write(&file, template).expect("a writable temporary folder");
        let db = Db::open(&file.to_string_lossy()).await.expect("a copy of a good database opens");
        Self { db, folder }
    }

    /// Where the file is.
    #[must_use]
    pub fn file(&self) -> PathBuf {
        self.folder.join("test.db")
    }
}

impl Drop for TestDb {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

async fn template() -> Vec<u8> {
    let folder = folder();
    let file = folder.join("template.db");
    let made: Result<(), StoreError> = async {
        let db = Db::open(&file.to_string_lossy()).await?;
        db.migrate().await?;
        db.close().await
    }
    .await;
    made.expect("a new database migrates");
    let bytes = std::fs::read(&file).expect("the template was written");
    let _ = std::fs::remove_dir_all(&folder);
    bytes
}

fn folder() -> PathBuf {
    let name = format!("spoonround-test-{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
    let folder = std::env::temp_dir().join(name);
    std::fs::create_dir_all(&folder).expect("a writable temporary folder");
    folder
}

/// A day from `2026-11-25`.
///
/// # Panics
/// When the text is no date.
#[must_use]
pub fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

/// Noon of a day, in UTC.
///
/// # Panics
/// Never: every day has a noon in UTC.
#[must_use]
pub fn noon(text: &str) -> DateTime<Utc> {
    day(text).and_hms_opt(12, 0, 0).expect("noon").and_utc()
}

/// An area called `Ulopi <n>`.
#[must_use]
pub fn an_area(n: u128) -> AreaRecord {
    AreaRecord { id: AreaId(n), code: format!("ulopi-{n}"), name: format!("Ulopi {n}"), parent: None, active: true, walk_minutes: None }
}

/// A person with this key and role.
#[must_use]
pub fn a_person(n: u128, role: Role) -> PersonRecord {
    PersonRecord {
        id: PersonId(n),
        sign_in_name: format!("{}{n}", role.code()),
        full_name: format!("Person {n}"),
        role,
        language: None,
        phone: None,
        password_hash: None,
        must_change_password: false,
        one_time_code_hash: None,
        one_time_code_expires_at: None,
        active: true,
        started_on: day("2025-01-01"),
        ended_on: None,
        failed_sign_ins: 0,
        locked_until: None,
        created_at: noon("2025-01-01"),
    }
}

/// A girl born and registered on 1 March 2026.
#[must_use]
pub fn a_child(n: u128, area: AreaId, worker: PersonId) -> ChildRecord {
    ChildRecord {
        id: ChildId(n),
        code: format!("CH{n:06}"),
        name: format!("Child {n}"),
        known_as: None,
        name_key: format!("chld{n}"),
        facts: Child {
            sex: Sex::Female,
            born: day("2026-03-01"),
            birth_day_known: true,
            gestation_days: None,
            birth_weight: None,
            registered_on: day("2026-03-01"),
            ever_breastfed: None,
            severe_eczema: None,
            known_food_allergy: None,
            status: ChildStatus::Active,
            looks_like_another: false,
        },
        gestation_source: GestationSource::Unknown,
        caregiver_name: "Caregiver".to_owned(),
        caregiver_relation: None,
        phone: None,
        directions: None,
        area,
        worker,
        registered_by: worker,
        recorded_at: noon("2026-03-01"),
        consent_on: day("2026-03-01"),
        consent_by: "Caregiver".to_owned(),
        early_breastfeeding: None,
        first_two_days_milk_only: None,
        returns_to_work_on: None,
        looks_like: None,
        different_child_decided: false,
        left_on: None,
        left_note: None,
        version: 1,
    }
}

/// A home visit at which nothing was asked.
#[must_use]
pub fn a_visit(n: u128, child: &ChildRecord, on: NaiveDate) -> VisitRecord {
    VisitRecord {
        visit: Visit::empty(VisitId(n), on, Contact::Home),
        child: child.id,
        area: child.area,
        worker: child.worker,
        recorded_by: child.worker,
        sex: child.facts.sex,
        age_days: u16::try_from((on - child.facts.born).num_days()).unwrap_or(0),
        recorded_at: on.and_time(chrono::NaiveTime::MIN).and_utc(),
        entry_seq: 0,
        version: 1,
        voided_at: None,
        talk: domain::counsel::Talk::default(),
        note: None,
        outcome_notes: Vec::new(),
        indices: Indices::default(),
        suspect: std::collections::BTreeSet::new(),
        protocol_id: "default".to_owned(),
        protocol_version: "1".to_owned(),
        stage: "milk".to_owned(),
    }
}

/// Two areas, a worker in each (keys 1 and 2), and a child of each worker (keys 1 and 2).
///
/// # Errors
/// [`StoreError`].
pub async fn two_families(db: &Db) -> Result<[ChildRecord; 2], StoreError> {
    let children = [a_child(1, AreaId(1), PersonId(1)), a_child(2, AreaId(2), PersonId(2))];
    db.write(async |tx| {
        for (n, child) in (1_u128..).zip(&children) {
            crate::store::areas::insert(tx, &an_area(n)).await?;
            crate::store::people::insert(tx, &a_person(n, Role::Worker)).await?;
            crate::store::children::insert(tx, child).await?;
        }
        Ok(children.clone())
    })
    .await
}

/// An open follow-up of class `week`, opened and last fired at this visit on this day.
#[must_use]
pub fn a_follow_up(n: u128, child: &ChildRecord, rule: RuleId, visit: u128, on: &str) -> FollowUpRecord {
    let on = day(on);
    FollowUpRecord {
        id: FollowUpId(n),
        child: child.id,
        area: child.area,
        worker: child.worker,
        rule,
        class: Class::Week,
        opened_by_visit: VisitId(visit),
        opened_on: on,
        due_on: on + chrono::Days::new(7),
        last_fired_on: on,
        last_fired_visit: VisitId(visit),
        closing: None,
        evidence: Evidence::default(),
        also_true: std::collections::BTreeSet::new(),
        protocol_id: "default".to_owned(),
        protocol_version: "1".to_owned(),
        first_followed_up_on: None,
        first_followed_up_due: None,
        first_outcome_on: None,
        referred_on: None,
    }
}

/// A summary on this day of a child for whom nothing is due.
#[must_use]
pub fn a_summary(child: &ChildRecord, on: &str) -> SummaryRecord {
    SummaryRecord {
        child: child.id,
        code: child.code.clone(),
        area: child.area,
        worker: child.worker,
        born: child.facts.born,
        status: child.facts.status,
        name_key: child.name_key.clone(),
        top: None,
        open_count: 0,
        urgent_unanswered_since: None,
        referral_due_on: None,
        slot: None,
        overdue_since: None,
        hold_since: None,
        last_seen_on: None,
        last_weight: None,
        last_waz: None,
        next_change_on: None,
        assessed_on: day(on),
        protocol_version: "1".to_owned(),
    }
}

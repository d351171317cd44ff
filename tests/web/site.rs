//! A small programme with somebody of each role, on a fixed day.

use std::rc::Rc;
use std::sync::Arc;
use std::sync::Mutex;

use actix_web::test;
use actix_web::web;
use chrono::NaiveDate;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::role::Role;
use spoonround::clock::FixedClock;
use spoonround::config::Config;
use spoonround::service::passwords;
use spoonround::store::areas;
use spoonround::store::areas::AreaRecord;
use spoonround::store::people;
use spoonround::store::people::PersonRecord;
use spoonround::store::testing::TestDb;
use spoonround::web::secret::Secret;
use spoonround::web::server::build_app;
use spoonround::web::state::App;

use crate::harness::Browser;

/// Everybody's password in tests.
pub const PASSWORD: &str = "lake heron basket";
/// The day on which tests happen.
pub const TODAY: &str = "2026-11-25";

/// A running site.
pub struct Site {
    /// The database behind it.
    pub db: TestDb,
    /// Its clock, which tests move.
    pub clock: Arc<FixedClock>,
    /// The villages.
    pub ulopi: AreaId,
    /// Another village, of another supervisor.
    pub mbiro: AreaId,
    /// Worker in Ulopi.
    pub mireni: PersonId,
    /// Worker in Mbiro Hill.
    pub tamsi: PersonId,
    /// Supervisor of Ulopi.
    pub olani: PersonId,
    /// What was sent to the database so far.
    pub statements: Arc<Mutex<Vec<String>>>,
    browser: Browser,
}

/// The number of a test person or area.
fn number(n: u128) -> u128 {
    0x0192_0000_0000_7000_8000_0000_0000_0000 + n
}

impl Site {
    /// The usual site.
    pub async fn new() -> Self {
        Self::with(Config::default()).await
    }

    /// A site with a configuration of its own.
    pub async fn with(config: Config) -> Self {
        let db = TestDb::new().await;
        let today: NaiveDate = TODAY.parse().expect("a date");
        let hash = passwords::hash(PASSWORD.to_owned()).await.expect("hashed");
        let clock = Arc::new(FixedClock::noon(today));
        let (ulopi, mbiro) = (AreaId(number(1)), AreaId(number(2)));
        let person = |n: u128, sign_in: &str, role: Role| PersonRecord {
            id: PersonId(number(n)),
            sign_in_name: sign_in.to_owned(),
            full_name: sign_in[..1].to_uppercase() + &sign_in[1..],
            role,
            language: Some("en".to_owned()),
            phone: None,
            password_hash: Some(hash.clone()),
            must_change_password: false,
            one_time_code_hash: None,
            one_time_code_expires_at: None,
            active: true,
            started_on: today,
            ended_on: None,
            failed_sign_ins: 0,
            locked_until: None,
            created_at: spoonround::clock::Clock::now(&*clock),
        };
        let all = [
            person(11, "mireni", Role::Worker),
            person(12, "tamsi", Role::Worker),
            person(13, "olani", Role::Supervisor),
            person(14, "hembo", Role::Supervisor),
            person(15, "bemu", Role::Manager),
            person(16, "teveli", Role::Administrator),
        ];
        db.db
            .write::<_, spoonround::store::StoreError, _>(async |tx| {
                for (id, code, name) in [(ulopi, "ulopi", "Ulopi"), (mbiro, "mbiro", "Mbiro Hill")] {
                    let area =
                        AreaRecord { id, code: code.to_owned(), name: name.to_owned(), parent: None, active: true, walk_minutes: None };
                    areas::insert(tx, &area).await?;
                }
                for person in &all {
                    people::insert(tx, person).await?;
                }
                people::assign(tx, all[2].id, &[ulopi], &[]).await?;
                people::assign(tx, all[3].id, &[mbiro], &[]).await
            })
            .await
            .expect("a filled database");
        let protocols = spoonround::service::protocols::adopt(&db.db, None, spoonround::clock::Clock::now(&*clock)).await.expect("adopted");
        let secret = Secret::random().expect("randomness");
        let clock_of_app: Arc<dyn spoonround::clock::Clock> = Arc::<FixedClock>::clone(&clock);
        let statements = Arc::new(Mutex::new(Vec::new()));
        let told = Arc::clone(&statements);
        let mut counted = db.db.clone();
        counted.on_each_statement(move |sql| told.lock().expect("no test died here").push(sql.to_owned()));
        let app = App::new(counted, clock_of_app, secret, protocols, &config).await.expect("an app");
        let service = test::init_service(build_app(web::Data::new(app))).await;
        let browser = Browser::new(Rc::new(service));
        Self { db, clock, ulopi, mbiro, mireni: all[0].id, tamsi: all[1].id, olani: all[2].id, statements, browser }
    }

    /// A browser nobody has signed in with.
    pub fn browser(&self) -> Browser {
        self.browser.clone()
    }

    /// A browser in which this person is signed in.
    pub async fn signed_in(&self, name: &str) -> Browser {
        let mut browser = self.browser();
        browser.open("/sign-in").await.submit("main form", &[("name", name), ("password", PASSWORD)]).await;
        assert!(browser.attrs("form", "action").iter().any(|a| a == "/sign-out"), "{name} is signed in:\n{}", browser.text());
        browser
    }

    /// A child of Mireni's in Ulopi, born 8 months ago, with one visit; its code and the visit's number.
    pub async fn a_child_with_a_visit(&self) -> (String, String) {
        let mut browser = self.signed_in("mireni").await;
        let fields = [
            ("name", "Neruka"),
            ("sex", "F"),
            ("born_day", "14"),
            ("born_month", "3"),
            ("born_year", "2026"),
            ("caregiver", "Teveli"),
            ("area", "ulopi"),
            ("consent", "yes"),
        ];
        browser.open("/children/new").await.submit("main form", &fields).await.submit("main form", &[]).await;
        let at = browser.path.strip_prefix("/children/").unwrap_or_else(|| panic!("registered: {} {}", browser.path, browser.text()));
        let code = at.split(['/', '?']).next().unwrap_or_default().to_owned();
        browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &[("weight", "7,10"), ("arm", "113")]).await;
        let seq = browser.path.split('/').nth(4).unwrap_or_else(|| panic!("saved: {} {}", browser.path, browser.text())).to_owned();
        (code, seq)
    }
}

//! What is written on a server comes back as on a file, with the same scope, order and refusals.

use chrono::NaiveDate;
use domain::food::FoodCode;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::ids::AreaId;
use domain::ids::FollowUpId;
use domain::ids::PersonId;
use domain::ids::SubmissionKey;
use domain::role::Role;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::units::Weight;
use domain::visit::DangerSign;
use domain::visit::FoodOffer;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use sea_orm::ConnectionTrait;
use spoonround::store::Db;
use spoonround::store::Scope;
use spoonround::store::StoreError;
use spoonround::store::audit;
use spoonround::store::children;
use spoonround::store::duplicates;
use spoonround::store::follow_ups;
use spoonround::store::lists;
use spoonround::store::people;
use spoonround::store::placements;
use spoonround::store::report_rows;
use spoonround::store::sessions;
use spoonround::store::settings;
use spoonround::store::submissions;
use spoonround::store::summaries;
use spoonround::store::testing::a_follow_up;
use spoonround::store::testing::a_person;
use spoonround::store::testing::a_summary;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::day;
use spoonround::store::testing::noon;
use spoonround::store::testing::two_families;
use spoonround::store::throttle;
use spoonround::store::visits;

use crate::cluster::Cluster;

async fn server() -> (Cluster, Db) {
    let cluster = Cluster::start();
    let db = Db::open(&cluster.address()).await.expect("open");
    db.migrate().await.expect("migrated");
    (cluster, db)
}

fn due(n: i64) -> NaiveDate {
    day("2026-09-10") + chrono::TimeDelta::days(n)
}

#[tokio::test]
async fn children_visits_and_corrections_come_back() {
    let (_cluster, db) = server().await;
    let [child, _] = two_families(&db).await.expect("two children");
    let mut told = a_visit(1, &child, day("2026-09-10"));
    told.visit.weight = Weight::from_grams(7350).ok();
    told.visit.danger_signs = Some([DangerSign::Lethargic].into());
    told.visit.oedema = Some(false);
    told.visit.outcomes = vec![ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen }];
    told.outcome_notes = vec![Some("health post".to_owned())];
    told.visit.foods = vec![FoodOffer {
        code: FoodCode("mango".to_owned()),
        offers: 2,
        response: Some(Response::Reaction),
        unsafe_form: None,
        signs: Some([ReactionSign::RashLocal].into()),
        minutes_after: Some(30),
        hold_lifted: false,
    }];
    told.entry_seq = db.write(async |tx| visits::insert(tx, &told).await).await.expect("recorded");
    let story = visits::of_child_up_to(db.direct(), child.id, day("2026-09-10")).await.expect("readable");
    assert_eq!(story, std::slice::from_ref(&told));
    assert_eq!(children::by_id_in_scope(db.direct(), Scope::Everything, child.id).await.expect("readable"), Some(child.clone()));

    told.visit.weight = Weight::from_grams(7530).ok();
    let correction = visits::Correction { by: PersonId(2), at: noon("2026-09-11"), reason: "digits swapped" };
    db.write(async |tx| visits::replace(tx, &told, correction).await).await.expect("corrected");
    let kept = visits::versions_of(db.direct(), told.visit.id).await.expect("readable");
    assert!(kept[0].content.contains("weight_g\t7350\n"), "{}", kept[0].content);
    visits::judged(db.direct(), &told).await.expect("noted");
    db.write(async |tx| visits::void(tx, told.visit.id, 2, correction).await).await.expect("taken back");
    assert_eq!(visits::of_child_up_to(db.direct(), child.id, day("2026-09-10")).await.expect("readable"), []);
}

#[tokio::test]
async fn follow_ups_lists_and_scope_answer_as_on_a_file() {
    let (_cluster, db) = server().await;
    let [child, other] = two_families(&db).await.expect("two children");
    people::insert(db.direct(), &a_person(9, Role::Supervisor)).await.expect("a supervisor");
    people::assign(db.direct(), PersonId(9), &[AreaId(1)], &[]).await.expect("assigned");
    let cover = people::CoverRecord { id: 1, worker: PersonId(2), covered_by: PersonId(1), from_on: due(0), to_on: due(3) };
    people::insert_cover(db.direct(), &cover).await.expect("a cover");
    for (n, child) in [(1, &child), (2, &other)] {
        visits::insert(db.direct(), &a_visit(n, child, due(0))).await.expect("recorded");
        let follow_up = follow_ups::FollowUpRecord { class: Class::Today, ..a_follow_up(n, child, RuleId::WeightLow, n, "2026-09-10") };
        let recorded = follow_ups::Recorded { at: noon("2026-09-10"), today: due(0), by: None };
        db.write(async |tx| follow_ups::replace_all_of_child(tx, child.id, std::slice::from_ref(&follow_up), recorded).await)
            .await
            .expect("stored");
        let top = summaries::TopFollowUp {
            class: Class::Today,
            rule: RuleId::WeightLow,
            due_on: follow_up.due_on,
            evidence: follow_up.evidence.clone(),
        };
        let summary = summaries::SummaryRecord {
            top: Some(top),
            urgent_unanswered_since: Some(due(0)),
            overdue_since: Some(due(0)),
            next_change_on: Some(due(1)),
            ..a_summary(child, "2026-09-10")
        };
        summaries::upsert(db.direct(), &summary).await.expect("written");
        summaries::upsert(db.direct(), &summary).await.expect("written over");
        assert_eq!(summaries::of_child(db.direct(), child.id).await.expect("readable"), Some(summary));
    }
    let worker = |n: i64| Scope::Worker { person: PersonId(1), today: due(n) };
    let supervisor = Scope::Supervisor { person: PersonId(9) };
    for (scope, expected) in [(worker(0), 2), (worker(4), 1), (supervisor, 1), (Scope::Everything, 2)] {
        let c = db.direct();
        assert_eq!(lists::round(c, scope, None, 50).await.expect("readable").len(), expected, "{scope:?}");
        let sought = lists::Sought { name_key: Some("chld".to_owned()), code: Some("CH".to_owned()), ..lists::Sought::default() };
        assert_eq!(lists::find(c, scope, &sought, Some(("a", "")), 50).await.expect("readable").len(), expected, "{scope:?}");
        assert_eq!(
            lists::unanswered_in_scope(c, scope, spoonround::store::follow_ups::desk::Narrowed::default(), due(1), None, 50)
                .await
                .expect("readable")
                .len(),
            expected
        );
        assert_eq!(lists::visits_missed_in_scope(c, scope, due(1), None, 50).await.expect("readable").len(), expected);
        let days = lists::LostDays { young_born_after: due(-300), young_seen_by: due(0), older_seen_by: due(0) };
        assert_eq!(
            lists::lost_in_scope(c, scope, days, Some(&lists::DayKey { on: due(-1000), code: String::new() }), 50)
                .await
                .expect("readable")
                .len(),
            expected
        );
        let clock = [(Class::Today, due(7))];
        assert_eq!(follow_ups::late_in_scope(c, scope, &clock, None, 50).await.expect("readable").len(), expected);
        assert_eq!(follow_ups::open_in_scope(c, scope, Some((due(7), FollowUpId(0))), 50).await.expect("readable").len(), expected);
    }
    assert_eq!(summaries::due_for_tick(db.direct(), due(1), Some((due(1), child.id)), 9).await.expect("readable"), [(due(1), other.id)]);
    let recorded = follow_ups::Recorded { at: noon("2026-09-12"), today: due(2), by: Some(PersonId(9)) };
    let closed = db
        .write(async |tx| {
            follow_ups::close_by_supervisor(tx, supervisor, FollowUpId(1), PersonId(9), "seen", "seen at the clinic", recorded).await
        })
        .await
        .expect("closed");
    assert!(closed.is_some_and(|f| f.closing.is_some()));
    assert_eq!(follow_ups::history_of_child(db.direct(), child.id).await.expect("readable").len(), 2);
    let september = (day("2026-09-01"), day("2026-09-30"));
    let counted = report_rows::children(db.direct(), Scope::Everything, september, None, 9).await.expect("readable");
    assert_eq!(counted.iter().map(|c| c.last_visit_on).collect::<Vec<_>>(), [Some(due(0)), Some(due(0))]);
    assert_eq!(report_rows::follow_ups(db.direct(), Scope::Everything, september, None, 9).await.expect("readable").len(), 2);
    let born = (day("2026-02-01"), day("2026-04-01"));
    assert_eq!(duplicates::possible_duplicates(db.direct(), AreaId(1), born, "", 9).await.expect("readable").len(), 1);
    let to = placements::PlacementRecord {
        from_on: due(5),
        to_on: None,
        area: AreaId(2),
        worker: PersonId(2),
        by: PersonId(9),
        reason: "moved".to_owned(),
    };
    db.write(async |tx| placements::place(tx, child.id, 1, &to).await).await.expect("moved");
    assert_eq!(placements::of_child(db.direct(), child.id).await.expect("readable").len(), 2);
}

#[tokio::test]
async fn sign_in_tables_answer_as_on_a_file() {
    let (_cluster, db) = server().await;
    let person = a_person(1, Role::Worker);
    people::insert(db.direct(), &person).await.expect("a person");
    let session = sessions::SessionRecord {
        key_hash: [7; 32],
        person: person.id,
        created_at: noon("2026-09-10"),
        last_seen_at: noon("2026-09-10"),
        expires_at: noon("2026-09-11"),
    };
    sessions::insert(db.direct(), &session).await.expect("begun");
    let live = async |on| sessions::find_live(db.direct(), &[7; 32], noon(on)).await.expect("readable");
    assert_eq!(live("2026-09-10").await, Some((session, person)));
    assert_eq!(live("2026-09-11").await, None);
    let sent = submissions::Submission {
        key: SubmissionKey(5),
        person: PersonId(1),
        payload_hash: [1; 32],
        outcome: "/round".to_owned(),
        created_at: noon("2026-09-10"),
    };
    submissions::insert(db.direct(), &sent).await.expect("remembered");
    assert!(matches!(submissions::insert(db.direct(), &sent).await, Err(StoreError::Conflict { .. })));
    assert_eq!(submissions::find(db.direct(), sent.key).await.expect("readable"), Some(sent));
    settings::set(db.direct(), settings::TIME_ZONE, "Africa/Nairobi").await.expect("set");
    settings::set(db.direct(), settings::TIME_ZONE, "Etc/UTC").await.expect("set over");
    assert_eq!(settings::get(db.direct(), settings::TIME_ZONE).await.expect("readable").as_deref(), Some("Etc/UTC"));
    let slow = throttle::ThrottleRecord {
        address: "192.0.2.1".to_owned(),
        failures: 6,
        locked_until: Some(noon("2026-09-10")),
        last_failure_at: noon("2026-09-10"),
    };
    throttle::set(db.direct(), &slow).await.expect("set");
    assert_eq!(throttle::of_address(db.direct(), "192.0.2.1").await.expect("readable"), Some(slow));
}

#[tokio::test]
async fn what_only_grows_refuses_to_be_changed() {
    let (_cluster, db) = server().await;
    let entry = audit::AuditEntry {
        at: noon("2026-09-10"),
        actor: None,
        action: "export".to_owned(),
        object_kind: "report".to_owned(),
        object_id: "2026-08".to_owned(),
        fields: Vec::new(),
    };
    audit::append(db.direct(), &entry).await.expect("added");
    for sql in ["UPDATE audit SET action = 'x'", "DELETE FROM audit"] {
        let refused = db.connection().execute_unprepared(sql).await.expect_err("append-only").to_string();
        assert!(refused.contains("append-only"), "{refused}");
    }
    assert_eq!(audit::of_object(db.direct(), "report", "2026-08", None, 9).await.expect("readable").len(), 1);
}

#[tokio::test]
async fn writers_that_read_first_lose_nothing_and_the_loser_is_told_to_try_again() {
    let (_cluster, db) = server().await;
    settings::set(db.direct(), "count", "0").await.expect("a setting");
    let add_one = async || {
        loop {
            let tried: Result<(), StoreError> = db
                .write(async |tx| {
                    let count: u32 = settings::get(tx, "count").await?.and_then(|n| n.parse().ok()).unwrap_or(0);
                    tokio::task::yield_now().await;
                    settings::set(tx, "count", &(count + 1).to_string()).await
                })
                .await;
            match tried {
                Err(StoreError::Busy) => {}
                other => return other,
            }
        }
    };
    let all = futures_util::future::join_all((0..8).map(|_| add_one())).await;
    assert!(all.iter().all(Result::is_ok), "{all:?}");
    assert_eq!(settings::get(db.direct(), "count").await.expect("readable").as_deref(), Some("8"));
}

//! Days that pass one after the other leave what a whole working-out finds; and what was tampered with is found and named.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::protocol::Protocols;
use indicatif::ProgressBar;
use seed_demo::build;
use seed_demo::programme;
use seed_demo::story::cast::Cast;
use seed_demo::target;
use seed_demo::target::Built;
use spoonround::service::protocols;
use spoonround::service::recheck;
use spoonround::service::recheck::Rechecked;
use spoonround::service::tick;
use spoonround::store::Connection;
use spoonround::store::Db;

const CHILDREN: u32 = 240;

fn noon(day: NaiveDate) -> chrono::DateTime<chrono::Utc> {
    day.and_hms_opt(12, 0, 0).expect("noon").and_utc()
}

async fn demo(file: &std::path::Path, today: NaiveDate) -> (Db, Protocols) {
    let target = target::open(file, false).await.expect("a new file");
    let text = programme::protocol_text();
    let adopted = protocols::adopt(&target.db, Some((programme::PROTOCOL_NAME, &text)), noon(today)).await.expect("adopted");
    let built = Built { children: CHILDREN, on: today };
    build::build(&target.db, &adopted, &Cast::of(CHILDREN, today), &built, noon(today), ProgressBar::hidden()).await.expect("built");
    (target.db, adopted)
}

async fn rechecked(db: &Db, protocols: &Protocols, on: NaiveDate) -> Rechecked {
    recheck::recheck(db, protocols, on, None, &mut |_, _| {}).await.expect("worked out")
}

#[track_caller]
fn agrees(found: &Rechecked, on: NaiveDate) {
    let told: Vec<String> = found.differences.iter().take(20).map(ToString::to_string).collect();
    assert!(found.differences.is_empty(), "{on}: {} differences\n{}", found.differences.len(), told.join("\n"));
    assert_eq!((found.children, found.waiting), (u64::from(CHILDREN), 0), "{on}");
    assert!(found.visits > 1_000 && found.follow_ups > 200, "{on}: {found:?}");
}

#[tokio::test]
async fn days_that_pass_and_a_whole_working_out_agree() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, protocols) = demo(&folder.path().join("demo.db"), today).await;
    agrees(&rechecked(&db, &protocols, today).await, today);
    for later in [1, 2, 8, 33, 34, 250] {
        let day = add_days(today, later);
        let behind = rechecked(&db, &protocols, day).await;
        assert!(behind.waiting > 0 && !behind.differences.is_empty(), "{day}: something changes by the passing of days");
        let looked_at = tick::tick(&db, &protocols, day, noon(day)).await.expect("a day passed");
        assert_eq!(looked_at, behind.waiting, "{day}");
        assert!(later > 2 || looked_at < u64::from(CHILDREN), "{day}: only those whose day has come");
        agrees(&rechecked(&db, &protocols, day).await, day);
    }
}

#[tokio::test]
async fn whatever_was_tampered_with_is_found_named_and_mended() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, protocols) = demo(&folder.path().join("demo.db"), today).await;
    let open = "id = (SELECT id FROM follow_ups WHERE close_reason IS NULL AND class = 'week' ORDER BY id LIMIT 1)";
    let closed = "id = (SELECT id FROM follow_ups WHERE close_reason = 'resolved_by_visit' ORDER BY id LIMIT 1)";
    let line = "child_id = (SELECT child_id FROM child_summaries WHERE status = 'active' AND next_change_on IS NOT NULL ORDER BY child_id LIMIT 1)";
    let visit = "id = (SELECT id FROM visits WHERE waz_h IS NOT NULL ORDER BY id LIMIT 1)";
    for (sql, named) in [
        (format!("UPDATE follow_ups SET class = 'month' WHERE {open}"), "class: stored month, worked out week"),
        (format!("UPDATE follow_ups SET due_on = '2027-01-01' WHERE {open}"), "due on: stored 2027-01-01, worked out 20"),
        (format!("UPDATE follow_ups SET evidence = 'waz=z:-1' WHERE {open}"), "numbers: stored"),
        (format!("UPDATE follow_ups SET protocol_version = '9.9.9' WHERE {closed}"), "protocol version: stored 9.9.9, worked out 1."),
        (format!("UPDATE follow_ups SET closed_on = '2026-11-20' WHERE {closed}"), "closing: stored"),
        (format!("UPDATE follow_ups SET first_followed_up_on = NULL WHERE {closed}"), "first followed up on: stored nothing"),
        (format!("UPDATE child_summaries SET next_change_on = '2099-01-01' WHERE {line}"), "next change on: stored 2099-01-01"),
        (format!("UPDATE child_summaries SET work_key = '9' || work_key WHERE {line}"), "order of work: stored 9"),
        (format!("UPDATE child_summaries SET open_count = 77 WHERE {line}"), "open follow-ups: stored 77"),
        (format!("DELETE FROM child_summaries WHERE {line}"), "line in the lists, line: stored none, worked out one"),
        (format!("UPDATE visits SET waz_h = waz_h + 1 WHERE {visit}"), "z-scores in hundredths: stored"),
        (format!("UPDATE visits SET stage = 'milk' WHERE {visit}"), "stage: stored milk"),
    ] {
        db.direct().execute_unprepared(&sql).await.unwrap_or_else(|e| panic!("{sql}: {e}"));
        let found = recheck::recheck(&db, &protocols, today, Some(noon(today)), &mut |_, _| {}).await.expect("worked out");
        let told: Vec<String> = found.differences.iter().map(ToString::to_string).collect();
        assert!(told.iter().any(|line| line.starts_with("child ") && line.contains(named)), "{sql}: {told:#?}");
        assert_eq!((found.mended, recheck::by_child(&found.differences).len()), (1, 1), "{sql}: {told:#?}");
        agrees(&rechecked(&db, &protocols, today).await, today);
    }
}

//! Days that pass one after the other leave what a whole working-out finds; and what was tampered with is found and named.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::ids::PersonId;
use domain::protocol::Protocols;
use domain::rule::RuleId;
use indicatif::ProgressBar;
use sea_orm::DbBackend;
use sea_orm::Statement;
use seed_demo::build;
use seed_demo::programme;
use seed_demo::story::cast::Cast;
use seed_demo::target;
use seed_demo::target::Built;
use spoonround::files::protocol_toml::parse_protocol;
use spoonround::service::adopt_protocol;
use spoonround::service::adopt_protocol::Adoption;
use spoonround::service::protocols;
use spoonround::service::recheck;
use spoonround::service::recheck::Rechecked;
use spoonround::service::rehearse;
use spoonround::service::rehearse::Tally;
use spoonround::service::tick;
use spoonround::store::Connection;
use spoonround::store::Db;
use spoonround::store::Scope;

const CHILDREN: u32 = 240;
/// One record of the demo is merged into another.
const RECORDS: u64 = 239;

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
    assert_eq!((found.children, found.waiting), (RECORDS, 0), "{on}");
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
        assert!(later > 2 || looked_at < RECORDS, "{day}: only those whose day has come");
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
        (format!("UPDATE child_summaries SET hold_since = '2020-01-01' WHERE {line}"), "food on hold since: stored 2020-01-01"),
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

/// The demo's protocol with one place changed, as another version.
fn changed(version: &str, from: &str, to: &str) -> String {
    let text = programme::protocol_text();
    assert!(text.contains(from), "the protocol holds {from:?}");
    text.replacen("version = \"1", &format!("version = \"{version}\"\n# was 1"), 1).replacen(from, to, 1)
}

async fn adopt(db: &Db, text: &str, from: NaiveDate, today: NaiveDate) -> Protocols {
    let adoption = Adoption {
        file: "new.toml",
        text,
        approved_by: "Dr Oru Saneth",
        from,
        backdated: false,
        reason: "As agreed in the district",
        by: None,
    };
    adopt_protocol::adopt(db, &adoption, today, noon(today)).await.expect("adopted");
    protocols::load(db).await.expect("readable")
}

async fn versions(db: &Db, sql: &str) -> Vec<(String, String)> {
    let rows = db.direct().query_all_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("a good question");
    rows.iter().map(|row| (row.try_get_by_index(0).expect("text"), row.try_get_by_index(1).expect("text"))).collect()
}

#[tokio::test]
async fn an_adopted_protocol_counts_from_its_day_on_and_old_follow_ups_keep_their_version() {
    const FOLLOW_UPS: &str = "SELECT rule || hex(opened_by_visit), protocol_version FROM follow_ups ORDER BY 1";
    const VISITS: &str = "SELECT hex(id), protocol_version FROM visits ORDER BY 1";
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, first) = demo(&folder.path().join("demo.db"), today).await;
    let old = first.on(today).version.clone();
    let before = (versions(&db, FOLLOW_UPS).await, versions(&db, VISITS).await);
    let from = add_days(today, 5);
    // Every visit slot opens a day later: each child's list depends on it.
    let both = adopt(&db, &changed("8.0.0", "opens_before_days = 7", "opens_before_days = 6"), from, today).await;
    assert_eq!((both.on(add_days(from, -1)).version.as_str(), both.on(from).version.as_str()), (old.as_str(), "8.0.0"));
    assert_eq!(both.on(from).approved_by.as_deref(), Some("Dr Oru Saneth"));
    agrees(&rechecked(&db, &both, today).await, today);
    let eve = add_days(from, -1);
    tick::tick(&db, &both, eve, noon(eve)).await.expect("a day passed");
    agrees(&rechecked(&db, &both, eve).await, eve);
    let active: usize = versions(&db, "SELECT code, status FROM children WHERE status = 'active'").await.len();
    let looked_at = tick::tick(&db, &both, from, noon(from)).await.expect("the day came");
    assert!(looked_at >= u64::try_from(active).expect("small") - 5, "every child is looked at: {looked_at} of {active}");
    agrees(&rechecked(&db, &both, from).await, from);
    assert_eq!((versions(&db, FOLLOW_UPS).await, versions(&db, VISITS).await), before, "no earlier judgement changed its version");
    // In force from today: a visit of today is judged anew, those before are not.
    let third = adopt(&db, &changed("9.0.0", "muac_below_mm = 115", "muac_below_mm = 116"), from, from).await;
    tick::tick(&db, &third, from, noon(from)).await.expect("brought up to date");
    agrees(&rechecked(&db, &third, from).await, from);
    assert_eq!(third.on(from).version, "9.0.0", "of two with one first day the one adopted later counts");
    // What judges otherwise is found.
    let only_new = Protocols::one((**third.on(from)).clone());
    let found = rechecked(&db, &only_new, from).await;
    assert!(found.differences.iter().any(|d| d.field == "protocol version" && d.stored == old), "{:?}", found.differences.first());
}

#[tokio::test]
async fn a_rehearsal_counts_what_the_list_holds_and_what_would_change_and_writes_nothing() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("demo.db");
    let (db, adopted) = demo(&file, today).await;
    let held = versions(&db, "SELECT rule, CAST(count(*) AS TEXT) FROM follow_ups WHERE close_reason IS NULL GROUP BY rule").await;
    let rows = versions(&db, "SELECT CAST(count(*) AS TEXT), CAST(sum(seq) AS TEXT) FROM follow_up_events").await;
    let rehearsed = async |text: &str, scope: Scope| {
        let new = parse_protocol(text, "new.toml").expect("a protocol");
        rehearse::rehearse(&db, &adopted, &new, scope, today, &mut |_, _| {}).await.expect("judged")
    };
    let same = rehearsed(&programme::protocol_text(), Scope::Everything).await;
    assert!(same.changes_nothing() && same.changes.is_empty() && same.children > 150, "{same:?}");
    let open: Vec<(String, String)> = same
        .by_rule
        .iter()
        .filter(|(rule, _)| !rule.is_list())
        .map(|(rule, tally)| (rule.code().to_owned(), tally.now))
        .filter(|(_, now)| *now > 0)
        .map(|(rule, now)| (rule, now.to_string()))
        .collect();
    assert_eq!(open.iter().cloned().collect::<BTreeMap<_, _>>(), held.into_iter().collect(), "the list as it is stored");
    // Too thin below 125 mm is severe now: what was moderate is replaced by severe.
    let text = changed("8.0.0", "muac_below_mm = 115", "muac_below_mm = 125");
    let thin = rehearsed(&text, Scope::Everything).await;
    let severe = thin.by_rule[&RuleId::WastingSevere];
    assert!(severe.opened > 0 && severe.then == severe.now + severe.opened - severe.closed, "{severe:?}");
    assert!(thin.by_rule[&RuleId::WastingModerate].closed > 0, "{:?}", thin.by_rule);
    let low = rehearsed(
        &changed(
            "8.0.0",
            "class_under_6m = \"week\"\nclass_from_6m = \"fortnight\"",
            "class_under_6m = \"today\"\nclass_from_6m = \"month\"",
        ),
        Scope::Everything,
    )
    .await;
    assert!(low.by_rule[&RuleId::WeightLow].lowered > 0 && low.by_rule[&RuleId::WeightLow].opened == 0, "{low:?}");
    let off = rehearsed(&changed("8.0.0", "id = \"bottle.used\"\non = true", "id = \"bottle.used\"\non = false"), Scope::Everything).await;
    let bottle = off.by_rule[&RuleId::BottleUsed];
    assert_eq!((bottle.then, bottle.closed, bottle.new_then), (0, bottle.now, 0));
    assert!(bottle.now > 0 && bottle.new_now > 0);
    for found in [&same, &thin, &low, &off] {
        for tallies in [found.by_rule.values().collect::<Vec<_>>(), found.by_area.values().collect(), found.by_worker.values().collect()] {
            let sum = |of: fn(&Tally) -> u64| tallies.iter().map(|tally| of(tally)).sum::<u64>();
            let all = &found.all;
            assert_eq!((sum(|t| t.now), sum(|t| t.then), sum(|t| t.opened)), (all.now, all.then, all.opened));
            assert_eq!((sum(|t| t.closed), sum(|t| t.raised), sum(|t| t.lowered)), (all.closed, all.raised, all.lowered));
        }
        let kinds = found.all.opened + found.all.closed + found.all.raised + found.all.lowered + found.all.moved;
        assert_eq!(u64::try_from(found.changes.len()).expect("small"), kinds);
        assert_eq!(found.all.then + found.all.closed, found.all.now + found.all.opened);
    }
    // Nobody else's children in a scope.
    let supervisor = Cast::of(CHILDREN, today).supervisors.len();
    assert!(supervisor > 1);
    let nobody = rehearsed(&text, Scope::Supervisor { person: PersonId(1) }).await;
    assert_eq!((nobody.children, nobody.changes.len()), (0, 0));
    assert_eq!(versions(&db, "SELECT CAST(count(*) AS TEXT), CAST(sum(seq) AS TEXT) FROM follow_up_events").await, rows);
    agrees(&rechecked(&db, &adopted, today).await, today);
}

//! A demo as somebody meets it, built on a leap day, a first and a last: every rule, every state, every list, and the same twice.

mod made;

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::ids::ChildId;
use domain::protocol::Protocols;
use domain::rule::CloseReason;
use domain::rule::FollowUpState;
use domain::rule::RuleId;
use domain::rule::Theme;
use seed_demo::story;
use seed_demo::story::cast::Cast;
use seed_demo::target;
use seed_demo::target::Built;
use spoonround::store::Db;
use spoonround::store::Scope;
use spoonround::store::corrections;
use spoonround::store::corrections::Corrected;
use spoonround::store::follow_ups;
use spoonround::store::follow_ups::desk::Narrowed;
use spoonround::store::lists;
use spoonround::store::lists::LostDays;
use spoonround::store::settings;
use spoonround::store::visits;

use crate::made::demo;

const CHILDREN: u32 = 240;

async fn built(file: &std::path::Path, today: NaiveDate) -> (Db, Protocols) {
    let (db, adopted, _) = demo(file, CHILDREN, today).await;
    (db, adopted)
}

fn children(today: NaiveDate) -> Vec<ChildId> {
    let cast = Cast::of(CHILDREN, today);
    (0..CHILDREN).map(|number| story::tell(number, &cast, today).id).collect()
}

/// Everything about follow-ups that is not a random key, child by child.
async fn stored(db: &Db, today: NaiveDate) -> Vec<String> {
    let mut lines = Vec::new();
    for child in children(today) {
        for mut follow_up in follow_ups::of_child(db.direct(), child).await.expect("readable") {
            follow_up.id = domain::ids::FollowUpId(0);
            lines.push(format!("{follow_up:?}"));
        }
    }
    lines.sort();
    lines
}

async fn shows_everything(today: &str) {
    let today: NaiveDate = today.parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, _) = built(&folder.path().join("demo.db"), today).await;

    let mut open = BTreeSet::new();
    let mut states: BTreeMap<FollowUpState, u32> = BTreeMap::new();
    let mut reasons = BTreeSet::new();
    for child in children(today) {
        for follow_up in follow_ups::of_child(db.direct(), child).await.expect("readable") {
            *states.entry(follow_up.state()).or_default() += 1;
            match &follow_up.closing {
                None => _ = open.insert(follow_up.rule),
                Some(closing) => _ = reasons.insert(closing.reason),
            }
            let told = follow_up.closing.as_ref().filter(|closing| closing.reason == CloseReason::SupervisorDecision);
            assert!(told.is_none_or(|closing| closing.note.is_some() && closing.by.is_some()), "{follow_up:?}");
        }
    }
    let missing: Vec<&str> =
        RuleId::ALL.iter().filter(|rule| rule.theme() != Theme::Visit && !open.contains(rule)).map(|rule| rule.code()).collect();
    assert_eq!(missing, Vec::<&str>::new(), "{today}: rules without an open follow-up");
    assert_eq!(states.keys().copied().collect::<Vec<_>>(), FollowUpState::ALL, "{today}: {states:?}");
    let unused: Vec<&str> = CloseReason::ALL.iter().filter(|reason| !reasons.contains(reason)).map(|reason| reason.code()).collect();
    assert_eq!(unused, Vec::<&str>::new(), "{today}: reasons that closed nothing");

    let all = Scope::Everything;
    let missed = lists::visits_missed_in_scope(db.direct(), all, add_days(today, -1), None, 500).await.expect("readable");
    let days =
        LostDays { young_born_after: add_days(today, -365), young_seen_by: add_days(today, -60), older_seen_by: add_days(today, -90) };
    let lost = lists::lost_in_scope(db.direct(), all, days, None, 500).await.expect("readable");
    let unanswered = lists::unanswered_in_scope(db.direct(), all, Narrowed::default(), today, None, 500).await.expect("readable");
    assert!(!missed.is_empty() && !lost.is_empty() && !unanswered.is_empty(), "{today}");
    assert!(missed.len() < 60 && lost.len() < 20 && unanswered.len() < 25, "{} {} {}", missed.len(), lost.len(), unanswered.len());

    let made = corrections::of_children(db.direct(), &children(today)).await.expect("readable");
    let kinds = |is: fn(&Corrected) -> bool| made.iter().filter(|correction| is(&correction.what)).count();
    let counted = [
        kinds(|what| matches!(what, Corrected::Void { .. })),
        kinds(|what| matches!(what, Corrected::Move { .. })),
        kinds(|what| matches!(what, Corrected::Merge { .. })),
    ];
    assert_eq!(counted, [1, 1, 1], "{today}: a visit taken back, one moved, two records merged");

    let marked = settings::all(db.direct()).await.expect("readable");
    assert_eq!(marked.get("demo").map(String::as_str), Some("yes"));
}

#[tokio::test]
async fn a_demo_built_on_a_leap_day_shows_everything() {
    shows_everything("2028-02-29").await;
}

#[tokio::test]
async fn a_demo_built_on_a_first_shows_everything() {
    shows_everything("2026-09-01").await;
}

#[tokio::test]
async fn a_demo_built_on_a_last_shows_everything() {
    shows_everything("2026-12-31").await;
}

#[tokio::test]
async fn built_twice_it_is_the_same_and_used_again_it_is_untouched() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (one, other) = (folder.path().join("one.db"), folder.path().join("other.db"));
    let (first, _) = built(&one, today).await;
    let (second, _) = built(&other, today).await;
    let lines = stored(&first, today).await;
    assert!(lines.len() > 200, "{}", lines.len());
    assert_eq!(lines, stored(&second, today).await);
    let ids = children(today);
    let read = async |db: &Db| visits::of_children_up_to(db.direct(), &ids, today).await.expect("readable");
    assert_eq!(read(&first).await, read(&second).await);
    first.close().await.expect("closed");
    let again = target::open(&one, false).await.expect("the same demo");
    assert_eq!(again.built, Some(Built { children: CHILDREN, on: today }));
    assert_eq!(stored(&again.db, today).await, lines);
}

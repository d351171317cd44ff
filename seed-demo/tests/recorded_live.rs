//! What is loaded at once is what recording it visit by visit would have left.

use std::sync::Arc;

use chrono::Datelike;
use chrono::Duration;
use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::child::ChildStatus;
use domain::child_code::ChildCode;
use domain::draft::desk::read_close;
use domain::ids::ChildId;
use domain::ids::SubmissionKey;
use domain::protocol::Protocols;
use domain::role::Role;
use seed_demo::build;
use seed_demo::programme;
use seed_demo::story;
use seed_demo::story::Story;
use seed_demo::story::cast::Cast;
use spoonround::service::Actor;
use spoonround::service::Context;
use spoonround::service::bulk;
use spoonround::service::bulk::Happened;
use spoonround::service::bulk::Life;
use spoonround::service::bulk::What;
use spoonround::service::change_status;
use spoonround::service::close_follow_up;
use spoonround::service::close_follow_up::Closed;
use spoonround::service::corrections::About;
use spoonround::service::corrections::Done;
use spoonround::service::move_child;
use spoonround::service::move_child::Moved;
use spoonround::service::once::Sent;
use spoonround::service::protocols;
use spoonround::service::reassess::Moment;
use spoonround::service::reassess::reassess;
use spoonround::service::recheck;
use spoonround::service::record_visit;
use spoonround::service::record_visit::Written;
use spoonround::service::tick;
use spoonround::service::why::Which;
use spoonround::store::Db;
use spoonround::store::StoreError;
use spoonround::store::areas;
use spoonround::store::children;
use spoonround::store::follow_ups;
use spoonround::store::people;
use spoonround::store::summaries;
use spoonround::store::visits;

/// Enough to have every plot and some moves among them.
const CHILDREN: u32 = 600;

async fn programme(file: &std::path::Path, cast: &Cast, until: Moment) -> (Db, Arc<Protocols>, programme::Keys) {
    let db = Db::open(&file.to_string_lossy()).await.expect("a new file");
    db.migrate().await.expect("migrated");
    let text = programme::protocol_text();
    let adopted = protocols::adopt(&db, Some((programme::PROTOCOL_NAME, &text)), until.now).await.expect("adopted");
    let keys = db.write(async |tx| programme::fill(tx, cast, until.today, until.now).await).await.expect("filled");
    (db, Arc::new(adopted), keys)
}

/// Records a life as people would: through the use cases where there is one.
async fn record_live(db: &Db, protocols: &Arc<Protocols>, life: &Life) {
    let id = life.child.id;
    children::insert(db.direct(), &life.child).await.expect("registered");
    let code = ChildCode::parse(&life.child.code).expect("a code");
    for (number, happened) in life.happened.iter().enumerate() {
        let moment = happened.moment;
        let child = children::by_ids(db.direct(), &[id]).await.expect("readable").pop().expect("there");
        let by = |role| Context {
            db: db.clone(),
            protocols: Arc::clone(protocols),
            actor: Actor { person: moment.by.unwrap_or(child.worker), name: String::new(), role },
            today: moment.today,
            now: moment.now,
        };
        let worker = Context { actor: Actor { person: child.worker, name: String::new(), role: Role::Worker }, ..by(Role::Worker) };
        let sent = Sent { key: SubmissionKey(id.0 ^ u128::try_from(number).expect("small")), hash: [0; 32] };
        match &happened.what {
            What::Visit { visit, talk, note } => {
                let sent = Sent { key: SubmissionKey(visit.id.0), ..sent };
                record_visit::record(&worker, sent, &code, Written { visit, talk, note: note.as_deref() }).await.expect("recorded");
            }
            What::Correction { becomes, reason } => {
                let all = visits::of_child_up_to(db.direct(), id, moment.today).await.expect("readable");
                let told = all.iter().find(|v| v.visit.id == becomes.id).expect("there");
                let written = Written { visit: becomes, talk: &told.talk, note: told.note.as_deref() };
                let about = About { code: &code, seq: told.entry_seq, version: told.version };
                let done = record_visit::correct(&worker, sent, about, written, reason).await.expect("corrected");
                assert!(matches!(done, Done::At(_)), "{done:?}");
            }
            What::ClosedBySupervisor { rule, category, note } => {
                let form = read_close(&pairs(&[("category", category), ("note", note)])).expect("a good form");
                let ctx = by(Role::Supervisor);
                let closed = close_follow_up::close(&ctx, sent, code.as_str(), *rule, Which::Open, &form).await.expect("closed");
                assert!(matches!(closed, Closed::Done(_)), "{closed:?}");
            }
            What::Moved { area, worker, reason } => {
                let area = areas::by_id(db.direct(), *area).await.expect("readable").expect("an area").code;
                let worker = people::by_id(db.direct(), *worker).await.expect("readable").expect("a worker").sign_in_name;
                let form = [("worker", worker.as_str()), ("area", &area), ("reason", reason)];
                let form = [pairs(&form), date("from", moment.today)].concat();
                let ctx = by(Role::Supervisor);
                let moved = move_child::move_child(&ctx, sent, code.as_str(), child.version, &form).await.expect("moved");
                assert!(matches!(moved, Moved::Done(_)), "{moved:?}");
            }
            What::Left { status: ChildStatus::AgedOut, .. } => {
                tick::tick(db, protocols, moment.today, moment.now).await.expect("a day passed");
            }
            What::Left { status, note } => {
                let form = [("status", status.code()), ("note", note.as_deref().unwrap_or_default())];
                let form = [pairs(&form), date("on", moment.today)].concat();
                let ctx = by(if *status == ChildStatus::Died { Role::Supervisor } else { Role::Worker });
                change_status::leave(&ctx, sent, code.as_str(), &form).await.expect("left");
            }
        }
    }
}

fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
    list.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect()
}

fn date(field: &str, on: NaiveDate) -> Vec<(String, String)> {
    let parts = [("day", on.day().to_string()), ("month", on.month().to_string()), ("year", on.year().to_string())];
    parts.into_iter().map(|(part, value)| (format!("{field}_{part}"), value)).collect()
}

/// What the database holds of a child, random keys and the author of an entry left out, one line a thing.
async fn held(db: &Db, id: ChildId, until: NaiveDate) -> Vec<String> {
    let mut lines = Vec::new();
    let found = follow_ups::of_child(db.direct(), id).await.expect("readable");
    let name = |key| found.iter().find(|f| f.id == key).map(|f| (f.rule, f.opened_by_visit));
    for event in follow_ups::history_of_child(db.direct(), id).await.expect("readable") {
        lines.push(format!(
            "{:?} {} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
            name(event.follow_up),
            event.seq,
            event.at,
            event.on,
            event.kind,
            event.class,
            event.due_on,
            event.visit,
            event.reason
        ));
    }
    for mut follow_up in found {
        follow_up.id = domain::ids::FollowUpId(0);
        lines.push(format!("{follow_up:?}"));
    }
    for mut visit in visits::of_child_up_to(db.direct(), id, until).await.expect("readable") {
        (visit.entry_seq, visit.recorded_by) = (0, visit.worker);
        lines.push(format!("{visit:?}"));
    }
    lines.push(format!("{:?}", children::by_ids(db.direct(), &[id]).await.expect("readable")));
    lines.push(format!("{:?}", summaries::of_child(db.direct(), id).await.expect("readable")));
    lines.sort();
    lines
}

#[tokio::test]
async fn loaded_at_once_and_recorded_one_by_one_are_the_same() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let until = Moment { today, now: today.and_hms_opt(12, 0, 0).expect("noon").and_utc(), by: None };
    let cast = Cast::of(CHILDREN, today);
    let folder = tempfile::tempdir().expect("a folder");
    let (at_once, adopted, keys) = programme(&folder.path().join("at_once.db"), &cast, until).await;
    let (live, _, _) = programme(&folder.path().join("live.db"), &cast, until).await;
    let stories: Vec<Story> = (0..600).map(|number| story::tell(number, &cast, today)).collect();
    // Every plot, everybody who changed worker, and thirty for ordinary lives.
    let chosen = stories.iter().filter(|s| s.plot.is_some() || !s.moves.is_empty() || s.number >= 570);
    let mut lives: Vec<Life> = chosen.map(|story| build::life(story, &keys, until)).collect();
    lives.push(moved_before_it_was_entered(&stories, &keys, until));
    assert!(lives.iter().flat_map(|life| &life.happened).filter(|h| matches!(h.what, What::Moved { .. })).count() > 3);
    bulk::load(&at_once, &adopted, &lives, until).await.expect("loaded");
    for life in &lives {
        record_live(&live, &adopted, life).await;
    }
    // Whatever people did one by one left every row as it is worked out.
    tick::tick(&live, &adopted, until.today, until.now).await.expect("a day passed");
    let found = recheck::recheck(&live, &adopted, until.today, None, &mut |_, _| {}).await.expect("worked out");
    let told: Vec<String> = found.differences.iter().map(ToString::to_string).collect();
    assert!(told.is_empty() && found.children > 50, "{} children:\n{}", found.children, told.join("\n"));
    for life in &lives {
        live.write(async |tx| reassess(tx, &adopted, life.child.id, until).await).await.expect("judged");
        let (one, other) = (held(&at_once, life.child.id, today).await, held(&live, life.child.id, today).await);
        assert_eq!(one, other, "{}", life.child.code);
        assert!(one.len() > 2);
    }
}

/// A visit before the child changed worker, entered after it: it belongs to where the child was.
fn moved_before_it_was_entered(stories: &[Story], keys: &programme::Keys, until: Moment) -> Life {
    let story = stories.iter().find(|s| s.number < 570 && s.plot.is_none() && s.exit.is_none() && s.moves.is_empty() && s.visits.len() > 5);
    let story = story.expect("an ordinary child");
    let mut life = build::life(story, keys, until);
    let visit = life.happened.iter().position(|h| h.moment.today > story.visits[3].visit.on).expect("a later visit") - 1;
    let other = (story.worker + 5) % keys.workers.len();
    let mut moment = life.happened[visit].moment;
    (moment.today, moment.now) = (add_days(moment.today, 1), moment.now + Duration::days(1));
    moment.by = Some(keys.supervisor_of(story.village));
    let what = What::Moved { area: keys.areas[(story.village + 1) % 4], worker: keys.workers[other], reason: "moved".to_owned() };
    let moved = Happened { moment, what };
    let late = &mut life.happened[visit].moment;
    (late.today, late.now) = (add_days(late.today, 2), late.now + Duration::days(2));
    life.happened.insert(visit, moved);
    life.happened.sort_by_key(|h| h.moment.now);
    life
}

#[tokio::test]
async fn a_batch_with_a_taken_code_leaves_nothing() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let until = Moment { today, now: today.and_hms_opt(12, 0, 0).expect("noon").and_utc(), by: None };
    let cast = Cast::of(CHILDREN, today);
    let folder = tempfile::tempdir().expect("a folder");
    let (db, adopted, keys) = programme(&folder.path().join("demo.db"), &cast, until).await;
    let lives: Vec<Life> = (1..3).map(|number| build::life(&story::tell(number, &cast, today), &keys, until)).collect();
    let mut twice = lives.clone();
    twice[1].child.code = twice[0].child.code.clone();
    let refused = bulk::load(&db, &adopted, &twice, until).await;
    assert!(matches!(refused, Err(StoreError::Conflict { .. })), "{refused:?}");
    assert_eq!(children::by_ids(db.direct(), &[lives[0].child.id]).await.expect("readable"), []);
    bulk::load(&db, &adopted, &lives, until).await.expect("loaded");
}

//! Puts the stories into the database, a batch of children at a time.

use chrono::DateTime;
use chrono::Duration;
use chrono::NaiveDate;
use chrono::Utc;
use domain::calendar::add_days;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::protocol::Protocols;
use indicatif::ProgressBar;
use indicatif::ProgressStyle;
use spoonround::service::bulk;
use spoonround::service::bulk::Happened;
use spoonround::service::bulk::Life;
use spoonround::service::bulk::What;
use spoonround::service::name_key::skeleton;
use spoonround::service::reassess::Moment;
use spoonround::store::Db;
use spoonround::store::children::ChildRecord;

use crate::programme;
use crate::programme::Keys;
use crate::put_right;
use crate::story;
use crate::story::Entered;
use crate::story::Story;
use crate::story::cast::Cast;
use crate::target;
use crate::target::Built;

/// Children written in one transaction: some tens of thousands of rows.
const BATCH: u32 = 500;
/// The demo's clock is three hours ahead of UTC all year.
const AHEAD_HOURS: i64 = 3;

/// Builds the demo: programme, people, and each child's story up to the day of `built`.
///
/// # Errors
/// A sentence for whoever starts the demo; what was built before is taken away at the next start.
pub async fn build(
    db: &Db,
    protocols: &Protocols,
    cast: &Cast,
    built: &Built,
    now: DateTime<Utc>,
    progress: ProgressBar,
) -> Result<(), String> {
    let broken = |error: spoonround::store::StoreError| target::told(&error);
    let keys = db.write(async |tx| programme::fill(tx, cast, built.on, now).await).await.map_err(broken)?;
    let until = Moment { today: built.on, now, by: None };
    for first in (0..built.children).step_by(usize::try_from(BATCH).unwrap_or(1)) {
        let last = built.children.min(first.saturating_add(BATCH));
        let lives: Vec<Life> = (first..last).map(|number| life(&story::tell(number, cast, built.on), &keys, until)).collect();
        for some in lives.chunks(50) {
            bulk::load(db, protocols, some, until).await.map_err(broken)?;
            progress.inc(u64::try_from(some.len()).unwrap_or(0));
        }
    }
    let of = |number: u32| story::tell(number, cast, built.on);
    for story in (0..built.children).map(of).filter(|story| !story.put_right.is_empty()) {
        put_right::put_right(db, protocols, &keys, &story, &of, until).await.map_err(|refused| refused.to_string())?;
    }
    progress.finish_and_clear();
    db.refresh_statistics().await.map_err(broken)?;
    target::finished(db, built).await.map_err(broken)
}

/// A bar on the terminal; nothing where there is none.
#[must_use]
pub fn on_screen(children: u32) -> ProgressBar {
    let style =
        ProgressStyle::with_template("Making families {bar:40} {pos}/{len}, {eta} to go").unwrap_or_else(|_| ProgressStyle::default_bar());
    ProgressBar::new(u64::from(children)).with_style(style)
}

/// A story as the service takes it: every part with the instant at which it was recorded.
#[must_use]
pub fn life(story: &Story, keys: &Keys, until: Moment) -> Life {
    let worker = keys.workers[story.worker];
    let registered =
        entered_at(story.registered_on, story.visits.first().map_or(MORNING, |told| told.entered), until.now) - Duration::minutes(4);
    let mut happened: Vec<Happened> = Vec::new();
    let with = |on: NaiveDate| story.moves.iter().rev().find(|moved| moved.on <= on).map_or(worker, |moved| keys.workers[moved.worker]);
    for told in &story.visits {
        let today = add_days(told.visit.on, i32::from(told.entered.days_later));
        let now = entered_at(told.visit.on, told.entered, until.now);
        let what = What::Visit { visit: Box::new(told.visit.clone()), talk: told.talk.clone(), note: told.note.clone() };
        happened.push(Happened { moment: Moment { today, now, by: Some(with(told.visit.on)) }, what });
    }
    for moved in &story.moves {
        let what = What::Moved { area: keys.areas[moved.village], worker: keys.workers[moved.worker], reason: moved.reason.to_owned() };
        happened.push(Happened { moment: at(moved.on, EARLY, Some(keys.supervisor_of(story.village)), until), what });
    }
    for correction in &story.corrections {
        let what = What::Correction { becomes: Box::new(correction.becomes.clone()), reason: correction.reason.to_owned() };
        happened.push(Happened { moment: at(correction.on, EVENING, Some(with(correction.on)), until), what });
    }
    for closing in &story.closings {
        let what = What::ClosedBySupervisor { rule: closing.rule, category: closing.category.to_owned(), note: closing.note.to_owned() };
        happened.push(Happened { moment: at(closing.on, EVENING, Some(keys.supervisor_of(story.village)), until), what });
    }
    // Told in the order of recording, whatever day it is about.
    happened.sort_by_key(|happened| happened.moment.now);
    if let Some(exit) = &story.exit {
        let by = if exit.by_supervisor { Some(keys.supervisor_of(story.village)) } else { leaver(story, with(exit.on)) };
        let last = happened.last().map_or(registered, |happened| happened.moment.now);
        let mut moment = at(exit.on, EVENING, by, until);
        moment.now = Ord::max(moment.now, last);
        happened.push(Happened { moment, what: What::Left { status: exit.status, note: exit.note.map(str::to_owned) } });
    }
    Life { child: record(story, keys, worker, registered), home: story.home, happened }
}

/// Time itself lets a child grow out of the programme; a worker records everything else.
fn leaver(story: &Story, worker: PersonId) -> Option<PersonId> {
    (story.facts().status != domain::child::ChildStatus::AgedOut).then_some(worker)
}

const MORNING: Entered = Entered { days_later: 0, minute: 9 * 60 };
const EARLY: Entered = Entered { days_later: 0, minute: 6 * 60 };
const EVENING: Entered = Entered { days_later: 0, minute: 18 * 60 };

fn at(on: NaiveDate, entered: Entered, by: Option<PersonId>, until: Moment) -> Moment {
    Moment { today: on, now: entered_at(on, entered, until.now), by }
}

/// The instant of an entry, never after now.
fn entered_at(on: NaiveDate, entered: Entered, now: DateTime<Utc>) -> DateTime<Utc> {
    let local = add_days(on, i32::from(entered.days_later)).and_hms_opt(0, 0, 0).unwrap_or_default().and_utc();
    let instant = local + Duration::minutes(i64::from(entered.minute)) - Duration::hours(AHEAD_HOURS);
    Ord::min(instant, now)
}

fn record(story: &Story, keys: &Keys, worker: PersonId, registered: DateTime<Utc>) -> ChildRecord {
    let child = &story.child;
    let mut facts = story.facts();
    facts.status = domain::child::ChildStatus::Active;
    facts.looks_like_another = false;
    ChildRecord {
        id: story.id,
        code: story.code.as_str().to_owned(),
        name: child.name.clone(),
        known_as: child.known_as.clone(),
        name_key: skeleton(&child.name),
        facts,
        gestation_source: child.gestation_source,
        caregiver_name: child.caregiver.clone(),
        caregiver_relation: child.relation.clone(),
        phone: child.phone.clone(),
        directions: child.directions.clone(),
        area: keys.areas[story.village],
        worker,
        registered_by: worker,
        recorded_at: registered,
        consent_on: story.registered_on,
        consent_by: child.consent_by.clone(),
        early_breastfeeding: child.early_breastfeeding,
        first_two_days_milk_only: child.first_days_milk_only,
        returns_to_work_on: child.returns_to_work_on,
        looks_like: None::<ChildId>,
        different_child_decided: child.other_child,
        left_on: None,
        left_note: None,
        version: 1,
    }
}

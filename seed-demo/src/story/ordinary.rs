//! An ordinary life: visits as they come, most of them good news, with a poor month or a lapse now and then.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::child::ChildStatus;
use domain::food::Response;
use domain::ids::VisitId;
use domain::rule::RuleId;
use domain::visit::Contact;
use domain::visit::Visit;

use crate::story::Exit;
use crate::story::Move;
use crate::story::Story;
use crate::story::Told;
use crate::story::cast::Cast;
use crate::story::dice::Dice;
use crate::story::feeding::Amiss;
use crate::story::feeding::offer;
use crate::story::growth::Dip;
use crate::story::growth::kg;
use crate::story::infant::Infant;
use crate::story::slots;

/// Remarks that a worker might jot down.
const NOTES: [&str; 12] = [
    "Family at the millet harvest, met at the field edge.",
    "Grandmother was there and asked good questions.",
    "New scale strap, checked with the 5 kg water can.",
    "Mother sells fish in the mornings, better to come after noon.",
    "Path flooded, came by the upper way.",
    "Older sister helps with the porridge.",
    "Slept through the weighing.",
    "Father cooked today; showed him how to pound the fish.",
    "Market day, short visit.",
    "Laughs at the tape. Keep it away from the mouth.",
    "Talked about washing hands before feeding.",
    "Two teeth!",
];

/// Tells an ordinary child's life up to today.
pub fn tell(number: u32, cast: &Cast, today: NaiveDate) -> Story {
    let mut dice = Dice::of(number);
    let age = dice.between(9, 830);
    let mut infant = Infant::aged(age, today, cast, dice);
    let registered_on = registration_day(&mut infant, today);
    troubles(&mut infant);
    let exit = exit(&mut infant, registered_on, today);
    let until = exit.as_ref().map_or(today, |exit| Ord::min(exit.on, today));
    let visits = visits(&mut infant, registered_on, until, today);
    let moves = moves(&mut infant, cast, registered_on, until);
    let child = infant.registration();
    Story {
        number,
        id: infant.id,
        code: infant.code,
        plot: None,
        child,
        home: None,
        registered_on,
        worker: infant.worker,
        village: infant.village,
        moves,
        visits,
        corrections: Vec::new(),
        closings: Vec::new(),
        exit,
        put_right: Vec::new(),
    }
}

/// Soon after birth, or when the programme came to the village.
fn registration_day(infant: &mut Infant, today: NaiveDate) -> NaiveDate {
    let dice = &mut infant.dice;
    let after_birth = match dice.between(1, 100) {
        1..=62 => dice.between(2, 20),
        63..=88 => dice.between(21, 95),
        _ => dice.between(96, 240),
    };
    let opening = add_days(Cast::started_on(today), dice.between(0, 45));
    Ord::min(Ord::max(add_days(infant.born, after_birth), opening), today)
}

/// What goes amiss in this life: at most one poor month and four lapses; a few grow small all along.
fn troubles(infant: &mut Infant) {
    let dice = &mut infant.dice;
    if dice.chance(0.3) {
        let (at, days) = (dice.between(60, 640), dice.between(18, 40));
        infant.track.dip = Some(Dip { at, depth: 0.4 + 0.01 * f64::from(dice.between(0, 50)), days });
    }
    // Enough of them that a month's count is no secret in a programme of this size.
    if dice.chance(0.18) {
        let track = &mut infant.track;
        track.laz = -1.95 - 0.01 * f64::from(dice.between(0, 80));
        track.waz = -1.8 - 0.01 * f64::from(dice.between(0, 90));
        if track.correction == 0 {
            // Small from the start, or the line of most of them would fall.
            track.birth_weight_g = (kg(track.sex, 0, 0.7 * track.waz) * 100.0).round() * 10.0;
        }
    }
    for _ in 0..dice.between(0, 4) {
        let what = *dice.pick(&Amiss::USUAL);
        let (from, to) = what.ages();
        let begins = dice.between(from, to);
        infant.feeding.amiss.push((what, begins, begins + dice.between(25, 90)));
    }
}

fn exit(infant: &mut Infant, registered_on: NaiveDate, today: NaiveDate) -> Option<Exit> {
    let last = slots::last_day(infant.born);
    let dice = &mut infant.dice;
    let leaves = dice.chance(0.05);
    let after = dice.between(25, 400);
    let (status, note) = *dice.pick(&[
        (ChildStatus::Moved, "Family moved to the far shore."),
        (ChildStatus::Moved, "Moved in with relatives outside the programme."),
        (ChildStatus::TransferredOut, "Now with the programme of the next district."),
        (ChildStatus::Refused, "The family prefers not to be visited."),
    ]);
    let on = add_days(registered_on, after);
    if leaves && on < Ord::min(today, last) {
        return Some(Exit { status, on, note: Some(note), by_supervisor: false });
    }
    let over = add_days(last, 1);
    (over <= today).then_some(Exit { status: ChildStatus::AgedOut, on: over, note: None, by_supervisor: false })
}

/// Visits from registration on: most slots, some returns after bad news, a call now and then.
fn visits(infant: &mut Infant, registered_on: NaiveDate, until: NaiveDate, today: NaiveDate) -> Vec<Told> {
    let faithful = 0.8 + 0.01 * f64::from(infant.dice.between(0, 18));
    // A few families are not found any more for a while.
    let vanishes = infant.dice.chance(0.03).then(|| add_days(today, -infant.dice.between(15, 80)));
    let mut days = vec![registered_on];
    for target in slots::targets(infant.born) {
        let meant = add_days(target, off_target(infant, target));
        if meant > add_days(registered_on, 5) && infant.dice.chance(faithful) {
            days.push(meant);
        }
    }
    let mut told: Vec<Told> = Vec::new();
    let mut last: Option<NaiveDate> = None;
    let mut waiting: std::collections::VecDeque<NaiveDate> = days.into();
    while let Some(day) = waiting.pop_front() {
        if day > until || (last.is_some() && vanishes.is_some_and(|from| day >= from)) {
            break;
        }
        if last.is_some_and(|last| days_between(last, day) < 3) {
            continue;
        }
        if infant.dice.chance(0.03)
            && let Some(last) = last
            && days_between(last, day) > 20
        {
            let call = add_days(last, days_between(last, day) / 2);
            let visit = phone_call(infant, call);
            told.push(infant.told(visit, today));
        }
        let visit = as_found(infant, day, last);
        let returns = bad_news(infant, day) && infant.dice.chance(0.75);
        let mut entry = infant.told(visit, today);
        if infant.dice.chance(0.08) {
            entry.note = Some((*infant.dice.pick(&NOTES)).to_owned());
        }
        told.push(entry);
        if returns {
            let again = add_days(day, infant.dice.between(6, 12));
            if waiting.front().is_none_or(|&next| next > add_days(again, 3)) {
                waiting.push_front(again);
            }
        }
        last = Some(day);
    }
    told
}

/// Days off the target: mostly within the window.
fn off_target(infant: &mut Infant, target: NaiveDate) -> i32 {
    let age = infant.age(target);
    let spread = if age < 30 { 1.0 } else { 2.6 };
    infant.dice.around(spread).round() as i32 + i32::from(age > 30)
}

/// A usual visit with what real life leaves out.
fn as_found(infant: &mut Infant, on: NaiveDate, last: Option<NaiveDate>) -> Visit {
    let mut v = infant.visit(on, last);
    let age = infant.age(on);
    let early = infant.track.correction > 0 || infant.track.birth_weight_g < 2_500.0;
    let dice = &mut infant.dice;
    if dice.chance(0.08) {
        v.contact = Contact::Clinic;
    }
    if last.is_some_and(|last| days_between(last, on) < 21) || dice.chance(0.3) {
        v.length = None;
    }
    if dice.chance(0.025) {
        v.weight = None;
    }
    if dice.chance(0.1) {
        v.muac = None;
    }
    if dice.chance(0.12) {
        v.oedema = None;
    }
    if dice.chance(0.05) {
        v.danger_signs = None;
    }
    if dice.chance(0.06) {
        v.ill = Some(true);
    }
    if dice.chance(0.06) {
        v.groups = None;
        v.iron_source = None;
    }
    if dice.chance(0.06) {
        v.low_value = None;
        v.unhealthy_food = None;
    }
    if dice.chance(0.04) {
        v.texture_usual = None;
        v.swallow_trouble = None;
    }
    if early && age < 62 {
        v.plans = Some(BTreeSet::from([RuleId::BirthLow]));
    } else if v.breastfed == Some(false) {
        v.plans = Some(BTreeSet::from([RuleId::BreastfeedingStopped]));
    }
    if v.foods.len() > 1 && dice.chance(0.004) {
        v.foods.pop();
        v.foods.push(offer("tomato", 1, Response::Refused));
    }
    v
}

/// Whether the worker comes back sooner than the next slot.
fn bad_news(infant: &Infant, on: NaiveDate) -> bool {
    let age = infant.age(on);
    let pressing = [
        Amiss::FewMeals,
        Amiss::FewGroups,
        Amiss::Smooth,
        Amiss::Watery,
        Amiss::BreastTrouble,
        Amiss::Appetite,
        Amiss::Water,
        Amiss::NoIron,
    ];
    infant.track.dip.is_some_and(|dip| dip.at_age(age) > 0.3) || pressing.iter().any(|&what| infant.feeding.is(what, age))
}

/// A call: how the child is, no more.
fn phone_call(infant: &mut Infant, on: NaiveDate) -> Visit {
    let mut v = Visit::empty(VisitId(infant.dice.key()), on, Contact::Phone);
    v.danger_signs = Some(BTreeSet::new());
    v.ill = Some(infant.dice.chance(0.1));
    v.breastfed = Some(infant.feeding.weaned_at.is_none_or(|at| infant.age(on) < at));
    v
}

/// A few families change worker, within the village or to another.
fn moves(infant: &mut Infant, cast: &Cast, registered_on: NaiveDate, until: NaiveDate) -> Vec<Move> {
    let span = days_between(registered_on, until);
    if span < 60 || !infant.dice.chance(0.04) {
        return Vec::new();
    }
    let worker = cast.worker(&mut infant.dice);
    if worker == infant.worker {
        return Vec::new();
    }
    let village = cast.village_of(worker);
    let reason = if village == infant.village { "Caseloads shared out anew" } else { "Family moved to another village" };
    vec![Move { on: add_days(registered_on, infant.dice.between(30, span - 10)), worker, village, reason }]
}

//! One child's list under two protocols, entry by entry. It reads and writes nothing.

use std::collections::BTreeMap;

use domain::assess::Assessment;
use domain::calendar::add_days;
use domain::child::both_names;
use domain::rule::RuleId;

use crate::service::rehearse::Change;
use crate::service::rehearse::Entry;
use crate::service::rehearse::Kind;
use crate::service::rehearse::Names;
use crate::service::rehearse::Rehearsal;
use crate::service::rehearse::Tally;
use crate::service::rehearse::WEEKS;
use crate::store::children::ChildRecord;

/// What stands on the list: one open follow-up a rule, and the lists of visits.
fn entries(a: &Assessment) -> BTreeMap<RuleId, Entry> {
    let open = a.open().into_iter().map(|f| (f.rule, (Some(f.class), f.due_on)));
    open.chain(a.lists.iter().map(|list| (list.rule, (None, list.counted_from)))).collect()
}

/// Rules of the follow-ups opened in the last weeks.
fn new_ones(a: &Assessment) -> Vec<RuleId> {
    let since = add_days(a.as_of, -7 * WEEKS);
    a.follow_ups.iter().filter(|f| f.opened_on > since).map(|f| f.rule).collect()
}

fn kind(now: Option<Entry>, then: Option<Entry>) -> Option<Kind> {
    match (now, then) {
        (None, None) => None,
        (None, Some(_)) => Some(Kind::Opened),
        (Some(_), None) => Some(Kind::Closed),
        (Some(now), Some(then)) if now == then => None,
        // The most severe class comes first.
        (Some((now, _)), Some((then, _))) if then < now => Some(Kind::Raised),
        (Some((now, _)), Some((then, _))) if then > now => Some(Kind::Lowered),
        (Some(_), Some(_)) => Some(Kind::Moved),
    }
}

/// Adds a child's two judgements to what was found.
pub(super) fn add(found: &mut Rehearsal, names: &Names, child: &ChildRecord, now: &Assessment, then: &Assessment) {
    let area = names.areas.get(&child.area).cloned().unwrap_or_default();
    let worker = names.people.get(&child.worker).cloned().unwrap_or_default();
    let (listed_now, listed_then) = (entries(now), entries(then));
    found.children += 1;
    found.on_list.0 += u64::from(!listed_now.is_empty());
    found.on_list.1 += u64::from(!listed_then.is_empty());
    let mut touched = false;
    for rule in RuleId::ALL {
        let (entry_now, entry_then) = (listed_now.get(rule).copied(), listed_then.get(rule).copied());
        if entry_now.is_none() && entry_then.is_none() {
            continue;
        }
        let kind = kind(entry_now, entry_then);
        each(found, *rule, &area, &worker, &|tally| {
            tally.now += u64::from(entry_now.is_some());
            tally.then += u64::from(entry_then.is_some());
            match kind {
                None => {}
                Some(Kind::Opened) => tally.opened += 1,
                Some(Kind::Closed) => tally.closed += 1,
                Some(Kind::Raised) => tally.raised += 1,
                Some(Kind::Lowered) => tally.lowered += 1,
                Some(Kind::Moved) => tally.moved += 1,
            }
        });
        if let Some((Some(class), _)) = entry_now {
            found.by_class.entry(class).or_default().0 += 1;
        }
        if let Some((Some(class), _)) = entry_then {
            found.by_class.entry(class).or_default().1 += 1;
        }
        if let Some(kind) = kind {
            touched = true;
            found.changes.push(Change {
                child: child.code.clone(),
                called: both_names(&child.name, child.known_as.as_deref()),
                area: area.clone(),
                worker: worker.clone(),
                rule: *rule,
                kind,
                now: entry_now,
                then: entry_then,
            });
        }
    }
    found.touched += u64::from(touched);
    for rule in new_ones(now) {
        each(found, rule, &area, &worker, &|tally| tally.new_now += 1);
    }
    for rule in new_ones(then) {
        each(found, rule, &area, &worker, &|tally| tally.new_then += 1);
    }
}

/// Counts in all, by rule, by village and by worker alike.
fn each(found: &mut Rehearsal, rule: RuleId, area: &str, worker: &str, count: &dyn Fn(&mut Tally)) {
    count(&mut found.all);
    count(found.by_rule.entry(rule).or_default());
    count(found.by_area.entry(area.to_owned()).or_default());
    count(found.by_worker.entry(worker.to_owned()).or_default());
}

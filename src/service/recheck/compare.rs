//! What is stored of one child beside what its visits give. It reads and writes nothing.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::fmt::Debug;

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::ids::FollowUpId;
use domain::ids::VisitId;
use domain::protocol::Protocols;
use domain::rule::RuleId;

use crate::service::reassess;
use crate::service::recheck::Rechecked;
use crate::store::children::ChildRecord;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpEvent;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::summaries;
use crate::store::summaries::SummaryRecord;
use crate::store::visits::VisitRecord;

/// Something that is stored otherwise than it is worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Difference {
    /// Code of the child.
    pub child: String,
    /// What: a follow-up by rule and day, a visit by day and number, or the line in the lists.
    pub place: String,
    /// Which figure.
    pub field: String,
    /// As stored.
    pub stored: String,
    /// As worked out.
    pub computed: String,
}

impl std::fmt::Display for Difference {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { child, place, field, stored, computed } = self;
        write!(f, "child {child}, {place}, {field}: stored {stored}, worked out {computed}")
    }
}

/// Everything the database holds of one child.
pub(super) struct Held<'a> {
    pub child: &'a ChildRecord,
    /// Visits up to the day.
    pub records: &'a [VisitRecord],
    pub follow_ups: &'a [FollowUpRecord],
    pub last_events: &'a BTreeMap<FollowUpId, FollowUpEvent>,
    /// The line in the lists, with its order of work.
    pub line: Option<&'a (SummaryRecord, String)>,
}

/// Notes every difference of a child.
pub(super) fn compare(held: &Held<'_>, protocols: &Protocols, today: NaiveDate, found: &mut Rechecked) {
    let child = held.child;
    let assessment = reassess::judge(protocols, child, held.records, held.follow_ups, today);
    let mut noting = Noting { child: &child.code, place: String::new(), found: &mut found.differences };
    for stored in held.records {
        found.visits += 1;
        noting.place = format!("visit of {} (entry {})", stored.visit.on, stored.entry_seq);
        if let Some(judged) = assessment.visit(stored.visit.id) {
            let mut computed = reassess::judged_record(stored, judged);
            computed.sex = child.facts.sex;
            computed.age_days = u16::try_from(days_between(child.facts.born, stored.visit.on)).unwrap_or(0);
            visit(&mut noting, stored, &computed);
        } else {
            noting.note("judgement", &"there", &"none");
        }
    }
    let computed = reassess::follow_up_records(child, &assessment, held.follow_ups);
    found.follow_ups += u64::try_from(computed.len()).unwrap_or(0);
    found.kept_from_before += follow_ups(&mut noting, held, &computed);
    let line = reassess::summary(child, held.records, &assessment);
    noting.place = "line in the lists".to_owned();
    match held.line {
        None => noting.note("line", &"none", &"one"),
        Some((stored, order)) => {
            noting.same("order of work", order, &summaries::work_key(&line));
            if stored.next_change_on.is_some_and(|day| day <= today) {
                found.waiting += 1;
            }
            summary(&mut noting, stored, &line);
        }
    }
}

struct Noting<'a> {
    child: &'a str,
    place: String,
    found: &'a mut Vec<Difference>,
}

impl Noting<'_> {
    fn note(&mut self, field: &str, stored: &dyn Debug, computed: &dyn Debug) {
        self.found.push(Difference {
            child: self.child.to_owned(),
            place: self.place.clone(),
            field: field.to_owned(),
            stored: plain(stored),
            computed: plain(computed),
        });
    }

    fn same<T: PartialEq + Debug>(&mut self, field: &str, stored: &T, computed: &T) {
        if stored != computed {
            self.note(field, stored, computed);
        }
    }
}

/// As a reader would write it: without the signs of "there is one".
fn plain(value: &dyn Debug) -> String {
    let text = format!("{value:?}");
    match text.strip_prefix("Some(").and_then(|rest| rest.strip_suffix(')')) {
        Some(inner) => inner.to_owned(),
        None if text == "None" => "nothing".to_owned(),
        None => text.trim_matches('"').to_owned(),
    }
}

fn visit(noting: &mut Noting<'_>, stored: &VisitRecord, computed: &VisitRecord) {
    noting.same("sex", &stored.sex, &computed.sex);
    noting.same("age in days", &stored.age_days, &computed.age_days);
    noting.same("z-scores in hundredths", &stored.indices, &computed.indices);
    noting.same("suspect measurements", &stored.suspect, &computed.suspect);
    noting.same("protocol", &stored.protocol_id, &computed.protocol_id);
    noting.same("protocol version", &stored.protocol_version, &computed.protocol_version);
    noting.same("stage", &stored.stage, &computed.stage);
}

/// Compares by rule and opening visit; answers how many closed ones are kept that no visit gives any more.
fn follow_ups(noting: &mut Noting<'_>, held: &Held<'_>, computed: &[FollowUpRecord]) -> u64 {
    let key = |f: &FollowUpRecord| (f.rule, f.opened_by_visit);
    let stored: BTreeMap<(RuleId, VisitId), &FollowUpRecord> = held.follow_ups.iter().map(|f| (key(f), f)).collect();
    let wanted: BTreeSet<(RuleId, VisitId)> = computed.iter().map(key).collect();
    for want in computed {
        noting.place = place(want);
        match stored.get(&key(want)) {
            None => noting.note("follow-up", &"none", &"one"),
            Some(have) => follow_up(noting, have, want),
        }
    }
    let mut kept = 0;
    for have in held.follow_ups {
        noting.place = place(have);
        if !wanted.contains(&key(have)) {
            if have.closing.is_none() {
                noting.note("follow-up", &"open", &"none");
            } else {
                kept += 1;
            }
        }
        history(noting, have, held.last_events.get(&have.id));
    }
    kept
}

fn place(f: &FollowUpRecord) -> String {
    format!("follow-up {} opened {}", f.rule.code(), f.opened_on)
}

fn follow_up(noting: &mut Noting<'_>, stored: &FollowUpRecord, computed: &FollowUpRecord) {
    // Closed ones stay with the area and worker that closed them.
    if stored.closing.is_none() || computed.closing.is_none() {
        noting.same("area", &stored.area, &computed.area);
        noting.same("worker", &stored.worker, &computed.worker);
    }
    noting.same("class", &stored.class.code(), &computed.class.code());
    noting.same("opened on", &stored.opened_on, &computed.opened_on);
    noting.same("due on", &stored.due_on, &computed.due_on);
    noting.same("last fired on", &stored.last_fired_on, &computed.last_fired_on);
    noting.same("visit that last fired it", &stored.last_fired_visit, &computed.last_fired_visit);
    noting.same("closing", &stored.closing, &computed.closing);
    noting.same("numbers", &stored.evidence, &computed.evidence);
    noting.same("also true", &stored.also_true, &computed.also_true);
    noting.same("protocol", &stored.protocol_id, &computed.protocol_id);
    noting.same("protocol version", &stored.protocol_version, &computed.protocol_version);
    noting.same("first followed up on", &stored.first_followed_up_on, &computed.first_followed_up_on);
    noting.same("due day until then", &stored.first_followed_up_due, &computed.first_followed_up_due);
    noting.same("first outcome on", &stored.first_outcome_on, &computed.first_outcome_on);
    noting.same("referred on", &stored.referred_on, &computed.referred_on);
}

/// The last line of a follow-up's history tells its class and due day, and whether it is closed.
fn history(noting: &mut Noting<'_>, stored: &FollowUpRecord, last: Option<&FollowUpEvent>) {
    let Some(last) = last else {
        noting.note("history", &"none", &"at least one line");
        return;
    };
    noting.same("class at the end of its history", &last.class.code(), &stored.class.code());
    noting.same("due day at the end of its history", &last.due_on, &stored.due_on);
    let told = match last.kind {
        EventKind::Closed => Some(false),
        EventKind::Opened | EventKind::Reopened => Some(true),
        // Said of open and of closed ones alike.
        EventKind::Refreshed | EventKind::Raised | EventKind::Changed | EventKind::Outcome => None,
    };
    if told.is_some_and(|open| open != stored.closing.is_none()) {
        noting.note("end of its history", &last.kind.code(), if stored.closing.is_none() { &"open" } else { &"closed" });
    }
}

fn summary(noting: &mut Noting<'_>, stored: &SummaryRecord, computed: &SummaryRecord) {
    // Named one by one, so that a new field is not forgotten here.
    let SummaryRecord {
        child: _,
        code: _,
        area: _,
        worker: _,
        born: _,
        status: _,
        name_key: _,
        top: _,
        open_count: _,
        urgent_unanswered_since: _,
        referral_due_on: _,
        slot: _,
        overdue_since: _,
        hold_since: _,
        last_seen_on: _,
        last_weight: _,
        last_waz: _,
        next_change_on: _,
        // The day of its working-out may be any since the last change.
        assessed_on: _,
        protocol_version: _,
    } = stored;
    noting.same("area", &stored.area, &computed.area);
    noting.same("worker", &stored.worker, &computed.worker);
    noting.same("birth date", &stored.born, &computed.born);
    noting.same("status", &stored.status.code(), &computed.status.code());
    noting.same("name for finding", &stored.name_key, &computed.name_key);
    noting.same("first follow-up", &stored.top, &computed.top);
    noting.same("open follow-ups", &stored.open_count, &computed.open_count);
    noting.same("urgent without outcome since", &stored.urgent_unanswered_since, &computed.urgent_unanswered_since);
    noting.same("referral without outcome after", &stored.referral_due_on, &computed.referral_due_on);
    noting.same("next visit", &stored.slot, &computed.slot);
    noting.same("visit overdue since", &stored.overdue_since, &computed.overdue_since);
    noting.same("food on hold since", &stored.hold_since, &computed.hold_since);
    noting.same("last seen on", &stored.last_seen_on, &computed.last_seen_on);
    noting.same("last weight", &stored.last_weight, &computed.last_weight);
    noting.same("last weight for age", &stored.last_waz, &computed.last_waz);
    noting.same("next change on", &stored.next_change_on, &computed.next_change_on);
    // A child that left keeps the version of its last day.
    if computed.next_change_on.is_some() {
        noting.same("protocol version", &stored.protocol_version, &computed.protocol_version);
    }
}

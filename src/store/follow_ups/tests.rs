//! Questions about stored follow-ups, on a real database file.

use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::role::Role;
use sea_orm::ConnectionTrait;

use super::*;
use crate::store::children::ChildRecord;
use crate::store::people;
use crate::store::testing::TestDb;
use crate::store::testing::a_follow_up;
use crate::store::testing::a_person;
use crate::store::testing::a_visit;
use crate::store::testing::day;
use crate::store::testing::noon;
use crate::store::testing::two_families;
use crate::store::visits;

/// A day's record by worker 1.
fn recorded(on: &str) -> Recorded {
    Recorded { at: noon(on), today: day(on), by: Some(PersonId(1)) }
}

/// Two families; the first child has visits 1 to 3, ten days apart from 10 September, the second has visit 4.
async fn families() -> (TestDb, [ChildRecord; 2]) {
    let test = TestDb::new().await;
    let children = two_families(&test.db).await.expect("two children");
    for (n, child, on) in [(1, 0, "2026-09-10"), (2, 0, "2026-09-20"), (3, 0, "2026-09-30"), (4, 1, "2026-09-10")] {
        visits::insert(test.db.direct(), &a_visit(n, &children[child], day(on))).await.expect("recorded");
    }
    (test, children)
}

async fn sync(test: &TestDb, child: &ChildRecord, found: &[FollowUpRecord], on: &str) -> Result<(), StoreError> {
    test.db.write(async |tx| replace_all_of_child(tx, child.id, found, recorded(on)).await).await
}

async fn stored(test: &TestDb, child: &ChildRecord) -> Vec<FollowUpRecord> {
    of_child(test.db.direct(), child.id).await.expect("readable")
}

async fn kinds(test: &TestDb, child: &ChildRecord) -> Vec<(u32, EventKind)> {
    let history = history_of_child(test.db.direct(), child.id).await.expect("readable");
    history.iter().map(|e| (e.seq, e.kind)).collect()
}

fn closed(mut follow_up: FollowUpRecord, reason: CloseReason, on: &str) -> FollowUpRecord {
    let by = (reason == CloseReason::SupervisorDecision).then_some(PersonId(1));
    let (category, note) = (by.map(|_| "known".to_owned()), by.map(|_| "seen at the clinic".to_owned()));
    follow_up.closing = Some(Closing { reason, on: day(on), by, category, note, replaced_by: None });
    follow_up
}

#[tokio::test]
async fn a_follow_up_comes_back_with_its_numbers() {
    let (test, [child, _]) = families().await;
    let mut one = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    one.evidence = Evidence::from([(EvidenceKey::Waz, Quantity::ZHundredths(-233)), (EvidenceKey::Limit, Quantity::ZHundredths(-200))]);
    one.also_true = [RuleId::MealsFew, RuleId::IronNone].into();
    one.referred_on = Some(day("2026-09-10"));
    sync(&test, &child, std::slice::from_ref(&one), "2026-09-10").await.expect("stored");
    assert_eq!(stored(&test, &child).await, [one]);
    assert_eq!(kinds(&test, &child).await, [(1, EventKind::Opened)]);
}

#[tokio::test]
async fn the_same_findings_again_change_nothing_and_keep_the_key() {
    let (test, [child, _]) = families().await;
    let one = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    sync(&test, &child, std::slice::from_ref(&one), "2026-09-10").await.expect("stored");
    let same = FollowUpRecord { id: FollowUpId(99), ..one.clone() };
    sync(&test, &child, &[same], "2026-09-11").await.expect("stored");
    assert_eq!(stored(&test, &child).await, [one]);
    assert_eq!(kinds(&test, &child).await, [(1, EventKind::Opened)]);
}

#[tokio::test]
async fn each_change_becomes_a_line_of_the_history() {
    let (test, [child, _]) = families().await;
    let mut one = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    sync(&test, &child, std::slice::from_ref(&one), "2026-09-10").await.expect("opened");
    one.class = Class::Today;
    (one.last_fired_visit, one.last_fired_on, one.due_on) = (VisitId(2), day("2026-09-20"), day("2026-09-22"));
    sync(&test, &child, std::slice::from_ref(&one), "2026-09-20").await.expect("raised");
    one.first_outcome_on = Some(day("2026-09-30"));
    let done = closed(one.clone(), CloseReason::SeenOutcomeRecorded, "2026-09-30");
    sync(&test, &child, std::slice::from_ref(&done), "2026-09-30").await.expect("closed");
    sync(&test, &child, &[one], "2026-10-01").await.expect("the closing visit was corrected");
    assert_eq!(
        kinds(&test, &child).await,
        [(1, EventKind::Opened), (2, EventKind::Raised), (3, EventKind::Outcome), (4, EventKind::Closed), (5, EventKind::Reopened)]
    );
}

#[tokio::test]
async fn what_lost_its_cause_is_closed_as_corrected_and_a_supervisors_decision_is_left() {
    let (test, [child, other]) = families().await;
    let open = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    let done = closed(a_follow_up(2, &child, RuleId::MealsFew, 1, "2026-09-10"), CloseReason::ResolvedByVisit, "2026-09-20");
    let others = a_follow_up(3, &other, RuleId::MealsFew, 4, "2026-09-10");
    let mut decided = closed(a_follow_up(5, &child, RuleId::LengthLow, 1, "2026-09-10"), CloseReason::SupervisorDecision, "2026-09-19");
    if let Some(closing) = &mut decided.closing {
        (closing.by, closing.category, closing.note) = (Some(PersonId(1)), Some("other".to_owned()), Some("small parents".to_owned()));
    }
    sync(&test, &child, &[open.clone(), done.clone(), decided.clone()], "2026-09-20").await.expect("stored");
    sync(&test, &other, std::slice::from_ref(&others), "2026-09-20").await.expect("stored");
    sync(&test, &child, &[], "2026-09-25").await.expect("nothing is found any more");
    // It closed on the day it had closed on; that its cause is gone is told on the day of the correction.
    let corrected = closed(done, CloseReason::RecordCorrected, "2026-09-20");
    assert_eq!(stored(&test, &child).await, [closed(open, CloseReason::RecordCorrected, "2026-09-25"), corrected.clone(), decided]);
    let told = history_of_child(test.db.connection(), child.id).await.expect("readable");
    let days: Vec<NaiveDate> = told.iter().filter(|e| e.follow_up == corrected.id && e.kind == EventKind::Closed).map(|e| e.on).collect();
    assert_eq!(days, [day("2026-09-20"), day("2026-09-25")]);
    assert_eq!(stored(&test, &other).await, [others]);
}

#[tokio::test]
async fn one_rule_may_open_again_after_closing_but_never_twice_at_once() {
    let (test, [child, _]) = families().await;
    let first = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    sync(&test, &child, std::slice::from_ref(&first), "2026-09-10").await.expect("opened");
    let second = a_follow_up(2, &child, RuleId::WeightLow, 3, "2026-09-30");
    let done = closed(first.clone(), CloseReason::ResolvedByVisit, "2026-09-20");
    sync(&test, &child, &[second.clone(), done.clone()], "2026-09-30").await.expect("closed and opened anew at once");
    assert_eq!(stored(&test, &child).await, [second.clone(), done]);
    let twice = sync(&test, &child, &[first, second], "2026-09-30").await;
    assert!(matches!(twice, Err(StoreError::Conflict { .. })), "{twice:?}");
}

#[tokio::test]
async fn a_supervisor_closes_an_open_one_once_and_only_in_scope() {
    let (test, [child, _]) = families().await;
    people::insert(test.db.direct(), &a_person(9, Role::Supervisor)).await.expect("a supervisor");
    let one = a_follow_up(1, &child, RuleId::MealsFew, 1, "2026-09-10");
    sync(&test, &child, std::slice::from_ref(&one), "2026-09-10").await.expect("opened");
    let scope = Scope::Supervisor { person: PersonId(9) };
    let record = Recorded { by: Some(PersonId(9)), ..recorded("2026-09-28") };
    let close = async || {
        let db = test.db.direct();
        close_by_supervisor(db, scope, one.id, PersonId(9), "family_away", "away until October", record).await
    };
    assert_eq!(close().await.expect("asked"), None, "not assigned");
    people::assign(test.db.direct(), PersonId(9), &[AreaId(1)], &[]).await.expect("assigned");
    let after = close().await.expect("closed").expect("in scope");
    assert_eq!(after.state(), FollowUpState::ClosedBySupervisor);
    assert_eq!(stored(&test, &child).await, [after]);
    let last = history_of_child(test.db.direct(), child.id).await.expect("readable").pop().expect("an event");
    assert_eq!(
        (last.seq, last.kind, last.by, last.reason, last.note.as_deref()),
        (2, EventKind::Closed, Some(PersonId(9)), Some(CloseReason::SupervisorDecision), Some("away until October"))
    );
    assert!(matches!(close().await, Err(StoreError::Conflict { .. })));
}

#[tokio::test]
async fn the_history_refuses_to_be_changed() {
    let (test, [child, _]) = families().await;
    sync(&test, &child, &[a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10")], "2026-09-10").await.expect("opened");
    for sql in ["UPDATE follow_up_events SET note = 'x'", "DELETE FROM follow_up_events"] {
        let refused = test.db.direct().execute_unprepared(sql).await.expect_err("append-only").to_string();
        assert!(refused.contains("append-only"), "{refused}");
    }
}

#[tokio::test]
async fn pages_go_on_after_the_last_line_and_late_is_told_by_class() {
    let (test, [child, other]) = families().await;
    let due = |n: u128, child: &ChildRecord, rule, visit, class, due: &str| {
        let one = a_follow_up(n, child, rule, visit, "2026-09-10");
        FollowUpRecord { class, due_on: day(due), ..one }
    };
    let urgent = due(1, &child, RuleId::WeightLow, 1, Class::Today, "2026-09-12");
    let week = due(2, &child, RuleId::MealsFew, 1, Class::Week, "2026-09-12");
    let month = due(3, &other, RuleId::MealsFew, 4, Class::Month, "2026-09-11");
    sync(&test, &child, &[urgent, week], "2026-09-10").await.expect("stored");
    sync(&test, &other, &[month], "2026-09-10").await.expect("stored");

    let mut seen = Vec::new();
    let mut after = None;
    loop {
        let page = open_in_scope(test.db.direct(), Scope::Everything, after, 1).await.expect("readable");
        let Some(line) = page.last() else { break };
        after = Some((line.follow_up.due_on, line.follow_up.id));
        seen.push((line.follow_up.id.0, line.child_code.clone(), line.area_name.clone(), line.worker_name.clone()));
    }
    let line = |id, n: u32| (id, format!("CH00000{n}"), format!("Ulopi {n}"), format!("Person {n}"));
    assert_eq!(seen, [line(3, 2), line(1, 1), line(2, 1)]);

    let clock = [(Class::Today, day("2026-09-12")), (Class::Week, day("2026-09-09")), (Class::Month, day("2026-08-29"))];
    let late = late_in_scope(test.db.direct(), Scope::Everything, &clock, None, 50).await.expect("readable");
    assert_eq!(late.iter().map(|l| l.follow_up.id.0).collect::<Vec<_>>(), [1]);
    let of_worker_2 = Scope::Worker { person: PersonId(2), today: day("2026-09-12") };
    assert_eq!(late_in_scope(test.db.direct(), of_worker_2, &clock, None, 50).await.expect("readable"), []);
    assert_eq!(by_id_in_scope(test.db.direct(), of_worker_2, FollowUpId(1)).await.expect("readable"), None);
}

#[tokio::test]
async fn a_state_that_does_not_fit_its_closing_is_corrupt() {
    let (test, [child, _]) = families().await;
    let one = closed(a_follow_up(1, &child, RuleId::MealsFew, 1, "2026-09-10"), CloseReason::ResolvedByVisit, "2026-09-20");
    sync(&test, &child, &[one], "2026-09-20").await.expect("stored");
    test.db.direct().execute_unprepared("UPDATE follow_ups SET state = 'ended'").await.expect("a careless hand");
    let found = of_child(test.db.direct(), child.id).await;
    assert!(matches!(found, Err(StoreError::Corrupt { table: "follow_ups", .. })), "{found:?}");
}

//! Questions about the rows that reports are counted from, on a real database file.

use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::units::Weight;
use domain::visit::ToldOutcome;

use super::*;
use crate::store::children::insert;
use crate::store::follow_ups::Closing;
use crate::store::follow_ups::Recorded;
use crate::store::follow_ups::replace_all_of_child;
use crate::store::placements;
use crate::store::testing::TestDb;
use crate::store::testing::a_child;
use crate::store::testing::a_follow_up;
use crate::store::testing::a_visit;
use crate::store::testing::day;
use crate::store::testing::noon;
use crate::store::testing::two_families;
use crate::store::visits;

fn september() -> (NaiveDate, NaiveDate) {
    (day("2026-09-01"), day("2026-09-30"))
}

fn recorded(on: &str) -> Recorded {
    Recorded { at: noon(on), today: day(on), by: None }
}

#[tokio::test]
async fn children_of_the_month_are_those_registered_by_its_end_and_not_gone_before_it() {
    let test = TestDb::new().await;
    let [first, _] = two_families(&test.db).await.expect("two children");
    for (n, registered, left) in
        [(3, "2026-09-30", None), (4, "2026-10-01", None), (5, "2026-03-01", Some("2026-08-31")), (6, "2026-03-01", Some("2026-09-01"))]
    {
        let mut child = a_child(n, first.area, first.worker);
        child.facts.registered_on = day(registered);
        if let Some(left) = left {
            (child.facts.status, child.left_on) = (ChildStatus::Moved, Some(day(left)));
        }
        insert(test.db.direct(), &child).await.expect("registered");
    }
    let page = children(test.db.direct(), Scope::Everything, september(), None, 3).await.expect("readable");
    assert_eq!(page.iter().map(|c| c.id.0).collect::<Vec<_>>(), [1, 2, 3]);
    let rest = children(test.db.direct(), Scope::Everything, september(), page.last().map(|c| c.id), 3).await.expect("readable");
    assert_eq!(rest.iter().map(|c| c.id.0).collect::<Vec<_>>(), [6]);
}

#[tokio::test]
async fn a_child_carries_its_places_statuses_and_last_visit_of_the_month() {
    let test = TestDb::new().await;
    let [first, _] = two_families(&test.db).await.expect("two children");
    let mut child = a_child(3, first.area, first.worker);
    child.facts.gestation_days = Some(258);
    child.facts.birth_weight = Weight::from_grams(2_500).ok();
    insert(test.db.direct(), &child).await.expect("registered");
    let to = placements::PlacementRecord {
        from_on: day("2026-09-15"),
        to_on: None,
        area: AreaId(2),
        worker: PersonId(2),
        by: PersonId(1),
        reason: "moved".to_owned(),
    };
    placements::place(test.db.direct(), child.id, 1, &to).await.expect("moved");
    let away = placements::StatusRecord {
        status: ChildStatus::TransferredOut,
        on: day("2026-10-05"),
        by: None,
        note: None,
        at: noon("2026-10-05"),
    };
    placements::change_status(test.db.direct(), child.id, 2, &away).await.expect("left");
    for (n, on, contact) in [(1, "2026-09-10", Contact::Home), (2, "2026-09-20", Contact::Phone), (3, "2026-10-01", Contact::Home)] {
        let mut record = a_visit(n, &child, day(on));
        record.visit.contact = contact;
        visits::insert(test.db.direct(), &record).await.expect("recorded");
    }
    let found =
        children(test.db.direct(), Scope::Everything, september(), Some(ChildId(2)), 9).await.expect("readable").pop().expect("the child");
    assert_eq!((found.preterm, found.low_birth_weight), (true, false), "one day early; 2,500 g is not low");
    assert_eq!(found.last_visit_on, Some(day("2026-09-10")));
    assert_eq!(found.statuses, [(day("2026-10-05"), ChildStatus::TransferredOut)]);
    assert_eq!(found.place_on(day("2026-09-14")).map(|p| p.area), Some(AreaId(1)));
    assert_eq!(found.place_on(day("2026-09-15")).map(|p| p.area), Some(AreaId(2)));
}

#[tokio::test]
async fn a_follow_up_is_shown_as_it_stood_at_the_end_of_the_month() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    let mut seen = a_visit(3, &child, day("2026-09-28"));
    seen.visit.outcomes = vec![ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Treated }];
    for visit in [a_visit(1, &child, day("2026-09-10")), a_visit(2, &child, day("2026-09-20")), seen, a_visit(4, &child, day("2026-10-02"))]
    {
        visits::insert(test.db.direct(), &visit).await.expect("recorded");
    }
    let sync = async |f: &FollowUpRecord, on: &str| {
        replace_all_of_child(test.db.direct(), child.id, std::slice::from_ref(f), recorded(on)).await.expect("stored");
    };
    let mut one = a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-10");
    sync(&one, "2026-09-10").await;
    one.class = Class::Today;
    (one.last_fired_visit, one.last_fired_on, one.due_on) = (domain::ids::VisitId(2), day("2026-09-20"), day("2026-09-22"));
    (one.first_followed_up_on, one.first_followed_up_due) = (Some(day("2026-09-20")), Some(day("2026-09-17")));
    one.first_outcome_on = Some(day("2026-09-28"));
    sync(&one, "2026-09-28").await;
    // After the month: moved to another worker, due later, closed.
    one.due_on = day("2026-10-09");
    (one.last_fired_visit, one.last_fired_on) = (domain::ids::VisitId(4), day("2026-10-02"));
    (one.area, one.worker) = (AreaId(2), PersonId(2));
    one.closing = Some(Closing {
        reason: CloseReason::SeenOutcomeRecorded,
        on: day("2026-10-02"),
        by: None,
        category: None,
        note: None,
        replaced_by: None,
    });
    sync(&one, "2026-10-02").await;

    let then = follow_ups(test.db.direct(), Scope::Everything, september(), None, 9).await.expect("readable");
    let expected = ReportFollowUp {
        child: child.id,
        area: AreaId(1),
        worker: PersonId(1),
        rule: RuleId::WeightLow,
        class: Class::Week,
        opened_on: day("2026-09-10"),
        due_on: day("2026-09-22"),
        first_due_on: day("2026-09-17"),
        followed_up_on: Some(day("2026-09-20")),
        outcome_on: Some(day("2026-09-28")),
        reached_on: Some(day("2026-09-28")),
        closed_on: None,
        state: FollowUpState::Open,
        reason: None,
    };
    assert_eq!(then, [(FollowUpId(1), expected)]);
    let october = (day("2026-10-01"), day("2026-10-31"));
    assert_eq!(
        follow_ups(test.db.direct(), Scope::Everything, october, None, 9).await.expect("readable"),
        [],
        "closed in October, opened before it"
    );
}

#[tokio::test]
async fn what_a_visit_opened_that_was_taken_back_or_moved_away_does_not_count() {
    let test = TestDb::new().await;
    let [child, other] = two_families(&test.db).await.expect("two children");
    for n in [1, 2, 3] {
        visits::insert(test.db.direct(), &a_visit(n, &child, day("2026-09-10"))).await.expect("recorded");
    }
    let found: Vec<FollowUpRecord> = [(1, RuleId::WeightLow), (2, RuleId::MealsFew), (3, RuleId::LengthLow)]
        .map(|(n, rule)| a_follow_up(n, &child, rule, n, "2026-09-10"))
        .into();
    replace_all_of_child(test.db.direct(), child.id, &found, recorded("2026-09-10")).await.expect("stored");
    let why = visits::Correction { by: PersonId(1), at: noon("2026-09-11"), reason: "another child" };
    visits::void(test.db.direct(), domain::ids::VisitId(1), 1, why).await.expect("taken back");
    let moved = visits::VisitRecord { child: other.id, ..a_visit(2, &child, day("2026-09-10")) };
    visits::rehome(test.db.direct(), &moved, why).await.expect("moved");
    let counted = follow_ups(test.db.direct(), Scope::Everything, september(), None, 9).await.expect("readable");
    assert_eq!(counted.iter().map(|(_, f)| f.rule).collect::<Vec<_>>(), [RuleId::LengthLow]);
}

//! Questions about lists, on a real database file.

use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::units::Weight;

use super::*;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::placements;
use crate::store::summaries;
use crate::store::summaries::SummaryRecord;
use crate::store::testing::TestDb;
use crate::store::testing::a_child;
use crate::store::testing::a_summary;
use crate::store::testing::a_visit;
use crate::store::testing::day;
use crate::store::testing::two_families;
use crate::store::visits;

fn top(class: Class, due: &str) -> Option<TopFollowUp> {
    let evidence = Evidence::from([(EvidenceKey::Waz, Quantity::ZHundredths(-233))]);
    Some(TopFollowUp { class, rule: RuleId::WeightLow, due_on: day(due), evidence })
}

fn slot(opens: &str) -> Option<SlotDays> {
    let opens = day(opens);
    Some(SlotDays { target: opens + chrono::Days::new(7), opens, closes: opens + chrono::Days::new(14) })
}

/// Seven children of worker 1, each with another state on 25 November; child 2 belongs to worker 2.
async fn a_caseload() -> (TestDb, Vec<ChildRecord>) {
    let test = TestDb::new().await;
    let [first, second] = two_families(&test.db).await.expect("two children");
    let mut all = vec![first.clone(), second];
    for n in 3..=8 {
        let mut child = a_child(n, first.area, first.worker);
        child.facts.born = day("2026-03-01") + chrono::Days::new(u64::try_from(n).expect("small"));
        child.facts.registered_on = child.facts.born;
        children::insert(test.db.direct(), &child).await.expect("registered");
        all.push(child);
    }
    let states: Vec<SummaryRecord> = all
        .iter()
        .map(|child| {
            let plain = a_summary(child, "2026-11-25");
            match child.id.0 {
                1 => SummaryRecord { top: top(Class::Week, "2026-11-30"), ..plain },
                2 => SummaryRecord { top: top(Class::Now, "2026-11-25"), urgent_unanswered_since: Some(day("2026-11-24")), ..plain },
                3 => SummaryRecord { overdue_since: Some(day("2026-11-01")), slot: slot("2026-12-01"), ..plain },
                4 => SummaryRecord { top: top(Class::Week, "2026-11-30"), referral_due_on: Some(day("2026-11-24")), ..plain },
                5 => SummaryRecord { slot: slot("2026-11-25"), last_seen_on: Some(day("2026-09-26")), ..plain },
                6 => SummaryRecord { slot: slot("2026-11-26"), last_seen_on: Some(day("2026-09-27")), ..plain },
                7 => SummaryRecord { top: top(Class::Today, "2026-12-01"), referral_due_on: Some(day("2026-11-25")), ..plain },
                _ => SummaryRecord { status: ChildStatus::Moved, top: top(Class::Now, "2026-11-01"), ..plain },
            }
        })
        .collect();
    for summary in &states {
        summaries::upsert(test.db.direct(), summary).await.expect("written");
    }
    (test, all)
}

fn ids(rows: &[RoundRow]) -> Vec<u128> {
    rows.iter().map(|row| row.child.0).collect()
}

fn worker(n: u128) -> Scope {
    Scope::Worker { person: PersonId(n), today: day("2026-11-25") }
}

#[tokio::test]
async fn the_round_is_ordered_by_class_due_day_and_youngest_then_late_and_open_visits() {
    let (test, _) = a_caseload().await;
    let round_of = async |scope| round(test.db.direct(), scope, None, 50).await.expect("readable");
    // 7 today; 4 and 1 within a week, 4 being younger; 3 late visit; 5 open visit; 6 opens tomorrow; 8 has left.
    assert_eq!(ids(&round_of(worker(1)).await), [7, 4, 1, 3, 5]);
    assert_eq!(ids(&round_of(worker(2)).await), [2]);
    assert_eq!(ids(&round_of(Scope::Everything).await), [2, 7, 4, 1, 3, 5]);
}

#[tokio::test]
async fn a_line_of_the_round_carries_all_it_shows() {
    let (test, all) = a_caseload().await;
    let row = round(test.db.direct(), worker(2), None, 1).await.expect("readable").pop().expect("a line");
    assert_eq!(
        (row.code.as_str(), row.area_name.as_str(), row.worker_name.as_str(), row.born, &row.top),
        ("CH000002", "Ulopi 2", "Person 2", all[1].facts.born, &top(Class::Now, "2026-11-25"))
    );
}

#[tokio::test]
async fn pages_of_the_round_join_without_gap_or_repeat() {
    let (test, _) = a_caseload().await;
    let mut seen = Vec::new();
    let mut after: Option<String> = None;
    loop {
        let page = round(test.db.direct(), worker(1), after.as_deref(), 2).await.expect("readable");
        let Some(last) = page.last() else { break };
        after = Some(last.work_key.clone());
        seen.extend(ids(&page));
    }
    assert_eq!(seen, [7, 4, 1, 3, 5]);
}

#[tokio::test]
async fn finding_takes_a_code_or_a_part_of_a_name_and_reads_no_wildcards() {
    let (test, all) = a_caseload().await;
    let mut odd = a_child(9, all[0].area, all[0].worker);
    odd.name_key = "a%b_c\\d".to_owned();
    children::insert(test.db.direct(), &odd).await.expect("registered");
    summaries::upsert(test.db.direct(), &a_summary(&odd, "2026-11-25")).await.expect("written");
    let found = async |sought: Sought| ids(&find(test.db.direct(), worker(1), &sought, None, 50).await.expect("readable"));
    let name = |key: &str| Sought { name_key: Some(key.to_owned()), ..Sought::default() };
    assert_eq!(found(Sought { code: Some("CH00000".to_owned()), ..Sought::default() }).await, [9, 1, 3, 4, 5, 6, 7, 8]);
    assert_eq!(found(name("ld3")).await, [3]);
    for literal in ["%b", "b_c", "c\\d"] {
        assert_eq!(found(name(literal)).await, [9], "{literal}");
    }
    assert_eq!(found(name("c%3")).await, [0_u128; 0]);
    assert_eq!(found(Sought { code: Some("CH000002".to_owned()), ..Sought::default() }).await, [0_u128; 0], "another worker's");
}

#[tokio::test]
async fn finding_goes_on_after_the_last_line_and_leaves_out_who_left() {
    let (test, all) = a_caseload().await;
    let gone = placements::StatusRecord {
        status: ChildStatus::Moved,
        on: day("2026-11-01"),
        by: None,
        note: None,
        at: crate::store::testing::noon("2026-11-01"),
    };
    placements::change_status(test.db.direct(), all[7].id, 1, &gone).await.expect("left");
    let mut seen = Vec::new();
    let mut after: Option<(String, String)> = None;
    loop {
        let key = after.as_ref().map(|(name, code)| (name.as_str(), code.as_str()));
        let page = find(test.db.direct(), worker(1), &Sought::default(), key, 3).await.expect("readable");
        let Some(last) = page.last() else { break };
        after = Some((last.name_key.clone(), last.code.clone()));
        seen.extend(ids(&page));
    }
    assert_eq!(seen, [1, 3, 4, 5, 6, 7]);
    let also = Sought { also_left: true, ..Sought::default() };
    assert_eq!(find(test.db.direct(), worker(1), &also, None, 50).await.expect("readable").len(), 7);
}

#[tokio::test]
async fn urgent_without_outcome_and_referrals_past_their_day_are_unanswered() {
    let (test, _) = a_caseload().await;
    let rows =
        unanswered_in_scope(test.db.direct(), Scope::Everything, Narrowed::default(), day("2026-11-25"), None, 50).await.expect("readable");
    // 7's referral may still be answered today.
    assert_eq!(ids(&rows), [2, 4]);
}

#[tokio::test]
async fn lost_counts_from_the_last_visit_or_else_from_registration() {
    let (test, all) = a_caseload().await;
    let days = LostDays { young_born_after: day("2025-11-25"), young_seen_by: day("2026-09-26"), older_seen_by: day("2026-08-27") };
    let lost = async |days, after| ids(&lost_in_scope(test.db.direct(), worker(1), days, after, 50).await.expect("readable"));
    // 1, 3, 4, 7 and 8 were never seen since March; 5 was seen 60 days ago, 6 is one day short of that.
    assert_eq!(lost(days, None).await, [1, 3, 4, 7, 8, 5]);
    let seven = DayKey { on: day("2026-03-08"), code: all[6].code.clone() };
    assert_eq!(lost(days, Some(&seven)).await, [8, 5]);
    let older = LostDays { young_born_after: day("2026-03-06"), ..days };
    assert_eq!(lost(older, None).await, [1, 3, 4, 7, 8], "5 counts as older, and was seen within 90 days");
}

#[tokio::test]
async fn missed_visits_are_told_from_a_day_on() {
    let (test, _) = a_caseload().await;
    let missed = async |by| ids(&visits_missed_in_scope(test.db.direct(), worker(1), day(by), None, 50).await.expect("readable"));
    assert_eq!(missed("2026-11-01").await, [3]);
    assert_eq!(missed("2026-10-31").await, [0_u128; 0]);
}

#[tokio::test]
async fn a_summary_comes_back_and_is_written_over() {
    let (test, all) = a_caseload().await;
    let full = SummaryRecord {
        top: top(Class::TwoDays, "2026-11-27"),
        open_count: 3,
        urgent_unanswered_since: Some(day("2026-11-20")),
        referral_due_on: Some(day("2026-11-22")),
        slot: slot("2026-11-28"),
        overdue_since: Some(day("2026-11-15")),
        hold_since: Some(day("2026-11-10")),
        last_seen_on: Some(day("2026-11-16")),
        last_weight: Weight::from_grams(7350).ok().zip(Some(day("2026-11-16"))),
        last_waz: Some(-233),
        next_change_on: Some(day("2026-11-28")),
        ..a_summary(&all[0], "2026-11-25")
    };
    summaries::upsert(test.db.direct(), &full).await.expect("written");
    assert_eq!(summaries::of_child(test.db.direct(), all[0].id).await.expect("readable"), Some(full));
}

#[tokio::test]
async fn the_tick_finds_rows_whose_day_has_come() {
    let (test, all) = a_caseload().await;
    for (child, on) in [(&all[0], "2026-11-25"), (&all[1], "2026-11-24"), (&all[2], "2026-11-26"), (&all[3], "2026-11-24")] {
        let summary = SummaryRecord { next_change_on: Some(day(on)), ..a_summary(child, "2026-11-20") };
        summaries::upsert(test.db.direct(), &summary).await.expect("written");
    }
    let due = async |after, limit| summaries::due_for_tick(test.db.direct(), day("2026-11-25"), after, limit).await.expect("readable");
    let first = due(None, 2).await;
    assert_eq!(first, [(day("2026-11-24"), all[1].id), (day("2026-11-24"), all[3].id)]);
    assert_eq!(due(first.last().copied(), 2).await, [(day("2026-11-25"), all[0].id)]);
}

#[tokio::test]
async fn a_worker_s_part_of_a_team_s_round_is_only_theirs() {
    let (test, _) = a_caseload().await;
    let of = async |worker| ids(&round_of_worker(test.db.direct(), Scope::Everything, worker, None, 50).await.expect("readable"));
    assert_eq!(of(Some(PersonId(2))).await, [2]);
    assert_eq!(of(Some(PersonId(3))).await, [0; 0]);
    assert_eq!(of(None).await, ids(&round(test.db.direct(), Scope::Everything, None, 50).await.expect("readable")));
    let outside = round_of_worker(test.db.direct(), worker(1), Some(PersonId(2)), None, 50).await.expect("readable");
    assert_eq!(ids(&outside), [0; 0], "the scope stays");
}

#[tokio::test]
async fn the_next_child_is_the_one_whose_window_opens_first() {
    let (test, _) = a_caseload().await;
    let next = next_due(test.db.direct(), worker(1), None).await.expect("readable").map(|row| (row.child.0, row.slot));
    assert_eq!(next, Some((6, slot("2026-11-26"))));
    assert_eq!(next_due(test.db.direct(), worker(2), None).await.expect("readable"), None);
}

#[tokio::test]
async fn who_was_seen_on_a_day_comes_once_with_what_was_checked() {
    let (test, all) = a_caseload().await;
    let on = day("2026-11-25");
    let mut first = a_visit(100, &all[0], on);
    first.visit.weight = Weight::from_grams(7400).ok();
    let mut again = a_visit(101, &all[0], on);
    again.visit.oedema = Some(false);
    let mut by_phone = a_visit(102, &all[2], on);
    by_phone.visit.contact = domain::visit::Contact::Phone;
    let others = [a_visit(103, &all[1], on), a_visit(104, &all[3], day("2026-11-24"))];
    for visit in [first, again, by_phone].iter().chain(&others) {
        visits::insert(test.db.direct(), visit).await.expect("recorded");
    }
    let seen = seen_on(test.db.direct(), worker(1), None, on, 50).await.expect("readable");
    let seen: Vec<_> = seen.iter().map(|(row, checked)| (row.child.0, *checked)).collect();
    assert_eq!(seen, [(1, Checked { weight: true, feet: true, ..Checked::default() })]);
    let everyone = everyone(test.db.direct(), worker(1), None, Some("CH000003"), 50).await.expect("readable");
    assert_eq!(ids(&everyone), [4, 5, 6, 7, 8], "also those who left");
}

//! Counts by worker against the monthly tables, and small cases by hand.

use super::*;
use crate::child::Sex;
use crate::food::FoodGroup;
use crate::ids::{AreaId, ChildId};
use crate::report::csv_table::ALL;
use crate::report::month::tables;
use crate::report::picture::{Published, measures};
use crate::report::rows::{ReportFollowUp, ReportSlot, ReportZ};
use crate::report::sample::{child, d, october, villages, visit, z};
use crate::report::suppress::Threshold;
use crate::rule::FollowUpState;

/// Numbers that look random and are the same every time.
struct Dice(u64);

impl Dice {
    fn up_to(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
}

fn follow_up(worker: u128, rule: RuleId, class: Class, due: &str) -> ReportFollowUp {
    ReportFollowUp {
        child: ChildId(1),
        area: AreaId(0),
        worker: PersonId(worker),
        rule,
        class,
        opened_on: d("2025-09-20"),
        due_on: d(due),
        first_due_on: d(due),
        followed_up_on: None,
        outcome_on: None,
        reached_on: None,
        closed_on: None,
        state: FollowUpState::Open,
        reason: None,
    }
}

/// A month of 300 children, so many that most figures are shown.
fn rows(seed: u64) -> MonthRows {
    let mut dice = Dice(seed);
    let mut rows = MonthRows { areas: villages(), schedule: vec!["m06".to_owned()], ..MonthRows::default() };
    for id in 0..300_u128 {
        let sex = if dice.up_to(2) == 0 { Sex::Female } else { Sex::Male };
        let born = d("2025-10-01") - chrono::Days::new(30 + dice.up_to(600));
        let baby = child(id, sex, &born.to_string(), &born.to_string(), u128::from(dice.up_to(4)));
        for at in 0..1 + u128::from(dice.up_to(2)) {
            let mut seen = visit(id * 10 + at, &baby, if at == 0 { "2025-10-08" } else { "2025-10-22" });
            seen.worker = PersonId(u128::from(dice.up_to(3)));
            seen.oedema = (dice.up_to(3) == 0).then(|| dice.up_to(9) == 0);
            let hundredths = -400 + i32::try_from(dice.up_to(500)).expect("small");
            seen.waz = if dice.up_to(6) == 0 {
                Some(ReportZ { hundredths: -650, flagged: true, confirmed: dice.up_to(2) == 0 })
            } else {
                z(hundredths)
            };
            let many = usize::try_from(dice.up_to(9)).expect("small");
            seen.answers.groups = (dice.up_to(5) > 0).then(|| FoodGroup::ALL.iter().take(many).copied().collect());
            if dice.up_to(12) == 0 {
                seen.contact = Contact::Phone;
            }
            rows.visits.push(seen);
        }
        let ends = [SlotEnd::OnTime, SlotEnd::EarlyOrLate, SlotEnd::Skipped, SlotEnd::Overdue];
        let end = ends[usize::try_from(dice.up_to(4)).expect("small")];
        let worker = PersonId(u128::from(dice.up_to(3)));
        rows.slots.push(ReportSlot { area: AreaId(0), worker, slot: "m06".to_owned(), closes: d("2025-10-11"), end });
        let class = Class::ALL[usize::try_from(dice.up_to(6)).expect("small")];
        let due = d("2025-10-10") + chrono::Days::new(dice.up_to(40));
        let rule = if dice.up_to(10) == 0 { RuleId::ReactionSevere } else { RuleId::WeightLow };
        let mut open = follow_up(u128::from(dice.up_to(3)), rule, class, &due.to_string());
        open.closed_on = (dice.up_to(4) == 0).then(|| d("2025-10-05") + chrono::Days::new(dice.up_to(40)));
        rows.follow_ups.push(open);
        rows.children.push(baby);
    }
    rows
}

/// Wherever the monthly tables show a figure of the whole programme, the sum over the workers is the same one.
#[test]
fn together_they_are_what_the_monthly_tables_say() {
    let mut compared = 0;
    for seed in 0..3 {
        let rows = rows(seed);
        let (all, of) = by_worker(october().period, &rows);
        let published = measures(&tables(&october(), Threshold::LEAST, &rows), ALL).expect("a programme");
        let parts = |m: &Measures| {
            let mut parts = vec![m.visits, m.overdue, m.underweight, m.diversity];
            parts.extend(m.overdue_by_class.iter().map(|(_, part)| *part));
            parts
        };
        let sums: Vec<(u64, u64)> = (0..4 + CLASSES)
            .map(|at| {
                of.values().fold((0, 0), |(n, den), m| {
                    let part = parts(m)[at];
                    (n + part.n.count().expect("inside"), den + part.den.count().expect("inside"))
                })
            })
            .collect();
        for ((inside, told), (n, den)) in parts(&all).into_iter().zip(parts(&published)).zip(sums) {
            assert_eq!((inside.n, inside.den), (Published::Shown(n), Published::Shown(den)), "everybody is the sum of the workers");
            for (own, shown) in [(inside.n, told.n), (inside.den, told.den)] {
                if let Published::Shown(_) = shown {
                    assert_eq!(own, shown, "seed {seed}: {told:?}");
                    compared += 1;
                }
            }
        }
        assert_eq!(of.len(), 3);
    }
    assert!(compared > 40, "only {compared} figures are shown in the tables");
}

#[test]
fn each_thing_belongs_to_the_worker_of_its_time() {
    let baby = child(1, Sex::Male, "2025-01-10", "2025-02-01", 0);
    let mut first = visit(1, &baby, "2025-10-02");
    first.worker = PersonId(1);
    first.waz = z(-250);
    let mut last = visit(2, &baby, "2025-10-20");
    last.worker = PersonId(2);
    let rows = MonthRows {
        visits: vec![first, last],
        follow_ups: vec![
            follow_up(1, RuleId::WeightLow, Class::Week, "2025-10-30"),
            follow_up(1, RuleId::WeightLow, Class::Week, "2025-10-31"),
            follow_up(1, RuleId::ReactionSevere, Class::Now, "2025-10-01"),
        ],
        ..MonthRows::default()
    };
    let (_, of) = by_worker(october().period, &rows);
    let part = |worker: u128, of_measure: fn(&Measures) -> Part| of.get(&PersonId(worker)).map(of_measure).map(|p| (p.n, p.den));
    use Published::Shown;
    // Due on the last day is not past it; a severe reaction is left out as in the tables.
    assert_eq!(part(1, |m| m.overdue), Some((Shown(1), Shown(2))));
    // The weight is that of the earlier visit, told under the worker who saw the child last.
    assert_eq!((part(1, |m| m.underweight), part(2, |m| m.underweight)), (Some((Shown(0), Shown(0))), Some((Shown(1), Shown(1)))));
    assert_eq!(part(2, |m| m.diversity), Some((Shown(0), Shown(0))));
    assert_eq!(part(3, |m| m.visits), None);
}

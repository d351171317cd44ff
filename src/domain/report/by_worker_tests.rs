//! Counts by worker against the monthly tables, and small cases by hand.

use super::*;
use crate::child::Sex;
use crate::report::csv_table::ALL;
use crate::report::month::tables;
use crate::report::picture::{Published, measures};
use crate::report::sample::{child, october, visit, z};
use crate::report::sample_month::{follow_up, month_of};
use crate::report::suppress::Threshold;

/// Wherever the monthly tables show a figure of the whole programme, the sum over the workers is the same one.
#[test]
fn together_they_are_what_the_monthly_tables_say() {
    let mut compared = 0;
    for seed in 0..3 {
        let rows = month_of(300, seed);
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

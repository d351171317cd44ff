//! Small examples worked by hand for the checks before a release.

use super::*;
use crate::child::Sex;
use crate::food::{Allergen, FoodGroup};
use crate::ids::ChildId;
use crate::report::csv_table::Release;
use crate::report::month::{MonthRows, tables};
use crate::report::reactions::ReportReaction;
use crate::report::sample::{child, d, october, villages, visit, z};

fn codes() -> BTreeSet<String> {
    villages().into_iter().map(|area| area.code).collect()
}

/// A month with enough children that most figures are shown.
fn month() -> Vec<Table> {
    let mut rows = MonthRows { areas: villages(), schedule: vec!["m06".to_owned()], ..MonthRows::default() };
    for id in 0..400_u128 {
        let sex = if id % 2 == 0 { Sex::Female } else { Sex::Male };
        let born = ["2025-07-01", "2025-03-01", "2024-12-20", "2024-05-02"][(id / 8 % 4) as usize];
        let mut baby = child(id, sex, born, "2025-08-01", id % 4);
        baby.last_visit_on = Some(d("2025-10-15"));
        let mut contact = visit(id, &baby, "2025-10-15");
        contact.waz = z(if id % 7 == 0 { -240 } else { -20 });
        contact.answers.breastfed = Some(id % 5 != 0);
        contact.answers.meals = Some((id % 5) as u8);
        rows.children.push(baby);
        rows.visits.push(contact);
    }
    tables(&october(), Threshold::LEAST, &rows)
}

fn set(table: &mut Table, row: usize, column: &str, cell: Cell) {
    let at = table.column(column).expect("a column");
    table.rows[row][at] = cell;
}

#[test]
fn a_month_is_fit_for_release() {
    assert_eq!(faults(&month(), Threshold::LEAST, &codes()), []);
}

#[test]
fn every_fault_is_found() {
    let spoilt = |name: &str, spoil: &dyn Fn(&mut Table)| {
        let mut tables = month();
        let table = tables.iter_mut().find(|table| table.name == name).expect("a table");
        spoil(table);
        faults(&tables, Threshold::LEAST, &codes())
    };
    let has = |found: &[Fault], test: &dyn Fn(&Fault) -> bool| assert!(found.iter().any(test), "{found:?}");
    has(&spoilt("growth", &|t| set(t, t.rows.len() - 1, "waz_lt_m2", Cell::Count(9_999))), &|f| {
        matches!(f, Fault::PartExceedsWhole { part: "waz_lt_m2", whole: "waz_n", .. })
    });
    has(
        &spoilt("growth", &|t| {
            let last = t.rows.len() - 1;
            set(t, last, "children_visited", Cell::Count(9_999));
        }),
        &|f| matches!(f, Fault::DoesNotAddUp { column: "children_visited", .. }),
    );
    has(&spoilt("growth", &|t| set(t, 0, "muac_n", Cell::Count(3))), &|f| matches!(f, Fault::SmallShown { column: "muac_n", .. }));
    has(
        &spoilt("enrolment", &|t| {
            let last = t.rows.len() - 1;
            set(t, last, "joined", Cell::Count(77));
        }),
        &|f| matches!(f, Fault::RowDoesNotAddUp { table: "enrolment", .. }),
    );
    has(&spoilt("visits", &|t| set(t, 1, "protocol_version", Cell::text("2.0.0"))), &|f| {
        matches!(f, Fault::MixedRelease { column: "protocol_version", .. })
    });
    has(&spoilt("growth", &|t| set(t, 0, "sex", Cell::text("Sela of the hill"))), &|f| {
        matches!(f, Fault::TextLikeAName { column: "sex", .. })
    });
    has(&spoilt("growth", &|t| set(t, 0, "area", Cell::text("Nowhere"))), &|f| matches!(f, Fault::TextLikeAName { column: "area", .. }));
    has(
        &spoilt("feeding", &|t| {
            let all = |t: &Table, indicator: &str| {
                t.rows
                    .iter()
                    .rposition(|row| matches!(t.cell(row, "indicator"), Some(Cell::Text(code)) if code == indicator))
                    .expect("a row")
            };
            for (indicator, n) in [("MAD", 30), ("MDD", 20), ("MMF", 40)] {
                let row = all(t, indicator);
                set(t, row, "n", Cell::Count(n));
                set(t, row, "den", Cell::Count(50));
            }
        }),
        &|f| matches!(f, Fault::MadExceeds { .. }),
    );
}

#[test]
fn severe_reactions_that_are_shown_are_no_part_of_the_total() {
    let mut rows = MonthRows { areas: villages(), ..MonthRows::default() };
    for id in 0..60_u128 {
        rows.children.push(child(id, Sex::Female, "2025-03-01", "2025-08-01", id % 4));
        let level = if id < 20 { ReactionLevel::Severe } else { ReactionLevel::Mild };
        let (child, area, on) = (ChildId(id), villages()[(id % 4) as usize].id, d("2025-10-15"));
        let (group, allergen) = (Some(FoodGroup::Eggs), Some(Allergen::Egg));
        rows.reactions.push(ReportReaction { child, area, on, group, allergen, level, referred: level == ReactionLevel::Severe });
    }
    let all = tables(&october(), Threshold::LEAST, &rows);
    let table = all.iter().find(|table| table.name == "reactions").expect("a table");
    let shown: Vec<Option<u64>> = table.rows.iter().map(|row| count(table, row, "n")).collect();
    assert!(shown.contains(&Some(20)) && shown.contains(&Some(40)), "both the severe ones and the total are told: {shown:?}");
    assert_eq!(faults(&all, Threshold::LEAST, &codes()), []);
}

#[test]
fn a_release_without_children_is_fit_too() {
    let release: Release = october();
    let rows = MonthRows { areas: villages(), ..MonthRows::default() };
    assert_eq!(faults(&tables(&release, Threshold::LEAST, &rows), Threshold::LEAST, &codes()), []);
}

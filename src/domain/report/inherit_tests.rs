//! What a reader of two releases must not learn, in small tables worked by hand.

use super::*;
use crate::report::period::Period;
use crate::report::sample::october;

const PRIVATE: Cell = Cell::Withheld(Reason::Private);

/// Referrals made by area.
fn referrals(rows: &[(&str, Cell)]) -> Vec<Table> {
    let mut table = Table::new("referrals", &["made"]);
    rows.iter().for_each(|(area, made)| table.push(&october(), area, vec![made.clone()]));
    vec![table]
}

fn made(tables: &[Table], area: &str) -> Cell {
    let table = &tables[0];
    table.find(&[("area", area)]).and_then(|row| table.cell(row, "made")).cloned().expect("a cell")
}

#[test]
fn what_was_withheld_stays_withheld() {
    let was = referrals(&[("ulopi", PRIVATE), ("sanga", PRIVATE), ("mbiro", Cell::Count(9)), ("all", Cell::Count(20))]);
    let now = referrals(&[("ulopi", Cell::Count(5)), ("sanga", Cell::Count(7)), ("mbiro", Cell::Count(9)), ("all", Cell::Count(21))]);
    let kept = after_revision(&october(), now, &was);
    assert_eq!(["ulopi", "sanga", "mbiro", "all"].map(|area| made(&kept, area)), [PRIVATE, PRIVATE, Cell::Count(9), Cell::Count(21)]);
    let withheld = kept[0].find(&[("area", "ulopi")]).and_then(|row| kept[0].cell(row, "withheld")).cloned();
    assert_eq!(withheld, Some(Cell::text("made:private")));
}

#[test]
fn old_figures_do_not_complete_new_ones() {
    // Ulopi fell under the limit. Sanga, withheld to protect it, was shown before: 9 again, surely. 15 − 6 from before would give it.
    let was = referrals(&[("ulopi", Cell::Count(5)), ("sanga", Cell::Count(9)), ("mbiro", Cell::Count(6)), ("all", Cell::Count(20))]);
    let now = referrals(&[("ulopi", PRIVATE), ("sanga", PRIVATE), ("mbiro", Cell::Count(6)), ("all", Cell::Count(19))]);
    let kept = after_revision(&october(), now, &was);
    assert_eq!(made(&kept, "mbiro"), Cell::Count(6), "what did not change is shown again");
    assert_eq!(made(&kept, "all"), PRIVATE, "the new sum less the old parts would be Ulopi");
    assert_eq!(made(&kept, "ulopi"), PRIVATE);
}

#[test]
fn a_row_that_is_gone_keeps_what_it_withheld() {
    // Without the row all would know that it is nought now, and by the sums what Sanga is, and with it what Ulopi was.
    let was = referrals(&[("ulopi", PRIVATE), ("sanga", PRIVATE), ("all", Cell::Count(12))]);
    let now = referrals(&[("sanga", Cell::Count(9)), ("all", Cell::Count(9))]);
    let kept = after_revision(&october(), now, &was);
    assert_eq!(["ulopi", "sanga", "all"].map(|area| made(&kept, area)), [PRIVATE, PRIVATE, Cell::Count(9)]);
}

#[test]
fn a_share_goes_with_its_count() {
    let table = |n: Cell, pct: Cell| {
        let mut table = Table::new("feeding", &["indicator", "n", "den", "pct"]);
        table.push(&october(), "all", vec![Cell::text("MDD"), n, Cell::Count(40), pct]);
        vec![table]
    };
    let kept = after_revision(&october(), table(Cell::Count(6), Cell::Percent(150)), &table(PRIVATE, PRIVATE));
    let row = &kept[0].rows[0];
    assert_eq!((kept[0].cell(row, "n"), kept[0].cell(row, "pct")), (Some(&PRIVATE), Some(&PRIVATE)));
    assert_eq!(kept[0].cell(row, "den"), Some(&Cell::Count(40)));
}

#[test]
fn a_quarter_cannot_be_less_its_other_months() {
    let quarter = Release { period: Period::parse("2025-Q4").expect("a quarter"), ..october() };
    let month = |ulopi: Cell| referrals(&[("ulopi", ulopi), ("all", Cell::Count(30))]);
    let months = [month(PRIVATE), month(Cell::Count(7)), month(Cell::Count(8))];
    let months: Vec<&[Table]> = months.iter().map(Vec::as_slice).collect();
    // 18 − 7 − 8 would be the 3 of October.
    let kept = after_months(&quarter, referrals(&[("ulopi", Cell::Count(18)), ("all", Cell::Count(90))]), &months);
    assert_eq!((made(&kept, "ulopi"), made(&kept, "all")), (PRIVATE, Cell::Count(90)));
    assert_eq!(kept[0].cell(&kept[0].rows[0], "period"), Some(&Cell::text("2025-Q4")));
}

#[test]
fn a_quarter_tells_no_finer_rows_than_all_of_its_months() {
    // Two months tell villages by slot and one does not: the quarter less those two would be the third.
    let quarter = Release { period: Period::parse("2025-Q4").expect("a quarter"), ..october() };
    let visits = |fine: Option<u64>, all: u64| {
        let mut table = Table::new("visits", &["slot", "due"]);
        fine.into_iter().for_each(|due| table.push(&october(), "ulopi", vec![Cell::text("m06"), Cell::Count(due)]));
        table.push(&october(), "ulopi", vec![Cell::text("all"), Cell::Count(all)]);
        vec![table]
    };
    let months = [visits(Some(7), 20), visits(None, 21), visits(Some(8), 22)];
    let months: Vec<&[Table]> = months.iter().map(Vec::as_slice).collect();
    let kept = after_months(&quarter, visits(Some(18), 63), &months);
    assert_eq!(kept[0].find(&[("area", "ulopi"), ("slot", "m06")]), None);
    let row = kept[0].find(&[("area", "ulopi"), ("slot", "all")]).expect("a row");
    assert_eq!(kept[0].cell(row, "due"), Some(&Cell::Count(63)));
}

#[test]
fn finer_rows_from_before_do_not_complete_new_sums() {
    let visits = |rows: &[(&str, &str, u64)]| {
        let mut table = Table::new("visits", &["slot", "due"]);
        rows.iter().for_each(|(area, slot, due)| table.push(&october(), area, vec![Cell::text(slot), Cell::Count(*due)]));
        vec![table]
    };
    let was = visits(&[("ulopi", "m06", 7), ("ulopi", "m07", 8), ("ulopi", "all", 15)]);
    // One of the two fell under the limit, so that rows of both splits are not told any more: 11 less the 8 from before is 3.
    let kept = after_revision(&october(), visits(&[("ulopi", "all", 11)]), &was);
    assert_eq!(kept[0].rows.len(), 1);
    assert_eq!(kept[0].cell(&kept[0].rows[0], "due"), Some(&PRIVATE));
}

//! Small examples worked by hand for the enrolment table.

use super::*;
use crate::child::Sex;
use crate::ids::{AreaId, PersonId};
use crate::report::counted::alone;
use crate::report::rows::{Placement, ReportArea};
use crate::report::sample::{child, d, october, villages};
use crate::report::suppress::Reason;

fn in_full(villages: &[ReportArea], children: &[ReportChild]) -> [Table; 2] {
    let areas = Areas::new(villages);
    let tables = alone::in_full(&count(october().period, &areas, children, &[]), &october(), &areas);
    tables.try_into().expect("two tables")
}

fn moved(child: &mut ReportChild, on: &str, area: u128) {
    child.placements.push(Placement { from: d(on), area: AreaId(area), worker: PersonId(2) });
}

/// Ten girls of Ulopi who stay; around them what can happen in a month, five times each, so that nothing is withheld there.
fn children() -> Vec<ReportChild> {
    let mut all = Vec::new();
    let mut add = |count: u128, make: &dyn Fn(u128) -> ReportChild| {
        for _ in 0..count {
            let id = all.len() as u128;
            all.push(make(id));
        }
    };
    let stays = |id| child(id, Sex::Female, "2025-02-10", "2025-03-01", 0);
    add(10, &stays);
    add(5, &|id| child(id, Sex::Female, "2025-09-20", "2025-10-05", 0));
    add(5, &|id| {
        let mut gone = stays(id);
        gone.statuses.push((d("2025-10-20"), ChildStatus::Moved));
        gone
    });
    add(5, &|id| {
        let mut other = stays(id);
        moved(&mut other, "2025-10-12", 1);
        other
    });
    // Left before, came back, and registered and left within the month.
    add(5, &|id| {
        let mut back = stays(id);
        back.statuses.extend([(d("2025-08-01"), ChildStatus::Moved), (d("2025-10-03"), ChildStatus::Active)]);
        back
    });
    add(5, &|id| {
        let mut brief = child(id, Sex::Female, "2023-10-25", "2025-10-02", 0);
        brief.statuses.push((d("2025-10-25"), ChildStatus::AgedOut));
        brief
    });
    // Gone before the month, and not yet there: in no column.
    add(5, &|id| {
        let mut gone = stays(id);
        gone.statuses.push((d("2025-09-30"), ChildStatus::Died));
        gone
    });
    add(5, &|id| child(id, Sex::Female, "2025-10-20", "2025-11-01", 0));
    all
}

#[test]
fn the_month_is_accounted_for_in_every_row() {
    let [table, programme] = in_full(&villages(), &children());
    let row = |area: &str| table.find(&[("area", area), ("sex", "all"), ("age_band_at_period_end", "all")]).expect("a row");
    let counts = |area: &str| MEASURES[..6].iter().map(|name| table.cell(row(area), name).cloned().expect("a cell")).collect::<Vec<_>>();
    let shown = |figures: [u64; 6]| figures.map(Cell::Count).to_vec();
    // start 10 + 5 moved + 5 other area; joined 5 new + 5 back + 5 brief; left 5 moved + 5 aged out; 5 to Sanga Point.
    assert_eq!(counts("Ulopi"), shown([20, 15, 10, 0, 5, 20]));
    assert_eq!(counts("Sanga Point"), shown([0, 0, 0, 5, 0, 5]));
    assert_eq!(counts("all"), shown([20, 15, 10, 5, 5, 25]));
    let figures = |name| programme.cell(&programme.rows[0], name).cloned();
    assert_eq!(
        (figures("moved"), figures("aged_out"), figures("died")),
        (Some(Cell::Count(5)), Some(Cell::Count(5)), Some(Cell::Count(0)))
    );
}

#[test]
fn age_is_that_at_the_end_of_the_month() {
    let [table, _] = in_full(&villages(), &children());
    let end = |band| {
        let row = table.find(&[("area", "all"), ("sex", "F"), ("age_band_at_period_end", band)]).expect("a row");
        table.cell(row, "active_end").cloned()
    };
    // Born 10 February: 8 months on 31 October. Born 20 September: 1 month.
    assert_eq!((end("0-5"), end("6-11"), end("24+")), (Some(Cell::Count(5)), Some(Cell::Count(20)), Some(Cell::Count(0))));
}

#[test]
fn reasons_for_leaving_do_not_give_each_other_away() {
    let mut all: Vec<ReportChild> = (0..20).map(|id| child(id, Sex::Male, "2025-02-10", "2025-03-01", id % 4)).collect();
    for (at, status) in [ChildStatus::Died; 2].into_iter().chain([ChildStatus::Moved; 9]).enumerate() {
        all[at].statuses.push((d("2025-10-20"), status));
    }
    let areas = Areas::new(&villages());
    let tables = alone::released(&count(october().period, &areas, &all, &[]), &october(), &areas);
    let [table, programme] = <[Table; 2]>::try_from(tables).expect("two tables");
    let cell = |name| programme.cell(&programme.rows[0], name).cloned().expect("a cell");
    assert_eq!(cell("died"), Cell::Withheld(Reason::Private));
    // 11 left in all, which stands in the other file: two deaths come out unless one of the two other figures is withheld too.
    let everybody = table.find(&[("area", "all"), ("sex", "all"), ("age_band_at_period_end", "all")]).expect("a row");
    let total = table.cell(everybody, "left").cloned().expect("a cell");
    assert!(matches!(cell("moved"), Cell::Withheld(_)) || matches!(total, Cell::Withheld(_)), "moved {:?}, left {total:?}", cell("moved"));
}

#[test]
fn not_visited_counts_from_registration_when_there_was_no_visit() {
    let mut all: Vec<ReportChild> = (0..12).map(|id| child(id, Sex::Male, "2025-02-10", "2025-03-01", 0)).collect();
    for seen in &mut all[..5] {
        seen.last_visit_on = Some(d("2025-09-02"));
    }
    // 59 days before the end of the month against 60: 2 September and 1 September.
    all[5].last_visit_on = Some(d("2025-09-01"));
    let [table, _] = in_full(&villages()[..1], &all);
    let row = table.find(&[("area", "all"), ("sex", "all"), ("age_band_at_period_end", "all")]).expect("a row");
    assert_eq!(table.cell(row, "active_no_visit_60d"), Some(&Cell::Count(7)));
}

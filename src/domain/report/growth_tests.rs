//! Small examples worked by hand for the growth table.

use super::*;
use crate::child::Sex;
use crate::report::counted::alone;
use crate::report::csv_table::ALL;
use crate::report::sample::{child, october, villages, visit, z};
use crate::report::suppress::Reason;
use crate::units::{Muac, Weight};

/// Children of one village and sex, about 9 months old, each seen once; `shape` makes the visit.
fn group(area: u128, sex: Sex, from: u128, count: u128, shape: &dyn Fn(u128, &mut ReportVisit)) -> Vec<ReportVisit> {
    (0..count)
        .map(|at| {
            let baby = child(from + at, sex, "2025-01-10", "2025-02-01", area);
            let mut seen = visit(from + at, &baby, "2025-10-15");
            seen.weight = Weight::from_grams(8_000).ok();
            seen.waz = z(-50);
            shape(at, &mut seen);
            seen
        })
        .collect()
}

#[test]
fn the_worked_example_of_ulopi() {
    // Low weight for age, Ulopi: girls 3 of 21, boys 9 of 24, all 12 of 45. The other villages as on the mock page of the report.
    let mut visits = Vec::new();
    for (area, (girls_low, girls), (boys_low, boys)) in
        [(0, (3, 21), (9, 24)), (1, (6, 31), (8, 29)), (2, (7, 28), (6, 33)), (3, (2, 17), (8, 19))]
    {
        for (sex, low, count) in [(Sex::Female, girls_low, girls), (Sex::Male, boys_low, boys)] {
            let from = visits.len() as u128;
            visits.extend(group(area, sex, from, count, &|at, visit| {
                if at < low {
                    visit.waz = z(-250);
                }
            }));
        }
    }
    let areas = Areas::new(&villages());
    let table = alone::released(&count(october().period, &areas, &visits), &october(), &areas).remove(0);
    let row = |area: &str, sex: &str| table.find(&[("area", area), ("sex", sex), ("age_band_at_visit", ALL)]);
    let cell = |area: &str, sex: &str, name: &str| table.cell(row(area, sex).expect("a row"), name).cloned().expect("a cell");
    // The girls' 3 and the boys' 9 stay private. With the 2 of Tenzu Ridge alone they would make 5, each of 1 to 4: one value too
    // few; so a third village is withheld.
    for (area, girls, boys) in [
        ("Ulopi", Cell::Withheld(Reason::Private), Cell::Withheld(Reason::Private)),
        ("Sanga Point", Cell::Count(6), Cell::Count(8)),
        ("Mbiro Hill", Cell::Withheld(Reason::Private), Cell::Withheld(Reason::Private)),
        ("Tenzu Ridge", Cell::Withheld(Reason::Private), Cell::Withheld(Reason::Private)),
    ] {
        assert_eq!((cell(area, "F", "waz_lt_m2"), cell(area, "M", "waz_lt_m2")), (girls, boys), "{area}");
    }
    assert_eq!((cell("Ulopi", "F", "waz_n"), cell("Ulopi", "M", "waz_n")), (Cell::Count(21), Cell::Count(24)));
    assert_eq!((cell("Ulopi", "all", "waz_lt_m2"), cell("Ulopi", "all", "waz_n")), (Cell::Count(12), Cell::Count(45)));
    assert_eq!((cell("all", "F", "waz_lt_m2"), cell("all", "M", "waz_lt_m2")), (Cell::Count(18), Cell::Count(31)));
    assert_eq!(cell("all", "all", "waz_lt_m2"), Cell::Count(49));
}

#[test]
fn a_small_figure_is_named_where_it_is_withheld() {
    let mut visits = group(0, Sex::Female, 0, 30, &|at, visit| visit.waz = z(if at < 3 { -250 } else { -50 }));
    for (area, low) in [(1, 8), (2, 9), (3, 2)] {
        visits.extend(group(area, Sex::Female, 100 * area, 40, &|at, visit| visit.waz = z(if at < low { -250 } else { -50 })));
    }
    let areas = Areas::new(&villages());
    let table = alone::released(&count(october().period, &areas, &visits), &october(), &areas).remove(0);
    let row = table.find(&[("area", "Ulopi"), ("sex", ALL), ("age_band_at_visit", ALL)]).expect("a row");
    assert_eq!(table.cell(row, "waz_lt_m2"), Some(&Cell::Withheld(Reason::Private)));
    assert_eq!(table.cell(row, "waz_n"), Some(&Cell::Count(30)));
    let Some(Cell::Text(withheld)) = table.cell(row, "withheld") else { panic!("nothing withheld: {row:?}") };
    assert!(withheld.split(';').any(|entry| entry == "waz_lt_m2:private"), "{withheld}");
}

/// The columns in which a single visit counts.
fn columns(shape: &dyn Fn(&mut ReportVisit)) -> Vec<&'static str> {
    let visits = group(0, Sex::Male, 0, 1, &|_, visit| shape(visit));
    let children = seen(&visits, october().period, GROWTH_BANDS);
    measures_of(&children[0]).into_iter().map(|measure| MEASURES[measure]).collect()
}

#[test]
fn limits_are_as_written() {
    let has = |shape: &dyn Fn(&mut ReportVisit), name: &str| columns(shape).contains(&name);
    for (hundredths, low, very_low) in [(-200, false, false), (-201, true, false), (-300, true, false), (-301, true, true)] {
        let found = columns(&|v| v.waz = z(hundredths));
        assert_eq!((found.contains(&"waz_lt_m2"), found.contains(&"waz_lt_m3")), (low, very_low), "WAZ {hundredths}");
    }
    for (mm, low, mid, sam, mam) in [
        (114, true, false, true, false),
        (115, false, true, false, true),
        (124, false, true, false, true),
        (125, false, false, false, false),
    ] {
        let found = columns(&|v| v.muac = Muac::from_mm(mm).ok());
        let holds = ["muac_lt_115", "muac_115_124", "sam_any", "mam_any"].map(|name| found.contains(&name));
        assert_eq!(holds, [low, mid, sam, mam], "{mm} mm");
    }
    assert!(has(&|v| v.wlz = z(-301), "sam_any") && has(&|v| v.wlz = z(-300), "mam_any") && !has(&|v| v.wlz = z(-200), "mam_any"));
    assert!(has(&|v| v.wlz = z(201), "wlz_gt_2") && !has(&|v| v.wlz = z(200), "wlz_gt_2") && has(&|v| v.wlz = z(301), "wlz_gt_3"));
}

#[test]
fn a_swollen_child_counts_as_very_low_and_a_doubtful_z_not_at_all() {
    let swollen = columns(&|v| {
        v.waz = None;
        v.oedema = Some(true);
    });
    for name in ["waz_n", "waz_lt_m2", "waz_lt_m3", "wlz_n", "wlz_lt_m3", "oedema_n", "sam_any"] {
        assert!(swollen.contains(&name), "{name}: {swollen:?}");
    }
    assert!(!swollen.contains(&"laz_n"));
    let doubtful = |confirmed| {
        columns(&|v| {
            v.waz = z(-650).map(|z| ReportZ { flagged: true, confirmed, ..z });
            v.wlz = z(-450);
        })
    };
    assert!(!doubtful(false).contains(&"waz_n") && !doubtful(false).contains(&"wlz_n"));
    assert!(doubtful(true).contains(&"waz_lt_m3") && doubtful(true).contains(&"wlz_lt_m3"));
}

#[test]
fn the_youngest_have_their_own_limits() {
    let young = |mm: u16, on: &str| {
        let baby = child(1, Sex::Female, "2025-08-20", "2025-08-25", 0);
        let mut seen_once = visit(1, &baby, on);
        seen_once.muac = Muac::from_mm(mm).ok();
        let visits = [seen_once];
        measures_of(&seen(&visits, october().period, GROWTH_BANDS)[0]).contains(&U6_RISK)
    };
    // Born 20 August: 42 days old on 1 October.
    assert!(young(109, "2025-10-01") && !young(110, "2025-10-01"));
}

#[test]
fn what_the_relations_say_holds_whatever_was_found() {
    // Every mixture of a few findings, in all bands: no equation of the reader may be broken.
    let mut visits = Vec::new();
    let mut id = 0;
    for born in ["2025-07-01", "2025-02-01", "2024-06-01"] {
        for pattern in 0..512_u32 {
            let bit = |at: u32| pattern & (1 << at) != 0;
            let baby = child(id, if bit(8) { Sex::Male } else { Sex::Female }, born, "2025-08-01", u128::from(pattern % 4));
            let mut found = visit(id, &baby, "2025-10-15");
            id += 1;
            found.waz = if bit(0) { z(if bit(1) { -350 } else { -210 }) } else { None };
            found.wlz = if bit(2) { z(if bit(1) { 320 } else { -310 }) } else { z(-220) };
            found.laz = if bit(3) { z(-400) } else { None };
            found.muac = if bit(4) { Muac::from_mm(if bit(1) { 108 } else { 120 }).ok() } else { None };
            found.oedema = if bit(5) { Some(bit(6)) } else { None };
            found.slow_or_lost = if bit(7) { Some(bit(1)) } else { None };
            visits.push(found);
        }
    }
    let areas = Areas::new(&villages());
    alone::in_full(&count(october().period, &areas, &visits), &october(), &areas);
}

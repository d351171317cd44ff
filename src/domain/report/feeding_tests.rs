//! Small examples worked by hand for the feeding indicators.

use std::collections::BTreeSet;

use super::*;
use crate::child::Sex;
use crate::food::{FoodGroup, Texture};
use crate::report::counted::alone;
use crate::report::csv_table::ALL;
use crate::report::rows::ReportAnswers;
use crate::report::sample::{child, october, villages, visit};

/// How one visit on 15 October of a child born on this day counts for an indicator.
fn judged(indicator: Indicator, born: &str, answers: ReportAnswers) -> Judged {
    let baby = child(1, Sex::Female, born, born, 0);
    let mut contact = visit(1, &baby, "2025-10-15");
    contact.answers = answers;
    let visits = [contact];
    let children = seen(&visits, october().period, FEEDING_BANDS);
    children.first().map_or(Judged::NotEligible, |child| of_visits(indicator, child).0)
}

const MONTHS_3: &str = "2025-07-01";
const MONTHS_7: &str = "2025-03-01";
const MONTHS_9: &str = "2025-01-15";
const MONTHS_8: &str = "2025-01-16";
const MONTHS_14: &str = "2024-08-01";

fn answers() -> ReportAnswers {
    ReportAnswers::default()
}

fn eaten(groups: &[FoodGroup]) -> Option<BTreeSet<FoodGroup>> {
    Some(groups.iter().copied().collect())
}

#[test]
fn diversity_is_five_of_the_eight() {
    use FoodGroup::{BreastMilk, Dairy, Eggs, GrainsRoots, OtherFv};
    let of = |groups: Option<BTreeSet<FoodGroup>>| judged(Indicator::Mdd, MONTHS_7, ReportAnswers { groups, ..answers() });
    assert_eq!(of(eaten(&[BreastMilk, GrainsRoots, Dairy, Eggs])), Judged::Known(false));
    assert_eq!(of(eaten(&[BreastMilk, GrainsRoots, Dairy, Eggs, OtherFv])), Judged::Known(true));
    assert_eq!(of(eaten(&[])), Judged::Known(false), "asked, none");
    assert_eq!(of(None), Judged::Missing, "not asked is not none");
    assert_eq!(judged(Indicator::Mdd, MONTHS_3, ReportAnswers { groups: eaten(&[]), ..answers() }), Judged::NotEligible);
}

#[test]
fn meals_of_a_breastfed_child_by_age() {
    let of = |born, meals| judged(Indicator::Mmf, born, ReportAnswers { breastfed: Some(true), meals: Some(meals), ..answers() });
    // 15 October: born 16 January 8 months, born 15 January 9 months.
    assert_eq!((of(MONTHS_8, 1), of(MONTHS_8, 2)), (Judged::Known(false), Judged::Known(true)));
    assert_eq!((of(MONTHS_9, 2), of(MONTHS_9, 3)), (Judged::Known(false), Judged::Known(true)));
}

#[test]
fn feeds_of_a_child_not_breastfed() {
    let of = |meals, formula, animal, yogurt, spoon| ReportAnswers {
        breastfed: Some(false),
        meals,
        formula_times: formula,
        animal_milk_times: animal,
        drink_yogurt_times: yogurt,
        spoon_yogurt_times: spoon,
        ..answers()
    };
    let mmf = |a| judged(Indicator::Mmf, MONTHS_9, a);
    assert_eq!(mmf(of(Some(1), Some(2), Some(1), Some(0), None)), Judged::Known(true), "one meal and three milks");
    assert_eq!(mmf(of(Some(0), Some(4), Some(1), Some(0), None)), Judged::Known(false), "no solid feed");
    assert_eq!(mmf(of(Some(1), Some(1), Some(1), Some(0), Some(3))), Judged::Known(false), "spoon yoghurt is a meal already");
    assert_eq!(mmf(of(Some(5), None, Some(1), Some(0), None)), Judged::Missing, "a missing count is not nought");
    let mmff = |a| judged(Indicator::Mmff, MONTHS_9, a);
    assert_eq!(mmff(of(None, Some(1), Some(0), Some(0), Some(1))), Judged::Known(true), "spoon yoghurt counts here");
    assert_eq!(mmff(of(None, Some(1), Some(0), Some(0), Some(0))), Judged::Known(false));
    assert_eq!(mmff(of(None, Some(2), Some(0), Some(0), None)), Judged::Missing);
    assert_eq!(mmff(ReportAnswers { breastfed: Some(true), ..answers() }), Judged::NotEligible);
    assert_eq!(mmff(answers()), Judged::NotEligible);
}

#[test]
fn an_acceptable_diet_needs_all_of_its_parts() {
    use FoodGroup::{Dairy, Eggs, Flesh, GrainsRoots, VitA};
    let groups = eaten(&[GrainsRoots, Dairy, Flesh, Eggs, VitA]);
    let full = ReportAnswers {
        breastfed: Some(false),
        meals: Some(3),
        formula_times: Some(2),
        animal_milk_times: Some(0),
        drink_yogurt_times: Some(0),
        spoon_yogurt_times: Some(0),
        groups,
        ..answers()
    };
    let mad = |a| judged(Indicator::Mad, MONTHS_9, a);
    assert_eq!(mad(full.clone()), Judged::Known(true));
    assert_eq!(mad(ReportAnswers { formula_times: Some(1), ..full.clone() }), Judged::Known(false), "one milk feed");
    assert_eq!(mad(ReportAnswers { groups: eaten(&[GrainsRoots]), ..full.clone() }), Judged::Known(false));
    assert_eq!(mad(ReportAnswers { spoon_yogurt_times: None, ..full.clone() }), Judged::Missing);
    let breastfed = ReportAnswers { breastfed: Some(true), formula_times: None, ..full };
    assert_eq!(mad(breastfed), Judged::Known(true), "milk is not asked of a breastfed child");
}

#[test]
fn milk_only_and_mixed() {
    let of = |indicator, a| judged(indicator, MONTHS_3, a);
    let ebf = |breastfed, breast_only| of(Indicator::Ebf, ReportAnswers { breastfed, breast_only, ..answers() });
    assert_eq!(
        (ebf(Some(true), Some(true)), ebf(Some(false), None), ebf(Some(true), None)),
        (Judged::Known(true), Judged::Known(false), Judged::Missing)
    );
    let mixed = |breastfed, formula_times, animal_milk_times| {
        of(Indicator::MixMF, ReportAnswers { breastfed, formula_times, animal_milk_times, ..answers() })
    };
    assert_eq!(mixed(Some(true), Some(0), Some(1)), Judged::Known(true));
    assert_eq!(mixed(Some(true), Some(0), Some(0)), Judged::Known(false));
    assert_eq!(mixed(Some(false), None, None), Judged::Known(false));
    assert_eq!(mixed(Some(true), Some(2), None), Judged::Missing);
}

#[test]
fn the_rest_by_one_answer_each() {
    use FoodGroup::{Eggs, GrainsRoots, VitA};
    let groups = |groups: &[FoodGroup]| ReportAnswers { groups: eaten(groups), ..answers() };
    assert_eq!(judged(Indicator::Eff, MONTHS_7, groups(&[Eggs])), Judged::Known(true));
    assert_eq!(judged(Indicator::Eff, MONTHS_7, groups(&[GrainsRoots])), Judged::Known(false));
    assert_eq!(judged(Indicator::Zvf, MONTHS_7, groups(&[GrainsRoots])), Judged::Known(true));
    assert_eq!(judged(Indicator::Zvf, MONTHS_7, groups(&[VitA])), Judged::Known(false));
    assert_eq!(judged(Indicator::Isssf, MONTHS_7, ReportAnswers { meals: Some(1), ..answers() }), Judged::Known(true));
    assert_eq!(judged(Indicator::Isssf, MONTHS_9, ReportAnswers { meals: Some(1), ..answers() }), Judged::NotEligible);
    assert_eq!(judged(Indicator::Cbf, MONTHS_14, ReportAnswers { breastfed: Some(true), ..answers() }), Judged::Known(true));
    assert_eq!(judged(Indicator::BoF, MONTHS_3, ReportAnswers { bottle: Some(true), ..answers() }), Judged::Known(true));
    assert_eq!(judged(Indicator::SolidsBy7m, MONTHS_7, ReportAnswers { solids_started: Some(true), ..answers() }), Judged::Known(true));
    assert_eq!(judged(Indicator::SolidsBy7m, MONTHS_8, ReportAnswers { solids_started: Some(true), ..answers() }), Judged::NotEligible);
    let best = |level| ReportAnswers { texture_best: Texture::new(level), texture_expected: Texture::new(3), ..answers() };
    assert_eq!(judged(Indicator::LumpsBy9m, MONTHS_9, best(2)), Judged::Known(true));
    assert_eq!(judged(Indicator::LumpsBy9m, MONTHS_9, best(1)), Judged::Known(false));
    assert_eq!(judged(Indicator::LumpsBy10m, MONTHS_9, best(2)), Judged::NotEligible);
    assert_eq!(judged(Indicator::TextureOnStage, MONTHS_9, best(2)), Judged::Known(false));
    assert_eq!(judged(Indicator::TextureOnStage, MONTHS_9, best(3)), Judged::Known(true));
}

#[test]
fn a_table_counts_each_child_once_and_says_who_is_missing() {
    // 30 girls of 9 months in Ulopi: 12 with five groups, 11 with fewer, 7 not asked. And boys elsewhere, all asked.
    let mut visits = Vec::new();
    for at in 0..30_u128 {
        let baby = child(at, Sex::Female, "2025-01-01", "2025-02-01", 0);
        let mut contact = visit(at, &baby, "2025-10-15");
        let count = if at < 12 { 5 } else { 2 };
        contact.answers.groups = if at < 23 { eaten(&FoodGroup::ALL[..count]) } else { None };
        visits.push(contact);
        // An earlier visit of the month does not count the child again.
        let mut earlier = visit(1_000 + at, &baby, "2025-10-01");
        earlier.answers.sweet_drink = Some(at < 10);
        visits.push(earlier);
    }
    let areas = Areas::new(&villages());
    let table = alone::in_full(&count(october().period, &areas, &[], &visits), &october(), &areas).remove(0);
    let row = |indicator: &str| {
        table.find(&[("area", "Ulopi"), ("sex", "F"), ("age_band_at_visit", "9-11"), ("indicator", indicator)]).expect("a row")
    };
    let cells =
        |indicator: &str| COLUMNS[3..].iter().map(|name| table.cell(row(indicator), name).cloned().expect("a cell")).collect::<Vec<_>>();
    // 12 of 23: 52.17 %.
    assert_eq!(cells("MDD"), [Cell::Count(12), Cell::Count(23), Cell::Percent(522), Cell::Empty, Cell::Empty]);
    assert_eq!(cells("SwB"), [Cell::Count(10), Cell::Count(30), Cell::Percent(333), Cell::Empty, Cell::Empty]);
    assert_eq!(cells("MMF"), [Cell::Count(0), Cell::Count(0), Cell::Empty, Cell::Empty, Cell::Empty]);
    // Who is missing, and whose answer is from an earlier visit, stands in the programme's row alone.
    let how = |indicator: &str| {
        let row = table.find(&[("area", ALL), ("sex", ALL), ("age_band_at_visit", ALL), ("indicator", indicator)]).expect("a row");
        COLUMNS[6..].iter().map(|name| table.cell(row, name).cloned().expect("a cell")).collect::<Vec<_>>()
    };
    assert_eq!(how("MDD"), [Cell::Count(7), Cell::Count(0)]);
    assert_eq!(how("SwB"), [Cell::Count(0), Cell::Count(30)]);
    assert_eq!(how("MMF"), [Cell::Count(30), Cell::Count(0)]);
    assert!(table.find(&[("indicator", "EBF"), ("age_band_at_visit", "9-11")]).is_none(), "no row where nobody can count");
}

#[test]
fn registration_counts_the_children_of_the_month() {
    let mut children: Vec<ReportChild> = (0..20).map(|id| child(id, Sex::Male, "2025-09-25", "2025-10-06", 1)).collect();
    for (at, child) in children.iter_mut().enumerate() {
        child.ever_breastfed = Some(at >= 6);
        child.breastfed_within_hour = if at < 15 { Some(at >= 10) } else { None };
    }
    children.push(child(99, Sex::Male, "2025-09-25", "2025-09-30", 1));
    let areas = Areas::new(&villages());
    let table = alone::in_full(&count(october().period, &areas, &children, &[]), &october(), &areas).remove(0);
    let cell = |indicator: &str, name: &str| {
        let row = table.find(&[("area", ALL), ("sex", ALL), ("age_band_at_visit", ALL), ("indicator", indicator)]).expect("a row");
        table.cell(row, name).cloned().expect("a cell")
    };
    assert_eq!((cell("EvBF", "n"), cell("EvBF", "den")), (Cell::Count(14), Cell::Count(20)));
    // Six were never breastfed: they count as no. 10 to 14 yes; the last five not asked.
    assert_eq!((cell("EIBF", "n"), cell("EIBF", "den"), cell("EIBF", "missing_n")), (Cell::Count(5), Cell::Count(15), Cell::Count(5)));
}

#[test]
fn what_the_relations_say_holds_whatever_was_answered() {
    let mut visits = Vec::new();
    let mut id = 0_u128;
    for born in [MONTHS_3, MONTHS_7, MONTHS_9, MONTHS_14] {
        for pattern in 0..243_u32 {
            let answer = |at: u32| match pattern / 3_u32.pow(at) % 3 {
                0 => None,
                other => Some(other == 1),
            };
            let baby = child(id, if id.is_multiple_of(2) { Sex::Female } else { Sex::Male }, born, born, id % 4);
            let mut late = visit(2 * id + 1, &baby, "2025-10-15");
            let mut early = visit(2 * id, &baby, "2025-10-13");
            id += 1;
            late.answers.breastfed = answer(0);
            late.answers.meals = answer(1).map(|yes| if yes { 3 } else { 0 });
            early.answers.breastfed = answer(2);
            early.answers.meals = Some(2);
            for visit in [&mut late, &mut early] {
                visit.answers.formula_times = answer(3).map(u8::from);
                visit.answers.animal_milk_times = Some(1);
                visit.answers.drink_yogurt_times = answer(2).map(u8::from);
                visit.answers.spoon_yogurt_times = answer(4).map(u8::from);
            }
            late.answers.groups = answer(4).and_then(|yes| eaten(&FoodGroup::ALL[..if yes { 6 } else { (id % 5) as usize }]));
            visits.extend([late, early]);
        }
    }
    let areas = Areas::new(&villages());
    alone::in_full(&count(october().period, &areas, &[], &visits), &october(), &areas);
}

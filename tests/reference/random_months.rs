//! Months of random programmes, as a reader of all their tables holds them, for `attack.py`: one JSON object a line.
//!
//! `random_months COUNT CHILDREN SEED` prints the first release of each; with `revised` behind it the revision after late records
//! came in, with all that it inherits; with `no-complements` a release with a planted fault, to see that the attacker finds it.

mod reader;

use chrono::{Days, NaiveDate};
use domain::calendar::Month;
use domain::child::{ChildStatus, Sex};
use domain::feeding::ReactionLevel;
use domain::food::{Allergen, FoodGroup};
use domain::ids::{AreaId, ChildId, PersonId, VisitId};
use domain::report::csv_table::{Cell, Release, Table};
use domain::report::definitions::{Holds, holds, key};
use domain::report::inherit::after_revision;
use domain::report::month::{MonthRows, as_read, tables, tables_withholding};
use domain::report::period::Period;
use domain::report::reactions::ReportReaction;
use domain::report::rows::{Placement, ReportAnswers, ReportArea, ReportChild, ReportFollowUp, ReportSlot, ReportVisit, ReportZ, SlotEnd};
use domain::report::suppress::Threshold;
use domain::report::system::{Kind, Standing, System};
use domain::rule::{Class, FollowUpState, RuleId};
use domain::units::{Muac, Weight};
use domain::visit::Contact;
use reader::{Dice, json};

/// How a programme is: drawn once for each.
struct Manner {
    areas: u64,
    /// Percent of answers that are missing.
    missing: u64,
    /// Percent of children who are low, and who left.
    low: u64,
    leaving: u64,
}

fn day(first: NaiveDate, by: u64) -> NaiveDate {
    first + Days::new(by)
}

fn programme(dice: &mut Dice, children: u64) -> MonthRows {
    let first = month().first();
    let manner = Manner { areas: 3 + dice.below(3), missing: dice.below(12), low: 1 + dice.below(30), leaving: dice.below(10) };
    let areas = (0..manner.areas).map(|n| ReportArea { id: AreaId(u128::from(n)), code: format!("area-{n}") }).collect();
    let schedule: Vec<String> = ["m04", "m06", "m07", "m09", "m12", "m18"].map(str::to_owned).to_vec();
    let mut rows = MonthRows { areas, schedule, ..MonthRows::default() };
    for n in 0..children {
        let child = child(dice, &manner, n, first);
        if child.status_on(first) == Some(ChildStatus::Active) || child.registered_on >= first {
            for _ in 0..dice.below(3) {
                let on = day(first, dice.below(31));
                let visit = visit(dice, &manner, &child, rows.visits.len(), on);
                rows.visits.extend(visit.filter(|visit| visit.on >= child.registered_on));
            }
            if dice.percent(70) {
                rows.slots.push(slot(dice, &child, &rows.schedule, first));
            }
            if dice.percent(25) {
                rows.follow_ups.push(follow_up(dice, &child, first));
            }
            if dice.percent(8) {
                react(dice, &child, first, &mut rows);
            }
        }
        rows.children.push(child);
    }
    rows
}

fn month() -> Month {
    Month::parse("2026-10").unwrap_or_else(|| std::process::exit(2))
}

fn child(dice: &mut Dice, manner: &Manner, n: u64, first: NaiveDate) -> ReportChild {
    // Half of the areas are small.
    let area = dice.below(manner.areas).min(dice.below(manner.areas));
    let born = first - Days::new(dice.below(745));
    let registered_on = day(born, dice.below(120)).min(day(first, dice.below(31)));
    let place = |from, area| Placement { from, area: AreaId(u128::from(area)), worker: PersonId(1) };
    let mut placements = vec![place(registered_on, area)];
    if dice.percent(4) {
        placements.push(place(day(first, dice.below(28)).max(registered_on), dice.below(manner.areas)));
    }
    let left = [ChildStatus::Moved, ChildStatus::Refused, ChildStatus::Died, ChildStatus::AgedOut][usize::from(dice.small(4))];
    let gone = (day(first, dice.below(31)).max(registered_on), left);
    let asked = |yes: bool, dice: &mut Dice| (!dice.percent(20)).then_some(yes);
    ReportChild {
        id: ChildId(u128::from(n)),
        sex: if dice.percent(50) { Sex::Female } else { Sex::Male },
        born,
        preterm: dice.percent(8),
        correction_days: 0,
        low_birth_weight: dice.percent(8),
        registered_on,
        statuses: if dice.percent(manner.leaving) { vec![gone] } else { Vec::new() },
        placements,
        last_visit_on: dice.percent(80).then_some(first),
        ever_breastfed: asked(true, dice),
        breastfed_within_hour: asked(dice.percent(60), dice),
        only_breast_milk_two_days: asked(dice.percent(80), dice),
    }
}

fn visit(dice: &mut Dice, manner: &Manner, child: &ReportChild, n: usize, on: NaiveDate) -> Option<ReportVisit> {
    let place = child.place_on(on)?;
    let has = |dice: &mut Dice| !dice.percent(manner.missing);
    let score = |dice: &mut Dice| {
        let low = dice.percent(manner.low);
        let hundredths = i32::try_from(dice.below(if low { 250 } else { 400 })).unwrap_or(0) - if low { 400 } else { 190 };
        has(dice).then_some(ReportZ { hundredths, flagged: false, confirmed: false })
    };
    let (waz, wlz, laz) = (score(dice), score(dice), score(dice));
    let yes = |percent, dice: &mut Dice| has(dice).then(|| dice.percent(percent));
    let times = |most, dice: &mut Dice| has(dice).then(|| dice.small(most));
    let answers = ReportAnswers {
        breastfed: yes(90, dice),
        breast_only: yes(70, dice),
        formula_times: times(2, dice),
        animal_milk_times: times(2, dice),
        drink_yogurt_times: times(2, dice),
        spoon_yogurt_times: times(2, dice),
        solids_yesterday: yes(90, dice),
        solids_started: yes(80, dice),
        meals: times(5, dice),
        groups: has(dice).then(|| FoodGroup::ALL.iter().copied().filter(|_| dice.percent(60)).collect()),
        sweet_drink: yes(5, dice),
        unhealthy_food: yes(10, dice),
        bottle: yes(5, dice),
        texture_best: None,
        texture_expected: None,
    };
    Some(ReportVisit {
        id: VisitId(n as u128),
        entry: i64::try_from(n).ok()?,
        child: child.id,
        sex: child.sex,
        born: child.born,
        area: place.area,
        worker: place.worker,
        on,
        contact: if dice.percent(10) { Contact::Phone } else { Contact::Home },
        weight: Weight::from_grams(7_000).ok().filter(|_| has(dice)),
        length: None,
        muac: Muac::from_mm(100 + u16::from(dice.small(60))).ok().filter(|_| dice.percent(80)),
        oedema: has(dice).then(|| dice.percent(2)),
        waz,
        wlz,
        laz,
        age_corrected: child.preterm,
        slow_or_lost: yes(manner.low, dice),
        slot: Some("m06".to_owned()),
        fills_slot: dice.percent(70),
        answers,
    })
}

fn slot(dice: &mut Dice, child: &ReportChild, schedule: &[String], first: NaiveDate) -> ReportSlot {
    let end = match dice.below(10) {
        0..7 => SlotEnd::OnTime,
        7 => SlotEnd::EarlyOrLate,
        8 => SlotEnd::Skipped,
        _ => SlotEnd::Overdue,
    };
    let place = child.placements[0];
    let slot = schedule[usize::from(dice.small(6))].clone();
    ReportSlot { area: place.area, worker: place.worker, slot, closes: day(first, dice.below(31)), end }
}

fn follow_up(dice: &mut Dice, child: &ReportChild, first: NaiveDate) -> ReportFollowUp {
    let kinds = [
        (RuleId::WeightLow, Class::Fortnight),
        (RuleId::SolidsLate, Class::Fortnight),
        (RuleId::WastingSevere, Class::Today),
        (RuleId::WeightLoss, Class::Today),
    ];
    let (rule, class) = kinds[usize::from(dice.small(4))];
    let opened_on = day(first, dice.below(31)) - Days::new(if dice.percent(30) { 40 } else { 0 });
    let due_on = day(opened_on, 1 + dice.below(20));
    let later = |percent, dice: &mut Dice| dice.percent(percent).then(|| day(opened_on, dice.below(25)));
    let closed_on = later(30, dice);
    let reached_on = dice.percent(30).then_some(opened_on);
    ReportFollowUp {
        child: child.id,
        area: child.placements[0].area,
        worker: PersonId(1),
        rule,
        class,
        opened_on,
        due_on,
        first_due_on: due_on,
        followed_up_on: later(40, dice),
        outcome_on: reached_on.or_else(|| later(20, dice)),
        reached_on,
        closed_on,
        state: if closed_on.is_some() { FollowUpState::Done } else { FollowUpState::Open },
        reason: None,
    }
}

/// Without this, a table would be looked at alone: the planted defect of a release that forgets what its tables share.
fn without_complements(system: &System, withheld: &mut [bool]) {
    for (figure, withheld) in system.figures.iter().zip(withheld) {
        *withheld &= Threshold::LEAST.hides(figure.value) || figure.standing == Standing::Fine;
    }
}

/// A reaction, told once or twice, and the follow-up that it opened.
fn react(dice: &mut Dice, child: &ReportChild, first: NaiveDate, rows: &mut MonthRows) {
    let (level, rule, class) = [
        (ReactionLevel::Severe, RuleId::ReactionSevere, Class::Now),
        (ReactionLevel::Spreading, RuleId::ReactionSpreading, Class::Today),
        (ReactionLevel::Mild, RuleId::ReactionMild, Class::Fortnight),
        (ReactionLevel::Mild, RuleId::ReactionMild, Class::Fortnight),
    ][usize::from(dice.small(4))];
    let on = day(first, dice.below(31));
    let (group, allergen) =
        [(FoodGroup::Eggs, Some(Allergen::Egg)), (FoodGroup::PulsesNuts, Some(Allergen::Peanut)), (FoodGroup::VitA, None)]
            [usize::from(dice.small(3))];
    let area = child.placements[0].area;
    let told = ReportReaction { child: child.id, area, on, group: Some(group), allergen, level, referred: class.is_urgent() };
    rows.reactions.extend((0..1 + dice.below(2)).map(|_| told));
    let mut opened = follow_up(dice, child, first);
    (opened.rule, opened.class, opened.opened_on) = (rule, class, on);
    rows.follow_ups.push(opened);
}

/// Late records: visits that were not there before, children who came and went.
fn late(dice: &mut Dice, rows: &mut MonthRows) {
    let first = month().first();
    let manner = Manner { areas: 0, missing: dice.below(12), low: 20, leaving: 0 };
    for at in 0..rows.children.len() {
        if dice.percent(4) {
            let child = rows.children[at].clone();
            let on = day(first, dice.below(31));
            let visit = visit(dice, &manner, &child, rows.visits.len(), on);
            rows.visits.extend(visit.filter(|visit| visit.on >= child.registered_on));
            rows.follow_ups.push(follow_up(dice, &child, first));
        }
        if dice.percent(1) {
            let gone = day(first, dice.below(31)).max(rows.children[at].registered_on);
            rows.children[at].statuses = vec![(gone, ChildStatus::Moved)];
        }
    }
}

fn release() -> Release {
    Release {
        programme: "random".to_owned(),
        period: Period::Month(month()),
        protocol_id: "default".to_owned(),
        protocol_version: "1".to_owned(),
        generated_at: day(month().last(), 10).and_time(chrono::NaiveTime::MIN),
    }
}

/// The revision as its reader holds it: what its tables print once they have inherited what the release before withheld.
fn revised(before: &MonthRows, now: &MonthRows) -> (System, Vec<bool>) {
    let first = tables(&release(), Threshold::LEAST, before);
    let printed = after_revision(&release(), tables(&release(), Threshold::LEAST, now), &first);
    let (system, _) = as_read(Period::Month(month()), Threshold::LEAST, now);
    // Which figure stands in a cell: it is withheld in just those copies of the tables whose bit its number has.
    let bits = usize::BITS - system.figures.len().leading_zeros();
    let copy = |bit: u32| {
        let withheld: Vec<bool> = (0..system.figures.len()).map(|at| (at >> bit) & 1 == 1).collect();
        tables_withholding(&release(), Threshold::LEAST, now, &withheld)
    };
    let copies: Vec<Vec<Table>> = (0..bits).map(copy).collect();
    let mut withheld: Vec<bool> = system.figures.iter().map(|figure| figure.kind == Kind::Printed).collect();
    for table in &printed {
        for row in &table.rows {
            for (column, cell) in table.columns.iter().zip(row) {
                if holds(column) == Some(Holds::Count) && matches!(cell, Cell::Count(_)) {
                    let is_withheld = |copy: &Vec<Table>| {
                        let same = copy.iter().find(|other| other.name == table.name);
                        let row = same.and_then(|other| other.find(&key(table, row)).and_then(|row| other.cell(row, column)));
                        // A row of which nothing is told is not there.
                        row.is_none_or(|cell| matches!(cell, Cell::Withheld(_)))
                    };
                    let at: usize = copies.iter().enumerate().filter(|(_, copy)| is_withheld(copy)).map(|(bit, _)| 1 << bit).sum();
                    assert_eq!(Cell::Count(system.figures[at].value), *cell, "{} {column}", table.name);
                    withheld[at] = false;
                }
            }
        }
    }
    (system, withheld)
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize| args.get(at).and_then(|text| text.parse::<u64>().ok()).unwrap_or(1);
    let mut dice = Dice(number(2));
    for _ in 0..number(0) {
        let rows = programme(&mut dice, number(1));
        let (system, mut withheld) = as_read(Period::Month(month()), Threshold::LEAST, &rows);
        let (system, withheld) = match args.get(3).map(String::as_str) {
            Some("revised") => {
                let mut now = rows.clone();
                late(&mut dice, &mut now);
                revised(&rows, &now)
            }
            Some("no-complements") => {
                without_complements(&system, &mut withheld);
                (system, withheld)
            }
            _ => (system, withheld),
        };
        assert!(system.broken().is_empty(), "the counts do not hold together");
        println!("{}", json(&system, &withheld));
    }
}

//! Small random tables with all their totals, and what a release withholds of them, for `attack.py`: one JSON object a
//! line, as of `random_months`.
//!
//! `small_tables COUNT SEED`

mod reader;

use domain::report::cube::{Bonds, Cube, Relation, Rest};
use domain::report::sheet::{Axis, Dimension};
use domain::report::suppress::{Threshold, withhold};
use domain::report::system::System;
use reader::{Dice, json};

/// A count of children: mostly one that may be shown.
fn count(dice: &mut Dice) -> u64 {
    if dice.percent(12) { dice.below(5) } else { 5 + dice.below(30) }
}

/// Areas and sexes.
fn by_sex(dice: &mut Dice) -> System {
    let areas = 4 + usize::from(dice.small(5));
    let mut cube = Cube::new(&[areas, 2], 1);
    for (area, sex) in (0..areas).flat_map(|area| (0..2).map(move |sex| (area, sex))) {
        cube.add(&[Some(area), Some(sex)], 0, count(dice));
    }
    let mut system = System::default();
    cube.put(&mut system, &Bonds::new(&[Axis::of(Dimension::Area, areas), Axis::of(Dimension::Sex, 2)], &[]));
    system
}

/// Areas alone, with children counted among those who could be.
fn of_those_who_could(dice: &mut Dice) -> System {
    let areas = 4 + usize::from(dice.small(4));
    let mut cube = Cube::new(&[areas], 2);
    for area in 0..areas {
        let (n, others) = (count(dice), count(dice));
        cube.add(&[Some(area)], 0, n);
        cube.add(&[Some(area)], 1, n + others);
    }
    let mut system = System::default();
    cube.put(&mut system, &Bonds::new(&[Axis::of(Dimension::Area, areas)], &[Relation::within(1, &[0], Rest::Guarded)]));
    system
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize| args.get(at).and_then(|text| text.parse::<u64>().ok()).unwrap_or(1);
    let mut dice = Dice(number(1));
    for _ in 0..number(0) {
        let system = if dice.percent(50) { by_sex(&mut dice) } else { of_those_who_could(&mut dice) };
        println!("{}", json(&system, &withhold(&system, Threshold::LEAST)));
    }
}

//! The WHO tables inside the program, one dense array a sex, so that a lookup is an index. It knows no child and no z-score.
//!
//! `tables/README.md` names the WHO publication of each file and the rights on it.

use std::sync::LazyLock;

use super::lms::{Lms, Side, Tail};
use crate::child::Sex;

/// One table: rows for consecutive keys (days of age, or millimetres of length).
pub(super) struct Table {
    first: i32,
    girls: Rows,
    boys: Rows,
}

/// The rows of one sex. Their tails stand apart: few measurements lie in one, and the rows of the others stay close together.
#[derive(Default)]
struct Rows {
    lms: Vec<Lms>,
    below: Vec<Tail>,
    above: Vec<Tail>,
}

impl Rows {
    fn push(&mut self, row: Lms) {
        self.lms.push(row);
        self.below.push(row.tail(Side::Below));
        self.above.push(row.tail(Side::Above));
    }
}

impl Table {
    /// The row of this key, if the table has it.
    pub(super) fn row(&self, sex: Sex, key: i32) -> Option<Lms> {
        self.rows(sex).lms.get(self.place(key)?).copied()
    }

    /// z of `x` by the row of this key, with tails restricted beyond ±3.
    pub(super) fn z_restricted(&self, sex: Sex, key: i32, x: f64) -> Option<f64> {
        let (rows, place) = (self.rows(sex), self.place(key)?);
        let row = rows.lms.get(place)?;
        Some(row.z_with_tails(x, |side| match side {
            Side::Below => rows.below[place],
            Side::Above => rows.above[place],
        }))
    }

    /// As [`Self::z_restricted`]; between two rows by the figures on the line between them.
    pub(super) fn z_restricted_between(&self, sex: Sex, key: f64, x: f64) -> Option<f64> {
        if key.fract() == 0.0 { self.z_restricted(sex, key as i32, x) } else { self.row_between(sex, key).map(|row| row.z_restricted(x)) }
    }

    fn place(&self, key: i32) -> Option<usize> {
        usize::try_from(key.checked_sub(self.first)?).ok()
    }

    /// The row of this key; between two rows each figure is taken on the straight line between them.
    pub(super) fn row_between(&self, sex: Sex, key: f64) -> Option<Lms> {
        let whole = key.floor();
        let row = self.row(sex, whole as i32)?;
        let part = key - whole;
        if part == 0.0 { Some(row) } else { Some(row.towards(self.row(sex, whole as i32 + 1)?, part)) }
    }

    /// First and last key.
    pub(super) fn keys(&self) -> (i32, i32) {
        (self.first, self.first + self.boys.lms.len() as i32 - 1)
    }

    const fn rows(&self, sex: Sex) -> &Rows {
        match sex {
            Sex::Female => &self.girls,
            Sex::Male => &self.boys,
        }
    }

    /// Reads `sex,key,L,M,S`. The text is part of the program and a test reads all of it, so a fault is a fault of the build.
    fn read(name: &str, text: &str) -> Self {
        let mut table = Self { first: 0, girls: Rows::default(), boys: Rows::default() };
        let mut first = None;
        for (number, line) in text.lines().enumerate().skip(1) {
            let (sex, key, row) = read_line(line).unwrap_or_else(|| panic!("table {name}, line {}: {line}", number + 1));
            let first = *first.get_or_insert(key);
            table.first = first;
            let rows = match sex {
                Sex::Female => &mut table.girls,
                Sex::Male => &mut table.boys,
            };
            assert_eq!(key, first + rows.lms.len() as i32, "table {name}, line {}: a key is missing or out of order", number + 1);
            rows.push(row);
        }
        assert_eq!(table.girls.lms.len(), table.boys.lms.len(), "table {name}: one sex has more rows");
        table
    }
}

/// One line; a length key such as `45.0` (cm) becomes 450 (mm).
fn read_line(line: &str) -> Option<(Sex, i32, Lms)> {
    let mut cells = line.split(',');
    let sex = Sex::from_code(cells.next()?).ok()?;
    let key: String = cells.next()?.chars().filter(|c| *c != '.').collect();
    let mut figure = || cells.next()?.parse::<f64>().ok().filter(|figure| figure.is_finite());
    let (l, m, s) = (figure()?, figure()?, figure()?);
    (cells.next().is_none() && m > 0.0 && s > 0.0).then_some((sex, key.parse().ok()?, Lms { l, m, s }))
}

macro_rules! tables {
    ($($(#[$meta:meta])* $name:ident <- $file:literal;)+) => {
        $($(#[$meta])* pub(super) static $name: LazyLock<Table> = LazyLock::new(|| Table::read($file, include_str!(concat!("tables/", $file))));)+
    };
}

tables! {
    /// Weight for age, kg by day (WHO 2006).
    WEIGHT_FOR_AGE <- "who_wfa.csv";
    /// Length or height for age, cm by day (WHO 2006).
    LENGTH_FOR_AGE <- "who_lfa.csv";
    /// Weight for length lying, kg by mm (WHO 2006).
    WEIGHT_FOR_LENGTH <- "who_wfl.csv";
    /// Weight for height standing, kg by mm (WHO 2006).
    WEIGHT_FOR_HEIGHT <- "who_wfh.csv";
    /// Body mass index for age, kg/m² by day (WHO 2006).
    BMI_FOR_AGE <- "who_bfa.csv";
    /// Arm circumference for age, cm by day (WHO 2007).
    ARM_FOR_AGE <- "who_acfa.csv";
    /// Head circumference for age, cm by day (WHO 2007).
    HEAD_FOR_AGE <- "who_hcfa.csv";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_table_is_whole() {
        for (name, table, keys) in [
            ("weight for age", &WEIGHT_FOR_AGE, (0, 1856)),
            ("length for age", &LENGTH_FOR_AGE, (0, 1856)),
            ("weight for length", &WEIGHT_FOR_LENGTH, (450, 1100)),
            ("weight for height", &WEIGHT_FOR_HEIGHT, (650, 1200)),
            ("body mass index for age", &BMI_FOR_AGE, (0, 1856)),
            ("arm for age", &ARM_FOR_AGE, (91, 1856)),
            ("head for age", &HEAD_FOR_AGE, (0, 1856)),
        ] {
            assert_eq!(table.keys(), keys, "{name}");
            for sex in Sex::ALL {
                assert!(table.row(*sex, keys.0 - 1).is_none() && table.row(*sex, keys.1 + 1).is_none(), "{name}");
                for key in keys.0..keys.1 {
                    let (here, next) = (table.row(*sex, key).expect("a row"), table.row(*sex, key + 1).expect("a row"));
                    // A slipped digit would be a jump: no median changes by as much as 4 % from one row to the next.
                    assert!((next.m / here.m - 1.0).abs() < 0.04, "{name} {sex:?} {key}: {here:?} {next:?}");
                }
            }
        }
    }

    #[test]
    fn a_tail_at_hand_is_the_one_worked_out() {
        for sex in Sex::ALL {
            for key in [0, 1, 400, 1856] {
                let row = WEIGHT_FOR_AGE.row(*sex, key).expect("a row");
                for z in [-6.0, -3.01, -2.99, 0.0, 2.99, 3.01, 6.0] {
                    let kg = row.at_restricted(z);
                    assert_eq!(WEIGHT_FOR_AGE.z_restricted(*sex, key, kg), Some(row.z_restricted(kg)), "{sex:?} {key} {z}");
                }
            }
            let row = WEIGHT_FOR_LENGTH.row_between(*sex, 700.5).expect("a row");
            assert_eq!(WEIGHT_FOR_LENGTH.z_restricted_between(*sex, 700.5, 4.0), Some(row.z_restricted(4.0)));
            assert_eq!(WEIGHT_FOR_LENGTH.z_restricted_between(*sex, 700.0, 4.0), WEIGHT_FOR_LENGTH.z_restricted(*sex, 700, 4.0));
        }
    }

    #[test]
    fn between_two_rows_the_figures_lie_on_a_line() {
        let row = |key| WEIGHT_FOR_LENGTH.row_between(Sex::Male, key).map(|row| row.m);
        assert_eq!(row(450.0), Some(2.4410));
        assert!((row(450.5).expect("a row") - (2.4410 + 2.4577) / 2.0).abs() < 1e-12);
        assert_eq!(row(1100.1), None);
        assert_eq!(row(449.9), None);
    }

    #[test]
    fn a_broken_line_is_not_read() {
        for line in
            ["M,0,1,2", "X,0,1,2,3", "M,0,1,2,3,4", "M,0,1,-2,3", "M,0,1,0,3", "M,0,1,2,-3", "M,0,1,2,0", "M,a,1,2,3", "M,0,1,NaN,3"]
        {
            assert!(read_line(line).is_none(), "{line}");
        }
    }
}

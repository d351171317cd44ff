//! The WHO tables inside the program, one dense array a sex, so that a lookup is an index. It knows no child and no z-score.
//!
//! `tables/README.md` names the WHO publication of each file and the rights on it.

use std::sync::LazyLock;

use super::lms::Lms;
use crate::child::Sex;

/// One table: rows for consecutive keys (days of age, or millimetres of length).
pub(super) struct Table {
    first: i32,
    girls: Vec<Lms>,
    boys: Vec<Lms>,
}

impl Table {
    /// The row of this key, if the table has it.
    pub(super) fn row(&self, sex: Sex, key: i32) -> Option<Lms> {
        let index = usize::try_from(key.checked_sub(self.first)?).ok()?;
        self.rows(sex).get(index).copied()
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
        (self.first, self.first + self.boys.len() as i32 - 1)
    }

    const fn rows(&self, sex: Sex) -> &Vec<Lms> {
        match sex {
            Sex::Female => &self.girls,
            Sex::Male => &self.boys,
        }
    }

    /// Reads `sex,key,L,M,S`. The text is part of the program and a test reads all of it, so a fault is a fault of the build.
    fn read(name: &str, text: &str) -> Self {
        let mut table = Self { first: 0, girls: Vec::new(), boys: Vec::new() };
        let mut first = None;
        for (number, line) in text.lines().enumerate().skip(1) {
            let (sex, key, row) = read_line(line).unwrap_or_else(|| panic!("table {name}, line {}: {line}", number + 1));
            let first = *first.get_or_insert(key);
            table.first = first;
            let rows = match sex {
                Sex::Female => &mut table.girls,
                Sex::Male => &mut table.boys,
            };
            assert_eq!(key, first + rows.len() as i32, "table {name}, line {}: a key is missing or out of order", number + 1);
            rows.push(row);
        }
        assert_eq!(table.girls.len(), table.boys.len(), "table {name}: one sex has more rows");
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
    fn between_two_rows_the_figures_lie_on_a_line() {
        let row = |key| WEIGHT_FOR_LENGTH.row_between(Sex::Male, key).map(|row| row.m);
        assert_eq!(row(450.0), Some(2.4410));
        assert!((row(450.5).expect("a row") - (2.4410 + 2.4577) / 2.0).abs() < 1e-12);
        assert_eq!(row(1100.1), None);
        assert_eq!(row(449.9), None);
    }

    #[test]
    fn a_broken_line_is_not_read() {
        for line in ["M,0,1,2", "X,0,1,2,3", "M,0,1,2,3,4", "M,0,1,-2,3", "M,a,1,2,3", "M,0,1,NaN,3"] {
            assert!(read_line(line).is_none(), "{line}");
        }
    }
}

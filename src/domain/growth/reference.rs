//! The standards read the other way: the measurement that has a given z. For chart curves and field tables; it knows no child.

use super::measured::STANDING_FROM_DAY;
use super::score::Indicator;
use super::tables::{self, Table};
use crate::child::Sex;

/// A table of the standards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ReferenceTable {
    /// Weight in kg by day of age.
    WeightForAge,
    /// Length in cm by day of age: lying under day 731, standing from then on.
    LengthForAge,
    /// Weight in kg by length in mm, lying (under day 731).
    WeightForLength,
    /// Weight in kg by height in mm, standing (from day 731 on).
    WeightForHeight,
    /// Body mass index in kg/m² by day of age.
    BmiForAge,
    /// Arm circumference in cm by day of age.
    ArmForAge,
    /// Head circumference in cm by day of age.
    HeadForAge,
}

impl ReferenceTable {
    /// The table of an index at a growth age in days (the age matters for weight for length alone).
    #[must_use]
    pub const fn of(indicator: Indicator, age_days: i32) -> Self {
        match indicator {
            Indicator::Waz => Self::WeightForAge,
            Indicator::Laz => Self::LengthForAge,
            Indicator::Wlz if age_days < STANDING_FROM_DAY => Self::WeightForLength,
            Indicator::Wlz => Self::WeightForHeight,
            Indicator::Bmiz => Self::BmiForAge,
            Indicator::Mauz => Self::ArmForAge,
            Indicator::Hcz => Self::HeadForAge,
        }
    }

    fn table(self) -> &'static Table {
        match self {
            Self::WeightForAge => &tables::WEIGHT_FOR_AGE,
            Self::LengthForAge => &tables::LENGTH_FOR_AGE,
            Self::WeightForLength => &tables::WEIGHT_FOR_LENGTH,
            Self::WeightForHeight => &tables::WEIGHT_FOR_HEIGHT,
            Self::BmiForAge => &tables::BMI_FOR_AGE,
            Self::ArmForAge => &tables::ARM_FOR_AGE,
            Self::HeadForAge => &tables::HEAD_FOR_AGE,
        }
    }
}

/// First and last key of a table: days of age, or mm of length.
#[must_use]
pub fn reference_range(table: ReferenceTable) -> (i32, i32) {
    table.table().keys()
}

/// The measurement with this z, in the unit of the table (kg, cm, kg/m²); tails restricted beyond ±3 as in the score itself.
/// `None` if the table has no such key, or no measurement above 0 has this z.
#[must_use]
pub fn table_value(table: ReferenceTable, sex: Sex, key: i32, z: f64) -> Option<f64> {
    let row = table.table().row(sex, key)?;
    let value = match table {
        ReferenceTable::LengthForAge | ReferenceTable::HeadForAge => row.at(z),
        _ => row.at_restricted(z),
    };
    (value.is_finite() && value > 0.0).then_some(value)
}

/// The measurement with this z for an index: `key` is the growth age in days, or for weight for length the lying length in mm
/// (the table for infants under 24 months; [`table_value`] has the standing one). Units as in [`table_value`].
#[must_use]
pub fn reference_value(indicator: Indicator, sex: Sex, key: i32, z: f64) -> Option<f64> {
    table_value(ReferenceTable::of(indicator, 0), sex, key, z)
}

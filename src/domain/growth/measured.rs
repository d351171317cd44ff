//! From measurements to z-scores: positions, tables by age, oedema, reasons. It knows no date, no visit and no rule.

use super::score::{Indicator, NotComputable, Score, Z};
use super::tables::{self, Table};
use crate::child::Sex;
use crate::units::{HeadCircumference, Length, Muac, Weight};
use crate::visit::Position;

/// From this day of age on, length is taken standing and the standing tables apply (WHO Child Growth Standards, 2006).
pub const STANDING_FROM_DAY: i32 = 731;

/// The last day of age that has a value: also for weight for length, which needs no age itself.
const LAST_DAY: i32 = 1856;

/// A lying length is 0.7 cm more than the standing height of the same child (WHO Child Growth Standards, 2006).
const LYING_MORE_MM: f64 = 7.0;

/// What was measured, as one visit holds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Measured {
    /// Sex.
    pub sex: Sex,
    /// Growth age in days: corrected for early birth, negative before the due date.
    pub age_days: i32,
    /// Weight.
    pub weight: Option<Weight>,
    /// Length as read off, not corrected for position.
    pub length: Option<Length>,
    /// How the length was taken; `None` = as usual at this age.
    pub position: Option<Position>,
    /// Arm circumference.
    pub muac: Option<Muac>,
    /// Head circumference.
    pub head: Option<HeadCircumference>,
    /// Pitting swelling of both feet; `None` = not asked, which counts as no.
    pub oedema: Option<bool>,
}

/// What was measured, as plain numbers: for files from elsewhere, whose values may lie beyond what this program saves.
///
/// Each number must be above 0 and finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figures {
    /// Sex.
    pub sex: Sex,
    /// Growth age in days.
    pub age_days: i32,
    /// Weight in kg.
    pub weight_kg: Option<f64>,
    /// Length as read off, in mm. Between two rows of the weight-for-length table its figures are taken on a straight line.
    pub length_mm: Option<f64>,
    /// How the length was taken; `None` = as usual at this age.
    pub position: Option<Position>,
    /// Arm circumference in mm.
    pub muac_mm: Option<f64>,
    /// Head circumference in mm.
    pub head_mm: Option<f64>,
    /// Pitting swelling of both feet.
    pub oedema: bool,
}

impl From<&Measured> for Figures {
    fn from(measured: &Measured) -> Self {
        Self {
            sex: measured.sex,
            age_days: measured.age_days,
            weight_kg: measured.weight.map(kilograms),
            length_mm: measured.length.map(|length| f64::from(length.mm())),
            position: measured.position,
            muac_mm: measured.muac.map(|muac| f64::from(muac.mm())),
            head_mm: measured.head.map(|head| f64::from(head.mm())),
            oedema: measured.oedema == Some(true),
        }
    }
}

/// Every index of one set of measurements.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scores {
    /// Weight for age.
    pub waz: Score,
    /// Length or height for age.
    pub laz: Score,
    /// Weight for length or height.
    pub wlz: Score,
    /// Body mass index for age.
    pub bmiz: Score,
    /// Arm circumference for age.
    pub mauz: Score,
    /// Head circumference for age.
    pub hcz: Score,
}

impl Scores {
    /// One of them.
    #[must_use]
    pub const fn get(&self, indicator: Indicator) -> Score {
        match indicator {
            Indicator::Waz => self.waz,
            Indicator::Laz => self.laz,
            Indicator::Wlz => self.wlz,
            Indicator::Bmiz => self.bmiz,
            Indicator::Mauz => self.mauz,
            Indicator::Hcz => self.hcz,
        }
    }
}

/// A length on the scale of the table for the age: lying under [`STANDING_FROM_DAY`], standing from then on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct AdjustedLength {
    mm: u16,
    position: Position,
}

impl AdjustedLength {
    /// In millimetres.
    #[must_use]
    pub const fn mm(self) -> u16 {
        self.mm
    }

    /// Lying or standing: the scale it is on.
    #[must_use]
    pub const fn position(self) -> Position {
        self.position
    }
}

/// The length on the scale of the age: 0.7 cm added if taken standing under day 731, taken off if lying from day 731 on.
#[must_use]
pub fn adjusted_length(length: Length, position: Option<Position>, age_days: i32) -> AdjustedLength {
    let mm = adjusted_mm(f64::from(length.mm()), position, age_days) as u16;
    AdjustedLength { mm, position: usual_position(age_days) }
}

const fn usual_position(age_days: i32) -> Position {
    if age_days < STANDING_FROM_DAY { Position::Lying } else { Position::Standing }
}

fn adjusted_mm(mm: f64, position: Option<Position>, age_days: i32) -> f64 {
    match (position, usual_position(age_days)) {
        (Some(Position::Standing), Position::Lying) => mm + LYING_MORE_MM,
        (Some(Position::Lying), Position::Standing) => mm - LYING_MORE_MM,
        _ => mm,
    }
}

/// Every index of one set of measurements.
#[must_use]
pub fn scores(measured: &Measured) -> Scores {
    scores_of(&Figures::from(measured))
}

/// Every index of plain numbers. Where several reasons hold, a missing measurement is named first, then oedema, then the age.
#[must_use]
pub fn scores_of(figures: &Figures) -> Scores {
    let usable = Usable::of(figures);
    Scores { waz: usable.waz(), laz: usable.laz(), wlz: usable.wlz(), bmiz: usable.bmiz(), mauz: usable.mauz(), hcz: usable.hcz() }
}

/// The indices of one set of measurements: those that rules use at hand, the others worked out when somebody asks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VisitScores {
    /// Weight for age.
    pub waz: Score,
    /// Length or height for age.
    pub laz: Score,
    /// Weight for length or height.
    pub wlz: Score,
    measured: Measured,
}

impl VisitScores {
    /// Of these measurements.
    #[must_use]
    pub fn of(measured: Measured) -> Self {
        let usable = Usable::of(&Figures::from(&measured));
        Self { waz: usable.waz(), laz: usable.laz(), wlz: usable.wlz(), measured }
    }

    /// One of the indices.
    #[must_use]
    pub fn get(&self, indicator: Indicator) -> Score {
        let usable = || Usable::of(&Figures::from(&self.measured));
        match indicator {
            Indicator::Waz => self.waz,
            Indicator::Laz => self.laz,
            Indicator::Wlz => self.wlz,
            Indicator::Bmiz => usable().bmiz(),
            Indicator::Mauz => usable().mauz(),
            Indicator::Hcz => usable().hcz(),
        }
    }
}

/// Measurements as the indices take them: each a number, or the reason for having none.
struct Usable {
    sex: Sex,
    age_days: i32,
    kg: Result<f64, NotComputable>,
    /// On the scale of the age.
    mm: Result<f64, NotComputable>,
    kg_and_mm: Result<(f64, f64), NotComputable>,
    muac_mm: Option<f64>,
    head_mm: Option<f64>,
}

impl Usable {
    fn of(figures: &Figures) -> Self {
        let &Figures { sex, age_days, weight_kg, position, muac_mm, head_mm, .. } = figures;
        let length_mm = figures.length_mm.map(|mm| adjusted_mm(mm, position, age_days));
        let kg = match weight_kg {
            Some(_) if figures.oedema => Err(NotComputable::Oedema),
            Some(kg) => Ok(kg),
            None => Err(NotComputable::NoWeight),
        };
        let kg_and_mm = match (weight_kg, length_mm) {
            (None, None) => Err(NotComputable::NotMeasured),
            (None, Some(_)) => Err(NotComputable::NoWeight),
            (Some(_), None) => Err(NotComputable::NoLength),
            (Some(_), Some(mm)) => kg.map(|kg| (kg, mm)),
        };
        Self { sex, age_days, kg, mm: length_mm.ok_or(NotComputable::NoLength), kg_and_mm, muac_mm, head_mm }
    }

    fn restricted_by_age(&self, table: &Table, x: f64) -> Result<f64, NotComputable> {
        restricted_by_age(table, self.sex, self.age_days, x)
    }

    fn by_age(&self, table: &Table, x: f64) -> Result<f64, NotComputable> {
        by_age(table, self.sex, self.age_days, x)
    }

    fn waz(&self) -> Score {
        score(self.kg.and_then(|kg| self.restricted_by_age(&tables::WEIGHT_FOR_AGE, kg)))
    }

    fn laz(&self) -> Score {
        score(self.mm.and_then(|mm| self.by_age(&tables::LENGTH_FOR_AGE, mm / 10.0)))
    }

    fn wlz(&self) -> Score {
        score(self.kg_and_mm.and_then(|(kg, mm)| wlz(self.sex, self.age_days, kg, mm)))
    }

    fn bmiz(&self) -> Score {
        score(self.kg_and_mm.and_then(|(kg, mm)| {
            let metres = mm / 1000.0;
            self.restricted_by_age(&tables::BMI_FOR_AGE, kg / (metres * metres))
        }))
    }

    fn mauz(&self) -> Score {
        let mm = self.muac_mm.ok_or(NotComputable::NotMeasured);
        score(mm.and_then(|mm| self.restricted_by_age(&tables::ARM_FOR_AGE, mm / 10.0)))
    }

    fn hcz(&self) -> Score {
        let mm = self.head_mm.ok_or(NotComputable::NotMeasured);
        score(mm.and_then(|mm| self.by_age(&tables::HEAD_FOR_AGE, mm / 10.0)))
    }
}

/// A child weighed and measured in the usual position for its age, without oedema: the input of [`three_indices`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WeighedAndMeasured {
    /// Sex.
    pub sex: Sex,
    /// Growth age in days.
    pub age_days: i32,
    /// Weight.
    pub weight: Weight,
    /// Length.
    pub length: Length,
}

/// Weight for age, length for age and weight for length of many children at once, in their order: for exports and recounts.
pub fn three_indices<'a>(children: &'a [WeighedAndMeasured]) -> impl Iterator<Item = [Score; 3]> + 'a {
    // The tables are asked for once, not for each child.
    let (weight_for_age, length_for_age): (&Table, &Table) = (&tables::WEIGHT_FOR_AGE, &tables::LENGTH_FOR_AGE);
    let (lying, standing): (&Table, &Table) = (&tables::WEIGHT_FOR_LENGTH, &tables::WEIGHT_FOR_HEIGHT);
    children.iter().map(move |&WeighedAndMeasured { sex, age_days, weight, length }| {
        let (kg, mm) = (kilograms(weight), length.mm());
        let for_length = if usual_position(age_days) == Position::Lying { lying } else { standing };
        // A whole millimetre has a row of its own.
        let by_length = || for_length.z_restricted(sex, i32::from(mm), kg).ok_or(NotComputable::LengthOutsideTable);
        [
            score(restricted_by_age(weight_for_age, sex, age_days, kg)),
            score(by_age(length_for_age, sex, age_days, f64::from(mm) / 10.0)),
            score(in_age_range(age_days).and_then(|()| by_length())),
        ]
    })
}

fn kilograms(weight: Weight) -> f64 {
    f64::from(weight.grams()) / 1000.0
}

fn score(result: Result<f64, NotComputable>) -> Score {
    match result {
        Ok(z) => Score::Value(Z(z)),
        Err(reason) => Score::None(reason),
    }
}

fn restricted_by_age(table: &Table, sex: Sex, age_days: i32, x: f64) -> Result<f64, NotComputable> {
    table.z_restricted(sex, age_days, x).ok_or_else(|| no_row_of(age_days))
}

/// Length and head are not restricted beyond ±3: their power is 1, so nothing would change.
fn by_age(table: &Table, sex: Sex, age_days: i32, x: f64) -> Result<f64, NotComputable> {
    table.row(sex, age_days).map(|row| row.z(x)).ok_or_else(|| no_row_of(age_days))
}

const fn no_row_of(age_days: i32) -> NotComputable {
    if age_days < 0 { NotComputable::BeforeDueDate } else { NotComputable::AgeOutsideTable }
}

/// Weight for length needs no age, but has no value where the tables by age have none.
const fn in_age_range(age_days: i32) -> Result<(), NotComputable> {
    match age_days {
        ..0 => Err(NotComputable::BeforeDueDate),
        0..=LAST_DAY => Ok(()),
        _ => Err(NotComputable::AgeOutsideTable),
    }
}

fn wlz(sex: Sex, age_days: i32, kg: f64, mm: f64) -> Result<f64, NotComputable> {
    in_age_range(age_days)?;
    let table = match usual_position(age_days) {
        Position::Lying => &tables::WEIGHT_FOR_LENGTH,
        Position::Standing => &tables::WEIGHT_FOR_HEIGHT,
    };
    table.z_restricted_between(sex, mm, kg).ok_or(NotComputable::LengthOutsideTable)
}

//! How an invented infant grows: a channel of the WHO standards with its ups and downs, and a scale that errs. It knows no visit.
//!
//! The shape of the first days (some 5 % lost by day 3, regained by day 10) is common knowledge of newborn care, not a table.

use domain::child::Sex;
use domain::growth::Indicator;
use domain::growth::reference_value;

use crate::story::dice::Dice;

/// A time of poor growth: an illness, a family gone hungry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dip {
    /// Age in days at its deepest.
    pub at: i32,
    /// How deep, in z.
    pub depth: f64,
    /// Days from the first sign to the deepest point; coming back takes twice as long.
    pub days: i32,
}

/// An infant's growth.
#[derive(Debug, Clone, PartialEq)]
pub struct Track {
    /// Sex.
    pub sex: Sex,
    /// Birth weight.
    pub birth_weight_g: f64,
    /// Days of correction for early birth.
    pub correction: i32,
    /// Weight-for-age channel.
    pub waz: f64,
    /// Length-for-age channel.
    pub laz: f64,
    /// Arm circumference-for-age channel.
    pub arm_z: f64,
    /// How far the weight swings around its channel, in z.
    pub swing: f64,
    /// Days of one swing.
    pub period: f64,
    /// Where in its swing it was born, 0–1.
    pub phase: f64,
    /// A time of poor growth.
    pub dip: Option<Dip>,
    /// The scale of the worker: 10 g or 100 g.
    pub scale_g: f64,
}

/// From 6 months on a healthy invented child's arm never measures less (the limit of moderate wasting is 125 mm: WHO 2009, WHO 2023).
const HEALTHY_ARM_MM: f64 = 128.0;
/// A birth-weight channel turns into the later one within so many days.
const SETTLED_DAYS: f64 = 60.0;

impl Track {
    /// A healthy infant's: channels that suit each other, so that weight for length stays well within limits.
    pub fn healthy(sex: Sex, correction: i32, dice: &mut Dice) -> Self {
        let waz = (-0.45 + dice.around(0.75)).clamp(-1.55, 1.45);
        let laz = (0.75 * waz - 0.15 + dice.around(0.4)).clamp(-1.7, 1.7);
        let birth_z = if correction > 0 { 0.0 } else { (0.8 * waz + 0.1 + dice.around(0.25)).clamp(-1.7, 1.5) };
        let at_term = kg(sex, 0, birth_z) * 1000.0;
        // Some 2.3 % less for each day before term, from a curve of birth weights drawn from memory.
        let birth_weight_g = round_to(at_term * (1.0 - 0.008 * f64::from(correction)), 10.0);
        Self {
            sex,
            birth_weight_g,
            correction,
            waz,
            laz,
            arm_z: (0.6 * waz + dice.around(0.4)).clamp(-1.5, 1.8),
            swing: 0.04 + 0.01 * f64::from(dice.between(0, 8)),
            period: f64::from(dice.between(170, 400)),
            phase: 0.01 * f64::from(dice.between(0, 99)),
            dip: None,
            scale_g: if dice.chance(0.7) { 10.0 } else { 100.0 },
        }
    }

    /// Weight-for-age z at an age, ups and downs included.
    #[must_use]
    pub fn waz_at(&self, age: i32) -> f64 {
        let turn = std::f64::consts::TAU * (f64::from(age) / self.period + self.phase);
        self.waz + self.swing * turn.sin() - self.dip.map_or(0.0, |dip| dip.at_age(age))
    }

    /// The true weight in grams.
    #[must_use]
    pub fn grams(&self, age: i32) -> f64 {
        let growth_age = age - self.correction;
        if self.correction > 0 && growth_age < 28 {
            // Before and around the due date there is no standard: a straight line from the birth weight regained on day 12.
            let then = kg(self.sex, 28, self.waz_at(28 + self.correction)) * 1000.0;
            let part = f64::from((age - 12).max(0)) / f64::from((28 + self.correction - 12).max(1));
            return self.birth_weight_g * (1.0 - lost(age)) + part * (then - self.birth_weight_g);
        }
        let by_standard = kg(self.sex, growth_age, self.waz_at(age)) * 1000.0;
        if self.correction > 0 || f64::from(age) >= SETTLED_DAYS {
            return by_standard;
        }
        // The birth weight's distance from the standard fades, and the first days' loss is taken off.
        let distance = self.birth_weight_g / (kg(self.sex, 0, self.waz_at(age)) * 1000.0);
        let faded = 1.0 + (distance - 1.0) * (1.0 - f64::from(age) / SETTLED_DAYS);
        by_standard * faded * (1.0 - lost(age))
    }

    /// The true length in millimetres, lying.
    #[must_use]
    pub fn length_mm(&self, age: i32) -> f64 {
        let before_term = f64::from((self.correction - age).max(0));
        let day = (age - self.correction).max(0);
        // About 1.2 mm a day in the last weeks before term, from memory.
        reference_value(Indicator::Laz, self.sex, day, self.laz).unwrap_or(70.0) * 10.0 - 1.2 * before_term
    }

    /// The true arm circumference in millimetres.
    #[must_use]
    pub fn arm_mm(&self, age: i32) -> f64 {
        let day = (age - self.correction).max(91);
        let dip = self.dip.map_or(0.0, |dip| 0.5 * dip.at_age(age));
        let arm = reference_value(Indicator::Mauz, self.sex, day, self.arm_z - dip).unwrap_or(14.0) * 10.0;
        arm.max(HEALTHY_ARM_MM)
    }

    /// What the worker's scale shows.
    pub fn weighed(&self, age: i32, dice: &mut Dice) -> u32 {
        let error = if age < 60 { 12.0 } else { 25.0 };
        round_to(self.grams(age) + dice.around(error), self.scale_g).clamp(500.0, 25_000.0) as u32
    }

    /// What the measuring board shows.
    pub fn measured(&self, age: i32, dice: &mut Dice) -> u16 {
        (self.length_mm(age) + dice.around(1.8)).round().clamp(300.0, 1_100.0) as u16
    }

    /// What the tape shows.
    pub fn taped(&self, age: i32, dice: &mut Dice) -> u16 {
        (self.arm_mm(age) + dice.around(0.8)).round().clamp(126.0, 220.0) as u16
    }
}

impl Dip {
    /// How deep it is at an age, in z.
    #[must_use]
    pub fn at_age(self, age: i32) -> f64 {
        let away = f64::from(age - self.at) / f64::from(self.days);
        let part = if away <= 0.0 { 1.0 + away } else { 1.0 - away / 2.0 };
        self.depth * part.clamp(0.0, 1.0)
    }
}

/// Share of the birth weight lost on a day of the first days.
fn lost(age: i32) -> f64 {
    match age {
        0..=3 => 0.05 * f64::from(age) / 3.0,
        4..=10 => 0.05 * f64::from(10 - age) / 7.0,
        _ => 0.0,
    }
}

/// Weight in kg with this z on a day of the standards.
pub fn kg(sex: Sex, day: i32, z: f64) -> f64 {
    reference_value(Indicator::Waz, sex, day.max(0), z).unwrap_or(3.3)
}

fn round_to(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

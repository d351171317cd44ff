//! How thresholds are asked for by key, whatever they are written in. It knows no file format and no rule.

use crate::growth::ZHundredths;
use crate::rule::{Class, RuleId};

/// A range of days, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayRange {
    /// First.
    pub least: i32,
    /// Last.
    pub most: i32,
}

impl DayRange {
    /// Whether it holds a number of days.
    #[must_use]
    pub const fn contains(self, days: i32) -> bool {
        self.least <= days && days <= self.most
    }
}

/// One step of the texture rule: within these months of stage age, less than this texture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TextureStep {
    /// From this completed month.
    pub from_months: u32,
    /// Up to the month before this one.
    pub to_months: u32,
    /// Best texture below this step, 1–4.
    pub below: u8,
    /// Urgency.
    pub class: Class,
}

/// Answers the questions for one rule's thresholds. What is missing or wrong is kept as a fault by the one who answers; the value
/// given back then stands in for it and is never used.
pub trait ReadRule {
    /// A whole number that is not negative.
    fn whole(&mut self, key: &'static str) -> u32;
    /// A z-score.
    fn z(&mut self, key: &'static str) -> ZHundredths;
    /// A class.
    fn class(&mut self, key: &'static str) -> Class;
    /// A range of days.
    fn days(&mut self, key: &'static str) -> DayRange;
    /// A number above 0 that may have decimals.
    fn number(&mut self, key: &'static str) -> f64;
    /// Steps of textures.
    fn steps(&mut self, key: &'static str) -> Vec<TextureStep>;
}

/// Answers the questions for all rules.
pub trait ReadRules {
    /// What answers for one rule.
    type One<'a>: ReadRule
    where
        Self: 'a;
    /// One rule: whether it is on, its source, and what answers for its thresholds.
    fn rule(&mut self, id: RuleId) -> (bool, String, Self::One<'_>);
}

/// A figure of a rule as it stands, for showing it. Its unit is said by its key.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure {
    /// A whole number: days, months, grams, millimetres, minutes or a count.
    Whole(i64),
    /// A number with decimals: percent.
    Number(f64),
    /// A z-score.
    Z(ZHundredths),
    /// An urgency.
    Class(Class),
    /// A range of days.
    Days(DayRange),
    /// Steps of textures.
    Steps(Vec<TextureStep>),
}

/// A value that can be asked for, and shown.
pub trait Threshold {
    /// Asks for it.
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self;
    /// As it stands.
    fn figure(&self) -> Figure;
}

impl Threshold for u32 {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.whole(key)
    }

    fn figure(&self) -> Figure {
        Figure::Whole(i64::from(*self))
    }
}

impl Threshold for i32 {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        Self::try_from(source.whole(key)).unwrap_or(Self::MAX)
    }

    fn figure(&self) -> Figure {
        Figure::Whole(i64::from(*self))
    }
}

impl Threshold for ZHundredths {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.z(key)
    }

    fn figure(&self) -> Figure {
        Figure::Z(*self)
    }
}

impl Threshold for Class {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.class(key)
    }

    fn figure(&self) -> Figure {
        Figure::Class(*self)
    }
}

impl Threshold for DayRange {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.days(key)
    }

    fn figure(&self) -> Figure {
        Figure::Days(*self)
    }
}

impl Threshold for f64 {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.number(key)
    }

    fn figure(&self) -> Figure {
        Figure::Number(*self)
    }
}

impl Threshold for Vec<TextureStep> {
    fn read(source: &mut impl ReadRule, key: &'static str) -> Self {
        source.steps(key)
    }

    fn figure(&self) -> Figure {
        Figure::Steps(self.clone())
    }
}

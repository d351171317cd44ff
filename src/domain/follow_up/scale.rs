//! Is a gain, a loss or a drop real, or is it the scale? What a rule found, set beside how far two measurements of one child lie apart by
//! measuring error alone. It knows no urgency: nothing here can make a finding milder.

use chrono::NaiveDate;

use crate::child::Child;
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::growth::{ZHundredths, growth_age, weight_error_z};
use crate::protocol::Protocol;
use crate::rule::RuleId;

/// The sum of shares of days behind a least expected gain is not exact in binary: this close is equal.
const EQUAL_WITHIN_G: f64 = 0.000_001;

/// What measuring error comes to in z at one end of a comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ErrorAt {
    /// The day.
    pub on: NaiveDate,
    /// The error, in z.
    pub z: ZHundredths,
}

/// A change and the limit that made it a finding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Change {
    /// Of weight, in grams; `limit_g`: the change it is compared with, `None` where the rule rests on more than grams.
    Weight {
        /// The change; negative: lost.
        change_g: i64,
        /// The limit.
        limit_g: Option<f64>,
    },
    /// Of weight-for-age.
    WeightForAge {
        /// The change; negative: fell.
        change: ZHundredths,
        /// The change it is compared with: at which the rule begins.
        limit: ZHundredths,
        /// What the error of a weight is in z at the earlier measurement.
        before: ErrorAt,
        /// And at this one.
        now: ErrorAt,
    },
    /// Of length, in millimetres.
    Length {
        /// The change; negative: shorter.
        change_mm: i64,
    },
}

/// What the error says of a finding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Measuring error alone could put it on the other side of the limit: measure a second time.
    Within,
    /// It is more than measuring error explains.
    Beyond,
    /// The rule rests on more than the difference: only the error itself can be told.
    Untold,
}

/// A change beside the error of measuring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScaleError {
    /// The change.
    pub change: Change,
    /// How far two careful measurements of one child can lie apart: grams, or millimetres of length.
    pub tolerance: i64,
}

impl ScaleError {
    /// Whether the finding lies within the error. On the edge it does: the tolerance is the largest difference still allowed.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        let within = match self.change {
            Change::Weight { limit_g: None, .. } => return Verdict::Untold,
            Change::Weight { change_g, limit_g: Some(limit) } => {
                // Grams fit a double exactly.
                limit - change_g as f64 <= self.tolerance as f64 + EQUAL_WITHIN_G
            }
            Change::WeightForAge { change, limit, .. } => limit.since(change) <= self.error_z().map_or(0, ZHundredths::hundredths),
            Change::Length { change_mm } => may_be_error(change_mm, self.tolerance),
        };
        if within { Verdict::Within } else { Verdict::Beyond }
    }

    /// The error of a change of weight-for-age: the greater of the two ends. Two weighings lie at most the tolerance apart, however
    /// that is shared between them, so the difference of z is never off by more.
    #[must_use]
    pub fn error_z(&self) -> Option<ZHundredths> {
        match self.change {
            Change::WeightForAge { before, now, .. } => Some(before.z.max(now.z)),
            Change::Weight { .. } | Change::Length { .. } => None,
        }
    }
}

/// Whether a difference of two measurements is no more than measuring error; both in the same unit.
#[must_use]
pub const fn may_be_error(difference: i64, tolerance: i64) -> bool {
    difference.unsigned_abs() <= tolerance.unsigned_abs()
}

/// The error of measuring beside a gain, loss or drop that a rule found on a day; `None` for what compares no two measurements.
///
/// Tolerances are those of the protocol that judged the visit: the largest difference allowed between two measurers of the WHO growth
/// study (de Onis 2004, from memory), or what a programme with a finer scale has set.
#[must_use]
pub fn scale_error(rule: RuleId, evidence: &Evidence, child: &Child, on: NaiveDate, protocol: &Protocol) -> Option<ScaleError> {
    let weight =
        |change_g, limit_g| Some(ScaleError { change: Change::Weight { change_g, limit_g }, tolerance: protocol.tolerance.weight_g });
    let rules = &protocol.rules;
    match rule {
        RuleId::WeightLoss | RuleId::WeightStatic => weight(grams(evidence, K::Gain)?, Some(0.0)),
        RuleId::WeightSlowGain => match evidence.get(K::Floor)? {
            Quantity::GramsExact(floor) => weight(grams(evidence, K::Gain)?, Some(*floor)),
            _ => None,
        },
        RuleId::DataWeightJump => weight(grams(evidence, K::Gain)?, None),
        RuleId::BirthWeightNotRegained => {
            let born_with = grams(evidence, K::BirthWeight)?;
            let Quantity::Days(age_days) = evidence.get(K::AgeDays)? else { return None };
            let limits = &rules.birth_weight_not_regained.limits;
            let first = *age_days <= limits.first_days_to;
            let limit = if first { -(born_with as f64) * limits.loss_percent / 100.0 } else { 0.0 };
            weight(grams(evidence, K::Weight)? - born_with, Some(limit))
        }
        RuleId::WeightDrop => fall(evidence, child, on, rules.weight_drop.limits.change_z, protocol),
        RuleId::WeightDrift => {
            let limit = ZHundredths::new(-z(evidence, K::Limit)?.hundredths());
            fall(evidence, child, on, limit, protocol)
        }
        RuleId::DataLengthShrunk | RuleId::DataLengthJump => {
            let change_mm = millimetres(evidence, K::Length)? - millimetres(evidence, K::LengthBefore)?;
            Some(ScaleError { change: Change::Length { change_mm }, tolerance: i64::from(protocol.tolerance.length_mm) })
        }
        _ => None,
    }
}

fn fall(evidence: &Evidence, child: &Child, on: NaiveDate, limit: ZHundredths, protocol: &Protocol) -> Option<ScaleError> {
    let Quantity::On(before_on) = evidence.get(K::Before)? else { return None };
    let tolerance = protocol.tolerance.weight_g;
    let at =
        |on: NaiveDate, waz: ZHundredths| Some(ErrorAt { on, z: weight_error_z(child.sex, growth_age(child, on).days, waz, tolerance)? });
    let before = at(*before_on, z(evidence, K::ZBefore)?)?;
    let now = at(on, z(evidence, K::Waz)?)?;
    Some(ScaleError { change: Change::WeightForAge { change: z(evidence, K::ZChange)?, limit, before, now }, tolerance })
}

fn grams(evidence: &Evidence, key: K) -> Option<i64> {
    match evidence.get(key)? {
        Quantity::Grams(grams) => Some(*grams),
        _ => None,
    }
}

fn millimetres(evidence: &Evidence, key: K) -> Option<i64> {
    match evidence.get(key)? {
        Quantity::Millimetres(mm) => Some(*mm),
        _ => None,
    }
}

fn z(evidence: &Evidence, key: K) -> Option<ZHundredths> {
    match evidence.get(key)? {
        Quantity::ZHundredths(z) => Some(ZHundredths::new(*z)),
        _ => None,
    }
}

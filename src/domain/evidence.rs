//! The numbers a finding rests on, as data. Words are added later; the same data is stored, shown and explained.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::code::codes;

codes! {
    /// What a number in an explanation is. Each becomes the variable of that name in a rule's sentence.
    EvidenceKey, "evidence key" {
        /// Weight-for-age z.
        Waz => "waz",
        /// Length-for-age z.
        Laz => "laz",
        /// Weight-for-length z.
        Wlz => "wlz",
        /// Weight now.
        Weight => "weight",
        /// Earlier weight.
        WeightBefore => "weight_before",
        /// Birth weight.
        BirthWeight => "birth_weight",
        /// Length now.
        Length => "length",
        /// Earlier length.
        LengthBefore => "length_before",
        /// Arm circumference.
        Muac => "muac",
        /// Weight gained (negative: lost).
        Gain => "gain",
        /// Least gain expected.
        Floor => "floor",
        /// Share of weight lost.
        LossPercent => "loss_percent",
        /// Change of z.
        ZChange => "z_change",
        /// Earlier z.
        ZBefore => "z_before",
        /// Days between two measurements.
        IntervalDays => "interval_days",
        /// Day of the earlier measurement.
        Before => "before",
        /// The limit that decided.
        Limit => "limit",
        /// Age in days.
        AgeDays => "age_days",
        /// Completed months, chronological.
        AgeMonths => "age_months",
        /// Completed months, corrected.
        StageMonths => "stage_months",
        /// Weeks of pregnancy, in days.
        GestationDays => "gestation_days",
        /// Signs seen.
        Signs => "signs",
        /// Foods meant.
        Foods => "foods",
        /// Minutes from food to sign.
        Minutes => "minutes",
        /// Texture taken.
        Texture => "texture",
        /// Texture hoped for.
        TextureExpected => "texture_expected",
        /// Meals.
        Meals => "meals",
        /// Milk feeds.
        MilkFeeds => "milk_feeds",
        /// Least number of meals or feeds.
        Least => "least",
        /// Food groups counted.
        Groups => "groups",
        /// Days counted by the rule (poor appetite, days since honey …).
        Days => "days",
        /// A date the rule turns on (start of solids, hold since …).
        Date => "date",
        /// Held at the latest earlier visit too.
        HeldBefore => "held_before",
    }
}

/// A value with its unit.
#[derive(Debug, Clone, PartialEq)]
pub enum Quantity {
    /// Grams.
    Grams(i64),
    /// Grams to a fraction, e.g. a gain floor.
    GramsExact(f64),
    /// Millimetres.
    Millimetres(i64),
    /// A z-score or difference of two, in hundredths.
    ZHundredths(i32),
    /// Days.
    Days(i32),
    /// Completed months.
    Months(u32),
    /// A count.
    Count(u32),
    /// Minutes.
    Minutes(u32),
    /// Percent.
    Percent(f64),
    /// A texture step, 0–4.
    Texture(u8),
    /// A day.
    On(NaiveDate),
    /// Codes of signs or foods.
    Codes(Vec<String>),
    /// Yes or no.
    Flag(bool),
}

/// What a finding rests on, in the order it is told. Copies share the same lines: a follow-up keeps those of its finding.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Evidence(Option<Arc<[(EvidenceKey, Quantity)]>>);

impl Evidence {
    /// Every line, in the order it is told.
    #[must_use]
    pub fn lines(&self) -> &[(EvidenceKey, Quantity)] {
        self.0.as_deref().unwrap_or_default()
    }

    /// The value under this key.
    #[must_use]
    pub fn get(&self, key: EvidenceKey) -> Option<&Quantity> {
        self.lines().iter().find(|(k, _)| *k == key).map(|(_, q)| q)
    }
}

impl<const N: usize> From<[(EvidenceKey, Quantity); N]> for Evidence {
    fn from(lines: [(EvidenceKey, Quantity); N]) -> Self {
        Self(if N == 0 { None } else { Some(Arc::new(lines)) })
    }
}

impl From<Vec<(EvidenceKey, Quantity)>> for Evidence {
    fn from(lines: Vec<(EvidenceKey, Quantity)>) -> Self {
        Self(if lines.is_empty() { None } else { Some(lines.into()) })
    }
}

impl FromIterator<(EvidenceKey, Quantity)> for Evidence {
    fn from_iter<I: IntoIterator<Item = (EvidenceKey, Quantity)>>(lines: I) -> Self {
        Self::from(Vec::from_iter(lines))
    }
}

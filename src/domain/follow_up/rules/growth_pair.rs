//! Growth rules that compare a visit with an earlier one: loss, standstill, slow gain, a fall of the weight line.

use super::growth_level::z;
use super::{Clears, Tested, by_age};
use crate::evidence::{EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::growth::{ZHundredths, least_expected_gain_grams};
use crate::protocol::DayRange;

/// A gain this close to the least expected equals it: the sum of shares of days is not exact in binary.
const GAIN_EQUAL_WITHIN_G: f64 = 0.000_001;

const MISSING: Tested = Tested::Not(Clears::Unknown(Why::Missing));

/// This visit's valid weight and the latest earlier one whose interval lies within the limits.
struct Pair<'s, 'a> {
    before: &'s Facts<'a>,
    weight_g: i64,
    weight_before_g: i64,
    days: i32,
}

impl<'s, 'a> Pair<'s, 'a> {
    fn of(story: &'s Story<'a>, at: usize, interval: DayRange) -> Option<Self> {
        let now = &story.visits[at];
        let weight_g = now.weight_g?;
        story.earlier(at).find_map(|before| {
            let days = now.days_since(before);
            let weight_before_g = before.weight_g?;
            interval.contains(days).then_some(Self { before, weight_g, weight_before_g, days })
        })
    }

    const fn gain_g(&self) -> i64 {
        self.weight_g - self.weight_before_g
    }

    fn evidence(&self) -> [(K, Quantity); 5] {
        [
            (K::Weight, Quantity::Grams(self.weight_g)),
            (K::WeightBefore, Quantity::Grams(self.weight_before_g)),
            (K::Before, Quantity::On(self.before.on())),
            (K::Gain, Quantity::Grams(self.gain_g())),
            (K::IntervalDays, Quantity::Days(self.days)),
        ]
    }
}

/// Weight lost by more than two careful weighings can differ.
pub(super) fn loss(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.weight_loss.limits;
    let Some(pair) = Pair::of(story, at, limits.interval_days) else { return MISSING };
    if pair.before.age_days < limits.earlier_from_age_days {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let lost = -pair.gain_g();
    if lost <= now.protocol.tolerance.weight_g {
        // Whether it is regained depends on the weight at which it last fired.
        return Tested::Not(Clears::Unknown(Why::NotYet));
    }
    // Grams fit a double exactly.
    let (lost_g, before_g) = (lost as f64, pair.weight_before_g as f64);
    let large = lost_g * 100.0 >= limits.large_loss_percent * before_g;
    let class = by_age(now, limits.class_under_6m, if large { limits.class_large } else { limits.class });
    let [weight, before, on, gain, days] = pair.evidence();
    let percent = (K::LossPercent, Quantity::Percent(lost_g * 100.0 / before_g));
    let limit = (K::Limit, Quantity::Grams(now.protocol.tolerance.weight_g));
    Tested::holds(class, [weight, before, on, gain, percent, days, limit])
}

/// Whether a loss is regained: a valid weight more than the tolerance above that of the visit where it last fired, long enough after.
pub(in crate::follow_up) fn regained(story: &Story<'_>, at: usize, fired_at: usize) -> Clears {
    let now = &story.visits[at];
    let fired = &story.visits[fired_at];
    let (Some(weight), Some(lowest)) = (now.weight_g, fired.weight_g) else { return Clears::Unknown(Why::Missing) };
    if now.days_since(fired) < now.protocol.rules.weight_loss.limits.clear_after_days {
        return Clears::Unknown(Why::NotYet);
    }
    Clears::known(Some(weight - lowest > now.protocol.tolerance.weight_g))
}

/// No gain over an interval that grows with age.
pub(super) fn stands_still(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.weight_static.limits;
    let interval = match now.months {
        0..6 => limits.interval_days_under_6m,
        6..12 => limits.interval_days_6_to_11m,
        _ => limits.interval_days_from_12m,
    };
    let Some(pair) = Pair::of(story, at, interval) else { return MISSING };
    if pair.before.age_days < limits.earlier_from_age_days {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    if pair.gain_g() > 0 {
        return Tested::Not(Clears::Yes);
    }
    Tested::holds(by_age(now, limits.class_under_6m, limits.class_from_6m), pair.evidence())
}

/// Some gain, but less than the least expected at that growth age.
pub(super) fn slow_gain(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.weight_slow_gain.limits;
    let Some(pair) = Pair::of(story, at, limits.interval_days) else { return MISSING };
    if pair.before.growth.days < limits.earlier_from_growth_days {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let floor = least_expected_gain_grams(story.child.sex, pair.before.growth.days, now.growth.days);
    let gain = pair.gain_g();
    // Grams fit a double exactly.
    let enough = gain as f64 >= floor - GAIN_EQUAL_WITHIN_G;
    if gain <= 0 || enough {
        return Tested::Not(Clears::known(Some(gain > 0)));
    }
    if now.growth.days >= limits.under_growth_days {
        return Tested::Not(Clears::No);
    }
    let [weight, before, on, gain, days] = pair.evidence();
    let class = by_age(now, limits.class_under_6m, limits.class_from_6m);
    Tested::holds(class, [weight, before, on, gain, (K::Floor, Quantity::GramsExact(floor)), days])
}

/// Weight-for-age fell since the latest earlier visit, 28 to 122 days before, that has one.
pub(super) fn drop(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.weight_drop.limits;
    let Some(waz) = now.waz else { return MISSING };
    let in_interval = |before: &&Facts<'_>| limits.interval_days.contains(now.days_since(before)) && before.waz.is_some();
    let Some((before, waz_before)) = story.earlier(at).find(in_interval).and_then(|before| Some((before, before.waz?))) else {
        return MISSING;
    };
    let old_enough = before.age_days.min(before.growth.days) >= limits.earlier_from_age_days;
    if !old_enough || !same_scale(before, now) {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let change = ZHundredths::new(waz.since(waz_before));
    if change > limits.change_z {
        let gained = now.weight_g.zip(before.weight_g).is_some_and(|(weight, before)| weight > before);
        return Tested::Not(Clears::known(Some(gained)));
    }
    let steep = change <= limits.steep_change_z;
    let class = if steep {
        by_age(now, limits.class_steep_under_6m, limits.class_steep_from_6m)
    } else {
        by_age(now, limits.class_under_6m, limits.class_from_6m)
    };
    let limit = if steep { limits.steep_change_z } else { limits.change_z };
    Tested::holds(
        class,
        [
            (K::ZChange, z(change)),
            (K::ZBefore, z(waz_before)),
            (K::Waz, z(waz)),
            (K::Before, Quantity::On(before.on())),
            (K::IntervalDays, Quantity::Days(now.days_since(before))),
            (K::Limit, z(limit)),
        ],
    )
}

/// A z is not compared with a corrected one.
pub(super) fn same_scale(before: &Facts<'_>, now: &Facts<'_>) -> bool {
    before.growth.corrected_by_days == now.growth.corrected_by_days
}

/// Weight-for-age fell since birth, or since the first one after four weeks, by more than its start allows.
pub(super) fn drift(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.weight_drift.limits;
    let Some(waz) = now.waz else { return MISSING };
    if now.growth.days < limits.from_growth_days {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let (start, since) = match story.birth_waz {
        Some(z) => (z, story.child.born),
        None => {
            let counts = |facts: &&Facts<'_>| facts.growth.days >= limits.first_from_growth_days && facts.waz.is_some();
            let Some(first) = story.visits[..now.day_start].iter().find(counts) else { return MISSING };
            if !same_scale(first, now) {
                return Tested::Not(Clears::Unknown(Why::NotNow));
            }
            let Some(z) = first.waz else { return MISSING };
            (z, first.on())
        }
    };
    let allowed = if start < limits.low_start_below_z {
        limits.fall_low_start_z
    } else if start > limits.high_start_above_z {
        limits.fall_high_start_z
    } else {
        limits.fall_z
    };
    let fall = ZHundredths::new(start.since(waz));
    if fall < allowed {
        return Tested::Not(Clears::Yes);
    }
    Tested::holds(
        limits.class,
        [
            (K::ZChange, z(ZHundredths::new(-fall.hundredths()))),
            (K::ZBefore, z(start)),
            (K::Waz, z(waz)),
            (K::Before, Quantity::On(since)),
            (K::Limit, z(allowed)),
        ],
    )
}

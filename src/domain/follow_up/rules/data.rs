//! Rules about the data themselves: implausible values, jumps, contradictions, missing weights.

use super::growth_level::z;
use super::growth_pair::same_scale;
use super::{BY_LAZ, BY_WAZ, BY_WLZ, Clears, Measures, Tested};
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::feeding::Solids;
use crate::follow_up::facts::{Facts, Story, grams, outside};
use crate::follow_up::types::Why;
use crate::food::FoodGroup;
use crate::growth::Indicator;
use crate::visit::Measurement;

const MISSING: Tested = Tested::Not(Clears::Unknown(Why::Missing));

/// The three indices, the bit of each, and what has to be measured again to keep it.
const INDICES: [(Indicator, Measures, &[Measurement], K); 3] = [
    (Indicator::Waz, BY_WAZ, &[Measurement::Weight], K::Waz),
    (Indicator::Laz, BY_LAZ, &[Measurement::Length], K::Laz),
    (Indicator::Wlz, BY_WLZ, &[Measurement::Weight, Measurement::Length], K::Wlz),
];

fn kept(now: &Facts<'_>, measurements: &[Measurement]) -> bool {
    measurements.iter().all(|measurement| now.confirmed(*measurement))
}

/// A z outside the plausible limits that was not measured again and kept.
pub(super) fn z_outside(now: &Facts<'_>) -> Tested {
    let any = || INDICES.iter().any(|(indicator, ..)| now.scores.get(*indicator).value().is_some());
    if !now.outside {
        return Tested::Not(Clears::if_met(any(), Why::Missing));
    }
    let limits = &now.protocol.rules.data_z_outside.limits;
    let mut evidence = Vec::new();
    let mut by = 0;
    let mut low = false;
    for (indicator, bit, measurements, key) in INDICES {
        if let Some(found) = outside(&now.scores, indicator).filter(|_| !kept(now, measurements)) {
            by |= bit;
            low |= found.hundredths() < 0 && indicator != Indicator::Laz;
            evidence.push((key, z(found)));
        }
    }
    if by == 0 {
        return Tested::Not(Clears::if_met(any(), Why::Missing));
    }
    Tested::Holds { class: if low { limits.class_low } else { limits.class }, evidence: Evidence::from(evidence), by }
}

/// Whether every z that was outside is computed again; that it is inside or kept is known from the rule not holding.
pub(in crate::follow_up) fn z_known_again(now: &Facts<'_>, by: Measures) -> bool {
    INDICES.iter().all(|(indicator, bit, ..)| by & bit == 0 || now.scores.get(*indicator).value().is_some())
}

/// The latest earlier valid weight, with its visit.
fn weight_before<'s, 'a>(story: &'s Story<'a>, at: usize) -> Option<(&'s Facts<'a>, i64)> {
    story.earlier(at).find_map(|before| Some((before, before.weight_g?)))
}

/// Whether the weight is above the latest earlier valid one.
pub(super) fn weight_went_up(story: &Story<'_>, at: usize) -> bool {
    story.visits[at].weight_g.zip(weight_before(story, at)).is_some_and(|(weight, (_, before))| weight > before)
}

/// A jump of weight-for-age, or a gain nobody has in a day.
pub(super) fn weight_jump(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.data_weight_jump.limits;
    let Some(weight) = now.weight_g else { return MISSING };
    if now.confirmed(Measurement::Weight) {
        return Tested::Not(Clears::Yes);
    }
    let Some((before, weight_before)) = weight_before(story, at) else { return MISSING };
    let days = now.days_since(before);
    let applies = days <= limits.within_days && before.growth.days >= limits.earlier_from_growth_days;
    let change = now.waz.zip(before.waz).filter(|_| same_scale(before, now)).map(|(now, before)| now.since(before));
    let by_z = if applies { change.map(|change| change.abs() >= limits.change_z.hundredths()) } else { Some(false) };
    let gain = weight - weight_before;
    let by_gain = days >= limits.gain_over_days && gain > i64::from(limits.gain_above_g_per_day) * i64::from(days);
    if by_z != Some(true) && !by_gain {
        return Tested::Not(Clears::known(by_z.map(|jump| !jump)));
    }
    let mut evidence = vec![
        (K::Weight, Quantity::Grams(weight)),
        (K::WeightBefore, Quantity::Grams(weight_before)),
        (K::Before, Quantity::On(before.on())),
        (K::Gain, Quantity::Grams(gain)),
        (K::IntervalDays, Quantity::Days(days)),
    ];
    if let Some(change) = change {
        evidence.push((K::ZChange, Quantity::ZHundredths(change)));
    }
    Tested::Holds { class: limits.class, evidence: Evidence::from(evidence), by: 0 }
}

/// Shorter than before by more than two careful measurers differ.
pub(super) fn length_shrunk(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let Some(length) = now.length_mm else { return MISSING };
    if now.confirmed(Measurement::Length) {
        return Tested::Not(Clears::Yes);
    }
    let Some((before, length_before)) = story.earlier(at).find_map(|before| Some((before, before.length_mm?))) else {
        return MISSING;
    };
    let tolerance = now.protocol.tolerance.length_mm;
    if length_before - length <= tolerance {
        return Tested::Not(Clears::Yes);
    }
    Tested::holds(
        now.protocol.rules.data_length_shrunk.limits.class,
        [
            (K::Length, Quantity::Millimetres(i64::from(length))),
            (K::LengthBefore, Quantity::Millimetres(i64::from(length_before))),
            (K::Before, Quantity::On(before.on())),
            (K::Limit, Quantity::Millimetres(i64::from(tolerance))),
        ],
    )
}

/// A jump of length-for-age.
pub(super) fn length_jump(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.data_length_jump.limits;
    if now.length_mm.is_some() && now.confirmed(Measurement::Length) {
        return Tested::Not(Clears::Yes);
    }
    let Some(laz) = now.laz else { return MISSING };
    let Some((before, laz_before)) = story.earlier(at).find_map(|before| Some((before, before.laz?))) else { return MISSING };
    let days = now.days_since(before);
    if days > limits.within_days || !same_scale(before, now) {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let change = laz.since(laz_before);
    if change.abs() < limits.change_z.hundredths() {
        return Tested::Not(Clears::Yes);
    }
    let mm = |facts: &Facts<'_>| Quantity::Millimetres(i64::from(facts.length_mm.unwrap_or(0)));
    Tested::holds(
        limits.class,
        [
            (K::Length, mm(now)),
            (K::LengthBefore, mm(before)),
            (K::Laz, z(laz)),
            (K::ZChange, Quantity::ZHundredths(change)),
            (K::Before, Quantity::On(before.on())),
            (K::IntervalDays, Quantity::Days(days)),
        ],
    )
}

/// A very short pregnancy with a birth weight that does not fit it: at every visit until corrected.
pub(super) fn age_problem(story: &Story<'_>, at: usize) -> Tested {
    let limits = &story.visits[at].protocol.rules.data_age_problem.limits;
    let (Some(gestation), Some(weight)) = (story.child.gestation_days, story.child.birth_weight) else { return MISSING };
    if u32::from(gestation) >= limits.gestation_below_days || weight.grams() <= limits.birth_weight_above_g {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    Tested::holds(
        limits.class,
        [(K::BirthWeight, Quantity::Grams(grams(weight))), (K::GestationDays, Quantity::Days(i32::from(gestation)))],
    )
}

/// A second home or clinic visit of a day; or, at the first visit, a child that looks like another one.
pub(super) fn twin_record(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let same_day = now.in_person() && story.visits[now.day_start..at].iter().any(Facts::in_person);
    if same_day || (at == 0 && story.child.looks_like_another) {
        return Tested::holds(now.protocol.rules.data_twin_record.limits.class, [(K::Date, Quantity::On(now.on()))]);
    }
    Tested::Not(Clears::Unknown(Why::NeedsOutcome))
}

/// The same weight as on each of the last two earlier days with a weight.
pub(super) fn same_again(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.data_same_again.limits;
    let nearest = i64::from(limits.nearest_g.max(1));
    let rounded = |weight: i64| (weight + nearest / 2) / nearest;
    if now.months >= limits.under_months {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    let Some(weight) = now.visit.weight.map(grams) else { return MISSING };
    if now.confirmed(Measurement::Weight) {
        return Tested::Not(Clears::Yes);
    }
    let mut days = story.earlier(at).filter_map(|before| Some((before.on(), grams(before.visit.weight?))));
    let Some((last_on, last)) = days.next() else { return MISSING };
    if rounded(last) != rounded(weight) {
        return Tested::Not(Clears::Yes);
    }
    let before_last = days.find(|(on, _)| *on != last_on);
    if before_last.is_none_or(|(_, grams)| rounded(grams) != rounded(weight)) {
        return Tested::Not(Clears::No);
    }
    Tested::holds(limits.class, [(K::Weight, Quantity::Grams(weight)), (K::Before, Quantity::On(last_on))])
}

/// Answers that contradict each other.
pub(super) fn conflict(now: &Facts<'_>) -> Tested {
    let visit = now.visit;
    let meals = visit.solids_yesterday == Some(false) && visit.meals.is_some_and(|meals| meals > 0);
    let other_than_milk = |groups: &std::collections::BTreeSet<FoodGroup>| groups.iter().any(|group| *group != FoodGroup::BreastMilk);
    let groups = visit.breast_only == Some(true) && visit.groups.as_ref().is_some_and(other_than_milk);
    let texture = visit.texture_best.or(visit.texture_usual).filter(|_| now.solids == Solids::NotStarted);
    if !meals && !groups && texture.is_none() {
        return Tested::Not(Clears::if_met(visit.solids_yesterday.is_some(), Why::Missing));
    }
    let mut evidence = Vec::new();
    if meals {
        evidence.push((K::Meals, Quantity::Count(visit.meals.map_or(0, u32::from))));
    }
    if groups {
        evidence.push((K::Groups, Quantity::Count(visit.groups.as_ref().map_or(0, |groups| u32::try_from(groups.len()).unwrap_or(0)))));
    }
    if let Some(texture) = texture {
        evidence.push((K::Texture, Quantity::Texture(texture.level())));
    }
    Tested::Holds { class: now.protocol.rules.data_conflict.limits.class, evidence: Evidence::from(evidence), by: 0 }
}

/// No weight on this day so far, nor on the latest earlier day with a home or clinic visit.
pub(super) fn measure_missing(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    if !now.in_person() {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    }
    if story.visits[now.day_start..=at].iter().any(|facts| facts.visit.weight.is_some()) {
        return Tested::Not(Clears::Yes);
    }
    let Some(before) = story.earlier(at).find(|facts| facts.in_person()).map(Facts::on) else {
        return Tested::Not(Clears::Unknown(Why::NotNow));
    };
    if story.earlier(at).any(|facts| facts.on() == before && facts.visit.weight.is_some()) {
        return Tested::Not(Clears::No);
    }
    Tested::holds(now.protocol.rules.measure_missing.limits.class, [(K::Before, Quantity::On(before))])
}

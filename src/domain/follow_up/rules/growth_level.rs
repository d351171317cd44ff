//! Growth rules that look at one visit: weight, length, weight for length, arm.

use super::{BY_MUAC, BY_WAZ, BY_WLZ, Clears, Tested, by_age};
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, grams};
use crate::follow_up::types::Why;
use crate::growth::ZHundredths;
use crate::rule::Class;

/// A z as evidence.
pub(super) fn z(z: ZHundredths) -> Quantity {
    Quantity::ZHundredths(z.hundredths())
}

/// A z with its limit, after the weight if there is one.
fn with_weight(now: &Facts<'_>, (key, found): (K, ZHundredths), limit: ZHundredths) -> Evidence {
    let (found, limit) = ((key, z(found)), (K::Limit, z(limit)));
    match now.visit.weight {
        Some(weight) => Evidence::from([(K::Weight, Quantity::Grams(grams(weight))), found, limit]),
        None => Evidence::from([found, limit]),
    }
}

/// Weight-for-age below −3.
pub(super) fn weight_very_low(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.weight_very_low.limits;
    let Some(waz) = now.waz else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if waz >= limits.below_z {
        return Tested::Not(Clears::Yes);
    }
    let class = if waz < limits.urgent_below_z {
        limits.class_under_6m.worse(limits.class_from_6m)
    } else {
        by_age(now, limits.class_under_6m, limits.class_from_6m)
    };
    Tested::Holds { class, evidence: with_weight(now, (K::Waz, waz), limits.below_z), by: 0 }
}

/// Weight-for-age from −3 to below −2.
pub(super) fn weight_low(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.weight_low.limits;
    let Some(waz) = now.waz else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if waz >= limits.below_z {
        return Tested::Not(Clears::Yes);
    }
    if waz < limits.from_z {
        return Tested::Not(Clears::No);
    }
    let class = by_age(now, limits.class_under_6m, limits.class_from_6m);
    Tested::Holds { class, evidence: with_weight(now, (K::Waz, waz), limits.below_z), by: 0 }
}

/// The clearing test of the wasting rules: arm measured and wide enough, swelling of the feet asked and absent, weight for length not
/// low where it is computed.
pub(in crate::follow_up) fn wasting_clears(now: &Facts<'_>) -> Clears {
    let limits = &now.protocol.rules.wasting_severe.limits;
    let muac = now.visit.muac.map(|muac| u32::from(muac.mm()) >= limits.clear_muac_from_mm);
    let feet = now.visit.oedema.map(|oedema| !oedema);
    let wlz = now.wlz.is_none_or(|wlz| wlz >= limits.clear_z_from);
    match (muac, feet, wlz) {
        (Some(false), _, _) | (_, Some(false), _) | (_, _, false) => Clears::No,
        (Some(true), Some(true), true) => Clears::Yes,
        _ => Clears::Unknown(Why::Missing),
    }
}

/// A wasting rule fires by weight for length, by the arm, or by both; the arm is told first.
fn wasting(class: Class, wlz: Option<(ZHundredths, ZHundredths)>, muac: Option<(u16, u32)>) -> Tested {
    let mut evidence = Vec::with_capacity(4);
    let mut by = 0;
    if let Some((mm, limit)) = muac {
        by |= BY_MUAC;
        evidence.push((K::Muac, Quantity::Millimetres(i64::from(mm))));
        evidence.push((K::Limit, Quantity::Millimetres(i64::from(limit))));
    }
    if let Some((found, limit)) = wlz {
        by |= BY_WLZ;
        evidence.push((K::Wlz, z(found)));
        if muac.is_none() {
            evidence.push((K::Limit, z(limit)));
        }
    }
    Tested::Holds { class, evidence: Evidence::from(evidence), by }
}

/// From 6 months: weight for length below −3 or arm under 115 mm.
pub(super) fn wasting_severe(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.wasting_severe.limits;
    let wlz = now.wlz.filter(|wlz| *wlz < limits.below_z).map(|wlz| (wlz, limits.below_z));
    let muac = now.visit.muac.map(|muac| muac.mm()).filter(|mm| u32::from(*mm) < limits.muac_below_mm);
    if now.months < limits.from_months || (wlz.is_none() && muac.is_none()) {
        return Tested::Not(wasting_clears(now));
    }
    wasting(limits.class, wlz, muac.map(|mm| (mm, limits.muac_below_mm)))
}

/// From 6 months: weight for length from −3 to below −2 or arm from 115 to 124 mm.
pub(super) fn wasting_moderate(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.wasting_moderate.limits;
    let wlz = now.wlz.filter(|wlz| *wlz >= limits.from_z && *wlz < limits.below_z).map(|wlz| (wlz, limits.below_z));
    let within = limits.muac_from_mm..limits.muac_below_mm;
    let muac = now.visit.muac.map(|muac| muac.mm()).filter(|mm| within.contains(&u32::from(*mm)));
    if now.months < limits.from_months || (wlz.is_none() && muac.is_none()) {
        return Tested::Not(wasting_clears(now));
    }
    wasting(limits.class, wlz, muac.map(|mm| (mm, limits.muac_below_mm)))
}

/// Under 6 months: weight for length, and the arm from 6 weeks. Its clearing depends on what made it fire.
pub(super) fn wasting_young(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.wasting_young.limits;
    if now.months >= limits.under_months {
        return Tested::Not(wasting_clears(now));
    }
    let severe = now.wlz.filter(|wlz| *wlz < limits.severe_below_z).map(|wlz| (wlz, limits.severe_below_z));
    let wlz = severe.or(now.wlz.filter(|wlz| *wlz < limits.below_z).map(|wlz| (wlz, limits.below_z)));
    let old_enough = now.age_days >= limits.muac_from_age_days;
    let muac = now.visit.muac.map(|muac| muac.mm()).filter(|mm| old_enough && u32::from(*mm) < limits.muac_below_mm);
    if wlz.is_none() && muac.is_none() {
        let known = now.wlz.is_some() || (old_enough && now.visit.muac.is_some());
        return Tested::Not(Clears::if_met(known, Why::Missing));
    }
    let class = if severe.is_some() { limits.class_severe } else { limits.class };
    wasting(class, wlz, muac.map(|mm| (mm, limits.muac_below_mm)))
}

/// Whether every measure that made the rule on young infants fire is known again; from 6 months on the test for older children decides.
pub(in crate::follow_up) fn wasting_known_again(now: &Facts<'_>, by: super::Measures) -> bool {
    let limits = &now.protocol.rules.wasting_young.limits;
    if now.months >= limits.under_months {
        return true;
    }
    let wlz = by & BY_WLZ == 0 || now.wlz.is_some();
    let muac = by & BY_MUAC == 0 || (now.visit.muac.is_some() && now.age_days >= limits.muac_from_age_days);
    wlz && muac
}

/// Length-for-age below −3, or below −2.
pub(super) fn length_low(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.length_low.limits;
    let Some(laz) = now.laz else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if laz >= limits.below_z {
        return Tested::Not(Clears::Yes);
    }
    let severe = laz < limits.severe_below_z;
    let (class, limit) = if severe { (limits.class_severe, limits.severe_below_z) } else { (limits.class, limits.below_z) };
    let length = i64::from(now.length_mm.unwrap_or(0));
    Tested::holds(class, [(K::Length, Quantity::Millimetres(length)), (K::Laz, z(laz)), (K::Limit, z(limit))])
}

/// Weight for length above +2 or +3; without one, weight-for-age above +2.
pub(super) fn weight_high(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.weight_high.limits;
    match (now.wlz, now.waz) {
        (Some(wlz), _) if wlz > limits.above_z => {
            let very = wlz > limits.very_above_z;
            let (class, limit) = if very { (limits.class_very, limits.very_above_z) } else { (limits.class, limits.above_z) };
            let evidence = with_weight(now, (K::Wlz, wlz), limit);
            Tested::Holds { class, evidence, by: BY_WLZ }
        }
        (Some(_), _) => Tested::Not(Clears::Yes),
        (None, Some(waz)) if waz > limits.above_z => {
            let evidence = with_weight(now, (K::Waz, waz), limits.above_z);
            Tested::Holds { class: limits.class, evidence, by: BY_WAZ }
        }
        // Clear only for a follow-up that never rested on weight for length.
        (None, Some(_)) => Tested::Not(Clears::Yes),
        (None, None) => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

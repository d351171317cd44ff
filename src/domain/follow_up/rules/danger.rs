//! Danger signs and swelling of both feet. They cannot tell when the signs were not asked.

use std::collections::BTreeSet;

use super::practice;
use super::{Clears, Tested};
use crate::evidence::{EvidenceKey, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::rule::Class;
use crate::visit::DangerSign;

/// Signs that fall under the rule on honey while it fires.
pub(super) const LIMP: [DangerSign; 4] = [DangerSign::WeakCry, DangerSign::Floppy, DangerSign::PoorSuck, DangerSign::DroopyLids];

/// Signs as evidence.
pub(super) fn codes<'a>(signs: impl IntoIterator<Item = &'a DangerSign>) -> Quantity {
    Quantity::Codes(signs.into_iter().map(|sign| sign.code().to_owned()).collect())
}

/// Fires for the ticked ones of a list of signs.
fn any_of(asked: &BTreeSet<DangerSign>, list: &[DangerSign], class: Class) -> Tested {
    let seen = list.iter().filter(|sign| asked.contains(sign));
    if asked.is_empty() || seen.clone().next().is_none() {
        return Tested::Not(Clears::Yes);
    }
    Tested::holds(class, [(EvidenceKey::Signs, codes(seen))])
}

const GENERAL: [DangerSign; 7] = [
    DangerSign::CannotFeed,
    DangerSign::VomitsEverything,
    DangerSign::FitsInIllness,
    DangerSign::FitsNow,
    DangerSign::Unconscious,
    DangerSign::Lethargic,
    DangerSign::TroubleBreathing,
];

/// General danger signs (IMCI).
pub(super) fn general(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.danger_general.limits;
    let Some(asked) = &now.visit.danger_signs else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    let mut list = [DangerSign::MovesOnlyWhenTouched; 8];
    list[..GENERAL.len()].copy_from_slice(&GENERAL);
    let count = if now.months >= limits.moves_only_when_touched_from_months { 8 } else { 7 };
    any_of(asked, &list[..count], limits.class)
}

const YOUNG_INFANT: [DangerSign; 7] = [
    DangerSign::NotFeedingWell,
    DangerSign::FitsInIllness,
    DangerSign::FitsNow,
    DangerSign::FastBreathing,
    DangerSign::ChestIndrawing,
    DangerSign::FeverOrCold,
    DangerSign::MovesOnlyWhenTouched,
];

/// Signs of a young infant (IMCI); the list also says at any later age whether the follow-up is clear.
pub(super) fn young_infant(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.danger_young_infant.limits;
    let Some(asked) = &now.visit.danger_signs else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    let tested = any_of(asked, &YOUNG_INFANT, limits.class);
    if tested.is_held() && now.months >= limits.under_months { Tested::Not(Clears::No) } else { tested }
}

/// Other danger signs: the more severe of those seen.
pub(super) fn other(story: &Story<'_>, at: usize) -> Tested {
    use DangerSign as S;
    let now = &story.visits[at];
    let limits = &now.protocol.rules.danger_other.limits;
    let Some(asked) = &now.visit.danger_signs else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if asked.is_empty() {
        return Tested::Not(Clears::Yes);
    }
    let later = now.months >= limits.later_signs_from_months;
    let honey = practice::honey(story, at).is_held() && now.feeding_age();
    let class_of = |sign: DangerSign| -> Option<Class> {
        match sign {
            S::StridorCalm | S::SunkenEyesSlowPinch | S::StiffNeck => Some(limits.class_at_once),
            S::BloodInStool => Some(limits.class_same_day),
            sign if LIMP.contains(&sign) => (!honey).then_some(limits.class_same_day),
            S::ChestIndrawing if later => Some(limits.class_at_once),
            S::FastBreathing if later => Some(limits.class_same_day),
            S::FeverOrCold if later && now.months < limits.fever_same_day_under_months => Some(limits.class_same_day),
            S::FeverOrCold | S::NotFeedingWell if later => Some(limits.class_soon),
            _ => None,
        }
    };
    let seen: Vec<&DangerSign> = asked.iter().filter(|sign| class_of(**sign).is_some()).collect();
    match seen.iter().filter_map(|sign| class_of(**sign)).min() {
        Some(class) => Tested::holds(class, [(EvidenceKey::Signs, codes(seen))]),
        None => Tested::Not(Clears::Yes),
    }
}

/// Pitting swelling of both feet, at any age.
pub(super) fn oedema(now: &Facts<'_>) -> Tested {
    match now.visit.oedema {
        Some(true) => Tested::holds(now.protocol.rules.oedema_both_feet.limits.class, []),
        Some(false) => Tested::Not(Clears::Yes),
        None => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

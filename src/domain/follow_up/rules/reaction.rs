//! Reactions to foods, foods given again while on hold, trouble swallowing.

use super::{Clears, Tested};
use crate::evidence::{EvidenceKey, Quantity};
use crate::feeding::ReactionLevel;
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::offered::reacted;
use crate::follow_up::types::Why;
use crate::food::{FoodCode, ReactionSign};
use crate::rule::{Class, RuleId};
use crate::visit::{FoodOffer, SwallowTrouble};

/// A reaction that is not told again does not clear an earlier one.
const NO_REACTION: Tested = Tested::Not(Clears::Unknown(Why::NeedsOutcome));

/// How serious a reaction was: the worst that its signs meet. Unknown signs and unknown times never make it milder.
pub(crate) fn level(offer: &FoodOffer, together_within_minutes: u32) -> ReactionLevel {
    use ReactionSign as S;
    let Some(signs) = &offer.signs else { return ReactionLevel::Spreading };
    let any = |list: &[ReactionSign]| list.iter().any(|sign| signs.contains(sign));
    let breath_throat_collapse =
        any(&[S::Wheeze, S::BreathingTrouble, S::HoarseCry, S::SwollenTongueThroat, S::PaleFloppy, S::Collapse, S::SleepyPale]);
    let skin = any(&[S::RashLocal, S::HivesWidespread, S::SwellingFace]);
    let gut = any(&[S::VomitingOnce, S::VomitingRepeated, S::LooseStools]);
    let soon = offer.minutes_after.is_none_or(|minutes| u32::from(minutes) <= together_within_minutes);
    if breath_throat_collapse || (skin && gut && soon) {
        ReactionLevel::Severe
    } else if any(&[S::HivesWidespread, S::SwellingFace, S::VomitingRepeated]) {
        ReactionLevel::Spreading
    } else {
        ReactionLevel::Mild
    }
}

/// How serious the reaction was that an offer of a food told of; `None` if it told of none.
#[must_use]
pub fn told_reaction(offer: &FoodOffer, protocol: &crate::protocol::Protocol) -> Option<ReactionLevel> {
    reacted(offer).then(|| level(offer, protocol.rules.reaction_severe.limits.skin_and_gut_within_minutes))
}

fn level_at(offer: &FoodOffer, now: &Facts<'_>) -> ReactionLevel {
    level(offer, now.protocol.rules.reaction_severe.limits.skin_and_gut_within_minutes)
}

/// The rule of one level: each food makes one of them fire.
pub(super) fn of_level(rule: RuleId, now: &Facts<'_>) -> Tested {
    if !now.offered.reaction {
        return NO_REACTION;
    }
    let rules = &now.protocol.rules;
    let wanted = match rule {
        RuleId::ReactionSevere => ReactionLevel::Severe,
        RuleId::ReactionSpreading => ReactionLevel::Spreading,
        _ => ReactionLevel::Mild,
    };
    let common = |offer: &FoodOffer| now.protocol.food(&offer.code).is_some_and(|food| food.allergen.is_some());
    let class_of = |offer: &FoodOffer| match wanted {
        ReactionLevel::Severe => rules.reaction_severe.limits.class,
        ReactionLevel::Spreading => rules.reaction_spreading.limits.class,
        ReactionLevel::Mild if common(offer) => rules.reaction_mild.limits.class_common_allergen,
        ReactionLevel::Mild => rules.reaction_mild.limits.class,
    };
    let these: Vec<&FoodOffer> = now.visit.foods.iter().filter(|offer| reacted(offer) && level_at(offer, now) == wanted).collect();
    let Some(class) = these.iter().map(|offer| class_of(offer)).min() else { return NO_REACTION };
    let foods = Quantity::Codes(these.iter().map(|offer| offer.code.0.clone()).collect());
    let mut evidence = vec![(EvidenceKey::Foods, foods)];
    let signs: std::collections::BTreeSet<ReactionSign> =
        these.iter().filter_map(|offer| offer.signs.as_ref()).flatten().copied().collect();
    if !signs.is_empty() {
        evidence.push((EvidenceKey::Signs, Quantity::Codes(signs.iter().map(|sign| sign.code().to_owned()).collect())));
    }
    if let Some(minutes) = these.iter().filter_map(|offer| offer.minutes_after).min() {
        evidence.push((EvidenceKey::Minutes, Quantity::Minutes(u32::from(minutes))));
    }
    Tested::Holds { class, evidence: crate::evidence::Evidence::from(evidence), by: 0 }
}

/// The hold of a food that began on an earlier day and was not lifted up to and with this visit: its first day and worst reaction,
/// those of this visit included.
fn hold(story: &Story<'_>, at: usize, code: &FoodCode) -> Option<(chrono::NaiveDate, ReactionLevel)> {
    let now = &story.visits[at];
    let mut hold: Option<(chrono::NaiveDate, ReactionLevel)> = None;
    for (index, facts) in story.visits[..=at].iter().enumerate() {
        // A reaction of this very day begins no hold yet; it counts into one that is there, and a hold can be lifted.
        let begins = index < now.day_start;
        for offer in facts.visit.foods.iter().filter(|offer| offer.code == *code) {
            if offer.hold_lifted {
                hold = None;
            }
            if reacted(offer) {
                let level = level_at(offer, facts);
                hold = match hold {
                    Some((since, worst)) => Some((since, worst.min(level))),
                    None => begins.then_some((facts.on(), level)),
                };
            }
        }
    }
    hold
}

/// A food on hold from an earlier day was offered again.
pub(super) fn given_again(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    if !story.earlier(at).next().is_some_and(|before| before.reaction_so_far) {
        return NO_REACTION;
    }
    let limits = &now.protocol.rules.reaction_given_again.limits;
    let mut given: Vec<(&FoodCode, chrono::NaiveDate, ReactionLevel)> = Vec::new();
    for offer in now.visit.foods.iter().filter(|offer| offer.offers > 0) {
        if let Some((since, worst)) = hold(story, at, &offer.code) {
            given.push((&offer.code, since, worst));
        }
    }
    let Some(worst) = given.iter().map(|(_, _, worst)| *worst).min() else { return NO_REACTION };
    let class: Class = if worst <= ReactionLevel::Spreading { limits.class_after_severe } else { limits.class };
    let since = given.iter().map(|(_, since, _)| *since).min().unwrap_or_else(|| now.on());
    let foods = Quantity::Codes(given.iter().map(|(code, _, _)| code.0.clone()).collect());
    Tested::holds(class, [(EvidenceKey::Foods, foods), (EvidenceKey::Date, Quantity::On(since))])
}

/// Chokes, coughs or sounds wet while feeding, more than once; or goes blue.
pub(super) fn swallow_trouble(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.feeding_swallow_trouble.limits;
    let class = match now.visit.swallow_trouble {
        Some(SwallowTrouble::Blue) => limits.class_blue,
        Some(SwallowTrouble::Repeated) => limits.class,
        Some(SwallowTrouble::None) => return Tested::Not(Clears::Unknown(Why::NeedsOutcome)),
        None => return Tested::Not(Clears::Unknown(Why::Missing)),
    };
    let sign = now.visit.swallow_trouble.map_or_else(String::new, |trouble| trouble.code().to_owned());
    Tested::holds(class, [(EvidenceKey::Signs, Quantity::Codes(vec![sign]))])
}

//! What each food's state is after the visits so far: a hold ends only when somebody named lifts it.

use super::{FoodLine, FoodState, ReactionLevel};
use crate::calendar::add_days;
use crate::follow_up::{Facts, reaction_level};
use crate::food::Response;
use crate::visit::FoodOffer;

/// Taken willingly on at least so many offers (our own choice).
const ACCEPTED_FROM_OFFERS: u32 = 3;

/// A refused food comes back after so many days (common practice).
const RETRY_AFTER_DAYS: i32 = 14;

/// Every food offered or lifted so far, by code.
pub(crate) fn food_lines(visits: &[Facts<'_>]) -> Vec<FoodLine> {
    let mut lines: Vec<FoodLine> = Vec::new();
    for facts in visits {
        for offer in &facts.visit.foods {
            // A child knows a dozen or two: looking at each is quicker than keeping them in order.
            let place = lines.iter().position(|line| line.code == offer.code).unwrap_or_else(|| {
                lines.push(first_offer(offer, facts));
                lines.len() - 1
            });
            hear(&mut lines[place], offer, facts);
        }
    }
    lines.sort_by(|one, other| one.code.cmp(&other.code));
    lines
}

fn first_offer(offer: &FoodOffer, facts: &Facts<'_>) -> FoodLine {
    FoodLine {
        code: offer.code.clone(),
        state: FoodState::Trying,
        first_on: facts.on(),
        last_on: facts.on(),
        offers: 0,
        accepted_offers: 0,
        refused_offers: 0,
        cleared_on: None,
    }
}

fn hear(line: &mut FoodLine, offer: &FoodOffer, facts: &Facts<'_>) {
    let on = facts.on();
    if offer.hold_lifted && matches!(line.state, FoodState::OnHold { .. }) {
        line.state = FoodState::Cleared { on };
        line.cleared_on = Some(on);
        (line.offers, line.accepted_offers, line.refused_offers) = (0, 0, 0);
    }
    if offer.offers == 0 {
        return;
    }
    let times = u32::from(offer.offers);
    line.last_on = on;
    line.offers += times;
    match offer.response {
        Some(Response::Accepted) => line.accepted_offers += times,
        Some(Response::Refused) => line.refused_offers += times,
        Some(Response::Reaction) | None => {}
    }
    line.state = match (line.state, offer.response) {
        (FoodState::OnHold { since, worst }, Some(Response::Reaction)) => {
            FoodState::OnHold { since, worst: worst.min(level(offer, facts)) }
        }
        (hold @ FoodState::OnHold { .. }, _) => hold,
        (_, Some(Response::Reaction)) => FoodState::OnHold { since: on, worst: level(offer, facts) },
        (_, Some(Response::Refused)) => FoodState::Refused { retry_on: add_days(on, RETRY_AFTER_DAYS) },
        _ if line.accepted_offers >= ACCEPTED_FROM_OFFERS => FoodState::Accepted,
        // An offer of which nothing is said does not undo a refusal.
        (refused @ FoodState::Refused { .. }, None) => refused,
        _ => FoodState::Trying,
    };
}

fn level(offer: &FoodOffer, facts: &Facts<'_>) -> ReactionLevel {
    reaction_level(offer, facts.protocol.rules.reaction_severe.limits.skin_and_gut_within_minutes)
}

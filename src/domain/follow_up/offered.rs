//! What the foods offered at a visit come to, each looked up once. The rules then ask for the names of foods only where they fire.

use crate::food::{FoodCode, Response};
use crate::protocol::Protocol;
use crate::visit::{FoodOffer, Visit};

/// The foods of one visit in short.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Offered {
    /// Some food that is no drink was given.
    pub solid: bool,
    /// Honey was given.
    pub honey: bool,
    /// A reaction followed one of them.
    pub reaction: bool,
    /// A food that can choke was given in an unsafe form.
    pub unsafe_form: bool,
    /// A food that can choke is named, and not known to have been given in a safe form.
    pub form_unclear: bool,
    /// The greatest age in completed months that the local protocol waits for with a food given before it.
    pub local_wait_months: Option<u32>,
}

impl Offered {
    /// The foods of a visit at an age in completed months.
    pub fn at(visit: &Visit, protocol: &Protocol, months: u32) -> Self {
        let mut all = Self::default();
        for offer in &visit.foods {
            let (food, given) = (protocol.food(&offer.code), offer.offers > 0);
            all.solid |= given && !food.is_some_and(|food| food.drink);
            all.honey |= is_honey(offer);
            all.reaction |= reacted(offer);
            if food.is_some_and(|food| food.choking) {
                all.unsafe_form |= given && offer.unsafe_form == Some(true);
                all.form_unclear |= offer.unsafe_form != Some(false);
            }
            let waits = food.filter(|food| given && food.flagged_at(months)).map(|food| food.local_wait_months);
            all.local_wait_months = all.local_wait_months.max(waits);
        }
        all
    }
}

/// Whether honey was given.
fn is_honey(offer: &FoodOffer) -> bool {
    offer.offers > 0 && offer.code.as_str() == FoodCode::HONEY
}

/// Whether a food was offered and a reaction followed.
pub(super) fn reacted(offer: &FoodOffer) -> bool {
    offer.offers > 0 && offer.response == Some(Response::Reaction)
}

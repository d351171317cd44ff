//! Foods given since the last visit, as the form names them: a block for each food that the page offers by name, some
//! boxes in which any other food is chosen, and a tick for honey. It knows no rule and no list of foods.

use std::collections::BTreeSet;

use crate::draft::Reader;
use crate::draft::visit::VisitFrame;
use crate::draft::visit::also;
use crate::draft::visit::also::Also;
use crate::draft::visit::asked;
use crate::fault::Fault;
use crate::food::FoodCode;
use crate::food::ReactionSign;
use crate::food::Response;
use crate::visit::FoodOffer;

/// How many boxes for "another food" a form has.
pub const OTHER_FOODS: u8 = 3;

/// Two days, in minutes: later signs are not linked to the food by the person asking.
const MOST_MINUTES: u64 = 2 * 24 * 60;

/// The most times a food can have been offered since the last visit; the bound only catches slips.
const MOST_OFFERS: u64 = 200;

/// The names of the form's fields about one food: the form is drawn with them and read by them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodFields {
    /// How it was taken.
    pub response: String,
    /// Times offered.
    pub offers: String,
    /// Given in a form that can choke.
    pub unsafe_form: String,
    /// Signs of a reaction, ticked.
    pub signs: String,
    /// None of these signs.
    pub no_signs: String,
    /// Minutes to the first sign.
    pub minutes: String,
    /// Allowed again.
    pub lifted: String,
}

impl FoodFields {
    /// Those of a food named on the form.
    #[must_use]
    pub fn of_code(code: &str) -> Self {
        Self {
            response: format!("food_{code}"),
            offers: format!("offers_{code}"),
            unsafe_form: format!("unsafe_{code}"),
            signs: format!("rsign_{code}"),
            no_signs: format!("rsign_none_{code}"),
            minutes: format!("minutes_{code}"),
            lifted: format!("lifted_{code}"),
        }
    }

    /// Those of one of the boxes for another food.
    #[must_use]
    pub fn of_box(at: u8) -> Self {
        let name = |tail: &str| format!("other{at}_{tail}");
        Self {
            response: name("taken"),
            offers: name("offers"),
            unsafe_form: name("unsafe"),
            signs: name("rsign"),
            no_signs: name("rsign_none"),
            minutes: name("minutes"),
            lifted: name("lifted"),
        }
    }
}

/// The name of the list in which the food of a box is chosen.
#[must_use]
pub fn other_food(at: u8) -> String {
    format!("other{at}_food")
}

/// What was given. A reaction whose food was not said, or is none of the list, is one to [`FoodCode::NOT_LISTED`] beside its fault:
/// what must not wait is recorded before the form is mended.
pub(super) fn read(r: &mut Reader<'_>, frame: &VisitFrame<'_>) -> Vec<FoodOffer> {
    let mut codes: Vec<&str> = Vec::new();
    for (code, value) in r.named("food_") {
        if !value.is_empty() && !codes.contains(&code) {
            codes.push(code);
        }
    }
    // A hold may be lifted without the food having been offered.
    for (code, value) in r.named("lifted_") {
        if value == "yes" && !codes.contains(&code) {
            codes.push(code);
        }
    }
    let mut foods: Vec<FoodOffer> = Vec::new();
    for code in codes {
        let names = FoodFields::of_code(code);
        if (frame.foods)(code) {
            add(&mut foods, offer(r, code, &names));
        } else {
            r.fault(&names.response, unknown(frame, code));
            reaction_to_unknown(r, &names, &mut foods);
        }
    }
    for at in 1..=OTHER_FOODS {
        other(r, frame, at, &mut foods);
    }
    if also::ticked(r, Also::Honey) && !foods.iter().any(|f| f.code.as_str() == FoodCode::HONEY) {
        foods.push(plain_offer(FoodCode::HONEY));
    }
    foods
}

fn reaction_to_unknown(r: &mut Reader<'_>, names: &FoodFields, foods: &mut Vec<FoodOffer>) {
    if r.text(&names.response) == Response::Reaction.code() {
        let told = offer(r, FoodCode::NOT_LISTED, names);
        add(foods, told);
    }
}

fn other(r: &mut Reader<'_>, frame: &VisitFrame<'_>, at: u8, foods: &mut Vec<FoodOffer>) {
    let names = FoodFields::of_box(at);
    let field = other_food(at);
    let code = r.text(&field);
    if code.is_empty() {
        // Something was said of a food, but not of which.
        let said = [&names.response, &names.signs, &names.minutes, &names.offers].iter().any(|name| !r.text(name).is_empty());
        if said {
            r.fault(&field, Fault::Missing);
            reaction_to_unknown(r, &names, foods);
        }
        return;
    }
    if !(frame.foods)(code) {
        r.fault(&field, unknown(frame, code));
        reaction_to_unknown(r, &names, foods);
        return;
    }
    if r.text(&names.response).is_empty() && r.text(&names.lifted) != "yes" {
        r.fault(&names.response, Fault::Missing);
        return;
    }
    let read = offer(r, code, &names);
    add(foods, read);
}

fn unknown(frame: &VisitFrame<'_>, code: &str) -> Fault {
    Fault::UnknownFood { typed: code.to_owned(), like: (frame.like)(code) }
}

/// Given once; nothing else was said of it.
pub(super) fn plain_offer(code: &str) -> FoodOffer {
    FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: 1,
        response: None,
        unsafe_form: None,
        signs: None,
        minutes_after: None,
        hold_lifted: false,
    }
}

fn offer(r: &mut Reader<'_>, code: &str, names: &FoodFields) -> FoodOffer {
    // Given, but how it was taken is not known: as a tick "given" says it.
    let given = r.text(&names.response) == "given";
    let response = if given { None } else { r.choice(&names.response, |c| Response::from_code(c).ok()) };
    let signs = if response == Some(Response::Reaction) {
        asked(r, &names.signs, |c| ReactionSign::from_code(c).ok()).or_else(|| (r.text(&names.no_signs) == "yes").then(BTreeSet::new))
    } else {
        None
    };
    let offered = u16::from(response.is_some() || given);
    FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: r.count(&names.offers, MOST_OFFERS).and_then(|n| u16::try_from(n).ok()).unwrap_or(offered),
        response,
        unsafe_form: r.yes_no(&names.unsafe_form),
        signs,
        minutes_after: r.count(&names.minutes, MOST_MINUTES).and_then(|n| u16::try_from(n).ok()),
        hold_lifted: r.text(&names.lifted) == "yes",
    }
}

/// A food named twice is one food: the worse response counts, and everything said of either.
fn add(foods: &mut Vec<FoodOffer>, new: FoodOffer) {
    let Some(known) = foods.iter_mut().find(|f| f.code == new.code) else {
        foods.push(new);
        return;
    };
    known.offers = known.offers.saturating_add(new.offers);
    known.response = known.response.max(new.response);
    known.unsafe_form = known.unsafe_form.max(new.unsafe_form);
    known.signs = match (known.signs.take(), new.signs) {
        (Some(mut a), Some(b)) => {
            a.extend(b);
            Some(a)
        }
        (a, b) => a.or(b),
    };
    known.minutes_after = match (known.minutes_after, new.minutes_after) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    known.hold_lifted |= new.hold_lifted;
}

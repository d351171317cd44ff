//! Rules about feeding practice: sweet drinks, bottles, honey, choking, drinks and foods of low value, local waiting ages, appetite.

use super::danger::{LIMP, codes};
use super::{Clears, Tested, by_age};
use crate::calendar::days_between;
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::follow_up::facts::{Facts, Story};
use crate::follow_up::types::Why;
use crate::rule::Class;
use crate::visit::{DangerSign, FoodOffer, LowValue};

fn yes_no(answer: Option<bool>, class: Class) -> Tested {
    match answer {
        Some(true) => Tested::holds(class, []),
        Some(false) => Tested::Not(Clears::Yes),
        None => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

/// A sweet drink.
pub(super) fn drink_sweet(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.drink_sweet.limits;
    yes_no(now.visit.sweet_drink, by_age(now, limits.class_under_6m, limits.class_from_6m))
}

/// A bottle with a teat.
pub(super) fn bottle_used(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.bottle_used.limits;
    yes_no(now.visit.bottle, by_age(now, limits.class_under_6m, limits.class_from_6m))
}

/// Signs of infant botulism.
fn botulism(sign: DangerSign) -> bool {
    sign == DangerSign::Constipation || LIMP.contains(&sign)
}

/// Honey too early; or signs of infant botulism at such a visit or some weeks after one.
pub(super) fn honey(story: &Story<'_>, at: usize) -> Tested {
    let now = &story.visits[at];
    let limits = &now.protocol.rules.food_honey.limits;
    let too_early = |facts: &Facts<'_>| facts.months < limits.under_months && facts.offered.honey;
    // Most families never give it.
    let last_day = |counts: &dyn Fn(&Facts<'_>) -> bool| {
        now.honey_so_far.then(|| std::iter::once(now).chain(story.earlier(at)).find(|facts| counts(facts)).map(Facts::on)).flatten()
    };
    let last_too_early = last_day(&too_early);
    let signs = now.visit.danger_signs.as_ref().map(|signs| signs.iter().filter(|sign| botulism(**sign)));
    let watched = last_too_early.is_some_and(|day| days_between(day, now.on()) <= limits.watch_days);
    if let (Some(day), true, Some(seen)) = (last_too_early, watched, signs.clone())
        && seen.clone().next().is_some()
    {
        return Tested::holds(limits.class_signs, [(K::Signs, codes(seen)), (K::Date, Quantity::On(day))]);
    }
    if too_early(now) {
        return Tested::holds(limits.class, [(K::AgeMonths, Quantity::Months(now.months)), (K::Date, Quantity::On(now.on()))]);
    }
    let long_ago = last_day(&|facts| facts.offered.honey).is_none_or(|day| days_between(day, now.on()) >= limits.watch_days);
    match signs {
        Some(mut seen) if long_ago => Tested::Not(Clears::known(Some(seen.next().is_none()))),
        _ => Tested::Not(Clears::Unknown(Why::Missing)),
    }
}

fn food_codes<'a>(offers: impl Iterator<Item = &'a FoodOffer>) -> Quantity {
    Quantity::Codes(offers.map(|offer| offer.code.0.clone()).collect())
}

/// A food that can choke, in an unsafe form.
pub(super) fn choking(now: &Facts<'_>) -> Tested {
    if now.offered.unsafe_form {
        let can_choke = |offer: &FoodOffer| now.protocol.food(&offer.code).is_some_and(|food| food.choking);
        let given_unsafe = |offer: &&FoodOffer| offer.offers > 0 && offer.unsafe_form == Some(true) && can_choke(offer);
        let foods = food_codes(now.visit.foods.iter().filter(given_unsafe));
        return Tested::holds(now.protocol.rules.food_choking.limits.class, [(K::Foods, foods)]);
    }
    // A food that is only named, e.g. because its hold was lifted, says nothing of a safe form either.
    Tested::Not(Clears::if_met(!now.visit.foods.is_empty() && !now.offered.form_unclear, Why::Missing))
}

/// Tea or coffee; added salt or sugar.
pub(super) fn low_value(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.food_low_value.limits;
    let Some(given) = &now.visit.low_value else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    let counts = |what: &&LowValue| match what {
        LowValue::TeaCoffee => now.months < limits.tea_coffee_under_months,
        LowValue::Salt | LowValue::Sugar => now.months < limits.salt_sugar_under_months,
    };
    let found = given.iter().filter(counts);
    if found.clone().next().is_none() {
        return Tested::Not(Clears::Yes);
    }
    Tested::holds(limits.class, [(K::Signs, Quantity::Codes(found.map(|what| what.code().to_owned()).collect()))])
}

/// A food before the age that the local protocol sets for it.
pub(super) fn local_wait(now: &Facts<'_>) -> Tested {
    if now.offered.local_wait_months.is_some() {
        let too_early =
            |offer: &&FoodOffer| offer.offers > 0 && now.protocol.food(&offer.code).is_some_and(|food| food.flagged_at(now.months));
        let foods = food_codes(now.visit.foods.iter().filter(too_early));
        return Tested::holds(now.protocol.rules.food_local_wait.limits.class, [(K::Foods, foods)]);
    }
    // Clear at the age of every such food that was given too early so far.
    match now.local_wait_months {
        Some(months) => Tested::Not(Clears::if_met(now.months >= months, Why::NotYet)),
        None => Tested::Not(Clears::Unknown(Why::NotNow)),
    }
}

/// Refuses most food for some days. Its class depends on follow-ups on growth; the more urgent is set later.
pub(super) fn appetite_poor(now: &Facts<'_>) -> Tested {
    let limits = &now.protocol.rules.appetite_poor.limits;
    let Some(days) = now.visit.appetite_poor_days.map(u32::from) else { return Tested::Not(Clears::Unknown(Why::Missing)) };
    if days < limits.least_days {
        return Tested::Not(Clears::Yes);
    }
    let days = (K::Days, Quantity::Days(i32::try_from(days).unwrap_or(i32::MAX)));
    Tested::Holds { class: limits.class, evidence: Evidence::from([days]), by: 0 }
}

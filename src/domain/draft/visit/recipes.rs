//! Recipes of the programme that were eaten: naming one ticks its food groups, its foods and its iron. What the form says itself of a
//! food or of iron stays as it was said.

use crate::draft::Reader;
use crate::draft::visit::VisitFrame;
use crate::draft::visit::foods::plain_offer;
use crate::fault::Fault;
use crate::protocol::Eaten;
use crate::visit::FoodOffer;
use crate::visit::Visit;

/// The field in which recipes are ticked, by code.
pub const FIELD: &str = "recipes";

/// Notes the recipes named, and answers what all of them together hold.
pub(super) fn read(r: &mut Reader<'_>, frame: &VisitFrame<'_>, v: &mut Visit) -> Eaten {
    let mut all = Eaten::default();
    for code in r.all(FIELD).collect::<Vec<_>>() {
        let Some(eaten) = (frame.eaten)(code) else {
            r.fault(FIELD, Fault::UnknownChoice);
            continue;
        };
        v.recipes.insert(code.to_owned());
        all.groups.extend(eaten.groups);
        all.foods.extend(eaten.foods);
        all.added_iron |= eaten.added_iron;
    }
    all
}

/// Ticks groups and iron, and that the child ate.
pub(super) fn tick(eaten: &Eaten, v: &mut Visit) {
    if v.recipes.is_empty() {
        return;
    }
    v.solids_yesterday.get_or_insert(true);
    if !eaten.groups.is_empty() {
        v.groups.get_or_insert_default().extend(&eaten.groups);
    }
    if eaten.added_iron {
        v.iron_source.get_or_insert(true);
    }
}

/// Ticks foods: each was given once at least; how it was taken is not known.
pub(super) fn tick_foods(eaten: &Eaten, foods: &mut Vec<FoodOffer>) {
    for code in &eaten.foods {
        match foods.iter_mut().find(|told| told.code == *code) {
            Some(told) => told.offers = told.offers.max(1),
            None => foods.push(plain_offer(code.as_str())),
        }
    }
}

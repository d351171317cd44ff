//! Checks on a protocol that need more than one of its parts.

use std::ops::Range;

use domain::protocol::Foods;
use domain::protocol::Recipe;

use super::super::toml_reader::Faults;

/// Every part of a recipe is a food of the protocol whose energy is known.
pub fn recipes(recipes: &[(Recipe, Range<usize>)], foods: &Foods, f: &mut Faults<'_>) {
    for (recipe, span) in recipes {
        let key = format!("recipe {}.parts", recipe.code);
        for part in &recipe.parts {
            match foods.get(&part.food) {
                None => f.add(span, &key, format!("the food {:?} is not in this file; add a [[food]] with that code", part.food.as_str())),
                Some(food) if food.kcal_per_100g.is_none() => {
                    f.add(span, &key, format!("the food {:?} needs kcal_per_100g, because a recipe uses it", part.food.as_str()));
                }
                Some(_) => {}
            }
        }
    }
}

//! Checks on recipes that need the foods too: each part known, with its energy and the source of that, and a result that can be true.

use std::ops::Range;

use domain::protocol::Foods;
use domain::protocol::Recipe;

use super::super::faults::Faults;
use super::super::saying::say;
use super::foods::unknown_food;

/// Thinner than this nothing is that a recipe is needed for, kcal/g (our own choice; watery gruel has about 0.3: WHO 2009).
const LEAST_KCAL_PER_G: f64 = 0.2;
/// Richer than this no spoon food of grain, pulses and fruit is, kcal/g (our own choice; groundnut paste alone has about 6).
const MOST_KCAL_PER_G: f64 = 3.0;
/// A density that is given may differ so far from the one worked out, as a share of it (our own choice).
const GIVEN_APART: f64 = 0.3;

/// Every part of a recipe is a food of the protocol whose energy is known, and the energy density is one that food can have.
pub fn recipes(recipes: &[(Recipe, Range<usize>)], foods: &Foods, f: &mut Faults<'_>) {
    for (recipe, span) in recipes {
        parts(recipe, span, foods, f);
        if recipe.parts.is_empty() {
            continue;
        }
        let key = |name: &str| format!("recipe {}.{name}", recipe.code);
        let raw_g: u32 = recipe.parts.iter().map(|part| part.grams).fold(recipe.water_ml, u32::saturating_add);
        if recipe.cooked_g > raw_g {
            let what = say("{cooked} g cooked cannot come of {raw} g of parts and water; weigh the pot again");
            let what = what.with("cooked", recipe.cooked_g).with("raw", raw_g);
            f.add(span, &key("cooked_g"), what);
        }
        if let Some(given) = &recipe.given_energy {
            plausible(given.kcal_per_g, span, &key("kcal_per_g"), f);
        }
        let Some(worked_out) = recipe.kcal(foods).map(|kcal| kcal / f64::from(recipe.cooked_g.max(1))) else { continue };
        match &recipe.given_energy {
            None => plausible(worked_out, span, &key("cooked_g"), f),
            Some(given) if (given.kcal_per_g - worked_out).abs() > GIVEN_APART * worked_out => {
                let what = say("{given} kcal/g is given, but the parts make {made} kcal/g; look at the grams, cooked_g and kcal_per_g")
                    .with("given", format!("{:.2}", given.kcal_per_g))
                    .with("made", format!("{worked_out:.2}"));
                f.add(span, &key("kcal_per_g"), what);
            }
            Some(_) => {}
        }
    }
}

fn parts(recipe: &Recipe, span: &Range<usize>, foods: &Foods, f: &mut Faults<'_>) {
    let key = format!("recipe {}.parts", recipe.code);
    for part in &recipe.parts {
        let code = part.food.as_str();
        match foods.get(&part.food) {
            None => f.add(span, &key, unknown_food(code)),
            Some(food) if food.kcal_per_100g.is_none() => {
                f.add(span, &key, say("the food {food} needs kcal_per_100g, because a recipe uses it").with("food", format!("{code:?}")));
            }
            Some(food) if food.kcal_source.trim().is_empty() => {
                let what =
                    say("the food {food} needs kcal_source, because a recipe uses its energy: the composition table, or \"from memory\"");
                f.add(span, &key, what.with("food", format!("{code:?}")));
            }
            Some(_) => {}
        }
    }
}

fn plausible(kcal_per_g: f64, span: &Range<usize>, key: &str, f: &mut Faults<'_>) {
    if !(LEAST_KCAL_PER_G..=MOST_KCAL_PER_G).contains(&kcal_per_g) {
        let what = say(
            "makes {kcal} kcal/g, which cannot be right for a child's food ({least} to {most}); look at the grams, the weight when cooked \
             and the foods' kcal_per_100g",
        );
        let what = what.with("kcal", format!("{kcal_per_g:.2}")).with("least", LEAST_KCAL_PER_G).with("most", MOST_KCAL_PER_G);
        f.add(span, key, what);
    }
}

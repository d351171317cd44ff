//! What fits the child's stage, told after a visit at which nothing presses: texture, meals, amount, one new food.

use domain::food::FoodGroup;
use domain::food::Texture;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Icon;
use crate::view::result::ResultPage;
use crate::view::ribbon;

/// What fits the child's stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// Its name.
    pub stage: String,
    /// The texture to offer; none: milk only.
    pub texture: Option<Texture>,
    /// Meals a day, from and to.
    pub meals: (u8, u8),
    /// Snacks a day, from and to.
    pub snacks: (u8, u8),
    /// Amount a meal in words, and as a share of a cup for the drawing.
    pub amount: Option<(String, f64)>,
    /// Whether breast milk goes on.
    pub breastfed: Option<bool>,
    /// What the thickness of the food changes, in one sentence.
    pub thickness: Option<String>,
    /// The next food to try, by name.
    pub new_food: Option<(String, Option<FoodGroup>)>,
}

/// The part of the page.
pub(super) fn part(p: &ResultPage<'_>, advice: &Advice) -> Markup {
    let w = p.w;
    html! {
        h2 { (w.say_with("result-next-for", args!["name" => p.name, "age" => format::age(w, p.born, p.visit.on)])) }
        ul.tell {
            @if let Some(texture) = advice.texture {
                li { (ribbon::bowl_of(w, "bowl-texture", texture)) p { b { (w.say_with("result-texture", args!["texture" => codes::texture(w, texture)])) }
                    br; (codes::texture_test(w, texture)) @if let Some(thickness) = &advice.thickness { br; (thickness) } } }
                li { (ribbon::bowls(w, u32::from(advice.meals.0), u32::from(advice.meals.1.saturating_sub(advice.meals.0)))) p { b { (w.say_with("result-meals", args!["from" => advice.meals.0, "to" => advice.meals.1])) } " "
                    (w.say(if advice.breastfed == Some(false) { "result-and-milk" } else { "result-and-breast-milk" })) " "
                    @if advice.snacks.1 > 0 { (w.say("result-snack")) } } }
                @if let Some((words, share)) = &advice.amount {
                    li { (ribbon::bowl_share(w, "bowl-amount", *share)) p { b { (words) } br; (w.say("result-enough")) } }
                }
            } @else {
                li { (Icon::Milk.draw("food-i")) p { b { (w.say(if advice.breastfed == Some(false) { "result-milk-only-other" } else { "result-milk-only" })) }
                    br; (w.say("result-milk-only-why")) } }
            }
            @if let Some((food, group)) = &advice.new_food {
                li { (group.map_or(Icon::BowlHalf, Icon::of_group).draw("food-i")) p { b { (w.say_with("result-new-food", args!["food" => food])) } br; (w.say("result-new-food-how")) } }
            }
        }
    }
}

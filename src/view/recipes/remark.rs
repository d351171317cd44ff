//! Each remark on a recipe as one plain sentence.

use chrono::NaiveDate;
use domain::feeding::recipe_fit::Remark;
use domain::food::FoodCode;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::recipes::allergens;

/// The sentence.
pub fn text(w: &Words, remark: &Remark, day: NaiveDate, food: &dyn Fn(&str) -> String) -> String {
    let name = |code: &FoodCode| food(code.as_str());
    let near = |on: NaiveDate| format::day_near(w, on, day);
    match remark {
        Remark::OnHold { food, held, since, worst } if food == held => {
            let args = args!["food" => name(food), "since" => near(*since), "worst" => codes::reaction_level(w, *worst)];
            w.say_with("recipes-remark-on-hold", args)
        }
        Remark::OnHold { food, held, since, worst } => {
            let args =
                args!["food" => name(food), "held" => name(held), "since" => near(*since), "worst" => codes::reaction_level(w, *worst)];
            w.say_with("recipes-remark-on-hold-like", args)
        }
        Remark::MilkOnly => w.say("recipes-remark-milk-only"),
        Remark::TooYoung { food, from } => w.say_with("recipes-remark-too-young", args!["food" => name(food), "day" => near(*from)]),
        Remark::Waits { food, from } => w.say_with("recipes-remark-waits", args!["food" => name(food), "day" => near(*from)]),
        Remark::KnownAllergy { allergens: all } => w.say_with("recipes-remark-allergy", args!["allergens" => allergens(w, all)]),
        Remark::Eczema { allergens: all } => w.say_with("recipes-remark-eczema", args!["allergens" => allergens(w, all)]),
        Remark::TextureAhead { texture, swallowing } => {
            let id = if *swallowing { "recipes-remark-swallowing" } else { "recipes-remark-texture" };
            w.say_with(id, args!["texture" => codes::texture(w, *texture)])
        }
        Remark::NewTogether { foods } => {
            let names: Vec<String> = foods.iter().map(name).collect();
            w.say_with("recipes-remark-new", args!["foods" => format::list(w, &names)])
        }
        Remark::NewAllergen { allergens: all, allergy_not_asked } => {
            let first = w.say_with("recipes-remark-first-taste", args!["allergens" => allergens(w, all)]);
            if *allergy_not_asked { format!("{} {first}", w.say("recipes-remark-allergy-not-asked")) } else { first }
        }
        Remark::Smoother { hoped } => w.say_with("recipes-remark-smoother", args!["texture" => codes::texture(w, *hoped)]),
    }
}

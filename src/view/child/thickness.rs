//! Thickness counts: how many meals a child needs as thin as now and as thick as hoped for, with the arithmetic. It reckons nothing.

use chrono::NaiveDate;
use domain::feeding::thickness::MealsNeeded;
use domain::feeding::thickness::NotEstimated;
use domain::feeding::thickness::ThickerHelps;
use domain::food::Texture;
use domain::units::Weight;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::parts::details;

/// Meals by thickness.
#[derive(Debug, Clone)]
pub struct Thickness<'a> {
    /// Meals at this stage with watery, smooth and mashed food, or why there is no estimate.
    pub now: Result<[MealsNeeded; 3], NotEstimated>,
    /// What to say of it.
    pub helps: Option<ThickerHelps>,
    /// The next stage, with the same at today's weight.
    pub next: Option<(&'a str, [MealsNeeded; 3])>,
    /// The day of the weight.
    pub weighed_on: Option<NaiveDate>,
    /// What the stomach holds, g per kg.
    pub stomach_g_per_kg: f64,
    /// Where the stage's figures come from.
    pub stage_source: &'a str,
    /// Where the figures of energy and stomach come from.
    pub energy_source: &'a str,
    /// The language of the sources.
    pub source_lang: &'a str,
}

/// What to say to the family, in one sentence.
#[must_use]
pub fn sentence(w: &Words, helps: &ThickerHelps, breastfed: bool) -> String {
    let (id, many, few, usual, hoped) = match *helps {
        ThickerHelps::ThanNow { usual, meals_usual, hoped, meals_hoped } => {
            let id = if usual == Texture::ALL[0] { "thickness-than-now" } else { "thickness-than-now-thicker" };
            (id, meals_usual, meals_hoped, usual, hoped)
        }
        ThickerHelps::ThanWatery { meals_watery, hoped, meals_hoped } => {
            ("thickness-than-watery", meals_watery, meals_hoped, Texture::ALL[0], hoped)
        }
    };
    w.say_with(
        id,
        args![
            "many" => meals(w, many, breastfed), "few" => meals(w, few, breastfed),
            "usual" => codes::texture(w, usual), "hoped" => codes::texture(w, hoped)
        ],
    )
}

/// `3 meals`; a child without breast milk has its milk feeds counted among them.
#[must_use]
pub fn meals(w: &Words, count: u8, breastfed: bool) -> String {
    w.say_with(if breastfed { "thickness-meals" } else { "thickness-feeds" }, args!["count" => count])
}

/// The part of the child's page; nothing while milk is all.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    let Some(thickness) = page.thickness.as_ref().filter(|t| t.now != Err(NotEstimated::MilkOnly)) else { return Markup::default() };
    html! {
        h3 id="thickness" { (w.say("thickness-heading")) }
        @match &thickness.now {
            Ok(meals) => { (estimate(w, page, thickness, meals)) }
            Err(why) => { p { (codes::not_estimated(w, *why)) } }
        }
        @if let Some((code, meals)) = &thickness.next {
            p { (w.say_with("thickness-next", args![
                "stage" => codes::stage(w, code), "watery" => meals[0].meals, "smooth" => meals[1].meals, "mashed" => meals[2].meals
            ])) }
        }
        p.quiet { (w.say("thickness-caution")) }
    }
}

fn estimate(w: &Words, page: &ChildPage<'_>, thickness: &Thickness<'_>, meals: &[MealsNeeded; 3]) -> Markup {
    html! {
        @if let Some(helps) = &thickness.helps { p { b { (sentence(w, helps, meals[0].breastfed)) } } }
        ul.rows {
            @for (texture, needed) in Texture::ALL.into_iter().zip(meals) {
                li { div.split { span { (texture_name(w, texture)) } span.state { (w.say_with("thickness-count", args!["meals" => self::meals(w, needed.meals, needed.breastfed)])) } } }
            }
        }
        (details(&w.say("thickness-how"), false, &arithmetic(w, page, thickness, meals)))
    }
}

/// The third step stands for every thicker one too.
fn texture_name(w: &Words, texture: Texture) -> String {
    if texture.level() == 2 { w.say("thickness-mashed-or-richer") } else { codes::texture(w, texture) }
}

/// Each figure on the way, line by line, with its source.
fn arithmetic(w: &Words, page: &ChildPage<'_>, thickness: &Thickness<'_>, meals: &[MealsNeeded; 3]) -> Markup {
    let any = &meals[0];
    let source = |text: &str| html! { " " small { (w.say("thickness-source")) " " span lang=(thickness.source_lang) { (text) } } };
    html! {
        ol {
            li { (energy_line(w, any)) (source(thickness.stage_source)) }
            li { (meal_line(w, page, thickness, any.weight, any.meal_g)) (source(thickness.energy_source)) }
            @for (texture, needed) in Texture::ALL.into_iter().zip(meals) {
                li { (texture_line(w, texture_name(w, texture), needed)) }
            }
            li { (w.say_with("thickness-least", args!["count" => any.least])) (source(thickness.stage_source)) }
        }
    }
}

fn energy_line(w: &Words, any: &MealsNeeded) -> String {
    let id = if any.breastfed { "thickness-energy-breastfed" } else { "thickness-energy-all" };
    w.say_with(id, args!["kcal" => any.kcal_a_day.to_string(), "stage" => codes::stage(w, any.stage.code())])
}

fn meal_line(w: &Words, page: &ChildPage<'_>, thickness: &Thickness<'_>, weight: Weight, meal_g: f64) -> String {
    let line = w.say_with(
        "thickness-full-meal",
        args![
            "weight" => format::kg(w, i64::from(weight.grams())),
            "per" => format::number(w, thickness.stomach_g_per_kg, 0),
            "g" => format::number(w, meal_g, 0)
        ],
    );
    match thickness.weighed_on {
        Some(on) => format!("{line} {}", w.say_with("thickness-weighed", args!["day" => format::day_near(w, on, page.day)])),
        None => line,
    }
}

/// The line of one food: its energy in a full meal, and the meals that follow.
#[must_use]
pub fn texture_line(w: &Words, food: String, needed: &MealsNeeded) -> String {
    let line = w.say_with(
        "thickness-line",
        args![
            "food" => food,
            "g" => format::number(w, needed.meal_g, 0),
            "density" => format::number(w, needed.kcal_per_g, 2),
            "meal" => format::number(w, needed.meal_kcal, 0),
            "kcal" => needed.kcal_a_day.to_string(),
            "exact" => format::number(w, needed.exact, 2),
            "up" => needed.rounded_up()
        ],
    );
    if needed.raised() { format!("{line} {}", w.say_with("thickness-raised", args!["count" => needed.least])) } else { line }
}

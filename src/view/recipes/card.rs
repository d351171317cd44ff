//! A recipe card: large type, short numbered sentences, no table, so that it can be printed and read aloud.

use domain::feeding::recipe_fit::Fit;
use domain::feeding::recipe_fit::Remark;
use domain::feeding::thickness::MealsNeeded;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::thickness::meals;
use crate::view::child::thickness::texture_line;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::back;
use crate::view::parts::details;
use crate::view::parts::label;
use crate::view::parts::note;
use crate::view::recipes::ForChild;
use crate::view::recipes::Line;
use crate::view::recipes::Said;
use crate::view::recipes::allergens;
use crate::view::recipes::remark;
use crate::view::recipes::textures;

/// A cup, ml.
const CUP_ML: f64 = 250.0;

/// A part of the recipe.
#[derive(Debug, Clone)]
pub struct Part<'a> {
    /// The measure in a household.
    pub measure: Said<'a>,
    /// Grams.
    pub grams: u32,
    /// The food.
    pub food: Said<'a>,
    /// Its safe form, if it needs one.
    pub safe_form: Option<Said<'a>>,
    /// Energy in kcal per 100 g, with its source.
    pub energy: Option<(u32, Said<'a>)>,
}

/// A recipe card.
pub struct Card<'a> {
    /// The recipe as a list shows it.
    pub line: Line<'a>,
    /// For a child, or for everybody.
    pub child: Option<ForChild<'a>>,
    /// The day shown.
    pub day: chrono::NaiveDate,
    /// What goes in.
    pub parts: Vec<Part<'a>>,
    /// Water, ml.
    pub water_ml: u32,
    /// Weight when cooked, g.
    pub cooked_g: u32,
    /// Energy of the whole, kcal, if worked out from the parts.
    pub kcal: Option<f64>,
    /// The source of an energy density that was given.
    pub given: Option<Said<'a>>,
    /// The steps.
    pub steps: Vec<Said<'a>>,
    /// What to beware of.
    pub warnings: Vec<Said<'a>>,
    /// Days that its flour keeps, at room temperature and cold.
    pub flour_days: Option<(u32, u32)>,
    /// Hours that it keeps when cooked, at room temperature and cold.
    pub cooked_hours: (u32, u32),
    /// Holds iron that is well absorbed.
    pub iron: bool,
    /// Least energy density of a meal, kcal/g.
    pub least_density: f64,
    /// Meals a day with this recipe for the child.
    pub needed: Option<MealsNeeded>,
    /// Where the recipe comes from.
    pub source: Said<'a>,
    /// The name of a food by its code.
    pub food: &'a dyn Fn(&str) -> String,
}

/// The page.
#[must_use]
pub fn card(w: &Words, card: &Card<'_>) -> Markup {
    let line = &card.line;
    html! {
        @match &card.child {
            Some(child) => { (back(w, &format!("/children/{}/recipes{}", child.code, child.query), &w.say("recipes-title"))) }
            None => { (back(w, "/recipes", &w.say("recipes-title"))) }
        }
        article.recipe {
            (remarks(w, card))
            h1 { (line.name) }
            p.lede {
                (w.say_with("recipes-card-from", args!["count" => line.from_months])) " "
                (w.say_with("recipes-card-texture", args!["texture" => textures(w, line.textures)]))
            }
            @if line.too_thin { (too_thin(w, card)) }
            @if let Some(needed) = &card.needed { p { b { (w.say_with("recipes-card-meals", args!["meals" => meals(w, needed.meals, needed.breastfed)])) } " " (w.say("recipes-card-meals-more")) } }
            h2 { (w.say("recipes-card-parts")) }
            ul.rows { @for part in &card.parts { li { (part.measure) " (" (format::g(w, i64::from(part.grams))) "): " b { (part.food) } } }
                @if card.water_ml > 0 { li { (water(w, card.water_ml)) } } }
            h2 { (w.say("recipes-card-steps")) }
            ol.steps {
                li { (w.say("recipes-card-wash")) }
                @for step in &card.steps { li { (step) } }
            }
            p { (w.say_with("recipes-card-makes", args!["g" => format::g(w, i64::from(card.cooked_g))])) }
            (beware(w, card))
            (keeping(w, card))
            (counts(w, card))
            p.quiet { (w.say("recipes-caution")) }
        }
        p.noprint { (w.say("recipes-card-print")) }
        div.noprint { (details(&w.say("recipes-card-energy"), false, &energy(w, card))) }
    }
}

/// What stands first on a child's card: a hold or an allergy framed, the rest plainly.
fn remarks(w: &Words, card: &Card<'_>) -> Markup {
    let said = |fits: &dyn Fn(Fit) -> bool| -> Vec<String> {
        card.line.remarks.iter().filter(|r| fits(r.fit())).map(|r| remark::text(w, r, card.day, card.food)).collect()
    };
    let (no, before, good) = (said(&|f| f == Fit::No), said(&|f| f == Fit::Later || f == Fit::AskFirst), said(&|f| f == Fit::Suits));
    html! {
        @if !no.is_empty() { (note(NoteWeight::Stop, Icon::of_food_state("on_hold"), &html! { p { b { (w.say("recipes-card-no")) } } @for text in &no { p { (text) } } })) }
        @if card.child.as_ref().is_some_and(|child| child.known_allergy) { (note(NoteWeight::Stop, Icon::Info, &html! { p { b { (w.say("recipes-known-allergy")) } } p { (w.say("recipes-known-allergy-do")) } })) }
        @if !before.is_empty() { (note(NoteWeight::Look, Icon::Info, &html! { @for text in &before { p { (text) } } })) }
        @if !good.is_empty() { (note(NoteWeight::Plain, Icon::Info, &html! { @for text in &good { p { (text) } } })) }
    }
}

fn too_thin(w: &Words, card: &Card<'_>) -> Markup {
    let density = card.line.kcal_per_g.unwrap_or(0.0);
    let args = args!["density" => format::number(w, density, 2), "least" => format::number(w, card.least_density, 1)];
    note(NoteWeight::Look, Icon::Info, &html! { p { (w.say_with("recipes-card-too-thin", args)) } })
}

fn water(w: &Words, ml: u32) -> String {
    let quarters = (f64::from(ml) / CUP_ML * 4.0).round() as u32;
    let (whole, part) = (quarters / 4, ["", "¼", "½", "¾"][(quarters % 4) as usize]);
    let cups = if whole == 0 { part.to_owned() } else { format!("{whole}{part}") };
    // The plural is that of the whole cups begun: 1½ cups, ¾ cup.
    w.say_with("recipes-card-water", args!["count" => quarters.div_ceil(4).max(1), "cups" => cups, "ml" => ml.to_string()])
}

fn beware(w: &Words, card: &Card<'_>) -> Markup {
    html! {
        h2 { (w.say("recipes-card-care")) }
        ul {
            @for warning in &card.warnings { li { (warning) } }
            @for part in &card.parts { @if let Some(form) = part.safe_form { li { (part.food) (label(w, "")) " " (form) } } }
            @if !card.line.allergens.is_empty() { li {
                (w.say_with("recipes-card-allergens", args!["allergens" => allergens(w, &card.line.allergens)])) " "
                @if !card.line.remarks.iter().any(Remark::asks_about_allergy) { (w.say("recipes-card-first-taste")) " " }
                (w.say("recipes-card-reacted"))
            } }
            li { (w.say("common-caution-6")) }
        }
    }
}

fn keeping(w: &Words, card: &Card<'_>) -> Markup {
    let (room, cold) = card.cooked_hours;
    html! {
        h2 { (w.say("recipes-card-keeps")) }
        ul {
            li { (w.say_with("recipes-card-keeps-room", args!["count" => room])) }
            @if cold > 0 { li { (w.say_with("recipes-card-keeps-cold", args!["count" => cold])) " " (w.say("recipes-card-reheat")) } }
            li { (w.say("recipes-card-bowl")) }
            @if let Some((room, cold)) = card.flour_days { li { (w.say_with("recipes-card-keeps-flour", args!["room" => room, "cold" => cold])) } }
        }
    }
}

fn counts(w: &Words, card: &Card<'_>) -> Markup {
    let groups: Vec<String> = card.line.groups.iter().map(|group| codes::food_group(w, *group)).collect();
    html! {
        @if !groups.is_empty() {
            p { (w.say_with("recipes-card-groups", args!["groups" => groups.join(" · ")])) @if card.iron { " " (w.say("recipes-card-iron")) } }
        }
    }
}

/// How the energy comes about, line by line, with the source of each figure.
fn energy(w: &Words, card: &Card<'_>) -> Markup {
    let source = |said: Said<'_>| html! { " " small { (w.say("thickness-source")) " " (said) } };
    html! {
        ol {
            @for part in &card.parts { @if let Some((kcal, from)) = part.energy {
                li { (part.food) (label(w, "")) " " (w.say_with("recipes-energy-part", args![
                    "g" => part.grams, "per" => kcal, "kcal" => format::number(w, f64::from(part.grams) * f64::from(kcal) / 100.0, 0)
                ])) (source(from)) }
            } }
            @if let Some(kcal) = card.kcal { li { (w.say_with("recipes-energy-sum", args![
                "kcal" => format::number(w, kcal, 0), "g" => card.cooked_g,
                "density" => format::number(w, kcal / f64::from(card.cooked_g.max(1)), 2)
            ])) (source(card.source)) } }
            @if let (Some(given), Some(density)) = (card.given, card.line.kcal_per_g) {
                li { (w.say_with("recipes-energy-given", args!["density" => format::number(w, density, 2)])) (source(given)) }
            }
            @if let Some(needed) = &card.needed { li { (texture_line(w, w.say("recipes-energy-this"), needed)) } }
        }
        (ribbon_of(w, card))
    }
}

fn ribbon_of(w: &Words, card: &Card<'_>) -> Markup {
    html! { @if let Some(texture) = card.line.textures.first() { p { (codes::texture(w, *texture)) ": " (codes::texture_test(w, *texture)) } } }
}

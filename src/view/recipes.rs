//! Recipes: a list for everybody or for one child, and a card to print or to read aloud. Knows what was judged, judges nothing.

mod card;
mod remark;

use domain::feeding::recipe_fit::Fit;
use domain::feeding::recipe_fit::Remark;
use domain::food::Allergen;
use domain::food::FoodGroup;
use domain::food::Texture;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::back;
use crate::view::parts::note;

pub use crate::view::recipes::card::Card;
pub use crate::view::recipes::card::Part;
pub use crate::view::recipes::card::card;

/// Words from the protocol file, in the language they are written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Said<'a> {
    /// The words.
    pub words: &'a str,
    /// Their language.
    pub lang: &'a str,
}

impl Render for Said<'_> {
    fn render(&self) -> Markup {
        html! { span lang=(self.lang) { (self.words) } }
    }
}

/// One recipe of a list.
#[derive(Debug, Clone)]
pub struct Line<'a> {
    /// Its page.
    pub path: String,
    /// Its name.
    pub name: Said<'a>,
    /// Textures it can have.
    pub textures: &'a [Texture],
    /// Energy density, kcal/g.
    pub kcal_per_g: Option<f64>,
    /// Below the least density of the protocol: no meal by itself.
    pub too_thin: bool,
    /// Food groups in it.
    pub groups: Vec<FoodGroup>,
    /// Common allergens in it.
    pub allergens: Vec<Allergen>,
    /// From this age in completed months.
    pub from_months: u32,
    /// What to know before this child gets it, gravest first; none on the list for everybody.
    pub remarks: Vec<Remark>,
    /// How it stands with the child.
    pub fit: Fit,
}

/// The child a list or a card is for.
#[derive(Debug, Clone)]
pub struct ForChild<'a> {
    /// Code in links.
    pub code: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// Milk is all that is needed.
    pub milk_only: bool,
    /// A follow-up of class now or today is open.
    pub urgent: bool,
    /// A clinician has named a food allergy.
    pub known_allergy: bool,
    /// Foods on hold, with the day since.
    pub on_hold: Vec<(String, chrono::NaiveDate)>,
    /// What links carry on: the past day shown.
    pub query: &'a str,
}

/// A list of recipes.
pub struct List<'a> {
    /// For a child, or for everybody.
    pub child: Option<ForChild<'a>>,
    /// The recipes, best first.
    pub lines: Vec<Line<'a>>,
    /// The day shown.
    pub day: chrono::NaiveDate,
    /// The name of a food by its code.
    pub food: &'a dyn Fn(&str) -> String,
}

/// The title of a list.
#[must_use]
pub fn title(w: &Words, list: &List<'_>) -> String {
    let Some(child) = &list.child else { return w.say("recipes-title") };
    if child.milk_only {
        return w.say_with("recipes-milk-only", args!["name" => child.called]);
    }
    let suit = list.lines.iter().filter(|line| line.fit == Fit::Suits && !line.too_thin).count();
    w.say_with("recipes-suit", args!["count" => suit, "name" => child.called])
}

/// The parts of a child's list: how its recipes fit, whether they are too thin for a meal, and what stands above them.
const PARTS: [(Fit, Option<bool>, Option<&str>); 5] = [
    (Fit::Suits, Some(false), None),
    (Fit::Suits, Some(true), Some("recipes-taste")),
    (Fit::AskFirst, None, Some("recipes-ask-first")),
    (Fit::Later, None, Some("recipes-later")),
    (Fit::No, None, Some("recipes-no")),
];

/// The list.
#[must_use]
pub fn list(w: &Words, list: &List<'_>) -> Markup {
    html! {
        @match &list.child {
            Some(child) => { (back(w, &format!("/children/{}{}", child.code, child.query), child.called)) }
            None => { (back(w, "/", &w.say("recipes-start"))) }
        }
        @if let Some(child) = &list.child { (first(w, child, list.day)) }
        h1 { (title(w, list)) }
        @if list.lines.is_empty() { p { (w.say("recipes-none")) } }
        @match &list.child {
            None => { p.lede { (w.say("recipes-lede")) } (rows(w, list, &list.lines.iter().collect::<Vec<_>>())) }
            Some(child) if child.milk_only => {
                p.lede { (w.say("recipes-remark-milk-only")) }
                p { a.link href="/recipes" { (w.say("recipes-all-link")) } }
            }
            Some(_) => {
                p.lede { (w.say("recipes-open-one")) }
                @for (fit, thin, heading) in PARTS {
                    @let lines: Vec<&Line<'_>> = list.lines.iter().filter(|line| line.fit == fit && thin.is_none_or(|thin| line.too_thin == thin)).collect();
                    @if !lines.is_empty() {
                        @if let Some(heading) = heading { h2 { (w.say(heading)) } }
                        (rows(w, list, &lines))
                    }
                }
                p { a.link href="/recipes" { (w.say("recipes-all-link")) } }
            }
        }
        p.quiet { (w.say("recipes-caution")) " " (w.say("result-sources-differ")) }
    }
}

/// What is said before any recipe of a child: what is urgent, on hold, or a known allergy.
fn first(w: &Words, child: &ForChild<'_>, day: chrono::NaiveDate) -> Markup {
    html! {
        @if child.urgent {
            (note(NoteWeight::Stop, Icon::Today, &html! { p { (w.say_with("recipes-urgent", args!["name" => child.called])) }
                a href={ "/children/" (child.code) (child.query) } { (w.say("recipes-urgent-link")) } }))
        }
        @if !child.on_hold.is_empty() {
            (note(NoteWeight::Stop, Icon::of_food_state("on_hold"), &html! {
                @for (food, since) in &child.on_hold { p { b { (w.say_with("recipes-on-hold", args!["food" => food, "since" => format::day_near(w, *since, day)])) } } }
                p { (w.say("child-hold-rule")) }
            }))
        }
        @if child.known_allergy { (note(NoteWeight::Stop, Icon::Info, &html! { p { b { (w.say("recipes-known-allergy")) } } p { (w.say("recipes-known-allergy-do")) } })) }
    }
}

fn rows(w: &Words, list: &List<'_>, lines: &[&Line<'_>]) -> Markup {
    html! {
        ul.rows.found { @for line in lines { li {
            p { a.home href=(line.path) { (line.name) } }
            @for remark in &line.remarks { p { (remark::text(w, remark, list.day, list.food)) } }
            p.quiet { (facts(w, line).join(" · ")) }
        } } }
    }
}

/// Age, textures, energy, groups, allergens.
fn facts(w: &Words, line: &Line<'_>) -> Vec<String> {
    let mut facts = vec![w.say_with("recipes-from", args!["count" => line.from_months])];
    facts.push(textures(w, line.textures));
    facts.extend(line.kcal_per_g.map(|density| {
        let id = if line.too_thin { "recipes-density-thin" } else { "recipes-density" };
        w.say_with(id, args!["density" => format::number(w, density, 2)])
    }));
    facts.extend(line.groups.iter().map(|group| codes::food_group(w, *group)));
    if !line.allergens.is_empty() {
        facts.push(w.say_with("recipes-holds", args!["allergens" => allergens(w, &line.allergens)]));
    }
    facts
}

/// `smooth and thick, or mashed, soft lumps`
fn textures(w: &Words, textures: &[Texture]) -> String {
    match textures {
        [] => String::new(),
        [one] => codes::texture(w, *one),
        [first, .., last] => w.say_with("recipes-textures", args!["from" => codes::texture(w, *first), "to" => codes::texture(w, *last)]),
    }
}

/// `fish and groundnut`
fn allergens(w: &Words, allergens: &[Allergen]) -> String {
    format::list(w, &allergens.iter().map(|allergen| codes::allergen(w, *allergen)).collect::<Vec<_>>())
}

#[cfg(test)]
mod tests;

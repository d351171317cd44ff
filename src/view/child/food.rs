//! Food on a child's page: the spoon, what comes next, and each food with its state.

use chrono::NaiveDate;
use domain::food::Texture;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::child::thickness;
use crate::view::parts::Icon;
use crate::view::parts::details;
use crate::view::parts::name;
use crate::view::ribbon;
use crate::view::ribbon::Ribbon;

/// Offers taken willingly after which a food counts as taken (our own choice).
const TAKEN_OF: u32 = 3;

/// Where the child stands with food.
#[derive(Debug, Clone)]
pub struct StageNow<'a> {
    /// Code of the stage.
    pub code: &'a str,
    /// Texture hoped for, from and to; none while milk is all.
    pub texture: Option<(Texture, Texture)>,
    /// Usual texture as told at the last visit that asked.
    pub usual: Option<Texture>,
    /// Meals a day, from and to, for a child that is breastfed or not.
    pub meals: (u8, u8),
    /// Whether the child is breastfed; `None` = not known, meals are those of a breastfed child.
    pub breastfed: Option<bool>,
    /// Snacks a day.
    pub snacks: (u8, u8),
    /// Amount a meal in cups of 250 ml.
    pub cups: Option<(f64, f64)>,
    /// Amount a meal in tablespoons.
    pub tablespoons: Option<(u8, u8)>,
    /// The months of each texture on the spoon.
    pub months: [String; 5],
    /// The stage after this one.
    pub next: Option<NextStage<'a>>,
}

/// What comes next.
#[derive(Debug, Clone, Copy)]
pub struct NextStage<'a> {
    /// Code of the stage.
    pub code: &'a str,
    /// Its first day.
    pub from: NaiveDate,
}

/// Where a child stands with one food.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FoodStanding {
    /// Taken willingly so many times.
    Trying {
        /// Times taken.
        taken: u32,
    },
    /// Taken.
    Accepted,
    /// Refused: offer again from a day, or let it rest.
    Refused {
        /// The day.
        retry_on: NaiveDate,
        /// Refused so often that others may be offered instead.
        rest: bool,
    },
    /// On hold after a reaction.
    OnHold {
        /// Since when.
        since: NaiveDate,
        /// Code of the worst reaction: `severe`, `spreading`, `mild`.
        worst: &'static str,
    },
    /// Allowed again by a clinician or a supervisor.
    Cleared {
        /// The day.
        on: NaiveDate,
    },
}

/// A food with its state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodLine {
    /// Its name.
    pub name: String,
    /// Where it stands.
    pub standing: FoodStanding,
}

/// The part of the page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        @if let Some(stage) = &page.stage { (stage_part(w, page, stage)) (thickness::part(w, page)) @if stage.texture.is_some() { (recipes_link(w, page)) } }
        @if !page.foods.is_empty() || !page.not_tried.is_empty() {
            h2 { (w.say("child-foods")) }
            ul.rows.foods { @for food in &page.foods { li { (line(w, page, food)) } } }
            @if page.foods.iter().any(|food| matches!(food.standing, FoodStanding::OnHold { .. })) { p.quiet { (w.say("child-hold-rule")) } }
            @if !page.not_tried.is_empty() {
                (details(&w.say_with("child-not-tried", args!["count" => page.not_tried.len()]), false, &html! {
                    ul.rows.foods { @for food in &page.not_tried { li { div.split { (Icon::BowlNotYet.draw("u")) span { (name(food)) } } } } }
                }))
            }
        }
    }
}

fn recipes_link(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! { p { a.link href={ "/children/" (page.who.code) "/recipes" (page.query) } { (w.say("recipes-for-child-link")) } } }
}

fn stage_part(w: &Words, page: &ChildPage<'_>, stage: &StageNow<'_>) -> Markup {
    let said = codes::stage(w, stage.code);
    let spoon = Ribbon {
        w,
        id: "spoon",
        today: Some(stage.texture.map_or(Texture::ALL[0], |(from, _)| from)),
        months: stage.months.clone(),
        stage: said.clone(),
    };
    html! {
        h2 { (w.say_with("child-stage", args!["stage" => said])) }
        (spoon)
        @if let Some(usual) = stage.usual { p { (w.say_with("child-usual", args!["texture" => codes::texture(w, usual)])) } }
        @match stage.texture {
            None => { p { (w.say("child-milk-only")) } }
            Some(texture) => { (hoped_for(w, stage, texture)) }
        }
        @if let Some(next) = &stage.next {
            p { (w.say_with("child-next-stage", args!["day" => format::day_near(w, next.from, page.day), "stage" => codes::stage(w, next.code)])) }
        }
    }
}

/// What to feed now, in a list with pictures; nothing while milk is all.
pub(in crate::view) fn told(w: &Words, stage: &StageNow<'_>) -> Markup {
    stage.texture.map_or_else(Markup::default, |texture| hoped_for(w, stage, texture))
}

fn hoped_for(w: &Words, stage: &StageNow<'_>, (from, to): (Texture, Texture)) -> Markup {
    let textures = if from == to {
        codes::texture(w, from)
    } else {
        w.say_with("child-texture-to", args!["from" => codes::texture(w, from), "to" => codes::texture(w, to)])
    };
    let (least, most) = stage.meals;
    let meals = w.say_with(
        if stage.breastfed == Some(false) { "child-meals-not-breastfed" } else { "child-meals" },
        args!["range" => range(u32::from(least), u32::from(most)), "count" => most],
    );
    let textures = w.say_with("child-texture", args!["texture" => textures, "test" => codes::texture_test(w, from)]);
    html! {
        ul.tell {
            li { (ribbon::bowl_of(w, "bowl-texture", from)) p { (textures) } }
            li { (ribbon::bowls(w, u32::from(least), u32::from(most.saturating_sub(least)))) p { (meals)
                @if stage.snacks.1 > 0 { " " (w.say_with("child-snacks", args!["range" => range(u32::from(stage.snacks.0), u32::from(stage.snacks.1)), "count" => stage.snacks.1])) } } }
            @if let Some((_, most)) = stage.cups {
                li { (ribbon::bowl_share(w, "bowl-amount", most)) p { (amount(w, stage)) } }
            } @else if stage.tablespoons.is_some() {
                li { (ribbon::bowl_share(w, "bowl-amount", 0.2)) p { (amount(w, stage)) } }
            }
        }
    }
}

fn amount(w: &Words, stage: &StageNow<'_>) -> String {
    let spoons =
        stage.tablespoons.map(|(a, b)| w.say_with("child-spoons", args!["range" => range(u32::from(a), u32::from(b)), "count" => b]));
    let cups = stage.cups.map(|(a, b)| {
        let range = if (a - b).abs() < f64::EPSILON { cup(w, a) } else { format!("{}–{}", cup(w, a), cup(w, b)) };
        w.say_with("child-cups", args!["range" => range])
    });
    match (spoons, cups) {
        (Some(spoons), Some(cups)) => w.say_with("child-amount-rising", args!["from" => spoons, "to" => cups]),
        (Some(one), None) | (None, Some(one)) => w.say_with("child-amount", args!["amount" => one]),
        (None, None) => String::new(),
    }
}

/// A share of a cup as people say it.
fn cup(w: &Words, share: f64) -> String {
    let near = |to: f64| (share - to).abs() < 0.01;
    [(0.25, "¼"), (0.5, "½"), (0.75, "¾"), (1.0, "1")]
        .into_iter()
        .find(|(value, _)| near(*value))
        .map_or_else(|| format::number(w, share, 1), |(_, sign)| sign.to_owned())
}

fn range(from: u32, to: u32) -> String {
    if from == to { to.to_string() } else { format!("{from}–{to}") }
}

fn line(w: &Words, page: &ChildPage<'_>, food: &FoodLine) -> Markup {
    let near = |on: NaiveDate| format::day_near(w, on, page.day);
    let (code, said) = match food.standing {
        FoodStanding::Trying { taken } => ("trying", w.say_with("child-food-trying", args!["taken" => taken, "of" => TAKEN_OF])),
        FoodStanding::Accepted => ("accepted", codes::food_state(w, "accepted")),
        FoodStanding::Refused { rest: true, .. } => ("refused", w.say("child-food-rest")),
        FoodStanding::Refused { retry_on, .. } if retry_on <= page.day => ("refused", w.say("child-food-offer-again")),
        FoodStanding::Refused { retry_on, .. } => ("refused", w.say_with("child-food-refused", args!["day" => near(retry_on)])),
        FoodStanding::OnHold { since, worst } => {
            let worst = w.say(match worst {
                "severe" => "child-hold-severe",
                "spreading" => "child-hold-spreading",
                _ => "child-hold-mild",
            });
            ("on_hold", w.say_with("child-food-hold", args!["since" => near(since), "worst" => worst]))
        }
        FoodStanding::Cleared { on } => ("not_yet", w.say_with("child-food-cleared", args!["day" => near(on)])),
    };
    html! { div.split { (Icon::of_food_state(code).draw("u")) span { (name(&food.name)) } span.state { (said) } } }
}

//! Steps agreed with the family, each with what became of it. What nobody asked stays unknown, and says so.

use chrono::NaiveDate;
use domain::counsel::StepAnswer;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::parts::Icon;
use crate::view::parts::details;
use crate::view::parts::marked;
use crate::view::parts::name;

/// Steps shown at once; older ones are one tap away.
const AT_ONCE: usize = 3;

/// A step that was agreed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AgreedStep {
    /// In words.
    pub words: String,
    /// When it was agreed.
    pub agreed_on: NaiveDate,
    /// What became of it; `None`: not known.
    pub answer: Option<StepAnswer>,
    /// What was in the way.
    pub in_the_way: Option<String>,
    /// The day of the visit at which it was told.
    pub told_on: Option<NaiveDate>,
}

/// The part of the child's page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    let (now, before) = page.agreed.split_at(page.agreed.len().min(AT_ONCE));
    let lines = |steps: &[AgreedStep]| html! { ul.rows { @for step in steps { li { (line(w, page.day, step)) } } } };
    html! {
        @if !page.agreed.is_empty() {
            h2 id="agreed" { (w.say("talk-agreed")) }
            (lines(now))
            @if !before.is_empty() { (details(&w.say_with("talk-before", args!["count" => before.len()]), false, &lines(before))) }
        }
    }
}

/// A step with its state.
pub fn line(w: &Words, day: NaiveDate, step: &AgreedStep) -> Markup {
    html! {
        p { (name(&step.words)) }
        p { (state(w, step.answer)) @if let (Some(on), Some(_)) = (step.told_on, step.answer) { " · " (format::day_near(w, on, day)) } }
        @if let Some(way) = &step.in_the_way { p { (w.say_with("talk-way", args!["words" => way])) } }
        p.quiet { (w.say_with("talk-agreed-on", args!["date" => format::day_near(w, step.agreed_on, day)])) }
    }
}

/// The state of a step: shape and word.
pub fn state(w: &Words, answer: Option<StepAnswer>) -> Markup {
    let (icon, css) = match answer {
        Some(StepAnswer::Done) => (Icon::Done, "done"),
        Some(StepAnswer::Partly) => (Icon::BowlHalf, "partly"),
        Some(StepAnswer::Not) => (Icon::BowlNotYet, "not"),
        None => (Icon::Ask, "unknown"),
    };
    marked(icon, css, &answer.map_or_else(|| w.say("talk-unknown"), |answer| codes::step_answer(w, answer)))
}

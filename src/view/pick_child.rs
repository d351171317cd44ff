//! Choosing the other child of a correction: a search, and lines that lead to the next step. Knows what was found.

use chrono::NaiveDate;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::find::Found;
use crate::view::parts::Field;
use crate::view::parts::acts;
use crate::view::parts::name;

/// What is shown.
#[derive(Debug)]
pub struct PickChild<'a> {
    /// Where the choice leads.
    pub path: &'a str,
    /// The name of the choice in the address.
    pub choice: &'static str,
    /// What was typed.
    pub asked: &'a str,
    /// What was found; the child itself is not among them.
    pub found: Vec<Found<'a>>,
    /// Whether there are more than shown.
    pub more: bool,
    /// The day ages are counted for.
    pub day: NaiveDate,
}

/// The search and what it found.
#[must_use]
pub fn part(w: &Words, p: &PickChild<'_>) -> Markup {
    html! {
        form.find method="get" action=(p.path) role="search" {
            (Field::search("q", w.say("pick-label")).hint(w.say("find-hint")).value(p.asked).plain_letters())
            (acts(&html! { button.second type="submit" { (w.say("find-do")) } }))
        }
        @if p.found.is_empty() { p { (w.say("pick-none")) } }
        ul.rows.found { @for child in &p.found { li { (line(w, p, child)) } } }
        @if p.more { p.quiet { (w.say("pick-more")) } }
    }
}

fn line(w: &Words, p: &PickChild<'_>, child: &Found<'_>) -> Markup {
    let age = format::age(w, child.born, p.day);
    html! {
        a.home href={ (p.path) "?" (p.choice) "=" (child.code) } { (name(child.name)) }
        @if let Some(known_as) = child.known_as { " · " (name(known_as)) }
        span.quiet.ltr.code { (child.printed) }
        p {
            (w.say_with("find-child", args!["sex" => codes::sex(w, child.sex), "age" => age])) " · " (name(child.village)) " · "
            (w.say_with("find-mother", args!["name" => child.caregiver]))
        }
        @if let Some(worker) = child.worker { p.quiet { (name(worker)) } }
        @if child.status != domain::child::ChildStatus::Active { p.quiet { (codes::child_status(w, child.status)) } }
    }
}

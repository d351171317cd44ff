//! Rows, facts, acts and the word with its urgency shape.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::icons::Icon;

/// The CSS class of an urgency.
#[must_use]
pub const fn class_css(class: Class) -> &'static str {
    match class {
        Class::Now => "now",
        Class::Today => "today",
        Class::TwoDays => "two",
        Class::Week => "week",
        Class::Fortnight => "fort",
        Class::Month => "month",
    }
}

/// Shape and word of an urgency: never one without the other.
#[must_use]
pub fn cls(w: &Words, class: Class) -> Markup {
    marked(Icon::of_class(class), class_css(class), &codes::class_word(w, class))
}

/// A shape and its word.
#[must_use]
pub fn marked(icon: Icon, css: &str, words: &str) -> Markup {
    html! { span class={ "cls " (css) } { (icon.draw("u")) (words) } }
}

/// A drawing beside words.
#[must_use]
pub fn icon(icon: Icon) -> Markup {
    icon.draw("u")
}

/// Somebody's or some place's name, whose direction of writing may differ from the page's.
#[must_use]
pub fn name(name: &str) -> Markup {
    html! { bdi { (name) } }
}

/// The buttons of a page, in a row as they fit.
#[must_use]
pub fn acts(body: &Markup) -> Markup {
    html! { div.acts { (body) } }
}

/// Sends the form. One solid button a page; others are `second`.
#[must_use]
pub fn button(words: &str, second: bool) -> Markup {
    html! { button type="submit" class=[second.then_some("second")] { (words) } }
}

/// A link that looks like a button, for the next act that changes nothing yet.
#[must_use]
pub fn link_button(href: &str, words: &Markup, second: bool) -> Markup {
    html! { a class=(if second { "do second" } else { "do" }) href=(href) { (words) } }
}

/// The way back to the page before.
#[must_use]
pub fn back(w: &Words, href: &str, page: &str) -> Markup {
    html! { a.back href=(href) { span aria-hidden="true" { "‹" } (w.say_with("common-back-to", args!["page" => page])) } }
}

/// A call: digits and a leading plus are dialled, whatever else is written is only shown.
#[must_use]
pub fn call_link(number: &str, css: &str, words: &Markup) -> Markup {
    let dialled: String =
        number.chars().enumerate().filter(|&(at, c)| c.is_ascii_digit() || (c == '+' && at == 0)).map(|(_, c)| c).collect();
    html! { a class=(css) href={ "tel:" (dialled) } { (Icon::Call.draw("u")) (words) } }
}

/// Rows parted by a line.
#[must_use]
pub fn rows(items: &[Markup]) -> Markup {
    html! { ul.rows { @for item in items { li { (item) } } } }
}

/// Two things on one line: a fact and its state or link.
#[must_use]
pub fn split(left: &Markup, right: &Markup) -> Markup {
    html! { div.split { (left) (right) } }
}

/// Names and values.
#[must_use]
pub fn facts(items: &[(String, Markup)]) -> Markup {
    html! { dl.facts { @for (term, value) in items { dt { (term) } dd { (value) } } } }
}

/// Acts in order, at most five; each begins with bold words.
#[must_use]
pub fn steps(items: &[Markup]) -> Markup {
    html! { ol.steps { @for item in items { li { (item) } } } }
}

/// What most visits do not need; never anything about danger.
#[must_use]
pub fn details(summary: &str, open: bool, body: &Markup) -> Markup {
    html! { details open[open] { summary { (summary) } (body) } }
}

/// A label with the colon of its language: French puts a space before it.
#[must_use]
pub fn label(w: &Words, words: &str) -> String {
    w.say_with("doc-fact", args!["name" => words])
}

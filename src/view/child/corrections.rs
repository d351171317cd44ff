//! The history of a record's corrections on a child's page: who, when, why, from where to where.

use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::child::ChildPage;
use crate::view::parts::details;
use crate::view::parts::name;

/// A line of the history.
#[derive(Debug, Clone)]
pub struct CorrectionLine {
    /// What happened, in a sentence.
    pub what: String,
    /// The other record, where the reader may open it: code in links and name.
    pub other: Option<(String, String)>,
    /// Why, in somebody's words.
    pub note: String,
    /// Who.
    pub by: String,
    /// When, in words.
    pub on: String,
}

/// The part of the page; nothing for a record that was never corrected.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        @if !page.corrections.is_empty() {
            (details(&w.say("history-title"), false, &html! {
                ul.rows { @for line in &page.corrections { li { (entry(w, line)) } } }
            }))
        }
    }
}

/// What happened, the other record, who, when and why.
pub(super) fn entry(w: &Words, line: &CorrectionLine) -> Markup {
    html! {
        p {
            (line.what)
            @if let Some((code, other)) = &line.other { " " a.link href={ "/children/" (code) } { (name(other)) } }
        }
        p.quiet { (w.say_with("history-when", args!["name" => &line.by, "date" => &line.on])) " " (name(&line.note)) }
    }
}

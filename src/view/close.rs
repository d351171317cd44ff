//! Closing a follow-up with a reason: the form at the foot of its page, and what is said when it was closed before.

use domain::draft::desk::CloseCategory;
use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Choice;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::details;
use crate::view::parts::form;
use crate::view::parts::link_button;
use crate::view::parts::summary_of;

/// The form.
#[derive(Debug, Clone, Copy)]
pub struct CloseForm<'a> {
    /// Where it goes.
    pub path: &'a str,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

impl CloseForm<'_> {
    /// What is wrong, for the top of the page.
    #[must_use]
    pub fn summary(&self, w: &Words) -> Markup {
        summary_of(w, self.faults, &|field| w.say(if field == "note" { "close-note" } else { "close-category" }))
    }

    /// The form, folded until it is wanted.
    #[must_use]
    pub fn form(&self, w: &Words) -> Markup {
        let ask = Ask::new(w, self.filled, self.faults);
        let kinds: Choice = CloseCategory::ALL.iter().fold(ask.one_of("category", "close-category").rows(), |choice, kind| {
            choice.option(kind.code(), codes::close_category(w, *kind))
        });
        let body = html! {
            p { (w.say("close-lede")) }
            (form(self.path, self.token, Some(self.key), &html! {
                (kinds)
                (ask.text_area("note", "close-note").hint(w.say("close-note-hint")))
                (acts(&button(&w.say("close-do"), true)))
            }))
        };
        details(&w.say("close-title"), !self.faults.is_empty(), &body)
    }
}

/// What was typed by somebody who came second, and a way to keep it: as a note to the worker.
#[derive(Debug, Clone, Copy)]
pub struct Kept<'a> {
    /// Where a note goes.
    pub path: &'a str,
    /// The kind of reason that was chosen.
    pub category: Option<CloseCategory>,
    /// The reason, as the note's words.
    pub filled: &'a Filled,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key of the note.
    pub key: &'a str,
}

/// Somebody else was first; nothing typed is lost.
#[must_use]
pub fn already(w: &Words, sentence: &str, path: &str, kept: Kept<'_>) -> Markup {
    let none = Faults::new();
    let ask = Ask::new(w, kept.filled, &none);
    html! {
        h1 { (sentence) }
        p { (w.say("close-typed")) }
        @if let Some(kind) = kept.category { p { (w.say("close-category")) ": " strong { (codes::close_category(w, kind)) } } }
        (form(kept.path, kept.token, Some(kept.key), &html! {
            (ask.text_area("words", "close-typed-words").hint(w.say("close-typed-hint")))
            (acts(&button(&w.say("close-typed-do"), true)))
        }))
        (acts(&link_button(path, &html! { (w.say("late-see-why")) }, false)))
    }
}

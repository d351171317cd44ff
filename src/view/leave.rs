//! A child leaves the programme. Gentle: a family may have lost a child.

use domain::child::ChildStatus;
use domain::draft::desk::WAYS_OF_LEAVING;
use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::summary_of;

/// The page.
#[derive(Debug, Clone, Copy)]
pub struct LeavePage<'a> {
    /// The child's page.
    pub child_path: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// Whether who asks records a death; others are asked to tell.
    pub records_death: bool,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "on" => "leave-on",
        "note" => "leave-note",
        _ => "leave-how",
    })
}

fn words_of(status: ChildStatus) -> (&'static str, Option<&'static str>) {
    match status {
        ChildStatus::TransferredOut => ("leave-transferred-out", None),
        ChildStatus::Refused => ("leave-refused", None),
        ChildStatus::ConsentWithdrawn => ("leave-consent-withdrawn", Some("leave-consent-hint")),
        ChildStatus::Died => ("leave-died", Some("leave-died-hint")),
        ChildStatus::Active | ChildStatus::AgedOut | ChildStatus::Moved => ("leave-moved", None),
    }
}

/// The form.
#[must_use]
pub fn page(w: &Words, p: LeavePage<'_>) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    let offered = WAYS_OF_LEAVING.iter().filter(|status| **status != ChildStatus::Died || p.records_death);
    let ways = offered.fold(ask.one_of("status", "leave-how").rows(), |choice, status| {
        let (words, hint) = words_of(*status);
        choice.option_with(status.code(), w.say(words), hint.map(|id| w.say(id)), None)
    });
    let fields = html! {
        (ways)
        @if !p.records_death { p.quiet { (w.say("leave-died-tell")) } }
        (ask.day("on", "leave-on").hint(w.say("leave-on-approximate")))
        (ask.text_area("note", "leave-note").hint(w.say("leave-note-hint")))
        (acts(&button(&w.say("leave-do"), false)))
    };
    html! {
        (back(w, p.child_path, p.called))
        (summary_of(w, p.faults, &|field| label(w, field)))
        h1 { (w.say_with("leave-title", args!["name" => p.called])) }
        p.lede { (w.say("leave-lede")) }
        (form(&format!("{}/leave", p.child_path), p.token, Some(p.key), &fields))
    }
}

/// A child that has left: how and when, and nothing more.
#[must_use]
pub fn left(w: &Words, called: &str, died: bool, how: &str, on: &str) -> Markup {
    html! {
        h1 { (name(called)) }
        p.lede { (w.say_with("leave-already", args!["date" => on, "how" => how])) }
        p { (w.say(if died { "leave-done-died" } else { "leave-done" })) }
        (acts(&link_button("/", &html! { (w.say("trouble-go-home")) }, true)))
    }
}

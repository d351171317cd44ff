//! What a supervisor wrote to the worker about a child: on the child's page, and the form.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::note;
use crate::view::parts::summary_of;

/// A note that waits.
#[derive(Debug, Clone)]
pub struct NoteLine {
    /// Who wrote it.
    pub by: String,
    /// When, in words.
    pub on: String,
    /// What.
    pub words: String,
    /// The day of a visit together, in words.
    pub together: Option<String>,
    /// Where it is set aside.
    pub aside: String,
    /// The form's token.
    pub token: String,
    /// The form's key.
    pub key: String,
}

/// Notes that were read lately, each in a sentence.
#[must_use]
pub fn read(lines: &[String]) -> Markup {
    html! { @for line in lines { p.quiet { (line) } } }
}

/// The notes on a child, before anything else is read.
#[must_use]
pub fn waiting(w: &Words, notes: &[NoteLine]) -> Markup {
    html! {
        @for line in notes {
            (note(NoteWeight::Look, Icon::Info, &html! {
                p { strong { (w.say_with("desk-note-from", args!["name" => &line.by, "date" => &line.on])) } " " (line.words) }
                @if let Some(day) = &line.together { p { strong { (w.say_with("desk-note-together", args!["name" => &line.by, "date" => day])) } } }
                (form(&line.aside, &line.token, Some(&line.key), &button(&w.say("desk-note-aside"), true)))
            }))
        }
    }
}

/// The form.
pub struct NotePage<'a> {
    /// The child's page.
    pub child_path: &'a str,
    /// What it is called.
    pub called: &'a str,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong.
    pub faults: &'a Faults,
    /// The form's token.
    pub token: &'a str,
    /// The form's key.
    pub key: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(if field == "together" { "desk-note-together-on" } else { "desk-note-words" })
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &NotePage<'_>) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    let fields = html! {
        (ask.text_area("words", "desk-note-words").hint(w.say("desk-note-words-hint")))
        (ask.day("together", "desk-note-together-on").hint(w.say("desk-note-together-hint")))
        (acts(&button(&w.say("desk-note-do"), false)))
    };
    html! {
        (back(w, p.child_path, p.called))
        (summary_of(w, p.faults, &|field| label(w, field)))
        h1 { (w.say_with("desk-note-title", args!["name" => p.called])) }
        p.lede { (w.say("desk-note-lede")) }
        (form(&format!("{}/note", p.child_path), p.token, Some(p.key), &fields))
    }
}

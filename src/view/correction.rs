//! Correcting the record: taking a visit back, and what a correction would change. Knows what was worked out, judges nothing.

use domain::draft::correction::VoidReason;
use domain::fault::Faults;
use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::child::VisitLine;
use crate::view::child::numbers;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::link_button;
use crate::view::parts::marked;
use crate::view::parts::note;
use crate::view::parts::summary_of;
use crate::view::pieces::list::class_css;

/// A follow-up that a correction would change.
#[derive(Debug, Clone)]
pub struct EffectLine {
    /// Urgency.
    pub class: Class,
    /// Why, in one line.
    pub why: String,
    /// Day of the check, in words.
    pub due: String,
}

/// What a correction would change for one child.
#[derive(Debug, Clone, Default)]
pub struct EffectShown {
    /// What the child is called.
    pub called: String,
    /// Would close.
    pub closes: Vec<EffectLine>,
    /// Would open.
    pub opens: Vec<EffectLine>,
    /// Would stay with another urgency or day.
    pub changes: Vec<EffectLine>,
}

/// What would change, told before it is done.
#[must_use]
pub fn effect(w: &Words, shown: &EffectShown) -> Markup {
    let lists = [("effect-closes", &shown.closes), ("effect-opens", &shown.opens), ("effect-changes", &shown.changes)];
    html! {
        h2 { (w.say_with("effect-title", args!["name" => &shown.called])) }
        @if shown.closes.iter().any(|line| line.class.is_urgent()) {
            (note(NoteWeight::Look, Icon::Ask, &html! { p { (w.say("effect-urgent")) } }))
        }
        @if lists.iter().all(|(_, lines)| lines.is_empty()) { p { (w.say("effect-none")) } }
        @for (heading, lines) in lists.iter().filter(|(_, lines)| !lines.is_empty()) {
            p { (w.say(heading)) }
            ul.rows { @for line in lines.iter() { li { (effect_line(w, line)) } } }
        }
    }
}

pub(super) fn effect_line(w: &Words, line: &EffectLine) -> Markup {
    html! {
        p { (marked(Icon::of_class(line.class), class_css(line.class), &codes::class_word(w, line.class))) }
        p { (line.why) " " (w.say_with("child-check-by", args!["day" => &line.due])) }
    }
}

/// What a form of these pages needs.
#[derive(Debug, Clone, Copy)]
pub struct Sending<'a> {
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Counts corrections of what is corrected: a form shown before the last one has no effect.
    pub version: u32,
    /// Somebody changed it meanwhile.
    pub changed: bool,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

/// Taking a visit back.
#[derive(Debug, Clone)]
pub struct VoidPage<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// The visit.
    pub visit: VisitLine<'a>,
    /// Its day in words.
    pub date: String,
    /// What would change.
    pub effect: EffectShown,
    /// The form.
    pub sending: Sending<'a>,
}

/// The visit in one line, as it stands.
pub(super) fn visit_facts(w: &Words, visit: &VisitLine<'_>) -> Markup {
    html! {
        p.lede {
            span.n { (numbers(w, visit)) }
            " · " (w.say_with("void-what", args!["where" => codes::contact(w, visit.contact).to_lowercase(), "by" => visit.by]))
        }
    }
}

/// Something was changed by somebody else meanwhile.
pub(super) fn changed_note(w: &Words, id: &str) -> Markup {
    note(NoteWeight::Look, Icon::Ask, &html! { p { (w.say(id)) } })
}

/// The page that takes a visit back.
#[must_use]
pub fn void_page(w: &Words, p: &VoidPage<'_>) -> Markup {
    let s = &p.sending;
    let ask = Ask::new(w, s.filled, s.faults);
    let path = format!("/children/{}/visits/{}", p.code, p.visit.seq);
    let kinds = VoidReason::ALL
        .iter()
        .fold(ask.one_of("reason", "void-reason").rows(), |choice, reason| choice.option(reason.code(), codes::void_reason(w, *reason)));
    let fields = html! {
        (hidden("version", &s.version.to_string()))
        (kinds)
        (ask.text_area("note", "void-note").hint(w.say("void-note-hint")))
        (acts(&button(&w.say("void-do"), false)))
    };
    html! {
        (back(w, &format!("/children/{}", p.code), p.called))
        (summary_of(w, s.faults, &|field| w.say(if field == "note" { "void-note" } else { "void-reason" })))
        @if s.changed { (changed_note(w, "correction-changed")) }
        h1 { (w.say_with("void-title", args!["name" => p.called, "date" => &p.date])) }
        (visit_facts(w, &p.visit))
        p { (w.say("void-lede")) }
        p.quiet { (w.say("void-whose")) " " a.link href={ (path) "/move" } { (w.say("void-move")) } }
        (effect(w, &p.effect))
        h2 { (w.say("void-do")) }
        (form(&format!("{path}/void"), s.token, Some(s.key), &fields))
    }
}

/// The visit is not among the child's any more.
#[must_use]
pub fn gone(w: &Words, code: &str) -> Markup {
    html! {
        h1 { (w.say("correction-gone-title")) }
        p { (w.say("correction-gone")) }
        (acts(&link_button(&format!("/children/{code}"), &html! { (w.say("correction-to-child")) }, false)))
    }
}

//! Why a follow-up is there: the finding with its numbers, what to do, when it closes, what happened to it. It judges nothing.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::close;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::call_link;
use crate::view::parts::cls;
use crate::view::parts::details;
use crate::view::parts::facts;
use crate::view::parts::link_button;

/// The worker of the child, for a supervisor.
#[derive(Debug, Clone)]
pub struct Whom {
    /// Name.
    pub name: String,
    /// Phone.
    pub phone: Option<String>,
}

/// How it ended.
#[derive(Debug, Clone)]
pub struct Ended {
    /// The day in words.
    pub on: String,
    /// Why, in words.
    pub reason: String,
    /// A supervisor's name, category and words.
    pub decided: Option<(String, String, String)>,
}

/// A line of its history: the day, and what happened.
pub type Happened = (String, String);

/// The page.
#[derive(Debug, Clone)]
pub struct WhyPage<'a> {
    /// The child's page.
    pub child_path: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// Class.
    pub class: Class,
    /// The finding in one line with its numbers.
    pub why: String,
    /// When and where it was noticed and by whom.
    pub measured: Option<String>,
    /// Day of the check, in words.
    pub check_by: String,
    /// Name and value of each number.
    pub numbers: Vec<(String, String)>,
    /// The rule in plain words with its source.
    pub source: String,
    /// Code of the rule, id and version of the protocol.
    pub rule: [String; 3],
    /// What to do and say.
    pub advice: String,
    /// Whether only an outcome is missing for a supervisor to close it.
    pub needs_outcome: bool,
    /// Names of the rules it covers.
    pub also: Vec<String>,
    /// What happened to it, first to last.
    pub history: Vec<Happened>,
    /// How it ended.
    pub ended: Option<Ended>,
    /// For a supervisor.
    pub whom: Option<Whom>,
    /// For a supervisor, while it may be closed: the form.
    pub close: Option<close::CloseForm<'a>>,
    /// Where a child is moved, for a supervisor.
    pub move_path: Option<String>,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &WhyPage<'_>) -> Markup {
    let mut told = Vec::new();
    if let Some(measured) = &p.measured {
        told.push((w.say("why-measured"), html! { (measured) }));
    }
    told.push((w.say(if p.ended.is_some() { "why-check-was" } else { "why-check-by" }), html! { (p.check_by) }));
    told.extend(p.numbers.iter().map(|(name, value)| (name.clone(), html! { (value) })));
    let [rule, protocol, version] = &p.rule;
    told.push((
        w.say("why-rule"),
        html! { (w.say_with("why-rule-line", args!["rule" => rule, "protocol" => protocol, "version" => version])) },
    ));
    html! {
        @if let Some(form) = &p.close { (form.summary(w)) }
        (back(w, p.child_path, p.called))
        p { (cls(w, p.class)) }
        h1 { (w.say_with("why-heading", args!["name" => p.called, "why" => &p.why])) }
        @if let Some(ended) = &p.ended { (how_it_ended(w, ended)) }
        (facts(&told))
        // Whole sentences: beside a label they would be a narrow column on a phone.
        h2 { (w.say("why-source")) }
        p { (p.source) }
        h2 { (w.say("why-do")) }
        p { (p.advice) }
        @if p.ended.is_none() { (acts_of(w, p)) (closes(w, p)) }
        @if !p.also.is_empty() {
            (details(&w.say("why-also"), false, &html! {
                p { (w.say("why-also-covered")) }
                ul { @for also in &p.also { li { (also) } } }
            }))
        }
        @if !p.history.is_empty() {
            (details(&w.say("why-history"), false, &html! {
                ul { @for (date, what) in &p.history { li { (w.say_with("why-history-line", args!["date" => date, "what" => what])) } } }
            }))
        }
        p.quiet { (w.say("why-caution")) }
        @if let Some(form) = &p.close { (form.form(w)) }
    }
}

fn how_it_ended(w: &Words, ended: &Ended) -> Markup {
    html! {
        p.lede {
            (w.say_with("why-closed", args!["date" => &ended.on, "reason" => &ended.reason]))
            @if let Some((name, category, note)) = &ended.decided {
                " " (w.say_with("why-closed-by", args!["name" => name, "category" => category, "note" => note]))
            }
        }
    }
}

fn acts_of(w: &Words, p: &WhyPage<'_>) -> Markup {
    acts(&html! {
        (link_button(&format!("{}/visits/new", p.child_path), &html! { (w.say("why-write")) }, false))
        @if let Some(Whom { name, phone: Some(phone) }) = &p.whom {
            (call_link(phone, "do second", &html! { (w.say_with("why-call", args!["name" => name])) }))
        }
        @if let Some(path) = &p.move_path { (link_button(path, &html! { (w.say("why-move")) }, true)) }
    })
}

fn closes(w: &Words, p: &WhyPage<'_>) -> Markup {
    html! {
        h2 { (w.say("why-closes")) }
        p {
            (w.say(if p.class.is_urgent() { "why-close-urgent" } else { "why-close-resolved" })) " "
            (w.say(if p.needs_outcome { "why-close-not-yet" } else { "why-close-supervisor" }))
        }
    }
}

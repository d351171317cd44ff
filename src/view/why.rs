//! Why a follow-up is there: the finding with its numbers, whether it may be the scale, what to do, when it closes and what is missing
//! for that, what it covers, what happened to it. It judges nothing.

use domain::follow_up::ScaleError;
use domain::rule::Class;
use domain::rule::RuleId;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Closing;
use crate::i18n::Words;
use crate::view::close;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::call_link;
use crate::view::parts::cls;
use crate::view::parts::details;
use crate::view::parts::facts;
use crate::view::parts::label;
use crate::view::parts::link_button;
use crate::view::scale;

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

/// A line of the record: the day, and what happened.
pub type Happened = (String, String);

/// A step of its history.
#[derive(Debug, Clone)]
pub struct StepLine {
    /// The day in words.
    pub on: String,
    /// The visit's page.
    pub visit: Option<String>,
    /// Where, and by whom.
    pub by: Option<String>,
    /// What happened.
    pub what: String,
    /// Urgency from then on.
    pub class: Class,
    /// Day of the check from then on.
    pub due: String,
    /// Why, in words.
    pub reason: String,
}

/// A rule that is true too and opens nothing.
#[derive(Debug, Clone)]
pub struct Also {
    /// Its name.
    pub name: String,
    /// Its own numbers in one line.
    pub why: Option<String>,
    /// Why it is silent.
    pub reason: Option<String>,
}

/// The page.
#[derive(Debug, Clone)]
pub struct WhyPage<'a> {
    /// The child's page.
    pub child_path: &'a str,
    /// What links carry on: the past day shown.
    pub query: &'a str,
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
    /// Beside a gain, loss or drop: the error of measuring.
    pub scale: Option<ScaleError>,
    /// The rule in plain words with its source.
    pub source: String,
    /// Where the protocol has its figures from.
    pub protocol_source: Option<String>,
    /// Code of the rule, id and version of the protocol.
    pub rule: [String; 3],
    /// What to do and say.
    pub advice: String,
    /// When it closes and what is missing; `None` where only the record is left.
    pub closing: Option<Closing>,
    /// Whether only an outcome is missing for a supervisor to close it.
    pub needs_outcome: bool,
    /// The rules it covers.
    pub also: Vec<Also>,
    /// What happened to it, first to last.
    pub steps: Vec<StepLine>,
    /// What happened to its record besides.
    pub history: Vec<Happened>,
    /// How it ended.
    pub ended: Option<Ended>,
    /// For a supervisor.
    pub whom: Option<Whom>,
    /// For a supervisor, while it may be closed: the form.
    pub close: Option<close::CloseForm<'a>>,
    /// Where a child is moved, for a supervisor.
    pub move_path: Option<String>,
    /// The text to read to a clinician.
    pub aloud_path: String,
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
        (back(w, &format!("{}{}", p.child_path, p.query), p.called))
        p { (cls(w, p.class)) }
        h1 { (w.say_with("why-heading", args!["name" => p.called, "why" => &p.why])) }
        @if let Some(ended) = &p.ended { (how_it_ended(w, ended)) }
        (facts(&told))
        @if let Some(error) = &p.scale { (scale::part(w, error)) }
        h2 { (w.say("why-do")) }
        p { (p.advice) }
        // Only a supervisor merges records; what is closed needs no merging.
        @if p.close.is_some() && p.ended.is_none() && *rule == RuleId::DataTwinRecord.code() {
            p { a.link href={ (p.child_path) "/merge" } { (w.say("merge-way")) } }
        }
        (acts_of(w, p))
        @if p.ended.is_none() { (closes(w, p)) }
        // Whole sentences: beside a label they would be a narrow column on a phone.
        h2 { (w.say("why-source")) }
        p { (p.source) }
        @if let Some(source) = &p.protocol_source { p.quiet { (label(w, &w.say("why-protocol-source"))) " " (source) } }
        @if !p.also.is_empty() { (also(w, &p.also)) }
        @if !p.steps.is_empty() { (details(&w.say("why-history"), true, &history(w, &p.steps))) }
        @if !p.history.is_empty() {
            (details(&w.say(if p.steps.is_empty() { "why-history" } else { "why-record" }), false, &html! {
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
    let open = p.ended.is_none();
    acts(&html! {
        @if open { (link_button(&format!("{}/visits/new", p.child_path), &html! { (w.say("why-write")) }, false)) }
        (link_button(&format!("{}{}", p.aloud_path, p.query), &html! { (w.say("aloud-link")) }, true))
        @if let Some(Whom { name, phone: Some(phone) }) = p.whom.as_ref().filter(|_| open) {
            (call_link(phone, "do second", &html! { (w.say_with("why-call", args!["name" => name])) }))
        }
        @if let Some(path) = &p.move_path { (link_button(path, &html! { (w.say("why-move")) }, true)) }
    })
}

fn closes(w: &Words, p: &WhyPage<'_>) -> Markup {
    html! {
        h2 { (w.say("why-closes")) }
        @match &p.closing {
            Some(closing) => {
                p { (closing.way) }
                @if let Some(test) = &closing.test { ul { li { (test) } } }
                @for missing in &closing.missing { p { (missing) } }
            }
            None => { p { (w.say(if p.class.is_urgent() { "why-close-urgent" } else { "why-close-resolved" })) } }
        }
        p { (w.say(if p.needs_outcome { "why-close-not-yet" } else { "why-close-supervisor" })) }
    }
}

fn also(w: &Words, also: &[Also]) -> Markup {
    html! {
        h2 { (w.say("why-also")) }
        p { (w.say("why-also-covered")) }
        ul {
            @for one in also {
                li {
                    @match &one.reason {
                        Some(reason) => { b { (label(w, &one.name)) } " " (reason) "." }
                        None => { b { (one.name) } }
                    }
                    @if let Some(why) = &one.why { br; (why) }
                }
            }
        }
    }
}

fn history(w: &Words, steps: &[StepLine]) -> Markup {
    html! {
        ul.rows.history {
            @for step in steps {
                li {
                    p {
                        @match &step.visit { Some(path) => { a href=(path) { (step.on) } } None => { b { (step.on) } } }
                        " · " b.what { (step.what) }
                        @if let Some(by) = &step.by { " · " (by) }
                    }
                    p { (step.reason) }
                    p { (cls(w, step.class)) " " span.quiet { (w.say_with("child-check-by", args!["day" => &step.due])) } }
                }
            }
        }
    }
}

//! Rehearsing a protocol: the form, what is wrong with a file, and how the follow-up list would change. It judges nothing.

mod numbers;

use domain::fault::Faults;
use domain::rule::RuleId;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::filled::Filled;
use crate::view::icons::Icon;
use crate::view::parts::Ask;
use crate::view::parts::FileField;
use crate::view::parts::NoteWeight;
use crate::view::parts::TextArea;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::details;
use crate::view::parts::form;
use crate::view::parts::form_with_file;
use crate::view::parts::hidden;
use crate::view::parts::note;
use crate::view::parts::rows;
use crate::view::parts::summary_of;

pub use crate::view::rehearse::numbers::Counts;
pub use crate::view::rehearse::numbers::Numbers;

/// One thing wrong with a file, as the reader of the file says it.
#[derive(Debug, Clone)]
pub struct FileFaultLine {
    /// Line, from 1.
    pub line: usize,
    /// Key; empty for the file as a whole.
    pub key: String,
    /// What is wrong and what to do.
    pub what: String,
    /// The parser's own words, which are English.
    pub parser: Option<String>,
}

/// The form.
#[derive(Debug, Clone)]
pub struct RehearsePage<'a> {
    /// The text as sent.
    pub text: &'a str,
    /// Where the file in force is.
    pub file: &'a str,
    /// What the chosen file is called, if one was chosen.
    pub chosen: Option<&'a str>,
    /// The most a file may weigh.
    pub most_kilobytes: usize,
    /// What is wrong with it.
    pub faults: Vec<FileFaultLine>,
    /// Why the chosen file could not be read as text.
    pub unreadable: Option<String>,
    /// Token of the session.
    pub token: &'a str,
}

/// A child of whom something would change.
#[derive(Debug, Clone)]
pub struct ChildLine {
    /// Its page.
    pub path: String,
    /// What it is called.
    pub called: String,
    /// Village, worker and what, in words.
    pub what: String,
}

/// The adoption form below a rehearsal.
#[derive(Debug, Clone, Copy)]
pub struct AdoptPart<'a> {
    /// The text to adopt.
    pub text: &'a str,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

/// What a rehearsal found, for the page.
#[derive(Debug, Clone)]
pub struct ResultPage<'a> {
    /// The answer in one sentence.
    pub heading: String,
    /// As of when, compared with what.
    pub compared: String,
    /// The counts; none where nothing would change.
    pub numbers: Option<Numbers>,
    /// Children by rule; `None` for those who may not see them.
    pub children: Option<Vec<(RuleId, Vec<ChildLine>)>>,
    /// For those who may adopt.
    pub adopt: Option<AdoptPart<'a>>,
}

/// The form's page.
#[must_use]
pub fn page(w: &Words, p: &RehearsePage<'_>) -> Markup {
    html! {
        (faults_note(w, p))
        (back(w, "/protocol", &w.say("doc-page-title")))
        h1 { (w.say("rehearse-title")) }
        p.lede { (w.say("rehearse-lede")) }
        ol {
            li { (w.say("rehearse-step-1")) " " a href=(p.file) { (w.say("protocol-file")) } }
            li { (w.say("rehearse-step-2")) }
        }
        (form_with_file("/protocol/rehearse", p.token, &html! {
            (FileField { name: "file", label: w.say("rehearse-file"), hint: w.say_with("rehearse-file-hint", args!["kilobytes" => p.most_kilobytes]), accept: ".toml,text/plain", fault: p.unreadable.as_deref() })
            (TextArea::new("text", w.say("rehearse-text")).hint(w.say("rehearse-hint")).value(p.text).rows(16))
            (acts(&button(&w.say("rehearse-button"), false)))
        }))
        p.quiet { (w.say("rehearse-how")) }
    }
}

fn faults_note(w: &Words, p: &RehearsePage<'_>) -> Markup {
    let faults = &p.faults;
    html! {
        @if let Some(unreadable) = &p.unreadable {
            section.note.stop id="summary" tabindex="-1" autofocus aria-labelledby="summary-heading" {
                (Icon::Cross.draw("u"))
                div { h2 id="summary-heading" { a href="#file" { (unreadable) } } }
            }
        }
        @if !faults.is_empty() {
            section.note.stop id="summary" tabindex="-1" autofocus aria-labelledby="summary-heading" {
                (Icon::Cross.draw("u"))
                div {
                    h2 id="summary-heading" { (w.say_with("rehearse-not-loaded", args!["count" => faults.len()])) }
                    @if let Some(chosen) = p.chosen { p { (w.say("rehearse-chosen")) " " bdi { (chosen) } } }
                    ul.plain {
                        @for fault in faults {
                            li {
                                b {
                                    @if fault.key.is_empty() { (w.say_with("rehearse-fault-line", args!["line" => fault.line.to_string()])) }
                                    @else { (w.say_with("rehearse-fault", args!["line" => fault.line.to_string(), "key" => &fault.key])) }
                                }
                                " " (fault.what)
                                @if let Some(words) = &fault.parser { ". " (w.say("rehearse-parser-says")) " " span lang="en" { (words) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What the rehearsal found.
#[must_use]
pub fn result(w: &Words, p: &ResultPage<'_>) -> Markup {
    html! {
        @if let Some(adopt) = &p.adopt { (summary_of(w, adopt.faults, &|field| label(w, field))) }
        (back(w, "/protocol/rehearse", &w.say("rehearse-title")))
        h1 { (p.heading) }
        p.lede { (p.compared) }
        (note(NoteWeight::Plain, Icon::Info, &html! { p { (w.say("rehearse-how")) } }))
        @if let Some(numbers) = &p.numbers { (numbers.tables(w)) }
        @match &p.children {
            Some(by_rule) if !by_rule.is_empty() => { (children(w, by_rule)) }
            None if p.numbers.is_some() => { p.quiet { (w.say("rehearse-counts-only")) } }
            _ => {}
        }
        @match &p.adopt {
            Some(adopt) => { (adopt_form(w, adopt)) }
            None => { p.quiet { (w.say("adopt-supervisor")) } }
        }
    }
}

fn children(w: &Words, by_rule: &[(RuleId, Vec<ChildLine>)]) -> Markup {
    html! {
        h2 id="children" { (w.say("rehearse-children")) }
        @for (rule, lines) in by_rule {
            @let count = w.say_with("common-children", args!["count" => lines.len()]);
            (details(&format!("{} ({count})", codes::rule_name(w, *rule)), false, &rows(
                &lines.iter().map(|line| html! { p { a.link href=(line.path) { bdi { (line.called) } } } p.quiet { (line.what) } }).collect::<Vec<_>>()
            )))
        }
    }
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "approved_by" => "adopt-approved-by",
        "reason" => "adopt-reason",
        "text" => "rehearse-text",
        _ => "adopt-from",
    })
}

fn adopt_form(w: &Words, p: &AdoptPart<'_>) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    html! {
        h2 id="adopt" { (w.say("adopt-heading")) }
        p { (w.say("adopt-lede")) }
        (form("/protocol/adopt", p.token, Some(p.key), &html! {
            (hidden("text", p.text))
            (ask.text("approved_by", "adopt-approved-by").hint(w.say("adopt-approved-hint")))
            (ask.day("from", "adopt-from").hint(w.say("adopt-from-hint")))
            (ask.text_area("reason", "adopt-reason").hint(w.say("adopt-reason-hint")))
            (acts(&button(&w.say("adopt-button"), false)))
        }))
    }
}

//! A home: its children in the order of work, each with its class, why and day; who else may live here. It decides no order.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::errand::Errand;
use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::call_link;
use crate::view::parts::cls;
use crate::view::parts::details;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::link_button;
use crate::view::parts::marked;
use crate::view::parts::name;
use crate::view::parts::rows;
use crate::view::parts::summary_of;

/// A child of the home.
#[derive(Debug, Clone)]
pub struct HomeLine<'a> {
    /// In links.
    pub code: &'a str,
    /// What it is called.
    pub called: &'a str,
    /// Birth date.
    pub born: NaiveDate,
    /// Village, where it is another than that of the home.
    pub elsewhere: Option<&'a str>,
    /// What is to be done.
    pub errand: Option<&'a Errand>,
    /// Why and by when, in words.
    pub why: String,
    /// When, in words.
    pub when: String,
    /// Something falls into the days ahead.
    pub due: bool,
    /// Met today.
    pub seen: bool,
}

/// A child who may live here too, or who left.
#[derive(Debug, Clone)]
pub struct OtherLine<'a> {
    /// In links.
    pub code: &'a str,
    /// Its name.
    pub name: &'a str,
    /// Birth date.
    pub born: NaiveDate,
    /// Caregiver.
    pub caregiver: &'a str,
    /// In the programme, or how it left.
    pub status: ChildStatus,
}

/// The page.
pub struct HomePage<'a> {
    /// The child from whose page it was opened: code and what it is called.
    pub from: (&'a str, &'a str),
    /// Caregiver.
    pub caregiver: &'a str,
    /// Village.
    pub village: &'a str,
    /// How to find the home.
    pub directions: Option<&'a str>,
    /// The caregiver's phone.
    pub phone: Option<&'a str>,
    /// Children in the programme, in the order of work.
    pub children: Vec<HomeLine<'a>>,
    /// Children who left.
    pub left: Vec<OtherLine<'a>>,
    /// Who may live here too.
    pub likely: Vec<OtherLine<'a>>,
    /// The day.
    pub day: NaiveDate,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// The forms' token.
    pub token: &'a str,
    /// Makes a key for each form.
    pub key: &'a dyn Fn() -> String,
}

impl HomePage<'_> {
    fn path(&self, end: &str) -> String {
        format!("/children/{}{end}", self.from.0)
    }
}

/// The page. The heading is the answer: whose home, and who is to be seen.
#[must_use]
pub fn page(w: &Words, p: &HomePage<'_>) -> Markup {
    let first = p.children.iter().find(|child| child.due && !child.seen);
    html! {
        (back(w, &p.path(""), p.from.1))
        (summary_of(w, p.faults, &|_| w.say("household-code")))
        h1 { (heading(w, p)) }
        p.lede.quiet { (w.say_with("household-lede", args!["name" => p.caregiver, "village" => p.village])) }
        @if let Some(directions) = p.directions { p.quiet { (name(directions)) } }
        (acts(&html! {
            @if let Some(child) = first {
                (link_button(&visit_path(child), &html! { (w.say_with("household-start", args!["name" => child.called])) }, false))
            }
            @if let Some(phone) = p.phone { (call_link(phone, "do second", &html! { (w.say_with("child-call", args!["name" => p.caregiver])) })) }
        }))
        (rows(&p.children.iter().map(|child| line(w, p, child)).collect::<Vec<_>>()))
        (likely(w, p))
        h2 { (w.say("household-more")) }
        ul.rows {
            li { a.link href={ "/children/new?home=" (p.from.0) } { (w.say("household-add")) } }
            li { a.link href={ "/children/new?home=" (p.from.0) "&twin=yes" } { (w.say_with("household-add-twin", args!["name" => p.from.1])) } }
        }
        (by_code(w, p))
        (others(w, p))
    }
}

fn heading(w: &Words, p: &HomePage<'_>) -> String {
    let waiting: Vec<String> = p.children.iter().filter(|child| child.due && !child.seen).map(|child| child.called.to_owned()).collect();
    let count = p.children.len();
    if waiting.is_empty() {
        w.say_with("household-none-due", args!["count" => count])
    } else {
        w.say_with("household-due", args!["count" => count, "names" => format::list(w, &waiting)])
    }
}

fn visit_path(child: &HomeLine<'_>) -> String {
    format!("/children/{}/visits/new", child.code)
}

fn line(w: &Words, p: &HomePage<'_>, child: &HomeLine<'_>) -> Markup {
    html! {
        h2.plain { a.link href={ "/children/" (child.code) } { (name(child.called)) } " " span.quiet { (format::age(w, child.born, p.day)) } }
        @if child.seen {
            p { (marked(Icon::Done, "done", &w.say("household-seen"))) }
        }
        @match child.errand {
            Some(errand) => {
                p { @match errand.class() {
                    Some(class) => { (cls(w, class)) " · " (child.when) }
                    None => { (marked(Icon::Home, "visit", &child.when)) }
                } }
                p { (child.why) }
            }
            None => { p { (w.say("household-nothing-due")) } }
        }
        @if let Some(village) = child.elsewhere { p.quiet { (w.say_with("household-elsewhere", args!["village" => village])) } }
        div.split {
            a.link href=(visit_path(child)) { (w.say("child-start-visit")) span.vh { " " (name(child.called)) } }
            @if p.children.len() > 1 { (unlink(w, p, child.code, child.called)) }
        }
    }
}

fn unlink(w: &Words, p: &HomePage<'_>, code: &str, called: &str) -> Markup {
    form(
        &p.path("/home/unlink"),
        p.token,
        Some(&(p.key)()),
        &html! {
            (hidden("other", code))
            button.quietly type="submit" { (w.say("household-unlink")) span.vh { " " (name(called)) } }
        },
    )
}

fn likely(w: &Words, p: &HomePage<'_>) -> Markup {
    let one = |other: &OtherLine<'_>| {
        let link = html! {
            (hidden("other", other.code))
            button.quietly type="submit" { (w.say("household-link")) span.vh { " " (name(other.name)) } }
        };
        html! {
            p { a.link href={ "/children/" (other.code) } { (name(other.name)) } " " span.quiet { (format::age(w, other.born, p.day)) } }
            p.quiet { (w.say_with("child-with", args!["name" => other.caregiver])) }
            (form(&p.path("/home/link"), p.token, Some(&(p.key)()), &link))
        }
    };
    html! {
        @if !p.likely.is_empty() {
            h2 id="likely" { (w.say("household-likely")) }
            p.quiet { (w.say("household-likely-why")) }
            (rows(&p.likely.iter().map(one).collect::<Vec<_>>()))
        }
    }
}

fn by_code(w: &Words, p: &HomePage<'_>) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    let fields = html! {
        (ask.text("other", "household-code").hint(w.say("household-code-hint")).plain_letters())
        (acts(&button(&w.say("household-link"), true)))
    };
    let open = !p.faults.is_empty();
    details(&w.say("household-by-code"), open, &form(&p.path("/home/link"), p.token, Some(&(p.key)()), &fields))
}

fn others(w: &Words, p: &HomePage<'_>) -> Markup {
    let one = |other: &OtherLine<'_>| {
        html! {
            p { a.link href={ "/children/" (other.code) } { (name(other.name)) } }
            p.quiet { (codes::child_status(w, other.status)) }
        }
    };
    html! {
        @if !p.left.is_empty() {
            (details(&w.say_with("household-left", args!["count" => p.left.len()]), false, &rows(&p.left.iter().map(one).collect::<Vec<_>>())))
        }
    }
}

/// Another child of the home, where a page of one child names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Also {
    /// In links.
    pub code: String,
    /// What it is called.
    pub called: String,
    /// Age in words.
    pub age: String,
    /// Urgency and day in words; empty when nothing is due.
    pub when: String,
    /// Met on the day.
    pub seen: bool,
    /// Something falls into the days ahead, and it was not met on the day.
    pub waits: bool,
}

/// `Also in this home: Pemba, Tavi`, each a link.
#[must_use]
pub fn also_here(w: &Words, others: &[(String, String)]) -> Markup {
    html! {
        @if !others.is_empty() {
            p.here {
                (w.say_with("household-also", args!["count" => others.len()])) " "
                @for (at, (code, called)) in others.iter().enumerate() {
                    @if at > 0 { ", " }
                    a href={ "/children/" (code) } { (name(called)) }
                }
            }
        }
    }
}

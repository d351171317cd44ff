//! The lists beside the late follow-ups: urgent referrals without an answer, children not seen for long, foods long on hold; their
//! first lines stand on the desk, and each has pages of its own.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::parts::back;
use crate::view::parts::cls;
use crate::view::parts::name;
use crate::view::parts::rows;
use crate::view::parts::split;
use crate::view::supervise::DeskChild;

/// An urgent referral without an answer.
#[derive(Debug, Clone)]
pub struct UrgentLine {
    /// Whose.
    pub child: DeskChild,
    /// How urgent.
    pub class: Class,
    /// Why, in one line.
    pub why: String,
    /// Where the reason is explained.
    pub why_path: String,
    /// Where to write what became of it.
    pub write_path: String,
    /// Since when, in words; `None`: a referral of a lesser class waits.
    pub since: Option<String>,
}

/// A child not seen for long.
#[derive(Debug, Clone)]
pub struct UnseenLine {
    /// Who.
    pub child: DeskChild,
    /// Days.
    pub days: i32,
    /// Whether it was ever seen.
    pub ever: bool,
}

/// A child with a food on hold for long.
#[derive(Debug, Clone)]
pub struct HeldLine {
    /// Who.
    pub child: DeskChild,
    /// Since when, in words.
    pub since: String,
}

/// The first lines of a list.
#[derive(Debug, Clone)]
pub struct Short<L> {
    /// These.
    pub lines: Vec<L>,
    /// Where the whole list stands, when there is more.
    pub whole: Option<String>,
}

impl<L> Short<L> {
    /// How many there are: these, or more than these.
    pub(super) fn said(&self, w: &Words, all: &str, more: &str) -> String {
        w.say_with(if self.whole.is_some() { more } else { all }, args!["count" => self.lines.len()])
    }
}

/// Which list, with the lines of one of its pages.
#[derive(Debug, Clone)]
pub enum Listed {
    /// Urgent referrals without an answer.
    Urgent(Vec<UrgentLine>),
    /// Children not seen for long, and after how many days they count.
    Unseen(Vec<UnseenLine>, Option<(i32, i32)>),
    /// Foods long on hold, and after how many days a hold is long.
    Held(Vec<HeldLine>, i32),
}

/// A page of the whole of a list.
#[derive(Debug, Clone)]
pub struct WholePage {
    /// The list.
    pub listed: Listed,
    /// The desk of the same day.
    pub desk: String,
    /// The first page, when this is a later one.
    pub first: Option<String>,
    /// The next page.
    pub next: Option<String>,
}

impl Listed {
    /// What the page is called.
    #[must_use]
    pub fn title(&self, w: &Words) -> String {
        w.say(match self {
            Self::Urgent(_) => "late-urgent-heading",
            Self::Unseen(..) => "late-unseen-heading",
            Self::Held(..) => "late-held-heading",
        })
    }
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &WholePage) -> Markup {
    let empty = match &p.listed {
        Listed::Urgent(lines) => lines.is_empty(),
        Listed::Unseen(lines, _) => lines.is_empty(),
        Listed::Held(lines, _) => lines.is_empty(),
    };
    html! {
        (back(w, &p.desk, &w.say("late-title")))
        h1 { (p.listed.title(w)) }
        @match &p.listed {
            Listed::Urgent(lines) => { p.quiet { (w.say("referrals-lede")) } (urgent(w, lines)) }
            Listed::Unseen(lines, days) => { (unseen_rule(w, *days)) (unseen(w, lines)) }
            Listed::Held(lines, days) => { (held_rule(w, *days)) (held(w, lines)) }
        }
        @if empty { p { (w.say("late-whole-none")) } }
        (onward(w, p.first.as_deref(), p.next.as_deref()))
    }
}

/// The way to the first and to the next page of a list.
pub fn onward(w: &Words, first: Option<&str>, next: Option<&str>) -> Markup {
    html! {
        @if first.is_some() || next.is_some() {
            p.noprint {
                @if let Some(first) = first { a.link href=(first) { (w.say("late-first-page")) } " " }
                @if let Some(next) = next { a.link href=(next) { (w.say("late-next")) } }
            }
        }
    }
}

pub(super) fn unseen_rule(w: &Words, days: Option<(i32, i32)>) -> Markup {
    html! {
        p.quiet {
            @match days {
                Some((young, older)) => (w.say_with("late-unseen-rule", args!["young" => young, "older" => older])),
                None => (w.say("late-unseen-off")),
            }
        }
    }
}

pub(super) fn held_rule(w: &Words, days: i32) -> Markup {
    html! { p.quiet { (w.say_with("late-held-rule", args!["count" => days])) } }
}

/// Referrals in rows.
pub(super) fn urgent(w: &Words, lines: &[UrgentLine]) -> Markup {
    html! { div.sidebyside { (rows(&lines.iter().map(|line| urgent_row(w, line)).collect::<Vec<_>>())) } }
}

pub(super) fn who(w: &Words, child: &DeskChild) -> Markup {
    html! { (w.say_with("late-urgent-child", args!["name" => &child.called, "age" => &child.age, "village" => &child.village])) }
}

pub(super) fn waiting_since(w: &Words, line: &UrgentLine) -> String {
    match &line.since {
        Some(date) => w.say_with("late-urgent-since", args!["date" => date, "worker" => &line.child.worker]),
        None => w.say_with("late-urgent-waiting", args!["worker" => &line.child.worker]),
    }
}

fn urgent_row(w: &Words, line: &UrgentLine) -> Markup {
    html! {
        a.link href=(line.why_path) { (who(w, &line.child)) }
        p { (cls(w, line.class)) }
        p { (line.why) " " (waiting_since(w, line)) }
        p { a.link href=(line.write_path) { (w.say("late-write-outcome")) } }
    }
}

pub(super) fn held(w: &Words, lines: &[HeldLine]) -> Markup {
    let line = |line: &HeldLine| {
        split(
            &html! { div { a.link href=(line.child.path) { (name(&line.child.called)) } p.quiet { (about(&line.child)) } } },
            &html! { span.state { (w.say_with("late-held-since", args!["date" => &line.since])) } },
        )
    };
    rows(&lines.iter().map(line).collect::<Vec<_>>())
}

/// Age, village, worker.
fn about(child: &DeskChild) -> Markup {
    html! { (child.age) ", " (child.village) ", " (name(&child.worker)) }
}

pub(super) fn unseen(w: &Words, lines: &[UnseenLine]) -> Markup {
    let line = |line: &UnseenLine| {
        split(
            &html! {
                div {
                    a.link href=(line.child.path) { (name(&line.child.called)) }
                    p.quiet {
                        (about(&line.child))
                        @if !line.ever { ", " (w.say("late-unseen-never")) }
                    }
                }
            },
            &html! { span.state { (w.say_with("common-days", args!["count" => line.days])) } },
        )
    };
    rows(&lines.iter().map(line).collect::<Vec<_>>())
}

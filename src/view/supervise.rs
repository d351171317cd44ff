//! What is late: urgent referrals without an answer first, then the late follow-ups, children not seen for long, and who could
//! use a hand. It counts nothing and decides nothing.

pub mod hand;
pub mod meeting;
#[cfg(test)]
mod tests;

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::parts::Cell;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::Select;
use crate::view::parts::Table;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::call_link;
use crate::view::parts::cls;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::rows;
use crate::view::parts::split;

/// Most strokes drawn for days late: more would only widen the column.
const MOST_STROKES: i32 = 14;

/// Days late that can be asked for (our own choice: from the weeks of a month's meetings).
const LATE_FOR: [u16; 5] = [1, 7, 14, 30, 60];

/// A child on the desk.
#[derive(Debug, Clone)]
pub struct DeskChild {
    /// Its page.
    pub path: String,
    /// What it is called.
    pub called: String,
    /// Age in words.
    pub age: String,
    /// Village.
    pub village: String,
    /// Worker.
    pub worker: String,
    /// The worker's phone.
    pub phone: Option<String>,
}

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

/// A late follow-up.
#[derive(Debug, Clone)]
pub struct LateLine {
    /// Whose.
    pub child: DeskChild,
    /// How urgent.
    pub class: Class,
    /// Why, in one line.
    pub why: String,
    /// Where the reason is explained.
    pub why_path: String,
    /// Days past due; 0 = due on this day.
    pub days: i32,
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

/// What the list is narrowed to, and what it can be narrowed to: value and words.
#[derive(Debug, Clone, Default)]
pub struct Sieve {
    /// Workers.
    pub workers: Vec<(String, String)>,
    /// Chosen.
    pub worker: String,
    /// Villages.
    pub villages: Vec<(String, String)>,
    /// Chosen.
    pub village: String,
    /// Code of the class chosen.
    pub class: String,
    /// Rules, most urgent themes first: code and name.
    pub rules: Vec<(String, String)>,
    /// Chosen.
    pub rule: String,
    /// Fewest days late, as in the address.
    pub days: String,
    /// A past day, as in the address.
    pub as_of: String,
    /// The last day that can be asked for, as in the address.
    pub today: String,
}

/// The page.
#[derive(Debug, Clone)]
pub struct LatePage {
    /// The day in words, with its weekday.
    pub day: String,
    /// Villages, workers, children in the whole scope.
    pub scope: [u64; 3],
    /// Urgent referrals without an answer.
    pub urgent: Vec<UrgentLine>,
    /// A page of late follow-ups.
    pub late: Vec<LateLine>,
    /// Late in the whole scope.
    pub late_in_all: u64,
    /// The next page.
    pub next: Option<String>,
    /// The first page, when this is a later one.
    pub first: Option<String>,
    /// The same list on paper.
    pub meeting: String,
    /// Children not seen for long.
    pub unseen: Vec<UnseenLine>,
    /// Whether more were not seen.
    pub more_unseen: bool,
    /// Children with a food on hold for long.
    pub held: Vec<HeldLine>,
    /// Whether there are more.
    pub more_held: bool,
    /// Days after which a hold is long.
    pub held_days: i32,
    /// What the list is narrowed to.
    pub sieve: Sieve,
    /// By worker and by village.
    pub hand: hand::Hands,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &LatePage) -> Markup {
    let [villages, workers, children] = p.scope;
    html! {
        h1 { (heading(w, p)) }
        p.quiet { (w.say_with("late-where", args!["date" => &p.day, "villages" => villages, "workers" => workers, "children" => children])) }
        @if children == 0 && workers == 0 { p { (w.say("late-nobody")) } }
        @if !p.urgent.is_empty() { (urgent(w, p)) }
        p { a.link href="/referrals" { (w.say("referrals-link")) } }
        (sieve(w, &p.sieve))
        h2 id="late" { (w.say("late-list-heading")) }
        (late(w, p))
        h2 id="unseen" { (w.say("late-unseen-heading")) }
        p.quiet { (w.say("late-unseen-rule")) }
        (unseen(w, p))
        @if !p.held.is_empty() { (held(w, p)) }
        (hand::hands(w, &p.hand))
    }
}

fn heading(w: &Words, p: &LatePage) -> String {
    if !p.urgent.is_empty() {
        w.say_with("late-heading-urgent", args!["count" => p.urgent.len()])
    } else if p.late_in_all > 0 {
        w.say_with("late-heading-late", args!["count" => p.late_in_all])
    } else if !p.unseen.is_empty() {
        w.say_with("late-heading-unseen", args!["count" => p.unseen.len()])
    } else {
        w.say("late-heading-none")
    }
}

/// The first referral large, the others in rows: one thing first.
fn urgent(w: &Words, p: &LatePage) -> Markup {
    let Some((first, others)) = p.urgent.split_first() else { return Markup::default() };
    let call = first
        .child
        .phone
        .as_deref()
        .map(|phone| call_link(phone, "do", &html! { (w.say_with("late-call", args!["name" => &first.child.worker])) }));
    html! {
        div.people {
            div {
                (urgent_note(w, first))
            }
            div {
                (acts(&html! {
                    @if let Some(call) = &call { (call) }
                    (link_button(&first.why_path, &html! { (w.say("late-see-why")) }, call.is_some()))
                }))
                ul.plain {
                    @if p.late_in_all > 0 { li { a.link href="#late" { (w.say_with("late-jump-late", args!["count" => p.late_in_all])) } } }
                    @if !p.unseen.is_empty() { li { a.link href="#unseen" { (w.say_with("late-jump-unseen", args!["count" => p.unseen.len()])) } } }
                }
            }
        }
        @if !others.is_empty() { div.sidebyside { (rows(&others.iter().map(|line| urgent_row(w, line)).collect::<Vec<_>>())) } }
    }
}

fn who(w: &Words, child: &DeskChild) -> Markup {
    html! { (w.say_with("late-urgent-child", args!["name" => &child.called, "age" => &child.age, "village" => &child.village])) }
}

fn waiting(w: &Words, line: &UrgentLine) -> String {
    match &line.since {
        Some(date) => w.say_with("late-urgent-since", args!["date" => date, "worker" => &line.child.worker]),
        None => w.say_with("late-urgent-waiting", args!["worker" => &line.child.worker]),
    }
}

fn urgent_note(w: &Words, line: &UrgentLine) -> Markup {
    note(
        NoteWeight::Stop,
        Icon::of_class(line.class),
        &html! {
            h2 { (who(w, &line.child)) }
            p { strong { (codes::class_word(w, line.class)) } ". " (line.why) " " (waiting(w, line)) }
            a href=(line.write_path) { (w.say("late-write-outcome")) }
        },
    )
}

fn urgent_row(w: &Words, line: &UrgentLine) -> Markup {
    html! {
        a.link href=(line.why_path) { (who(w, &line.child)) }
        p { (cls(w, line.class)) }
        p { (line.why) " " (waiting(w, line)) }
        p { a.link href=(line.write_path) { (w.say("late-write-outcome")) } }
    }
}

fn sieve(w: &Words, sieve: &Sieve) -> Markup {
    let all = || w.say("late-all");
    let classes = Class::ALL.iter().map(|class| (class.code().to_owned(), codes::class_word(w, *class)));
    let select = |field: &str, label: &str, value: &str| Select::new(field, w.say(label)).option("", all()).value(value);
    html! {
        form.sieve method="get" action="/late" aria-label=(w.say("late-sieve")) {
            (select("worker", "late-worker", &sieve.worker).options(sieve.workers.clone()))
            (select("area", "late-village", &sieve.village).options(sieve.villages.clone()))
            (select("class", "late-urgency", &sieve.class).options(classes))
            (select("rule", "late-rule", &sieve.rule).options(sieve.rules.clone()))
            (select("days", "late-days-least", &sieve.days).options(LATE_FOR.map(|days| (days.to_string(), w.say_with("late-days-from", args!["count" => days])))))
            div.field {
                label for="as_of" { (w.say("late-as-of")) }
                input type="date" id="as_of" name="as_of" value=(sieve.as_of) max=(sieve.today);
            }
            (button(&w.say("common-show"), true))
        }
    }
}

fn late(w: &Words, p: &LatePage) -> Markup {
    if p.late.is_empty() {
        return html! { p { (w.say("late-list-none")) } };
    }
    let table = Table::folding(w.say("late-list-first"))
        .column(w.say("late-column-child"), false)
        .column(w.say("late-urgency"), false)
        .column(w.say("late-column-why"), false)
        .column(w.say("late-village"), false)
        .column(w.say("late-worker"), false)
        .column(w.say("late-column-late"), false);
    let table = p.late.iter().fold(table, |table, line| {
        table.row(vec![
            Cell::of(html! { a.link href=(line.why_path) { (name(&line.child.called)) } " " span.quiet { (line.child.age) } }),
            Cell::of(cls(w, line.class)),
            Cell::text(&line.why),
            Cell::text(&line.child.village),
            Cell::of(name(&line.child.worker)),
            Cell::of(days_late(w, line.days)),
        ])
    });
    html! {
        (table)
        p.noprint { a.link href=(p.meeting) { (w.say("meeting-link")) } }
        @if p.next.is_some() || p.first.is_some() {
            p {
                @if let Some(first) = &p.first { a.link href=(first) { (w.say("late-first-page")) } " " }
                @if let Some(next) = &p.next { a.link href=(next) { (w.say("late-next")) } }
            }
        }
    }
}

/// The days in words, and as strokes: the eye finds the longest.
fn days_late(w: &Words, days: i32) -> Markup {
    if days <= 0 {
        return html! { (w.say("late-due-today")) };
    }
    let strokes = days.min(MOST_STROKES);
    let width = strokes * 8;
    html! {
        span.late {
            (w.say_with("late-days", args!["count" => days]))
            svg viewBox={ "0 0 " (width) " 10" } width=(width) height="10" aria-hidden="true" {
                @for at in 0..strokes { rect x=(at * 8) y="0" width="5" height="10" fill="currentColor" {} }
            }
        }
    }
}

fn held(w: &Words, p: &LatePage) -> Markup {
    let line = |line: &HeldLine| {
        split(
            &html! { div { a.link href=(line.child.path) { (name(&line.child.called)) } p.quiet { (about(&line.child)) } } },
            &html! { span.state { (w.say_with("late-held-since", args!["date" => &line.since])) } },
        )
    };
    html! {
        h2 id="held" { (w.say("late-held-heading")) }
        p.quiet { (w.say_with("late-held-rule", args!["count" => p.held_days])) }
        (rows(&p.held.iter().map(line).collect::<Vec<_>>()))
        @if p.more_held { p.quiet { (w.say("late-unseen-more")) } }
    }
}

/// Age, village, worker.
fn about(child: &DeskChild) -> Markup {
    html! { (child.age) ", " (child.village) ", " (name(&child.worker)) }
}

fn unseen(w: &Words, p: &LatePage) -> Markup {
    if p.unseen.is_empty() {
        return html! { p { (w.say("late-unseen-none")) } };
    }
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
    html! {
        (rows(&p.unseen.iter().map(line).collect::<Vec<_>>()))
        @if p.more_unseen { p.quiet { (w.say("late-unseen-more")) } }
    }
}

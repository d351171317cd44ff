//! What is late: urgent referrals without an answer first, then the late follow-ups, children not seen for long, and who could
//! use a hand. It counts nothing and decides nothing.

pub mod hand;
pub mod meeting;
#[cfg(test)]
mod tests;
pub mod waiting;

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
use crate::view::supervise::waiting::HeldLine;
use crate::view::supervise::waiting::Short;
use crate::view::supervise::waiting::UnseenLine;
use crate::view::supervise::waiting::UrgentLine;
use crate::view::supervise::waiting::held_rule;
use crate::view::supervise::waiting::unseen_rule;
use crate::view::supervise::waiting::waiting_since;
use crate::view::supervise::waiting::who;
use crate::view::team::UnattendedLine;
use crate::view::team::unattended;

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
    /// Children with nobody today.
    pub unattended: Vec<UnattendedLine>,
    /// The first urgent referrals without an answer.
    pub urgent: Short<UrgentLine>,
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
    /// The first children not seen for long.
    pub unseen: Short<UnseenLine>,
    /// Days after which a child counts as not seen, under and from 12 months; `None` where the protocol does not look for it.
    pub not_seen_days: Option<(i32, i32)>,
    /// The first children with a food on hold for long.
    pub held: Short<HeldLine>,
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
        @if !p.urgent.lines.is_empty() { (urgent(w, p)) }
        (unattended(w, &p.unattended))
        p { a.link href="/referrals" { (w.say("referrals-link")) } }
        (sieve(w, &p.sieve))
        h2 id="late" { (w.say("late-list-heading")) }
        (late(w, p))
        h2 id="unseen" { (w.say("late-unseen-heading")) }
        (unseen_rule(w, p.not_seen_days))
        @if p.unseen.lines.is_empty() { p { (w.say("late-unseen-none")) } } @else { (waiting::unseen(w, &p.unseen.lines)) }
        (all_of(w, p.unseen.whole.as_deref()))
        @if !p.held.lines.is_empty() {
            h2 id="held" { (w.say("late-held-heading")) }
            (held_rule(w, p.held_days))
            (waiting::held(w, &p.held.lines))
            (all_of(w, p.held.whole.as_deref()))
        }
        (hand::hands(w, &p.hand))
    }
}

fn heading(w: &Words, p: &LatePage) -> String {
    if !p.urgent.lines.is_empty() {
        p.urgent.said(w, "late-heading-urgent", "late-heading-urgent-more")
    } else if p.late_in_all > 0 {
        w.say_with("late-heading-late", args!["count" => p.late_in_all])
    } else if !p.unseen.lines.is_empty() {
        p.unseen.said(w, "late-heading-unseen", "late-heading-unseen-more")
    } else {
        w.say("late-heading-none")
    }
}

/// The way to the whole of a list that is too long for the desk.
fn all_of(w: &Words, whole: Option<&str>) -> Markup {
    html! { @if let Some(path) = whole { p { a.link href=(path) { (w.say("late-whole")) } } } }
}

/// The first referral large, the others in rows: one thing first.
fn urgent(w: &Words, p: &LatePage) -> Markup {
    let Some((first, others)) = p.urgent.lines.split_first() else { return Markup::default() };
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
                    @if !p.unseen.lines.is_empty() { li { a.link href="#unseen" { (p.unseen.said(w, "late-jump-unseen", "late-jump-unseen-more")) } } }
                }
            }
        }
        @if !others.is_empty() { (waiting::urgent(w, others)) }
        (all_of(w, p.urgent.whole.as_deref()))
    }
}

fn urgent_note(w: &Words, line: &UrgentLine) -> Markup {
    note(
        NoteWeight::Stop,
        Icon::of_class(line.class),
        &html! {
            h2 { (who(w, &line.child)) }
            p { strong { (codes::class_word(w, line.class)) } ". " (line.why) " " (waiting_since(w, line)) }
            a href=(line.write_path) { (w.say("late-write-outcome")) }
        },
    )
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
            Cell::sentence(&line.why),
            Cell::text(&line.child.village),
            Cell::of(name(&line.child.worker)),
            Cell::of(days_late(w, line.days)),
        ])
    });
    html! {
        (table)
        p.noprint { a.link href=(p.meeting) { (w.say("meeting-link")) } }
        (waiting::onward(w, p.first.as_deref(), p.next.as_deref()))
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

//! Referrals followed to their end. It decides nothing.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::back;
use crate::view::parts::cls;
use crate::view::parts::name;
use crate::view::supervise::waiting::onward;

/// A child sent, without an answer.
#[derive(Debug, Clone)]
pub struct WaitingLine {
    /// Code in links.
    pub code: String,
    /// Name, age, village, worker.
    pub who: [String; 4],
    /// How urgent, if the most urgent follow-up is known.
    pub class: Option<Class>,
    /// Why, in one line.
    pub why: String,
    /// Since when, or by when an answer is expected, in words.
    pub waits: String,
}

/// What became of one.
#[derive(Debug, Clone)]
pub struct ToldLine {
    /// Code in links.
    pub code: String,
    /// Name, age, village, worker.
    pub who: [String; 4],
    /// Of what.
    pub about: String,
    /// What.
    pub outcome: String,
    /// When it was told.
    pub on: String,
}

/// The page.
#[derive(Debug, Clone)]
pub struct ReferralsPage {
    /// A page of those without an answer.
    pub waiting: Vec<WaitingLine>,
    /// Its first page, when this is a later one.
    pub first_waiting: Option<String>,
    /// Its next page.
    pub next_waiting: Option<String>,
    /// A page of what became of the others.
    pub told: Vec<ToldLine>,
    /// Its first page, when this is a later one.
    pub first_told: Option<String>,
    /// Its next page.
    pub next_told: Option<String>,
    /// The first day that counts, in words.
    pub since: String,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &ReferralsPage) -> Markup {
    html! {
        (back(w, "/late", &w.say("late-title")))
        h1 { (heading(w, p)) }
        p.quiet { (w.say("referrals-lede")) }
        @if !p.waiting.is_empty() { (waiting_table(w, &p.waiting)) }
        (onward(w, p.first_waiting.as_deref(), p.next_waiting.as_deref()))
        h2 id="told" { (w.say_with("referrals-told", args!["date" => &p.since])) }
        @if p.told.is_empty() { p { (w.say("referrals-told-none")) } } @else { (told_table(w, &p.told)) }
        (onward(w, p.first_told.as_deref(), p.next_told.as_deref()))
    }
}

/// How many wait: all are on this page, or more than these, or these are the later ones.
fn heading(w: &Words, p: &ReferralsPage) -> String {
    let word = match (&p.first_waiting, &p.next_waiting) {
        (Some(_), _) => "referrals-further",
        (None, Some(_)) => "referrals-heading-more",
        (None, None) => "referrals-heading",
    };
    w.say_with(word, args!["count" => p.waiting.len()])
}

fn who(code: &str, [called, age, ..]: &[String; 4]) -> Markup {
    html! { a.link href={ "/children/" (code) } { (name(called)) } " " span.quiet { (age) } }
}

fn where_and_with([.., village, worker]: &[String; 4]) -> Markup {
    html! { (village) ", " (name(worker)) }
}

fn waiting_table(w: &Words, lines: &[WaitingLine]) -> Markup {
    let table = Table::folding(w.say("referrals-waiting"))
        .column(w.say("late-column-child"), false)
        .column(w.say("late-urgency"), false)
        .column(w.say("late-column-why"), false)
        .column(w.say("referrals-with"), false)
        .column(w.say("referrals-waits"), false)
        .column(w.say("referrals-next"), false);
    let table = lines.iter().fold(table, |table, line| {
        table.row(vec![
            Cell::of(who(&line.code, &line.who)),
            Cell::of(html! { @if let Some(class) = line.class { (cls(w, class)) } }),
            Cell::sentence(&line.why),
            Cell::of(where_and_with(&line.who)),
            Cell::text(&line.waits),
            Cell::of(html! {
                a href={ "/children/" (line.code) "/visits/new" } { (w.say("late-write-outcome")) } " · "
                a href={ "/children/" (line.code) "/referral" } { (w.say("referral-link")) }
            }),
        ])
    });
    html! { (table) }
}

fn told_table(w: &Words, lines: &[ToldLine]) -> Markup {
    let table = Table::folding(w.say("referrals-told-latest"))
        .column(w.say("late-column-child"), false)
        .column(w.say("late-rule"), false)
        .column(w.say("referrals-became"), false)
        .column(w.say("referrals-on"), false)
        .column(w.say("referrals-with"), false);
    let table = lines.iter().fold(table, |table, line| {
        table.row(vec![
            Cell::of(who(&line.code, &line.who)),
            Cell::text(&line.about),
            Cell::text(&line.outcome),
            Cell::text(&line.on),
            Cell::of(where_and_with(&line.who)),
        ])
    });
    html! { (table) }
}

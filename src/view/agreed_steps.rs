//! For a supervisor: which agreed steps were difficult and why, and how many were agreed and asked about. No ranking, no blame.

use domain::counsel::StepAnswer;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::child::agreed::state;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::back;
use crate::view::parts::name;
use crate::view::parts::rows;
use crate::view::supervise::waiting::onward;

/// A step that was difficult.
#[derive(Debug, Clone)]
pub struct DifficultLine {
    /// The child's page.
    pub path: String,
    /// Whose, in words.
    pub who: String,
    /// The step in words.
    pub step: String,
    /// What became of it.
    pub answer: Option<StepAnswer>,
    /// What was in the way.
    pub in_the_way: Option<String>,
    /// The day it was told, in words.
    pub told_on: String,
}

/// The page.
#[derive(Debug, Clone)]
pub struct StepsPage {
    /// The first day that counts, in words.
    pub since: String,
    /// What was difficult, latest first.
    pub difficult: Vec<DifficultLine>,
    /// The first page, when this is a later one.
    pub first: Option<String>,
    /// The next page.
    pub next: Option<String>,
    /// Worker, agreed, and told as done, in part, not done.
    pub workers: Vec<(String, u64, [u64; 3])>,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &StepsPage) -> Markup {
    html! {
        (back(w, "/team", &w.say("team-title")))
        h1 { (heading(w, p)) }
        p.quiet { (w.say_with("talk-team-lede", args!["date" => &p.since])) }
        @if p.difficult.is_empty() { p { (w.say("talk-team-none")) } }
        div.sidebyside { (rows(&p.difficult.iter().map(|line| difficult(w, line)).collect::<Vec<_>>())) }
        (onward(w, p.first.as_deref(), p.next.as_deref()))
        h2 { (w.say("talk-team-by-worker")) }
        @if p.workers.is_empty() { p { (w.say("talk-team-nobody")) } } @else {
            p.quiet { (w.say_with("talk-team-by-worker-hint", args!["date" => &p.since])) }
            (by_worker(w, p))
        }
    }
}

/// How many were difficult: all are on this page, or more than these, or these are the later ones.
fn heading(w: &Words, p: &StepsPage) -> String {
    let word = match (&p.first, &p.next) {
        (Some(_), _) => "talk-team-further",
        (None, Some(_)) => "talk-team-over",
        (None, None) => "talk-team-heading",
    };
    w.say_with(word, args!["count" => p.difficult.len()])
}

fn difficult(w: &Words, line: &DifficultLine) -> Markup {
    html! {
        p { a.link href={ (line.path) "#agreed" } { (line.who) } }
        p { (name(&line.step)) }
        p { (state(w, line.answer)) " · " (line.told_on) }
        @if let Some(way) = &line.in_the_way { p { (w.say_with("talk-way", args!["words" => way])) } }
    }
}

fn by_worker(w: &Words, p: &StepsPage) -> Markup {
    let table =
        Table::folding(w.say("talk-team-by-worker")).column(w.say("talk-team-worker"), false).column(w.say("talk-team-agreed"), true);
    let table = StepAnswer::ALL.iter().fold(table, |table, answer| table.column(codes::step_answer(w, *answer), true));
    let table = p.workers.iter().fold(table, |table, (worker, agreed, told)| {
        let mut cells = vec![Cell::of(name(worker)), Cell::number(&agreed.to_string())];
        cells.extend(told.iter().map(|n| Cell::number(&n.to_string())));
        table.row(cells)
    });
    html! { (table.headed()) }
}

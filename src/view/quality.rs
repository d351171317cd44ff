//! How well measuring goes, and what to try together. It counts nothing, and puts nobody before anybody.

use domain::quality::Item;
use domain::quality::LEAST;
use domain::quality::Limit;
use domain::quality::Said;
use domain::quality::figures::Figures;
use domain::quality::figures::usual_sd;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Cell;
use crate::view::parts::Select;
use crate::view::parts::Table;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::label;
use crate::view::parts::name;

/// The page.
pub struct QualityPage<'a> {
    /// First and last day in words.
    pub days: [String; 2],
    /// Months that can be chosen: value and words.
    pub months: Vec<(String, String)>,
    /// The one chosen; empty = the last days.
    pub month: String,
    /// Everybody together.
    pub all: &'a Figures,
    /// Name and figures, by name.
    pub workers: Vec<(&'a str, &'a Figures)>,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &QualityPage<'_>) -> Markup {
    let [from, to] = &p.days;
    let asked: Vec<Item> = Item::ALL.into_iter().filter(|item| looked_at(p, *item)).collect();
    html! {
        (back(w, "/team", &w.say("team-title")))
        h1 { (w.say_with("quality-heading", args!["count" => p.all.quality.visits])) }
        p { b { (w.say("pic-team-inside")) } }
        p.quiet { (w.say_with("quality-days", args!["from" => from, "to" => to])) }
        form.sieve method="get" action="/quality" aria-label=(w.say("quality-sieve")) {
            (Select::new("month", w.say("common-month")).option("", w.say("quality-recent")).options(p.months.clone()).value(&p.month))
            (button(&w.say("common-show"), true))
        }
        p { (w.say_with("quality-lede", args!["least" => LEAST])) }
        (table(w, p))
        @if !asked.is_empty() {
            h2 { (w.say("quality-try")) }
            ul { @for item in asked { li { b { (label(w, &w.say(&id(item, "")))) } " " (w.say(&id(item, "-do"))) } } }
        }
        h2 { (w.say("quality-spread")) }
        p.quiet { (w.say("quality-spread-hint")) }
        (spread(w, p.all))
        p { a.link href={ "/quality.csv" @if !p.month.is_empty() { "?month=" (p.month) } } { (w.say("quality-file")) } }
        p.quiet { (w.say("quality-sources")) }
    }
}

fn id(item: Item, part: &str) -> String {
    format!("quality-{}{part}", item.code().replace('_', "-"))
}

fn looked_at(p: &QualityPage<'_>, item: Item) -> bool {
    let again = |of: &Figures| of.look_again().any(|at| at == item);
    again(p.all) || p.workers.iter().any(|(_, of)| again(of))
}

fn table(w: &Words, p: &QualityPage<'_>) -> Markup {
    let table = Table::folding(w.say("quality-by-worker")).column(w.say("late-worker"), false).column(w.say("quality-visits"), true);
    let table = Item::ALL.into_iter().fold(table, |table, item| table.column(w.say(&id(item, "")), true));
    let table = table.column(w.say("quality-arrival"), true).column(w.say("quality-corrected"), true);
    let line = |who: Markup, of: &Figures| {
        let q = &of.quality;
        let mut cells = vec![Cell::of(who), Cell::number(&q.visits.to_string())];
        cells.extend(q.items.iter().map(|(_, said)| cell(w, *said)));
        cells.push(Cell::number(&q.arrival_days.map_or_else(String::new, |days| days.to_string())));
        cells.push(Cell::number(&q.corrected.to_string()));
        cells
    };
    let table = p.workers.iter().fold(table, |table, (worker, of)| table.row(line(name(worker), of)));
    let table = table.row(line(html! { b { (w.say("late-all-row")) } }, p.all));
    let mut limits = vec![Cell::text(&w.say("quality-limits")), Cell::few("")];
    limits.extend(Item::ALL.map(|item| Cell::number(&limit(w, item))));
    limits.extend([Cell::few(""), Cell::few("")]);
    html! { (table.foot(limits)) }
}

fn limit(w: &Words, item: Item) -> String {
    match item.limit() {
        Limit::Above(limit) => w.say_with("quality-above", args!["limit" => format::number(w, limit, 0)]),
        Limit::Below(limit) => w.say_with("quality-below", args!["limit" => format::number(w, limit, 0)]),
    }
}

fn cell(w: &Words, said: Said) -> Cell {
    match said {
        Said::TooFew => Cell::few(&w.say("quality-too-few")),
        Said::Even(value) => Cell::number(&format::number(w, value, 0)),
        Said::LookAgain(value) => Cell::told(html! { b { (format::number(w, value, 0)) " " (w.say("quality-look")) } }),
    }
}

/// How far the z-scores of everybody together lie apart, beside what surveys found.
fn spread(w: &Words, of: &Figures) -> Markup {
    let table = Table::folding(w.say("quality-spread-caption"))
        .column(w.say("quality-index"), false)
        .column(w.say("quality-n"), true)
        .column(w.say("quality-mean"), true)
        .column(w.say("quality-sd"), true)
        .column(w.say("quality-usual"), true)
        .column(w.say("quality-outside"), true);
    let figure = |value: Option<f64>, digits| match value {
        Some(value) => Cell::number(&format::number(w, value, digits)),
        None => Cell::few(&w.say("quality-too-few")),
    };
    let table = of.spread.iter().fold(table, |table, spread| {
        let usual = usual_sd(spread.indicator).map_or_else(String::new, |(from, to)| {
            w.say_with("quality-from-to", args!["from" => format::number(w, from, 2), "to" => format::number(w, to, 2)])
        });
        table.row(vec![
            Cell::text(&codes::indicator(w, spread.indicator)),
            Cell::number(&spread.n.to_string()),
            figure(spread.mean, 2),
            figure(spread.sd, 2),
            Cell::number(&usual),
            figure(spread.outside_pct, 1),
        ])
    });
    html! { (table.headed()) }
}

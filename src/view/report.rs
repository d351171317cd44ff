//! The report of a month, quarter or year: what was due and done, who is in the programme, growth, feeding, follow-ups, and the files.
//! It shows cells as they were released and works out nothing but percentages of two shown counts.

pub mod files;
mod papers;
mod released;
mod sections;
#[cfg(test)]
mod tests;

use domain::report::compare::Change;
use domain::report::csv_table::Cell as Figure;
use domain::report::csv_table::Table as Figures;
use domain::report::period::Period;
use domain::report::suppress::Reason;
use domain::report::visits;
use maud::Markup;
use maud::html;

use crate::args;
use crate::files::csvw;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::parts::Cell;
use crate::view::parts::Select;
use crate::view::parts::button;
use crate::view::parts::name;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct ReportPage<'a> {
    /// The programme's name: paper goes on without the page around it.
    pub programme: &'a str,
    /// The period.
    pub period: Period,
    /// Periods that can be chosen.
    pub periods: Vec<Period>,
    /// Code of the area chosen; empty: all of them.
    pub area: String,
    /// Areas that can be chosen: code and name.
    pub areas: Vec<(String, String)>,
    /// Whether the figures stand.
    pub state: Shown,
    /// All releases of the period, latest first: number and day, in words. None while provisional.
    pub revisions: Vec<(u32, String)>,
    /// What the revision shown changed.
    pub changes: &'a [Change],
    /// When late records are told next, in words.
    pub next_on: String,
    /// Counts below this are kept private.
    pub threshold: u64,
    /// The tables.
    pub tables: &'a [Figures],
}

/// Whether the figures stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shown {
    /// They may change up to this day, in words.
    Provisional(String),
    /// A release.
    Released {
        /// 0 for the first.
        revision: u32,
        /// Its day, in words.
        on: String,
    },
}

pub use released::trouble;

/// The code of a total.
const ALL: &str = "all";

impl ReportPage<'_> {
    fn table(&self, name: &str) -> Option<&Figures> {
        self.tables.iter().find(|table| table.name == name)
    }

    /// The area whose figures stand alone: the one chosen, or all.
    fn place(&self) -> &str {
        if self.area.is_empty() { ALL } else { &self.area }
    }

    /// The rows of tables by area: codes and names. Empty where only the whole programme is published.
    fn places(&self) -> Vec<(&str, &str)> {
        let published = |code: &str| self.table("visits").is_some_and(|table| table.find(&[("area", code)]).is_some());
        self.areas
            .iter()
            .filter(|(code, _)| (self.area.is_empty() || self.area == *code) && published(code))
            .map(|(code, name)| (code.as_str(), name.as_str()))
            .collect()
    }

    /// A figure of a table's row; a row that is not there has none.
    fn figure(&self, table: &str, row: &[(&str, &str)], column: &str) -> Figure {
        let found = self.table(table).and_then(|table| table.find(row).and_then(|cells| table.cell(cells, column)));
        found.cloned().unwrap_or(Figure::Empty)
    }
}

/// A figure as shown: numbers in the language of the page, what is private hatched.
fn shown(w: &Words, figure: &Figure) -> Cell {
    match figure {
        Figure::Count(count) => Cell::number(&format::count(w, *count)),
        Figure::Percent(tenths) => Cell::number(&format::number(w, f64::from(*tenths) / 10.0, 1)),
        Figure::Withheld(Reason::Private) => Cell::kept(&w.say("report-private")),
        Figure::Withheld(Reason::Few) => Cell::kept(&w.say("report-few")),
        Figure::Text(text) => Cell::text(text),
        Figure::Date(day) => Cell::number(&format::day(w, *day)),
        Figure::Instant(_) | Figure::Empty => Cell::number(""),
    }
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &ReportPage<'_>) -> Markup {
    let body = html! {
        p.paper { b { (name(p.programme)) } }
        h1 { (heading(w, p)) }
        p.quiet { (under(w, p)) }
        (released::state(w, p))
        (sieve(w, p.period, &p.periods, Some((&p.area, &p.areas))))
        (pictures(w, p))
        @if p.places().is_empty() && p.area.is_empty() { p { (w.say("report-few-areas")) } }
        (sections::visits(w, p))
        (sections::low_weight(w, p))
        (sections::growth(w, p))
        (kept(w, p))
        div.people {
            div { (sections::enrolment(w, p)) }
            div { (sections::feeding(w, p)) }
        }
        (sections::follow_ups(w, p))
        (sections::reactions(w, p))
        (released::changes(w, p))
        div.noprint { (files(w, p)) (released::revisions(w, p)) }
        (cautions(w))
    };
    html! { div.report { (body) } }
}

/// The way to the pictures, which are of months.
fn pictures(w: &Words, p: &ReportPage<'_>) -> Markup {
    let area = if p.area.is_empty() { String::new() } else { format!("&area={}", p.area) };
    let month = p.period.last_month();
    html! {
        @if p.period == Period::Month(month) { p.noprint { a.link href={ "/reports/pictures?period=" (month) (area) } { (w.say("pic-link")) } } }
    }
}

/// The answer first: how many of the visits due were done, if that may be said.
fn heading(w: &Words, p: &ReportPage<'_>) -> String {
    let month = format::period(w, p.period);
    let row = [("area", p.place()), ("slot", ALL)];
    let figure = |column| p.figure("visits", &row, column);
    let done = visits::done(figure);
    match (done, figure("due")) {
        (Figure::Count(done), Figure::Count(due)) => {
            w.say_with("report-heading-done", args!["month" => month, "done" => format::count(w, done), "due" => format::count(w, due)])
        }
        _ => w.say_with("report-heading", args!["month" => month]),
    }
}

fn under(w: &Words, p: &ReportPage<'_>) -> String {
    let place = p.areas.iter().find(|(code, _)| *code == p.area).map_or_else(|| w.say("report-all-areas"), |(_, name)| name.clone());
    w.say_with("report-under", args!["place" => place])
}

/// Chooses another time, and an area where there are some.
fn sieve(w: &Words, period: Period, periods: &[Period], areas: Option<(&str, &[(String, String)])>) -> Markup {
    let periods = periods.iter().map(|period| (period.to_string(), format::period(w, *period)));
    html! {
        form.sieve method="get" action="/reports" aria-label=(w.say("report-sieve")) {
            (Select::new("period", w.say("release-period")).options(periods).value(period.to_string()))
            @if let Some((area, areas)) = areas {
                (Select::new("area", w.say("report-area")).option("", w.say("report-all-areas")).options(areas.to_vec()).value(area))
            }
            (button(&w.say("common-show"), true))
        }
    }
}

/// Why some figures are private.
fn kept(w: &Words, p: &ReportPage<'_>) -> Markup {
    html! {
        p.quiet { (w.say_with("report-kept", args!["threshold" => p.threshold])) }
        p.quiet { (w.say("report-could-lie")) }
    }
}

fn files(w: &Words, p: &ReportPage<'_>) -> Markup {
    let one = |name: &str, words: &str| {
        html! { a.link href={ "/reports/" (p.period) "/" (name) (released::suffix(p)) } download { (words) } }
    };
    let file = |name: &str, what: &str| html! { li { (one(name, name)) " " span.quiet { (w.say(what)) } } };
    html! {
        h2 id="files" { (w.say_with("report-files", args!["month" => format::period(w, p.period)])) }
        p { (w.say("report-files-what")) }
        ul.plain {
            (file(files::ARCHIVE, "file-archive"))
            (file(files::SUMMARY, "file-summary"))
            (file(files::README, "file-readme"))
            @for table in p.tables {
                li {
                    (one(&files::for_machines(table), &files::for_machines(table)))
                    " " span.quiet { (papers::table_words(w, table.name)) }
                    " · " (one(&files::for_spreadsheet(table), &w.say("file-spreadsheet")))
                    " · " (one(&csvw::name(table), &w.say("file-description")))
                }
            }
        }
    }
}

fn cautions(w: &Words) -> Markup {
    html! {
        h2 { (w.say("report-cautions")) }
        ul { @for caution in ["survey", "rounded", "late", "age", "missing", "definitions"] { li { (w.say(&format!("report-caution-{caution}"))) } } }
    }
}

//! Which release of a period is shown, what it changed, and the others to open; and the page where there is no report.

use domain::report::checks::Fault;
use domain::report::compare::Change;
use domain::report::csv_table::Cell as Figure;
use domain::report::period::Period;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::release_faults;
use crate::view::parts::Cell;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::Table;
use crate::view::parts::details;
use crate::view::parts::note;
use crate::view::report::ReportPage;
use crate::view::report::Shown;
use crate::view::report::shown;
use crate::view::report::sieve;

/// Changes listed on the page; the files tell the others.
const LISTED: usize = 50;

fn name(w: &Words, revision: u32) -> String {
    if revision == 0 { w.say("release-name-first") } else { w.say_with("release-name-revision", args!["revision" => revision]) }
}

fn address(p: &ReportPage<'_>, revision: Option<u32>) -> String {
    let area = if p.area.is_empty() { String::new() } else { format!("&area={}", p.area) };
    let revision = revision.map_or_else(String::new, |revision| format!("&revision={revision}"));
    format!("/reports?period={}{area}{revision}", p.period)
}

fn latest(p: &ReportPage<'_>) -> Option<u32> {
    p.revisions.first().map(|(revision, _)| *revision)
}

/// What the addresses of files end with: an older release names itself.
pub(super) fn suffix(p: &ReportPage<'_>) -> String {
    match p.state {
        Shown::Released { revision, .. } if latest(p) != Some(revision) => format!("?revision={revision}"),
        _ => String::new(),
    }
}

/// Whether the figures stand, and until when they may change.
pub(super) fn state(w: &Words, p: &ReportPage<'_>) -> Markup {
    let next = p.next_on.as_str();
    match &p.state {
        Shown::Provisional(until) => {
            let told = w.say_with("release-provisional", args!["date" => until, "on" => next]);
            note(NoteWeight::Look, Icon::Info, &html! { p { (told) } })
        }
        Shown::Released { revision, on } if latest(p) != Some(*revision) => {
            let told = w.say_with("release-older", args!["name" => name(w, *revision), "date" => on]);
            note(NoteWeight::Look, Icon::Info, &html! { p { (told) " " a href=(address(p, None)) { (w.say("release-see-latest")) } } })
        }
        Shown::Released { revision: 0, on } => {
            html! { p { (w.say_with("release-first", args!["date" => on, "on" => next, "least" => p.threshold])) } }
        }
        Shown::Released { revision, on } => {
            html! {
                p {
                    (w.say_with("release-revision", args!["revision" => *revision, "date" => on, "on" => next, "least" => p.threshold]))
                    @if !p.changes.is_empty() {
                        " " a.noprint href="#changes" { (w.say_with("release-changes-see", args!["count" => p.changes.len()])) }
                    }
                }
            }
        }
    }
}

/// The list of changes of the revision shown.
pub(super) fn changes(w: &Words, p: &ReportPage<'_>) -> Markup {
    let Shown::Released { revision, .. } = p.state else { return html! {} };
    if p.changes.is_empty() {
        return html! {};
    }
    let heading = w.say_with("release-changes", args!["revision" => revision]);
    let table = Table::scrolling(&heading).headed().column(w.say("release-figure"), false);
    let table = table.column(w.say("release-was"), true).column(w.say("release-now"), true);
    let listed = p.changes.iter().take(LISTED);
    let table = listed.fold(table, |table, change| {
        let figure = |figure: &Figure| match figure {
            Figure::Empty => Cell::number(&w.say("release-nothing")),
            figure => shown(w, figure),
        };
        table.row(vec![Cell::of(html! { span.ltr { (place(change)) } }), figure(&change.was), figure(&change.now)])
    });
    let more = p.changes.len().saturating_sub(LISTED);
    html! {
        h2 id="changes" { (heading) }
        p { (w.say_with("release-changes-count", args!["count" => p.changes.len()])) }
        (table)
        @if more > 0 { p.quiet { (w.say_with("release-changes-more", args!["count" => more])) } }
    }
}

/// A figure by file, row and column, as in the files.
fn place(change: &Change) -> String {
    let row: Vec<&str> = change.row.iter().map(|(_, code)| code.as_str()).collect();
    format!("{}.csv · {} · {}", change.table, row.join(" · "), change.column)
}

/// Every release of the period.
pub(super) fn revisions(w: &Words, p: &ReportPage<'_>) -> Markup {
    if p.revisions.len() < 2 {
        return html! {};
    }
    let one = |revision: u32, on: &str| w.say_with("release-of", args!["name" => name(w, revision), "date" => on]);
    let list = html! {
        ul.plain {
            @for (revision, on) in &p.revisions {
                li { a.link href=(address(p, Some(*revision))) { (one(*revision, on)) } }
            }
        }
    };
    html! { h2 id="revisions" { (w.say("release-revisions")) } (list) }
}

/// The page where there is no report: a sentence, another time to choose, and what is wrong with the figures where that is why.
#[must_use]
pub fn trouble(w: &Words, sentence: &str, period: Period, periods: &[Period], faults: &[Fault]) -> Markup {
    html! {
        h1 { (if faults.is_empty() { w.say("release-trouble") } else { w.say("release-faults") }) }
        @if faults.is_empty() {
            p.lede { (sentence) }
        } @else {
            (note(NoteWeight::Stop, Icon::Info, &html! {
                p { (w.say("release-faults-what")) }
                ul { @for fault in faults.iter().take(LISTED) { li { (release_faults::fault(w, fault)) } } }
            }))
            @if faults.len() > LISTED { (details(&w.say_with("release-changes-more", args!["count" => faults.len() - LISTED]), false, &html! {})) }
        }
        (sieve(w, period, periods, None))
    }
}

//! The late follow-ups on paper for the weekly meeting: by worker, with room for what is agreed. It decides nothing.

use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::back;
use crate::view::parts::cls;
use crate::view::parts::name;
use crate::view::supervise::LateLine;

/// The sheet.
#[derive(Debug, Clone)]
pub struct MeetingSheet {
    /// The day in words, with its weekday.
    pub day: String,
    /// Every late follow-up that was asked for, longest past its clock first.
    pub late: Vec<LateLine>,
    /// There are more than fit.
    pub more: bool,
    /// The list on the screen.
    pub list: String,
    /// The same as a file.
    pub file: String,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &MeetingSheet) -> Markup {
    let mut workers: Vec<&str> = p.late.iter().map(|line| line.child.worker.as_str()).collect();
    workers.sort_unstable();
    workers.dedup();
    html! {
        (back(w, &p.list, &w.say("late-title")))
        h1 { (w.say_with("meeting-heading", args!["count" => p.late.len()])) }
        p.quiet { (p.day) ". " (w.say("meeting-inside")) }
        p.noprint { (w.say("meeting-how")) " " a.link href=(p.file) download { (w.say("meeting-file")) } }
        @if p.more { p { (w.say("meeting-more")) } }
        @for worker in workers {
            div.meeting { (of_worker(w, worker, p.late.iter().filter(|line| line.child.worker == worker))) }
        }
    }
}

fn of_worker<'a>(w: &Words, worker: &str, lines: impl Iterator<Item = &'a LateLine>) -> Markup {
    let table = Table::folding(worker)
        .column(w.say("late-column-child"), false)
        .column(w.say("late-urgency"), false)
        .column(w.say("late-column-why"), false)
        .column(w.say("late-column-late"), true)
        .column(w.say("meeting-agreed"), false);
    let table = lines.fold(table, |table, line| {
        let days = if line.days > 0 { w.say_with("common-days", args!["count" => line.days]) } else { w.say("late-due-today") };
        table.row(vec![
            Cell::of(html! { a href=(line.child.path) { (name(&line.child.called)) } " " span.quiet { (line.child.age) ", " (line.child.village) } }),
            Cell::of(cls(w, line.class)),
            Cell::sentence(&line.why),
            Cell::number(&days),
            Cell::text(""),
        ])
    });
    html! { (table) }
}

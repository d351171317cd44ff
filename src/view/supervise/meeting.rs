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
use crate::view::supervise::DeskChild;
use crate::view::supervise::LateLine;
use crate::view::supervise::waiting::UrgentLine;
use crate::view::supervise::waiting::waiting_since;

/// The sheet.
#[derive(Debug, Clone)]
pub struct MeetingSheet {
    /// The day in words, with its weekday.
    pub day: String,
    /// Urgent referrals without an answer, which stand first.
    pub urgent: Vec<UrgentLine>,
    /// Every other late follow-up that was asked for, longest past its clock first.
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
    let children = p.urgent.iter().map(|line| &line.child).chain(p.late.iter().map(|line| &line.child));
    let mut workers: Vec<&str> = children.map(|child| child.worker.as_str()).collect();
    workers.sort_unstable();
    workers.dedup();
    html! {
        (back(w, &p.list, &w.say("late-title")))
        h1 { (w.say_with("meeting-heading", args!["count" => p.late.len()])) }
        p.quiet { (p.day) ". " (w.say("meeting-inside")) }
        @if !p.urgent.is_empty() { p { strong { (w.say_with("meeting-urgent", args!["count" => p.urgent.len()])) } } }
        p.noprint { (w.say("meeting-how")) " " a.link href=(p.file) download { (w.say("meeting-file")) } }
        @if p.more { p { (w.say("meeting-more")) } }
        @for worker in workers {
            div.meeting { (of_worker(w, worker, p)) }
        }
    }
}

fn of_worker(w: &Words, worker: &str, p: &MeetingSheet) -> Markup {
    let table = Table::folding(worker)
        .column(w.say("late-column-child"), false)
        .column(w.say("late-urgency"), false)
        .column(w.say("late-column-why"), false)
        .column(w.say("late-column-late"), true)
        .column(w.say("meeting-agreed"), false);
    let child = |child: &DeskChild| {
        Cell::of(html! { a href=(child.path) { (name(&child.called)) } " " span.quiet { (child.age) ", " (child.village) } })
    };
    // Two lines to write on; a screen shows none.
    let agreed = || Cell::of(html! { span.write {} span.write {} });
    let table = p.urgent.iter().filter(|line| line.child.worker == worker).fold(table, |table, line| {
        table.row(vec![
            child(&line.child),
            Cell::of(cls(w, line.class)),
            Cell::of(html! { (line.why) " " b { (waiting_since(w, line)) } }),
            Cell::number(&w.say("meeting-unanswered")),
            agreed(),
        ])
    });
    let table = p.late.iter().filter(|line| line.child.worker == worker).fold(table, |table, line| {
        let days = if line.days > 0 { w.say_with("common-days", args!["count" => line.days]) } else { w.say("late-due-today") };
        table.row(vec![child(&line.child), Cell::of(cls(w, line.class)), Cell::sentence(&line.why), Cell::number(&days), agreed()])
    });
    html! { (table) }
}

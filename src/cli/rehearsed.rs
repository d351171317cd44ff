//! A rehearsal as text for a terminal: counts in columns, and the children behind them by code if asked for.

use domain::rule::Class;

use crate::service::rehearse::Change;
use crate::service::rehearse::Entry;
use crate::service::rehearse::Kind;
use crate::service::rehearse::Rehearsal;
use crate::service::rehearse::Tally;
use crate::service::rehearse::WEEKS;

/// The whole rehearsal in lines.
#[must_use]
pub fn told(r: &Rehearsal, children: bool) -> String {
    let mut lines = vec![
        format!("{} {} instead of {} {}, as of {}", r.to.0, r.to.1, r.from.0, r.from.1, r.as_of),
        "Each child's whole story is judged as if the new protocol had been in force throughout. Nothing was kept or changed.".to_owned(),
        String::new(),
        format!("{} children looked at, {} of them touched", r.children, r.touched),
        format!("children on the list: {} now, {} then", r.on_list.0, r.on_list.1),
        format!("new follow-ups a week (mean of the last {WEEKS} weeks): {} now, {} then", a_week(r.all.new_now), a_week(r.all.new_then)),
        String::new(),
    ];
    let classes = Class::ALL.iter().filter_map(|class| r.by_class.get(class).map(|counts| (class.code(), counts)));
    lines.push(format!("{:<28}{:>8}{:>8}", "class", "now", "then"));
    lines.extend(classes.map(|(class, (now, then))| format!("{class:<28}{now:>8}{then:>8}")));
    table(&mut lines, "rule", &r.all, r.by_rule.iter().map(|(rule, tally)| (rule.code(), tally)));
    table(&mut lines, "area", &r.all, r.by_area.iter().map(|(name, tally)| (name.as_str(), tally)));
    table(&mut lines, "worker", &r.all, r.by_worker.iter().map(|(name, tally)| (name.as_str(), tally)));
    if children {
        lines.push(String::new());
        lines.extend(r.changes.iter().map(child));
    }
    lines.join("\n") + "\n"
}

fn table<'a>(lines: &mut Vec<String>, head: &str, all: &Tally, rows: impl Iterator<Item = (&'a str, &'a Tally)>) {
    lines.push(String::new());
    lines.push(format!(
        "{head:<28}{:>8}{:>8}{:>8}{:>8}{:>8}{:>8}{:>8}{:>10}{:>10}",
        "now", "opened", "closed", "raised", "lowered", "moved", "then", "week now", "week then"
    ));
    lines.extend(rows.map(|(name, tally)| row(name, tally)));
    lines.push(row("all", all));
}

fn row(name: &str, t: &Tally) -> String {
    format!(
        "{name:<28}{:>8}{:>8}{:>8}{:>8}{:>8}{:>8}{:>8}{:>10}{:>10}",
        t.now,
        t.opened,
        t.closed,
        t.raised,
        t.lowered,
        t.moved,
        t.then,
        a_week(t.new_now),
        a_week(t.new_then)
    )
}

/// A count of the last weeks as a mean of one week, with one decimal.
fn a_week(count: u64) -> String {
    let tenths = (count * 10 + 2) / u64::from(WEEKS.unsigned_abs());
    format!("{}.{}", tenths / 10, tenths % 10)
}

fn child(change: &Change) -> String {
    let kind = match change.kind {
        Kind::Opened => "opened",
        Kind::Closed => "closed",
        Kind::Raised => "raised",
        Kind::Lowered => "lowered",
        Kind::Moved => "moved",
    };
    let entry =
        |entry: Option<Entry>| entry.map_or_else(|| "-".to_owned(), |(class, due)| format!("{} {due}", class.map_or("list", Class::code)));
    format!(
        "{} {} {kind}: {} -> {} ({}, {})",
        change.child,
        change.rule.code(),
        entry(change.now),
        entry(change.then),
        change.area,
        change.worker
    )
}

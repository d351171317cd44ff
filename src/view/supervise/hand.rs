//! Who could use a hand: children and follow-ups by worker and by village. For support, never a ranking: rows stand by name.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::icons::Icon;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::cls;

/// Numbers of one worker or village.
#[derive(Debug, Clone, Default)]
pub struct HandRow {
    /// Name.
    pub name: String,
    /// Children.
    pub children: u64,
    /// Open follow-ups.
    pub open: u64,
    /// Late ones, in the order of [`Class::ALL`].
    pub late: [u64; 6],
}

/// Both tables.
#[derive(Debug, Clone, Default)]
pub struct Hands {
    /// By worker, by name.
    pub workers: Vec<HandRow>,
    /// By village, by name.
    pub villages: Vec<HandRow>,
    /// Who has the most late follow-ups, when somebody has.
    pub most: Option<String>,
}

pub(super) fn hands(w: &Words, hands: &Hands) -> Markup {
    let shown: Vec<Class> = Class::ALL
        .iter()
        .copied()
        .enumerate()
        .filter(|(at, _)| *at < 5 || hands.workers.iter().any(|r| r.late[*at] > 0))
        .map(|(_, c)| c)
        .collect();
    html! {
        h2 id="workers" { (w.say("late-hand-heading")) }
        p {
            @match &hands.most {
                Some(name) => { (w.say_with("late-hand-most", args!["name" => name])) }
                None => { (w.say("late-hand-none")) }
            }
            " " (w.say("late-move")) " " a.link href="/team" { (w.say("late-team")) }
        }
        @if !hands.workers.is_empty() {
            div.people {
                (table(w, "late-by-worker", "late-worker", &hands.workers, &shown))
                (table(w, "late-by-village", "late-village", &hands.villages, &shown))
            }
            p.quiet {
                (w.say("late-hand-note")) " " (w.say("late-hand-key"))
                @for class in &shown { " " (cls(w, *class)) }
            }
        }
    }
}

fn table(w: &Words, caption: &str, first: &str, rows: &[HandRow], shown: &[Class]) -> Markup {
    let number = |n: u64| Cell::number(&format::count(w, n));
    let cells = |row: &HandRow| {
        let mut cells = vec![Cell::text(&row.name), number(row.children), number(row.open)];
        cells.extend(shown.iter().map(|class| number(row.late[*class as usize])));
        cells
    };
    let mut table =
        Table::scrolling(w.say(caption)).column(w.say(first), false).column(w.say("late-children"), true).column(w.say("late-open"), true);
    for class in shown {
        let said = w.say_with("late-shape-head", args!["class" => codes::class_word(w, *class)]);
        table = table.shape_column(&Icon::of_class(*class).draw("u"), said);
    }
    for row in rows {
        table = table.row(cells(row));
    }
    if rows.len() > 1 {
        let mut all = HandRow { name: w.say("late-all-row"), ..HandRow::default() };
        for row in rows {
            all.children += row.children;
            all.open += row.open;
            for (sum, late) in all.late.iter_mut().zip(row.late) {
                *sum += late;
            }
        }
        table = table.foot(cells(&all));
    }
    html! { (table) }
}

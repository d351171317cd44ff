//! The counts of a rehearsal as tables.

use domain::rule::Class;
use domain::rule::RuleId;
use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::cls;
use crate::view::parts::details;
use crate::view::parts::name;

/// Counts of a row: now, opened, closed, raised, lowered, other day, then; and new ones a week, now and then.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counts {
    /// The seven counts.
    pub list: [u64; 7],
    /// Means of a week.
    pub a_week: [f64; 2],
}

impl Counts {
    /// Whether an entry would change, or how many are new a week.
    fn changes(&self) -> bool {
        self.list[1..6].iter().any(|count| *count > 0) || (self.a_week[0] - self.a_week[1]).abs() > f64::EPSILON
    }
}

/// Every count.
#[derive(Debug, Clone)]
pub struct Numbers {
    /// Children on the list, now and then.
    pub children: [u64; 2],
    /// All.
    pub all: Counts,
    /// By class, now and then.
    pub by_class: Vec<(Class, [u64; 2])>,
    /// By rule.
    pub by_rule: Vec<(RuleId, Counts)>,
    /// By village.
    pub by_area: Vec<(String, Counts)>,
    /// By worker.
    pub by_worker: Vec<(String, Counts)>,
}

impl Numbers {
    /// The tables: work first, then by rule, village and worker.
    #[must_use]
    pub fn tables(&self, w: &Words) -> Markup {
        let (changed, same): (Vec<_>, Vec<_>) = self.by_rule.iter().partition(|(_, counts)| counts.changes());
        let rules = |of: Vec<&(RuleId, Counts)>| {
            of.into_iter().map(|(rule, counts)| (html! { (codes::rule_name(w, *rule)) }, *counts)).collect::<Vec<_>>()
        };
        let people = |lines: &[(String, Counts)]| lines.iter().map(|(who, counts)| (name(who), *counts)).collect::<Vec<_>>();
        html! {
            (self.work(w))
            (self.classes(w))
            h2 { (w.say("rehearse-by-rule")) }
            (self.grid(w, "rehearse-by-rule", "rehearse-rule", rules(changed), true))
            @if !same.is_empty() {
                (details(&w.say("rehearse-unchanged"), false, &self.grid(w, "rehearse-unchanged", "rehearse-rule", rules(same), false)))
            }
            h2 { (w.say("rehearse-by-area")) }
            (self.grid(w, "rehearse-by-area", "rehearse-area", people(&self.by_area), true))
            h2 { (w.say("rehearse-by-worker")) }
            (self.grid(w, "rehearse-by-worker", "rehearse-worker", people(&self.by_worker), true))
        }
    }

    fn work(&self, w: &Words) -> Markup {
        let count = |n: u64| Cell::number(&format::count(w, n));
        let week = |n: f64| Cell::number(&format::number(w, n, 1));
        let table = Table::scrolling(w.say("rehearse-work"))
            .headed()
            .column("", false)
            .column(w.say("rehearse-now"), true)
            .column(w.say("rehearse-then"), true)
            .row(vec![Cell::text(&w.say("rehearse-work-open")), count(self.all.list[0]), count(self.all.list[6])])
            .row(vec![Cell::text(&w.say("rehearse-work-week")), week(self.all.a_week[0]), week(self.all.a_week[1])])
            .row(vec![Cell::text(&w.say("rehearse-work-children")), count(self.children[0]), count(self.children[1])]);
        html! { h2 id="work" { (w.say("rehearse-work")) } (table) }
    }

    fn classes(&self, w: &Words) -> Markup {
        let table = Table::scrolling(w.say("rehearse-by-class"))
            .headed()
            .column(w.say("doc-class"), false)
            .column(w.say("rehearse-now"), true)
            .column(w.say("rehearse-then"), true);
        let row = |table: Table, (class, [now, then]): &(Class, [u64; 2])| {
            table.row(vec![Cell::of(cls(w, *class)), Cell::number(&format::count(w, *now)), Cell::number(&format::count(w, *then))])
        };
        html! { h2 { (w.say("rehearse-by-class")) } (self.by_class.iter().fold(table, row)) }
    }

    fn grid(&self, w: &Words, caption: &str, first: &str, lines: Vec<(Markup, Counts)>, with_all: bool) -> Markup {
        const HEADS: [&str; 9] = [
            "rehearse-now",
            "rehearse-opened",
            "rehearse-closed",
            "rehearse-raised",
            "rehearse-lowered",
            "rehearse-moved",
            "rehearse-then",
            "rehearse-week-now",
            "rehearse-week-then",
        ];
        // A kind of change that nothing shows takes no room; what is and would be on the list, and how much is new, always stands.
        let shown =
            |at: usize| !(1..6).contains(&at) || lines.iter().any(|(_, counts)| counts.list[at] > 0) || (with_all && self.all.list[at] > 0);
        let shown = HEADS.iter().enumerate().map(|(at, _)| shown(at)).collect::<Vec<_>>();
        let cells = |head: Markup, counts: Counts| {
            let list = counts.list.iter().map(|n| Cell::number(&format::count(w, *n)));
            let weeks = counts.a_week.iter().map(|n| Cell::number(&format::number(w, *n, 1)));
            let told = list.chain(weeks).zip(&shown).filter_map(|(cell, shown)| shown.then_some(cell));
            std::iter::once(Cell::of(head)).chain(told).collect::<Vec<_>>()
        };
        // On a phone ten columns lie off screen: there it folds.
        let table = Table::folding(w.say(caption)).headed().column(w.say(first), false);
        let table = HEADS.iter().zip(&shown).filter(|(_, shown)| **shown).fold(table, |table, (id, _)| table.column(w.say(id), true));
        let table = lines.into_iter().fold(table, |table, (head, counts)| table.row(cells(head, counts)));
        let table = if with_all { table.foot(cells(html! { (w.say("rehearse-all")) }, self.all)) } else { table };
        html! { (table) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn a_kind_of_change_that_nothing_shows_has_no_column_and_the_table_folds_on_a_phone() {
        let counts = Counts { list: [3, 1, 0, 0, 2, 0, 4], a_week: [0.5, 0.8] };
        let numbers = Numbers {
            children: [3, 4],
            all: counts,
            by_class: Vec::new(),
            by_rule: vec![(RuleId::WeightLow, counts)],
            by_area: vec![("Ulopi".to_owned(), counts)],
            by_worker: Vec::new(),
        };
        let page = numbers.tables(words(Lang::En)).0;
        for (label, there) in
            [("Opened", true), ("Lowered", true), ("Closed", false), ("Raised", false), ("Other day", false), ("Then", true)]
        {
            assert_eq!(page.contains(&format!("data-label=\"{label}\"")), there, "{label}");
        }
    }
}

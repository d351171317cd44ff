//! The document on a page.

use maud::Markup;
use maud::Render;
use maud::html;

use super::Block;
use super::Document;
use super::Line;
use super::Text;
use crate::args;
use crate::i18n::Words;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::details;

impl Document {
    /// As markup below a heading of the first level.
    #[must_use]
    pub fn html(&self, w: &Words) -> Markup {
        let parts = self.blocks.iter().filter_map(|block| match block {
            Block::Part { id, words } => Some((id, words)),
            _ => None,
        });
        html! {
            div.noprint {
                (details(&w.say("doc-contents"), false, &html! {
                    nav.jump aria-label=(w.say("doc-contents")) { @for (id, words) in parts { a href={ "#" (id) } { (words) } } }
                }))
            }
            div.doc { @for block in &self.blocks { (one(w, block)) } }
        }
    }
}

fn line(line: &Line) -> Markup {
    html! {
        @for (at, text) in line.iter().enumerate() {
            @if at > 0 { " " }
            @match text {
                Text::Said(said) => (said),
                Text::Quoted(quoted, lang) => { span lang=(lang) { (quoted) } },
            }
        }
    }
}

/// Pieces below each other, as in a cell.
fn pieces(line: &Line) -> Markup {
    html! {
        @for (at, text) in line.iter().enumerate() {
            @if at > 0 { br; }
            @match text {
                Text::Said(said) => (said),
                Text::Quoted(quoted, lang) => { span lang=(lang) { (quoted) } },
            }
        }
    }
}

fn one(w: &Words, block: &Block) -> Markup {
    match block {
        Block::Part { id, words } => html! { h2 id=(id) { (words) } },
        Block::Heading(words) => html! { h3 { (line(words)) } },
        Block::Para(words) => html! { p { (line(words)) } },
        Block::Strong(words) => html! { p { strong { (words) } } },
        // Names are long here: beside each other, names and values would be two narrow columns.
        Block::Facts(items) => html! {
            ul.plain { @for (name, value) in items { li { b { (w.say_with("doc-fact", args!["name" => name])) } " " (line(value)) } } }
        },
        Block::List(lines) => html! { ul { @for one in lines { li { (line(one)) } } } },
        Block::Table { caption, columns, rows } => {
            let table = columns.iter().fold(Table::folding(caption).headed(), |table, column| table.column(column, false));
            let row = |table: Table, cells: &Vec<Line>| table.row(cells.iter().map(|cell| Cell::of(pieces(cell))).collect());
            rows.iter().fold(table, row).render()
        }
        Block::Sign { ticks, labels } => html! {
            div.sign {
                @for tick in ticks { p.tickbox { (tick) } }
                dl { @for label in labels { dt { (label) } dd {} } }
            }
        },
    }
}

//! A protocol as a document for a clinician to review and sign: the same parts on the page and as text. It works nothing out:
//! each figure is said as the protocol has it, with its source.

mod feeding;
mod frame;
mod html;
mod markdown;
mod rules;

use domain::protocol::Protocol;

use crate::args;
use crate::i18n::Words;

/// A piece of text: said in the language of the page, or quoted from the protocol file in the file's language.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Text {
    /// In the language of the page.
    Said(String),
    /// As it stands in the file, with the code of its language.
    Quoted(String, String),
}

/// Pieces of text in a row, a blank between them.
pub type Line = Vec<Text>;

/// A part of the document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Block {
    /// A part's heading; its id is where a link leads.
    Part {
        /// Id.
        id: String,
        /// Words.
        words: String,
    },
    /// A smaller heading.
    Heading(Line),
    /// A paragraph.
    Para(Line),
    /// A paragraph that must not be overlooked.
    Strong(String),
    /// Names and values.
    Facts(Vec<(String, Line)>),
    /// A list.
    List(Vec<Line>),
    /// A table: caption, heads, rows. The first cell names the row.
    Table {
        /// Caption.
        caption: String,
        /// Heads of the columns.
        columns: Vec<String>,
        /// Rows of cells.
        rows: Vec<Vec<Line>>,
    },
    /// Where somebody writes and signs: what to tick, and labels with a line each.
    Sign {
        /// Boxes to tick.
        ticks: Vec<String>,
        /// Labels, each with a line to write on.
        labels: Vec<String>,
    },
}

/// The document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Document {
    /// Its title.
    pub title: String,
    /// Its parts.
    pub blocks: Vec<Block>,
}

/// What a part is written from.
#[derive(Clone, Copy)]
struct Writer<'a> {
    w: &'a Words,
    protocol: &'a Protocol,
}

impl Writer<'_> {
    /// Text of the file, in the language of the file.
    fn quoted(&self, text: &str) -> Text {
        Text::Quoted(text.to_owned(), self.protocol.language.clone())
    }

    /// Text that the file may have in the language of the page: which language it is in is said with it.
    fn quoted_in(&self, text: &str, original: &str) -> Text {
        let lang = if text == original { self.protocol.language.clone() } else { self.w.lang().code().to_owned() };
        Text::Quoted(text.to_owned(), lang)
    }

    fn say(&self, id: &str) -> Line {
        vec![Text::Said(self.w.say(id))]
    }

    fn part(&self, id: &str) -> Block {
        Block::Part { id: id.to_owned(), words: self.w.say(id) }
    }

    /// `Source: …`, the source itself quoted.
    fn source(&self, source: &str) -> Block {
        Block::Para(self.source_line(source))
    }

    fn source_line(&self, source: &str) -> Line {
        let said = self.w.say_with("doc-source", args!["source" => ""]);
        vec![Text::Said(said.trim().to_owned()), self.quoted(source)]
    }

    fn days(&self, days: i32) -> String {
        self.w.say_with("common-days", args!["count" => days])
    }
}

fn said(text: impl Into<String>) -> Line {
    vec![Text::Said(text.into())]
}

/// The protocol as a document in the language of the words.
#[must_use]
pub fn document(w: &Words, protocol: &Protocol) -> Document {
    let writer = Writer { w, protocol };
    let mut blocks = Vec::new();
    frame::head(writer, &mut blocks);
    frame::ages(writer, &mut blocks);
    feeding::stages(writer, &mut blocks);
    feeding::thickness(writer, &mut blocks);
    feeding::foods(writer, &mut blocks);
    feeding::modes(writer, &mut blocks);
    rules::rules(writer, &mut blocks);
    frame::urgency(writer, &mut blocks);
    frame::visits(writer, &mut blocks);
    frame::measuring(writer, &mut blocks);
    feeding::coaching(writer, &mut blocks);
    feeding::recipes(writer, &mut blocks);
    frame::review(writer, &mut blocks);
    let title = w.say_with("doc-title", args!["id" => &protocol.id, "version" => &protocol.version]);
    Document { title, blocks }
}

//! The document as Markdown, which reads as plain text too.

use super::Block;
use super::Document;
use super::Line;
use super::Text;
use crate::args;
use crate::i18n::Words;

impl Document {
    /// As Markdown, with a line end at the end.
    #[must_use]
    pub fn markdown(&self, w: &Words) -> String {
        let mut parts = vec![format!("# {}", escaped(&self.title))];
        parts.extend(self.blocks.iter().map(|block| one(w, block)));
        parts.join("\n\n") + "\n"
    }
}

/// What Markdown would read as a sign is kept as it stands.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '|' | '#') {
            out.push('\\');
        }
        out.push(if c == '\n' { ' ' } else { c });
    }
    out
}

fn joined(line: &Line, between: &str) -> String {
    let text = |text: &Text| match text {
        Text::Said(text) | Text::Quoted(text, _) => escaped(text),
    };
    line.iter().map(text).collect::<Vec<_>>().join(between)
}

fn line(line: &Line) -> String {
    joined(line, " ")
}

/// A name with the colon of its language.
fn named(w: &Words, name: &str) -> String {
    escaped(&w.say_with("doc-fact", args!["name" => name]))
}

fn one(w: &Words, block: &Block) -> String {
    match block {
        Block::Part { words, .. } => format!("## {}", escaped(words)),
        Block::Heading(words) => format!("### {}", line(words)),
        Block::Para(words) => line(words),
        Block::Strong(words) => format!("**{}**", escaped(words)),
        Block::Facts(items) => {
            items.iter().map(|(name, value)| format!("- **{}** {}", named(w, name), line(value))).collect::<Vec<_>>().join("\n")
        }
        Block::List(lines) => lines.iter().map(|one| format!("- {}", line(one))).collect::<Vec<_>>().join("\n"),
        Block::Table { columns, rows, .. } => {
            let row = |cells: Vec<String>| format!("| {} |", cells.join(" | "));
            let head = row(columns.iter().map(|column| escaped(column)).collect());
            let rule = row(columns.iter().map(|_| "---".to_owned()).collect());
            let rows = rows.iter().map(|cells| row(cells.iter().map(|cell| joined(cell, "; ")).collect()));
            [head, rule].into_iter().chain(rows).collect::<Vec<_>>().join("\n")
        }
        Block::Sign { ticks, labels } => {
            let ticks = ticks.iter().map(|tick| format!("- [ ] {}", escaped(tick)));
            let labels = labels.iter().map(|label| format!("\n{} {}", named(w, label), r"\_".repeat(40)));
            ticks.chain(labels).collect::<Vec<_>>().join("\n")
        }
    }
}

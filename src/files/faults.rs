//! What is wrong in files of people: each fault with its line and what to do.

use std::ops::Range;

use super::saying::Saying;
use super::saying::say;

/// One thing that is wrong in a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileFault {
    /// The file as it was named.
    pub file: String,
    /// The line, from 1.
    pub line: usize,
    /// The key, from the top of the file, e.g. `ages.start_age_days`.
    pub key: String,
    /// What is wrong and what to do.
    pub what: Saying,
    /// The parser's own words, where the writing itself cannot be read: always English.
    pub parser: Option<String>,
}

impl std::fmt::Display for FileFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}:{}: ", self.file, self.line)?;
        if !self.key.is_empty() {
            write!(f, "{}: ", self.key)?;
        }
        self.what.fmt(f)?;
        self.parser.as_ref().map_or(Ok(()), |words| write!(f, ". The parser says: {words}"))
    }
}

/// What is wrong in one file, so far.
pub struct Faults<'t> {
    file: &'t str,
    text: &'t str,
    found: Vec<FileFault>,
}

impl<'t> Faults<'t> {
    /// None yet.
    pub const fn new(file: &'t str, text: &'t str) -> Self {
        Self { file, text, found: Vec::new() }
    }

    /// Adds one, at a place in the text.
    pub fn add(&mut self, span: &Range<usize>, key: &str, what: Saying) {
        let (line, _) = self.place(span);
        self.found.push(FileFault { file: self.file.to_owned(), line, key: key.to_owned(), what, parser: None });
    }

    /// Adds what the parser says of writing that is not TOML.
    pub fn not_toml(&mut self, span: &Range<usize>, words: &str) {
        let (line, column) = self.place(span);
        let what = say("not valid TOML: the writing is at fault at line {line}, column {column}; correct it there");
        let what = what.with("line", line).with("column", column);
        let parser = Some(words.replace('\n', ", "));
        self.found.push(FileFault { file: self.file.to_owned(), line, key: String::new(), what, parser });
    }

    /// Line and column of the beginning, both from 1 and in letters.
    fn place(&self, span: &Range<usize>) -> (usize, usize) {
        self.text.get(..span.start).map_or((1, 1), |before| {
            let line = before.rsplit('\n').next().unwrap_or_default();
            (before.matches('\n').count() + 1, line.chars().count() + 1)
        })
    }

    /// How many there are.
    pub const fn len(&self) -> usize {
        self.found.len()
    }

    /// All of them, by line.
    pub fn into_all(mut self) -> Vec<FileFault> {
        self.found.sort_by_key(|fault| fault.line);
        self.found
    }
}

//! What a reader of files says is wrong: an English sentence with gaps, which is also the name of the same sentence in other languages.

use std::borrow::Cow;
use std::fmt;

/// A sentence, or a part of one, with what stands in its gaps. Shown as it is, it is English, as the command line speaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Saying {
    english: Cow<'static, str>,
    gaps: Vec<(&'static str, Gap)>,
}

/// What stands in a gap.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Gap {
    /// Taken from the file, or an example of what to write there: the same in every language.
    Text(String),
    /// Words.
    Words(Saying),
}

/// A sentence whose gaps are written `{name}`.
pub const fn say(english: &'static str) -> Saying {
    Saying { english: Cow::Borrowed(english), gaps: Vec::new() }
}

impl Saying {
    /// A sentence about a file that only the command line reads, which speaks English.
    pub const fn plain(english: String) -> Self {
        Self { english: Cow::Owned(english), gaps: Vec::new() }
    }

    /// With text in a gap.
    #[must_use]
    pub fn with(mut self, name: &'static str, text: impl ToString) -> Self {
        self.gaps.push((name, Gap::Text(text.to_string())));
        self
    }

    /// With words in a gap.
    #[must_use]
    pub fn with_words(mut self, name: &'static str, words: Self) -> Self {
        self.gaps.push((name, Gap::Words(words)));
        self
    }

    /// What stands in the gaps.
    #[must_use]
    pub fn gaps(&self) -> &[(&'static str, Gap)] {
        &self.gaps
    }

    /// The name of the sentence among the words of every language: its first words, so that a sentence that changes asks for new words.
    #[must_use]
    pub fn id(&self) -> String {
        let words = self.english.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty()).take(9);
        words.fold("file".to_owned(), |id, word| format!("{id}-{}", word.to_ascii_lowercase()))
    }
}

impl fmt::Display for Saying {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let filled = self.gaps.iter().fold(self.english.to_string(), |text, (name, gap)| {
            let gap = match gap {
                Gap::Text(text) => text.clone(),
                Gap::Words(words) => words.to_string(),
            };
            text.replace(&format!("{{{name}}}"), &gap)
        });
        f.write_str(&filled)
    }
}

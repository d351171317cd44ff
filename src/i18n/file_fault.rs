//! What is wrong in a file, in the words of a page.

use crate::files::Gap;
use crate::files::Saying;
use crate::i18n::Args;
use crate::i18n::Words;

/// The sentence of a reader of files in this language.
#[must_use]
pub fn file_fault(w: &Words, what: &Saying) -> String {
    let args = what.gaps().iter().fold(Args::new(), |args, (name, gap)| match gap {
        Gap::Text(text) => args.with(name, text),
        Gap::Words(words) => args.with(name, file_fault(w, words)),
    });
    w.say_with(&what.id(), args)
}

//! What a record says now, beside what was typed into a form that was shown before somebody else changed it.

use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::view::filled::Filled;

/// What stands for one field and was not typed.
#[derive(Debug, Clone)]
pub struct Stands {
    heading: String,
    nothing: String,
    values: Vec<String>,
}

impl Stands {
    /// What `newest` says for a field, if `typed` says something else.
    #[must_use]
    pub fn of(w: &Words, newest: &Filled, typed: &Filled, name: &str) -> Option<Self> {
        let told = |form: &Filled| -> Vec<String> {
            let mut values: Vec<String> =
                form.all(name).iter().map(|value| value.trim().to_owned()).filter(|value| !value.is_empty()).collect();
            values.sort();
            values
        };
        let values = told(newest);
        (values != told(typed)).then(|| Self { heading: w.say("stands-now"), nothing: w.say("stands-nothing"), values })
    }

    /// Only what is one of these, for a list that is asked in parts.
    #[must_use]
    pub fn among(mut self, known: &[&str]) -> Self {
        self.values.retain(|value| known.contains(&value.as_str()));
        self
    }

    /// The line below the question; `words` gives the words of a value, the empty one too, where the field has them.
    #[must_use]
    pub fn line(&self, words: impl Fn(&str) -> Option<String>) -> Markup {
        let said = |value: &String| words(value).unwrap_or_else(|| value.clone());
        let values = if self.values.is_empty() {
            words("").unwrap_or_else(|| self.nothing.clone())
        } else {
            self.values.iter().map(said).collect::<Vec<_>>().join(", ")
        };
        html! { span.hint.stands { (self.heading) " " strong { (values) } } }
    }
}

/// The line, where something else stands.
pub(crate) fn line(stands: Option<&Stands>, words: impl Fn(&str) -> Option<String>) -> Markup {
    stands.map_or_else(Markup::default, |stands| stands.line(words))
}

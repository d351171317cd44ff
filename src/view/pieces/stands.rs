//! What a record says now, beside what was typed into a form that was shown before somebody else changed it.

use domain::number_text::parse_scaled;
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
        let (values, typed) = (told(newest), told(typed));
        let same = values.len() == typed.len() && values.iter().zip(&typed).all(|(stands, typed)| same(stands, typed));
        (!same).then(|| Self { heading: w.say("stands-now"), nothing: w.say("stands-nothing"), values })
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

/// As many decimals as any measure of a form has.
const DECIMALS: u32 = 3;

/// Whether two values say the same: numbers may be written in several ways, "7,35" and "7.350".
fn same(one: &str, other: &str) -> bool {
    one == other || matches!((parse_scaled(one, DECIMALS), parse_scaled(other, DECIMALS)), (Ok(one), Ok(other)) if one == other)
}

/// The line, where something else stands.
pub(crate) fn line(stands: Option<&Stands>, words: impl Fn(&str) -> Option<String>) -> Markup {
    stands.map_or_else(Markup::default, |stands| stands.line(words))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    fn form(values: &[&str]) -> Filled {
        Filled(values.iter().map(|value| ("weight".to_owned(), (*value).to_owned())).collect())
    }

    #[test]
    fn what_is_only_written_in_another_way_is_no_change() {
        let stands = |newest: &[&str], typed: &[&str]| Stands::of(words(Lang::En), &form(newest), &form(typed), "weight").is_some();
        for (newest, typed) in [("7.35", "7,35"), ("7.35", " 7.350"), ("7.35", "٧٫٣٥"), ("3", "3.0"), ("eggs", "eggs")] {
            assert!(!stands(&[newest], &[typed]), "{newest} {typed}");
        }
        for (newest, typed) in [("7.35", "7.36"), ("7.35", "73.5"), ("7.35", ""), ("", "7.35"), ("eggs", "dairy"), ("7.35", "7.3x")] {
            assert!(stands(&[newest], &[typed]), "{newest} {typed}");
        }
        assert!(stands(&["eggs", "dairy"], &["eggs"]));
        assert!(!stands(&["eggs", "dairy"], &["dairy", "eggs"]), "in whatever order");
    }
}

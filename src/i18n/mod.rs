//! Words for people, in every language the programme speaks. Knows the domain's codes; knows no page and no database.

mod args;
mod closing;
pub mod codes;
mod explain;
mod file_fault;
mod files;
pub mod format;
mod in_words;
mod lang;
pub mod release_faults;
pub mod scale;
mod voice;

use std::sync::LazyLock;

use fluent_bundle::FluentResource;
use fluent_bundle::concurrent::FluentBundle;

pub use crate::i18n::args::{Arg, Args};
pub use crate::i18n::closing::Closing;
pub use crate::i18n::closing::closing;
pub use crate::i18n::explain::explain;
pub use crate::i18n::explain::explain_in;
pub use crate::i18n::explain::number_line;
pub(crate) use crate::i18n::explain::whole;
pub use crate::i18n::file_fault::file_fault;
pub use crate::i18n::in_words::clearing_in_words;
pub use crate::i18n::in_words::rule_in_words;
pub use crate::i18n::lang::Lang;
pub use crate::i18n::voice::Voice;

/// Every message of one language, ready to be said. Shared by all threads.
pub struct Words {
    lang: Lang,
    bundle: FluentBundle<FluentResource>,
}

/// The words of this language.
#[must_use]
pub fn words(lang: Lang) -> &'static Words {
    static ENGLISH: LazyLock<Words> = LazyLock::new(|| Words::load(Lang::En));
    static FRENCH: LazyLock<Words> = LazyLock::new(|| Words::load(Lang::Fr));
    static PSEUDO: LazyLock<Words> = LazyLock::new(|| Words::load(Lang::Pseudo));
    match lang {
        Lang::En => &ENGLISH,
        Lang::Fr => &FRENCH,
        Lang::Pseudo => &PSEUDO,
    }
}

impl Words {
    /// Reads the files inside the binary. What cannot be read is left out here and found by the tests, so that a slip
    /// in one message never takes a running server down.
    fn load(lang: Lang) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![lang.locale()]);
        // Names stand in <bdi> on a page; marks inside the text would spoil titles, files and comparisons.
        bundle.set_use_isolating(false);
        if lang == Lang::Pseudo {
            bundle.set_transform(Some(lang::accented));
        }
        for (_, text) in files::of(lang) {
            let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(readable, _)| readable);
            // A message defined twice keeps its first words.
            let _ = bundle.add_resource(resource);
        }
        Self { lang, bundle }
    }

    /// Which language this is.
    #[must_use]
    pub const fn lang(&self) -> Lang {
        self.lang
    }

    /// The message with this id. One that does not exist is its id in braces.
    #[must_use]
    pub fn say(&self, id: &str) -> String {
        self.say_with(id, Args::new())
    }

    /// The message with this id and these values in it. One that does not exist is its id in braces.
    #[must_use]
    pub fn say_with(&self, id: &str, args: Args) -> String {
        let Some(pattern) = self.bundle.get_message(id).and_then(|message| message.value()) else {
            return format!("{{{id}}}");
        };
        let mut faults = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(args.as_fluent()), &mut faults).into_owned();
        if self.lang == Lang::Pseudo { format!("⟦{text}⟧") } else { text }
    }

    /// Whether there is a message with this id.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.bundle.get_message(id).is_some_and(|message| message.value().is_some())
    }
}

/// The text of every message file of a language with its name, for the tests that compare languages.
#[must_use]
pub fn sources(lang: Lang) -> &'static [(&'static str, &'static str)] {
    files::of(lang)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::args;

    #[test]
    fn a_missing_message_is_its_id_in_braces() {
        assert_eq!(words(Lang::En).say("no-such-message"), "{no-such-message}");
        assert!(!words(Lang::En).has("no-such-message"));
    }

    #[test]
    fn counts_choose_their_plural() {
        let en = words(Lang::En);
        let fr = words(Lang::Fr);
        assert_eq!(en.say_with("common-days", args!["count" => 1]), "1 day");
        assert_eq!(en.say_with("common-days", args!["count" => 0]), "0 days");
        assert_eq!(fr.say_with("common-days", args!["count" => 0]), "0 jour");
        assert_eq!(fr.say_with("common-days", args!["count" => 2]), "2 jours");
    }

    #[test]
    fn no_marks_stand_round_a_value() {
        assert_eq!(words(Lang::En).say_with("common-title", args!["page" => "Oku"]), "Oku – Spoonround");
    }

    #[test]
    fn the_pseudo_language_brackets_and_accents_all_but_the_values() {
        let text = words(Lang::Pseudo).say_with("common-title", args!["page" => "Oku"]);
        assert!(text.starts_with('⟦') && text.ends_with('⟧'), "{text}");
        assert!(text.contains("Oku") && !text.contains("Spoonround"), "{text}");
    }

    /// A sign that French writes with a space before it must not begin a line; apostrophes are those of print.
    #[test]
    fn french_signs_of_two_parts_and_apostrophes_are_those_of_print() {
        let messages = sources(Lang::Fr).iter().flat_map(|(_, text)| text.lines()).filter(|line| !line.starts_with('#'));
        for line in messages {
            let parted = [" :", " ;", " ?", " !", " »", "« "].into_iter().find(|sign| line.contains(sign));
            assert_eq!(parted, None, "{line}");
        }
        let protocol = crate::files::protocol_toml::default_protocol();
        let straight = |text: &str| text.contains('\'');
        for food in protocol.foods.iter() {
            assert!(!straight(food.name("fr")) && !straight(food.safe_form("fr")), "{}", food.name("fr"));
        }
        for line in &protocol.coaching {
            assert!(!straight(line.text("fr")), "{}", line.text("fr"));
        }
        for recipe in &protocol.recipes {
            let text = recipe.text("fr");
            assert!(!text.steps.iter().chain(&text.warnings).chain(&text.measures).any(|words| straight(words)), "{}", text.name);
        }
    }

    #[test]
    fn every_language_can_be_used_by_all_threads() {
        let ask = || words(Lang::Fr).say_with("common-days", args!["count" => 2]);
        let threads: Vec<_> = (0..4).map(|_| std::thread::spawn(ask)).collect();
        for thread in threads {
            assert_eq!(thread.join().expect("a thread that ends"), "2 jours");
        }
    }
}

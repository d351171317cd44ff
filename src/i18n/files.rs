//! The one list of message files. A page family adds its words to its own file; a new file is named here once.

use crate::i18n::Lang;

macro_rules! files {
    ($($name:literal),+ $(,)?) => {
        const ENGLISH: &[(&str, &str)] = &[$(($name, include_str!(concat!("en/", $name, ".ftl")))),+];
        const FRENCH: &[(&str, &str)] = &[$(($name, include_str!(concat!("fr/", $name, ".ftl")))),+];
    };
}

files!(
    "common",
    "codes",
    "sign_in",
    "round",
    "child",
    "card",
    "register",
    "visit_form",
    "result",
    "scale",
    "supervise",
    "why",
    "report",
    "releases",
    "report_files",
    "admin",
    "rules",
    "protocol",
    "protocol_rules",
    "faults",
    "file_faults",
    "demo",
    "corrections",
    "thickness",
    "recipes",
    "talk",
    "household",
    "desk_note",
    "caseload",
    "referrals",
    "quality",
    "pictures",
);

/// Name and text of each file of a language; the pseudo-language bends the English ones.
pub(crate) const fn of(lang: Lang) -> &'static [(&'static str, &'static str)] {
    match lang {
        Lang::En | Lang::Pseudo => ENGLISH,
        Lang::Fr => FRENCH,
    }
}

//! Which languages there are, and how to choose one. Knows no message.

use std::borrow::Cow;

use unic_langid::LanguageIdentifier;

/// A language of the screens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Lang {
    /// English.
    En,
    /// French.
    Fr,
    /// For tests: English with accents, each message between ⟦ and ⟧, so that any text outside them was never given to a translator.
    Pseudo,
}

impl Lang {
    /// The languages a person can choose.
    pub const OFFERED: &'static [Lang] = &[Lang::En, Lang::Fr];

    /// The permanent code, as in the `lang` attribute of a page.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Fr => "fr",
            Self::Pseudo => "en-x-pseudo",
        }
    }

    /// The language with this code.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        match code {
            "en" => Some(Self::En),
            "fr" => Some(Self::Fr),
            "en-x-pseudo" => Some(Self::Pseudo),
            _ => None,
        }
    }

    /// Its name in itself, so that a reader of no other language finds it.
    #[must_use]
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::En => "English",
            Self::Fr => "Français",
            Self::Pseudo => "⟦Ƥśéúđó⟧",
        }
    }

    /// The mark between whole numbers and decimals.
    #[must_use]
    pub const fn decimal_mark(self) -> char {
        match self {
            Self::Fr => ',',
            Self::En | Self::Pseudo => '.',
        }
    }

    /// The mark between thousands: a comma, or in French a narrow space that never breaks.
    #[must_use]
    pub const fn thousands_mark(self) -> char {
        match self {
            Self::Fr => '\u{202f}',
            Self::En | Self::Pseudo => ',',
        }
    }

    /// Left to right or right to left, as in the `dir` attribute of a page.
    #[must_use]
    pub const fn direction(self) -> &'static str {
        match self {
            Self::En | Self::Fr | Self::Pseudo => "ltr",
        }
    }

    /// The offered language that an `Accept-Language` header likes best, if it names one.
    #[must_use]
    pub fn accepted(header: &str) -> Option<Self> {
        let mut best: Option<(u32, Self)> = None;
        for part in header.split(',').take(20) {
            let mut pieces = part.split(';');
            let tag = pieces.next().unwrap_or_default().trim().to_ascii_lowercase();
            let base = tag.split('-').next().unwrap_or_default();
            let Some(lang) = Self::OFFERED.iter().copied().find(|l| l.code() == base) else { continue };
            let weight = pieces.find_map(|p| p.trim().strip_prefix("q=").map(per_mille)).unwrap_or(1000);
            if weight > 0 && best.is_none_or(|(most, _)| weight > most) {
                best = Some((weight, lang));
            }
        }
        best.map(|(_, lang)| lang)
    }

    pub(crate) fn locale(self) -> LanguageIdentifier {
        // Plural rules of the pseudo-language are those of English, whose words it bends.
        let code = if self == Self::Fr { "fr" } else { "en" };
        code.parse().unwrap_or_default()
    }
}

/// A quality such as `0.8`, in thousandths; what cannot be read counts as nothing.
fn per_mille(text: &str) -> u32 {
    u32::try_from(domain::number_text::parse_scaled(text.trim(), 3).unwrap_or(0)).unwrap_or(0).min(1000)
}

/// Letters with marks on them, still readable, and longer, as other languages are.
pub(crate) fn accented(text: &str) -> Cow<'_, str> {
    let bent = text.chars().map(|c| match c {
        'a' => 'á',
        'c' => 'ç',
        'e' => 'é',
        'i' => 'í',
        'n' => 'ñ',
        'o' => 'ó',
        's' => 'š',
        'u' => 'ú',
        'y' => 'ý',
        'A' => 'Á',
        'E' => 'É',
        'I' => 'Í',
        'O' => 'Ó',
        'S' => 'Š',
        'U' => 'Ú',
        other => other,
    });
    Cow::Owned(bent.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_read_back() {
        for lang in [Lang::En, Lang::Fr, Lang::Pseudo] {
            assert_eq!(Lang::from_code(lang.code()), Some(lang));
        }
        assert_eq!(Lang::from_code("de"), None);
    }

    #[test]
    fn the_header_of_a_browser_chooses() {
        for (header, lang) in [
            ("fr-FR,fr;q=0.9,en;q=0.8", Some(Lang::Fr)),
            ("de,en;q=0.5,fr;q=0.7", Some(Lang::Fr)),
            ("en-GB", Some(Lang::En)),
            ("de", None),
            ("fr;q=0", None),
            ("fr;q=x,en;q=0.1", Some(Lang::En)),
            ("", None),
        ] {
            assert_eq!(Lang::accepted(header), lang, "{header}");
        }
    }
}

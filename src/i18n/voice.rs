//! Measures as they are written on a page, or spelled out to be read aloud: units in full, no sign that a voice cannot say.

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;

/// How a measure is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Voice {
    /// On a page: `7.40 kg`, `−2.33`.
    Written,
    /// To be read aloud: `7.40 kilograms`, `minus 2.33`.
    Spoken,
}

impl Voice {
    /// The minus sign as a word, and the sign of doubt too.
    fn told(self, w: &Words, text: String) -> String {
        match (self, text.strip_prefix('−')) {
            (Self::Spoken, Some(number)) => w.say_with("aloud-minus", args!["number" => number]),
            _ => text,
        }
    }

    fn unit(self, w: &Words, written: String, unit: &str, number: String) -> String {
        match self {
            Self::Written => written,
            Self::Spoken => self.told(w, w.say_with(unit, args!["number" => number])),
        }
    }

    /// Whole grams as kilograms.
    #[must_use]
    pub fn kg(self, w: &Words, grams: i64) -> String {
        self.unit(w, format::kg(w, grams), "aloud-kg", format::kg_bare(w, grams))
    }

    /// Grams.
    #[must_use]
    pub fn g(self, w: &Words, grams: i64) -> String {
        let sign = if grams < 0 { "−" } else { "" };
        self.unit(w, format::g(w, grams), "aloud-g", format!("{sign}{}", format::count(w, grams.unsigned_abs())))
    }

    /// A change of weight: grams under 1 kg, kilograms from there on.
    #[must_use]
    pub fn weight_change(self, w: &Words, grams: i64) -> String {
        if grams.abs() < 1000 { self.g(w, grams) } else { self.kg(w, grams) }
    }

    /// Whole millimetres as centimetres.
    #[must_use]
    pub fn cm(self, w: &Words, mm: i64) -> String {
        self.unit(w, format::cm(w, mm), "aloud-cm", format::cm_bare(w, mm))
    }

    /// Millimetres.
    #[must_use]
    pub fn mm(self, w: &Words, mm: i64) -> String {
        self.unit(w, format::mm(w, mm), "aloud-mm", mm.to_string())
    }

    /// A z-score or a difference of two.
    #[must_use]
    pub fn z(self, w: &Words, hundredths: i32) -> String {
        self.told(w, format::z(w, hundredths))
    }

    /// A written sentence with its units and signs as words: `110 mm` becomes `110 millimetres`, `−2.00` `minus 2.00`.
    #[must_use]
    pub fn spell(self, w: &Words, written: &str) -> String {
        if self == Self::Written {
            return written.to_owned();
        }
        let mut said = String::new();
        let mut before = "";
        for part in written.split_inclusive(char::is_whitespace) {
            let word = part.trim_end();
            let core = word.trim_end_matches(['.', ',', ':', ';', ')', '?']);
            let number = before.trim_end().trim_start_matches('(');
            let unit = UNITS.iter().find(|(sign, _)| *sign == core && number.ends_with(|sign: char| sign.is_ascii_digit()));
            match unit {
                Some((sign, id)) => {
                    let start = said.trim_end().len() - number.len();
                    said.truncate(start);
                    said.push_str(&w.say_with(id, args!["number" => number]));
                    said.push_str(&part[sign.len()..]);
                }
                None => said.push_str(part),
            }
            before = part;
        }
        let said = said.replace(" · ", ". ");
        let mut signs = said.split('−');
        let mut spelled = signs.next().unwrap_or_default().to_owned();
        for rest in signs {
            let end = rest.find(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == ',')).unwrap_or(rest.len());
            let number = rest[..end].trim_end_matches(['.', ',']);
            spelled.push_str(&w.say_with("aloud-minus", args!["number" => number]));
            spelled.push_str(&rest[number.len()..]);
        }
        spelled
    }

    /// A percentage.
    #[must_use]
    pub fn percent(self, w: &Words, value: f64) -> String {
        self.unit(w, format::percent(w, value), "aloud-percent", format::number(w, value, 1))
    }
}

/// Units as they stand on a page, with the words that say them.
const UNITS: [(&str, &str); 5] = [("kg", "aloud-kg"), ("g", "aloud-g"), ("cm", "aloud-cm"), ("mm", "aloud-mm"), ("%", "aloud-percent")];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn a_voice_says_units_and_signs_as_words() {
        let (en, fr) = (words(Lang::En), words(Lang::Fr));
        let spoken = Voice::Spoken;
        assert_eq!(spoken.kg(en, 7_400), "7.40 kilograms");
        assert_eq!(spoken.weight_change(en, -60), "minus 60 grams");
        assert_eq!(spoken.weight_change(en, 1_400), "1.40 kilograms");
        assert_eq!(spoken.cm(fr, 712), "71,2 centimètres");
        assert_eq!(spoken.mm(en, 113), "113 millimetres");
        assert_eq!(spoken.z(en, -233), "minus 2.33");
        assert_eq!(spoken.z(fr, 20), "0,20");
        assert_eq!(spoken.percent(en, 5.55), "5.6 percent");
        assert_eq!(
            spoken.spell(en, "Below −2.00, or an arm under 110 mm: up to 5 % (100 g). 3 g more · kept"),
            "Below minus 2.00, or an arm under 110 millimetres: up to 5 percent (100 grams). 3 grams more. kept"
        );
        assert_eq!(spoken.spell(fr, "un bras sous 110\u{a0}mm\u{a0}: −1,33."), "un bras sous 110 millimètres\u{a0}: moins 1,33.");
        assert_eq!((Voice::Written.kg(en, 7_400), Voice::Written.z(en, -233)), ("7.40 kg".to_owned(), "−2.33".to_owned()));
    }
}

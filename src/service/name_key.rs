//! A name reduced to what survives different ears and spellings, for finding likely duplicates.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// Small letters without marks: what a search compares.
#[must_use]
pub fn folded(name: &str) -> String {
    name.nfkd()
        .filter(|c| !is_combining_mark(*c))
        .flat_map(char::to_lowercase)
        .collect::<String>()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
}

/// The skeleton of a name: folded, vowels dropped except at a beginning, doubled letters once, parts in order of the alphabet.
#[must_use]
pub fn skeleton(name: &str) -> String {
    let folded = folded(name);
    let mut parts: Vec<String> = folded
        .split(|c: char| !c.is_alphanumeric())
        .filter(|part| !part.is_empty())
        .map(|part| {
            let mut bones = String::with_capacity(part.len());
            let mut last = None;
            for (at, c) in part.chars().enumerate() {
                if (at == 0 || !matches!(c, 'a' | 'e' | 'i' | 'o' | 'u' | 'y')) && last != Some(c) {
                    bones.push(c);
                }
                last = Some(c);
            }
            bones
        })
        .collect();
    parts.sort_unstable();
    parts.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_of_one_name_meet() {
        for (a, b) in [("Neruka", "Néruka"), ("Teveli Ndora", "ndora  TEVELLI"), ("Kiva", "Kíva"), ("Lomi", "Lommi")] {
            assert_eq!(skeleton(a), skeleton(b), "{a} and {b}");
        }
        assert_ne!(skeleton("Sela"), skeleton("Rumi"));
        assert_eq!(folded("  Néruka   Anzi "), "neruka anzi");
        assert_eq!(skeleton(""), "");
    }
}

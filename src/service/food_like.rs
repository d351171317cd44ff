//! Which food somebody meant who wrote one that there is not.

use domain::protocol::Protocol;

use crate::service::name_key::folded;

/// Names at least this alike may be meant (Jaro and Winkler's measure, from 0 to 1; our own choice: a letter too many, too few or
/// changed is above it, another food below).
const ALIKE: f64 = 0.85;

/// The name, in this language, of the food whose name or code reads most like what was typed, if one is alike at all.
#[must_use]
pub fn food_like<'a>(protocol: &'a Protocol, lang: &str, typed: &str) -> Option<&'a str> {
    let typed = folded(typed);
    let alike = |name: &str| strsim::jaro_winkler(&typed, &folded(name));
    let active = protocol.foods.iter().filter(|food| food.active);
    let near = active.map(|food| (alike(food.name(lang)).max(alike(food.code.as_str())), food.name(lang)));
    near.filter(|(measure, _)| *measure >= ALIKE).max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, name)| name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::protocol_toml::default_protocol;

    #[test]
    fn a_slip_leads_to_its_food_in_the_language_and_nonsense_to_none() {
        let like = |lang, typed| food_like(default_protocol(), lang, typed);
        for slip in ["mangoo", "Mngo", "mang", "MANGO "] {
            assert_eq!(like("en", slip), Some("Mango, ripe"), "{slip}");
        }
        assert_eq!(like("fr", "mangu mure"), Some("Mangue mûre"));
        for other in ["stone", "xyz", "", "7"] {
            assert_eq!(like("en", other), None, "{other}");
        }
    }
}

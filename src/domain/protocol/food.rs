//! Foods the programme tracks: what they count as, what they carry, from when. It knows no child.

use std::collections::BTreeMap;

use crate::code::codes;
use crate::food::{Allergen, FoodCode, FoodGroup};

codes! {
    /// What a food gives of iron that is well absorbed.
    Iron, "iron" {
        /// Haem iron: meat, fish, liver.
        Heme => "heme",
        /// Added iron.
        Fortified => "fortified",
        /// None that counts; pulses and leaves too.
        None => "none",
    }
}

codes! {
    /// What happens when a food is given before the age of the local protocol.
    HoldPolicy, "hold policy" {
        /// The local advice is shown.
        Advise => "advise",
        /// A follow-up opens.
        Flag => "flag",
    }
}

/// A tracked food.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Food {
    /// Its permanent code.
    pub code: FoodCode,
    /// Its name in the language of the file.
    pub name: String,
    /// Its names by language.
    pub names: BTreeMap<String, String>,
    /// The group it counts in; `None` = in none.
    pub group: Option<FoodGroup>,
    /// Its iron.
    pub iron: Iron,
    /// The common allergen it carries.
    pub allergen: Option<Allergen>,
    /// Earliest chronological age in days.
    pub earliest_days: u32,
    /// Needs a safe form, or can choke.
    pub choking: bool,
    /// The safe form, in the language of the file.
    pub safe_form: String,
    /// The safe form by language.
    pub safe_forms: BTreeMap<String, String>,
    /// Its name in the village.
    pub local_name: String,
    /// Completed months before which the local protocol says to wait; 0 = none.
    pub local_wait_months: u32,
    /// What happens when it is given before that.
    pub hold_policy: HoldPolicy,
    /// A listed unhealthy food.
    pub unhealthy: bool,
    /// A sweet drink.
    pub sweet_drink: bool,
    /// A drink: never counts as solid food.
    pub drink: bool,
    /// Energy in kcal per 100 g as it is weighed for a recipe, where a recipe needs it.
    pub kcal_per_100g: Option<u32>,
    /// Where that figure comes from.
    pub kcal_source: String,
    /// The tracked food of which this is an ingredient: bean flour of beans. What a child's beans are, its bean flour is too.
    pub form_of: Option<FoodCode>,
    /// Where its figures come from.
    pub source: String,
    /// Whether it is offered for choice.
    pub active: bool,
}

impl Food {
    /// A food of which only the code is said: no group, no allergen, from 180 days (WHO 2023 guideline on complementary feeding).
    #[must_use]
    pub fn plain(code: FoodCode) -> Self {
        Self {
            name: code.0.replace('_', " "),
            code,
            names: BTreeMap::new(),
            group: None,
            iron: Iron::None,
            allergen: None,
            earliest_days: 180,
            choking: false,
            safe_form: String::new(),
            safe_forms: BTreeMap::new(),
            local_name: String::new(),
            local_wait_months: 0,
            hold_policy: HoldPolicy::Advise,
            unhealthy: false,
            sweet_drink: false,
            drink: false,
            kcal_per_100g: None,
            kcal_source: String::new(),
            form_of: None,
            source: String::new(),
            active: true,
        }
    }

    /// Its name in a language, else in that of the file.
    #[must_use]
    pub fn name(&self, lang: &str) -> &str {
        self.names.get(lang).map_or(&self.name, String::as_str)
    }

    /// The safe form in a language, else in that of the file; empty if none is needed.
    #[must_use]
    pub fn safe_form(&self, lang: &str) -> &str {
        self.safe_forms.get(lang).map_or(&self.safe_form, String::as_str)
    }

    /// Whether the local protocol says to wait at this age and wants a follow-up when it is given.
    #[must_use]
    pub fn flagged_at(&self, completed_months: u32) -> bool {
        self.hold_policy == HoldPolicy::Flag && completed_months < self.local_wait_months
    }
}

/// The foods of a protocol, each code once.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Foods {
    by_code: Vec<Food>,
    /// How each code begins, in the same order: told apart without reading whole texts, as every food of every visit is looked up.
    beginnings: Vec<u64>,
}

/// The first eight bytes of a code as a number that sorts as they do.
fn beginning(code: &FoodCode) -> u64 {
    let mut bytes = [0; 8];
    for (byte, of_code) in bytes.iter_mut().zip(code.as_str().bytes()) {
        *byte = of_code;
    }
    u64::from_be_bytes(bytes)
}

impl Foods {
    /// From foods in any order; of several with one code the last counts.
    #[must_use]
    pub fn new(foods: Vec<Food>) -> Self {
        let mut sorted = Self::default();
        sorted.add(foods);
        sorted
    }

    /// Adds foods, or replaces those of the same code.
    pub fn add(&mut self, foods: Vec<Food>) {
        for food in foods {
            match self.by_code.binary_search_by(|known| known.code.cmp(&food.code)) {
                Ok(at) => self.by_code[at] = food,
                Err(at) => {
                    self.beginnings.insert(at, beginning(&food.code));
                    self.by_code.insert(at, food);
                }
            }
        }
    }

    /// The food with this code.
    #[must_use]
    pub fn get(&self, code: &FoodCode) -> Option<&Food> {
        let wanted = beginning(code);
        let first = self.beginnings.partition_point(|begins| *begins < wanted);
        let alike = self.beginnings[first..].iter().take_while(|begins| **begins == wanted).count();
        self.by_code[first..first + alike].iter().find(|food| food.code == *code)
    }

    /// Foods of a group that can stand for it in a question: offered for choice, none unhealthy or sweet; those that need no safe form
    /// first, then by code.
    #[must_use]
    pub fn examples(&self, group: FoodGroup) -> Vec<&Food> {
        let fits = |food: &&Food| food.active && food.group == Some(group) && !food.unhealthy && !food.sweet_drink;
        let mut examples: Vec<&Food> = self.by_code.iter().filter(fits).collect();
        examples.sort_by_key(|food| food.choking);
        examples
    }

    /// The food with this code, and the tracked food of which it is an ingredient.
    pub fn kinds(&self, code: &FoodCode) -> impl Iterator<Item = &Food> {
        let itself = self.get(code);
        itself.into_iter().chain(itself.and_then(|food| self.get(food.form_of.as_ref()?)))
    }

    /// Every food, by code; also those no longer offered for choice.
    pub fn iter(&self) -> std::slice::Iter<'_, Food> {
        self.by_code.iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::protocol_toml::default_protocol;

    #[test]
    fn examples_of_a_group_are_what_the_programme_offers_and_safe_ones_first() {
        let mut foods = default_protocol().foods.clone();
        let codes = |foods: &Foods| foods.examples(FoodGroup::PulsesNuts).iter().map(|f| f.code.as_str().to_owned()).collect::<Vec<_>>();
        assert_eq!(codes(&foods), ["beans", "groundnut_paste", "sesame_paste", "groundnut_whole"], "whole nuts can choke");
        let beans = Food { active: false, ..foods.get(&FoodCode("beans".to_owned())).expect("beans").clone() };
        foods.add(vec![beans]);
        assert_eq!(codes(&foods).first().map(String::as_str), Some("groundnut_paste"), "no longer offered");
        assert!(foods.examples(FoodGroup::BreastMilk).is_empty());
    }
}

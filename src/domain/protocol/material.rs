//! What a protocol holds for advice: modes where sources disagree, energy, coaching lines. No rule reads it.

use std::collections::BTreeMap;

use crate::code::codes;
use crate::food::Texture;
use crate::protocol::StageId;
use crate::rule::RuleId;

codes! {
    /// How common allergens are introduced.
    AllergenMode, "allergen mode" {
        /// Not later than other solids.
        WithSolids => "with_solids",
        /// As the local protocol says; needs an approving clinician.
        LocalWait => "local_wait",
    }
}

codes! {
    /// What is said about animal milk as the main drink from 6 to 11 months when the child is not breastfed.
    MilkMode, "milk mode" {
        /// Formula or animal milk (WHO 2023).
        Who2023 => "who2023",
        /// Advised against as the main drink before 12 months.
        AvoidMainDrink => "avoid_main_drink",
    }
}

/// How thick food and body weight make the number of meals.
#[derive(Debug, Clone, PartialEq)]
pub struct Energy {
    /// Energy density by texture, kcal/g: watery, smooth, mashed or richer.
    pub density: [f64; 3],
    /// Stomach capacity, g per kg of body weight.
    pub stomach_g_per_kg: f64,
    /// Below this a recipe is too thin, kcal/g.
    pub least_density: f64,
    /// Where the figures come from.
    pub source: String,
}

impl Energy {
    /// The density of a texture, kcal/g.
    #[must_use]
    pub fn density_of(&self, texture: Texture) -> f64 {
        self.density[usize::from(texture.level().min(2))]
    }
}

codes! {
    /// What a coaching line rests on.
    CoachMark, "mark" {
        /// A published source that was read.
        Source => "source",
        /// A published source from memory.
        Memory => "memory",
        /// Common practice.
        Practice => "practice",
        /// Our own choice.
        Own => "own",
    }
}

/// One short piece of advice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoachingLine {
    /// Its permanent key.
    pub key: String,
    /// For these stages.
    pub stages: Vec<StageId>,
    /// The words in the language of the file.
    pub text: String,
    /// The words by language.
    pub texts: BTreeMap<String, String>,
    /// About danger: told first.
    pub danger: bool,
    /// Rules whose open follow-up silences the line: it would say the opposite of what the child needs.
    pub not_with: Vec<RuleId>,
    /// What it rests on.
    pub mark: CoachMark,
    /// Where it comes from.
    pub source: String,
}

impl CoachingLine {
    /// The words in a language, else in that of the file.
    #[must_use]
    pub fn text(&self, lang: &str) -> &str {
        self.texts.get(lang).map_or(&self.text, String::as_str)
    }
}

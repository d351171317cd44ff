//! Figures of the rules on danger and food reactions. It tests nothing.

use crate::rule::Class;

use super::thresholds;

thresholds! {
    /// General danger signs.
    DangerGeneral {
        /// From this completed month "moves only when touched" is one of the signs.
        moves_only_when_touched_from_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Danger signs of a young infant.
    DangerYoungInfant {
        /// Below this completed month.
        under_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Other danger signs.
    DangerOther {
        /// Urgency of stridor, slow skin pinch, stiff neck; from later on of a drawn-in chest.
        class_at_once: Class,
        /// Urgency of blood in stool, limpness signs, fast breathing, and fever of the youngest.
        class_same_day: Class,
        /// Urgency of fever of older children and of poor feeding.
        class_soon: Class,
        /// From this completed month the signs of a young infant's own rule belong here.
        later_signs_from_months: u32,
        /// Below this completed month fever or cold is more urgent.
        fever_same_day_under_months: u32,
    }
    /// Swelling of both feet.
    OedemaBothFeet {
        /// Urgency.
        class: Class,
    }
    /// Severe food reaction.
    ReactionSevere {
        /// Skin and gut signs together count within so many minutes of the food.
        skin_and_gut_within_minutes: u32,
        /// Urgency.
        class: Class,
    }
    /// Spreading food reaction.
    ReactionSpreading {
        /// Urgency.
        class: Class,
    }
    /// Mild food reaction.
    ReactionMild {
        /// Urgency.
        class: Class,
        /// Urgency if the food carries a common allergen.
        class_common_allergen: Class,
    }
    /// A food on hold was given again.
    ReactionGivenAgain {
        /// Urgency.
        class: Class,
        /// Urgency if a reaction since the hold began was severe or spreading.
        class_after_severe: Class,
    }
    /// Trouble swallowing.
    SwallowTrouble {
        /// Urgency.
        class: Class,
        /// Urgency if the child goes blue.
        class_blue: Class,
    }
}

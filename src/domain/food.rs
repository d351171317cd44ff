//! Words about foods: groups, textures, allergens, how a food was taken, signs of a reaction.

use crate::code::codes;

codes! {
    /// The eight groups of minimum dietary diversity (WHO/UNICEF 2021).
    FoodGroup, "food group" {
        /// Breast milk, expressed or donor too.
        BreastMilk => "breast_milk",
        /// Grains, roots, tubers, plantain.
        GrainsRoots => "grains_roots",
        /// Pulses, nuts, seeds.
        PulsesNuts => "pulses_nuts",
        /// Infant formula, animal milk, yoghurt, cheese.
        Dairy => "dairy",
        /// Meat, poultry, fish, organ meat, insects.
        Flesh => "flesh",
        /// Any egg.
        Eggs => "eggs",
        /// Vitamin-A-rich fruit and vegetables.
        VitA => "vit_a",
        /// Other fruit and vegetables.
        OtherFv => "other_fv",
    }
}

codes! {
    /// Common allergens a food may carry.
    Allergen, "allergen" {
        /// Animal milk.
        Milk => "milk",
        /// Egg.
        Egg => "egg",
        /// Groundnut.
        Peanut => "peanut",
        /// Tree nut.
        TreeNut => "tree_nut",
        /// Wheat.
        Wheat => "wheat",
        /// Soy.
        Soy => "soy",
        /// Fish.
        Fish => "fish",
        /// Shellfish.
        Shellfish => "shellfish",
        /// Sesame.
        Sesame => "sesame",
    }
}

codes! {
    /// How a food was taken.
    Response, "response" {
        /// Taken willingly.
        Accepted => "accepted",
        /// Not wanted.
        Refused => "refused",
        /// A sign followed the food.
        Reaction => "reaction",
    }
}

codes! {
    /// A sign after a food.
    ReactionSign, "reaction sign" {
        /// Rash round the mouth.
        RashLocal => "rash_local",
        /// Hives all over.
        HivesWidespread => "hives_widespread",
        /// Swollen face or eyes.
        SwellingFace => "swelling_face",
        /// A single vomit.
        VomitingOnce => "vomiting_once",
        /// Vomiting again and again.
        VomitingRepeated => "vomiting_repeated",
        /// Loose stools.
        LooseStools => "loose_stools",
        /// Eczema got worse.
        EczemaFlare => "eczema_flare",
        /// Wheeze.
        Wheeze => "wheeze",
        /// Trouble breathing.
        BreathingTrouble => "breathing_trouble",
        /// Hoarse cry.
        HoarseCry => "hoarse_cry",
        /// Swollen tongue or throat.
        SwollenTongueThroat => "swollen_tongue_throat",
        /// Pale and floppy.
        PaleFloppy => "pale_floppy",
        /// Collapse.
        Collapse => "collapse",
        /// Sleepy and pale.
        SleepyPale => "sleepy_pale",
    }
}

/// A step on the texture scale, 0 (watery) to 4 (family food). Feeding protocol §2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Texture(u8);

impl Texture {
    /// All five steps.
    pub const ALL: [Texture; 5] = [Texture(0), Texture(1), Texture(2), Texture(3), Texture(4)];

    /// The step with this number, 0–4.
    #[must_use]
    pub const fn new(level: u8) -> Option<Self> {
        if level <= 4 { Some(Self(level)) } else { None }
    }

    /// Its number, 0–4.
    #[must_use]
    pub const fn level(self) -> u8 {
        self.0
    }
}

/// The permanent code of a food in the protocol file, e.g. `groundnut_paste`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FoodCode(pub String);

impl FoodCode {
    /// The food that the honey rule asks about.
    pub const HONEY: &'static str = "honey";
    /// The code of whatever families give that the list does not know: every protocol has it, so that nothing goes unrecorded.
    pub const NOT_LISTED: &'static str = "not_listed";

    /// The code as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

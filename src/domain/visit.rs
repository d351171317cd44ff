//! One contact with a child: what was measured, asked and seen. Every answer may be absent, and absent is never "no".

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::code::codes;
use crate::food::{FoodCode, FoodGroup, ReactionSign, Response, Texture};
use crate::ids::VisitId;
use crate::rule::RuleId;
use crate::units::{HeadCircumference, Length, Muac, Weight};

codes! {
    /// Where or how the family was met.
    Contact, "contact" {
        /// At home.
        Home => "home",
        /// At a clinic or outreach post.
        Clinic => "clinic",
        /// By phone: fills no visit slot.
        Phone => "phone",
    }
}

codes! {
    /// How the length was taken.
    Position, "position" {
        /// Lying (recumbent length).
        Lying => "lying",
        /// Standing (height).
        Standing => "standing",
    }
}

codes! {
    /// A measurement that can be confirmed by measuring again.
    Measurement, "measurement" {
        /// Weight.
        Weight => "weight",
        /// Length.
        Length => "length",
        /// Arm circumference.
        Muac => "muac",
    }
}

codes! {
    /// A sign of danger, or one asked about after honey.
    DangerSign, "danger sign" {
        /// Cannot drink or breastfeed.
        CannotFeed => "cannot_feed",
        /// Vomits everything.
        VomitsEverything => "vomits_everything",
        /// Fits during this illness.
        FitsInIllness => "fits_in_illness",
        /// Has fits now.
        FitsNow => "fits_now",
        /// Unconscious.
        Unconscious => "unconscious",
        /// Very sleepy, hard to wake.
        Lethargic => "lethargic",
        /// Breathes fast, counted twice.
        FastBreathing => "fast_breathing",
        /// Chest drawn in.
        ChestIndrawing => "chest_indrawing",
        /// Harsh noise when breathing in, while calm.
        StridorCalm => "stridor_calm",
        /// Struggles to breathe.
        TroubleBreathing => "trouble_breathing",
        /// Hot (37.5 °C or more) or cold (below 35.5 °C).
        FeverOrCold => "fever_or_cold",
        /// Moves only when touched, or not at all.
        MovesOnlyWhenTouched => "moves_only_when_touched",
        /// Does not feed well.
        NotFeedingWell => "not_feeding_well",
        /// Sunken eyes and a pinch of skin that goes back very slowly.
        SunkenEyesSlowPinch => "sunken_eyes_slow_pinch",
        /// Blood in the stool.
        BloodInStool => "blood_in_stool",
        /// Stiff neck.
        StiffNeck => "stiff_neck",
        /// Hard or rare stools (asked after honey).
        Constipation => "constipation",
        /// Weak cry (asked after honey).
        WeakCry => "weak_cry",
        /// Floppy (asked after honey).
        Floppy => "floppy",
        /// Sucks weakly (asked after honey).
        PoorSuck => "poor_suck",
        /// Eyelids hang (asked after honey).
        DroopyLids => "droopy_lids",
    }
}

codes! {
    /// A sign that a baby is ready for solid food (feeding protocol §3.1).
    ReadinessSign, "readiness sign" {
        /// Holds the head steady when supported.
        HeadSteady => "head_steady",
        /// Sits with little support.
        SitsSupported => "sits_supported",
        /// Brings hands or toys to the mouth.
        MouthsObjects => "mouths_objects",
        /// Turns to food or opens the mouth.
        TurnsToFood => "turns_to_food",
        /// Moves food back and swallows.
        Swallows => "swallows",
    }
}

codes! {
    /// Foods and drinks of low value.
    LowValue, "low-value food" {
        /// Tea or coffee.
        TeaCoffee => "tea_coffee",
        /// Added salt.
        Salt => "salt",
        /// Added sugar.
        Sugar => "sugar",
    }
}

codes! {
    /// Trouble while swallowing.
    SwallowTrouble, "swallowing answer" {
        /// Asked, none.
        None => "none",
        /// Chokes, coughs or sounds wet while feeding, more than once.
        Repeated => "repeated",
        /// Goes blue while feeding.
        Blue => "blue",
    }
}

codes! {
    /// What became of a follow-up, as told at a later visit.
    Outcome, "outcome" {
        /// Seen by a health worker.
        Seen => "seen",
        /// Treated.
        Treated => "treated",
        /// Admitted.
        Admitted => "admitted",
        /// In a wasting treatment programme.
        InTreatment => "in_treatment",
        /// Discharged from treatment.
        Discharged => "discharged",
        /// A named health worker or supervisor has decided.
        Decision => "decision",
        /// The family did not want to go.
        Refused => "refused",
        /// Could not be reached.
        NotReached => "not_reached",
    }
}

impl Outcome {
    /// `seen`, `treated`, `admitted` and `in_treatment` are care outcomes.
    #[must_use]
    pub const fn is_care(self) -> bool {
        matches!(self, Self::Seen | Self::Treated | Self::Admitted | Self::InTreatment)
    }
}

/// A food offered since the last visit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodOffer {
    /// Which food.
    pub code: FoodCode,
    /// Times offered since the last visit; 0 = not offered (only a hold is lifted).
    pub offers: u16,
    /// How it was taken.
    pub response: Option<Response>,
    /// Given in a form that can choke.
    pub unsafe_form: Option<bool>,
    /// Signs of a reaction: `None` = not known, empty = none of the list.
    pub signs: Option<BTreeSet<ReactionSign>>,
    /// Minutes from the food to the first sign.
    pub minutes_after: Option<u16>,
    /// A named clinician or supervisor allows the food again, before this visit's offers.
    pub hold_lifted: bool,
}

/// An outcome told at a visit, of a follow-up opened before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ToldOutcome {
    /// The follow-up's rule.
    pub rule: RuleId,
    /// What became of it.
    pub outcome: Outcome,
}

/// One contact with a child. Lists: `None` = not asked, empty = asked, none of these.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Visit {
    /// Stays the same through corrections.
    pub id: VisitId,
    /// The day it happened.
    pub on: NaiveDate,
    /// Where or how.
    pub contact: Contact,
    /// Weight.
    pub weight: Option<Weight>,
    /// Length as measured, not corrected for position.
    pub length: Option<Length>,
    /// How the length was taken; `None` = as usual at this age.
    pub position: Option<Position>,
    /// Arm circumference.
    pub muac: Option<Muac>,
    /// Head circumference.
    pub head: Option<HeadCircumference>,
    /// Pitting swelling of both feet.
    pub oedema: Option<bool>,
    /// Measured again and kept.
    pub confirmed: BTreeSet<Measurement>,
    /// Danger signs.
    pub danger_signs: Option<BTreeSet<DangerSign>>,
    /// Readiness signs.
    pub readiness_signs: Option<BTreeSet<ReadinessSign>>,
    /// Ill now.
    pub ill: Option<bool>,
    /// Breastfed yesterday.
    pub breastfed: Option<bool>,
    /// Nothing but breast milk yesterday (ORS, drops, medicine allowed).
    pub breast_only: Option<bool>,
    /// Pain, low supply or poor attachment.
    pub breastfeeding_trouble: Option<bool>,
    /// Formula feeds yesterday.
    pub formula_times: Option<u8>,
    /// Animal milk feeds yesterday.
    pub animal_milk_times: Option<u8>,
    /// Drinkable yoghurt feeds yesterday.
    pub drink_yogurt_times: Option<u8>,
    /// Semi-solid yoghurt feeds yesterday.
    pub spoon_yogurt_times: Option<u8>,
    /// Water, juice, tea or another non-milk drink yesterday; not ORS or medicine.
    pub other_drink: Option<bool>,
    /// The date the family names for the first solids.
    pub solids_started_on: Option<NaiveDate>,
    /// Any solid, semi-solid or soft food yesterday.
    pub solids_yesterday: Option<bool>,
    /// Solid, semi-solid or soft feeds yesterday.
    pub meals: Option<u8>,
    /// Usual texture.
    pub texture_usual: Option<Texture>,
    /// Most advanced texture taken without trouble.
    pub texture_best: Option<Texture>,
    /// Recipes of the programme eaten yesterday, by code; what they hold is ticked in the groups, foods and iron as well.
    pub recipes: BTreeSet<String>,
    /// Groups eaten yesterday.
    pub groups: Option<BTreeSet<FoodGroup>>,
    /// Iron drops, powder or iron-fortified food yesterday.
    pub iron_source: Option<bool>,
    /// Sweet drink yesterday.
    pub sweet_drink: Option<bool>,
    /// Sweets, crisps and the like yesterday.
    pub unhealthy_food: Option<bool>,
    /// Bottle with a teat yesterday.
    pub bottle: Option<bool>,
    /// Tea, coffee, added salt or sugar.
    pub low_value: Option<BTreeSet<LowValue>>,
    /// Trouble while swallowing.
    pub swallow_trouble: Option<SwallowTrouble>,
    /// Days of refusing most food.
    pub appetite_poor_days: Option<u16>,
    /// Rules that a clinic's plan covers.
    pub plans: Option<BTreeSet<RuleId>>,
    /// Follow-ups referred at this visit; `now` and `today` are referrals without being named here.
    pub referrals: BTreeSet<RuleId>,
    /// What became of earlier follow-ups.
    pub outcomes: Vec<ToldOutcome>,
    /// Foods offered since the last visit.
    pub foods: Vec<FoodOffer>,
}

impl Visit {
    /// A contact on this day at which nothing was measured or asked.
    #[must_use]
    pub const fn empty(id: VisitId, on: NaiveDate, contact: Contact) -> Self {
        Self {
            id,
            on,
            contact,
            weight: None,
            length: None,
            position: None,
            muac: None,
            head: None,
            oedema: None,
            confirmed: BTreeSet::new(),
            danger_signs: None,
            readiness_signs: None,
            ill: None,
            breastfed: None,
            breast_only: None,
            breastfeeding_trouble: None,
            formula_times: None,
            animal_milk_times: None,
            drink_yogurt_times: None,
            spoon_yogurt_times: None,
            other_drink: None,
            solids_started_on: None,
            solids_yesterday: None,
            meals: None,
            texture_usual: None,
            texture_best: None,
            recipes: BTreeSet::new(),
            groups: None,
            iron_source: None,
            sweet_drink: None,
            unhealthy_food: None,
            bottle: None,
            low_value: None,
            swallow_trouble: None,
            appetite_poor_days: None,
            plans: None,
            referrals: BTreeSet::new(),
            outcomes: Vec::new(),
            foods: Vec::new(),
        }
    }
}

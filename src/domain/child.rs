//! A child as the rules see it: facts of birth and registration, no name and no address.

use chrono::NaiveDate;

use crate::code::codes;
use crate::units::Weight;

codes! {
    /// Sex, as the WHO tables split it.
    Sex, "sex" {
        /// Girl.
        Female => "F",
        /// Boy.
        Male => "M",
    }
}

codes! {
    /// How the weeks of pregnancy are known.
    GestationSource, "gestation source" {
        /// Scan in pregnancy.
        Scan => "scan",
        /// Written on a health card.
        Card => "card",
        /// Counted from the last period.
        LastPeriod => "last_period",
        /// As the family remembers it.
        Family => "family",
        /// Not known: no correction is made.
        Unknown => "unknown",
    }
}

codes! {
    /// Whether a child is in the programme, or how it left.
    ChildStatus, "status" {
        /// In the programme.
        Active => "active",
        /// Moved to another programme.
        TransferredOut => "transferred_out",
        /// Family moved away.
        Moved => "moved",
        /// Died.
        Died => "died",
        /// The family took back its consent.
        ConsentWithdrawn => "consent_withdrawn",
        /// Reached the exit age.
        AgedOut => "aged_out",
        /// The family does not want visits.
        Refused => "refused",
    }
}

/// What the rules need to know of a child. `None` is "not known", never "no".
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Child {
    /// Sex.
    pub sex: Sex,
    /// Birth date; estimated when `birth_day_known` is false.
    pub born: NaiveDate,
    /// Whether the day itself is known.
    pub birth_day_known: bool,
    /// Length of pregnancy in days; `None` also when its source is unknown.
    pub gestation_days: Option<u16>,
    /// Birth weight.
    pub birth_weight: Option<Weight>,
    /// First day in the programme.
    pub registered_on: NaiveDate,
    /// Ever breastfed.
    pub ever_breastfed: Option<bool>,
    /// Severe eczema.
    pub severe_eczema: Option<bool>,
    /// A food allergy named by a clinician.
    pub known_food_allergy: Option<bool>,
    /// In the programme, or how it left.
    pub status: ChildStatus,
    /// Another child of the same area, birth date and similar name is in the programme and nobody has decided yet.
    pub looks_like_another: bool,
}

/// Both names of a child in a list, so that nobody opens another one: as it is registered, and what the family calls it.
#[must_use]
pub fn both_names(name: &str, known_as: Option<&str>) -> String {
    known_as.map_or_else(|| name.to_owned(), |known_as| format!("{name} · {known_as}"))
}

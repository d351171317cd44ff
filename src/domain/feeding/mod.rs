//! Where a child stands with food: solids, stage, and each food's state. It knows no follow-up.

mod foods;
pub mod recipe_fit;
pub mod thickness;

use chrono::NaiveDate;

use crate::code::codes;
use crate::food::FoodCode;

pub(crate) use foods::food_lines;

/// Whether solid food has been started.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Solids {
    /// Not known.
    Unknown,
    /// Not started.
    NotStarted,
    /// Started; the day the family names, if it named one.
    Started(Option<NaiveDate>),
}

codes! {
    /// How serious a reaction to a food was, worst first.
    ReactionLevel, "reaction level" {
        /// Breathing, throat or collapse; skin and gut together.
        Severe => "severe",
        /// Hives, swelling or repeated vomiting; or signs not known.
        Spreading => "spreading",
        /// Any other.
        Mild => "mild",
    }
}

/// Where a child stands with one food. A food that was never offered has no line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FoodState {
    /// Offered, not yet taken often enough to say.
    Trying,
    /// Taken willingly on three offers or more, without a reaction.
    Accepted,
    /// Not wanted the last time.
    Refused {
        /// Try again from this day.
        retry_on: NaiveDate,
    },
    /// A reaction put it on hold; only a named clinician or supervisor lifts that.
    OnHold {
        /// The day of the first reaction of this hold.
        since: NaiveDate,
        /// The worst reaction since then.
        worst: ReactionLevel,
    },
    /// Allowed again, and not offered since.
    Cleared {
        /// The day.
        on: NaiveDate,
    },
}

impl FoodState {
    /// A code for words: `trying`, `accepted`, `refused`, `on_hold`, `cleared`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Trying => "trying",
            Self::Accepted => "accepted",
            Self::Refused { .. } => "refused",
            Self::OnHold { .. } => "on_hold",
            Self::Cleared { .. } => "cleared",
        }
    }
}

/// What is known of one food for a child.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodLine {
    /// Which food.
    pub code: FoodCode,
    /// Where it stands.
    pub state: FoodState,
    /// First offered.
    pub first_on: NaiveDate,
    /// Last offered.
    pub last_on: NaiveDate,
    /// Times offered since the start, or since it was last allowed again.
    pub offers: u32,
    /// Of these, offers at visits where it was said to be taken willingly.
    pub accepted_offers: u32,
    /// Of these, offers at visits where it was said to be refused.
    pub refused_offers: u32,
    /// It was on hold once and allowed again on this day.
    pub cleared_on: Option<NaiveDate>,
}

impl FoodLine {
    /// Refused ten times or more: that is fine, offer others (our own choice).
    #[must_use]
    pub const fn let_it_rest(&self) -> bool {
        matches!(self.state, FoodState::Refused { .. }) && self.refused_offers >= 10
    }
}

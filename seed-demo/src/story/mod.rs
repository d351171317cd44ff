//! The families of the demo: who they are and what happened at each visit, told the same way every time for a given day.
//!
//! Children are made one at a time from their number, so that any number of them streams without being held. Everything is
//! counted back from the day the demo is built, so that it shows the same on whatever day that is. It knows no database.

pub mod cast;
pub mod dice;
mod feeding;
mod growth;
mod infant;
mod names;
mod ordinary;
pub mod plots;
mod slots;
mod talk;
mod telling;

use chrono::NaiveDate;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child_code::ChildCode;
use domain::counsel::Talk;
use domain::draft::child::NewChild;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::rule::RuleId;
use domain::visit::Visit;

use crate::story::cast::Cast;

/// The programme began fourteen months ago.
pub const PROGRAMME_DAYS: i32 = 426;

/// One child's story.
#[derive(Debug, Clone, PartialEq)]
pub struct Story {
    /// Its number in the demo, from 0.
    pub number: u32,
    /// Key.
    pub id: ChildId,
    /// Code in links.
    pub code: ChildCode,
    /// Name of the plot, if it is there to show something.
    pub plot: Option<&'static str>,
    /// Facts of registration.
    pub child: NewChild,
    /// The home it shares with other children of the demo.
    pub home: Option<HouseholdId>,
    /// First day in the programme.
    pub registered_on: NaiveDate,
    /// Number of the worker at registration.
    pub worker: usize,
    /// Number of the village at registration.
    pub village: usize,
    /// Changes of worker, by day.
    pub moves: Vec<Move>,
    /// Contacts in the order of entry.
    pub visits: Vec<Told>,
    /// Corrections of visits, by day.
    pub corrections: Vec<Correction>,
    /// Follow-ups closed by a supervisor, by day.
    pub closings: Vec<Closing>,
    /// How it left.
    pub exit: Option<Exit>,
    /// What was wrong with the record itself, put right on the last day.
    pub put_right: Vec<PutRight>,
}

/// A correction of the record itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PutRight {
    /// A visit is taken back.
    Void {
        /// Which of `visits`.
        visit: usize,
        /// Code of the kind of reason.
        reason: &'static str,
        /// Why.
        note: &'static str,
    },
    /// A visit goes to the child with this number.
    Move {
        /// Which of `visits`.
        visit: usize,
        /// Number of the child.
        to: u32,
        /// Why.
        note: &'static str,
    },
    /// The whole record is merged into that of the child with this number.
    Merge {
        /// Number of the child.
        into: u32,
        /// Why.
        note: &'static str,
    },
}

/// A contact and how it was entered.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// What was measured, asked and seen.
    pub visit: Visit,
    /// What was talked about and agreed.
    pub talk: Talk,
    /// Free note.
    pub note: Option<String>,
    /// When it was entered.
    pub entered: Entered,
}

/// When a contact was entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Entered {
    /// Days after the contact.
    pub days_later: u8,
    /// Minute of that day, in the programme's time zone.
    pub minute: u16,
}

/// A change of worker, and of village where the worker's is another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Move {
    /// First day with the new worker.
    pub on: NaiveDate,
    /// Number of the new worker.
    pub worker: usize,
    /// Number of the new village.
    pub village: usize,
    /// Why.
    pub reason: &'static str,
}

/// A visit told anew.
#[derive(Debug, Clone, PartialEq)]
pub struct Correction {
    /// Which of `visits`.
    pub visit: usize,
    /// What it should have said.
    pub becomes: Visit,
    /// The day of the correction.
    pub on: NaiveDate,
    /// Why.
    pub reason: &'static str,
}

/// A follow-up closed by a supervisor.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closing {
    /// Its rule.
    pub rule: RuleId,
    /// The day.
    pub on: NaiveDate,
    /// Code of the kind of reason.
    pub category: &'static str,
    /// Why, in a sentence.
    pub note: &'static str,
}

/// How a child left the programme.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exit {
    /// The way.
    pub status: ChildStatus,
    /// The day.
    pub on: NaiveDate,
    /// A word about it.
    pub note: Option<&'static str>,
    /// Whether a supervisor recorded it.
    pub by_supervisor: bool,
}

impl Story {
    /// The child as the rules see it on the last day of its story.
    #[must_use]
    pub fn facts(&self) -> Child {
        Child {
            sex: self.child.sex,
            born: self.child.born,
            birth_day_known: self.child.birth_day_known,
            gestation_days: self.child.gestation_days,
            birth_weight: self.child.birth_weight,
            registered_on: self.registered_on,
            ever_breastfed: self.child.ever_breastfed,
            severe_eczema: self.child.severe_eczema,
            known_food_allergy: self.child.food_allergy,
            status: self.exit.as_ref().map_or(ChildStatus::Active, |exit| exit.status),
            looks_like_another: false,
        }
    }

    /// The contacts as they stand after all corrections, without those taken back or moved away.
    #[must_use]
    pub fn visits_as_corrected(&self) -> Vec<Visit> {
        let mut visits: Vec<Visit> = self.visits.iter().map(|told| told.visit.clone()).collect();
        for correction in &self.corrections {
            if let Some(visit) = visits.get_mut(correction.visit) {
                *visit = correction.becomes.clone();
            }
        }
        let gone = |at: usize| {
            self.put_right.iter().any(|p| matches!(p, PutRight::Void { visit, .. } | PutRight::Move { visit, .. } if *visit == at))
        };
        visits.into_iter().enumerate().filter(|(at, _)| !gone(*at)).map(|(_, visit)| visit).collect()
    }
}

/// Tells the story of the child with this number: every third one has a plot until all are told; the others live an ordinary life.
#[must_use]
pub fn tell(number: u32, cast: &Cast, today: NaiveDate) -> Story {
    let mut story = match plots::of_number(number) {
        Some(plot) => telling::tell(plot, number, cast, today),
        None => ordinary::tell(number, cast, today),
    };
    talk::tell(&mut story);
    story
}

#[cfg(test)]
mod judged_tests;
#[cfg(test)]
mod tests;

//! The visit slots of one child: target, window, who filled it, where it stands. It knows no rule and no follow-up.

use chrono::NaiveDate;

use crate::calendar::{add_days, days_between};
use crate::code::codes;
use crate::ids::VisitId;
use crate::protocol::{Schedule, SlotPlan};

codes! {
    /// Where a slot stands on a day.
    SlotState, "slot state" {
        /// Before it opens.
        NotYet => "not_yet",
        /// In its window, not filled.
        Open => "open",
        /// After its window, not filled, nor any later one.
        Late => "late",
        /// Not filled, but a later one is.
        Skipped => "skipped",
        /// Filled.
        Seen => "seen",
    }
}

/// Target and window of a slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SlotWindow {
    /// The day aimed at.
    pub target: NaiveDate,
    /// First day of the window.
    pub opens: NaiveDate,
    /// Last day of the window.
    pub closes: NaiveDate,
}

impl SlotWindow {
    /// Whether a day lies in the window.
    #[must_use]
    pub fn contains(self, day: NaiveDate) -> bool {
        self.opens <= day && day <= self.closes
    }
}

/// The visits that filled a slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Filled {
    /// The first of them.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// Whether one of them lay inside the window.
    pub on_time: bool,
}

/// A slot of one child.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slot {
    /// Which.
    pub plan: SlotPlan,
    /// When.
    pub window: SlotWindow,
    /// Whether it is expected: its target is not long before registration.
    pub expected: bool,
    /// What filled it.
    pub filled: Option<Filled>,
    /// Where it stands.
    pub state: SlotState,
}

/// All slots of a child on a day, in order of age. `visits` are the home and clinic visits up to then, in order of date.
#[must_use]
pub fn slots(
    schedule: &Schedule,
    born: NaiveDate,
    registered_on: NaiveDate,
    visits: impl Iterator<Item = (VisitId, NaiveDate)>,
    as_of: NaiveDate,
) -> Vec<Slot> {
    let mut slots = planned(schedule, born, registered_on);
    let ages = target_ages(&slots, born);
    fill(&mut slots, &ages, visits.map(|(visit, on)| (visit, on, days_between(born, on))), as_of);
    slots
}

/// The slots of a child before any visit and any day is looked at.
pub(crate) fn planned(schedule: &Schedule, born: NaiveDate, registered_on: NaiveDate) -> Vec<Slot> {
    let first_expected = add_days(registered_on, -schedule.expected_from_days_before_registration);
    let slot = |&plan: &SlotPlan| {
        let target = plan.target(born);
        let window = SlotWindow {
            target,
            opens: add_days(target, -schedule.opens_before_days),
            closes: add_days(target, schedule.closes_after_days(plan)),
        };
        Slot { plan, window, expected: target >= first_expected, filled: None, state: SlotState::NotYet }
    };
    schedule.slots.iter().map(slot).collect()
}

/// The age in days that each slot aims at.
pub(crate) fn target_ages(slots: &[Slot], born: NaiveDate) -> Vec<i32> {
    slots.iter().map(|slot| days_between(born, slot.window.target)).collect()
}

/// Gives each visit its slot, and says where each slot stands on the day. A visit comes with its day and the age in days on it.
pub(crate) fn fill(slots: &mut [Slot], ages: &[i32], visits: impl Iterator<Item = (VisitId, NaiveDate, i32)>, as_of: NaiveDate) {
    for (visit, on, age) in visits {
        let Some(place) = nearest(ages, age) else { break };
        let slot = &mut slots[place];
        let on_time = slot.window.contains(on);
        match &mut slot.filled {
            Some(filled) => filled.on_time |= on_time,
            None => slot.filled = Some(Filled { visit, on, on_time }),
        }
    }
    let mut later_filled = false;
    for slot in slots.iter_mut().rev() {
        slot.state = match slot.filled {
            Some(_) => SlotState::Seen,
            None if later_filled => SlotState::Skipped,
            None if as_of < slot.window.opens => SlotState::NotYet,
            None if as_of <= slot.window.closes => SlotState::Open,
            None => SlotState::Late,
        };
        later_filled |= slot.filled.is_some();
    }
}

/// The place of the nearest of some ages in days; of two as near that of the later.
fn nearest(ages: &[i32], age: i32) -> Option<usize> {
    (0..ages.len()).rev().min_by_key(|place| (ages[*place] - age).abs())
}

/// The next visit: the first expected slot, neither filled nor passed over, whose window closes on the day or later.
#[must_use]
pub fn next_visit(slots: &[Slot]) -> Option<&Slot> {
    slots.iter().find(|slot| slot.expected && matches!(slot.state, SlotState::NotYet | SlotState::Open))
}

/// The first slot that is late: days overdue are counted from the close of its window.
#[must_use]
pub fn first_late(slots: &[Slot]) -> Option<&Slot> {
    slots.iter().find(|slot| slot.expected && slot.state == SlotState::Late)
}

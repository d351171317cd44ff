//! The visit slots of one child: target, window, who filled it, where it stands. It knows no rule and no follow-up.

use chrono::NaiveDate;

use crate::calendar::{add_days, add_months, days_between};
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
    opens_before_days: i32,
    closes_after_days: i32,
}

impl SlotWindow {
    /// First day of the window.
    #[must_use]
    pub fn opens(self) -> NaiveDate {
        add_days(self.target, -self.opens_before_days)
    }

    /// Last day of the window.
    #[must_use]
    pub fn closes(self) -> NaiveDate {
        add_days(self.target, self.closes_after_days)
    }

    /// Whether a day so many days after the target (before it if negative) lies in the window.
    const fn holds(self, after_target_days: i32) -> bool {
        -self.opens_before_days <= after_target_days && after_target_days <= self.closes_after_days
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
    /// The age in days that it aims at.
    pub age_days: i32,
    /// Whether it is expected: its target is not long before registration.
    pub expected: bool,
    /// What filled it.
    pub filled: Option<Filled>,
    /// Where it stands.
    pub state: SlotState,
}

impl Slot {
    /// The ages in days at which an empty slot changes: its window opens, and has closed.
    pub(crate) const fn turns_at_ages(&self) -> [i32; 2] {
        [self.age_days - self.window.opens_before_days, self.age_days + self.window.closes_after_days + 1]
    }
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
    fill(&mut slots, visits.map(|(visit, on)| (visit, on, days_between(born, on))), days_between(born, as_of));
    slots
}

/// The slots of a child before any visit and any day is looked at.
pub(crate) fn planned(schedule: &Schedule, born: NaiveDate, registered_on: NaiveDate) -> Vec<Slot> {
    let first_expected_age = days_between(born, registered_on) - schedule.expected_from_days_before_registration;
    // Several slots may lie in one month.
    let mut month = (0, born);
    let slot = |&plan: &SlotPlan| {
        if month.0 != plan.months {
            month = (plan.months, add_months(born, plan.months));
        }
        let target = plan.days_into(month.1);
        let age_days = days_between(born, target);
        let (opens_before_days, closes_after_days) = (schedule.opens_before_days, schedule.closes_after_days(plan));
        let window = SlotWindow { target, opens_before_days, closes_after_days };
        Slot { plan, window, age_days, expected: age_days >= first_expected_age, filled: None, state: SlotState::NotYet }
    };
    schedule.slots.iter().map(slot).collect()
}

/// Gives each visit its slot, and says where each slot stands at an age in days. A visit comes with its day and the age in days on it, in
/// order of age.
pub(crate) fn fill(slots: &mut [Slot], visits: impl Iterator<Item = (VisitId, NaiveDate, i32)>, age_days: i32) {
    // The nearest slot; of two as near the later. It is never one before that of the last visit.
    let mut place = 0;
    for (visit, on, age) in visits {
        let far = |slot: &Slot| (slot.age_days - age).abs();
        while slots.get(place + 1).is_some_and(|next| far(next) <= far(&slots[place])) {
            place += 1;
        }
        let Some(slot) = slots.get_mut(place) else { break };
        let on_time = slot.window.holds(age - slot.age_days);
        match &mut slot.filled {
            Some(filled) => filled.on_time |= on_time,
            None => slot.filled = Some(Filled { visit, on, on_time }),
        }
    }
    let mut later_filled = false;
    for slot in slots.iter_mut().rev() {
        let after_target = age_days - slot.age_days;
        slot.state = match slot.filled {
            Some(_) => SlotState::Seen,
            None if later_filled => SlotState::Skipped,
            None if slot.window.holds(after_target) => SlotState::Open,
            None if after_target < 0 => SlotState::NotYet,
            None => SlotState::Late,
        };
        later_filled |= slot.filled.is_some();
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::protocol_toml::default_protocol;

    fn day(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    /// Slots of a child born and registered on 10 January 2025, seen on these days.
    fn seen(days: &[&str], as_of: &str) -> Vec<Slot> {
        let born = day("2025-01-10");
        let visits = (1..).map(VisitId).zip(days.iter().map(|text| day(text)));
        slots(&default_protocol().schedule, born, born, visits, day(as_of))
    }

    fn of<'s>(slots: &'s [Slot], target: &str) -> &'s Slot {
        slots.iter().find(|slot| slot.window.target == day(target)).expect("a slot")
    }

    #[test]
    fn a_visit_is_on_time_from_the_first_to_the_last_day_of_the_window() {
        // The slot of 9 months aims at 10 October: 7 days before to 10 days after. Its neighbours lie a month away.
        let window = of(&seen(&[], "2025-01-10"), "2025-10-10").window;
        assert_eq!((window.opens(), window.closes()), (day("2025-10-03"), day("2025-10-20")));
        for (on, on_time) in
            [("2025-10-02", false), ("2025-10-03", true), ("2025-10-10", true), ("2025-10-20", true), ("2025-10-21", false)]
        {
            let found = seen(&[on], "2025-12-01");
            let filled = of(&found, "2025-10-10").filled;
            assert_eq!(filled, Some(Filled { visit: VisitId(1), on: day(on), on_time }), "{on}");
            assert_eq!((window.opens()..=window.closes()).contains(&day(on)), on_time, "{on}");
        }
    }

    #[test]
    fn the_first_visit_fills_a_slot_and_any_of_them_may_be_on_time() {
        let found = seen(&["2025-10-01", "2025-10-05", "2025-10-22"], "2025-12-01");
        assert_eq!(of(&found, "2025-10-10").filled, Some(Filled { visit: VisitId(1), on: day("2025-10-01"), on_time: true }));
        assert_eq!(found.iter().filter(|slot| slot.filled.is_some()).count(), 1);
    }

    #[test]
    fn a_slot_opens_closes_and_is_passed_over_on_its_day() {
        let state = |days: &[&str], as_of| of(&seen(days, as_of), "2025-10-10").state;
        for (as_of, expected) in [
            ("2025-10-02", SlotState::NotYet),
            ("2025-10-03", SlotState::Open),
            ("2025-10-20", SlotState::Open),
            ("2025-10-21", SlotState::Late),
        ] {
            assert_eq!(state(&[], as_of), expected, "{as_of}");
        }
        assert_eq!(state(&["2025-10-12"], "2025-10-12"), SlotState::Seen);
        assert_eq!(state(&["2025-11-10"], "2025-11-10"), SlotState::Skipped);
        assert_eq!(state(&["2025-09-10"], "2025-10-21"), SlotState::Late, "an earlier one does not pass over it");
    }

    #[test]
    fn next_is_the_first_expected_slot_that_can_still_be_kept_and_late_the_first_that_cannot() {
        let found = seen(&["2025-09-10"], "2025-10-21");
        assert_eq!(first_late(&found).map(|slot| slot.window.target), Some(day("2025-10-10")));
        assert_eq!(next_visit(&found).map(|slot| slot.window.target), Some(day("2025-11-10")));
        let found = seen(&["2025-09-10"], "2025-10-20");
        assert_eq!(first_late(&found), None);
        assert_eq!(next_visit(&found).map(|slot| slot.window.target), Some(day("2025-10-10")));
        // Registered late: the slots before are no reproach.
        let born = day("2025-01-10");
        let late = slots(&default_protocol().schedule, born, day("2025-10-30"), std::iter::empty(), day("2025-11-01"));
        assert_eq!(first_late(&late), None);
        assert_eq!(next_visit(&late).map(|slot| slot.window.target), Some(day("2025-11-10")));
    }
}

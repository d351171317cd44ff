//! When visits are expected, counted from birth, as the protocol says it. The slots of one child are worked out in `schedule`.

use chrono::NaiveDate;

use crate::calendar::{add_days, add_months};

/// An expected contact: calendar months after birth, then days.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SlotPlan {
    /// Calendar months after birth, the day clamped to the end of a short month.
    pub months: u32,
    /// Days after that.
    pub days: i32,
}

impl SlotPlan {
    /// Its day for a child born then.
    #[must_use]
    pub fn target(self, born: NaiveDate) -> NaiveDate {
        self.days_into(add_months(born, self.months))
    }

    /// Its day, from the day on which its months are completed.
    pub(crate) fn days_into(self, month: NaiveDate) -> NaiveDate {
        if self.days == 0 { month } else { add_days(month, self.days) }
    }

    /// Its age in whole months: 98 days are 3.
    #[must_use]
    pub fn whole_months(self) -> u32 {
        self.months + u32::try_from(self.days.max(0)).unwrap_or(0) / 30
    }

    /// A code that stays the same while the plan does: `d014`, `m06`, `m06d14`.
    #[must_use]
    pub fn code(self) -> String {
        match (self.months, self.days) {
            (0, days) => format!("d{days:03}"),
            (months, 0) => format!("m{months:02}"),
            (months, days) => format!("m{months:02}d{days:02}"),
        }
    }
}

/// From an age on, a window closes so many days after its target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CloseBand {
    /// From this age of the target in months.
    pub from_months: u32,
    /// Days after the target.
    pub days: i32,
}

/// When visits are expected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Schedule {
    /// In order of age; the last one is the exit.
    pub slots: Vec<SlotPlan>,
    /// Days before the target on which a window opens.
    pub opens_before_days: i32,
    /// Days after the target on which it closes, by age, youngest first.
    pub closes_after: Vec<CloseBand>,
    /// A slot whose target lies longer before registration is not expected.
    pub expected_from_days_before_registration: i32,
    /// Where the figures come from.
    pub source: String,
}

impl Schedule {
    /// Days after the target on which the window of a slot closes.
    #[must_use]
    pub fn closes_after_days(&self, slot: SlotPlan) -> i32 {
        let months = slot.whole_months();
        self.closes_after.iter().rfind(|band| band.from_months <= months).map_or(0, |band| band.days)
    }

    /// The first target after a day, expected or not.
    #[must_use]
    pub fn first_target_after(&self, born: NaiveDate, day: NaiveDate) -> Option<NaiveDate> {
        self.slots.iter().map(|slot| slot.target(born)).find(|target| *target > day)
    }
}

//! The plain figures of a protocol: ages, days of the classes, tolerances. It knows no rule.

use crate::rule::Class;

/// Ages at which something begins or ends.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ages {
    /// Earliest solids without a follow-up, in days (119–184).
    pub start_age_days: i32,
    /// Days after 6 completed months before solids are late.
    pub late_start_grace_days: i32,
    /// Days after the stated start of solids in which meal rules are silent and the stage is that of the first tastes.
    pub settling_in_days: i32,
    /// Completed months from which a child has no stage and no feeding rule.
    pub exit_age_months: u32,
    /// Where the figures come from.
    pub source: String,
}

/// Days that belong to a class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clock {
    /// From the visit to the day of the check.
    pub check_days: i32,
    /// The supervisor sees it as late from so many days past due on (0 = the due day itself).
    pub supervisor_after_days: i32,
    /// The manager counts it as late from so many days past due on.
    pub manager_after_days: i32,
}

/// The days of every class.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClassTimes {
    /// In the order of [`Class::ALL`].
    pub clocks: [Clock; 6],
    /// A check at the next routine visit is never sooner than this after the visit.
    pub month_at_least_days: i32,
    /// Where the figures come from.
    pub source: String,
}

impl ClassTimes {
    /// The days of a class.
    #[must_use]
    pub const fn of(&self, class: Class) -> Clock {
        self.clocks[class as usize]
    }
}

/// The largest difference between two careful measurers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tolerance {
    /// Weight, in grams.
    pub weight_g: i64,
    /// Length, in mm.
    pub length_mm: i32,
    /// Arm circumference, in mm.
    pub muac_mm: i32,
    /// Where the figures come from.
    pub source: String,
}

/// How follow-ups clear.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clearing {
    /// Where two clear visits are needed, at least so many days lie between them.
    pub two_visits_days_apart: i32,
    /// From an outcome `in_treatment` on, wasting rules are muted up to this day.
    pub treatment_mutes_days: i32,
    /// Where the figures come from.
    pub source: String,
}

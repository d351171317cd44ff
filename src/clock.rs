//! The only file that may ask what time it is. Everything below the handlers is told the day.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::SubsecRound;
use chrono::Utc;
use chrono_tz::Tz;

/// Tells the instant; real in the server, fixed in tests and in the demo's story.
pub trait Clock: Send + Sync {
    /// The instant, in whole seconds, so that stored text sorts like time.
    fn now(&self) -> DateTime<Utc>;
}

/// The machine's clock.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    #[expect(clippy::disallowed_methods, reason = "this is the one place that reads the clock")]
    fn now(&self) -> DateTime<Utc> {
        Utc::now().trunc_subsecs(0)
    }
}

/// A clock that stands still until it is set.
#[derive(Debug)]
pub struct FixedClock(std::sync::Mutex<DateTime<Utc>>);

impl FixedClock {
    /// A clock that stands at this instant.
    #[must_use]
    pub fn at(instant: DateTime<Utc>) -> Self {
        Self(std::sync::Mutex::new(instant.trunc_subsecs(0)))
    }

    /// Noon UTC of a day, which is the same day in most programmes' time zones.
    #[must_use]
    pub fn noon(day: NaiveDate) -> Self {
        Self::at(day.and_hms_opt(12, 0, 0).unwrap_or_default().and_utc())
    }

    /// Moves the clock.
    pub fn set(&self, instant: DateTime<Utc>) {
        *self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner) = instant.trunc_subsecs(0);
    }
}

impl Clock for FixedClock {
    fn now(&self) -> DateTime<Utc> {
        *self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}

/// The programme's calendar day at an instant: an evening visit belongs to that evening, whatever UTC says.
#[must_use]
pub fn day_in(zone: Tz, instant: DateTime<Utc>) -> NaiveDate {
    instant.with_timezone(&zone).date_naive()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_day_turns_in_the_programmes_own_zone() {
        let late_utc: DateTime<Utc> = "2026-11-24T22:30:00Z".parse().expect("an instant");
        assert_eq!(day_in(chrono_tz::Africa::Nairobi, late_utc).to_string(), "2026-11-25");
        assert_eq!(day_in(chrono_tz::UTC, late_utc).to_string(), "2026-11-24");
    }
}

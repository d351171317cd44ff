//! The programme's own settings, kept in the database and changed by an administrator.

use std::collections::BTreeMap;

use chrono_tz::Tz;

/// What a programme sets for itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// Shown in the head and in reports.
    pub programme_name: String,
    /// Decides which day it is.
    pub time_zone: Tz,
    /// Local emergency number; without it pages say "your local emergency number".
    pub emergency_number: Option<String>,
    /// Language code for those who have not chosen.
    pub language: String,
    /// Published counts below this are hidden. May only be raised above 5.
    pub small_number_threshold: u32,
    /// Invented data: pages say so and every start resets the demo accounts.
    pub demo: bool,
}

/// The smallest threshold a programme may set for published counts (common practice).
pub const LEAST_THRESHOLD: u32 = 5;

impl Default for Settings {
    fn default() -> Self {
        Self {
            programme_name: "Spoonround".to_owned(),
            time_zone: Tz::UTC,
            emergency_number: None,
            language: "en".to_owned(),
            small_number_threshold: LEAST_THRESHOLD,
            demo: false,
        }
    }
}

impl Settings {
    /// From stored keys and values; what is absent or no longer readable keeps its default.
    #[must_use]
    pub fn from_stored(stored: &BTreeMap<String, String>) -> Self {
        let usual = Self::default();
        let text = |key: &str| stored.get(key).map(|v| v.trim().to_owned()).filter(|v| !v.is_empty());
        Self {
            programme_name: text("programme_name").unwrap_or(usual.programme_name),
            time_zone: text("time_zone").and_then(|v| v.parse().ok()).unwrap_or(usual.time_zone),
            emergency_number: text("emergency_number"),
            language: text("language").unwrap_or(usual.language),
            small_number_threshold: text("small_number_threshold")
                .and_then(|v| v.parse().ok())
                .unwrap_or(LEAST_THRESHOLD)
                .max(LEAST_THRESHOLD),
            demo: text("demo").as_deref() == Some("yes"),
        }
    }

    /// As stored.
    #[must_use]
    pub fn to_stored(&self) -> BTreeMap<String, String> {
        [
            ("programme_name", self.programme_name.clone()),
            ("time_zone", self.time_zone.name().to_owned()),
            ("emergency_number", self.emergency_number.clone().unwrap_or_default()),
            ("language", self.language.clone()),
            ("small_number_threshold", self.small_number_threshold.to_string()),
            ("demo", if self.demo { "yes" } else { "no" }.to_owned()),
        ]
        .into_iter()
        .map(|(k, v)| (k.to_owned(), v))
        .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn settings_survive_storing() {
        let settings =
            Settings { time_zone: chrono_tz::Africa::Kigali, emergency_number: Some("112".to_owned()), demo: true, ..Settings::default() };
        assert_eq!(Settings::from_stored(&settings.to_stored()), settings);
    }

    #[test]
    fn the_threshold_for_small_numbers_can_only_be_raised() {
        let stored = BTreeMap::from([("small_number_threshold".to_owned(), "2".to_owned())]);
        assert_eq!(Settings::from_stored(&stored).small_number_threshold, 5);
    }
}

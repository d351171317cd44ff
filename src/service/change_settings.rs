//! Changing the programme's settings: every fault at once, and what protects families can only be raised.

use domain::fault::Fault;
use domain::fault::Faults;
use domain::number_text::parse_scaled;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::settings::LEAST_THRESHOLD;
use crate::service::settings::Settings;
use crate::store::settings;

/// The longest name of a programme, in characters.
const MOST_NAME: usize = 120;
/// The longest emergency number, in characters as typed.
const MOST_NUMBER: usize = 30;
/// Above this nothing would be published at all.
const MOST_THRESHOLD: u64 = 100;

/// The boxes as typed.
#[derive(Debug, Clone, Copy)]
pub struct SettingsDraft<'a> {
    /// Name of the programme.
    pub programme_name: &'a str,
    /// IANA name.
    pub time_zone: &'a str,
    /// May be empty.
    pub emergency_number: &'a str,
    /// Code of a language.
    pub language: &'a str,
    /// Counts below it are kept back.
    pub small_number_threshold: &'a str,
}

impl SettingsDraft<'_> {
    /// As settings, the rest as before.
    ///
    /// # Errors
    /// Every fault at once.
    pub fn read(&self, languages: &[&str], before: &Settings) -> Result<Settings, Faults> {
        let mut faults = Faults::new();
        let name = self.programme_name.trim();
        if name.is_empty() {
            faults.add("programme_name", Fault::Missing);
        } else if name.chars().count() > MOST_NAME {
            faults.add("programme_name", Fault::TooLong { most: MOST_NAME });
        }
        let zone = self.time_zone.trim();
        let time_zone = chrono_tz::TZ_VARIANTS.iter().copied().find(|tz| tz.name().eq_ignore_ascii_case(zone));
        match time_zone {
            None if zone.is_empty() => faults.add("time_zone", Fault::Missing),
            None => faults.add("time_zone", Fault::UnknownTimeZone),
            Some(_) => {}
        }
        let number = self.emergency_number.trim();
        if number.chars().count() > MOST_NUMBER {
            faults.add("emergency_number", Fault::TooLong { most: MOST_NUMBER });
        } else if !number.is_empty() && !number.bytes().any(|b| b.is_ascii_digit()) {
            faults.add("emergency_number", Fault::NotANumber);
        }
        if !languages.contains(&self.language) {
            faults.add("language", Fault::UnknownChoice);
        }
        let threshold = self.threshold(&mut faults);
        let settings = time_zone.zip(threshold).map(|(time_zone, small_number_threshold)| Settings {
            programme_name: name.to_owned(),
            time_zone,
            emergency_number: Some(number.to_owned()).filter(|n| !n.is_empty()),
            language: self.language.to_owned(),
            small_number_threshold,
            demo: before.demo,
        });
        faults.or(settings)
    }

    fn threshold(&self, faults: &mut Faults) -> Option<u32> {
        let text = self.small_number_threshold.trim();
        let least = u64::from(LEAST_THRESHOLD);
        let fault = match parse_scaled(text, 0) {
            _ if text.is_empty() => Fault::Missing,
            Ok(value) if (least..=MOST_THRESHOLD).contains(&value) => return u32::try_from(value).ok(),
            Ok(_) => Fault::Outside { least: least.to_string(), most: MOST_THRESHOLD.to_string(), unit: "" },
            Err(_) => Fault::NotANumber,
        };
        faults.add("small_number_threshold", fault);
        None
    }
}

/// Saves what differs.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn change(ctx: &Context, sent: Sent, before: &Settings, after: &Settings) -> Result<(), Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let old = before.to_stored();
            let mut fields = Vec::new();
            let stored = after.to_stored();
            for (name, value) in stored.iter().filter(|(name, value)| old.get(*name) != Some(value)) {
                settings::set(tx, name, value).await?;
                fields.push(name.as_str());
            }
            audit::note(tx, ctx, "settings.change", "settings", "programme", &fields).await?;
            once::remember(tx, ctx, sent, "/settings").await
        })
        .await
}

#[cfg(test)]
mod tests {
    use chrono_tz::Tz;

    use super::*;

    fn draft() -> SettingsDraft<'static> {
        SettingsDraft {
            programme_name: "Kesara Lake",
            time_zone: "africa/nairobi",
            emergency_number: "",
            language: "fr",
            small_number_threshold: "5",
        }
    }

    fn fields(result: Result<Settings, Faults>) -> Vec<String> {
        result.expect_err("faults").iter().map(|(field, fault)| format!("{field} {}", fault.code())).collect()
    }

    #[test]
    fn settings_are_read_whole() {
        let settings = draft().read(&["en", "fr"], &Settings::default()).expect("read");
        assert_eq!((settings.time_zone, settings.emergency_number), (Tz::Africa__Nairobi, None));
    }

    #[test]
    fn all_faults_come_at_once() {
        let typed = SettingsDraft {
            programme_name: " ",
            time_zone: "Lake/Kesara",
            emergency_number: "call us",
            language: "xx",
            small_number_threshold: "4",
        };
        assert_eq!(
            fields(typed.read(&["en"], &Settings::default())),
            [
                "programme_name missing",
                "time_zone unknown-time-zone",
                "emergency_number not-a-number",
                "language unknown-choice",
                "small_number_threshold outside-count"
            ]
        );
    }

    #[test]
    fn the_threshold_is_never_below_five() {
        for (typed, fine) in [("4", false), ("5", true), ("100", true), ("101", false), ("", false), ("٧", true)] {
            let draft = SettingsDraft { small_number_threshold: typed, ..draft() };
            assert_eq!(draft.read(&["fr"], &Settings::default()).is_ok(), fine, "{typed:?}");
        }
    }
}

//! The programme's own settings. Knows no child.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Lang;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::summary_of;

/// The page.
#[derive(Clone, Copy)]
pub struct SettingsPage<'a> {
    /// Name of the programme as it is.
    pub programme_name: &'a str,
    /// The time there now, in words.
    pub time_now: &'a str,
    /// What was typed, or what is stored.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "time_zone" => "settings-time-zone",
        "emergency_number" => "settings-emergency",
        "language" => "settings-language",
        "small_number_threshold" => "settings-threshold",
        _ => "settings-programme-name",
    })
}

/// The page.
#[must_use]
pub fn page(w: &Words, page: SettingsPage<'_>) -> Markup {
    let ask = Ask::new(w, page.filled, page.faults);
    let zone_hint =
        format!("{} {}", w.say("settings-time-zone-hint"), w.say_with("settings-time-zone-now", args!["time" => page.time_now]));
    let languages = Lang::OFFERED.iter().map(|l| (l.code().to_owned(), l.own_name().to_owned()));
    let fields = html! {
        (ask.text("programme_name", "settings-programme-name"))
        (ask.text("time_zone", "settings-time-zone").hint(zone_hint).plain_letters())
        (ask.phone("emergency_number", "settings-emergency").hint(w.say("settings-emergency-hint")))
        (ask.select("language", "settings-language").hint(w.say("settings-language-hint")).options(languages))
        (ask.whole("small_number_threshold", "settings-threshold").hint(w.say("settings-threshold-hint")).unit(w.say("settings-threshold-unit")))
        (acts(&button(&w.say("settings-save"), false)))
    };
    html! {
        (summary_of(w, page.faults, &|field| label(w, field)))
        h1 { (w.say_with("settings-heading", args!["name" => page.programme_name])) }
        p.lede { (w.say("settings-lede")) }
        (form("/settings", page.token, Some(page.key), &fields))
    }
}

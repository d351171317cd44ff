//! The frame of every page: head, ways to go, the work, the cautions. Knows who asks only by role and name.

pub mod assets;
mod foot;
mod nav;

use chrono::NaiveDate;
use domain::role::Role;
use maud::DOCTYPE;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::icons;

pub use crate::view::layout::nav::Nav;

/// The protocol that the page's advice comes from.
#[derive(Debug, Clone, Copy)]
pub struct ProtocolLine<'a> {
    /// Its id.
    pub id: &'a str,
    /// Its version.
    pub version: &'a str,
    /// The clinician who approved it; empty or missing: not yet.
    pub approved_by: Option<&'a str>,
    /// The local protocol it follows.
    pub local_name: Option<&'a str>,
}

/// What the frame of a page needs to know. Start from [`Shell::new`].
pub struct Shell<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// The title, without the name of the app.
    pub title: &'a str,
    /// The role of who is signed in.
    pub role: Option<Role>,
    /// The name of who is signed in.
    pub person: Option<&'a str>,
    /// Which way to go is this page.
    pub here: Option<Nav>,
    /// A past day that the page shows.
    pub as_of: Option<NaiveDate>,
    /// A desk page: two columns where there is room.
    pub wide: bool,
    /// An emergency: the bar within reach is the call.
    pub urgent: bool,
    /// A page with a long form: no bar within reach, the keyboard needs the room.
    pub without_reach: bool,
    /// What has just been done, said once.
    pub flash: Option<&'a str>,
    /// The token of the frame's own forms.
    pub token: String,
    /// The address of this page with its query, for the language switch.
    pub path: &'a str,
    /// The protocol; none on pages without advice.
    pub protocol: Option<ProtocolLine<'a>>,
    /// The programme's emergency number; none: "your local emergency number".
    pub emergency_number: Option<&'a str>,
    /// Whether all data is invented.
    pub demo: bool,
}

impl<'a> Shell<'a> {
    /// The frame of a page for nobody in particular.
    #[must_use]
    pub const fn new(w: &'a Words, title: &'a str) -> Self {
        Self {
            w,
            title,
            role: None,
            person: None,
            here: None,
            as_of: None,
            wide: false,
            urgent: false,
            without_reach: false,
            flash: None,
            token: String::new(),
            path: "/",
            protocol: None,
            emergency_number: None,
            demo: false,
        }
    }
}

/// A whole page.
#[must_use]
pub fn page(shell: &Shell<'_>, body: Markup) -> Markup {
    let w = shell.w;
    let reach = nav::reach(shell);
    let head = head(shell);
    let body_class = match (shell.wide, shell.urgent) {
        (true, true) => Some("wide urgent"),
        (true, false) => Some("wide"),
        (false, true) => Some("urgent"),
        (false, false) => None,
    };
    html! {
        (DOCTYPE)
        html lang=(w.lang().code()) dir=(w.lang().direction()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (w.say_with("common-title", args!["page" => shell.title])) }
                link rel="stylesheet" href=(assets::style_path());
                link rel="icon" type="image/svg+xml" href=(assets::mark_path());
            }
            body class=[body_class] {
                a.skip href="#main" { (w.say("common-skip")) }
                (icons::sprite(&[&head, &reach, &body]))
                (head)
                @if shell.demo { aside.signal aria-label=(w.say("common-demo-label")) { div { p { (w.say("common-demo")) } } } }
                @if let Some(date) = shell.as_of { (as_of(shell, date)) }
                (reach)
                main id="main" tabindex="-1" {
                    // The place is there before its words, so that a screen reader notices them.
                    div role="status" { @if let Some(done) = shell.flash { p.flash { (done) } } }
                    (body)
                }
                (foot::foot(shell, &body))
            }
        }
    }
}

fn head(shell: &Shell<'_>) -> Markup {
    let w = shell.w;
    html! {
        header.head { div {
            a.mark href="/" { (icons::mark()) (w.say("common-brand")) }
            (foot::emergency(shell))
        } }
    }
}

fn as_of(shell: &Shell<'_>, date: NaiveDate) -> Markup {
    let w = shell.w;
    let today = without_as_of(shell.path);
    html! {
        aside.signal aria-label=(w.say("common-as-of-label")) { div {
            p { (w.say_with("common-as-of", args!["date" => format::day_and_year(w, date)])) }
            a href=(today) { (w.say("common-as-of-leave")) }
        } }
    }
}

/// The same address for today.
fn without_as_of(path: &str) -> String {
    let Some((place, query)) = path.split_once('?') else { return path.to_owned() };
    let rest: Vec<&str> = query.split('&').filter(|pair| !pair.starts_with("as_of=")).collect();
    if rest.is_empty() { place.to_owned() } else { format!("{place}?{}", rest.join("&")) }
}

#[cfg(test)]
mod tests;

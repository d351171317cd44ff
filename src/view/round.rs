//! The round of a day: homes along a trail, most urgent first, with the reason and the day in a line each.
//! Knows errands as they were worked out; which home comes first was decided before.

pub mod home;
pub mod sheet;

use chrono::NaiveDate;
use domain::errand::Errand;
use domain::ids::HouseholdId;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::icons::WAY;
use crate::view::layout::Nav;
use crate::view::parts::Icon;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::details;
use crate::view::parts::link_button;
use crate::view::parts::name;

/// At most so many names are called out in the heading.
const MOST_NAMES: usize = 3;

/// A home with something to do.
#[derive(Debug, Clone)]
pub struct Home<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// The child's name.
    pub name: &'a str,
    /// What the family calls the child.
    pub known_as: Option<&'a str>,
    /// Birth date.
    pub born: NaiveDate,
    /// Village.
    pub village: &'a str,
    /// The caregiver's phone.
    pub phone: Option<&'a str>,
    /// What is to be done.
    pub errand: &'a Errand,
    /// The last home or clinic visit.
    pub last_seen_on: Option<NaiveDate>,
    /// The home, where several children share it.
    pub household: Option<HouseholdId>,
    /// The others of the home, by code and name.
    pub also: Vec<(String, String)>,
    /// The supervisor wrote to the worker about the child.
    pub noted: bool,
}

/// Something that a visit can check; named when it was not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Check {
    /// Weight.
    Weight,
    /// Length.
    Length,
    /// Arm.
    Arm,
    /// Swelling of the feet.
    Feet,
    /// Danger signs.
    Signs,
}

impl Check {
    /// Every check, in the order of the form.
    pub const ALL: [Self; 5] = [Self::Weight, Self::Length, Self::Arm, Self::Feet, Self::Signs];

    fn words(self, w: &Words) -> String {
        w.say(match self {
            Self::Weight => "round-check-weight",
            Self::Length => "round-check-length",
            Self::Arm => "round-check-arm",
            Self::Feet => "round-check-feet",
            Self::Signs => "round-check-signs",
        })
    }
}

/// A home seen on the day.
#[derive(Debug, Clone)]
pub struct SeenHome<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// The child's name.
    pub name: &'a str,
    /// Birth date.
    pub born: NaiveDate,
    /// What was not checked at the visit.
    pub not_checked: &'a [Check],
    /// What stays to be followed up.
    pub errand: Option<&'a Errand>,
}

/// A page of the round.
pub struct RoundPage<'a> {
    /// The day.
    pub day: NaiveDate,
    /// Whose round, when it is not one's own.
    pub whose: Option<&'a str>,
    /// Homes in the order of work.
    pub homes: Vec<Home<'a>>,
    /// Homes whose follow-up is not due for more than a week.
    pub later: Vec<Home<'a>>,
    /// Homes seen on the day.
    pub seen: Vec<SeenHome<'a>>,
    /// The child whose visit comes next, when there is nothing to do.
    pub next_due: Option<(&'a str, NaiveDate)>,
    /// Whether this page goes on from an earlier one.
    pub continues: bool,
    /// Where the round goes on.
    pub more: Option<String>,
    /// The sheet to print.
    pub print: String,
    /// What a link to a child carries on: the past day shown.
    pub query: &'a str,
    /// The arm limits that are printed.
    pub arms: sheet::ArmLimits,
    /// The name of a food by its code.
    pub food: &'a dyn Fn(&str) -> String,
}

/// The title of the page: the day.
#[must_use]
pub fn title(w: &Words, page: &RoundPage<'_>) -> String {
    let day = format::weekday(w, page.day);
    page.whose.map_or_else(|| day.clone(), |whose| w.say_with("round-title-of", args!["name" => whose, "day" => day.as_str()]))
}

/// The page.
#[must_use]
pub fn body(w: &Words, page: &RoundPage<'_>) -> Markup {
    html! {
        @if page.whose.is_some() { (back(w, "/team", &w.say("common-nav-workers"))) }
        p.quiet.eyebrow { (title(w, page)) }
        h1 { (heading(w, page)) }
        @if page.homes.is_empty() && page.seen.is_empty() && !page.continues { (nothing_due(w, page)) }
        div.desk {
            div {
                @if !page.homes.is_empty() || !page.seen.is_empty() { (trail(w, page)) }
                @if let Some(more) = &page.more { (acts(&link_button(more, &html! { (w.say("round-more")) }, false))) }
            }
            div.beside { (beside(w, page)) }
        }
    }
}

/// What lies beside the trail where there is room, and below it on a phone.
fn beside(w: &Words, page: &RoundPage<'_>) -> Markup {
    html! {
        @if !page.later.is_empty() { (later(w, page)) }
        @if !page.homes.is_empty() { (acts(&link_button(&page.print, &html! { (w.say("round-print")) }, true))) }
        p.quiet { (w.say("round-anyway")) }
        @if !page.homes.is_empty() { p.quiet { (w.say("round-rule")) } }
    }
}

/// How many homes these children live in.
fn homes_of(children: &[Home<'_>]) -> usize {
    let shared: std::collections::BTreeSet<HouseholdId> = children.iter().filter_map(|child| child.household).collect();
    children.iter().filter(|child| child.household.is_none()).count() + shared.len()
}

/// The heading is the answer: how many homes are left, and where to begin.
fn heading(w: &Words, page: &RoundPage<'_>) -> String {
    if page.homes.is_empty() {
        return w.say(match (page.continues, page.seen.is_empty()) {
            (true, _) => "round-no-more",
            (false, true) => "round-none",
            (false, false) => "round-all-done",
        });
    }
    let left = match (page.continues, page.more.is_some()) {
        (true, _) => w.say_with("round-left-further", args!["count" => homes_of(&page.homes)]),
        (false, true) => w.say_with("round-left-over", args!["count" => homes_of(&page.homes)]),
        (false, false) => w.say_with("round-left", args!["count" => homes_of(&page.homes)]),
    };
    let pressing: Vec<String> = page.homes.iter().filter(|h| h.errand.is_pressing()).map(|h| h.name.to_owned()).collect();
    let first = match pressing.len() {
        0 => w.say_with("round-begin", args!["names" => page.homes[0].name, "count" => 1]),
        n if n <= MOST_NAMES => w.say_with("round-begin", args!["names" => format::list(w, &pressing), "count" => n]),
        n => {
            let named = pressing[..MOST_NAMES - 1].join(", ");
            w.say_with("round-begin-more", args!["names" => named, "count" => n - (MOST_NAMES - 1)])
        }
    };
    w.say_with("round-heading", args!["left" => left, "first" => first])
}

fn trail(w: &Words, page: &RoundPage<'_>) -> Markup {
    let mut place: Option<&str> = None;
    html! {
        ol.path {
            @for home in &page.homes {
                @if !home.errand.is_pressing() && place != Some(home.village) {
                    (resting_place(home.village))
                    @let _ = place.replace(home.village);
                }
                (home::line(w, page, home))
            }
            @for seen in &page.seen { (home::seen(w, page, seen)) }
        }
    }
}

fn way() -> Markup {
    html! { svg.way aria-hidden="true" { use href={ "#" (WAY) } width="100%" height="100%" {} } }
}

fn resting_place(village: &str) -> Markup {
    html! {
        li.place { (way()) span.dot aria-hidden="true" { (Icon::Round.draw("u")) } (name(village)) }
    }
}

fn later(w: &Words, page: &RoundPage<'_>) -> Markup {
    let lines = html! { ul.rows { @for home in &page.later { li { (home::later(w, page, home)) } } } };
    details(&w.say_with("round-later", args!["count" => page.later.len()]), false, &lines)
}

fn nothing_due(w: &Words, page: &RoundPage<'_>) -> Markup {
    html! {
        @if let Some((child, on)) = page.next_due {
            p.lede { (w.say_with("round-next", args!["name" => child, "day" => format::weekday(w, on)])) }
        }
        (drawing())
        (acts(&html! {
            (link_button(Nav::Find.path(), &html! { (w.say("round-find")) }, false))
            (link_button(Nav::Add.path(), &html! { (w.say("round-add")) }, true))
        }))
    }
}

/// A bowl, and the trail to a home.
fn drawing() -> Markup {
    html! {
        svg.chart viewBox="0 0 360 112" aria-hidden="true" {
            path.trail d="M78 92C130 92 150 52 200 58S270 66 300 48" {}
            path.food d="M18 58h60c0 20-12 33-30 33S18 78 18 58z" {}
            path.draw d="M14 58h68c0 22-14 36-34 36S14 80 14 58zM36 98h24M62 58 84 24" {}
            ellipse cx="88" cy="18" rx="6" ry="9" transform="rotate(33 88 18)" fill="currentColor" {}
            path.draw d="M304 56V30l24-20 24 20v26zM322 56V42h12v14" {}
        }
    }
}

#[cfg(test)]
mod tests;

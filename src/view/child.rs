//! A child's page: who it is, what is urgent, growth, food, follow-ups and visits. Knows what was judged, judges nothing.

pub mod agreed;
mod corrections;
mod follow_ups;
pub(in crate::view) mod food;
pub(in crate::view) mod growth;
mod home;
pub(crate) mod thickness;
mod visits;

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::view::desk_note;
use crate::view::desk_note::NoteLine;
use crate::view::household::Also;
use crate::view::layout::Nav;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::alert;
use crate::view::parts::back;
use crate::view::parts::call_link;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::note;

pub use crate::view::child::agreed::AgreedStep;
pub use crate::view::child::corrections::CorrectionLine;
pub use crate::view::child::follow_ups::OpenFollowUp;
pub use crate::view::child::follow_ups::PastFollowUp;
pub use crate::view::child::food::FoodLine;
pub use crate::view::child::food::FoodStanding;
pub use crate::view::child::food::NextStage;
pub use crate::view::child::food::StageNow;
pub use crate::view::child::growth::MeasuredOn;
pub use crate::view::child::growth::MeasuringError;
pub use crate::view::child::thickness::Thickness;
pub use crate::view::child::thickness::sentence;
pub use crate::view::child::visits::Answered;
pub use crate::view::child::visits::EarlierVersion;
pub use crate::view::child::visits::Kept;
pub use crate::view::child::visits::VisitLine;
pub use crate::view::child::visits::VisitsPage;
pub use crate::view::child::visits::all_visits;
pub use crate::view::child::visits::numbers;

/// Visits shown on the child's page; the others are a link away.
pub const MOST_VISITS: usize = 4;
/// Born small: under 2500 g (WHO).
const SMALL_BELOW_G: u32 = 2500;
/// From this age on the clinic is asked about iron drops (WHO 2011, from memory).
const IRON_FROM_MONTHS: u32 = 2;

/// Who the child is.
#[derive(Debug, Clone)]
pub struct Who<'a> {
    /// Code in links.
    pub code: &'a str,
    /// Code as printed.
    pub printed: String,
    /// Name.
    pub name: &'a str,
    /// What the family calls the child.
    pub known_as: Option<&'a str>,
    /// Sex.
    pub sex: Sex,
    /// Birth date.
    pub born: NaiveDate,
    /// Whether its day is known.
    pub birth_day_known: bool,
    /// Birth weight in grams.
    pub birth_weight_g: Option<u32>,
    /// Length of pregnancy in days.
    pub gestation_days: Option<u16>,
    /// By how many days ages are corrected for early birth; 0 = not.
    pub corrected_by_days: u16,
    /// The due date of a child born early.
    pub due_date: Option<NaiveDate>,
    /// Village.
    pub village: &'a str,
    /// Caregiver.
    pub caregiver: &'a str,
    /// Mother, grandmother …
    pub relation: Option<&'a str>,
    /// The caregiver's phone.
    pub phone: Option<&'a str>,
    /// How to find the home.
    pub directions: Option<&'a str>,
    /// The worker, where the reader has several.
    pub worker: Option<&'a str>,
    /// In the programme, or how it left.
    pub status: ChildStatus,
    /// The day of leaving.
    pub left_on: Option<NaiveDate>,
}

/// Everything on the page.
pub struct ChildPage<'a> {
    /// The child.
    pub who: Who<'a>,
    /// The day shown.
    pub day: NaiveDate,
    /// Whether the reader may move the child or let it leave.
    pub can_supervise: bool,
    /// The programme's emergency number.
    pub number: Option<&'a str>,
    /// What links carry on: the past day shown.
    pub query: &'a str,
    /// What was measured, oldest first; birth weight too.
    pub measured: Vec<MeasuredOn>,
    /// Where the child stands with food; none from 24 months on.
    pub stage: Option<StageNow<'a>>,
    /// Meals by thickness; none from 24 months on.
    pub thickness: Option<Thickness<'a>>,
    /// Foods offered so far.
    pub foods: Vec<FoodLine>,
    /// Foods of the programme that fit the age and were never offered.
    pub not_tried: Vec<String>,
    /// Open follow-ups, most urgent first.
    pub open: Vec<OpenFollowUp<'a>>,
    /// Closed follow-ups, latest first.
    pub past: Vec<PastFollowUp<'a>>,
    /// The other children of the home, as things stand today.
    pub here: Vec<Also>,
    /// Steps agreed with the family, latest first.
    pub agreed: Vec<AgreedStep>,
    /// Visits, newest first.
    pub visits: Vec<VisitLine<'a>>,
    /// Another record that may be the same child, while nobody has decided: code in links and name.
    pub twin: Option<(String, String)>,
    /// What the supervisor wrote to the worker and waits.
    pub desk_notes: Vec<NoteLine>,
    /// Those read lately, each in a sentence; for a supervisor.
    pub notes_read: Vec<String>,
    /// Corrections of the record, latest first.
    pub corrections: Vec<CorrectionLine>,
    /// First and last day of the next visit's window.
    pub next_visit: Option<(NaiveDate, NaiveDate)>,
    /// The name of a food by its code.
    pub food: &'a dyn Fn(&str) -> String,
}

impl ChildPage<'_> {
    /// The names of the foods on hold after a reaction.
    pub(in crate::view) fn on_hold(&self) -> Vec<&str> {
        let held = |food: &&FoodLine| matches!(food.standing, FoodStanding::OnHold { .. });
        self.foods.iter().filter(held).map(|food| food.name.as_str()).collect()
    }

    pub(in crate::view) fn before_due_date(&self) -> bool {
        self.who.due_date.is_some_and(|due| self.day < due)
    }

    /// Whether an emergency is open: the page is then framed by the call.
    #[must_use]
    pub fn is_emergency(&self) -> bool {
        self.open.iter().any(|follow_up| follow_up.class == Class::Now)
    }
}

/// The page.
#[must_use]
pub fn body(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        @if page.is_emergency() { (emergency(w, page)) }
        @if page.can_supervise {
            (back(w, Nav::Find.path(), &w.say("common-nav-find")))
        } @else {
            (back(w, &format!("/round{}", page.query), &w.say("round-title")))
        }
        @if page.is_emergency() { h2.name { (name(page.who.name)) } } @else { h1 { (name(page.who.name)) } }
        (who(w, page))
        (home::at_once(w, page))
        (urgent(w, page))
        (desk_note::waiting(w, &page.desk_notes))
        (desk_note::read(&page.notes_read))
        (doing(w, page))
        (notes(w, page))
        div.people {
            div {
                (growth::part(w, page))
                (food::part(w, page))
            }
            div {
                (follow_ups::part(w, page))
                (agreed::part(w, page))
                (visits::part(w, page))
                (corrections::part(w, page))
                (home::part(w, page))
                (placing(w, page))
            }
        }
    }
}

fn who(w: &Words, page: &ChildPage<'_>) -> Markup {
    let child = &page.who;
    let said = w.say_with("child-who", args!["sex" => codes::sex(w, child.sex), "age" => format::age_exact(w, child.born, page.day)]);
    html! {
        p.lede.quiet {
            (said) " · " (name(child.village)) " · "
            @match child.relation { Some(relation) => { (name(relation)) " " (name(child.caregiver)) } None => { (w.say_with("child-with", args!["name" => child.caregiver])) } }
            " · " span.ltr { (child.printed) }
            @if let Some(known_as) = child.known_as { " · " (w.say_with("child-known-as", args!["name" => known_as])) }
            @if let Some(worker) = child.worker { " · " (w.say_with("child-worker", args!["name" => worker])) }
            @if !child.birth_day_known { " · " (w.say("child-day-estimated")) }
        }
        @if let Some(directions) = child.directions { p.quiet { (name(directions)) } }
    }
}

fn emergency(w: &Words, page: &ChildPage<'_>) -> Markup {
    let Some(first) = page.open.iter().find(|follow_up| follow_up.class == Class::Now) else { return Markup::default() };
    let why = explain(first.rule, first.evidence, w, page.food);
    let heading = html! { (w.say_with("child-emergency", args!["name" => page.who.name, "why" => why])) };
    let call = html! {
        @match page.number {
            Some(number) => { (call_link(number, "dial", &html! { (w.say_with("common-call-number", args!["number" => number])) })) }
            None => { p.dial { (w.say("common-call-local")) } }
        }
        p { a href=(follow_ups::why_path(page, first)) { (w.say("child-why-and-what")) } }
    };
    alert(&codes::class_word(w, Class::Now), &heading, &call)
}

/// What has to go to the clinic today and has not been answered for.
fn urgent(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        @for follow_up in page.open.iter().filter(|follow_up| follow_up.class == Class::Today) {
            (note(NoteWeight::Stop, Icon::Today, &html! {
                h2 { (codes::class_word(w, follow_up.class)) }
                p { (explain(follow_up.rule, follow_up.evidence, w, page.food)) " " (w.say_with("child-seen-on", args!["day" => format::day_near(w, follow_up.last_fired_on, page.day)])) }
                a href=(follow_ups::why_path(page, follow_up)) { (w.say("child-why-and-what")) }
            }))
        }
    }
}

/// The one solid act, and the call.
fn doing(w: &Words, page: &ChildPage<'_>) -> Markup {
    let start = format!("/children/{}/visits/new", page.who.code);
    acts(&html! {
        (link_button(&start, &html! { (w.say("child-start-visit")) }, page.is_emergency()))
        (link_button(&format!("/children/{}/card{}", page.who.code, page.query), &html! { (w.say("card-link")) }, true))
        (link_button(&format!("/children/{}/referral{}", page.who.code, page.query), &html! { (w.say("referral-link")) }, true))
        @if let Some(phone) = page.who.phone { (call_link(phone, "do second", &html! { (w.say_with("child-call", args!["name" => page.who.caregiver])) })) }
    })
}

/// What is good to know before anything is read: left, born early, born small.
fn notes(w: &Words, page: &ChildPage<'_>) -> Markup {
    let child = &page.who;
    let months = domain::calendar::completed_months(child.born, page.day).unwrap_or(0);
    let small = child.birth_weight_g.is_some_and(|grams| grams < SMALL_BELOW_G);
    let early = child.due_date.is_some();
    let iron = (small || early) && months >= IRON_FROM_MONTHS;
    html! {
        @if child.status != ChildStatus::Active {
            (note(NoteWeight::Plain, Icon::Info, &html! { p {
                (codes::child_status(w, child.status))
                @if let Some(on) = child.left_on { " · " (format::day_and_year(w, on)) }
            } }))
        }
        @if let Some((code, other)) = &page.twin {
            (note(NoteWeight::Look, Icon::Ask, &html! {
                p { (w.say("twin-note")) " " a.link href={ "/children/" (code) } { (name(other)) } }
                @if page.can_supervise {
                    p { a.link href={ "/children/" (child.code) "/merge?with=" (code) } { (w.say("twin-compare")) } }
                } @else { p { (w.say("twin-tell")) } }
            }))
        }
        @if early || iron {
            (note(NoteWeight::Plain, Icon::Info, &html! {
                @if early { p { (early_words(w, page)) } }
                @if iron { p { (w.say("child-iron-drops")) } }
            }))
        }
    }
}

fn early_words(w: &Words, page: &ChildPage<'_>) -> String {
    let weeks = page.who.corrected_by_days.div_ceil(7);
    if weeks == 0 { w.say("child-born-early") } else { w.say_with("child-corrected", args!["weeks" => weeks]) }
}

/// Moving a child is for supervisors; that it left, whoever heard it writes down.
fn placing(w: &Words, page: &ChildPage<'_>) -> Markup {
    let code = page.who.code;
    let there = page.who.status == ChildStatus::Active;
    html! {
        @if page.can_supervise || there {
            h2 { (w.say("child-place")) }
            ul.rows {
                @if page.can_supervise { li { a.link href={ "/children/" (code) "/note" } { (w.say("desk-note-way")) } } }
                @if page.can_supervise { li { a.link href={ "/children/" (code) "/move" } { (w.say("child-move")) } } }
                @if page.can_supervise { li { a.link href={ "/children/" (code) "/merge" } { (w.say("merge-way")) } } }
                @if there { li { a.link href={ "/children/" (code) "/leave" } { (w.say("child-leave")) } } }
            }
        }
    }
}

#[cfg(test)]
mod tests;

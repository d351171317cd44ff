//! Visits of a child: the latest on its page, all of them with what corrections replaced on a page of their own.

use chrono::NaiveDate;
use domain::visit::Contact;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::child::MOST_VISITS;
use crate::view::parts::back;
use crate::view::parts::details;
use crate::view::parts::name;

/// A visit in short.
#[derive(Debug, Clone)]
pub struct VisitLine<'a> {
    /// Entry number, in links.
    pub seq: i64,
    /// Day.
    pub on: NaiveDate,
    /// Where or how.
    pub contact: Contact,
    /// Weight in grams.
    pub weight_g: Option<u32>,
    /// Length in mm.
    pub length_mm: Option<u16>,
    /// Arm in mm.
    pub arm_mm: Option<u16>,
    /// Who entered it.
    pub by: &'a str,
    /// Counts corrections, from 1.
    pub version: u32,
    /// Taken back as never having happened.
    pub voided: bool,
    /// Free note.
    pub note: Option<&'a str>,
}

/// What a correction replaced.
#[derive(Debug, Clone)]
pub struct EarlierVersion<'a> {
    /// Its number.
    pub version: u32,
    /// The day of the correction.
    pub replaced_on: NaiveDate,
    /// Who corrected.
    pub by: &'a str,
    /// Why.
    pub reason: &'a str,
    /// Weight, length and arm as they stood, where the correction changed them: in words.
    pub changed: Vec<Changed>,
    /// Other answers that the correction changed.
    pub others: usize,
}

/// A measurement that a correction changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Changed {
    /// Weight in grams as it stood.
    Weight(Option<i64>),
    /// Length in mm as it stood.
    Length(Option<i64>),
    /// Arm in mm as it stood.
    Arm(Option<i64>),
}

/// All visits of a child.
#[derive(Debug)]
pub struct VisitsPage<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// The child's name.
    pub name: &'a str,
    /// The day shown.
    pub day: NaiveDate,
    /// What links carry on.
    pub query: &'a str,
    /// Newest first, each with what corrections replaced, latest first.
    pub visits: Vec<(VisitLine<'a>, Vec<EarlierVersion<'a>>)>,
}

/// The part of the child's page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    let all = format!("/children/{}/visits{}", page.who.code, page.query);
    html! {
        h2 { (w.say("child-visits")) }
        @if page.visits.is_empty() { p { (w.say("child-no-visits")) } }
        ul.rows { @for visit in page.visits.iter().take(MOST_VISITS) { li { (line(w, page.who.code, page.day, visit)) } } }
        @if page.visits.len() > MOST_VISITS || page.visits.iter().any(|visit| visit.version > 1) {
            p { a.link href=(all) { (w.say_with("child-all-visits", args!["count" => page.visits.len()])) } }
        }
    }
}

/// The page of all visits.
#[must_use]
pub fn all_visits(w: &Words, page: &VisitsPage<'_>) -> Markup {
    html! {
        (back(w, &format!("/children/{}{}", page.code, page.query), page.name))
        h1 { (w.say_with("child-visits-of", args!["name" => page.name, "count" => page.visits.len()])) }
        ul.rows {
            @for (visit, earlier) in &page.visits {
                li {
                    (line(w, page.code, page.day, visit))
                    @if let Some(note) = visit.note { p { (name(note)) } }
                    @if !earlier.is_empty() {
                        (details(&w.say_with("child-versions", args!["count" => earlier.len()]), false, &html! {
                            ul.rows { @for version in earlier { li { (earlier_version(w, page.day, version)) } } }
                        }))
                    }
                }
            }
        }
    }
}

fn line(w: &Words, code: &str, day: NaiveDate, visit: &VisitLine<'_>) -> Markup {
    html! {
        div.split { b { (format::day_near(w, visit.on, day)) } span.n { (numbers(w, visit)) } }
        div.split {
            span.quiet {
                (name(visit.by)) ", " (codes::contact(w, visit.contact))
                @if visit.version > 1 { " · " (w.say("child-corrected-visit")) }
                @if visit.voided { " · " (w.say("child-voided")) }
            }
            @if !visit.voided {
                a.link href={ "/children/" (code) "/visits/" (visit.seq) "/correct" } { (w.say("common-correct")) span.vh { " " (format::day_near(w, visit.on, day)) } }
            }
        }
    }
}

/// What was measured, in one line.
#[must_use]
pub fn numbers(w: &Words, visit: &VisitLine<'_>) -> String {
    let parts: Vec<String> = [
        visit.weight_g.map(|g| format::kg(w, i64::from(g))),
        visit.length_mm.map(|mm| format::cm(w, i64::from(mm))),
        visit.arm_mm.map(|mm| w.say_with("child-arm", args!["mm" => mm])),
    ]
    .into_iter()
    .flatten()
    .collect();
    if parts.is_empty() { w.say("child-nothing-measured") } else { parts.join(" · ") }
}

fn earlier_version(w: &Words, day: NaiveDate, version: &EarlierVersion<'_>) -> Markup {
    let stood: Vec<String> = version.changed.iter().map(|changed| stood(w, *changed)).collect();
    html! {
        p { (w.say_with("child-version-replaced", args!["day" => format::day_near(w, version.replaced_on, day), "name" => version.by])) }
        p { (name(version.reason)) }
        @if !stood.is_empty() { p.n { (w.say_with("child-version-stood", args!["list" => format::list(w, &stood)])) } }
        @if version.others > 0 { p.quiet { (w.say_with("child-version-others", args!["count" => version.others])) } }
    }
}

fn stood(w: &Words, changed: Changed) -> String {
    let absent = || w.say("common-not-done");
    match changed {
        Changed::Weight(grams) => w.say_with("child-stood-weight", args!["value" => grams.map_or_else(absent, |g| format::kg(w, g))]),
        Changed::Length(mm) => w.say_with("child-stood-length", args!["value" => mm.map_or_else(absent, |mm| format::cm(w, mm))]),
        Changed::Arm(mm) => w.say_with("child-stood-arm", args!["value" => mm.map_or_else(absent, |mm| format::mm(w, mm))]),
    }
}

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
use crate::view::child::corrections;
use crate::view::child::corrections::CorrectionLine;
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
    /// Every answer that the correction changed, danger first.
    pub changed: Vec<Answered>,
}

/// An answer of a kept version.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// What was asked.
    pub question: String,
    /// What was told.
    pub before: String,
    /// What replaced it, where a correction did.
    pub after: Option<String>,
    /// A sign of danger, swollen feet, trouble swallowing or a reaction to a food.
    pub danger: bool,
}

/// A visit with all that became of it.
#[derive(Debug, Clone)]
pub struct Kept<'a> {
    /// The visit.
    pub line: VisitLine<'a>,
    /// What corrections replaced, latest first.
    pub earlier: Vec<EarlierVersion<'a>>,
    /// Who took it back, when and why; or who brought it here from another record.
    pub came: Option<CorrectionLine>,
    /// Of a visit taken back, which no form shows any more: its answers.
    pub answers: Vec<Answered>,
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
    /// Newest first.
    pub visits: Vec<Kept<'a>>,
}

/// The part of the child's page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    let all = format!("/children/{}/visits{}", page.who.code, page.query);
    html! {
        h2 { (w.say("child-visits")) }
        @if page.visits.is_empty() { p { (w.say("child-no-visits")) } }
        ul.rows { @for visit in page.visits.iter().take(MOST_VISITS) { li { (line(w, page.who.code, page.day, visit)) } } }
        @if page.visits.len() > MOST_VISITS || page.visits.iter().any(|visit| visit.version > 1) || !page.corrections.is_empty() {
            p { a.link href=(all) { (w.say_with("child-all-visits", args!["count" => page.visits.len()])) } }
        }
    }
}

/// The page of all visits.
#[must_use]
pub fn all_visits(w: &Words, page: &VisitsPage<'_>) -> Markup {
    html! {
        (back(w, &format!("/children/{}{}", page.code, page.query), page.name))
        h1 { (w.say_with("child-visits-of", args!["name" => page.name, "count" => page.visits.iter().filter(|kept| !kept.line.voided).count()])) }
        ul.rows { @for kept in &page.visits { li { (one(w, page, kept)) } } }
    }
}

fn one(w: &Words, page: &VisitsPage<'_>, kept: &Kept<'_>) -> Markup {
    let earlier = &kept.earlier;
    html! {
        div.quiet[kept.line.voided] { (line(w, page.code, page.day, &kept.line)) }
        @if let Some(came) = &kept.came { (corrections::entry(w, came)) }
        @if let Some(note) = kept.line.note { p { (name(note)) } }
        @if kept.line.voided {
            (details(&w.say_with("child-voided-answers", args!["count" => kept.answers.len()]), false, &answered(w, &kept.answers)))
        }
        @if !earlier.is_empty() {
            (details(&w.say_with("child-versions", args!["count" => earlier.len()]), false, &html! {
                ul.rows { @for version in earlier { li { (earlier_version(w, page.day, version)) } } }
            }))
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
    html! {
        p { (w.say_with("child-version-replaced", args!["day" => format::day_near(w, version.replaced_on, day), "name" => version.by])) }
        p { (name(version.reason)) }
        @if version.changed.is_empty() { p.quiet { (w.say("child-version-same")) } } @else { (answered(w, &version.changed)) }
    }
}

/// Questions with what was told, and with what replaced it.
fn answered(w: &Words, answers: &[Answered]) -> Markup {
    let said = |answer: &Answered| match &answer.after {
        Some(after) => w.say_with("child-version-from-to", args!["before" => answer.before.as_str(), "after" => after.as_str()]),
        None => answer.before.clone(),
    };
    html! {
        ul.plain {
            @for answer in answers {
                li {
                    @if answer.danger { strong { (answer.question) } } @else { (answer.question) }
                    br;
                    span.n { (name(&said(answer))) }
                }
            }
        }
    }
}

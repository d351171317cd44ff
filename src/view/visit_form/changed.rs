//! What is said above a correction that somebody else was ahead of: who, danger that stands, and every question that differs.

use domain::food::Response;
use domain::visit::DangerSign;
use domain::visit::SwallowTrouble;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::note;
use crate::view::pieces::stands::Stands;
use crate::view::visit_form::Newest;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::labels;

/// What a form carries beside its questions, or asks only to open others.
const NO_QUESTIONS: [&str; 8] = ["token", "key", "version", "unfinished", "reason", "asked_again", "also_shown", "new_food"];

/// Somebody else was first. What they made of the visit stands beside each answer that differs, and here as a list of ways there.
pub(super) fn note_of(f: &VisitForm<'_>, newest: Newest<'_>, page: &Markup) -> Markup {
    let w = f.w;
    let whose = args!["name" => newest.by, "reason" => newest.reason];
    let heading = if newest.saved { "visit-changed-danger" } else { "visit-changed" };
    let danger: Vec<(String, String)> = newest.danger.iter().map(|(field, value)| said(f, field, value)).collect();
    let differing = differing(f, newest, page);
    html! {
        @if !danger.is_empty() {
            (note(NoteWeight::Stop, Icon::Today, &html! {
                p { strong { (w.say("visit-changed-standing")) } }
                ul { @for (id, words) in &danger { li { a href={ "#" (id) } { (words) } } } }
            }))
        }
        (note(NoteWeight::Look, Icon::Ask, &html! {
            p { strong { (w.say_with(heading, whose)) } }
            p { (w.say("visit-changed-beside")) }
            @if !differing.is_empty() {
                p { (w.say_with("visit-changed-list", args!["count" => differing.len()])) }
                ul { @for (id, words) in &differing { li { a href={ "#" (id) } { (words) } } } }
            }
        }))
    }
}

/// Danger in words, with the id of its question.
fn said(f: &VisitForm<'_>, field: &str, value: &str) -> (String, String) {
    let w = f.w;
    let words = match (field, field.strip_prefix("food_")) {
        (_, Some(code)) if value == Response::Reaction.code() => {
            w.say_with("visit-changed-reaction", args!["food" => labels::food_name(f, code)])
        }
        ("danger", _) => DangerSign::from_code(value).map_or_else(|_| value.to_owned(), |sign| codes::danger_sign(w, sign)),
        ("swallow_trouble", _) => {
            SwallowTrouble::from_code(value).map_or_else(|_| value.to_owned(), |said| codes::swallow_trouble(w, said))
        }
        _ => labels::label(f, field),
    };
    (labels::id_of(field), words)
}

/// Every question of the page to which the visit now holds another answer, in the order of the page.
fn differing(f: &VisitForm<'_>, newest: Newest<'_>, page: &Markup) -> Vec<(String, String)> {
    let names = newest.filled.0.iter().chain(&f.filled.0).map(|(name, _)| name.as_str());
    let mut at: Vec<(usize, String, String)> = names
        .filter(|name| !NO_QUESTIONS.contains(name))
        .filter(|name| Stands::of(f.w, newest.filled, f.filled, name).is_some())
        .filter_map(|name| {
            let id = labels::id_of(name);
            Some((page.0.find(&format!("id=\"{id}\""))?, id, labels::label(f, name)))
        })
        .collect();
    at.sort();
    // The parts of a date, and all that is said of one food, are one question.
    let mut questions: Vec<(String, String)> = Vec::new();
    for (_, id, label) in at {
        if !questions.iter().any(|(known, words)| *known == id || *words == label) {
            questions.push((id, label));
        }
    }
    questions
}

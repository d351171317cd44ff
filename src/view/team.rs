//! The team of a supervisor: whom to call, who is away, and a one-time code for somebody who cannot sign in.

use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::call_link;
use crate::view::parts::form;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::rows;

/// A worker of the team.
#[derive(Debug, Clone)]
pub struct TeamLine {
    /// In links.
    pub sign_in_name: String,
    /// Name.
    pub full_name: String,
    /// Phone.
    pub phone: Option<String>,
    /// May sign in.
    pub active: bool,
    /// Names of the villages where they have children.
    pub villages: Option<String>,
    /// Children, open and late follow-ups.
    pub counts: [u64; 3],
    /// Who stands in, until which day in words.
    pub away: Option<(String, String)>,
}

/// Children with nobody: their worker is not there, and nobody stands in.
#[derive(Debug, Clone)]
pub struct UnattendedLine {
    /// How many, with whom, and why.
    pub sentence: String,
    /// Where they are given to a colleague.
    pub path: String,
}

/// Such children, a line a worker.
pub fn unattended(w: &Words, lines: &[UnattendedLine]) -> Markup {
    html! {
        @for line in lines {
            (note(NoteWeight::Look, Icon::Ask, &html! { p { (line.sentence) " " a href=(line.path) { (w.say("team-unattended-do")) } } }))
        }
    }
}

/// The page. Each form has a key of its own, made by `key`.
#[must_use]
pub fn page(w: &Words, team: &[TeamLine], nobody: &[UnattendedLine], token: &str, key: &dyn Fn() -> String) -> Markup {
    html! {
        h1 { (w.say_with("team-heading", args!["count" => team.len()])) }
        @if team.is_empty() { p.lede { (w.say("team-none")) } } @else { p.quiet { (w.say("team-code-hint")) } }
        (unattended(w, nobody))
        p { a.link href="/agreed-steps" { (w.say("talk-team-link")) } }
        p { a.link href="/quality" { (w.say("quality-link")) } }
        p { a.link href="/team-pictures" { (w.say("pic-team-link")) } }
        (rows(&team.iter().map(|line| worker(w, line, token, &key())).collect::<Vec<_>>()))
    }
}

fn worker(w: &Words, line: &TeamLine, token: &str, key: &str) -> Markup {
    let [children, open, late] = line.counts;
    let code = html! {
        button.quietly type="submit" aria-label=(w.say_with("team-code-of", args!["name" => &line.full_name])) { (w.say("team-code")) }
    };
    html! {
        h2.plain { a.link href={ "/team/" (line.sign_in_name) } { (name(&line.full_name)) } }
        p { (w.say_with("team-line", args!["children" => children, "open" => open, "late" => late])) }
        @if let Some(list) = &line.villages { p.quiet { (w.say_with("team-villages", args!["list" => list])) } }
        @if let Some((who, until)) = &line.away { p { (w.say_with("team-away", args!["name" => who, "date" => until])) } }
        @if !line.active { p { (w.say("team-inactive")) } }
        div.split {
            @if let Some(phone) = &line.phone {
                (call_link(phone, "link", &html! { (w.say_with("team-call-of", args!["name" => &line.full_name])) }))
            }
            @if late > 0 { a.link href={ "/late?worker=" (line.sign_in_name) } { (w.say("team-late")) } }
            @if line.active { (form(&format!("/team/{}/code", line.sign_in_name), token, Some(key), &code)) }
        }
    }
}

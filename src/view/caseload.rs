//! A worker's children as the supervisor sees them: give several to a colleague, let somebody stand in. It decides nothing.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::name;
use crate::view::parts::summary_of;
use crate::view::people::covers;
use crate::view::people::covers::CoverLine;
use crate::view::people::covers::Covers;

/// A child of the worker.
#[derive(Debug, Clone)]
pub struct ChildLine {
    /// Code and version, as the form sends them.
    pub value: String,
    /// What it is called.
    pub called: String,
    /// Age, village, what is due: in one line.
    pub about: String,
}

/// The page.
pub struct CaseloadPage<'a> {
    /// In links.
    pub sign_in_name: &'a str,
    /// The worker.
    pub full_name: &'a str,
    /// Children, and those for whom something is due within seven days.
    pub load: [u64; 2],
    /// The hours of walking to those, in words.
    pub way: Option<String>,
    /// The children.
    pub children: Vec<ChildLine>,
    /// Colleagues with what they have, for the choice: sign-in name and words.
    pub colleagues: Vec<(String, String)>,
    /// Who stands in.
    pub covers: Vec<CoverLine>,
    /// What was typed to give children away, and what is wrong with it.
    pub give: (&'a Filled, &'a Faults),
    /// The same for a stand-in.
    pub cover: (&'a Filled, &'a Faults),
    /// A child that somebody else changed meanwhile, so that none was given.
    pub changed: Option<&'a str>,
    /// The form's token.
    pub token: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "child" => "caseload-which",
        "colleague" => "caseload-to",
        _ => "caseload-reason",
    })
}

/// The page. Each form has a key of its own, made by `key`.
#[must_use]
pub fn page(w: &Words, p: &CaseloadPage<'_>, key: &dyn Fn() -> String) -> Markup {
    let [children, due] = p.load;
    html! {
        (back(w, "/team", &w.say("team-title")))
        (summary_of(w, p.give.1, &|field| label(w, field)))
        (summary_of(w, p.cover.1, &|field| w.say(covers::label(field))))
        h1 { (name(p.full_name)) }
        p.lede { (w.say_with("caseload-load", args!["children" => children, "due" => due])) @if let Some(way) = &p.way { " " (w.say_with("caseload-way-own", args!["way" => way])) } }
        @if let Some(child) = p.changed { p { strong { (w.say_with("caseload-changed", args!["name" => child])) } } }
        (covers(w, p, key))
        h2 id="give" { (w.say("caseload-give")) }
        @if p.children.is_empty() { p { (w.say("caseload-no-children")) } } @else { (give(w, p, &key())) }
    }
}

fn give(w: &Words, p: &CaseloadPage<'_>, key: &str) -> Markup {
    let (filled, faults) = p.give;
    let ask = Ask::new(w, filled, faults);
    let which = p.children.iter().fold(ask.many_of("child", "caseload-which").rows(), |choice, child| {
        choice.named(&child.value, child.called.clone(), child.about.clone())
    });
    let fields = html! {
        (which)
        (ask.select("colleague", "caseload-to").option("", w.say("common-choose")).options(p.colleagues.clone()))
        p.quiet { (w.say("caseload-walking")) }
        (ask.text_area("reason", "caseload-reason").hint(w.say("caseload-reason-hint")))
        (acts(&button(&w.say("caseload-give-do"), false)))
    };
    html! {
        p.quiet { (w.say("caseload-give-lede")) }
        (form(&format!("/team/{}/give", p.sign_in_name), p.token, Some(key), &fields))
    }
}

fn covers(w: &Words, p: &CaseloadPage<'_>, key: &dyn Fn() -> String) -> Markup {
    let (filled, faults) = p.cover;
    let path = format!("/team/{}/cover", p.sign_in_name);
    let shown = Covers { path: &path, lines: &p.covers, colleagues: &p.colleagues, filled, faults, token: p.token };
    html! {
        (covers::list(w, shown, key))
        details open[!faults.is_empty()] {
            summary { (w.say("caseload-away-add")) }
            (covers::one_more(w, shown, &key()))
        }
    }
}

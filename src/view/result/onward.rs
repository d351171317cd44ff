//! What goes on from here: what was agreed, the next visit, the next home.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::format;
use crate::view::household::Also;
use crate::view::parts::acts;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::rows;
use crate::view::parts::steps;
use crate::view::result::ResultPage;
use crate::view::result::correct;

/// What family and worker agreed: said back, so that both go with the same words.
pub(super) fn agreed(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    html! {
        @if !p.agreed.is_empty() {
            h2 { (w.say("talk-agreed-now")) }
            (steps(&p.agreed.iter().map(|step| html! { (step) }).collect::<Vec<_>>()))
            p.quiet { (w.say("talk-asked-next")) }
        }
    }
}

pub(super) fn next_visit(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    html! {
        @if let Some(next) = p.next {
            p { strong { (w.say_with("result-next-visit", args![
                "from" => format::day(w, next.opens), "to" => format::day_near(w, next.closes, p.today)
            ])) } " " (w.say_with("result-sooner", args!["sex" => p.sex()])) }
        }
    }
}

/// The form of the next child of the home, with the day and the place of this visit.
fn onward_path(p: &ResultPage<'_>, child: &Also) -> String {
    format!("/children/{}/visits/new?on={}&contact={}", child.code, p.visit.on, p.visit.contact.code())
}

/// The other children of this home, so that nobody goes home before the twin was looked at.
pub(super) fn here(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let line = |child: &Also| {
        let state = match (child.seen, child.when.is_empty()) {
            (true, _) => w.say("household-seen-then"),
            (false, true) => w.say("household-nothing-due"),
            (false, false) => child.when.clone(),
        };
        html! {
            a.link href=(onward_path(p, child)) { (name(&child.called)) ", " (child.age) }
            p { (state) }
        }
    };
    html! {
        @if !p.here.is_empty() {
            h2 { (w.say("household-also-heading")) }
            (rows(&p.here.iter().map(line).collect::<Vec<_>>()))
        }
    }
}

/// The next child of this home first, then the next home.
pub(super) fn leave(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let urgent = p.worst().is_some_and(Class::is_urgent);
    let next = p.here.iter().find(|child| child.waits);
    html! {
        (here(p))
        (acts(&html! {
            @if let Some(child) = next {
                (link_button(&onward_path(p, child), &html! { (w.say_with("household-next", args!["name" => &child.called])) }, urgent))
            }
            (link_button("/round", &html! { (w.say("result-next-home")) }, urgent || next.is_some()))
            (link_button(&correct(p), &html! { (w.say("result-correct")) }, true))
        }))
    }
}

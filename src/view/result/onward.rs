//! What goes on from here: what was agreed, the next visit, the next home.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::format;
use crate::view::parts::acts;
use crate::view::parts::link_button;
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

pub(super) fn leave(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let urgent = p.worst().is_some_and(Class::is_urgent);
    acts(&html! {
        (link_button("/round", &html! { (w.say("result-next-home")) }, urgent))
        (link_button(&correct(p), &html! { (w.say("result-correct")) }, true))
    })
}

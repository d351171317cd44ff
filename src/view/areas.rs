//! Villages and other areas. Knows no child and no worker.

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
use crate::view::parts::part;
use crate::view::parts::split;
use crate::view::parts::summary_of;

/// A line of the tree, in the order shown.
#[derive(Debug, Clone)]
pub struct AreaLine {
    /// Permanent code, in links.
    pub code: String,
    /// Name.
    pub name: String,
    /// How many larger areas it lies in.
    pub depth: usize,
    /// In use.
    pub active: bool,
    /// Active children there; counted only where areas are not in use.
    pub children: u64,
    /// Minutes on foot to a home and back, if somebody wrote them down.
    pub walk_minutes: Option<u16>,
}

/// A form as typed.
#[derive(Clone, Copy)]
pub struct Typed<'a> {
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "code" => "areas-code",
        "parent" => "areas-parent",
        "active" => "areas-active",
        "walk" => "areas-walk",
        _ => "areas-name",
    })
}

/// All areas, with the form for one more.
#[must_use]
pub fn list(w: &Words, areas: &[AreaLine], typed: Typed<'_>) -> Markup {
    let ask = Ask::new(w, typed.filled, typed.faults);
    let fields = html! {
        (ask.text("name", "areas-name"))
        (ask.text("code", "areas-code").hint(w.say("areas-code-hint")).plain_letters())
        (parent(w, ask, areas.iter()))
        (walk(w, ask))
        (acts(&button(&w.say("areas-add"), false)))
    };
    let in_use = areas.iter().filter(|a| a.active).count();
    html! {
        (summary_of(w, typed.faults, &|field| label(w, field)))
        h1 { (w.say_with("areas-heading", args!["count" => in_use])) }
        @if areas.is_empty() { p.lede { (w.say("areas-none")) } }
        ul.rows { @for area in areas { li { (line(w, area)) } } }
        (form("/areas", typed.token, Some(typed.key), &part("add", &w.say("areas-add-heading"), &fields)))
    }
}

fn line(w: &Words, area: &AreaLine) -> Markup {
    split(
        &html! {
            (indented(area.depth, html! {
                strong { (name(&area.name)) }
                p.quiet { span.ltr { (area.code) } ", " (state(w, area)) }
            }))
        },
        &html! {
            a.link href={ "/areas/" (area.code) } aria-label=(w.say_with("areas-change-of", args!["name" => &area.name])) { (w.say("areas-change")) }
        },
    )
}

/// Steps in as often as the area lies in a larger one.
fn indented(depth: usize, inner: Markup) -> Markup {
    (0..depth).fold(inner, |inner, _| html! { div.grp { (inner) } })
}

/// Not in use, or how far it is: where nobody wrote that down, hours cannot be told, and the list says which areas are missing.
fn state(w: &Words, area: &AreaLine) -> String {
    match area.walk_minutes {
        _ if !area.active && area.children > 0 => w.say_with("areas-inactive-children", args!["count" => area.children]),
        _ if !area.active => w.say("areas-inactive"),
        Some(minutes) => w.say_with("areas-walk-line", args!["minutes" => minutes]),
        None => w.say("areas-walk-missing"),
    }
}

fn parent<'a>(w: &Words, ask: Ask<'_>, areas: impl Iterator<Item = &'a AreaLine>) -> Markup {
    html! {
        (ask.select("parent", "areas-parent").hint(w.say("areas-parent-hint")).option("", w.say("areas-parent-none"))
            .options(areas.filter(|a| a.active).map(|a| (a.code.clone(), a.name.clone()))))
    }
}

fn walk(w: &Words, ask: Ask<'_>) -> Markup {
    html! { (ask.whole("walk", "areas-walk").hint(w.say("areas-walk-hint")).unit(w.say("areas-walk-unit"))) }
}

/// One area. `possible_parents` leaves out the area itself and what lies in it.
#[must_use]
pub fn change(w: &Words, area: &AreaLine, possible_parents: &[AreaLine], typed: Typed<'_>) -> Markup {
    let ask = Ask::new(w, typed.filled, typed.faults);
    let fields = html! {
        (ask.text("name", "areas-name"))
        (parent(w, ask, possible_parents.iter()))
        (walk(w, ask))
        (ask.one_of("active", "areas-active").rows().option("yes", w.say("areas-active-yes")).option("no", w.say("areas-active-no")))
        (acts(&button(&w.say("common-save"), false)))
    };
    html! {
        (back(w, "/areas", &w.say("areas-title")))
        (summary_of(w, typed.faults, &|field| label(w, field)))
        h1 { (w.say_with("areas-change-title", args!["name" => &area.name])) }
        p.lede { (w.say_with("areas-code-fixed", args!["code" => &area.code])) }
        (form(&format!("/areas/{}", area.code), typed.token, Some(typed.key), &fields))
    }
}

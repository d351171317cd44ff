//! The people of the programme: the list, and a one-time code shown once. Knows no password and no child.

pub mod covers;
pub mod person;

use domain::role::Role;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::parts::Icon;
use crate::view::parts::acts;
use crate::view::parts::icon;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::split;
use crate::view::parts::steps;

/// A line of the list.
#[derive(Debug, Clone)]
pub struct PersonLine {
    /// In links.
    pub sign_in_name: String,
    /// As colleagues say it.
    pub full_name: String,
    /// What they are.
    pub role: Role,
    /// May sign in.
    pub active: bool,
    /// A one-time code is out.
    pub code_out: bool,
    /// Never had a password.
    pub no_password: bool,
    /// Who stands in, until which day in words.
    pub away: Option<(String, String)>,
}

/// The list.
#[derive(Debug, Clone)]
pub struct PeoplePage {
    /// A page of people.
    pub people: Vec<PersonLine>,
    /// Whether that is everybody.
    pub whole: bool,
    /// Where the next page is.
    pub next: Option<String>,
}

/// The page.
#[must_use]
pub fn list(w: &Words, page: &PeoplePage) -> Markup {
    let active = page.people.iter().filter(|p| p.active).count();
    html! {
        @if page.whole {
            h1 { (w.say_with("people-heading", args!["active" => active])) }
        } @else {
            h1 { (w.say("people-heading-part")) }
        }
        (acts(&link_button("/people/new", &html! { (w.say("people-add")) }, false)))
        @for role in Role::ALL {
            (group(w, &w.say_with("people-role-heading", args!["role" => role.code()]), &page.people, |p| p.active && p.role == *role))
        }
        (group(w, &w.say("people-inactive-heading"), &page.people, |p| !p.active))
        @if page.people.is_empty() { p { (w.say("people-none")) } }
        @if let Some(next) = &page.next { p { a.link href=(next) { (w.say("people-next")) } } }
    }
}

fn group(w: &Words, heading: &str, people: &[PersonLine], here: impl Fn(&PersonLine) -> bool) -> Markup {
    let shown: Vec<&PersonLine> = people.iter().filter(|p| here(p)).collect();
    html! {
        @if !shown.is_empty() {
            h2 { (heading) }
            ul.rows { @for person in shown { li { (line(w, person)) } } }
        }
    }
}

fn line(w: &Words, person: &PersonLine) -> Markup {
    let state = match (person.active, person.code_out, person.no_password) {
        (false, ..) => Some("people-inactive"),
        (_, true, _) => Some("people-code-open"),
        (_, _, true) => Some("people-no-password"),
        _ => None,
    };
    split(
        &html! {
            div {
                a.link href={ "/people/" (person.sign_in_name) } { (name(&person.full_name)) }
                p.quiet {
                    span.ltr { (person.sign_in_name) }
                    @if let Some((who, until)) = &person.away { br; (w.say_with("people-away", args!["date" => until, "name" => who])) }
                }
            }
        },
        &html! { @if let Some(state) = state { span.quiet { (w.say(state)) } } },
    )
}

/// A code to hand over.
#[derive(Debug, Clone)]
pub struct CodePage<'a> {
    /// Whose.
    pub full_name: &'a str,
    /// Their sign-in name.
    pub sign_in_name: &'a str,
    /// The code, in groups of four.
    pub code: &'a str,
    /// When it ends, in words.
    pub until: &'a str,
    /// Where to go afterwards.
    pub back: &'a str,
}

/// The page that shows a code once.
#[must_use]
pub fn code(w: &Words, page: &CodePage<'_>) -> Markup {
    html! {
        h1 { (w.say_with("code-heading", args!["name" => page.full_name])) }
        p.lede { (w.say_with("code-lede", args!["date" => page.until])) }
        p { (w.say("code-say")) br; strong.measured dir="ltr" { (page.sign_in_name) } }
        p { (w.say("code-code")) br; (groups(page.code)) }
        (steps(&[
            html! { (w.say("code-way-1")) },
            html! { (w.say_with("code-way-2", args!["name" => page.full_name, "sign-in" => page.sign_in_name])) },
            html! { (w.say_with("code-way-3", args!["name" => page.full_name])) },
        ]))
        (acts(&link_button(page.back, &html! { (icon(Icon::Done)) (w.say("code-done")) }, false)))
    }
}

/// A code that may break between its groups on a narrow phone, never within one.
fn groups(code: &str) -> Markup {
    html! {
        strong.measured.code dir="ltr" {
            @for (at, group) in code.split('-').enumerate() { @if at > 0 { "-" wbr; } span.ltr { (group) } }
        }
    }
}

/// The page of a code that was shown before.
#[must_use]
pub fn code_gone(w: &Words, back: &str, page: &str) -> Markup {
    html! {
        h1 { (w.say("code-gone-title")) }
        p.lede { (w.say("code-gone")) }
        (acts(&link_button(back, &html! { (w.say_with("common-back-to", args!["page" => page])) }, false)))
    }
}

//! One person: the form, signing in, and who stands in while they are away. Knows no password and no child.

use domain::fault::Faults;
use domain::role::Role;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Lang;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Choice;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::details;
use crate::view::parts::form;
use crate::view::parts::part;
use crate::view::parts::summary_of;
use crate::view::people::covers;
use crate::view::people::covers::CoverLine;
use crate::view::people::covers::Covers;

/// What a person's form offers to choose from.
#[derive(Debug, Clone, Default)]
pub struct Offered {
    /// Code and name of each area.
    pub areas: Vec<(String, String)>,
    /// Sign-in name and name of each worker.
    pub workers: Vec<(String, String)>,
}

/// A form as typed, with what is wrong and what makes sending it count once.
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

/// The words of a field of this form, for the summary of faults.
fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "full_name" => "person-full-name",
        "sign_in_name" => "person-sign-in-name",
        "role" => "person-role",
        "phone" => "person-phone",
        "language" => "person-language",
        "start" => "person-start",
        "end" => "person-end",
        "areas" => "person-areas",
        "workers" => "person-workers",
        _ => "person-signing-in",
    })
}

/// The page for a new person.
#[must_use]
pub fn new(w: &Words, offered: &Offered, typed: Typed<'_>) -> Markup {
    html! {
        (back(w, "/people", &w.say("people-title")))
        (summary_of(w, typed.faults, &|field| label(w, field)))
        h1 { (w.say("person-new-title")) }
        p.lede { (w.say("person-new-lede")) }
        (form("/people/new", typed.token, Some(typed.key), &fields(w, offered, typed)))
    }
}

fn fields(w: &Words, offered: &Offered, typed: Typed<'_>) -> Markup {
    let ask = Ask::new(w, typed.filled, typed.faults);
    let supervises = typed.filled.one("role") == Role::Supervisor.code();
    let who = html! {
        (ask.text("full_name", "person-full-name").hint(w.say("person-full-name-hint")))
        (ask.text("sign_in_name", "person-sign-in-name").hint(w.say("person-sign-in-name-hint")).plain_letters())
        (roles(w, ask))
        (ask.phone("phone", "person-phone").hint(w.say("person-phone-hint")))
        (ask.select("language", "person-language").option("", w.say("person-language-programme"))
            .options(Lang::OFFERED.iter().map(|l| (l.code().to_owned(), l.own_name().to_owned()))))
        (ask.day("start", "person-start"))
        (ask.day("end", "person-end").hint(w.say("person-end-hint")))
    };
    html! {
        (part("who", &w.say("person-part-who"), &who))
        (details(&w.say("person-part-team"), supervises, &html! {
            p.quiet { (w.say("person-team-hint")) }
            (team(w, ask.many_of("areas", "person-areas"), &offered.areas, "person-no-areas"))
            (team(w, ask.many_of("workers", "person-workers"), &offered.workers, "person-no-workers"))
        }))
        (acts(&button(&w.say("person-save"), false)))
    }
}

fn roles(w: &Words, ask: Ask<'_>) -> Choice {
    Role::ALL.iter().fold(ask.one_of("role", "person-role").rows(), |choice, role| {
        let id = format!("person-role-{}", role.code());
        choice.option_with(role.code(), w.say(&id), Some(w.say(&format!("{id}-hint"))), None)
    })
}

fn team(w: &Words, choice: Choice, offered: &[(String, String)], none: &str) -> Markup {
    if offered.is_empty() {
        return html! { p { (w.say(none)) } };
    }
    html! { (offered.iter().fold(choice, |choice, (value, words)| choice.option(value, words))) }
}

/// A person's page.
#[derive(Debug, Clone)]
pub struct PersonPage<'a> {
    /// In links.
    pub sign_in_name: &'a str,
    /// As colleagues say it.
    pub full_name: &'a str,
    /// May sign in.
    pub active: bool,
    /// A one-time code is out until then, in words.
    pub code_until: Option<String>,
    /// Has a password.
    pub has_password: bool,
    /// Waits after wrong passwords until then, in words.
    pub locked_until: Option<String>,
    /// Phones and browsers signed in.
    pub sessions: usize,
    /// Is a worker, for whom colleagues can stand in.
    pub is_worker: bool,
    /// Who stands in.
    pub covers: Vec<CoverLine>,
    /// Colleagues that could.
    pub colleagues: Vec<(String, String)>,
    /// What the form offers.
    pub offered: Offered,
    /// The form for standing in, as typed.
    pub cover_filled: &'a Filled,
    /// What is wrong with it.
    pub cover_faults: &'a Faults,
}

/// The page. Each small form of it has a key of its own, made by `key`.
#[must_use]
pub fn page(w: &Words, page: &PersonPage<'_>, typed: Typed<'_>, key: &dyn Fn() -> String) -> Markup {
    let path = format!("/people/{}", page.sign_in_name);
    html! {
        (back(w, "/people", &w.say("people-title")))
        (summary_of(w, typed.faults, &|field| label(w, field)))
        (summary_of(w, page.cover_faults, &|field| w.say(covers::label(field))))
        h1 { (crate::view::parts::name(page.full_name)) }
        div.people {
            (form(&path, typed.token, Some(typed.key), &fields(w, &page.offered, typed)))
            div {
                (signing_in(w, page, typed.token, key))
                @if page.is_worker { (away(w, page, typed.token, key)) }
            }
        }
    }
}

fn signing_in(w: &Words, page: &PersonPage<'_>, token: &str, key: &dyn Fn() -> String) -> Markup {
    let path = format!("/people/{}", page.sign_in_name);
    let small = |tail: &str, words: &str, hint: Option<&str>| {
        form(
            &format!("{path}/{tail}"),
            token,
            Some(&key()),
            &html! {
                @if let Some(hint) = hint { p.quiet { (w.say(hint)) } }
                (acts(&button(&w.say(words), true)))
            },
        )
    };
    html! {
        h2 { (w.say("person-signing-in")) }
        ul.rows {
            // Where a fault about it points to.
            li id="active" { (w.say(if page.active { "person-state-active" } else { "person-state-inactive" })) }
            @if let Some(until) = &page.code_until { li { (w.say_with("person-state-code", args!["date" => until])) } }
            @else if !page.has_password { li { (w.say("person-state-no-password")) } }
            @if let Some(until) = &page.locked_until { li { (w.say_with("person-state-locked", args!["date" => until])) } }
            li { (w.say_with("person-sessions", args!["count" => page.sessions])) }
        }
        @if page.active {
            (small("code", "person-code-do", Some("person-code-hint")))
            @if page.sessions > 0 { (small("sign-out", "person-sessions-do", Some("person-sessions-hint"))) }
            (small("deactivate", "person-deactivate-do", Some("person-deactivate-hint")))
        } @else {
            (small("activate", "person-activate-do", None))
        }
    }
}

fn away(w: &Words, page: &PersonPage<'_>, token: &str, key: &dyn Fn() -> String) -> Markup {
    let path = format!("/people/{}/cover", page.sign_in_name);
    let (filled, faults) = (page.cover_filled, page.cover_faults);
    let shown = Covers { path: &path, lines: &page.covers, colleagues: &page.colleagues, filled, faults, token };
    html! { (covers::list(w, shown, key)) (covers::one_more(w, shown, &key())) }
}

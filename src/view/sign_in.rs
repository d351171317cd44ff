//! Signing in and changing a password. Knows no password and no session.

use domain::fault::Fault;
use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Field;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::note;
use crate::view::parts::summary_of_passwords;
use crate::view::trouble::resend;

/// What the sign-in page shows.
#[derive(Debug, Clone)]
pub struct SignInPage<'a> {
    /// The name typed before.
    pub name: &'a str,
    /// What is wrong with name or password.
    pub fault: Option<Fault>,
    /// How long to wait before the next try.
    pub wait_seconds: Option<i64>,
    /// Where to go afterwards.
    pub next: &'a str,
    /// What was being written when the session ended.
    pub written: Written<'a>,
}

/// What became of a form whose session ended before it was sent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Written<'a> {
    /// Nothing was being written.
    Nothing,
    /// It travels along, sealed.
    Carried(&'a str),
    /// It could not be carried: nobody knows any more whose it is.
    Lost,
}

/// The sign-in page.
#[must_use]
pub fn body(w: &Words, page: &SignInPage<'_>, token: &str, key: &str) -> Markup {
    let fault = page.fault.as_ref().map(|fault| codes::fault(w, fault));
    let fields = html! {
        (hidden("next", page.next))
        @if let Written::Carried(carried) = page.written { (hidden("carried", carried)) }
        (Field::text("name", w.say("sign-in-name")).value(page.name).autocomplete("username").plain_letters().fault(fault))
        (Field::password("password", w.say("sign-in-password"), "current-password").hint(w.say("sign-in-password-hint")))
        (acts(&button(&w.say("sign-in-do"), false)))
    };
    let (heading, lede) = match page.written {
        Written::Nothing => ("sign-in-heading", "sign-in-lede"),
        Written::Carried(_) => ("sign-in-ended-title", "sign-in-ended"),
        Written::Lost => ("sign-in-lost-title", "sign-in-lost"),
    };
    html! {
        (drawing())
        h1 { (w.say(heading)) }
        p.lede { (w.say(lede)) }
        @if let Some(seconds) = page.wait_seconds {
            (note(NoteWeight::Stop, Icon::Cross, &html! {
                h2 { (w.say("sign-in-not-in")) }
                p { (w.say_with("sign-in-wait", args!["seconds" => seconds])) }
            }))
        }
        (form("/sign-in", token, Some(key), &fields))
        p.quiet { (w.say("sign-in-forgotten")) }
    }
}

/// A form that was open when the session ended, given back to its writer.
#[must_use]
pub fn carried_again(w: &Words, path: &str, filled: &Filled, token: &str) -> Markup {
    html! {
        h1 { (w.say("sign-in-carried-title")) }
        p.lede { (w.say("sign-in-carried")) }
        (resend(path, filled, token, &w.say("sign-in-carried-do")))
        p { a.link href="/" { (w.say("sign-in-carried-leave")) } }
    }
}

/// Changing one's password; `by_code`: the person came with a one-time code and has no password yet.
#[must_use]
pub fn password_body(w: &Words, faults: &Faults, by_code: bool, token: &str, key: &str) -> Markup {
    let filled = Filled::default();
    let ask = Ask::new(w, &filled, faults);
    let fields = html! {
        @if !by_code { (ask.typed("present", Field::password("present", w.say("password-present"), "current-password"))) }
        (ask.typed("new", Field::password("new", w.say("password-new"), "new-password").hint(w.say("password-new-hint"))))
        (ask.typed("again", Field::password("again", w.say("password-again"), "new-password")))
        (acts(&button(&w.say("password-do"), false)))
    };
    let label = |name: &str| {
        w.say(match name {
            "present" => "password-present",
            "again" => "password-again",
            _ => "password-new",
        })
    };
    html! {
        h1 { (w.say("password-title")) }
        p.lede { (w.say(if by_code { "password-lede-first" } else { "password-lede" })) }
        (summary_of_passwords(w, faults, &label))
        (form("/password", token, Some(key), &fields))
    }
}

/// The trail from the bowl to a home.
fn drawing() -> Markup {
    html! {
        svg.chart viewBox="0 0 360 112" aria-hidden="true" {
            path.trail d="M78 92C130 92 150 52 200 58S270 66 300 48" {}
            path.food d="M18 58h60c0 20-12 33-30 33S18 78 18 58z" {}
            path.draw d="M14 58h68c0 22-14 36-34 36S14 80 14 58zM36 98h24M62 58 84 24" {}
            ellipse cx="88" cy="18" rx="6" ry="9" transform="rotate(33 88 18)" fill="currentColor" {}
            path.draw d="M304 56V30l24-20 24 20v26zM322 56V42h12v14" {}
        }
    }
}

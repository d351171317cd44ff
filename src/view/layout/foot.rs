//! The foot of every page: cautions, protocol, emergency number, language, password, signing out.

use domain::role::Action;
use domain::role::may;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Lang;
use crate::i18n::codes;
use crate::view::layout::Shell;
use crate::view::parts::call_link;
use crate::view::parts::hidden;

const CAUTIONS: [&str; 8] = [
    "common-caution-1",
    "common-caution-2",
    "common-caution-3",
    "common-caution-4",
    "common-caution-5",
    "common-caution-6",
    "common-caution-7",
    "common-caution-8",
];

/// `body` is the page above it.
pub(super) fn foot(shell: &Shell<'_>, body: &Markup) -> Markup {
    let w = shell.w;
    html! {
        footer.foot {
            p { (w.say("common-caution-line")) }
            details.cautions {
                summary { (w.say("common-cautions-all")) }
                ol { @for id in CAUTIONS { li { (w.say(id)) } } }
                p { (w.say("common-caution-rule")) " " (w.say("common-caution-unsure")) }
            }
            @if shell.protocol.is_some() { (protocol(shell)) }
            (you(shell, may_hold_typing(shell, body)))
        }
    }
}

fn protocol(shell: &Shell<'_>) -> Markup {
    let w = shell.w;
    let approved_by = shell.protocol.and_then(|p| p.approved_by).map(str::trim).filter(|by| !by.is_empty());
    html! {
        @if let Some(protocol) = shell.protocol {
            p {
                @let called = w.say_with("common-protocol", args!["id" => protocol.id, "version" => protocol.version]);
                @if shell.role.is_some() { a href="/protocol" { (called) } } @else { (called) }
                " "
                @if let Some(local) = protocol.local_name.filter(|name| !name.trim().is_empty()) {
                    (w.say_with("common-protocol-local", args!["name" => local])) " "
                }
                @match approved_by {
                    Some(by) => { (w.say_with("common-protocol-approved", args!["by" => by])) }
                    None => { strong { (w.say("common-protocol-not-approved")) } }
                }
            }
        }
    }
}

/// Whether somebody signed in may have typed something into the page that is not saved yet.
fn may_hold_typing(shell: &Shell<'_>, body: &Markup) -> bool {
    shell.role.is_some() && body.0.contains("<form method=\"post\"")
}

fn you(shell: &Shell<'_>, typing: bool) -> Markup {
    let w = shell.w;
    html! {
        @if let (Some(person), Some(role)) = (shell.person, shell.role) {
            p.noprint { (w.say_with("common-signed-in", args!["name" => person, "role" => codes::role(w, role)])) }
        }
        nav.you aria-label=(w.say("common-you-nav")) {
            (language(shell, typing))
            @if shell.role.is_some() {
                a.link href="/password" { (w.say("common-password")) }
                form method="post" action="/sign-out" {
                    (hidden("token", &shell.token))
                    button.quietly type="submit" { (w.say("common-sign-out")) }
                }
            } @else {
                a.link href="/sign-in" { (w.say("common-sign-in")) }
            }
        }
    }
}

/// The other languages as buttons, each named in itself. Beside a form the page opens in a place of its own: what was typed stays
/// where it is.
fn language(shell: &Shell<'_>, typing: bool) -> Markup {
    let w = shell.w;
    html! {
        form method="post" action="/language" target=[typing.then_some("_blank")] aria-label=(w.say("common-language")) {
            (hidden("token", &shell.token))
            (hidden("back", shell.path))
            @for lang in Lang::OFFERED.iter().filter(|lang| **lang != w.lang()) {
                button.quietly type="submit" name="language" value=(lang.code()) lang=(lang.code()) { (lang.own_name()) }
            }
            @if typing { " " span.quiet { (w.say("common-language-beside")) } }
        }
    }
}

/// The emergency number in the head, for those who meet children, once the programme has set one.
pub(super) fn emergency(shell: &Shell<'_>) -> Markup {
    let w = shell.w;
    let meets_children = shell.role.is_some_and(|role| may(role, Action::SeeChildren));
    html! {
        @if let Some(number) = number(shell).filter(|_| meets_children) {
            (call_link(number, "sos", &html! { (w.say_with("common-emergency-number", args!["number" => number])) }))
        }
    }
}

/// The call, large.
pub(super) fn dial(shell: &Shell<'_>) -> Markup {
    let w = shell.w;
    html! {
        @match number(shell) {
            Some(number) => { (call_link(number, "dial", &html! { (w.say_with("common-call-number", args!["number" => number])) })) }
            None => { p.dial { (w.say("common-call-local")) } }
        }
    }
}

fn number<'a>(shell: &Shell<'a>) -> Option<&'a str> {
    shell.emergency_number.map(str::trim).filter(|number| number.bytes().any(|b| b.is_ascii_digit()))
}

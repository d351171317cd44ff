//! What a visitor sees when something did not work: what happened, that nothing typed is lost where it is not, and a way out.

use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::hidden;
use crate::view::parts::link_button;

/// Title and body of an error page.
pub type Trouble = (String, Markup);

fn simple(w: &Words, title: &str, text: &str, more: &Markup) -> Trouble {
    let title = w.say(title);
    let body = html! {
        h1 { (title) }
        p.lede { (text) }
        (more)
    };
    (title, body)
}

fn home(w: &Words) -> Markup {
    acts(&link_button("/", &html! { (w.say("trouble-go-home")) }, false))
}

/// No such page, or not in the visitor's scope.
#[must_use]
pub fn not_found(w: &Words) -> Trouble {
    simple(w, "trouble-not-found-title", &w.say("trouble-not-found"), &home(w))
}

/// Not for this role.
#[must_use]
pub fn not_allowed(w: &Words) -> Trouble {
    simple(w, "trouble-not-allowed-title", &w.say("trouble-not-allowed"), &home(w))
}

/// A form of an earlier session: everything typed, to be sent again with a token that fits.
#[must_use]
pub fn old_page(w: &Words, path: &str, filled: &Filled, token: &str) -> Trouble {
    let again = resend(path, filled, token, &w.say("trouble-send-again"));
    simple(w, "trouble-old-page-title", &w.say("trouble-old-page"), &again)
}

/// A form that does not come from a page of ours.
#[must_use]
pub fn foreign_form(w: &Words) -> Trouble {
    simple(w, "trouble-foreign-form-title", &w.say("trouble-foreign-form"), &home(w))
}

/// A form that cannot be read.
#[must_use]
pub fn bad_form(w: &Words) -> Trouble {
    simple(w, "trouble-bad-form-title", &w.say("trouble-bad-form"), &home(w))
}

/// An address with a part that cannot be read.
#[must_use]
pub fn bad_address(w: &Words, part: &str) -> Trouble {
    let told = match part {
        "as_of" => "trouble-bad-address",
        "month" | "period" => "trouble-bad-address-month",
        _ => "trouble-bad-address-part",
    };
    simple(w, "trouble-bad-address-title", &w.say_with(told, args!["part" => part]), &home(w))
}

/// More was sent than any form holds.
#[must_use]
pub fn too_large(w: &Words) -> Trouble {
    simple(w, "trouble-too-large-title", &w.say("trouble-too-large"), &home(w))
}

/// Saved before with other content, which can be seen at `path`.
#[must_use]
pub fn conflict(w: &Words, path: &str) -> Trouble {
    let open = acts(&link_button(path, &html! { (w.say("trouble-conflict-open")) }, false));
    simple(w, "trouble-conflict-title", &w.say("trouble-conflict"), &open)
}

/// Too much at once.
#[must_use]
pub fn busy(w: &Words) -> Trouble {
    simple(w, "trouble-busy-title", &w.say("trouble-busy"), &home(w))
}

/// Our own trouble; `reference` finds it in the log.
#[must_use]
pub fn broken(w: &Words, reference: &str) -> Trouble {
    let more = html! {
        (home(w))
        p.quiet { (w.say("trouble-broken-reference")) " " span.ltr { (reference) } }
    };
    simple(w, "trouble-broken-title", &w.say("trouble-broken"), &more)
}

/// A form whose values travel unseen, with one button to send them again.
pub(crate) fn resend(path: &str, filled: &Filled, token: &str, words: &str) -> Markup {
    html! {
        form method="post" action=(path) {
            (hidden("token", token))
            @for (name, value) in filled.0.iter().filter(|(name, _)| name != "token") { (hidden(name, value)) }
            (acts(&button(words, false)))
        }
    }
}

//! The card that a family keeps: how the child grows, what to feed now, when the worker comes, when to go to the clinic at once.
//! It names no follow-up and no z: what is on it may be seen by anybody in the house.

use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::child::MeasuredOn;
use crate::view::child::food;
use crate::view::child::growth;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::back;
use crate::view::parts::name;
use crate::view::parts::note;

/// Signs that send a family to the clinic without asking anybody, as the card names them (WHO IMCI, from memory).
const SIGNS: [&str; 10] = [
    "card-sign-drink",
    "card-sign-vomits",
    "card-sign-fits",
    "card-sign-sleepy",
    "card-sign-breath",
    "card-sign-fast",
    "card-sign-hot",
    "card-sign-stool",
    "card-sign-feet",
    "card-sign-food",
];

/// The page.
#[must_use]
pub fn body(w: &Words, page: &ChildPage<'_>) -> Markup {
    let child = &page.who;
    html! {
        (back(w, &format!("/children/{}{}", child.code, page.query), child.name))
        div.card {
            h1 { (name(child.name)) }
            p.lede {
                (w.say_with("card-born", args!["day" => format::day_and_year(w, child.born), "sex" => child.sex.code(), "word" => codes::sex(w, child.sex)]))
                " · " span.ltr { (child.printed) }
            }
            (weight(w, page))
            @if let Some(stage) = &page.stage {
                h2 { (w.say_with("card-now", args!["age" => format::age(w, child.born, page.day)])) }
                @if stage.texture.is_some() { (food::told(w, stage)) } @else { p { (w.say("child-milk-only")) } }
            }
            (held(w, page))
            @if let Some((first, last)) = page.next_visit {
                p { b { (w.say_with("card-next", args!["first" => format::day_near(w, first, page.day), "last" => format::day_near(w, last, page.day)])) } }
            }
            (note(NoteWeight::Stop, Icon::Now, &html! {
                h2 { @match page.number {
                    Some(number) => { (w.say_with("card-go", args!["number" => number])) }
                    None => { (w.say("card-go-local")) }
                } }
                p { (SIGNS.map(|sign| w.say(sign)).join(" · ")) "." }
            }))
            p.quiet { (w.say("card-helps")) }
        }
        p.quiet.noprint { (w.say("card-print")) }
    }
}

/// Foods after which something happened: the family must not give them until somebody who may has said so.
fn held(w: &Words, page: &ChildPage<'_>) -> Markup {
    let held = page.on_hold();
    html! { @if !held.is_empty() { p { b { (w.say_with("card-held", args!["foods" => held.join(", ")])) } } } }
}

/// The last weight, what changed since the one before, and the drawing of both.
fn weight(w: &Words, page: &ChildPage<'_>) -> Markup {
    let weights: Vec<&MeasuredOn> = page.measured.iter().filter(|m| m.weight_g.is_some() && !m.weight_suspect).collect();
    let Some(last) = weights.last() else { return Markup::default() };
    let grams = |m: &MeasuredOn| i64::from(m.weight_g.unwrap_or(0));
    let before = weights.len().checked_sub(2).and_then(|at| weights.get(at));
    let day = |m: &MeasuredOn| format::day_near(w, m.on, page.day);
    let said = match before {
        None => w.say_with("card-weight", args!["weight" => format::kg(w, grams(last)), "day" => day(last)]),
        Some(before) => {
            let change = grams(last) - grams(before);
            let key = match change {
                0 => "card-weight-same",
                lost if lost < 0 => "card-weight-less",
                _ => "card-weight-more",
            };
            let facts = args![
                "weight" => format::kg(w, grams(last)),
                "day" => day(last),
                "change" => format::weight_change(w, change.abs()),
                "before" => day(before)
            ];
            w.say_with(key, facts)
        }
    };
    html! {
        p { b { (&said) } }
        @if !page.before_due_date() {
            div.unnamed { (growth::drawing(w, page, &said)) }
            p.quiet { (w.say_with("card-lines", args!["sex" => page.who.sex.code()])) }
        }
    }
}

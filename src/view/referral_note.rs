//! The note that goes with a child to the clinic: who it is, why it is sent, the numbers, and room for the answer that comes back.
//! It decides nothing and suggests no treatment.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::child::MeasuredOn;
use crate::view::parts::back;
use crate::view::parts::label;
use crate::view::parts::name;

/// Measurements shown: the last ones say how it went (our own choice).
const MEASURED: usize = 3;
/// What the clinic is asked to write, one line each.
const ANSWERS: [&str; 5] =
    ["referral-answer-on", "referral-answer-found", "referral-answer-done", "referral-answer-food", "referral-answer-back"];

/// Reasons listed: the most urgent; more would not fit a sheet of A5 (our own choice).
const REASONS: usize = 4;

/// The page; `by` is who sends the child, `answer_to` the name and phone of whom the clinic tells.
#[must_use]
pub fn body(w: &Words, page: &ChildPage<'_>, by: &str, answer_to: (&str, Option<&str>)) -> Markup {
    let child = &page.who;
    html! {
        (back(w, &format!("/children/{}{}", child.code, page.query), child.name))
        div.card.referral {
            h1 { (w.say("referral-heading")) }
            p.lede {
                b { (name(child.name)) } " · "
                (w.say_with("card-born", args!["day" => format::day_and_year(w, child.born), "sex" => child.sex.code(), "word" => codes::sex(w, child.sex)]))
                " (" (format::age(w, child.born, page.day)) ") · " span.ltr { (child.printed) }
            }
            p { (w.say_with("referral-family", args!["name" => child.caregiver, "village" => child.village])) }
            p { (w.say_with("referral-by", args!["name" => by, "date" => format::day_and_year(w, page.day)])) }
            (why(w, page))
            (numbers(w, page))
            (holds(w, page))
            h2 { (w.say("referral-answer")) }
            p {
                b { (w.say_with("referral-answer-to", args!["name" => answer_to.0])) }
                @if let Some(phone) = answer_to.1 { ", " span.ltr { (phone) } }
            }
            @for line in ANSWERS { p.fill { (w.say(line)) } }
            p.quiet { (w.say("referral-answer-thanks")) }
        }
        p.quiet.noprint { (w.say("referral-print")) }
    }
}

/// What is open, most urgent first; where nothing is, the worker's own judgement sends the child.
fn why(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        h2 { (w.say("referral-why")) }
        @if page.open.is_empty() { p.fill { (w.say("referral-own-judgement")) } }
        ul {
            @for follow_up in page.open.iter().take(REASONS) {
                li {
                    @if follow_up.class <= Class::Today { b { (label(w, &codes::class_word(w, follow_up.class))) " " } }
                    (explain(follow_up.rule, follow_up.evidence, w, page.food))
                    " " (w.say_with("child-seen-on", args!["day" => format::day_near(w, follow_up.last_fired_on, page.day)]))
                }
            }
            @if let Some(more) = page.open.len().checked_sub(REASONS).filter(|more| *more > 0) {
                li { (w.say_with("referral-more", args!["count" => more])) }
            }
        }
    }
}

fn numbers(w: &Words, page: &ChildPage<'_>) -> Markup {
    let visits: Vec<&MeasuredOn> = page.measured.iter().rev().filter(|m| !m.at_birth).take(MEASURED).collect();
    let z = |h: Option<i32>| h.map(|h| format::number(w, f64::from(h) / 100.0, 2));
    let line = |m: &MeasuredOn| {
        let parts = [
            m.weight_g.map(|grams| format::kg(w, i64::from(grams))),
            z(m.z[0]).map(|z| w.say_with("referral-wfa", args!["z" => z])),
            m.length_mm.map(|mm| format::cm(w, i64::from(mm))),
            z(m.z[2]).map(|z| w.say_with("referral-wfl", args!["z" => z])),
            m.arm_mm.map(|mm| w.say_with("referral-arm", args!["mm" => i64::from(mm)])),
        ];
        let odd = m.weight_suspect || m.length_suspect;
        (parts.into_iter().flatten().collect::<Vec<_>>().join(", "), odd)
    };
    html! {
        h2 { (w.say("referral-numbers")) }
        @if visits.is_empty() { p { (w.say("referral-no-numbers")) } }
        ul {
            @for measured in visits {
                @let (numbers, odd) = line(measured);
                li { b { (label(w, &format::day_and_year(w, measured.on))) " " } (numbers) @if odd { " (" (w.say("referral-odd")) ")" } }
            }
        }
        @if let Some(grams) = page.who.birth_weight_g { p { (w.say_with("referral-birth", args!["weight" => format::kg(w, i64::from(grams))])) } }
        p.quiet { (w.say("referral-z")) }
    }
}

fn holds(w: &Words, page: &ChildPage<'_>) -> Markup {
    let held = page.on_hold();
    html! { @if !held.is_empty() { p { b { (label(w, &w.say("referral-holds"))) " " } (held.join(", ")) } } }
}

//! Who stands in for a worker while they are away: who does, ending it, and the form for one more. Two pages show it; it knows
//! neither.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::acts;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::split;

/// Somebody standing in.
#[derive(Debug, Clone)]
pub struct CoverLine {
    /// Their sign-in name.
    pub sign_in_name: String,
    /// Their name.
    pub full_name: String,
    /// First day as the form sends it.
    pub from: String,
    /// First and last day in words.
    pub days: [String; 2],
}

/// What a page shows of it.
#[derive(Clone, Copy)]
pub struct Covers<'a> {
    /// Where the form goes; ending goes to `end` below it.
    pub path: &'a str,
    /// Who stands in.
    pub lines: &'a [CoverLine],
    /// Colleagues that could: sign-in name and words.
    pub colleagues: &'a [(String, String)],
    /// The form as typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// The form's token.
    pub token: &'a str,
}

/// The id of the words of a field of the form, for the summary of faults.
#[must_use]
pub fn label(field: &str) -> &'static str {
    match field {
        "covered_by" => "cover-by",
        "from" => "cover-from",
        _ => "cover-to",
    }
}

/// Who stands in, each with a way to end it.
#[must_use]
pub fn list(w: &Words, p: Covers<'_>, key: &dyn Fn() -> String) -> Markup {
    html! {
        h2 id="away" { (w.say("cover-heading")) }
        p.quiet { (w.say("cover-lede")) }
        @if p.lines.is_empty() { p { (w.say("cover-none")) } } @else {
            ul.rows { @for cover in p.lines { li { (line(w, p, cover, &key())) } } }
        }
    }
}

/// The form for one more.
#[must_use]
pub fn one_more(w: &Words, p: Covers<'_>, key: &str) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    let fields = html! {
        (ask.select("covered_by", "cover-by").option("", w.say("common-choose")).options(p.colleagues.iter().cloned()))
        (ask.day("from", "cover-from"))
        (ask.day("to", "cover-to"))
        (acts(&button(&w.say("cover-add"), true)))
    };
    form(p.path, p.token, Some(key), &fields)
}

fn line(w: &Words, p: Covers<'_>, cover: &CoverLine, key: &str) -> Markup {
    let [from, to] = &cover.days;
    let of = args!["name" => &cover.full_name, "from" => from];
    let end = html! {
        (hidden("covered_by", &cover.sign_in_name))
        (hidden("from", &cover.from))
        button.quietly type="submit" aria-label=(w.say_with("cover-end-of", of)) { (w.say("cover-end")) }
    };
    split(
        &html! { span { (w.say_with("cover-line", args!["name" => &cover.full_name, "from" => from, "to" => to])) } },
        &form(&format!("{}/end", p.path), p.token, Some(key), &end),
    )
}

//! What to do in an emergency: the call first, then acts in order. From memory of public first-aid guidance, and the page says so;
//! it knows names and ages, no rule and no visit.

use domain::child::Sex;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::visit::DangerSign;
use domain::visit::SwallowTrouble;
use domain::visit::Visit;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Args;
use crate::i18n::Words;
use crate::view::parts::acts;
use crate::view::parts::alert;
use crate::view::parts::back;
use crate::view::parts::call_link;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::steps;

/// Which acts fit. In the order in which they press.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Something stuck in the airway, or blue while feeding.
    Choking,
    /// Fits or unconscious.
    Fits,
    /// A severe reaction to a food.
    Reaction,
    /// Any other danger.
    Other,
}

/// How many acts each has: as many as one can hold in mind.
const ACTS: u8 = 5;

impl Kind {
    const fn code(self) -> &'static str {
        match self {
            Self::Choking => "choking",
            Self::Fits => "fits",
            Self::Reaction => "reaction",
            Self::Other => "other",
        }
    }

    /// The act at which one speaks to the emergency number.
    const fn call_at(self) -> u8 {
        match self {
            Self::Other => 1,
            Self::Fits | Self::Reaction => 2,
            Self::Choking => 4,
        }
    }

    /// What fits what was seen at a visit: never empty, so that a danger found otherwise has its acts too.
    #[must_use]
    pub fn of(visit: &Visit) -> Vec<Self> {
        let signs = visit.danger_signs.as_ref();
        let has = |wanted: &[DangerSign]| signs.is_some_and(|s| wanted.iter().any(|w| s.contains(w)));
        let mut kinds = Vec::new();
        if visit.swallow_trouble == Some(SwallowTrouble::Blue) {
            kinds.push(Self::Choking);
        }
        if has(&[DangerSign::FitsNow, DangerSign::Unconscious]) {
            kinds.push(Self::Fits);
        }
        if visit.foods.iter().any(|f| f.response == Some(Response::Reaction)) {
            kinds.push(Self::Reaction);
        }
        let rest = signs.is_some_and(|s| s.iter().any(|x| !matches!(x, DangerSign::FitsNow | DangerSign::Unconscious)));
        if rest || kinds.is_empty() {
            kinds.push(Self::Other);
        }
        kinds
    }
}

/// What one says on the telephone: the signs that were ticked, in words.
#[must_use]
pub fn seen(w: &Words, visit: &Visit, food: &dyn Fn(&str) -> String) -> Vec<String> {
    use crate::i18n::codes;
    let mut seen: Vec<String> = visit.danger_signs.iter().flatten().map(|s| codes::danger_sign(w, *s)).collect();
    if visit.swallow_trouble == Some(SwallowTrouble::Blue) {
        seen.push(codes::swallow_trouble(w, SwallowTrouble::Blue));
    }
    for offer in visit.foods.iter().filter(|f| f.response == Some(Response::Reaction)) {
        let signs: Vec<String> = offer.signs.iter().flatten().map(|s: &ReactionSign| codes::reaction_sign(w, *s)).collect();
        let food = food(offer.code.as_str());
        seen.push(if signs.is_empty() {
            w.say_with("emergency-after-food", args!["food" => food])
        } else {
            w.say_with("emergency-signs-after-food", args!["signs" => crate::i18n::format::list(w, &signs), "food" => food])
        });
    }
    seen
}

/// A child in danger.
#[derive(Debug, Clone)]
pub struct Emergency<'a> {
    /// The child's name.
    pub name: &'a str,
    /// Boy or girl.
    pub sex: Sex,
    /// Age in words.
    pub age: String,
    /// Under 12 months: other acts when choking.
    pub under_one: bool,
    /// Which acts fit.
    pub kinds: Vec<Kind>,
    /// What was seen, to be said on the telephone; empty: nothing was written yet.
    pub seen: Vec<String>,
    /// The programme's emergency number.
    pub number: Option<&'a str>,
}

/// The block across the page and the acts below it.
#[must_use]
pub fn block(w: &Words, e: &Emergency<'_>) -> Markup {
    html! {
        (alert(&w.say("class-now"), &html! {
            (name(e.name)) " " (w.say_with("emergency-heading", args!["sex" => e.sex.code()]))
        }, &dial(w, e.number)))
        @for kind in &e.kinds {
            @if e.kinds.len() > 1 { h2 id=(kind.code()) { (w.say(&format!("emergency-{}", kind.code()))) } }
            (steps(&acts_of(w, e, *kind)))
        }
        p.quiet { (w.say("emergency-source")) }
    }
}

fn acts_of(w: &Words, e: &Emergency<'_>, kind: Kind) -> Vec<Markup> {
    let age = if e.under_one { "baby" } else { "child" };
    (1..=ACTS)
        .map(|at| {
            let id = format!("emergency-{}-{at}", kind.code());
            let said = |tail: &str| w.say_with(&format!("{id}-{tail}"), Args::new().with("sex", e.sex.code()).with("age", age));
            html! {
                b { (said("do")) }
                @if at == kind.call_at() && !e.seen.is_empty() {
                    (w.say_with("emergency-say", args!["age" => &e.age, "seen" => e.seen.join(". ")])) " "
                }
                (said("how"))
            }
        })
        .collect()
}

/// The call, large.
#[must_use]
pub fn dial(w: &Words, number: Option<&str>) -> Markup {
    let number = number.map(str::trim).filter(|n| n.bytes().any(|b| b.is_ascii_digit()));
    html! {
        @match number {
            Some(number) => { (call_link(number, "dial", &html! { (w.say_with("common-call-number", args!["number" => number])) })) }
            None => { p.dial { (w.say("common-call-local")) } }
        }
    }
}

/// The page that is reached without filling anything.
#[must_use]
pub fn body(w: &Words, e: &Emergency<'_>, code: &str) -> Markup {
    html! {
        (alert(&w.say("class-now"), &html! { (name(e.name)) " " (w.say_with("emergency-heading", args!["sex" => e.sex.code()])) }, &html! {
            (dial(w, e.number))
        }))
        nav.jump aria-label=(w.say("emergency-which")) {
            p { b { (w.say("emergency-which")) } }
            ul.plain { @for kind in &e.kinds { li { a.link href={ "#" (kind.code()) } { (w.say(&format!("emergency-{}", kind.code()))) } } } }
        }
        @for kind in &e.kinds {
            h2 id=(kind.code()) { (w.say(&format!("emergency-{}", kind.code()))) }
            (steps(&acts_of(w, e, *kind)))
        }
        p.quiet { (w.say("emergency-source")) }
        (acts(&html! {
            (link_button(&format!("/children/{code}/visits/new#signs"), &html! { (w.say("emergency-write")) }, true))
        }))
        (back(w, &format!("/children/{code}"), &w.say("emergency-child-page")))
    }
}

/// Every kind, for the page that is opened before anything was written.
pub const ALL: [Kind; 4] = [Kind::Reaction, Kind::Choking, Kind::Fits, Kind::Other];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;
    use domain::ids::VisitId;
    use domain::visit::Contact;

    fn emergency(number: Option<&str>) -> Emergency<'_> {
        Emergency {
            name: "Lomi",
            sex: Sex::Female,
            age: "7 months".to_owned(),
            under_one: true,
            kinds: ALL.to_vec(),
            seen: vec!["wheeze after groundnut".to_owned()],
            number,
        }
    }

    #[test]
    fn every_act_of_every_kind_has_words() {
        for lang in [Lang::En, Lang::Fr] {
            for number in [Some("112"), None] {
                let page =
                    block(words(lang), &emergency(number)).into_string() + &body(words(lang), &emergency(number), "ABC").into_string();
                assert!(!page.contains('{') && !page.contains('}'), "{}: {page}", lang.code());
            }
        }
    }

    #[test]
    fn the_call_comes_before_the_acts_and_adrenaline_before_the_call_text() {
        let page = block(words(Lang::En), &emergency(Some("112"))).into_string();
        let at = |text: &str| page.find(text).unwrap_or_else(|| panic!("{text} is not in {page}"));
        assert!(at("tel:112") < at("drenaline") && at("drenaline") < at("wheeze after groundnut"));
        assert!(block(words(Lang::En), &emergency(None)).into_string().contains("your local emergency number"));
        assert!(page.contains("clinician must approve"));
    }

    #[test]
    fn acts_follow_what_was_seen() {
        let mut v = Visit::empty(VisitId(1), "2026-11-25".parse().expect("a date"), Contact::Home);
        assert_eq!(Kind::of(&v), [Kind::Other]);
        v.danger_signs = Some([DangerSign::FitsNow].into());
        assert_eq!(Kind::of(&v), [Kind::Fits]);
        v.swallow_trouble = Some(SwallowTrouble::Blue);
        v.danger_signs = Some([DangerSign::FitsNow, DangerSign::CannotFeed].into());
        assert_eq!(Kind::of(&v), [Kind::Choking, Kind::Fits, Kind::Other]);
    }
}

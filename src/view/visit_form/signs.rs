//! Signs: never folded away. "None of these" speaks for the signs on the page; "did not check" is an answer of its own.

use domain::rule::RuleId;
use domain::visit::SwallowTrouble;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::view::parts::Ask;
use crate::view::visit_form::VisitForm;

pub(super) fn fields(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let q = f.questions;
    // Breaths a minute that are fast at this age: IMCI, from memory.
    let breaths = match q.months {
        0..=1 => 60,
        2..=11 => 50,
        _ => 40,
    };
    let list = q.signs.iter().fold(
        ask.many_of("danger", "visit-danger").hint(w.say_with("visit-danger-hint", args!["breaths" => breaths])).rows(),
        |choice, sign| choice.option(sign.code(), codes::danger_sign(w, *sign)),
    );
    let swallow = SwallowTrouble::ALL.iter().fold(ask.one_of("swallow_trouble", "visit-swallow"), |choice, answer| {
        choice.option(answer.code(), codes::swallow_trouble(w, *answer))
    });
    html! {
        div.list { (list) }
        (ask.one_of("danger_none", "visit-danger-none").tight()
            .option("yes", w.say("common-none-of-these")).option("not", w.say("common-did-not-check")))
        (swallow.option("", w.say("common-not-asked")))
        @if q.appetite { (appetite(f, ask)) }
        @if q.plans { (plans(f, ask)) }
    }
}

pub(super) fn appetite(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    html! { (ask.whole("appetite_poor_days", "visit-appetite").hint(w.say("visit-appetite-hint")).unit(w.say("visit-days"))) }
}

/// Rules that a clinic's plan can cover.
const PLANS: [RuleId; 4] = [RuleId::SolidsEarly, RuleId::MilkAnimalEarly, RuleId::BirthLow, RuleId::BreastfeedingStopped];

pub(super) fn plans(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let choice = PLANS.iter().fold(ask.many_of("plans", "visit-plans").hint(w.say("visit-plans-hint")), |choice, rule| {
        choice.option(rule.code(), w.say(&codes::id("visit-plan", rule.code())))
    });
    html! {
        (choice)
        (ask.one_of("plans_none", "visit-plans-none").tight().option("yes", w.say("visit-no-plan")).option("", w.say("common-not-asked")))
    }
}

//! New foods since the last visit: the few that matter now by name, any other chosen in a box. What a reaction needs opens where
//! "Reaction" is chosen.

use domain::draft::visit::FoodFields;
use domain::draft::visit::foods::OTHER_FOODS;
use domain::draft::visit::foods::other_food;
use domain::food::ReactionSign;
use domain::food::Response;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Ask;
use crate::view::parts::Choice;
use crate::view::parts::Field;
use crate::view::parts::part;
use crate::view::visit_form::FoodLine;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::fold;

pub(super) fn part_of(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let heading = match f.questions.last.visit {
        Some(on) => w.say_with("visit-new-since", args!["date" => format::day(w, on)]),
        None => w.say("visit-new-first"),
    };
    let held: Vec<&FoodLine> = f.foods.iter().filter(|food| food.on_hold).collect();
    let near: Vec<&FoodLine> = f.foods.iter().filter(|food| !food.on_hold).collect();
    part(
        "foods",
        &heading,
        &html! {
            @for food in &held { (by_name(f, ask, food)) }
            (ask.one_of("new_food", "visit-new-food").tight()
                .option("no", w.say("visit-no-new-food")).option("yes", w.say("common-yes")).option("", w.say("common-not-asked")))
            div.when-new {
                p.hint { (w.say("visit-new-hint")) }
                @for food in &near { (by_name(f, ask, food)) }
                (other(f, ask, 1))
                    (fold(f, &w.say("visit-other-more"), &html! { @for at in 2..=OTHER_FOODS { (other(f, ask, at)) } }))
            }
        },
    )
}

fn said(ask: Ask<'_>, name: &str, choice: Choice) -> Choice {
    choice.chosen(ask.filled.all(name)).fault(ask.faults.of(name).map(|fault| codes::fault(ask.w, fault))).stands(ask.stands(name))
}

fn by_name(f: &VisitForm<'_>, ask: Ask<'_>, food: &FoodLine) -> Markup {
    let w = f.w;
    let names = FoodFields::of_code(&food.code);
    let newest = f.correcting.and_then(|correcting| correcting.newest);
    let given = [Some(f.filled), newest.map(|newest| newest.filled)].into_iter().flatten().any(|form| form.has(&names.response, "given"));
    let legend = if food.on_hold { w.say_with("visit-food-on-hold", args!["food" => &food.name]) } else { food.name.clone() };
    html! {
        div.food-ask {
            (taken(f, ask, &names, legend, given))
            @if food.on_hold { (lifted(f, ask, &names)) }
            (reaction(f, ask, &names))
            (seldom(f, ask, &names, food.choking))
        }
    }
}

fn other(f: &VisitForm<'_>, ask: Ask<'_>, at: u8) -> Markup {
    let w = f.w;
    let names = FoodFields::of_box(at);
    let field = other_food(at);
    let select = ask.select(&field, "visit-other-food").option("", w.say("common-choose")).options(f.all_foods.iter().cloned());
    html! {
        div.food-ask {
            (select)
            (taken(f, ask, &names, w.say("visit-taken"), false))
            (reaction(f, ask, &names))
            (seldom(f, ask, &names, true))
        }
    }
}

fn taken(f: &VisitForm<'_>, ask: Ask<'_>, names: &FoodFields, legend: String, given: bool) -> Markup {
    let w = f.w;
    let choice = said(ask, &names.response, Choice::one(&names.response, legend)).tight().option("", w.say("visit-not-given"));
    let choice = Response::ALL.iter().fold(choice, |choice, response| choice.option(response.code(), codes::response(w, *response)));
    // Given, but nobody said how it was taken: only where a stored visit says so.
    html! { (if given { choice.option("given", w.say("visit-given")) } else { choice }) }
}

fn lifted(f: &VisitForm<'_>, ask: Ask<'_>, names: &FoodFields) -> Markup {
    html! { (said(ask, &names.lifted, Choice::many(&names.lifted, f.w.say("visit-lifted"))).rows().option("yes", f.w.say("visit-lifted-yes"))) }
}

fn reaction(f: &VisitForm<'_>, ask: Ask<'_>, names: &FoodFields) -> Markup {
    let w = f.w;
    let signs = ReactionSign::ALL.iter().fold(
        said(ask, &names.signs, Choice::many(&names.signs, w.say("visit-reaction-signs"))).hint(w.say("common-caution-unsure")).rows(),
        |list, sign| list.option(sign.code(), codes::reaction_sign(w, *sign)),
    );
    let none = said(ask, &names.no_signs, Choice::one(&names.no_signs, w.say("visit-reaction-none"))).tight();
    html! {
        div.when-reaction {
            p { a.link.danger href={ "/children/" (f.code) "/emergency" } { (w.say("visit-reaction-emergency")) } }
            div.list { (signs) }
            (none.option("yes", w.say("common-none-of-these")).option("", w.say("common-not-asked")))
            (ask.typed(&names.minutes, Field::whole(&names.minutes, w.say("visit-minutes")).unit(w.say("visit-min"))))
        }
    }
}

fn seldom(f: &VisitForm<'_>, ask: Ask<'_>, names: &FoodFields, choking: bool) -> Markup {
    let w = f.w;
    let unsafe_form =
        said(ask, &names.unsafe_form, Choice::one(&names.unsafe_form, w.say("visit-unsafe"))).hint(w.say("visit-unsafe-hint")).tight();
    let unsafe_form = unsafe_form.option("yes", w.say("common-yes")).option("no", w.say("common-no")).option("", w.say("common-not-asked"));
    let offers = ask.typed(&names.offers, Field::whole(&names.offers, w.say("visit-offers")).unit(w.say("visit-times")));
    html! {
        (fold(f, &w.say("visit-food-more"), &html! {
            (offers)
            @if choking || !f.filled.one(&names.unsafe_form).is_empty() { (unsafe_form) }
        }))
    }
}

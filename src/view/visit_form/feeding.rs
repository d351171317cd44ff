//! Yesterday, day and night: milk, food, texture, and the list of quick ticks. Under 6 months one question opens all that is not
//! breast milk; foods are never suggested at that age.

use domain::draft::visit::also;
use domain::draft::visit::also::Also;
use domain::draft::visit::recipes::FIELD;
use domain::food::FoodGroup;
use domain::food::Texture;
use domain::visit::LowValue;
use domain::visit::ReadinessSign;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::hidden;
use crate::view::visit_form::RecipeLine;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::fold;
use crate::view::visit_form::foods;
use crate::view::visit_form::labels;

pub(super) fn fields(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    if f.questions.infant { infant(f, ask) } else { older(f, ask) }
}

fn infant(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    html! {
        (ask.yes_no("breastfed", "visit-breastfed"))
        // The field says "breast milk only", so that yes and no change places.
        (ask.one_of("breast_only", "visit-besides").hint(w.say("visit-besides-hint")).tight()
            .option("yes", w.say("common-no")).option("no", w.say("common-yes")).option("", w.say("common-not-asked")))
        div.when-besides {
            (milks(f, ask))
            (ask.yes_no("other_drink", "visit-other-drink"))
            (ask.yes_no("sweet_drink", "visit-sweet-drink"))
            (ask.yes_no("solids_yesterday", "visit-solids-yesterday"))
            div.when-solids {
                (started(f, ask))
                (meals(f, ask))
                (texture(f, ask))
                (groups(f, ask))
                (recipes(f, ask))
                (foods::part_of(f, ask))
            }
        }
        (quick_ticks(f, ask))
        @if f.questions.readiness { (readiness(f, ask)) }
        (others(f, ask))
    }
}

fn older(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let q = f.questions;
    html! {
        (ask.yes_no("breastfed", "visit-breastfed"))
        (ask.yes_no("other_milk", "visit-other-milk").hint(w.say("visit-other-milk-hint")))
        div.when-milk { (milks(f, ask)) }
        @if q.started { (ask.yes_no("solids_yesterday", "visit-solids-yesterday")) (started(f, ask)) }
        @if q.readiness { (readiness(f, ask)) }
        (groups(f, ask))
        (recipes(f, ask))
        (meals(f, ask))
        (texture(f, ask))
        (quick_ticks(f, ask))
        (others(f, ask))
    }
}

/// How many times each milk; preparing it is looked at, not counted.
fn milks(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let times = w.say("visit-times");
    html! {
        p.hint { (w.say("visit-milk-prepared")) }
        (ask.whole("formula_times", "visit-formula-times").unit(times.as_str()))
        (ask.whole("animal_milk_times", "visit-animal-milk-times").unit(times.as_str()))
        (ask.whole("drink_yogurt_times", "visit-drink-yogurt-times").unit(times.as_str()))
        (ask.whole("spoon_yogurt_times", "visit-spoon-yogurt-times").unit(times.as_str()))
    }
}

fn groups(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let tiles =
        FoodGroup::ALL.iter().fold(ask.many_of("groups", "visit-groups").hint(w.say("visit-groups-hint")).tiles(), |tiles, group| {
            // The programme's own foods; without any, the usual ones of the group.
            let usual = codes::id("visit-group", group.code());
            let example = (f.examples)(*group).or_else(|| w.has(&usual).then(|| w.say(&usual)));
            tiles.option_with(group.code(), codes::food_group(w, *group), example, Some(Icon::of_group(*group)))
        });
    html! {
        (tiles)
        (ask.one_of("groups_none", "visit-groups-none").tight().option("yes", w.say("common-none-of-these")).option("", w.say("common-not-asked")))
    }
}

/// Recipes of the programme, one tap away. Naming one ticks what it holds when the form is saved.
fn recipes(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    if f.recipes.is_empty() {
        return Markup::default();
    }
    let rows = f.recipes.iter().fold(ask.many_of(FIELD, "visit-recipes").hint(w.say("visit-recipes-hint")).rows(), |rows, recipe| {
        rows.named(recipe.code.clone(), recipe.name.clone(), what_it_holds(w, recipe).unwrap_or_default())
    });
    fold(f, &w.say("visit-recipes-named"), &html! { (rows) })
}

/// The foods that a recipe ticks, as inside a line, after a word on what is on hold.
fn what_it_holds(w: &Words, recipe: &RecipeLine) -> Option<String> {
    let names = recipe.foods.iter().map(|name| name.to_lowercase());
    let foods = names.reduce(|most, next| w.say_with("common-list-comma", args!["most" => most, "next" => next]))?;
    Some(if recipe.held { w.say_with("visit-recipes-held", args!["foods" => foods]) } else { foods })
}

fn meals(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let field = ask.whole("meals", "visit-meals").hint(w.say("visit-meals-hint")).unit(w.say("visit-times"));
    let field = match f.questions.last.meals {
        Some((n, on)) => field.last(
            w.say("common-last-time"),
            w.say_with("common-last-value", args!["value" => format::count(w, u64::from(n)), "date" => format::day_short(w, on)]),
        ),
        None => field,
    };
    html! { (field) }
}

fn texture(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let usual = Texture::ALL.iter().fold(ask.one_of("texture_usual", "visit-texture").rows(), |rows, t| {
        rows.option_with(t.level().to_string(), codes::texture(w, *t), Some(codes::texture_test(w, *t)), None)
    });
    let usual = match f.questions.last.texture {
        Some((t, _)) => usual.last(w.say_with("visit-texture-last", args!["texture" => codes::texture(w, t)])),
        None => usual,
    };
    let best = Texture::ALL
        .iter()
        .skip(1)
        .fold(ask.one_of("texture_best", "visit-texture-best").tight().option("same", w.say("common-no")), |best, t| {
            best.option(t.level().to_string(), codes::texture_short(w, *t))
        });
    html! { (usual) (best.option("", w.say("common-not-asked"))) }
}

/// One list for what is quickly asked. Where a stored visit is corrected, each line is a question of its own: it may hold a "no".
fn quick_ticks(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let lines: Vec<Also> = f.questions.also.clone();
    if f.correcting.is_some_and(|c| !c.unfinished) {
        return html! { @for line in lines.iter().filter(|line| one_by_one(**line)) { (ask.yes_no(line.code(), &also_id(*line))) } };
    }
    let list = lines.iter().fold(ask.many_of("also", "visit-also").hint(w.say("visit-also-hint")).rows(), |list, line| {
        list.option(line.code(), w.say(&also_id(*line)))
    });
    let shown: Vec<&str> = lines.iter().map(|line| line.code()).collect();
    html! {
        (hidden(also::SHOWN, &shown.join(" ")))
        div.list { (list) }
        (ask.one_of(also::ALL_ASKED, "visit-also-all").tight().option("yes", w.say("visit-also-asked")).option("", w.say("visit-also-not-asked")))
    }
}

/// Lines that have a yes-or-no field of their own.
const fn one_by_one(line: Also) -> bool {
    !matches!(line, Also::TeaCoffee | Also::Salt | Also::Sugar | Also::Honey)
}

fn also_id(line: Also) -> String {
    codes::id("visit-also", line.code())
}

/// What the list of quick ticks does not hold at this age, or on this page.
fn others(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let q = f.questions;
    let correcting = f.correcting.is_some_and(|c| !c.unfinished);
    let absent: Vec<Also> = Also::ALL
        .iter()
        .copied()
        .filter(|line| one_by_one(*line) && !q.also.contains(line) && !(q.infant && *line == Also::SweetDrink))
        .collect();
    let low = correcting || !q.also.contains(&Also::TeaCoffee);
    let body = html! {
        @if !q.infant {
            (ask.yes_no("breast_only", "visit-breast-only"))
            (ask.yes_no("other_drink", "visit-other-drink"))
            @if !q.started { (ask.yes_no("solids_yesterday", "visit-solids-yesterday")) }
        }
        @for line in &absent { (ask.yes_no(line.code(), &also_id(*line))) }
        @if low {
            (LowValue::ALL.iter().fold(ask.many_of("low_value", "visit-low-value"), |list, v| list.option(v.code(), codes::low_value(w, *v))))
            (ask.one_of("low_value_none", "visit-low-value-none").tight()
                .option("yes", w.say("common-none-of-these")).option("", w.say("common-not-asked")))
        }
    };
    html! { (fold(f, &w.say("visit-drinks-more"), &body)) }
}

pub(super) fn started(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let hint = match f.questions.last.started_on {
        Some(on) => w.say_with("visit-started-known", args!["date" => format::day_near(w, on, f.today)]),
        None => w.say("visit-started-hint"),
    };
    html! { (ask.day("started", "visit-started").hint(hint).fault(labels::date_fault(ask, "started"))) }
}

pub(super) fn readiness(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let list = ReadinessSign::ALL
        .iter()
        .fold(ask.many_of("readiness", "visit-readiness").rows(), |list, sign| list.option(sign.code(), codes::readiness_sign(w, *sign)));
    html! {
        (list)
        (ask.one_of("readiness_none", "visit-readiness-none").tight()
            .option("yes", w.say("common-none-of-these")).option("", w.say("common-not-asked")))
    }
}

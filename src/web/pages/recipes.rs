//! Recipes for everybody and for one child, as lists and as cards.

use std::cmp::Reverse;

use actix_web::web;
use domain::child_code::ChildCode;
use domain::feeding::FoodState;
use domain::feeding::recipe_fit::Fit;
use domain::feeding::recipe_fit::fit;
use domain::feeding::recipe_fit::remarks;
use domain::feeding::thickness::MealsNeeded;
use domain::food::FoodCode;
use domain::protocol::Food;
use domain::protocol::Protocol;
use domain::protocol::Recipe;
use domain::protocol::StageId;
use domain::rule::Class;
use maud::Markup;

use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::meals;
use crate::view::layout;
use crate::view::recipes as view;
use crate::view::recipes::Said;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;

/// Mean length of a month in days (365.25 / 12), to say an age in days as months.
const DAYS_A_MONTH: f64 = 30.4375;

/// `GET /recipes`
///
/// # Errors
/// [`Failure`].
pub async fn list(signed: Signed) -> Result<Html, Failure> {
    Ok(Html::ok(list_page(&signed, signed.visitor.protocols.on(signed.as_of), None)))
}

/// `GET /recipes/{recipe}`
///
/// # Errors
/// [`Failure::NotFound`] when the protocol has no such recipe.
pub async fn card(signed: Signed, recipe: web::Path<String>) -> Result<Html, Failure> {
    let protocol = signed.visitor.protocols.on(signed.as_of);
    let recipe = protocol.recipe(&recipe).ok_or(Failure::NotFound)?;
    Ok(Html::ok(card_page(&signed, protocol, recipe, None)))
}

/// `GET /children/{code}/recipes`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn list_for_child(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let file = open(&signed, &code).await?;
    Ok(Html::ok(list_page(&signed, &file.assessment.now.protocol, Some(&file))))
}

/// `GET /children/{code}/recipes/{recipe}`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope, or when the protocol has no such recipe.
pub async fn card_for_child(signed: Signed, place: web::Path<(String, String)>) -> Result<Html, Failure> {
    let (code, recipe) = place.into_inner();
    let file = open(&signed, &code).await?;
    let protocol = &file.assessment.now.protocol;
    let recipe = protocol.recipe(&recipe).ok_or(Failure::NotFound)?;
    Ok(Html::ok(card_page(&signed, protocol, recipe, Some(&file))))
}

async fn open(signed: &Signed, code: &str) -> Result<ChildFile, Failure> {
    let code = ChildCode::parse(code).map_err(|_| Failure::NotFound)?;
    Ok(child_file::open(&signed.context(), &code, signed.as_of).await?)
}

/// What links carry on: the past day shown.
fn query(signed: &Signed) -> String {
    if signed.as_of == signed.visitor.today { String::new() } else { format!("?as_of={}", signed.as_of) }
}

fn list_page(signed: &Signed, protocol: &Protocol, file: Option<&ChildFile>) -> Markup {
    let w = signed.words();
    let query = query(signed);
    let food = |code: &str| protocol.food_name(&FoodCode(code.to_owned()), w.lang().code()).to_owned();
    let mut lines: Vec<view::Line<'_>> = protocol.recipes.iter().map(|recipe| line(signed, protocol, recipe, file)).collect();
    // By fit; what is a meal before what is none; for the youngest first; then by what gives most energy.
    lines.sort_by_key(|line| {
        (line.fit, line.too_thin, line.textures.first().copied(), Reverse(line.kcal_per_g.map(|d| (d * 1000.0) as u32)))
    });
    let child = file.map(|file| for_child(file, &query, &food));
    let page = view::List { child, lines, day: signed.as_of, food: &food };
    let title = view::title(w, &page);
    layout::page(&signed.shell(&title), view::list(w, &page))
}

fn card_page(signed: &Signed, protocol: &Protocol, recipe: &Recipe, file: Option<&ChildFile>) -> Markup {
    let w = signed.words();
    let query = query(signed);
    let food = |code: &str| protocol.food_name(&FoodCode(code.to_owned()), w.lang().code()).to_owned();
    let lang = w.lang().code();
    let text = recipe.text(lang);
    let spoken = if recipe.texts.contains_key(lang) { lang } else { protocol.language.as_str() };
    let said = |words| Said { words, lang: spoken };
    let source = |words| Said { words, lang: &protocol.language };
    let line = line(signed, protocol, recipe, file);
    let card = view::Card {
        child: file.map(|file| for_child(file, &query, &food)),
        day: signed.as_of,
        parts: recipe
            .parts
            .iter()
            .zip(&text.measures)
            .filter_map(|(part, measure)| Some((part, measure, protocol.food(&part.food)?)))
            .map(|(part, measure, food)| view::Part {
                measure: said(measure),
                grams: part.grams,
                food: food_said(food, lang, protocol),
                safe_form: Some(food.safe_form(lang))
                    .filter(|form| !form.is_empty())
                    .map(|words| Said { words, lang: if food.safe_forms.contains_key(lang) { lang } else { &protocol.language } }),
                energy: food.kcal_per_100g.map(|kcal| (kcal, source(&food.kcal_source))),
            })
            .collect(),
        water_ml: recipe.water_ml,
        cooked_g: recipe.cooked_g,
        kcal: recipe.kcal(&protocol.foods),
        given: recipe.given_energy.as_ref().map(|given| source(&given.source)),
        steps: text.steps.iter().map(|step| said(step)).collect(),
        warnings: text.warnings.iter().map(|warning| said(warning)).collect(),
        flour_days: recipe.keeps.flour_days,
        cooked_hours: (recipe.keeps.cooked_room_hours, recipe.keeps.cooked_cold_hours),
        iron: recipe.has_iron(&protocol.foods),
        least_density: protocol.energy.least_density,
        needed: file.filter(|_| !line.too_thin && line.fit != Fit::No).and_then(|file| needed(file, protocol, line.kcal_per_g)),
        line,
        source: source(&recipe.source),
        food: &food,
    };
    layout::page(&signed.shell(&text.name), view::card(w, &card))
}

fn food_said<'a>(food: &'a Food, lang: &'a str, protocol: &'a Protocol) -> Said<'a> {
    Said { words: food.name(lang), lang: if food.names.contains_key(lang) { lang } else { &protocol.language } }
}

/// Meals a day with a food of this density, if they can be estimated.
fn needed(file: &ChildFile, protocol: &Protocol, kcal_per_g: Option<f64>) -> Option<MealsNeeded> {
    let stage = protocol.stages.get(file.assessment.now.stage?)?;
    meals::told(file, file.as_of).of_density(protocol, stage, kcal_per_g?).ok()
}

fn line<'a>(signed: &Signed, protocol: &'a Protocol, recipe: &'a Recipe, file: Option<&ChildFile>) -> view::Line<'a> {
    let lang = signed.words().lang().code();
    let foods = &protocol.foods;
    let kcal_per_g = recipe.kcal_per_g(foods);
    let remarks = file.map_or_else(Vec::new, |file| remarks(&meals::eater(file), recipe, protocol));
    let path = match file {
        Some(file) => format!("/children/{}/recipes/{}{}", file.record.code, recipe.code, query(signed)),
        None => format!("/recipes/{}", recipe.code),
    };
    view::Line {
        path,
        name: Said { words: &recipe.text(lang).name, lang: if recipe.texts.contains_key(lang) { lang } else { &protocol.language } },
        textures: &recipe.textures,
        kcal_per_g,
        too_thin: kcal_per_g.is_some_and(|density| density < protocol.energy.least_density),
        groups: recipe.groups(foods).into_iter().collect(),
        allergens: recipe.allergens(foods).into_iter().collect(),
        from_months: from_months(recipe, protocol),
        fit: fit(&remarks),
        remarks,
    }
}

/// The age from which a recipe may be given, in months: of its foods, of the local protocol, and of the stage of its smoothest texture.
fn from_months(recipe: &Recipe, protocol: &Protocol) -> u32 {
    let foods = &protocol.foods;
    let by_days = (f64::from(recipe.earliest_days(foods)) / DAYS_A_MONTH).round() as u32;
    let by_local = recipe.foods(foods).map(|food| food.local_wait_months).max().unwrap_or(0);
    let smoothest = recipe.textures.first().copied();
    let fits = |most| smoothest.is_none_or(|smoothest| most >= smoothest);
    let by_texture = protocol.stages.iter().filter(|stage| stage.texture_expected.is_some_and(|(_, most)| fits(most)));
    by_days.max(by_local).max(by_texture.map(|stage| stage.from_months).min().unwrap_or(0))
}

fn for_child<'a>(file: &'a ChildFile, query: &'a str, food: &dyn Fn(&str) -> String) -> view::ForChild<'a> {
    let assessment = &file.assessment;
    view::ForChild {
        code: &file.record.code,
        called: file.called(),
        milk_only: assessment.now.stage == Some(StageId::MilkOnly),
        urgent: assessment.class().is_some_and(Class::is_urgent),
        known_allergy: file.record.facts.known_food_allergy == Some(true),
        on_hold: assessment
            .foods
            .iter()
            .filter_map(|line| match line.state {
                FoodState::OnHold { since, .. } => Some((food(line.code.as_str()), since)),
                _ => None,
            })
            .collect(),
        query,
    }
}

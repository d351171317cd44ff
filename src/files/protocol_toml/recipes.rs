//! Reads the recipes of a protocol file. What needs the foods as well is checked in `recipe_checks`.

use std::collections::BTreeMap;
use std::ops::Range;

use domain::food::FoodCode;
use domain::food::Texture;
use domain::protocol::GivenEnergy;
use domain::protocol::Keeping;
use domain::protocol::Recipe;
use domain::protocol::RecipePart;
use domain::protocol::RecipeText;

use super::super::faults::Faults;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::header::source;

/// `[[recipe]]`, each with its place.
pub fn recipes(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<(Recipe, Range<usize>)> {
    let mut recipes: Vec<(Recipe, Range<usize>)> = Vec::new();
    for mut t in root.tables(f, "recipe") {
        let recipe = recipe(&mut t, f);
        if recipes.iter().any(|(known, _)| known.code == recipe.code) {
            t.fault(f, "code", say("stands twice; keep one"));
        }
        recipes.push((recipe, t.span().clone()));
        t.finish(f);
    }
    recipes
}

fn recipe(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Recipe {
    let code = t.need_text(f, "code", say("a short name, e.g. {example}").with("example", "\"millet_bean_fish\""));
    if !code.is_empty() {
        t.rename(format!("recipe {code}"));
    }
    if code.len() > 40 || !code.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_') {
        t.fault(f, "code", say("stands in addresses: it must be 1 to 40 small letters, digits and _"));
    }
    let (parts, measures) = parts(t, f);
    let text = RecipeText {
        name: t.need_text(f, "name", say("its name in the language of the file")),
        measures,
        steps: {
            t.need(
                f,
                "steps",
                say("how it is made, a short sentence a step: {example}").with("example", "[ \"Boil the water.\", \"Stir.\" ]"),
            );
            sentences(t, f, "steps")
        },
        warnings: sentences(t, f, "warnings"),
    };
    if t.has("steps") && text.steps.is_empty() {
        t.fault(f, "steps", say("holds no step; write how it is made"));
    }
    Recipe {
        parts,
        water_ml: whole(t, f, "water_ml", 0),
        cooked_g: whole(t, f, "cooked_g", 1),
        given_energy: given_energy(t, f),
        textures: textures(t, f),
        keeps: keeping(t, f),
        texts: texts(t, f, &text),
        text,
        source: source(t, f),
        code,
    }
}

fn whole(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str, least: i64) -> u32 {
    u32::try_from(t.need_whole(f, key, least..=100_000)).unwrap_or(1)
}

/// What goes in, and the household measure of each.
fn parts(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> (Vec<RecipePart>, Vec<String>) {
    t.need(
        f,
        "parts",
        say("what goes in: {example}").with("example", "[ { food = \"millet_flour\", g = 40, measure = \"5 level tablespoons\" } ]"),
    );
    let (mut parts, mut measures) = (Vec::new(), Vec::new());
    for mut part in t.tables(f, "parts") {
        parts.push(RecipePart {
            food: FoodCode(part.need_text(f, "food", say("the code of a food"))),
            grams: whole(&mut part, f, "g", 1),
            flavour: part.flag(f, "flavour").unwrap_or(false),
        });
        measures.push(part.need_text(
            f,
            "measure",
            say("how a family measures it, e.g. {example}").with("example", "\"5 level tablespoons\""),
        ));
        part.finish(f);
    }
    if t.has("parts") && parts.is_empty() {
        t.fault(f, "parts", say("holds nothing; name what goes in"));
    }
    (parts, measures)
}

/// An energy density from elsewhere, with its own source.
fn given_energy(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<GivenEnergy> {
    let kcal_per_g = t.number(f, "kcal_per_g");
    if t.has("kcal_per_g") {
        let source = t.need_text(f, "kcal_source", say("where the energy density comes from"));
        return kcal_per_g.map(|kcal_per_g| GivenEnergy { kcal_per_g, source });
    }
    if t.has("kcal_source") {
        t.fault(
            f,
            "kcal_source",
            say("stands without {key}; the energy that is worked out has its sources at the foods").with("key", "kcal_per_g"),
        );
        t.text(f, "kcal_source");
    }
    None
}

fn textures(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<Texture> {
    t.need(f, "textures", say("the textures it can have, e.g. {example}").with("example", "[1, 2]"));
    let Some(items) = t.list(f, "textures") else { return Vec::new() };
    let mut textures = Vec::new();
    for item in items {
        match item.as_whole().and_then(|level| Texture::new(u8::try_from(level).ok()?)) {
            Some(texture) => textures.push(texture),
            None => f.add(&item.span(), item.path(), say("must be a texture from 0 to 4")),
        }
    }
    if textures.is_empty() {
        t.fault(f, "textures", say("holds no texture; write at least one from 0 to 4"));
    }
    textures.sort_unstable();
    textures.dedup();
    textures
}

fn keeping(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Keeping {
    let none = Keeping { flour_days: None, cooked_room_hours: 0, cooked_cold_hours: 0 };
    if !t.need(f, "keeps", say("how long it keeps: {example}").with("example", "{ cooked_room_hours = 2, cooked_cold_hours = 24 }")) {
        return none;
    }
    let Some(mut keeps) = t.table(f, "keeps") else { return none };
    let read =
        |keeps: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str, most| u32::try_from(keeps.need_whole(f, key, 0..=most)).unwrap_or(0);
    let flour = keeps.has("flour_room_days") || keeps.has("flour_cold_days");
    let keeping = Keeping {
        flour_days: flour.then(|| (read(&mut keeps, f, "flour_room_days", 60), read(&mut keeps, f, "flour_cold_days", 120))),
        // Cooked food keeps at most 2 hours at room temperature (WHO, Five keys to safer food; from memory): a file may say less.
        cooked_room_hours: read(&mut keeps, f, "cooked_room_hours", 2),
        cooked_cold_hours: read(&mut keeps, f, "cooked_cold_hours", 72),
    };
    keeps.finish(f);
    keeping
}

/// `[recipe.text.fr]`: the whole of the words, so that no step and no warning is lost in another language.
fn texts(t: &mut Table<'_, '_>, f: &mut Faults<'_>, own: &RecipeText) -> BTreeMap<String, RecipeText> {
    let mut texts = BTreeMap::new();
    let Some(mut languages) = t.table(f, "text") else { return texts };
    for lang in languages.unread_keys() {
        let Some(mut one) = languages.table(f, &lang) else { continue };
        let text = RecipeText {
            name: one.need_text(f, "name", say("its name in this language")),
            measures: sentences(&mut one, f, "measures"),
            steps: sentences(&mut one, f, "steps"),
            warnings: sentences(&mut one, f, "warnings"),
        };
        for (key, here, there) in [
            ("measures", text.measures.len(), own.measures.len()),
            ("steps", text.steps.len(), own.steps.len()),
            ("warnings", text.warnings.len(), own.warnings.len()),
        ] {
            if here != there {
                let what = say("has {here}, but there are {there} in the language of the file; write each, in the same order");
                one.fault(f, key, what.with("here", here).with("there", there));
            }
        }
        one.finish(f);
        texts.insert(lang, text);
    }
    texts
}

/// Texts of a list, none of them empty; none if the list is absent.
fn sentences(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> Vec<String> {
    let mut sentences = Vec::new();
    for item in t.list(f, key).unwrap_or_default() {
        match item.as_text().map(str::trim).filter(|text| !text.is_empty()) {
            Some(text) => sentences.push(text.to_owned()),
            None => f.add(&item.span(), item.path(), say("must be text in quotes and not empty")),
        }
    }
    sentences
}

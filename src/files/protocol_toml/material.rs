//! Reads coaching lines and recipes of a protocol file.

use std::ops::Range;

use domain::food::FoodCode;
use domain::food::Texture;
use domain::protocol::CoachMark;
use domain::protocol::CoachingLine;
use domain::protocol::Keeping;
use domain::protocol::Recipe;
use domain::protocol::RecipePart;
use domain::protocol::StageId;

use super::super::toml_reader::Faults;
use super::super::toml_reader::Table;
use super::header::source;

/// `[[coach]]`.
pub fn coaching(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<CoachingLine> {
    let mut lines: Vec<CoachingLine> = Vec::new();
    for mut t in root.tables(f, "coach") {
        let key = t.need_text(f, "key", "a short name, e.g. \"small_spoon\"");
        if !key.is_empty() {
            t.rename(format!("coach {key}"));
        }
        if lines.iter().any(|line| line.key == key) {
            t.fault(f, "key", "stands twice; keep one");
        }
        t.need(f, "stages", "the stages it is for");
        t.need(f, "mark", "what it rests on: \"source\", \"memory\", \"practice\" or \"own\"");
        lines.push(CoachingLine {
            stages: t.words(f, "stages", StageId::from_code).unwrap_or_default(),
            text: t.need_text(f, "say", "the words in the language of the file"),
            texts: t.texts(f, "text"),
            danger: t.flag(f, "danger").unwrap_or(false),
            mark: t.word(f, "mark", CoachMark::from_code).unwrap_or(CoachMark::Own),
            source: source(&mut t, f),
            key,
        });
        t.finish(f);
    }
    lines
}

/// `[[recipe]]`, each with its place.
pub fn recipes(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<(Recipe, Range<usize>)> {
    let mut recipes: Vec<(Recipe, Range<usize>)> = Vec::new();
    for mut t in root.tables(f, "recipe") {
        let code = t.need_text(f, "code", "a short name, e.g. \"millet_bean_fish\"");
        if !code.is_empty() {
            t.rename(format!("recipe {code}"));
        }
        if recipes.iter().any(|(known, _)| known.code == code) {
            t.fault(f, "code", "stands twice; keep one");
        }
        t.need(f, "parts", "what goes in: [ { food = \"millet_porridge\", g = 40 } ]");
        let mut parts = Vec::new();
        for mut part in t.tables(f, "parts") {
            let food = FoodCode(part.need_text(f, "food", "the code of a food"));
            parts.push(RecipePart { food, grams: positive(&mut part, f, "g") });
            part.finish(f);
        }
        t.need(f, "textures", "the textures it can have, e.g. [1, 2]");
        let recipe = Recipe {
            name: t.need_text(f, "name", "its name in the language of the file"),
            names: t.texts(f, "text"),
            parts,
            water_ml: positive(&mut t, f, "water_ml"),
            cooked_g: positive(&mut t, f, "cooked_g"),
            textures: textures(&mut t, f),
            keeps: keeping(&mut t, f),
            steps: t.need_text(f, "steps", "how it is made"),
            steps_by_language: t.texts(f, "steps_text"),
            source: source(&mut t, f),
            code,
        };
        recipes.push((recipe, t.span().clone()));
        t.finish(f);
    }
    recipes
}

fn positive(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> u32 {
    u32::try_from(t.need_whole(f, key, 1..=100_000)).unwrap_or(1)
}

fn textures(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<Texture> {
    let Some(items) = t.list(f, "textures") else { return Vec::new() };
    let mut textures = Vec::new();
    for item in items {
        match item.as_whole().and_then(|level| Texture::new(u8::try_from(level).ok()?)) {
            Some(texture) => textures.push(texture),
            None => f.add(&item.span(), item.path(), "must be a texture from 0 to 4"),
        }
    }
    textures
}

fn keeping(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Keeping {
    let none = Keeping { flour_room_days: 0, flour_cold_days: 0, cooked_room_hours: 0, cooked_cold_hours: 0 };
    if !t.need(f, "keeps", "how long it keeps, as in the default protocol") {
        return none;
    }
    let Some(mut keeps) = t.table(f, "keeps") else { return none };
    let read =
        |keeps: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str, most| u32::try_from(keeps.need_whole(f, key, 0..=most)).unwrap_or(0);
    let keeping = Keeping {
        flour_room_days: read(&mut keeps, f, "flour_room_days", 60),
        flour_cold_days: read(&mut keeps, f, "flour_cold_days", 120),
        // Cooked food keeps at most 2 hours at room temperature (WHO, Five keys to safer food; from memory): a file may say less.
        cooked_room_hours: read(&mut keeps, f, "cooked_room_hours", 2),
        cooked_cold_hours: read(&mut keeps, f, "cooked_cold_hours", 72),
    };
    keeps.finish(f);
    keeping
}

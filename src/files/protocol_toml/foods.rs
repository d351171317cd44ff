//! Reads foods, of a protocol file and of case files.

use domain::food::Allergen;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::protocol::Food;
use domain::protocol::Foods;
use domain::protocol::HoldPolicy;
use domain::protocol::Iron;

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Table;

/// `[[food]]`: each code once, each with a name and a source.
pub fn foods(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Foods {
    root.need(f, "food", say("the foods as [[food]] tables, as in the default protocol"));
    let mut foods: Vec<Food> = Vec::new();
    for mut table in root.tables(f, "food") {
        let read = food(&mut table, f);
        let name = table.need_text(f, "name", say("the food's name in the language of the file"));
        let source = table.need_text(f, "source", say("where its figures come from, or \"common practice\""));
        let Some(mut food) = read else {
            table.finish(f);
            continue;
        };
        (food.name, food.source) = (name, source);
        if food.choking && food.safe_form.trim().is_empty() {
            table.fault(f, "safe_form", say("must say how a food that can choke is made safe"));
        }
        if foods.iter().any(|known| known.code == food.code) {
            table.fault(f, "code", say("stands twice; keep one"));
        }
        table.finish(f);
        foods.push(food);
    }
    forms(&foods, root, f);
    if root.has("food") && !foods.iter().any(|food| food.code.as_str() == FoodCode::HONEY) {
        let what =
            say("the food {food} is missing; the rule on honey needs it, so keep it even where nobody eats it").with("food", "\"honey\"");
        f.add(&root.span_of("food"), "food", what);
    }
    if !foods.iter().any(|food| food.code.as_str() == FoodCode::NOT_LISTED) {
        foods.push(not_listed());
    }
    Foods::new(foods)
}

/// What stands for a food that the file does not have, unless it has a word of its own for it.
fn not_listed() -> Food {
    let mut food = Food::plain(FoodCode(FoodCode::NOT_LISTED.to_owned()));
    food.name = "A food not on the list".to_owned();
    food.names = [("en", "A food not on the list"), ("fr", "Un aliment hors de la liste")]
        .map(|(lang, name)| (lang.to_owned(), name.to_owned()))
        .into();
    food.source = "our own choice: what the list does not know is recorded too".to_owned();
    food
}

/// What a food is an ingredient of is a food itself, and no ingredient in its turn.
fn forms(foods: &[Food], root: &Table<'_, '_>, f: &mut Faults<'_>) {
    for food in foods {
        let Some(of) = &food.form_of else { continue };
        let key = format!("food {}.form_of", food.code.as_str());
        match foods.iter().find(|known| known.code == *of) {
            None => f.add(&root.span_of("food"), &key, unknown_food(of.as_str())),
            Some(base) if base.form_of.is_some() => {
                f.add(
                    &root.span_of("food"),
                    &key,
                    say("{food} is an ingredient itself; name the food that families know").with("food", format!("{:?}", of.as_str())),
                );
            }
            Some(_) => {}
        }
    }
}

/// A food named that the file does not have.
pub fn unknown_food(code: &str) -> Saying {
    say("the food {food} is not in this file; add a {table} with that code").with("food", format!("{code:?}")).with("table", "[[food]]")
}

/// The keys of a food that all have a default but the code.
pub fn food(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<Food> {
    t.need(f, "code", say("a code of small letters, digits and _"));
    let named = t.text(f, "code");
    // A food without a code is read on, so that its other faults are told too.
    let code = named.clone().unwrap_or_else(|| "unnamed".to_owned());
    if named.is_some() {
        t.rename(format!("food {code}"));
    }
    if code.is_empty() || code.len() > 40 || !code.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_') {
        t.fault(f, "code", say("must be 1 to 40 small letters, digits and _"));
    }
    let mut food = Food::plain(FoodCode(code));
    food.group = word_or_none(t, f, "group", FoodGroup::from_code);
    food.iron = t.word(f, "iron", Iron::from_code).unwrap_or(Iron::None);
    food.allergen = word_or_none(t, f, "allergen", Allergen::from_code);
    let whole = |t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str, most| t.whole(f, key, 0..=most).and_then(|n| u32::try_from(n).ok());
    food.earliest_days = whole(t, f, "earliest_days", 1_830).unwrap_or(food.earliest_days);
    food.choking = t.flag(f, "choking").unwrap_or(false);
    food.safe_form = t.text(f, "safe_form").unwrap_or_default();
    food.local_name = t.text(f, "local_name").unwrap_or_default();
    food.local_wait_months = whole(t, f, "local_wait_months", 24).unwrap_or(0);
    food.hold_policy = t.word(f, "hold_policy", HoldPolicy::from_code).unwrap_or(HoldPolicy::Advise);
    food.unhealthy = t.flag(f, "unhealthy").unwrap_or(false);
    food.sweet_drink = t.flag(f, "sweet_drink").unwrap_or(false);
    food.drink = t.flag(f, "drink").unwrap_or(false);
    // Fat holds 9 kcal per g (Atwater): nothing holds more.
    food.kcal_per_100g = whole(t, f, "kcal_per_100g", 900);
    food.kcal_source = t.text(f, "kcal_source").unwrap_or_default();
    food.form_of = t.text(f, "form_of").map(FoodCode);
    // Families are asked about the food itself, not about what is made of it for a recipe.
    food.active = t.flag(f, "active").unwrap_or(food.form_of.is_none());
    if let Some(name) = t.text(f, "name") {
        food.name = name;
    }
    food.source = t.text(f, "source").unwrap_or_default();
    if let Some(mut texts) = t.table(f, "text") {
        for lang in texts.unread_keys() {
            let Some(mut one) = texts.table(f, &lang) else { continue };
            if let Some(name) = one.text(f, "name") {
                food.names.insert(lang.clone(), name);
            }
            if let Some(form) = one.text(f, "safe_form") {
                food.safe_forms.insert(lang.clone(), form);
            }
            one.finish(f);
        }
    }
    named.map(|_| food)
}

/// A word of a list, where `"none"` says none.
fn word_or_none<T>(
    t: &mut Table<'_, '_>,
    f: &mut Faults<'_>,
    key: &str,
    read: impl FnOnce(&str) -> Result<T, domain::UnknownCode>,
) -> Option<T> {
    t.word(f, key, |text| if text == "none" { Ok(None) } else { read(text).map(Some) }).flatten()
}

//! Recipes of a protocol file: those shipped read and can be true; what is broken is named, all at once.

use super::*;

const RECIPE: &str = r#"
[[food]]
code = "ghee"
name = "Ghee"
kcal_per_100g = 876
kcal_source = "from memory"
source = "from memory"

[[food]]
code = "rice_flour"
name = "Rice flour"
form_of = "rice"
source = "from memory"

[[recipe]]
code = "bean_mash"
name = "Bean mash of one's own"
parts = [{ food = "ghee", g = 10, measure = "2 teaspoons" }, { food = "bean_flour", g = 30, measure = "4 tablespoons" }]
water_ml = 180
cooked_g = 160
textures = [2, 1]
keeps = { flour_room_days = 6, flour_cold_days = 12, cooked_room_hours = 1, cooked_cold_hours = 20 }
steps = ["Boil.", "Mash well, and stir."]
source = "our own choice"
[recipe.text.fr]
name = "Purée"
measures = ["2 cuillères", "4 cuillères"]
steps = ["Bouillir.", "Écraser."]
"#;

fn said(recipe: &str) -> Vec<String> {
    parse_protocol(&format!("{DEFAULT_TEXT}{recipe}"), "mine.toml").err().unwrap_or_default().iter().map(ToString::to_string).collect()
}

#[test]
fn a_recipe_reads_as_written() {
    assert_eq!(said(RECIPE), Vec::<String>::new());
    let protocol = parse_protocol(&format!("{DEFAULT_TEXT}{RECIPE}"), "mine.toml").expect("a protocol");
    let recipe = protocol.recipe("bean_mash").expect("a recipe");
    assert_eq!(recipe.parts.iter().map(|part| (part.food.as_str(), part.grams)).collect::<Vec<_>>(), [("ghee", 10), ("bean_flour", 30)]);
    assert_eq!(recipe.textures.iter().map(|texture| texture.level()).collect::<Vec<_>>(), [1, 2], "thinnest first");
    assert_eq!((recipe.keeps.flour_days, recipe.keeps.cooked_room_hours, recipe.keeps.cooked_cold_hours), (Some((6, 12)), 1, 20));
    assert_eq!(
        (recipe.text("fr").name.as_str(), recipe.text("fr").steps.len(), recipe.text("sw").name.as_str()),
        ("Purée", 2, "Bean mash of one's own")
    );
    // 10 g x 8.76 + 30 g x 3.33 = 187.5 kcal in 160 g.
    assert!((recipe.kcal_per_g(&protocol.foods).expect("known") - 187.5 / 160.0).abs() < 1e-9);
}

#[test]
fn an_ingredient_is_not_offered_for_choice() {
    let foods = &default_protocol().foods;
    let flour = foods.get(&domain::food::FoodCode("bean_flour".to_owned())).expect("a food");
    assert_eq!((flour.active, flour.form_of.as_ref().map(|of| of.as_str())), (false, Some("beans")));
}

#[test]
fn the_shipped_recipes_are_whole_and_can_be_true() {
    let protocol = default_protocol();
    let least = protocol.energy.least_density;
    let too_thin: Vec<&str> = protocol
        .recipes
        .iter()
        .filter(|recipe| recipe.kcal_per_g(&protocol.foods).expect("worked out") < least)
        .map(|recipe| recipe.code.as_str())
        .collect();
    assert_eq!((protocol.recipes.len(), too_thin), (6, vec!["mango_mash"]), "fruit alone is no meal");
    for recipe in &protocol.recipes {
        assert_eq!(recipe.texts.keys().collect::<Vec<_>>(), ["fr"], "{}", recipe.code);
        assert!(recipe.keeps.cooked_room_hours <= 2 && !recipe.source.is_empty());
        assert!(recipe.foods(&protocol.foods).all(|food| food.form_of.is_some() || food.code.as_str() == "oil" || food.active));
        for text in [&recipe.text, recipe.text("fr")] {
            let longest = text.steps.iter().map(|step| step.split_whitespace().count()).max().unwrap_or(0);
            assert!(longest <= 18, "{}: a step of {longest} words is too long to be read aloud", recipe.code);
        }
    }
    // By hand: 40 g x 3.78 + 40 g x 3.33 + 10 g x 3.20 + 10 g x 8.84 = 404.8 kcal in 420 g.
    let first = protocol.recipe("millet_bean_fish").expect("a recipe");
    assert!((first.kcal_per_g(&protocol.foods).expect("known") - 404.8 / 420.0).abs() < 1e-9);
}

#[test]
fn each_fault_of_a_recipe_is_named() {
    for (from, to, key, what) in [
        ("cooked_room_hours = 1", "cooked_room_hours = 3", "recipe bean_mash.keeps.cooked_room_hours", "from 0 to 2"),
        ("g = 10", "g = 0", "recipe bean_mash.parts[1].g", "from 1 to"),
        ("g = 10", "g = -5", "recipe bean_mash.parts[1].g", "from 1 to"),
        ("water_ml = 180", "water_ml = -1", "recipe bean_mash.water_ml", "from 0 to"),
        ("measure = \"2 teaspoons\"", "measure = \" \"", "recipe bean_mash.parts[1].measure", "is empty"),
        ("food = \"ghee\"", "food = \"butter\"", "recipe bean_mash.parts", "\"butter\" is not in this file"),
        ("food = \"ghee\"", "food = \"rice\"", "recipe bean_mash.parts", "needs kcal_per_100g"),
        ("kcal_source = \"from memory\"", "kcal_source = \"\"", "recipe bean_mash.parts", "needs kcal_source"),
        ("source = \"our own choice\"", "source = \"\"", "recipe bean_mash.source", "is empty"),
        ("textures = [2, 1]", "textures = [1, 5]", "recipe bean_mash.textures[2]", "from 0 to 4"),
        ("textures = [2, 1]", "textures = []", "recipe bean_mash.textures", "at least one"),
        ("steps = [\"Boil.\", \"Mash well, and stir.\"]", "steps = []", "recipe bean_mash.steps", "holds no step"),
        ("\"Mash well, and stir.\"", "\"\"", "recipe bean_mash.steps[2]", "not empty"),
        ("steps = [\"Bouillir.\", \"Écraser.\"]", "steps = [\"Bouillir.\"]", "recipe bean_mash.text.fr.steps", "has 1, but there are 2"),
        ("measures = [\"2 cuillères\", \"4 cuillères\"]", "measures = []", "recipe bean_mash.text.fr.measures", "has 0, but there are 2"),
        ("cooked_g = 160", "cooked_g = 230", "recipe bean_mash.cooked_g", "230 g cooked cannot come of 220 g"),
        ("cooked_g = 160", "cooked_g = 20", "recipe bean_mash.cooked_g", "makes 9.38 kcal/g"),
        ("cooked_g = 160", "cooked_g = 160\nkcal_per_g = 0.1\nkcal_source = \"x\"", "recipe bean_mash.kcal_per_g", "makes 0.10 kcal/g"),
        ("cooked_g = 160", "cooked_g = 160\nkcal_per_g = 2.0\nkcal_source = \"x\"", "recipe bean_mash.kcal_per_g", "parts make 1.17"),
        ("cooked_g = 160", "cooked_g = 160\nkcal_per_g = 1.2", "recipe bean_mash.kcal_source", "is missing"),
        ("cooked_g = 160", "cooked_g = 160\nkcal_source = \"x\"", "recipe bean_mash.kcal_source", "without kcal_per_g"),
        ("code = \"bean_mash\"", "code = \"mango_mash\"", "recipe mango_mash.code", "stands twice"),
        ("code = \"bean_mash\"", "code = \"Bean mash\"", "recipe Bean mash.code", "small letters"),
        ("form_of = \"rice\"", "form_of = \"ryce\"", "food rice_flour.form_of", "\"ryce\" is not in this file"),
        ("form_of = \"rice\"", "form_of = \"bean_flour\"", "food rice_flour.form_of", "an ingredient itself"),
        ("water_ml = 180", "water_ml = 180\nsalt = 1", "recipe bean_mash.salt", "is not a known key"),
    ] {
        let text = RECIPE.replacen(from, to, 1);
        assert_ne!(text, RECIPE, "{from:?} is not in the recipe");
        let said = said(&text);
        assert!(said.iter().any(|said| said.contains(&format!(": {key}: ")) && said.contains(what)), "{key}, {what}: {said:#?}");
    }
}

#[test]
fn all_faults_of_a_recipe_are_told_at_once() {
    let text = RECIPE.replacen("food = \"ghee\", g = 10", "food = \"butter\", g = -1", 1).replacen(
        "cooked_room_hours = 1",
        "cooked_room_hours = 12",
        1,
    );
    let said = said(&text.replacen("source = \"our own choice\"", "source = \"\"", 1));
    assert_eq!(said.len(), 4, "{said:#?}");
}

#[test]
fn a_given_density_near_the_one_worked_out_is_taken() {
    let text = RECIPE.replacen("cooked_g = 160", "cooked_g = 160\nkcal_per_g = 1.1\nkcal_source = \"weighed and burnt\"", 1);
    let protocol = parse_protocol(&format!("{DEFAULT_TEXT}{text}"), "mine.toml").expect("a protocol");
    assert_eq!(protocol.recipe("bean_mash").and_then(|recipe| recipe.kcal_per_g(&protocol.foods)), Some(1.1));
}

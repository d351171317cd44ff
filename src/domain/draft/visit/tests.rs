//! The visit form: what people type and what it becomes.

use super::*;
use crate::food::FoodCode;
use crate::food::ReactionSign;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn read(pairs: &[(&str, &str)]) -> VisitRead {
    let pairs: Vec<(String, String)> = pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
    let frame = VisitFrame {
        id: VisitId(1),
        born: d("2026-03-14"),
        today: d("2026-11-25"),
        foods: &|code| code != "stone",
        eaten: &|code| (code == "porridge_with_fish").then(porridge_with_fish),
        like: &|code| (code == "stone").then(|| "Stone fruit".to_owned()),
    };
    read_visit(&pairs, &frame)
}

#[test]
fn an_empty_form_is_a_visit_at_which_nothing_was_asked() {
    let read = read(&[]);
    assert!(read.faults.is_empty());
    assert_eq!(read.visit, Visit::empty(VisitId(1), d("2026-11-25"), Contact::Home));
}

#[test]
fn measurements_are_understood_in_the_units_people_type() {
    let r = read(&[("weight", "7,35"), ("length", "655"), ("arm", "13.4"), ("feet", "no")]);
    assert!(r.faults.is_empty(), "{:?}", r.faults);
    assert_eq!(r.visit.weight.map(Weight::grams), Some(7350));
    assert_eq!(r.visit.length.map(Length::mm), Some(655));
    assert_eq!(r.visit.muac.map(Muac::mm), Some(134));
    assert_eq!(r.visit.oedema, Some(false));
    assert_eq!(read(&[("length", "65,5"), ("arm", "134")]).visit, {
        let mut v = read(&[]).visit;
        v.length = Length::from_mm(655).ok();
        v.muac = Muac::from_mm(134).ok();
        v
    });
}

/// Millet porridge with iron added, and fish.
fn porridge_with_fish() -> Eaten {
    let foods = ["millet_porridge", "small_dried_fish"].map(|code| FoodCode(code.to_owned()));
    Eaten { groups: [FoodGroup::GrainsRoots, FoodGroup::Flesh].into(), foods: foods.into(), added_iron: true }
}

#[test]
fn a_recipe_ticks_its_groups_its_foods_and_its_iron() {
    let r = read(&[
        ("recipes", "porridge_with_fish"),
        ("groups", "vit_a"),
        ("food_small_dried_fish", "refused"),
        ("offers_small_dried_fish", "3"),
    ]);
    assert!(r.faults.is_empty() && !r.only_recipes, "{:?}", r.faults);
    let v = r.visit;
    assert_eq!(v.recipes, BTreeSet::from(["porridge_with_fish".to_owned()]));
    assert_eq!(v.groups, Some(BTreeSet::from([FoodGroup::GrainsRoots, FoodGroup::Flesh, FoodGroup::VitA])));
    assert_eq!((v.iron_source, v.solids_yesterday), (Some(true), Some(true)));
    let told: Vec<_> = v.foods.iter().map(|food| (food.code.as_str(), food.offers, food.response)).collect();
    assert_eq!(told, [("small_dried_fish", 3, Some(Response::Refused)), ("millet_porridge", 1, None)], "what was said of a food stays");
}

#[test]
fn a_recipe_changes_no_answer_and_counts_beside_none_of_these() {
    let r = read(&[
        ("recipes", "porridge_with_fish"),
        ("groups_none", "yes"),
        ("solids_yesterday", "no"),
        ("iron_source", "no"),
        ("lifted_small_dried_fish", "yes"),
    ]);
    assert_eq!((r.visit.iron_source, r.visit.solids_yesterday), (Some(false), Some(false)), "told apart by the rule on conflicts");
    assert_eq!(r.visit.groups, Some(BTreeSet::from([FoodGroup::GrainsRoots, FoodGroup::Flesh])));
    let fish = r.visit.foods.iter().find(|food| food.code.as_str() == "small_dried_fish").expect("told");
    assert_eq!((fish.offers, fish.hold_lifted), (1, true));
    // The list of ticks, asked as a whole without a tick at iron, is no answer about the recipe.
    assert!(!r.only_recipes, "none of these is an answer");
    let r = read(&[("recipes", "porridge_with_fish"), ("also_shown", "iron_source bottle"), ("also_all", "yes")]);
    assert_eq!((r.visit.iron_source, r.visit.bottle, r.only_recipes), (Some(true), Some(false), true));
}

#[test]
fn an_unknown_recipe_is_a_fault_and_the_known_ones_count() {
    let r = read(&[("recipes", "stone_soup"), ("recipes", "porridge_with_fish")]);
    assert_eq!(r.faults.of("recipes"), Some(&Fault::UnknownChoice));
    assert_eq!(r.visit.foods.len(), 2);
    assert!(read(&[("recipes", "")]).visit.solids_yesterday.is_none());
}

#[test]
fn all_faults_come_at_once_and_the_rest_is_kept() {
    let r = read(&[
        ("weight", "735"),
        ("length", "lang"),
        ("arm", "5"),
        ("meals", "31"),
        ("contact", "dream"),
        ("breastfed", "yes"),
        ("danger", "fits_now"),
        ("food_stone", "accepted"),
    ]);
    let fields: Vec<&str> = r.faults.iter().map(|(f, _)| f).collect();
    assert_eq!(fields, ["contact", "weight", "length", "arm", "meals", "food_stone"]);
    assert_eq!(r.faults.of("weight"), Some(&Fault::Outside { least: "0.5".into(), most: "25".into(), unit: "kg" }));
    assert_eq!(r.visit.breastfed, Some(true));
    assert!(r.has_danger(), "danger is not lost to a slip elsewhere");
}

#[test]
fn the_most_that_is_taken_of_a_food_is_two_days_to_a_sign_and_200_offers() {
    let fault = |field: &str, value: &str| {
        let r = read(&[("food_egg", "reaction"), (field, value)]);
        r.faults.iter().next().map(|(field, _)| field.to_owned())
    };
    assert_eq!((fault("minutes_egg", "2880"), fault("offers_egg", "200")), (None, None));
    assert_eq!(fault("minutes_egg", "2881"), Some("minutes_egg".to_owned()));
    assert_eq!(fault("offers_egg", "201"), Some("offers_egg".to_owned()));
}

#[test]
fn honey_ticked_among_the_quick_answers_is_a_food_that_was_given_once() {
    let honey = |pairs: &[(&str, &str)]| {
        let foods = read(pairs).visit.foods;
        foods.into_iter().filter(|food| food.code.as_str() == FoodCode::HONEY).map(|food| food.offers).collect::<Vec<_>>()
    };
    assert_eq!(honey(&[("also", "honey"), ("also_shown", "bottle honey")]), [1]);
    assert_eq!(honey(&[("also", "bottle"), ("also_shown", "bottle honey")]), [0; 0]);
    assert_eq!(honey(&[("also", "honey"), ("food_honey", "accepted"), ("offers_honey", "3")]), [3], "named twice is one food");
}

#[test]
fn drinks_and_foods_of_low_value_are_ticked_one_by_one_and_none_only_where_all_were_asked() {
    use crate::visit::LowValue as L;
    let low = |ticked: &[&str], shown: &str, all: &str| {
        let mut pairs: Vec<(&str, &str)> = ticked.iter().map(|line| ("also", *line)).collect();
        pairs.extend([("also_shown", shown), ("also_all", all)]);
        read(&pairs).visit.low_value
    };
    let shown = "tea_coffee salt sugar bottle";
    assert_eq!(low(&["tea_coffee"], shown, ""), Some([L::TeaCoffee].into()));
    assert_eq!(low(&["salt"], shown, ""), Some([L::Salt].into()));
    assert_eq!(low(&["sugar", "bottle"], shown, "yes"), Some([L::Sugar].into()));
    assert_eq!(low(&["bottle"], shown, "yes"), Some([].into()));
    assert_eq!(low(&["bottle"], shown, ""), None, "not said that all were asked");
    assert_eq!(low(&[], "tea_coffee salt", "yes"), None, "sugar was not on the page");
}

#[test]
fn not_asked_is_not_no() {
    let r = read(&[("danger_none", "yes"), ("groups", "dairy"), ("groups_none", "yes")]);
    assert_eq!(r.visit.danger_signs, Some(BTreeSet::new()));
    assert_eq!(r.visit.groups, Some(BTreeSet::from([FoodGroup::Dairy])), "a tick counts even beside none-of-these");
    assert_eq!(r.visit.low_value, None);
    assert_eq!(r.visit.plans, None);
}

#[test]
fn days_must_be_possible() {
    let day = |y: &str, m: &str, dd: &str| read(&[("day", "other"), ("on_day", dd), ("on_month", m), ("on_year", y)]);
    assert_eq!(day("2026", "11", "3").visit.on, d("2026-11-03"));
    assert_eq!(day("26", "11", "٣").visit.on, d("2026-11-03"));
    assert_eq!(day("2026", "2", "30").faults.of("on_day"), Some(&Fault::NotADate));
    assert_eq!(day("2026", "11", "26").faults.of("on_day"), Some(&Fault::InFuture));
    assert_eq!(day("2026", "3", "13").faults.of("on_day"), Some(&Fault::BeforeBirth));
    assert_eq!(day("", "", "").faults.of("on_day"), Some(&Fault::Missing));
    let started = read(&[("day", "yesterday"), ("started_day", "25"), ("started_month", "11"), ("started_year", "2026")]);
    assert_eq!(started.faults.of("started_day"), Some(&Fault::AfterVisit));
}

#[test]
fn foods_and_reactions() {
    let r = read(&[
        ("food_beans", "accepted"),
        ("food_mango", ""),
        ("food_egg", "reaction"),
        ("rsign_egg", "wheeze"),
        ("minutes_egg", "15"),
        ("lifted_fish", "yes"),
        ("outcome_weight.low", "seen"),
    ]);
    assert!(r.faults.is_empty(), "{:?}", r.faults);
    let by: Vec<(&str, u16, bool)> = r.visit.foods.iter().map(|f| (f.code.as_str(), f.offers, f.hold_lifted)).collect();
    assert_eq!(by, [("beans", 1, false), ("egg", 1, false), ("fish", 0, true)]);
    assert_eq!(r.visit.foods[1].signs, Some(BTreeSet::from([ReactionSign::Wheeze])));
    assert_eq!(r.visit.outcomes, [ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen }]);
}

#[test]
fn another_food_is_chosen_in_a_box() {
    let r = read(&[
        ("other1_food", "mango"),
        ("other1_taken", "refused"),
        ("other1_offers", "3"),
        ("other2_food", "egg"),
        ("other2_taken", "reaction"),
        ("other2_rsign", "hives_widespread"),
        ("other2_minutes", "30"),
    ]);
    assert!(r.faults.is_empty(), "{:?}", r.faults);
    let by: Vec<_> = r.visit.foods.iter().map(|f| (f.code.as_str(), f.offers, f.response)).collect();
    assert_eq!(by, [("mango", 3, Some(Response::Refused)), ("egg", 1, Some(Response::Reaction))]);
    assert_eq!(r.visit.foods[1].signs, Some(BTreeSet::from([ReactionSign::HivesWidespread])));
    assert_eq!(r.visit.foods[1].minutes_after, Some(30));
}

#[test]
fn a_reaction_whose_food_was_forgotten_is_still_danger() {
    let r = read(&[("other1_taken", "reaction"), ("other1_rsign", "wheeze")]);
    assert_eq!(r.faults.of("other1_food"), Some(&Fault::Missing));
    assert!(r.has_danger());
    let only = r.visit.foods.as_slice();
    assert_eq!(only.len(), 1);
    assert_eq!((only[0].code.as_str(), only[0].response), (FoodCode::NOT_LISTED, Some(Response::Reaction)));
    assert_eq!(only[0].signs, Some(BTreeSet::from([ReactionSign::Wheeze])));
}

#[test]
fn a_reaction_to_a_food_that_there_is_not_is_danger_too_and_several_are_one() {
    for (taken, signs) in [("food_stone", "rsign_stone"), ("other1_taken", "other1_rsign")] {
        let r = read(&[
            ("other1_food", "stone"),
            (taken, "reaction"),
            (signs, "collapse"),
            ("other2_taken", "reaction"),
            ("other2_rsign", "vomiting_repeated"),
        ]);
        assert!(r.has_danger() && !r.faults.is_empty(), "{taken}");
        let codes: Vec<&str> = r.visit.foods.iter().map(|f| f.code.as_str()).collect();
        assert_eq!(codes, [FoodCode::NOT_LISTED], "{taken}");
        assert!(r.visit.foods[0].signs.as_ref().is_some_and(|signs| signs.len() == 2 && signs.contains(&ReactionSign::Collapse)));
    }
    // Without a reaction there is only the fault: nothing is made up.
    assert!(read(&[("other1_food", "stone"), ("other1_taken", "accepted")]).visit.foods.is_empty());
}

#[test]
fn a_food_named_twice_is_one_food_and_the_worse_response_counts() {
    let r = read(&[("food_egg", "accepted"), ("other1_food", "egg"), ("other1_taken", "reaction"), ("other2_food", "stone")]);
    assert_eq!(r.visit.foods.len(), 1);
    assert_eq!((r.visit.foods[0].offers, r.visit.foods[0].response), (2, Some(Response::Reaction)));
    assert_eq!(r.faults.of("other2_food"), Some(&Fault::UnknownFood { typed: "stone".into(), like: Some("Stone fruit".into()) }));
}

#[test]
fn a_tick_is_yes_and_what_is_not_ticked_is_no_only_if_all_was_asked() {
    let shown = ("also_shown", "iron_source sweet_drink tea_coffee salt sugar honey");
    let some = read(&[shown, ("also", "iron_source"), ("also", "salt"), ("also", "honey")]).visit;
    assert_eq!((some.iron_source, some.sweet_drink, some.bottle), (Some(true), None, None));
    assert_eq!(some.low_value, Some(BTreeSet::from([LowValue::Salt])));
    assert_eq!(
        some.foods.iter().map(|f| (f.code.clone(), f.offers, f.response)).collect::<Vec<_>>(),
        [(FoodCode("honey".into()), 1, None)]
    );
    let all = read(&[shown, ("also", "iron_source"), ("also_all", "yes")]).visit;
    assert_eq!((all.iron_source, all.sweet_drink, all.low_value), (Some(true), Some(false), Some(BTreeSet::new())));
    assert_eq!(all.bottle, None, "a line that was not on the page was not asked");
    let own = read(&[shown, ("also_all", "yes"), ("sweet_drink", "yes")]).visit;
    assert_eq!(own.sweet_drink, Some(true), "a question of its own is not overruled");
}

#[test]
fn nothing_besides_breast_milk_answers_what_it_covers() {
    let v = read(&[("breast_only", "yes")]).visit;
    assert_eq!((v.breast_only, v.solids_yesterday, v.other_drink), (Some(true), Some(false), Some(false)));
    assert_eq!((v.formula_times, v.animal_milk_times, v.bottle, v.meals), (Some(0), Some(0), None, None));
    let contrary = read(&[("breast_only", "yes"), ("formula_times", "2")]).visit;
    assert_eq!(contrary.formula_times, Some(2), "what was answered itself stays");
    assert_eq!(read(&[("other_milk", "no"), ("animal_milk_times", "1")]).visit.animal_milk_times, Some(1));
}

#[test]
fn no_step_further_means_that_the_usual_is_the_best() {
    let v = read(&[("texture_usual", "1"), ("texture_best", "same")]).visit;
    assert_eq!(v.texture_best, Texture::new(1));
    assert_eq!(read(&[("texture_best", "same")]).visit.texture_best, None);
    assert_eq!(read(&[("texture_usual", "1"), ("texture_best", "3")]).visit.texture_best, Texture::new(3));
}

#[test]
fn a_measurement_is_confirmed_by_a_tick_beside_it() {
    let v = read(&[("weight", "12.4"), ("confirmed_weight", "yes")]).visit;
    assert_eq!(v.confirmed, BTreeSet::from([Measurement::Weight]));
}

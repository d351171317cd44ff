//! Thickness and recipes over HTTP: what a child's page and the page after a visit say, and what suits one child.

use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::Response;
use domain::food::Texture;
use domain::units::Weight;
use domain::visit::FoodOffer;
use domain::visit::Visit;
use spoonround::store::children::ChildRecord;
use spoonround::store::testing::a_visit;
use spoonround::store::visits;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::harness::Browser;
use crate::site::Site;

/// A child of Mireni's, born on 1 March 2026, with a visit on the day.
async fn visited(site: &Site, n: u128, change: impl FnOnce(&mut ChildRecord), visit: impl FnOnce(&mut Visit)) -> i64 {
    let mut child = child(n, "Neruka", site.ulopi, site.mireni);
    change(&mut child);
    register(site, &child, |plain| plain).await;
    let mut record = a_visit(n + 100, &child, d("2026-11-24"));
    (record.visit.breastfed, record.visit.solids_yesterday) = (Some(true), Some(true));
    record.visit.solids_started_on = Some(d("2026-09-01"));
    visit(&mut record.visit);
    visits::insert(site.db.db.direct(), &record).await.expect("recorded")
}

fn offer(food: &str, response: Response) -> FoodOffer {
    FoodOffer {
        code: FoodCode(food.to_owned()),
        offers: 3,
        response: Some(response),
        unsafe_form: None,
        signs: None,
        minutes_after: None,
        hold_lifted: false,
    }
}

async fn on_page(site: &Site, path: &str) -> Browser {
    let mut browser = site.signed_in("mireni").await;
    browser.open(path).await.is(200);
    browser
}

#[actix_web::test]
async fn watery_food_is_reckoned_on_the_child_s_page_and_after_the_visit() {
    let site = Site::new().await;
    let seq = visited(
        &site,
        1,
        |_| {},
        |visit| {
            visit.weight = Weight::from_grams(7_000).ok();
            visit.texture_usual = Some(Texture::ALL[0]);
            visit.meals = Some(2);
        },
    )
    .await;
    // 8 months, breastfed: 200 kcal. A meal of 7.0 x 30 = 210 g: 200 / 63 = 3.17, up to 4; 200 / 210 = 0.95, raised to 2.
    let sentence = "Food as thin as now would need 4 meals a day; mashed, soft lumps: at least 2 meals.";
    let page = on_page(&site, &format!("/children/{}", code(1))).await;
    page.says(sentence).says("A full meal: 7.00 kg × 30 g = 210 g. Weighed on 24 November.");
    page.says("watery: 210 g × 0.30 kcal = 63 kcal a meal. 200 ÷ 63 = 3.17, rounded up: 4.");
    page.says(
        "mashed or thicker: 210 g × 1.00 kcal = 210 kcal a meal. 200 ÷ 210 = 0.95, rounded up: 1. Raised to 2, the least of the stage.",
    );
    page.says("PAHO/WHO 2003").says("WHO 2009").says("An estimate from averages, and no limit");
    // What comes next: 300 kcal at 9 months, at today's weight: 300 / 63 = 4.76, up to 5.
    page.says("What comes next, at today’s weight (Chopped, finger food): watery 5 meals a day, smooth and thick 3, mashed or thicker 3.");
    on_page(&site, &format!("/children/{}/visits/{seq}/now", code(1))).await.says(sentence);
}

#[actix_web::test]
async fn the_estimate_opens_no_follow_up() {
    let site = Site::new().await;
    // 14 months, 7.5 kg: 550 / (225 x 0.8) = 3.06, up to 4 meals of smooth food; 3 eaten are the least of the stage.
    let seq = visited(
        &site,
        1,
        |child| child.facts.born = d("2025-09-20"),
        |visit| {
            visit.weight = Weight::from_grams(7_500).ok();
            (visit.texture_usual, visit.texture_best) = (Some(Texture::ALL[1]), Some(Texture::ALL[3]));
            visit.meals = Some(3);
        },
    )
    .await;
    let page = on_page(&site, &format!("/children/{}", code(1))).await;
    page.says("Food as now (smooth and thick) would need 4 meals a day; chopped, finger food: at least 3 meals.");
    page.does_not_say("Few meals yesterday");
    on_page(&site, &format!("/children/{}/visits/{seq}/now", code(1))).await.does_not_say("Few meals yesterday");
}

#[actix_web::test]
async fn what_cannot_be_estimated_says_why() {
    let site = Site::new().await;
    visited(&site, 1, |_| {}, |_| {}).await;
    visited(&site, 2, |_| {}, |visit| (visit.weight, visit.oedema) = (Weight::from_grams(7_000).ok(), Some(true))).await;
    visited(&site, 3, |_| {}, |visit| (visit.weight, visit.breastfed) = (Weight::from_grams(7_000).ok(), None)).await;
    for (n, why) in [(1, "no weight yet"), (2, "both feet are swollen"), (3, "it is not known whether the child is breastfed")] {
        let page = on_page(&site, &format!("/children/{}", code(n))).await;
        page.says(why).does_not_say("at least 2 meals a day");
    }
}

#[actix_web::test]
async fn a_food_on_hold_is_said_first_and_its_recipes_are_not_to_be_given() {
    let site = Site::new().await;
    visited(
        &site,
        1,
        |_| {},
        |visit| {
            visit.weight = Weight::from_grams(7_000).ok();
            visit.foods =
                vec![offer("millet_porridge", Response::Accepted), offer("beans", Response::Accepted), offer("fish", Response::Reaction)];
        },
    )
    .await;
    let path = format!("/children/{}/recipes", code(1));
    let page = on_page(&site, &path).await;
    let held = page.texts(".note.stop").into_iter().find(|note| note.contains("On hold since 24 November: Fish"));
    assert!(held.is_some() && page.body.find("note stop") < page.body.find("<h1"), "{}", page.text());
    // The powder of small dried fish carries the allergen of the fish that harmed.
    let card = on_page(&site, &format!("{path}/millet_bean_fish")).await;
    card.says("Do not give this now.").says("Small dried fish, powdered is like Fish, on hold since 24 November");
    assert!(card.body.find("Do not give this now.") < card.body.find("<h1"));
    card.does_not_say("First taste").does_not_say("this child needs at least");
    let other = on_page(&site, &format!("{path}/pumpkin_bean_mash")).await;
    other.does_not_say("Do not give this now.").says("With this as the food, this child needs at least 2 meals a day.");
}

#[actix_web::test]
async fn a_known_allergy_is_said_before_any_recipe() {
    let site = Site::new().await;
    visited(&site, 1, |child| child.facts.known_food_allergy = Some(true), |_| {}).await;
    let path = format!("/children/{}/recipes", code(1));
    for page in [path.clone(), format!("{path}/pumpkin_bean_mash"), format!("{path}/millet_bean_fish")] {
        let page = on_page(&site, &page).await;
        page.says("A clinician has named a food allergy of this child.").says("never give that food");
        assert!(page.body.find("A clinician has named") < page.body.find("<h1"), "{}", page.path);
    }
    on_page(&site, &format!("{path}/millet_bean_fish")).await.says("A food allergy is known: ask first.").does_not_say("First taste");
}

#[actix_web::test]
async fn milk_only_children_get_no_recipe() {
    let site = Site::new().await;
    visited(
        &site,
        1,
        |child| (child.facts.born, child.facts.registered_on) = (d("2026-08-01"), d("2026-08-01")),
        |visit| visit.solids_started_on = None,
    )
    .await;
    let page = on_page(&site, &format!("/children/{}/recipes", code(1))).await;
    assert_eq!(page.texts("h1"), ["Neruka needs milk only. Recipes are for later."]);
    page.says("No water, tea or food before 6 months.");
    assert_eq!(page.attrs(".rows a", "href"), Vec::<String>::new());
    let child = on_page(&site, &format!("/children/{}", code(1))).await;
    assert!(!child.attrs("a", "href").iter().any(|href| href.ends_with("/recipes")));
    child.does_not_say("Thickness counts");
}

#[actix_web::test]
async fn recipes_of_a_child_are_there_for_its_worker_and_supervisor_only() {
    let site = Site::new().await;
    visited(&site, 1, |_| {}, |_| {}).await;
    let path = format!("/children/{}/recipes", code(1));
    for (name, status) in [("mireni", 200), ("olani", 200), ("tamsi", 404), ("hembo", 404), ("bemu", 403), ("teveli", 403)] {
        let mut browser = site.signed_in(name).await;
        for page in [path.clone(), format!("{path}/mango_mash")] {
            browser.open(&page).await.is(status);
        }
    }
    let mut browser = site.signed_in("mireni").await;
    for unknown in [format!("{path}/no_such"), "/recipes/no_such".to_owned(), "/children/22222222/recipes".to_owned()] {
        browser.open(&unknown).await.is(404);
    }
    browser.open(&format!("{path}?as_of=2026-11-23")).await.is(200).says("You see 23 November 2026");
    assert!(browser.attrs(".rows a", "href").iter().all(|href| href.ends_with("?as_of=2026-11-23")));
}

#[actix_web::test]
async fn the_list_for_everybody_leads_to_cards_that_speak_french() {
    let site = Site::new().await;
    let mut browser = site.signed_in("olani").await;
    browser.open("/recipes").await.is(200);
    assert_eq!(browser.attrs(".rows a", "href").len(), 6);
    let french = browser.attrs("form[action='/language'] input[name=token]", "value").remove(0);
    browser
        .send(
            "/language",
            &[
                ("token".to_owned(), french),
                ("back".to_owned(), "/recipes/millet_bean_fish".to_owned()),
                ("language".to_owned(), "fr".to_owned()),
            ],
        )
        .await;
    browser.open("/recipes/millet_bean_fish").await.is(200).says("Bouillie de mil et de haricots").says("5 cuillères à soupe rases (40 g)");
    browser.says("Penchez la cuillère").says("Comment faire").does_not_say("Mix the two flours");
    // Sources stay in the language of the file and say so.
    assert!(browser.attrs("details span", "lang").contains(&"en".to_owned()));
}

#[actix_web::test]
async fn a_recipe_named_at_a_visit_ticks_what_it_holds_and_a_food_on_hold_in_it_is_noticed() {
    let site = Site::new().await;
    visited(&site, 1, |_| {}, |visit| visit.foods = vec![offer("small_dried_fish", Response::Reaction)]).await;
    let path = format!("/children/{}", code(1));
    let mut browser = on_page(&site, &format!("{path}/visits/new")).await;
    browser.says("Was it made by a recipe?").says("Holds a food on hold: beans, millet porridge, small dried fish");
    let answers = [("recipes", "millet_bean_fish"), ("food_small_dried_fish", ""), ("breastfed", "yes")];
    // A recipe alone would read as all that was eaten: what else is asked once, with what it holds ticked.
    browser.submit("form[action$='/visits/new']", &answers).await.is(422).says("Anything else yesterday?").says("Not saved yet.");
    let ticked = browser.attrs("[name=groups][checked]", "value");
    assert_eq!(ticked, ["breast_milk", "grains_roots", "pulses_nuts", "flesh"]);
    browser.submit("form[action$='/visits/new']", &[]).await.is(200).says("Food on hold given again");
    let stored = visits::of_child_up_to(site.db.db.direct(), child(1, "Neruka", site.ulopi, site.mireni).id, d("2026-11-25")).await;
    let visit = stored.expect("readable").pop().expect("a visit").visit;
    assert_eq!(visit.recipes, ["millet_bean_fish".to_owned()].into());
    assert_eq!(visit.groups, Some([FoodGroup::GrainsRoots, FoodGroup::PulsesNuts, FoodGroup::Flesh, FoodGroup::BreastMilk].into()));
    assert_eq!((visit.solids_yesterday, visit.iron_source), (Some(true), None), "the iron of fish goes with its group");
    let foods: Vec<_> = visit.foods.iter().map(|food| (food.code.as_str(), food.offers, food.response)).collect();
    assert_eq!(foods, [("beans", 1, None), ("millet_porridge", 1, None), ("small_dried_fish", 1, None)], "oil is not tracked");
    // Its correction shows all of it ticked, and saves it as it was.
    browser.open(&format!("{path}/visits/2/correct")).await.is(200);
    assert_eq!(browser.attrs("[name=recipes][checked]", "value"), ["millet_bean_fish"]);
    assert_eq!(browser.attrs("[name=groups][checked]", "value").len(), 4);
    assert_eq!(browser.attrs("[name=food_beans][checked]", "value"), ["given"]);
    browser.submit("form[action$='/correct']", &[("reason", "weight was left out"), ("weight", "7.1")]).await.is(200);
    let stored = visits::of_child_up_to(site.db.db.direct(), child(1, "Neruka", site.ulopi, site.mireni).id, d("2026-11-25")).await;
    let mut corrected = stored.expect("readable").pop().expect("a visit").visit;
    // The form asks about a food on hold first.
    corrected.foods.sort_by(|a, b| a.code.cmp(&b.code));
    assert_eq!(corrected, Visit { weight: Weight::from_grams(7_100).ok(), ..visit });
}

#[actix_web::test]
async fn a_recipe_that_there_is_not_is_told_and_nothing_typed_is_lost() {
    let site = Site::new().await;
    visited(&site, 1, |_| {}, |_| {}).await;
    let mut browser = on_page(&site, &format!("/children/{}/visits/new", code(1))).await;
    browser.submit("form[action$='/visits/new']", &[("recipes", "stone_soup"), ("note", "cooked outside")]).await.is(422);
    browser.says("Which recipes of the programme?").says("cooked outside");
}

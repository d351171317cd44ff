//! After a reaction to a food: nothing of it is lost, whatever the food is called, and nobody is told to give more of the kind.

use crate::harness::Browser;
use crate::site::Site;
use crate::visits::at_eight_months;

/// The choices of a first step, in words.
fn steps(browser: &Browser) -> Vec<String> {
    browser.texts("select[name=step1] option")
}

#[actix_web::test]
async fn a_severe_reaction_to_a_forgotten_food_is_an_emergency_of_the_child_before_the_form_is_mended() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    browser.submit("main form", &[("new_food", "yes"), ("other1_taken", "reaction"), ("other1_rsign", "collapse")]).await.is(422);
    browser.says("What you ticked is saved");
    // Whoever closes the page now leaves an emergency behind, not a home that is done.
    let mut round = site.signed_in("mireni").await;
    round.open("/round").await.says("Emergency").says("A food not on the list");
    round.open(&format!("/children/{code}")).await.says("A food not on the list").says("On hold");
    round.open(&format!("/children/{code}/card")).await.says("Do not give: A food not on the list.");
    // The form goes on as a correction, and the food that is chosen then takes its place.
    browser.submit("main form", &[("other1_food", "egg")]).await.is(200);
    round.open(&format!("/children/{code}/card")).await.says("Do not give: Egg").does_not_say("not on the list");
    round.open("/round").await.says("Emergency").does_not_say("A food not on the list");
}

#[actix_web::test]
async fn a_food_that_the_list_does_not_know_is_recorded_like_any_other() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    assert_eq!(browser.texts("select[name=other1_food] option").last().map(String::as_str), Some("A food not on the list"));
    let told = [("new_food", "yes"), ("other1_food", "not_listed"), ("other1_taken", "reaction"), ("other1_rsign", "rash_local")];
    browser.submit("main form", &told).await.is(200).says("A food not on the list");
    // A food that a form names and the protocol no longer has: the fault is told, and the reaction kept.
    browser.open(&format!("/children/{code}/visits/new")).await;
    let (path, mut pairs) = browser.filled("main form", &[("new_food", "yes"), ("other1_taken", "reaction"), ("other1_rsign", "wheeze")]);
    pairs.retain(|(name, _)| name != "other1_food");
    pairs.push(("other1_food".to_owned(), "mushroom".to_owned()));
    browser.send(&path, &pairs).await.is(422).says("“mushroom” is not a food of this programme").says("What you ticked is saved");
    site.signed_in("mireni").await.open("/round").await.says("Emergency");
}

#[actix_web::test]
async fn after_a_severe_reaction_no_step_says_to_try_an_allergen() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    let form = format!("/children/{code}/visits/new");
    browser.open(&form).await;
    let allergens = |browser: &Browser| steps(browser).iter().any(|step| step.contains("First egg, fish or groundnut paste"));
    assert!(allergens(&browser), "a step to agree on while nothing speaks against it: {:?}", steps(&browser));
    let chosen = browser.attrs("select[name=step1] option", "value");
    let value = chosen.iter().zip(steps(&browser)).find(|(_, words)| words.contains("First egg, fish")).expect("there").0.clone();
    browser.submit("main form", &[("day", "yesterday"), ("step1", &value)]).await.is(200);
    browser.open(&form).await;
    assert!(allergens(&browser), "not done yet: it stands first");
    let severe = [("new_food", "yes"), ("other1_food", "groundnut_paste"), ("other1_taken", "reaction"), ("other1_rsign", "wheeze")];
    browser.submit("main form", &severe).await.is(200);
    browser.open(&form).await.is(200);
    assert!(!allergens(&browser), "{:?}", steps(&browser));
}

#[actix_web::test]
async fn a_correction_asks_of_a_food_as_it_was_before_the_visit() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    let new = format!("/children/{code}/visits/new");
    let corrects = |browser: &Browser| format!("{}/correct", browser.path.rsplit_once('/').expect("a page of the visit").0);
    let held = "Egg: on hold. Given again?";
    browser.open(&new).await;
    let rash =
        [("day", "yesterday"), ("new_food", "yes"), ("other1_food", "egg"), ("other1_taken", "reaction"), ("other1_rsign", "rash_local")];
    browser.submit("main form", &rash).await.is(200);
    // The visit that began the hold asks for it as for any food it tells of; the next one asks whether it was given again.
    let first = corrects(&browser);
    browser.open(&first).await.is(200).does_not_say(held);
    assert_eq!(browser.attrs("[name=food_egg][checked]", "value"), ["reaction"]);
    browser.open(&new).await.says(held);
    // A lifting stays what it is when something else of its visit is corrected.
    let lifted = [("lifted_egg", "yes"), ("note", "Allowed again by the nurse in Ulopi.")];
    browser.submit("main form", &lifted).await.is(200);
    let second = corrects(&browser);
    browser.open(&format!("/children/{code}/card")).await.does_not_say("Do not give: Egg");
    browser.open(&second).await.is(200).says(held);
    assert_eq!(browser.attrs("[name=lifted_egg][checked]", "value"), ["yes"]);
    browser.submit("main form", &[("meals", "2"), ("reason", "meals were left out")]).await.is(200);
    browser.open(&format!("/children/{code}/card")).await.does_not_say("Do not give: Egg");
}

//! Correcting a visit while somebody else corrects it too: whoever comes second is told, sees both, and loses nothing typed.

use domain::food::ReactionSign;
use domain::food::Response;
use domain::visit::DangerSign;
use domain::visit::SwallowTrouble;
use domain::visit::Visit;
use spoonround::store::visits;

use crate::corrections::child;
use crate::harness::Browser;
use crate::site::Site;

/// The form of a visit as Mireni opened it, with her changes, before Olani saved his.
async fn overtaken(site: &Site, changes: &[(&str, &str)], by_olani: &[(&str, &str)]) -> (Browser, String, String, Vec<(String, String)>) {
    let (code, seq) = site.a_child_with_a_visit().await;
    let (mut mireni, mut olani) = (site.signed_in("mireni").await, site.signed_in("olani").await);
    let page = format!("/children/{code}/visits/{seq}/correct");
    mireni.open(&page).await.is(200);
    let (path, pairs) = mireni.filled("main form", changes);
    olani.open(&page).await.submit("main form", by_olani).await.is(200);
    (mireni, code, path, pairs)
}

fn has(pairs: &[(String, String)], (name, value): (&str, &str)) -> bool {
    pairs.iter().any(|(n, v)| n == name && v == value)
}

/// Arm and weight of the child's only visit.
async fn stored(site: &Site, code: &str) -> (Option<u16>, Option<u32>, u32) {
    let record = child(site, code).await;
    let all = visits::of_child_up_to(site.db.db.direct(), record.id, crate::site::TODAY.parse().expect("a day")).await.expect("readable");
    let [visit] = &all[..] else { panic!("one visit, not {}", all.len()) };
    (visit.visit.muac.map(domain::units::Muac::mm), visit.visit.weight.map(domain::units::Weight::grams), visit.version)
}

async fn newest_visit(site: &Site, code: &str) -> Visit {
    let record = child(site, code).await;
    let all = visits::of_child_up_to(site.db.db.direct(), record.id, crate::site::TODAY.parse().expect("a day")).await;
    all.expect("readable").pop().expect("a visit").visit
}

const TYPED: [(&str, &str); 5] =
    [("weight", "7.35"), ("meals", "3"), ("note", "seen \"twice\""), ("texture_usual", "1"), ("reason", "two digits were swapped")];
const BY_OLANI: [(&str, &str); 5] =
    [("arm", "140"), ("texture_usual", "2"), ("bottle", "yes"), ("head", "43.1"), ("reason", "a digit was misread")];

#[actix_web::test]
async fn a_correction_overtaken_by_another_is_told_so_beside_the_newest_version() {
    let site = Site::new().await;
    let (mut browser, code, path, pairs) = overtaken(&site, &TYPED, &BY_OLANI).await;
    browser.send(&path, &pairs).await.is(409);
    browser.says("Your answers are not saved yet: Olani changed this visit after you opened it. Their reason: a digit was misread");
    assert_eq!(stored(&site, &code).await, (Some(140), Some(7100), 2), "nothing of the form that came second was saved");
    let (_, kept) = browser.filled("main form", &[]);
    for pair in TYPED.into_iter().chain([("arm", "113")]) {
        assert!(has(&kept, pair), "{pair:?} was lost: {kept:?}");
    }
    let beside = browser.texts(".stands");
    for said in [
        "It now says: 7.1 kg",
        "It now says: 140 mm",
        "It now says: no answer",
        "It now says: 43.1 cm",
        "It now says: mashed, soft lumps",
        "It now says: Yes",
    ] {
        assert!(beside.iter().any(|line| line == said), "{said}: {beside:?}");
    }
    assert!(!browser.texts("details:not([open]) .stands").iter().any(|line| !line.is_empty()), "none of it is a tap away");
    // Looked at and sent again, it is saved, and both earlier versions are kept.
    browser.submit("main form", &[("arm", "140")]).await.is(200).says("7.35 kg");
    assert_eq!(stored(&site, &code).await, (Some(140), Some(7350), 3));
    // The form that came second still has no effect, however often it is sent.
    browser.send(&path, &pairs).await.is(409);
    assert_eq!(stored(&site, &code).await, (Some(140), Some(7350), 3));
}

#[actix_web::test]
async fn a_food_and_a_recipe_that_only_the_newest_version_names_are_told() {
    let site = Site::new().await;
    let by_olani = [
        ("other1_food", "mango"),
        ("other1_taken", "accepted"),
        ("recipes", "pumpkin_bean_mash"),
        ("groups", "eggs"),
        ("reason", "the mother told more"),
    ];
    let (mut browser, _, path, pairs) = overtaken(&site, &TYPED, &by_olani).await;
    browser.send(&path, &pairs).await.is(409);
    let foods = browser.texts(".food-ask");
    for (food, taken) in [("Mango", "Took it"), ("Beans", "Given, not asked how"), ("Pumpkin", "Given, not asked how")] {
        let told = foods.iter().find(|text| text.starts_with(food)).unwrap_or_else(|| panic!("{food} is not told: {foods:?}"));
        let said = told.split("It now says: ").nth(1).unwrap_or_else(|| panic!("{food} does not say what stands: {told}"));
        assert!(said.starts_with(taken), "{food}: {said}");
    }
    let stands = browser.texts(".stands");
    assert!(stands.iter().any(|line| line == "It now says: Pumpkin and bean mash"), "{stands:?}");
    assert!(!browser.texts("details:not([open]) .stands").iter().any(|line| !line.is_empty()), "none of it is a tap away");
    // What was typed instead stays typed: nothing was given.
    assert!(browser.attrs("[name=food_mango][checked]", "value").iter().all(String::is_empty));
}

#[actix_web::test]
async fn a_correction_sent_twice_is_not_taken_for_somebody_elses() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/correct")).await;
    let (path, pairs) = browser.filled("main form", &TYPED);
    let first = browser.send(&path, &pairs).await.is(200).path.clone();
    assert_eq!(browser.send(&path, &pairs).await.is(200).path, first);
    assert_eq!(stored(&site, &code).await, (Some(113), Some(7350), 2));
}

#[actix_web::test]
async fn faults_and_a_change_by_somebody_else_are_told_together() {
    let site = Site::new().await;
    let (mut browser, code, path, _) = overtaken(&site, &[], &BY_OLANI).await;
    let (_, pairs) = browser.filled("main form", &[("weight", "sieben"), ("reason", "")]);
    browser.send(&path, &pairs).await.is(422).says("Olani changed this visit").says("It now says: 140 mm");
    assert_eq!(browser.attrs("#summary a", "href"), ["#weight", "#reason"]);
    assert!(has(&browser.filled("main form", &[]).1, ("weight", "sieben")));
    browser.submit("main form", &[("weight", "7.35"), ("arm", "140"), ("reason", "two digits were swapped")]).await.is(200);
    assert_eq!(stored(&site, &code).await, (Some(140), Some(7350), 3));
}

#[actix_web::test]
async fn danger_in_an_overtaken_correction_is_saved_at_once_into_what_stands() {
    let site = Site::new().await;
    let typed = [("danger", "fits_now"), ("weight", "7.35"), ("reason", "two digits were swapped")];
    let (mut browser, code, path, pairs) = overtaken(&site, &typed, &BY_OLANI).await;
    for _ in 0..2 {
        browser.send(&path, &pairs).await.is(409).says("What you ticked is saved");
        let at = |text: &str| browser.body.find(text).unwrap_or_else(|| panic!("{text} is not there:\n{}", browser.text()));
        assert!(at("class=\"alert\"") < at("class=\"note look\""), "what to do stands first");
        assert_eq!(stored(&site, &code).await, (Some(140), Some(7100), 3), "the danger is added to what stands, once");
        let (_, kept) = browser.filled("main form", &[]);
        assert!(typed.into_iter().all(|pair| has(&kept, pair)), "{kept:?}");
    }
    browser.submit("main form", &[("arm", "140")]).await.is(200).says("7.35 kg");
    assert_eq!(stored(&site, &code).await, (Some(140), Some(7350), 4));
}

#[actix_web::test]
async fn danger_that_somebody_else_wrote_is_not_taken_back_by_a_form_shown_before() {
    let site = Site::new().await;
    let by_olani = [
        ("danger", "blood_in_stool"),
        ("swallow_trouble", "repeated"),
        ("other1_food", "egg"),
        ("other1_taken", "reaction"),
        ("other1_rsign", "wheeze"),
        ("reason", "the mother told more"),
    ];
    let (mut browser, code, path, pairs) = overtaken(&site, &TYPED, &by_olani).await;
    browser.send(&path, &pairs).await.is(409).says("Somebody else wrote this danger down.").says("Your answers are not saved yet: Olani");
    browser.does_not_say("What you ticked is saved");
    assert_eq!(browser.texts(".note.stop li"), ["Blood in the stool", "Chokes, coughs or sounds wet, more than once", "Egg: reaction"]);
    let listed = browser.texts(".note.look li");
    for question in ["Weight", "Meals and snacks"] {
        assert!(listed.iter().any(|line| line.starts_with(question)), "{question} is not listed: {listed:?}");
    }
    assert!(!listed.iter().any(|line| line == "An answer"), "each has its name: {listed:?}");
    let places = browser.attrs(".note.look li a, .note.stop li a", "href");
    assert!(places.iter().all(|place| browser.body.contains(&format!("id=\"{}\"", &place[1..]))), "{places:?}");
    // Saved once more without a look, all of the danger is still there, and so is what was typed.
    browser.submit("main form", &[]).await.is(200).says("Blood in the stool");
    let visit = newest_visit(&site, &code).await;
    assert_eq!(visit.danger_signs, Some([DangerSign::BloodInStool].into()));
    assert_eq!(visit.swallow_trouble, Some(SwallowTrouble::Repeated));
    let egg = visit.foods.iter().find(|food| food.code.as_str() == "egg").expect("the egg");
    assert_eq!((egg.response, egg.signs.as_ref()), (Some(Response::Reaction), Some(&[ReactionSign::Wheeze].into())));
    assert_eq!((visit.weight.map(domain::units::Weight::grams), visit.meals), (Some(7350), Some(3)));
}

#[actix_web::test]
async fn danger_that_was_wrong_can_be_taken_out_once_it_was_seen() {
    let site = Site::new().await;
    let (mut browser, code, path, pairs) = overtaken(&site, &TYPED, &[("danger", "blood_in_stool"), ("reason", "told more")]).await;
    browser.send(&path, &pairs).await.is(409);
    let (path, mut pairs) = browser.filled("main form", &[]);
    assert!(has(&pairs, ("danger", "blood_in_stool")));
    pairs.retain(|(name, _)| name != "danger");
    pairs.push(("danger_none".to_owned(), "yes".to_owned()));
    browser.send(&path, &pairs).await.is(200);
    assert_eq!(newest_visit(&site, &code).await.danger_signs, Some([].into()));
}

#[actix_web::test]
async fn who_was_first_is_not_the_one_whose_danger_is_saved() {
    let site = Site::new().await;
    let typed = [("danger", "fits_now"), ("reason", "two digits were swapped")];
    let (mut browser, _, path, pairs) = overtaken(&site, &typed, &BY_OLANI).await;
    browser.send(&path, &pairs).await.is(409);
    browser.says("The danger signs you ticked are saved. The rest is not saved yet: Olani changed this visit after you opened it.");
    browser.says("Their reason: a digit was misread").does_not_say("Your answers are not saved yet");
}

#[actix_web::test]
async fn a_correction_of_a_visit_taken_back_meanwhile_comes_back_as_a_new_one() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let (mut mireni, mut olani) = (site.signed_in("mireni").await, site.signed_in("olani").await);
    let page = format!("/children/{code}/visits/{seq}/correct");
    mireni.open(&page).await;
    let (path, pairs) = mireni.filled("main form", &TYPED);
    olani.open(&format!("/children/{code}/visits/{seq}/void")).await;
    olani.submit("main form", &[("reason", "entered_twice"), ("note", "It is there twice, I think.")]).await.is(200);
    mireni.send(&path, &pairs).await.is(409).says("took this visit back or moved it to another child");
    let (again, kept) = mireni.filled("main form", &[]);
    assert_eq!(again, format!("/children/{code}/visits/new"));
    assert!(has(&kept, TYPED[0]) && has(&kept, TYPED[2]) && has(&kept, ("arm", "113")), "{kept:?}");
    mireni.submit("main form", &[]).await.is(200).says("7.35 kg");
    assert_eq!(stored(&site, &code).await, (Some(113), Some(7350), 1), "the one that was taken back stays taken back");
    mireni.open(&page).await.is(409).says("Somebody took it back or moved it");
    mireni.open(&format!("/children/{code}/visits/{seq}7/correct")).await.is(404);
}

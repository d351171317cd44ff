//! Recording and correcting visits: what is unusual, danger beside a fault, sending twice, what to do now.

use crate::harness::Browser;
use crate::site::Site;

/// A child in the worker's round: the browser stands on its code.
async fn with_child(site: &Site, born: (&str, &str, &str)) -> (Browser, String) {
    let mut browser = site.signed_in("mireni").await;
    let child = [
        ("name", "Neruka"),
        ("sex", "F"),
        ("born_day", born.0),
        ("born_month", born.1),
        ("born_year", born.2),
        ("caregiver", "Maruli"),
        ("area", "ulopi"),
        ("consent", "yes"),
    ];
    browser.open("/children/new").await.submit("main form", &child).await.submit("main form", &[]).await;
    let code = browser.path.strip_prefix("/children/").expect("a code").to_owned();
    (browser, code)
}

pub async fn at_eight_months(site: &Site) -> (Browser, String) {
    with_child(site, ("14", "3", "2026")).await
}

const BEFORE: [(&str, &str); 5] = [("day", "other"), ("on_day", "16"), ("on_month", "10"), ("on_year", "2026"), ("weight", "7,10")];

async fn weighed_before(browser: &mut Browser, code: &str) {
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &BEFORE).await.is(200);
}

fn seq(browser: &Browser) -> i64 {
    browser.path.rsplit('/').nth(1).and_then(|text| text.parse().ok()).expect("a number in the address")
}

#[actix_web::test]
async fn a_usual_visit_is_saved_and_says_back_what_was_understood() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    weighed_before(&mut browser, &code).await;
    browser.open(&format!("/children/{code}/visits/new")).await.says("7.10 kg, 16 Oct");
    let visit = [("weight", "٧٫٣٥"), ("arm", "13,4"), ("danger_none", "yes"), ("breastfed", "yes")];
    browser.submit("main form", &visit).await.is(200);
    browser.says("7.35 kg").says("134 mm (13.4 cm)").says("Not checked: feet, length").says("gained 250 g since 16 October");
    browser.does_not_say("Nothing to follow up");
    assert!(browser.attrs("main a", "href").contains(&"/round".to_owned()));
}

#[actix_web::test]
async fn an_empty_form_is_saved_and_nothing_is_called_checked() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &[]).await.is(200);
    browser.says("Not checked: danger signs, feet, weight, length, upper arm, milk, food and swallowing.");
    browser.says("Nothing was measured or checked: Neruka").does_not_say("No concern");
}

#[actix_web::test]
async fn an_empty_form_after_an_emergency_says_what_is_open_and_not_that_nothing_is() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    let new = format!("/children/{code}/visits/new");
    let before = |day| [("day", "other"), ("on_day", day), ("on_month", "11"), ("on_year", "2026")];
    let danger: Vec<_> = before("10").into_iter().chain([("danger", "fits_now"), ("weight", "7,10")]).collect();
    browser.open(&new).await.submit("main form", &danger).await.is(200).says("on the side");
    browser.open(&new).await.submit("main form", &before("17")).await.is(200).does_not_say("No concern");
    browser.says("Nothing was measured or checked: Neruka").says("Still open: Danger sign");
    browser.open(&new).await.submit("main form", &[("weight", "7,40"), ("feet", "no")]).await.is(200).does_not_say("No concern");
    browser.says("Still open for Neruka: Danger sign");
}

#[actix_web::test]
async fn faults_come_back_with_everything_typed() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    for (field, text) in [
        ("weight", "735"),
        ("weight", "0"),
        ("weight", "sieben"),
        ("length", "12"),
        ("arm", "5"),
        ("head", "99"),
        ("meals", "31"),
        ("meals", "-1"),
        ("formula_times", "x"),
        ("animal_milk_times", "1.5"),
        ("appetite_poor_days", "999"),
    ] {
        browser.submit("main form", &[(field, text), ("note", "kept \"as\" typed")]).await.is(422);
        assert_eq!(browser.attrs("#summary a", "href"), [format!("#{field}")], "{field}={text}");
        assert_eq!(browser.texts("p.fault").len(), 1, "{field}={text}");
        let (_, kept) = browser.filled("main form", &[]);
        assert!(kept.contains(&(field.to_owned(), text.to_owned())), "{field}={text} was lost");
        assert!(kept.contains(&("note".to_owned(), "kept \"as\" typed".to_owned())));
        browser.open(&format!("/children/{code}/visits/new")).await;
    }
    let day = |d, m, y| vec![("day", "other"), ("on_day", d), ("on_month", m), ("on_year", y)];
    for impossible in [day("26", "11", "2026"), day("13", "3", "2026"), day("30", "2", "2026"), day("", "", "")] {
        browser.submit("main form", &impossible).await.is(422);
        assert_eq!(browser.attrs("#summary a", "href"), ["#on"], "{impossible:?}");
    }
}

#[actix_web::test]
async fn an_unusual_weight_is_asked_about_once_and_never_blocked() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    weighed_before(&mut browser, &code).await;
    let form = format!("/children/{code}/visits/new");
    browser.open(&form).await.submit("main form", &[("weight", "12.4")]).await.is(422);
    browser.says("12.40 kg: look again").says("Last time it was 7.10 kg").says("Weigh again, then type").does_not_say("7.4");
    browser.submit("main form", &[("confirmed_weight", "yes")]).await.is(200).says("12.40 kg");
    let kept = seq(&browser);
    browser.open(&format!("/children/{code}/visits/{kept}/correct")).await;
    let (_, pairs) = browser.filled("main form", &[]);
    assert!(pairs.contains(&("confirmed_weight".to_owned(), "yes".to_owned())), "it was weighed again: {pairs:?}");
    // Without a tick, saving once more as it stands saves it too; another odd value is asked about again.
    browser.open(&form).await.submit("main form", &[("weight", "12.5")]).await.is(422);
    browser.submit("main form", &[("weight", "13.1")]).await.is(422).says("13.10 kg: look again");
    browser.submit("main form", &[]).await.is(200).says("13.10 kg");
}

#[actix_web::test]
async fn danger_beside_a_fault_is_saved_at_once_and_nothing_is_doubled() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    let typed = [("weight", "735"), ("danger", "fits_now"), ("meals", "3"), ("note", "mother calls")];
    let (path, pairs) = browser.filled("main form", &typed);
    browser.send(&path, &pairs).await.is(422);
    let at = |text: &str| browser.body.find(text).unwrap_or_else(|| panic!("{text} is not there:\n{}", browser.text()));
    assert!(at("class=\"alert\"") < at("id=\"summary\""), "danger stands above the faults");
    browser.says("on the side").says("What you ticked is saved");
    let (correct, kept) = browser.filled("main form", &[]);
    assert!(correct.contains("/visits/") && correct.ends_with("/correct"), "the form goes on as a correction: {correct}");
    for (name, value) in typed {
        assert!(kept.contains(&(name.to_owned(), value.to_owned())), "{name} was lost");
    }
    // The same form once more: the same visit.
    browser.send(&path, &pairs).await.is(422);
    assert_eq!(browser.filled("main form", &[]).0, correct);
    // Another mistake on the way loses nothing of what is saved.
    browser.submit("main form", &[("weight", "x")]).await.is(422).says("What you ticked is saved");
    browser.submit("main form", &[("weight", "7.35")]).await.is(200).says("7.35 kg");
    let saved = seq(&browser);
    assert!(correct.contains(&format!("/visits/{saved}/")), "one visit: {correct} and {saved}");
    browser.open(&format!("/children/{code}/visits/{saved}/correct")).await;
    let (_, stored) = browser.filled("main form", &[]);
    for (name, value) in [("weight", "7.35"), ("danger", "fits_now"), ("meals", "3"), ("note", "mother calls")] {
        assert!(stored.contains(&(name.to_owned(), value.to_owned())), "{name}={value}: {stored:?}");
    }
    browser.open(&format!("/children/{code}/visits/{}/now", saved + 1)).await.is(404);
}

#[actix_web::test]
async fn a_reaction_whose_food_was_forgotten_presses_all_the_same() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    browser.submit("main form", &[("new_food", "yes"), ("other1_taken", "reaction"), ("other1_rsign", "wheeze")]).await.is(422);
    assert!(browser.body.find("class=\"alert\"") < browser.body.find("id=\"summary\""), "{}", browser.text());
    assert_eq!(browser.attrs("#summary a", "href"), ["#other1_food"]);
}

#[actix_web::test]
async fn a_food_that_there_is_not_comes_back_with_the_one_it_may_be_and_everything_typed() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    let address = format!("/children/{code}/visits/new");
    for (typed, says) in [
        ("mangoo", "“mangoo” is not a food of this programme. If you mean “Mango, ripe”, choose that from the list."),
        ("stone", "“stone” is not a food of this programme. Choose one from the list; its last line is for any other food."),
    ] {
        browser.open(&address).await;
        // In a box for another food, and as a food that the page asks about by name.
        let named = format!("food_{typed}");
        let typed_in = [
            ("weight", "7,35"),
            ("arm", "134"),
            ("meals", "2"),
            ("note", "mother calls"),
            ("new_food", "yes"),
            ("other1_food", typed),
            ("other1_taken", "refused"),
            ("other1_offers", "3"),
        ];
        let (path, mut pairs) = browser.filled("main form", &typed_in);
        pairs.push((named.clone(), "accepted".to_owned()));
        browser.send(&path, &pairs).await.is(422);
        assert_eq!(browser.attrs("#summary a", "href"), [format!("#{named}"), "#other1_food".to_owned()]);
        assert_eq!(browser.texts("p.fault"), [says, says]);
        let kept = |browser: &Browser| browser.filled("main form", &[]).1;
        let here = kept(&browser);
        for pair in pairs.iter().filter(|(name, value)| name != "token" && !value.is_empty()) {
            assert!(here.contains(pair), "{pair:?} is kept: {here:?}");
        }
        // Set right, it is saved with what was typed before.
        browser.submit("main form", &[(&named, ""), ("other1_food", "mango")]).await.is(200).says("7.35 kg");
        let saved = seq(&browser);
        browser.open(&format!("/children/{code}/visits/{saved}/correct")).await.is(200);
        assert!(kept(&browser).contains(&("food_mango".to_owned(), "refused".to_owned())), "{:?}", kept(&browser));
    }
    speak_french(&mut browser).await;
    browser.open(&address).await.submit("main form", &[("new_food", "yes"), ("other1_food", "mangoo"), ("other1_taken", "refused")]).await;
    browser.is(422).says("« mangoo » n’est pas un aliment de ce programme. Si vous voulez dire « Mangue mûre »");
}

async fn speak_french(browser: &mut Browser) {
    browser.submit("form[action='/language']", &[("language", "fr")]).await;
}

#[actix_web::test]
async fn a_form_sent_twice_is_one_visit_and_other_content_is_refused() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    let (path, pairs) = browser.filled("main form", &[("weight", "7.35")]);
    let first = browser.send(&path, &pairs).await.path.clone();
    for _ in 0..4 {
        assert_eq!(browser.send(&path, &pairs).await.path, first);
    }
    let (_, mut other) = (0, pairs);
    other.iter_mut().filter(|(name, _)| name == "weight").for_each(|(_, value)| "7.45".clone_into(value));
    browser.send(&path, &other).await.is(409);
    assert!(browser.attrs("main a", "href").contains(&first), "the saved one can be opened: {}", browser.text());
    browser.open(&first).await.is(200).says("7.35 kg");
}

#[actix_web::test]
async fn correcting_needs_a_reason_and_shows_what_was_saved() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &[("weight", "7.53"), ("feet", "no")]).await;
    let visit = seq(&browser);
    browser.open(&format!("/children/{code}/visits/{visit}/correct")).await.is(200);
    let (_, pairs) = browser.filled("main form", &[]);
    assert!(
        pairs.contains(&("weight".to_owned(), "7.53".to_owned())) && pairs.contains(&("feet".to_owned(), "no".to_owned())),
        "{pairs:?}"
    );
    browser.submit("main form", &[("weight", "7.35")]).await.is(422);
    assert_eq!(browser.attrs("#summary a", "href"), ["#reason"]);
    browser.submit("main form", &[("reason", "two digits were swapped")]).await.is(200).says("7.35 kg");
    assert_eq!(seq(&browser), visit);
}

#[actix_web::test]
async fn under_six_months_the_form_asks_what_else_is_drunk() {
    let site = Site::new().await;
    let (mut browser, code) = with_child(&site, ("1", "7", "2026")).await;
    browser.open(&format!("/children/{code}/visits/new")).await.is(200).says("Anything besides breast milk?");
    assert!(browser.attrs(".when-besides [name=groups]", "value").len() == 8 && browser.attrs("[name=food_beans]", "value").is_empty());
    browser.submit("main form", &[("breastfed", "yes"), ("breast_only", "yes")]).await.is(200).says("Breast milk only");
    browser.does_not_say("One new food");
}

#[actix_web::test]
async fn the_emergency_page_needs_no_form() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/emergency")).await.is(200).says("your local emergency number").says("back blows");
    browser.says("clinician must approve");
    assert!(browser.texts("main form").is_empty());
}

#[actix_web::test]
async fn nobody_else_reaches_the_pages_of_a_child() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &[("weight", "7.35")]).await;
    let visit = seq(&browser);
    let mut stranger = site.signed_in("tamsi").await;
    for page in ["visits/new".to_owned(), "emergency".to_owned(), format!("visits/{visit}/now"), format!("visits/{visit}/correct")] {
        stranger.open(&format!("/children/{code}/{page}")).await.is(404);
    }
    let (path, pairs) = {
        browser.open(&format!("/children/{code}/visits/new")).await;
        browser.filled("main form", &[("weight", "9")])
    };
    stranger.open("/children/new").await;
    let token = stranger.filled("main form", &[]).1.into_iter().find(|(name, _)| name == "token").expect("a token");
    let pairs: Vec<_> = pairs.into_iter().filter(|(name, _)| name != "token").chain([token]).collect();
    stranger.send(&path, &pairs).await.is(404);
}

#[actix_web::test]
async fn danger_is_an_emergency_with_the_call_first_and_no_coaching() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    let visit = [("danger", "cannot_feed"), ("breastfed", "yes"), ("meals", "0"), ("texture_usual", "0"), ("texture_best", "same")];
    browser.submit("main form", &visit).await.is(200);
    assert!(browser.body.find("class=\"alert\"") < browser.body.find("class=\"steps\""), "{}", browser.text());
    browser.says("Cannot drink or breastfeed").says("Referral note").does_not_say("One new food").does_not_say("Next home");
}

#[actix_web::test]
async fn too_thin_is_referred_today_and_its_outcome_is_asked_first_next_time() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    let form = format!("/children/{code}/visits/new");
    let yesterday = [("day", "yesterday"), ("arm", "113"), ("danger_none", "yes")];
    browser.open(&form).await.submit("main form", &yesterday).await.is(200).says("Refer today").says("113 mm").says("Referral note");
    browser.open(&form).await.says("Since last time");
    assert!(browser.attrs("select", "name").contains(&"outcome_wasting.severe".to_owned()), "{}", browser.text());
    browser
        .submit("main form", &[("outcome_wasting.severe", "seen"), ("danger_none", "yes")])
        .await
        .is(200)
        .says("Still urgent from before")
        .says("Seen by a health worker, told on 25 November.")
        .does_not_say("No health worker’s answer is written yet");
    let visit = seq(&browser);
    browser.open(&format!("/children/{code}/visits/{visit}/correct")).await;
    let (_, pairs) = browser.filled("main form", &[]);
    assert!(pairs.contains(&("outcome_wasting.severe".to_owned(), "seen".to_owned())), "{pairs:?}");
    // That the family did not go is no answer.
    let refused = [("outcome_wasting.severe", "refused"), ("reason", "they did not go after all")];
    browser.submit("main form", &refused).await.is(200).says("No health worker’s answer is written yet");
}

#[actix_web::test]
async fn swollen_feet_beside_a_fault_are_referred_above_it() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    browser.submit("main form", &[("feet", "yes"), ("weight", "x")]).await.is(422).says("Refer today");
    assert!(browser.body.find("class=\"steps\"") < browser.body.find("id=\"summary\""), "{}", browser.text());
}

#[actix_web::test]
async fn correcting_a_slip_takes_back_what_it_caused() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    browser.submit("main form", &[("arm", "113"), ("danger_none", "yes")]).await.says("Refer today");
    let visit = seq(&browser);
    browser.open(&format!("/children/{code}/visits/{visit}/correct")).await;
    browser.submit("main form", &[("arm", "133"), ("reason", "a digit was misread")]).await.is(200);
    browser.does_not_say("Refer today").says("No concern in what you checked");
}

#[actix_web::test]
async fn a_group_is_asked_about_with_the_programmes_own_foods() {
    let site = Site::new().await;
    let (mut browser, code) = at_eight_months(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await.is(200);
    // The default protocol's foods of the group, safe ones first; a form after a comma is left out.
    browser.says("beans, groundnut paste, sesame paste").says("small dried fish").does_not_say("small dried fish, powdered");
    browser.submit("form[action='/language']", &[("language", "fr")]).await;
    browser.open(&format!("/children/{code}/visits/new")).await.says("haricots, pâte d’arachide, pâte de sésame");
}

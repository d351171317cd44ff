//! Counselling that closes its own loop: lines told once, steps agreed, asked about at the next visit, shown to worker and supervisor.

use crate::harness::Browser;
use crate::site::Site;

/// A girl of 8 months in the round of the worker, without visits.
async fn with_child(site: &Site) -> (Browser, String) {
    let mut browser = site.signed_in("mireni").await;
    let child = [
        ("name", "Neruka"),
        ("sex", "F"),
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("caregiver", "Maruli"),
        ("area", "ulopi"),
        ("consent", "yes"),
    ];
    browser.open("/children/new").await.submit("main form", &child).await.submit("main form", &[]).await;
    let code = browser.path.strip_prefix("/children/").expect("a code").to_owned();
    (browser, code)
}

const EARLIER: [(&str, &str); 4] = [("day", "other"), ("on_day", "2"), ("on_month", "11"), ("on_year", "2026")];

async fn visit(browser: &mut Browser, code: &str, with: &[(&str, &str)]) {
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", with).await.is(200);
}

/// Fields of the form whose name begins so, in the order of the page.
fn fields(browser: &Browser, beginning: &str) -> Vec<String> {
    let mut names = browser.attrs(&format!("main form [name^=\"{beginning}\"]"), "name");
    names.dedup();
    names
}

fn offered(browser: &Browser) -> Vec<String> {
    browser.attrs("input[name=coach]", "value")
}

#[actix_web::test]
async fn a_line_is_offered_until_it_was_told_danger_first_and_five_at_most() {
    let site = Site::new().await;
    let (mut browser, code) = with_child(&site).await;
    let form = format!("/children/{code}/visits/new");
    browser.open(&form).await;
    let first = offered(&browser);
    assert_eq!(first.len(), 5);
    assert_eq!(first[0], "danger_signs");
    let told = [("coach", first[0].as_str()), ("coach", first[2].as_str())];
    let mut pairs = EARLIER.to_vec();
    pairs.extend(told);
    visit(&mut browser, &code, &pairs).await;
    browser.open(&form).await;
    let next = offered(&browser);
    assert_eq!(next.len(), 5, "others move up");
    assert!(!next.contains(&first[0]) && !next.contains(&first[2]) && next.contains(&first[1]), "{first:?} {next:?}");
}

#[actix_web::test]
async fn steps_are_agreed_asked_about_next_time_and_shown() {
    let site = Site::new().await;
    let (mut browser, code) = with_child(&site).await;
    let form = format!("/children/{code}/visits/new");
    browser.open(&form).await.does_not_say("Agreed last time");
    let mut pairs = EARLIER.to_vec();
    pairs.extend([
        ("step1", "line:half_a_cup"),
        ("step1_words", "by the red mug"),
        ("step2_words", "Egg on market day"),
        ("step3_words", "Ground fish"),
    ]);
    visit(&mut browser, &code, &pairs).await;
    browser.says("You agreed").says("Work up to half a cup a meal; more if the baby asks. (by the red mug)").says("Egg on market day");
    browser.open(&format!("/children/{code}")).await.says("Agreed with the family").says("Not asked yet").does_not_say("In the way");
    assert_eq!(browser.texts("#agreed + ul li").len(), 3);

    // The next visit opens with the three, each with three answers and "not asked"; nothing is chosen.
    browser.open(&form).await.says("Agreed last time");
    let told = fields(&browser, "told_");
    assert_eq!(told.len(), 3, "{told:?}");
    assert_eq!(browser.attrs(&format!("input[name={}]", told[0]), "value"), ["done", "partly", "not", ""]);
    assert!(browser.attrs("input[name^=told_][checked]", "value").iter().all(String::is_empty), "nothing stands answered");
    let at = |text: &str| browser.body.find(text).unwrap_or_else(|| panic!("{text} is not there"));
    assert!(at(&told[0]) < at("id=\"weight\""), "before anything is measured");
    let way = fields(&browser, "way_");
    let answers = [
        (told[0].as_str(), "done"),
        (told[1].as_str(), "not"),
        (way[1].as_str(), "The hens do not lay"),
        ("day", "other"),
        ("on_day", "16"),
        ("on_month", "11"),
        ("on_year", "2026"),
    ];
    visit(&mut browser, &code, &answers).await;
    browser.open(&format!("/children/{code}")).await.says("Done · 16 November").says("Not done · 16 November");
    browser.says("In the way: The hens do not lay").says("Not asked yet");

    // Only the one that nobody answered for is asked about again.
    browser.open(&form).await;
    assert_eq!(fields(&browser, "told_"), [told[2].clone()]);
    // As of a day before, nobody had told anything.
    browser.open(&format!("/children/{code}?as_of=2026-11-10")).await.says("Egg on market day").does_not_say("The hens do not lay");

    // The supervisor sees both the child and what was difficult, and why.
    let mut supervisor = site.signed_in("olani").await;
    supervisor.open(&format!("/children/{code}")).await.says("In the way: The hens do not lay");
    supervisor.open("/agreed-steps").await.says("One step was difficult").says("Egg on market day").says("The hens do not lay");
    let numbers = supervisor.texts("main table tbody td");
    assert_eq!(numbers, ["3", "1", "0", "1"], "three agreed; one done, none in part, one not done");
    supervisor.open("/team").await;
    assert!(supervisor.attrs("main a", "href").contains(&"/agreed-steps".to_owned()));
    // Another supervisor's children are not told of.
    let mut other = site.signed_in("hembo").await;
    other.open("/agreed-steps").await.says("No step was told as difficult").does_not_say("Egg").does_not_say("Neruka");
    assert!(other.texts("main table tbody td").is_empty());
}

#[actix_web::test]
async fn a_fourth_step_refuses_nothing_and_faults_keep_all_that_was_said() {
    let site = Site::new().await;
    let (mut browser, code) = with_child(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    assert_eq!(browser.attrs("main select[name^=step]", "name"), ["step1", "step2", "step3"], "there is no fourth place");
    let (path, mut pairs) = browser.filled("main form", &[("step1_words", "One"), ("step2_words", "Two"), ("step3_words", "Three")]);
    pairs.extend([("step4_words".to_owned(), "Four".to_owned()), ("weight".to_owned(), "735".to_owned())]);
    pairs.retain(|(name, value)| name != "weight" || value == "735");
    browser.send(&path, &pairs).await.is(422);
    let (_, kept) = browser.filled("main form", &[]);
    assert!(kept.contains(&("step2_words".to_owned(), "Two".to_owned())), "{kept:?}");
    browser.submit("main form", &[("weight", "7.35"), ("coach", "no_honey")]).await.is(200).says("Three").does_not_say("Four");
    // A correction shows what was said and agreed, and saving it as it stands changes nothing of it.
    let correct = browser.attrs("main a[href$=correct]", "href").remove(0);
    browser.open(&correct).await;
    let (_, stored) = browser.filled("main form", &[]);
    for pair in [("coach", "no_honey"), ("step1_words", "One"), ("step3_words", "Three")] {
        assert!(stored.contains(&(pair.0.to_owned(), pair.1.to_owned())), "{pair:?}: {stored:?}");
    }
    browser.submit("main form", &[("reason", "looked again"), ("step3_words", "")]).await.is(200).says("Two").does_not_say("Three");
    browser.open(&format!("/children/{code}/visits")).await.says("looked again");
}

#[actix_web::test]
async fn answers_about_another_child_s_steps_are_not_taken() {
    let site = Site::new().await;
    let (mut browser, code) = with_child(&site).await;
    browser.open(&format!("/children/{code}/visits/new")).await;
    let (path, mut pairs) = browser.filled("main form", &[]);
    pairs.push(("told_0192aaaa000070008000000000000001_1".to_owned(), "done".to_owned()));
    browser.send(&path, &pairs).await.is(200);
    browser.open(&format!("/children/{code}")).await.does_not_say("Agreed with the family");
}

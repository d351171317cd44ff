//! Why a follow-up is there, today and on a past day, and the text to read to a clinician.

use domain::rule::RuleId;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use domain::visit::Visit;
use spoonround::service::protocols;
use spoonround::service::reassess::Moment;
use spoonround::service::reassess::reassess;
use spoonround::store::StoreError;
use spoonround::store::children::ChildRecord;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::noon;
use spoonround::store::visits;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::harness::Browser;
use crate::site::Site;

/// A girl of eight months, with a phone and a way to the home that no page to be read aloud may show.
async fn sela(site: &Site) -> ChildRecord {
    let sela = ChildRecord {
        phone: Some("+00 7712 345".to_owned()),
        directions: Some("Behind the mill".to_owned()),
        ..child(1, "Sela", site.ulopi, site.mireni)
    };
    register(site, &sela, |plain| plain).await;
    sela
}

/// Records a visit as the program does: the child is judged anew.
async fn visited(site: &Site, child: &ChildRecord, n: u128, on: &str, fill: impl FnOnce(&mut Visit)) {
    let mut record = a_visit(n, child, d(on));
    record.recorded_by = site.mireni;
    fill(&mut record.visit);
    site.db
        .db
        .write::<_, StoreError, _>(async |tx| {
            visits::insert(tx, &record).await?;
            let moment = Moment { today: d(on), now: noon(on), by: Some(site.mireni) };
            reassess(tx, &protocols::for_tests(), child.id, moment).await?;
            Ok(())
        })
        .await
        .expect("recorded");
}

fn arm(mm: u16, feet: Option<bool>) -> impl FnOnce(&mut Visit) {
    move |v| {
        v.muac = Muac::from_mm(mm).ok();
        v.oedema = feet;
    }
}

fn weight(grams: u32) -> impl FnOnce(&mut Visit) {
    move |v| v.weight = Weight::from_grams(grams).ok()
}

async fn open(browser: &mut Browser, rest: &str) {
    browser.open(&format!("/children/{}/why/{rest}", code(1))).await;
}

/// What the history says: day and what happened.
fn history(browser: &Browser) -> Vec<(String, String)> {
    let days = browser.texts("ul.history li > p:first-child > :first-child");
    let whats = browser.texts("ul.history .what");
    days.into_iter().zip(whats).collect()
}

#[actix_web::test]
async fn the_page_tells_what_is_still_missing_and_a_past_day_does_not_know_later_ones() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 90, "2026-11-05", arm(113, None)).await;
    let mut browser = site.signed_in("mireni").await;
    open(&mut browser, "wasting.severe/1").await;
    browser.is(200).says("An arm of 125 mm or more").says("Still missing: both of the two clear visits.");
    visited(&site, &sela, 91, "2026-11-12", arm(126, None)).await;
    open(&mut browser, "wasting.severe/1").await;
    browser.says("Still missing: both of the two clear visits.").says("Not known from it: both feet.");
    visited(&site, &sela, 92, "2026-11-13", arm(126, Some(false))).await;
    open(&mut browser, "wasting.severe/1").await;
    browser.says("The first was on 13 November; another counts from 20 November on.");
    let told = |browser: &Browser| history(browser).into_iter().map(|(_, what)| what).collect::<Vec<_>>();
    assert_eq!(told(&browser), ["Opened", "Kept", "Kept"]);
    browser.says("At home · Mireni").says("something it needs was not measured or asked").says("clear, and more is needed");
    // The second clear visit closes it; the days before stay as they were.
    visited(&site, &sela, 93, "2026-11-21", arm(127, Some(false))).await;
    open(&mut browser, "wasting.severe/1").await;
    browser.says("Closed on 21 November 2026").does_not_say("Still missing");
    assert_eq!(told(&browser), ["Opened", "Kept", "Kept", "Closed"]);
    open(&mut browser, "wasting.severe/1?as_of=2026-11-14").await;
    browser.is(200).says("You see 14 November 2026").says("another counts from 20 November on").does_not_say("Closed on");
    assert_eq!(told(&browser), ["Opened", "Kept", "Kept"]);
    open(&mut browser, "wasting.severe/open?as_of=2026-11-06").await;
    browser.is(200).says("both of the two clear visits").does_not_say("13 November");
    assert_eq!(told(&browser), ["Opened"]);
    open(&mut browser, "wasting.severe/1?as_of=2026-11-04").await;
    browser.is(404);
    open(&mut browser, "wasting.severe/open").await;
    browser.is(404);
}

#[actix_web::test]
async fn a_past_day_offers_no_closing_and_keeps_the_day_in_its_links() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 90, "2026-11-05", |v| v.meals = Some(0)).await;
    visited(&site, &sela, 91, "2026-11-12", |v| v.appetite_poor_days = Some(4)).await;
    let mut desk = site.signed_in("olani").await;
    open(&mut desk, "appetite.poor/1").await;
    assert_eq!(desk.attrs("form[method=post]", "action").iter().filter(|a| a.ends_with("/close")).count(), 1);
    open(&mut desk, "appetite.poor/1?as_of=2026-11-13").await;
    assert_eq!(desk.attrs("form[method=post]", "action").iter().filter(|a| a.ends_with("/close")).count(), 0);
    let links = desk.attrs("main a", "href");
    for kept in ["?as_of=2026-11-13", "/aloud?as_of=2026-11-13"] {
        assert!(links.iter().any(|href| href.ends_with(kept)), "{kept}: {links:?}");
    }
}

#[actix_web::test]
async fn what_is_silenced_stands_with_its_own_numbers_and_why() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 90, "2026-09-20", weight(7_500)).await;
    visited(&site, &sela, 91, "2026-11-05", weight(7_300)).await;
    let mut browser = site.signed_in("mireni").await;
    open(&mut browser, "weight.loss/1").await;
    browser.is(200).says("covered: of one chain, and Weight lost stands higher.").says("No weight gained in 46 days (down 200 g).");
    open(&mut browser, "weight.loss/1/aloud.txt").await;
    for said in ["ALSO TRUE", "No weight gained: covered: of one chain", "No weight gained in 46 days (down 200 grams)."] {
        assert!(browser.body.contains(said), "{said}:\n{}", browser.body);
    }
}

#[actix_web::test]
async fn a_loss_stands_beside_what_the_scale_alone_can_do() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 90, "2026-09-20", weight(7_500)).await;
    visited(&site, &sela, 91, "2026-11-05", weight(7_440)).await;
    let mut browser = site.signed_in("mireni").await;
    open(&mut browser, "weight.static/1").await;
    browser
        .is(200)
        .says("Is it real or is it the scale?")
        .says("up to 100 g apart")
        .says("This finding lies within that error: measure a second time.");
    browser.says("−60 g; a second weighing could make it anything from −160 g to +40 g. It is compared with 0 g.");
    assert_eq!(browser.texts("main > p .cls").first().map(String::as_str), Some("Within 14 days"), "it stays as urgent as it is");
    let seq = browser.attrs("ul.history a", "href")[0].clone();
    browser.open(&seq).await.is(200).says("This finding lies within that error").says("Within 14 days");
    visited(&site, &sela, 92, "2026-11-20", weight(7_100)).await;
    open(&mut browser, "weight.loss/1").await;
    browser.says("This finding is more than that error.").does_not_say("measure a second time");
}

#[actix_web::test]
async fn the_text_for_a_clinician_says_what_is_needed_and_not_who_it_is() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 89, "2026-08-01", weight(6_900)).await;
    visited(&site, &sela, 90, "2026-09-20", weight(7_500)).await;
    visited(&site, &sela, 91, "2026-10-20", weight(7_440)).await;
    visited(&site, &sela, 92, "2026-11-05", |v| {
        arm(113, Some(false))(v);
        weight(5_900)(v);
        v.danger_signs = Some(std::collections::BTreeSet::new());
    })
    .await;
    visited(&site, &sela, 93, "2026-11-12", |v| {
        v.outcomes = vec![ToldOutcome { rule: RuleId::WastingSevere, outcome: Outcome::NotReached }];
    })
    .await;
    let mut browser = site.signed_in("mireni").await;
    open(&mut browser, "wasting.severe/1/aloud.txt").await;
    browser.is(200);
    assert_eq!(browser.headers.get("content-type").map(String::as_str), Some("text/plain; charset=utf-8"));
    assert_eq!(browser.headers.get("cache-control").map(String::as_str), Some("no-store"));
    let plain = browser.body.clone();
    let printed = domain::child_code::ChildCode::parse(&code(1)).expect("a code").printed();
    for said in [
        printed.as_str(),
        "girl, age 8 months and 24 days",
        "The age is not corrected.",
        "arm 113 millimetres, below 115 millimetres",
        "Refer today. To be checked by 7 November 2026.",
        "5 November 2026, age 8 months: weight 5.90 kilograms, upper arm 113 millimetres",
        "weight for age z-score minus 2.",
        "RULE IN WORDS",
        "Source in the protocol: ",
        "WHAT HAPPENED TO IT",
        "5 November 2026: Opened. Much too thin: arm 113 millimetres, below 115 millimetres. Refer today. To be checked by 7 November 2026.",
        "feet not swollen",
        "Asked on 5 November 2026: none.",
        "12 November 2026: Could not be reached.",
        "Refer to nutrition treatment today",
        "Suggested by a rule, not a diagnosis.",
        "Not yet approved by a clinician.",
    ] {
        assert!(plain.contains(said), "{said:?} is missing:\n{plain}");
    }
    assert!(!plain.contains("1 August"), "only the last three measurements are read:\n{plain}");
    for kept_back in ["Sela", "Anwe", "Ulopi", "7712", "Behind", "Mireni"] {
        assert!(!plain.contains(kept_back), "{kept_back} is told:\n{plain}");
    }
    // No markup, no sign that a voice cannot say.
    for sign in ['<', '>', '−', '±', '·', '|', '\t'] {
        assert!(!plain.contains(sign), "{sign:?}:\n{plain}");
    }
    let unit = |text: &str| {
        text.split_whitespace().any(|word| ["kg", "g", "cm", "mm", "%", "z"].contains(&word.trim_matches(['.', ',', ':', ';'])))
    };
    assert!(!unit(&plain), "a unit is not spelled out:\n{plain}");
    // The screen says the same, large.
    open(&mut browser, "wasting.severe/1/aloud").await;
    browser.is(200);
    let screen = browser.texts(".aloud p");
    assert!(!screen.is_empty() && screen.iter().all(|line| plain.contains(line.as_str())), "{screen:?}");
    assert!(!browser.texts(".aloud").concat().contains("Sela"));
    open(&mut browser, "wasting.severe/1/aloud.txt?as_of=2026-11-06").await;
    assert!(
        browser.body.contains("As it stood on 6 November 2026.") && browser.body.contains("Nothing has been told so far."),
        "{}",
        browser.body
    );
    for (name, status) in [("olani", 200), ("tamsi", 404), ("hembo", 404), ("bemu", 403)] {
        let mut other = site.signed_in(name).await;
        other.peek(&format!("/children/{}/why/wasting.severe/1/aloud.txt", code(1))).await.is(status);
    }
}

#[actix_web::test]
async fn the_text_is_there_in_french() {
    let site = Site::new().await;
    let sela = sela(&site).await;
    visited(&site, &sela, 90, "2026-09-20", weight(7_500)).await;
    visited(&site, &sela, 91, "2026-11-05", weight(7_440)).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round").await.submit("form[action='/language']", &[("language", "fr")]).await;
    open(&mut browser, "weight.static/1/aloud.txt").await;
    for said in ["7,44 kilogrammes", "moins 60 grammes", "100 grammes", "mesurez une seconde fois"] {
        assert!(browser.body.contains(said), "{said}:\n{}", browser.body);
    }
}

//! Moving a visit and merging two records of children who live with others and whose families agreed steps: homes and steps go where
//! the children are.

use spoonround::store::households;

use crate::corrections::child;
use crate::harness::Browser;
use crate::merging::DEKO;
use crate::merging::NOTE;
use crate::merging::New;
use crate::merging::is_sound;
use crate::merging::register;
use crate::merging::visit;
use crate::site::Site;

const SELA: New<'static> = New { worker: "mireni", name: "Sela", sex: "F", born_day: "2", area: "ulopi" };
const LOMI: New<'static> = New { worker: "mireni", name: "Lomi", sex: "M", born_day: "9", area: "ulopi" };
const STEP: &str = "Egg on market day";

/// Fields of the form whose name begins so.
fn fields(browser: &Browser, beginning: &str) -> Vec<String> {
    let mut names = browser.attrs(&format!("main form [name^=\"{beginning}\"]"), "name");
    names.dedup();
    names
}

async fn move_to(browser: &mut Browser, from: &str, seq: &str, to: &str) {
    browser.open(&format!("/children/{from}/visits/{seq}/move?to={to}")).await.is(200);
    browser.submit("main form:not([role])", &[NOTE]).await.is(200).says("The visit was moved here");
}

async fn live_together(browser: &mut Browser, one: &str, other: &str) {
    browser.open(&format!("/children/{one}/home")).await.submit("details form", &[("other", other)]).await.is(200);
}

/// Merges the second record into the first.
async fn merge(site: &Site, first: &str, second: &str) {
    let mut desk = site.signed_in("olani").await;
    desk.open(&format!("/children/{first}/merge?with={second}")).await.is(200);
    let form = "main form:not([role])";
    desk.submit(form, &[("survivor", "first"), NOTE, ("sure", "yes")]).await.is(200).says("The two records are one");
}

/// The codes of the children that live in a home, in the order of `among`.
async fn home_of(browser: &mut Browser, of: &str, among: &[&str]) -> Vec<String> {
    browser.open(&format!("/children/{of}/home")).await.is(200);
    let links = browser.attrs("main h2.plain a.link", "href");
    let all = links.iter().filter_map(|href| href.strip_prefix("/children/")).collect::<Vec<_>>();
    assert!(all.iter().all(|code| among.contains(code)), "{all:?}");
    among.iter().filter(|code| all.contains(code)).map(|code| (*code).to_owned()).collect()
}

#[actix_web::test]
async fn a_moved_visit_takes_its_agreed_steps_along_and_they_are_asked_where_it_went() {
    let site = Site::new().await;
    let (deko, sela) = (register(&site, &DEKO).await, register(&site, &SELA).await);
    let mut browser = site.signed_in("mireni").await;
    let seq = visit(&mut browser, &sela, &[("day", "yesterday"), ("step1_words", STEP)]).await;
    browser.open(&format!("/children/{sela}/visits/new")).await.says("Agreed last time").says(STEP);
    move_to(&mut browser, &sela, &seq, &deko).await;
    browser.open(&format!("/children/{sela}/visits/new")).await.does_not_say(STEP).does_not_say("Agreed last time");
    browser.open(&format!("/children/{sela}")).await.does_not_say(STEP);
    browser.open(&format!("/children/{deko}")).await.says(STEP).says("Not asked yet");
    browser.open(&format!("/children/{deko}/visits/new")).await.says("Agreed last time").says(STEP);
    let (told, way) = (fields(&browser, "told_").remove(0), fields(&browser, "way_").remove(0));
    visit(&mut browser, &deko, &[(&told, "not"), (&way, "The hens do not lay")]).await;
    browser.open(&format!("/children/{deko}")).await.says("Not done").says("In the way: The hens do not lay");
    let mut desk = site.signed_in("olani").await;
    desk.open("/agreed-steps").await.is(200).says("The hens do not lay").says("Deko").does_not_say("Sela");
    is_sound(&site).await;
}

#[actix_web::test]
async fn an_answer_about_a_step_that_moved_away_is_asked_of_the_right_family_again() {
    let site = Site::new().await;
    let (deko, sela) = (register(&site, &DEKO).await, register(&site, &SELA).await);
    let mut browser = site.signed_in("mireni").await;
    let agreed = visit(&mut browser, &sela, &[("day", "yesterday"), ("step1_words", STEP)]).await;
    browser.open(&format!("/children/{sela}/visits/new")).await;
    let told = fields(&browser, "told_").remove(0);
    let answered = visit(&mut browser, &sela, &[(&told, "done")]).await;
    move_to(&mut browser, &sela, &agreed, &deko).await;
    browser.open(&format!("/children/{sela}")).await.does_not_say(STEP);
    browser.open(&format!("/children/{deko}/visits/new")).await.says(STEP);
    assert_eq!(fields(&browser, "told_"), [told], "nobody asked this family yet");
    // The visit that holds the answer can still be corrected, without it.
    browser.open(&format!("/children/{sela}/visits/{answered}/correct")).await.does_not_say(STEP);
    browser.submit("main form", &[("weight", "7.35"), ("reason", "it was not written down")]).await.is(200).says("7.35 kg");
    is_sound(&site).await;
}

#[actix_web::test]
async fn a_merged_child_lives_where_either_record_lived_and_is_asked_what_either_agreed() {
    let site = Site::new().await;
    let (first, lomi) = (register(&site, &DEKO).await, register(&site, &LOMI).await);
    let mut browser = site.signed_in("mireni").await;
    let second = register(&site, &DEKO).await;
    visit(&mut browser, &second, &[("day", "yesterday"), ("step1_words", STEP)]).await;
    live_together(&mut browser, &second, &lomi).await;
    let all = [first.as_str(), &second, &lomi];
    assert_eq!(home_of(&mut browser, &lomi, &all).await, [second.clone(), lomi.clone()]);
    let gone = child(&site, &second).await.id;
    merge(&site, &first, &second).await;
    assert_eq!(home_of(&mut browser, &first, &all).await, [first.clone(), lomi.clone()]);
    assert_eq!(home_of(&mut browser, &lomi, &all).await, [first.clone(), lomi.clone()]);
    assert_eq!(households::of_child(site.db.db.direct(), gone).await.expect("readable"), None, "the record that went lives nowhere");
    browser.open(&format!("/children/{first}/visits/new")).await.says("Agreed last time").says(STEP);
    assert_eq!(fields(&browser, "told_").len(), 1);
    is_sound(&site).await;
}

#[actix_web::test]
async fn of_two_homes_the_one_of_the_record_that_goes_on_stays() {
    let site = Site::new().await;
    let (first, lomi, sela) = (register(&site, &DEKO).await, register(&site, &LOMI).await, register(&site, &SELA).await);
    let second = register(&site, &DEKO).await;
    let mut browser = site.signed_in("mireni").await;
    live_together(&mut browser, &first, &lomi).await;
    live_together(&mut browser, &second, &sela).await;
    merge(&site, &first, &second).await;
    let all = [first.as_str(), &second, &lomi, &sela];
    assert_eq!(home_of(&mut browser, &first, &all).await, [first.clone(), lomi.clone()]);
    assert_eq!(home_of(&mut browser, &sela, &all).await, std::slice::from_ref(&sela), "nobody is taken into another home by a merge");
}

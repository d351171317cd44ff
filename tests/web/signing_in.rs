//! Signing in and out, sessions and their end.

use chrono::Duration;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use spoonround::clock::Clock;

use crate::harness::Browser;
use crate::site::PASSWORD;
use crate::site::Site;

#[actix_web::test]
async fn a_wrong_password_says_nothing_of_who_exists() {
    let site = Site::new().await;
    let mut known = site.browser();
    known.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", "no such thing at all")]).await.is(422);
    let mut unknown = site.browser();
    unknown.open("/sign-in").await.submit("main form", &[("name", "nobody"), ("password", "no such thing at all")]).await.is(422);
    assert_eq!(known.text().replace("mireni", "X"), unknown.text().replace("nobody", "X"));
}

#[actix_web::test]
async fn after_six_wrong_tries_a_name_waits_but_not_for_ever() {
    let site = Site::new().await;
    let mut browser = site.browser();
    browser.open("/sign-in").await;
    for _ in 0..6 {
        browser.submit("main form", &[("name", "mireni"), ("password", "wrong wrong wrong")]).await.is(422);
    }
    browser.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await.is(429);
    site.clock.set(site.clock.now() + Duration::seconds(2));
    browser.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await;
    assert!(browser.attrs("form", "action").iter().any(|a| a == "/sign-out"), "{}", browser.text());
}

#[actix_web::test]
async fn signing_out_ends_the_session_on_the_server() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    let thief = browser.clone();
    browser.submit("form[action='/sign-out']", &[]).await;
    let mut thief = thief;
    thief.open("/password").await;
    assert_eq!(thief.attrs("main form", "action"), ["/sign-in"], "the old cookie opens nothing: {}", thief.text());
}

#[actix_web::test]
async fn a_session_ends_when_it_is_not_used() {
    let site = Site::new().await;
    let mut browser = site.signed_in("bemu").await;
    site.clock.set(site.clock.now() + Duration::minutes(29));
    browser.peek("/password").await.is(200);
    site.clock.set(site.clock.now() + Duration::minutes(31));
    browser.peek("/password").await.is(303);
}

#[actix_web::test]
async fn changing_the_password_shuts_out_other_phones() {
    let site = Site::new().await;
    let mut lost = site.signed_in("mireni").await;
    let mut own = site.signed_in("mireni").await;
    own.open("/password").await.submit("main form", &[("present", "wrong"), ("new", "short"), ("again", "other")]).await.is(422);
    assert_eq!(own.texts(".fault").len(), 3, "all faults at once: {}", own.text());
    own.does_not_say("All you wrote is still here");
    let fields = [("present", PASSWORD), ("new", "three herons by the lake"), ("again", "three herons by the lake")];
    own.open("/password").await.submit("main form", &fields).await;
    own.peek("/password").await.is(200);
    lost.peek("/password").await.is(303);
}

const NEW: &str = "three herons by the lake";
const CHANGED: [(&str, &str); 3] = [("present", PASSWORD), ("new", NEW), ("again", NEW)];

/// Whether somebody comes in with this password, on another phone.
async fn comes_in(site: &Site, name: &str, password: &str) -> bool {
    let mut browser = site.browser();
    browser.open("/sign-in").await.submit("main form", &[("name", name), ("password", password)]).await;
    browser.attrs("form", "action").iter().any(|action| action == "/sign-out")
}

#[actix_web::test]
async fn the_form_of_a_new_password_sent_twice_changes_it_once_and_says_the_same() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    let (path, sent) = browser.open("/password").await.filled("main form", &CHANGED);
    browser.send(&path, &sent).await.is(200);
    let first = browser.path.clone();
    // Who came in meanwhile stays in: the act is not done again.
    let mut meanwhile = site.browser();
    meanwhile.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", NEW)]).await.is(200);
    for _ in 0..2 {
        assert_eq!(browser.send(&path, &sent).await.is(200).path, first);
        meanwhile.peek("/password").await.is(200);
    }
    // The same form with another new password is not that form, and what was saved first stays.
    let other: Vec<(String, String)> = sent.iter().map(|(k, v)| (k.clone(), v.replace(NEW, "four herons in the reeds"))).collect();
    browser.send(&path, &other).await.is(409);
    assert!(comes_in(&site, "mireni", NEW).await && !comes_in(&site, "mireni", "four herons in the reeds").await);
    // Nor is it anybody else's, who has a form of the same key.
    let mut other = site.signed_in("tamsi").await;
    let (_, mut theirs) = other.open("/password").await.filled("main form", &CHANGED);
    theirs
        .iter_mut()
        .filter(|(name, _)| name == "key")
        .for_each(|(_, key)| key.clone_from(&sent.iter().find(|(n, _)| n == "key").expect("a key").1));
    other.send(&path, &theirs).await.is(404);
    assert!(comes_in(&site, "tamsi", PASSWORD).await, "nothing was changed");
    // What is remembered of the form tells nothing of the password.
    let sql = Statement::from_string(DbBackend::Sqlite, "SELECT hex(payload_hash) FROM submissions WHERE outcome = '/password'");
    let rows = site.db.db.direct().query_all_raw(sql).await.expect("an answer");
    let kept: Vec<String> = rows.iter().map(|row| row.try_get_by_index(0).expect("text")).collect();
    let of_nothing = "E3B0C44298FC1C149AFBF4C8996FB92427AE41E4649B934CA495991B7852B855";
    assert_eq!(kept, [of_nothing], "SHA-256 of nothing (FIPS 180-4; from memory)");
}

#[actix_web::test]
async fn a_first_password_sent_twice_is_no_wrong_password() {
    let site = Site::new().await;
    let mut desk = site.signed_in("teveli").await;
    let code = desk.open("/people/mireni").await.submit("form[action$='/code']", &[]).await.is(200).texts(".code").remove(0);
    let mut browser = site.browser();
    browser.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", &code)]).await;
    let (path, sent) = browser.filled("main form", &[("new", NEW), ("again", NEW)]);
    assert_eq!(path, "/password");
    // Asked for the present one, as somebody would be who has a password now, the second would fail.
    for _ in 0..2 {
        assert_eq!(browser.send(&path, &sent).await.is(200).path, "/round");
    }
    assert!(comes_in(&site, "mireni", NEW).await);
}

#[actix_web::test]
async fn a_one_time_code_sent_twice_in_one_form_lets_in_and_in_another_form_or_later_does_not() {
    let site = Site::new().await;
    // The answer, and the cookie in it, got lost on the way.
    let (browser, path, sent, lost) = used_a_code(&site).await;
    assert_eq!(lost.path, "/password");
    let mut again = browser.clone();
    assert_eq!(again.send(&path, &sent).await.is(200).path, "/password", "the same form once more");
    // Another page, or another code in the same one, is not that form.
    let code = &sent.iter().find(|(name, _)| name == "password").expect("typed").1;
    let mut other = site.browser();
    other.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", code)]).await.is(422);
    let changed = |field: &str, to: &str| -> Vec<(String, String)> {
        sent.iter().map(|(name, value)| (name.clone(), if name == field { to.to_owned() } else { value.clone() })).collect()
    };
    browser.clone().send(&path, &changed("password", "AAAA-BBBB-CCCC-DDDD")).await.is(422);
    browser.clone().send(&path, &changed("name", "tamsi")).await.is(422);
    site.clock.set(site.clock.now() + Duration::minutes(9));
    browser.clone().send(&path, &sent).await.is(200);
    site.clock.set(site.clock.now() + Duration::minutes(1));
    browser.clone().send(&path, &sent).await.is(422);
}

/// Mireni used a one-time code: the browser it was typed in, its form as sent, and the browser that is in.
async fn used_a_code(site: &Site) -> (Browser, String, Vec<(String, String)>, Browser) {
    let mut desk = site.signed_in("teveli").await;
    let code = desk.open("/people/mireni").await.submit("form[action$='/code']", &[]).await.is(200).texts(".code").remove(0);
    let mut browser = site.browser();
    let (path, sent) = browser.open("/sign-in").await.filled("main form", &[("name", "mireni"), ("password", &code)]);
    let mut inside = browser.clone();
    inside.send(&path, &sent).await.is(200);
    (browser, path, sent, inside)
}

#[actix_web::test]
async fn a_used_code_opens_nothing_once_a_password_is_chosen_or_another_code_is_handed_over() {
    let site = Site::new().await;
    let (mut again, path, sent, mut inside) = used_a_code(&site).await;
    inside.submit("main form", &[("new", NEW), ("again", NEW)]).await.is(200);
    again.send(&path, &sent).await.is(422);
    let site = Site::new().await;
    let (mut again, path, sent, _) = used_a_code(&site).await;
    site.signed_in("teveli").await.open("/people/mireni").await.submit("form[action$='/code']", &[]).await.is(200);
    again.send(&path, &sent).await.is(422);
}

#[actix_web::test]
async fn signing_out_or_choosing_a_language_twice_leads_to_the_same_page() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    let (path, sent) = browser.filled("form[action='/sign-out']", &[]);
    // The first answer got lost: the browser still has its cookie.
    let mut again = browser.clone();
    for sending in [&mut browser, &mut again] {
        sending.send(&path, &sent).await.is(200).does_not_say("What you wrote");
        assert_eq!((sending.path.as_str(), sending.attrs("main form", "action")), ("/sign-in", vec!["/sign-in".to_owned()]));
        assert!(sending.attrs("main [name=carried]", "value").is_empty(), "a form of signing out is not kept");
    }
    // And with the cookie gone.
    assert_eq!(browser.send(&path, &sent).await.is(200).path, "/sign-in");
    let (path, sent) = browser.filled("form[action='/language']", &[("language", "fr")]);
    for _ in 0..2 {
        assert_eq!(browser.send(&path, &sent).await.is(200).attrs("html", "lang"), ["fr"]);
    }
}

#[actix_web::test]
async fn a_form_left_open_over_the_end_of_a_session_is_kept() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/password").await;
    let (path, mut pairs) = browser.filled("main form", &[("present", PASSWORD), ("new", "three herons by the lake")]);
    pairs.push(("note".to_owned(), "two\nlines = kept".to_owned()));
    site.clock.set(site.clock.now() + Duration::days(20));
    browser.send(&path, &pairs).await.is(401).says("What you wrote is kept").does_not_say("could not be kept");
    browser.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await.is(200);
    let (again, kept) = browser.filled("main form", &[]);
    assert_eq!(again, "/password");
    for (name, value) in pairs.iter().filter(|(name, _)| name != "token") {
        assert!(kept.contains(&(name.clone(), value.clone())), "{name}={value} was lost: {kept:?}");
    }
}

#[actix_web::test]
async fn a_form_that_nobody_can_be_given_back_is_not_said_to_be_kept() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/password").await;
    let (path, pairs) = browser.filled("main form", &[("new", "three herons by the lake")]);
    // Signed out in another tab: nobody knows any more whose the form is, with the cookie still sent or without it.
    let mut other_tab = browser.clone();
    browser.submit("form[action='/sign-out']", &[]).await.is(200);
    for sending in [&mut browser, &mut other_tab] {
        sending.send(&path, &pairs).await.is(401).says("could not be kept").says("Go back in the browser");
        sending.does_not_say("is kept").does_not_say("still there to save");
        assert!(sending.attrs("main [name=carried]", "value").is_empty(), "it is not carried");
    }
}

#[actix_web::test]
async fn a_carried_form_is_given_to_nobody_else() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/password").await;
    let (path, pairs) = browser.filled("main form", &[("new", "a secret thing typed")]);
    site.clock.set(site.clock.now() + Duration::days(20));
    browser.send(&path, &pairs).await.is(401);
    browser.submit("main form", &[("name", "tamsi"), ("password", PASSWORD)]).await;
    browser.does_not_say("a secret thing typed");
    assert!(!browser.body.contains("a secret thing typed"));
}

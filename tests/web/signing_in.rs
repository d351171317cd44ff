//! Signing in and out, sessions and their end.

use chrono::Duration;
use spoonround::clock::Clock;

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

#[actix_web::test]
async fn a_form_left_open_over_the_end_of_a_session_is_kept() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/password").await;
    let (path, mut pairs) = browser.filled("main form", &[("present", PASSWORD), ("new", "three herons by the lake")]);
    pairs.push(("note".to_owned(), "two\nlines = kept".to_owned()));
    site.clock.set(site.clock.now() + Duration::days(20));
    browser.send(&path, &pairs).await.is(401);
    browser.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await.is(200);
    let (again, kept) = browser.filled("main form", &[]);
    assert_eq!(again, "/password");
    for (name, value) in pairs.iter().filter(|(name, _)| name != "token") {
        assert!(kept.contains(&(name.clone(), value.clone())), "{name}={value} was lost: {kept:?}");
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

//! The administrator's pages: people, areas, settings.

use spoonround::store::audit;
use spoonround::store::people;
use spoonround::store::people::PersonRecord;

use crate::families::child;
use crate::families::code;
use crate::families::register;
use crate::harness::Browser;
use crate::site::PASSWORD;
use crate::site::Site;

const NEW: [(&str, &str); 3] = [("full_name", "Anwe Lomi"), ("sign_in_name", "anwe"), ("role", "supervisor")];

async fn stored(site: &Site, name: &str) -> Option<PersonRecord> {
    people::by_sign_in_name(site.db.db.direct(), name).await.expect("readable")
}

async fn actions(site: &Site, kind: &str, key: &str) -> Vec<(String, Vec<String>)> {
    let found = audit::of_object(site.db.db.direct(), kind, key, None, 50).await.expect("readable");
    found.into_iter().rev().map(|(_, entry)| (entry.action, entry.fields)).collect()
}

fn person_key(person: &PersonRecord) -> String {
    uuid::Uuid::from_u128(person.id.0).to_string()
}

/// The code that a page shows, as a reader would copy it.
fn code_on(browser: &Browser) -> String {
    browser.texts("main strong.code").first().expect("a code on the page").replace(' ', "")
}

#[actix_web::test]
async fn a_new_person_signs_in_with_the_code_and_chooses_a_password() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/new").await.submit("main form", &NEW).await.is(200);
    office.says("Hand this code to Anwe Lomi now").says("28 November");
    let code = code_on(&office);
    assert_eq!(code.len(), 19, "four groups of four: {code}");
    let mut anwe = site.browser();
    anwe.open("/sign-in").await.submit("main form", &[("name", "anwe"), ("password", &code.to_lowercase())]).await;
    anwe.open("/").await;
    assert_eq!(anwe.path, "/password", "a password comes first:\n{}", anwe.text());
    anwe.submit("main form", &[("new", "granary heron seven"), ("again", "granary heron seven")]).await;
    let mut again = site.browser();
    again.open("/sign-in").await.submit("main form", &[("name", "anwe"), ("password", &code)]).await.is(422);
    let person = stored(&site, "anwe").await.expect("there");
    assert_eq!(actions(&site, "person", &person_key(&person)).await, [("person.add".to_owned(), vec![])]);
}

#[actix_web::test]
async fn every_fault_of_a_person_is_told_at_once_and_nothing_typed_is_lost() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    let typed = [("full_name", ""), ("sign_in_name", "Two Words"), ("start_day", "31"), ("start_month", "2"), ("phone", "+250 1")];
    office.open("/people/new").await.submit("main form", &typed).await.is(422);
    assert_eq!(office.attrs("#summary a", "href"), ["#full_name", "#sign_in_name", "#role", "#start"]);
    for href in office.attrs("#summary a", "href") {
        assert_eq!(office.attrs(&href, "id").len(), 1, "{href} leads somewhere");
    }
    assert_eq!(office.attrs("#sign_in_name", "value"), ["Two Words"]);
    assert_eq!(office.attrs("#phone", "value"), ["+250 1"]);
    assert_eq!(office.attrs("#start", "value"), ["31"]);
    office.submit("main form", &[("full_name", "A"), ("sign_in_name", "mireni"), ("role", "worker"), ("start_day", "3")]).await.is(422);
    office.says("Somebody has this already");
    assert_eq!(stored(&site, "mireni").await.expect("there").full_name, "Mireni");
}

#[actix_web::test]
async fn the_same_form_sent_twice_adds_one_person_and_shows_one_code() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/new").await;
    let (path, pairs) = office.filled("main form", &NEW);
    office.send(&path, &pairs).await.is(200);
    let before = stored(&site, "anwe").await.expect("there");
    office.send(&path, &pairs).await.is(200);
    assert_eq!(office.path, "/people/anwe");
    assert_eq!(stored(&site, "anwe").await, Some(before), "the first code still works");
    let mut other = pairs.clone();
    other.iter_mut().find(|(name, _)| name == "full_name").expect("a name").1 = "Somebody else".to_owned();
    office.send(&path, &other).await.is(409);
}

#[actix_web::test]
async fn a_forgotten_password_and_a_lost_phone_are_helped_on_one_page() {
    let site = Site::new().await;
    let mut phone = site.signed_in("mireni").await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/mireni").await.says("Signed in on 1 phone or browser");
    office.submit("form[action='/people/mireni/sign-out']", &[]).await.is(200).says("Signed out everywhere.").says("Signed in nowhere");
    phone.peek("/password").await.is(303);
    office.open("/people/mireni").await;
    let (path, pairs) = office.filled("form[action='/people/mireni/code']", &[]);
    office.send(&path, &pairs).await.is(200);
    let code = code_on(&office);
    office.send(&path, &pairs).await.is(200).says("This code was shown already").does_not_say(&code);
    let mut browser = site.browser();
    browser.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", &code)]).await;
    assert_eq!(browser.open("/").await.path, "/password");
    // Until a new password is chosen the old one still works: a code made by mistake locks nobody out.
    site.signed_in("mireni").await;
}

#[actix_web::test]
async fn a_code_ends_after_three_days() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/mireni").await.submit("form[action='/people/mireni/code']", &[]).await;
    let code = code_on(&office);
    site.clock.set("2026-11-28T12:00:01Z".parse().expect("an instant"));
    let mut browser = site.browser();
    browser.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", &code)]).await.is(422);
}

#[actix_web::test]
async fn signing_in_can_be_taken_away_and_given_back_but_not_from_the_last_administrator() {
    let site = Site::new().await;
    let mut phone = site.signed_in("mireni").await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/mireni").await.submit("form[action='/people/mireni/deactivate']", &[]).await.is(200);
    office.says("may not sign in any more");
    phone.peek("/password").await.is(303);
    phone.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await.is(422);
    office.submit("form[action='/people/mireni/activate']", &[]).await.is(200);
    site.signed_in("mireni").await;

    office.open("/people/teveli").await.submit("form[action='/people/teveli/deactivate']", &[]).await.is(422);
    office.says("Nobody else could manage people any more");
    office.open("/people/teveli").await.submit("form[action='/people/teveli']", &[("role", "worker")]).await.is(422);
    assert_eq!(office.attrs("#summary a", "href"), ["#role"]);
    assert!(stored(&site, "teveli").await.expect("there").active);
}

#[actix_web::test]
async fn a_changed_supervisor_reaches_what_was_ticked_and_the_audit_names_fields_only() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/people/olani").await;
    assert_eq!(office.attrs("input[name=areas][checked]", "value"), ["ulopi"]);
    let form = "form[action='/people/olani']";
    office.submit(form, &[("areas", "mbiro"), ("workers", "mireni"), ("phone", "+250 780 000 000")]).await.is(200).says("Saved.");
    let assigned = people::assigned(site.db.db.direct(), site.olani).await.expect("readable");
    assert_eq!(assigned, (vec![site.mbiro], vec![site.mireni]));
    let olani = stored(&site, "olani").await.expect("there");
    let fields = ["phone", "areas", "workers"].map(str::to_owned).to_vec();
    assert_eq!(actions(&site, "person", &person_key(&olani)).await, [("person.change".to_owned(), fields)]);
}

#[actix_web::test]
async fn a_colleague_stands_in_between_two_days() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    let form = "form[action='/people/mireni/cover']";
    office.open("/people/mireni").await.submit(form, &[("covered_by", "tamsi"), ("from_day", "30")]).await.is(422);
    assert_eq!(office.attrs("#summary a", "href"), ["#from", "#to"]);
    assert_eq!(office.attrs("select[name=covered_by] option[selected]", "value"), ["tamsi"]);
    let days = [("from_day", "25"), ("from_month", "11"), ("from_year", "2026"), ("to_day", "2"), ("to_month", "12"), ("to_year", "2026")];
    office.submit(form, &days).await.is(200).says("Tamsi, 25 November to 2 December");
    office.open("/people").await.says("Away until 2 December, Tamsi stands in");
    let covers = people::covers_from(site.db.db.direct(), "2026-12-02".parse().expect("a day")).await.expect("readable");
    assert_eq!(covers.iter().map(|c| (c.worker, c.covered_by)).collect::<Vec<_>>(), [(site.mireni, site.tamsi)]);
    office.open("/people/mireni").await.submit("form[action='/people/mireni/cover/end']", &[]).await.is(200).says("Nobody stands in.");
}

#[actix_web::test]
async fn areas_are_added_renamed_and_taken_out_of_use_but_never_in_a_circle() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/areas").await.says("2 areas in use");
    let added = [("name", "Lake district"), ("code", "Ulopi"), ("parent", "mbiro")];
    office.submit("main form", &added).await.is(422).says("Somebody has this already");
    assert_eq!(office.attrs("#name", "value"), ["Lake district"]);
    office.submit("main form", &[("code", "lake")]).await.is(200).says("Added: Lake district.").says("3 areas in use");
    office.open("/areas/mbiro").await;
    assert_eq!(office.attrs("select[name=parent] option", "value"), ["", "ulopi"], "nothing that lies in it");
    let (path, mut pairs) = office.filled("main form", &[]);
    pairs.iter_mut().find(|(name, _)| name == "parent").expect("a parent").1 = "lake".to_owned();
    office.send(&path, &pairs).await.is(422);
    office.open("/areas/mbiro").await.submit("main form", &[("name", "Mbiro"), ("active", "no")]).await.is(200);
    office.says("Saved: Mbiro.").says("2 areas in use").says("Not in use");
    office.peek("/areas/nowhere").await.is(404);
    let changed = vec!["name".to_owned(), "active".to_owned()];
    assert_eq!(actions(&site, "area", "mbiro").await, [("area.change".to_owned(), changed)]);
}

#[actix_web::test]
async fn settings_hold_at_once_and_the_threshold_is_only_raised() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    let typed = [("time_zone", "Lake/Kesara"), ("small_number_threshold", "4"), ("programme_name", "Kesara Lake")];
    office.open("/settings").await.submit("main form", &typed).await.is(422);
    assert_eq!(office.attrs("#summary a", "href"), ["#time_zone", "#small_number_threshold"]);
    assert_eq!(office.attrs("#time_zone", "value"), ["Lake/Kesara"]);
    let good = [("time_zone", "Pacific/Auckland"), ("small_number_threshold", "8"), ("emergency_number", "999")];
    office.submit("main form", &good).await.is(200).says("Settings of Kesara Lake");
    // Noon in UTC is the next day there.
    office.says("26 November");
    assert_eq!(office.attrs("#small_number_threshold", "value"), ["8"]);
    site.signed_in("mireni").await.open("/password").await.says("Emergency: 999");
}

#[actix_web::test]
async fn the_office_never_links_by_internal_keys_and_never_shows_a_child() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    for path in ["/people", "/people/mireni", "/areas", "/areas/ulopi", "/settings"] {
        office.open(path).await.is(200);
        for href in office.attrs("a", "href").into_iter().chain(office.attrs("form", "action")) {
            assert!(!href.contains("0192-0000") && !href.contains("-7000-8000-"), "{href} on {path}");
            assert!(!href.starts_with("/children"), "{href} on {path}");
        }
    }
}

#[actix_web::test]
async fn areas_step_in_by_depth_and_an_area_out_of_use_tells_of_children_still_there() {
    let site = Site::new().await;
    let mut office = site.signed_in("teveli").await;
    office.open("/areas").await.submit("main form", &[("name", "Shore"), ("code", "shore"), ("parent", "mbiro")]).await.is(200);
    office.submit("main form", &[("name", "Jetty"), ("code", "jetty"), ("parent", "shore")]).await.is(200);
    assert_eq!(office.texts("div.grp strong"), ["Shore", "Jetty"]);
    assert_eq!(office.texts("div.grp div.grp strong"), ["Jetty"], "twice as far in");
    office.does_not_say("add up");
    register(&site, &child(1, "Fanu", site.mbiro, site.tamsi), |line| line).await;
    office.open("/areas/mbiro").await.submit("main form", &[("active", "no")]).await.is(200);
    office.says("Saved: Mbiro Hill is not in use. One child is still there, and stays with its worker; move it to another area.");
    office.open("/areas").await.says("Not in use, but one child is still there");
    // Nothing is blocked: the worker goes on.
    site.signed_in("tamsi").await.open(&format!("/children/{}/visits/new", code(1))).await.is(200);
}

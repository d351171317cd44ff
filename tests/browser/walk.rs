//! The main job from end to end, by four people, in a browser without script: from an empty database to a child in other hands. Every page on the way is looked at (`look`), which checks it and leaves pictures.

use std::rc::Rc;
use std::sync::mpsc;

use browser_tests::driver::Driver;
use browser_tests::look;
use browser_tests::page::Person;
use browser_tests::page::Seen;
use browser_tests::site::Site;
use browser_tests::site::built_in;
use domain::role::Role;
use spoonround::service::first_user;

const PASSWORD: &str = "lake heron basket";

/// An empty programme with its first administrator, and that person's one-time code.
fn empty_programme() -> (Site, String) {
    let (tell, told) = mpsc::channel();
    let site = Site::serve(async move |db, clock| {
        let today = browser_tests::site::TODAY.parse().expect("a date");
        let code = first_user::add(db, clock.now(), today, "Teveli Ndora", "teveli", Role::Administrator).await;
        tell.send(code.expect("an administrator").to_string()).expect("the test waits");
        built_in(db, clock).await
    });
    let code = told.recv().expect("a code");
    (site, code)
}

/// Signs in for the first time: by code, then a password of one's own.
async fn first_sign_in(person: &Person, name: &str, code: &str) {
    person.open("/sign-in").await.write("name", name).await.write("password", code).await.press("Sign in").await;
    person.says("Choose your own password").await;
    person.write("new", PASSWORD).await.write("again", PASSWORD).await.press("Change it").await;
    person.says("Signed in as").await;
}

/// The administrator adds a person and reads out the code.
async fn add_person(admin: &Person, full_name: &str, sign_in: &str, role: Role, areas: &[&str]) -> String {
    admin.open("/people").await.follow("Add a person").await;
    admin.write("full_name", full_name).await.write("sign_in_name", sign_in).await.tick("role", role.code()).await;
    for area in areas {
        admin.tick("areas", area).await;
    }
    admin.press("Save").await.says("Hand this code to").await;
    let code = admin.shown("strong.code").await;
    assert!(!code.is_empty(), "a code is shown");
    code
}

#[tokio::test]
async fn four_people_do_the_main_job() {
    let (site, admin_code) = empty_programme();
    let driver = Driver::start();
    let seen = Rc::new(Seen::default());
    look::forget_pictures("walk");
    let (mireni_code, olani_code, bemu_code) = office(&site, &driver, &seen, &admin_code).await;
    let child = worker(&site, &driver, &seen, &mireni_code).await;
    supervisor(&site, &driver, &seen, &olani_code, &child).await;
    manager(&site, &driver, &seen, &bemu_code).await;
    seen.all_well(25);
}

/// Where the alert, its call and the focus are, as the page opens: the tops and bottoms, the height of the screen, what has the focus.
const FIRST_SCREEN: &str =
    "const at = (css) => { const box = document.querySelector(css).getBoundingClientRect(); return [box.top, box.bottom] };
    return { alert: at('.alert'), call: at('.alert .dial'), screen: innerHeight, focus: document.activeElement.id }";

#[tokio::test]
async fn a_form_that_comes_back_with_danger_opens_at_the_danger() {
    let (site, admin_code) = empty_programme();
    let driver = Driver::start();
    let seen = Rc::new(Seen::default());
    let admin = Person::new(driver.window().await, &site.base, "danger", &seen).await;
    first_sign_in(&admin, "teveli", &admin_code).await;
    admin.open("/areas").await.write("name", "Ulopi").await.write("code", "ulopi").await.press("Add").await.says("Ulopi").await;
    let code = add_person(&admin, "Mireni Kotu", "mireni", Role::Worker, &[]).await;
    let worker = Person::new(driver.window().await, &site.base, "danger", &seen).await;
    first_sign_in(&worker, "mireni", &code).await;
    worker.follow("Add child").await.write("name", "Sela").await.write("caregiver", "Maruli").await.tick("sex", "F").await;
    worker.write("born_day", "14").await.write("born_month", "3").await.write("born_year", "2026").await;
    worker.choose("area", "Ulopi").await.tick("consent", "yes").await;
    worker.press("Look at it before saving").await.press("Save: this is right").await;
    let child = worker.path().await;

    look::PHONE.put_on(worker.window()).await;
    worker.open(&format!("{child}/visits/new")).await.tick("danger", "fits_now").await.write("weight", "99").await;
    worker.press("Save and see what to do").await.says("What you ticked is saved").await;
    let found = worker.window().execute(FIRST_SCREEN, Vec::new()).await.expect("measured");
    let found = found.json();
    let number = |value: &serde_json::Value| value.as_f64().unwrap_or_else(|| panic!("no number in {found}"));
    let screen = number(&found["screen"]);
    for part in ["alert", "call"] {
        assert!((0.0..screen).contains(&number(&found[part][0])), "the {part} begins outside the first screen: {found}");
    }
    assert!(number(&found["call"][1]) <= screen, "the call ends below the first screen: {found}");
    assert_eq!(found["focus"], "danger", "{found}");
}

/// Administrator: areas, people, settings.
async fn office(site: &Site, driver: &Driver, seen: &Rc<Seen>, code: &str) -> (String, String, String) {
    let admin = Person::new(driver.window().await, &site.base, "walk", seen).await;
    admin.open("/sign-in").await.look("sign-in").await;
    admin.write("name", "teveli").await.write("password", "wrong").await.press("Sign in").await;
    admin.look("sign-in-wrong").await;
    admin.open("/sign-in").await.write("name", "teveli").await.write("password", code).await.press("Sign in").await;
    admin.look("password-first").await;
    admin.write("new", "short").await.write("again", "short").await.press("Change it").await.says("15").await;
    admin.look("password-fault").await;
    admin.write("new", PASSWORD).await.write("again", PASSWORD).await.press("Change it").await;
    admin.open("/areas").await.look("areas-none").await;
    for (name, code) in [("Ulopi", "ulopi"), ("Mbiro Hill", "mbiro")] {
        admin.open("/areas").await.write("name", name).await.write("code", code).await.press("Add").await.says(name).await;
    }
    admin.look("areas").await;
    let mireni = add_person(&admin, "Mireni Kotu", "mireni", Role::Worker, &[]).await;
    admin.look("person-code").await;
    add_person(&admin, "Tamsi Veru", "tamsi", Role::Worker, &[]).await;
    let olani = add_person(&admin, "Olani Beku", "olani", Role::Supervisor, &["ulopi", "mbiro"]).await;
    let bemu = add_person(&admin, "Bemu Sari", "bemu", Role::Manager, &[]).await;
    admin.follow("Handed over").await.open("/people").await.look("people").await;
    admin.follow("Mireni Kotu").await.look("person").await;
    admin.open("/people/new").await.press("Save").await.says("Not saved yet").await.look("person-fault").await;
    admin.open("/settings").await.write("emergency_number", "000").await.press("Save").await.look("settings").await;
    admin.press("Sign out").await;
    (mireni, olani, bemu)
}

/// Outreach worker: registers an infant, records visits, reads what to do, corrects.
async fn worker(site: &Site, driver: &Driver, seen: &Rc<Seen>, code: &str) -> String {
    let worker = Person::new(driver.window().await, &site.base, "walk", seen).await;
    first_sign_in(&worker, "mireni", code).await;
    worker.says("No homes are due today").await.look("round-empty").await;
    worker.follow("Add child").await.look("register").await;
    worker.write("name", "Sela").await.write("caregiver", "Maruli").await.press("Look at it before saving").await;
    worker.says("Not saved yet").await.look("register-faults").await;
    assert_eq!(worker.written("name").await, "Sela", "what was typed is kept");
    worker.tick("sex", "F").await.write("born_day", "14").await.write("born_month", "3").await.write("born_year", "2026").await;
    worker.write("birth_weight", "3,10").await.choose("area", "Ulopi").await.tick("consent", "yes").await;
    worker.press("Look at it before saving").await.says("is this right?").await.look("register-check").await;
    worker.press("Save: this is right").await;
    let path = worker.path().await;
    let child = path.strip_prefix("/children/").unwrap_or_else(|| panic!("a child's page, not {path}")).to_owned();

    worker.says("Start a visit").await.look("child-new").await;

    // A usual visit of last month, then today's with an arm that is too thin.
    worker.open(&format!("/children/{child}/visits/new")).await.look("visit-form").await;
    worker.hand();
    worker.tick("day", "other").await.write("on_day", "16").await.write("on_month", "10").await.write("on_year", "2026").await;
    worker.write("weight", "7,10").await.write("length", "66.5").await.write("arm", "131").await.tick("feet", "no").await;
    worker.tick("danger_none", "yes").await.tick("swallow_trouble", "none").await.tick("breastfed", "yes").await;
    for group in ["grains_roots", "pulses_nuts", "vit_a"] {
        worker.tick("groups", group).await;
    }
    worker.write("meals", "2").await.tick("texture_usual", "3").await;
    worker.press("Save and see what to do").await;
    let hand = worker.hand();
    worker.says("16 October").await.says("No concern").await.does_not_say("Not checked").await.look("now-routine").await;
    assert!(hand.seconds() < 60.0, "a visit at which nothing is amiss and nothing left out takes under a minute to enter: {hand:?}");

    worker.open(&format!("/children/{child}/visits/new")).await.write("weight", "72").await.write("note", "kept as typed").await;
    worker.press("Save and see what to do").await.says("Not saved yet").await.look("visit-faults").await;
    assert_eq!(worker.written("note").await, "kept as typed");
    worker.write("weight", "12.4").await.write("arm", "113").await.tick("danger_none", "yes").await;
    worker.press("Save and see what to do").await.says("12.40 kg: look again").await.look("visit-unusual").await;
    worker.write("weight", "7.15").await.press("Save and see what to do").await.says("to care today").await.look("now-today").await;
    worker.follow("Correct this visit").await.look("visit-correct").await;
    worker.write("arm", "112").await.write("reason", "read the tape again").await;
    worker.press("Save the correction").await.says("112 mm").await.look("now-corrected").await;
    worker.open(&format!("/children/{child}/emergency")).await.look("emergency").await;

    worker.open("/round").await.says("Sela").await.look("round").await;
    worker.follow("Sela").await;
    assert_eq!(worker.path().await, format!("/children/{child}"), "the row of a home opens the child");
    worker.look("child").await;
    worker.open("/find").await.write("q", "sel").await.press("Find").await.says("Sela").await.look("find").await;
    worker.open("/round").await.press("Français").await;
    assert_eq!(worker.language().await, "fr");
    worker.look("round-french").await.press("English").await;
    assert_eq!(worker.language().await, "en");
    worker.open("/nowhere").await.look("not-found").await;
    worker.press("Sign out").await;
    child
}

/// Supervisor: looks at the desk and the team, moves a child. Closing with a reason is walked in the demo, where something is late.
async fn supervisor(site: &Site, driver: &Driver, seen: &Rc<Seen>, code: &str, child: &str) {
    let supervisor = Person::new(driver.window().await, &site.base, "walk", seen).await;
    first_sign_in(&supervisor, "olani", code).await;
    supervisor.look("late").await.open("/team").await.look("team").await;
    supervisor.open(&format!("/children/{child}/move")).await.look("move").await;
    supervisor
        .choose("worker", "Tamsi")
        .await
        .choose("area", "Mbiro Hill")
        .await
        .write("reason", "the family moved")
        .await
        .press("Move")
        .await;
    supervisor.says("Moved to Tamsi Veru").await;
    supervisor.press("Sign out").await;
}

/// Manager: the last month lies before this programme, which began today; never a child.
async fn manager(site: &Site, driver: &Driver, seen: &Rc<Seen>, code: &str) {
    let manager = Person::new(driver.window().await, &site.base, "walk", seen).await;
    first_sign_in(&manager, "bemu", code).await;
    assert_eq!(manager.path().await, "/reports", "a manager begins with the month");
    manager.says("lies before the programme").await.does_not_say("Sela").await.look("month").await;
    assert!(manager.files().await.is_empty(), "a month before the programme has no files");
    manager.press("Sign out").await;
}

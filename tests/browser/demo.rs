//! The demo programme, where every list is full, in a browser without script: a worker's long round, a supervisor's desk with a
//! follow-up closed, a manager's month with its files, the office.

use std::rc::Rc;
use std::sync::mpsc;

use browser_tests::driver::Driver;
use browser_tests::look;
use browser_tests::page::Person;
use browser_tests::page::Seen;
use browser_tests::site::Site;
use browser_tests::site::TODAY;
use domain::role::Role;
use seed_demo::build;
use seed_demo::programme;
use seed_demo::sign_ins;
use seed_demo::sign_ins::SignIn;
use seed_demo::story::cast::Cast;
use seed_demo::target::Built;
use spoonround::service::protocols;

const CHILDREN: u32 = 240;

fn demo() -> (Site, Vec<SignIn>) {
    let (tell, told) = mpsc::channel();
    let site = Site::serve(async move |db, clock| {
        let today = TODAY.parse().expect("a date");
        let text = programme::protocol_text();
        let adopted = protocols::adopt(db, Some((programme::PROTOCOL_NAME, &text)), clock.now()).await.expect("the demo's protocol");
        let cast = Cast::of(CHILDREN, today);
        let built = Built { children: CHILDREN, on: today };
        build::build(db, &adopted, &cast, &built, clock.now(), build::on_screen(CHILDREN)).await.expect("a demo");
        tell.send(sign_ins::renew(db, &cast).await.expect("sign-ins")).expect("the test waits");
        adopted
    });
    (site, told.recv().expect("sign-ins"))
}

async fn signed_in(site: &Site, driver: &Driver, seen: &Rc<Seen>, sign_ins: &[SignIn], role: Role) -> Person {
    let who = sign_ins.iter().find(|s| s.role == role).expect("a sign-in of each role");
    let person = Person::new(driver.window().await, &site.base, "demo", seen).await;
    person.open("/sign-in").await.says("Invented data").await;
    person.write("name", &who.name).await.write("password", &who.password).await.press("Sign in").await.says("Signed in as").await;
    person
}

#[tokio::test]
async fn the_demo_can_be_worked_with_in_each_role() {
    let (site, sign_ins) = demo();
    let driver = Driver::start();
    let seen = Rc::new(Seen::default());
    look::forget_pictures("demo");

    let worker = signed_in(&site, &driver, &seen, &sign_ins, Role::Worker).await;
    assert_eq!(worker.path().await, "/round", "a worker begins with the round");
    worker.look("round").await;
    worker.open("/round/print").await.look("round-sheet").await.print("round-sheet").await;
    worker.open("/round?as_of=2026-11-02").await.says("You see 2 November 2026").await.look("round-past-day").await;
    worker.open("/round").await.follow_first(".path a.home").await.look("child").await;
    let child = worker.path().await;
    for sheet in ["card", "referral"] {
        worker.open(&format!("{child}/{sheet}")).await.look(sheet).await.print(sheet).await;
    }
    worker.open("/recipes/millet_bean_fish").await.look("recipe").await.print("recipe").await;
    worker.open("/protocol").await.look("protocol").await.print("protocol").await.open(&child).await;
    worker.follow("Start a visit").await.look("visit").await;
    worker.open("/find").await.look("find").await;
    // Another language opens beside a form that is being filled in: what was typed stays.
    worker.open(&format!("{child}/visits/new")).await.write("weight", "7,3").await.press_beside("Français").await;
    assert_eq!((worker.written("weight").await.as_str(), worker.language().await.as_str()), ("7,3", "en"));

    let supervisor = signed_in(&site, &driver, &seen, &sign_ins, Role::Supervisor).await;
    assert_eq!(supervisor.path().await, "/late", "a supervisor begins with what is late");
    supervisor.look("late").await;
    supervisor.open("/late?class=week").await.follow_first("table a").await.says("Rule in words").await.look("why").await;
    supervisor.tick("category", "seen_well").await.write("note", "short").await.press("Close it").await;
    supervisor.says("Not saved yet").await.look("close-fault").await;
    supervisor.write("note", "Seen at the clinic on Monday, the mother says").await.press("Close it").await;
    supervisor.says("Closed, with your reason").await.says("Seen at the clinic on Monday").await.look("closed").await;
    supervisor.open("/team").await.look("team").await.open("/late/meeting").await.look("meeting").await.print("meeting").await;
    for list in ["/quality", "/late/urgent", "/late/unseen", "/late/held", "/referrals", "/agreed-steps"] {
        supervisor.open(list).await.look(list.rsplit('/').next().expect("a name")).await;
    }

    let manager = signed_in(&site, &driver, &seen, &sign_ins, Role::Manager).await;
    assert_eq!(manager.path().await, "/reports", "a manager begins with the month");
    manager.says("October 2026").await.look("month").await;
    manager.print("month").await.open("/reports/wall").await.look("wall").await.print("wall").await.open("/reports").await;
    manager.choose("area", "Ulopi").await.press("Show").await.look("month-village").await;
    let files = manager.files().await;
    assert!(files.iter().all(|(path, _)| path.starts_with("/reports/2026-10/")), "files of the month only");
    assert!(files.iter().any(|(path, _)| path.ends_with("/all.zip")), "all of it in one");
    let tables: Vec<_> = files.iter().filter(|(path, _)| path.ends_with(".csv")).collect();
    assert!(tables.len() >= 5, "enrolment, visits, growth, feeding, follow-ups: {tables:?}");
    for (path, text) in tables {
        assert!(text.lines().count() > 1, "{path} has a header and rows: {text}");
    }
    manager.open("/round").await.says("This page is not for your role").await.look("not-for-your-role").await;

    let office = signed_in(&site, &driver, &seen, &sign_ins, Role::Administrator).await;
    office.look("people").await.open("/areas").await.look("areas").await;
    seen.all_well(28);
}

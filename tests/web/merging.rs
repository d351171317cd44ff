//! Moving visits to the child they are about, and merging two records of one child, over HTTP.

use spoonround::service::protocols;
use spoonround::service::recheck::recheck;
use spoonround::store::corrections;
use spoonround::store::testing::day;
use spoonround::store::visits;

use domain::rule::RuleId;

use crate::corrections::child;
use crate::corrections::send_as;
use crate::corrections::standing;
use crate::harness::Browser;
use crate::site::Site;
use crate::site::TODAY;

pub const NOTE: (&str, &str) = ("note", "The cards were mixed up.");

/// A child to be registered.
pub struct New<'a> {
    pub worker: &'a str,
    pub name: &'a str,
    pub sex: &'a str,
    pub born_day: &'a str,
    pub area: &'a str,
}

pub const DEKO: New<'static> = New { worker: "mireni", name: "Deko", sex: "F", born_day: "20", area: "ulopi" };

/// A child born on a day of March 2026; its code.
pub async fn register(site: &Site, new: &New<'_>) -> String {
    let mut browser = site.signed_in(new.worker).await;
    let fields = [
        ("name", new.name),
        ("sex", new.sex),
        ("born_day", new.born_day),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("caregiver", "Maruli"),
        ("area", new.area),
        ("consent", "yes"),
    ];
    browser.open("/children/new").await.submit("main form", &fields).await;
    // Similar children are told apart by whoever registers.
    let decide: &[(&str, &str)] =
        if browser.attrs("input[name=other_child]", "value").is_empty() { &[] } else { &[("other_child", "yes")] };
    browser.submit("main form", decide).await;
    let at = browser.path.strip_prefix("/children/").unwrap_or_else(|| panic!("registered: {} {}", browser.path, browser.text()));
    at.split(['/', '?']).next().unwrap_or_default().to_owned()
}

pub async fn visit(browser: &mut Browser, code: &str, answers: &[(&str, &str)]) -> String {
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", answers).await.is(200);
    browser.path.split('/').nth(4).expect("a number in the address").to_owned()
}

/// Nothing is stored otherwise than the visits give it.
pub async fn is_sound(site: &Site) {
    let found = recheck(&site.db.db, &protocols::for_tests(), day(TODAY), None, &mut |_, _| ()).await.expect("readable");
    assert!(found.differences.is_empty(), "{:#?}", found.differences);
}

#[actix_web::test]
async fn a_visit_moves_to_the_child_it_is_about_and_both_tell_of_it() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let deko = register(&site, &DEKO).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/move")).await.is(200);
    assert_eq!(browser.texts(".found .home"), ["Deko"], "the child itself is no choice");
    let to = browser.attrs(".found .home", "href").remove(0);
    browser.open(&to).await.is(200).says("What changes for Neruka").says("What changes for Deko").says("An urgent follow-up would close");
    browser.submit("main form:not([role])", &[("note", "short")]).await.is(422);
    assert_eq!(browser.attrs("#summary a", "href"), ["#note"]);
    let (path, pairs) = browser.filled("main form:not([role])", &[NOTE]);
    browser.send(&path, &pairs).await.is(200).says("The visit was moved here").says("was moved here from").says("Neruka");
    assert!(browser.path.starts_with(&format!("/children/{deko}")), "{}", browser.path);
    browser.open(&format!("/children/{deko}/visits")).await.is(200).says("was moved here from").says(NOTE.1);
    browser.open(&format!("/children/{code}")).await.says("No visits yet").says("was moved to").says(NOTE.1).says("Mireni, 25 November");
    let (from, to) = (child(&site, &code).await, child(&site, &deko).await);
    assert_eq!(standing(&site, &from).await, (Vec::new(), vec![RuleId::WastingSevere]));
    assert_eq!(standing(&site, &to).await, (vec![RuleId::WastingSevere], Vec::new()));
    is_sound(&site).await;
    // Sent twice it is moved once; a form for the visit that is gone says so.
    browser.send(&path, &pairs).await.is(200).says("The visit was moved here");
    assert_eq!(corrections::of_children(site.db.db.direct(), &[from.id]).await.expect("readable").len(), 1);
    browser.open(&format!("/children/{code}/visits/{seq}/move")).await.is(409).says("not here any more");
    // And back again: what it had caused is open again, under the same key.
    browser.open(&format!("/children/{deko}/visits/{seq}/move?to={code}")).await.submit("main form:not([role])", &[NOTE]).await.is(200);
    assert_eq!(standing(&site, &from).await, (vec![RuleId::WastingSevere], Vec::new()));
    is_sound(&site).await;
}

#[actix_web::test]
async fn what_speaks_against_a_move_is_asked_and_what_cannot_be_is_refused() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    let neruka = register(&site, &New { name: "Neruka", ..DEKO }).await;
    let seq =
        visit(&mut browser, &neruka, &[("weight", "3.2"), ("day", "other"), ("on_day", "24"), ("on_month", "3"), ("on_year", "2026")])
            .await;
    let boy = register(&site, &New { name: "Ibomi", sex: "M", ..DEKO }).await;
    let younger = register(&site, &New { name: "Lomi", born_day: "25", ..DEKO }).await;
    let page = |to: &str| format!("/children/{neruka}/visits/{seq}/move?to={to}");
    browser.open(&page(&boy)).await.says("written down for a girl, and Ibomi is a boy");
    browser.submit("main form:not([role])", &[NOTE]).await.is(422);
    assert_eq!(browser.attrs("#summary a", "href"), ["#sure"]);
    let (path, pairs) = browser.filled("main form:not([role])", &[NOTE, ("sure", "yes")]);
    browser.open(&page(&younger)).await.says("It cannot be a visit to this child").says("Lomi was born on 25 March 2026");
    assert!(browser.attrs("main form:not([role])", "action").is_empty(), "nothing that would be refused can be sent");
    let forced: Vec<_> = pairs.iter().map(|(k, v)| (k.clone(), if k == "to" { younger.clone() } else { v.clone() })).collect();
    browser.send(&path, &forced).await.is(422).says("This day is before the birth");
    let record = child(&site, &neruka).await;
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable"), []);
    browser.open(&page(&boy)).await.submit("main form:not([role])", &[NOTE, ("sure", "yes")]).await.is(200).says("moved here");
    is_sound(&site).await;
}

#[actix_web::test]
async fn a_visit_moves_only_within_the_own_caseload_and_not_from_a_stale_page() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let deko = register(&site, &DEKO).await;
    let theirs = register(&site, &New { worker: "tamsi", name: "Fanu", area: "mbiro", ..DEKO }).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/move?to={theirs}")).await.is(404);
    browser.open(&format!("/children/{code}/visits/{seq}/move?to={deko}")).await;
    let (path, pairs) = browser.filled("main form:not([role])", &[NOTE]);
    let elsewhere: Vec<_> = pairs.iter().map(|(k, v)| (k.clone(), if k == "to" { theirs.clone() } else { v.clone() })).collect();
    browser.send(&path, &elsewhere).await.is(404);
    let mut stranger = site.signed_in("tamsi").await;
    send_as(&mut stranger, &path, &elsewhere).await;
    stranger.is(404);
    let mut other = site.signed_in("olani").await;
    other.open(&format!("/children/{code}/visits/{seq}/correct")).await;
    other.submit("main form", &[("arm", "140"), ("reason", "a digit was misread")]).await.is(200);
    browser.send(&path, &pairs).await.is(409).says("Somebody changed this visit meanwhile").says("arm 140");
    let record = child(&site, &code).await;
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable"), []);
    assert_eq!(visits::of_child_up_to(site.db.db.direct(), record.id, day(TODAY)).await.expect("readable").len(), 1);
}

#[actix_web::test]
async fn two_records_become_one_and_both_codes_lead_there() {
    let site = Site::new().await;
    let mut worker = site.signed_in("mireni").await;
    let first = register(&site, &DEKO).await;
    visit(&mut worker, &first, &[("day", "yesterday"), ("weight", "7.4"), ("arm", "113"), ("danger_none", "yes")]).await;
    let second = register(&site, &DEKO).await;
    visit(&mut worker, &second, &[("weight", "7.45"), ("arm", "114")]).await;
    // Somebody sits in the home with a form of the record that is about to go.
    worker.open(&format!("/children/{second}/visits/new")).await;
    let (late_path, late) = worker.filled("main form", &[("weight", "7.5"), ("contact", "phone")]);
    let mut desk = site.signed_in("olani").await;
    desk.open(&format!("/children/{first}/merge")).await.is(200);
    let choice = desk.attrs(".found .home", "href");
    assert_eq!(choice, [format!("/children/{first}/merge?with={second}")], "the same name is found at once");
    desk.open(&choice[0]).await.is(200).says("The two records").says("What is open afterwards");
    desk.submit("main form:not([role])", &[]).await.is(422);
    assert_eq!(desk.attrs("#summary a", "href"), ["#survivor", "#note", "#sure"]);
    let (path, pairs) = desk.filled("main form:not([role])", &[("survivor", "first"), NOTE, ("sure", "yes")]);
    desk.send(&path, &pairs).await.is(200).says("The two records are one").says("was merged into this one").says(NOTE.1);
    let record = child(&site, &first).await;
    assert_eq!(child(&site, &second).await.id, record.id, "the other code leads there");
    let stories = visits::of_child_up_to(site.db.db.direct(), record.id, day(TODAY)).await.expect("readable");
    assert_eq!(stories.len(), 2);
    assert_eq!(standing(&site, &record).await, (vec![RuleId::WastingSevere], vec![RuleId::WastingSevere]));
    is_sound(&site).await;
    worker.open(&format!("/children/{second}")).await.is(200).says("was merged into this record").says("7.40 kg");
    worker.send(&late_path, &late).await.is(200);
    assert!(worker.path.contains(&first) || worker.path.contains(&second), "{}", worker.path);
    let stories = visits::of_child_up_to(site.db.db.direct(), record.id, day(TODAY)).await.expect("readable");
    assert_eq!(stories.len(), 3, "a visit on its way is not lost");
    worker.open(&format!("/find?q={second}")).await.is(200);
    assert!(worker.path.starts_with(&format!("/children/{first}")), "{}", worker.path);
    worker.open("/round").await.is(200);
    let links = worker.attrs("main a[href^='/children/']", "href");
    assert!(links.iter().any(|href| href.contains(&first)) && !links.iter().any(|href| href.contains(&second)), "{links:?}");
    worker.open("/find").await.says("1 child of yours");
    is_sound(&site).await;
    // Twice is once; a page from before says that it is done.
    desk.send(&path, &pairs).await.is(200).says("The two records are one");
    desk.open(&format!("/children/{first}/merge?with={second}")).await.is(200);
    assert!(desk.path.starts_with(&format!("/children/{first}")) && !desk.path.contains("merge"), "{}", desk.path);
}

#[actix_web::test]
async fn what_the_records_disagree_on_is_asked_and_a_contradiction_merges_nothing() {
    let site = Site::new().await;
    let mut worker = site.signed_in("mireni").await;
    let first = register(&site, &DEKO).await;
    visit(&mut worker, &first, &[("weight", "3.2"), ("day", "other"), ("on_day", "24"), ("on_month", "3"), ("on_year", "2026")]).await;
    let second = register(&site, &New { born_day: "26", sex: "M", ..DEKO }).await;
    let mut desk = site.signed_in("olani").await;
    desk.open(&format!("/children/{first}/merge?with={second}")).await.says("Which birth date is right?").says("depends on your answers");
    let all = [("survivor", "second"), ("right_born", "second"), ("right_sex", "first"), NOTE, ("sure", "yes")];
    desk.submit("main form:not([role])", &all[..1]).await.is(422);
    assert_eq!(desk.attrs("#summary a", "href"), ["#survivor", "#right_born", "#right_sex", "#note", "#sure"][1..]);
    desk.submit("main form:not([role])", &all).await.is(422).says("There is a visit on 24 March 2026, before that birth date");
    let records = [child(&site, &first).await, child(&site, &second).await];
    let made = corrections::of_children(site.db.db.direct(), &[records[0].id, records[1].id]).await.expect("readable");
    assert_eq!((records[0].id == records[1].id, made), (false, Vec::new()), "nothing half-done");
    desk.submit("main form:not([role])", &[("right_born", "first")]).await.is(200).says("The two records are one");
    let one = child(&site, &first).await;
    assert_eq!((one.code.as_str(), one.facts.born, one.facts.sex.code()), (second.as_str(), day("2026-03-20"), "F"));
    is_sound(&site).await;
}

#[actix_web::test]
async fn only_a_supervisor_of_both_merges_and_not_from_a_stale_page() {
    let site = Site::new().await;
    let first = register(&site, &DEKO).await;
    let second = register(&site, &DEKO).await;
    let theirs = register(&site, &New { worker: "tamsi", area: "mbiro", ..DEKO }).await;
    let mut worker = site.signed_in("mireni").await;
    worker.open(&format!("/children/{first}/merge")).await.is(403);
    worker.open(&format!("/children/{first}")).await;
    assert!(worker.attrs("main a", "href").iter().all(|href| !href.contains("merge")));
    let mut desk = site.signed_in("olani").await;
    desk.open(&format!("/children/{first}/merge?with={theirs}")).await.is(404);
    desk.open(&format!("/children/{first}/merge?with={second}")).await;
    let (path, pairs) = desk.filled("main form:not([role])", &[("survivor", "first"), NOTE, ("sure", "yes")]);
    let elsewhere: Vec<_> = pairs.iter().map(|(k, v)| (k.clone(), if k == "with" { theirs.clone() } else { v.clone() })).collect();
    desk.send(&path, &elsewhere).await.is(404);
    let mut other = site.signed_in("hembo").await;
    send_as(&mut other, &path, &pairs).await;
    other.is(404);
    // Meanwhile one of the two leaves.
    let mut second_desk = site.signed_in("olani").await;
    second_desk.open(&format!("/children/{second}/leave")).await;
    let left = [("status", "moved"), ("on_day", "20"), ("on_month", "11"), ("on_year", "2026")];
    second_desk.submit("main form", &left).await.is(200);
    desk.send(&path, &pairs).await.is(409).says("Somebody changed one of these records meanwhile").says("What is true now?");
    let record = child(&site, &second).await;
    assert_eq!(
        (record.code.as_str(), corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable")),
        (second.as_str(), Vec::new())
    );
    desk.submit("main form:not([role])", &[("right_status", "second")])
        .await
        .is(200)
        .says("The two records are one")
        .says("family moved away");
    second_desk.open(&format!("/children/{first}/merge?with={second}")).await.is(200);
    is_sound(&site).await;
}

//! The home: twins and siblings registered from each other's page, seen one after the other, linked and unlinked, within the scope.

use domain::child::ChildStatus;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use spoonround::store::children;
use spoonround::store::children::ChildRecord;
use spoonround::store::summaries::SummaryRecord;
use spoonround::store::summaries::TopFollowUp;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::families::weigh;
use crate::harness::Browser;
use crate::site::Site;

fn with(class: Class, due: &str) -> impl FnOnce(SummaryRecord) -> SummaryRecord {
    let top = TopFollowUp { class, rule: RuleId::WeightLow, due_on: d(due), evidence: Evidence::default() };
    move |plain| SummaryRecord { top: Some(top), open_count: 1, ..plain }
}

const fn plain(line: SummaryRecord) -> SummaryRecord {
    line
}

/// A child whose caregiver nobody else has.
fn of(n: u128, name: &str, caregiver: &str, area: AreaId, worker: PersonId) -> ChildRecord {
    ChildRecord { caregiver_name: caregiver.to_owned(), ..child(n, name, area, worker) }
}

async fn link(browser: &mut Browser, from: u128, other: u128) {
    browser.open(&format!("/children/{}/home", code(from))).await.is(200);
    browser.submit("details form", &[("other", &code(other))]).await.is(200);
}

fn links(browser: &Browser, css: &str) -> Vec<String> {
    browser.attrs(css, "href")
}

#[actix_web::test]
async fn a_twin_is_registered_from_the_first_one_s_page_and_lives_in_the_same_home() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    let first = [
        ("name", "Sela"),
        ("sex", "F"),
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("weeks", "36"),
        ("weeks_days", "2"),
        ("gestation_source", "card"),
        ("caregiver", "Maruli"),
        ("relation", "grandmother"),
        ("phone", "0300 11 22"),
        ("directions", "behind the mill"),
        ("area", "ulopi"),
        ("consent", "yes"),
    ];
    browser.open("/children/new").await.submit("main form", &first).await.submit("main form", &[]).await;
    let sela = browser.path.clone();
    let sela_code = sela.strip_prefix("/children/").expect("a code").to_owned();
    browser.open(&format!("{sela}/home")).await.is(200).says("Register a twin of Sela");
    let twin = links(&browser, "main a[href*=twin]").remove(0);
    browser.open(&twin).await.is(200);
    let (_, filled) = browser.filled("main form", &[]);
    for pair in [
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("weeks", "36"),
        ("weeks_days", "2"),
        ("gestation_source", "card"),
        ("caregiver", "Maruli"),
        ("relation", "grandmother"),
        ("phone", "0300 11 22"),
        ("directions", "behind the mill"),
        ("area", "ulopi"),
        ("home_of", "yes"),
    ] {
        assert!(filled.contains(&(pair.0.to_owned(), pair.1.to_owned())), "{pair:?}: {filled:?}");
    }
    assert!(!filled.iter().any(|(name, value)| matches!(name.as_str(), "consent" | "name" | "sex") && !value.is_empty()), "asked anew");
    // The twin is not taken for a duplicate of the child from whose page it comes, and of nobody else's.
    browser.submit("main form", &[("name", "Pemba"), ("sex", "M"), ("consent", "yes")]).await.is(422).does_not_say("already registered");
    browser.submit("main form", &[]).await.is(200).says("Also in this home").says("Sela");
    let pemba = browser.path.clone();
    browser.open(&sela).await.says("Also in this home");
    assert!(links(&browser, ".here a").contains(&pemba));
    // A sibling from either page joins the same home; its birth date is its own.
    browser.open(&format!("/children/new?home={sela_code}")).await;
    let (_, filled) = browser.filled("main form", &[]);
    assert!(filled.contains(&("born_day".to_owned(), String::new())) && filled.contains(&("caregiver".to_owned(), "Maruli".to_owned())));
    let sibling = [("name", "Tavi"), ("sex", "M"), ("born_day", "2"), ("born_month", "1"), ("born_year", "2025"), ("consent", "yes")];
    browser.submit("main form", &sibling).await.submit("main form", &[]).await.is(200);
    browser.open(&format!("{pemba}/home")).await.says("3 children here");
    // The same name once more is looked at, home or not.
    browser.open(&twin).await.submit("main form", &[("name", "Sela"), ("sex", "F"), ("consent", "yes")]).await.is(422);
    browser.says("already registered");
    // Without the tick the child is registered, and lives elsewhere.
    browser.open(&format!("/children/new?home={sela_code}")).await;
    let (path, mut pairs) = browser.filled(
        "main form",
        &[("name", "Oku"), ("sex", "M"), ("born_day", "2"), ("born_month", "5"), ("born_year", "2026"), ("consent", "yes")],
    );
    pairs.retain(|(name, _)| name != "home_of");
    browser.send(&path, &pairs).await.is(422);
    browser.submit("main form", &[]).await.is(200);
    browser.does_not_say("Also in this home");
}

#[actix_web::test]
async fn several_children_of_a_home_are_seen_one_after_the_other() {
    let site = Site::new().await;
    let week = with(Class::Week, "2026-11-26");
    register(&site, &of(1, "Sela", "Maruli", site.ulopi, site.mireni), week).await;
    register(&site, &of(2, "Pemba", "Anwe", site.ulopi, site.mireni), with(Class::TwoDays, "2026-11-26")).await;
    register(&site, &of(3, "Tavi", "Doro", site.ulopi, site.mireni), plain).await;
    register(&site, &of(4, "Fanu", "Kesu", site.ulopi, site.mireni), with(Class::Week, "2026-11-26")).await;
    let mut browser = site.signed_in("mireni").await;
    link(&mut browser, 1, 2).await;
    link(&mut browser, 2, 3).await;
    browser.says("3 children here. To be seen: Pemba and Sela");
    assert_eq!(browser.texts("main h2.plain a bdi"), ["Pemba", "Sela", "Tavi"], "the most urgent first, nobody left out");
    browser.says("Nothing is due");

    // The round names the others and counts a home once.
    browser.open("/round").await.says("2 homes left").says("Also in this home: Tavi , Sela");
    assert!(links(&browser, ".path .here a").contains(&format!("/children/{}", code(3))));
    browser.open("/find").await.says("Also in this home:");

    // Yesterday's visit of one leads to the next of this home, with the day and the place carried over.
    browser.open(&format!("/children/{}/visits/new", code(2))).await;
    browser
        .submit("main form", &[("day", "yesterday"), ("contact", "clinic"), ("weight", "7.4"), ("danger_none", "yes"), ("feet", "no")])
        .await
        .is(200);
    let next = links(&browser, "main a.do").remove(0);
    assert_eq!(next, format!("/children/{}/visits/new?on=2026-11-24&contact=clinic", code(1)));
    browser.says("Next here: Sela");
    assert!(links(&browser, "main a").contains(&"/round".to_owned()), "the round stays in reach");
    browser.open(&next).await.is(200);
    let (_, filled) = browser.filled("main form", &[]);
    assert!(filled.contains(&("day".to_owned(), "yesterday".to_owned())) && filled.contains(&("contact".to_owned(), "clinic".to_owned())));
    browser.submit("main form", &[("weight", "7.0"), ("danger_none", "yes"), ("feet", "no")]).await.is(200);
    // Nothing is due for the third: the next home is the way on, and the third stays in reach; who was seen is called so.
    let solid = links(&browser, "main a.do:not(.second)");
    assert_eq!(solid, ["/round"]);
    browser.says("seen at this visit");
    assert!(links(&browser, "main a").contains(&format!("/children/{}/visits/new?on=2026-11-24&contact=clinic", code(3))));
}

#[actix_web::test]
async fn a_day_that_cannot_be_is_not_carried_over() {
    let site = Site::new().await;
    register(&site, &child(1, "Sela", site.ulopi, site.mireni), plain).await;
    let mut browser = site.signed_in("mireni").await;
    for odd in ["on=2026-11-26", "on=2026-02-28", "on=soon", "on=2026-11-20&contact=moon"] {
        browser.open(&format!("/children/{}/visits/new?{odd}", code(1))).await.is(200);
        let (_, filled) = browser.filled("main form", &[]);
        let day = filled.iter().find(|(name, _)| name == "day").map(|(_, value)| value.as_str());
        assert_eq!(day, Some(if odd.contains("-20") { "other" } else { "today" }), "{odd}");
        assert!(filled.contains(&("contact".to_owned(), "home".to_owned())), "{odd}");
    }
}

#[actix_web::test]
async fn children_of_one_home_stand_together_within_a_class() {
    let site = Site::new().await;
    // By due day: Sela, Fanu, Pemba. Sela and Pemba are of one home.
    register(&site, &of(1, "Sela", "Maruli", site.ulopi, site.mireni), with(Class::Week, "2026-11-26")).await;
    register(&site, &of(2, "Fanu", "Anwe", site.ulopi, site.mireni), with(Class::Week, "2026-11-27")).await;
    register(&site, &of(3, "Pemba", "Doro", site.ulopi, site.mireni), with(Class::Week, "2026-11-28")).await;
    register(&site, &of(4, "Rumi", "Kesu", site.ulopi, site.mireni), with(Class::TwoDays, "2026-11-30")).await;
    let mut browser = site.signed_in("mireni").await;
    link(&mut browser, 1, 3).await;
    browser.open("/round").await;
    assert_eq!(browser.texts(".path .home"), ["Rumi", "Sela", "Pemba", "Fanu"]);
}

#[actix_web::test]
async fn a_home_shows_nobody_outside_the_scope_nobody_who_left_as_due_and_no_withdrawn_consent() {
    let site = Site::new().await;
    let mut due: Vec<ChildRecord> =
        ["Sela", "Pemba", "Tavi", "Oku"].iter().zip(1..).map(|(name, n)| of(n, name, "Maruli", site.ulopi, site.mireni)).collect();
    due.push(of(5, "Lomi", "Maruli", site.mbiro, site.tamsi));
    for record in &due {
        register(&site, record, with(Class::TwoDays, "2026-11-25")).await;
    }
    let mut browser = site.signed_in("mireni").await;
    // All five share a home: the one of the other village by hand, since nobody reaches both.
    for other in [2, 3, 4] {
        link(&mut browser, 1, other).await;
    }
    let c = site.db.db.direct();
    let home = spoonround::store::households::of_child(c, due[0].id).await.expect("read").expect("a home");
    spoonround::store::households::join(c, due[4].id, home, site.tamsi, spoonround::store::testing::noon("2026-11-25"))
        .await
        .expect("joined");
    for (n, status) in [(2, "moved"), (3, "consent_withdrawn")] {
        browser.open(&format!("/children/{}/leave", code(n))).await;
        let left = [("status", status), ("on_day", "25"), ("on_month", "11"), ("on_year", "2026")];
        browser.submit("main form", &left).await.is(200);
    }
    let stored = children::by_ids(c, &[due[1].id, due[2].id]).await.expect("read");
    assert!(stored.iter().all(|child| child.facts.status != ChildStatus::Active));
    browser.open(&format!("/children/{}/home", code(1))).await.says("2 children here. To be seen: Sela and Oku");
    assert_eq!(browser.texts("main h2.plain a bdi").len(), 2);
    browser.says("One child left the programme").says("Pemba").does_not_say("Tavi").does_not_say("Lomi");
    browser.open("/round").await.says("1 home left").does_not_say("Lomi").does_not_say("Tavi").does_not_say("Pemba");
    browser.open(&format!("/children/{}", code(1))).await;
    assert_eq!(browser.texts(".here a"), ["Oku"]);
    // Nobody else opens, links or unlinks what is out of reach.
    let mut other = site.signed_in("tamsi").await;
    other.open(&format!("/children/{}/home", code(1))).await.is(404);
    other.open(&format!("/children/{}/home", code(5))).await.is(200).says("Lomi").does_not_say("Sela").does_not_say("Oku");
    other.submit("details form", &[("other", &code(4))]).await.is(422);
    other.does_not_say("Oku");
    browser.open(&format!("/children/{}/home", code(1))).await;
    let (path, mut pairs) = browser.filled("form[action$=unlink]", &[]);
    pairs.retain(|(name, _)| name != "other");
    pairs.push(("other".to_owned(), code(5)));
    browser.send(&path, &pairs).await.is(404);
    assert_eq!(spoonround::store::households::of_child(c, due[4].id).await.expect("read"), Some(home));
}

#[actix_web::test]
async fn likely_children_of_a_home_are_suggested_and_the_worker_decides() {
    let site = Site::new().await;
    let phone = |record: ChildRecord, number: &str| ChildRecord { phone: Some(number.to_owned()), ..record };
    register(&site, &phone(of(1, "Sela", "Maruli Ashti", site.ulopi, site.mireni), "0300 1"), plain).await;
    register(&site, &of(2, "Pemba", "Maruli Ashty", site.ulopi, site.mireni), plain).await;
    register(&site, &phone(of(3, "Tavi", "Doro", site.ulopi, site.mireni), "0300 1"), plain).await;
    register(&site, &of(4, "Oku", "Marukka", site.ulopi, site.mireni), plain).await;
    register(&site, &of(5, "Lomi", "Maruli Ashti", site.mbiro, site.mireni), plain).await;
    register(&site, &of(6, "Rumi", "Maruli Ashti", site.ulopi, site.tamsi), plain).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{}/home", code(1))).await.says("Perhaps of this home too");
    assert_eq!(browser.texts("#likely ~ ul:not(.x) form[action$=link] .vh").len(), 2, "{}", browser.text());
    browser.says("Pemba").says("Tavi").does_not_say("Oku").does_not_say("Lomi").does_not_say("Rumi");
    browser.submit("form[action$=\"home/link\"]", &[]).await.is(200).says("2 children here");
    // One that does not live here after all.
    browser.submit("form[action$=unlink]", &[]).await.is(200).says("One child here");
    browser.submit("details form", &[("other", &code(1))]).await.is(422);
    browser.submit("details form", &[("other", "22222222")]).await.is(422);
    weigh(&site, 90, &of(1, "Sela", "Maruli Ashti", site.ulopi, site.mireni), "2026-11-25", 7400).await;
    browser.open(&format!("/children/{}/home", code(1))).await.says("Seen today");
}

#[actix_web::test]
async fn who_lives_here_already_is_not_linked_again_and_who_lives_elsewhere_is_not_taken_out() {
    let site = Site::new().await;
    for (n, name) in [(1, "Sela"), (2, "Pemba"), (3, "Tavi"), (4, "Oku")] {
        register(&site, &of(n, name, name, site.ulopi, site.mireni), plain).await;
    }
    let mut browser = site.signed_in("mireni").await;
    link(&mut browser, 1, 2).await;
    link(&mut browser, 3, 4).await;
    browser.open(&format!("/children/{}/home", code(1))).await;
    for n in [1, 2] {
        browser.submit("details form", &[("other", &code(n))]).await.is(422).says("This is how it is now.");
    }
    // A page from before the child moved: it names somebody who does not live here.
    let (path, pairs) = browser.open(&format!("/children/{}/home", code(1))).await.filled("form[action$=unlink]", &[("other", &code(3))]);
    browser.send(&path, &pairs).await.is(200).says("2 children here");
    browser.open(&format!("/children/{}/home", code(3))).await.says("2 children here");
}

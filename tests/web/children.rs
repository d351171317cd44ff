//! Finding children and opening their pages: what is in scope, and what the page says.

use domain::units::Weight;
use spoonround::store::visits;
use spoonround::store::visits::Correction;

use crate::families::child;
use crate::families::code;
use crate::families::register;
use crate::families::weigh;
use crate::site::Site;

async fn three_children() -> Site {
    let site = Site::new().await;
    for (n, name, area, worker) in
        [(1, "Neruka", site.ulopi, site.mireni), (2, "Sélani", site.ulopi, site.mireni), (3, "Serumi", site.mbiro, site.tamsi)]
    {
        register(&site, &child(n, name, area, worker), |plain| plain).await;
    }
    site
}

#[actix_web::test]
async fn a_child_is_there_for_its_worker_and_supervisor_and_for_nobody_else() {
    let site = three_children().await;
    let path = format!("/children/{}", code(1));
    for (name, status) in [("mireni", 200), ("olani", 200), ("tamsi", 404), ("hembo", 404), ("bemu", 403), ("teveli", 403)] {
        let mut browser = site.signed_in(name).await;
        for page in [path.clone(), format!("{path}/visits"), format!("{path}/card")] {
            browser.open(&page).await.is(status);
            if status != 200 {
                browser.does_not_say("Neruka");
            }
        }
    }
    let mut browser = site.signed_in("mireni").await;
    for unknown in ["/children/22222222", "/children/K7QF2MZ0", "/children/x"] {
        browser.open(unknown).await.is(404);
    }
}

#[actix_web::test]
async fn the_page_says_who_it_is_and_begins_a_visit() {
    let site = three_children().await;
    let one = child(1, "Neruka", site.ulopi, site.mireni);
    weigh(&site, 90, &one, "2026-10-01", 7000).await;
    weigh(&site, 91, &one, "2026-11-06", 7450).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{}", code(1))).await.is(200);
    assert_eq!(browser.texts("h1"), ["Neruka"]);
    browser.says("girl, 8 months and 24 days").says("Ulopi").says("with Anwe").says("Gained 450 g in 36 days.");
    assert_eq!(browser.attrs("a.do:not(.second)", "href"), [format!("/children/{}/visits/new", code(1))]);
    browser.does_not_say("Move to another worker");
    let mut supervisor = site.signed_in("olani").await;
    supervisor.open(&format!("/children/{}", code(1))).await.says("Move to another worker").says("worker: Mireni");
}

#[actix_web::test]
async fn the_family_s_card_tells_growth_and_danger_and_names_no_follow_up() {
    let site = three_children().await;
    let one = child(1, "Neruka", site.ulopi, site.mireni);
    weigh(&site, 90, &one, "2026-10-01", 7000).await;
    weigh(&site, 91, &one, "2026-11-06", 7450).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{}", code(1))).await.says("Card for the family");
    browser.open(&format!("/children/{}/card", code(1))).await.is(200);
    assert_eq!(browser.texts("h1"), ["Neruka"]);
    browser.says("7.45 kg on 6 November: 450 g more since 1 October.").says("Now, at 8 months").says("Next visit:");
    browser.says("swelling, hives or hard breathing after a food").does_not_say("between the lines");
    browser.does_not_say("Anwe");
}

#[actix_web::test]
async fn a_past_day_of_a_child_knows_no_later_visit() {
    let site = three_children().await;
    let one = child(1, "Neruka", site.ulopi, site.mireni);
    weigh(&site, 90, &one, "2026-10-01", 7000).await;
    weigh(&site, 91, &one, "2026-11-06", 7450).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{}?as_of=2026-10-20", code(1))).await.is(200);
    browser.says("You see 20 October 2026").says("One weight so far: 7.00 kg").does_not_say("7.45").says("7 months and 19 days");
    browser.open(&format!("/children/{}?as_of=2026-12-01", code(1))).await.is(400);
}

#[actix_web::test]
async fn a_corrected_visit_keeps_what_stood_before() {
    let site = three_children().await;
    let mut record = weigh(&site, 90, &child(1, "Neruka", site.ulopi, site.mireni), "2026-11-06", 9900).await;
    record.visit.weight = Weight::from_grams(7900).ok();
    record.visit.meals = Some(3);
    let now = spoonround::store::testing::noon("2026-11-08");
    let correction = Correction { by: site.mireni, at: now, reason: "a slip of the pen" };
    visits::replace(site.db.db.direct(), &record, correction).await.expect("corrected");
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{}/visits", code(1))).await.is(200);
    browser.says("7.90 kg").says("Corrected on 8 November by Mireni, because:").says("a slip of the pen").says("9.90 kg → 7.90 kg");
    browser.says("no answer → 3");
}

#[actix_web::test]
async fn a_part_of_a_name_is_enough_with_or_without_marks() {
    let site = three_children().await;
    let mut browser = site.signed_in("mireni").await;
    for (typed, found) in [
        ("ruka", vec!["Neruka"]),
        ("NERU", vec!["Neruka"]),
        ("selani", vec!["Sélani"]),
        ("Sélani", vec!["Sélani"]),
        ("eru", vec!["Neruka"]),
        ("xyz", vec![]),
    ] {
        browser.open(&format!("/find?q={}", typed.replace('é', "%C3%A9"))).await;
        assert_eq!(browser.texts(".found .home"), found, "{typed}: {}", browser.text());
    }
    browser.says("No child for “xyz”");
    assert!(browser.attrs("main a", "href").contains(&"/children/new".to_owned()));
}

#[actix_web::test]
async fn a_typed_code_opens_the_child_and_a_slip_is_told() {
    let site = three_children().await;
    let mut browser = site.signed_in("mireni").await;
    let (a, b) = (code(1)[..4].to_lowercase(), code(1)[4..].to_lowercase());
    browser.open(&format!("/find?q={a}-{b}")).await.is(200);
    assert_eq!(browser.path, format!("/children/{}", code(1)));
    let swapped = format!("{}{}", &code(1)[4..], &code(1)[..4]);
    browser.open(&format!("/find?q={swapped}")).await.says("This code has a slip");
    browser.open("/find?q=K7QF-2M0C").await.says("A code never has 0, O, 1, I or L in it.");
    browser.open(&format!("/find?q={}", code(3))).await.says("No child for").does_not_say("Serumi");
}

#[actix_web::test]
async fn the_list_of_all_children_goes_on_page_by_page() {
    let site = Site::new().await;
    for n in 1..=52 {
        register(&site, &child(n, &format!("Tavi {n}"), site.ulopi, site.mireni), |plain| plain).await;
    }
    let mut browser = site.signed_in("mireni").await;
    browser.open("/find").await;
    let mut seen = browser.attrs(".found .home", "href");
    let more = browser.attrs("a.do.second", "href").into_iter().find(|href| href.contains("name=")).expect("a way on");
    browser.open(&more).await.is(200);
    seen.extend(browser.attrs(".found .home", "href"));
    seen.sort();
    seen.dedup();
    assert_eq!(seen.len(), 52);
}

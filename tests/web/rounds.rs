//! The round of a day: whose homes, in which order, on which day.

use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use spoonround::store::people;
use spoonround::store::summaries::SlotDays;
use spoonround::store::summaries::SummaryRecord;
use spoonround::store::summaries::TopFollowUp;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::families::weigh;
use crate::site::Site;

fn with(class: Class, due: &str) -> impl FnOnce(SummaryRecord) -> SummaryRecord {
    let evidence = Evidence::from([(EvidenceKey::Muac, Quantity::Millimetres(113)), (EvidenceKey::Limit, Quantity::Millimetres(115))]);
    let top = TopFollowUp { class, rule: RuleId::WastingSevere, due_on: d(due), evidence };
    move |plain| SummaryRecord { top: Some(top), open_count: 1, ..plain }
}

fn visit_open(plain: SummaryRecord) -> SummaryRecord {
    SummaryRecord { slot: Some(SlotDays { target: d("2026-12-01"), opens: d("2026-11-24"), closes: d("2026-12-11") }), ..plain }
}

/// Four homes of Mireni, one of Tamsi.
async fn a_day() -> Site {
    let site = Site::new().await;
    register(&site, &child(1, "Fanu", site.ulopi, site.mireni), with(Class::Week, "2026-11-22")).await;
    register(&site, &child(2, "Sela", site.ulopi, site.mireni), with(Class::Today, "2026-11-25")).await;
    register(&site, &child(3, "Neruka", site.ulopi, site.mireni), visit_open).await;
    register(&site, &child(4, "Rumi", site.ulopi, site.mireni), visit_open).await;
    register(&site, &child(5, "Tavi", site.mbiro, site.tamsi), with(Class::Now, "2026-11-25")).await;
    weigh(&site, 90, &child(4, "Rumi", site.ulopi, site.mireni), "2026-11-25", 7400).await;
    site
}

#[actix_web::test]
async fn a_worker_sees_own_homes_most_urgent_first_and_the_finished_ones_at_the_foot() {
    let site = a_day().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round").await.is(200);
    assert_eq!(browser.texts("h1"), ["3 homes left. Sela first."]);
    assert_eq!(browser.texts(".path .home"), ["Sela", "Fanu", "Neruka", "Rumi"]);
    browser.says("Much too thin: arm 113 mm, below 115 mm.").says("Within 7 days · 3 days late").says("Visit at 9 months.");
    assert_eq!(
        browser.texts(".path .done .why"),
        ["Seen. No concern in what you checked. Not checked: length, arm, feet and danger signs."]
    );
    browser.does_not_say("Tavi");
    assert!(browser.attrs(".path .home", "href").contains(&format!("/children/{}", code(2))));
}

#[actix_web::test]
async fn an_urgent_home_stays_on_the_trail_even_when_it_was_seen_today() {
    let site = a_day().await;
    weigh(&site, 91, &child(2, "Sela", site.ulopi, site.mireni), "2026-11-25", 6400).await;
    weigh(&site, 92, &child(1, "Fanu", site.ulopi, site.mireni), "2026-11-25", 7100).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round").await;
    assert_eq!(browser.texts("h1"), ["2 homes left. Sela first."]);
    let done = browser.texts(".path .done .why");
    assert!(done.iter().any(|why| why.starts_with("Seen. Much too thin")), "what stays open is said: {done:?}");
}

#[actix_web::test]
async fn a_supervisor_opens_the_round_of_a_worker_in_scope_and_of_nobody_else() {
    let site = a_day().await;
    let mut browser = site.signed_in("olani").await;
    let of = |id: PersonId| format!("/round?worker={}", uuid::Uuid::from_u128(id.0));
    browser.open(&of(site.mireni)).await.is(200).says("Mireni").says("Sela");
    browser.open(&of(site.tamsi)).await.is(404);
    browser.open("/round?worker=nobody").await.is(400);
    // A worker without children is known to who looks after them.
    people::assign(site.db.db.direct(), site.olani, &[site.ulopi], &[site.tamsi]).await.expect("assigned");
    browser.open(&of(site.tamsi)).await.is(200).says("Tavi");
    let mut worker = site.signed_in("mireni").await;
    worker.open(&of(site.tamsi)).await.is(404);
}

#[actix_web::test]
async fn a_long_round_goes_on_page_by_page_without_gap_or_repeat() {
    let site = Site::new().await;
    for n in 1..=53 {
        register(&site, &child(n, &format!("Kiva {n}"), site.ulopi, site.mireni), with(Class::Week, "2026-11-27")).await;
    }
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round").await;
    assert_eq!(browser.texts("h1"), [format!("More than 50 homes left. {} first.", browser.texts(".path .home")[0])]);
    let mut seen = browser.attrs(".path .home", "href");
    assert_eq!(seen.len(), 50);
    let more = browser.attrs("a.do", "href").into_iter().find(|href| href.contains("after=")).expect("a way on");
    browser.open(&more).await.is(200);
    seen.extend(browser.attrs(".path .home", "href"));
    seen.sort();
    seen.dedup();
    assert_eq!(seen.len(), 53);
}

#[actix_web::test]
async fn a_day_without_homes_says_who_comes_next() {
    let site = Site::new().await;
    let later = |plain| SummaryRecord {
        slot: Some(SlotDays { target: d("2026-12-07"), opens: d("2026-11-30"), closes: d("2026-12-17") }),
        ..plain
    };
    register(&site, &child(3, "Neruka", site.ulopi, site.mireni), later).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round").await.says("No homes are due today").says("The next one is Neruka, from Monday 30 November.");
    assert_eq!(browser.attrs("main a.do", "href"), ["/find", "/children/new"]);
}

#[actix_web::test]
async fn a_past_day_is_worked_out_from_the_visits_up_to_it_and_stays_as_it_was() {
    let site = Site::new().await;
    let mut born_in_march = child(1, "Neruka", site.ulopi, site.mireni);
    born_in_march.facts.registered_on = d("2026-08-25");
    register(&site, &born_in_march, |plain| plain).await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round?as_of=2026-08-24").await.is(200).does_not_say("Neruka");
    browser.open("/round?as_of=2026-08-28").await.is(200).says("You see 28 August 2026").says("Visit at 6 months.");
    assert_eq!(browser.attrs(".path .home", "href"), [format!("/children/{}?as_of=2026-08-28", code(1))]);
    let before = browser.texts("main");
    weigh(&site, 90, &born_in_march, "2026-08-30", 7000).await;
    browser.open("/round?as_of=2026-08-28").await;
    assert_eq!(browser.texts("main"), before, "a later visit changes nothing of an earlier day");
    browser.open("/round?as_of=2026-08-30").await;
    assert_eq!(browser.texts(".path .done .home"), ["Neruka"]);
    browser.open("/round?as_of=2026-08-31").await.does_not_say("Visit at 6 months.");
}

#[actix_web::test]
async fn a_past_day_does_not_know_when_a_child_was_seen_later() {
    let site = Site::new().await;
    let mut one = child(1, "Neruka", site.ulopi, site.mireni);
    one.facts.registered_on = d("2026-08-25");
    register(&site, &one, |plain| plain).await;
    weigh(&site, 90, &one, "2026-10-20", 7000).await;
    let mut browser = site.signed_in("mireni").await;
    // The window of the visit at six months closed on 11 September.
    browser.open("/round?as_of=2026-09-13").await.says("Visit · 2 days late").says("Not seen since registration.");
}

#[actix_web::test]
async fn the_sheet_has_the_same_homes_and_the_danger_signs() {
    let site = a_day().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/round/print").await.is(200);
    assert_eq!(browser.texts(".boxes tbody th b"), ["Sela", "Fanu", "Neruka"]);
    browser.says("Refer now, do not wait:").does_not_say("Tavi");
}

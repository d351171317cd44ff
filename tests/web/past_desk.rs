//! The supervisor's page on a past day: worked out anew, blind to what came later.

use domain::ids::VisitId;
use domain::rule::RuleId;
use domain::units::Muac;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use spoonround::store::testing::a_visit;
use spoonround::store::visits;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::site::Site;

/// Sela, eight months old: arm 113 mm on 5 November, nothing said of a clinic until 18 November.
async fn a_thin_child() -> Site {
    let site = Site::new().await;
    let sela = child(1, "Sela", site.ulopi, site.mireni);
    register(&site, &sela, |plain| plain).await;
    let mut thin = a_visit(90, &sela, d("2026-11-05"));
    thin.visit.id = VisitId(90);
    thin.visit.muac = Muac::from_mm(113).ok();
    let mut told = a_visit(91, &sela, d("2026-11-18"));
    told.visit.id = VisitId(91);
    told.visit.outcomes = vec![ToldOutcome { rule: RuleId::WastingSevere, outcome: Outcome::Seen }];
    for visit in [&thin, &told] {
        visits::insert(site.db.db.direct(), visit).await.expect("recorded");
    }
    site
}

#[actix_web::test]
async fn a_past_day_of_the_desk_shows_what_was_late_then() {
    let site = a_thin_child().await;
    let mut desk = site.signed_in("olani").await;
    // Before the visit nothing was known but that nobody had seen her.
    desk.open("/late?as_of=2026-11-04").await.is(200).says("You see 4 November 2026").says("Nothing is late");
    desk.says("never seen since registration").does_not_say("no answer yet");
    // Refer today: due two days after, and a supervisor sees it from the due day itself.
    desk.open("/late?as_of=2026-11-06").await.says("One urgent referral has no answer yet");
    assert_eq!(desk.texts("table.stack tbody th a"), Vec::<String>::new(), "the day before it is due");
    desk.open("/late?as_of=2026-11-07").await;
    assert_eq!(desk.texts("table.stack tbody th a"), ["Sela"]);
    desk.says("Due today");
    desk.open("/late?as_of=2026-11-10").await.says("3 days late");
    desk.open("/late?as_of=2026-11-17").await.says("One urgent referral has no answer yet").says("10 days late");
    // The outcome told on the 18th answers the referral, and does not reach back.
    desk.open("/late?as_of=2026-11-18").await.does_not_say("has no answer yet").says("11 days late");
    let before = desk.open("/late?as_of=2026-11-10").await.texts("main");
    let cleared = a_visit(92, &child(1, "Sela", site.ulopi, site.mireni), d("2026-11-20"));
    visits::insert(site.db.db.direct(), &cleared).await.expect("recorded");
    assert_eq!(desk.open("/late?as_of=2026-11-10").await.texts("main"), before, "a later visit changes nothing of an earlier day");
}

#[actix_web::test]
async fn a_food_on_hold_for_more_than_fourteen_days_comes_to_the_desk() {
    let site = Site::new().await;
    let sela = child(1, "Sela", site.ulopi, site.mireni);
    register(&site, &sela, |plain| plain).await;
    let mut worker = site.signed_in("mireni").await;
    worker.open(&format!("/children/{}/visits/new", code(1))).await.is(200);
    let reaction = [
        ("day", "other"),
        ("on_day", "10"),
        ("on_month", "11"),
        ("on_year", "2026"),
        ("new_food", "yes"),
        ("other1_food", "egg"),
        ("other1_taken", "reaction"),
        ("other1_rsign", "rash_local"),
        ("other1_minutes", "60"),
    ];
    worker.submit("main form", &reaction).await.is(200);
    let mut desk = site.signed_in("olani").await;
    // Today is 25 November: from the 10th it is fifteen days, from the 11th fourteen.
    desk.open("/late").await.is(200).says("Foods long on hold").says("since 10 November");
    desk.open("/late?as_of=2026-11-24").await.does_not_say("Foods long on hold");
    desk.open("/late?as_of=2026-11-25").await.says("since 10 November");
}

#[actix_web::test]
async fn a_past_day_of_the_desk_keeps_to_the_scope_and_the_filters() {
    let site = a_thin_child().await;
    let mut other = site.signed_in("hembo").await;
    other.open("/late?as_of=2026-11-10").await.is(200).does_not_say("Sela");
    let mut desk = site.signed_in("olani").await;
    desk.open("/late?as_of=2026-11-10&class=week").await.is(200);
    assert_eq!(desk.texts("table.stack tbody th a"), Vec::<String>::new());
    desk.open("/late?as_of=2026-11-10&class=today&worker=mireni").await.is(200);
    assert_eq!(desk.texts("table.stack tbody th a"), ["Sela"]);
    desk.open("/late?as_of=2026-11-10&worker=nobody").await.is(404);
    desk.open("/late?as_of=2026-12-01").await.is(400);
}

#[actix_web::test]
async fn a_page_that_only_knows_today_never_claims_to_show_a_past_day() {
    let site = a_thin_child().await;
    let mut desk = site.signed_in("olani").await;
    for page in ["/team", "/find", "/quality", "/agreed-steps", "/referrals", "/team-pictures"] {
        desk.open(&format!("{page}?as_of=2026-11-10")).await.is(200).does_not_say("You see 10 November");
    }
    desk.open("/late?as_of=2026-11-10").await.is(200).says("You see 10 November");
}

//! How many questions a page asks of the database, the whole request counted. Who asks is one of them.

use std::collections::BTreeSet;

use chrono::Days;
use domain::food::FoodCode;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::ids::ChildId;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::FoodOffer;
use spoonround::service::protocols;
use spoonround::service::reassess::Moment;
use spoonround::service::reassess::reassess;
use spoonround::store::children;
use spoonround::store::follow_ups;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::noon;
use spoonround::store::visits;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::site::Site;
use crate::site::TODAY;

const CHILDREN: u128 = 50;
/// Visits of a child that is seen often.
const MANY: u64 = 12;

/// The statements of one page, with those who ask.
async fn asked(site: &Site, path: &str) -> Vec<String> {
    let mut browser = site.signed_in("mireni").await;
    browser.open(path).await.is(200);
    site.statements.lock().expect("no test died here").clear();
    browser.open(path).await.is(200);
    site.statements.lock().expect("no test died here").clone()
}

/// Fifty children, each with visits that opened follow-ups; the first with so many visits, and with much told at each.
async fn fill(site: &Site, visits_of_first: u64) {
    let told = protocols::for_tests();
    for n in 1..=CHILDREN {
        let child = child(n, &format!("Fanu {n}"), site.ulopi, site.mireni);
        children::insert(site.db.db.direct(), &child).await.expect("registered");
        let visits = if n == 1 { visits_of_first } else { 2 };
        for (visit, ago) in (0..visits).rev().enumerate() {
            let on = d("2026-11-20") - Days::new(ago * 22);
            let mut record = a_visit(n * 100 + visit as u128, &child, on);
            record.visit.weight = Weight::from_grams(4_200).ok();
            record.visit.muac = Muac::from_mm(if ago % 2 == 0 { 113 } else { 121 }).ok();
            record.visit.meals = Some(1);
            record.visit.foods = vec![reaction(if ago % 3 == 0 { "egg" } else { "groundnut_paste" })];
            visits::insert(site.db.db.direct(), &record).await.expect("recorded");
        }
        let moment = Moment { today: d(TODAY), now: noon(TODAY), by: Some(site.mireni) };
        site.db.db.write(async |tx| reassess(tx, &told, child.id, moment).await).await.expect("judged");
    }
}

fn reaction(code: &str) -> FoodOffer {
    FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: 2,
        response: Some(Response::Reaction),
        unsafe_form: Some(true),
        signs: Some(BTreeSet::from([ReactionSign::RashLocal])),
        minutes_after: Some(30),
        hold_lifted: false,
    }
}

#[actix_web::test]
async fn the_page_of_a_child_asks_two_questions_about_it_and_the_round_two_about_all_however_much_there_is() {
    let mut follow_ups_of_it = Vec::new();
    for visits in [1, MANY] {
        let site = Site::new().await;
        fill(&site, visits).await;
        // A page that needs to know only who asks.
        let who = asked(&site, "/password").await.len();
        let child = format!("/children/{}", code(1));
        for path in [&*child, "/round"] {
            let statements = asked(&site, path).await;
            assert_eq!(statements.len(), who + 2, "{path} with {visits} visits:\n{}", statements.join("\n"));
        }
        // There is as much to show as is said here.
        let stored = follow_ups::of_child(site.db.db.direct(), ChildId(1)).await.expect("readable");
        let mut browser = site.signed_in("mireni").await;
        let lines = browser.open("/round").await.attrs("main a[href^='/children/']", "href");
        let children: BTreeSet<String> = lines.iter().filter_map(|href| href.split(['/', '?']).nth(2).map(str::to_owned)).collect();
        assert_eq!(u128::try_from(children.len()).expect("few"), CHILDREN, "all are in the round");
        follow_ups_of_it.push(stored.len());
    }
    assert!(follow_ups_of_it[1] > follow_ups_of_it[0] && follow_ups_of_it[1] >= 8, "follow-ups of the child: {follow_ups_of_it:?}");
}

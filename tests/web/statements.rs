//! How many questions a page asks of the database, the whole request counted. Who asks is one of them.

use spoonround::store::summaries::SlotDays;
use spoonround::store::summaries::SummaryRecord;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::families::weigh;
use crate::site::Site;

/// The statements of one page, with those who ask.
async fn asked(site: &Site, path: &str) -> Vec<String> {
    let mut browser = site.signed_in("mireni").await;
    browser.open(path).await.is(200);
    site.statements.lock().expect("no test died here").clear();
    browser.open(path).await.is(200);
    site.statements.lock().expect("no test died here").clone()
}

fn open() -> SlotDays {
    SlotDays { target: d("2026-12-01"), opens: d("2026-11-24"), closes: d("2026-12-11") }
}

#[actix_web::test]
async fn the_page_of_a_child_asks_two_questions_about_it_and_the_round_two_about_all() {
    let site = Site::new().await;
    for (n, name) in (1..).zip(["Fanu", "Sela", "Neruka", "Rumi"]) {
        let child = child(n, name, site.ulopi, site.mireni);
        register(&site, &child, |line| SummaryRecord { slot: Some(open()), ..line }).await;
        weigh(&site, 90 + n, &child, "2026-11-20", 7400).await;
    }
    // A page that needs to know only who asks.
    let who = asked(&site, "/password").await.len();
    for path in [format!("/children/{}", code(1)), "/round".to_owned()] {
        let statements = asked(&site, &path).await;
        assert_eq!(statements.len(), who + 2, "{path}:\n{}", statements.join("\n"));
    }
}

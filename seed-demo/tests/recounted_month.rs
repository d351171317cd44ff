//! A month of the demo, as its files give it out, recounts to the same numbers by SQL that knows nothing of how the program counts. Unlike
//! made-up months it has children who moved, left, came late, were registered twice, and visits that were corrected or taken back.

mod made;
#[path = "../../tests/recount.rs"]
mod recount;

use std::collections::BTreeMap;

use chrono::Duration;
use chrono::NaiveDate;
use domain::report::period::Period;
use recount::Compared;
use seed_demo::programme;
use spoonround::service::report;
use spoonround::service::report::Office;
use spoonround::service::report::last_whole_month;

/// Enough that most figures are large enough to be told.
const CHILDREN: u32 = 600;
/// So many whole months, the last one first.
const MONTHS: usize = 4;

#[tokio::test]
async fn months_of_the_demo_recount_to_the_same_numbers() {
    // Built on the last day of a month, so that what the demo shows open today lies in the month that is counted a day later.
    let today: NaiveDate = "2026-11-30".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, protocols, _) = made::demo(&folder.path().join("demo.db"), CHILDREN, today).await;
    let after = today + Duration::days(1);
    let settings = programme::demo_settings();
    let office = Office { db: &db, protocols: &protocols, settings: &settings, today: after, now: made::noon(after), by: None };
    let mut kinds: BTreeMap<String, Compared> = BTreeMap::new();
    let mut month = last_whole_month(after);
    for _ in 0..MONTHS {
        let report = report::open(office, Period::Month(month), None).await.expect("a report");
        let days = (&*month.first().to_string(), &*month.last().to_string());
        for (kind, compared) in recount::compare(&db, days, &report.tables).await {
            let sum = kinds.entry(kind).or_default();
            (sum.counted, sum.shown) = (sum.counted + compared.counted, sum.shown + compared.shown);
        }
        month = month.previous();
    }
    for (kind, compared) in &kinds {
        // Reactions are few in any programme; nought is told of them where there was none.
        let few = kind.starts_with("reactions");
        assert!(few || compared.counted > 40, "{kind}: too few to say anything: {compared:?}");
        assert!(compared.shown > 0 || kind.contains("peanut"), "{kind}: none is shown: {compared:?}");
    }
    let all: u32 = kinds.values().map(|compared| compared.shown).sum();
    assert!(all > 150, "only {all} figures are shown");
}

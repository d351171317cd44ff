//! A demo of so many children on a day, as the tests of the demo ask it.

use std::path::Path;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::protocol::Protocols;
use indicatif::ProgressBar;
use seed_demo::build;
use seed_demo::programme;
use seed_demo::story::cast::Cast;
use seed_demo::target;
use seed_demo::target::Built;
use spoonround::service::protocols;
use spoonround::store::Db;

pub fn noon(day: NaiveDate) -> DateTime<Utc> {
    day.and_hms_opt(12, 0, 0).expect("noon").and_utc()
}

/// Makes it in a new file.
pub async fn demo(file: &Path, children: u32, today: NaiveDate) -> (Db, Protocols, Cast) {
    let db = target::open(file, false).await.expect("a new file").db;
    let text = programme::protocol_text();
    let adopted = protocols::adopt(&db, Some((programme::PROTOCOL_NAME, &text)), noon(today)).await.expect("adopted");
    let cast = Cast::of(children, today);
    build::build(&db, &adopted, &cast, &Built { children, on: today }, noon(today), ProgressBar::hidden()).await.expect("built");
    (db, adopted, cast)
}

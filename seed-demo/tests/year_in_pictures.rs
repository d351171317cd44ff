//! A fresh demo has a year of reports to show in pictures: every month of it is counted.

use chrono::NaiveDate;
use domain::report::picture::Known;
use indicatif::ProgressBar;
use seed_demo::build;
use seed_demo::past_months;
use seed_demo::programme;
use seed_demo::story::cast::Cast;
use seed_demo::target;
use seed_demo::target::Built;
use spoonround::service::protocols;
use spoonround::service::report::Office;
use spoonround::service::report::last_whole_month;
use spoonround::service::report::pictures;

#[tokio::test]
async fn no_month_of_the_year_is_left_uncounted() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let now = today.and_hms_opt(12, 0, 0).expect("noon").and_utc();
    let folder = tempfile::tempdir().expect("a folder");
    let db = target::open(&folder.path().join("demo.db"), false).await.expect("a database").db;
    let text = programme::protocol_text();
    let protocols = protocols::adopt(&db, Some((programme::PROTOCOL_NAME, &text)), now).await.expect("adopted");
    let built = Built { children: 240, on: today };
    build::build(&db, &protocols, &Cast::of(built.children, today), &built, now, ProgressBar::hidden()).await.expect("built");
    past_months::count(&db, &protocols, today, now).await.expect("counted");
    let settings = programme::demo_settings();
    let office = Office { db: &db, protocols: &protocols, settings: &settings, today, now, by: None };
    let shown = pictures::open(office, last_whole_month(today), "").await.expect("pictures").expect("the programme");
    assert_eq!(shown.trend.len(), pictures::MONTHS);
    let counted = shown.trend.iter().filter(|(_, known)| matches!(known, Known::Figures(_))).count();
    let before = shown.trend.iter().filter(|(_, known)| *known == Known::BeforeStart).count();
    assert!(counted > 6 && counted + before == pictures::MONTHS, "{counted} counted, {before} before the start");
}

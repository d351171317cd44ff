//! A fresh demo has a year of reports to show in pictures: every month of it is counted.

mod made;

use chrono::NaiveDate;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Share;
use seed_demo::past_months;
use seed_demo::programme;
use spoonround::service::report::Office;
use spoonround::service::report::last_whole_month;
use spoonround::service::report::pictures;

#[tokio::test]
async fn every_month_of_the_year_is_counted_and_each_picture_has_months_to_draw() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, protocols, _) = made::demo(&folder.path().join("demo.db"), 240, today).await;
    let now = made::noon(today);
    past_months::count(&db, &protocols, today, now).await.expect("counted");
    let settings = programme::demo_settings();
    let office = Office { db: &db, protocols: &protocols, settings: &settings, today, now, by: None };
    let shown = pictures::open(office, last_whole_month(today), "").await.expect("pictures").expect("the programme");
    assert_eq!(shown.trend.len(), pictures::MONTHS);
    let counted = shown.trend.iter().filter(|(_, known)| matches!(known, Known::Figures(_))).count();
    let before = shown.trend.iter().filter(|(_, known)| *known == Known::BeforeStart).count();
    assert!(counted > 6 && counted + before == pictures::MONTHS, "{counted} counted, {before} before the start");
    // And in half of the months at least each picture has something to draw.
    for measure in Measure::ALL {
        let drawn = |known: &Known| matches!(known, Known::Figures(of) if matches!(of.part(measure).share, Share::Drawn { .. }));
        let months = shown.trend.iter().filter(|(_, known)| drawn(known)).count();
        assert!(months * 2 >= counted, "{measure:?}: drawn in {months} of {counted} months");
    }
}

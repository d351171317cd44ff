//! The reports in pictures, and the pictures of a team: what is drawn is what the report and the files say; what is private, or
//! was never counted, is a gap with a word; a team's figures stay with its supervisor.

use std::collections::BTreeMap;

use crate::exports::FEW;
use crate::exports::fill;
use crate::exports::recount;
use crate::harness::Browser;
use crate::harness::selector;
use crate::recount::by_village;
use crate::site::Site;
use domain::report::csv_table::Cell;
use domain::report::period::Period;
use scraper::ElementRef;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use spoonround::service::report::Office;
use spoonround::service::report::Report;
use spoonround::service::report::open;
use spoonround::service::settings::Settings;
use spoonround::store::people;
use spoonround::store::testing::day;
use spoonround::store::testing::noon;

/// Enough children that totals of the programme are shown.
const ENOUGH: u128 = 600;
/// The words of a private cell.
const PRIVATE: &str = "kept private";

async fn number(site: &Site, sql: &str) -> i64 {
    let row = site.db.db.direct().query_one_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("an answer").expect("a row");
    row.try_get_by_index::<i64>(0).expect("a number")
}

async fn report(site: &Site, month: &str) -> Report {
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let on = "2026-11-25";
    let office = Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day(on), now: noon(on), by: None };
    open(office, Period::parse(month).expect("a month"), None).await.expect("a report")
}

/// A file as records by column.
async fn records(browser: &mut Browser, address: &str) -> Vec<BTreeMap<String, String>> {
    browser.open(address).await.is(200);
    let mut reader = csv::Reader::from_reader(browser.bytes.as_slice());
    reader.deserialize().map(|record| record.expect("a record")).collect()
}

fn words_of(element: ElementRef<'_>) -> String {
    element.text().collect::<String>().trim().to_owned()
}

/// The rows of the table under a picture, as texts, found by the link to its file.
fn table(browser: &Browser, file: &str) -> Vec<Vec<String>> {
    let page = browser.page();
    let details = page
        .select(&selector("details"))
        .find(|details| details.select(&selector("a.link")).any(|link| link.attr("href") == Some(file)))
        .unwrap_or_else(|| panic!("no table with a link to {file} in {:?}", browser.attrs("details a.link", "href")));
    let row = |row: ElementRef<'_>| row.select(&selector("th, td")).map(words_of).collect();
    details.select(&selector("tbody tr")).map(row).collect()
}

/// A cell of the file as the page writes it.
fn as_written(record: &BTreeMap<String, String>, column: &str) -> String {
    let why = record["withheld"].split(';').find_map(|entry| entry.strip_prefix(&format!("{column}:")));
    match why {
        Some("few") => "too few".to_owned(),
        Some(_) => PRIVATE.to_owned(),
        None => record[column].clone(),
    }
}

#[actix_web::test]
async fn table_file_and_report_say_the_same_and_what_is_private_is_a_gap() {
    let site = Site::new().await;
    fill(&site, ENOUGH).await;
    let mut manager = site.signed_in("bemu").await;
    // Two earlier months are counted by opening their reports.
    for month in ["2026-08", "2026-09"] {
        manager.open(&format!("/reports?period={month}")).await.is(200);
    }
    let (mut shown, mut hidden) = (0, 0);
    for place in ["", "&area=ulopi"] {
        for (measure, figures) in [
            ("visits", [("visits", "done"), ("visits", "due")]),
            ("underweight", [("growth", "waz_lt_m2"), ("growth", "waz_n")]),
            ("diversity", [("feeding", "n"), ("feeding", "den")]),
            ("overdue", [("followups_stock", "late"), ("followups_stock", "open")]),
        ] {
            let file = format!("/reports/pictures.csv?period=2026-10{place}&picture={measure}");
            manager.open(&format!("/reports/pictures?period=2026-10{place}")).await.is(200);
            let rows = table(&manager, &file);
            let page = manager.clone();
            let records = records(&mut manager, &file).await;
            let of_all: Vec<_> = records.iter().filter(|record| record["class"] == "all").collect();
            assert_eq!((rows.len(), of_all.len()), (12, 12), "twelve months in {file}");
            for (row, record) in rows.iter().rev().zip(of_all) {
                if record["state"] != "shown" {
                    assert_eq!(
                        (row[1].as_str(), record["n"].as_str()),
                        (if record["state"] == "not_counted" { "not counted" } else { "before start" }, "")
                    );
                    continue;
                }
                assert_eq!([&row[1], &row[2]], [&as_written(record, "n"), &as_written(record, "den")], "{file} {record:?}");
                if measure != "overdue" {
                    assert_eq!(row[3], as_written(record, "pct"), "{file} {record:?}");
                }
                if measure == "underweight" || measure == "diversity" {
                    let range = if record["low_pct"].is_empty() {
                        String::new()
                    } else {
                        format!("{}–{}", record["low_pct"], record["high_pct"])
                    };
                    assert_eq!(row[4], range, "{file} {record:?}");
                }
                let report = report(&site, &record["period"]).await;
                for ((table, column), name) in figures.into_iter().zip(["n", "den"]) {
                    match published(&report, table, column, &record["place"]) {
                        Cell::Count(count) => assert_eq!(record[name], count.to_string(), "{file} {record:?}"),
                        Cell::Withheld(_) => {
                            assert_eq!(
                                (record[name].as_str(), record["withheld"].contains(&format!("{name}:private"))),
                                ("", true),
                                "{file} {record:?}"
                            );
                            hidden += 1;
                            continue;
                        }
                        other => panic!("{other:?}"),
                    }
                    shown += 1;
                }
            }
            drawn_as_told(&page, measure, &rows);
        }
    }
    assert!(shown > 10 && hidden > 0, "{shown} shown, {hidden} private: both must be there to be compared");
}

/// The cell of the report that a figure of a picture stands for.
fn published(report: &Report, table: &str, column: &str, area: &str) -> Cell {
    let table = report.table(table).expect("a table");
    let splits = [("area", area), ("slot", "all"), ("sex", "all"), ("age_band_at_visit", "all"), ("indicator", "MDD"), ("class", "all")];
    let wanted: Vec<_> = splits.into_iter().filter(|(split, _)| table.column(split).is_some()).collect();
    let row = table.find(&wanted).expect("a row");
    let cell = |column: &str| table.cell(row, column).cloned().expect("a cell");
    match column {
        "late" => cell("open").minus(&cell("late_0")),
        column => cell(column),
    }
}

/// The picture holds as many values as the table shows, and a gap with its word for what is private; its description says the last.
fn drawn_as_told(browser: &Browser, measure: &str, rows: &[Vec<String>]) {
    let page = browser.page();
    let drawing =
        page.select(&selector(&format!("svg[aria-labelledby='year-{measure}-title year-{measure}-desc']"))).next().expect("a picture");
    assert_eq!(drawing.attr("role"), Some("img"));
    let pieces =
        |css: &str| -> usize { drawing.select(&selector(css)).map(|path| path.attr("d").unwrap_or_default().matches('z').count()).sum() };
    let is_share = measure == "underweight" || measure == "diversity";
    let told = |row: &&Vec<String>| if is_share { row[3].parse::<f64>().is_ok() } else { row[1].parse::<u64>().is_ok() };
    // Of visits both are drawn, or neither.
    let whole = |row: &&Vec<String>| told(row) && (measure != "visits" || row[2] != PRIVATE);
    let drawn = if is_share { drawing.select(&selector("circle.pt")).count() } else { pieces("path.bar-done") };
    assert_eq!(drawn, rows.iter().filter(whole).count(), "{measure}: {rows:?}");
    let private = rows.iter().filter(|row| row.len() > 2 && row[1..].iter().any(|cell| cell == PRIVATE)).filter(|row| !whole(row)).count();
    let gaps: Vec<String> = drawing.select(&selector("text.word")).map(words_of).collect();
    assert_eq!(gaps.iter().any(|word| word == PRIVATE), private > 0, "{measure}: {gaps:?} {rows:?}");
    assert_eq!(drawing.select(&selector("rect.gap.private")).count() > 0, private > 0);
    let told = words_of(drawing.select(&selector("desc")).next().expect("a description"));
    assert!(told.starts_with("October 2026: ") && told.contains("not counted"), "{told}");
}

#[actix_web::test]
async fn the_first_look_counts_one_month_and_offers_the_others() {
    let site = Site::new().await;
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports/pictures").await.is(200).says("No child is registered yet");
    fill(&site, FEW).await;
    manager.open("/reports/pictures").await.is(200).says("Twelve months: All villages").says("Each village, October 2026");
    assert_eq!(number(&site, "SELECT count(*) FROM releases").await, 1, "the month opened, and no other, was released");
    assert_eq!(number(&site, "SELECT count(*) FROM counted_figures WHERE period <> '2026-10'").await, 0);
    let offered: Vec<String> = manager.attrs("p.jump a", "href");
    assert_eq!(offered.len(), 11, "{offered:?}");
    assert_eq!(offered[0], "/reports?period=2026-09");
    manager.says("11 months are not counted yet");
    manager.open(&offered[0]).await.is(200);
    manager.open("/reports/pictures").await.says("10 months are not counted yet");
    for (address, status) in [
        ("/reports/pictures?period=2026-12", 404),
        ("/reports/pictures?period=soon", 400),
        ("/reports/pictures?area=nowhere", 404),
        ("/reports/wall?period=2019-01", 404),
        ("/reports/pictures.csv?period=2026-10", 400),
        ("/reports/pictures.csv?period=2026-10&picture=rank", 400),
        ("/reports/pictures.csv?period=2026-10&picture=month&area=nowhere", 404),
    ] {
        manager.peek(address).await.is(status);
    }
    assert_eq!(number(&site, "SELECT count(*) FROM audit WHERE action = 'report.download'").await, 0);
    manager.open("/reports/pictures.csv?period=2026-10&picture=month&area=ulopi").await.is(200);
    assert!(manager.headers["content-disposition"].contains("2026-10-picture-month-ulopi.csv"), "{:?}", manager.headers);
    let noted = "SELECT count(*) FROM audit WHERE action = 'report.download' AND object_id = '2026-10/picture-month-ulopi.csv' AND actor IS NOT NULL";
    assert_eq!(number(&site, noted).await, 1);
}

#[actix_web::test]
async fn each_village_has_a_card_whose_table_and_file_agree() {
    let site = Site::new().await;
    fill(&site, ENOUGH).await;
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports/pictures").await.is(200);
    assert_eq!(manager.texts("#villages ~ div section h3"), ["Mbiro Hill", "Sanga Point", "Ulopi"], "by code, never by a result");
    let file = "/reports/pictures.csv?period=2026-10&picture=month&area=ulopi";
    let rows = table(&manager, file);
    let records = records(&mut manager, file).await;
    assert_eq!((rows.len(), records.len()), (4 + 6, 4 + 6));
    for (row, record) in rows.iter().zip(&records) {
        assert_eq!([&row[1], &row[2]], [&as_written(record, "n"), &as_written(record, "den")], "{record:?}");
        assert_eq!(row[3], as_written(record, "pct"), "{record:?}");
    }
}

#[actix_web::test]
async fn a_teams_pictures_are_for_its_supervisor_and_hide_nothing_there() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    let mut olani = site.signed_in("olani").await;
    olani.open("/team-pictures?period=2026-10").await.is(200).says("Internal, not for sharing").says("For support, not ranking");
    olani.does_not_say(PRIVATE).does_not_say("Tamsi");
    // Olani has Ulopi only: the children there, whoever visited them; counted a second time by SQL of our own.
    let file = "/team-pictures.csv?period=2026-10";
    let rows = table(&olani, file);
    let all = records(&mut olani, file).await;
    for (measure, column, from) in [
        ("visits", "den", "due x ON x.area_id = a.id"),
        ("visits", "n", "due x ON x.area_id = a.id AND EXISTS (SELECT 1 FROM filled f WHERE f.child = x.child AND f.code = x.code)"),
        ("underweight", "den", "light x ON x.area_id = a.id AND x.waz IS NOT NULL"),
        ("underweight", "n", "light x ON x.area_id = a.id AND x.waz < -200"),
        ("diversity", "den", "fed x ON x.area_id = a.id AND x.groups IS NOT NULL"),
        ("diversity", "n", "fed x ON x.area_id = a.id AND x.groups >= 5"),
    ] {
        let wanted = recount(&site, &by_village(from, "x.area_id")).await["ulopi"];
        let line = all.iter().find(|record| record["measure"] == measure).expect("a line");
        assert!(wanted > 0 && line[column] == wanted.to_string(), "{measure} {column}: {wanted} by SQL, {line:?}");
    }
    for (row, record) in rows.iter().zip(&all) {
        assert_eq!([&row[1], &row[2]], [&as_written(record, "n"), &as_written(record, "den")], "{record:?}");
        assert_eq!(record["withheld"], "");
    }
    let one = records(&mut olani, "/team-pictures.csv?period=2026-10&worker=mireni").await;
    assert!(one.iter().all(|record| record["place"] == "mireni"));
    assert_eq!(number(&site, "SELECT count(*) FROM audit WHERE action = 'team_pictures.download' AND actor IS NOT NULL").await, 2);
    olani.peek("/team-pictures.csv?period=2026-10&worker=tamsi").await.is(404);
    olani.peek("/team-pictures?period=2026-11").await.is(404);
    olani.peek("/team-pictures?period=2026").await.is(404);
    olani.peek("/team-pictures?period=soon").await.is(400);
    olani.open("/team-pictures?period=2026-Q3").await.is(200).says("Quarter 3 of 2026");
    for name in ["mireni", "bemu", "teveli"] {
        let mut other = site.signed_in(name).await;
        other.peek("/team-pictures").await.is(403);
        other.peek("/team-pictures.csv").await.is(403);
    }
    for name in ["mireni", "teveli"] {
        let mut other = site.signed_in(name).await;
        for address in ["/reports/pictures", "/reports/wall", "/reports/pictures.csv?picture=visits"] {
            other.peek(address).await.is(403);
        }
    }
}

#[actix_web::test]
async fn pictures_and_the_sheet_for_the_wall_speak_french_and_are_sound() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    for name in ["bemu", "olani"] {
        let mut person = people::by_sign_in_name(site.db.db.direct(), name).await.expect("read").expect("there");
        person.language = Some("fr".to_owned());
        site.db.db.write(async |tx| people::update(tx, &person).await).await.expect("written");
    }
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports").await.says("Voir ce mois et l’année passée en images");
    manager
        .open("/reports/pictures")
        .await
        .is(200)
        .says("Douze mois")
        .says("pas compté")
        .says("gardé privé")
        .says("Les nombres de cette image");
    manager.does_not_say("kept private").does_not_say("not counted");
    assert_eq!(crate::checks::structure(&manager.body), Vec::<String>::new());
    manager.open("/reports/wall").await.is(200).says("Imprimez cette page").says("Pas une enquête");
    assert_eq!(manager.page().select(&selector(".wall svg[role=img] > desc")).count(), 4);
    assert_eq!(crate::checks::structure(&manager.body), Vec::<String>::new());
    let mut olani = site.signed_in("olani").await;
    olani.open("/team-pictures").await.is(200).says("Interne, à ne pas partager").says("pas pour classer");
    assert_eq!(crate::checks::structure(&olani.body), Vec::<String>::new());
}

//! Releases of reports over HTTP: provisional, released, revised; what is private stays so; every download noted; nothing that
//! contradicts itself is given out.

use domain::ids::ChildId;
use domain::report::csv_table::Cell;
use domain::report::definitions::Holds;
use domain::report::definitions::holds;
use domain::report::definitions::key;
use domain::report::period::Period;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use spoonround::service::report::Office;
use spoonround::service::report::State;
use spoonround::service::report::Trouble;
use spoonround::service::report::count;
use spoonround::service::report::open;
use spoonround::service::report::releasing;
use spoonround::service::settings::Settings;
use spoonround::store::children;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::day;
use spoonround::store::testing::noon;
use spoonround::store::visits;

use crate::exports::FEW;
use crate::exports::fill;
use crate::site::Site;

/// Enough children that figures of a quarter are large enough to be shown.
const ENOUGH: u128 = 600;

async fn text(site: &Site, sql: &str) -> String {
    let row = site.db.db.direct().query_one_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("an answer").expect("a row");
    row.try_get_by_index::<String>(0).or_else(|_| row.try_get_by_index::<i64>(0).map(|n| n.to_string())).expect("a value")
}

async fn run(site: &Site, sql: &str) {
    site.db.db.direct().execute_unprepared(sql).await.expect("a good statement");
}

/// When late visits arrived: after the first release of October.
const ARRIVED: &str = "2026-11-25";

/// A visit on this day to each of so many children that arrived late.
async fn visit_many(site: &Site, on: &str, from: u128, children: u128) {
    let stored = children::by_ids(site.db.db.direct(), &(from..from + children).map(|n| ChildId(10_000 + n)).collect::<Vec<_>>())
        .await
        .expect("read");
    site.db
        .db
        .write::<_, spoonround::store::StoreError, _>(async |tx| {
            for child in stored.iter().filter(|child| child.facts.registered_on <= day(on)) {
                let mut record = a_visit(child.id.0 + 5_000_000 + from, child, day(on));
                record.visit.meals = Some(3);
                record.recorded_at = noon(ARRIVED);
                visits::insert(tx, &record).await?;
            }
            Ok(())
        })
        .await
        .expect("recorded");
}

/// What the program does by itself on a day.
async fn tick(site: &Site, on: &str) -> Vec<(String, u32)> {
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let office = Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day(on), now: noon(on), by: None };
    let done = releasing::keep_up(office).await.expect("done");
    assert!(done.refused.is_empty(), "{:?}", done.refused);
    done.released.into_iter().map(|(period, revision)| (period.to_string(), revision)).collect()
}

#[actix_web::test]
async fn a_month_is_provisional_until_the_tenth_and_counted_once_for_the_same_data() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    site.clock.set(noon("2026-11-09"));
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports").await;
    assert!(
        manager.text().contains("Provisional until 9 November") && manager.text().contains("released on 10 November"),
        "{}",
        manager.text()
    );
    let counted = || {
        site.statements
            .lock()
            .expect("no test died here")
            .iter()
            .filter(|sql| sql.contains("\"visit_foods\"") || sql.contains("\"placements\""))
            .count()
    };
    let once = counted();
    assert!(once > 0, "the first look counts");
    manager.open("/reports?period=2026-10").await;
    assert_eq!(counted(), once, "the second look reads what was counted");
    visit_many(&site, "2026-10-20", 0, 30).await;
    manager.open("/reports").await;
    assert!(counted() > once, "something was recorded since");
    assert_eq!(text(&site, "SELECT count(*) FROM releases").await, "0");
    manager.open("/reports/2026-10/growth.csv").await;
    assert!(manager.headers["content-disposition"].contains("2026-10-provisional-growth.csv"), "{:?}", manager.headers);
}

#[actix_web::test]
async fn late_records_make_a_revision_on_the_next_tenth_and_never_change_what_was_released() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    assert!(tick(&site, "2026-11-10").await.contains(&("2026-10".to_owned(), 0)));
    site.clock.set(noon("2026-11-25"));
    let mut manager = site.signed_in("bemu").await;
    let first = manager.open("/reports/2026-10/visits.csv").await.body.clone();
    assert!(first.contains("2026-11-10T12:00:00Z"), "the instant of release: {first}");
    visit_many(&site, "2026-10-20", 0, 60).await;
    assert_eq!(manager.open("/reports/2026-10/visits.csv").await.body, first, "released figures stand");
    assert_eq!(tick(&site, "2026-11-26").await, [], "late records are told together");
    let told = tick(&site, "2026-12-10").await;
    assert!(told.contains(&("2026-10".to_owned(), 1)) && told.contains(&("2026-11".to_owned(), 0)), "{told:?}");
    assert!(!told.iter().any(|(period, revision)| period == "2026-08" && *revision > 0), "a month that no late record touches: {told:?}");
    assert_eq!(tick(&site, "2026-12-11").await, [], "once");
    site.clock.set(noon("2026-12-12"));
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports?period=2026-10").await;
    let page = manager.text();
    assert!(page.contains("Revision 1, released on 10 December 2026") && page.contains("What revision 1 changed"), "{page}");
    assert!(manager.attrs("main a", "href").contains(&"#changes".to_owned()), "the top leads to what it changed");
    assert!(page.contains("All releases") && page.contains("the first release, 10 November 2026"), "{page}");
    let second = manager.open("/reports/2026-10/visits.csv").await.body.clone();
    assert!(second != first && second.contains("2026-12-10T12:00:00Z"));
    assert_eq!(manager.open("/reports/2026-10/visits.csv?revision=0").await.body, first, "the older one as it was");
    manager.open("/reports?period=2026-10&revision=0").await;
    assert!(manager.text().contains("A later one has been released"), "{}", manager.text());
    manager.peek("/reports?period=2026-10&revision=7").await.is(404);
    assert!(manager.text().contains("no revision 7"), "{}", manager.text());
    hidden_stays_hidden(&site).await;
    let noted = "SELECT count(*) FROM audit WHERE action = 'report.release' AND object_id IN ('2026-10/0', '2026-10/1') AND actor IS NULL";
    assert_eq!(text(&site, noted).await, "2");
}

/// Whoever takes one release from the next must not read the answers of a few children.
#[actix_web::test]
async fn late_records_of_a_few_children_wait_for_more() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    assert!(tick(&site, "2026-11-10").await.contains(&("2026-10".to_owned(), 0)));
    let october = |told: Vec<(String, u32)>| told.into_iter().filter(|(period, _)| period == "2026-10").collect::<Vec<_>>();
    visit_many(&site, "2026-10-20", 0, 4).await;
    assert_eq!(october(tick(&site, "2026-12-10").await), [], "four children");
    site.clock.set(noon("2026-12-12"));
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports?period=2026-10").await;
    assert!(manager.text().contains("once they are of at least 5 children"), "{}", manager.text());
    visit_many(&site, "2026-10-21", 3, 1).await;
    assert_eq!(october(tick(&site, "2027-01-10").await), [], "one of the four once more");
    visit_many(&site, "2026-10-22", 4, 1).await;
    assert_eq!(october(tick(&site, "2027-02-10").await), [("2026-10".to_owned(), 1)], "the fifth");
}

/// Every count that the first release withheld, the second withholds, row by row.
async fn hidden_stays_hidden(site: &Site) {
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let office =
        Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day("2026-12-12"), now: noon("2026-12-12"), by: None };
    let period = Period::parse("2026-10").expect("a month");
    let first = open(office, period, Some(0)).await.expect("a report");
    let second = open(office, period, Some(1)).await.expect("a report");
    assert_eq!(second.state, State::Released { revision: 1 });
    let mut compared = 0;
    for table in &first.tables {
        let later = second.table(table.name).expect("a table");
        for row in &table.rows {
            let codes = key(table, row);
            let other = later.find(&codes).unwrap_or_else(|| panic!("{} {codes:?}", table.name));
            for (column, cell) in table.columns.iter().zip(row) {
                if matches!(cell, Cell::Withheld(_)) && holds(column) == Some(Holds::Count) {
                    assert!(matches!(later.cell(other, column), Some(Cell::Withheld(_))), "{} {codes:?} {column}", table.name);
                    compared += 1;
                }
            }
        }
    }
    assert!(compared > 50, "{compared}");
}

#[actix_web::test]
async fn figures_that_contradict_themselves_are_not_given_out_and_the_page_says_why() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let on = "2026-11-10";
    let office = Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day(on), now: noon(on), by: None };
    let period = Period::parse("2026-10").expect("a month");
    let mut counted = count::count(office, period).await.expect("counted");
    let growth = counted.tables.iter_mut().find(|table| table.name == "growth").expect("a table");
    let column = growth.column("muac_n").expect("a column");
    growth.rows[0][column] = Cell::Count(3);
    let refused = releasing::release(office, "mark", counted, 0).await;
    assert!(matches!(&refused, Err(Trouble::Faults { faults, .. }) if !faults.is_empty()), "{refused:?}");
    assert_eq!(text(&site, "SELECT count(*) FROM releases").await, "0", "nothing was released");
    // The same on the page: what is kept is checked each time before it is given out.
    site.clock.set(noon("2026-11-09"));
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports").await;
    let body = text(&site, "SELECT body FROM counted_figures").await;
    let spoilt = spoilt(&body);
    assert_ne!(body, spoilt);
    run(&site, &format!("UPDATE counted_figures SET body = '{}'", spoilt.replace('\'', "''"))).await;
    for address in ["/reports", "/reports/2026-10/growth.csv", "/reports/2026-10/all.zip"] {
        manager.peek(address).await.is(500);
        let page = manager.text();
        assert!(
            page.contains("These figures are not released") && page.contains("is a small count that must be private"),
            "{address}: {page}"
        );
    }
    assert_eq!(text(&site, "SELECT count(*) FROM audit WHERE action = 'report.download'").await, "0");
}

/// The kept text with 3 for the first figure of growth.
fn spoilt(body: &str) -> String {
    let (before, growth) = body.split_once("= growth").expect("a table");
    let mut lines: Vec<String> = growth.split('\n').map(str::to_owned).collect();
    let mut cells: Vec<&str> = lines[1].split('\t').collect();
    cells[3] = "3";
    lines[1] = cells.join("\t");
    format!("{before}= growth{}", lines.join("\n"))
}

#[actix_web::test]
async fn a_time_that_cannot_be_reported_is_told_in_a_sentence() {
    let site = Site::new().await;
    let mut manager = site.signed_in("bemu").await;
    manager.peek("/reports").await.is(200);
    assert!(manager.text().contains("No child is registered yet"), "{}", manager.text());
    fill(&site, FEW).await;
    for (address, status, told) in [
        ("/reports?period=2026-11", 404, "has not ended"),
        ("/reports?month=2031-01", 404, "has not ended"),
        ("/reports?period=2026-Q4", 404, "Quarter 4 of 2026 has not ended"),
        ("/reports?period=2026", 404, "Year 2026 has not ended"),
        ("/reports?period=2019-03", 404, "lies before the programme, whose first child was registered in"),
        ("/reports?period=2026-Q5", 422, "“2026-Q5” is no month, quarter or year"),
        ("/reports?period=last%20month", 422, "write it like 2026-10, 2026-Q3 or 2026"),
        ("/reports/2026-11/growth.csv", 404, "has not ended"),
        ("/reports/2019-03/all.zip", 404, "lies before the programme"),
        ("/reports/2026-1/growth.csv", 422, "is no month, quarter or year"),
        ("/reports?revision=first", 400, ""),
    ] {
        manager.peek(address).await;
        assert_eq!(manager.status.as_u16(), status, "{address}: {}", manager.text());
        assert!(manager.text().contains(told), "{address}: {}", manager.text());
    }
}

#[actix_web::test]
async fn every_file_and_the_archive_are_the_same_twice_and_noted() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports").await;
    let links: Vec<String> = manager.attrs("ul.plain a", "href").into_iter().filter(|href| href.starts_with("/reports/")).collect();
    assert_eq!(links.len(), 3 + 9 * 3, "{links:?}");
    let mut seen = Vec::new();
    for link in &links {
        manager.open(link).await;
        assert_eq!(manager.status.as_u16(), 200, "{link}");
        assert!(manager.headers["content-disposition"].starts_with("attachment; filename=\"2026-10-"), "{link}");
        seen.push(manager.bytes.clone());
    }
    site.clock.set(noon("2026-11-28"));
    let mut manager = site.signed_in("bemu").await;
    for (link, before) in links.iter().zip(&seen) {
        manager.open(link).await;
        assert_eq!(&manager.bytes, before, "{link}: the same bytes days later");
        let noted = format!(
            "SELECT count(*) FROM audit WHERE action = 'report.download' AND object_id = '{}' AND actor IS NOT NULL",
            link.trim_start_matches("/reports/")
        );
        assert_eq!(text(&site, &noted).await, "2", "{link}");
    }
    let zip = &seen[links.iter().position(|link| link.ends_with("all.zip")).expect("an archive")];
    let mut archive = zip::ZipArchive::new(std::io::Cursor::new(zip)).expect("an archive");
    assert_eq!(archive.len(), 2 + 9 * 2);
    for (link, bytes) in links.iter().zip(&seen).filter(|(link, _)| !link.ends_with(".zip") && !link.contains("-spreadsheet")) {
        let name = format!("2026-10/{}", link.trim_start_matches("/reports/2026-10/"));
        let mut found = Vec::new();
        std::io::Read::read_to_end(&mut archive.by_name(&name).unwrap_or_else(|e| panic!("{name}: {e}")), &mut found).expect("readable");
        assert_eq!(&found, bytes, "{name}");
    }
    let summary = String::from_utf8(seen[1].clone()).expect("UTF-8");
    for part in ["Totals of the whole programme", "Largest changes since September 2026", "Private figures", "growth.csv: ", "Look out"] {
        assert!(summary.contains(part), "{part}: {summary}");
    }
}

#[actix_web::test]
async fn a_quarter_is_counted_anew_and_withholds_what_its_months_do() {
    let site = Site::new().await;
    fill(&site, ENOUGH).await;
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports?period=2026-Q3").await;
    assert!(manager.text().contains("Quarter 3 of 2026"), "{}", manager.text());
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let on = "2026-11-25";
    let office = Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day(on), now: noon(on), by: None };
    let quarter = open(office, Period::parse("2026-Q3").expect("a quarter"), None).await.expect("a report");
    let growth = quarter.table("growth").expect("a table");
    // Each child once, by its last visit of the quarter, if it was then under 24 months: a second count of our own.
    let counted = |place: &str| {
        format!(
            "SELECT count(*) FROM (SELECT v.child_id, max(v.visited_on) last, c.born FROM visits v JOIN children c ON c.id = v.child_id
             WHERE v.voided_at IS NULL AND v.contact <> 'phone' AND v.visited_on BETWEEN '2026-07-01' AND '2026-09-30'
             AND (c.left_on IS NULL OR c.left_on >= v.visited_on) AND {place}
             AND c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge') GROUP BY v.child_id)
             WHERE date(born, '+24 months') > last"
        )
    };
    let mut compared = 0;
    for (area, sex) in [("all", "all"), ("all", "F"), ("all", "M"), ("ulopi", "all"), ("mbiro", "all"), ("sanga", "all")] {
        let row = growth.find(&[("area", area), ("sex", sex), ("age_band_at_visit", "all")]).expect("a row");
        if let Some(Cell::Count(visited)) = growth.cell(row, "children_visited") {
            let sex = if sex == "all" { "1 = 1".to_owned() } else { format!("c.sex = '{sex}'") };
            let area = if area == "all" { "1 = 1".to_owned() } else { format!("c.area_id = (SELECT id FROM areas WHERE code = '{area}')") };
            assert_eq!(visited.to_string(), text(&site, &counted(&format!("{sex} AND {area}"))).await, "{area} {sex}");
            compared += 1;
        }
    }
    assert!(compared > 0, "nothing is shown");
    let mut hidden = 0;
    for month in ["2026-07", "2026-08", "2026-09"] {
        let month = open(office, Period::parse(month).expect("a month"), None).await.expect("a report");
        for name in ["visits", "enrolment", "programme", "followups", "followups_stock", "referrals", "reactions"] {
            let (table, longer) = (month.table(name).expect("a table"), quarter.table(name).expect("a table"));
            for row in &table.rows {
                let codes = key(table, row);
                for (column, cell) in table.columns.iter().zip(row) {
                    let count = holds(column) == Some(Holds::Count);
                    if count && matches!(cell, Cell::Withheld(_)) {
                        // Rows of two splits that the longer period does not tell are no leak either.
                        let Some(row) = longer.find(&codes) else { continue };
                        let other = longer.cell(row, column);
                        assert!(matches!(other, Some(Cell::Withheld(_))), "{name} {codes:?} {column}: {other:?}");
                        hidden += 1;
                    }
                }
            }
        }
    }
    assert!(hidden > 20, "{hidden}");
}

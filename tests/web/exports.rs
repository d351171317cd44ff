//! The manager's month over HTTP: the page, its files, who may not see them, and every kind of figure counted a second time by SQL
//! that was written from the definitions, without looking at how the program counts.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use domain::child::ChildStatus;
use domain::child::Sex;
use domain::child_code::ChildCode;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::FoodOffer;
use domain::visit::Measurement;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use spoonround::files::report_csv;
use spoonround::service::report;
use spoonround::service::report::Office;
use spoonround::service::settings::Settings;
use spoonround::store::StoreError;
use spoonround::store::areas;
use spoonround::store::areas::AreaRecord;
use spoonround::store::children;
use spoonround::store::corrections;
use spoonround::store::follow_ups;
use spoonround::store::follow_ups::Recorded;
use spoonround::store::placements;
use spoonround::store::placements::StatusRecord;
use spoonround::store::testing::a_child;
use spoonround::store::testing::a_follow_up;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::day;
use spoonround::store::testing::noon;
use spoonround::store::visits;

use crate::site::Site;
use crate::site::TODAY;

/// The month counted in these tests; the clock of the site stands in November.
const MONTH: &str = "2026-10";
const FIRST: &str = "2026-10-01";
const LAST: &str = "2026-10-31";
/// Enough children that most figures are large enough to be shown and compared.
const MANY: u128 = 1_200;
/// Enough for a page.
pub const FEW: u128 = 150;

/// Numbers that look random and are the same every time.
struct Dice(u64);

impl Dice {
    fn up_to(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    /// Once in so many times.
    fn once_in(&mut self, times: u64) -> bool {
        self.up_to(times) == 0
    }

    /// Yes, no or not asked.
    fn answer(&mut self, not_asked_once_in: u64) -> Option<bool> {
        if self.once_in(not_asked_once_in) { None } else { Some(self.once_in(2)) }
    }
}

/// Fills the site: children of three villages, visits in and before the month, follow-ups, some who left.
pub async fn fill(site: &Site, children: u128) {
    let sanga = AreaId(site.ulopi.0 + 50);
    let villages = [(site.ulopi, site.mireni), (site.mbiro, site.tamsi), (sanga, site.mireni)];
    let mut dice = Dice(20_261_031);
    site.db
        .db
        .write::<_, StoreError, _>(async |tx| {
            let area = AreaRecord { id: sanga, code: "sanga".to_owned(), name: "Sanga Point".to_owned(), parent: None, active: true };
            areas::insert(tx, &area).await?;
            let mut key = 100_000;
            for n in 0..children {
                let (area, worker) = villages[usize::try_from(dice.up_to(3)).expect("small")];
                one_child(tx, &mut dice, n, (area, worker), &mut key).await?;
            }
            Ok(())
        })
        .await
        .expect("a filled programme");
}

async fn one_child(
    tx: &impl ConnectionTrait,
    dice: &mut Dice,
    n: u128,
    (area, worker): (AreaId, PersonId),
    key: &mut u128,
) -> Result<(), StoreError> {
    let mut child = a_child(10_000 + n, area, worker);
    child.code = ChildCode::from_random(7_000 + u64::try_from(n).expect("small")).as_str().to_owned();
    child.facts.sex = if dice.once_in(2) { Sex::Female } else { Sex::Male };
    // Days up to the 28th: month arithmetic in SQL does not know short months.
    let months_back = u32::try_from(dice.up_to(23)).expect("small");
    let day_of = u32::try_from(1 + dice.up_to(28)).expect("small");
    let month = (0..months_back).fold(domain::calendar::Month::parse(MONTH).expect("a month"), |month, _| month.previous());
    child.facts.born = month.first() + chrono::Days::new(u64::from(day_of) - 1);
    child.facts.registered_on = child.facts.born + chrono::Days::new(dice.up_to(40));
    if child.facts.registered_on > day(LAST) && dice.once_in(2) {
        child.facts.registered_on = child.facts.born;
    }
    children::insert(tx, &child).await?;
    if child.facts.registered_on > day(LAST) {
        return Ok(());
    }
    let mut on = child.facts.registered_on;
    let mut opened_by = None;
    while on <= day("2026-11-20") {
        *key += 1;
        let mut record = a_visit(*key, &child, on);
        let visit = &mut record.visit;
        visit.contact = if dice.once_in(9) { Contact::Phone } else { Contact::Home };
        visit.weight = Some(Weight::from_grams(3_000 + u32::try_from(dice.up_to(7_000)).expect("small")).expect("a weight"));
        visit.muac = Muac::from_mm(108 + u16::try_from(dice.up_to(40)).expect("small")).ok().filter(|_| !dice.once_in(5));
        visit.oedema = if dice.once_in(3) { Some(dice.once_in(20)) } else { None };
        let waz = -700 + i32::try_from(dice.up_to(900)).expect("small");
        record.indices.waz = (visit.oedema != Some(true) && !dice.once_in(8)).then_some(waz);
        if record.indices.waz.is_some_and(|waz| waz < -600) {
            if dice.once_in(2) {
                visit.confirmed = BTreeSet::from([Measurement::Weight])
            } else {
                record.suspect = BTreeSet::from([Measurement::Weight])
            }
        }
        visit.breastfed = dice.answer(6);
        visit.meals = if dice.once_in(5) { None } else { Some(u8::try_from(dice.up_to(5)).expect("small")) };
        visit.solids_yesterday = visit.meals.map_or_else(|| dice.answer(2), |meals| Some(meals > 0));
        visit.formula_times = Some(u8::try_from(dice.up_to(3)).expect("small")).filter(|_| !dice.once_in(5));
        visit.animal_milk_times = Some(u8::try_from(dice.up_to(3)).expect("small")).filter(|_| !dice.once_in(5));
        visit.drink_yogurt_times = Some(u8::try_from(dice.up_to(2)).expect("small")).filter(|_| !dice.once_in(5));
        visit.groups = (!dice.once_in(4)).then(|| FoodGroup::ALL.iter().copied().filter(|_| !dice.once_in(3)).collect());
        if *key % 4 < 2 {
            record.visit.foods =
                vec![reaction(if key.is_multiple_of(4) { ReactionSign::RashLocal } else { ReactionSign::HivesWidespread })];
        }
        visits::insert(tx, &record).await?;
        opened_by = Some(*key);
        on = on + chrono::Days::new(8 + dice.up_to(70));
    }
    if let Some(visit) = opened_by.filter(|_| n % 23 == 5) {
        // Taken back, and what it had opened with it.
        let why = visits::Correction { by: worker, at: noon(FIRST), reason: "another child" };
        let follow_up = a_follow_up(1_000_000 + *key, &child, RuleId::MealsFew, visit, "2026-10-05");
        let recorded = Recorded { at: noon(FIRST), today: day("2026-10-05"), by: Some(worker) };
        follow_ups::replace_all_of_child(tx, child.id, &[follow_up], recorded).await?;
        visits::void(tx, domain::ids::VisitId(visit), 1, why).await?;
    }
    if n % 29 == 7 {
        // The record of the child before, once more: it counts as nobody.
        let merge = corrections::RecordCorrection {
            what: corrections::Corrected::Merge { into: domain::ids::ChildId(10_000 + n - 1) },
            child: child.id,
            from_on: child.facts.registered_on,
            reason: "same_child".to_owned(),
            note: "registered twice".to_owned(),
            by: worker,
            at: noon(FIRST),
        };
        corrections::append(tx, &merge).await?;
    }
    if let Some(visit) = opened_by.filter(|_| dice.once_in(2)) {
        let opened = day("2026-09-20") + chrono::Days::new(dice.up_to(50));
        let rule = [RuleId::WeightLow, RuleId::SolidsLate, RuleId::ReactionSevere][usize::try_from(dice.up_to(3)).expect("small")];
        let mut follow_up = a_follow_up(*key, &child, rule, visit, &opened.to_string());
        follow_up.class = Class::Fortnight;
        let recorded = Recorded { at: noon(FIRST), today: opened, by: Some(worker) };
        follow_ups::replace_all_of_child(tx, child.id, &[follow_up], recorded).await?;
    }
    if dice.once_in(6) {
        let on = (day("2026-08-20") + chrono::Days::new(dice.up_to(80))).max(child.facts.registered_on);
        let status = if dice.once_in(4) { ChildStatus::Refused } else { ChildStatus::Moved };
        let left = StatusRecord { status, on, by: Some(worker), note: None, at: noon(FIRST) };
        placements::change_status(tx, child.id, 1, &left).await?;
    }
    Ok(())
}

/// A food after which this sign came.
fn reaction(sign: ReactionSign) -> FoodOffer {
    FoodOffer {
        code: FoodCode("groundnut_paste".to_owned()),
        offers: 1,
        response: Some(Response::Reaction),
        unsafe_form: None,
        signs: Some(BTreeSet::from([sign])),
        minutes_after: Some(30),
        hold_lifted: false,
    }
}

/// A file as rows of column and text.
fn read(bytes: &[u8]) -> Vec<BTreeMap<String, String>> {
    let mut csv = csv::ReaderBuilder::new().from_reader(bytes);
    let head = csv.headers().expect("a header").clone();
    csv.records().map(|row| head.iter().zip(row.expect("a row").iter()).map(|(h, c)| (h.to_owned(), c.to_owned())).collect()).collect()
}

/// What is shown in a column where the other columns hold these texts; `None` where it is withheld.
fn shown(rows: &[BTreeMap<String, String>], place: &[(&str, &str)], column: &str) -> Option<i64> {
    let row = rows.iter().find(|row| place.iter().all(|(name, text)| row[*name] == *text)).unwrap_or_else(|| panic!("no row {place:?}"));
    let withheld = row["withheld"].split(';').any(|entry| entry.split(':').next() == Some(column));
    assert_eq!(withheld, row[column].is_empty(), "{place:?} {column}: empty if and only if withheld");
    row[column].parse().ok()
}

/// One number from the database for each village (by code) and for all.
pub async fn recount(site: &Site, select: &str) -> BTreeMap<String, i64> {
    let sql = format!("{CTE} {select}").replace(":first", &format!("'{FIRST}'")).replace(":last", &format!("'{LAST}'"));
    let rows = site.db.db.direct().query_all_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("an answer");
    let mut of = BTreeMap::new();
    let mut all = 0;
    for row in rows {
        let (code, count): (String, i64) = (row.try_get_by_index(0).expect("a code"), row.try_get_by_index(1).expect("a count"));
        all += count;
        of.insert(code, count);
    }
    of.insert("all".to_owned(), all);
    of
}

/// Children with their place and status at the end of the month, visits that count, and the last visit of each child in the month.
const CTE: &str = "
WITH slot(code, months, days, after) AS (VALUES
  ('d003',0,3,7),('d007',0,7,7),('d014',0,14,7),('d042',0,42,7),('d070',0,70,7),('d098',0,98,7),('m04',4,0,7),('m05',5,0,7),
  ('m06',6,0,10),('m06d14',6,14,10),('m07',7,0,10),('m08',8,0,10),('m09',9,0,10),('m10',10,0,10),('m11',11,0,10),
  ('m12',12,0,14),('m14',14,0,14),('m16',16,0,14),('m18',18,0,14),('m20',20,0,14),('m22',22,0,14),('m24',24,0,14)),
target AS (SELECT c.id child, c.area_id, c.registered_on, s.code, s.after,
  date(c.born, '+' || s.months || ' months', '+' || s.days || ' days') day FROM children c, slot s
  WHERE c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge')),
seen AS (SELECT v.*, c.born,
  (strftime('%Y', v.visited_on) - strftime('%Y', c.born)) * 12 + (strftime('%m', v.visited_on) - strftime('%m', c.born))
  - (strftime('%d', v.visited_on) < strftime('%d', c.born)) months
  FROM visits v JOIN children c ON c.id = v.child_id
  WHERE v.voided_at IS NULL AND c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge') AND v.contact <> 'phone' AND v.visited_on <= :last
    AND (c.left_on IS NULL OR c.left_on >= v.visited_on)),
nearest AS (SELECT v.child_id child, t.code, row_number() OVER (PARTITION BY v.id
  ORDER BY abs(julianday(t.day) - julianday(v.visited_on)), t.day DESC) place FROM seen v JOIN target t ON t.child = v.child_id),
filled AS (SELECT DISTINCT child, code FROM nearest WHERE place = 1),
gone AS (SELECT child_id child, happened_on FROM status_changes WHERE status <> 'active'),
due AS (SELECT t.* FROM target t WHERE date(t.day, '+' || t.after || ' days') BETWEEN :first AND :last
  AND t.day >= date(t.registered_on, '-7 days') AND t.registered_on <= :last
  AND NOT EXISTS (SELECT 1 FROM gone g WHERE g.child = t.child AND g.happened_on <= max(t.day, t.registered_on))),
month AS (SELECT s.*, row_number() OVER (PARTITION BY child_id ORDER BY visited_on DESC, entry_seq DESC) back,
  CASE WHEN months < 6 THEN 0 WHEN months < 9 THEN 1 WHEN months < 12 THEN 2 WHEN months < 24 THEN 3 ELSE 4 END band,
  CASE WHEN months < 6 THEN 0 WHEN months < 12 THEN 1 WHEN months < 24 THEN 2 ELSE 3 END growth_band
  FROM seen s WHERE visited_on >= :first),
last AS (SELECT * FROM month WHERE back = 1),
fed AS (SELECT l.child_id, l.area_id, l.months,
  (SELECT m.breastfed FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.breastfed IS NOT NULL ORDER BY back LIMIT 1) breastfed,
  (SELECT coalesce(m.meals, 0) FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id
     AND (m.meals IS NOT NULL OR m.solids_yesterday = 0) ORDER BY back LIMIT 1) meals,
  (SELECT m.formula_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.formula_times IS NOT NULL ORDER BY back LIMIT 1)
  + (SELECT m.animal_milk_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.animal_milk_times IS NOT NULL ORDER BY back LIMIT 1)
  + (SELECT m.drink_yogurt_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.drink_yogurt_times IS NOT NULL ORDER BY back LIMIT 1) milks,
  (SELECT CASE m.food_groups WHEN '' THEN 0 ELSE length(m.food_groups) - length(replace(m.food_groups, ' ', '')) + 1 END
     FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.food_groups IS NOT NULL ORDER BY back LIMIT 1) groups
  FROM last l WHERE l.months BETWEEN 6 AND 23),
often AS (SELECT area_id, months, CASE WHEN breastfed = 1 THEN meals >= CASE WHEN months < 9 THEN 2 ELSE 3 END
  WHEN breastfed = 0 AND meals IS NOT NULL AND milks IS NOT NULL THEN meals + milks >= 4 AND meals >= 1 END yes FROM fed),
light AS (SELECT l.area_id,
  (SELECT CASE WHEN m.oedema = 1 THEN -9999 ELSE m.waz_h END FROM month m
     WHERE m.child_id = l.child_id AND m.growth_band = l.growth_band AND m.area_id = l.area_id
       AND (m.oedema = 1 OR (m.waz_h IS NOT NULL AND (m.waz_h BETWEEN -600 AND 500 OR m.confirmed LIKE '%weight%')))
     ORDER BY back LIMIT 1) waz
  FROM last l WHERE l.growth_band < 3),
reacted AS (SELECT v.area_id, f.signs FROM visit_foods f JOIN visits v ON v.id = f.visit_id JOIN children c ON c.id = v.child_id
  WHERE f.response = 'reaction' AND v.voided_at IS NULL AND v.visited_on BETWEEN :first AND :last
    AND c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge') AND (c.left_on IS NULL OR c.left_on >= v.visited_on))";

/// What a village is called in the answer of a recount.
pub fn by_village(from: &str, of: &str) -> String {
    format!("SELECT a.code, count({of}) FROM areas a LEFT JOIN {from} GROUP BY a.code")
}

#[actix_web::test]
async fn a_month_recounts_to_the_same_numbers() {
    let site = Site::new().await;
    fill(&site, MANY).await;
    let period = domain::report::period::Period::parse(MONTH).expect("a month");
    let protocols = spoonround::service::protocols::for_tests();
    let settings = Settings::default();
    let office = Office { db: &site.db.db, protocols: &protocols, settings: &settings, today: day(TODAY), now: noon(TODAY), by: None };
    let report = report::open(office, period, None).await.expect("a report");
    let files: BTreeMap<String, Vec<BTreeMap<String, String>>> =
        report.tables.iter().map(|table| (table.name.to_owned(), read(&report_csv::write(table).expect("written")))).collect();
    let everybody = [("sex", "all"), ("age_band_at_period_end", "all")];
    let grown = [("sex", "all"), ("age_band_at_visit", "all")];
    let mdd = [("sex", "all"), ("age_band_at_visit", "all"), ("indicator", "MDD")];
    let mmf = [("sex", "all"), ("age_band_at_visit", "all"), ("indicator", "MMF")];
    let about = [("rule", "all"), ("class", "all")];
    let milder = [("food_group", "all"), ("allergen", "all"), ("class", "all")];
    let rash = [("food_group", "pulses_nuts"), ("allergen", "peanut"), ("class", "mild")];
    let active_end = "children c ON c.area_id = a.id AND c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge') \
         AND c.registered_on <= :last AND (c.left_on IS NULL OR c.left_on > :last)";
    let active_start = "children c ON c.area_id = a.id AND c.id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge') \
         AND c.registered_on < :first AND (c.left_on IS NULL OR c.left_on >= :first)";
    let done = "due d ON d.area_id = a.id AND EXISTS (SELECT 1 FROM filled f WHERE f.child = d.child AND f.code = d.code)";
    let opened = "follow_ups f ON f.area_id = a.id AND f.opened_on BETWEEN :first AND :last AND f.rule <> 'reaction.severe' \
         AND EXISTS (SELECT 1 FROM visits v WHERE v.id = f.opened_by_visit AND v.child_id = f.child_id AND v.voided_at IS NULL)";
    #[expect(clippy::type_complexity, reason = "a table of checks: file, row, column, question in SQL")]
    let checks: [(&str, &[(&str, &str)], &str, String); 15] = [
        ("enrolment", &everybody, "active_end", by_village(active_end, "c.id")),
        ("enrolment", &everybody, "active_start", by_village(active_start, "c.id")),
        ("visits", &[("slot", "all")], "due", by_village("due d ON d.area_id = a.id", "d.child")),
        ("visits", &[("slot", "all")], "done", by_village(done, "d.child")),
        ("growth", &grown, "children_visited", by_village("last l ON l.area_id = a.id AND l.growth_band < 3", "l.id")),
        ("growth", &grown, "waz_n", by_village("light g ON g.area_id = a.id AND g.waz IS NOT NULL", "g.waz")),
        ("growth", &grown, "waz_lt_m2", by_village("light g ON g.area_id = a.id AND g.waz < -200", "g.waz")),
        ("feeding", &mdd, "den", by_village("fed f ON f.area_id = a.id AND f.groups IS NOT NULL", "f.groups")),
        ("feeding", &mdd, "n", by_village("fed f ON f.area_id = a.id AND f.groups >= 5", "f.groups")),
        ("feeding", &mmf, "den", by_village("often o ON o.area_id = a.id AND o.yes IS NOT NULL", "o.yes")),
        ("feeding", &mmf, "n", by_village("often o ON o.area_id = a.id AND o.yes = 1", "o.yes")),
        ("followups", &about, "opened", by_village(opened, "f.id")),
        ("reactions", &milder, "n", by_village("reacted r ON r.area_id = a.id", "r.signs")),
        ("reactions", &milder, "referred_n", by_village("reacted r ON r.area_id = a.id AND r.signs = 'hives_widespread'", "r.signs")),
        ("reactions", &rash, "n", by_village("reacted r ON r.area_id = a.id AND r.signs = 'rash_local'", "r.signs")),
    ];
    let mut all = 0;
    for (file, place, column, sql) in checks {
        let wanted = recount(&site, &sql).await;
        assert!(wanted["all"] > 20, "{file} {column}: too few to say anything: {wanted:?}");
        let mut compared = 0;
        for (area, count) in &wanted {
            let at = [&[("area", area.as_str())], place].concat();
            if let Some(figure) = shown(&files[file], &at, column) {
                assert_eq!(figure, *count, "{file} {column} {area}");
                compared += 1;
            }
        }
        assert!(compared > 0, "{file} {column}: none of {wanted:?} is shown");
        all += compared;
    }
    assert!(all > 45, "only {all} figures are shown");
}

#[actix_web::test]
async fn files_are_the_same_twice_and_every_download_is_noted() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    let mut manager = site.signed_in("bemu").await;
    let address = format!("/reports/{MONTH}/growth.csv");
    manager.open(&address).await;
    let once = manager.body.clone();
    site.clock.set(noon("2026-12-24"));
    let mut manager = site.signed_in("bemu").await;
    manager.open(&address).await;
    assert_eq!(once, manager.body, "the same bytes a month later");
    assert!(once.contains("\r\n") && once.starts_with("programme,period,area,"));
    let sql = "SELECT count(*) FROM audit WHERE action = 'report.download' AND object_id = '2026-10/growth.csv' AND actor IS NOT NULL";
    let row = site.db.db.direct().query_one_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("an answer").expect("a row");
    assert_eq!(row.try_get_by_index::<i64>(0).expect("a count"), 2);
}

#[actix_web::test]
async fn the_page_shows_whole_months_and_no_child() {
    let site = Site::new().await;
    fill(&site, FEW).await;
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports").await;
    assert!(manager.text().contains("October 2026"), "{}", manager.text());
    assert!(!manager.body.contains("/children/") && !manager.text().contains("Child 10"), "no child on the page");
    manager.open("/reports?month=2026-10&area=ulopi").await;
    assert!(manager.text().contains("Ulopi"));
    for address in ["/reports/2026-10/children.csv", "/reports?month=2026-10&area=nowhere"] {
        manager.peek(address).await;
        assert_eq!(manager.status.as_u16(), 404, "{address}");
    }
}

//! The manager's month over HTTP: the page, its files, who may not see them, and every kind of figure held against the recount.

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

use crate::harness::selector;
use crate::recount::Days;
use crate::recount::compare;
use crate::recount::recount as recounted;
use crate::site::Site;
use crate::site::TODAY;

/// The month counted in these tests, and its days; the clock of the site stands in November.
const MONTH: &str = "2026-10";
const FIRST: &str = "2026-10-01";
const LAST: &str = "2026-10-31";
const OCTOBER: Days<'_> = (FIRST, LAST);
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
            let area = AreaRecord {
                id: sanga,
                code: "sanga".to_owned(),
                name: "Sanga Point".to_owned(),
                parent: None,
                active: true,
                walk_minutes: None,
            };
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

/// One number from the database for each village (by code) and for all.
pub async fn recount(site: &Site, select: &str) -> BTreeMap<String, i64> {
    recounted(&site.db.db, OCTOBER, select).await
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
    let kinds = compare(&site.db.db, OCTOBER, &report.tables).await;
    for (kind, compared) in &kinds {
        assert!(compared.counted > 20, "{kind}: too few to say anything: {compared:?}");
        assert!(compared.shown > 0, "{kind}: none is shown: {compared:?}");
    }
    let all: u32 = kinds.values().map(|compared| compared.shown).sum();
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
    // Signs of wasting and of risk are of the children seen at that age: the figure of all of them stands beside.
    manager.open("/reports?month=2026-10").await;
    let page = manager.page();
    let signs: Vec<String> = (page.select(&selector("tbody tr")))
        .filter(|row| row.text().collect::<String>().starts_with("Any sign of"))
        .filter_map(|row| row.select(&selector("td")).nth(1).map(|cell| cell.text().collect::<String>().trim().to_owned()))
        .collect();
    assert_eq!((signs.len(), signs.iter().any(String::is_empty)), (3, false), "{signs:?}");
    // A place where nothing was counted is not offered; asked for, it is told in a sentence.
    let empty =
        AreaRecord { id: AreaId(77), code: "hollow".to_owned(), name: "Hollow".to_owned(), parent: None, active: true, walk_minutes: None };
    areas::insert(site.db.db.direct(), &empty).await.expect("an area");
    manager.open("/reports?month=2026-10").await;
    assert!(!manager.attrs("select[name=area] option", "value").contains(&"hollow".to_owned()));
    manager.open("/reports?month=2026-10&area=hollow").await.is(404).says("Hollow does not stand in the report of October 2026");
    // The definitions list the codes that stand in the files.
    manager.open("/reports/2026-10/README.txt").await.is(200);
    assert!(manager.body.contains("Codes of the column “class” in these files"), "{}", manager.body);
    for address in ["/reports/2026-10/children.csv", "/reports?month=2026-10&area=nowhere"] {
        manager.peek(address).await;
        assert_eq!(manager.status.as_u16(), 404, "{address}");
    }
}

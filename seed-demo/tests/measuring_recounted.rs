//! How measuring goes in the demo, recounted by SQL of its own for each worker and area of a supervisor.

mod made;

use chrono::NaiveDate;
use domain::calendar::Month;
use domain::quality::Item;
use domain::quality::figures::Figures;
use domain::role::Role;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use seed_demo::programme;
use spoonround::service::Actor;
use spoonround::service::Context;
use spoonround::service::quality;
use spoonround::store::Db;
use spoonround::store::people;

use crate::made::demo;
use crate::made::noon;

const CHILDREN: u32 = 900;

/// Visits of October at home or clinic, of children who are in the programme, with what SQL makes of them.
fn recount(of: &str) -> String {
    let z = |index: &str, least: i32, most: i32| {
        let within = format!("{index}_h BETWEEN {least} AND {most}");
        format!(
            "SUM({within}) AS {index}_n, AVG(CASE WHEN {within} THEN {index}_h END) / 100.0 AS {index}_mean, \
             100.0 * SUM(NOT {within}) / COUNT({index}_h) AS {index}_outside, \
             SUM(CASE WHEN {within} THEN {index}_h * {index}_h END) / 10000.0 AS {index}_squares"
        )
    };
    format!(
        "SELECT COUNT(*) AS visits, COUNT(weight_g) AS weights, COUNT(length_mm) AS lengths, COUNT(muac_mm) AS arms, \
         100.0 * COUNT(weight_g) / COUNT(*) AS weight_pct, SUM(v.version > 1) AS corrected, {}, {}, {}, \
         (SELECT COUNT(*) FROM follow_ups f JOIN visits o ON o.id = f.opened_by_visit JOIN people w ON w.id = o.worker_id \
          JOIN areas a ON a.id = o.area_id WHERE f.rule = 'data.weight_jump' AND o.voided_at IS NULL AND o.contact <> 'phone' \
          AND o.visited_on BETWEEN '2026-10-01' AND '2026-10-31' AND {of}) AS jumps \
         FROM visits v JOIN people w ON w.id = v.worker_id JOIN areas a ON a.id = v.area_id \
         WHERE v.voided_at IS NULL AND v.contact <> 'phone' AND v.visited_on BETWEEN '2026-10-01' AND '2026-10-31' AND {of}",
        z("waz", -600, 500),
        z("laz", -600, 600),
        z("wlz", -500, 500),
    )
}

/// Holds figures against a recount; how many figures were held.
async fn agree(db: &Db, of: &str, figures: &Figures) -> usize {
    let statement = Statement::from_string(DbBackend::Sqlite, recount(of));
    let row = db.direct().query_one_raw(statement).await.expect("an answer").expect("a row");
    let count = |column: &str| usize::try_from(row.try_get::<Option<i64>>("", column).expect(column).unwrap_or(0)).expect("a count");
    let number = |column: &str| row.try_get::<Option<f64>>("", column).expect(column);
    assert_eq!(figures.quality.visits, count("visits"), "{of}");
    assert_eq!(figures.measured, [count("weights"), count("lengths"), count("arms")], "{of}");
    assert_eq!((figures.quality.corrected, figures.jumps), (count("corrected"), count("jumps")), "{of}");
    let mut held = 6;
    let mut near = |ours: Option<f64>, theirs: Option<f64>, enough: bool| {
        let theirs = theirs.filter(|_| enough);
        let same = ours.zip(theirs).map_or(ours.is_none() && theirs.is_none(), |(a, b)| (a - b).abs() < 1e-6);
        assert!(same, "{of}: {ours:?} and {theirs:?}");
        held += usize::from(ours.is_some());
    };
    near(figures.of(Item::CompleteWeight), number("weight_pct"), count("visits") >= 50);
    for spread in &figures.spread {
        let index = spread.indicator.code();
        let n = count(&format!("{index}_n"));
        assert_eq!(spread.n, n, "{of}");
        let mean = number(&format!("{index}_mean"));
        near(spread.mean, mean, n >= 50);
        let squares = number(&format!("{index}_squares"));
        let n = f64::from(u32::try_from(n).expect("small"));
        near(spread.sd, squares.zip(mean).map(|(squares, mean)| ((squares - n * mean * mean) / (n - 1.0)).sqrt()), n >= 50.0);
        // So few lie outside that fifty within are fifty in all.
        near(spread.outside_pct.filter(|_| n >= 50.0), number(&format!("{index}_outside")), n >= 50.0);
    }
    held
}

#[tokio::test]
async fn what_is_said_of_measuring_recounts_to_the_same_numbers() {
    let today: NaiveDate = "2026-11-25".parse().expect("a date");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, protocols, cast) = demo(&folder.path().join("demo.db"), CHILDREN, today).await;
    let supervisor = &cast.supervisors[0];
    let person = people::by_sign_in_name(db.direct(), &supervisor.sign_in_name).await.expect("readable").expect("of the demo");
    let actor = Actor { person: person.id, name: person.full_name, role: Role::Supervisor };
    let ctx = Context { db: db.clone(), protocols: protocols.into(), actor, today, now: noon(today) };
    let month = Month::parse("2026-10").expect("a month");
    let found = quality::open(&ctx, &programme::demo_settings(), Some(month)).await.expect("read");
    // The villages of this supervisor, now as then: nobody of the demo moved between supervisors in October.
    let mut held = agree(&db, "a.code IN ('ulopi', 'sanga-point')", &found.all).await;
    for (area, figures) in &found.areas {
        held += agree(&db, &format!("a.code = '{area}'"), figures).await;
    }
    for of in &found.workers {
        held += agree(&db, &format!("w.sign_in_name = '{}'", of.sign_in_name), &of.figures).await;
    }
    assert!(held > 90, "{held} figures held");
}

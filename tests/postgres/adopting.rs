//! Adopting, rehearsing and rechecking on a server: the same answers as on a file.

use domain::calendar::add_days;
use domain::rule::RuleId;
use domain::units::Weight;
use spoonround::files::protocol_toml::DEFAULT_TEXT;
use spoonround::files::protocol_toml::parse_protocol;
use spoonround::service::adopt_protocol;
use spoonround::service::adopt_protocol::AdoptTrouble;
use spoonround::service::adopt_protocol::Adoption;
use spoonround::service::protocols;
use spoonround::service::reassess::Moment;
use spoonround::service::reassess::reassess;
use spoonround::service::recheck;
use spoonround::service::rehearse;
use spoonround::service::tick;
use spoonround::store::Db;
use spoonround::store::Scope;
use spoonround::store::StoreError;
use spoonround::store::summaries;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::day;
use spoonround::store::testing::noon;
use spoonround::store::testing::two_families;
use spoonround::store::visits;

use crate::cluster::Cluster;

#[tokio::test]
async fn a_protocol_is_adopted_and_every_row_is_as_it_is_worked_out() {
    let cluster = Cluster::start();
    let db = Db::open(&cluster.address()).await.expect("open");
    db.migrate().await.expect("migrated");
    let today = day("2026-09-10");
    let built_in = protocols::adopt(&db, None, noon("2026-09-10")).await.expect("adopted");
    let families = two_families(&db).await.expect("two children");
    for (n, child) in (1_u128..).zip(&families) {
        // A girl of 6 months with 4.8 kg: far below -3 (WHO Child Growth Standards 2006).
        let mut told = a_visit(n, child, today);
        told.visit.weight = Weight::from_grams(4_800).ok();
        let moment = Moment { today, now: noon("2026-09-10"), by: Some(child.worker) };
        db.write::<_, StoreError, _>(async |tx| {
            visits::insert(tx, &told).await?;
            reassess(tx, &built_in, child.id, moment).await.map(drop)
        })
        .await
        .expect("recorded");
    }
    let found = recheck::recheck(&db, &built_in, today, None, &mut |_, _| {}).await.expect("worked out");
    assert_eq!((found.children, found.visits, found.differences.len()), (2, 2, 0), "{found:?}");
    assert!(found.follow_ups >= 2);
    let text = DEFAULT_TEXT.replacen("version = \"1", "version = \"7.0.0\"\n# was 1", 1).replacen(
        "urgent_below_z = -6.00",
        "urgent_below_z = -3.50",
        1,
    );
    let new = parse_protocol(&text, "new.toml").expect("a protocol");
    let rehearsed = rehearse::rehearse(&db, &built_in, &new, Scope::Everything, today, &mut |_, _| {}).await.expect("judged");
    assert_eq!((rehearsed.children, rehearsed.by_rule.get(&RuleId::WeightVeryLow).map(|t| t.now)), (2, Some(2)), "{rehearsed:?}");
    let from = add_days(today, 2);
    let adoption = Adoption { file: "new.toml", text: &text, approved_by: "Dr Oru", from, backdated: false, reason: "as agreed", by: None };
    adopt_protocol::adopt(&db, &adoption, today, noon("2026-09-10")).await.expect("adopted");
    let again = adopt_protocol::adopt(&db, &adoption, today, noon("2026-09-10")).await;
    assert!(matches!(again, Err(AdoptTrouble::Taken { .. })), "{again:?}");
    let both = protocols::load(&db).await.expect("readable");
    for child in &families {
        let line = summaries::of_child(db.direct(), child.id).await.expect("readable").expect("a line");
        assert!(line.next_change_on.is_some_and(|day| day <= from), "{line:?}");
    }
    tick::tick(&db, &both, from, noon("2026-09-12")).await.expect("the day came");
    let found = recheck::recheck(&db, &both, from, None, &mut |_, _| {}).await.expect("worked out");
    assert_eq!((found.waiting, found.differences), (0, Vec::new()));
}

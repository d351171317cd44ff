//! Questions about recorded visits, on a real database file.

use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::food::Texture;
use domain::rule::RuleId;
use domain::units::HeadCircumference;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::DangerSign;
use domain::visit::FoodOffer;
use domain::visit::LowValue;
use domain::visit::Outcome;
use domain::visit::Position;
use domain::visit::ReadinessSign;
use domain::visit::SwallowTrouble;
use domain::visit::ToldOutcome;
use sea_orm::ConnectionTrait;

use super::*;
use crate::store::children::ChildRecord;
use crate::store::testing::TestDb;
use crate::store::testing::a_visit;
use crate::store::testing::day;
use crate::store::testing::noon;
use crate::store::testing::two_families;

/// A visit at which everything was answered, each answer different from its neighbours.
fn a_full_visit(n: u128, child: &ChildRecord) -> VisitRecord {
    let mut record = a_visit(n, child, day("2026-09-10"));
    record.visit = Visit {
        weight: Weight::from_grams(7350).ok(),
        length: Length::from_mm(655).ok(),
        position: Some(Position::Lying),
        muac: Muac::from_mm(134).ok(),
        head: HeadCircumference::from_mm(430).ok(),
        oedema: Some(false),
        confirmed: [Measurement::Weight, Measurement::Muac].into(),
        danger_signs: Some(DangerSign::ALL.iter().copied().collect()),
        readiness_signs: Some([ReadinessSign::HeadSteady, ReadinessSign::Swallows].into()),
        ill: Some(true),
        breastfed: Some(true),
        breast_only: Some(false),
        breastfeeding_trouble: Some(true),
        formula_times: Some(1),
        animal_milk_times: Some(2),
        drink_yogurt_times: Some(3),
        spoon_yogurt_times: Some(4),
        other_drink: Some(true),
        solids_started_on: Some(day("2026-08-30")),
        solids_yesterday: Some(true),
        meals: Some(5),
        texture_usual: Texture::new(1),
        texture_best: Texture::new(2),
        groups: Some([FoodGroup::GrainsRoots, FoodGroup::VitA].into()),
        iron_source: Some(false),
        sweet_drink: Some(true),
        unhealthy_food: Some(false),
        bottle: Some(true),
        low_value: Some([LowValue::Salt].into()),
        swallow_trouble: Some(SwallowTrouble::Repeated),
        appetite_poor_days: Some(6),
        plans: Some([RuleId::BirthLow].into()),
        referrals: [RuleId::WeightLow, RuleId::IronNone].into(),
        outcomes: vec![
            ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen },
            ToldOutcome { rule: RuleId::MealsFew, outcome: Outcome::NotReached },
        ],
        foods: vec![
            FoodOffer {
                code: FoodCode("groundnut_paste".to_owned()),
                offers: 3,
                response: Some(Response::Reaction),
                unsafe_form: Some(false),
                signs: Some([ReactionSign::RashLocal, ReactionSign::VomitingOnce].into()),
                minutes_after: Some(20),
                hold_lifted: false,
            },
            FoodOffer {
                code: FoodCode("mango".to_owned()),
                offers: 0,
                response: None,
                unsafe_form: None,
                signs: Some(BTreeSet::new()),
                minutes_after: None,
                hold_lifted: true,
            },
        ],
        ..record.visit
    };
    record.note = Some("line one\nline two".to_owned());
    record.outcome_notes = vec![Some("health post".to_owned()), None];
    record.indices = Indices { waz: Some(-101), laz: Some(-2), wlz: Some(33), bmiz: Some(4), mauz: Some(-55), hcz: Some(6) };
    record.suspect = [Measurement::Length].into();
    record
}

async fn story(test: &TestDb, child: &ChildRecord, as_of: &str) -> Vec<VisitRecord> {
    of_child_up_to(test.db.connection(), child.id, day(as_of)).await.expect("readable")
}

#[tokio::test]
async fn every_answer_comes_back_as_it_was_told() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    let mut told = a_full_visit(1, &child);
    told.entry_seq = insert(test.db.connection(), &told).await.expect("recorded");
    assert_eq!(story(&test, &child, "2026-09-10").await, [told]);
}

#[tokio::test]
async fn not_asked_and_asked_none_stay_apart() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    let mut none = a_visit(1, &child, day("2026-09-10"));
    none.visit.danger_signs = Some(BTreeSet::new());
    none.visit.low_value = None;
    insert(test.db.connection(), &none).await.expect("recorded");
    let found = story(&test, &child, "2026-09-10").await.pop().expect("a visit");
    assert_eq!((found.visit.danger_signs, found.visit.low_value), (Some(BTreeSet::new()), None));
}

#[tokio::test]
async fn visits_come_by_date_then_order_of_entry_and_never_after_the_day_asked_for() {
    let test = TestDb::new().await;
    let [child, other] = two_families(&test.db).await.expect("two children");
    for (n, on) in [(9, "2026-09-12"), (8, "2026-09-10"), (3, "2026-09-10"), (4, "2026-09-13")] {
        insert(test.db.connection(), &a_visit(n, &child, day(on))).await.expect("recorded");
    }
    insert(test.db.connection(), &a_visit(5, &other, day("2026-09-10"))).await.expect("recorded");
    let order: Vec<u128> = story(&test, &child, "2026-09-12").await.iter().map(|v| v.visit.id.0).collect();
    assert_eq!(order, [8, 3, 9]);
    let both = of_children_up_to(test.db.connection(), &[child.id, other.id], day("2026-09-12")).await.expect("readable");
    assert_eq!(both.values().map(Vec::len).collect::<Vec<_>>(), [3, 1]);
}

#[tokio::test]
async fn a_correction_keeps_the_old_version_and_the_order_of_entry() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    let mut told = a_full_visit(1, &child);
    told.entry_seq = insert(test.db.connection(), &told).await.expect("recorded");
    let mut mended = told.clone();
    mended.visit.weight = Weight::from_grams(7530).ok();
    mended.visit.foods.pop();
    mended.recorded_by = PersonId(2);
    let correction = Correction { by: PersonId(2), at: noon("2026-09-11"), reason: "digits swapped" };
    replace(test.db.connection(), &mended, correction).await.expect("corrected");

    let found = story(&test, &child, "2026-09-10").await.pop().expect("a visit");
    assert_eq!(found, VisitRecord { version: 2, recorded_by: PersonId(1), ..mended.clone() });
    let [kept] = versions_of(test.db.connection(), told.visit.id).await.expect("readable").try_into().expect("one version");
    assert_eq!((kept.version, kept.replaced_by, kept.reason.as_str()), (1, PersonId(2), "digits swapped"));
    for line in ["weight_g\t7350", "food.2\tmango; offers=0; signs=; hold_lifted=true", "note\tline one\\nline two"] {
        assert!(kept.content.lines().any(|found| found == line), "{line:?} in {}", kept.content);
    }
    let stale = replace(test.db.connection(), &mended, correction).await;
    assert!(matches!(stale, Err(StoreError::Conflict { .. })), "{stale:?}");
}

#[tokio::test]
async fn a_visit_taken_back_is_no_part_of_the_story() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    insert(test.db.connection(), &a_visit(1, &child, day("2026-09-10"))).await.expect("recorded");
    let correction = Correction { by: PersonId(1), at: noon("2026-09-11"), reason: "another child" };
    void(test.db.connection(), VisitId(1), 1, correction).await.expect("taken back");
    assert_eq!(story(&test, &child, "2026-09-30").await, []);
    let kept = by_id(test.db.connection(), child.id, VisitId(1)).await.expect("readable").expect("still there");
    assert_eq!((kept.version, kept.voided_at), (2, Some(noon("2026-09-11"))));
}

#[tokio::test]
async fn a_row_that_means_nothing_names_its_table_and_key() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    insert(test.db.connection(), &a_visit(7, &child, day("2026-09-10"))).await.expect("recorded");
    test.db.connection().execute_unprepared("UPDATE visits SET danger_signs = 'hiccups'").await.expect("a careless hand");
    let found = of_child_up_to(test.db.connection(), child.id, day("2026-09-10")).await;
    let Err(StoreError::Corrupt { table, id, what }) = found else { panic!("{found:?}") };
    assert_eq!((table, id.as_str()), ("visits", "00000000-0000-0000-0000-000000000007"));
    assert!(what.contains("hiccups"), "{what}");
}

#[tokio::test]
async fn kept_versions_cannot_be_changed() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    insert(test.db.connection(), &a_visit(1, &child, day("2026-09-10"))).await.expect("recorded");
    let correction = Correction { by: PersonId(1), at: noon("2026-09-11"), reason: "another child" };
    void(test.db.connection(), VisitId(1), 1, correction).await.expect("taken back");
    for sql in ["UPDATE visit_versions SET reason = ''", "DELETE FROM visit_versions"] {
        let refused = test.db.connection().execute_unprepared(sql).await.expect_err("append-only").to_string();
        assert!(refused.contains("append-only"), "{refused}");
    }
}

fn a_talk(of: VisitId) -> Talk {
    use domain::counsel::Place;
    use domain::counsel::Step;
    use domain::counsel::StepAnswer;
    use domain::counsel::StepId;
    use domain::counsel::Told;
    let place = |n| Place::of(n).expect("one of three");
    let told = Told::of(Some(StepAnswer::Not), Some("the hens \"rest\"".to_owned())).expect("something was told");
    Talk {
        lines: ["no_honey".to_owned(), "clean_hands".to_owned()].into(),
        agreed: [
            (place(1), Step::Line { key: "half_a_cup".to_owned(), words: None }),
            (place(2), Step::FollowUp { rule: RuleId::MealsFew, words: Some("at noon".to_owned()) }),
            (place(3), Step::Own { words: "egg; twice\na week".to_owned() }),
        ]
        .into(),
        told: [(StepId { visit: of, place: place(1) }, told)].into(),
    }
}

#[tokio::test]
async fn what_was_talked_about_comes_back_and_a_correction_keeps_what_it_replaced() {
    let test = TestDb::new().await;
    let [child, _] = two_families(&test.db).await.expect("two children");
    let c = test.db.direct();
    let first = a_visit(0x0192_0000_0000_7000_8000_0000_0000_0001, &child, day("2026-09-10"));
    insert(c, &first).await.expect("recorded");
    let mut second = a_visit(2, &child, day("2026-09-30"));
    second.talk = a_talk(first.visit.id);
    insert(c, &second).await.expect("recorded");
    let stored = of_child_up_to(c, child.id, day("2026-10-01")).await.expect("readable");
    assert_eq!((&stored[0].talk, &stored[1].talk), (&Talk::default(), &second.talk));
    let other = Talk { lines: ["no_honey".to_owned()].into(), ..Talk::default() };
    let corrected = VisitRecord { talk: other.clone(), ..stored[1].clone() };
    replace(c, &corrected, Correction { by: PersonId(1), at: noon("2026-10-01"), reason: "wrong family" }).await.expect("corrected");
    assert_eq!(of_child_up_to(c, child.id, day("2026-10-01")).await.expect("readable")[1].talk, other);
    let kept = versions_of(c, second.visit.id).await.expect("readable").remove(0).content;
    for line in ["told_line.clean_hands\ttrue", "step.2\trule=meals.few; words=at noon", "step.3\twords=egg; twice\\na week"] {
        assert!(kept.lines().any(|known| known == line), "{line:?} is not in {kept}");
    }
    assert!(kept.contains("step_told.") && kept.contains("\tnot; in_the_way=the hens \"rest\""), "{kept}");
    let fourth = "INSERT INTO visit_steps (visit_id, place, words) SELECT id, 4, 'x' FROM visits";
    assert!(c.execute_unprepared(fourth).await.is_err(), "the database has no fourth place either");
}

//! What becomes of the facts, places, decisions and history of two records that are merged.

use domain::child_code::ChildCode;

use super::*;
use crate::service::child_file;

#[tokio::test]
async fn a_merged_child_counts_once_was_where_it_was_and_keeps_what_a_supervisor_decided() {
    let [mut later, mut earlier] = some_children();
    (later.facts.registered_on, later.area) = (day("2026-06-01"), AreaId(1));
    (earlier.facts.registered_on, earlier.facts.severe_eczema) = (day("2026-04-01"), Some(true));
    let world = World::new(&[later.clone(), earlier.clone()]).await;
    let c = world.db().direct();
    let mut thin = Visit::empty(VisitId(0), day("2026-10-05"), Contact::Home);
    thin.muac = Muac::from_mm(120).ok();
    world.record(&earlier, &thin).await;
    world.record(&later, &Visit::empty(VisitId(0), day("2026-10-20"), Contact::Home)).await;
    let open = follow_ups::of_child(c, earlier.id).await.expect("readable");
    assert_eq!(open.iter().map(|f| f.rule).collect::<Vec<_>>(), [RuleId::WastingModerate]);
    let form = domain::draft::desk::CloseForm {
        category: domain::draft::desk::CloseCategory::CareElsewhere,
        note: "In the programme of the mission.".to_owned(),
    };
    let which = crate::service::why::Which::Open;
    let supervisor = world.as_role(Role::Supervisor);
    crate::service::close_follow_up::close(&supervisor, world.sent(), &earlier.code, RuleId::WastingModerate, which, &form)
        .await
        .expect("closed");
    world.merge(&later, &earlier, "first").await;
    let kept = follow_ups::of_child(c, later.id).await.expect("readable");
    let closing = kept.iter().find(|f| f.id == open[0].id).and_then(|f| f.closing.clone()).expect("came over, closed");
    assert_eq!((closing.reason, closing.by), (CloseReason::SupervisorDecision, Some(PersonId(2))));
    let history = follow_ups::history_of_child(c, later.id).await.expect("readable");
    assert!(history.iter().filter(|event| event.follow_up == open[0].id).count() >= 2, "with its history");
    world.is_sound("merged").await;

    let counted = crate::store::report_rows::children(c, crate::store::Scope::Everything, (day("2026-05-01"), day("2026-05-31")), None, 9)
        .await
        .expect("readable");
    assert_eq!(counted.iter().map(|child| (child.id, child.registered_on)).collect::<Vec<_>>(), [(later.id, day("2026-04-01"))]);
    assert!(counted[0].place_on(day("2026-05-01")).is_some());
    let record = children::by_ids(c, &[later.id]).await.expect("readable").remove(0);
    assert_eq!(record.facts.severe_eczema, Some(true));
    let places = crate::store::placements::of_child(c, later.id).await.expect("readable");
    let spans: Vec<_> = places.iter().map(|place| (place.from_on, place.to_on)).collect();
    assert_eq!(spans, [(day("2026-04-01"), Some(day("2026-05-31"))), (day("2026-06-01"), None)]);
    let lines = history_of(&world, &later).await;
    assert!(matches!(&lines[..], [Told::Merged(other)] if other.code == earlier.code), "{lines:?}");
}

async fn history_of(world: &World, child: &ChildRecord) -> Vec<Told> {
    let ctx = world.as_role(Role::Worker);
    let code = ChildCode::parse(&child.code).expect("a code");
    let file = child_file::open(&ctx, &code, ctx.today).await.expect("in scope");
    history(&ctx, &file).await.expect("readable").into_iter().map(|line| line.told).collect()
}

#[tokio::test]
async fn a_record_merged_twice_over_leads_to_the_last_and_tells_everything() {
    let [a, b, last] = some_children();
    let world = World::new(&[a.clone(), b.clone(), last.clone()]).await;
    let seq = world.record(&a, &Visit::empty(VisitId(0), day("2026-10-05"), Contact::Home)).await;
    world.void(&a, seq).await;
    world.merge(&b, &a, "first").await;
    world.merge(&last, &b, "first").await;
    let found = children::by_code_in_scope(world.db().direct(), crate::store::Scope::Everything, &a.code).await.expect("readable");
    assert_eq!(found.map(|record| record.id), Some(last.id));
    let told = history_of(&world, &last).await;
    let merged = told.iter().filter(|line| matches!(line, Told::Merged(_))).count();
    assert_eq!((told.len(), merged), (3, 2), "{told:?}");
    world.is_sound("merged twice").await;
}

//! The late follow-ups as they stood on a past day: every child in scope is judged anew. Slower than the lists, which know only
//! today.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::rule::Class;

use crate::service::Context;
use crate::service::past_day;
use crate::service::supervise::DeskChild;
use crate::service::supervise::Late;
use crate::service::supervise::LatePart;
use crate::service::supervise::Reason;
use crate::service::supervise::clock;
use crate::service::supervise::cut;
use crate::service::supervise::waiting::Lines;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::follow_ups::desk::LateKey;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::follow_ups::desk::Tally;

/// Everything found so far.
#[derive(Default)]
struct Found {
    late: Vec<(LateKey, Late)>,
    tallies: BTreeMap<(u128, u128, Option<Class>), Tally>,
}

/// A page of the late follow-ups of a past day, and the lines of all children as they stood.
pub(super) async fn late(
    c: &impl Connection,
    ctx: &Context,
    scope: Scope,
    narrowed: Narrowed,
    class: Option<Class>,
    (after, a_page): (Option<&LateKey>, usize),
    as_of: NaiveDate,
) -> Result<(LatePart, Lines), StoreError> {
    let clock = clock(&ctx.protocols, as_of);
    let mut found = Found::default();
    let mut rows = Vec::new();
    past_day::each(c, ctx, scope, None, as_of, |stood| {
        found.add(&clock, DeskChild::of(&stood.row), &stood.assessment);
        rows.push(stood.row);
    })
    .await?;
    let shown = |child: &DeskChild, reason: &Reason| {
        narrowed.worker.is_none_or(|w| w == child.worker)
            && narrowed.area.is_none_or(|a| a == child.area)
            && class.is_none_or(|c| c == reason.class)
            && narrowed.rule.is_none_or(|rule| rule == reason.rule)
            && narrowed.due_by.is_none_or(|day| reason.due_on <= day)
    };
    let order = |key: &LateKey| (key.late_from, key.class, std::cmp::Reverse(key.born), key.code.clone(), key.rule.code());
    let mut late = found.late;
    late.retain(|(key, l)| shown(&l.child, &l.reason) && after.is_none_or(|after| order(key) > order(after)));
    late.sort_by_cached_key(|(key, _)| order(key));
    let more = cut(&mut late, a_page);
    let next = late.last().filter(|_| more).map(|(key, _)| key.clone());
    let late = late.into_iter().map(|(_, late)| late).collect();
    Ok((LatePart { late, next, tallies: Some(found.tallies.into_values().collect()) }, Lines::Stood(rows)))
}

impl Found {
    fn tally(&mut self, child: &DeskChild, class: Option<Class>, late: bool) {
        let key = (child.worker.0, child.area.0, class);
        let tally = self.tallies.entry(key).or_insert(Tally { worker: child.worker, area: child.area, class, count: 0, late: 0 });
        tally.count += 1;
        tally.late += u64::from(late);
    }

    fn add(&mut self, clock: &[(Class, i32)], child: DeskChild, assessment: &Assessment) {
        let as_of = assessment.as_of;
        self.tally(&child, None, false);
        let days_of = |class: Class| clock.iter().find(|(c, _)| *c == class).map_or(0, |(_, days)| *days);
        for f in assessment.open() {
            let late_from = add_days(f.due_on, days_of(f.class));
            self.tally(&child, Some(f.class), late_from <= as_of);
            if late_from <= as_of {
                let key = LateKey { late_from, class: f.class, born: child.born, code: child.code.clone(), rule: f.rule };
                let reason = Reason { rule: f.rule, class: f.class, evidence: f.evidence.clone(), due_on: f.due_on };
                self.late.push((key, Late { child: child.clone(), reason, days: days_between(f.due_on, as_of) }));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use domain::ids::AreaId;
    use domain::ids::PersonId;
    use domain::ids::VisitId;
    use domain::role::Role;
    use domain::units::Muac;

    use super::*;
    use crate::service::Actor;
    use crate::service::protocols::for_tests;
    use crate::store::areas;
    use crate::store::children;
    use crate::store::counting::Counting;
    use crate::store::people;
    use crate::store::summaries;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_child;
    use crate::store::testing::a_person;
    use crate::store::testing::a_summary;
    use crate::store::testing::a_visit;
    use crate::store::testing::an_area;
    use crate::store::testing::day;
    use crate::store::testing::noon;
    use crate::store::visits;

    async fn thin_children(test: &TestDb, numbers: std::ops::Range<u128>) {
        for n in numbers {
            let child = a_child(n, AreaId(1), PersonId(1));
            children::insert(test.db.direct(), &child).await.expect("registered");
            summaries::upsert(test.db.direct(), &a_summary(&child, "2026-11-25")).await.expect("a line");
            // Arm 113 mm at eight months: refer today.
            let mut visit = a_visit(n, &child, day("2026-11-05"));
            visit.visit.id = VisitId(n);
            visit.visit.muac = Muac::from_mm(113).ok();
            visits::insert(test.db.direct(), &visit).await.expect("a visit");
        }
    }

    #[tokio::test]
    async fn a_past_day_takes_as_many_questions_for_many_children_as_for_few() {
        let test = TestDb::new().await;
        areas::insert(test.db.direct(), &an_area(1)).await.expect("an area");
        for (n, role) in [(1, Role::Worker), (3, Role::Supervisor)] {
            people::insert(test.db.direct(), &a_person(n, role)).await.expect("a person");
        }
        people::assign(test.db.direct(), PersonId(3), &[AreaId(1)], &[]).await.expect("assigned");
        let actor = Actor { person: PersonId(3), name: "Olani".to_owned(), role: Role::Supervisor };
        let ctx =
            Context { db: test.db.clone(), protocols: Arc::new(for_tests()), actor, today: day("2026-11-25"), now: noon("2026-11-25") };
        let questions = async || {
            let counting = Counting::new(test.db.direct());
            let scope = Scope::Supervisor { person: PersonId(3) };
            let (part, _) = late(&counting, &ctx, scope, Narrowed::default(), None, (None, 20), day("2026-11-20")).await.expect("readable");
            (part.late.len(), counting.sent())
        };
        thin_children(&test, 10..13).await;
        let (few, asked) = questions().await;
        assert_eq!(few, 3);
        thin_children(&test, 20..70).await;
        assert_eq!(questions().await, (20, asked), "one page of children, three or fifty-three");
    }
}

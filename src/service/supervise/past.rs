//! The desk as it stood on a past day: every child in scope is judged anew from the visits up to that day, with the
//! corrections known today. Slower than the lists, which know only today: a handful of statements for each two hundred children,
//! however many of them there are, so that no more than so many stories are held at a time.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::ids::ChildId;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::visit::Contact;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::reassess::hold_since;
use crate::service::reassess::judge;
use crate::service::supervise::Desk;
use crate::service::supervise::DeskChild;
use crate::service::supervise::Held;
use crate::service::supervise::Late;
use crate::service::supervise::Reason;
use crate::service::supervise::SHORT_LIST;
use crate::service::supervise::Unanswered;
use crate::service::supervise::Unseen;
use crate::service::supervise::child_of;
use crate::service::supervise::clock;
use crate::service::supervise::cut;
use crate::service::supervise::held_by;
use crate::service::supervise::not_seen_days;
use crate::service::team::Team;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::children;
use crate::store::follow_ups;
use crate::store::follow_ups::desk::LateKey;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::follow_ups::desk::Tally;
use crate::store::lists;
use crate::store::lists::Sought;
use crate::store::visits;

/// Children read at a time.
const AT_A_TIME: u64 = 200;

/// Everything found so far.
#[derive(Default)]
struct Found {
    urgent: Vec<(Class, NaiveDate, Unanswered)>,
    late: Vec<(LateKey, Late)>,
    unseen: Vec<Unseen>,
    held: Vec<Held>,
    tallies: BTreeMap<(u128, u128, Option<Class>), Tally>,
}

/// The desk on a past day.
pub(super) async fn desk(
    tx: &impl Connection,
    ctx: &Context,
    team: Team,
    narrowed: Narrowed,
    class: Option<Class>,
    after: (Option<&LateKey>, usize),
    as_of: NaiveDate,
) -> Result<Desk, Refusal> {
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let sought = Sought { also_left: true, ..Sought::default() };
    let mut found = Found::default();
    let mut from: Option<(String, String)> = None;
    loop {
        let key = from.as_ref().map(|(key, code)| (key.as_str(), code.as_str()));
        let page = lists::find(tx, scope, &sought, key, AT_A_TIME).await?;
        let Some(last) = page.last() else { break };
        from = Some((last.name_key.clone(), last.code.clone()));
        let ids: Vec<ChildId> = page.iter().map(|row| row.child).collect();
        let records: BTreeMap<ChildId, _> = children::by_ids(tx, &ids).await?.into_iter().map(|r| (r.id, r)).collect();
        let mut stories = visits::of_children_up_to(tx, &ids, as_of).await?;
        // Of what is stored the judgement needs only what supervisors closed.
        let closed = follow_ups::closed_by_supervisors(tx, &ids).await?;
        for row in &page {
            let Some(record) = records.get(&row.child).filter(|r| r.facts.registered_on <= as_of) else { continue };
            if record.left_on.is_some_and(|left| left <= as_of) {
                continue;
            }
            let story = stories.remove(&row.child).unwrap_or_default();
            let decided: Vec<_> = closed.iter().filter(|f| f.child == row.child).cloned().collect();
            let assessment = judge(&ctx.protocols, record, &story, &decided, as_of);
            let seen = story.iter().rfind(|v| v.visit.contact != Contact::Phone).map(|v| v.visit.on);
            found.add(ctx, child_of(row), &assessment, (seen, seen.unwrap_or(row.registered_on)));
        }
    }
    Ok(found.into_desk(ctx, team, narrowed, class, after, as_of))
}

impl Found {
    fn tally(&mut self, child: &DeskChild, class: Option<Class>, late: bool) {
        let key = (child.worker.0, child.area.0, class);
        let tally = self.tallies.entry(key).or_insert(Tally { worker: child.worker, area: child.area, class, count: 0, late: 0 });
        tally.count += 1;
        tally.late += u64::from(late);
    }

    /// `seen` is the last visit, and the day from which not being seen counts.
    fn add(&mut self, ctx: &Context, child: DeskChild, assessment: &Assessment, seen: (Option<NaiveDate>, NaiveDate)) {
        let as_of = assessment.as_of;
        self.tally(&child, None, false);
        let clock = clock(&ctx.protocols, as_of);
        let days_of = |class: Class| clock.iter().find(|(c, _)| *c == class).map_or(0, |(_, days)| *days);
        let mut unanswered: Option<(Class, NaiveDate, Unanswered)> = None;
        for f in assessment.open() {
            let reason = Reason { rule: f.rule, class: f.class, evidence: f.evidence.clone(), due_on: f.due_on };
            let late_from = add_days(f.due_on, days_of(f.class));
            self.tally(&child, Some(f.class), late_from <= as_of);
            if f.class.is_urgent() && !f.outcome_since_fired && unanswered.is_none() {
                let since = Some(f.last_fired_on);
                unanswered = Some((f.class, f.due_on, Unanswered { child: child.clone(), reason: Some(reason.clone()), since }));
            }
            if late_from <= as_of {
                let key = LateKey { late_from, class: f.class, born: child.born, code: child.code.clone(), rule: f.rule };
                self.late.push((key, Late { child: child.clone(), reason, days: days_between(f.due_on, as_of) }));
            }
        }
        self.urgent.extend(unanswered);
        if let Some(since) = hold_since(assessment).filter(|since| *since <= held_by(as_of)) {
            self.held.push(Held { child: child.clone(), since });
        }
        if assessment.lists.iter().any(|l| l.rule == RuleId::VisitLost) {
            self.unseen.push(Unseen { child, days: days_between(seen.1, as_of), ever: seen.0.is_some() });
        }
    }

    fn into_desk(
        mut self,
        ctx: &Context,
        mut team: Team,
        narrowed: Narrowed,
        class: Option<Class>,
        (after, a_page): (Option<&LateKey>, usize),
        as_of: NaiveDate,
    ) -> Desk {
        team.tallies = self.tallies.into_values().collect();
        let late_in_all = team.tallies.iter().map(|t| t.late).sum();
        let order = |key: &LateKey| (key.late_from, key.class, std::cmp::Reverse(key.born), key.code.clone(), key.rule.code());
        self.late.sort_by_key(|(key, _)| order(key));
        let mut late: Vec<(LateKey, Late)> = self
            .late
            .into_iter()
            .filter(|(_, l)| narrowed.worker.is_none_or(|w| w == l.child.worker) && narrowed.area.is_none_or(|a| a == l.child.area))
            .filter(|(_, l)| class.is_none_or(|c| c == l.reason.class))
            .filter(|(_, l)| {
                narrowed.rule.is_none_or(|rule| rule == l.reason.rule) && narrowed.due_by.is_none_or(|day| l.reason.due_on <= day)
            })
            .filter(|(key, _)| after.is_none_or(|after| order(key) > order(after)))
            .collect();
        let more_late = cut(&mut late, a_page);
        self.urgent.sort_by(|(a, b, x), (c, d, y)| (a, b, &x.child.code).cmp(&(c, d, &y.child.code)));
        let mut urgent: Vec<Unanswered> = self.urgent.into_iter().map(|(.., u)| u).collect();
        self.unseen.sort_by(|a, b| (b.days, &a.child.code).cmp(&(a.days, &b.child.code)));
        self.held.sort_by(|a, b| (a.since, &a.child.code).cmp(&(b.since, &b.child.code)));
        Desk {
            more_held: cut(&mut self.held, SHORT_LIST),
            held: self.held,
            more_urgent: cut(&mut urgent, SHORT_LIST),
            urgent,
            next: late.last().filter(|_| more_late).map(|(key, _)| key.clone()),
            late: late.into_iter().map(|(_, late)| late).collect(),
            late_in_all,
            more_unseen: cut(&mut self.unseen, SHORT_LIST),
            unseen: self.unseen,
            not_seen_days: not_seen_days(ctx.protocols.on(as_of)),
            team,
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
            let desk =
                desk(&counting, &ctx, Team::default(), Narrowed::default(), None, (None, 20), day("2026-11-20")).await.expect("readable");
            (desk.urgent.len(), counting.sent())
        };
        thin_children(&test, 10..13).await;
        let (few, asked) = questions().await;
        assert_eq!(few, 3);
        thin_children(&test, 20..70).await;
        assert_eq!(questions().await, (SHORT_LIST, asked), "one page of children, three or fifty-three");
    }
}

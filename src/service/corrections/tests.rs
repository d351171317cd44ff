//! Corrections on a real database: whatever is entered, corrected, taken back, moved and merged in whatever order, what is stored
//! is what the visits as they stand give. A story is made from a seed, so that a failure names a number.

mod merged;

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::Days;
use chrono::NaiveDate;
use domain::child_code::ChildCode;
use domain::counsel::Talk;
use domain::food::FoodCode;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::ids::SubmissionKey;
use domain::ids::VisitId;
use domain::role::Role;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::DangerSign;
use domain::visit::FoodOffer;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use domain::visit::Visit;

use super::merge_children::Merging;
use super::merge_children::merge;
use super::move_visit::move_visit;
use super::void_visit::void;
use super::*;
use crate::service::Actor;
use crate::service::once::Sent;
use crate::service::protocols;
use crate::service::recheck::recheck;
use crate::service::record_visit;
use crate::service::record_visit::Written;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::follow_ups;
use crate::store::summaries;
use crate::store::testing::TestDb;
use crate::store::testing::a_child;
use crate::store::testing::a_person;
use crate::store::testing::an_area;
use crate::store::testing::day;
use crate::store::testing::noon;

const TODAY: &str = "2026-11-25";
const WHY: (&str, &str) = ("note", "A reason long enough to read.");

/// Numbers that look random and are the same every time.
struct Dice(u64);

impl Dice {
    fn up_to(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    fn once_in(&mut self, times: u64) -> bool {
        self.up_to(times) == 0
    }

    fn shuffle<T>(&mut self, list: &mut [T]) {
        for at in (1..list.len()).rev() {
            list.swap(at, usize::try_from(self.up_to(at as u64 + 1)).expect("small"));
        }
    }
}

/// A visit on this day that gives the rules something to say.
fn told(dice: &mut Dice, on: NaiveDate) -> Visit {
    let contact = if dice.once_in(6) { Contact::Phone } else { Contact::Home };
    let mut visit = Visit::empty(VisitId(0), on, contact);
    visit.weight = Weight::from_grams(5_200 + u32::try_from(dice.up_to(3_500)).expect("small")).ok().filter(|_| !dice.once_in(4));
    visit.muac = Muac::from_mm(108 + u16::try_from(dice.up_to(30)).expect("small")).ok().filter(|_| !dice.once_in(3));
    visit.meals = (!dice.once_in(3)).then(|| u8::try_from(dice.up_to(4)).expect("small"));
    visit.breastfed = (!dice.once_in(3)).then(|| !dice.once_in(3));
    visit.bottle = (!dice.once_in(2)).then(|| dice.once_in(2));
    visit.danger_signs =
        (!dice.once_in(3)).then(|| if dice.once_in(6) { BTreeSet::from([DangerSign::VomitsEverything]) } else { BTreeSet::new() });
    for code in ["egg", "beans"] {
        if dice.once_in(3) {
            let response = [Response::Accepted, Response::Refused, Response::Reaction][usize::try_from(dice.up_to(3)).expect("small")];
            let signs = (response == Response::Reaction).then(|| BTreeSet::from([ReactionSign::HivesWidespread]));
            visit.foods.push(FoodOffer {
                code: FoodCode(code.to_owned()),
                offers: 1,
                response: Some(response),
                unsafe_form: None,
                signs,
                minutes_after: None,
                hold_lifted: dice.once_in(5),
            });
        }
    }
    if dice.once_in(3) {
        let rule = [RuleId::WastingSevere, RuleId::WeightLoss, RuleId::DangerGeneral][usize::try_from(dice.up_to(3)).expect("small")];
        visit.outcomes.push(ToldOutcome { rule, outcome: Outcome::Seen });
    }
    visit
}

/// A programme with a worker, a supervisor, and children of the worker.
struct World {
    test: TestDb,
    protocols: std::sync::Arc<domain::protocol::Protocols>,
    key: std::cell::Cell<u128>,
}

impl World {
    async fn new(children: &[ChildRecord]) -> Self {
        let test = TestDb::new().await;
        test.db
            .write::<_, StoreError, _>(async |tx| {
                areas::insert(tx, &an_area(1)).await?;
                for (n, role) in [(1, Role::Worker), (2, Role::Supervisor)] {
                    people::insert(tx, &a_person(n, role)).await?;
                }
                people::assign(tx, PersonId(2), &[AreaId(1)], &[]).await?;
                for child in children {
                    children::insert(tx, child).await?;
                }
                Ok(())
            })
            .await
            .expect("a programme");
        Self { test, protocols: protocols::for_tests().into(), key: std::cell::Cell::new(1_000) }
    }

    fn db(&self) -> &Db {
        &self.test.db
    }

    fn as_role(&self, role: Role) -> Context {
        let person = PersonId(if role == Role::Supervisor { 2 } else { 1 });
        Context {
            db: self.test.db.clone(),
            protocols: std::sync::Arc::clone(&self.protocols),
            actor: Actor { person, name: "Mireni".to_owned(), role },
            today: day(TODAY),
            now: noon(TODAY),
        }
    }

    fn sent(&self) -> Sent {
        self.key.set(self.key.get() + 1);
        Sent { key: SubmissionKey(self.key.get()), hash: [0; 32] }
    }

    async fn record(&self, child: &ChildRecord, visit: &Visit) -> i64 {
        record_visit::record(&self.as_role(Role::Worker), self.sent(), &code(child), written(visit, &Talk::default()))
            .await
            .expect("recorded")
            .seq
    }

    async fn correct(&self, child: &ChildRecord, seq: i64, visit: &Visit) {
        let (code, version) = (code(child), self.version(seq).await);
        let (about, told) = (About { code: &code, seq, version }, Talk::default());
        let done = record_visit::correct(&self.as_role(Role::Worker), self.sent(), about, written(visit, &told), WHY.1).await;
        assert!(matches!(done, Ok(Done::At(_))), "{done:?}");
    }

    async fn version(&self, seq: i64) -> u32 {
        visits::by_entry(self.db().direct(), seq).await.expect("readable").expect("a visit").version
    }

    async fn void(&self, child: &ChildRecord, seq: i64) {
        let pairs = pairs(&[("reason", "never_happened"), WHY]);
        let done =
            void(&self.as_role(Role::Worker), self.sent(), About { code: &code(child), seq, version: self.version(seq).await }, &pairs)
                .await;
        assert!(matches!(done, Ok(Done::At(_))), "{done:?}");
    }

    async fn move_to(&self, from: &ChildRecord, seq: i64, to: &ChildRecord) {
        let pairs = pairs(&[("sure", "yes"), WHY]);
        let version = self.version(seq).await;
        let done = move_visit(&self.as_role(Role::Worker), self.sent(), About { code: &code(from), seq, version }, &code(to), &pairs).await;
        assert!(matches!(done, Ok(Done::At(_))), "{done:?}");
    }

    /// Merges the second into the first, or the first into the second.
    async fn merge(&self, first: &ChildRecord, second: &ChildRecord, survivor: &str) {
        let c = self.db().direct();
        let versions = children::by_ids(c, &[first.id, second.id]).await.expect("readable");
        let version = |id: ChildId| versions.iter().find(|r| r.id == id).map_or(0, |r| r.version);
        let pairs = pairs(&[("survivor", survivor), ("sure", "yes"), WHY]);
        let versions = (version(first.id), version(second.id));
        let done = merge(&self.as_role(Role::Supervisor), self.sent(), (&first.code, &second.code), versions, &pairs).await;
        assert!(matches!(done, Ok(Merging::Done(_))), "{done:?}");
    }

    /// Nothing is stored otherwise than the visits give it.
    async fn is_sound(&self, what: &str) {
        let found = recheck(self.db(), &self.protocols, day(TODAY), None, &mut |_, _| ()).await.expect("readable");
        assert!(found.differences.is_empty(), "{what}: {:#?}", found.differences);
    }

    /// What the lists and the child's page rest on, with visits named by their day and place within it.
    async fn stands(&self, child: &ChildRecord) -> Stands {
        let c = self.db().direct();
        let records = visits::of_child_up_to(c, child.id, day(TODAY)).await.expect("readable");
        let mut names: BTreeMap<VisitId, (NaiveDate, usize)> = BTreeMap::new();
        for record in &records {
            let place = names.values().filter(|(on, _)| *on == record.visit.on).count();
            names.insert(record.visit.id, (record.visit.on, place));
        }
        let all = follow_ups::of_child(c, child.id).await.expect("readable");
        let mut follow_ups: Vec<_> = all
            .iter()
            .filter(|f| f.closing.as_ref().is_none_or(|closing| closing.reason != CloseReason::RecordCorrected))
            .map(|f| (f.rule, names.get(&f.opened_by_visit).copied(), f.class, f.due_on, f.closing.as_ref().map(|c| (c.reason, c.on))))
            .collect();
        follow_ups.sort();
        let mut line = summaries::of_child(c, child.id).await.expect("readable").expect("a line");
        (line.child, line.code, line.name_key) = (ChildId(0), String::new(), String::new());
        let scores = records.iter().map(|r| (r.visit.on, r.indices.waz, r.suspect.len(), r.age_days)).collect();
        Stands { follow_ups, line, scores }
    }
}

type FollowUpStands = (RuleId, Option<(NaiveDate, usize)>, Class, NaiveDate, Option<(CloseReason, NaiveDate)>);

#[derive(Debug, PartialEq)]
struct Stands {
    follow_ups: Vec<FollowUpStands>,
    line: summaries::SummaryRecord,
    scores: Vec<(NaiveDate, Option<i32>, usize, u16)>,
}

fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
    list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect()
}

const fn written<'a>(visit: &'a Visit, talk: &'a Talk) -> Written<'a> {
    Written { visit, talk, note: None }
}

fn code(child: &ChildRecord) -> ChildCode {
    ChildCode::parse(&child.code).expect("a code")
}

/// Children with codes that are codes.
fn some_children<const N: usize>() -> [ChildRecord; N] {
    std::array::from_fn(|n| {
        let n = n as u64 + 1;
        let mut child = a_child(u128::from(n), AreaId(1), PersonId(1));
        child.code = ChildCode::from_random(900 + n).as_str().to_owned();
        child
    })
}

/// Visits on different days of 2026 unless `same_days`.
fn story(dice: &mut Dice, count: u64, same_days: bool) -> Vec<Visit> {
    let mut days: Vec<NaiveDate> = Vec::new();
    while days.len() < usize::try_from(count).expect("small") {
        let on = day("2026-03-01") + Days::new(dice.up_to(265));
        if !days.contains(&on) {
            days.push(on);
            if same_days && dice.once_in(4) {
                days.push(on);
            }
        }
    }
    days.into_iter().map(|on| told(dice, on)).collect()
}

/// Something entered of a visit, in its order.
#[derive(Debug, Clone)]
enum Entry {
    Told(Visit),
    Corrected(Visit),
    Void,
}

#[tokio::test]
async fn the_order_of_arrival_never_changes_the_outcome_corrections_and_voids_included() {
    for seed in 0..12 {
        let mut dice = Dice(seed);
        let [a, b] = some_children();
        let world = World::new(&[a.clone(), b.clone()]).await;
        // Each visit with what was entered of it: some first entered wrongly, some taken back in the end.
        let entries: Vec<Vec<Entry>> = story(&mut dice, 6, false)
            .into_iter()
            .map(|visit| match dice.up_to(4) {
                0 => vec![Entry::Told(told(&mut dice, visit.on + Days::new(1))), Entry::Corrected(visit)],
                1 => vec![Entry::Told(visit), Entry::Void],
                _ => vec![Entry::Told(visit)],
            })
            .collect();
        for child in [&a, &b] {
            let mut order: Vec<usize> = entries.iter().enumerate().flat_map(|(at, list)| list.iter().map(move |_| at)).collect();
            dice.shuffle(&mut order);
            let mut entered: BTreeMap<usize, (usize, i64)> = BTreeMap::new();
            for at in order {
                let (next, seq) = entered.get(&at).copied().unwrap_or((0, 0));
                let seq = match &entries[at][next] {
                    Entry::Told(visit) => world.record(child, visit).await,
                    Entry::Corrected(visit) => {
                        world.correct(child, seq, visit).await;
                        seq
                    }
                    Entry::Void => {
                        world.void(child, seq).await;
                        seq
                    }
                };
                entered.insert(at, (next + 1, seq));
            }
        }
        assert_eq!(world.stands(&a).await, world.stands(&b).await, "seed {seed}: {entries:#?}");
        world.is_sound(&format!("seed {seed}")).await;
    }
}

#[tokio::test]
async fn two_halves_of_a_story_merged_are_the_story_as_one_record() {
    for seed in 0..12 {
        let mut dice = Dice(100 + seed);
        let [a, b, whole] = some_children();
        let world = World::new(&[a.clone(), b.clone(), whole.clone()]).await;
        for visit in story(&mut dice, 6, true) {
            world.record(if dice.once_in(2) { &a } else { &b }, &visit).await;
            world.record(&whole, &visit).await;
        }
        let stays = if dice.once_in(2) { "first" } else { "second" };
        world.merge(&a, &b, stays).await;
        let merged = if stays == "first" { &a } else { &b };
        assert_eq!(world.stands(merged).await, world.stands(&whole).await, "seed {seed}");
        world.is_sound(&format!("seed {seed}")).await;
    }
}

#[tokio::test]
async fn visits_moved_one_by_one_leave_both_children_as_if_entered_right() {
    for seed in 0..12 {
        let mut dice = Dice(200 + seed);
        let [a, b, right_a, right_b] = some_children();
        let world = World::new(&[a.clone(), b.clone(), right_a.clone(), right_b.clone()]).await;
        let mut wrong = Vec::new();
        for visit in story(&mut dice, 7, true) {
            let (is_b, slip) = (dice.once_in(2), dice.once_in(3));
            let seq = world.record(if is_b != slip { &b } else { &a }, &visit).await;
            wrong.extend(slip.then_some((seq, is_b)));
            world.record(if is_b { &right_b } else { &right_a }, &visit).await;
        }
        dice.shuffle(&mut wrong);
        for (seq, is_b) in wrong {
            let (from, to) = if is_b { (&a, &b) } else { (&b, &a) };
            world.move_to(from, seq, to).await;
        }
        assert_eq!(world.stands(&a).await, world.stands(&right_a).await, "seed {seed}");
        assert_eq!(world.stands(&b).await, world.stands(&right_b).await, "seed {seed}");
        world.is_sound(&format!("seed {seed}")).await;
    }
}

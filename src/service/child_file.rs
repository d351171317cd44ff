//! Everything a page of one child needs, as it stands or stood on a day.

use chrono::NaiveDate;
use domain::assess::Assessment;
use domain::child_code::ChildCode;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::protocol::Protocols;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::reassess::judge;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::child_files;
use crate::store::child_files::Opened;
use crate::store::children;
use crate::store::children::ChildRecord;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::visits;
use crate::store::visits::VisitRecord;

/// One child's file.
#[derive(Debug, Clone)]
pub struct ChildFile {
    /// Registration.
    pub record: ChildRecord,
    /// The village's name.
    pub area_name: String,
    /// The worker's name.
    pub worker_name: String,
    /// Visits up to the day, by date, then in order of entry.
    pub visits: Vec<VisitRecord>,
    /// Follow-ups as stored today, with who closed them.
    pub follow_ups: Vec<FollowUpRecord>,
    /// The judgement as of the day.
    pub assessment: Assessment,
    /// The day.
    pub as_of: NaiveDate,
    /// The home, if another child is known to live there.
    pub home: Option<HouseholdId>,
    /// A supervisor wrote to the worker, and it waits.
    pub noted: bool,
    /// A correction took something from the record or brought something to it.
    pub corrected: bool,
}

impl ChildFile {
    /// What the child is called.
    #[must_use]
    pub fn called(&self) -> &str {
        self.record.known_as.as_deref().unwrap_or(&self.record.name)
    }

    /// The visit with this number in the order of entry.
    #[must_use]
    pub fn visit(&self, seq: i64) -> Option<&VisitRecord> {
        self.visits.iter().find(|v| v.entry_seq == seq)
    }
}

/// Which children the actor may reach today.
#[must_use]
pub const fn scope(ctx: &Context) -> Scope {
    match ctx.actor.role {
        Role::Supervisor => Scope::Supervisor { person: ctx.actor.person },
        // Managers and administrators reach no child: their own key is in no child's row.
        Role::Worker | Role::Manager | Role::Administrator => Scope::Worker { person: ctx.actor.person, today: ctx.today },
    }
}

/// Opens a child's file as of a day.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`]; [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &ChildCode, as_of: NaiveDate) -> Result<ChildFile, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    ctx.db.read(async |tx| read(tx, &ctx.protocols, scope(ctx), code.as_str(), as_of).await).await
}

/// Two questions: the child with names and follow-ups, and its visits.
pub(super) async fn read(
    c: &impl Connection,
    protocols: &Protocols,
    scope: Scope,
    code: &str,
    as_of: NaiveDate,
) -> Result<ChildFile, Refusal> {
    let opened = child_files::open(c, scope, code).await?.ok_or(Refusal::NotFound)?;
    let Opened { record, area_name, worker_name, follow_ups, home, corrected, noted } = opened;
    let visits = visits::of_child_up_to(c, record.id, as_of).await?;
    let assessment = judge(protocols, &record, &visits, &follow_ups, as_of);
    Ok(ChildFile { record, area_name, worker_name, visits, follow_ups, assessment, as_of, home, corrected, noted })
}

/// The key of a child in scope.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Store`].
pub async fn find(tx: &crate::store::Tx, ctx: &Context, code: &ChildCode) -> Result<ChildRecord, Refusal> {
    children::by_code_in_scope(tx, scope(ctx), code.as_str()).await?.ok_or(Refusal::NotFound)
}

/// Children by key in scope, for those who follow links between records.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn by_id(ctx: &Context, id: ChildId) -> Result<Option<ChildRecord>, Refusal> {
    Ok(children::by_id_in_scope(ctx.db.direct(), scope(ctx), id).await?)
}

#[cfg(test)]
mod tests {
    use domain::food::FoodCode;
    use domain::ids::PersonId;
    use domain::rule::RuleId;
    use domain::visit::FoodOffer;
    use domain::visit::Outcome;
    use domain::visit::ToldOutcome;

    use super::*;
    use crate::service::protocols;
    use crate::store::counting::Counting;
    use crate::store::follow_ups;
    use crate::store::follow_ups::Recorded;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_follow_up;
    use crate::store::testing::a_visit;
    use crate::store::testing::day;
    use crate::store::testing::noon;
    use crate::store::testing::two_families;

    fn offer(code: &str) -> FoodOffer {
        FoodOffer {
            code: FoodCode(code.to_owned()),
            offers: 1,
            response: None,
            unsafe_form: Some(false),
            signs: None,
            minutes_after: None,
            hold_lifted: false,
        }
    }

    #[tokio::test]
    async fn a_childs_file_takes_two_questions_however_long_its_story() {
        let test = TestDb::new().await;
        let [child, other] = two_families(&test.db).await.expect("two children");
        let c = test.db.direct();
        for n in 1..=12 {
            let mut visit = a_visit(n, &child, day("2026-09-01") + chrono::Days::new(u64::try_from(n).expect("small")));
            visit.visit.foods = vec![offer("millet_porridge"), offer("beans"), offer("mango")];
            visit.visit.outcomes = vec![ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen }];
            visits::insert(c, &visit).await.expect("recorded");
        }
        let kept = [a_follow_up(1, &child, RuleId::WeightLow, 1, "2026-09-02"), a_follow_up(2, &child, RuleId::MealsFew, 1, "2026-09-02")];
        let recorded = Recorded { at: noon("2026-09-02"), today: day("2026-09-02"), by: None };
        follow_ups::replace_all_of_child(c, child.id, &kept, recorded).await.expect("kept");

        let counting = Counting::new(c);
        let protocols = protocols::for_tests();
        let scope = Scope::Worker { person: PersonId(1), today: day("2026-11-25") };
        let file = read(&counting, &protocols, scope, &child.code, day("2026-11-25")).await.expect("in scope");
        assert_eq!((file.visits.len(), file.follow_ups.len(), counting.sent()), (12, 2, 2));
        assert!(file.visits.iter().all(|v| v.visit.foods.len() == 3 && v.visit.outcomes.len() == 1));
        assert_eq!(file.visits[0].visit.foods[2].code.0, "mango");
        assert_eq!((file.area_name.as_str(), file.record.id), ("Ulopi 1", child.id));

        let others = read(&counting, &protocols, scope, &other.code, day("2026-11-25")).await;
        assert!(matches!(others, Err(Refusal::NotFound)));
    }
}

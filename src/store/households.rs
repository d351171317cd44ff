//! Which children live in one home. A child with no other child in its home has no row. Who is shown is part of each question.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::ChildStatus;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::ids::PersonId;
use domain::visit::Contact;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::IntoActiveModel;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Func;
use sea_orm::sea_query::LikeExpr;
use sea_orm::sea_query::OnConflict;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::child;
use crate::store::entity::household_member;
use crate::store::entity::visit;
use crate::store::error::StoreError;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::scope::Scope;

/// More children than any home has; the bound only keeps a mistake from growing.
const MOST_IN_A_HOME: u64 = 40;

/// The home of a child, if another child is known to live there.
///
/// # Errors
/// [`StoreError`].
pub async fn of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Option<HouseholdId>, StoreError> {
    let row = household_member::Entity::find_by_id(uuid(child.0)).one(c).await?;
    Ok(row.map(|row| HouseholdId(row.household_id.as_u128())))
}

/// The child lives in this home from now on, wherever it lived before.
///
/// # Errors
/// [`StoreError`].
pub async fn join(c: &impl ConnectionTrait, child: ChildId, home: HouseholdId, by: PersonId, at: DateTime<Utc>) -> Result<(), StoreError> {
    leave(c, child).await?;
    let row = household_member::Model { child_id: uuid(child.0), household_id: uuid(home.0), by_person: uuid(by.0), at: whole_second(at) };
    household_member::Entity::insert(row.into_active_model().reset_all())
        .on_conflict(OnConflict::column(household_member::Column::ChildId).update_column(household_member::Column::HouseholdId).to_owned())
        .exec_without_returning(c)
        .await?;
    Ok(())
}

/// The child lives in no shared home any more. A home with one child left is none.
///
/// # Errors
/// [`StoreError`].
pub async fn leave(c: &impl ConnectionTrait, child: ChildId) -> Result<(), StoreError> {
    use household_member::Column as H;
    let Some(home) = of_child(c, child).await? else { return Ok(()) };
    household_member::Entity::delete_by_id(uuid(child.0)).exec(c).await?;
    let left = household_member::Entity::find().filter(H::HouseholdId.eq(uuid(home.0))).limit(2).all(c).await?;
    if left.len() == 1 {
        household_member::Entity::delete_many().filter(H::HouseholdId.eq(uuid(home.0))).exec(c).await?;
    }
    Ok(())
}

/// The children of a home that the scope reaches, by code; whose family took back its consent is not among them.
///
/// # Errors
/// [`StoreError`].
pub async fn members_in_scope(c: &impl ConnectionTrait, scope: Scope, home: HouseholdId) -> Result<Vec<RoundRow>, StoreError> {
    let query = lists::lines(scope)
        .filter(household_member::Column::HouseholdId.eq(uuid(home.0)))
        .filter(child::Column::Status.ne(ChildStatus::ConsentWithdrawn.code()))
        .order_by_asc(child::Column::Code);
    lists::rows(c, query, MOST_IN_A_HOME).await
}

/// One child as the lists know it, in scope.
///
/// # Errors
/// [`StoreError`].
pub async fn line_of(c: &impl ConnectionTrait, scope: Scope, child: ChildId) -> Result<Option<RoundRow>, StoreError> {
    Ok(lists::rows(c, lists::lines(scope).filter(child::Column::Id.eq(uuid(child.0))), 1).await?.pop())
}

/// Another child of a home, as a line of a list names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Which.
    pub child: ChildId,
    /// In links.
    pub code: String,
    /// What it is called.
    pub called: String,
}

#[derive(FromQueryResult)]
struct NamedRow {
    household_id: uuid::Uuid,
    id: uuid::Uuid,
    code: String,
    name: String,
    known_as: Option<String>,
}

/// The active children of these homes that the scope reaches, youngest first; nothing is asked when there is no home.
///
/// # Errors
/// [`StoreError`].
pub async fn named_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    homes: &BTreeSet<HouseholdId>,
) -> Result<BTreeMap<HouseholdId, Vec<Named>>, StoreError> {
    let mut named: BTreeMap<HouseholdId, Vec<Named>> = BTreeMap::new();
    if homes.is_empty() {
        return Ok(named);
    }
    let member: RelationDef =
        child::Entity::belongs_to(household_member::Entity).from(child::Column::Id).to(household_member::Column::ChildId).into();
    let rows = child::Entity::find()
        .select_only()
        .columns([child::Column::Id, child::Column::Code, child::Column::Name, child::Column::KnownAs])
        .column(household_member::Column::HouseholdId)
        .join(JoinType::InnerJoin, member)
        .filter(household_member::Column::HouseholdId.is_in(homes.iter().map(|home| uuid(home.0))))
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(scope.on((child::Entity, child::Column::AreaId), (child::Entity, child::Column::WorkerId)))
        .order_by_desc(child::Column::Born)
        .order_by_asc(child::Column::Code)
        .into_model::<NamedRow>()
        .all(c)
        .await?;
    for row in rows {
        let called = row.known_as.unwrap_or(row.name);
        let child = Named { child: ChildId(row.id.as_u128()), code: row.code, called };
        named.entry(HouseholdId(row.household_id.as_u128())).or_default().push(child);
    }
    Ok(named)
}

/// Which of these children were met at home or at a clinic on a day.
///
/// # Errors
/// [`StoreError`].
pub async fn seen_on(c: &impl ConnectionTrait, children: &[ChildId], day: NaiveDate) -> Result<BTreeSet<ChildId>, StoreError> {
    use visit::Column as V;
    let rows: Vec<uuid::Uuid> = visit::Entity::find()
        .select_only()
        .column(V::ChildId)
        .filter(V::ChildId.is_in(children.iter().map(|id| uuid(id.0))))
        .filter(V::VisitedOn.eq(day))
        .filter(V::VoidedAt.is_null())
        .filter(V::Contact.ne(Contact::Phone.code()))
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().map(|id| ChildId(id.as_u128())).collect())
}

/// Active children of an area in scope whose caregiver's name begins so, or who can be called under this very number.
///
/// # Errors
/// [`StoreError`].
pub async fn likely_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    area: AreaId,
    caregiver_begins: &str,
    phone: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    let begins = format!("{}%", lists::literal(&caregiver_begins.to_lowercase()));
    let mut alike = Condition::any()
        .add(Expr::expr(Func::lower(Expr::col((child::Entity, child::Column::CaregiverName)))).like(LikeExpr::new(begins).escape('\\')));
    if let Some(phone) = phone {
        alike = alike.add(child::Column::Phone.eq(phone));
    }
    let query = lists::lines(scope)
        .filter(child::Column::AreaId.eq(uuid(area.0)))
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(alike)
        .order_by_asc(child::Column::Code);
    lists::rows(c, query, limit).await
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::children;
    use crate::store::summaries;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_child;
    use crate::store::testing::a_summary;
    use crate::store::testing::noon;
    use crate::store::testing::two_families;

    const HOME: HouseholdId = HouseholdId(0x0192_0000_0000_7000_8000_0000_0000_00aa);

    /// Children 1 and 3 of worker 1, child 2 of worker 2, all of one home.
    async fn a_home(test: &TestDb) -> [ChildId; 3] {
        let [first, second] = two_families(&test.db).await.expect("two children");
        let c = test.db.direct();
        let third = a_child(3, first.area, first.worker);
        children::insert(c, &third).await.expect("registered");
        for child in [&first, &second, &third] {
            summaries::upsert(c, &a_summary(child, "2026-11-25")).await.expect("a line");
            join(c, child.id, HOME, first.worker, noon("2026-11-25")).await.expect("joined");
        }
        [first.id, second.id, third.id]
    }

    fn worker() -> Scope {
        Scope::Worker { person: PersonId(1), today: crate::store::testing::day("2026-11-25") }
    }

    #[tokio::test]
    async fn a_child_outside_the_scope_is_in_no_home_that_is_shown() {
        let test = TestDb::new().await;
        let [first, second, third] = a_home(&test).await;
        let c = test.db.direct();
        let ids = |rows: Vec<RoundRow>| rows.into_iter().map(|row| row.child).collect::<Vec<_>>();
        assert_eq!(ids(members_in_scope(c, worker(), HOME).await.expect("readable")), [first, third]);
        assert_eq!(ids(members_in_scope(c, Scope::Everything, HOME).await.expect("readable")), [first, second, third]);
        let named = named_in_scope(c, worker(), &BTreeSet::from([HOME])).await.expect("readable");
        assert_eq!(named[&HOME].iter().map(|child| child.child).collect::<Vec<_>>(), [first, third]);
    }

    #[tokio::test]
    async fn the_last_child_of_a_home_is_in_none() {
        let test = TestDb::new().await;
        let [first, second, third] = a_home(&test).await;
        let c = test.db.direct();
        leave(c, second).await.expect("left");
        assert_eq!(of_child(c, first).await.expect("readable"), Some(HOME), "two are left");
        leave(c, third).await.expect("left");
        assert_eq!(of_child(c, first).await.expect("readable"), None);
        leave(c, first).await.expect("nothing to leave is no fault");
    }
}

//! What waits on a supervisor's lists: referrals without an answer, children not seen for long, foods on hold, visits missed.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::ids::ChildId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::Order;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Func;
use sea_orm::sea_query::SimpleExpr;

use crate::store::codes::uuid;
use crate::store::entity::child;
use crate::store::entity::child_summary;
use crate::store::error::StoreError;
use crate::store::lists::RoundRow;
use crate::store::lists::lines;
use crate::store::lists::rows;
use crate::store::scope::Scope;

/// Children with an urgent follow-up that has no outcome, or a referral that has waited too long on `today`; most urgent first.
///
/// # Errors
/// [`StoreError`].
pub async fn unanswered_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    today: NaiveDate,
    after: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(Condition::any().add(S::UrgentUnansweredSince.is_not_null()).add(S::ReferralDueOn.lt(today)))
        .filter(S::WorkKey.gt(after.unwrap_or_default()))
        .order_by_asc(S::WorkKey);
    rows(c, query, limit).await
}

/// Children sent to care of whom nobody has written what became of it, most urgent first, whether the answer is late or not.
///
/// # Errors
/// [`StoreError`].
pub async fn referred_in_scope(c: &impl ConnectionTrait, scope: Scope, limit: u64) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(Condition::any().add(S::UrgentUnansweredSince.is_not_null()).add(S::ReferralDueOn.is_not_null()))
        .order_by_asc(S::WorkKey);
    rows(c, query, limit).await
}

/// Days that say who counts as not seen: children born after `young_born_after` when last seen on or before `young_seen_by`,
/// the others when last seen on or before `older_seen_by`. A child never seen counts from its registration.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LostDays {
    /// Younger children were born after this day.
    pub young_born_after: NaiveDate,
    /// For them.
    pub young_seen_by: NaiveDate,
    /// For the others.
    pub older_seen_by: NaiveDate,
}

/// Active children not seen for too long, longest first. `after` is the day counted from and the key of the last line seen.
///
/// # Errors
/// [`StoreError`].
pub async fn lost_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    days: LostDays,
    after: Option<(NaiveDate, ChildId)>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child::Column as C;
    let seen = || -> SimpleExpr {
        Func::coalesce([Expr::col((child_summary::Entity, child_summary::Column::LastSeenOn)), Expr::col((child::Entity, C::RegisteredOn))])
            .into()
    };
    let lost = Condition::any()
        .add(Condition::all().add(C::Born.gt(days.young_born_after)).add(seen().lte(days.young_seen_by)))
        .add(Condition::all().add(C::Born.lte(days.young_born_after)).add(seen().lte(days.older_seen_by)));
    let mut query =
        lines(scope).filter(C::Status.eq(ChildStatus::Active.code())).filter(lost).order_by(seen(), Order::Asc).order_by_asc(C::Id);
    if let Some((on, child)) = after {
        query = query.filter(Condition::any().add(seen().gt(on)).add(Condition::all().add(seen().eq(on)).add(C::Id.gt(uuid(child.0)))));
    }
    rows(c, query, limit).await
}

/// Active children with a food on hold since `held_by` or before, longest first.
///
/// # Errors
/// [`StoreError`].
pub async fn held_in_scope(c: &impl ConnectionTrait, scope: Scope, held_by: NaiveDate, limit: u64) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(S::HoldSince.lte(held_by))
        .order_by_asc(S::HoldSince)
        .order_by_asc(S::ChildId);
    rows(c, query, limit).await
}

/// Active children with a visit slot missed since `missed_by` or before, longest first.
///
/// # Errors
/// [`StoreError`].
pub async fn visits_missed_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    missed_by: NaiveDate,
    after: Option<(NaiveDate, ChildId)>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let mut query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(S::OverdueSince.lte(missed_by))
        .order_by_asc(S::OverdueSince)
        .order_by_asc(S::ChildId);
    if let Some((on, child)) = after {
        query = query.filter(
            Condition::any()
                .add(S::OverdueSince.gt(on))
                .add(Condition::all().add(S::OverdueSince.eq(on)).add(S::ChildId.gt(uuid(child.0)))),
        );
    }
    rows(c, query, limit).await
}

//! What waits on a supervisor's lists: referrals without an answer, children not seen for long, foods on hold, visits missed.

use chrono::NaiveDate;
use domain::child::ChildStatus;
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
use crate::store::follow_ups::desk::Narrowed;
use crate::store::lists::RoundRow;
use crate::store::lists::lines;
use crate::store::lists::rows;
use crate::store::scope::Scope;

/// Children with an urgent follow-up that has no outcome, or a referral that has waited too long on `today`; most urgent first. Of one
/// worker or area where it is narrowed so; whatever else a list is narrowed to hides no child that waits for an answer.
///
/// # Errors
/// [`StoreError`].
pub async fn unanswered_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    narrowed: Narrowed,
    today: NaiveDate,
    after: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let whose = Condition::all()
        .add_option(narrowed.worker.map(|id| S::WorkerId.eq(uuid(id.0))))
        .add_option(narrowed.area.map(|id| S::AreaId.eq(uuid(id.0))));
    let query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(Condition::any().add(S::UrgentUnansweredSince.is_not_null()).add(S::ReferralDueOn.lt(today)))
        .filter(whose)
        .filter(S::WorkKey.gt(after.unwrap_or_default()))
        .order_by_asc(S::WorkKey);
    rows(c, query, limit).await
}

/// Children sent to care of whom nobody has written what became of it, most urgent first, whether the answer is late or not; from
/// after the key `after`.
///
/// # Errors
/// [`StoreError`].
pub async fn referred_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    after: Option<&str>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(Condition::any().add(S::UrgentUnansweredSince.is_not_null()).add(S::ReferralDueOn.is_not_null()))
        .filter(S::WorkKey.gt(after.unwrap_or_default()))
        .order_by_asc(S::WorkKey);
    rows(c, query, limit).await
}

/// Where a page of a list in the order of days ended.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct DayKey {
    /// The day counted from.
    pub on: NaiveDate,
    /// Code of the child.
    pub code: String,
}

impl DayKey {
    /// What comes after this key in the order of days.
    fn further(&self, day: SimpleExpr) -> Condition {
        let same_day = Condition::all().add(day.clone().eq(self.on)).add(child::Column::Code.gt(self.code.as_str()));
        Condition::any().add(day.gt(self.on)).add(same_day)
    }
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

impl LostDays {
    /// Whether they hold for a child born and last seen so.
    #[must_use]
    pub fn hold(&self, born: NaiveDate, seen: NaiveDate) -> bool {
        seen <= if born > self.young_born_after { self.young_seen_by } else { self.older_seen_by }
    }
}

/// Active children not seen for too long, longest first. The key holds the day counted from.
///
/// # Errors
/// [`StoreError`].
pub async fn lost_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    days: LostDays,
    after: Option<&DayKey>,
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
        lines(scope).filter(C::Status.eq(ChildStatus::Active.code())).filter(lost).order_by(seen(), Order::Asc).order_by_asc(C::Code);
    if let Some(key) = after {
        query = query.filter(key.further(seen()));
    }
    rows(c, query, limit).await
}

/// Active children with a food on hold since `held_by` or before, longest first.
///
/// # Errors
/// [`StoreError`].
pub async fn held_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    held_by: NaiveDate,
    after: Option<&DayKey>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    since(c, scope, S::HoldSince, held_by, after, limit).await
}

/// Active children with a visit slot missed since `missed_by` or before, longest first.
///
/// # Errors
/// [`StoreError`].
pub async fn visits_missed_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    missed_by: NaiveDate,
    after: Option<&DayKey>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    since(c, scope, S::OverdueSince, missed_by, after, limit).await
}

/// Active children where something has waited since `by` or before, longest first.
async fn since(
    c: &impl ConnectionTrait,
    scope: Scope,
    day: child_summary::Column,
    by: NaiveDate,
    after: Option<&DayKey>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    let mut query = lines(scope)
        .filter(child::Column::Status.eq(ChildStatus::Active.code()))
        .filter(day.lte(by))
        .order_by_asc(day)
        .order_by_asc(child::Column::Code);
    if let Some(key) = after {
        query = query.filter(key.further(Expr::col((child_summary::Entity, day))));
    }
    rows(c, query, limit).await
}

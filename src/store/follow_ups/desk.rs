//! A supervisor's list: open follow-ups past the clock of their class, longest past it first, one query a page; and how many
//! there are by worker and area. Which clock holds comes from outside.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::Order;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::sea_query::CaseStatement;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::SimpleExpr;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::entity::child;
use crate::store::entity::child_summary;
use crate::store::entity::follow_up;
use crate::store::error::StoreError;
use crate::store::follow_ups::FollowUpLine;
use crate::store::follow_ups::in_scope;
use crate::store::follow_ups::late::lines;
use crate::store::follow_ups::late::read_lines;
use crate::store::scope::Scope;

/// For each class shown, how many days past the due day it counts as late.
pub type ClassClock = [(Class, i32)];

/// What a list is narrowed to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Narrowed {
    /// One worker's children.
    pub worker: Option<PersonId>,
    /// Children of one area.
    pub area: Option<AreaId>,
    /// Follow-ups of one rule.
    pub rule: Option<RuleId>,
    /// Due on or before this day.
    pub due_by: Option<NaiveDate>,
}

impl Narrowed {
    fn condition(self) -> Condition {
        use follow_up::Column as F;
        Condition::all()
            .add_option(self.worker.map(|id| F::WorkerId.eq(uuid(id.0))))
            .add_option(self.area.map(|id| F::AreaId.eq(uuid(id.0))))
            .add_option(self.rule.map(|rule| F::Rule.eq(rule.code())))
            .add_option(self.due_by.map(|day| F::DueOn.lte(day)))
    }
}

/// Where a page ended: the day its last line became late, and what tells lines of that day apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LateKey {
    /// Due day plus the days of the clock.
    pub late_from: NaiveDate,
    /// Class.
    pub class: Class,
    /// Birth date: youngest first.
    pub born: NaiveDate,
    /// Code of the child.
    pub code: String,
    /// Rule: one rule has one open follow-up a child.
    pub rule: RuleId,
}

/// The key of a line.
#[must_use]
pub fn late_key(line: &FollowUpLine, clock: &ClassClock) -> LateKey {
    let f = &line.follow_up;
    let days = clock.iter().find(|(class, _)| *class == f.class).map_or(0, |(_, days)| *days);
    LateKey { late_from: add_days(f.due_on, days), class: f.class, born: line.born, code: line.child_code.clone(), rule: f.rule }
}

/// A page of open follow-ups that are late on `today`: longest past their clock first, then most urgent, then youngest.
///
/// # Errors
/// [`StoreError`].
pub async fn past_clock_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    narrowed: Narrowed,
    clock: &ClassClock,
    today: NaiveDate,
    after: Option<&LateKey>,
    limit: u64,
) -> Result<Vec<FollowUpLine>, StoreError> {
    use follow_up::Column as F;
    if clock.is_empty() {
        return Ok(Vec::new());
    }
    let late_from = late_from(c.get_database_backend(), clock);
    let rank = rank();
    let born: SimpleExpr = Expr::col((child::Entity, child::Column::Born));
    let code: SimpleExpr = Expr::col((child::Entity, child::Column::Code));
    let rule: SimpleExpr = Expr::col((follow_up::Entity, F::Rule));
    let mut query = lines(scope).filter(F::State.eq("open")).filter(late(clock, today)).filter(narrowed.condition());
    if let Some(key) = after {
        let (class, text) = (rank_of(key.class), key.late_from.to_string());
        let at: SimpleExpr = Expr::value(text);
        // Each level: later at this one, or the same and later at the next.
        let by_rule = code.clone().eq(key.code.as_str()).and(rule.clone().gt(key.rule.code())).or(code.clone().gt(key.code.as_str()));
        let by_code = born.clone().eq(key.born).and(by_rule).or(born.clone().lt(key.born));
        let by_born = rank.clone().eq(class).and(by_code).or(rank.clone().gt(class));
        query = query.filter(late_from.clone().eq(at.clone()).and(by_born).or(late_from.clone().gt(at)));
    }
    let query = query
        .order_by(late_from, Order::Asc)
        .order_by(rank, Order::Asc)
        .order_by(born, Order::Desc)
        .order_by(code, Order::Asc)
        .order_by(rule, Order::Asc)
        .limit(limit);
    read_lines(c, query).await
}

/// Late on `today`, by class.
fn late(clock: &ClassClock, today: NaiveDate) -> Condition {
    clock.iter().fold(Condition::any(), |any, (class, days)| {
        let last_due = add_days(today, -days);
        any.add(Condition::all().add(follow_up::Column::Class.eq(class.code())).add(follow_up::Column::DueOn.lte(last_due)))
    })
}

/// The day a follow-up becomes late, as text that sorts like days. The one place where the engines add days differently.
fn late_from(engine: DbBackend, clock: &ClassClock) -> SimpleExpr {
    let plus = |days: i32| match engine {
        DbBackend::Sqlite => Expr::cust(format!("date(follow_ups.due_on, '{days:+} days')")),
        _ => Expr::cust(format!("to_char(follow_ups.due_on + {days}, 'YYYY-MM-DD')")),
    };
    let case = clock.iter().fold(CaseStatement::new(), |case, (class, days)| {
        case.case(Expr::col((follow_up::Entity, follow_up::Column::Class)).eq(class.code()), plus(*days))
    });
    case.finally(plus(0)).into()
}

fn rank() -> SimpleExpr {
    let case = Class::ALL.iter().fold(CaseStatement::new(), |case, class| {
        case.case(Expr::col((follow_up::Entity, follow_up::Column::Class)).eq(class.code()), Expr::value(rank_of(*class)))
    });
    case.finally(Expr::value(rank_of(Class::Month))).into()
}

fn rank_of(class: Class) -> i32 {
    Class::ALL.iter().position(|c| *c == class).and_then(|at| i32::try_from(at).ok()).unwrap_or(i32::MAX)
}

/// How many of a worker's children in an area, and of their follow-ups, by class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tally {
    /// Worker.
    pub worker: PersonId,
    /// Area.
    pub area: AreaId,
    /// Class; `None` on the line that counts children.
    pub class: Option<Class>,
    /// Active children, or open follow-ups of the class.
    pub count: u64,
    /// Of them, late.
    pub late: u64,
}

#[derive(FromQueryResult)]
struct TallyRow {
    worker_id: uuid::Uuid,
    area_id: uuid::Uuid,
    class: Option<String>,
    count: i64,
    late: i64,
}

/// Counts children and open follow-ups in scope by worker and area: two queries, however many there are.
///
/// # Errors
/// [`StoreError`].
pub async fn tallies_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    clock: &ClassClock,
    today: NaiveDate,
) -> Result<Vec<Tally>, StoreError> {
    use child_summary::Column as S;
    use follow_up::Column as F;
    let is_late: SimpleExpr = CaseStatement::new().case(late(clock, today), Expr::value(1)).finally(Expr::value(0)).into();
    let follow_ups = follow_up::Entity::find()
        .select_only()
        .column(F::WorkerId)
        .column(F::AreaId)
        .column(F::Class)
        .column_as(Expr::col((follow_up::Entity, F::Id)).count(), "count")
        .column_as(is_late.sum().cast_as("bigint"), "late")
        .filter(in_scope(scope))
        .filter(F::State.eq("open"))
        .group_by(F::WorkerId)
        .group_by(F::AreaId)
        .group_by(F::Class);
    let children = child_summary::Entity::find()
        .select_only()
        .column(S::WorkerId)
        .column(S::AreaId)
        .column_as(Expr::val(Option::<String>::None).cast_as("text"), "class")
        .column_as(Expr::col((child_summary::Entity, S::ChildId)).count(), "count")
        .column_as(Expr::val(0_i64).cast_as("bigint"), "late")
        .filter(scope.on((child_summary::Entity, S::AreaId), (child_summary::Entity, S::WorkerId)))
        .filter(S::Status.eq("active"))
        .group_by(S::WorkerId)
        .group_by(S::AreaId);
    let mut rows = children.into_model::<TallyRow>().all(c).await?;
    if !clock.is_empty() {
        rows.extend(follow_ups.into_model::<TallyRow>().all(c).await?);
    }
    rows.into_iter()
        .map(|row| {
            let reading = Reading { table: "follow_ups", id: row.worker_id };
            Ok(Tally {
                worker: PersonId(row.worker_id.as_u128()),
                area: AreaId(row.area_id.as_u128()),
                class: reading.maybe_code(row.class.as_deref(), Class::from_code)?,
                count: row.count.unsigned_abs(),
                late: row.late.unsigned_abs(),
            })
        })
        .collect()
}

//! Lists of children with the names a list shows: one query a page, the next page after the key of the last line seen.
//! Each list is named by the question it answers; it sees only what the scope reaches.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use sea_orm::Select;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::ExprTrait;
use sea_orm::sea_query::Func;
use sea_orm::sea_query::LikeExpr;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::desk_notes;
use crate::store::entity::area;
use crate::store::entity::child;
use crate::store::entity::child_summary;
use crate::store::entity::household_member;
use crate::store::entity::person;
use crate::store::error::StoreError;
use crate::store::evidence_text;
use crate::store::scope::Scope;
use crate::store::summaries::NOTHING_DUE;
use crate::store::summaries::SlotDays;
use crate::store::summaries::TopFollowUp;

mod day;
#[cfg(test)]
mod tests;
pub mod waiting;
pub mod week;

pub use waiting::DayKey;
pub use waiting::LostDays;
pub use waiting::held_in_scope;
pub use waiting::lost_in_scope;
pub use waiting::referred_in_scope;
pub use waiting::unanswered_in_scope;
pub use waiting::visits_missed_in_scope;

pub use day::Checked;
pub use day::everyone;
pub use day::next_due;
pub use day::round_of_worker;
pub use day::seen_on;

/// A child on a list.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundRow {
    /// Key of the line, for the next page of the round.
    pub work_key: String,
    /// Child.
    pub child: ChildId,
    /// Code in links.
    pub code: String,
    /// Name.
    pub name: String,
    /// What the family calls the child.
    pub known_as: Option<String>,
    /// Name reduced to what survives spelling; with the code, the key for the next page of a search.
    pub name_key: String,
    /// Sex.
    pub sex: Sex,
    /// Birth date.
    pub born: NaiveDate,
    /// Whether its day is known.
    pub birth_day_known: bool,
    /// In the programme, or how it left.
    pub status: ChildStatus,
    /// First day in the programme.
    pub registered_on: NaiveDate,
    /// Area.
    pub area: AreaId,
    /// Its name.
    pub area_name: String,
    /// Worker.
    pub worker: PersonId,
    /// Their name.
    pub worker_name: String,
    /// Caregiver.
    pub caregiver_name: String,
    /// Their phone.
    pub phone: Option<String>,
    /// How to find the home.
    pub directions: Option<String>,
    /// The follow-up that comes first.
    pub top: Option<TopFollowUp>,
    /// Open follow-ups.
    pub open_count: u16,
    /// The earliest day on which an open `now` or `today` without outcome last fired.
    pub urgent_unanswered_since: Option<NaiveDate>,
    /// From the day after this one, a referral counts as without outcome.
    pub referral_due_on: Option<NaiveDate>,
    /// The next expected visit.
    pub slot: Option<SlotDays>,
    /// Earliest closing day of a visit slot that was missed.
    pub overdue_since: Option<NaiveDate>,
    /// Since when the food that is longest on hold waits.
    pub hold_since: Option<NaiveDate>,
    /// Last home or clinic visit.
    pub last_seen_on: Option<NaiveDate>,
    /// The home, where several children share it.
    pub household: Option<HouseholdId>,
    /// A supervisor wrote to the worker about it, and the note waits.
    pub noted: bool,
}

#[derive(FromQueryResult)]
struct Row {
    work_key: Option<String>,
    id: uuid::Uuid,
    code: String,
    name: String,
    known_as: Option<String>,
    name_key: String,
    sex: String,
    born: NaiveDate,
    birth_day_known: bool,
    status: String,
    registered_on: NaiveDate,
    area_id: uuid::Uuid,
    area_name: String,
    worker_id: uuid::Uuid,
    worker_name: String,
    caregiver_name: String,
    phone: Option<String>,
    directions: Option<String>,
    top_class: Option<String>,
    top_rule: Option<String>,
    top_due_on: Option<NaiveDate>,
    top_evidence: Option<String>,
    open_count: Option<i32>,
    urgent_unanswered_since: Option<NaiveDate>,
    referral_due_on: Option<NaiveDate>,
    slot_target: Option<NaiveDate>,
    slot_opens: Option<NaiveDate>,
    slot_closes: Option<NaiveDate>,
    overdue_since: Option<NaiveDate>,
    hold_since: Option<NaiveDate>,
    last_seen_on: Option<NaiveDate>,
    household_id: Option<uuid::Uuid>,
    noted: bool,
}

impl TryFrom<Row> for RoundRow {
    type Error = StoreError;

    fn try_from(row: Row) -> Result<Self, StoreError> {
        let r = Reading { table: "children", id: row.id };
        let s = Reading { table: "child_summaries", id: row.id };
        let top = match (row.top_class, row.top_rule, row.top_due_on) {
            (Some(class), Some(rule), Some(due_on)) => Some(TopFollowUp {
                class: s.code(&class, Class::from_code)?,
                rule: s.code(&rule, RuleId::from_code)?,
                due_on,
                evidence: row.top_evidence.map_or(Ok(Evidence::default()), |t| evidence_text::read(&t)).map_err(|what| s.corrupt(what))?,
            }),
            _ => None,
        };
        let slot = match (row.slot_target, row.slot_opens, row.slot_closes) {
            (Some(target), Some(opens), Some(closes)) => Some(SlotDays { target, opens, closes }),
            _ => None,
        };
        Ok(Self {
            work_key: row.work_key.unwrap_or_default(),
            child: ChildId(row.id.as_u128()),
            sex: r.code(&row.sex, Sex::from_code)?,
            status: r.code(&row.status, ChildStatus::from_code)?,
            open_count: s.number("open_count", row.open_count.unwrap_or(0))?,
            code: row.code,
            name: row.name,
            known_as: row.known_as,
            name_key: row.name_key,
            born: row.born,
            birth_day_known: row.birth_day_known,
            registered_on: row.registered_on,
            area: AreaId(row.area_id.as_u128()),
            area_name: row.area_name,
            worker: PersonId(row.worker_id.as_u128()),
            worker_name: row.worker_name,
            caregiver_name: row.caregiver_name,
            phone: row.phone,
            directions: row.directions,
            top,
            urgent_unanswered_since: row.urgent_unanswered_since,
            referral_due_on: row.referral_due_on,
            slot,
            overdue_since: row.overdue_since,
            hold_since: row.hold_since,
            last_seen_on: row.last_seen_on,
            household: row.household_id.map(|id| HouseholdId(id.as_u128())),
            noted: row.noted,
        })
    }
}

pub(super) fn lines(scope: Scope) -> Select<child::Entity> {
    use child::Column as C;
    use child_summary::Column as S;
    let area: RelationDef = child::Entity::belongs_to(area::Entity).from(C::AreaId).to(area::Column::Id).into();
    let worker: RelationDef = child::Entity::belongs_to(person::Entity).from(C::WorkerId).to(person::Column::Id).into();
    let home: RelationDef = child::Entity::belongs_to(household_member::Entity).from(C::Id).to(household_member::Column::ChildId).into();
    let summary: RelationDef = child::Entity::belongs_to(child_summary::Entity).from(C::Id).to(S::ChildId).into();
    child::Entity::find()
        .select_only()
        .columns([C::Id, C::Code, C::Name, C::KnownAs, C::NameKey, C::Sex, C::Born, C::BirthDayKnown, C::Status, C::RegisteredOn])
        .columns([C::AreaId, C::WorkerId, C::CaregiverName, C::Phone, C::Directions])
        .column_as(area::Column::Name, "area_name")
        .column_as(person::Column::FullName, "worker_name")
        .columns([S::WorkKey, S::TopClass, S::TopRule, S::TopDueOn, S::TopEvidence, S::OpenCount, S::UrgentUnansweredSince])
        .columns([S::ReferralDueOn, S::SlotTarget, S::SlotOpens, S::SlotCloses, S::OverdueSince, S::HoldSince, S::LastSeenOn])
        .join(JoinType::InnerJoin, area)
        .join(JoinType::InnerJoin, worker)
        .join(JoinType::InnerJoin, summary)
        .join(JoinType::LeftJoin, home)
        .column(household_member::Column::HouseholdId)
        .column_as(Expr::exists(desk_notes::any_on_the_child()), "noted")
        .filter(scope.on((child_summary::Entity, S::AreaId), (child_summary::Entity, S::WorkerId)))
}

pub(super) async fn rows(c: &impl ConnectionTrait, query: Select<child::Entity>, limit: u64) -> Result<Vec<RoundRow>, StoreError> {
    query.limit(limit).into_model::<Row>().all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// Children with something to do, most urgent first: follow-ups by class and due day, then visits, late before open.
///
/// # Errors
/// [`StoreError`].
pub async fn round(c: &impl ConnectionTrait, scope: Scope, after: Option<&str>, limit: u64) -> Result<Vec<RoundRow>, StoreError> {
    let key = child_summary::Column::WorkKey;
    let query = lines(scope).filter(key.gt(after.unwrap_or_default())).filter(key.lt(NOTHING_DUE.to_string())).order_by_asc(key);
    rows(c, query, limit).await
}

/// The active children of a worker, most urgent first.
///
/// # Errors
/// [`StoreError`].
pub async fn of_worker_in_scope(c: &impl ConnectionTrait, scope: Scope, worker: PersonId, limit: u64) -> Result<Vec<RoundRow>, StoreError> {
    use child_summary::Column as S;
    let query =
        lines(scope).filter(S::WorkerId.eq(uuid(worker.0))).filter(S::Status.eq(ChildStatus::Active.code())).order_by_asc(S::WorkKey);
    rows(c, query, limit).await
}

/// What somebody looks for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sought {
    /// The beginning of a code, in capital letters.
    pub code: Option<String>,
    /// A part of the reduced name.
    pub name_key: Option<String>,
    /// A part of the name, or of what the family calls the child, as written; small and capital letters are alike.
    pub name: Option<String>,
    /// Also children who left.
    pub also_left: bool,
    /// In the order of names as written, not of reduced ones.
    pub as_written: bool,
}

/// Children whose code begins so or whose reduced name holds this, by reduced name, or as written; all of them when nothing is sought.
/// `after` is the name in that order and the code of the last line seen.
///
/// # Errors
/// [`StoreError`].
pub async fn find(
    c: &impl ConnectionTrait,
    scope: Scope,
    sought: &Sought,
    after: Option<(&str, &str)>,
    limit: u64,
) -> Result<Vec<RoundRow>, StoreError> {
    use child::Column as C;
    let order = if sought.as_written { C::Name } else { C::NameKey };
    let mut query = lines(scope).order_by_asc(order).order_by_asc(C::Code);
    if !sought.also_left {
        query = query.filter(C::Status.eq(ChildStatus::Active.code()));
    }
    let mut matches = Condition::any();
    if let Some(code) = sought.code.as_deref().filter(|code| !code.is_empty()) {
        matches = matches.add(Expr::col((child::Entity, C::Code)).like(LikeExpr::new(format!("{}%", literal(code))).escape('\\')));
    }
    if let Some(key) = sought.name_key.as_deref().filter(|key| !key.is_empty()) {
        matches = matches.add(Expr::col((child::Entity, C::NameKey)).like(LikeExpr::new(format!("%{}%", literal(key))).escape('\\')));
    }
    if let Some(name) = sought.name.as_deref().filter(|name| !name.is_empty()) {
        let part = format!("%{}%", literal(&name.to_lowercase()));
        for column in [C::Name, C::KnownAs] {
            matches =
                matches.add(Expr::expr(Func::lower(Expr::col((child::Entity, column)))).like(LikeExpr::new(part.as_str()).escape('\\')));
        }
    }
    if !matches.is_empty() {
        query = query.filter(matches);
    }
    if let Some((name, code)) = after {
        let further = Condition::all().add(order.eq(name)).add(C::Code.gt(code));
        query = query.filter(Condition::any().add(order.gt(name)).add(further));
    }
    rows(c, query, limit).await
}

/// The characters that LIKE reads as "anything", taken literally.
pub(super) fn literal(text: &str) -> String {
    text.replace('\\', "\\\\").replace('%', "\\%").replace('_', "\\_")
}

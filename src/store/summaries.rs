//! One row a child for the lists: what is most urgent, the visit expected, when the row has to be worked out again.
//! It judges nothing; the row can be made anew from visits and follow-ups at any time.

use std::collections::BTreeMap;

use chrono::Datelike;
use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::units::Weight;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::Iterable;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::sea_query::Expr;
use sea_orm::sea_query::OnConflict;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::entity::child_summary;
use crate::store::error::StoreError;
use crate::store::evidence_text;

/// What the lists know of a child.
#[derive(Debug, Clone, PartialEq)]
pub struct SummaryRecord {
    /// Whose.
    pub child: ChildId,
    /// The child's code, last in the order of work.
    pub code: String,
    /// Area now.
    pub area: AreaId,
    /// Worker now.
    pub worker: PersonId,
    /// Birth date.
    pub born: NaiveDate,
    /// In the programme, or how it left.
    pub status: ChildStatus,
    /// Name reduced to what survives spelling.
    pub name_key: String,
    /// The follow-up that comes first.
    pub top: Option<TopFollowUp>,
    /// Open follow-ups.
    pub open_count: u16,
    /// Day on which an open `now` or `today` without any outcome last fired: the earliest such day.
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
    /// Last weight and its day.
    pub last_weight: Option<(Weight, NaiveDate)>,
    /// Weight-for-age z in hundredths on that day.
    pub last_waz: Option<i32>,
    /// The first day on which this row may be different without a visit.
    pub next_change_on: Option<NaiveDate>,
    /// The day for which it was worked out.
    pub assessed_on: NaiveDate,
    /// The protocol's version.
    pub protocol_version: String,
}

/// The follow-up that a list shows.
#[derive(Debug, Clone, PartialEq)]
pub struct TopFollowUp {
    /// Most severe class of the child's open follow-ups.
    pub class: Class,
    /// The rule to name.
    pub rule: RuleId,
    /// Its due day.
    pub due_on: NaiveDate,
    /// Its numbers.
    pub evidence: Evidence,
}

/// A visit slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SlotDays {
    /// Target.
    pub target: NaiveDate,
    /// First day of its window.
    pub opens: NaiveDate,
    /// Last day of its window.
    pub closes: NaiveDate,
}

/// Ranks in the order of work after the six classes.
const LATE_VISIT: char = '6';
const OPEN_VISIT: char = '7';
/// From here on there is nothing to do yet.
pub(crate) const NOTHING_DUE: char = '8';
const LEFT: char = '9';

/// The order of work as one text: class, then due day, then youngest first, then code; late visits and open visits follow
/// the follow-ups. A page goes on after the key of the last line seen.
#[must_use]
pub fn work_key(summary: &SummaryRecord) -> String {
    let (rank, day) = if summary.status != ChildStatus::Active {
        (LEFT, None)
    } else if let Some(top) = &summary.top {
        let rank = match top.class {
            Class::Now => '0',
            Class::Today => '1',
            Class::TwoDays => '2',
            Class::Week => '3',
            Class::Fortnight => '4',
            Class::Month => '5',
        };
        (rank, Some(top.due_on))
    } else if let Some(since) = summary.overdue_since {
        (LATE_VISIT, Some(since))
    } else {
        match summary.slot {
            Some(slot) if slot.opens <= summary.assessed_on => (OPEN_VISIT, Some(slot.closes)),
            Some(slot) => (NOTHING_DUE, Some(slot.opens)),
            None => (NOTHING_DUE, None),
        }
    };
    let day = day.map_or_else(|| "9999-99-99".to_owned(), |day| day.to_string());
    // Days since the beginning of the calendar fit seven digits; taken from the greatest, the latest birth comes first.
    let youngest = 9_999_999 - summary.born.num_days_from_ce();
    format!("{rank}{day}{youngest:07}{}", summary.code)
}

/// The code at the end of an order of work.
fn code_of(work_key: &str) -> &str {
    work_key.get(18..).unwrap_or_default()
}

impl From<&SummaryRecord> for child_summary::Model {
    fn from(summary: &SummaryRecord) -> Self {
        let top = summary.top.as_ref();
        Self {
            child_id: uuid(summary.child.0),
            area_id: uuid(summary.area.0),
            worker_id: uuid(summary.worker.0),
            born: summary.born,
            status: summary.status.code().to_owned(),
            name_key: summary.name_key.clone(),
            work_key: work_key(summary),
            top_class: top.map(|t| t.class.code().to_owned()),
            top_rule: top.map(|t| t.rule.code().to_owned()),
            top_due_on: top.map(|t| t.due_on),
            top_evidence: top.map(|t| evidence_text::write(&t.evidence)),
            open_count: i32::from(summary.open_count),
            urgent_unanswered_since: summary.urgent_unanswered_since,
            referral_due_on: summary.referral_due_on,
            slot_target: summary.slot.map(|s| s.target),
            slot_opens: summary.slot.map(|s| s.opens),
            slot_closes: summary.slot.map(|s| s.closes),
            overdue_since: summary.overdue_since,
            hold_since: summary.hold_since,
            last_seen_on: summary.last_seen_on,
            last_weight_g: summary.last_weight.map(|(w, _)| w.grams().cast_signed()),
            last_weight_on: summary.last_weight.map(|(_, on)| on),
            last_waz_h: summary.last_waz,
            next_change_on: summary.next_change_on,
            assessed_on: summary.assessed_on,
            protocol_version: summary.protocol_version.clone(),
        }
    }
}

impl TryFrom<child_summary::Model> for SummaryRecord {
    type Error = StoreError;

    fn try_from(row: child_summary::Model) -> Result<Self, StoreError> {
        let r = Reading { table: "child_summaries", id: row.child_id };
        let top = match (row.top_class, row.top_rule, row.top_due_on) {
            (Some(class), Some(rule), Some(due_on)) => Some(TopFollowUp {
                class: r.code(&class, Class::from_code)?,
                rule: r.code(&rule, RuleId::from_code)?,
                due_on,
                evidence: evidence_text::read(row.top_evidence.as_deref().unwrap_or_default()).map_err(|what| r.corrupt(what))?,
            }),
            _ => None,
        };
        let slot = match (row.slot_target, row.slot_opens, row.slot_closes) {
            (Some(target), Some(opens), Some(closes)) => Some(SlotDays { target, opens, closes }),
            _ => None,
        };
        let weight = r.maybe_measure("last_weight_g", row.last_weight_g, Weight::from_grams)?;
        Ok(Self {
            child: ChildId(row.child_id.as_u128()),
            code: code_of(&row.work_key).to_owned(),
            area: AreaId(row.area_id.as_u128()),
            worker: PersonId(row.worker_id.as_u128()),
            born: row.born,
            status: r.code(&row.status, ChildStatus::from_code)?,
            name_key: row.name_key,
            top,
            open_count: r.number("open_count", row.open_count)?,
            urgent_unanswered_since: row.urgent_unanswered_since,
            referral_due_on: row.referral_due_on,
            slot,
            overdue_since: row.overdue_since,
            hold_since: row.hold_since,
            last_seen_on: row.last_seen_on,
            last_weight: weight.zip(row.last_weight_on),
            last_waz: row.last_waz_h,
            next_change_on: row.next_change_on,
            assessed_on: row.assessed_on,
            protocol_version: row.protocol_version,
        })
    }
}

/// Writes a child's row, whatever it was.
///
/// # Errors
/// [`StoreError`].
pub async fn upsert(c: &impl ConnectionTrait, summary: &SummaryRecord) -> Result<(), StoreError> {
    use child_summary::Column;
    let others = Column::iter().filter(|column| !matches!(column, Column::ChildId));
    child_summary::Entity::insert(child_summary::Model::from(summary).into_active_model().reset_all())
        .on_conflict(OnConflict::column(Column::ChildId).update_columns(others).to_owned())
        .exec_without_returning(c)
        .await?;
    Ok(())
}

/// Takes a child's row away: its record was merged into another one.
///
/// # Errors
/// [`StoreError`].
pub async fn remove(c: &impl ConnectionTrait, child: ChildId) -> Result<(), StoreError> {
    child_summary::Entity::delete_by_id(uuid(child.0)).exec(c).await?;
    Ok(())
}

/// A child's row.
///
/// # Errors
/// [`StoreError`].
pub async fn of_child(c: &impl ConnectionTrait, child: ChildId) -> Result<Option<SummaryRecord>, StoreError> {
    child_summary::Entity::find_by_id(uuid(child.0)).one(c).await?.map(TryInto::try_into).transpose()
}

/// The rows of these children, each with its order of work as stored.
///
/// # Errors
/// [`StoreError`].
pub async fn of_children(c: &impl ConnectionTrait, children: &[ChildId]) -> Result<BTreeMap<ChildId, (SummaryRecord, String)>, StoreError> {
    let keys = children.iter().map(|id| uuid(id.0));
    let rows = child_summary::Entity::find().filter(child_summary::Column::ChildId.is_in(keys)).all(c).await?;
    let read = |row: child_summary::Model| {
        let key = row.work_key.clone();
        SummaryRecord::try_from(row).map(|summary| (summary.child, (summary, key)))
    };
    rows.into_iter().map(read).collect()
}

/// Has every child in the programme looked at again on a day, if not before: a protocol takes effect then.
///
/// # Errors
/// [`StoreError`].
pub async fn look_again_on(c: &impl ConnectionTrait, day: NaiveDate) -> Result<(), StoreError> {
    use child_summary::Column;
    child_summary::Entity::update_many()
        .col_expr(Column::NextChangeOn, Expr::value(day))
        .filter(Column::Status.eq(ChildStatus::Active.code()))
        .filter(Condition::any().add(Column::NextChangeOn.is_null()).add(Column::NextChangeOn.gt(day)))
        .exec(c)
        .await?;
    Ok(())
}

/// Children whose row may be different from this day on, first the longest waiting, from after the last one seen.
///
/// # Errors
/// [`StoreError`].
pub async fn due_for_tick(
    c: &impl ConnectionTrait,
    today: NaiveDate,
    after: Option<(NaiveDate, ChildId)>,
    limit: u64,
) -> Result<Vec<(NaiveDate, ChildId)>, StoreError> {
    use child_summary::Column;
    let mut query = child_summary::Entity::find()
        .select_only()
        .column(Column::NextChangeOn)
        .column(Column::ChildId)
        .filter(Column::NextChangeOn.lte(today))
        .order_by_asc(Column::NextChangeOn)
        .order_by_asc(Column::ChildId)
        .limit(limit);
    if let Some((on, child)) = after {
        query = query.filter(
            Condition::any()
                .add(Column::NextChangeOn.gt(on))
                .add(Condition::all().add(Column::NextChangeOn.eq(on)).add(Column::ChildId.gt(uuid(child.0)))),
        );
    }
    let rows: Vec<(NaiveDate, uuid::Uuid)> = query.into_tuple().all(c).await?;
    Ok(rows.into_iter().map(|(on, id)| (on, ChildId(id.as_u128()))).collect())
}

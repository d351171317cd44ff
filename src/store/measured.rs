//! Visits as far as measuring goes, by the worker of the time: for looking at how well it goes. It judges nothing.

use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::Datelike;
use chrono::NaiveDate;
use chrono::Utc;
use domain::calendar::add_days;
use domain::calendar::completed_months;
use domain::child::Sex;
use domain::growth::ZHundredths;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use domain::quality::Measured;
use domain::rule::RuleId;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::FromQueryResult;
use sea_orm::JoinType;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;
use sea_orm::RelationDef;
use uuid::Uuid;

use crate::store::codes::Reading;
use crate::store::entity::child;
use crate::store::entity::follow_up;
use crate::store::entity::visit;
use crate::store::error::StoreError;
use crate::store::follow_ups;
use crate::store::scope::Scope;

/// A weight is compared with the one before up to so many days back (our own choice: two visits of an older child).
const BEFORE_DAYS: i32 = 120;
/// The arm is measured from 6 completed months on (WHO 2013: the limits hold from there).
const ARM_FROM_MONTHS: u32 = 6;

/// A visit with whom it was made by, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MeasuredAt {
    /// The worker of the time.
    pub worker: PersonId,
    /// The area of the time.
    pub area: AreaId,
    /// The visit.
    pub measured: Measured,
}

#[derive(FromQueryResult)]
struct Row {
    id: Uuid,
    child_id: Uuid,
    worker_id: Uuid,
    area_id: Uuid,
    sex: String,
    waz_h: Option<i32>,
    laz_h: Option<i32>,
    wlz_h: Option<i32>,
    birth_day_known: bool,
    visited_on: NaiveDate,
    recorded_at: DateTime<Utc>,
    version: i32,
    weight_g: Option<i32>,
    length_mm: Option<i32>,
    muac_mm: Option<i32>,
    suspect: String,
    confirmed: String,
    born: NaiveDate,
}

/// Visits at home or clinic in scope between two days, both included.
/// `day_of` says on which day of the programme an instant lies.
///
/// # Errors
/// [`StoreError`].
pub async fn between(
    c: &impl ConnectionTrait,
    scope: Scope,
    (from, to): (NaiveDate, NaiveDate),
    day_of: &dyn Fn(DateTime<Utc>) -> NaiveDate,
) -> Result<Vec<MeasuredAt>, StoreError> {
    use visit::Column as V;
    let jumped = jumps(c, scope, (from, to)).await?;
    let of: RelationDef = visit::Entity::belongs_to(child::Entity).from(V::ChildId).to(child::Column::Id).into();
    let rows = visit::Entity::find()
        .select_only()
        .columns([
            V::Id,
            V::ChildId,
            V::WorkerId,
            V::AreaId,
            V::Sex,
            V::WazH,
            V::LazH,
            V::WlzH,
            V::VisitedOn,
            V::RecordedAt,
            V::Version,
            V::WeightG,
            V::LengthMm,
            V::MuacMm,
            V::Suspect,
            V::Confirmed,
        ])
        .columns([child::Column::Born, child::Column::BirthDayKnown])
        .join(JoinType::InnerJoin, of)
        .filter(crate::store::children::in_scope(scope))
        .filter(V::VoidedAt.is_null())
        .filter(V::Contact.ne(Contact::Phone.code()))
        .filter(V::VisitedOn.between(add_days(from, -BEFORE_DAYS), to))
        .order_by_asc(V::ChildId)
        .order_by_asc(V::VisitedOn)
        .order_by_asc(V::EntrySeq)
        .into_model::<Row>()
        .all(c)
        .await?;
    let mut found = Vec::new();
    let mut before: Option<(Uuid, Weight)> = None;
    for row in rows {
        let weight = row.weight_g.and_then(|g| Weight::from_grams(g.unsigned_abs()).ok());
        let weight_before = before.filter(|(child, _)| *child == row.child_id).map(|(_, weight)| weight);
        if let Some(weight) = weight {
            before = Some((row.child_id, weight));
        }
        if row.visited_on < from {
            continue;
        }
        let r = Reading { table: "visits", id: row.child_id };
        let age_months = completed_months(row.born, row.visited_on).unwrap_or(0);
        let measured = Measured {
            child: ChildId(row.child_id.as_u128()),
            sex: r.code(&row.sex, Sex::from_code)?,
            birth_day: row.birth_day_known.then(|| row.born.day()),
            age_months,
            waz: row.waz_h.map(ZHundredths::new),
            laz: row.laz_h.map(ZHundredths::new),
            wlz: row.wlz_h.map(ZHundredths::new),
            jump: jumped.contains(&row.id),
            on: row.visited_on,
            arrived_on: day_of(row.recorded_at),
            weight,
            weight_before,
            length: row.length_mm.and_then(|mm| u16::try_from(mm).ok()).and_then(|mm| Length::from_mm(mm).ok()),
            muac: row.muac_mm.and_then(|mm| u16::try_from(mm).ok()).and_then(|mm| Muac::from_mm(mm).ok()),
            arm_due: age_months >= ARM_FROM_MONTHS,
            outside: !row.suspect.is_empty() && row.confirmed.is_empty(),
            corrected: row.version > 1,
        };
        found.push(MeasuredAt { worker: PersonId(row.worker_id.as_u128()), area: AreaId(row.area_id.as_u128()), measured });
    }
    Ok(found)
}

/// The visits of these days that asked for a second weighing because the line jumped.
async fn jumps(c: &impl ConnectionTrait, scope: Scope, (from, to): (NaiveDate, NaiveDate)) -> Result<BTreeSet<Uuid>, StoreError> {
    use follow_up::Column as F;
    let opened = follow_up::Entity::find()
        .select_only()
        .column(F::OpenedByVisit)
        .filter(follow_ups::in_scope(scope))
        .filter(F::Rule.eq(RuleId::DataWeightJump.code()))
        .filter(F::OpenedOn.between(from, to));
    Ok(opened.into_tuple::<Uuid>().all(c).await?.into_iter().collect())
}

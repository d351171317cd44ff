//! Children: registering, finding, changing, moving, leaving. It knows no visit and no rule.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::child::Child;
use domain::child::GestationSource;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::PaginatorTrait;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::corrections;
use crate::store::entity::child;
use crate::store::entity::placement;
use crate::store::entity::status_change;
use crate::store::error::StoreError;
use crate::store::scope::Scope;

/// Everything that is kept about a child besides visits and follow-ups.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChildRecord {
    /// Key.
    pub id: ChildId,
    /// Random code in links and on paper.
    pub code: String,
    /// Name.
    pub name: String,
    /// What the family calls the child.
    pub known_as: Option<String>,
    /// Name reduced to what survives spelling, for finding and duplicates.
    pub name_key: String,
    /// What the rules see. Its `looks_like_another` follows from `looks_like` and `different_child_decided` and is not stored.
    pub facts: Child,
    /// How the weeks of pregnancy are known.
    pub gestation_source: GestationSource,
    /// Caregiver.
    pub caregiver_name: String,
    /// Mother, grandmother …
    pub caregiver_relation: Option<String>,
    /// Caregiver's phone as given.
    pub phone: Option<String>,
    /// How to find the home.
    pub directions: Option<String>,
    /// Area now.
    pub area: AreaId,
    /// Worker now.
    pub worker: PersonId,
    /// Who registered.
    pub registered_by: PersonId,
    /// When the registration was entered.
    pub recorded_at: DateTime<Utc>,
    /// Day of consent.
    pub consent_on: NaiveDate,
    /// Who gave it.
    pub consent_by: String,
    /// Put to the breast within an hour of birth.
    pub early_breastfeeding: Option<bool>,
    /// Nothing but breast milk in the first two days.
    pub first_two_days_milk_only: Option<bool>,
    /// Day the caregiver goes back to work.
    pub returns_to_work_on: Option<NaiveDate>,
    /// Another child this one may be.
    pub looks_like: Option<ChildId>,
    /// Somebody decided that they are two.
    pub different_child_decided: bool,
    /// Day of leaving.
    pub left_on: Option<NaiveDate>,
    /// Note on leaving.
    pub left_note: Option<String>,
    /// Counts changes, from 1.
    pub version: u32,
}

/// Registers a child, with its first placement and status.
///
/// # Errors
/// [`StoreError::Conflict`] when the code or key is taken.
pub async fn insert(c: &impl ConnectionTrait, child: &ChildRecord) -> Result<(), StoreError> {
    child::Entity::insert(child::Model::from(child).into_active_model().reset_all()).exec_without_returning(c).await?;
    let first = placement::Model {
        child_id: uuid(child.id.0),
        seq: 1,
        from_on: child.facts.registered_on,
        to_on: None,
        area_id: uuid(child.area.0),
        worker_id: uuid(child.worker.0),
        by_person: uuid(child.registered_by.0),
        reason: "registered".to_owned(),
    };
    placement::Entity::insert(first.into_active_model().reset_all()).exec_without_returning(c).await?;
    let status = status_change::Model {
        child_id: uuid(child.id.0),
        seq: 1,
        area_id: uuid(child.area.0),
        status: child.facts.status.code().to_owned(),
        happened_on: child.facts.registered_on,
        by_person: Some(uuid(child.registered_by.0)),
        note: None,
        at: whole_second(child.recorded_at),
    };
    status_change::Entity::insert(status.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// Writes a child's registration anew, if it is still at version `child.version`; the stored version becomes one more.
/// Area, worker and status change by [`place`](crate::store::placements::place) and
/// [`change_status`](crate::store::placements::change_status), which keep their history.
///
/// # Errors
/// [`StoreError::Conflict`] when somebody changed it meanwhile.
pub async fn update(c: &impl ConnectionTrait, child: &ChildRecord) -> Result<(), StoreError> {
    let mut row = child::Model::from(child);
    row.version += 1;
    let changed = child::Entity::update_many()
        .set(row.into_active_model().reset_all())
        .filter(child::Column::Id.eq(uuid(child.id.0)))
        .filter(child::Column::Version.eq(i32::try_from(child.version).unwrap_or(i32::MAX)))
        .exec(c)
        .await?;
    if changed.rows_affected == 1 { Ok(()) } else { Err(StoreError::Conflict { what: "children".to_owned() }) }
}

/// The child with this code, if the scope reaches it. The code of a record that was merged leads to the one that goes on.
///
/// # Errors
/// [`StoreError`].
pub async fn by_code_in_scope(c: &impl ConnectionTrait, scope: Scope, code: &str) -> Result<Option<ChildRecord>, StoreError> {
    let query = child::Entity::find().filter(child::Column::Code.eq(code)).filter(in_scope(scope));
    match query.one(c).await? {
        Some(row) => row.try_into().map(Some),
        None => match led_from(c, code).await? {
            Some(goes_on) => by_id_in_scope(c, scope, goes_on).await,
            None => Ok(None),
        },
    }
}

/// The record that goes on for a code that was merged away; `None` for every other code.
///
/// # Errors
/// [`StoreError`].
pub async fn led_from(c: &impl ConnectionTrait, code: &str) -> Result<Option<ChildId>, StoreError> {
    let Some(row) = child::Entity::find().filter(child::Column::Code.eq(code)).one(c).await? else { return Ok(None) };
    let own = ChildId(row.id.as_u128());
    let goes_on = corrections::leads_to(c, own).await?;
    Ok((goes_on != own).then_some(goes_on))
}

/// The child with this key, if the scope reaches it. A record that was merged leads to the one that goes on.
///
/// # Errors
/// [`StoreError`].
pub async fn by_id_in_scope(c: &impl ConnectionTrait, scope: Scope, id: ChildId) -> Result<Option<ChildRecord>, StoreError> {
    let goes_on = corrections::leads_to(c, id).await?;
    child::Entity::find_by_id(uuid(goes_on.0)).filter(in_scope(scope)).one(c).await?.map(TryInto::try_into).transpose()
}

/// These children, by code.
///
/// # Errors
/// [`StoreError`].
pub async fn by_ids(c: &impl ConnectionTrait, ids: &[ChildId]) -> Result<Vec<ChildRecord>, StoreError> {
    let keys = ids.iter().map(|id| uuid(id.0));
    let query = child::Entity::find().filter(child::Column::Id.is_in(keys)).order_by_asc(child::Column::Code);
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// Children in scope in the order of their keys, from after one: for going through all of them.
///
/// # Errors
/// [`StoreError`].
pub async fn page_in_scope(
    c: &impl ConnectionTrait,
    scope: Scope,
    after: Option<ChildId>,
    limit: u64,
) -> Result<Vec<ChildRecord>, StoreError> {
    let mut query = child::Entity::find().filter(in_scope(scope)).order_by_asc(child::Column::Id).limit(limit);
    if let Some(after) = after {
        query = query.filter(child::Column::Id.gt(uuid(after.0)));
    }
    query.all(c).await?.into_iter().map(TryInto::try_into).collect()
}

/// How many children there are in scope.
///
/// # Errors
/// [`StoreError`].
pub async fn count_in_scope(c: &impl ConnectionTrait, scope: Scope) -> Result<u64, StoreError> {
    Ok(child::Entity::find().filter(in_scope(scope)).count(c).await?)
}

/// Within the scope, and not merged into another record: such a record is nobody's any more.
pub(in crate::store) fn in_scope(scope: Scope) -> sea_orm::Condition {
    sea_orm::Condition::all()
        .add(scope.on((child::Entity, child::Column::AreaId), (child::Entity, child::Column::WorkerId)))
        .add(child::Column::Id.not_in_subquery(corrections::merged_away()))
}

#[cfg(test)]
mod tests {
    use domain::role::Role;

    use super::*;
    use crate::store::people;
    use crate::store::people::CoverRecord;
    use crate::store::placements;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_person;
    use crate::store::testing::day;
    use crate::store::testing::two_families;

    async fn sees(test: &TestDb, scope: Scope) -> [bool; 2] {
        let mut seen = [false; 2];
        for (seen, code) in seen.iter_mut().zip(["CH000001", "CH000002"]) {
            *seen = by_code_in_scope(test.db.connection(), scope, code).await.expect("readable").is_some();
        }
        seen
    }

    #[tokio::test]
    async fn a_child_comes_back_as_registered() {
        let test = TestDb::new().await;
        let [child, _] = two_families(&test.db).await.expect("two children");
        assert_eq!(by_id_in_scope(test.db.connection(), Scope::Everything, child.id).await.expect("readable"), Some(child));
    }

    #[tokio::test]
    async fn a_worker_reaches_own_children_and_those_covered_on_that_day() {
        let test = TestDb::new().await;
        two_families(&test.db).await.expect("two children");
        let cover =
            CoverRecord { id: 1, worker: PersonId(2), covered_by: PersonId(1), from_on: day("2026-09-01"), to_on: day("2026-09-03") };
        people::insert_cover(test.db.connection(), &cover).await.expect("a cover");
        for (today, expected) in
            [("2026-08-31", [true, false]), ("2026-09-01", [true, true]), ("2026-09-03", [true, true]), ("2026-09-04", [true, false])]
        {
            assert_eq!(sees(&test, Scope::Worker { person: PersonId(1), today: day(today) }).await, expected, "{today}");
        }
        assert_eq!(sees(&test, Scope::Worker { person: PersonId(2), today: day("2026-09-01") }).await, [false, true]);
    }

    #[tokio::test]
    async fn a_supervisor_reaches_children_of_assigned_areas_or_workers() {
        let test = TestDb::new().await;
        two_families(&test.db).await.expect("two children");
        people::insert(test.db.connection(), &a_person(9, Role::Supervisor)).await.expect("a supervisor");
        let scope = Scope::Supervisor { person: PersonId(9) };
        assert_eq!(sees(&test, scope).await, [false, false]);
        for (areas, workers, expected) in
            [(&[AreaId(1)][..], &[][..], [true, false]), (&[], &[PersonId(2)], [false, true]), (&[AreaId(1)], &[PersonId(2)], [true, true])]
        {
            people::assign(test.db.connection(), PersonId(9), areas, workers).await.expect("assigned");
            assert_eq!(sees(&test, scope).await, expected);
        }
    }

    #[tokio::test]
    async fn of_two_changes_to_the_same_version_the_second_is_told() {
        let test = TestDb::new().await;
        let [mut child, _] = two_families(&test.db).await.expect("two children");
        child.known_as = Some("Little one".to_owned());
        update(test.db.connection(), &child).await.expect("the first");
        assert!(matches!(update(test.db.connection(), &child).await, Err(StoreError::Conflict { .. })));
        let stored = by_id_in_scope(test.db.connection(), Scope::Everything, child.id).await.expect("readable");
        assert_eq!(stored, Some(ChildRecord { version: 2, ..child }));
    }

    #[tokio::test]
    async fn moving_a_child_keeps_where_it_was() {
        let test = TestDb::new().await;
        let [child, _] = two_families(&test.db).await.expect("two children");
        let to = placements::PlacementRecord {
            from_on: day("2026-06-15"),
            to_on: None,
            area: AreaId(2),
            worker: PersonId(2),
            by: PersonId(1),
            reason: "moved in with grandmother".to_owned(),
        };
        placements::place(test.db.connection(), child.id, 1, &to).await.expect("moved");
        let history = placements::of_child(test.db.connection(), child.id).await.expect("readable");
        assert_eq!(
            history.iter().map(|p| (p.area, p.from_on, p.to_on)).collect::<Vec<_>>(),
            [(AreaId(1), day("2026-03-01"), Some(day("2026-06-14"))), (AreaId(2), day("2026-06-15"), None),]
        );
        assert_eq!(sees(&test, Scope::Worker { person: PersonId(2), today: day("2026-06-15") }).await, [true, true]);
    }

    #[tokio::test]
    async fn a_child_that_left_has_a_day_and_can_come_back() {
        let test = TestDb::new().await;
        let [child, _] = two_families(&test.db).await.expect("two children");
        let gone = |status, on: &str| placements::StatusRecord {
            status,
            on: day(on),
            by: Some(PersonId(1)),
            note: Some("to town".to_owned()),
            at: crate::store::testing::noon(on),
        };
        use domain::child::ChildStatus;
        placements::change_status(test.db.connection(), child.id, 1, &gone(ChildStatus::Moved, "2026-08-01")).await.expect("left");
        let left = by_id_in_scope(test.db.connection(), Scope::Everything, child.id).await.expect("readable").expect("a child");
        assert_eq!((left.facts.status, left.left_on), (ChildStatus::Moved, Some(day("2026-08-01"))));
        placements::change_status(test.db.connection(), child.id, 2, &gone(ChildStatus::Active, "2026-09-01")).await.expect("back");
        let statuses = placements::statuses_of(test.db.connection(), child.id).await.expect("readable");
        assert_eq!(statuses.iter().map(|s| s.status).collect::<Vec<_>>(), [ChildStatus::Active, ChildStatus::Moved, ChildStatus::Active]);
    }
}

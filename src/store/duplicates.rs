//! Whoever may be the child that is about to be registered. It compares nothing: it finds the few worth comparing.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::ids::AreaId;
use domain::ids::ChildId;
use domain::ids::PersonId;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::corrections;
use crate::store::entity::child;
use crate::store::error::StoreError;

/// A child that a new registration may repeat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Candidate {
    /// Key.
    pub child: ChildId,
    /// Code.
    pub code: String,
    /// Name.
    pub name: String,
    /// Reduced name.
    pub name_key: String,
    /// Sex.
    pub sex: Sex,
    /// Birth date.
    pub born: NaiveDate,
    /// Caregiver.
    pub caregiver_name: String,
    /// Their phone.
    pub phone: Option<String>,
    /// Worker.
    pub worker: PersonId,
}

/// Active children of an area born between two days, or of the same reduced name there: whoever may be the same child.
/// It reaches over the scope on purpose, since a colleague may have registered the child; show no more than is needed to tell.
///
/// # Errors
/// [`StoreError`].
pub async fn possible_duplicates(
    c: &impl ConnectionTrait,
    area: AreaId,
    born: (NaiveDate, NaiveDate),
    name_key: &str,
    limit: u64,
) -> Result<Vec<Candidate>, StoreError> {
    use child::Column as C;
    let found = child::Entity::find()
        .filter(C::AreaId.eq(uuid(area.0)))
        .filter(C::Status.eq(ChildStatus::Active.code()))
        .filter(C::Id.not_in_subquery(corrections::merged_away()))
        .filter(Condition::any().add(C::Born.between(born.0, born.1)).add(C::NameKey.eq(name_key)))
        .order_by_asc(C::Born)
        .order_by_asc(C::Code)
        .limit(limit)
        .all(c)
        .await?;
    let read = |row: child::Model| {
        Ok(Candidate {
            child: ChildId(row.id.as_u128()),
            sex: Reading { table: "children", id: row.id }.code(&row.sex, Sex::from_code)?,
            code: row.code,
            name: row.name,
            name_key: row.name_key,
            born: row.born,
            caregiver_name: row.caregiver_name,
            phone: row.phone,
            worker: PersonId(row.worker_id.as_u128()),
        })
    };
    found.into_iter().map(read).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::children;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_child;
    use crate::store::testing::day;
    use crate::store::testing::two_families;

    #[tokio::test]
    async fn only_active_children_of_the_area_with_near_birth_or_same_name_are_candidates() {
        let test = TestDb::new().await;
        let [first, _] = two_families(&test.db).await.expect("two children");
        let near = {
            let mut c = a_child(3, first.area, first.worker);
            c.facts.born = day("2026-02-20");
            c
        };
        let far = {
            let mut c = a_child(4, first.area, first.worker);
            c.facts.born = day("2025-06-01");
            c
        };
        let far_same_name = {
            let mut c = a_child(5, first.area, first.worker);
            c.facts.born = day("2025-06-02");
            c.name_key = "amina".to_owned();
            c
        };
        let mut gone = a_child(6, first.area, first.worker);
        (gone.facts.status, gone.left_on) = (ChildStatus::Moved, Some(day("2026-04-01")));
        for child in [&near, &far, &far_same_name, &gone] {
            children::insert(test.db.direct(), child).await.expect("registered");
        }
        let born = (day("2026-02-15"), day("2026-03-15"));
        let found = possible_duplicates(test.db.direct(), first.area, born, "amina", 50).await.expect("readable");
        assert_eq!(found.iter().map(|c| c.child.0).collect::<Vec<_>>(), [5, 3, 1]);
    }
}

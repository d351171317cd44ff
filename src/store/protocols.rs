//! Adopted protocols as they were written, with their day of effect. It reads none of them.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::PaginatorTrait;
use sea_orm::QueryOrder;

use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::protocol;
use crate::store::error::StoreError;

/// An adopted protocol.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProtocolRecord {
    /// Its id.
    pub id: String,
    /// Its version.
    pub version: String,
    /// The whole text.
    pub body: String,
    /// Judges visits from this day on.
    pub effective_from: NaiveDate,
    /// When it was adopted.
    pub adopted_at: DateTime<Utc>,
    /// Who adopted it; `None` = the program at its start.
    pub adopted_by: Option<PersonId>,
    /// The clinician who approved it; empty = nobody yet.
    pub approved_by: String,
    /// Why it was adopted, in words.
    pub reason: String,
}

/// Adopts a protocol.
///
/// # Errors
/// [`StoreError::Conflict`] when this id and version are adopted already.
pub async fn insert(c: &impl ConnectionTrait, record: &ProtocolRecord) -> Result<(), StoreError> {
    let row = protocol::Model {
        id: record.id.clone(),
        version: record.version.clone(),
        body: record.body.clone(),
        effective_from: record.effective_from,
        adopted_at: whole_second(record.adopted_at),
        adopted_by: record.adopted_by.map(|id| uuid(id.0)),
        approved_by: record.approved_by.clone(),
        reason: record.reason.clone(),
    };
    protocol::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// How many are adopted: says whether there are new ones.
///
/// # Errors
/// [`StoreError`].
pub async fn count(c: &impl ConnectionTrait) -> Result<u64, StoreError> {
    Ok(protocol::Entity::find().count(c).await?)
}

/// All adopted protocols by day of effect, then by when they were adopted.
///
/// # Errors
/// [`StoreError`].
pub async fn all(c: &impl ConnectionTrait) -> Result<Vec<ProtocolRecord>, StoreError> {
    let query = protocol::Entity::find()
        .order_by_asc(protocol::Column::EffectiveFrom)
        .order_by_asc(protocol::Column::AdoptedAt)
        .order_by_asc(protocol::Column::Version);
    let read = |row: protocol::Model| ProtocolRecord {
        id: row.id,
        version: row.version,
        body: row.body,
        effective_from: row.effective_from,
        adopted_at: row.adopted_at,
        adopted_by: row.adopted_by.map(|id| PersonId(id.as_u128())),
        approved_by: row.approved_by,
        reason: row.reason,
    };
    Ok(query.all(c).await?.into_iter().map(read).collect())
}

#[cfg(test)]
mod tests {
    use sea_orm::ConnectionTrait;

    use super::*;
    use crate::store::testing::TestDb;
    use crate::store::testing::day;
    use crate::store::testing::noon;

    fn adopted(version: &str, from: &str) -> ProtocolRecord {
        ProtocolRecord {
            id: "default".to_owned(),
            version: version.to_owned(),
            body: "name = \"x\"\n".to_owned(),
            effective_from: day(from),
            adopted_at: noon("2026-01-01"),
            adopted_by: None,
            approved_by: String::new(),
            reason: "the arm limit of the region".to_owned(),
        }
    }

    #[tokio::test]
    async fn protocols_come_by_day_of_effect_and_a_version_is_adopted_once() {
        let test = TestDb::new().await;
        let (later, first) = (adopted("2", "2026-06-01"), adopted("1", "2026-01-01"));
        insert(test.db.direct(), &later).await.expect("adopted");
        insert(test.db.direct(), &first).await.expect("adopted");
        assert_eq!(all(test.db.direct()).await.expect("readable"), [first.clone(), later]);
        assert!(matches!(insert(test.db.direct(), &first).await, Err(StoreError::Conflict { .. })));
    }

    #[tokio::test]
    async fn an_adopted_text_cannot_be_changed() {
        let test = TestDb::new().await;
        insert(test.db.direct(), &adopted("1", "2026-01-01")).await.expect("adopted");
        let refused = test.db.connection().execute_unprepared("UPDATE protocols SET body = ''").await.expect_err("append-only");
        assert!(refused.to_string().contains("append-only"), "{refused}");
    }
}

//! Who did what to which record, and when: names of fields, never their values. The table only grows.

use chrono::DateTime;
use chrono::Utc;
use domain::ids::PersonId;
use sea_orm::ActiveModelTrait;
use sea_orm::ActiveValue::NotSet;
use sea_orm::ColumnTrait;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::IntoActiveModel;
use sea_orm::QueryFilter;
use sea_orm::QueryOrder;
use sea_orm::QuerySelect;

use crate::store::codes::join;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::audit_entry;
use crate::store::error::StoreError;

/// Something somebody did.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AuditEntry {
    /// When.
    pub at: DateTime<Utc>,
    /// Who; `None` = the program or the command line.
    pub actor: Option<PersonId>,
    /// What, e.g. `visit.amend`.
    pub action: String,
    /// The kind of record, e.g. `child`.
    pub object_kind: String,
    /// Its key or code.
    pub object_id: String,
    /// Names of the fields touched.
    pub fields: Vec<String>,
}

/// Adds an entry.
///
/// # Errors
/// [`StoreError`].
pub async fn append(c: &impl ConnectionTrait, entry: &AuditEntry) -> Result<(), StoreError> {
    let mut row = audit_entry::Model {
        seq: 0,
        at: whole_second(entry.at),
        actor: entry.actor.map(|id| uuid(id.0)),
        action: entry.action.clone(),
        object_kind: entry.object_kind.clone(),
        object_id: entry.object_id.clone(),
        fields: join(entry.fields.iter().map(String::as_str)),
    }
    .into_active_model()
    .reset_all();
    row.seq = NotSet;
    audit_entry::Entity::insert(row).exec_without_returning(c).await?;
    Ok(())
}

/// What was done to a record, latest first, from before entry `before`; with each entry its number.
///
/// # Errors
/// [`StoreError`].
pub async fn of_object(
    c: &impl ConnectionTrait,
    object_kind: &str,
    object_id: &str,
    before: Option<i64>,
    limit: u64,
) -> Result<Vec<(i64, AuditEntry)>, StoreError> {
    let query = audit_entry::Entity::find()
        .filter(audit_entry::Column::ObjectKind.eq(object_kind))
        .filter(audit_entry::Column::ObjectId.eq(object_id))
        .filter(audit_entry::Column::Seq.lt(before.unwrap_or(i64::MAX)))
        .order_by_desc(audit_entry::Column::Seq)
        .limit(limit);
    let read = |row: audit_entry::Model| {
        let entry = AuditEntry {
            at: row.at,
            actor: row.actor.map(|id| PersonId(id.as_u128())),
            action: row.action,
            object_kind: row.object_kind,
            object_id: row.object_id,
            fields: row.fields.split(' ').filter(|f| !f.is_empty()).map(str::to_owned).collect(),
        };
        (row.seq, entry)
    };
    Ok(query.all(c).await?.into_iter().map(read).collect())
}

#[cfg(test)]
mod tests {
    use sea_orm::ConnectionTrait;

    use super::*;
    use crate::store::testing::TestDb;
    use crate::store::testing::noon;

    #[tokio::test]
    async fn entries_come_latest_first_in_pages_and_cannot_be_removed() {
        let test = TestDb::new().await;
        let entry = |action: &str| AuditEntry {
            at: noon("2026-01-01"),
            actor: None,
            action: action.to_owned(),
            object_kind: "child".to_owned(),
            object_id: "CH000001".to_owned(),
            fields: vec!["name".to_owned(), "phone".to_owned()],
        };
        for action in ["first", "second", "third"] {
            append(test.db.direct(), &entry(action)).await.expect("added");
        }
        let page = of_object(test.db.direct(), "child", "CH000001", None, 2).await.expect("readable");
        assert_eq!(page.iter().map(|(_, e)| e.clone()).collect::<Vec<_>>(), [entry("third"), entry("second")]);
        let rest = of_object(test.db.direct(), "child", "CH000001", page.last().map(|(seq, _)| *seq), 2).await.expect("readable");
        assert_eq!(rest.iter().map(|(_, e)| e.clone()).collect::<Vec<_>>(), [entry("first")]);
        let refused = test.db.connection().execute_unprepared("DELETE FROM audit").await.expect_err("append-only");
        assert!(refused.to_string().contains("append-only"), "{refused}");
    }
}

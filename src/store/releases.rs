//! Figures of months, quarters and years as they were released, which only grows, and as they were last counted. It reads no
//! figure: a body is text.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
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
use sea_orm::sea_query::OnConflict;

use crate::store::codes::Reading;
use crate::store::codes::uuid;
use crate::store::codes::whole_second;
use crate::store::entity::audit_entry;
use crate::store::entity::child;
use crate::store::entity::counted_figure;
use crate::store::entity::follow_up_event;
use crate::store::entity::protocol;
use crate::store::entity::release;
use crate::store::entity::status_change;
use crate::store::entity::visit;
use crate::store::error::StoreError;

/// Figures as text, and what they were counted by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FiguresRecord {
    /// The period's code, e.g. `2026-10`.
    pub period: String,
    /// When they were released, or counted.
    pub at: DateTime<Utc>,
    /// The programme's name then.
    pub programme: String,
    /// The protocol in force at the end of the period.
    pub protocol_id: String,
    /// Its version.
    pub protocol_version: String,
    /// The version of the definitions.
    pub definitions_version: String,
    /// Counts below this were withheld.
    pub threshold: u32,
    /// The tables.
    pub body: String,
}

/// A revision of a period.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReleaseRecord {
    /// 0 for the first one.
    pub revision: u32,
    /// Who opened the period and so released it; `None` = the program on its day.
    pub by: Option<PersonId>,
    /// The figures.
    pub figures: FiguresRecord,
}

/// Keeps a revision for good.
///
/// # Errors
/// [`StoreError::Conflict`] when this revision is there already.
pub async fn insert(c: &impl ConnectionTrait, record: &ReleaseRecord) -> Result<(), StoreError> {
    let figures = record.figures.clone();
    let row = release::Model {
        period: figures.period,
        revision: i32::try_from(record.revision).unwrap_or(i32::MAX),
        released_at: whole_second(figures.at),
        released_by: record.by.map(|id| uuid(id.0)),
        programme: figures.programme,
        protocol_id: figures.protocol_id,
        protocol_version: figures.protocol_version,
        definitions_version: figures.definitions_version,
        threshold: i32::try_from(figures.threshold).unwrap_or(i32::MAX),
        body: figures.body,
    };
    release::Entity::insert(row.into_active_model().reset_all()).exec_without_returning(c).await?;
    Ok(())
}

/// A revision of a period, or its latest.
///
/// # Errors
/// [`StoreError`].
pub async fn of_period(c: &impl ConnectionTrait, period: &str, revision: Option<u32>) -> Result<Option<ReleaseRecord>, StoreError> {
    let mut query = release::Entity::find().filter(release::Column::Period.eq(period)).order_by_desc(release::Column::Revision);
    if let Some(revision) = revision {
        query = query.filter(release::Column::Revision.eq(i32::try_from(revision).unwrap_or(-1)));
    }
    query.one(c).await?.map(read).transpose()
}

fn read(row: release::Model) -> Result<ReleaseRecord, StoreError> {
    let key = format!("{} {}", row.period, row.revision);
    let r = Reading { table: "releases", id: Key(&key) };
    Ok(ReleaseRecord {
        revision: r.number("revision", row.revision)?,
        by: row.released_by.map(|id| PersonId(id.as_u128())),
        figures: FiguresRecord {
            at: row.released_at,
            programme: row.programme,
            protocol_id: row.protocol_id,
            protocol_version: row.protocol_version,
            definitions_version: row.definitions_version,
            threshold: r.number("threshold", row.threshold)?,
            body: row.body,
            period: row.period,
        },
    })
}

/// A key that can be copied into a message.
#[derive(Debug, Clone, Copy)]
struct Key<'a>(&'a str);

impl std::fmt::Display for Key<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.0)
    }
}

/// Numbers and instants of the revisions of a period, latest first.
///
/// # Errors
/// [`StoreError`].
pub async fn revisions(c: &impl ConnectionTrait, period: &str) -> Result<Vec<(u32, DateTime<Utc>)>, StoreError> {
    let rows: Vec<(i32, DateTime<Utc>)> = release::Entity::find()
        .select_only()
        .columns([release::Column::Revision, release::Column::ReleasedAt])
        .filter(release::Column::Period.eq(period))
        .order_by_desc(release::Column::Revision)
        .into_tuple()
        .all(c)
        .await?;
    Ok(rows.into_iter().map(|(revision, at)| (u32::try_from(revision).unwrap_or(0), at)).collect())
}

/// The periods that have a release, in the order of their codes.
///
/// # Errors
/// [`StoreError`].
pub async fn released_periods(c: &impl ConnectionTrait) -> Result<Vec<String>, StoreError> {
    let query = release::Entity::find().select_only().column(release::Column::Period).distinct().order_by_asc(release::Column::Period);
    Ok(query.into_tuple().all(c).await?)
}

/// The figures of a period as last counted, and the mark of the data they were counted from.
///
/// # Errors
/// [`StoreError`].
pub async fn counted(c: &impl ConnectionTrait, period: &str) -> Result<Option<(String, FiguresRecord)>, StoreError> {
    let Some(row) = counted_figure::Entity::find_by_id(period.to_owned()).one(c).await? else { return Ok(None) };
    let r = Reading { table: "counted_figures", id: Key(period) };
    let figures = FiguresRecord {
        threshold: r.number("threshold", row.threshold)?,
        period: row.period,
        at: row.counted_at,
        programme: row.programme,
        protocol_id: row.protocol_id,
        protocol_version: row.protocol_version,
        definitions_version: row.definitions_version,
        body: row.body,
    };
    Ok(Some((row.mark, figures)))
}

/// Keeps the figures of a period as last counted, in place of those before.
///
/// # Errors
/// [`StoreError`].
pub async fn keep_counted(c: &impl ConnectionTrait, mark: &str, figures: &FiguresRecord) -> Result<(), StoreError> {
    use counted_figure::Column as F;
    let row = counted_figure::Model {
        period: figures.period.clone(),
        mark: mark.to_owned(),
        counted_at: whole_second(figures.at),
        programme: figures.programme.clone(),
        protocol_id: figures.protocol_id.clone(),
        protocol_version: figures.protocol_version.clone(),
        definitions_version: figures.definitions_version.clone(),
        threshold: i32::try_from(figures.threshold).unwrap_or(i32::MAX),
        body: figures.body.clone(),
    };
    let instead = OnConflict::column(F::Period)
        .update_columns([
            F::Mark,
            F::CountedAt,
            F::Programme,
            F::ProtocolId,
            F::ProtocolVersion,
            F::DefinitionsVersion,
            F::Threshold,
            F::Body,
        ])
        .to_owned();
    counted_figure::Entity::insert(row.into_active_model().reset_all()).on_conflict(instead).exec_without_returning(c).await?;
    Ok(())
}

/// Says whether anything was recorded since: another text after every change of what reports are counted from.
///
/// # Errors
/// [`StoreError`].
pub async fn mark(c: &impl ConnectionTrait) -> Result<String, StoreError> {
    // Every change by a person is in the audit; what only concerns who signs in, or reads, changes no figure.
    let noted: Option<i64> = audit_entry::Entity::find()
        .select_only()
        .column(audit_entry::Column::Seq)
        .filter(audit_entry::Column::ObjectKind.is_not_in(["report", "person"]))
        .order_by_desc(audit_entry::Column::Seq)
        .limit(1)
        .into_tuple()
        .one(c)
        .await?;
    let entered: Option<Option<i64>> =
        visit::Entity::find().select_only().column_as(visit::Column::EntrySeq.max(), "last").into_tuple().one(c).await?;
    // What passing days change: children who grow out, follow-ups that end; and a protocol adopted at a start.
    let left = status_change::Entity::find().count(c).await?;
    let events = follow_up_event::Entity::find().count(c).await?;
    let children = child::Entity::find().count(c).await?;
    let protocols = protocol::Entity::find().count(c).await?;
    let number = |n: Option<i64>| n.unwrap_or(0);
    Ok(format!("{}/{}/{left}/{events}/{children}/{protocols}", number(noted), number(entered.flatten())))
}

/// The day the first child was registered.
///
/// # Errors
/// [`StoreError`].
pub async fn first_registration(c: &impl ConnectionTrait) -> Result<Option<NaiveDate>, StoreError> {
    let first: Option<Option<NaiveDate>> =
        child::Entity::find().select_only().column_as(child::Column::RegisteredOn.min(), "first").into_tuple().one(c).await?;
    Ok(first.flatten())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::testing::TestDb;
    use crate::store::testing::a_visit;
    use crate::store::testing::day;
    use crate::store::testing::noon;
    use crate::store::testing::two_families;
    use crate::store::visits;

    fn figures(period: &str, body: &str) -> FiguresRecord {
        FiguresRecord {
            period: period.to_owned(),
            at: noon("2026-11-10"),
            programme: "kesara".to_owned(),
            protocol_id: "default".to_owned(),
            protocol_version: "1".to_owned(),
            definitions_version: "1".to_owned(),
            threshold: 5,
            body: body.to_owned(),
        }
    }

    #[tokio::test]
    async fn revisions_are_kept_for_good_and_each_once() {
        let test = TestDb::new().await;
        let c = test.db.direct();
        for (revision, body) in [(0, "first"), (1, "second")] {
            insert(c, &ReleaseRecord { revision, by: None, figures: figures("2026-10", body) }).await.expect("kept");
        }
        let of = async |revision| of_period(c, "2026-10", revision).await.expect("readable").map(|r| (r.revision, r.figures.body));
        assert_eq!(of(None).await, Some((1, "second".to_owned())));
        assert_eq!(of(Some(0)).await, Some((0, "first".to_owned())));
        assert_eq!(of(Some(2)).await, None);
        let numbers: Vec<u32> = revisions(c, "2026-10").await.expect("readable").into_iter().map(|(n, _)| n).collect();
        assert_eq!((numbers, released_periods(c).await.expect("readable")), (vec![1, 0], vec!["2026-10".to_owned()]));
        let again = insert(c, &ReleaseRecord { revision: 1, by: None, figures: figures("2026-10", "x") }).await;
        assert!(matches!(again, Err(StoreError::Conflict { .. })), "{again:?}");
        let changed = test.db.connection().execute_unprepared("UPDATE releases SET body = 'x'").await.expect_err("append-only");
        assert!(changed.to_string().contains("append-only"), "{changed}");
    }

    #[tokio::test]
    async fn what_was_counted_is_replaced() {
        let test = TestDb::new().await;
        let c = test.db.direct();
        assert_eq!(counted(c, "2026-10").await.expect("readable"), None);
        keep_counted(c, "1", &figures("2026-10", "first")).await.expect("kept");
        keep_counted(c, "2", &figures("2026-10", "second")).await.expect("kept");
        assert_eq!(counted(c, "2026-10").await.expect("readable"), Some(("2".to_owned(), figures("2026-10", "second"))));
    }

    #[tokio::test]
    async fn the_mark_moves_with_what_is_recorded() {
        let test = TestDb::new().await;
        assert_eq!(first_registration(test.db.direct()).await.expect("readable"), None);
        let empty = mark(test.db.direct()).await.expect("readable");
        let [child, _] = two_families(&test.db).await.expect("two children");
        let filled = mark(test.db.direct()).await.expect("readable");
        visits::insert(test.db.direct(), &a_visit(1, &child, day("2026-10-10"))).await.expect("a visit");
        let visited = mark(test.db.direct()).await.expect("readable");
        assert!(empty != filled && filled != visited, "{empty} {filled} {visited}");
        assert_eq!(mark(test.db.direct()).await.expect("readable"), visited);
        assert_eq!(first_registration(test.db.direct()).await.expect("readable"), Some(child.facts.registered_on));
    }
}

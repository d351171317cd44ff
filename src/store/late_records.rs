//! How many children the records of a time that arrived or changed late are about. It reads no answer and no figure.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use sea_orm::ColumnTrait;
use sea_orm::Condition;
use sea_orm::ConnectionTrait;
use sea_orm::EntityTrait;
use sea_orm::QueryFilter;
use sea_orm::QuerySelect;
use sea_orm::sea_query::Query;

use crate::store::codes::whole_second;
use crate::store::entity::visit;
use crate::store::entity::visit_version;
use crate::store::error::StoreError;

/// How many children have visits within these days that were entered, corrected or taken back since an instant, counted up to `most`.
/// What was changed of a child itself does not count: it is rather one too few.
///
/// # Errors
/// [`StoreError`].
pub async fn children(
    c: &impl ConnectionTrait,
    (first, last): (NaiveDate, NaiveDate),
    since: DateTime<Utc>,
    most: u64,
) -> Result<usize, StoreError> {
    let since = whole_second(since);
    let corrected = Query::select()
        .column(visit_version::Column::VisitId)
        .from(visit_version::Entity)
        .and_where(visit_version::Column::RecordedAt.gt(since))
        .to_owned();
    let touched = Condition::any()
        .add(visit::Column::RecordedAt.gt(since))
        .add(visit::Column::VoidedAt.gt(since))
        .add(visit::Column::Id.in_subquery(corrected));
    let children: Vec<sea_orm::prelude::Uuid> = visit::Entity::find()
        .select_only()
        .column(visit::Column::ChildId)
        .distinct()
        .filter(visit::Column::VisitedOn.between(first, last))
        .filter(touched)
        .limit(most)
        .into_tuple()
        .all(c)
        .await?;
    Ok(children.len())
}

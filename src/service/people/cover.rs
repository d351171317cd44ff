//! A colleague stands in for a worker between two days: their children are on both lists then.

use chrono::NaiveDate;
use domain::draft::office::CoverForm;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::key;
use crate::service::people::path;
use crate::store::people;
use crate::store::people::CoverRecord;

/// Lets a colleague stand in; answers the worker's page.
///
/// # Errors
/// [`Refusal::Invalid`] when the colleague is no active worker or the worker themselves; [`Refusal::NotFound`],
/// [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn add(ctx: &Context, sent: Sent, worker: &str, form: &CoverForm) -> Result<String, Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let worker = people::by_sign_in_name(tx, worker).await?.filter(|p| p.role == Role::Worker).ok_or(Refusal::NotFound)?;
            let colleague = people::by_sign_in_name(tx, &form.covered_by)
                .await?
                .filter(|p| p.active && p.role == Role::Worker && p.id != worker.id)
                .ok_or_else(|| Refusal::Invalid(Faults::one("covered_by", Fault::UnknownChoice)))?;
            let cover = CoverRecord {
                id: uuid::Uuid::now_v7().as_u128(),
                worker: worker.id,
                covered_by: colleague.id,
                from_on: form.from_on,
                to_on: form.to_on,
            };
            people::insert_cover(tx, &cover).await?;
            audit::note(tx, ctx, "cover.add", "person", &key(&worker), &["covered_by", "from_on", "to_on"]).await?;
            once::remember(tx, ctx, sent, &path(&worker)).await?;
            Ok(path(&worker))
        })
        .await
}

/// Ends a cover, named by who stands in and its first day; answers the worker's page. One that is not there any more has ended.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn end(ctx: &Context, sent: Sent, worker: &str, covered_by: &str, from_on: NaiveDate) -> Result<String, Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let worker = people::by_sign_in_name(tx, worker).await?.ok_or(Refusal::NotFound)?;
            let colleague = people::by_sign_in_name(tx, covered_by).await?.ok_or(Refusal::NotFound)?;
            let covers = people::covers_from(tx, ctx.today).await?;
            for cover in covers.iter().filter(|c| (c.worker, c.covered_by, c.from_on) == (worker.id, colleague.id, from_on)) {
                people::delete_cover(tx, cover.id).await?;
            }
            audit::note(tx, ctx, "cover.end", "person", &key(&worker), &["covered_by", "from_on"]).await?;
            once::remember(tx, ctx, sent, &path(&worker)).await?;
            Ok(path(&worker))
        })
        .await
}

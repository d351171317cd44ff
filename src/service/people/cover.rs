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
use crate::service::caseload;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::key;
use crate::service::people::path;
use crate::service::people::receiver::receiver;
use crate::store::Tx;
use crate::store::people;
use crate::store::people::CoverRecord;
use crate::store::people::PersonRecord;

/// The worker, if the actor decides who stands in for them: an administrator for everybody, a supervisor for the own team. And the page
/// on which they see it.
async fn whose(tx: &Tx, ctx: &Context, worker: &str) -> Result<(PersonRecord, String), Refusal> {
    if ctx.needs(Action::Supervise).is_ok() {
        let worker = caseload::of_team(tx, ctx, worker).await?;
        let path = format!("/team/{}", worker.sign_in_name);
        return Ok((worker, path));
    }
    ctx.needs(Action::Administer)?;
    let worker = people::by_sign_in_name(tx, worker).await?.filter(|p| p.role == Role::Worker).ok_or(Refusal::NotFound)?;
    let path = path(&worker);
    Ok((worker, path))
}

/// What speaks against it: a stand-in who is not there on all of these days, or somebody who stands in already. A worker's children
/// would be with nobody then, or the two would not know which of them goes.
async fn in_the_way(tx: &Tx, worker: &PersonRecord, colleague: &PersonRecord, form: &CoverForm) -> Result<Faults, Refusal> {
    let mut faults = Faults::new();
    if let Some(last) = colleague.ended_on.filter(|last| *last < form.to_on) {
        faults.add("covered_by", Fault::LeavesBefore { name: colleague.full_name.clone(), last });
    }
    let overlapping: Vec<_> = people::covers_from(tx, form.from_on).await?.into_iter().filter(|c| c.from_on <= form.to_on).collect();
    if let Some(away) = overlapping.iter().find(|c| c.worker == colleague.id) {
        faults.add("covered_by", Fault::IsAway { name: colleague.full_name.clone(), days: (away.from_on, away.to_on) });
    }
    if let Some(other) = overlapping.iter().find(|c| c.worker == worker.id) {
        let name = people::by_id(tx, other.covered_by).await?.map_or_else(String::new, |p| p.full_name);
        faults.add("from", Fault::StoodIn { name, days: (other.from_on, other.to_on) });
    }
    Ok(faults)
}

/// Lets a colleague stand in; answers the worker's page.
///
/// # Errors
/// [`Refusal::Invalid`] when the colleague is no active worker, the worker themselves or not there on all of these days, or
/// when somebody stands in on some of them already; [`Refusal::NotFound`],
/// [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn add(ctx: &Context, sent: Sent, worker: &str, form: &CoverForm) -> Result<String, Refusal> {
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let (worker, path) = whose(tx, ctx, worker).await?;
            let colleague = receiver(tx, &form.covered_by, ctx.today).await?;
            let colleague = colleague.and_then(|p| if p.id == worker.id { Err(Fault::UnknownChoice) } else { Ok(p) });
            let colleague = colleague.map_err(|fault| Refusal::Invalid(Faults::one("covered_by", fault)))?;
            let faults = in_the_way(tx, &worker, &colleague, form).await?;
            if !faults.is_empty() {
                return Err(Refusal::Invalid(faults));
            }
            let cover = CoverRecord {
                id: uuid::Uuid::now_v7().as_u128(),
                worker: worker.id,
                covered_by: colleague.id,
                from_on: form.from_on,
                to_on: form.to_on,
            };
            people::insert_cover(tx, &cover).await?;
            audit::note(tx, ctx, "cover.add", "person", &key(&worker), &["covered_by", "from_on", "to_on"]).await?;
            once::remember(tx, ctx, sent, &path).await?;
            Ok(path)
        })
        .await
}

/// Ends a cover, named by who stands in and its first day; answers the worker's page. One that is not there any more has ended.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn end(ctx: &Context, sent: Sent, worker: &str, covered_by: &str, from_on: NaiveDate) -> Result<String, Refusal> {
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let (worker, path) = whose(tx, ctx, worker).await?;
            let colleague = people::by_sign_in_name(tx, covered_by).await?.ok_or(Refusal::NotFound)?;
            let covers = people::covers_from(tx, ctx.today).await?;
            for cover in covers.iter().filter(|c| (c.worker, c.covered_by, c.from_on) == (worker.id, colleague.id, from_on)) {
                people::delete_cover(tx, cover.id).await?;
            }
            audit::note(tx, ctx, "cover.end", "person", &key(&worker), &["covered_by", "from_on"]).await?;
            once::remember(tx, ctx, sent, &path).await?;
            Ok(path)
        })
        .await
}

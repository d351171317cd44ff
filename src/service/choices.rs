//! What a form offers to choose from: villages, and workers for a supervisor.

use domain::role::Action;
use domain::role::Role;

use crate::service::Context;
use crate::service::Refusal;
use crate::store::areas;
use crate::store::people;

/// Code and name of each village where children may be registered, by name.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn villages(ctx: &Context) -> Result<Vec<(String, String)>, Refusal> {
    ctx.needs(Action::Register)?;
    let mut villages: Vec<(String, String)> =
        areas::list(ctx.db.direct()).await?.into_iter().filter(|a| a.active).map(|a| (a.code, a.name)).collect();
    villages.sort_by(|a, b| a.1.cmp(&b.1));
    Ok(villages)
}

/// Sign-in name and name of each worker whose child it may become; none for a worker, whose own it becomes.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn workers(ctx: &Context) -> Result<Vec<(String, String)>, Refusal> {
    ctx.needs(Action::Register)?;
    if ctx.actor.role == Role::Worker {
        return Ok(Vec::new());
    }
    let mut workers: Vec<(String, String)> = people::active_of_role(ctx.db.direct(), Role::Worker)
        .await?
        .into_iter()
        .filter(|p| p.works_on(ctx.today))
        .map(|p| (p.sign_in_name, p.full_name))
        .collect();
    workers.sort_by(|a, b| a.1.cmp(&b.1));
    Ok(workers)
}

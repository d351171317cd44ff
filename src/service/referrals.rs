//! Referrals followed to their end: who was sent and has no answer yet, and what became of the others.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::ids::PersonId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::supervise::cut;
use crate::store::Scope;
use crate::store::latest_first::LatestKey;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::outcomes;
use crate::store::outcomes::OutcomeLine;
use crate::store::people;

/// Days looked back for answers (our own choice: longer than a month's meetings).
const DAYS_BACK: i32 = 60;
/// Lines of each list on a page.
const A_PAGE: usize = 50;

/// What is known of referrals.
#[derive(Debug, Clone)]
pub struct Referrals {
    /// A page of those without an answer, most urgent first.
    pub waiting: Vec<RoundRow>,
    /// Where its next page begins.
    pub more_waiting: Option<String>,
    /// A page of what was told since `since`, latest first.
    pub told: Vec<OutcomeLine>,
    /// Where its next page begins.
    pub more_told: Option<LatestKey>,
    /// The first day looked at.
    pub since: NaiveDate,
}

/// Whom the clinic tells what it found: name and phone of the child's worker, or of who asks where that worker is not there any more.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn answer_to(ctx: &Context, worker: PersonId) -> Result<(String, Option<String>), Refusal> {
    ctx.needs(Action::SeeChildren)?;
    let found = people::by_ids(ctx.db.direct(), &[worker, ctx.actor.person]).await?;
    let person = found.get(&worker).filter(|p| p.works_on(ctx.today)).or_else(|| found.get(&ctx.actor.person));
    Ok(person.map_or_else(|| (ctx.actor.name.clone(), None), |p| (p.full_name.clone(), p.phone.clone())))
}

/// Opens a page of each, from after these keys.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, waiting_after: Option<&str>, told_after: Option<LatestKey>) -> Result<Referrals, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let since = add_days(ctx.today, -DAYS_BACK);
    ctx.db
        .read(async |tx| {
            let limit = u64::try_from(A_PAGE + 1).unwrap_or(u64::MAX);
            let mut waiting = lists::referred_in_scope(tx, scope, waiting_after, limit).await?;
            let more_waiting = cut(&mut waiting, A_PAGE).then(|| waiting.last().map(|row| row.work_key.clone())).flatten();
            let mut told = outcomes::told_since(tx, scope, since, told_after, limit).await?;
            let more_told = cut(&mut told, A_PAGE).then(|| told.last().map(|line| line.key)).flatten();
            Ok(Referrals { waiting, more_waiting, told, more_told, since })
        })
        .await
}

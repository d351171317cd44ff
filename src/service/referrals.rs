//! Referrals followed to their end: who was sent and has no answer yet, and what became of the others.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::store::Scope;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::outcomes;
use crate::store::outcomes::OutcomeLine;

/// Days looked back for answers (our own choice: longer than a month's meetings).
const DAYS_BACK: i32 = 60;
/// Lines shown of each list.
const MOST: u64 = 200;

/// What is known of referrals.
#[derive(Debug, Clone)]
pub struct Referrals {
    /// Without an answer, most urgent first.
    pub waiting: Vec<RoundRow>,
    /// What was told since `since`, latest first.
    pub told: Vec<OutcomeLine>,
    /// The first day looked at.
    pub since: NaiveDate,
}

/// Opens them.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context) -> Result<Referrals, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let since = add_days(ctx.today, -DAYS_BACK);
    ctx.db
        .read(async |tx| {
            let waiting = lists::referred_in_scope(tx, scope, MOST).await?;
            let told = outcomes::told_since(tx, scope, since, MOST).await?;
            Ok(Referrals { waiting, told, since })
        })
        .await
}

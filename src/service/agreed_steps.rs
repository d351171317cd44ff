//! Agreed steps for a supervisor: what families found difficult and why, and how the loop of asking again closes, by worker.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::store::Scope;
use crate::store::people;
use crate::store::talks;
use crate::store::talks::Between;
use crate::store::talks::DifficultStep;
use crate::store::talks::StepTally;

/// Days looked back (our own choice: about two visits of most children).
const DAYS_BACK: i32 = 60;
/// Difficult steps shown.
pub const MOST: usize = 20;

/// What a supervisor sees.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AgreedSteps {
    /// The first day that counts.
    pub since: NaiveDate,
    /// What was difficult, the latest first.
    pub difficult: Vec<DifficultStep>,
    /// Whether there is more.
    pub more: bool,
    /// Name of the worker and the numbers, by name.
    pub workers: Vec<(String, StepTally)>,
}

/// Agreed steps of the children in a supervisor's scope.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context) -> Result<AgreedSteps, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let days = Between { from: add_days(ctx.today, -DAYS_BACK), to: ctx.today };
    ctx.db
        .read(async |tx| {
            let limit = u64::try_from(MOST + 1).unwrap_or(u64::MAX);
            let mut difficult = talks::difficult_in_scope(tx, scope, days, limit).await?;
            let more = difficult.len() > MOST;
            difficult.truncate(MOST);
            let tallies = talks::tallies_in_scope(tx, scope, days).await?;
            let ids: Vec<_> = tallies.keys().copied().collect();
            let names = people::names(tx, &ids).await?;
            let mut workers: Vec<(String, StepTally)> =
                tallies.into_iter().map(|(id, tally)| (names.get(&id).cloned().unwrap_or_default(), tally)).collect();
            workers.sort_by(|a, b| a.0.cmp(&b.0));
            Ok(AgreedSteps { since: days.from, difficult, more, workers })
        })
        .await
}

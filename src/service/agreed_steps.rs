//! Agreed steps for a supervisor: what families found difficult and why, and how the loop of asking again closes, by worker.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::supervise::cut;
use crate::store::Scope;
use crate::store::latest_first::LatestKey;
use crate::store::people;
use crate::store::talks;
use crate::store::talks::Between;
use crate::store::talks::DifficultStep;
use crate::store::talks::StepTally;

/// Days looked back (our own choice: about two visits of most children).
const DAYS_BACK: i32 = 60;
/// Difficult steps on a page.
const A_PAGE: usize = 50;

/// What a supervisor sees.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AgreedSteps {
    /// The first day that counts.
    pub since: NaiveDate,
    /// What was difficult, the latest first.
    pub difficult: Vec<DifficultStep>,
    /// Where the next page begins.
    pub next: Option<LatestKey>,
    /// Name of the worker and the numbers, by name.
    pub workers: Vec<(String, StepTally)>,
}

/// Agreed steps of the children in a supervisor's scope; the difficult ones from after a key.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, after: Option<LatestKey>) -> Result<AgreedSteps, Refusal> {
    ctx.needs(Action::Supervise)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let days = Between { from: add_days(ctx.today, -DAYS_BACK), to: ctx.today };
    ctx.db
        .read(async |tx| {
            let limit = u64::try_from(A_PAGE + 1).unwrap_or(u64::MAX);
            let mut difficult = talks::difficult_in_scope(tx, scope, days, after, limit).await?;
            let next = cut(&mut difficult, A_PAGE).then(|| difficult.last().map(|step| step.key)).flatten();
            let tallies = talks::tallies_in_scope(tx, scope, days).await?;
            let ids: Vec<_> = tallies.keys().copied().collect();
            let names = people::names(tx, &ids).await?;
            let mut workers: Vec<(String, StepTally)> =
                tallies.into_iter().map(|(id, tally)| (names.get(&id).cloned().unwrap_or_default(), tally)).collect();
            workers.sort_by(|a, b| a.0.cmp(&b.0));
            Ok(AgreedSteps { since: days.from, difficult, next, workers })
        })
        .await
}

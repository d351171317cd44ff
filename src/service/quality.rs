//! How well measuring goes in a supervisor's team, by worker: for practising together, never for a ranking.

use chrono::NaiveDate;
use domain::calendar::Month;
use domain::calendar::add_days;
use domain::quality::Quality;
use domain::quality::quality;
use domain::role::Action;

use crate::clock::day_in;
use crate::service::Context;
use crate::service::Refusal;
use crate::service::settings::Settings;
use crate::store::Scope;
use crate::store::measured;
use crate::store::people;

/// Without a month: so many days back (our own choice: enough visits to say something of most workers).
const DAYS_BACK: i32 = 90;

/// What is looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct TeamQuality {
    /// First and last day.
    pub days: (NaiveDate, NaiveDate),
    /// Everybody together.
    pub all: Quality,
    /// Name and what is said, by name.
    pub workers: Vec<(String, Quality)>,
}

/// Opens it for a month, or for the last 90 days.
///
/// # Errors
/// [`Refusal::Forbidden`]; [`Refusal::NotFound`] for a month that has not begun; [`Refusal::Store`].
pub async fn open(ctx: &Context, settings: &Settings, month: Option<Month>) -> Result<TeamQuality, Refusal> {
    ctx.needs(Action::Supervise)?;
    let days = match month {
        Some(month) if month.first() > ctx.today => return Err(Refusal::NotFound),
        Some(month) => (month.first(), month.last().min(ctx.today)),
        None => (add_days(ctx.today, -DAYS_BACK), ctx.today),
    };
    let scope = Scope::Supervisor { person: ctx.actor.person };
    ctx.db
        .read(async |tx| {
            let found = measured::by_worker(tx, scope, days, &|at| day_in(settings.time_zone, at)).await?;
            let ids: Vec<_> = found.keys().copied().collect();
            let names = people::names(tx, &ids).await?;
            let all = quality(&found.values().flatten().cloned().collect::<Vec<_>>());
            let mut workers: Vec<(String, Quality)> =
                found.iter().map(|(id, visits)| (names.get(id).cloned().unwrap_or_default(), quality(visits))).collect();
            workers.sort_by(|a, b| a.0.cmp(&b.0));
            Ok(TeamQuality { days, all, workers })
        })
        .await
}

//! The pictures of a supervisor's team: the measures of the reports by worker, for the children in scope. Nothing is withheld
//! here, so nothing may leave the programme; what is downloaded is noted.

use domain::ids::PersonId;
use domain::report::by_worker::by_worker;
use domain::report::period::Period;
use domain::report::picture::Measures;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::report::gather;
use crate::service::report::periods;
use crate::store::Scope;
use crate::store::people;

/// A worker as shown.
#[derive(Debug, Clone, PartialEq)]
pub struct OfWorker {
    /// In addresses and files.
    pub sign_in_name: String,
    /// On the page.
    pub full_name: String,
    /// The figures.
    pub measures: Measures,
}

/// What the pictures show.
#[derive(Debug, Clone, PartialEq)]
pub struct TeamPictures {
    /// The month or quarter.
    pub period: Period,
    /// Everybody together.
    pub all: Measures,
    /// Each worker, by name: never by a result.
    pub workers: Vec<OfWorker>,
}

/// The times that can be chosen: months and quarters of two years that have ended, latest first. Years are left out: a team
/// changes, and so long a time would only tell of the past.
#[must_use]
pub fn times(ctx: &Context) -> Vec<Period> {
    periods(ctx.today).into_iter().filter(|period| !matches!(period, Period::Year(_))).collect()
}

/// Opens a month or quarter; without one, the last month that has ended.
///
/// # Errors
/// [`Refusal::Forbidden`]; [`Refusal::NotFound`] for a time that cannot be chosen; [`Refusal::Store`].
pub async fn open(ctx: &Context, asked: Option<Period>) -> Result<TeamPictures, Refusal> {
    ctx.needs(Action::Supervise)?;
    let times = times(ctx);
    let period = match asked {
        Some(period) => times.into_iter().find(|offered| *offered == period),
        None => times.into_iter().next(),
    };
    let period = period.ok_or(Refusal::NotFound)?;
    let scope = Scope::Supervisor { person: ctx.actor.person };
    let rows = gather::gather(&ctx.db, &ctx.protocols, scope, period).await?;
    let (all, of) = by_worker(period, &rows);
    let ids: Vec<PersonId> = of.keys().copied().collect();
    let people = people::by_ids(ctx.db.direct(), &ids).await?;
    let worker = |(id, measures): (PersonId, Measures)| {
        let person = people.get(&id);
        let called = |of: fn(&people::PersonRecord) -> &String| person.map(|p| of(p).clone()).unwrap_or_default();
        OfWorker { sign_in_name: called(|p| &p.sign_in_name), full_name: called(|p| &p.full_name), measures }
    };
    let mut workers: Vec<OfWorker> = of.into_iter().map(worker).collect();
    workers.sort_by(|a, b| (&a.full_name, &a.sign_in_name).cmp(&(&b.full_name, &b.sign_in_name)));
    Ok(TeamPictures { period, all, workers })
}

/// The same for a file of one worker (by sign-in name) or of everybody together: noted in the audit before it is given out.
///
/// # Errors
/// As [`open`]; [`Refusal::NotFound`] for somebody who is not among them.
pub async fn for_file(ctx: &Context, asked: Option<Period>, worker: Option<&str>) -> Result<(Period, Measures), Refusal> {
    let found = open(ctx, asked).await?;
    let measures = match worker {
        None => found.all,
        Some(name) => found.workers.into_iter().find(|of| of.sign_in_name == name).ok_or(Refusal::NotFound)?.measures,
    };
    let object = format!("{}/{}", found.period, worker.unwrap_or(domain::report::csv_table::ALL));
    // Of the kind "report", so that reading does not count as a change of what reports are counted from.
    ctx.db.write(async |tx| Ok::<_, Refusal>(audit::note(tx, ctx, "team_pictures.download", "report", &object, &[]).await?)).await?;
    Ok((found.period, measures))
}

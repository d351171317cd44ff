//! How well measuring goes in a supervisor's team, by worker and area: for practising together, never for a ranking.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use domain::calendar::Month;
use domain::calendar::add_days;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::quality::Measured;
use domain::quality::figures::Figures;
use domain::quality::figures::figures;
use domain::role::Action;

use crate::clock::day_in;
use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::settings::Settings;
use crate::store::Scope;
use crate::store::areas;
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
    pub all: Figures,
    /// By worker, in the order of names.
    pub workers: Vec<OfWorker>,
    /// Code of the area and its figures, by code.
    pub areas: Vec<(String, Figures)>,
}

/// A worker's figures.
#[derive(Debug, Clone, PartialEq)]
pub struct OfWorker {
    /// In files.
    pub sign_in_name: String,
    /// On pages.
    pub full_name: String,
    /// The figures.
    pub figures: Figures,
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
            let found = measured::between(tx, scope, days, &|at| day_in(settings.time_zone, at)).await?;
            let (mut of, mut at): (BTreeMap<PersonId, Vec<Measured>>, BTreeMap<AreaId, Vec<Measured>>) = Default::default();
            for visit in &found {
                of.entry(visit.worker).or_default().push(visit.measured.clone());
                at.entry(visit.area).or_default().push(visit.measured.clone());
            }
            let people = people::by_ids(tx, &of.keys().copied().collect::<Vec<_>>()).await?;
            let worker = |(id, visits): (PersonId, Vec<Measured>)| {
                let person = people.get(&id);
                let called = |name: fn(&people::PersonRecord) -> &String| person.map(|p| name(p).clone()).unwrap_or_default();
                OfWorker { sign_in_name: called(|p| &p.sign_in_name), full_name: called(|p| &p.full_name), figures: figures(&visits) }
            };
            let mut workers: Vec<OfWorker> = of.into_iter().map(worker).collect();
            workers.sort_by(|a, b| (&a.full_name, &a.sign_in_name).cmp(&(&b.full_name, &b.sign_in_name)));
            let codes: BTreeMap<AreaId, String> = areas::list(tx).await?.into_iter().map(|area| (area.id, area.code)).collect();
            let area = |(id, visits): (AreaId, Vec<Measured>)| (codes.get(&id).cloned().unwrap_or_default(), figures(&visits));
            let mut areas: Vec<(String, Figures)> = at.into_iter().map(area).collect();
            areas.sort_by(|a, b| a.0.cmp(&b.0));
            let all = figures(&found.into_iter().map(|visit| visit.measured).collect::<Vec<_>>());
            Ok(TeamQuality { days, all, workers, areas })
        })
        .await
}

/// The same for a file: noted in the audit before it is given out.
///
/// # Errors
/// As [`open`].
pub async fn for_file(ctx: &Context, settings: &Settings, month: Option<Month>, period: &str) -> Result<TeamQuality, Refusal> {
    let found = open(ctx, settings, month).await?;
    // Of the kind "report", so that reading does not count as a change of what reports are counted from.
    ctx.db.write(async |tx| Ok::<_, Refusal>(audit::note(tx, ctx, "quality.download", "report", period, &[]).await?)).await?;
    Ok(found)
}

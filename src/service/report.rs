//! The report of a month, quarter or year: what was released is read as it was kept; what has ended and may still change is
//! counted when something has been recorded since. It shows no child.

pub mod count;
pub mod download;
pub(super) mod gather;
pub mod pictures;
pub mod releasing;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::NaiveDateTime;
use chrono::Utc;
use chrono_tz::Tz;
use domain::calendar::Month;
use domain::calendar::add_days;
use domain::ids::PersonId;
use domain::protocol::Protocols;
use domain::report::checks::Fault;
use domain::report::compare;
use domain::report::compare::Change;
use domain::report::csv_table::Cell;
use domain::report::csv_table::Release;
use domain::report::csv_table::Table;
use domain::report::period::Period;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::settings::Settings;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::releases;

/// The day of the next month on which a period's figures are released; until then late visits may change them (our own choice).
/// On this day of every month, late records of the periods before are told in revisions.
const RELEASE_DAY: i32 = 10;
/// Months back for which reports can be chosen.
const MONTHS: usize = 24;

/// What a report is made from: the programme as it is, and who asks.
#[derive(Debug, Clone, Copy)]
pub struct Office<'a> {
    /// The database.
    pub db: &'a Db,
    /// The adopted protocols.
    pub protocols: &'a Protocols,
    /// The programme's settings.
    pub settings: &'a Settings,
    /// The programme's day.
    pub today: NaiveDate,
    /// The instant.
    pub now: DateTime<Utc>,
    /// Who asks; `None` = the program itself.
    pub by: Option<PersonId>,
}

impl<'a> Office<'a> {
    /// For somebody signed in, if they may read reports.
    ///
    /// # Errors
    /// [`Refusal::Forbidden`].
    pub fn of(ctx: &'a Context, settings: &'a Settings) -> Result<Self, Refusal> {
        ctx.needs(Action::ReadReports)?;
        Ok(Self { db: &ctx.db, protocols: &ctx.protocols, settings, today: ctx.today, now: ctx.now, by: Some(ctx.actor.person) })
    }
}

/// Why there is no report.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// The period has not ended.
    #[error("{0} has not ended")]
    NotEnded(Period),
    /// The period lies before the programme's first child.
    #[error("{period} lies before the programme")]
    BeforeStart {
        /// The period asked for.
        period: Period,
        /// The month of the first registration; `None` = nobody is registered yet.
        first: Option<Month>,
    },
    /// No such revision was released.
    #[error("{period} has no revision {revision}")]
    NoRevision {
        /// The period.
        period: Period,
        /// The number asked for.
        revision: u32,
    },
    /// The figures do not hold together, so nobody gets them.
    #[error("the figures of {period} do not hold together: {faults:?}")]
    Faults {
        /// The period.
        period: Period,
        /// Everything that is wrong.
        faults: Vec<Fault>,
    },
    /// Our own trouble.
    #[error("{0}")]
    Broken(String),
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
}

/// Whether the figures stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// They may change up to this day.
    Provisional {
        /// The last day.
        until: NaiveDate,
    },
    /// They were released.
    Released {
        /// 0 for the first release.
        revision: u32,
    },
}

/// An area as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportedArea {
    /// Its code, as in the files.
    pub code: String,
    /// Its name.
    pub name: String,
}

/// The report of a period.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// What is the same in every row.
    pub release: Release,
    /// Whether the figures stand.
    pub state: State,
    /// Counts below this are withheld.
    pub threshold: u64,
    /// The areas, by code.
    pub areas: Vec<ReportedArea>,
    /// The tables.
    pub tables: Vec<Table>,
    /// All revisions of the period, latest first, with their instants; none while provisional.
    pub revisions: Vec<(u32, DateTime<Utc>)>,
    /// What this revision shows otherwise than the one before.
    pub changes: Vec<Change>,
}

impl Report {
    /// Code and name of each area.
    #[must_use]
    pub fn named_areas(&self) -> Vec<(String, String)> {
        self.areas.iter().map(|area| (area.code.clone(), area.name.clone())).collect()
    }

    /// The revision; `None` while provisional.
    #[must_use]
    pub const fn revision(&self) -> Option<u32> {
        match self.state {
            State::Provisional { .. } => None,
            State::Released { revision } => Some(revision),
        }
    }

    /// A table by its name.
    #[must_use]
    pub fn table(&self, name: &str) -> Option<&Table> {
        self.tables.iter().find(|table| table.name == name)
    }
}

/// The last month that has ended.
#[must_use]
pub fn last_whole_month(today: NaiveDate) -> Month {
    Month::of(today).previous()
}

/// The periods that can be chosen, latest first: months of two years back from the last one that has ended, then the quarters
/// and the years that end in them.
#[must_use]
pub fn periods(today: NaiveDate) -> Vec<Period> {
    let months: Vec<Month> = std::iter::successors(Some(last_whole_month(today)), |month| Some(month.previous())).take(MONTHS).collect();
    let ending = |longer: fn(Month) -> Period| {
        let months = months.clone();
        months.into_iter().filter(move |month| longer(*month).last_month() == *month).map(longer)
    };
    months.iter().copied().map(Period::Month).chain(ending(Period::quarter_of)).chain(ending(Period::year_of)).collect()
}

/// The day on which a period's figures are released.
#[must_use]
pub fn stands_from(period: Period) -> NaiveDate {
    add_days(period.last_month().next().first(), RELEASE_DAY - 1)
}

/// The latest day on which late records were told, or are today.
fn latest_release_day(today: NaiveDate) -> NaiveDate {
    let of_month = |month: Month| add_days(month.first(), RELEASE_DAY - 1);
    let this = of_month(Month::of(today));
    if this <= today { this } else { of_month(Month::of(today).previous()) }
}

/// The next day on which late records will be told.
#[must_use]
pub fn next_release_day(today: NaiveDate) -> NaiveDate {
    add_days(Month::of(latest_release_day(today)).next().first(), RELEASE_DAY - 1)
}

/// The first instant of a day in the programme's time zone, UTC.
fn start_of(zone: Tz, day: NaiveDate) -> DateTime<Utc> {
    let midnight = NaiveDateTime::from(day);
    // Where the clocks jump over midnight, the first hour that exists.
    (0..3)
        .find_map(|hour| (midnight + chrono::Duration::hours(hour)).and_local_timezone(zone).earliest())
        .map_or_else(|| midnight.and_utc(), |local| local.with_timezone(&Utc))
}

/// The report of a period, or an earlier revision of it. What has come to its day and was not released yet is released now.
///
/// # Errors
/// [`Trouble`].
pub async fn open(office: Office<'_>, period: Period, revision: Option<u32>) -> Result<Report, Trouble> {
    can_be_reported(office, period).await?;
    if let Some(record) = releases::of_period(office.db.direct(), &period.to_string(), revision).await? {
        return released(office, period, record).await;
    }
    if let Some(revision) = revision {
        return Err(Trouble::NoRevision { period, revision });
    }
    let stands_from = stands_from(period);
    if office.today < stands_from {
        let counted = count::up_to_date(office, period).await?;
        let state = State::Provisional { until: add_days(stands_from, -1) };
        return Ok(Report {
            release: counted.release,
            state,
            threshold: counted.threshold.get(),
            areas: areas_of(office).await?,
            tables: counted.tables,
            revisions: Vec::new(),
            changes: Vec::new(),
        });
    }
    releasing::first(office, period).await?;
    match releases::of_period(office.db.direct(), &period.to_string(), None).await? {
        Some(record) => released(office, period, record).await,
        None => Err(Trouble::Broken(format!("{period} was released and is not there"))),
    }
}

/// The tables of the period before, as they were known when this report was released: the same each time it is asked. `None`
/// if that period lies before the programme.
///
/// # Errors
/// [`Trouble`].
pub async fn before(office: Office<'_>, report: &Report) -> Result<Option<Vec<Table>>, Trouble> {
    let period = report.release.period.previous();
    let latest = match open(office, period, None).await {
        Ok(latest) => latest,
        Err(Trouble::BeforeStart { .. }) => return Ok(None),
        Err(trouble) => return Err(trouble),
    };
    let then = report.release.generated_at.and_utc();
    let known = latest.revisions.iter().find(|(_, at)| *at <= then).or(latest.revisions.last()).map(|(revision, _)| *revision);
    match known {
        Some(revision) if Some(revision) != latest.revision() => Ok(Some(open(office, period, Some(revision)).await?.tables)),
        _ => Ok(Some(latest.tables)),
    }
}

/// Whether the period has ended and lies in the programme's time.
async fn can_be_reported(office: Office<'_>, period: Period) -> Result<(), Trouble> {
    if period.last() >= office.today {
        return Err(Trouble::NotEnded(period));
    }
    let first = releases::first_registration(office.db.direct()).await?.map(Month::of);
    if first.is_none_or(|first| period.last() < first.first()) {
        return Err(Trouble::BeforeStart { period, first });
    }
    Ok(())
}

async fn released(office: Office<'_>, period: Period, record: releases::ReleaseRecord) -> Result<Report, Trouble> {
    let c = office.db.direct();
    let kept = count::read(period, &record.figures)?;
    let before = match record.revision.checked_sub(1) {
        Some(before) => releases::of_period(c, &period.to_string(), Some(before)).await?,
        None => None,
    };
    let changes = match before {
        Some(before) => compare::changes(&count::read(period, &before.figures)?.tables, &kept.tables),
        None => Vec::new(),
    };
    Ok(Report {
        release: kept.release,
        state: State::Released { revision: record.revision },
        threshold: kept.threshold.get(),
        areas: areas_of(office).await?,
        tables: kept.tables,
        revisions: releases::revisions(c, &period.to_string()).await?,
        changes,
    })
}

/// Whether anything was counted in an area: a place without a figure does not stand in a report.
#[must_use]
pub fn stands_in(tables: &[Table], area: &str) -> bool {
    let told = |cell: &Cell| matches!(cell, Cell::Withheld(_)) || matches!(cell, Cell::Count(count) if *count > 0);
    let here = |table: &Table, row: &Vec<Cell>| table.cell(row, "area") == Some(&Cell::text(area)) && row.iter().any(told);
    tables.iter().any(|table| table.rows.iter().any(|row| here(table, row)))
}

async fn areas_of(office: Office<'_>) -> Result<Vec<ReportedArea>, StoreError> {
    let listed = areas::list(office.db.direct()).await?;
    let mut areas: Vec<ReportedArea> = listed.into_iter().map(|area| ReportedArea { code: area.code, name: area.name }).collect();
    areas.sort_by(|a, b| a.code.cmp(&b.code));
    Ok(areas)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    #[test]
    fn only_periods_that_have_ended_can_be_chosen() {
        assert_eq!(last_whole_month(d("2026-11-30")).to_string(), "2026-10");
        assert_eq!(last_whole_month(d("2026-12-01")).to_string(), "2026-11");
        let periods: Vec<String> = periods(d("2026-11-25")).iter().map(ToString::to_string).collect();
        assert_eq!((periods[0].as_str(), periods[23].as_str()), ("2026-10", "2024-11"));
        assert_eq!(
            &periods[24..],
            ["2026-Q3", "2026-Q2", "2026-Q1", "2025-Q4", "2025-Q3", "2025-Q2", "2025-Q1", "2024-Q4", "2025", "2024"]
        );
    }

    #[test]
    fn releases_come_on_the_tenth() {
        for (period, day) in [("2026-10", "2026-11-10"), ("2026-Q4", "2027-01-10"), ("2026", "2027-01-10")] {
            assert_eq!(stands_from(Period::parse(period).expect("a period")), d(day));
        }
        for (today, latest, next) in [
            ("2026-11-09", "2026-10-10", "2026-11-10"),
            ("2026-11-10", "2026-11-10", "2026-12-10"),
            ("2026-12-31", "2026-12-10", "2027-01-10"),
        ] {
            assert_eq!((latest_release_day(d(today)), next_release_day(d(today))), (d(latest), d(next)), "{today}");
        }
        assert_eq!(start_of(chrono_tz::Africa::Nairobi, d("2026-11-10")).to_string(), "2026-11-09 21:00:00 UTC");
    }
}

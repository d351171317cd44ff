//! Making releases: the first one of a period on its day, and a revision when late records have changed a figure. Figures that
//! do not hold together are never released.
//!
//! Late records are not told one by one: on the tenth of each month those of a whole month are told together, in a revision of
//! every period whose figures they change; and those of a few children wait for more, since whoever takes one release from the
//! next would read their answers.

use domain::calendar::Month;
use domain::report::compare;
use domain::report::inherit;
use domain::report::period::Period;

use crate::service::report::MONTHS;
use crate::service::report::Office;
use crate::service::report::Trouble;
use crate::service::report::can_be_reported;
use crate::service::report::count;
use crate::service::report::count::Counted;
use crate::service::report::last_whole_month;
use crate::service::report::latest_release_day;
use crate::service::report::stands_from;
use crate::service::report::start_of;
use crate::store::StoreError;
use crate::store::audit;
use crate::store::audit::AuditEntry;
use crate::store::late_records;
use crate::store::releases;
use crate::store::releases::ReleaseRecord;

/// Months back that are released by themselves; older ones when somebody opens them.
const KEPT_UP: usize = 3;

/// What was done when the periods were brought up to date.
#[derive(Debug, Default)]
pub struct Done {
    /// Released, with the number of the revision.
    pub released: Vec<(Period, u32)>,
    /// Not released, and why: faults of figures first of all.
    pub refused: Vec<Trouble>,
}

/// Releases every period whose day has come, and the revisions that are due. One period that cannot be released keeps none of
/// the others back.
///
/// # Errors
/// [`StoreError`].
pub async fn keep_up(office: Office<'_>) -> Result<Done, StoreError> {
    let mut done = Done::default();
    for period in due(office) {
        let outcome = match releases::of_period(office.db.direct(), &period.to_string(), None).await? {
            Some(_) => Ok(None),
            None => match can_be_reported(office, period).await {
                Ok(()) => first(office, period).await.map(Some),
                Err(Trouble::BeforeStart { .. }) => Ok(None),
                Err(other) => Err(other),
            },
        };
        done.note(period, outcome)?;
    }
    let since = start_of(office.settings.time_zone, latest_release_day(office.today));
    let oldest = periods_back(office, MONTHS).last().map(|month| month.first());
    let mut periods: Vec<Period> =
        releases::released_periods(office.db.direct()).await?.iter().filter_map(|code| Period::parse(code)).collect();
    periods.retain(|period| oldest.is_none_or(|oldest| period.last() >= oldest));
    // Months before the quarters and years that withhold what they withhold.
    periods.sort_unstable();
    for period in periods {
        let counted = releases::counted(office.db.direct(), &period.to_string()).await?;
        if counted.is_none_or(|(_, counted)| counted.at < since) {
            done.note(period, revise(office, period).await)?;
        }
    }
    Ok(done)
}

impl Done {
    fn note(&mut self, period: Period, outcome: Result<Option<u32>, Trouble>) -> Result<(), StoreError> {
        match outcome {
            Ok(Some(revision)) => self.released.push((period, revision)),
            Ok(None) => {}
            Err(Trouble::Store(error)) => return Err(error),
            Err(trouble) => self.refused.push(trouble),
        }
        Ok(())
    }
}

fn periods_back(office: Office<'_>, months: usize) -> Vec<Month> {
    std::iter::successors(Some(last_whole_month(office.today)), |month| Some(month.previous())).take(months).collect()
}

/// The periods whose day has come lately: months first, oldest first, then the quarters and years that ended with them.
fn due(office: Office<'_>) -> Vec<Period> {
    let months = periods_back(office, KEPT_UP);
    let ending = |longer: fn(Month) -> Period| {
        months.iter().rev().filter(move |month| longer(**month).last_month() == **month).map(move |month| longer(*month))
    };
    let all = ending(Period::Month).chain(ending(Period::quarter_of)).chain(ending(Period::year_of));
    all.filter(|period| stands_from(*period) <= office.today).collect()
}

/// Releases a period for the first time; revision 0.
///
/// # Errors
/// [`Trouble`]; nothing is released then.
pub async fn first(office: Office<'_>, period: Period) -> Result<u32, Trouble> {
    let mark = releases::mark(office.db.direct()).await?;
    let counted = count::count(office, period).await?;
    release(office, &mark, counted, 0).await?;
    Ok(0)
}

/// Counts a released period again and releases a revision if a figure shown is another one and the late records are of as many
/// children as a shown figure needs; answers its number.
///
/// # Errors
/// [`Trouble`]; what was released before stands then.
pub async fn revise(office: Office<'_>, period: Period) -> Result<Option<u32>, Trouble> {
    let c = office.db.direct();
    let Some(latest) = releases::of_period(c, &period.to_string(), None).await? else { return Ok(None) };
    let before = count::read(period, &latest.figures)?;
    let mark = releases::mark(c).await?;
    let mut counted = count::count(office, period).await?;
    counted.tables = inherit::after_revision(&counted.release, counted.tables, &before.tables);
    let few = counted.threshold.get();
    let late = late_records::children(c, (period.first(), period.last()), latest.figures.at, few).await?;
    let waits = u64::try_from(late).is_ok_and(|late| late < few);
    if waits || compare::changes(&before.tables, &counted.tables).is_empty() {
        releases::keep_counted(c, &mark, &counted.record(office)).await?;
        return Ok(None);
    }
    let revision = latest.revision + 1;
    release(office, &mark, counted, revision).await?;
    Ok(Some(revision))
}

/// Checks figures and keeps them for good, with what was done in the audit.
///
/// # Errors
/// [`Trouble::Faults`] when the figures do not hold together: nothing is kept then.
pub async fn release(office: Office<'_>, mark: &str, counted: Counted, revision: u32) -> Result<(), Trouble> {
    let counted = count::checked(office, counted).await?;
    let figures = counted.record(office);
    let entry = AuditEntry {
        at: office.now,
        actor: office.by,
        action: "report.release".to_owned(),
        object_kind: "report".to_owned(),
        object_id: format!("{}/{revision}", figures.period),
        fields: Vec::new(),
    };
    let kept = office
        .db
        .write(async |tx| {
            releases::keep_counted(tx, mark, &figures).await?;
            releases::insert(tx, &ReleaseRecord { revision, by: office.by, figures: figures.clone() }).await?;
            audit::append(tx, &entry).await
        })
        .await;
    match kept {
        // Another server on the same database was first.
        Err(StoreError::Conflict { .. }) => Ok(()),
        other => Ok(other?),
    }
}

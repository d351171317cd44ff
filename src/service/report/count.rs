//! Counting a period: gathered in one view of the database, counted off the web's threads, withheld, and checked before
//! anybody gets it. What was counted is kept until something is recorded.

use std::collections::BTreeSet;

use domain::report::checks;
use domain::report::csv_table::DEFINITIONS_VERSION;
use domain::report::csv_table::Release;
use domain::report::csv_table::Table;
use domain::report::inherit;
use domain::report::month;
use domain::report::period::Period;
use domain::report::suppress::Threshold;

use crate::files::release_text;
use crate::service::report::Office;
use crate::service::report::Trouble;
use crate::service::report::areas_of;
use crate::service::report::gather;
use crate::service::report::open;
use crate::store::Scope;
use crate::store::releases;
use crate::store::releases::FiguresRecord;

/// Figures with what they were counted by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Counted {
    /// What is the same in every row.
    pub release: Release,
    /// Counts below this are withheld.
    pub threshold: Threshold,
    /// The tables.
    pub tables: Vec<Table>,
}

impl Counted {
    /// As the database keeps it.
    pub(super) fn record(&self, office: Office<'_>) -> FiguresRecord {
        FiguresRecord {
            period: self.release.period.to_string(),
            at: office.now,
            programme: self.release.programme.clone(),
            protocol_id: self.release.protocol_id.clone(),
            protocol_version: self.release.protocol_version.clone(),
            definitions_version: DEFINITIONS_VERSION.to_owned(),
            threshold: u32::try_from(self.threshold.get()).unwrap_or(u32::MAX),
            body: release_text::write(&self.tables),
        }
    }
}

/// The figures of a period as they are now. A quarter or year is counted anew from the rows of all its months, and withholds
/// what they withhold.
///
/// # Errors
/// [`Trouble`], but for faults: see [`checked`].
pub async fn count(office: Office<'_>, period: Period) -> Result<Counted, Trouble> {
    let gathered = gather::gather(office.db, office.protocols, Scope::Everything, period).await?;
    let protocol = office.protocols.on(period.last());
    let release = Release {
        programme: office.settings.programme_name.clone(),
        period,
        protocol_id: protocol.id.clone(),
        protocol_version: protocol.version.clone(),
        generated_at: office.now.naive_utc(),
    };
    let threshold = Threshold::new(u64::from(office.settings.small_number_threshold)).unwrap_or(Threshold::LEAST);
    // Seconds of work for a large programme: pages are answered meanwhile.
    let counting = (release.clone(), gathered);
    let counted = tokio::task::spawn_blocking(move || month::tables(&counting.0, threshold, &counting.1));
    let tables = counted.await.map_err(|e| Trouble::Broken(format!("counting {period}: {e}")))?;
    let tables = match period {
        Period::Month(_) => tables,
        Period::Quarter(_) | Period::Year(_) => {
            let months = of_months(office, period).await?;
            let months: Vec<&[Table]> = months.iter().map(Vec::as_slice).collect();
            inherit::after_months(&release, tables, &months)
        }
    };
    Ok(Counted { release, threshold, tables })
}

/// The tables of the months of a longer period, those before the programme left out.
async fn of_months(office: Office<'_>, period: Period) -> Result<Vec<Vec<Table>>, Trouble> {
    let mut months = Vec::new();
    for month in period.months() {
        match Box::pin(open(office, Period::Month(month), None)).await {
            Ok(report) => months.push(report.tables),
            Err(Trouble::BeforeStart { .. }) => {}
            Err(trouble) => return Err(trouble),
        }
    }
    Ok(months)
}

/// Lets figures pass that hold together.
///
/// # Errors
/// [`Trouble::Faults`] with everything that is wrong, and [`Trouble::Store`].
pub async fn checked(office: Office<'_>, counted: Counted) -> Result<Counted, Trouble> {
    let codes: BTreeSet<String> = areas_of(office).await?.into_iter().map(|area| area.code).collect();
    let faults = checks::faults(&counted.tables, counted.threshold, &codes);
    if faults.is_empty() { Ok(counted) } else { Err(Trouble::Faults { period: counted.release.period, faults }) }
}

/// The figures of a period as last counted, if nothing has been recorded since; else counted anew and kept.
///
/// # Errors
/// [`Trouble`].
pub async fn up_to_date(office: Office<'_>, period: Period) -> Result<Counted, Trouble> {
    let c = office.db.direct();
    let mark = releases::mark(c).await?;
    if let Some((kept_mark, kept)) = releases::counted(c, &period.to_string()).await?
        && kept_mark == mark
        && kept.definitions_version == DEFINITIONS_VERSION
    {
        return checked(office, read(period, &kept)?).await;
    }
    let counted = checked(office, count(office, period).await?).await?;
    // Counted from at least what the mark stands for: what is recorded meanwhile only means counting once more.
    releases::keep_counted(c, &mark, &counted.record(office)).await?;
    Ok(counted)
}

/// Kept figures as tables.
///
/// # Errors
/// [`Trouble::Broken`] for a text that cannot be read.
pub fn read(period: Period, kept: &FiguresRecord) -> Result<Counted, Trouble> {
    let release = Release {
        programme: kept.programme.clone(),
        period,
        protocol_id: kept.protocol_id.clone(),
        protocol_version: kept.protocol_version.clone(),
        generated_at: kept.at.naive_utc(),
    };
    let tables = release_text::read(&kept.body, &release, &kept.definitions_version)
        .map_err(|what| Trouble::Broken(format!("the kept figures of {period} cannot be read: {what}")))?;
    let threshold = Threshold::new(u64::from(kept.threshold)).unwrap_or(Threshold::LEAST);
    Ok(Counted { release, threshold, tables })
}

//! The report of a whole month: reads what it is counted from in one view of the database, counts, withholds small numbers,
//! checks, and only then gives it out. Every download is written to the audit. It shows no child.

mod gather;

use std::collections::BTreeSet;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::NaiveDateTime;
use chrono::Utc;
use chrono_tz::Tz;
use domain::calendar::Month;
use domain::calendar::add_days;
use domain::protocol::Protocols;
use domain::report::checks;
use domain::report::csv_table::Release;
use domain::report::csv_table::Table;
use domain::report::month::tables;
use domain::report::suppress::Threshold;
use domain::role::Action;

use crate::files::report_csv;
use crate::service::Context;
use crate::service::Refusal;
use crate::service::settings::Settings;
use crate::store::Db;
use crate::store::audit;
use crate::store::audit::AuditEntry;

/// The day of the next month from which a month's figures stand; until then late visits may change them (our own choice).
const STANDS_FROM_DAY: i32 = 10;

/// An area as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportedArea {
    /// Its code, as in the files.
    pub code: String,
    /// Its name.
    pub name: String,
}

/// The report of a month.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MonthReport {
    /// What is the same in every row.
    pub release: Release,
    /// The figures may still change.
    pub provisional: bool,
    /// Counts below this are withheld.
    pub threshold: u64,
    /// The areas, by code.
    pub areas: Vec<ReportedArea>,
    /// The tables.
    pub tables: Vec<Table>,
}

impl MonthReport {
    /// A table by its name.
    #[must_use]
    pub fn table(&self, name: &str) -> Option<&Table> {
        self.tables.iter().find(|table| table.name == name)
    }

    /// Its files: names and contents, always the same bytes for the same figures.
    ///
    /// # Errors
    /// [`Refusal::Broken`] if a table cannot be written.
    pub fn files(&self) -> Result<Vec<(String, Vec<u8>)>, Refusal> {
        self.tables.iter().map(|table| Ok((file_name(table), bytes(table)?))).collect()
    }
}

fn file_name(table: &Table) -> String {
    format!("{}.csv", table.name)
}

fn bytes(table: &Table) -> Result<Vec<u8>, Refusal> {
    report_csv::write(table).map_err(|e| Refusal::Broken(format!("writing {}: {e}", table.name)))
}

/// The last month that has ended.
#[must_use]
pub fn last_whole_month(today: NaiveDate) -> Month {
    Month::of(today).previous()
}

/// The months that can be chosen, latest first: two years back from the last one that has ended.
#[must_use]
pub fn months(today: NaiveDate) -> Vec<Month> {
    std::iter::successors(Some(last_whole_month(today)), |month| Some(month.previous())).take(24).collect()
}

/// The day from which a month's figures stand.
#[must_use]
pub fn stands_from(month: Month) -> NaiveDate {
    add_days(month.next().first(), STANDS_FROM_DAY - 1)
}

/// The report for somebody who may read it.
///
/// # Errors
/// [`Refusal::Forbidden`]; [`Refusal::NotFound`] for a month that has not ended; [`Refusal::Store`]; [`Refusal::Broken`] when
/// the figures do not hold together.
pub async fn open(ctx: &Context, settings: &Settings, month: Month) -> Result<MonthReport, Refusal> {
    ctx.needs(Action::ReadReports)?;
    release(&ctx.db, &ctx.protocols, settings, ctx.today, month).await
}

/// One file of the report, written to the audit.
///
/// # Errors
/// As [`open`]; [`Refusal::NotFound`] also for a file that is not there.
pub async fn download(ctx: &Context, settings: &Settings, month: Month, file: &str) -> Result<Vec<u8>, Refusal> {
    let report = open(ctx, settings, month).await?;
    let table = report.tables.iter().find(|table| file_name(table) == file).ok_or(Refusal::NotFound)?;
    let bytes = bytes(table)?;
    note(&ctx.db, &[noted(ctx.now, Some(ctx.actor.person), month, table)]).await?;
    Ok(bytes)
}

/// Writes to the audit that all files of a month were written at the command line.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn note_export(db: &Db, now: DateTime<Utc>, report: &MonthReport) -> Result<(), Refusal> {
    let entries: Vec<AuditEntry> = report.tables.iter().map(|table| noted(now, None, report.release.month, table)).collect();
    note(db, &entries).await
}

fn noted(at: DateTime<Utc>, actor: Option<domain::ids::PersonId>, month: Month, table: &Table) -> AuditEntry {
    AuditEntry {
        at,
        actor,
        action: "report.download".to_owned(),
        object_kind: "report".to_owned(),
        object_id: format!("{month}/{}", file_name(table)),
        fields: Vec::new(),
    }
}

async fn note(db: &Db, entries: &[AuditEntry]) -> Result<(), Refusal> {
    db.write(async |tx| {
        for entry in entries {
            audit::append(tx, entry).await?;
        }
        Ok(())
    })
    .await
}

/// The report, whoever asks.
///
/// # Errors
/// As [`open`], but for permission.
pub async fn release(db: &Db, protocols: &Protocols, settings: &Settings, today: NaiveDate, month: Month) -> Result<MonthReport, Refusal> {
    if month.last() >= today {
        return Err(Refusal::NotFound);
    }
    let gathered = gather::gather(db, protocols, month).await?;
    let stands_from = stands_from(month);
    let provisional = today < stands_from;
    let protocol = protocols.on(month.last());
    let release = Release {
        programme: settings.programme_name.clone(),
        month,
        protocol_id: protocol.id.clone(),
        protocol_version: protocol.version.clone(),
        generated_at: start_of(settings.time_zone, if provisional { today } else { stands_from }),
    };
    let threshold = Threshold::new(u64::from(settings.small_number_threshold)).unwrap_or(Threshold::LEAST);
    let tables = tables(&release, threshold, &gathered.rows);
    let codes: BTreeSet<String> = gathered.areas.iter().map(|area| area.code.clone()).collect();
    let faults = checks::faults(&tables, threshold, &codes);
    if !faults.is_empty() {
        return Err(Refusal::Broken(format!("the figures of {month} do not hold together: {faults:?}")));
    }
    Ok(MonthReport { release, provisional, threshold: threshold.get(), areas: gathered.areas, tables })
}

/// The first instant of a day in the programme's time zone, UTC: the instant from which a release stands.
fn start_of(zone: Tz, day: NaiveDate) -> NaiveDateTime {
    let midnight = NaiveDateTime::from(day);
    // Where the clocks jump over midnight, the first hour that exists.
    (0..3)
        .find_map(|hour| (midnight + chrono::Duration::hours(hour)).and_local_timezone(zone).earliest())
        .map_or(midnight, |local| local.with_timezone(&Utc).naive_utc())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    #[test]
    fn only_months_that_have_ended_can_be_chosen() {
        assert_eq!(last_whole_month(d("2026-11-30")).to_string(), "2026-10");
        assert_eq!(last_whole_month(d("2026-12-01")).to_string(), "2026-11");
        let months = months(d("2026-11-25"));
        assert_eq!((months.len(), months[0].to_string(), months[23].to_string()), (24, "2026-10".to_owned(), "2024-11".to_owned()));
    }

    #[test]
    fn a_release_stands_from_the_first_instant_of_its_day() {
        assert_eq!(start_of(chrono_tz::Africa::Nairobi, d("2026-11-10")).to_string(), "2026-11-09 21:00:00");
        assert_eq!(start_of(Tz::UTC, d("2026-11-10")).to_string(), "2026-11-10 00:00:00");
    }
}

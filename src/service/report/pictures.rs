//! What the pictures of the reports are drawn from: the month asked for, as the report gives it, and the eleven before it as
//! they were released. Only the month asked for may be counted now; one that was never released is said to be so.

use domain::calendar::Month;
use domain::report::csv_table::ALL;
use domain::report::period::Period;
use domain::report::picture::Known;
use domain::report::picture::Measures;
use domain::report::picture::measures;

use crate::service::report::Office;
use crate::service::report::Report;
use crate::service::report::Trouble;
use crate::service::report::count;
use crate::service::report::open as open_report;
use crate::store::releases;

/// Months of a trend.
pub const MONTHS: usize = 12;

/// What the pictures show.
#[derive(Debug, Clone, PartialEq)]
pub struct Pictures {
    /// The report of the month asked for.
    pub report: Report,
    /// The code of the place whose trend is shown; `all` for the whole programme.
    pub place: String,
    /// Twelve months, the one asked for last.
    pub trend: Vec<(Month, Known)>,
    /// Code, name and figures of each area published for the month asked for, by code.
    pub areas: Vec<(String, String, Measures)>,
}

/// Opens a month and looks back a year. `area` is the code of an area, or nothing for the whole programme; `None` if there is
/// no such area.
///
/// # Errors
/// [`Trouble`] as for the report of the month.
pub async fn open(office: Office<'_>, month: Month, area: &str) -> Result<Option<Pictures>, Trouble> {
    let report = open_report(office, Period::Month(month), None).await?;
    if !area.is_empty() && !report.areas.iter().any(|listed| listed.code == area) {
        return Ok(None);
    }
    let place = if area.is_empty() { ALL } else { area }.to_owned();
    let first = releases::first_registration(office.db.direct()).await?.map(Month::of);
    let mut trend = Vec::with_capacity(MONTHS);
    for before in std::iter::successors(Some(month.previous()), |month| Some(month.previous())).take(MONTHS - 1) {
        trend.push((before, known(office, before, first, &place).await?));
    }
    trend.reverse();
    trend.push((month, Known::of(&report.tables, &place)));
    let areas =
        report.areas.iter().filter_map(|listed| Some((listed.code.clone(), listed.name.clone(), measures(&report.tables, &listed.code)?)));
    Ok(Some(Pictures { areas: areas.collect(), place, trend, report }))
}

/// The latest release of a month, as it was kept; nothing is counted.
async fn known(office: Office<'_>, month: Month, first: Option<Month>, place: &str) -> Result<Known, Trouble> {
    if first.is_none_or(|first| month < first) {
        return Ok(Known::BeforeStart);
    }
    let period = Period::Month(month);
    Ok(match releases::of_period(office.db.direct(), &period.to_string(), None).await? {
        Some(kept) => Known::of(&count::read(period, &kept.figures)?.tables, place),
        None => Known::NotCounted,
    })
}

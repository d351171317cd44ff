//! Counts the reports of the past year, oldest first, so that the pictures of the reports have a year to show at once.

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::calendar::Month;
use domain::protocol::Protocols;
use domain::report::period::Period;
use spoonround::service::report::Office;
use spoonround::service::report::Trouble;
use spoonround::service::report::last_whole_month;
use spoonround::service::report::open;
use spoonround::service::report::pictures::MONTHS;
use spoonround::store::Db;

use crate::programme;

/// Opens the report of each month, which releases it, as a manager's opening would.
///
/// # Errors
/// A sentence that says which month cannot be counted.
pub async fn count(db: &Db, protocols: &Protocols, today: NaiveDate, now: DateTime<Utc>) -> Result<(), String> {
    let settings = programme::demo_settings();
    let office = Office { db, protocols, settings: &settings, today, now, by: None };
    let mut months: Vec<Month> =
        std::iter::successors(Some(last_whole_month(today)), |month| Some(month.previous())).take(MONTHS).collect();
    months.reverse();
    for month in months {
        match open(office, Period::Month(month), None).await {
            Ok(_) | Err(Trouble::BeforeStart { .. }) => {}
            Err(trouble) => return Err(format!("the report of {month}: {trouble}")),
        }
    }
    Ok(())
}

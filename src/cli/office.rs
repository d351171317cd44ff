//! The commands of an office: schema, people, lists and reports without a browser.

use std::process::ExitCode;

use chrono::Duration;
use chrono::NaiveDate;

use crate::cli::args::NewUser;
use crate::cli::export::told;
use crate::cli::opened::open;
use crate::cli::run::Stop;
use crate::config::Config;
use crate::files::csv_text;
use crate::service::due_list;
use crate::service::first_user;
use crate::service::report::Office;
use crate::service::report::releasing;
use crate::service::tick as ticking;

/// Brings the schema up to this version.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn migrate(config: &Config) -> Result<ExitCode, Stop> {
    let office = open(config).await?;
    println!("{}: the schema is up to date", config.database_shown());
    drop(office);
    Ok(ExitCode::SUCCESS)
}

/// Adds somebody and prints the one-time code.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn add_user(config: &Config, new: &NewUser) -> Result<ExitCode, Stop> {
    let office = open(config).await?;
    let code = first_user::add(&office.db, office.now, office.today, &new.name, &new.sign_in, new.role).await?;
    println!("{} can sign in as {} with the one-time code {code}", new.name, new.sign_in);
    println!(
        "The code is good until {} and is not kept: write it down or hand it over now.",
        (office.now + Duration::hours(72)).format("%Y-%m-%d %H:%M UTC")
    );
    Ok(ExitCode::SUCCESS)
}

/// Prints the follow-up list as CSV.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn due(config: &Config, as_of: Option<NaiveDate>, area: Option<&str>) -> Result<ExitCode, Stop> {
    let office = open(config).await?;
    let day = as_of.unwrap_or(office.today);
    if day > office.today {
        return Err(Stop(format!("{day} has not come yet; today is {}. Name a past day, or leave --as-of out", office.today)));
    }
    if let Some(code) = area {
        known_area(&due_list::area_codes(&office.db).await?, code)?;
    }
    let lines = due_list::due(&office.db, &office.protocols, day, area).await?;
    let mut out = csv_text::writer(std::io::stdout().lock());
    out.write_record(due_list::HEADER)?;
    for line in lines {
        out.write_record(line.fields())?;
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

/// An empty list would read as if nothing were due.
fn known_area(codes: &[String], code: &str) -> Result<(), Stop> {
    if codes.iter().any(|known| known == code) {
        return Ok(());
    }
    let known = if codes.is_empty() { "there is no area yet".to_owned() } else { format!("the codes are {}", codes.join(", ")) };
    Err(Stop(format!("no area has the code {code:?}; {known}")))
}

/// Brings the lists up to date.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn tick(config: &Config, as_of: Option<NaiveDate>) -> Result<ExitCode, Stop> {
    let office = open(config).await?;
    let today = office.day(as_of)?;
    let done = ticking::tick(&office.db, &office.protocols, today, office.now).await?;
    println!("{done} children looked at for {today}");
    let at = Office { today, ..office.office() };
    let releases = releasing::keep_up(at).await?;
    for (period, revision) in &releases.released {
        println!("{period} released, revision {revision}");
    }
    for trouble in releases.refused {
        eprintln!("spoonround: {}", told(at, trouble).0);
    }
    Ok(ExitCode::SUCCESS)
}

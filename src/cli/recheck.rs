//! `recheck`: everything worked out anew from the visits beside what is stored.

use std::process::ExitCode;

use chrono::NaiveDate;

use crate::cli::opened::look;
use crate::cli::progress::Progress;
use crate::cli::run::Stop;
use crate::config::Config;
use crate::service::recheck;

/// Compares every child, and with `repair` stores anew what differs.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn run(config: &Config, repair: bool, as_of: Option<NaiveDate>) -> Result<ExitCode, Stop> {
    let office = look(config).await?;
    let today = office.day(as_of)?;
    let mut bar = Progress::new("Working out children");
    let mend = repair.then_some(office.now);
    let found = recheck::recheck(&office.db, &office.protocols, today, mend, &mut |done, all| bar.to(done, all)).await?;
    bar.end();
    for difference in &found.differences {
        println!("{difference}");
    }
    let (children, visits, follow_ups) = (found.children, found.visits, found.follow_ups);
    println!("{children} children, {visits} visits, {follow_ups} follow-ups worked out for {today}");
    if found.kept_from_before > 0 {
        println!("{} closed follow-ups are kept on record from before a correction or a late entry", found.kept_from_before);
    }
    println!("{} differences, in {} children", found.differences.len(), recheck::by_child(&found.differences).len());
    if found.waiting > 0 {
        eprintln!(
            "spoonround: the day of {} children has come and nobody has looked at them yet; run `spoonround tick`, then recheck again",
            found.waiting
        );
    }
    if repair && found.mended > 0 {
        println!("{} children stored anew", found.mended);
    }
    office.db.close().await?;
    let well = found.differences.is_empty() || (repair && found.mended > 0);
    Ok(if well { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

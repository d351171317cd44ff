//! Writes the reports of a month into a folder, without a browser.

use std::path::Path;
use std::process::ExitCode;

use domain::calendar::Month;

use crate::cli::opened::open;
use crate::cli::run::Stop;
use crate::config::Config;
use crate::service::month_report;

/// Writes the files of the month and says which.
///
/// # Errors
/// [`Stop`] with what to do: a month that has not ended, a folder that cannot be written, whatever stops the database.
pub async fn run(config: &Config, month: Month, folder: &Path) -> Result<ExitCode, Stop> {
    let opened = open(config).await?;
    let last = month_report::last_whole_month(opened.today);
    if month > last {
        return Err(Stop(format!("{month} has not ended, and reports are made of whole months; the last one is {last}")));
    }
    let report = month_report::release(&opened.db, &opened.protocols, &opened.settings, opened.today, month).await?;
    let unwritable = |what: &Path, e: std::io::Error| {
        Stop(format!("{}: {e}; check that this user may write there and that the disk is not full, or name another folder", what.display()))
    };
    std::fs::create_dir_all(folder).map_err(|e| unwritable(folder, e))?;
    for (name, bytes) in report.files()? {
        let path = folder.join(name);
        // Written beside and moved into place: nobody ever reads half a file.
        let beside = path.with_extension("csv.part");
        std::fs::write(&beside, bytes).and_then(|()| std::fs::rename(&beside, &path)).map_err(|e| unwritable(&path, e))?;
        println!("{}", path.display());
    }
    month_report::note_export(&opened.db, opened.now, &report).await?;
    if report.provisional {
        eprintln!("spoonround: {month} is provisional: visits that arrive late may still change it");
    }
    opened.db.close().await?;
    Ok(ExitCode::SUCCESS)
}

//! Writes the reports of a month, quarter or year into a folder, without a browser.

use std::path::Path;
use std::process::ExitCode;

use domain::report::period::Period;

use crate::cli::opened::Opened;
use crate::cli::opened::open;
use crate::cli::run::Stop;
use crate::config::Config;
use crate::files::archive;
use crate::files::folder;
use crate::i18n::Lang;
use crate::i18n::Words;
use crate::i18n::format;
use crate::i18n::release_faults;
use crate::i18n::words;
use crate::service::report;
use crate::service::report::Office;
use crate::service::report::Trouble;
use crate::view::report::files;
use crate::view::report::files::Bundle;

/// What to write, and where.
#[derive(Debug, Clone, Copy)]
pub struct Wish<'a> {
    /// The period.
    pub period: Period,
    /// An earlier revision; `None` = the latest.
    pub revision: Option<u32>,
    /// The folder.
    pub into: &'a Path,
    /// One archive instead of its files.
    pub zip: bool,
    /// The language of what people read.
    pub language: Lang,
}

impl Opened {
    /// What reports are made from.
    pub(super) fn office(&self) -> Office<'_> {
        Office { db: &self.db, protocols: &self.protocols, settings: &self.settings, today: self.today, now: self.now, by: None }
    }
}

/// Writes the files and says which.
///
/// # Errors
/// [`Stop`] with what to do: a period that has not ended, figures that do not hold together, a folder that cannot be written,
/// whatever stops the database.
pub async fn run(config: &Config, wish: Wish<'_>) -> Result<ExitCode, Stop> {
    let opened = open(config).await?;
    let office = opened.office();
    let w = words(wish.language);
    let report = report::open(office, wish.period, wish.revision).await.map_err(|trouble| told(office, trouble))?;
    let before = report::before(office, &report).await.map_err(|trouble| told(office, trouble))?;
    let areas = report.named_areas();
    let bundle = Bundle {
        release: &report.release,
        revision: report.revision(),
        threshold: report.threshold,
        tables: &report.tables,
        changes: &report.changes,
        areas: &areas,
        before: before.as_deref(),
    };
    let written = written(w, bundle, wish.zip).map_err(Stop)?;
    let unwritable = |what: &Path, e: std::io::Error| {
        Stop(format!("{}: {e}; check that this user may write there and that the disk is not full, or name another folder", what.display()))
    };
    // Noted before anything lies in the folder: what left the program is in the audit even if writing fails.
    let names: Vec<&str> = written.iter().map(|(name, _)| name.as_str()).collect();
    report::download::note(office, &report, &names).await?;
    folder::make(wish.into).map_err(|e| unwritable(wish.into, e))?;
    for path in folder::put(wish.into, &written).map_err(|(path, e)| unwritable(&path, e))? {
        println!("{}", path.display());
    }
    if report.revision().is_none() {
        eprintln!("spoonround: {} is provisional: visits that arrive late may still change it", wish.period);
    }
    opened.db.close().await?;
    Ok(ExitCode::SUCCESS)
}

fn written(w: &Words, bundle: Bundle<'_>, zip: bool) -> Result<Vec<(String, Vec<u8>)>, String> {
    let all = files::all(w, bundle)?;
    if !zip {
        return Ok(all);
    }
    let folder = files::folder(bundle);
    let bytes = archive::zip(&folder, &all).map_err(|e| format!("writing the archive: {e}"))?;
    Ok(vec![(format!("{folder}-{}.zip", w.lang().code()), bytes)])
}

/// Why there is no report, as a sentence for whoever asked for it.
pub fn told(office: Office<'_>, trouble: Trouble) -> Stop {
    let w = words(Lang::En);
    let last = report::last_whole_month(office.today);
    Stop(match trouble {
        Trouble::NotEnded(period) => {
            format!("{period} has not ended, and reports are made of whole months, quarters and years; the last month is {last}")
        }
        Trouble::BeforeStart { period, first: Some(first) } => {
            format!("{period} lies before the programme, whose first child was registered in {first}; name a later time")
        }
        Trouble::BeforeStart { first: None, .. } => "no child is registered yet, so there is nothing to report".to_owned(),
        Trouble::NoRevision { period, revision } => {
            format!("{period} has no revision {revision}; leave --revision out for the latest one")
        }
        Trouble::Faults { period, faults } => {
            let faults: Vec<String> = faults.iter().map(|fault| format!("\n  {}", release_faults::fault(w, fault))).collect();
            format!("the figures of {} do not hold together and are not released:{}", format::period(w, period), faults.concat())
        }
        Trouble::Broken(text) => text,
        Trouble::Store(error) => return error.into(),
    })
}

//! `protocol check`: holds a protocol against worked cases. It prints a line for each disagreement and closes with the count.

use std::io;
use std::io::Write;
use std::path::Path;
use std::path::PathBuf;

use domain::protocol::Protocol;
use domain::protocol::Protocols;

use crate::files::FileFault;
use crate::files::cases::check;
use crate::files::cases::parse_cases;
use crate::files::protocol_toml::default_protocol;
use crate::files::protocol_toml::parse_protocol;

/// The word that names the protocol of the program.
pub const DEFAULT: &str = "default";

/// How many cases agreed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CheckSummary {
    /// Cases of which everything agreed.
    pub passed: usize,
    /// Cases with a disagreement.
    pub failed: usize,
}

impl CheckSummary {
    /// Whether the command succeeds: no case failed.
    #[must_use]
    pub const fn all_passed(self) -> bool {
        self.failed == 0
    }
}

/// Why nothing could be checked.
#[derive(Debug, thiserror::Error)]
pub enum CheckError {
    /// A file could not be read.
    #[error("{}: cannot be read: {source}", path.display())]
    Unreadable {
        /// Which file.
        path: PathBuf,
        /// Why.
        source: io::Error,
    },
    /// A file holds faults; all of them.
    #[error("{}", faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
    Faults {
        /// Each with file, line, key and what to do.
        faults: Vec<FileFault>,
    },
    /// The result could not be written.
    #[error("the result cannot be written: {0}")]
    Output(#[from] io::Error),
}

/// Checks the cases of all files against a protocol file, or the one of the program (`default`). Every file is read before any case is
/// judged, so that all faults are told at once.
///
/// # Errors
/// [`CheckError`]; nothing was judged then, unless the output failed.
pub fn run(protocol: &str, cases: &[PathBuf], out: &mut impl Write) -> Result<CheckSummary, CheckError> {
    let mut faults = Vec::new();
    let protocol = read_protocol(protocol, &mut faults)?;
    let mut files = Vec::with_capacity(cases.len());
    for path in cases {
        match parse_cases(&read(path)?, &path.display().to_string()) {
            Ok(file) => files.push((path, file)),
            Err(found) => faults.extend(found),
        }
    }
    let Some(protocol) = protocol.filter(|_| faults.is_empty()) else { return Err(CheckError::Faults { faults }) };
    let mut summary = CheckSummary::default();
    for (path, file) in files {
        let mut with_foods = protocol.clone();
        with_foods.foods.add(file.foods);
        let protocols = Protocols::one(with_foods);
        for case in &file.cases {
            let disagreements = check(case, &protocols);
            for found in &disagreements {
                let (path, place) = (path.display(), &found.place);
                writeln!(out, "{path}: {}: {place}: expected {}; got {}", case.id, found.expected, found.got)?;
            }
            if disagreements.is_empty() {
                summary.passed += 1;
            } else {
                summary.failed += 1;
            }
        }
    }
    writeln!(out, "{} passed, {} failed", summary.passed, summary.failed)?;
    Ok(summary)
}

fn read_protocol(named: &str, faults: &mut Vec<FileFault>) -> Result<Option<Protocol>, CheckError> {
    if named == DEFAULT {
        return Ok(Some(default_protocol().clone()));
    }
    match parse_protocol(&read(Path::new(named))?, named) {
        Ok(protocol) => Ok(Some(protocol)),
        Err(found) => {
            faults.extend(found);
            Ok(None)
        }
    }
}

fn read(path: &Path) -> Result<String, CheckError> {
    std::fs::read_to_string(path).map_err(|source| CheckError::Unreadable { path: path.to_owned(), source })
}

//! Reads worked cases and holds the judgement beside what they expect. Which protocol is right is not known here.

mod case;
mod check;
mod expect;
#[cfg(test)]
mod tests;
mod visit;

use domain::protocol::Food;

use super::faults::Faults;
use super::faults::FileFault;
use super::protocol_toml::food;
use super::saying::say;
use super::toml_reader::Table;
use super::toml_reader::document;

pub use case::Case;
pub use check::Disagreement;
pub use check::check;
pub use expect::Expected;
pub use expect::ExpectedNow;
pub use expect::OpenLine;

/// The cases of one file, with the foods it adds.
#[derive(Debug, Clone)]
pub struct CaseFile {
    /// Foods added to the protocol's, or in place of those of the same code.
    pub foods: Vec<Food>,
    /// The cases in their order.
    pub cases: Vec<Case>,
}

/// Reads a case file. `file_name` is used in faults only.
///
/// # Errors
/// Every fault, with file, case and key: unknown keys and words, wrong types, a visit before birth, a measurement outside the hard
/// limits, a start of solids after its visit, an `as_of` before the last visit.
pub fn parse_cases(text: &str, file_name: &str) -> Result<CaseFile, Vec<FileFault>> {
    let mut faults = Faults::new(file_name, text);
    let tree = document(text, &mut faults);
    if faults.len() > 0 {
        return Err(faults.into_all());
    }
    let f = &mut faults;
    let mut root = Table::root(&tree);
    let mut foods = Vec::new();
    for mut table in root.tables(f, "food") {
        foods.extend(food(&mut table, f));
        table.finish(f);
    }
    root.need(f, "case", say("at least one [[case]]"));
    let mut cases: Vec<Case> = Vec::new();
    // The names of cases with a fault count too.
    let mut ids: Vec<String> = Vec::new();
    for mut table in root.tables(f, "case") {
        let (id, case) = case::case(&mut table, f);
        if !id.is_empty() && ids.contains(&id) {
            table.fault(f, "id", say("stands twice in this file; give each case its own"));
        }
        table.finish(f);
        ids.push(id);
        cases.extend(case);
    }
    root.finish(f);
    if faults.len() > 0 { Err(faults.into_all()) } else { Ok(CaseFile { foods, cases }) }
}

//! The written feeding protocol a programme owns, as values.

use chrono::NaiveDate;

/// One version of a protocol.
#[derive(Debug, Clone, PartialEq)]
pub struct Protocol {
    /// Its name, e.g. `default-6-23`.
    pub id: String,
    /// Its version.
    pub version: String,
    /// Visits on or after this day are judged by it.
    pub effective_from: NaiveDate,
    /// The clinician who approved it, if any.
    pub approved_by: Option<String>,
    /// The local protocol that it follows, if named.
    pub local_protocol_name: Option<String>,
}

/// All adopted protocols, at least one, by date of effect.
#[derive(Debug, Clone, PartialEq)]
pub struct Protocols(Vec<Protocol>);

impl Protocols {
    /// Sorts by date of effect; `None` if there is none.
    #[must_use]
    pub fn new(mut all: Vec<Protocol>) -> Option<Self> {
        all.sort_by_key(|p| p.effective_from);
        (!all.is_empty()).then_some(Self(all))
    }

    /// The one in force on a day; the first one for days before any.
    #[must_use]
    pub fn on(&self, day: NaiveDate) -> &Protocol {
        let after = self.0.partition_point(|p| p.effective_from <= day);
        &self.0[after.saturating_sub(1)]
    }
}

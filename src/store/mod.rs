//! The database: the only room that names the ORM. Questions go in, domain values and small plain records come out.
//!
//! It knows no rule, no page and no clock: days and instants are passed in. What a person may see is part of each
//! question ([`Scope`]), never a filter afterwards. "Not found" is `None`; a row that no longer parses is
//! [`StoreError::Corrupt`] with its table and key.

pub mod areas;
pub mod audit;
pub mod child_files;
pub mod children;
mod codes;
mod connect;
pub mod corrections;
#[cfg(test)]
pub mod counting;
pub mod db;
pub mod desk_notes;
pub mod duplicates;
mod entity;
pub mod error;
mod evidence_text;
pub mod follow_ups;
pub mod households;
pub mod late_records;
pub mod latest_first;
pub mod lists;
pub mod measured;
pub mod outcomes;
pub mod people;
pub mod placements;
pub mod protocols;
pub mod releases;
pub mod report_rows;
mod rows;
pub mod scope;
pub mod sessions;
pub mod settings;
pub mod submissions;
pub mod summaries;
pub mod talks;
#[cfg(any(test, feature = "testing"))]
pub mod testing;
pub mod throttle;
mod visit_text;
pub mod visits;

pub use db::Db;
pub use db::Tx;
pub use error::StoreError;
pub use scope::Scope;
/// Anything a question can be asked of: a transaction, or the database itself.
pub use sea_orm::ConnectionTrait as Connection;

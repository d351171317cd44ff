//! The pure core: growth, feeding protocol and follow-up rules as functions of values.
//!
//! It knows no clock, no database, no network, no randomness and no language. Days are passed in as `as_of`;
//! what cannot be computed is a value with its reason. Words for people are added elsewhere.

pub mod assess;
pub mod calendar;
pub mod child;
pub mod child_code;
mod code;
pub mod counsel;
pub mod draft;
pub mod errand;
pub mod evidence;
pub mod fault;
pub mod feeding;
pub mod follow_up;
pub mod food;
pub mod growth;
pub mod household;
pub mod ids;
pub mod number_text;
pub mod protocol;
pub mod quality;
pub mod record;
pub mod report;
pub mod role;
pub mod rule;
mod rule_set;
pub mod schedule;
pub mod units;
pub mod unusual;
pub mod visit;

pub use code::UnknownCode;

// Tests of the rules need a whole protocol and the worked cases. They read the shipped ones with the program's own readers, which call
// this crate `domain`.
#[cfg(test)]
#[path = "../files/cases/mod.rs"]
#[allow(dead_code, unused_imports, reason = "only the reading and checking itself is used here")]
mod cases;
#[cfg(test)]
extern crate self as domain;
#[cfg(test)]
#[path = "../files/faults.rs"]
#[allow(dead_code, reason = "only the reading itself is used here")]
mod faults;
#[cfg(test)]
#[path = "../files/protocol_toml/mod.rs"]
#[allow(dead_code, unused_imports, reason = "only the reading itself is used here")]
mod protocol_toml;
#[cfg(test)]
#[path = "../files/saying.rs"]
#[allow(dead_code, reason = "only the reading itself is used here")]
mod saying;
#[cfg(test)]
#[path = "../files/toml_reader.rs"]
#[allow(dead_code, reason = "only the reading itself is used here")]
mod toml_reader;

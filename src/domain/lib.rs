//! The pure core: growth, feeding protocol and follow-up rules as functions of values.
//!
//! It knows no clock, no database, no network, no randomness and no language. Days are passed in as `as_of`;
//! what cannot be computed is a value with its reason. Words for people are added elsewhere.

pub mod calendar;
pub mod child;
pub mod child_code;
mod code;
pub mod draft;
pub mod errand;
pub mod evidence;
pub mod fault;
pub mod food;
pub mod growth;
pub mod ids;
pub mod number_text;
pub mod protocol;
pub mod report;
pub mod role;
pub mod rule;
pub mod units;
pub mod unusual;
pub mod visit;

pub use code::UnknownCode;

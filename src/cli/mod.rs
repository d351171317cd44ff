//! The command line: what each command takes and does.

pub mod args;
pub mod score;

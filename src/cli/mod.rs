//! The command line: what each command takes and does.

pub mod args;
pub mod export;
pub mod office;
pub mod opened;
pub mod progress;
pub mod protocol_check;
pub mod protocol_office;
pub mod recheck;
mod rehearsed;
pub mod run;
pub mod score;
pub mod serve;

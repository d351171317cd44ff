//! Follow-ups of one child: what the rules find at each visit, what opens, stays, rises and closes. It knows no storage and no people.

mod clearing;
mod engine;
mod facts;
mod history;
mod lists;
mod offered;
mod relations;
mod rules;
mod scale;
mod to_close;
mod types;

#[cfg(test)]
pub(crate) mod tests;

pub use clearing::{Way, way};
pub use history::{Kept, Step, What, steps};
pub use rules::told_reaction;
pub use scale::{Change, ErrorAt, ScaleError, Verdict, may_be_error, scale_error};
pub use to_close::{Needed, Newest, ToClose, to_close};
pub use types::*;

pub(crate) use engine::{Found, run};
pub(crate) use facts::{Facts, Story, settled_on, stage};
pub(crate) use lists::{lists, next_list_change};
pub(crate) use rules::{Clears, reaction_level};

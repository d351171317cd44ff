//! Pages as functions from values to markup. Views decide looks, never rules: no store, no service, no web framework.

pub mod chart;
#[cfg(test)]
pub(crate) mod checks;
#[cfg(test)]
mod contrast;
pub mod emergency;
pub mod filled;
pub mod find;
pub mod icons;
pub mod layout;
pub mod parts;
pub mod pieces;
pub mod register;
pub mod result;
pub mod ribbon;
pub mod round;
#[cfg(test)]
mod samples;
pub mod sign_in;
pub mod trouble;
pub mod visit_form;

pub use crate::i18n::explain;

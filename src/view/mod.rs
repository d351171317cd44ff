//! Pages as functions from values to markup. Views decide looks, never rules: no store, no service, no web framework.

pub mod agreed_steps;
pub mod aloud;
pub mod areas;
pub mod card;
pub mod caseload;
pub mod chart;
#[cfg(test)]
pub(crate) mod checks;
pub mod child;
pub mod close;
#[cfg(test)]
mod contrast;
pub mod correction;
pub mod desk_note;
pub mod emergency;
pub mod filled;
pub mod find;
pub mod household;
pub mod icons;
pub mod layout;
pub mod leave;
pub mod merge;
pub mod move_child;
pub mod move_visit;
pub mod parts;
pub mod people;
pub mod pick_child;
pub mod pictures;
pub mod pieces;
pub mod protocol;
pub mod protocol_doc;
pub mod quality;
pub mod recipes;
pub mod referral_note;
pub mod referrals;
pub mod register;
pub mod rehearse;
pub mod report;
pub mod result;
pub mod ribbon;
pub mod round;
#[cfg(test)]
mod samples;
pub mod scale;
pub mod settings;
pub mod sign_in;
pub mod supervise;
pub mod team;
pub mod trouble;
pub mod visit_form;
pub mod why;

pub use crate::i18n::explain;

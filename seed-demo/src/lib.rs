//! A demo programme of invented families: their stories, the database they are put into, and who signs in.

pub mod build;
pub mod options;
pub mod past_months;
pub mod programme;
pub mod put_right;
pub mod run;
pub mod serve;
pub mod sign_ins;
pub mod story;
pub mod target;

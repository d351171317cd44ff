//! A demo programme of invented families: their stories, and the database they are put into.

pub mod story;

//! The pages, one file a family. A handler reads the request, calls one use case and shows one view.

pub mod agreed_steps;
pub mod areas;
pub mod assets;
pub mod child;
pub mod correction;
pub mod find;
pub mod home;
pub mod household;
pub mod language;
pub mod merge;
pub mod password;
pub mod people;
pub mod placing;
pub mod protocol;
pub mod recipes;
pub mod register;
pub mod report;
pub mod result;
pub mod round;
pub mod settings;
pub mod sign_in;
pub mod supervise;
pub mod talk;
pub mod team;
pub mod visit;
pub mod why;

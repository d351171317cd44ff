//! Spoonround: who needs a follow-up, why, and by when.

pub mod cli;
pub mod clock;
pub mod config;
pub mod files;
pub mod store;
pub mod web;

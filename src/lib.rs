//! Spoonround: who needs a follow-up, why, and by when.

pub mod clock;
pub mod config;
pub mod web;

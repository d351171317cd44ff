//! Spoonround: who needs a follow-up, why, and by when.

pub mod cli;
pub mod clock;
pub mod config;
pub mod files;
pub mod i18n;
pub mod service;
pub mod store;
pub mod view;
pub mod web;

//! The site over HTTP, in process, with a real database.

mod access;
mod desk;
mod harness;
mod office;
mod registration;
mod signing_in;
mod site;
mod visits;

//! The site over HTTP, in process, with a real database.

mod access;
mod desk;
mod harness;
mod office;
mod signing_in;
#[expect(dead_code, reason = "the people and places of the site are for every family of pages")]
mod site;

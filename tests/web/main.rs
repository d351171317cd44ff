//! The site over HTTP, in process, with a real database.

mod access;
#[expect(dead_code, reason = "what each family of pages needs of the browser differs")]
mod harness;
mod signing_in;
#[expect(dead_code, reason = "the people and places of the site are for every family of pages")]
mod site;

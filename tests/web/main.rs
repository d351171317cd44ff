//! The site over HTTP, in process, with a real database.

mod access;
mod amending;
mod caseload;
#[path = "../../src/view/checks.rs"]
mod checks;
mod children;
mod corrections;
mod counsel;
mod desk;
mod every_page;
mod exports;
mod families;
mod harness;
mod homes;
mod kitchen;
mod long_lists;
mod merging;
mod notes;
mod office;
mod past_desk;
mod pictures;
mod protocol;
mod quality;
mod reach;
mod reactions;
#[path = "../recount.rs"]
mod recount;
mod referrals;
mod registration;
mod releases;
mod rounds;
mod signing_in;
mod site;
#[cfg(feature = "spreadsheet-tests")]
mod spreadsheets;
mod statements;
mod together;
mod trouble;
mod visits;
mod why;

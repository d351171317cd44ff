//! Monthly reports: what is counted, of whom, and what is withheld so that no child can be recognised.
//!
//! Rows of children, visits, slots and follow-ups go in, tables of counts come out. It knows no database, no file format
//! and no words of a language; names of columns and codes are permanent.

pub mod csv_table;
pub mod cube;
pub mod rows;
pub mod suppress;
mod swing;
pub mod wilson;

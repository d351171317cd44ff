//! Rows of the tables read into values and written back, one file a group of tables. A row that no longer parses names itself.

mod child;
mod follow_up;
mod person;
pub mod talk;
pub mod visit;

//! The small parts of pages, one family a file. Pages take them from `view::parts`.

pub mod choice;
pub mod date_field;
pub mod field;
pub mod form;
pub mod list;
pub mod note;
pub mod select;
pub mod stands;
pub mod table;

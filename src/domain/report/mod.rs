//! Monthly reports: what is counted, of whom, and what is withheld so that no child can be recognised.
//!
//! Rows of children, visits, slots and follow-ups go in, tables of counts come out. It knows no database, no file format
//! and no words of a language; names of columns and codes are permanent.

/// Names the columns of a table and the place of each.
macro_rules! measures {
    ($(#[$meta:meta])* $list:ident = $($column:ident $place:ident),+ $(,)?) => {
        $(#[$meta])*
        pub const $list: &[&str] = &[$(stringify!($column)),+];
        $crate::report::measures!(@ 0usize; $($place)+);
    };
    (@ $at:expr; $place:ident $($rest:ident)*) => {
        const $place: usize = $at;
        $crate::report::measures!(@ $at + 1; $($rest)*);
    };
    (@ $at:expr;) => {};
}
pub(crate) use measures;

pub mod by_worker;
pub mod checks;
pub mod choose;
pub mod compare;
mod corners;
mod counted;
pub mod csv_table;
pub mod cube;
pub mod definitions;
pub mod enrolment;
pub mod feeding;
pub mod followups;
pub mod growth;
pub mod indicator;
pub mod inherit;
pub mod layout;
mod mend;
pub mod month;
pub mod pair;
pub mod period;
pub mod picture;
pub mod reactions;
pub mod rows;
#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
pub(crate) mod sample_month;
pub mod sheet;
pub mod suppress;
pub mod system;
mod trade;
pub mod visits;
pub mod wilson;

//! What browser walks are made of: a served site, a browser without script, pages read by their labels, and what every page is
//! checked for. Knows no page of the program.

#[cfg(feature = "browser")]
pub mod driver;
#[cfg(feature = "browser")]
pub mod look;
#[cfg(feature = "browser")]
pub mod page;
#[cfg(feature = "browser")]
pub mod site;

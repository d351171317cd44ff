//! Which protocols are adopted.

use domain::protocol::Protocols;

use crate::files::protocol_toml::default_protocol;

/// The protocol of the program for every day: for tests of pages.
#[cfg(any(test, feature = "testing"))]
#[must_use]
pub fn for_tests() -> Protocols {
    Protocols::one(default_protocol().clone())
}

//! Which protocols are adopted.

use domain::protocol::Protocols;

/// A protocol for tests of pages.
///
/// # Panics
/// Never: the protocol is written here.
#[cfg(any(test, feature = "testing"))]
#[must_use]
pub fn for_tests() -> Protocols {
    Protocols::new(vec![domain::protocol::Protocol {
        id: "default-6-23".to_owned(),
        version: "1.0.0".to_owned(),
        effective_from: "2000-01-01".parse().unwrap_or_default(),
        approved_by: None,
        local_protocol_name: None,
    }])
    .unwrap_or_else(|| unreachable!("one protocol is given"))
}

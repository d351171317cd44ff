//! The figures of each rule, as typed values with the keys they have in a protocol. They test nothing.

mod danger;
mod data;
mod feeding;
mod growth;

pub use danger::*;
pub use data::*;
pub use feeding::*;
pub use growth::*;

/// Declares the figures of rules: a struct each, its keys, and how it is read.
macro_rules! thresholds {
    ($($(#[$meta:meta])* $name:ident { $($(#[$fmeta:meta])* $field:ident: $ty:ty),+ $(,)? })+) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, PartialEq)]
        pub struct $name { $($(#[$fmeta])* pub $field: $ty),+ }

        impl $name {
            /// Its keys in a protocol.
            pub const KEYS: &'static [&'static str] = &[$(stringify!($field)),+];

            /// Asks for each figure.
            pub fn read(source: &mut impl $crate::protocol::ReadRule) -> Self {
                Self { $($field: <$ty as $crate::protocol::Threshold>::read(source, stringify!($field))),+ }
            }

            /// Each figure with its key.
            #[must_use]
            pub fn figures(&self) -> Vec<(&'static str, $crate::protocol::Figure)> {
                vec![$((stringify!($field), $crate::protocol::Threshold::figure(&self.$field))),+]
            }
        }
    )+};
}

use thresholds;

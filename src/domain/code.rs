//! One vocabulary for database, form, CSV, protocol file and address: each closed list of words has a permanent code.

/// A code that is not in the list it was looked up in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownCode {
    /// What kind of word was expected, e.g. `food group`.
    pub kind: &'static str,
    /// The text that was found.
    pub found: String,
}

impl std::fmt::Display for UnknownCode {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "unknown {}: {:?}", self.kind, self.found)
    }
}

impl std::error::Error for UnknownCode {}

/// Declares an enum whose variants each have a permanent code. Codes never change; words do.
macro_rules! codes {
    ($(#[$meta:meta])* $name:ident, $kind:literal { $($(#[$vmeta:meta])* $variant:ident => $code:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Every value, in the order declared.
            pub const ALL: &'static [$name] = &[$($name::$variant),+];

            /// The permanent code.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $($name::$variant => $code),+ }
            }

            /// The value with this code.
            ///
            /// # Errors
            /// [`UnknownCode`](crate::UnknownCode) when no value has it.
            pub fn from_code(code: &str) -> Result<Self, $crate::UnknownCode> {
                match code {
                    $($code => Ok($name::$variant),)+
                    _ => Err($crate::UnknownCode { kind: $kind, found: code.to_owned() }),
                }
            }
        }
    };
}

pub(crate) use codes;

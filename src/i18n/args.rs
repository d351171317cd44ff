//! Values that go into a message: texts, and counts that choose a plural. Knows no message.

use fluent_bundle::{FluentArgs, FluentValue};

/// One value of a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A text, or a number already written for reading: it is set as it is.
    Text(String),
    /// A count: it is set in digits and chooses between the message's plurals.
    Count(i64),
}

/// The values of a message by name. Write them with [`args!`](crate::args).
#[derive(Debug, Default)]
pub struct Args(FluentArgs<'static>);

impl Args {
    /// No values yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// With this value too; a name given twice keeps the later value.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        match value.into() {
            Arg::Text(text) => self.0.set(name, FluentValue::from(text)),
            Arg::Count(count) => self.0.set(name, FluentValue::from(count)),
        }
        self
    }

    pub(crate) fn as_fluent(&self) -> &FluentArgs<'static> {
        &self.0
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<&String> for Arg {
    fn from(text: &String) -> Self {
        Self::Text(text.clone())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

macro_rules! counts {
    ($($t:ty),+) => {$(
        impl From<$t> for Arg {
            fn from(count: $t) -> Self {
                Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
            }
        }
    )+};
}

counts!(u8, u16, u32, u64, usize, i32, i64);

/// The values of a message: `args!["name" => name, "count" => 3]`.
#[macro_export]
macro_rules! args {
    ($($name:literal => $value:expr),* $(,)?) => {
        $crate::i18n::Args::new()$(.with($name, $value))*
    };
}

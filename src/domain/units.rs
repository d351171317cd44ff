//! Measurements as whole numbers in one unit each. Bounds say what a device can show, not what is healthy.

/// A measurement outside what can be saved at all (`data.units`): most likely the wrong unit or a slip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutOfRange {
    /// Least value that can be saved, in the unit of the type.
    pub least: u32,
    /// Greatest value that can be saved, in the unit of the type.
    pub most: u32,
}

macro_rules! measure {
    ($(#[$meta:meta])* $name:ident, $inner:ty, $make:ident, $get:ident, $least:literal ..= $most:literal) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name($inner);

        impl $name {
            /// Least value that can be saved.
            pub const LEAST: $inner = $least;
            /// Greatest value that can be saved.
            pub const MOST: $inner = $most;

            /// Wraps a value within the bounds.
            ///
            /// # Errors
            /// [`OutOfRange`] with the bounds.
            pub fn $make(value: $inner) -> Result<Self, OutOfRange> {
                if ($least..=$most).contains(&value) {
                    Ok(Self(value))
                } else {
                    Err(OutOfRange { least: u32::from(Self::LEAST), most: u32::from(Self::MOST) })
                }
            }

            /// The value in the unit named.
            #[must_use]
            pub const fn $get(self) -> $inner {
                self.0
            }
        }
    };
}

measure! {
    /// Body weight in whole grams, 0.5–25 kg (bounds: our own choice, rule `data.units`).
    Weight, u32, from_grams, grams, 500..=25_000
}
measure! {
    /// Length or height in whole millimetres, 30–110 cm (bounds: our own choice, `data.units`).
    Length, u16, from_mm, mm, 300..=1_100
}
measure! {
    /// Mid-upper-arm circumference in whole millimetres, 70–220 mm (bounds: our own choice, `data.units`).
    Muac, u16, from_mm, mm, 70..=220
}
measure! {
    /// Head circumference in whole millimetres, 20–60 cm (bounds: our own choice).
    HeadCircumference, u16, from_mm, mm, 200..=600
}

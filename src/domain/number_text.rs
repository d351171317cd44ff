//! Numbers as people type them: comma or point, any script's digits, spaces around.

/// Why a text is not a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberFault {
    /// Something other than digits and one decimal mark.
    NotANumber,
    /// More decimals than the measure has.
    TooManyDecimals,
    /// Longer than any number here can be.
    TooLong,
}

/// Reads a number that is not negative as an integer scaled by `10^decimals`: `"7,35"` with 3 decimals is 7350.
///
/// Accepts the decimal digits of any script, comma, point or Arabic decimal mark. Trailing zeros beyond
/// `decimals` are fine; other further digits are a fault, never rounded away.
///
/// # Errors
/// [`NumberFault`].
pub fn parse_scaled(text: &str, decimals: u32) -> Result<u64, NumberFault> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberFault::NotANumber);
    }
    if text.chars().count() > 12 {
        return Err(NumberFault::TooLong);
    }
    let mut value: u64 = 0;
    let mut digits = 0;
    let mut after: Option<u32> = None;
    for c in text.chars() {
        if matches!(c, '.' | ',' | '\u{66b}') {
            if after.is_some() {
                return Err(NumberFault::NotANumber);
            }
            after = Some(0);
            continue;
        }
        let digit = decimal_digit(c).ok_or(NumberFault::NotANumber)?;
        digits += 1;
        match after {
            Some(n) if n >= decimals => {
                if digit != 0 {
                    return Err(NumberFault::TooManyDecimals);
                }
                continue;
            }
            Some(n) => after = Some(n + 1),
            None => {}
        }
        value = value * 10 + u64::from(digit);
    }
    if digits == 0 {
        return Err(NumberFault::NotANumber);
    }
    Ok(value * 10_u64.pow(decimals - after.unwrap_or(0)))
}

/// The value of a decimal digit of any script this program's users write: each block of ten is contiguous (Unicode, category Nd).
#[must_use]
pub fn decimal_digit(c: char) -> Option<u8> {
    const ZEROS: [u32; 22] = [
        0x30, 0x660, 0x6f0, 0x7c0, 0x966, 0x9e6, 0xa66, 0xae6, 0xb66, 0xbe6, 0xc66, 0xce6, 0xd66, 0xe50, 0xed0, 0xf20, 0x1040, 0x17e0,
        0x1810, 0xff10, 0x1e950, 0xde6,
    ];
    let c = u32::from(c);
    ZEROS.iter().find(|&&zero| (zero..zero + 10).contains(&c)).and_then(|zero| u8::try_from(c - zero).ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_weight_in_many_hands() {
        for text in ["7.35", "7,35", " 7.350 ", "٧٫٣٥", "७.३५", "7.35000"] {
            assert_eq!(parse_scaled(text, 3), Ok(7350), "{text}");
        }
        assert_eq!(parse_scaled("735", 3), Ok(735_000));
        assert_eq!(parse_scaled("134", 0), Ok(134));
        assert_eq!(parse_scaled("134.0", 0), Ok(134));
    }

    #[test]
    fn what_is_not_a_number_says_so() {
        use NumberFault::{NotANumber, TooLong, TooManyDecimals};
        for (text, fault) in [
            ("", NotANumber),
            ("-7", NotANumber),
            ("7.3.5", NotANumber),
            ("7 kg", NotANumber),
            (".", NotANumber),
            ("7.3512", TooManyDecimals),
            ("1234567890123", TooLong),
        ] {
            assert_eq!(parse_scaled(text, 3), Err(fault), "{text}");
        }
    }
}

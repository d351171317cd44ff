//! The code of a child in links and on paper: random, says nothing about the child, and catches slips of the pen.

/// Digits and capital letters without I, L, O, 0 and 1, which look alike. Thirty-one of them, a prime, so that the
/// check character below finds every single wrong character and every swap of neighbours.
const SIGNS: &[u8; 31] = b"23456789ABCDEFGHJKMNPQRSTUVWXYZ";

/// Signs before the check character: 31^7, some 27 thousand million codes.
const RANDOM_SIGNS: usize = 7;

/// A code such as `K7QF-2MZC`: seven random signs and a check sign.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ChildCode(String);

/// Why a text is not a child's code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChildCodeFault {
    /// Not eight signs.
    Length,
    /// A sign that no code has.
    Sign,
    /// The check sign does not fit: most likely a slip of the pen.
    Check,
}

impl ChildCode {
    /// Makes a code from a random number; the caller supplies the randomness.
    #[must_use]
    pub fn from_random(mut random: u64) -> Self {
        let mut signs = [0_u8; RANDOM_SIGNS];
        for sign in &mut signs {
            *sign = u8::try_from(random % 31).unwrap_or(0);
            random /= 31;
        }
        let mut text: String = signs.iter().map(|&v| char::from(SIGNS[usize::from(v)])).collect();
        text.push(char::from(SIGNS[usize::from(check(&signs))]));
        Self(text)
    }

    /// Reads a code as people type it: small letters, blanks and hyphens are fine.
    ///
    /// # Errors
    /// [`ChildCodeFault`].
    pub fn parse(text: &str) -> Result<Self, ChildCodeFault> {
        let text: String = text.chars().filter(|c| !matches!(c, ' ' | '-' | '\u{2011}')).map(|c| c.to_ascii_uppercase()).collect();
        if text.chars().count() != RANDOM_SIGNS + 1 {
            return Err(ChildCodeFault::Length);
        }
        let mut values = [0_u8; RANDOM_SIGNS + 1];
        for (value, sign) in values.iter_mut().zip(text.bytes()) {
            let at = SIGNS.iter().position(|&s| s == sign).ok_or(ChildCodeFault::Sign)?;
            *value = u8::try_from(at).unwrap_or(0);
        }
        if check(&values[..RANDOM_SIGNS]) != values[RANDOM_SIGNS] {
            return Err(ChildCodeFault::Check);
        }
        Ok(Self(text))
    }

    /// The eight signs, as stored and in links.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// In two groups of four, as printed.
    #[must_use]
    pub fn printed(&self) -> String {
        let (a, b) = self.0.split_at(4);
        format!("{a}-{b}")
    }
}

/// Weighted sum modulo 31; the weights 2…8 differ and none is 0 or 1 modulo 31 (the check sign itself weighs −1).
fn check(values: &[u8]) -> u8 {
    let sum: u32 = values.iter().zip(2_u32..).map(|(&v, weight)| u32::from(v) * weight).sum();
    u8::try_from(sum % 31).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_single_slip_and_every_swap_is_caught() {
        for seed in [0, 1, 987_654_321, u64::MAX, 0x1234_5678_9abc_def0] {
            let code = ChildCode::from_random(seed);
            assert_eq!(ChildCode::parse(&code.printed().to_lowercase()), Ok(code.clone()));
            let bytes = code.as_str().as_bytes();
            for at in 0..bytes.len() {
                for &other in SIGNS.iter().filter(|&&s| s != bytes[at]) {
                    let mut slip = bytes.to_vec();
                    slip[at] = other;
                    let slip = String::from_utf8(slip).expect("ASCII");
                    assert_eq!(ChildCode::parse(&slip), Err(ChildCodeFault::Check), "{code:?} as {slip}");
                }
                if at + 1 < bytes.len() && bytes[at] != bytes[at + 1] {
                    let mut swap = bytes.to_vec();
                    swap.swap(at, at + 1);
                    let swap = String::from_utf8(swap).expect("ASCII");
                    assert_eq!(ChildCode::parse(&swap), Err(ChildCodeFault::Check), "{code:?} as {swap}");
                }
            }
        }
    }

    #[test]
    fn what_is_no_code_says_why() {
        assert_eq!(ChildCode::parse("K7QF"), Err(ChildCodeFault::Length));
        assert_eq!(ChildCode::parse("K7QF-2MZ0"), Err(ChildCodeFault::Sign));
        assert_eq!(ChildCode::parse("ŒŒŒŒŒŒŒŒ"), Err(ChildCodeFault::Sign));
    }
}

//! What a reader of a release holds, as one line of JSON, and numbers that look random.

use std::fmt::Write as _;

use domain::report::suppress::omitted;
use domain::report::system::{Kind, System};

/// Numbers that look random and are the same for the same seed.
pub struct Dice(pub u64);

impl Dice {
    /// Less than `limit`.
    pub fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }

    /// Yes in so many of a hundred.
    pub fn percent(&mut self, percent: u64) -> bool {
        self.below(100) < percent
    }

    /// Less than a small `limit`.
    pub fn small(&mut self, limit: u8) -> u8 {
        u8::try_from(self.below(u64::from(limit))).unwrap_or(0)
    }
}

/// One line: figures as `value kind told`, and equations. Kinds: p printed, k known, s slack, g guarded slack, n none.
#[must_use]
pub fn json(system: &System, withheld: &[bool]) -> String {
    let omitted = omitted(system, withheld);
    let mut text = String::from("{\"figures\":[");
    for (at, (figure, withheld)) in system.figures.iter().zip(withheld).enumerate() {
        let kind = match figure.kind {
            Kind::Printed => 'p',
            Kind::Known => 'k',
            Kind::Slack => 's',
            Kind::GuardedSlack => 'g',
            Kind::Nothing => 'n',
        };
        // Printed, withheld, or in a row that is not told.
        let told = match (withheld, omitted[at]) {
            (_, true) => 2,
            (true, false) => 1,
            (false, false) => 0,
        };
        let _ = write!(text, "{}[{},\"{kind}\",{told}]", if at > 0 { "," } else { "" }, figure.value);
    }
    text.push_str("],\"equations\":[");
    for (at, equation) in system.equations.iter().enumerate() {
        let _ = write!(text, "{}{equation:?}", if at > 0 { "," } else { "" });
    }
    text.push_str("]}");
    text.replace('(', "[").replace(')', "]").replace(' ', "")
}

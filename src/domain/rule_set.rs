//! A set of rules, one bit each: what holds, stands or is open at a visit is asked of one number.

use crate::rule::RuleId;

/// A set of rules.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct RuleSet(u64);

const _: () = assert!(RuleId::ALL.len() <= 64, "a rule has no bit");

impl RuleSet {
    /// The set of these rules.
    pub const fn of(rules: &[RuleId]) -> Self {
        let (mut set, mut at) = (0, 0);
        while at < rules.len() {
            set |= Self::bit(rules[at]);
            at += 1;
        }
        Self(set)
    }

    const fn bit(rule: RuleId) -> u64 {
        1 << rule as u32
    }

    /// Whether the rule is in it.
    pub const fn has(self, rule: RuleId) -> bool {
        self.0 & Self::bit(rule) != 0
    }

    /// Whether the two have a rule in common.
    pub const fn meets(self, other: Self) -> bool {
        self.0 & other.0 != 0
    }

    /// The rules of this set that are not in the other.
    pub const fn without(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    /// Puts a rule in.
    pub const fn insert(&mut self, rule: RuleId) {
        self.0 |= Self::bit(rule);
    }

    /// Takes a rule out.
    pub const fn remove(&mut self, rule: RuleId) {
        self.0 &= !Self::bit(rule);
    }
}

impl IntoIterator for RuleSet {
    type Item = RuleId;
    type IntoIter = Rules;

    fn into_iter(self) -> Rules {
        Rules(self.0)
    }
}

/// The rules of a set, in the order of [`RuleId::ALL`].
pub(crate) struct Rules(u64);

impl Iterator for Rules {
    type Item = RuleId;

    fn next(&mut self) -> Option<RuleId> {
        let rule = *RuleId::ALL.get(self.0.trailing_zeros() as usize)?;
        self.0 &= self.0 - 1;
        Some(rule)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_set_gives_its_rules_back_in_order() {
        let last = RuleId::ALL[RuleId::ALL.len() - 1];
        let mut set = RuleSet::of(&[last, RuleId::WeightLow, RuleId::DangerGeneral]);
        assert_eq!(Vec::from_iter(set), [RuleId::DangerGeneral, RuleId::WeightLow, last]);
        assert_eq!(Vec::from_iter(RuleSet::of(RuleId::ALL)), RuleId::ALL);
        assert!(set.has(RuleId::WeightLow) && !set.has(RuleId::WeightLoss));
        set.remove(RuleId::WeightLow);
        set.insert(RuleId::WeightLoss);
        assert!(!set.has(RuleId::WeightLow) && set.has(RuleId::WeightLoss));
        assert!(set.meets(RuleSet::of(&[last])) && !set.meets(RuleSet::default()));
        assert_eq!(Vec::from_iter(set.without(RuleSet::of(&[last]))), [RuleId::DangerGeneral, RuleId::WeightLoss]);
        assert_eq!(RuleSet::default().into_iter().next(), None);
    }
}

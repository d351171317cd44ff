//! What a correction would change of a child's open follow-ups, told before it is made. Two judgements are compared; nothing is
//! judged here.

use domain::assess::Assessment;
use domain::follow_up::FollowUp;
use domain::rule::RuleId;

/// What would change of the open follow-ups.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Effect {
    /// Would no longer be open.
    pub closes: Vec<FollowUp>,
    /// Would be open and are not now.
    pub opens: Vec<FollowUp>,
    /// Would stay open with another urgency or another day of the check: as they would be.
    pub changes: Vec<FollowUp>,
}

impl Effect {
    /// The difference between two judgements of one child on the same day, most urgent first.
    #[must_use]
    pub fn between(before: &Assessment, after: &Assessment) -> Self {
        let (was, is) = (before.open(), after.open());
        let among = |list: &[&FollowUp], rule: RuleId| list.iter().any(|f| f.rule == rule);
        let differs = |f: &FollowUp| was.iter().any(|b| b.rule == f.rule && (b.class, b.due_on) != (f.class, f.due_on));
        Self {
            closes: was.iter().filter(|f| !among(&is, f.rule)).map(|f| (*f).clone()).collect(),
            opens: is.iter().filter(|f| !among(&was, f.rule)).map(|f| (*f).clone()).collect(),
            changes: is.iter().filter(|f| differs(f)).map(|f| (*f).clone()).collect(),
        }
    }

    /// Whether nothing would change.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.closes.is_empty() && self.opens.is_empty() && self.changes.is_empty()
    }
}

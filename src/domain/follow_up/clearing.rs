//! When an open follow-up whose rule does not hold is closed. It opens nothing.

use super::engine::Open;
use super::facts::Story;
use super::rules::{BY_WLZ, Clears, regained, wasting_known_again, z_known_again};
use super::types::{FollowUp, LastTest, TestResult, Why};
use crate::calendar::days_between;
use crate::rule::{CloseReason, RuleId};

/// How a rule's follow-ups clear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// The first clear visit after the day of opening.
    Test,
    /// Two clear visits some days apart.
    TwoVisits,
    /// A care outcome.
    Care,
    /// A care outcome and a clear visit.
    CareAndTest,
    /// A clear visit or a care outcome.
    TestOrCare,
    /// A decision.
    Decision,
    /// Nothing but a correction.
    Correction,
}

/// The way of a rule.
#[must_use]
pub const fn way(rule: RuleId) -> Way {
    use RuleId as R;
    match rule {
        R::DangerGeneral | R::DangerYoungInfant | R::DangerOther => Way::CareAndTest,
        R::OedemaBothFeet | R::WastingSevere | R::WastingModerate | R::WastingYoung | R::LengthLow => Way::TwoVisits,
        R::ReactionSevere | R::ReactionSpreading | R::FeedingSwallowTrouble => Way::Care,
        R::ReactionMild | R::ReactionGivenAgain | R::DataTwinRecord => Way::Decision,
        R::FoodHoney => Way::TestOrCare,
        R::DataAgeProblem => Way::Correction,
        _ => Way::Test,
    }
}

/// The clearing test for one follow-up: that of the rule, and what depends on why the follow-up fired.
fn test(story: &Story<'_>, at: usize, rule: RuleId, open: &Open, clears: Clears) -> Clears {
    let now = &story.visits[at];
    match rule {
        RuleId::WeightLoss if !matches!(clears, Clears::Unknown(Why::Off)) => regained(story, at, open.last_fired_at),
        RuleId::WastingYoung if clears == Clears::Yes && !wasting_known_again(now, open.by) => Clears::Unknown(Why::Missing),
        RuleId::DataZOutside if clears == Clears::Yes && !z_known_again(now, open.by) => Clears::Unknown(Why::Missing),
        RuleId::WeightHigh if clears == Clears::Yes && now.wlz.is_none() && open.by & BY_WLZ != 0 => Clears::Unknown(Why::Missing),
        _ => clears,
    }
}

/// Notes in a follow-up what of its way is behind.
pub(super) const fn told(follow_up: &mut FollowUp, open: &Open) {
    follow_up.progress.first_clear_on = open.clear_since;
    follow_up.progress.care_told = open.care_told;
}

/// What a visit at which the rule does not hold does to a follow-up.
pub(super) struct Verdict {
    /// It closes, for this reason.
    pub closes: Option<CloseReason>,
    /// The rule was known to be clear: the follow-up counts as followed up.
    pub clear: bool,
}

/// Judges an open follow-up at a visit at which its rule does not hold, and keeps the row of its clear visits.
pub(super) fn judge(story: &Story<'_>, at: usize, follow_up: &mut FollowUp, open: &mut Open, clears: Clears) -> Verdict {
    let now = &story.visits[at];
    let later_day = now.on() > follow_up.opened_on;
    let tested = test(story, at, follow_up.rule, open, clears);
    if later_day {
        let result = match tested {
            Clears::Yes => TestResult::Met,
            Clears::No => TestResult::NotMet,
            Clears::Unknown(why) => TestResult::Unknown(why),
        };
        follow_up.progress.last_test = Some(LastTest { visit: now.visit.id, result });
    }
    let clear = later_day && tested == Clears::Yes;
    let resolved = |met: bool| met.then_some(CloseReason::ResolvedByVisit);
    let told = |met: bool| met.then_some(CloseReason::SeenOutcomeRecorded);
    let closes = match way(follow_up.rule) {
        Way::Test => resolved(clear),
        Way::TwoVisits => {
            if tested == Clears::No {
                open.clear_since = None;
            }
            if clear {
                let since = *open.clear_since.get_or_insert(now.on());
                resolved(days_between(since, now.on()) >= now.protocol.clearing.two_visits_days_apart)
            } else {
                None
            }
        }
        Way::Care => told(open.care_told),
        Way::CareAndTest => told(clear && open.care_told),
        Way::TestOrCare => resolved(clear).or(told(open.care_told)),
        Way::Decision => told(open.decision_told),
        Way::Correction => None,
    };
    Verdict { closes, clear: clear || (later_day && closes.is_some()) }
}

//! The three lists worked out for a day: visit overdue, not seen for long, referred without an outcome. Nothing of them is stored.

use chrono::NaiveDate;

use super::types::FollowUp;
use crate::assess::Listed;
use crate::calendar::{add_days, add_months, completed_months};
use crate::child::Child;
use crate::protocol::Protocol;
use crate::rule::RuleId;
use crate::schedule::{Slot, first_late};

/// From this age on a child may go longer without a visit.
const LONGER_FROM_MONTHS: u32 = 12;

/// The lists an active child is on.
pub(crate) fn lists(
    child: &Child,
    protocol: &Protocol,
    slots: &[Slot],
    last_seen_on: Option<NaiveDate>,
    follow_ups: &[FollowUp],
    as_of: NaiveDate,
) -> Vec<Listed> {
    let mut lists = Vec::new();
    let rules = &protocol.rules;
    if rules.visit_overdue.on
        && let Some(slot) = first_late(slots)
    {
        lists.push(Listed { rule: RuleId::VisitOverdue, counted_from: slot.window.closes(), of: None });
    }
    let lost_from = lost_from(child, protocol, last_seen_on, as_of);
    if rules.visit_lost.on && as_of >= lost_from {
        lists.push(Listed { rule: RuleId::VisitLost, counted_from: lost_from, of: None });
    }
    let waiting = follow_ups.iter().filter_map(|follow_up| Some((waits_from(follow_up, protocol)?, follow_up)));
    if rules.referral_no_outcome.on
        && let Some((from, longest)) = waiting.filter(|(from, _)| as_of > *from).min_by_key(|(from, _)| *from)
    {
        let of = Some((longest.rule, longest.opened_by));
        lists.push(Listed { rule: RuleId::ReferralNoOutcome, counted_from: from, of });
    }
    lists
}

/// The day from which on a child counts as not seen for long, at its age on a day.
fn lost_from(child: &Child, protocol: &Protocol, last_seen_on: Option<NaiveDate>, as_of: NaiveDate) -> NaiveDate {
    let limits = &protocol.rules.visit_lost.limits;
    let older = completed_months(child.born, as_of).is_some_and(|months| months >= LONGER_FROM_MONTHS);
    let days = if older { limits.after_days_from_12m } else { limits.after_days_under_12m };
    add_days(last_seen_on.unwrap_or(child.registered_on), days)
}

/// The day past which a referral waits too long for its outcome; `None` if it is no referral or an outcome was told.
fn waits_from(follow_up: &FollowUp, protocol: &Protocol) -> Option<NaiveDate> {
    if !follow_up.is_open() || follow_up.outcome_since_fired {
        return None;
    }
    let limits = &protocol.rules.referral_no_outcome.limits;
    if follow_up.class.is_urgent() {
        return Some(add_days(follow_up.last_fired_on, limits.urgent_after_days));
    }
    Some(add_days(follow_up.referred_since_fired?, limits.other_after_days))
}

/// The earliest day after `as_of` on which a list could begin, end or count otherwise, though nothing new is recorded.
pub(crate) fn next_list_change(
    child: &Child,
    protocol: &Protocol,
    last_seen_on: Option<NaiveDate>,
    follow_ups: &[FollowUp],
    as_of: NaiveDate,
) -> Option<NaiveDate> {
    let older_on = add_months(child.born, LONGER_FROM_MONTHS);
    let lost = [lost_from(child, protocol, last_seen_on, as_of), lost_from(child, protocol, last_seen_on, older_on), older_on];
    let waiting = follow_ups.iter().filter_map(|follow_up| Some(add_days(waits_from(follow_up, protocol)?, 1)));
    lost.into_iter().chain(waiting).filter(|day| *day > as_of).min()
}

//! What a home is visited for on a day, and in which order homes are gone to. It knows no name, no place and no page.

use chrono::NaiveDate;

use crate::calendar::add_days;
use crate::calendar::add_months;
use crate::calendar::completed_months;
use crate::calendar::days_between;
use crate::evidence::Evidence;
use crate::rule::Class;
use crate::rule::RuleId;

/// A follow-up due later than this many days from now is no errand of today (our own choice: a week is what a worker plans).
pub const LOOK_AHEAD_DAYS: i32 = 7;

/// The follow-up that a home's line names.
#[derive(Debug, Clone, PartialEq)]
pub struct FollowUpDue {
    /// Most severe class of the child's open follow-ups.
    pub class: Class,
    /// The rule to name.
    pub rule: RuleId,
    /// Its due day.
    pub due_on: NaiveDate,
    /// Its numbers.
    pub evidence: Evidence,
    /// Open follow-ups in all, this one too.
    pub open_count: u16,
    /// The day on which an emergency or a referral of today last fired, while nobody has told what became of it.
    pub unanswered_since: Option<NaiveDate>,
}

/// A visit that the schedule asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VisitDue {
    /// A window closed on this day without a visit.
    Late {
        /// Last day of the window.
        closed_on: NaiveDate,
    },
    /// A window is open.
    Open {
        /// The day aimed at.
        target: NaiveDate,
        /// Last day of the window.
        until: NaiveDate,
    },
}

/// Why a home is on the round. A home appears once: a visit due beside a follow-up is part of its errand.
#[derive(Debug, Clone, PartialEq)]
pub enum Errand {
    /// A follow-up, perhaps with a visit.
    FollowUp {
        /// The one to name.
        first: FollowUpDue,
        /// The visit due as well.
        visit: Option<VisitDue>,
    },
    /// Only a visit.
    Visit(VisitDue),
}

impl Errand {
    /// The errand of a home, if it has one.
    #[must_use]
    pub fn of(follow_up: Option<FollowUpDue>, visit: Option<VisitDue>) -> Option<Self> {
        match (follow_up, visit) {
            (Some(first), visit) => Some(Self::FollowUp { first, visit }),
            (None, Some(visit)) => Some(Self::Visit(visit)),
            (None, None) => None,
        }
    }

    /// The urgency of its follow-up.
    #[must_use]
    pub const fn class(&self) -> Option<Class> {
        match self {
            Self::FollowUp { first, .. } => Some(first.class),
            Self::Visit(_) => None,
        }
    }

    /// Whether it comes before all planning: an emergency, a referral of today, a check within two days.
    #[must_use]
    pub fn is_pressing(&self) -> bool {
        self.class().is_some_and(|class| class <= Class::TwoDays)
    }

    /// Whether nothing of it falls into the days ahead: it can be shown apart from what is to be done now.
    #[must_use]
    pub fn can_wait(&self, day: NaiveDate) -> bool {
        match self {
            Self::FollowUp { first, visit: None } => !self.is_pressing() && first.due_on > add_days(day, LOOK_AHEAD_DAYS),
            Self::FollowUp { .. } | Self::Visit(_) => false,
        }
    }

    /// Its place in the order of work: follow-ups by class, then late visits, then open ones.
    #[must_use]
    pub fn rank(&self) -> usize {
        match self {
            Self::FollowUp { first, .. } => Class::ALL.iter().position(|class| *class == first.class).unwrap_or(0),
            Self::Visit(VisitDue::Late { .. }) => Class::ALL.len(),
            Self::Visit(VisitDue::Open { .. }) => Class::ALL.len() + 1,
        }
    }

    /// The day that decides within a rank, the longest late first.
    #[must_use]
    pub const fn day(&self) -> NaiveDate {
        match self {
            Self::FollowUp { first, .. } => first.due_on,
            Self::Visit(VisitDue::Late { closed_on }) => *closed_on,
            Self::Visit(VisitDue::Open { until, .. }) => *until,
        }
    }
}

/// Keeps homes of one village together within a rank, where each village first came up; the order is otherwise kept.
#[must_use]
pub fn village_by_village<T, V: PartialEq>(homes: Vec<T>, rank: impl Fn(&T) -> usize, village: impl Fn(&T) -> V) -> Vec<T> {
    let mut seen: Vec<(usize, V)> = Vec::new();
    let mut placed: Vec<(usize, T)> = homes
        .into_iter()
        .map(|home| {
            let key = (rank(&home), village(&home));
            let at = seen.iter().position(|known| *known == key).unwrap_or(seen.len());
            if at == seen.len() {
                seen.push(key);
            }
            (at, home)
        })
        .collect();
    // A stable sort by first appearance; ranks come in order, so that it never moves a home across ranks.
    placed.sort_by_key(|(at, _)| *at);
    placed.into_iter().map(|(_, home)| home).collect()
}

/// How a visit of the schedule is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VisitAge {
    /// At this many months.
    Months(u32),
    /// At this many weeks.
    Weeks(u32),
    /// At this many days.
    Days(u32),
    /// So many days after a month.
    MonthsAndDays(u32, u32),
}

/// The age that a visit aims at, in the words of the schedule: months where the target falls on one, else days and weeks.
#[must_use]
pub fn visit_age(born: NaiveDate, target: NaiveDate) -> VisitAge {
    let months = completed_months(born, target).unwrap_or(0);
    let days = u32::try_from(days_between(born, target)).unwrap_or(0);
    if months > 0 && add_months(born, months) == target {
        return VisitAge::Months(months);
    }
    if months >= 4 {
        let over = u32::try_from(days_between(add_months(born, months), target)).unwrap_or(0);
        return VisitAge::MonthsAndDays(months, over);
    }
    if days >= 14 && days.is_multiple_of(7) { VisitAge::Weeks(days / 7) } else { VisitAge::Days(days) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn follow_up(class: Class, due: &str) -> FollowUpDue {
        FollowUpDue { class, rule: RuleId::WeightLow, due_on: d(due), evidence: Evidence::default(), open_count: 1, unanswered_since: None }
    }

    #[test]
    fn a_home_without_anything_due_has_no_errand() {
        assert_eq!(Errand::of(None, None), None);
        let open = VisitDue::Open { target: d("2026-11-25"), until: d("2026-12-02") };
        assert_eq!(Errand::of(None, Some(open)), Some(Errand::Visit(open)));
        assert_eq!(Errand::of(Some(follow_up(Class::Now, "2026-11-25")), Some(open)).and_then(|e| e.class()), Some(Class::Now));
    }

    #[test]
    fn only_what_is_neither_pressing_nor_near_can_wait() {
        let day = d("2026-11-25");
        let open = VisitDue::Open { target: day, until: d("2026-12-02") };
        for (class, due, visit, waits) in [
            (Class::Fortnight, "2026-12-03", None, true),
            (Class::Fortnight, "2026-12-02", None, false),
            (Class::Fortnight, "2026-12-03", Some(open), false),
            (Class::Month, "2026-12-25", None, true),
            (Class::TwoDays, "2026-12-25", None, false),
            (Class::Today, "2026-12-25", None, false),
        ] {
            let errand = Errand::of(Some(follow_up(class, due)), visit).expect("an errand");
            assert_eq!(errand.can_wait(day), waits, "{class:?} {due}");
        }
    }

    #[test]
    fn ranks_follow_the_order_of_work() {
        let late = Errand::Visit(VisitDue::Late { closed_on: d("2026-11-01") });
        let open = Errand::Visit(VisitDue::Open { target: d("2026-11-25"), until: d("2026-12-02") });
        let month = Errand::of(Some(follow_up(Class::Month, "2026-12-25")), None).expect("an errand");
        let now = Errand::of(Some(follow_up(Class::Now, "2026-11-25")), None).expect("an errand");
        let ranks: Vec<usize> = [&now, &month, &late, &open].iter().map(|e| e.rank()).collect();
        assert!(ranks.windows(2).all(|pair| pair[0] < pair[1]), "{ranks:?}");
    }

    #[test]
    fn homes_of_a_village_stay_together_within_a_rank_only() {
        let homes = vec![(0, 'u', 1), (0, 's', 2), (0, 'u', 3), (1, 's', 4), (1, 'u', 5), (1, 's', 6)];
        let order = village_by_village(homes, |h| h.0, |h| h.1);
        assert_eq!(order.iter().map(|h| h.2).collect::<Vec<_>>(), [1, 3, 2, 4, 6, 5]);
    }

    #[test]
    fn visits_are_called_as_the_schedule_does() {
        let born = d("2026-01-31");
        for (target, age) in [
            ("2026-02-03", VisitAge::Days(3)),
            ("2026-02-14", VisitAge::Weeks(2)),
            ("2026-03-14", VisitAge::Weeks(6)),
            ("2026-05-31", VisitAge::Months(4)),
            ("2026-06-30", VisitAge::Months(5)),
            ("2026-08-14", VisitAge::MonthsAndDays(6, 14)),
            ("2028-01-31", VisitAge::Months(24)),
        ] {
            assert_eq!(visit_age(born, d(target)), age, "{target}");
        }
    }
}

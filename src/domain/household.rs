//! Children of one home on a day: in which order they are seen, and who comes next. It knows no name and no place.

use chrono::NaiveDate;

use crate::errand::Errand;

/// What the order rests on, of a child in the programme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AtHome<'a> {
    /// What is to be done, if anything.
    pub errand: Option<&'a Errand>,
    /// Birth date.
    pub born: NaiveDate,
    /// Met on the day already.
    pub seen: bool,
}

impl AtHome<'_> {
    /// Whether something of it falls into the days ahead.
    #[must_use]
    pub fn is_due(&self, day: NaiveDate) -> bool {
        self.errand.is_some_and(|errand| !errand.can_wait(day))
    }
}

/// The children in the order of work: not seen yet first; of these the most urgent, then the longest due, then the youngest. Nothing to
/// do comes last, and is not left out: whoever is in the home may be looked at.
#[must_use]
pub fn in_order<T>(mut children: Vec<T>, of: impl for<'a> Fn(&'a T) -> AtHome<'a>) -> Vec<T> {
    children.sort_by_key(|child| {
        let at = of(child);
        let errand = at.errand.map_or((usize::MAX, NaiveDate::MAX), |errand| (errand.rank(), errand.day()));
        (at.seen, errand, std::cmp::Reverse(at.born))
    });
    children
}

/// Puts what shares a key behind the first of it; the order is otherwise kept, and what has no key stays where it is.
#[must_use]
pub fn side_by_side<T, K: PartialEq>(items: Vec<T>, key: impl Fn(&T) -> Option<K>) -> Vec<T> {
    let mut placed: Vec<(Option<K>, T)> = Vec::with_capacity(items.len());
    for item in items {
        let key = key(&item);
        let behind = key.as_ref().and_then(|key| placed.iter().rposition(|(known, _)| known.as_ref() == Some(key)));
        placed.insert(behind.map_or(placed.len(), |at| at + 1), (key, item));
    }
    placed.into_iter().map(|(_, item)| item).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::errand::FollowUpDue;
    use crate::errand::VisitDue;
    use crate::evidence::Evidence;
    use crate::rule::Class;
    use crate::rule::RuleId;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn follow_up(class: Class, due: &str) -> Option<Errand> {
        let first = FollowUpDue {
            class,
            rule: RuleId::WeightLow,
            due_on: d(due),
            evidence: Evidence::default(),
            open_count: 1,
            unanswered_since: None,
        };
        Some(Errand::FollowUp { first, visit: None })
    }

    struct Child {
        name: &'static str,
        errand: Option<Errand>,
        born: &'static str,
        seen: bool,
    }

    fn child(name: &'static str, errand: Option<Errand>, born: &'static str, seen: bool) -> Child {
        Child { name, errand, born, seen }
    }

    fn at(child: &Child) -> AtHome<'_> {
        AtHome { errand: child.errand.as_ref(), born: d(child.born), seen: child.seen }
    }

    #[test]
    fn who_is_not_seen_comes_first_by_urgency_and_nobody_is_left_out() {
        let visit = Some(Errand::Visit(VisitDue::Open { target: d("2026-11-25"), until: d("2026-12-05") }));
        let children = vec![
            child("nothing, older", None, "2025-01-01", false),
            child("seen", follow_up(Class::Now, "2026-11-25"), "2026-01-01", true),
            child("visit", visit, "2026-01-01", false),
            child("nothing, younger", None, "2026-05-01", false),
            child("week", follow_up(Class::Week, "2026-11-20"), "2026-01-01", false),
            child("two days", follow_up(Class::TwoDays, "2026-11-26"), "2025-06-01", false),
        ];
        let names: Vec<&str> = in_order(children, at).iter().map(|child| child.name).collect();
        assert_eq!(names, ["two days", "week", "visit", "nothing, younger", "nothing, older", "seen"]);
    }

    #[test]
    fn a_check_far_ahead_is_not_due_yet() {
        let due = |errand: Option<Errand>| at(&child("x", errand, "2026-01-01", false)).is_due(d("2026-11-25"));
        assert!(due(follow_up(Class::Week, "2026-11-27")));
        assert!(!due(follow_up(Class::Month, "2026-12-25")));
        assert!(!due(None));
    }

    #[test]
    fn what_shares_a_key_stands_behind_the_first_of_it() {
        let key = |text: &&str| text.split_once(' ').map(|(home, _)| home.to_owned());
        let mixed = vec!["a 1", "b 1", "alone", "a 2", "c 1", "b 2", "a 3", "other"];
        assert_eq!(side_by_side(mixed, key), ["a 1", "a 2", "a 3", "b 1", "b 2", "alone", "c 1", "other"]);
    }
}

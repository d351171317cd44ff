//! The measures of the pictures by worker, from the rows themselves: for a supervisor's own team, where nothing is withheld and
//! nothing leaves the programme. It counts by the definitions of the monthly tables, and puts nobody before anybody.

use std::collections::BTreeMap;

use crate::calendar::days_between;
use crate::ids::PersonId;
use crate::report::choose::seen;
use crate::report::indicator::{Indicator, Judged, of_visits};
use crate::report::layout::{FEEDING_BANDS, GROWTH_BANDS};
use crate::report::month::MonthRows;
use crate::report::period::Period;
use crate::report::picture::{CLASSES, Measures, Part, by_class};
use crate::report::rows::{ReportVisit, SlotEnd};
use crate::rule::{Class, RuleId};
use crate::visit::Contact;

/// Low weight for age in hundredths of a z-score: below −2 (WHO 2006 standards; as in the monthly table of growth).
const LOW: i32 = -200;

/// How many of how many.
#[derive(Debug, Clone, Copy, Default)]
struct Tally {
    n: u64,
    den: u64,
}

impl Tally {
    const fn add(&mut self, holds: bool) {
        self.den += 1;
        self.n += holds as u64;
    }

    const fn and(self, other: Self) -> Self {
        Self { n: self.n + other.n, den: self.den + other.den }
    }

    fn part(self) -> Part {
        Part::inside(self.n, self.den)
    }
}

#[derive(Debug, Clone, Copy, Default)]
struct Tallies {
    visits: Tally,
    overdue: [Tally; CLASSES],
    underweight: Tally,
    diversity: Tally,
}

impl Tallies {
    fn of_class(&self, class: Class) -> Tally {
        Class::ALL.iter().zip(self.overdue).find(|(listed, _)| **listed == class).map_or(Tally::default(), |(_, tally)| tally)
    }

    fn measures(&self) -> Measures {
        Measures {
            visits: self.visits.part(),
            overdue: self.overdue.into_iter().fold(Tally::default(), Tally::and).part(),
            overdue_by_class: by_class(|class| self.of_class(class).part()),
            underweight: self.underweight.part(),
            diversity: self.diversity.part(),
        }
    }
}

/// The measures of everybody together and of each worker: of slots, the worker of the target day; of follow-ups, the one at
/// opening; of children, the one of the last visit in the period.
#[must_use]
pub fn by_worker(period: Period, rows: &MonthRows) -> (Measures, BTreeMap<PersonId, Measures>) {
    let mut all = Tallies::default();
    let mut of: BTreeMap<PersonId, Tallies> = BTreeMap::new();
    let mut count = |worker: PersonId, add: &dyn Fn(&mut Tallies)| {
        add(&mut all);
        add(of.entry(worker).or_default());
    };
    for slot in rows.slots.iter().filter(|slot| period.contains(slot.closes)) {
        let done = matches!(slot.end, SlotEnd::OnTime | SlotEnd::EarlyOrLate);
        count(slot.worker, &|t| t.visits.add(done));
    }
    let last = period.last();
    // Severe food reactions are left out, as in the monthly tables.
    let open = |f: &&crate::report::rows::ReportFollowUp| f.opened_on <= last && f.closed_on.is_none_or(|on| on > last);
    for follow_up in rows.follow_ups.iter().filter(open).filter(|f| f.rule != RuleId::ReactionSevere) {
        let late = days_between(follow_up.due_on, last) > 0;
        count(follow_up.worker, &|t| {
            if let Some(at) = Class::ALL.iter().position(|class| *class == follow_up.class) {
                t.overdue[at].add(late);
            }
        });
    }
    for child in seen(&rows.visits, period, GROWTH_BANDS) {
        if let Some((low, _)) = child.latest(low_weight) {
            count(child.last().worker, &|t| t.underweight.add(low));
        }
    }
    for child in seen(&rows.visits, period, FEEDING_BANDS) {
        if let (Judged::Known(diverse), _) = of_visits(Indicator::Mdd, &child) {
            count(child.last().worker, &|t| t.diversity.add(diverse));
        }
    }
    // Whoever only made visits that none of these counts still stands in the list.
    for visit in rows.visits.iter().filter(|visit| period.contains(visit.on) && visit.contact != Contact::Phone) {
        count(visit.worker, &|_| {});
    }
    (all.measures(), of.into_iter().map(|(worker, tallies)| (worker, tallies.measures())).collect())
}

/// Whether the weight is low for the age, where that can be said: swelling of both feet counts as low; a z-score outside the
/// limits that nobody confirmed says nothing.
fn low_weight(visit: &ReportVisit) -> Option<bool> {
    if visit.oedema == Some(true) {
        return Some(true);
    }
    visit.waz.filter(|z| z.counts()).map(|z| z.hundredths < LOW)
}

#[cfg(test)]
#[path = "by_worker_tests.rs"]
mod tests;

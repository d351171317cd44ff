//! Which visit of a month speaks for a child. Each child counts once in tables of states: by its last visit at home or clinic,
//! and for an item that this visit lacks, by the latest one that has it. It knows no measure.

use std::collections::BTreeMap;

use crate::ids::ChildId;
use crate::report::layout::{Band, band_of};
use crate::report::period::Period;
use crate::report::rows::ReportVisit;
use crate::visit::Contact;

/// The visits of one child in a month, the last one first. A child stands in one place of a table: the area, the sex and the
/// age band of its last visit. Earlier visits of the month speak only while the child stood in that band and area.
#[derive(Debug, Clone)]
pub struct Seen<'a> {
    /// The age band at the last visit.
    pub band: usize,
    visits: Vec<&'a ReportVisit>,
}

impl<'a> Seen<'a> {
    /// The last visit.
    #[must_use]
    pub fn last(&self) -> &'a ReportVisit {
        self.visits[0]
    }

    /// The item of the latest visit that has it, and whether that is not the last one.
    pub fn latest<T>(&self, item: impl Fn(&'a ReportVisit) -> Option<T>) -> Option<(T, bool)> {
        self.visits.iter().enumerate().find_map(|(at, visit)| item(visit).map(|found| (found, at > 0)))
    }
}

/// Every child seen at home or clinic in the month, in the order of the keys; those past the last band are left out.
#[must_use]
pub fn seen<'a>(visits: &'a [ReportVisit], period: Period, bands: &[Band]) -> Vec<Seen<'a>> {
    let mut of_child: BTreeMap<ChildId, Vec<&ReportVisit>> = BTreeMap::new();
    for visit in visits.iter().filter(|visit| period.contains(visit.on) && visit.contact != Contact::Phone) {
        of_child.entry(visit.child).or_default().push(visit);
    }
    of_child
        .into_values()
        .filter_map(|mut visits| {
            visits.sort_by_key(|visit| std::cmp::Reverse((visit.on, visit.entry)));
            let band = band_of(bands, visits[0].months())?;
            let area = visits[0].area;
            visits.retain(|visit| band_of(bands, visit.months()) == Some(band) && visit.area == area);
            Some(Seen { band, visits })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::Sex;
    use crate::report::layout::FEEDING_BANDS;
    use crate::report::sample::{child, october, visit};

    #[test]
    fn the_last_visit_speaks_unless_it_lacks_the_item() {
        let baby = child(1, Sex::Female, "2025-01-20", "2025-02-01", 0);
        let mut early = visit(1, &baby, "2025-10-02");
        early.answers.meals = Some(3);
        early.answers.bottle = Some(true);
        let mut late = visit(2, &baby, "2025-10-15");
        late.answers.meals = Some(1);
        let mut phone = visit(3, &baby, "2025-10-30");
        phone.contact = Contact::Phone;
        phone.answers.meals = Some(5);
        let visits = [early, late, phone];
        let seen = seen(&visits, october().period, FEEDING_BANDS);
        assert_eq!(seen.len(), 1);
        assert_eq!(seen[0].latest(|v| v.answers.meals), Some((1, false)));
        assert_eq!(seen[0].latest(|v| v.answers.bottle), Some((true, true)));
        assert_eq!(seen[0].latest(|v| v.answers.sweet_drink), None);
    }

    #[test]
    fn a_visit_in_a_younger_band_does_not_speak() {
        // 5 months on 10 October, 6 months on 20 October.
        let baby = child(1, Sex::Male, "2025-04-15", "2025-05-01", 0);
        let mut young = visit(1, &baby, "2025-10-10");
        young.answers.meals = Some(2);
        let old = visit(2, &baby, "2025-10-20");
        let visits = [young, old];
        let seen = seen(&visits, october().period, FEEDING_BANDS);
        assert_eq!(FEEDING_BANDS[seen[0].band].code, "6-8");
        assert_eq!(seen[0].latest(|v| v.answers.meals), None);
    }
}

//! What speaks against giving a visit to another child.

use chrono::NaiveDate;

use crate::child::{Child, ChildStatus};
use crate::protocol::Protocol;
use crate::unusual::{Unusual, unusual};
use crate::visit::{Contact, Visit};

/// The visit cannot have been this child's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Obstacle {
    /// The child was born later, on this day.
    BeforeBirth(NaiveDate),
    /// The child had died before it, on this day.
    AfterDeath(NaiveDate),
}

/// Something to look at again before the visit goes there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Doubt {
    /// One is a girl, the other a boy.
    OtherSex,
    /// The child had left before it, on this day.
    AfterLeaving(NaiveDate),
    /// The child has a home or clinic visit on that day already; both are kept.
    SameDay,
    /// A measurement is unlike what is known of the child.
    Unusual(Unusual),
}

/// What speaks against giving `visit`, recorded of `from`, to `to`, who left on `left_on` and has these visits. What is unusual is
/// said by the protocol in force on its day.
///
/// # Errors
/// The obstacle; nothing else counts then.
pub fn against_moving(
    visit: &Visit,
    from: &Child,
    to: &Child,
    left_on: Option<NaiveDate>,
    visits: &[Visit],
    protocol: &Protocol,
) -> Result<Vec<Doubt>, Obstacle> {
    if visit.on < to.born {
        return Err(Obstacle::BeforeBirth(to.born));
    }
    let left_before = left_on.filter(|left| *left < visit.on);
    if let Some(died) = left_before.filter(|_| to.status == ChildStatus::Died) {
        return Err(Obstacle::AfterDeath(died));
    }
    let in_person = |v: &Visit| v.contact != Contact::Phone;
    let same_day = in_person(visit) && visits.iter().any(|v| v.on == visit.on && in_person(v));
    let mut doubts = Vec::new();
    doubts.extend((from.sex != to.sex).then_some(Doubt::OtherSex));
    doubts.extend(left_before.map(Doubt::AfterLeaving));
    doubts.extend(same_day.then_some(Doubt::SameDay));
    doubts.extend(unusual(to, visits, visit, protocol).into_iter().map(Doubt::Unusual));
    Ok(doubts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::Sex;
    use crate::ids::VisitId;
    use crate::protocol_toml::default_protocol;
    use crate::record::merging::tests::{child, day, visit};
    use crate::units::Weight;
    use crate::visit::Measurement;

    #[test]
    fn a_visit_before_birth_or_after_death_is_nobodys() {
        let (from, mut to) = (child("2026-03-01"), child("2026-04-01"));
        let against =
            |on: &str, to: &Child, left: Option<&str>| against_moving(&visit(1, on), &from, to, left.map(day), &[], default_protocol());
        assert_eq!(against("2026-03-31", &to, None), Err(Obstacle::BeforeBirth(day("2026-04-01"))));
        assert_eq!(against("2026-04-01", &to, None), Ok(Vec::new()));
        to.status = ChildStatus::Died;
        assert_eq!(against("2026-06-01", &to, Some("2026-06-01")), Ok(Vec::new()), "the day of death itself");
        assert_eq!(against("2026-06-02", &to, Some("2026-06-01")), Err(Obstacle::AfterDeath(day("2026-06-01"))));
        to.status = ChildStatus::Moved;
        assert_eq!(against("2026-06-02", &to, Some("2026-06-01")), Ok(vec![Doubt::AfterLeaving(day("2026-06-01"))]));
    }

    #[test]
    fn another_sex_a_visit_of_the_same_day_and_an_odd_weight_are_looked_at_again() {
        let (from, mut to) = (child("2026-03-01"), child("2026-03-01"));
        to.sex = Sex::Male;
        let mut moved = visit(1, "2026-09-01");
        moved.weight = Weight::from_grams(7_000).ok();
        let mut there = visit(2, "2026-08-10");
        there.weight = Weight::from_grams(4_000).ok();
        let doubts = against_moving(&moved, &from, &to, None, &[there, visit(3, "2026-09-01")], default_protocol()).expect("possible");
        assert!(doubts.contains(&Doubt::OtherSex) && doubts.contains(&Doubt::SameDay), "{doubts:?}");
        assert!(doubts.iter().any(|d| matches!(d, Doubt::Unusual(u) if u.measurement == Measurement::Weight)), "{doubts:?}");
        let mut call = Visit::empty(VisitId(3), day("2026-09-01"), Contact::Phone);
        call.weight = None;
        let calm = against_moving(&moved, &from, &from, None, &[call], default_protocol()).expect("possible");
        assert_eq!(calm, Vec::new(), "a call is no second visit");
    }
}

//! What a visit did not look at, so that "no concern" is never said of it. It knows no rule and no text.

use crate::code::codes;
use crate::draft::questions::Questions;
use crate::visit::Visit;

codes! {
    /// Something that was not looked at or asked.
    Unchecked, "unchecked part" {
        /// The signs of danger.
        Signs => "signs",
        /// Swollen feet.
        Feet => "feet",
        /// The weight.
        Weight => "weight",
        /// The length.
        Length => "length",
        /// The upper arm, from the age at which it is measured.
        Arm => "arm",
        /// Whether the child is breastfed, or what else it drinks.
        Milk => "milk",
        /// What and how often the child eats, from 6 months on.
        Food => "food",
        /// How the child swallows.
        Swallowing => "swallowing",
    }
}

/// What was not checked, the most telling first.
#[must_use]
pub fn unchecked(visit: &Visit, questions: &Questions) -> Vec<Unchecked> {
    Unchecked::ALL
        .iter()
        .copied()
        .filter(|part| match part {
            Unchecked::Signs => visit.danger_signs.is_none(),
            Unchecked::Feet => visit.oedema.is_none(),
            Unchecked::Weight => visit.weight.is_none(),
            Unchecked::Length => visit.length.is_none(),
            Unchecked::Arm => questions.arm && visit.muac.is_none(),
            Unchecked::Milk => visit.breastfed.is_none() || (questions.infant && visit.breast_only.is_none()),
            Unchecked::Food => !questions.infant && (visit.groups.is_none() || visit.meals.is_none()),
            Unchecked::Swallowing => !questions.infant && visit.swallow_trouble.is_none(),
        })
        .collect()
}

/// Whether no part at all was looked at, and the head was not measured either.
#[must_use]
pub fn nothing_checked(visit: &Visit, questions: &Questions) -> bool {
    let empty = Visit::empty(visit.id, visit.on, visit.contact);
    visit.head.is_none() && unchecked(visit, questions) == unchecked(&empty, questions)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ids::VisitId;
    use crate::visit::Contact;
    use std::collections::BTreeSet;

    fn questions(infant: bool, arm: bool) -> Questions {
        Questions {
            months: 8,
            young: false,
            infant,
            arm,
            started: false,
            readiness: false,
            plans: false,
            appetite: false,
            also: Vec::new(),
            signs: Vec::new(),
            last: crate::draft::questions::LastTime::default(),
        }
    }

    #[test]
    fn nothing_asked_is_everything_unchecked_and_an_answer_no_is_checked() {
        let mut v = Visit::empty(VisitId(1), "2026-11-25".parse().expect("a date"), Contact::Home);
        assert_eq!(unchecked(&v, &questions(false, true)), Unchecked::ALL);
        assert!(!unchecked(&v, &questions(true, false)).contains(&Unchecked::Arm));
        assert!(nothing_checked(&v, &questions(false, true)) && nothing_checked(&v, &questions(true, false)));
        v.head = crate::units::HeadCircumference::from_mm(440).ok();
        assert!(v.head.is_some() && !nothing_checked(&v, &questions(false, true)), "a head is a measurement");
        v.head = None;
        v.oedema = Some(false);
        assert!(!nothing_checked(&v, &questions(false, true)), "no swelling was looked for and not found");
        v.danger_signs = Some(BTreeSet::new());
        let rest = unchecked(&v, &questions(false, true));
        assert!(!rest.contains(&Unchecked::Signs) && !rest.contains(&Unchecked::Feet) && rest.contains(&Unchecked::Weight));
    }
}

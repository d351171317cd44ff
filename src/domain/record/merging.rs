//! Two records of one child: what has to be asked, what contradicts, and the facts of the one that goes on.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::child::{Child, ChildStatus};
use crate::code::codes;
use crate::visit::{Contact, Visit};

/// One of the two records, in the order shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The first.
    First,
    /// The second.
    Second,
}

impl Side {
    /// As forms name it.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Second => "second",
        }
    }

    /// The side that a form names.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::First, Self::Second].into_iter().find(|side| side.code() == code)
    }
}

codes! {
    /// A fact on which the two records differ: somebody has to say which is right.
    Question, "question" {
        /// Birth date.
        Born => "born",
        /// Sex.
        Sex => "sex",
        /// Birth weight.
        BirthWeight => "birth_weight",
        /// Length of pregnancy.
        Gestation => "gestation",
        /// In the programme, or how the child left.
        Status => "status",
    }
}

/// One of the two records.
#[derive(Debug, Clone, Copy)]
pub struct Half<'a> {
    /// Its facts.
    pub child: &'a Child,
    /// The day it left.
    pub left_on: Option<NaiveDate>,
    /// Its visits.
    pub visits: &'a [Visit],
}

/// Which record is right, for each question asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Answers {
    /// Birth date.
    pub born: Option<Side>,
    /// Sex.
    pub sex: Option<Side>,
    /// Birth weight.
    pub birth_weight: Option<Side>,
    /// Length of pregnancy.
    pub gestation: Option<Side>,
    /// Status.
    pub status: Option<Side>,
}

impl Answers {
    /// The answer to a question.
    #[must_use]
    pub const fn to(&self, question: Question) -> Option<Side> {
        match question {
            Question::Born => self.born,
            Question::Sex => self.sex,
            Question::BirthWeight => self.birth_weight,
            Question::Gestation => self.gestation,
            Question::Status => self.status,
        }
    }

    /// Notes an answer.
    pub const fn set(&mut self, question: Question, side: Side) {
        let place = match question {
            Question::Born => &mut self.born,
            Question::Sex => &mut self.sex,
            Question::BirthWeight => &mut self.birth_weight,
            Question::Gestation => &mut self.gestation,
            Question::Status => &mut self.status,
        };
        *place = Some(side);
    }
}

/// Why the two cannot be one child as they stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Contradiction {
    /// A visit on this day lies before the birth date that was said to be right.
    VisitBeforeBirth(NaiveDate),
    /// One was registered on this day, before the birth date that was said to be right.
    RegisteredBeforeBirth(NaiveDate),
    /// One record says that the child died, the other does not.
    OneDied,
    /// Both say that the child died, on different days.
    DiedOnOtherDays,
    /// A visit on this day lies after the child's death.
    VisitAfterDeath(NaiveDate),
}

/// The facts of the record that goes on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Merged {
    /// Facts. Whether it looks like another child is left as the surviving record has it.
    pub child: Child,
    /// The day it left.
    pub left_on: Option<NaiveDate>,
    /// Whose length of pregnancy it is, with how it is known.
    pub gestation: Side,
}

/// What has to be asked before the two become one, in the order shown.
#[must_use]
pub fn questions(first: &Half<'_>, second: &Half<'_>) -> Vec<Question> {
    let (a, b) = (first.child, second.child);
    let differ = |question: &Question| match question {
        Question::Born => a.born != b.born,
        Question::Sex => a.sex != b.sex,
        Question::BirthWeight => both_differ(a.birth_weight, b.birth_weight),
        Question::Gestation => both_differ(a.gestation_days, b.gestation_days),
        // A death is no matter of choice: it contradicts.
        Question::Status => a.status != b.status && ![a.status, b.status].contains(&ChildStatus::Died),
    };
    Question::ALL.iter().copied().filter(differ).collect()
}

fn both_differ<T: PartialEq>(a: Option<T>, b: Option<T>) -> bool {
    matches!((a, b), (Some(a), Some(b)) if a != b)
}

/// Days on which both have a home or clinic visit: both visits are kept.
#[must_use]
pub fn same_days(first: &Half<'_>, second: &Half<'_>) -> Vec<NaiveDate> {
    let days = |half: &Half<'_>| -> BTreeSet<NaiveDate> {
        half.visits.iter().filter(|visit| visit.contact != Contact::Phone).map(|visit| visit.on).collect()
    };
    days(first).intersection(&days(second)).copied().collect()
}

/// The facts of the one record, from the answers to [`questions`]; a question without an answer goes by `survivor`.
///
/// # Errors
/// Everything that contradicts.
pub fn merged(first: &Half<'_>, second: &Half<'_>, survivor: Side, answers: &Answers) -> Result<Merged, BTreeSet<Contradiction>> {
    let of = |side: Side| match side {
        Side::First => first,
        Side::Second => second,
    };
    let by = |question: Question| of(answers.to(question).unwrap_or(survivor));
    let (a, b) = (first.child, second.child);
    let either = |x: Option<bool>, y: Option<bool>| if x == Some(true) || y == Some(true) { Some(true) } else { x.or(y) };
    let gestation = match (a.gestation_days, b.gestation_days) {
        (None, Some(_)) => Side::Second,
        (Some(_), None) => Side::First,
        _ => answers.gestation.unwrap_or(survivor),
    };
    let born = by(Question::Born).child;
    let (status, left_on) = status(first, second, by(Question::Status));
    let child = Child {
        sex: by(Question::Sex).child.sex,
        born: born.born,
        birth_day_known: if a.born == b.born { a.birth_day_known || b.birth_day_known } else { born.birth_day_known },
        gestation_days: of(gestation).child.gestation_days,
        birth_weight: by(Question::BirthWeight).child.birth_weight.or(a.birth_weight).or(b.birth_weight),
        registered_on: a.registered_on.min(b.registered_on),
        ever_breastfed: either(a.ever_breastfed, b.ever_breastfed),
        severe_eczema: either(a.severe_eczema, b.severe_eczema),
        known_food_allergy: either(a.known_food_allergy, b.known_food_allergy),
        status,
        looks_like_another: of(survivor).child.looks_like_another,
    };
    let wrong = contradictions(first, second, &child, left_on);
    if wrong.is_empty() { Ok(Merged { child, left_on, gestation }) } else { Err(wrong) }
}

/// The status said to be right; where both left alike, the later day: until then the child was there.
fn status(first: &Half<'_>, second: &Half<'_>, right: &Half<'_>) -> (ChildStatus, Option<NaiveDate>) {
    if first.child.status == second.child.status {
        return (first.child.status, first.left_on.max(second.left_on));
    }
    (right.child.status, right.left_on)
}

fn contradictions(first: &Half<'_>, second: &Half<'_>, child: &Child, left_on: Option<NaiveDate>) -> BTreeSet<Contradiction> {
    let days = || first.visits.iter().chain(second.visits).map(|visit| visit.on);
    let mut wrong = BTreeSet::new();
    wrong.extend(days().filter(|on| *on < child.born).min().map(Contradiction::VisitBeforeBirth));
    wrong.extend((child.registered_on < child.born).then_some(Contradiction::RegisteredBeforeBirth(child.registered_on)));
    match (first.child.status == ChildStatus::Died, second.child.status == ChildStatus::Died) {
        (false, false) => {}
        (true, true) => {
            wrong.extend((first.left_on != second.left_on).then_some(Contradiction::DiedOnOtherDays));
            let after = days().filter(|on| left_on.is_some_and(|died| *on > died)).max();
            wrong.extend(after.map(Contradiction::VisitAfterDeath));
        }
        _ => {
            wrong.insert(Contradiction::OneDied);
        }
    }
    wrong
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::child::Sex;
    use crate::ids::VisitId;
    use crate::units::Weight;

    pub(in crate::record) fn day(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    pub(in crate::record) fn child(born: &str) -> Child {
        Child {
            sex: Sex::Female,
            born: day(born),
            birth_day_known: true,
            gestation_days: None,
            birth_weight: None,
            registered_on: day(born),
            ever_breastfed: None,
            severe_eczema: None,
            known_food_allergy: None,
            status: ChildStatus::Active,
            looks_like_another: false,
        }
    }

    pub(in crate::record) fn visit(n: u128, on: &str) -> Visit {
        Visit::empty(VisitId(n), day(on), Contact::Home)
    }

    fn half<'a>(child: &'a Child, visits: &'a [Visit]) -> Half<'a> {
        Half { child, left_on: None, visits }
    }

    #[test]
    fn what_one_record_does_not_know_the_other_tells() {
        let (mut a, mut b) = (child("2026-03-01"), child("2026-03-01"));
        (a.registered_on, b.registered_on) = (day("2026-04-10"), day("2026-03-20"));
        (a.birth_day_known, a.severe_eczema, b.severe_eczema) = (false, Some(false), Some(true));
        (b.birth_weight, b.gestation_days) = (Weight::from_grams(2_300).ok(), Some(245));
        a.known_food_allergy = Some(false);
        let (a, b) = (half(&a, &[]), half(&b, &[]));
        assert_eq!(questions(&a, &b), []);
        for survivor in [Side::First, Side::Second] {
            let one = merged(&a, &b, survivor, &Answers::default()).expect("fits");
            assert_eq!((one.child.registered_on, one.child.birth_day_known), (day("2026-03-20"), true));
            assert_eq!((one.child.birth_weight, one.child.gestation_days), (b.child.birth_weight, Some(245)));
            assert_eq!((one.child.severe_eczema, one.child.known_food_allergy), (Some(true), Some(false)));
            assert_eq!(one.gestation, Side::Second);
        }
    }

    #[test]
    fn facts_that_differ_are_asked_and_the_answer_holds_whoever_goes_on() {
        let (mut a, mut b) = (child("2026-03-01"), child("2026-03-11"));
        (a.sex, b.birth_day_known) = (Sex::Male, false);
        (a.birth_weight, b.birth_weight) = (Weight::from_grams(2_300).ok(), Weight::from_grams(3_200).ok());
        (a.gestation_days, b.gestation_days) = (Some(245), Some(280));
        (a.status, a.registered_on) = (ChildStatus::Moved, day("2026-03-12"));
        let (a, b) = (Half { left_on: Some(day("2026-06-01")), ..half(&a, &[]) }, half(&b, &[]));
        assert_eq!(questions(&a, &b), Question::ALL);
        let mut answers = Answers::default();
        for question in Question::ALL {
            answers.set(*question, if *question == Question::Sex { Side::First } else { Side::Second });
        }
        let both = [Side::First, Side::Second].map(|survivor| merged(&a, &b, survivor, &answers).expect("fits"));
        assert_eq!(both[0], both[1]);
        let one = &both[0].child;
        assert_eq!((one.sex, one.born, one.birth_day_known), (Sex::Male, day("2026-03-11"), false));
        assert_eq!((one.birth_weight, one.gestation_days), (b.child.birth_weight, Some(280)));
        assert_eq!((one.status, both[0].left_on), (ChildStatus::Active, None));
        answers.set(Question::Status, Side::First);
        let left = merged(&a, &b, Side::Second, &answers).expect("fits");
        assert_eq!((left.child.status, left.left_on), (ChildStatus::Moved, Some(day("2026-06-01"))));
    }

    #[test]
    fn visits_and_registration_before_the_birth_said_to_be_right_contradict() {
        let (a, b) = (child("2026-03-01"), child("2026-04-01"));
        let visits = [visit(1, "2026-03-20"), visit(2, "2026-05-01")];
        let (a, b) = (half(&a, &visits), half(&b, &[]));
        let said = |side| merged(&a, &b, Side::First, &Answers { born: Some(side), ..Answers::default() });
        assert!(said(Side::First).is_ok());
        let expected = [Contradiction::VisitBeforeBirth(day("2026-03-20")), Contradiction::RegisteredBeforeBirth(day("2026-03-01"))].into();
        assert_eq!(said(Side::Second), Err(expected));
    }

    #[test]
    fn a_death_that_only_one_record_knows_contradicts() {
        let (mut a, mut b) = (child("2026-03-01"), child("2026-03-01"));
        a.status = ChildStatus::Died;
        let visits = [visit(1, "2026-06-02")];
        let with = |a: &Child, b: &Child, days: [Option<&str>; 2]| {
            let (a, b) = (Half { left_on: days[0].map(day), ..half(a, &[]) }, Half { left_on: days[1].map(day), ..half(b, &visits) });
            assert!(!questions(&a, &b).contains(&Question::Status), "never a matter of choice");
            merged(&a, &b, Side::First, &Answers::default())
        };
        assert_eq!(with(&a, &b, [Some("2026-06-10"), None]), Err([Contradiction::OneDied].into()));
        b.status = ChildStatus::Died;
        assert_eq!(with(&a, &b, [Some("2026-06-10"), Some("2026-06-11")]), Err([Contradiction::DiedOnOtherDays].into()));
        assert_eq!(with(&a, &b, [Some("2026-06-01"); 2]), Err([Contradiction::VisitAfterDeath(day("2026-06-02"))].into()));
        assert!(with(&a, &b, [Some("2026-06-02"); 2]).is_ok());
    }

    #[test]
    fn days_with_a_visit_in_both_are_told() {
        let child = child("2026-03-01");
        let call = Visit::empty(VisitId(9), day("2026-05-01"), Contact::Phone);
        let (a, b) = ([visit(1, "2026-04-01"), call], [visit(2, "2026-04-01"), visit(3, "2026-05-01")]);
        assert_eq!(same_days(&half(&child, &a), &half(&child, &b)), [day("2026-04-01")]);
    }
}

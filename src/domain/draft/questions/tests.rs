//! What stands open on the page of a visit, at each edge of age, birth and what is open.

use super::*;
use crate::child::ChildStatus;
use crate::child::Sex;
use crate::food::Response;
use crate::ids::VisitId;
use crate::visit::Contact;
use crate::visit::FoodOffer;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn child(born: &str) -> Child {
    Child {
        sex: Sex::Female,
        born: d(born),
        birth_day_known: true,
        gestation_days: None,
        birth_weight: None,
        registered_on: d(born),
        ever_breastfed: None,
        severe_eczema: None,
        known_food_allergy: None,
        status: ChildStatus::Active,
        looks_like_another: false,
    }
}

fn of(born: &str, visits: &[Visit], open: &[RuleId]) -> Questions {
    let open = open.iter().copied().collect();
    Questions::of(&Before { child: &child(born), visits, open: &open, on: d("2026-11-25") })
}

#[test]
fn the_page_changes_with_age_on_the_day() {
    for (born, months, young, infant, arm) in [
        ("2026-11-20", 0, true, true, false),
        ("2026-10-14", 1, true, true, true),
        ("2026-10-15", 1, true, true, false),
        ("2026-09-25", 2, false, true, true),
        ("2026-05-26", 5, false, true, true),
        ("2026-05-25", 6, false, false, true),
    ] {
        let q = of(born, &[], &[]);
        assert_eq!((q.months, q.young, q.infant, q.arm), (months, young, infant, arm), "{born}");
    }
}

#[test]
fn every_sign_is_asked_but_hard_stools_only_after_honey() {
    for born in ["2026-11-20", "2026-04-01"] {
        let signs: BTreeSet<_> = of(born, &[], &[]).signs.into_iter().collect();
        let missing: Vec<_> = DangerSign::ALL.iter().filter(|s| !signs.contains(s)).collect();
        assert_eq!(missing, [&DangerSign::Constipation], "{born}");
    }
    assert!(of("2026-04-01", &[], &[RuleId::FoodHoney]).signs.contains(&DangerSign::Constipation));
    let honey = |on: &str| {
        let mut v = Visit::empty(VisitId(1), d(on), Contact::Home);
        v.foods.push(FoodOffer {
            code: FoodCode("honey".into()),
            offers: 1,
            response: Some(Response::Accepted),
            unsafe_form: None,
            signs: None,
            minutes_after: None,
            hold_lifted: false,
        });
        of("2026-04-01", &[v], &[]).signs.contains(&DangerSign::Constipation)
    };
    assert_eq!((honey("2026-10-26"), honey("2026-10-25")), (true, false), "30 days");
}

#[test]
fn the_start_of_solids_is_asked_until_it_is_known() {
    let mut told = Visit::empty(VisitId(1), d("2026-11-01"), Contact::Home);
    told.solids_started_on = Some(d("2026-10-28"));
    assert!(of("2026-05-20", &[], &[]).started && of("2026-05-20", &[], &[]).readiness);
    assert!(!of("2026-05-20", &[told.clone()], &[]).started);
    assert!(of("2026-05-20", &[told], &[RuleId::SolidsEarly]).started, "an open follow-up asks again");
    assert!(!of("2026-08-20", &[], &[]).started, "too young to be asked first");
}

#[test]
fn only_honey_that_was_given_and_not_after_the_visit_asks_about_hard_stools() {
    let asked = |on: &str, code: &str, offers: u16| {
        let mut v = Visit::empty(VisitId(1), d(on), Contact::Home);
        v.foods.push(FoodOffer {
            code: FoodCode(code.into()),
            offers,
            response: None,
            unsafe_form: None,
            signs: None,
            minutes_after: None,
            hold_lifted: offers == 0,
        });
        of("2026-04-01", &[v], &[]).signs.contains(&DangerSign::Constipation)
    };
    assert!(asked("2026-11-25", "honey", 1), "told earlier on the same day");
    assert!(!asked("2026-11-26", "honey", 1), "told at a later visit");
    assert!(!asked("2026-11-20", "honey", 0), "named, not given");
    assert!(!asked("2026-11-20", "beans", 3), "another food");
}

#[test]
fn the_start_of_solids_is_known_from_any_answer_that_says_they_were_given() {
    let started = |fill: &dyn Fn(&mut Visit)| {
        let mut v = Visit::empty(VisitId(1), d("2026-11-01"), Contact::Home);
        fill(&mut v);
        let visits = [v, Visit::empty(VisitId(2), d("2026-11-10"), Contact::Home)];
        let q = of("2026-06-20", &visits, &[]);
        assert_eq!(q.started, !q.last.solids && q.last.started_on.is_none());
        q.last.solids
    };
    assert!(started(&|v| v.solids_started_on = Some(d("2026-10-28"))));
    assert!(started(&|v| v.solids_yesterday = Some(true)));
    assert!(started(&|v| v.meals = Some(1)));
    assert!(!started(&|v| v.meals = Some(0)));
    assert!(!started(&|v| v.solids_yesterday = Some(false)));
    assert!(!started(&|_| {}));
}

#[test]
fn each_question_of_an_age_begins_and_ends_on_its_day() {
    // (born, start of solids, readiness): from 5 completed months; readiness up to the last day before 8 months of stage age.
    for (born, started, readiness) in
        [("2026-06-26", false, false), ("2026-06-25", true, true), ("2026-03-26", true, true), ("2026-03-25", true, false)]
    {
        let q = of(born, &[], &[]);
        assert_eq!((q.started, q.readiness), (started, readiness), "{born}");
    }
    let late = of("2026-03-25", &[], &[RuleId::SolidsLate]);
    assert!(late.readiness && late.started, "asked while the follow-up is open");
    // Eight weeks early: the stage age is 4 months when the child has been born for 6.
    let early = Child { gestation_days: Some(224), ..child("2026-05-25") };
    let open = BTreeSet::new();
    let q = Questions::of(&Before { child: &early, visits: &[], open: &open, on: d("2026-11-25") });
    assert_eq!((q.months, q.started, q.readiness), (6, true, false));
}

#[test]
fn plans_are_asked_of_small_and_early_babies_up_to_61_days_and_while_a_follow_up_turns_on_one() {
    let plans = |born: &str, grams: u32, gestation: u16| {
        let child = Child { birth_weight: Weight::from_grams(grams).ok(), gestation_days: Some(gestation), ..child(born) };
        Questions::of(&Before { child: &child, visits: &[], open: &BTreeSet::new(), on: d("2026-11-25") }).plans
    };
    // 61 days old on the day; 62 days.
    let (young, older) = ("2026-09-25", "2026-09-24");
    assert!(plans(young, 2_499, 259) && plans(young, 2_500, 258));
    assert!(!plans(young, 2_500, 259));
    assert!(!plans(older, 2_499, 258));
    assert!(!of(young, &[], &[]).plans, "nothing known of the birth");
    for rule in [RuleId::SolidsEarly, RuleId::MilkAnimalEarly, RuleId::BirthLow, RuleId::BreastfeedingStopped] {
        assert!(of(older, &[], &[rule]).plans, "{rule:?}");
    }
    assert!(!of(older, &[], &[RuleId::WeightLow]).plans);
}

#[test]
fn poor_appetite_is_asked_while_it_or_anything_on_growth_is_open() {
    let asked = |open: &[RuleId]| of("2026-04-01", &[], open).appetite;
    assert!(asked(&[RuleId::AppetitePoor]) && asked(&[RuleId::WeightLow]) && asked(&[RuleId::DrinkSweet, RuleId::LengthLow]));
    assert!(!asked(&[]) && !asked(&[RuleId::DrinkSweet]));
}

#[test]
fn quick_ticks_follow_the_age_and_the_breast() {
    use Also as A;
    let older = [A::IronSource, A::SweetDrink, A::UnhealthyFood, A::TeaCoffee, A::Salt, A::Sugar];
    let ticks = |born: &str, breastfed: Option<bool>| {
        let mut v = Visit::empty(VisitId(1), d("2026-11-01"), Contact::Home);
        v.breastfed = breastfed;
        of(born, &[v], &[]).also
    };
    assert_eq!(ticks("2026-05-26", None), [A::Bottle, A::Honey, A::BreastfeedingTrouble, A::Ill]);
    let rest = [A::Bottle, A::Honey, A::BreastfeedingTrouble, A::Ill];
    assert_eq!(ticks("2026-05-25", Some(true)), [&older[..], &rest[..]].concat());
    assert_eq!(ticks("2025-11-26", Some(false)), [&older[..], &[A::Bottle, A::Honey, A::Ill]].concat());
    assert_eq!(ticks("2025-11-25", Some(false)), [&older[..], &[A::Bottle, A::Ill]].concat());
}

#[test]
fn the_signs_of_a_young_infant_come_first_under_two_months() {
    assert_eq!(of("2026-09-26", &[], &[]).signs[0], DangerSign::NotFeedingWell);
    assert_eq!(of("2026-09-25", &[], &[]).signs[0], DangerSign::CannotFeed);
}

#[test]
fn last_time_is_the_latest_that_was_recorded_before_the_day() {
    let visit = |on: &str, grams: Option<u32>| {
        let mut v = Visit::empty(VisitId(1), d(on), Contact::Home);
        v.weight = grams.and_then(|g| Weight::from_grams(g).ok());
        v
    };
    let visits = [visit("2026-11-25", Some(9000)), visit("2026-10-01", Some(7000)), visit("2026-11-01", None)];
    let last = LastTime::of(&visits, d("2026-11-25"));
    assert_eq!(last.weight.map(|(w, on)| (w.grams(), on)), Some((7000, d("2026-10-01"))));
    assert_eq!(last.visit, Some(d("2026-11-01")));
}

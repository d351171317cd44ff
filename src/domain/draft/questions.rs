//! Which questions of a visit stand open on the page and which wait one tap away, by age, stage, what was told before and what
//! is open. Every question can be reached at every age: this decides only what is seen first. It knows no text and no layout.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::completed_months;
use crate::calendar::days_between;
use crate::child::Child;
use crate::draft::visit::also::Also;
use crate::food::FoodCode;
use crate::food::Texture;
use crate::growth::stage_months;
use crate::rule::RuleId;
use crate::rule::Theme;
use crate::units::HeadCircumference;
use crate::units::Length;
use crate::units::Muac;
use crate::units::Weight;
use crate::visit::DangerSign;
use crate::visit::Visit;

/// What is known before the visit.
#[derive(Clone, Copy)]
pub struct Before<'a> {
    /// The child.
    pub child: &'a Child,
    /// Visits before this one, by date; later ones are ignored.
    pub visits: &'a [Visit],
    /// Rules with an open follow-up.
    pub open: &'a BTreeSet<RuleId>,
    /// The day of the visit.
    pub on: NaiveDate,
}

/// What stands open on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Questions {
    /// Chronological age in completed months.
    pub months: u32,
    /// Under 2 months: the signs of young infants come first.
    pub young: bool,
    /// Under 6 months: one question opens all that is not breast milk.
    pub infant: bool,
    /// The arm is measured from 6 weeks on (WHO 2023 gives a limit from that age; from memory).
    pub arm: bool,
    /// The day solids began.
    pub started: bool,
    /// Signs of being ready for solids.
    pub readiness: bool,
    /// What a clinic's plan covers.
    pub plans: bool,
    /// Days of poor appetite.
    pub appetite: bool,
    /// Lines of the list of quick ticks.
    pub also: Vec<Also>,
    /// Signs, the most telling at this age first. Every sign of danger that any rule asks for at this age is in it.
    pub signs: Vec<DangerSign>,
    /// What was found last time.
    pub last: LastTime,
}

/// The latest earlier value of each measure and of what is shown beside a question, with its day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LastTime {
    /// The latest earlier visit.
    pub visit: Option<NaiveDate>,
    /// Weight.
    pub weight: Option<(Weight, NaiveDate)>,
    /// Length.
    pub length: Option<(Length, NaiveDate)>,
    /// Upper arm.
    pub arm: Option<(Muac, NaiveDate)>,
    /// Head.
    pub head: Option<(HeadCircumference, NaiveDate)>,
    /// Meals.
    pub meals: Option<(u8, NaiveDate)>,
    /// Usual texture.
    pub texture: Option<(Texture, NaiveDate)>,
    /// Whether the child was breastfed.
    pub breastfed: Option<bool>,
    /// Whether solids are known to have begun.
    pub solids: bool,
    /// The stated start of solids.
    pub started_on: Option<NaiveDate>,
}

impl LastTime {
    /// From the visits dated before `on`.
    #[must_use]
    pub fn of(visits: &[Visit], on: NaiveDate) -> Self {
        let mut earlier: Vec<&Visit> = visits.iter().filter(|v| v.on < on).collect();
        earlier.sort_by_key(|v| v.on);
        let mut last = Self::default();
        for v in earlier {
            last.visit = Some(v.on);
            last.weight = v.weight.map(|x| (x, v.on)).or(last.weight);
            last.length = v.length.map(|x| (x, v.on)).or(last.length);
            last.arm = v.muac.map(|x| (x, v.on)).or(last.arm);
            last.head = v.head.map(|x| (x, v.on)).or(last.head);
            last.meals = v.meals.map(|x| (x, v.on)).or(last.meals);
            last.texture = v.texture_usual.map(|x| (x, v.on)).or(last.texture);
            last.breastfed = v.breastfed.or(last.breastfed);
            last.started_on = v.solids_started_on.or(last.started_on);
            last.solids |= v.solids_started_on.is_some() || v.solids_yesterday == Some(true) || v.meals.is_some_and(|n| n > 0);
        }
        last
    }
}

/// Honey is watched for 30 days: signs of infant botulism may come 3 to 30 days after it (public health pages on infant botulism).
const HONEY_DAYS: i32 = 30;

impl Questions {
    /// For a visit on a day.
    #[must_use]
    pub fn of(before: &Before<'_>) -> Self {
        let Before { child, visits, open, on } = *before;
        let months = completed_months(child.born, on).unwrap_or(0);
        let age_days = days_between(child.born, on);
        let stage = stage_months(child, on);
        let last = LastTime::of(visits, on);
        let near_start = months >= 5 && !last.solids && last.started_on.is_none();
        let small = child.birth_weight.is_some_and(|w| w.grams() < 2_500) || child.gestation_days.is_some_and(|days| days < 259);
        let honey = open.contains(&RuleId::FoodHoney)
            || visits.iter().any(|v| {
                (0..=HONEY_DAYS).contains(&days_between(v.on, on))
                    && v.foods.iter().any(|f| f.code.as_str() == FoodCode::HONEY && f.offers > 0)
            });
        let any_open = |rules: &[RuleId]| rules.iter().any(|rule| open.contains(rule));
        Self {
            months,
            young: months < 2,
            infant: months < 6,
            arm: age_days >= 42,
            started: near_start || any_open(&[RuleId::SolidsEarly, RuleId::SolidsLate]),
            readiness: (near_start && stage.is_some_and(|m| (5..8).contains(&m))) || open.contains(&RuleId::SolidsLate),
            plans: any_open(&[RuleId::SolidsEarly, RuleId::MilkAnimalEarly, RuleId::BirthLow, RuleId::BreastfeedingStopped])
                || (small && age_days < 62),
            appetite: open.contains(&RuleId::AppetitePoor) || open.iter().any(|rule| rule.theme() == Theme::Growth),
            also: also(months, last.breastfed),
            signs: signs(months < 2, honey),
            last,
        }
    }
}

fn also(months: u32, breastfed: Option<bool>) -> Vec<Also> {
    let mut lines = Vec::new();
    if months >= 6 {
        lines.extend([Also::IronSource, Also::SweetDrink, Also::UnhealthyFood, Also::TeaCoffee, Also::Salt, Also::Sugar]);
    }
    lines.push(Also::Bottle);
    if months < 12 {
        lines.push(Also::Honey);
    }
    if breastfed != Some(false) {
        lines.push(Also::BreastfeedingTrouble);
    }
    lines.push(Also::Ill);
    lines
}

/// The general danger signs of IMCI (Integrated Management of Childhood Illness, WHO) first; for young infants their own list first.
/// The signs asked after honey close the list; hard stools alone are no sign of danger and are asked only then.
fn signs(young: bool, honey: bool) -> Vec<DangerSign> {
    use DangerSign as S;
    let mut signs = if young {
        vec![
            S::NotFeedingWell,
            S::CannotFeed,
            S::FitsNow,
            S::FitsInIllness,
            S::FastBreathing,
            S::ChestIndrawing,
            S::FeverOrCold,
            S::MovesOnlyWhenTouched,
            S::Lethargic,
            S::Unconscious,
            S::TroubleBreathing,
            S::VomitsEverything,
        ]
    } else {
        vec![
            S::CannotFeed,
            S::VomitsEverything,
            S::FitsNow,
            S::FitsInIllness,
            S::Lethargic,
            S::Unconscious,
            S::TroubleBreathing,
            S::MovesOnlyWhenTouched,
            S::FastBreathing,
            S::ChestIndrawing,
            S::FeverOrCold,
            S::NotFeedingWell,
        ]
    };
    signs.extend([
        S::StridorCalm,
        S::SunkenEyesSlowPinch,
        S::StiffNeck,
        S::BloodInStool,
        S::WeakCry,
        S::Floppy,
        S::PoorSuck,
        S::DroopyLids,
    ]);
    if honey {
        signs.push(S::Constipation);
    }
    signs
}

#[cfg(test)]
mod tests {
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
}

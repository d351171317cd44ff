//! Properties that hold for every story. A story is made from seeds, so that a failure names a few numbers.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;
use crate::feeding::Solids;
use crate::follow_up::Why;
use crate::food::{FoodGroup, ReactionSign, Texture};
use crate::visit::{DangerSign, LowValue, Measurement, SwallowTrouble};

/// Numbers from a seed (SplitMix64), for the many answers of a visit.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) % sides
    }

    fn byte(&mut self, sides: u64) -> u8 {
        u8::try_from(self.roll(sides)).expect("small")
    }

    /// An answer, or none of it in two of five.
    fn maybe<T>(&mut self, make: impl FnOnce(&mut Self) -> T) -> Option<T> {
        (self.roll(5) > 1).then(|| make(self))
    }

    fn flag(&mut self) -> Option<bool> {
        self.maybe(|dice| dice.roll(2) == 0)
    }

    fn some_of<T: Copy + Ord>(&mut self, all: &[T], one_in: u64) -> BTreeSet<T> {
        all.iter().copied().filter(|_| self.roll(one_in) == 0).collect()
    }
}

fn answers(visit: &mut Visit, dice: &mut Dice, age_days: i32) {
    let age = u64::try_from(age_days).expect("after birth");
    // About the median of girls, between half and twice of it.
    let usual = 3_200 + 3_800 * age.min(180) / 180 + 4_500 * age.saturating_sub(180) / 550;
    visit.weight = dice.maybe(|dice| usual * (60 + dice.roll(80)) / 100).and_then(|g| grams(u32::try_from(g).expect("small")));
    let long = 490 + 170 * age.min(180) / 180 + 200 * age.saturating_sub(180) / 550;
    visit.length = dice.maybe(|dice| long * (92 + dice.roll(16)) / 100).and_then(|mm| length(u16::try_from(mm).expect("small")));
    visit.muac = dice.maybe(|dice| 105 + dice.roll(40)).and_then(|mm| muac(u16::try_from(mm).expect("small")));
    visit.oedema = dice.maybe(|dice| dice.roll(10) == 0);
    visit.confirmed = dice.some_of(Measurement::ALL, 6);
    visit.danger_signs = dice.maybe(|dice| dice.some_of(DangerSign::ALL, 25));
    visit.breastfed = dice.flag();
    visit.breastfeeding_trouble = dice.flag();
    visit.other_drink = dice.flag();
    visit.sweet_drink = dice.flag();
    visit.bottle = dice.flag();
    visit.solids_yesterday = dice.flag();
    visit.meals = dice.maybe(|dice| dice.byte(5));
    visit.formula_times = dice.maybe(|dice| dice.byte(4));
    visit.animal_milk_times = dice.maybe(|dice| dice.byte(3));
    visit.texture_usual = dice.maybe(|dice| dice.byte(5)).and_then(Texture::new);
    visit.texture_best = dice.maybe(|dice| dice.byte(5)).and_then(Texture::new);
    visit.groups = dice.maybe(|dice| dice.some_of(FoodGroup::ALL, 2));
    visit.iron_source = dice.flag();
    visit.low_value = dice.maybe(|dice| dice.some_of(LowValue::ALL, 4));
    visit.swallow_trouble = dice.maybe(|dice| SwallowTrouble::ALL[usize::from(dice.byte(3))]);
    visit.appetite_poor_days = dice.maybe(|dice| u16::from(dice.byte(6)));
    if dice.roll(6) == 0 {
        visit.solids_started_on = Some(add_days(visit.on, -i32::from(dice.byte(30))));
    }
    for code in ["honey", "egg", "meat", "rice"] {
        if dice.roll(6) == 0 {
            let response = dice.maybe(|dice| Response::ALL[usize::from(dice.byte(3))]);
            let signs = dice.maybe(|dice| dice.some_of(ReactionSign::ALL, 8));
            let unsafe_form = dice.flag();
            visit.foods.push(FoodOffer { signs, unsafe_form, hold_lifted: dice.roll(5) == 0, ..food(code, response) });
        }
    }
    for _ in 0..dice.roll(3) {
        let rule = RuleId::ALL[usize::try_from(dice.roll(45)).expect("small")];
        visit.outcomes.push(told(rule, Outcome::ALL[usize::from(dice.byte(8))]));
        visit.referrals.insert(rule);
    }
}

pub(super) fn story() -> impl Strategy<Value = (Child, Vec<Visit>)> {
    story_of(1..8)
}

/// A child with so many visits, each on a day of its own.
fn story_of(visits: std::ops::Range<usize>) -> impl Strategy<Value = (Child, Vec<Visit>)> {
    let visits = prop::collection::btree_map(0..760_i32, any::<u64>(), visits);
    (any::<u64>(), visits).prop_map(|(seed, visits)| {
        let mut dice = Dice(seed);
        let mut child = girl();
        child.sex = Sex::ALL[usize::from(dice.byte(2))];
        child.birth_weight = dice.maybe(|dice| 1_800 + 20 * dice.roll(100)).and_then(|g| grams(u32::try_from(g).expect("small")));
        child.gestation_days = dice.maybe(|dice| 210 + u16::from(dice.byte(75)));
        child.ever_breastfed = dice.flag();
        child.registered_on = days(i32::from(dice.byte(250)));
        let visit = |(number, (age, seed)): (usize, (i32, u64))| {
            let mut dice = Dice(seed);
            let contact = Contact::ALL[usize::from(dice.byte(3))];
            let mut visit = Visit::empty(VisitId(u128::try_from(number).expect("small")), days(age), contact);
            answers(&mut visit, &mut dice, age);
            visit
        };
        (child, visits.into_iter().enumerate().map(visit).collect())
    })
}

/// Everything but the day itself and what only says when to look again.
fn same_but_the_day(mut one: Assessment, other: &Assessment) -> Result<(), TestCaseError> {
    one.as_of = other.as_of;
    one.next_change = other.next_change;
    prop_assert_eq!(&one, other);
    Ok(())
}

proptest! {
    // No file of failed cases: a failure prints its case, and the mended defect gets a test of its own.
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn the_order_of_arrival_does_not_matter((child, visits) in story_of(1..31), seed in any::<u64>()) {
        let as_of = visits.last().expect("a visit").on;
        let mut shuffled = visits.clone();
        let mut dice = Dice(seed);
        for at in (1..shuffled.len()).rev() {
            shuffled.swap(at, usize::try_from(dice.roll(at as u64 + 1)).expect("small"));
        }
        prop_assert_eq!(assess(&child, &visits, protocols(), as_of), assess(&child, &shuffled, protocols(), as_of));
    }

    #[test]
    fn nor_does_the_order_of_corrections((child, visits) in story_of(1..12), (_, wrong) in story_of(12..13), seed in any::<u64>()) {
        // Every visit is entered once, most of them otherwise than they were, and then set right once or twice. A correction arrives
        // after its visit; all else arrives in any order.
        let mut dice = Dice(seed);
        let mut waiting: Vec<Vec<Visit>> = visits.iter().zip(&wrong).map(|(right, wrong)| {
            let entered = Visit { id: right.id, ..wrong.clone() };
            let halfway = Visit { foods: wrong.foods.clone(), weight: wrong.weight, ..right.clone() };
            match dice.roll(4) {
                0 => vec![right.clone()],
                1 => vec![right.clone(), entered],
                _ => vec![right.clone(), halfway, entered],
            }
        }).collect();
        let mut arrived: Vec<Visit> = Vec::new();
        while !waiting.is_empty() {
            let at = usize::try_from(dice.roll(waiting.len() as u64)).expect("small");
            let next = waiting[at].pop().expect("one is left");
            match arrived.iter_mut().find(|known| known.id == next.id) {
                Some(known) => *known = next,
                None => arrived.push(next),
            }
            waiting.retain(|left| !left.is_empty());
        }
        let as_of = visits.last().expect("a visit").on;
        prop_assert_eq!(assess(&child, &visits, protocols(), as_of), assess(&child, &arrived, protocols(), as_of));
    }

    #[test]
    fn a_past_day_never_sees_later_visits((child, visits) in story(), back in 0..760_i32) {
        let as_of = days(back);
        let known: Vec<Visit> = visits.iter().filter(|visit| visit.on <= as_of).cloned().collect();
        same_but_the_day(assess(&child, &visits, protocols(), as_of), &assess(&child, &known, protocols(), as_of))?;
    }

    #[test]
    fn more_weight_never_makes_low_weight_more_urgent((child, mut visits) in story(), more in 1..3_000_u32) {
        let as_of = visits.last().expect("a visit").on;
        let before = assess(&child, &visits, protocols(), as_of);
        let last = visits.last_mut().expect("a visit");
        let heavier = last.weight.and_then(|weight| Weight::from_grams(weight.grams() + more).ok());
        prop_assume!(heavier.is_some() && !before.visits.last().expect("a visit").suspect.weight);
        last.weight = heavier;
        let after = assess(&child, &visits, protocols(), as_of);
        prop_assume!(!after.visits.last().expect("a visit").suspect.weight);
        let chain = [RuleId::WeightVeryLow, RuleId::WeightLow];
        let class = |judged: &Assessment| {
            judged.open().iter().filter(|open| chain.contains(&open.rule)).map(|open| open.class).min()
        };
        // No class is the mildest.
        let (light, heavy) = (class(&before), class(&after));
        prop_assert!(heavy.is_none() || (light.is_some() && heavy >= light), "{:?} became {:?}", light, heavy);
    }

    #[test]
    fn a_visit_without_answers_closes_and_lowers_nothing((child, visits) in story(), gap in 1..40_i32) {
        let last = visits.last().expect("a visit").on;
        // From 180 days on, at 6 and at 24 months an age clears by itself.
        let before = assess(&child, &visits, protocols(), last);
        let empty = Visit::empty(VisitId(99), add_days(last, gap), Contact::Phone);
        let with_empty: Vec<Visit> = visits.iter().cloned().chain([empty]).collect();
        let after = assess(&child, &with_empty, protocols(), add_days(last, gap));
        let by_age = [RuleId::BirthLow, RuleId::SolidsEarly, RuleId::LiquidsEarly, RuleId::MilkAnimalEarly, RuleId::FoodLocalWait];
        // Solids that were started stay so: that answer is from before.
        let known = [RuleId::SolidsLate, RuleId::BreastfeedingStopped];
        for open in before.open() {
            let then = after.follow_ups.iter().find(|then| (then.rule, then.opened_by) == (open.rule, open.opened_by)).expect("kept");
            prop_assert!(then.is_open() || by_age.contains(&open.rule) || known.contains(&open.rule), "{:?} was closed", open.rule);
            prop_assert!(then.class <= open.class);
        }
    }

    #[test]
    fn a_missing_answer_never_clears_what_could_not_tell((child, visits) in story(), which in 0..14_usize) {
        let as_of = visits.last().expect("a visit").on;
        let full = assess(&child, &visits, protocols(), as_of);
        let mut fewer = visits;
        remove(fewer.last_mut().expect("a visit"), which);
        let less = assess(&child, &fewer, protocols(), as_of);
        let (full_at, less_at) = (full.visits.last().expect("a visit"), less.visits.last().expect("a visit"));
        for rule in RuleId::STORED {
            let missing = full_at.answer(*rule) == Some(Answer::CannotTell(Why::Missing));
            prop_assert!(!missing || less_at.answer(*rule) != Some(Answer::Clear), "{:?} became clear", rule);
        }
        // A class is never lowered by saying less.
        let newest = full_at.visit;
        for open in full.follow_ups.iter().filter(|open| open.is_open() && open.opened_by != newest && open.last_fired_by != newest) {
            let then = less.follow_ups.iter().find(|then| (then.rule, then.opened_by) == (open.rule, open.opened_by)).expect("kept");
            prop_assert!(then.class <= open.class, "{:?}", open.rule);
        }
    }

    #[test]
    fn no_age_is_corrected_from_259_days_of_pregnancy_or_24_months((child, visits) in story(), gestation in 259..310_u16) {
        let mut at_term = child.clone();
        at_term.gestation_days = Some(gestation);
        let mut early = child;
        early.gestation_days = Some(gestation - 60);
        let as_of = visits.last().expect("a visit").on;
        for visit in assess(&at_term, &visits, protocols(), as_of).visits {
            prop_assert_eq!((visit.growth_age.corrected_by_days, visit.stage_months), (0, Some(visit.completed_months)));
        }
        for visit in assess(&early, &visits, protocols(), as_of).visits {
            let corrected = gestation - 60 < 259 && visit.completed_months < 24;
            prop_assert_eq!(visit.growth_age.corrected_by_days, if corrected { 340 - gestation } else { 0 });
        }
    }

    #[test]
    fn nothing_changes_before_the_next_change((child, visits) in story(), from in 0..900_i32, share in 0..100_i64) {
        let as_of = days(from);
        let judged = assess(&child, &visits, protocols(), as_of);
        let until = judged.next_change.unwrap_or_else(|| add_days(as_of, 1_000));
        prop_assert!(until > as_of);
        // A day in between; the day before the change is looked at most.
        let between = (until - as_of).num_days();
        for days_on in [between - 1, 1 + (between - 1) * share / 100] {
            let day = as_of + chrono::Duration::days(days_on);
            if as_of < day && day < until {
                same_but_the_day(assess(&child, &visits, protocols(), day), &judged)?;
            }
        }
    }

    #[test]
    fn one_rule_has_one_open_follow_up_and_history_agrees((child, visits) in story()) {
        let as_of = visits.last().expect("a visit").on;
        let judged = assess(&child, &visits, protocols(), as_of);
        let mut open = BTreeSet::new();
        for follow_up in &judged.follow_ups {
            prop_assert!(!follow_up.is_open() || open.insert(follow_up.rule), "two open ones of {:?}", follow_up.rule);
            let last = follow_up.history.last();
            prop_assert_eq!((last.class, last.due_on), (follow_up.class, follow_up.due_on));
            prop_assert!(follow_up.history.iter().is_sorted_by(|before, after| after.class <= before.class));
            prop_assert!(!matches!(judged.now.solids, Solids::Started(Some(day)) if day > as_of));
        }
    }
}

/// Takes an answer out of a visit. Swelling of the feet and how a length was taken are left: without them a z reads otherwise.
fn remove(visit: &mut Visit, which: usize) {
    match which {
        0 => visit.danger_signs = None,
        1 => visit.breastfed = None,
        2 => visit.breastfeeding_trouble = None,
        3 => visit.sweet_drink = None,
        4 => visit.bottle = None,
        5 => visit.meals = None,
        6 => visit.formula_times = None,
        7 => visit.animal_milk_times = None,
        8 => visit.texture_usual = None,
        9 => visit.texture_best = None,
        10 => visit.groups = None,
        11 => visit.iron_source = None,
        12 => visit.low_value = None,
        _ => visit.appetite_poor_days = None,
    }
}

//! Months of children who look random and are the same every time, for the tests of the reports.

use crate::child::Sex;
use crate::feeding::ReactionLevel;
use crate::food::FoodGroup;
use crate::ids::{AreaId, ChildId, PersonId};
use crate::report::month::MonthRows;
use crate::report::reactions::ReportReaction;
use crate::report::rows::{ReportFollowUp, ReportSlot, ReportZ, SlotEnd};
use crate::report::sample::{child, d, villages, visit, z};
use crate::rule::{Class, FollowUpState, RuleId};
use crate::units::Muac;
use crate::visit::Contact;

/// Numbers that look random and are the same every time.
struct Dice(u64);

impl Dice {
    fn up_to(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
}

pub(crate) fn follow_up(worker: u128, rule: RuleId, class: Class, due: &str) -> ReportFollowUp {
    ReportFollowUp {
        child: ChildId(1),
        area: AreaId(0),
        worker: PersonId(worker),
        rule,
        class,
        opened_on: d("2025-09-20"),
        due_on: d(due),
        first_due_on: d(due),
        followed_up_on: None,
        outcome_on: None,
        reached_on: None,
        closed_on: None,
        state: FollowUpState::Open,
        reason: None,
    }
}

/// A month of so many children.
pub(crate) fn month_of(children: u128, seed: u64) -> MonthRows {
    let mut dice = Dice(seed);
    let mut rows = MonthRows { areas: villages(), schedule: vec!["m06".to_owned()], ..MonthRows::default() };
    for id in 0..children {
        let sex = if dice.up_to(2) == 0 { Sex::Female } else { Sex::Male };
        let born = d("2025-10-01") - chrono::Days::new(30 + dice.up_to(600));
        // Some are registered in the month.
        let registered = if dice.up_to(5) == 0 { born.max(d("2025-10-01") + chrono::Days::new(dice.up_to(8))) } else { born };
        let mut baby = child(id, sex, &born.to_string(), &registered.to_string(), u128::from(dice.up_to(4)));
        baby.ever_breastfed = (dice.up_to(6) > 0).then(|| dice.up_to(9) > 0);
        for at in 0..1 + u128::from(dice.up_to(2)) {
            let mut seen = visit(id * 10 + at, &baby, if at == 0 { "2025-10-08" } else { "2025-10-22" });
            seen.worker = PersonId(u128::from(dice.up_to(3)));
            seen.oedema = (dice.up_to(3) == 0).then(|| dice.up_to(9) == 0);
            let hundredths = -400 + i32::try_from(dice.up_to(500)).expect("small");
            seen.waz = if dice.up_to(6) == 0 {
                Some(ReportZ { hundredths: -650, flagged: true, confirmed: dice.up_to(2) == 0 })
            } else {
                z(hundredths)
            };
            let many = usize::try_from(dice.up_to(9)).expect("small");
            seen.answers.groups = (dice.up_to(5) > 0).then(|| FoodGroup::ALL.iter().take(many).copied().collect());
            seen.wlz = z(-350 + i32::try_from(dice.up_to(500)).expect("small")).filter(|_| dice.up_to(4) > 0);
            seen.muac = Muac::from_mm(105 + u16::try_from(dice.up_to(50)).expect("small")).ok().filter(|_| dice.up_to(4) > 0);
            seen.slow_or_lost = (dice.up_to(3) > 0).then(|| dice.up_to(5) == 0);
            seen.answers.breastfed = (dice.up_to(9) > 0).then(|| dice.up_to(6) > 0);
            seen.answers.meals = (dice.up_to(7) > 0).then(|| u8::try_from(dice.up_to(5)).expect("small"));
            seen.answers.formula_times = Some(0);
            seen.answers.animal_milk_times = (dice.up_to(8) > 0).then_some(1);
            seen.answers.bottle = (dice.up_to(9) > 0).then(|| dice.up_to(9) == 0);
            if dice.up_to(12) == 0 {
                seen.contact = Contact::Phone;
            }
            rows.visits.push(seen);
        }
        let ends = [SlotEnd::OnTime, SlotEnd::EarlyOrLate, SlotEnd::Skipped, SlotEnd::Overdue];
        let end = ends[usize::try_from(dice.up_to(4)).expect("small")];
        let worker = PersonId(u128::from(dice.up_to(3)));
        rows.slots.push(ReportSlot { area: AreaId(0), worker, slot: "m06".to_owned(), closes: d("2025-10-11"), end });
        let class = Class::ALL[usize::try_from(dice.up_to(6)).expect("small")];
        let due = d("2025-10-10") + chrono::Days::new(dice.up_to(40));
        let rule = if dice.up_to(10) == 0 { RuleId::ReactionSevere } else { RuleId::WeightLow };
        let mut open = follow_up(u128::from(dice.up_to(3)), rule, class, &due.to_string());
        if dice.up_to(2) == 0 {
            open.opened_on = d("2025-10-03");
            open.reached_on = (dice.up_to(2) == 0).then(|| d("2025-10-03"));
            open.outcome_on = open.reached_on;
        }
        let (level, of) = [
            (ReactionLevel::Severe, RuleId::ReactionSevere),
            (ReactionLevel::Spreading, RuleId::ReactionSpreading),
            (ReactionLevel::Mild, RuleId::ReactionMild),
        ][usize::try_from(dice.up_to(3)).expect("small")];
        if open.opened_on == d("2025-10-03") && (rule == RuleId::ReactionSevere || dice.up_to(3) == 0) {
            let level = if rule == RuleId::ReactionSevere { ReactionLevel::Severe } else { level };
            open.rule = if rule == RuleId::ReactionSevere { rule } else { of };
            let (group, allergen) = (Some(FoodGroup::ALL[usize::try_from(dice.up_to(3)).expect("small")]), None);
            let referred = level != ReactionLevel::Mild;
            let on = open.opened_on;
            let told = ReportReaction { child: ChildId(1), area: AreaId(0), on, group, allergen, level, referred };
            rows.reactions.extend((0..1 + dice.up_to(2)).map(|_| told));
        }
        open.closed_on = (dice.up_to(4) == 0).then(|| d("2025-10-05") + chrono::Days::new(dice.up_to(40)));
        rows.follow_ups.push(open);
        rows.children.push(baby);
    }
    rows
}

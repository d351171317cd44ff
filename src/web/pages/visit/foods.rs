//! The foods that the form of a visit asks about by name, and those that may be tried next.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::fault::Faults;
use domain::feeding;
use domain::feeding::FoodState;
use domain::food::FoodCode;
use domain::food::Response;
use domain::protocol::Food;
use domain::visit::Visit;

use crate::view::visit_form::FoodLine;
use crate::web::pages::visit::desk::Desk;

/// How many foods being tried, and how many next ones, are asked about by name.
const NEAR: usize = 2;

/// Whether a visit tells of a reaction to a food.
fn tells_reaction(visit: &Visit, code: &FoodCode) -> bool {
    visit.foods.iter().any(|offer| offer.code == *code && offer.response == Some(Response::Reaction))
}

impl Desk<'_> {
    /// Foods asked about by name: on hold, told at this visit (also one that there is not, so that it can be set right), being tried,
    /// and the next to try. What was on hold is said of the time before the visit: a hold that the visit being corrected began is none,
    /// and one that it lifted is.
    pub(super) fn food_lines(&self, told: &[Option<&Visit>], corrected: Option<&Visit>, faults: &Faults, months: u32) -> Vec<FoodLine> {
        let lines = &self.file.assessment.foods;
        let began = |code: &FoodCode, since: NaiveDate| corrected.is_some_and(|visit| visit.on == since && tells_reaction(visit, code));
        let on_hold = |line: &feeding::FoodLine| match line.state {
            FoodState::OnHold { since, .. } => !began(&line.code, since),
            _ => false,
        };
        let lifted = |code: &FoodCode| told.iter().flatten().any(|v| v.foods.iter().any(|f| f.code == *code && f.hold_lifted));
        let held = |code: &FoodCode| lifted(code) || lines.iter().any(|line| line.code == *code && on_hold(line));
        let mut codes: Vec<FoodCode> = lines.iter().filter(|l| held(&l.code)).map(|l| l.code.clone()).collect();
        codes.extend(told.iter().flatten().flat_map(|v| v.foods.iter().map(|f| f.code.clone())));
        codes.extend(faults.iter().filter_map(|(field, _)| Some(FoodCode(field.strip_prefix("food_")?.to_owned()))));
        if months >= 6 {
            codes.extend(lines.iter().filter(|l| matches!(l.state, FoodState::Trying)).map(|l| l.code.clone()).take(NEAR));
            codes.extend(self.next_foods().into_iter().take(NEAR).map(|food| food.code.clone()));
        }
        let mut seen = BTreeSet::new();
        codes.retain(|code| seen.insert(code.clone()));
        codes
            .into_iter()
            .map(|code| FoodLine {
                name: self.food_name(code.as_str()),
                choking: self.protocol.food(&code).is_some_and(|food| food.choking),
                on_hold: held(&code),
                code: code.0,
            })
            .collect()
    }

    /// Foods not offered yet that may be next: of groups that have been taken least, old enough, needing no special form. Common
    /// allergens are left out where a clinician must be asked first.
    pub fn next_foods(&self) -> Vec<&Food> {
        let facts = &self.file.record.facts;
        let ask_first = facts.severe_eczema == Some(true) || facts.known_food_allergy == Some(true);
        let days = domain::calendar::days_between(facts.born, self.signed.visitor.today);
        let lines = &self.file.assessment.foods;
        let taken =
            |food: &Food| lines.iter().filter(|l| self.protocol.food(&l.code).is_some_and(|known| known.group == food.group)).count();
        let mut next: Vec<&Food> = self
            .protocol
            .foods
            .iter()
            .filter(|food| food.active && !food.drink && !food.choking && food.group.is_some())
            .filter(|food| i64::from(days) >= i64::from(food.earliest_days))
            .filter(|food| !(ask_first && food.allergen.is_some()))
            .filter(|food| !lines.iter().any(|l| l.code == food.code))
            .collect();
        next.sort_by_key(|food| (taken(food), food.allergen.is_some()));
        next
    }
}

//! Reactions to foods told at the visits of a month, by group of food, common allergen and how serious. It knows no food by name.
//! Severe ones are so few and so grave that they stand in one row of the programme, whatever the food, and in no total.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::feeding::ReactionLevel;
use crate::follow_up::told_reaction;
use crate::food::{Allergen, FoodGroup};
use crate::ids::{AreaId, ChildId};
use crate::protocol::Protocol;
use crate::report::counted::Counted;
use crate::report::csv_table::{ALL, Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation, Rest};
use crate::report::followups::FollowUps;
use crate::report::layout::Areas;
use crate::report::period::Period;
use crate::report::rows::ReportFollowUp;
use crate::report::sheet::{Axis, Bond, Dimension};
use crate::report::system::System;
use crate::rule::RuleId;
use crate::visit::FoodOffer;

crate::report::measures! {
    /// Counted columns, in order.
    MEASURES = n N, referred_n REFERRED, outcome_known_n KNOWN
}

/// Columns that tell rows apart, besides the area.
pub const SPLITS: [&str; 3] = ["food_group", "allergen", "class"];

/// The code of a food that is in no group or carries no common allergen.
pub const NONE: &str = "none";

/// A reaction to a food, told at a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReportReaction {
    /// The child.
    pub child: ChildId,
    /// The area at the visit.
    pub area: AreaId,
    /// The day of the visit.
    pub on: NaiveDate,
    /// The group of the food; `None` = in none, or no food of the list.
    pub group: Option<FoodGroup>,
    /// The common allergen that it carries.
    pub allergen: Option<Allergen>,
    /// How serious it was.
    pub level: ReactionLevel,
    /// The protocol asks for referral on the same day.
    pub referred: bool,
}

impl ReportReaction {
    /// As a visit told it, judged by the protocol of its day; `None` if the food was taken without one.
    #[must_use]
    pub fn told(child: ChildId, area: AreaId, on: NaiveDate, offer: &FoodOffer, protocol: &Protocol) -> Option<Self> {
        let level = told_reaction(offer, protocol)?;
        let food = protocol.food(&offer.code);
        let rules = &protocol.rules;
        let class = match level {
            ReactionLevel::Severe => rules.reaction_severe.limits.class,
            ReactionLevel::Spreading => rules.reaction_spreading.limits.class,
            ReactionLevel::Mild => rules.reaction_mild.limits.class,
        };
        let (group, allergen) = (food.and_then(|food| food.group), food.and_then(|food| food.allergen));
        Some(Self { child, area, on, group, allergen, level, referred: class.is_urgent() })
    }

    const fn rule(&self) -> RuleId {
        match self.level {
            ReactionLevel::Severe => RuleId::ReactionSevere,
            ReactionLevel::Spreading => RuleId::ReactionSpreading,
            ReactionLevel::Mild => RuleId::ReactionMild,
        }
    }
}

/// What tells rows apart.
type Kind = (Option<FoodGroup>, Option<Allergen>, ReactionLevel);

/// What `reactions.csv` of a month is printed from.
pub(crate) struct Reactions {
    cube: Cube,
    kinds: Vec<Kind>,
    severe: Cube,
}

/// Counts a month: each food of each visit at which a reaction was told. Referred: the protocol asks for it on the same day. Outcome
/// known: the follow-up of its rule, open on that day, had an outcome by the end of the month.
pub(crate) fn count(period: Period, areas: &Areas, reactions: &[ReportReaction], follow_ups: &[ReportFollowUp]) -> Reactions {
    let here: Vec<&ReportReaction> = reactions.iter().filter(|reaction| period.contains(reaction.on)).collect();
    let kind = |r: &ReportReaction| (r.group, r.allergen, r.level);
    let milder = here.iter().filter(|r| r.level != ReactionLevel::Severe);
    let kinds: Vec<Kind> = milder.map(|r| kind(r)).collect::<BTreeSet<_>>().into_iter().collect();
    let mut cube = Cube::new(&[areas.len(), kinds.len()], MEASURES.len());
    let mut severe = Cube::new(&[], MEASURES.len());
    for r in here {
        let answers = |f: &&ReportFollowUp| {
            f.child == r.child && f.rule == r.rule() && f.opened_on <= r.on && f.closed_on.is_none_or(|closed| closed >= r.on)
        };
        let told = |f: &ReportFollowUp| f.outcome_on.is_some_and(|on| on >= r.on && on <= period.last());
        let known = follow_ups.iter().filter(answers).any(told);
        for (measure, counts) in [(N, true), (REFERRED, r.referred), (KNOWN, known)] {
            match (counts, r.level) {
                (false, _) => {}
                (true, ReactionLevel::Severe) => severe.add(&[], measure, 1),
                (true, _) => cube.add(&[areas.level(r.area), kinds.binary_search(&kind(r)).ok()], measure, 1),
            }
        }
    }
    Reactions { cube, kinds, severe }
}

impl Reactions {
    /// Every follow-up that a reaction opened in the month is one of at least as many reactions of its level. Whoever knows the rules
    /// knows that.
    pub(crate) fn tie(&self, system: &mut System, put: Put, (follow_ups, opened): (&FollowUps, Put)) {
        let milder = Put { first: put.first + MEASURES.len() + 2, variable: put.variable + MEASURES.len() + 2 };
        let areas = self.cube.total(0);
        let in_area = [Axis::of(Dimension::Area, areas)];
        for (level, rule) in [(ReactionLevel::Mild, RuleId::ReactionMild), (ReactionLevel::Spreading, RuleId::ReactionSpreading)] {
            let of_level: Vec<bool> = self.kinds.iter().map(|(_, _, of)| *of == level).collect();
            let kinds: Vec<usize> = (0..self.kinds.len()).filter(|kind| of_level[*kind]).collect();
            let told = |area: usize| kinds.iter().map(|kind| milder.first + self.cube.place(&[area, *kind], N)).collect::<Vec<_>>();
            let sum = |system: &System, figures: &[usize]| figures.iter().map(|at| system.figures[*at].value).sum::<u64>();
            let mut beyond = Cube::new(&[areas], 1);
            for area in (0..areas).map(Some).chain((areas == 0).then_some(None)) {
                let row = area.unwrap_or(0);
                let more = sum(system, &told(row)).saturating_sub(sum(system, &follow_ups.opened_by(rule, opened, row).2));
                beyond.add(&[area], 0, more);
            }
            let rest = beyond.put(system, &Bonds { unprinted: &[0], ..Bonds::new(&in_area, &[]) });
            for area in 0..=areas {
                let (_, _, places) = follow_ups.opened_by(rule, opened, area);
                system.equal(&told(area), &[&places[..], &[rest.first + beyond.place(&[area], 0)]].concat());
            }
            let (variable, is_rule, _) = follow_ups.opened_by(rule, opened, 0);
            let [not_of_level, not_rule] = [&of_level, &is_rule].map(|levels| levels.iter().map(|is| !is).collect::<Vec<bool>>());
            // In a cell of this rule and of a reaction of this level both are counted; else one of them, or neither.
            for (is_level, is_rule_too) in [(true, true), (true, false), (false, true), (false, false)] {
                let levels = if is_level { &of_level } else { &not_of_level };
                let rules = if is_rule_too { &is_rule } else { &not_rule };
                let mut members = vec![(rest.variable, -1)];
                members.extend(is_level.then_some((milder.variable + N, 1)));
                members.extend(is_rule_too.then_some((variable, -1)));
                let mut only = vec![(Dimension::Rule, rules.clone())];
                if !levels.is_empty() {
                    only.push((Dimension::Reaction, levels.clone()));
                }
                if is_level && of_level.is_empty() {
                    continue;
                }
                system.bonds.push(Bond { members, only });
            }
        }
    }

    /// The same of severe ones, in the programme's row: those of the month and the follow-ups that they opened.
    pub(crate) fn tie_severe(&self, system: &mut System, put: Put, severe: (usize, usize)) {
        let mut beyond = Cube::new(&[], 1);
        let (figure, variable) = severe;
        beyond.add(&[], 0, system.figures[put.first].value.saturating_sub(system.figures[figure].value));
        let rest = beyond.put(system, &Bonds { unprinted: &[0], ..Bonds::new(&[], &[]) });
        system.equal(&[put.first], &[figure, rest.first]);
        system.bonds.push(Bond { members: vec![(put.variable, 1), (variable, -1), (rest.variable, -1)], only: Vec::new() });
    }
}

impl Counted for Reactions {
    fn put(&self, system: &mut System) -> Put {
        let axes = [Axis::of(Dimension::Area, self.cube.total(0)), Axis::of(Dimension::Reaction, self.kinds.len())];
        let relations = [Relation::within(N, &[REFERRED], Rest::Guarded), Relation::within(N, &[KNOWN], Rest::Guarded)];
        let severe = self.severe.put(system, &Bonds::new(&[], &relations));
        self.cube.put(system, &Bonds { of_much_worth: &[N], ..Bonds::new(&axes, &relations) });
        severe
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let mut table = Table::new("reactions", &[&SPLITS, MEASURES].concat());
        let (severe, others) = withheld.split_at(MEASURES.len() + 2);
        for position in self.cube.told(others) {
            let (group, allergen, class) = self.kinds.get(position[1]).map_or((ALL, ALL, ALL), |(group, allergen, level)| {
                (group.map_or(NONE, FoodGroup::code), allergen.map_or(NONE, Allergen::code), level.code())
            });
            let mut cells: Vec<Cell> = [group, allergen, class].into_iter().map(Cell::text).collect();
            cells.extend((0..MEASURES.len()).map(|m| self.cube.shown(others, &position, m)));
            table.push(release, areas.code(position[0]), cells);
        }
        let mut cells: Vec<Cell> = [ALL, ALL, ReactionLevel::Severe.code()].into_iter().map(Cell::text).collect();
        cells.extend((0..MEASURES.len()).map(|m| self.severe.shown(severe, &[], m)));
        table.push(release, ALL, cells);
        vec![table]
    }
}

#[cfg(test)]
#[path = "reactions_tests.rs"]
mod tests;

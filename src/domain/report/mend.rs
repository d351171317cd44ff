//! Completes a trade: one variable moves at the corners, then whatever must move with it so that every bond holds again. A
//! search with bounds, no more; what it finds is right whichever way it was found.

use crate::report::corners::{Change, Corners, Effect, KINDS, Side};
use crate::report::sheet::Cell;
use crate::report::system::System;
use crate::report::trade::Books;

/// How many steps a search may take for one trade before the best found so far is kept; how many of them at one set of corners;
/// and how many more once a trade was found there.
const STEPS: u32 = 8_000;
const STEPS_AT_CORNERS: u32 = 150;
const STEPS_TO_BETTER: u32 = 40;

/// A variable that mends a bond, in the order in which they are tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Choice {
    extra: u64,
    disorder: i32,
    variable: usize,
    side: Side,
    sign: i8,
}

/// The search; its scratch space is kept from one to the next.
pub(crate) struct Mender<'a> {
    system: &'a System,
    /// The bonds of each variable, with its sign.
    touching: Vec<Vec<(usize, i8)>>,
    corners: Corners<'a>,
    moved: Vec<i8>,
    /// Where each variable that has moved did so.
    sides: Vec<Side>,
    /// By how much each bond is broken in each kind of cell.
    residual: Vec<[i16; KINDS]>,
    /// Bonds that were broken once, with the kind of cell.
    pending: Vec<(usize, usize)>,
    listed: Vec<[bool; KINDS]>,
    trail: Vec<usize>,
    best: Option<(u64, Effect)>,
    bound: u64,
    wide: u32,
    apart: bool,
    steps: u32,
}

/// How hard a trade is looked for.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Effort {
    /// By how much all limits of steps are widened.
    pub(crate) wide: u32,
    /// Whether two cells may trade unlike things.
    pub(crate) apart: bool,
}

impl<'a> Mender<'a> {
    pub(crate) fn new(system: &'a System, touching: Vec<Vec<(usize, i8)>>) -> Self {
        Self {
            system,
            touching,
            corners: Corners::new(system),
            moved: vec![0; system.variables],
            sides: vec![Side::Both; system.variables],
            residual: vec![[0; KINDS]; system.bonds.len()],
            pending: Vec::new(),
            listed: vec![[false; KINDS]; system.bonds.len()],
            trail: Vec::new(),
            best: None,
            bound: 0,
            wide: 1,
            apart: false,
            steps: 0,
        }
    }

    /// Begins to look for a trade that costs less than `bound`. `apart`: two cells may trade unlike things.
    pub(crate) fn begin(&mut self, bound: u64, Effort { wide, apart }: Effort) {
        self.best = None;
        (self.bound, self.wide, self.apart, self.steps) = (bound, wide, apart, STEPS * wide);
    }

    /// The best trade found, with its cost.
    pub(crate) fn best(&mut self) -> Option<(u64, Effect)> {
        self.best.take()
    }

    /// Looks at these corners for a better trade in which the variable changes at the first, and `target` with it in the same
    /// direction. Whether it is worth looking on.
    pub(crate) fn look(&mut self, corners: Vec<(Cell, i64)>, (target, variable): (usize, usize), books: &Books<'_>) -> bool {
        let direction = corners.first().map_or(1, |(_, direction)| *direction);
        let apart = self.apart && corners.len() == 2;
        self.corners.turn_to(corners, apart);
        for side in [Side::Both, Side::First].into_iter().take(if apart { 2 } else { 1 }) {
            self.steps = self.steps.saturating_sub(1);
            let changes = |change: &mut Change| change.effect.contains(&(target, direction));
            if let Some(cost) = self.cost(variable, side, 1, books).filter(|cost| *cost < self.bound)
                && self.corners.change(variable, side).is_some_and(changes)
            {
                self.go(variable, side, 1);
                let mut here = (STEPS_AT_CORNERS * self.wide).min(self.steps);
                let given = here;
                self.mend(cost, books, &mut here);
                self.steps -= given - here.min(given);
                self.back(0);
            }
        }
        self.steps > 0 && self.bound > 0
    }

    fn cost(&mut self, variable: usize, side: Side, sign: i8, books: &Books<'_>) -> Option<u64> {
        let change = self.corners.change(variable, side)?;
        *change.costs[usize::from(sign < 0)].get_or_insert_with(|| {
            let mut costs = change.effect.iter().map(|(figure, by)| books.cost(*figure, by * i64::from(sign)));
            costs.try_fold(0, |sum, cost| Some(sum + cost?))
        })
    }

    fn go(&mut self, variable: usize, side: Side, sign: i8) {
        (self.moved[variable], self.sides[variable]) = (sign, side);
        self.trail.push(variable);
        for at in 0..self.touching[variable].len() {
            let (bond, weight) = self.touching[variable][at];
            for kind in self.kinds_of(variable, side, bond) {
                self.residual[bond][kind] += i16::from(sign * weight);
                if self.residual[bond][kind] != 0 && !std::mem::replace(&mut self.listed[bond][kind], true) {
                    self.pending.push((bond, kind));
                }
            }
        }
    }

    /// Takes the last variable back, to where so many bonds were pending.
    fn back(&mut self, pending: usize) {
        let Some(variable) = self.trail.pop() else { return };
        let (sign, side) = (std::mem::take(&mut self.moved[variable]), self.sides[variable]);
        for at in 0..self.touching[variable].len() {
            let (bond, weight) = self.touching[variable][at];
            for kind in self.kinds_of(variable, side, bond) {
                self.residual[bond][kind] -= i16::from(sign * weight);
            }
        }
        for (bond, kind) in self.pending.drain(pending..) {
            self.listed[bond][kind] = false;
        }
    }

    /// The kinds of cells in which a bond holds and a variable of it moves.
    fn kinds_of(&mut self, variable: usize, side: Side, bond: usize) -> impl Iterator<Item = usize> + use<> {
        let holds = self.corners.holds(bond);
        let moves = self.corners.change(variable, side).map_or([false; KINDS], |change| change.in_kinds);
        (0..KINDS).filter(move |kind| holds[*kind] && moves[*kind])
    }

    /// Mends a broken bond by moving one more variable, and so on until none is broken: the one that leaves least choice first.
    fn mend(&mut self, cost: u64, books: &Books<'_>, steps: &mut u32) {
        let Some(mut choices) = self.narrowest(books) else {
            self.best = Some((cost, self.traded()));
            self.bound = cost;
            *steps = (*steps).min(STEPS_TO_BETTER);
            return;
        };
        choices.iter_mut().for_each(|choice| choice.disorder = self.disorder(choice.variable, choice.side, choice.sign));
        choices.sort_unstable();
        for Choice { extra, variable, side, sign, .. } in choices {
            if *steps == 0 || cost + extra >= self.bound {
                break;
            }
            *steps -= 1;
            let pending = self.pending.len();
            self.go(variable, side, sign);
            self.mend(cost + extra, books, steps);
            self.back(pending);
        }
    }

    /// The choices of the broken bond that has fewest; `None` when none is broken.
    fn narrowest(&mut self, books: &Books<'_>) -> Option<Vec<Choice>> {
        let mut narrowest: Option<Vec<Choice>> = None;
        for at in 0..self.pending.len() {
            let (bond, kind) = self.pending[at];
            if self.residual[bond][kind] == 0 || narrowest.as_ref().is_some_and(|choices| choices.len() < 2) {
                continue;
            }
            let choices = self.choices((bond, kind), books);
            if narrowest.as_ref().is_none_or(|narrowest| choices.len() < narrowest.len()) {
                narrowest = Some(choices);
            }
        }
        narrowest
    }

    /// The variables that could mend a bond, and what each would cost.
    fn choices(&mut self, (bond, kind): (usize, usize), books: &Books<'_>) -> Vec<Choice> {
        let system = self.system;
        let excess = self.residual[bond][kind];
        let mut choices = Vec::new();
        let sides = Side::of_kind(kind).into_iter().take(if self.corners.are_apart() { 2 } else { 1 });
        for ((variable, weight), side) in system.bonds[bond].members.iter().flat_map(|member| sides.clone().map(move |side| (member, side)))
        {
            let sign = if (excess > 0) == (*weight > 0) { -1 } else { 1 };
            if self.moved[*variable] == 0
                && self.corners.change(*variable, side).is_some_and(|change| change.in_kinds[kind])
                && let Some(extra) = self.cost(*variable, side, sign, books)
            {
                choices.push(Choice { extra, disorder: 0, variable: *variable, side, sign });
            }
        }
        choices
    }

    /// How many more bonds are broken once the variable has moved.
    fn disorder(&mut self, variable: usize, side: Side, sign: i8) -> i32 {
        let mut disorder = 0;
        for at in 0..self.touching[variable].len() {
            let (bond, weight) = self.touching[variable][at];
            for kind in self.kinds_of(variable, side, bond) {
                let before = self.residual[bond][kind];
                let after = before + i16::from(sign * weight);
                disorder += i32::from(after != 0) - i32::from(before != 0);
            }
        }
        disorder
    }

    /// All that has moved.
    fn traded(&mut self) -> Effect {
        let mut traded = Effect::new();
        for variable in &self.trail {
            let sign = i64::from(self.moved[*variable]);
            let change = self.corners.change(*variable, self.sides[*variable]);
            let effect = change.into_iter().flat_map(|change| &change.effect);
            traded.extend(effect.map(|(figure, by)| (*figure, by * sign)));
        }
        traded
    }
}

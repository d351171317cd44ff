//! Finds other releases that a reader cannot tell from the true one: those in which children have traded places.
//!
//! A trade adds one to some measures in a cell and takes it away in the cell opposite (another area, another sex …), so that
//! nothing that covers both changes. Along two splits there are four corners with alternating signs, along none only one cell.
//! Within each cell the bonds between measures hold. Figures that the trade changes must be withheld; what that costs beyond
//! what is withheld already is the price of the trade. What comes out is right by how it is built, not by how it was found.

use crate::report::corners::{Effect, cells, corners};
use crate::report::mend::{Effort, Mender};
use crate::report::sheet::{Dimension, Sheet};
use crate::report::system::{Figure, Kind, Standing, System, Worth};

/// Other releases, each by what differs from the true one; the first one differs in nothing.
#[derive(Debug, Clone, Default)]
pub(crate) struct Proof {
    pub(crate) releases: Vec<Vec<(usize, i64)>>,
    /// Figures that had to be withheld for it.
    pub(crate) newly: Vec<usize>,
    pub(crate) cost: u64,
}

impl Proof {
    /// Figures that have another value in each of at least `need` releases.
    pub(crate) fn protects(&self, need: usize) -> Vec<usize> {
        let mut values: Vec<(usize, i64)> = self.releases.iter().flatten().copied().collect();
        values.sort_unstable();
        values.dedup();
        let enough = |of_one: &&[(usize, i64)]| of_one.len() + 1 >= need;
        values.chunk_by(|a, b| a.0 == b.0).filter(enough).map(|of_one| of_one[0].0).collect()
    }
}

/// How trades are looked for: like things for like, then unlike things if that costs less, then harder if nothing was found.
const LIKE: Effort = Effort { wide: 1, apart: false };
const UNLIKE: Effort = Effort { wide: 1, apart: true };
const HARD: [Effort; 2] = [Effort { wide: 10, apart: false }, Effort { wide: 10, apart: true }];

/// What it costs to withhold a figure: more where more is lost by it. A nought tells little, but readers expect to see noughts,
/// and most of them are real.
const fn price(figure: Figure) -> u64 {
    let lost = match figure.value {
        0 => 10,
        value => 4 + value.ilog2() as u64,
    };
    let row = match figure.standing {
        Standing::Fine => 2,
        Standing::Split => 6,
        Standing::Whole => 18,
    };
    match figure.worth {
        Worth::Little => lost,
        Worth::Usual => lost * row,
        Worth::Much => lost * row * 2,
    }
}

/// What a reader sees of a release.
pub(crate) struct Books<'a> {
    figures: &'a [Figure],
    /// The values in the release from which a trade starts.
    now: &'a [i64],
    hidden: &'a [bool],
    omitted: &'a [bool],
}

impl Books<'_> {
    /// What must be withheld if a figure changes by so much; `None` if it cannot.
    pub(crate) fn cost(&self, at: usize, by: i64) -> Option<u64> {
        let figure = self.figures[at];
        if !self.can_change(at, by) {
            return None;
        }
        if figure.kind != Kind::Printed || self.hidden[at] || self.omitted[at] {
            return Some(0);
        }
        Some(price(figure))
    }

    /// Whether it stays possible for a reader who knows which withheld figures are not nought, since noughts are rarely withheld.
    fn can_change(&self, at: usize, by: i64) -> bool {
        let figure = self.figures[at];
        let least = if figure.kind == Kind::Printed && figure.value > 0 && !self.omitted[at] { 1 } else { 0 };
        self.now[at] + by >= least
    }
}

/// The search over one system.
pub(crate) struct Search<'a> {
    system: &'a System,
    need: usize,
    /// Which dimensions matter to what is tied to each variable.
    reach: Vec<Vec<Dimension>>,
    /// Variables that are tied together have the same number.
    tied: Vec<usize>,
    /// Figures of rows that are not told at all.
    omitted: Vec<bool>,
    now: Vec<i64>,
    mender: Mender<'a>,
}

impl<'a> Search<'a> {
    /// Prepares the search; each figure must keep `need` values.
    pub(crate) fn new(system: &'a System, need: usize, omitted: Vec<bool>) -> Self {
        let mut touching = vec![Vec::new(); system.variables];
        for (index, bond) in system.bonds.iter().enumerate() {
            bond.members.iter().for_each(|(variable, sign)| touching[*variable].push((index, *sign)));
        }
        let tied = tied(system, &touching);
        let reach = (0..system.variables).map(|variable| reach(system, &tied, tied[variable])).collect();
        let now = system.figures.iter().map(|figure| figure.value.cast_signed()).collect();
        Self { system, need, reach, tied, omitted, now, mender: Mender::new(system, touching) }
    }

    /// Says that these figures stand in rows that are not told after all.
    pub(crate) fn omit(&mut self, figures: &[usize]) {
        figures.iter().for_each(|figure| self.omitted[*figure] = true);
    }

    pub(crate) fn is_omitted(&self, figure: usize) -> bool {
        self.omitted[figure]
    }

    /// What protects a figure without withholding more.
    pub(crate) fn free(&mut self, target: usize, hidden: &[bool]) -> Option<Proof> {
        self.walk(target, hidden, [1, -1], (1, LIKE)).or_else(|| self.walk(target, hidden, [1, -1], (1, UNLIKE)))
    }

    /// What protects a figure and withholds least beyond what is `hidden` already, if anything was found.
    pub(crate) fn cheapest(&mut self, target: usize, hidden: &[bool]) -> Option<Proof> {
        if let Some(free) = self.free(target, hidden) {
            return Some(free);
        }
        let mut best: Option<Proof> = None;
        for (at, effort) in [LIKE, UNLIKE].into_iter().chain(HARD).enumerate() {
            for directions in [[1, -1], [-1, 1]] {
                let bound = best.as_ref().map_or(u64::MAX, |best| best.cost);
                best = self.walk(target, hidden, directions, (bound, effort)).or(best);
            }
            if at > 0 && best.is_some() {
                break;
            }
        }
        best
    }

    /// Every figure that is tied to this one, of whatever row.
    pub(crate) fn tied_to(&self, target: usize) -> Vec<usize> {
        let Some(sheet) = self.system.sheet_of(target) else { return vec![target] };
        let set = self.tied[sheet.locate(target).0];
        let of = |variable: usize| {
            let sheet = self.system.sheet_with(variable);
            (0..sheet.positions()).map(|at| sheet.figure(at, variable)).collect::<Vec<_>>()
        };
        (0..self.system.variables).filter(|variable| self.tied[*variable] == set).flat_map(of).collect()
    }

    /// Trades one way as often as needed, then the other, for less than `bound`; what was withheld on the way stays withheld for
    /// what follows.
    fn walk(&mut self, target: usize, hidden: &[bool], directions: [i64; 2], (bound, effort): (u64, Effort)) -> Option<Proof> {
        let mut proof = Proof { releases: vec![Vec::new()], ..Proof::default() };
        let mut hidden = hidden.to_vec();
        for direction in directions {
            let mut changed: Vec<usize> = Vec::new();
            while proof.releases.len() < self.need {
                let left = (bound.saturating_sub(proof.cost), effort);
                let Some((cost, effect)) = self.trade(target, direction, &hidden, left) else { break };
                proof.cost += cost;
                for (figure, _) in &effect {
                    if self.system.figures[*figure].kind == Kind::Printed && !hidden[*figure] && !self.omitted[*figure] {
                        hidden[*figure] = true;
                        proof.newly.push(*figure);
                    }
                }
                changed.extend(effect.iter().map(|(figure, _)| *figure));
                changed.sort_unstable();
                changed.dedup();
                while proof.releases.len() < self.need && self.make(&effect, &hidden) {
                    let by = |figure: &usize| self.now[*figure] - self.system.figures[*figure].value.cast_signed();
                    proof.releases.push(changed.iter().map(|figure| (*figure, by(figure))).filter(|(_, by)| *by != 0).collect());
                }
            }
            changed.into_iter().for_each(|figure| self.now[figure] = self.system.figures[figure].value.cast_signed());
        }
        Some(proof).filter(|proof| proof.releases.len() >= self.need)
    }

    /// Makes a trade once more, if it can be made.
    fn make(&mut self, effect: &Effect, hidden: &[bool]) -> bool {
        let books = Books { figures: &self.system.figures, now: &self.now, hidden, omitted: &self.omitted };
        let possible = effect.iter().all(|(figure, by)| books.can_change(*figure, *by));
        if possible {
            effect.iter().for_each(|(figure, by)| self.now[*figure] += by);
        }
        possible
    }

    /// The cheapest trade that moves `target` in a direction and costs less than `bound`.
    fn trade(&mut self, target: usize, direction: i64, hidden: &[bool], (bound, effort): (u64, Effort)) -> Option<(u64, Effect)> {
        let system = self.system;
        let sheet = system.sheet_of(target)?;
        let (variable, levels) = sheet.locate(target);
        let named = sheet.named(&levels);
        let books = Books { figures: &system.figures, now: &self.now, hidden, omitted: &self.omitted };
        let cells = cells(system, sheet, &self.reach[variable], &levels);
        self.mender.begin(bound, effort);
        // All splits first: such a trade changes the fewest rows. What is counted at some ages only can change in everybody though
        // as many children are counted: for one more of these ages there is one less of the others.
        let by_age = sheet.axes.iter().position(|axis| axis.dimension == Dimension::Band).filter(|_| named == 0).map(|split| 1 << split);
        for across in by_age.into_iter().chain((0..=named).rev().filter(|across| across & !named == 0)) {
            for corners in cells.iter().flat_map(|cell| corners(system, sheet, (*cell, direction), across)) {
                if !self.mender.look(corners, (target, variable), &books) {
                    return self.mender.best();
                }
            }
        }
        self.mender.best()
    }
}

/// Numbers of the sets of variables that bonds tie together.
fn tied(system: &System, touching: &[Vec<(usize, i8)>]) -> Vec<usize> {
    let mut set = vec![usize::MAX; system.variables];
    for start in 0..system.variables {
        let mut waiting = vec![start];
        while let Some(variable) = waiting.pop() {
            if set[variable] == usize::MAX {
                set[variable] = start;
                waiting.extend(touching[variable].iter().flat_map(|(bond, _)| &system.bonds[*bond].members).map(|(other, _)| *other));
            }
        }
    }
    set
}

/// The dimensions of the sheets of a set of tied variables.
fn reach(system: &System, tied: &[usize], set: usize) -> Vec<Dimension> {
    let variables = (0..system.variables).filter(|variable| tied[*variable] == set);
    let of = |sheet: &Sheet| sheet.axes.iter().map(|axis| axis.dimension).collect::<Vec<_>>();
    let mut found: Vec<Dimension> = variables.flat_map(|variable| of(system.sheet_with(variable))).collect();
    found.sort_unstable();
    found.dedup();
    found
}

//! Which cells a trade changes, and what follows for the figures that cover them. It does not know what is withheld.

use crate::report::sheet::{Cell, Dimension, Sheet};
use crate::report::system::{Kind, System};

/// What one variable changes at some corners: figures and by how much, when it goes up by one at the first corner.
pub(crate) type Effect = Vec<(usize, i64)>;

/// Every cell within a row, told apart along the dimensions that matter.
pub(crate) fn cells(system: &System, sheet: &Sheet, dimensions: &[Dimension], levels: &[usize]) -> Vec<Cell> {
    let mut cells = vec![Cell::default()];
    for dimension in dimensions {
        let split = sheet.axes.iter().position(|axis| axis.dimension == *dimension).filter(|split| sheet.sizes[*split] > 0);
        let fits = |at: &usize| {
            split.is_none_or(|split| {
                let level = sheet.axes[split].level(*at);
                level.is_some_and(|level| levels[split] == sheet.sizes[split] || level == levels[split])
            })
        };
        let here: Vec<usize> = (0..system.sizes[*dimension as usize].max(1)).filter(fits).collect();
        cells = cells.iter().flat_map(|cell| here.iter().map(|at| moved(cell, *dimension, *at)).collect::<Vec<_>>()).collect();
    }
    cells
}

/// The sets of cells that change when a cell trades across some splits of a sheet: with each part opposite.
pub(crate) fn corners(system: &System, sheet: &Sheet, (cell, direction): (Cell, i64), across: usize) -> Vec<Vec<(Cell, i64)>> {
    let mut all = vec![vec![(cell, direction)]];
    for (_, axis) in sheet.axes.iter().enumerate().filter(|(split, _)| across & (1 << split) != 0) {
        let own = axis.level(cell[axis.dimension as usize]);
        let opposite = |at: &usize| axis.level(*at).is_some_and(|level| Some(level) != own);
        let others: Vec<usize> = (0..system.sizes[axis.dimension as usize]).filter(opposite).collect();
        let mirrored = |corners: &[(Cell, i64)], at: usize| {
            let mirror = corners.iter().map(|(cell, sign)| (moved(cell, axis.dimension, at), -sign));
            corners.iter().copied().chain(mirror).collect::<Vec<_>>()
        };
        all = all.iter().flat_map(|corners| others.iter().map(|at| mirrored(corners, *at)).collect::<Vec<_>>()).collect();
    }
    all
}

/// A cell at another level of a dimension.
const fn moved(cell: &Cell, dimension: Dimension, to: usize) -> Cell {
    let mut cell = *cell;
    cell[dimension as usize] = to;
    cell
}

/// Dimensions along which not everything is counted everywhere.
const UNLIKE: [Dimension; 3] = [Dimension::Band, Dimension::Rule, Dimension::Reaction];

/// How many kinds of cells a trade can have: no trade is made along two of those dimensions, and only two cells trade unlike
/// things.
pub(crate) const KINDS: usize = 2;

/// Where a variable moves: in all cells of the trade, or in one of two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Side {
    Both,
    First,
    Second,
}

impl Side {
    /// The sides on which a variable moves in cells of a kind.
    pub(crate) const fn of_kind(kind: usize) -> [Self; 2] {
        [Self::Both, if kind == 0 { Self::First } else { Self::Second }]
    }

    const fn takes(self, corner: usize) -> bool {
        matches!((self, corner), (Self::Both, _) | (Self::First, 0) | (Self::Second, 1))
    }
}

/// How many values [`Side`] has.
const SIDES: usize = 3;

/// What a variable changes, and in which kinds of cells.
#[derive(Debug, Clone)]
pub(crate) struct Change {
    pub(crate) effect: Effect,
    pub(crate) in_kinds: [bool; KINDS],
    /// What it costs to go up and to go down, where that was asked; `None` = it cannot.
    pub(crate) costs: [Option<Option<u64>>; 2],
}

/// The cells of one trade, each with its direction, and what was worked out about them.
pub(crate) struct Corners<'a> {
    system: &'a System,
    corners: Vec<(Cell, i64)>,
    apart: bool,
    /// One corner of each kind.
    kinds: Vec<Cell>,
    changes: Vec<Option<Option<Change>>>,
    holds: Vec<Option<[bool; KINDS]>>,
    /// Variables and bonds of which something was worked out.
    asked: (Vec<usize>, Vec<usize>),
}

impl<'a> Corners<'a> {
    pub(crate) fn new(system: &'a System) -> Self {
        let (changes, holds) = (vec![None; system.variables * SIDES], vec![None; system.bonds.len()]);
        Self { system, corners: Vec::new(), apart: false, kinds: Vec::new(), changes, holds, asked: (Vec::new(), Vec::new()) }
    }

    /// Turns to other cells. `apart`: two cells may trade unlike things.
    pub(crate) fn turn_to(&mut self, corners: Vec<(Cell, i64)>, apart: bool) {
        self.asked.0.drain(..).for_each(|at| self.changes[at] = None);
        self.asked.1.drain(..).for_each(|bond| self.holds[bond] = None);
        (self.corners, self.apart) = (corners, apart);
        self.kinds.clear();
        for (cell, _) in &self.corners {
            if apart || !self.kinds.iter().any(|kind| alike(kind, cell)) {
                self.kinds.push(*cell);
            }
        }
    }

    /// Whether two cells may trade unlike things.
    pub(crate) const fn are_apart(&self) -> bool {
        self.apart
    }

    /// What a variable changes; `None` if it is not counted in any of the cells.
    pub(crate) fn change(&mut self, variable: usize, side: Side) -> Option<&mut Change> {
        let at = variable * SIDES + side as usize;
        if self.changes[at].is_none() {
            self.asked.0.push(at);
            self.changes[at] = Some(self.work_out(variable, side));
        }
        self.changes[at].as_mut().and_then(Option::as_mut)
    }

    fn work_out(&self, variable: usize, side: Side) -> Option<Change> {
        let sheet = self.system.sheet_with(variable);
        let mut changes = Effect::new();
        let mut in_kinds = [false; KINDS];
        for (at, (cell, sign)) in self.corners.iter().enumerate().filter(|(at, _)| side.takes(*at)) {
            // Where nobody can be counted nothing changes.
            let rows = sheet.covering(cell).unwrap_or_default();
            let Some(own) = rows.first().map(|row| self.system.figures[sheet.figure(*row, variable)].kind) else { continue };
            if matches!(own, Kind::Known | Kind::Nothing) {
                continue;
            }
            for (kind, here) in in_kinds.iter_mut().enumerate().take(self.kinds.len()) {
                *here |= if self.apart { kind == at } else { alike(&self.kinds[kind], cell) };
            }
            changes.extend(rows.into_iter().map(|row| (sheet.figure(row, variable), *sign)));
        }
        changes.sort_unstable();
        let sum = |same: &[(usize, i64)]| (same[0].0, same.iter().map(|(_, by)| by).sum());
        let mut effect: Effect = changes.chunk_by(|a, b| a.0 == b.0).map(sum).collect();
        effect.retain(|(figure, by)| *by != 0 && self.system.figures[*figure].kind != Kind::Nothing);
        in_kinds.contains(&true).then_some(Change { effect, in_kinds, costs: [None; 2] })
    }

    /// In which kinds of cells a bond holds.
    pub(crate) fn holds(&mut self, bond: usize) -> [bool; KINDS] {
        if let Some(holds) = self.holds[bond] {
            return holds;
        }
        let mut holds = [false; KINDS];
        for (kind, here) in self.kinds.iter().zip(&mut holds) {
            *here = self.system.bonds[bond].holds_in(kind);
        }
        self.holds[bond] = Some(holds);
        self.asked.1.push(bond);
        holds
    }
}

fn alike(one: &Cell, other: &Cell) -> bool {
    UNLIKE.iter().all(|dimension| one[*dimension as usize] == other[*dimension as usize])
}

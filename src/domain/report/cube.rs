//! Counts in a table with all its totals, and the equations between them. It knows positions and measures by number only.

use crate::report::csv_table::Cell;
use crate::report::sheet::{Axis, Bond};
use crate::report::system::{Figure, Kind, Standing, System, Worth};

/// Counts by some splits (area, sex, age band …), each with a level for the total behind its own levels.
#[derive(Debug, Clone)]
pub struct Cube {
    /// How many levels each split has, the total not counted. 0: only the total is kept.
    sizes: Vec<usize>,
    measures: usize,
    counts: Vec<u64>,
}

/// What is left of a whole when its known parts are taken away.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rest {
    /// Nothing: the parts are all there is.
    Nothing,
    /// Something that betrays nobody.
    Free,
    /// A group that may be recognised when it is small.
    Guarded,
}

/// A relation between measures that holds at each position: wholes = parts + rest.
#[derive(Debug, Clone)]
pub struct Relation {
    /// Measures on the one side.
    pub whole: Vec<usize>,
    /// Measures on the other side.
    pub parts: Vec<usize>,
    /// What the parts leave over.
    pub rest: Rest,
    /// Holds only at these levels of this split; `None` = everywhere.
    pub only: Option<(usize, Vec<usize>)>,
}

impl Relation {
    /// `whole` holds `parts` and something else.
    #[must_use]
    pub fn within(whole: usize, parts: &[usize], rest: Rest) -> Self {
        Self { whole: vec![whole], parts: parts.to_vec(), rest, only: None }
    }

    /// Both sides are equal.
    #[must_use]
    pub fn equal(whole: &[usize], parts: &[usize]) -> Self {
        Self { whole: whole.to_vec(), parts: parts.to_vec(), rest: Rest::Nothing, only: None }
    }

    /// Only at these levels of a split.
    #[must_use]
    pub fn only_at(self, split: usize, levels: &[usize]) -> Self {
        Self { only: Some((split, levels.to_vec())), ..self }
    }
}

/// What everybody knows of the counts of a table.
pub struct Bonds<'a> {
    /// What each split tells apart.
    pub axes: &'a [Axis],
    /// Relations between its measures.
    pub relations: &'a [Relation],
    /// Measures that everybody can work out but nobody prints.
    pub unprinted: &'a [usize],
    /// Measures that the programme's row alone prints, and that say how others were counted.
    pub of_programme: &'a [usize],
    /// Measures that readers look for first.
    pub of_much_worth: &'a [usize],
    /// Where nobody can be counted in a measure.
    pub impossible: &'a dyn Fn(&[usize], usize) -> bool,
    /// What relations to other tables leave over: so many more variables, to be filled by whoever knows those tables.
    pub rests: usize,
}

impl<'a> Bonds<'a> {
    /// Relations between measures that are all printed, everywhere.
    #[must_use]
    pub fn new(axes: &'a [Axis], relations: &'a [Relation]) -> Self {
        Self { axes, relations, unprinted: &[], of_programme: &[], of_much_worth: &[], impossible: &everywhere, rests: 0 }
    }
}

/// Where the figures of a table stand in a system.
#[derive(Debug, Clone, Copy)]
pub struct Put {
    /// The first figure.
    pub first: usize,
    /// The variable of the first measure; those of the others follow, then what each relation leaves over, then [`Bonds::rests`].
    pub variable: usize,
}

impl Cube {
    /// An empty table.
    #[must_use]
    pub fn new(sizes: &[usize], measures: usize) -> Self {
        let positions: usize = sizes.iter().map(|size| size + 1).product();
        Self { sizes: sizes.to_vec(), measures, counts: vec![0; positions * measures] }
    }

    /// The level of the total in this split.
    #[must_use]
    pub fn total(&self, split: usize) -> usize {
        self.sizes[split]
    }

    /// Counts `by` at these levels and in every total above them; `None` counts in the totals of that split alone.
    pub fn add(&mut self, levels: &[Option<usize>], measure: usize, by: u64) {
        for choice in 0..(1_usize << levels.len()) {
            let mut position = 0;
            let mut counted = true;
            for (split, level) in levels.iter().enumerate() {
                let total = choice & (1 << split) != 0;
                let size = self.sizes[split];
                let level = if total { Some(size) } else { level.filter(|level| *level < size) };
                match level {
                    Some(level) => position = position * (size + 1) + level,
                    None => counted = false,
                }
            }
            if counted {
                self.counts[position * self.measures + measure] += by;
            }
        }
    }

    /// Counts a child once in each of these measures.
    pub fn add_child(&mut self, levels: &[Option<usize>], mut measures: Vec<usize>) {
        measures.sort_unstable();
        measures.dedup();
        measures.iter().for_each(|measure| self.add(levels, *measure, 1));
    }

    /// Every position in order: the last split runs fastest, its total last.
    #[must_use]
    pub fn positions(&self) -> Vec<Vec<usize>> {
        let mut all = vec![Vec::new()];
        for size in &self.sizes {
            all = all.into_iter().flat_map(|head: Vec<usize>| (0..=*size).map(move |level| [head.clone(), vec![level]].concat())).collect();
        }
        all
    }

    /// The place of a count in [`Cube::put`].
    #[must_use]
    pub fn place(&self, position: &[usize], measure: usize) -> usize {
        let index = position.iter().zip(&self.sizes).fold(0, |index, (level, size)| index * (size + 1) + level);
        index * self.measures + measure
    }

    /// The count at a position.
    #[must_use]
    pub fn count(&self, position: &[usize], measure: usize) -> u64 {
        self.counts[self.place(position, measure)]
    }

    /// The splits of which a position names a level, as bits. The first split is the areas.
    fn splits(&self, position: &[usize]) -> usize {
        let named = |at: &usize| self.sizes[*at] > 0 && position[*at] != self.sizes[*at];
        (0..position.len()).filter(named).map(|at| 1 << at).sum()
    }

    fn standing(&self, position: &[usize]) -> Standing {
        match self.splits(position).count_ones() {
            0 => Standing::Whole,
            1 => Standing::Split,
            _ => Standing::Fine,
        }
    }

    /// The rows that are told: all whose splits have a row of which some figure is not withheld, and those of one split or none.
    #[must_use]
    pub fn told(&self, withheld: &[bool]) -> Vec<Vec<usize>> {
        let mut open = vec![false; 1 << self.sizes.len()];
        for position in self.positions() {
            let splits = self.splits(&position);
            open[splits] |= splits.count_ones() < 2 || (0..self.measures).any(|measure| !withheld[self.place(&position, measure)]);
        }
        self.positions().into_iter().filter(|position| open[self.splits(position)]).collect()
    }

    /// The place in [`Cube::put`] of what is left over by the relation of this number, at a position.
    fn place_of_rest(&self, position: &[usize], relation: usize, relations: usize) -> usize {
        self.counts.len() + self.place(position, 0) / self.measures * relations + relation
    }

    /// Adds the counts to the system of the month, with everything that a reader knows of them. Figures stand in the order of
    /// [`Cube::place`]; what relations leave over follows.
    pub fn put(&self, system: &mut System, bonds: &Bonds<'_>) -> Put {
        let rests = bonds.relations.len() + bonds.rests;
        let variable = system.sheet(&self.sizes, bonds.axes, self.measures, rests);
        let first = system.figures.len();
        let positions = self.positions();
        for position in &positions {
            let standing = self.standing(position);
            for measure in 0..self.measures {
                let unprinted = bonds.unprinted.contains(&measure) || (standing < Standing::Whole && bonds.of_programme.contains(&measure));
                let kind = match (bonds.impossible)(position, measure) {
                    true => Kind::Known,
                    false if unprinted => Kind::Slack,
                    false => Kind::Printed,
                };
                let worth = if bonds.of_programme.contains(&measure) {
                    Worth::Little
                } else if bonds.of_much_worth.contains(&measure) {
                    Worth::Much
                } else {
                    Worth::Usual
                };
                system.push(Figure { value: self.count(position, measure), kind, standing, worth });
            }
        }
        for position in &positions {
            let standing = self.standing(position);
            for relation in bonds.relations {
                let (value, kind) = self.left_over(position, relation, bonds.impossible);
                system.push(Figure { value, kind, standing, worth: Worth::Usual });
            }
            (0..bonds.rests).for_each(|_| _ = system.push(Figure { value: 0, kind: Kind::Slack, standing, worth: Worth::Usual }));
        }
        for position in &positions {
            self.add_totals(system, first, position);
            for (at, relation) in bonds.relations.iter().enumerate().filter(|(_, relation)| holds_at(relation, position)) {
                let figure = |measure: &usize| first + self.place(position, *measure);
                let mut equation: Vec<(usize, i8)> = relation.parts.iter().map(|measure| (figure(measure), 1)).collect();
                equation.extend(relation.whole.iter().map(|measure| (figure(measure), -1)));
                if relation.rest != Rest::Nothing {
                    equation.push((first + self.place_of_rest(position, at, rests), 1));
                }
                system.equations.push(equation);
            }
        }
        for (at, relation) in bonds.relations.iter().enumerate() {
            let mut members: Vec<(usize, i8)> = relation.parts.iter().map(|measure| (variable + measure, 1)).collect();
            members.extend(relation.whole.iter().map(|measure| (variable + measure, -1)));
            if relation.rest != Rest::Nothing {
                members.push((variable + self.measures + at, 1));
            }
            let only = relation.only.iter().map(|(split, levels)| {
                let axis = &bonds.axes[*split];
                (axis.dimension, axis.level_of.iter().map(|level| level.is_some_and(|level| levels.contains(&level))).collect())
            });
            let only = only.collect();
            system.bonds.push(Bond { members, only });
        }
        Put { first, variable }
    }

    /// Each total is the sum of its parts, along every split.
    fn add_totals(&self, system: &mut System, first: usize, position: &[usize]) {
        for (split, size) in self.sizes.iter().enumerate().filter(|(split, size)| **size > 0 && position[*split] == **size) {
            for measure in 0..self.measures {
                let part = |level: usize| {
                    let mut part = position.to_vec();
                    part[split] = level;
                    first + self.place(&part, measure)
                };
                let parts: Vec<usize> = (0..*size).map(part).collect();
                system.sum(first + self.place(position, measure), &parts);
            }
        }
    }

    /// What a relation leaves over at a position. A rest below nought is a fault of the counting; it is left at nought here and
    /// comes to light as a broken equation.
    fn left_over(&self, position: &[usize], relation: &Relation, impossible: &dyn Fn(&[usize], usize) -> bool) -> (u64, Kind) {
        let sum = |measures: &[usize]| measures.iter().map(|measure| self.count(position, *measure)).sum::<u64>();
        let kind = match relation.rest {
            _ if !holds_at(relation, position) => Kind::Nothing,
            Rest::Nothing => Kind::Nothing,
            _ if relation.whole.iter().chain(&relation.parts).all(|measure| impossible(position, *measure)) => Kind::Known,
            Rest::Free => Kind::Slack,
            Rest::Guarded => Kind::GuardedSlack,
        };
        let value = if kind == Kind::Nothing { 0 } else { sum(&relation.whole).saturating_sub(sum(&relation.parts)) };
        (value, kind)
    }

    /// The count at a position as the release shows it; `withheld` are the figures of the cube.
    #[must_use]
    pub fn shown(&self, withheld: &[bool], position: &[usize], measure: usize) -> Cell {
        let at = self.place(position, measure);
        Cell::shown(self.counts[at], withheld[at])
    }
}

fn holds_at(relation: &Relation, position: &[usize]) -> bool {
    relation.only.as_ref().is_none_or(|(split, levels)| levels.contains(&position[*split]))
}

/// Nowhere is anything impossible.
const fn everywhere(_: &[usize], _: usize) -> bool {
    false
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sheet::Dimension;

    #[test]
    fn a_count_stands_in_every_total_above_it() {
        let mut cube = Cube::new(&[2, 2], 1);
        cube.add(&[Some(0), Some(1)], 0, 3);
        cube.add(&[Some(1), Some(1)], 0, 4);
        cube.add(&[Some(1), None], 0, 5);
        let counts: Vec<u64> = cube.positions().iter().map(|position| cube.count(position, 0)).collect();
        // Rows: first area (a, b, all), second area, all areas. What has no second level is in the totals only.
        assert_eq!(counts, [0, 3, 3, 0, 4, 9, 0, 7, 12]);
    }

    #[test]
    fn relations_become_equations_that_hold() {
        let mut cube = Cube::new(&[3, 2], 2);
        for (area, sex, n, den) in [(0, 0, 3, 21), (0, 1, 9, 24), (1, 0, 6, 31), (2, 1, 8, 29)] {
            cube.add(&[Some(area), Some(sex)], 0, n);
            cube.add(&[Some(area), Some(sex)], 1, den);
        }
        let mut system = System::default();
        let axes = [Axis::of(Dimension::Area, 3), Axis::of(Dimension::Sex, 2)];
        cube.put(&mut system, &Bonds::new(&axes, &[Relation::within(1, &[0], Rest::Guarded)]));
        assert!(system.broken().is_empty());
        // 12 positions with a relation each; 4 + 3 totals over areas and sexes for each of 2 measures.
        assert_eq!(system.equations.len(), 12 + (3 + 4) * 2);
    }
}

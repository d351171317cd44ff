//! Counts in a table with all its totals, and the equations between them. It knows positions and measures by number only.

use std::collections::BTreeSet;

use crate::report::alike::Alike;
use crate::report::suppress::{Kind, System};

/// Counts by some splits (area, sex, age band …), each with a level for the total behind its own levels.
#[derive(Debug, Clone)]
pub struct Cube {
    /// How many levels each split has, the total not counted. 0: only the total is kept.
    sizes: Vec<usize>,
    measures: usize,
    counts: Vec<u64>,
    kinds: BTreeSet<Vec<usize>>,
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

impl Cube {
    /// An empty table.
    #[must_use]
    pub fn new(sizes: &[usize], measures: usize) -> Self {
        let positions: usize = sizes.iter().map(|size| size + 1).product();
        Self { sizes: sizes.to_vec(), measures, counts: vec![0; positions * measures], kinds: BTreeSet::new() }
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
        self.kinds.insert(measures);
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

    /// The place of a count in [`Cube::system`].
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

    /// The counts and everything that a reader knows of them. Figures stand in the order of [`Cube::place`]; what relations
    /// leave over follows. `unprinted` are measures that everybody can work out but nobody prints; `impossible` says where nobody
    /// can be counted in a measure, which everybody knows.
    #[must_use]
    pub fn system(&self, relations: &[Relation], unprinted: &[usize], impossible: &dyn Fn(&[usize], usize) -> bool) -> System {
        let alike = Alike { sizes: self.sizes.clone(), measures: self.measures, kinds: self.kinds.clone() };
        let mut system = System { alike, ..System::default() };
        for position in self.positions() {
            for measure in 0..self.measures {
                let kind = match (unprinted.contains(&measure), impossible(&position, measure)) {
                    (true, _) => Kind::Slack,
                    (false, true) => Kind::Known,
                    (false, false) => Kind::Printed,
                };
                system.figure(self.count(&position, measure), kind);
            }
        }
        for position in self.positions() {
            for (split, size) in self.sizes.iter().enumerate() {
                if position[split] != *size || *size == 0 {
                    continue;
                }
                for measure in (0..self.measures).filter(|measure| !unprinted.contains(measure)) {
                    let part = |level: usize| {
                        let mut part = position.clone();
                        part[split] = level;
                        self.place(&part, measure)
                    };
                    let parts: Vec<usize> = (0..*size).map(part).collect();
                    system.sum(self.place(&position, measure), &parts);
                }
            }
            for relation in relations {
                self.relate(&mut system, &position, relation);
            }
        }
        system
    }

    fn relate(&self, system: &mut System, position: &[usize], relation: &Relation) {
        if relation.only.as_ref().is_some_and(|(split, levels)| !levels.contains(&position[*split])) {
            return;
        }
        let sum = |measures: &[usize]| measures.iter().map(|measure| self.count(position, *measure)).sum::<u64>();
        let mut equation: Vec<(usize, i8)> = relation.parts.iter().map(|measure| (self.place(position, *measure), 1)).collect();
        equation.extend(relation.whole.iter().map(|measure| (self.place(position, *measure), -1)));
        // A rest below nought is a fault of the counting; it is left at nought here and comes to light as a broken equation.
        let rest = sum(&relation.whole).saturating_sub(sum(&relation.parts));
        match relation.rest {
            Rest::Nothing => {}
            Rest::Free => equation.push((system.figure(rest, Kind::Slack), 1)),
            Rest::Guarded => equation.push((system.figure(rest, Kind::GuardedSlack), 1)),
        }
        system.equations.push(equation);
    }
}

/// Nowhere is anything impossible.
#[must_use]
pub const fn everywhere(_: &[usize], _: usize) -> bool {
    false
}

#[cfg(test)]
mod tests {
    use super::*;

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
        let system = cube.system(&[Relation::within(1, &[0], Rest::Guarded)], &[], &everywhere);
        assert!(system.broken().is_empty());
        // 12 positions with a relation each; 4 + 3 totals over areas and sexes for each of 2 measures.
        assert_eq!(system.equations.len(), 12 + (3 + 4) * 2);
    }
}

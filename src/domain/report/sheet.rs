//! How the figures of a table hang together: measures by position, positions by the parts of the programme that they cover.
//!
//! A *cell* is the smallest part of the programme that all tables together can tell apart: an area, a sex, an age band and so on.
//! A table takes from it what its splits need. Whatever holds between measures holds within each cell, and every figure is a sum
//! over cells; so two cells that change by the same amounts in opposite directions change nothing that covers both.

/// What parts of the programme are told apart by, over all tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dimension {
    /// Areas.
    Area,
    /// Sexes.
    Sex,
    /// Age bands at the visit, those of feeding, from which those of growth follow.
    Band,
    /// Age bands at the end of the period.
    BandAtEnd,
    /// Slots of the schedule.
    Slot,
    /// Rules and classes of follow-ups.
    Rule,
    /// Groups of food, allergens and levels of reactions.
    Reaction,
}

/// How many dimensions there are.
pub(crate) const CELL: usize = 7;

/// A level of each dimension.
pub(crate) type Cell = [usize; CELL];

/// A split of a table: which dimension it tells apart, and which of its levels each level of the dimension belongs to.
#[derive(Debug, Clone)]
pub struct Axis {
    /// The dimension.
    pub dimension: Dimension,
    /// Level of the split by level of the dimension; `None` = the table does not count there.
    pub level_of: Vec<Option<usize>>,
}

impl Axis {
    /// Levels of the split are those of the dimension.
    #[must_use]
    pub fn of(dimension: Dimension, levels: usize) -> Self {
        Self { dimension, level_of: (0..levels).map(Some).collect() }
    }

    /// The level of the split to which a level of the dimension belongs.
    pub(crate) fn level(&self, of_dimension: usize) -> Option<usize> {
        self.level_of.get(of_dimension).copied().flatten()
    }
}

/// What holds between variables within a cell: the signed sum does not change.
#[derive(Debug, Clone)]
pub(crate) struct Bond {
    /// Variables with their signs.
    pub(crate) members: Vec<(usize, i8)>,
    /// Holds only in cells of these levels of these dimensions.
    pub(crate) only: Vec<(Dimension, Vec<bool>)>,
}

impl Bond {
    pub(crate) fn holds_in(&self, cell: &Cell) -> bool {
        self.only.iter().all(|(dimension, levels)| levels.get(cell[*dimension as usize]).copied().unwrap_or(false))
    }
}

/// The figures of a table within a system. Its measures, and what its relations leave over, are *variables*: numbered through
/// over all sheets.
#[derive(Debug, Clone)]
pub(crate) struct Sheet {
    pub(crate) first: usize,
    pub(crate) first_variable: usize,
    pub(crate) sizes: Vec<usize>,
    pub(crate) axes: Vec<Axis>,
    pub(crate) measures: usize,
    pub(crate) rests: usize,
}

impl Sheet {
    pub(crate) fn positions(&self) -> usize {
        self.sizes.iter().map(|size| size + 1).product()
    }

    pub(crate) fn figures(&self) -> usize {
        self.positions() * self.variables()
    }

    pub(crate) const fn variables(&self) -> usize {
        self.measures + self.rests
    }

    /// The figure of a variable at a position, by number.
    pub(crate) fn figure(&self, position: usize, variable: usize) -> usize {
        let own = variable - self.first_variable;
        if own < self.measures {
            self.first + position * self.measures + own
        } else {
            self.first + self.positions() * self.measures + position * self.rests + (own - self.measures)
        }
    }

    /// The variable and the levels of a figure.
    pub(crate) fn locate(&self, figure: usize) -> (usize, Vec<usize>) {
        let at = figure - self.first;
        let measured = self.positions() * self.measures;
        let (mut position, own) = if at < measured {
            (at / self.measures, at % self.measures)
        } else {
            ((at - measured) / self.rests, self.measures + (at - measured) % self.rests)
        };
        let mut levels = vec![0; self.sizes.len()];
        for (level, size) in levels.iter_mut().zip(&self.sizes).rev() {
            *level = position % (size + 1);
            position /= size + 1;
        }
        (self.first_variable + own, levels)
    }

    /// The splits of which these levels name a part, as bits.
    pub(crate) fn named(&self, levels: &[usize]) -> usize {
        (0..levels.len()).filter(|split| levels[*split] < self.sizes[*split]).map(|split| 1 << split).sum()
    }

    /// The numbers of all positions that cover a cell; `None` if the table does not count it.
    pub(crate) fn covering(&self, cell: &Cell) -> Option<Vec<usize>> {
        let mut found = vec![0];
        for (size, axis) in self.sizes.iter().zip(&self.axes) {
            let total = found.iter().map(|position| position * (size + 1) + size);
            if *size == 0 {
                found = total.collect();
                continue;
            }
            let level = axis.level(cell[axis.dimension as usize])?;
            found = found.iter().map(|position| position * (size + 1) + level).chain(total).collect();
        }
        Some(found)
    }

    /// All positions that name these splits and perhaps more, by number.
    pub(crate) fn finer(&self, named: usize) -> Vec<usize> {
        (0..1_usize << self.sizes.len())
            .filter(|splits| splits & named == named && self.has(*splits))
            .flat_map(|splits| self.naming(splits))
            .collect()
    }

    /// Whether each of these splits tells parts apart.
    pub(crate) fn has(&self, splits: usize) -> bool {
        (0..self.sizes.len()).all(|split| splits & (1 << split) == 0 || self.sizes[split] > 0)
    }

    /// All positions that name exactly these splits, by number.
    pub(crate) fn naming(&self, splits: usize) -> Vec<usize> {
        let mut found = vec![0];
        for (split, size) in self.sizes.iter().enumerate() {
            let levels = if splits & (1 << split) == 0 { *size..=*size } else { 0..=size.saturating_sub(1) };
            found = found.iter().flat_map(|position| levels.clone().map(move |level| position * (size + 1) + level)).collect();
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_is_found_again_and_covers_what_its_position_says() {
        let axes = vec![Axis::of(Dimension::Area, 3), Axis { dimension: Dimension::Band, level_of: vec![Some(0), Some(1), Some(1)] }];
        let sheet = Sheet { first: 5, first_variable: 7, sizes: vec![3, 2], axes, measures: 2, rests: 1 };
        for position in 0..sheet.positions() {
            for variable in 7..10 {
                let (found, levels) = sheet.locate(sheet.figure(position, variable));
                assert_eq!((found, levels[0] * 3 + levels[1]), (variable, position));
            }
        }
        // Area 2, third band: the second of the table. Its own row, its band's, its area's, everybody's.
        assert_eq!(sheet.covering(&[2, 0, 2, 0, 0, 0, 0]), Some(vec![7, 10, 8, 11]));
        assert_eq!(sheet.naming(0b01), [2, 5, 8]);
    }
}

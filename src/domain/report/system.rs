//! Figures of a release and what everybody knows to hold between them. It knows nothing of children, areas or files.
//!
//! The same knowledge stands here twice: as equations between single figures, for whoever attacks or checks a release, and as
//! sheets and bonds, for those who look for other releases that look the same.

use crate::report::sheet::{Axis, Bond, CELL, Sheet};

/// What a figure is to the reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Printed unless withheld.
    Printed,
    /// Known whatever is printed: a nought where nobody can be counted. Never withheld.
    Known,
    /// Never printed, but what an equation leaves over: it only bounds the others.
    Slack,
    /// As `Slack`, and a small value of it must not come to light either (those of a group who are *not* counted).
    GuardedSlack,
    /// No figure at all: what a relation would leave over where it does not hold.
    Nothing,
}

/// Where a figure stands: what is lost when it is withheld.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// A row of two splits or more. A column is told in all rows of such splits or in none.
    Fine,
    /// A row of one area, or of one part of the programme.
    Split,
    /// The programme's row.
    Whole,
}

/// What readers would miss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Worth {
    /// It says how other figures were counted.
    Little,
    /// Most figures.
    Usual,
    /// What others are measured by, or the first thing that is looked for.
    Much,
}

/// A figure of a release.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Figure {
    /// Its true value.
    pub value: u64,
    /// What it is to the reader.
    pub kind: Kind,
    /// Where it stands.
    pub standing: Standing,
    /// What readers would miss.
    pub worth: Worth,
}

/// Figures and what everybody knows to hold between them.
#[derive(Debug, Clone, Default)]
pub struct System {
    /// The figures, in the order in which ties are broken.
    pub figures: Vec<Figure>,
    /// Each equation as figures with their signs; the signed sum is 0.
    pub equations: Vec<Vec<(usize, i8)>>,
    pub(crate) sheets: Vec<Sheet>,
    pub(crate) bonds: Vec<Bond>,
    /// How many parts everything has along each dimension.
    pub(crate) sizes: [usize; CELL],
    pub(crate) variables: usize,
}

impl System {
    /// Adds a figure and gives its place.
    pub fn push(&mut self, figure: Figure) -> usize {
        self.figures.push(figure);
        self.figures.len() - 1
    }

    /// Adds a sheet whose figures come next; gives its first variable.
    pub(crate) fn sheet(&mut self, sizes: &[usize], axes: &[Axis], measures: usize, rests: usize) -> usize {
        for axis in axes {
            let size = &mut self.sizes[axis.dimension as usize];
            *size = (*size).max(axis.level_of.len());
        }
        let first_variable = self.variables;
        self.variables += measures + rests;
        let (first, sizes, axes) = (self.figures.len(), sizes.to_vec(), axes.to_vec());
        self.sheets.push(Sheet { first, first_variable, sizes, axes, measures, rests });
        first_variable
    }

    /// The sheet in which a figure stands, if it stands in one.
    pub(crate) fn sheet_of(&self, figure: usize) -> Option<&Sheet> {
        let next = self.sheets.partition_point(|sheet| sheet.first <= figure);
        self.sheets[..next].last().filter(|sheet| figure < sheet.first + sheet.figures())
    }

    /// The sheet to which a variable belongs.
    pub(crate) fn sheet_with(&self, variable: usize) -> &Sheet {
        let next = self.sheets.partition_point(|sheet| sheet.first_variable <= variable);
        &self.sheets[next - 1]
    }

    /// Says that `total` is the sum of `parts`.
    pub fn sum(&mut self, total: usize, parts: &[usize]) {
        let mut equation: Vec<(usize, i8)> = parts.iter().map(|part| (*part, 1)).collect();
        equation.push((total, -1));
        self.equations.push(equation);
    }

    /// Says that both sides add up to the same.
    pub(crate) fn equal(&mut self, one: &[usize], other: &[usize]) {
        let side = |figures: &[usize], sign: i8| figures.iter().map(|figure| (*figure, sign)).collect::<Vec<_>>();
        self.equations.push([side(one, -1), side(other, 1)].concat());
    }

    /// Says that the sum of `wholes` is that of `parts` and of `rest`, which is made so.
    pub(crate) fn parts(&mut self, wholes: &[usize], parts: &[usize], rest: usize) {
        let sum = |figures: &[usize]| figures.iter().map(|figure| self.figures[*figure].value).sum::<u64>();
        self.figures[rest].value = sum(wholes).saturating_sub(sum(parts));
        self.equal(wholes, &[parts, &[rest]].concat());
    }

    /// The equations that the values do not meet: a fault of the counting, not of the reader.
    #[must_use]
    pub fn broken(&self) -> Vec<usize> {
        let value = |figure: usize| i128::from(self.figures[figure].value);
        let sum = |equation: &[(usize, i8)]| equation.iter().map(|(figure, sign)| value(*figure) * i128::from(*sign)).sum::<i128>();
        (0..self.equations.len()).filter(|index| sum(&self.equations[*index]) != 0).collect()
    }
}

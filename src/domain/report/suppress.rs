//! Keeps small numbers private: which figures of a release are withheld, so that none of them can be worked out.
//!
//! A release is a set of whole, non-negative figures tied together by linear equations (a total equals its parts; those with an
//! answer and those without make everybody). Figures of 1 to `threshold − 1` are withheld, and then as many neighbours as it
//! takes that every withheld figure keeps at least `threshold` possible values for a reader who knows all that is printed, all
//! the equations and that a nought is always shown. It knows nothing of children, areas or file formats.
//!
//! How it proves its result: each withheld figure belongs to a *swing*, a set of withheld figures that can all be moved by +1 or
//! −1 at once without breaking an equation. Moving k times for every k between two bounds gives as many different releases with
//! the same printed figures, each possible. The threshold of 5 is common practice; other bodies ask for 10 or 11 (Washington
//! State Department of Health, small numbers standard, 2018: fewer than 10).

use crate::report::swing::{Search, Swing};

/// What a figure is to the reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Printed unless withheld.
    Printed,
    /// Never printed, but what an equation leaves over: it only bounds the others.
    Slack,
    /// As `Slack`, and a small value of it must not come to light either (those of a group who are *not* counted).
    GuardedSlack,
}

/// A figure of a release.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Figure {
    /// Its true value.
    pub value: u64,
    /// What it is to the reader.
    pub kind: Kind,
}

/// Figures and the equations that everybody knows to hold between them.
#[derive(Debug, Clone, Default)]
pub struct System {
    /// The figures, in the order in which ties are broken.
    pub figures: Vec<Figure>,
    /// Each equation as figures with their signs; the signed sum is 0.
    pub equations: Vec<Vec<(usize, i8)>>,
}

impl System {
    /// Adds a figure and gives its place.
    pub fn figure(&mut self, value: u64, kind: Kind) -> usize {
        self.figures.push(Figure { value, kind });
        self.figures.len() - 1
    }

    /// Says that `total` is the sum of `parts`.
    pub fn sum(&mut self, total: usize, parts: &[usize]) {
        let mut equation: Vec<(usize, i8)> = parts.iter().map(|part| (*part, 1)).collect();
        equation.push((total, -1));
        self.equations.push(equation);
    }

    /// The equations that the values do not meet: a fault of the counting, not of the reader.
    #[must_use]
    pub fn broken(&self) -> Vec<usize> {
        let value = |figure: usize| i128::from(self.figures[figure].value);
        let sum = |equation: &[(usize, i8)]| equation.iter().map(|(figure, sign)| value(*figure) * i128::from(*sign)).sum::<i128>();
        (0..self.equations.len()).filter(|index| sum(&self.equations[*index]) != 0).collect()
    }
}

/// Why a figure is withheld.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reason {
    /// It counts fewer children than the threshold, but not none. Printed `<5`.
    Small,
    /// Withheld so that another one cannot be worked out. Printed `s`. It may itself be small, where the word would betray more.
    Linked,
    /// A percentage of too few children to mean anything.
    Few,
}

impl Reason {
    /// The permanent code, as in the column `withheld`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Small => "small",
            Self::Linked => "linked",
            Self::Few => "few",
        }
    }
}

/// A count below which figures are withheld. It may only be raised above the default.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Threshold(u64);

impl Threshold {
    /// 5, the least allowed (common practice).
    pub const LEAST: Self = Self(5);

    /// A threshold of at least 5.
    #[must_use]
    pub const fn new(value: u64) -> Option<Self> {
        if value < Self::LEAST.0 { None } else { Some(Self(value)) }
    }

    /// The figure itself: values from here on may be shown.
    #[must_use]
    pub const fn get(self) -> u64 {
        self.0
    }

    /// Whether a count of children is too small to show.
    #[must_use]
    pub const fn hides(self, count: u64) -> bool {
        count > 0 && count < self.0
    }
}

/// Decides which figures are withheld; `None` = shown (of slack: nothing is ever printed, so always `None`).
#[must_use]
pub fn withhold(system: &System, threshold: Threshold) -> Vec<Option<Reason>> {
    decide(system, threshold).0
}

/// The decision, and the swings that prove it.
fn decide(system: &System, threshold: Threshold) -> (Vec<Option<Reason>>, Vec<Swing>) {
    let figures = &system.figures;
    let mut hidden: Vec<bool> = figures.iter().map(|f| f.kind == Kind::Printed && threshold.hides(f.value)).collect();
    let targets: Vec<usize> =
        (0..figures.len()).filter(|i| threshold.hides(figures[*i].value) && figures[*i].kind != Kind::Slack).collect();
    let mut search = Search::new(system, threshold.get());
    let mut proof: Vec<Option<usize>> = vec![None; figures.len()];
    let mut swings: Vec<Swing> = Vec::new();
    let mut silenced = vec![false; figures.len()];
    for target in targets {
        if proof[target].is_some() || silenced[target] {
            continue;
        }
        if let Some(swing) = search.cheapest(target, &hidden) {
            for (figure, _) in &swing {
                hidden[*figure] |= figures[*figure].kind == Kind::Printed;
                proof[*figure].get_or_insert(swings.len());
            }
            swings.push(swing);
        } else {
            // Nothing smaller helps: everything tied to the figure goes. All of it could be any multiple of what it is.
            for figure in search.tied_to(target) {
                hidden[figure] |= figures[figure].kind == Kind::Printed && figures[figure].value > 0;
                silenced[figure] = true;
            }
        }
    }
    let small = labels(system, threshold, &hidden, &proof, &swings, &silenced);
    let reasons = (0..figures.len()).map(|i| match (hidden[i], small[i]) {
        (false, _) => None,
        (true, true) => Some(Reason::Small),
        (true, false) => Some(Reason::Linked),
    });
    (reasons.collect(), swings)
}

/// Which withheld figures may be called small. The word says "1 to threshold − 1", so it is a bound that a reader can use: where
/// it would leave any figure of the swing fewer values than the word itself leaves, the small ones are called linked instead.
fn labels(
    system: &System,
    threshold: Threshold,
    hidden: &[bool],
    proof: &[Option<usize>],
    swings: &[Swing],
    silenced: &[bool],
) -> Vec<bool> {
    let figures = &system.figures;
    let mut small: Vec<bool> = (0..figures.len()).map(|i| hidden[i] && !silenced[i] && threshold.hides(figures[i].value)).collect();
    let most = i128::from(threshold.get()) - 1;
    for figure in 0..figures.len() {
        let guarded = hidden[figure] || (figures[figure].kind == Kind::GuardedSlack && threshold.hides(figures[figure].value));
        let Some(swing) = proof[figure].filter(|_| guarded).map(|index| &swings[index]) else { continue };
        let (mut low, mut high) = (-i128::from(u64::MAX), i128::from(u64::MAX));
        for (member, sign) in swing {
            let value = i128::from(figures[*member].value);
            let floor = i128::from(figures[*member].kind == Kind::Printed);
            let ceiling = if small[*member] { most } else { i128::from(u64::MAX) };
            let (down, up) = if *sign > 0 { (value - floor, ceiling - value) } else { (ceiling - value, value - floor) };
            low = low.max(-down);
            high = high.min(up);
        }
        if high - low + 1 < most {
            for (member, _) in swing {
                small[*member] = false;
            }
        }
    }
    // A figure without a swing of its own was withheld with everything round it.
    small
}

#[cfg(test)]
#[path = "suppress_tests.rs"]
mod tests;

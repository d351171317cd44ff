//! Keeps small numbers private: which figures of a release are withheld, so that none of them can be worked out.
//!
//! A release is a set of whole, non-negative figures tied together by linear equations (a total equals its parts; those with an
//! answer and those without make everybody). Figures of 1 to `threshold − 1` are withheld, and then as many neighbours as it
//! takes that every withheld figure keeps at least `threshold` possible values for a reader who knows all that is printed, all
//! the equations and which withheld figures are not nought (a nought is shown, unless nothing else would protect a small one). It knows nothing of children, areas or file formats.
//!
//! How it proves its result: for each withheld figure it knows at least `threshold` releases with the same printed figures, all
//! equations met and another value of that figure in each. They come from *swings*: sets of withheld figures that can all be
//! moved by +1 or −1 at once without breaking an equation. The threshold of 5 is common practice; other bodies ask for 10 or 11 (Washington
//! State Department of Health, small numbers standard, 2018: fewer than 10).

use crate::report::alike::Alike;
use crate::report::swing::{Proof, Search};

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
    /// Children who are alike, where figures count children in a table.
    pub alike: Alike,
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

/// The decision, and the other releases that prove it.
fn decide(system: &System, threshold: Threshold) -> (Vec<Option<Reason>>, Vec<Proof>) {
    let figures = &system.figures;
    let mut hidden: Vec<bool> = figures.iter().map(|f| f.kind == Kind::Printed && threshold.hides(f.value)).collect();
    let guarded = |f: &Figure| threshold.hides(f.value) && matches!(f.kind, Kind::Printed | Kind::GuardedSlack);
    let mut targets: Vec<usize> = (0..figures.len()).filter(|i| guarded(&figures[*i])).collect();
    let mut search = Search::new(system, threshold.get());
    let mut proven: Vec<Option<usize>> = vec![None; figures.len()];
    let mut proofs: Vec<Proof> = Vec::new();
    let mut silenced = vec![false; figures.len()];
    let mut next = 0;
    while let Some(target) = targets.get(next).copied() {
        next += 1;
        if proven[target].is_some() || silenced[target] {
            continue;
        }
        if let Some(proof) = search.cheapest(target, &mut hidden) {
            for member in &proof.members {
                proven[*member].get_or_insert(proofs.len());
            }
            for (figure, _) in proof.releases.iter().flatten() {
                if figures[*figure].kind == Kind::Printed && !hidden[*figure] {
                    hidden[*figure] = true;
                    // What is withheld for another's sake must keep as many values itself.
                    targets.push(*figure);
                }
            }
            proofs.push(proof);
        } else {
            // Nothing smaller helps: everything tied to the figure goes. All of it could be any multiple of what it is.
            for figure in search.tied_to(target) {
                hidden[figure] |= figures[figure].kind == Kind::Printed && figures[figure].value > 0;
                silenced[figure] = true;
            }
        }
    }
    let small = labels(system, threshold, &hidden, &proven, &proofs, &silenced);
    let reasons = (0..figures.len()).map(|i| match (hidden[i], small[i]) {
        (false, _) => None,
        (true, true) => Some(Reason::Small),
        (true, false) => Some(Reason::Linked),
    });
    (reasons.collect(), proofs)
}

/// Which withheld figures may be called small. The word says "1 to threshold − 1", so it is a bound that a reader can use: where
/// it would leave a figure fewer values than the word itself leaves, the small ones in the way are called linked instead.
fn labels(
    system: &System,
    threshold: Threshold,
    hidden: &[bool],
    proven: &[Option<usize>],
    proofs: &[Proof],
    silenced: &[bool],
) -> Vec<bool> {
    let figures = &system.figures;
    let mut small: Vec<bool> = (0..figures.len()).map(|i| hidden[i] && !silenced[i] && threshold.hides(figures[i].value)).collect();
    let most = threshold.get() - 1;
    for figure in 0..figures.len() {
        let guarded = hidden[figure] || (figures[figure].kind == Kind::GuardedSlack && threshold.hides(figures[figure].value));
        let Some(proof) = proven[figure].filter(|_| guarded).map(|index| &proofs[index]) else { continue };
        let in_the_way = |release: &Vec<(usize, i64)>| -> Vec<usize> {
            let too_much = |(member, by): &&(usize, i64)| small[*member] && figures[*member].value.saturating_add_signed(*by) > most;
            release.iter().filter(too_much).map(|(member, _)| *member).collect()
        };
        let mut obstacles: Vec<Vec<usize>> = proof.releases.iter().map(in_the_way).collect();
        obstacles.sort_by_key(Vec::len);
        for member in obstacles.into_iter().take(usize::try_from(most).unwrap_or(usize::MAX)).flatten() {
            small[member] = false;
        }
    }
    // A figure without a proof of its own was withheld with everything round it.
    small
}

#[cfg(test)]
#[path = "suppress_tests.rs"]
mod tests;

//! Keeps small numbers private: which figures of a release are withheld, so that none of them can be worked out.
//!
//! A release is a set of whole, non-negative figures tied together by linear equations (a total equals its parts; those with an
//! answer and those without make everybody). Figures of 1 to `threshold − 1` are withheld, and then as many neighbours as it
//! takes that every withheld figure keeps at least `threshold` possible values for a reader who knows all that is printed, all
//! the equations and which withheld figures are not nought (a nought is shown, unless nothing else would protect a small one).
//! It knows nothing of children, areas or file formats.
//!
//! How it proves its result: for each withheld figure it knows at least `threshold` releases with the same printed figures, all
//! equations met and another value of that figure in each; see `trade`. The threshold of 5 is common
//! practice; other bodies ask for 10 or 11 (Washington State Department of Health, small numbers standard, 2018: fewer than 10).

use crate::report::system::{Kind, Standing, System};
use crate::report::trade::{Proof, Search};

/// Why a figure is withheld.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reason {
    /// It is small, or a small one could be worked out from it. One word for both: to say which would betray that the small one
    /// is 1 to `threshold − 1`, which is one value fewer than it must keep.
    Private,
    /// A percentage of too few children to mean anything.
    Few,
}

impl Reason {
    /// The permanent code, as in the column `withheld`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Private => "private",
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

/// Rows of two splits or more are told if at most one in so many of their figures is small, and in the end at most one in so many
/// is withheld; noughts are not counted (our own choice: a table of gaps helps nobody).
const SMALL_AT_MOST_ONE_IN: usize = 8;
const WITHHELD_AT_MOST_ONE_IN: usize = 2;

/// Which figures are withheld, and why nobody can undo it.
pub(crate) struct Decision {
    /// For each figure, whether it is withheld, or in a row that is not told (of what is never printed: no).
    pub(crate) hidden: Vec<bool>,
    /// The other releases that prove it.
    #[cfg_attr(not(test), expect(dead_code, reason = "the tests check each of them"))]
    pub(crate) proofs: Vec<Proof>,
    /// Figures of which all that is tied to them is withheld.
    #[cfg_attr(not(test), expect(dead_code, reason = "the tests look for the others"))]
    pub(crate) gone_with: Vec<usize>,
}

/// Decides which figures are withheld.
#[must_use]
pub fn withhold(system: &System, threshold: Threshold) -> Vec<bool> {
    decide(system, threshold).hidden
}

/// Withholds everything small, then what it takes to keep that from being worked out.
pub(crate) fn decide(system: &System, threshold: Threshold) -> Decision {
    let figures = &system.figures;
    let need = usize::try_from(threshold.get()).unwrap_or(usize::MAX);
    let printed = |at: usize| figures[at].kind == Kind::Printed;
    let small = |at: usize| threshold.hides(figures[at].value);
    let mut hidden: Vec<bool> = (0..figures.len()).map(|at| printed(at) && small(at)).collect();
    let mut omitted = vec![false; figures.len()];
    omit_rows(system, &|at| small(at), SMALL_AT_MOST_ONE_IN, &mut omitted);
    let mut search = Search::new(system, need, omitted);
    let mut proofs: Vec<Proof> = Vec::new();
    let mut gone_with: Vec<usize> = Vec::new();
    let mut proven = vec![false; figures.len()];
    let guarded = |at: &usize| hidden[*at] || (figures[*at].kind == Kind::GuardedSlack && small(*at));
    let mut targets: Vec<usize> = (0..figures.len()).filter(guarded).collect();
    // The programme's row first: what it withholds protects the others too.
    targets.sort_by_key(|at| std::cmp::Reverse(figures[*at].standing));
    let mut next = 0;
    while let Some(target) = targets.get(next).copied() {
        next += 1;
        if proven[target] || search.is_omitted(target) {
            continue;
        }
        let fine = figures[target].standing == Standing::Fine;
        let newly = if let Some(proof) = search.cheapest(target, &hidden) {
            proof.protects(need).into_iter().for_each(|figure| proven[figure] = true);
            let newly = proof.newly.clone();
            proofs.push(proof);
            newly
        } else if fine {
            // Rows that cannot keep their own secrets are not told.
            search.omit(&rows_like(system, target));
            Vec::new()
        } else {
            // Nothing else is left: all that is tied to the figure goes. All of it could be any multiple of what it is.
            let all = search.tied_to(target);
            all.iter().for_each(|at| proven[*at] = true);
            gone_with.extend(&all);
            all.into_iter().filter(|at| figures[*at].value > 0).collect()
        };
        for figure in newly.into_iter().filter(|at| printed(*at)) {
            if !std::mem::replace(&mut hidden[figure], true) {
                // What is withheld for another's sake must keep as many values itself.
                targets.push(figure);
            }
        }
    }
    let mut omitted: Vec<bool> = (0..figures.len()).map(|at| search.is_omitted(at)).collect();
    omit_rows(system, &|at| hidden[at], WITHHELD_AT_MOST_ONE_IN, &mut omitted);
    (0..figures.len()).for_each(|at| hidden[at] |= omitted[at] && printed(at));
    Decision { hidden, proofs, gone_with }
}

/// Omits the rows of two splits or more in which more than one in so many figures is a gap, and those that are finer.
fn omit_rows(system: &System, gap: &dyn Fn(usize) -> bool, at_most_one_in: usize, omitted: &mut [bool]) {
    for sheet in &system.sheets {
        for splits in (0..1_usize << sheet.sizes.len()).filter(|splits| splits.count_ones() > 1 && sheet.has(*splits)) {
            let of_row = |row: usize| (0..sheet.measures).map(move |own| sheet.figure(row, sheet.first_variable + own));
            let printed = |at: &usize| system.figures[*at].kind == Kind::Printed && system.figures[*at].value > 0;
            let figures: Vec<usize> = sheet.naming(splits).into_iter().flat_map(of_row).filter(printed).collect();
            let gaps = figures.iter().filter(|at| gap(**at)).count();
            if let Some(first) = figures.first()
                && gaps * at_most_one_in > figures.len()
            {
                rows_like(system, *first).into_iter().for_each(|at| omitted[at] = true);
            }
        }
    }
}

/// All figures of the rows that name the same splits as that of this figure, and perhaps more: whoever has those has these.
fn rows_like(system: &System, figure: usize) -> Vec<usize> {
    let Some(sheet) = system.sheet_of(figure) else { return vec![figure] };
    let rows = sheet.finer(sheet.named(&sheet.locate(figure).1));
    let variables = sheet.first_variable..sheet.first_variable + sheet.variables();
    rows.into_iter().flat_map(|row| variables.clone().map(move |variable| sheet.figure(row, variable))).collect()
}

/// For each figure whether it stands in a row that is not told: a row of two splits or more, in which nothing is printed.
#[must_use]
pub fn omitted(system: &System, withheld: &[bool]) -> Vec<bool> {
    let mut omitted = vec![false; system.figures.len()];
    for sheet in &system.sheets {
        for splits in (0..1_usize << sheet.sizes.len()).filter(|splits| splits.count_ones() > 1 && sheet.has(*splits)) {
            let rows = sheet.naming(splits);
            let in_rows = |variables: usize| {
                let of_row =
                    move |row: &usize| (0..variables).map(|own| sheet.figure(*row, sheet.first_variable + own)).collect::<Vec<_>>();
                rows.iter().flat_map(of_row)
            };
            if !in_rows(sheet.measures).any(|at| system.figures[at].kind == Kind::Printed && !withheld[at]) {
                in_rows(sheet.variables()).for_each(|at| omitted[at] = true);
            }
        }
    }
    omitted
}

#[cfg(test)]
#[path = "suppress_tests.rs"]
mod tests;

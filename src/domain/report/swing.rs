//! Finds the cheapest set of figures that can be moved together without breaking an equation. A search with bounds, no more:
//! it does not know what the figures count, and what it returns is checked by its own bounds, not by how it was found.

use crate::report::suppress::{Kind, System};

/// Figures that move together, each with the direction (+1 or −1) in which it moves.
pub(crate) type Swing = Vec<(usize, i8)>;

/// How many steps one search may take before the best found so far is kept.
const STEPS: u32 = 6_000;

/// The search over one system; its scratch space is kept between searches.
pub(crate) struct Search<'a> {
    system: &'a System,
    /// The equations in which each figure stands, with its sign.
    touching: Vec<Vec<(usize, i8)>>,
    /// How many values each figure must keep.
    need: i128,
    moved: Vec<i8>,
    residual: Vec<i16>,
    pending: Vec<usize>,
    trail: Swing,
    best: Option<(u64, Swing)>,
    steps_left: u32,
}

/// The multiples of a swing that keep every figure possible.
#[derive(Clone, Copy)]
struct Span {
    low: i128,
    high: i128,
}

impl<'a> Search<'a> {
    /// Prepares the search; each figure of a swing must keep `need` values.
    pub(crate) fn new(system: &'a System, need: u64) -> Self {
        let mut touching = vec![Vec::new(); system.figures.len()];
        for (index, equation) in system.equations.iter().enumerate() {
            for (figure, sign) in equation {
                touching[*figure].push((index, *sign));
            }
        }
        Self {
            system,
            touching,
            need: i128::from(need),
            moved: vec![0; system.figures.len()],
            residual: vec![0; system.equations.len()],
            pending: Vec::new(),
            trail: Vec::new(),
            best: None,
            steps_left: 0,
        }
    }

    /// The swing through `target` that withholds least beyond what is `hidden` already, if one was found.
    pub(crate) fn cheapest(&mut self, target: usize, hidden: &[bool]) -> Option<Swing> {
        self.best = None;
        self.steps_left = STEPS;
        let open = Span { low: -i128::from(u64::MAX), high: i128::from(u64::MAX) };
        let span = self.narrowed(open, target, 1)?;
        self.apply(target, 1);
        self.step(0, span, 0, hidden);
        self.undo(target, 1, 0);
        self.best.take().map(|(_, swing)| swing)
    }

    /// Every figure that is tied to this one through equations, itself too.
    pub(crate) fn tied_to(&self, target: usize) -> Vec<usize> {
        let mut seen = vec![false; self.system.figures.len()];
        let mut found = vec![target];
        seen[target] = true;
        let mut next = 0;
        while next < found.len() {
            for (equation, _) in &self.touching[found[next]] {
                for (figure, _) in &self.system.equations[*equation] {
                    if !seen[*figure] {
                        seen[*figure] = true;
                        found.push(*figure);
                    }
                }
            }
            next += 1;
        }
        found
    }

    /// The span left when the figure joins with this sign; `None` when too few values would be left.
    fn narrowed(&self, span: Span, figure: usize, sign: i8) -> Option<Span> {
        let figure = self.system.figures[figure];
        // A withheld figure is never nought, for a nought is always shown.
        let room = i128::from(figure.value) - i128::from(figure.kind == Kind::Printed);
        let span = if sign > 0 { Span { low: span.low.max(-room), ..span } } else { Span { high: span.high.min(room), ..span } };
        (span.high - span.low + 1 >= self.need).then_some(span)
    }

    fn apply(&mut self, figure: usize, sign: i8) {
        self.moved[figure] = sign;
        self.trail.push((figure, sign));
        for (equation, weight) in &self.touching[figure] {
            self.residual[*equation] += i16::from(sign * weight);
            if self.residual[*equation] != 0 {
                self.pending.push(*equation);
            }
        }
    }

    fn undo(&mut self, figure: usize, sign: i8, pending: usize) {
        for (equation, weight) in &self.touching[figure] {
            self.residual[*equation] -= i16::from(sign * weight);
        }
        self.pending.truncate(pending);
        self.trail.pop();
        self.moved[figure] = 0;
    }

    /// Mends the first broken equation by moving one more figure, and so on until none is broken. Whether a swing was found.
    fn step(&mut self, mut head: usize, span: Span, cost: u64, hidden: &[bool]) -> bool {
        while head < self.pending.len() && self.residual[self.pending[head]] == 0 {
            head += 1;
        }
        if head == self.pending.len() {
            if self.best.as_ref().is_none_or(|(least, _)| cost < *least) {
                self.best = Some((cost, self.trail.clone()));
            }
            return true;
        }
        let options = self.options(self.pending[head], span, hidden);
        let mut found = false;
        let mut group = None;
        for Choice { disorder, extra, figure, sign, span } in options {
            // Figures that mend more at once are tried first; the others only if those lead nowhere.
            if found && group != Some(disorder) {
                break;
            }
            group = Some(disorder);
            let cost = cost + extra;
            if self.steps_left == 0 || self.best.as_ref().is_some_and(|(least, _)| cost >= *least) {
                continue;
            }
            self.steps_left -= 1;
            let pending = self.pending.len();
            self.apply(figure, sign);
            found |= self.step(head, span, cost, hidden);
            self.undo(figure, sign, pending);
        }
        found
    }

    /// The figures that could mend an equation, best first.
    fn options(&self, equation: usize, span: Span, hidden: &[bool]) -> Vec<Choice> {
        let excess = self.residual[equation];
        let mut options = Vec::new();
        for (figure, weight) in &self.system.equations[equation] {
            let about = self.system.figures[*figure];
            let printed = about.kind == Kind::Printed;
            if self.moved[*figure] != 0 || (printed && about.value == 0) {
                continue;
            }
            let sign = if (excess > 0) == (*weight > 0) { -1 } else { 1 };
            let Some(span) = self.narrowed(span, *figure, sign) else { continue };
            let mut disorder = 0_i32;
            for (touched, weight) in &self.touching[*figure] {
                let before = self.residual[*touched];
                let after = before + i16::from(sign * weight);
                disorder += i32::from(after != 0) - i32::from(before != 0);
            }
            let extra = if printed && !hidden[*figure] { about.value + 1 } else { 0 };
            options.push(Choice { disorder, extra, figure: *figure, sign, span });
        }
        options.sort_by_key(|choice| (choice.disorder, choice.extra, choice.figure));
        options
    }
}

/// A figure that may join a swing.
struct Choice {
    disorder: i32,
    extra: u64,
    figure: usize,
    sign: i8,
    span: Span,
}

//! Finds the cheapest set of figures that can be moved together without breaking an equation. A search with bounds, no more:
//! it does not know what the figures count, and what it returns is checked by its own bounds, not by how it was found.

use crate::report::suppress::{Figure, Kind, System};

/// Figures that move together, each with the direction (+1 or −1) in which it moves.
type Swing = Vec<(usize, i8)>;

/// Other releases that a reader cannot tell from the true one, each by what differs; the first one differs in nothing.
/// Every figure of `members` has another value in each of them.
#[derive(Debug, Clone, Default)]
pub(crate) struct Proof {
    /// The releases.
    pub(crate) releases: Vec<Vec<(usize, i64)>>,
    /// The figures that it protects.
    pub(crate) members: Vec<usize>,
    /// What is withheld for it beyond what was withheld before, in children.
    cost: u64,
}

impl Proof {
    /// A swing made many times: no more often than a walk of as many stages would go; the truth itself is one of the releases.
    pub(crate) fn of_multiples(swing: &[(usize, i8)], (low, high): (i128, i128), need: i128, cost: u64) -> Self {
        let (low, high) = (low.max(1 - need), high.min(need - 1));
        let released = |times: i128| {
            let times = i64::try_from(times).unwrap_or(0);
            if times == 0 { Vec::new() } else { swing.iter().map(|(figure, sign)| (*figure, times * i64::from(*sign))).collect() }
        };
        let multiples = std::iter::once(0).chain((low..=high).filter(|times| *times != 0));
        Self { releases: multiples.map(released).collect(), members: swing.iter().map(|(figure, _)| *figure).collect(), cost }
    }
}

/// How many steps one search may take before the best found so far is kept: for one swing, and for each stage of a walk.
const STEPS: u32 = 8_000;
const STEPS_OF_A_STAGE: u32 = 2_000;

/// The fewest steps that one choice gets before the next one is tried, so that a bad first choice does not use up the search.
const FAIR_SHARE: u32 = 250;

/// By how much the search is widened when it finds nothing: where many columns are tied, a swing has hundreds of figures.
const EFFORTS: [u32; 2] = [1, 10];

/// From this cost on it is also asked whether an exchange of children who are alike would cost less.
const DEAR: u64 = 250;

/// What withholding a nought costs, in children: it tells little, but readers expect to see noughts.
const NOUGHT_COST: u64 = 30;

/// The search over one system; its scratch space is kept between searches.
pub(crate) struct Search<'a> {
    system: &'a System,
    /// The equations in which each figure stands, with its sign.
    touching: Vec<Vec<(usize, i8)>>,
    /// How many values each figure must keep.
    need: usize,
    /// What a swing must allow while one is looked for.
    asked: Asked,
    /// The release from which a swing starts.
    now: Vec<u64>,
    moved: Vec<i8>,
    residual: Vec<i16>,
    /// How many figures of each equation can still be moved.
    free: Vec<i16>,
    pending: Vec<usize>,
    trail: Swing,
    best: Option<(u64, Swing, Span)>,
    bound: u64,
    effort: u32,
}

/// The least a figure can be for a reader who knows which withheld figures are not nought: noughts are rarely withheld.
pub(crate) const fn floor(figure: Figure) -> u64 {
    match figure.kind {
        Kind::Printed | Kind::Known => {
            if figure.value > 0 {
                1
            } else {
                0
            }
        }
        Kind::Slack | Kind::GuardedSlack => 0,
    }
}

/// What it costs to withhold a figure: what it tells, in children.
pub(crate) const fn price(figure: Figure, hidden: bool) -> u64 {
    match (figure.kind, figure.value) {
        (Kind::Printed, 0) if !hidden => NOUGHT_COST,
        (Kind::Printed, value) if !hidden => value + 1,
        _ => 0,
    }
}

/// What a swing must allow.
#[derive(Clone, Copy)]
enum Asked {
    /// So many multiples, none of them included.
    Multiples(i128),
    /// To be made once.
    Once,
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
            need: usize::try_from(need).unwrap_or(usize::MAX),
            asked: Asked::Once,
            now: system.figures.iter().map(|figure| figure.value).collect(),
            moved: vec![0; system.figures.len()],
            residual: vec![0; system.equations.len()],
            free: system.equations.iter().map(|equation| free_in(system, equation)).collect(),
            pending: Vec::new(),
            trail: Vec::new(),
            best: None,
            bound: u64::MAX,
            effort: 1,
        }
    }

    /// What protects `target` and withholds least beyond what is `hidden` already, if anything was found: one swing made many
    /// times, or a walk of different ones, each from where the last one led.
    pub(crate) fn cheapest(&mut self, target: usize, hidden: &mut [bool]) -> Option<Proof> {
        for effort in EFFORTS {
            self.effort = effort;
            let searched = self.with_effort(target, hidden);
            if searched.as_ref().is_some_and(|proof| proof.cost < DEAR) {
                return searched;
            }
            let need = i128::try_from(self.need).unwrap_or(i128::MAX);
            let exchanged = self.system.alike.proof(self.system, &self.touching, target, hidden, need);
            let cheaper = [searched, exchanged].into_iter().flatten().min_by_key(|proof| proof.cost);
            if cheaper.is_some() {
                return cheaper;
            }
        }
        None
    }

    fn with_effort(&mut self, target: usize, hidden: &mut [bool]) -> Option<Proof> {
        let swing = self.swing_many_times(target, hidden);
        let bound = swing.as_ref().map(|proof| proof.cost);
        if bound == Some(0) {
            return swing;
        }
        self.walk(target, hidden, bound.unwrap_or(u64::MAX)).or(swing)
    }

    fn swing_many_times(&mut self, target: usize, hidden: &[bool]) -> Option<Proof> {
        let need = i128::try_from(self.need).unwrap_or(i128::MAX);
        self.asked = Asked::Multiples(need);
        let (cost, swing, span) = self.search(target, 1, hidden, STEPS * self.effort, u64::MAX)?;
        Some(Proof::of_multiples(&swing, (span.low, span.high), need, cost))
    }

    /// Goes up as far as is needed, then down; what was withheld on the way stays withheld for what follows.
    fn walk(&mut self, target: usize, hidden: &mut [bool], bound: u64) -> Option<Proof> {
        self.asked = Asked::Once;
        let mut proof = Proof { releases: vec![Vec::new()], members: vec![target], cost: 0 };
        let mut newly = Vec::new();
        let mut changed: Vec<usize> = Vec::new();
        for direction in [1, -1] {
            while proof.releases.len() < self.need {
                let left = bound.saturating_sub(proof.cost);
                let Some((cost, swing, _)) = self.search(target, direction, hidden, STEPS_OF_A_STAGE * self.effort, left) else { break };
                proof.cost += cost;
                for (figure, sign) in &swing {
                    self.now[*figure] = self.now[*figure].saturating_add_signed(i64::from(*sign));
                    changed.push(*figure);
                    if self.system.figures[*figure].kind == Kind::Printed && !hidden[*figure] {
                        hidden[*figure] = true;
                        newly.push(*figure);
                    }
                }
                changed.sort_unstable();
                changed.dedup();
                let moved = |figure: &usize| self.now[*figure].cast_signed() - self.system.figures[*figure].value.cast_signed();
                proof.releases.push(changed.iter().map(|figure| (*figure, moved(figure))).filter(|(_, by)| *by != 0).collect());
            }
            for figure in changed.drain(..) {
                self.now[figure] = self.system.figures[figure].value;
            }
        }
        newly.into_iter().for_each(|figure| hidden[figure] = false);
        (proof.releases.len() >= self.need).then_some(proof)
    }

    /// The cheapest swing that moves `target` in a direction and costs less than `bound`.
    fn search(&mut self, target: usize, direction: i8, hidden: &[bool], steps: u32, bound: u64) -> Option<(u64, Swing, Span)> {
        self.best = None;
        self.bound = bound;
        let open = Span { low: -i128::from(u64::MAX), high: i128::from(u64::MAX) };
        let span = self.narrowed(open, target, direction)?;
        self.apply(target, direction);
        let mut budget = steps;
        self.step(0, span, 0, hidden, &mut budget);
        self.undo(target, direction, 0);
        self.best.take()
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
        let room = i128::from(self.now[figure]) - i128::from(floor(self.system.figures[figure]));
        let span = if sign > 0 { Span { low: span.low.max(-room), ..span } } else { Span { high: span.high.min(room), ..span } };
        let fits = match self.asked {
            Asked::Multiples(need) => span.high - span.low + 1 >= need,
            Asked::Once => span.high >= 1,
        };
        fits.then_some(span)
    }

    fn apply(&mut self, figure: usize, sign: i8) {
        self.moved[figure] = sign;
        self.trail.push((figure, sign));
        for (equation, weight) in &self.touching[figure] {
            self.residual[*equation] += i16::from(sign * weight);
            self.free[*equation] -= 1;
            if self.residual[*equation] != 0 {
                self.pending.push(*equation);
            }
        }
    }

    fn undo(&mut self, figure: usize, sign: i8, pending: usize) {
        for (equation, weight) in &self.touching[figure] {
            self.residual[*equation] -= i16::from(sign * weight);
            self.free[*equation] += 1;
        }
        self.pending.truncate(pending);
        self.trail.pop();
        self.moved[figure] = 0;
    }

    /// Mends the first broken equation by moving one more figure, and so on until none is broken. Whether a swing was found.
    fn step(&mut self, mut head: usize, span: Span, cost: u64, hidden: &[bool], budget: &mut u32) -> bool {
        while head < self.pending.len() && self.residual[self.pending[head]] == 0 {
            head += 1;
        }
        if head == self.pending.len() {
            if self.affords(cost) {
                self.best = Some((cost, self.trail.clone(), span));
            }
            return true;
        }
        if *budget == 0 {
            return false;
        }
        *budget -= 1;
        let options = self.options(self.pending[head], span, hidden);
        let mut found = false;
        let mut group = None;
        for (at, Choice { disorder, extra, figure, sign, span }) in options.iter().copied().enumerate() {
            // Figures that mend more at once are tried first; the others only if those lead nowhere.
            if found && group != Some(disorder) {
                break;
            }
            group = Some(disorder);
            let cost = cost + extra;
            if !self.affords(cost) {
                continue;
            }
            let alike = options[at..].iter().take_while(|other| other.disorder == disorder).count();
            let fair = *budget / u32::try_from(alike).unwrap_or(u32::MAX);
            let mut share = fair.max(FAIR_SHARE * self.effort).min(*budget);
            *budget -= share;
            let pending = self.pending.len();
            self.apply(figure, sign);
            found |= self.step(head, span, cost, hidden, &mut share);
            self.undo(figure, sign, pending);
            *budget += share;
        }
        found
    }

    /// How many more equations are broken once the figure is moved; `None` when one of them could not be mended any more.
    fn disorder(&self, figure: usize, sign: i8) -> Option<i32> {
        let mut disorder = 0;
        for (touched, weight) in &self.touching[figure] {
            let before = self.residual[*touched];
            let after = before + i16::from(sign * weight);
            if after.abs() >= self.free[*touched] && after != 0 {
                return None;
            }
            disorder += i32::from(after != 0) - i32::from(before != 0);
        }
        Some(disorder)
    }

    /// Whether a swing of this cost would be better than the best so far.
    fn affords(&self, cost: u64) -> bool {
        cost < self.bound && self.best.as_ref().is_none_or(|(least, ..)| cost < *least)
    }

    /// The figures that could mend an equation, best first.
    fn options(&self, equation: usize, span: Span, hidden: &[bool]) -> Vec<Choice> {
        let excess = self.residual[equation];
        let mut options = Vec::new();
        for (figure, weight) in &self.system.equations[equation] {
            let about = self.system.figures[*figure];
            if self.moved[*figure] != 0 || about.kind == Kind::Known {
                continue;
            }
            let sign = if (excess > 0) == (*weight > 0) { -1 } else { 1 };
            let Some(span) = self.narrowed(span, *figure, sign) else { continue };
            let Some(disorder) = self.disorder(*figure, sign) else { continue };
            let extra = price(about, hidden[*figure]);
            options.push(Choice { disorder, extra, figure: *figure, sign, span });
        }
        options.sort_by_key(|choice| (choice.disorder, choice.extra, choice.figure));
        options
    }
}

/// How many figures of an equation can be moved at all.
fn free_in(system: &System, equation: &[(usize, i8)]) -> i16 {
    let free = equation.iter().filter(|(figure, _)| system.figures[*figure].kind != Kind::Known).count();
    i16::try_from(free).unwrap_or(i16::MAX)
}

/// A figure that may join a swing.
#[derive(Clone, Copy)]
struct Choice {
    disorder: i32,
    extra: u64,
    figure: usize,
    sign: i8,
    span: Span,
}

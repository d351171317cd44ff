//! Exchanges of children who are alike: one more here, one fewer there. Whatever the relations between the columns are, they hold
//! for every child, so such an exchange never breaks one. It finds what protects a figure where columns are tied so closely that
//! searching equation by equation leads nowhere. It knows kinds of children as lists of the measures they count in, no child.

use std::collections::BTreeSet;

use crate::report::suppress::{Kind, System};
use crate::report::swing::{Proof, floor, price};

/// How many kinds of children are tried for a figure: the plainest first.
const KINDS_TRIED: usize = 24;

/// The table behind a system, and the kinds of children in it.
#[derive(Debug, Clone, Default)]
pub struct Alike {
    /// Levels of each split, the total not counted.
    pub(crate) sizes: Vec<usize>,
    /// Measures at each position.
    pub(crate) measures: usize,
    /// The measures that a child of a kind counts in, each once.
    pub(crate) kinds: BTreeSet<Vec<usize>>,
}

/// A corner of an exchange: the first figure of its position, and whether it gains (+1) or loses (−1).
type Corner = (usize, i8);

impl Alike {
    /// The exchange that protects `target` and withholds least beyond what is `hidden`, if there is one.
    pub(crate) fn proof(
        &self,
        system: &System,
        touching: &[Vec<(usize, i8)>],
        target: usize,
        hidden: &[bool],
        need: i128,
    ) -> Option<Proof> {
        let position = self.position_of(system, touching, target)?;
        let corners = self.corners(&position);
        let mut kinds: Vec<&Vec<usize>> = self.kinds.iter().filter(|kind| self.moves(system, touching, kind, &position, target)).collect();
        kinds.sort_by_key(|kind| kind.len());
        #[expect(clippy::type_complexity, reason = "three parts of one candidate, named where they are taken apart")]
        let mut best: Option<(u64, Vec<(usize, i8)>, (i128, i128))> = None;
        for kind in kinds.into_iter().take(KINDS_TRIED) {
            for corners in &corners {
                let bound = best.as_ref().map_or(u64::MAX, |(cost, ..)| *cost);
                let found = self.exchange(system, touching, kind, corners, hidden, (need, bound));
                best = found.or(best);
            }
        }
        best.map(|(cost, swing, span)| Proof::of_multiples(&swing, span, need, cost))
    }

    fn place(&self, position: &[usize]) -> usize {
        position.iter().zip(&self.sizes).fold(0, |index, (level, size)| index * (size + 1) + level) * self.measures
    }

    /// The position of a figure of the table, or of the figures that a slack stands with.
    fn position_of(&self, system: &System, touching: &[Vec<(usize, i8)>], target: usize) -> Option<Vec<usize>> {
        let figures = self.sizes.iter().map(|size| size + 1).product::<usize>() * self.measures;
        let in_table = if target < figures {
            target
        } else {
            let (equation, _) = touching[target].first()?;
            system.equations[*equation].iter().map(|(figure, _)| *figure).find(|figure| *figure < figures)?
        };
        let mut index = in_table / self.measures;
        let mut position: Vec<usize> = Vec::new();
        for size in self.sizes.iter().rev() {
            position.push(index % (size + 1));
            index /= size + 1;
        }
        position.reverse();
        Some(position)
    }

    /// Whether one more child of this kind at the position would move the target.
    fn moves(&self, system: &System, touching: &[Vec<(usize, i8)>], kind: &[usize], position: &[usize], target: usize) -> bool {
        let place = self.place(position);
        if kind.iter().any(|measure| system.figures[place + measure].kind == Kind::Known) {
            return false;
        }
        let in_table = target >= place && target < place + self.measures;
        if in_table {
            return kind.binary_search(&(target - place)).is_ok();
        }
        let Some((equation, _)) = touching[target].first() else { return false };
        let gained = |figure: usize| figure >= place && figure < place + self.measures && kind.binary_search(&(figure - place)).is_ok();
        system.equations[*equation].iter().filter(|(figure, _)| gained(*figure)).map(|(_, sign)| i32::from(*sign)).sum::<i32>() != 0
    }

    /// Every way to exchange: for each split another level, or the total.
    fn corners(&self, position: &[usize]) -> Vec<Vec<Corner>> {
        let mut ways: Vec<Vec<(Vec<usize>, i8)>> = vec![vec![(Vec::new(), 1)]];
        for (split, size) in self.sizes.iter().enumerate() {
            let own = position[split];
            let others: Vec<usize> = if *size == 0 { vec![own] } else { (0..=*size).filter(|level| *level != own).collect() };
            ways = ways
                .into_iter()
                .flat_map(|way| {
                    others
                        .iter()
                        .map(move |other| {
                            let with = |level: usize, turn: i8| {
                                way.iter().map(move |(head, sign)| ([head.as_slice(), &[level]].concat(), sign * turn)).collect::<Vec<_>>()
                            };
                            // A part against another part changes sign; a part with the total does not.
                            let turn = if own == *size || *other == *size { 1 } else { -1 };
                            if *other == own { with(own, 1) } else { [with(own, 1), with(*other, turn)].concat() }
                        })
                        .collect::<Vec<_>>()
                })
                .collect();
        }
        ways.into_iter().map(|way| way.into_iter().map(|(position, sign)| (self.place(&position), sign)).collect()).collect()
    }

    /// The exchange as a swing with its cost and multiples, if it costs less than the bound and leaves enough of them.
    #[expect(clippy::type_complexity, reason = "a swing, what it costs and how often it can be made, used at one place")]
    fn exchange(
        &self,
        system: &System,
        touching: &[Vec<(usize, i8)>],
        kind: &[usize],
        corners: &[Corner],
        hidden: &[bool],
        (need, bound): (i128, u64),
    ) -> Option<(u64, Vec<(usize, i8)>, (i128, i128))> {
        let mut swing: Vec<(usize, i8)> = Vec::with_capacity(kind.len() * corners.len() * 2);
        for (place, sign) in corners {
            swing.extend(kind.iter().map(|measure| (place + measure, *sign)));
        }
        let mut excess: std::collections::BTreeMap<usize, i32> = std::collections::BTreeMap::new();
        for (figure, sign) in &swing {
            for (equation, weight) in &touching[*figure] {
                *excess.entry(*equation).or_default() += i32::from(sign * weight);
            }
        }
        for (equation, by) in excess.into_iter().filter(|(_, by)| *by != 0) {
            // What is left over takes up the difference, if there is such a figure.
            let is_rest =
                |figure: usize| touching[figure].len() == 1 && matches!(system.figures[figure].kind, Kind::Slack | Kind::GuardedSlack);
            let (rest, weight) = system.equations[equation].iter().find(|(figure, _)| is_rest(*figure))?;
            let sign = -by * i32::from(*weight);
            swing.push((*rest, i8::try_from(sign).ok().filter(|sign| sign.abs() == 1)?));
        }
        let (mut low, mut high, mut cost) = (-i128::from(u64::MAX), i128::from(u64::MAX), 0_u64);
        for (figure, sign) in &swing {
            let about = system.figures[*figure];
            if about.kind == Kind::Known {
                return None;
            }
            let room = i128::from(about.value) - i128::from(floor(about));
            if *sign > 0 {
                low = low.max(-room)
            } else {
                high = high.min(room)
            }
            cost += price(about, hidden[*figure]);
        }
        (high - low + 1 >= need && cost < bound).then_some((cost, swing, (low, high)))
    }
}

//! The reader who wants to know: works out what withheld figures can be, by trying, without knowing how they were chosen.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;
use crate::report::cube::{Bonds, Cube, Relation, Rest};
use crate::report::month::as_read;
use crate::report::sample::october;
use crate::report::sample_month::month_of;
use crate::report::sheet::{Axis, Dimension};

/// What a reader holds: for each figure the least and most it can be, and the equations.
struct Reader<'a> {
    system: &'a System,
    touching: Vec<Vec<usize>>,
    least: Vec<i64>,
    most: Vec<i64>,
    /// Where `most` is what the reader knows, not only how far we try.
    bounded: Vec<bool>,
    tries: u32,
    /// Values that each figure has in some release found possible so far: one release says something of every figure.
    seen: Vec<BTreeSet<i64>>,
}

impl<'a> Reader<'a> {
    /// Reads the release.
    fn of(system: &'a System, withheld: &[bool], threshold: u64) -> Self {
        let mut touching = vec![Vec::new(); system.figures.len()];
        for (index, equation) in system.equations.iter().enumerate() {
            equation.iter().for_each(|(figure, _)| touching[*figure].push(index));
        }
        let mut reader = Self {
            system,
            touching,
            least: Vec::new(),
            most: Vec::new(),
            bounded: Vec::new(),
            tries: 0,
            seen: vec![BTreeSet::new(); system.figures.len()],
        };
        let omitted = omitted(system, withheld);
        for (at, (figure, withheld)) in system.figures.iter().zip(withheld).enumerate() {
            let value = i64::try_from(figure.value).expect("small");
            // A cap on what is tried; a true reader tries more, so the cap can only make the test harder to pass.
            let cap = value + i64::try_from(threshold).expect("small") + 3;
            let (least, most) = match (figure.kind, withheld) {
                (Kind::Printed, false) => (value, value),
                // This reader even knows which withheld figures are not nought, if their rows are told.
                (Kind::Printed, true) if !omitted[at] => (value.min(1), cap),
                (_, _) => (0, cap),
            };
            reader.least.push(least);
            reader.most.push(most);
            reader.bounded.push(figure.kind == Kind::Printed && !withheld);
        }
        let (mut least, mut most) = (reader.least.clone(), reader.most.clone());
        assert!(reader.tighten(None, &mut least, &mut most), "the truth is possible");
        reader
    }

    /// Notes a release if it is possible: every figure within what the reader holds, every equation met.
    fn note(&mut self, release: &[i64]) {
        let holds = |e: &Vec<(usize, i8)>| e.iter().map(|(f, s)| release[*f] * i64::from(*s)).sum::<i64>() == 0;
        // The caps are ours, not the reader's: only what is printed, the floor and the word "small" bound a figure.
        let fits = |f: usize| self.least[f] <= release[f] && (!self.bounded[f] || release[f] <= self.most[f]);
        if self.system.equations.iter().all(holds) && (0..release.len()).all(fits) {
            for (seen, value) in self.seen.iter_mut().zip(release) {
                seen.insert(*value);
            }
        }
    }

    /// Tries the releases that the proofs name, and multiples of the truth; each is checked as any other.
    fn try_hints(&mut self, proofs: &[Proof], withheld: &[bool], threshold: u64) {
        let truth: Vec<i64> = self.system.figures.iter().map(|f| i64::try_from(f.value).expect("small")).collect();
        let threshold = i64::try_from(threshold).expect("small");
        for named in proofs.iter().flat_map(|proof| &proof.releases) {
            let mut release = truth.clone();
            named.iter().for_each(|(f, by)| release[*f] += by);
            self.note(&release);
        }
        for times in 1..=threshold {
            let shown = |f: usize| self.system.figures[f].kind == Kind::Printed && !withheld[f];
            let release: Vec<i64> = (0..truth.len()).map(|f| if shown(f) { truth[f] } else { truth[f] * times }).collect();
            self.note(&release);
        }
    }

    /// Tightens all bounds, starting from the equations of one figure; false when there is a contradiction.
    fn tighten(&self, from: Option<usize>, least: &mut [i64], most: &mut [i64]) -> bool {
        let mut open: Vec<usize> = match from {
            Some(figure) => self.touching[figure].clone(),
            None => (0..self.system.equations.len()).collect(),
        };
        let mut waiting = vec![false; self.system.equations.len()];
        open.iter().for_each(|next| waiting[*next] = true);
        while let Some(next) = open.pop() {
            waiting[next] = false;
            let equation = &self.system.equations[next];
            let low: i64 = equation.iter().map(|(f, s)| if *s > 0 { least[*f] } else { -most[*f] }).sum();
            let high: i64 = equation.iter().map(|(f, s)| if *s > 0 { most[*f] } else { -least[*f] }).sum();
            if low > 0 || high < 0 {
                return false;
            }
            for (f, s) in equation {
                let (own_low, own_high) = if *s > 0 { (least[*f], most[*f]) } else { (-most[*f], -least[*f]) };
                // own + rest = 0, and the rest lies between low - own_low and high - own_high.
                let (new_low, new_high) = ((own_high - high).max(own_low), (own_low - low).min(own_high));
                let (new_least, new_most) = if *s > 0 { (new_low, new_high) } else { (-new_high, -new_low) };
                if new_least > new_most {
                    return false;
                }
                if new_least > least[*f] || new_most < most[*f] {
                    least[*f] = new_least;
                    most[*f] = new_most;
                    for touched in &self.touching[*f] {
                        if !waiting[*touched] {
                            waiting[*touched] = true;
                            open.push(*touched);
                        }
                    }
                    break;
                }
            }
        }
        true
    }

    /// Whether some release has these bounds: a guess near the truth is mended equation by equation, with ways back.
    fn possible(&mut self, set: usize, mut least: Vec<i64>, mut most: Vec<i64>) -> bool {
        if self.tries == 0 {
            return false;
        }
        self.tries -= 1;
        if !self.tighten(Some(set), &mut least, &mut most) {
            return false;
        }
        let truth = |f: usize| i64::try_from(self.system.figures[f].value).expect("small");
        let guess: Vec<i64> = (0..least.len()).map(|f| truth(f).clamp(least[f], most[f])).collect();
        let excess = |equation: &Vec<(usize, i8)>, guess: &[i64]| equation.iter().map(|(f, s)| guess[*f] * i64::from(*s)).sum::<i64>();
        let Some(broken) = self.system.equations.iter().find(|equation| excess(equation, &guess) != 0) else {
            for (seen, value) in self.seen.iter_mut().zip(&guess) {
                seen.insert(*value);
            }
            return true;
        };
        // Which figure could mend it, and how many other equations that would break.
        let amount = excess(broken, &guess);
        let mut mends: Vec<(usize, i64, usize)> = Vec::new();
        for (f, s) in broken.iter().filter(|(f, _)| least[*f] < most[*f]) {
            let value = (guess[*f] - amount * i64::from(*s)).clamp(least[*f], most[*f]);
            let mut mended = guess.clone();
            mended[*f] = value;
            let bad = self.touching[*f].iter().filter(|e| excess(&self.system.equations[**e], &mended) != 0).count();
            if value != guess[*f] {
                mends.push((bad, value, *f));
            }
        }
        mends.sort_unstable();
        mends.into_iter().any(|(_, value, f)| {
            let (mut l, mut m) = (least.clone(), most.clone());
            l[f] = value;
            m[f] = value;
            self.possible(f, l, m)
        })
    }

    /// How many values the figure can have, counted up to `enough`: first with little patience, then with much.
    fn values(&mut self, figure: usize, enough: u64) -> u64 {
        let truth = i64::try_from(self.system.figures[figure].value).expect("small");
        let mut open: Vec<i64> = (self.least[figure]..=self.most[figure]).collect();
        // Values near the truth first: these are the likeliest to be possible.
        open.sort_by_key(|v| (v - truth).abs());
        for patience in [80, 2_000] {
            for value in &open {
                if self.seen[figure].len() as u64 >= enough {
                    return enough;
                }
                if self.seen[figure].contains(value) {
                    continue;
                }
                let (mut least, mut most) = (self.least.clone(), self.most.clone());
                least[figure] = *value;
                most[figure] = *value;
                self.tries = patience;
                self.possible(figure, least, most);
            }
        }
        self.seen[figure].len() as u64
    }
}

/// A table of areas × sexes × bands with all its totals, of children counted (`n`) among those who could be (`den`).
fn table(areas: usize, sexes: usize, bands: usize, leaves: &[(u64, u64)]) -> (System, Cube) {
    let mut cube = Cube::new(&[areas, sexes, bands], 2);
    let inner = (0..areas).flat_map(|a| (0..sexes).flat_map(move |s| (0..bands).map(move |b| [Some(a), Some(s), Some(b)])));
    for (at, (n, den)) in inner.zip(leaves) {
        cube.add(&at, 0, *n);
        cube.add(&at, 1, *den);
    }
    let axes =
        [(Dimension::Area, areas), (Dimension::Sex, sexes), (Dimension::Band, bands)].map(|(dimension, size)| Axis::of(dimension, size));
    let mut system = System::default();
    cube.put(&mut system, &Bonds::new(&axes, &[Relation::within(1, &[0], Rest::Guarded)]));
    (system, cube)
}

fn leaf() -> impl Strategy<Value = (u64, u64)> {
    // Mostly small groups, some bigger, so that every kind of neighbourhood comes up.
    prop_oneof![3 => 0_u64..8, 2 => 0_u64..40].prop_flat_map(|den| (0..=den).prop_map(move |n| (n, den)))
}

fn leaves() -> impl Strategy<Value = (usize, usize, usize, Vec<(u64, u64)>)> {
    (1_usize..=3, 1_usize..=2, 1_usize..=3)
        .prop_flat_map(|(a, s, b)| proptest::collection::vec(leaf(), a * s * b).prop_map(move |leaves| (a, s, b, leaves)))
}

fn attack(system: &System, threshold: Threshold) -> Result<(), TestCaseError> {
    prop_assert!(system.broken().is_empty());
    let Decision { hidden: withheld, proofs, .. } = decide(system, threshold);
    check(system, &withheld, &proofs)?;
    let omitted = omitted(system, &withheld);
    let wanted = threshold.get();
    let mut reader = Reader::of(system, &withheld, wanted);
    reader.try_hints(&proofs, &withheld, wanted);
    for (at, figure) in system.figures.iter().enumerate() {
        match figure.kind {
            Kind::Printed if !withheld[at] => prop_assert!(!threshold.hides(figure.value), "{at} shown though small"),
            Kind::GuardedSlack if !threshold.hides(figure.value) => {}
            Kind::Printed | Kind::GuardedSlack if !omitted[at] => {
                let values = reader.values(at, wanted);
                prop_assert!(values >= wanted, "figure {at} = {} keeps {values} values", figure.value);
            }
            _ => {}
        }
    }
    Ok(())
}

/// Every release that a proof names looks the same and holds together.
fn check(system: &System, withheld: &[bool], proofs: &[Proof]) -> Result<(), TestCaseError> {
    for named in proofs.iter().flat_map(|proof| &proof.releases) {
        let mut release: Vec<i64> = system.figures.iter().map(|f| i64::try_from(f.value).expect("small")).collect();
        for (at, by) in named {
            prop_assert!(withheld[*at] || matches!(system.figures[*at].kind, Kind::Slack | Kind::GuardedSlack), "{at} is printed");
            release[*at] += by;
        }
        prop_assert!(release.iter().all(|value| *value >= 0), "nothing is less than nought");
        for equation in &system.equations {
            prop_assert_eq!(equation.iter().map(|(at, sign)| release[*at] * i64::from(*sign)).sum::<i64>(), 0);
        }
    }
    Ok(())
}

/// Of a whole month, in which all tables are tied: every figure that is withheld has its proof, and every proof holds.
#[test]
fn every_withheld_figure_of_a_month_has_other_releases_that_look_the_same() {
    for (children, seed) in [(30, 1), (60, 2), (150, 3), (150, 4), (600, 5)] {
        let (system, _) = as_read(october().period, Threshold::LEAST, &month_of(children, seed));
        assert_eq!(system.broken(), [0; 0]);
        let Decision { hidden, proofs, gone_with } = decide(&system, Threshold::LEAST);
        check(&system, &hidden, &proofs).expect("proofs that hold");
        let mut values: Vec<BTreeSet<i64>> = vec![BTreeSet::from([0]); system.figures.len()];
        for proof in &proofs {
            let mut of_proof: Vec<BTreeSet<i64>> = vec![BTreeSet::from([0]); system.figures.len()];
            proof.releases.iter().flatten().for_each(|(at, by)| _ = of_proof[*at].insert(*by));
            for (all, of_proof) in values.iter_mut().zip(of_proof) {
                if of_proof.len() > all.len() {
                    *all = of_proof;
                }
            }
        }
        gone_with.iter().for_each(|at| values[*at] = (0..5).collect());
        let omitted = omitted(&system, &hidden);
        let mut proven = 0;
        for (at, figure) in system.figures.iter().enumerate().filter(|(at, _)| !omitted[*at]) {
            let small = Threshold::LEAST.hides(figure.value);
            if hidden[at] || (figure.kind == Kind::GuardedSlack && small) {
                assert!(values[at].len() >= 5, "{children} children: figure {at} = {} keeps {:?}", figure.value, values[at]);
                proven += 1;
            }
        }
        assert!(proven > 100, "{proven}");
        assert!(gone_with.len() < system.figures.len() / 2, "hardly anything is left");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, max_shrink_iters: 0, ..ProptestConfig::default() })]

    #[test]
    fn no_withheld_figure_keeps_fewer_values_than_the_threshold((a, s, b, leaves) in leaves(), raised in 5_u64..=7) {
        let (system, _) = table(a, s, b, &leaves);
        attack(&system, Threshold::new(raised).expect("a threshold"))?;
    }
}

#[test]
fn the_girls_of_ulopi_and_so_the_boys() {
    // Girls 3 of 21, boys 9 of 24, all 12 of 45: girls and boys are withheld, the total stays. A second village closes the table.
    let leaves = [(3, 21), (9, 24), (6, 31), (8, 29)];
    let (system, cube) = table(2, 2, 1, &leaves);
    let withheld = withhold(&system, Threshold::LEAST);
    let n = |area: usize, sex: usize| withheld[cube.place(&[area, sex, 1], 0)];
    assert_eq!((n(0, 0), n(0, 1), n(0, 2)), (true, true, false), "girls, boys and all of Ulopi");
    assert!(!n(2, 2), "everybody");
    // In the other village the same two, or the girls of Ulopi come out of the column.
    assert_eq!((n(1, 0), n(1, 1), n(1, 2)), (true, true, false));
    let dens: Vec<_> = cube.positions().iter().map(|p| withheld[cube.place(p, 1)]).collect();
    assert_eq!(dens, [false; 18], "no denominator need go");
}

#[test]
fn nought_and_large_counts_are_shown() {
    let (system, _) = table(2, 2, 1, &[(0, 20), (10, 20), (0, 30), (12, 30)]);
    assert!(!withhold(&system, Threshold::LEAST).contains(&true));
}

#[test]
fn nearly_everybody_is_as_private_as_nearly_nobody() {
    // 18 of 20: two children are *not* counted.
    let (system, _) = table(1, 1, 1, &[(18, 20)]);
    assert_eq!(withhold(&system, Threshold::LEAST)[..2], [true, false]);
}

#[test]
fn one_child_alone_hides_every_total_that_is_only_that_child() {
    let (system, cube) = table(2, 2, 1, &[(1, 1), (0, 0), (0, 0), (0, 0)]);
    let withheld = withhold(&system, Threshold::LEAST);
    for at in cube.positions().iter().flat_map(|p| [cube.place(p, 0), cube.place(p, 1)]) {
        let figure = system.figures[at];
        // In rows of two splits or more a column is told everywhere or nowhere.
        assert_eq!(withheld[at], figure.value > 0 || figure.standing == Standing::Fine, "figure {at}");
    }
}

#[test]
fn a_threshold_is_never_lowered() {
    assert_eq!(Threshold::new(4), None);
    assert_eq!(Threshold::new(11).map(Threshold::get), Some(11));
}

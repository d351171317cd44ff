//! The reader who wants to know: works out what withheld figures can be, by trying, without knowing how they were chosen.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;

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
    /// Reads the release; with `words`, also the labels.
    fn of(system: &'a System, verdict: &[Option<Reason>], threshold: u64, words: bool) -> Self {
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
        for (figure, reason) in system.figures.iter().zip(verdict) {
            let value = i64::try_from(figure.value).expect("small");
            // A cap on what is tried; a true reader tries more, so the cap can only make the test harder to pass.
            let cap = value + i64::try_from(threshold).expect("small") + 3;
            let (least, most) = match (figure.kind, reason) {
                (Kind::Printed, None) => (value, value),
                (Kind::Printed, Some(Reason::Small)) if words => (1, i64::try_from(threshold).expect("small") - 1),
                // This reader even knows which withheld figures are not nought.
                (Kind::Printed, Some(_)) => (value.min(1), cap),
                (_, _) => (0, cap),
            };
            reader.least.push(least);
            reader.most.push(most);
            reader.bounded.push(figure.kind == Kind::Printed && (reason.is_none() || (words && *reason == Some(Reason::Small))));
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
    fn try_hints(&mut self, proofs: &[Proof], verdict: &[Option<Reason>], threshold: u64) {
        let truth: Vec<i64> = self.system.figures.iter().map(|f| i64::try_from(f.value).expect("small")).collect();
        let threshold = i64::try_from(threshold).expect("small");
        for named in proofs.iter().flat_map(|proof| &proof.releases) {
            let mut release = truth.clone();
            named.iter().for_each(|(f, by)| release[*f] += by);
            self.note(&release);
        }
        for times in 1..=threshold {
            let shown = |f: usize| self.system.figures[f].kind == Kind::Printed && verdict[f].is_none();
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
fn table(areas: usize, sexes: usize, bands: usize, leaves: &[(u64, u64)]) -> (System, usize) {
    let sizes = [areas, sexes, bands];
    let mut system = System::default();
    let positions: Vec<[usize; 3]> = (0..=areas).flat_map(|a| (0..=sexes).flat_map(move |s| (0..=bands).map(move |b| [a, s, b]))).collect();
    let place = |p: &[usize; 3]| (p[0] * (sizes[1] + 1) + p[1]) * (sizes[2] + 1) + p[2];
    let covers = |p: &[usize; 3], leaf: &[usize; 3]| (0..3).all(|d| p[d] == sizes[d] || p[d] == leaf[d]);
    let inner: Vec<&[usize; 3]> = positions.iter().filter(|p| (0..3).all(|d| p[d] < sizes[d])).collect();
    for p in &positions {
        let of = |pick: fn(&(u64, u64)) -> u64| {
            inner.iter().zip(leaves).filter(|(leaf, _)| covers(p, leaf)).map(|(_, pair)| pick(pair)).sum::<u64>()
        };
        let (n, den) = (of(|p| p.0), of(|p| p.1));
        let n_at = system.figure(n, Kind::Printed);
        let den_at = system.figure(den, Kind::Printed);
        let rest = system.figure(den - n, Kind::GuardedSlack);
        system.sum(den_at, &[n_at, rest]);
    }
    for p in &positions {
        for d in 0..3 {
            if p[d] == sizes[d] {
                let parts: Vec<usize> = (0..sizes[d])
                    .map(|level| {
                        let mut q = *p;
                        q[d] = level;
                        3 * place(&q)
                    })
                    .collect();
                for measure in 0..2 {
                    let parts: Vec<usize> = parts.iter().map(|part| part + measure).collect();
                    system.sum(3 * place(p) + measure, &parts);
                }
            }
        }
    }
    (system, positions.len())
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
    let (verdict, proofs) = decide(system, threshold);
    let wanted = threshold.get();
    for words in [false, true] {
        let mut reader = Reader::of(system, &verdict, wanted, words);
        reader.try_hints(&proofs, &verdict, wanted);
        // Read with the words, a small figure has `threshold - 1` values before anything is worked out.
        let enough = wanted - u64::from(words);
        for (at, figure) in system.figures.iter().enumerate() {
            let shown = verdict[at].is_none();
            match figure.kind {
                Kind::Printed if shown => prop_assert!(!threshold.hides(figure.value), "{at} shown though small"),
                Kind::Printed => {
                    prop_assert!(figure.value > 0 || verdict[at] == Some(Reason::Linked), "nought called small at {at}");
                    let values = reader.values(at, enough);
                    prop_assert!(values >= enough, "figure {at} = {} keeps {values} values (words: {words})", figure.value);
                }
                Kind::GuardedSlack if threshold.hides(figure.value) => {
                    let values = reader.values(at, enough);
                    prop_assert!(values >= enough, "slack {at} = {} keeps {values} values (words: {words})", figure.value);
                }
                _ => {}
            }
        }
    }
    Ok(())
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
    // Girls 3 of 21, boys 9 of 24, all 12 of 45: girls `<5`, boys `s`, the total stays. A second village closes the table.
    let leaves = [(3, 21), (9, 24), (6, 31), (8, 29)];
    let (system, _) = table(2, 2, 1, &leaves);
    let verdict = withhold(&system, Threshold::LEAST);
    // Places: (area, sex, band) with n first; one band, so each count stands twice (band and all bands).
    let n = |area: usize, sex: usize| verdict[3 * ((area * 3 + sex) * 2)];
    assert_eq!(n(0, 0), Some(Reason::Small), "girls of Ulopi");
    assert_eq!(n(0, 1), Some(Reason::Linked), "boys of Ulopi");
    assert_eq!(n(0, 2), None, "all of Ulopi");
    assert_eq!(n(2, 2), None, "everybody");
    // In the other village the same two, or the girls of Ulopi come out of the column.
    assert_eq!((n(1, 0), n(1, 1), n(1, 2)), (Some(Reason::Linked), Some(Reason::Linked), None));
    let dens: Vec<_> = (0..9).map(|p| verdict[3 * (p * 2) + 1]).collect();
    assert!(dens.iter().all(Option::is_none), "no denominator need go: {dens:?}");
}

#[test]
fn nought_and_large_counts_are_shown() {
    let (system, _) = table(2, 2, 1, &[(0, 20), (10, 20), (0, 30), (12, 30)]);
    assert!(withhold(&system, Threshold::LEAST).iter().all(Option::is_none));
}

#[test]
fn nearly_everybody_is_as_private_as_nearly_nobody() {
    // 18 of 20: two children are *not* counted.
    let (system, _) = table(1, 1, 1, &[(18, 20)]);
    let verdict = withhold(&system, Threshold::LEAST);
    assert_eq!(verdict[0], Some(Reason::Linked));
    assert_eq!(verdict[1], None);
}

#[test]
fn one_child_alone_hides_every_total_that_is_only_that_child() {
    let (system, positions) = table(2, 2, 1, &[(1, 1), (0, 0), (0, 0), (0, 0)]);
    let verdict = withhold(&system, Threshold::LEAST);
    for p in 0..positions {
        for measure in 0..2 {
            let at = 3 * p + measure;
            assert_eq!(verdict[at].is_some(), system.figures[at].value > 0, "figure {at}");
        }
    }
}

#[test]
fn a_threshold_is_never_lowered() {
    assert_eq!(Threshold::new(4), None);
    assert_eq!(Threshold::new(11).map(Threshold::get), Some(11));
}

//! The figures of how measuring goes, as the internal file `quality.csv` gives them. It judges no more than [`quality`] does.

use std::collections::BTreeMap;

use crate::child::Sex;
use crate::growth::Indicator;
use crate::growth::ZHundredths;
use crate::growth::outside_limits;
use crate::ids::ChildId;
use crate::quality::Item;
use crate::quality::LEAST;
use crate::quality::Measured;
use crate::quality::Quality;
use crate::quality::Said;
use crate::quality::quality;

/// The indices whose spread is looked at.
pub const INDICES: [Indicator; 3] = [Indicator::Waz, Indicator::Laz, Indicator::Wlz];
/// Of 30.4375 days of a month two are the 1st and the 15th: so large a share of birth dates falls on them by chance, in percent.
const CHANCE_OF_1ST_OR_15TH: f64 = 100.0 * 2.0 / 30.4375;

/// How far the z-scores of an index lie apart. Of fewer than [`LEAST`] nothing is said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Of which index.
    pub indicator: Indicator,
    /// z-scores within the plausible limits.
    pub n: usize,
    /// Their mean.
    pub mean: Option<f64>,
    /// Their standard deviation (of a sample: by n − 1).
    pub sd: Option<f64>,
    /// The share of all z-scores that lie outside the plausible limits, in percent.
    pub outside_pct: Option<f64>,
}

/// The standard deviation that surveys of good measuring found (WHO 1995, Technical Report 854, from memory). A caseload is no
/// sample: for information only.
#[must_use]
pub const fn usual_sd(indicator: Indicator) -> Option<(f64, f64)> {
    match indicator {
        Indicator::Waz => Some((1.00, 1.20)),
        Indicator::Laz => Some((1.10, 1.30)),
        Indicator::Wlz => Some((0.85, 1.10)),
        _ => None,
    }
}

/// The figures of some visits. Shares in percent; nothing is said of fewer than [`LEAST`] measurements or children.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// What the page says.
    pub quality: Quality,
    /// Weights, lengths, arms.
    pub measured: [usize; 3],
    /// Children whose day of birth is known.
    pub birth_day_known_pct: Option<f64>,
    /// By how much more birth dates lie on the 1st and the 15th than by chance.
    pub excess_1st_15th_pct: Option<f64>,
    /// Each of [`INDICES`].
    pub spread: [Spread; 3],
    /// Weights that asked for a second weighing because the line jumped.
    pub jumps: usize,
    /// Boys to a girl.
    pub sex_ratio: Option<f64>,
    /// Children of 6–11 months to one of 12–17.
    pub age_ratio: Option<f64>,
}

impl Figures {
    /// The figure of an item, if there were enough.
    #[must_use]
    pub fn of(&self, item: Item) -> Option<f64> {
        self.quality.items.iter().find(|(of, _)| *of == item).and_then(|(_, said)| match said {
            Said::TooFew => None,
            Said::Even(value) | Said::LookAgain(value) => Some(*value),
        })
    }

    /// What is worth looking at together.
    pub fn look_again(&self) -> impl Iterator<Item = Item> + '_ {
        self.quality.items.iter().filter(|(_, said)| matches!(said, Said::LookAgain(_))).map(|(item, _)| *item)
    }
}

/// Looks at visits. A child counts once, as it was at the last of them.
#[must_use]
pub fn figures(visits: &[Measured]) -> Figures {
    let mut children: BTreeMap<ChildId, &Measured> = BTreeMap::new();
    for visit in visits {
        let last = children.entry(visit.child).or_insert(visit);
        if visit.on >= last.on {
            *last = visit;
        }
    }
    let count = |is: &dyn Fn(&Measured) -> bool| children.values().filter(|child| is(child)).count();
    let known = count(&|child| child.birth_day.is_some());
    let marked = count(&|child| matches!(child.birth_day, Some(1 | 15)));
    let aged = |from: u32, to: u32| count(&|child| (from..=to).contains(&child.age_months));
    let ratio = |n: usize, of: usize| (children.len() >= LEAST && of > 0).then(|| float(n) / float(of));
    Figures {
        quality: quality(visits),
        measured: [
            visits.iter().filter(|v| v.weight.is_some()).count(),
            visits.iter().filter(|v| v.length.is_some()).count(),
            visits.iter().filter(|v| v.muac.is_some()).count(),
        ],
        birth_day_known_pct: (children.len() >= LEAST).then(|| 100.0 * float(known) / float(children.len())),
        excess_1st_15th_pct: (known >= LEAST).then(|| 100.0 * float(marked) / float(known) - CHANCE_OF_1ST_OR_15TH),
        spread: INDICES.map(|indicator| spread(indicator, visits)),
        jumps: visits.iter().filter(|v| v.jump).count(),
        sex_ratio: ratio(count(&|child| child.sex == Sex::Male), count(&|child| child.sex == Sex::Female)),
        age_ratio: ratio(aged(6, 11), aged(12, 17)),
    }
}

fn spread(indicator: Indicator, visits: &[Measured]) -> Spread {
    let z = |visit: &Measured| match indicator {
        Indicator::Waz => visit.waz,
        Indicator::Laz => visit.laz,
        _ => visit.wlz,
    };
    let all: Vec<ZHundredths> = visits.iter().filter_map(z).collect();
    let within: Vec<f64> = all.iter().filter(|z| !outside_limits(indicator, **z)).map(|z| f64::from(z.hundredths()) / 100.0).collect();
    let enough = within.len() >= LEAST;
    let mean = within.iter().sum::<f64>() / float(within.len().max(1));
    let squares: f64 = within.iter().map(|z| (z - mean).powi(2)).sum();
    Spread {
        indicator,
        n: within.len(),
        mean: enough.then_some(mean),
        sd: enough.then(|| (squares / float(within.len().saturating_sub(1).max(1))).sqrt()),
        outside_pct: (all.len() >= LEAST).then(|| 100.0 * float(all.len() - within.len()) / float(all.len())),
    }
}

fn float(count: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "counts of visits are far below what a float holds exactly")]
    let float = count as f64;
    float
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quality::tests::visit;

    fn of_child(n: u128) -> Measured {
        Measured { child: ChildId(n), ..visit(6_000) }
    }

    /// Worked with a table of numbers: −2.00 to 2.00 in steps of 0.08, 51 values, mean 0, sum of squares 70.72.
    #[test]
    fn mean_and_standard_deviation_are_those_worked_by_hand() {
        let z = |n: i32| Some(ZHundredths::new(n));
        let mut visits: Vec<Measured> = (0..51).map(|n| Measured { waz: z(n * 8 - 200), ..of_child(1) }).collect();
        // What is implausible is counted as such and left out of the mean: below −6 and above 5.
        visits.extend([-601, 501].map(|n| Measured { waz: z(n), ..of_child(1) }));
        let [waz, laz, _] = figures(&visits).spread;
        assert_eq!(waz.n, 51);
        assert!(waz.mean.is_some_and(|mean| mean.abs() < 1e-9));
        // 2 × 0.0064 × (1² + … + 25²) = 0.0128 × 5525 = 70.72; by 50: 1.4144.
        assert!(waz.sd.is_some_and(|sd| (sd - 1.4144_f64.sqrt()).abs() < 1e-9), "{waz:?}");
        assert!(waz.outside_pct.is_some_and(|pct| (pct - 200.0 / 53.0).abs() < 1e-9), "{waz:?}");
        assert_eq!((laz.n, laz.mean, laz.sd, laz.outside_pct), (0, None, None, None));
    }

    #[test]
    fn of_forty_nine_nothing_is_said() {
        let visits: Vec<Measured> =
            (0..49).map(|n| Measured { waz: Some(ZHundredths::new(n)), ..of_child(n.unsigned_abs().into()) }).collect();
        let few = figures(&visits);
        assert_eq!((few.spread[0].mean, few.spread[0].sd, few.spread[0].outside_pct), (None, None, None));
        assert_eq!((few.birth_day_known_pct, few.excess_1st_15th_pct, few.sex_ratio, few.age_ratio), (None, None, None, None));
        assert_eq!(few.measured, [49, 0, 0]);
    }

    #[test]
    fn a_child_counts_once_as_it_was_last() {
        let mut visits = Vec::new();
        for n in 0..60_u128 {
            let sex = if n < 20 { Sex::Male } else { Sex::Female };
            // Ten on the 15th, five on the 1st, five unknown; twenty of 12 to 17 months at last, all younger before.
            let birth_day = match n {
                0..10 => Some(15),
                10..15 => Some(1),
                15..20 => None,
                _ => Some(7),
            };
            let last = Measured { sex, birth_day, age_months: if n % 3 == 0 { 12 } else { 11 }, ..of_child(n) };
            visits.push(last.clone());
            visits.push(Measured { on: last.on - chrono::Days::new(40), age_months: 10, ..last });
        }
        let of = figures(&visits);
        assert_eq!(of.quality.visits, 120);
        assert_eq!(of.sex_ratio, Some(0.5));
        assert_eq!(of.age_ratio, Some(2.0));
        assert!(of.birth_day_known_pct.is_some_and(|pct| (pct - 100.0 * 55.0 / 60.0).abs() < 1e-9));
        assert!(of.excess_1st_15th_pct.is_some_and(|pct| (pct - (100.0 * 15.0 / 55.0 - 200.0 / 30.4375)).abs() < 1e-9));
    }
}

//! How fast z-scores are: the bare formula on figures at hand, one child at a time, and three indices of many children at once.
//!
//! Run with `cargo bench -p spoonround-domain --bench z_scores`. Each case works through the same 10,000 infants; the rates are infants a second.

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use domain::child::Sex;
use domain::growth::{Measured, ReferenceTable, Score, WeighedAndMeasured, scores, table_value, three_indices};
use domain::units::{Length, Weight};

const INFANTS: usize = 10_000;

fn main() {
    divan::main();
}

/// Infants of every age up to 24 months, weight and length spread as where many are undernourished, the same in every run.
fn infants() -> Vec<WeighedAndMeasured> {
    let mut seed: u64 = 0x5eed;
    let mut random = |below: u32| {
        // A linear congruential generator (constants by Knuth, MMIX) is random enough to visit the tables out of order.
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((seed >> 33) as u32) % below
    };
    let mut infants = Vec::with_capacity(INFANTS);
    while infants.len() < INFANTS {
        let sex = if random(2) == 0 { Sex::Female } else { Sex::Male };
        let age_days = random(730).cast_signed();
        // Twelve even draws make a bell of standard deviation 1 (central limit); moved down and widened as where many are undernourished.
        let mut z = || (0..12).map(|_| f64::from(random(1000)) / 1000.0).sum::<f64>() * 1.2 - 7.2 - 0.8;
        let kg = table_value(ReferenceTable::WeightForAge, sex, age_days, z()).unwrap_or(8.0);
        let cm = table_value(ReferenceTable::LengthForAge, sex, age_days, z()).unwrap_or(70.0);
        if let (Ok(weight), Ok(length)) = (Weight::from_grams((kg * 1000.0) as u32), Length::from_mm((cm * 10.0) as u16)) {
            infants.push(WeighedAndMeasured { sex, age_days, weight, length });
        }
    }
    infants
}

/// The floor: two powers and a division an infant, with L, M and S already at hand.
#[divan::bench]
fn bare_formula(bencher: Bencher) {
    let figures: Vec<[f64; 2]> =
        infants().iter().map(|infant| [f64::from(infant.weight.grams()) / 1000.0, f64::from(infant.length.mm()) / 10.0]).collect();
    let (l, m, s) = black_box((-0.3521, 7.4327, 0.08217));
    bencher.counter(ItemsCount::new(INFANTS)).bench_local(|| {
        let z = |x: f64| ((x / m).powf(l) - 1.0) / (l * s);
        figures.iter().map(|[kg, cm]| z(*kg) + z(*kg + 0.1) + (cm / m - 1.0) / s).sum::<f64>()
    });
}

/// All six indices of one set of measurements after the other.
#[divan::bench]
fn scores_one_at_a_time(bencher: Bencher) {
    let measured: Vec<Measured> = infants()
        .iter()
        .map(|infant| Measured {
            sex: infant.sex,
            age_days: infant.age_days,
            weight: Some(infant.weight),
            length: Some(infant.length),
            position: None,
            muac: None,
            head: None,
            oedema: None,
        })
        .collect();
    bencher.counter(ItemsCount::new(INFANTS)).bench_local(|| {
        for measured in &measured {
            black_box(scores(black_box(measured)));
        }
    });
}

/// Weight for age, length for age and weight for length of all of them at once.
#[divan::bench]
fn three_indices_of_many(bencher: Bencher) {
    let infants = infants();
    bencher
        .counter(ItemsCount::new(INFANTS))
        .bench_local(|| three_indices(black_box(&infants)).flatten().filter_map(Score::value).map(|z| z.value()).sum::<f64>());
}

//! Chance that falls the same way every time: one stream of numbers for each child. It knows nothing of children.

use rand::Rng;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Every demo starts from this number, so that two people who look at it see the same families.
const SEED: u64 = 0x6b65_7361_7261;

/// The chances of one child.
pub struct Dice(ChaCha8Rng);

impl Dice {
    /// The dice of the child with this number: the same whatever was told of other children before.
    #[must_use]
    pub fn of(number: u32) -> Self {
        let mut stream = ChaCha8Rng::seed_from_u64(SEED);
        stream.set_stream(u64::from(number));
        Self(stream)
    }

    /// Whether something happens that happens in this share of cases (0–1).
    pub fn chance(&mut self, share: f64) -> bool {
        self.0.random_bool(share.clamp(0.0, 1.0))
    }

    /// A whole number, both ends included.
    pub fn between(&mut self, least: i32, most: i32) -> i32 {
        self.0.random_range(least..=most.max(least))
    }

    /// A number around 0 with this standard deviation: twelve even chances added up, so never beyond six deviations.
    pub fn around(&mut self, deviation: f64) -> f64 {
        let sum: f64 = (0..12).map(|_| self.0.random::<f64>()).sum();
        (sum - 6.0) * deviation
    }

    /// One of several.
    pub fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[self.0.random_range(0..of.len())]
    }

    /// Sixty-four random bits.
    pub fn bits(&mut self) -> u64 {
        self.0.random()
    }

    /// A random key of 128 bits.
    pub fn key(&mut self) -> u128 {
        self.0.random()
    }
}

//! The LMS formula, there and back, with WHO's restricted tails. It knows no table, no child and no unit.
//!
//! Source: WHO Child Growth Standards, methods and development, 2006, chapter on the computation of z-scores (LMS; beyond ±3 the
//! distance is counted in units of the gap between SD 2 and SD 3).

/// The three figures of one table row: Box-Cox power, median and coefficient of variation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lms {
    pub l: f64,
    pub m: f64,
    pub s: f64,
}

/// One of the two tails beyond ±3.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Below,
    Above,
}

/// A tail: where it begins, and how much a unit of z is in it. It takes two powers, so tables have it ready.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tail {
    sd3: f64,
    gap: f64,
}

impl Tail {
    /// How far beyond SD 3 a measurement lies, in z.
    fn beyond(self, x: f64) -> f64 {
        (x - self.sd3) / self.gap
    }
}

impl Lms {
    /// z of `x`, which must be above 0, without restriction of the tails.
    pub(super) fn z(self, x: f64) -> f64 {
        let ratio = x / self.m;
        if self.l == 1.0 {
            (ratio - 1.0) / self.s
        } else if self.l == 0.0 {
            ratio.ln() / self.s
        } else {
            (ratio.powf(self.l) - 1.0) / (self.l * self.s)
        }
    }

    /// z of `x`, which must be above 0, with tails restricted beyond ±3.
    pub(super) fn z_restricted(self, x: f64) -> f64 {
        self.z_with_tails(x, |side| self.tail(side))
    }

    /// As [`Self::z_restricted`], with the tails from somebody who may have them at hand.
    pub(super) fn z_with_tails(self, x: f64, tail: impl FnOnce(Side) -> Tail) -> f64 {
        let z = self.z(x);
        if z > 3.0 {
            3.0 + tail(Side::Above).beyond(x)
        } else if z < -3.0 {
            -3.0 + tail(Side::Below).beyond(x)
        } else {
            z
        }
    }

    /// One of its tails.
    pub(super) fn tail(self, side: Side) -> Tail {
        match side {
            Side::Below => {
                let sd3 = self.at(-3.0);
                Tail { sd3, gap: self.at(-2.0) - sd3 }
            }
            Side::Above => {
                let sd3 = self.at(3.0);
                Tail { sd3, gap: sd3 - self.at(2.0) }
            }
        }
    }

    /// The measurement that has this z, without restriction of the tails.
    pub(super) fn at(self, z: f64) -> f64 {
        if self.l == 1.0 {
            self.m * (1.0 + self.s * z)
        } else if self.l == 0.0 {
            self.m * (self.s * z).exp()
        } else {
            self.m * (1.0 + self.l * self.s * z).powf(1.0 / self.l)
        }
    }

    /// The measurement that has this z, with tails restricted beyond ±3.
    pub(super) fn at_restricted(self, z: f64) -> f64 {
        if z > 3.0 {
            let sd3 = self.at(3.0);
            sd3 + (z - 3.0) * (sd3 - self.at(2.0))
        } else if z < -3.0 {
            let sd3 = self.at(-3.0);
            sd3 + (z + 3.0) * (self.at(-2.0) - sd3)
        } else {
            self.at(z)
        }
    }

    /// The row a share `part` (0–1) of the way to `next`.
    pub(super) fn towards(self, next: Self, part: f64) -> Self {
        Self { l: self.l + part * (next.l - self.l), m: self.m + part * (next.m - self.m), s: self.s + part * (next.s - self.s) }
    }
}

#[cfg(test)]
mod tests {
    use super::Lms;

    /// Weight for age of a boy on day 0 (WHO 2006).
    const NEWBORN: Lms = Lms { l: 0.3487, m: 3.3464, s: 0.14602 };

    #[test]
    fn the_tails_join_without_a_step_at_three() {
        for sd in [3.0, -3.0_f64] {
            let x = NEWBORN.at(sd);
            let (below, above) = (NEWBORN.z_restricted(x - 1e-9), NEWBORN.z_restricted(x + 1e-9));
            assert!((below - sd).abs() < 1e-7 && (above - sd).abs() < 1e-7, "{below} and {above} around {sd}");
            assert!((NEWBORN.at_restricted(sd + 1e-9) - NEWBORN.at_restricted(sd - 1e-9)).abs() < 1e-7);
        }
    }

    #[test]
    fn beyond_three_each_unit_is_the_gap_between_sd_two_and_three() {
        let (sd2, sd3) = (NEWBORN.at(2.0), NEWBORN.at(3.0));
        assert!((NEWBORN.z_restricted(sd3 + 2.0 * (sd3 - sd2)) - 5.0).abs() < 1e-9);
        let (sd2, sd3) = (NEWBORN.at(-2.0), NEWBORN.at(-3.0));
        assert!((NEWBORN.z_restricted(sd3 - 0.5 * (sd2 - sd3)) + 3.5).abs() < 1e-9);
    }

    #[test]
    fn a_part_of_the_way_to_the_next_row_is_that_part_of_each_figure() {
        let (here, next) = (Lms { l: 1.0, m: 10.0, s: 0.5 }, Lms { l: -1.0, m: 14.0, s: 0.25 });
        assert_eq!(here.towards(next, 0.25), Lms { l: 0.5, m: 11.0, s: 0.4375 });
        assert_eq!((here.towards(next, 0.0), here.towards(next, 1.0)), (here, next));
    }

    #[test]
    fn a_power_of_nothing_is_the_logarithm_and_close_to_a_very_small_power() {
        let (none, small) = (Lms { l: 0.0, ..NEWBORN }, Lms { l: 1e-7, ..NEWBORN });
        for x in [2.0, 3.3464, 5.0] {
            assert!((none.z(x) - small.z(x)).abs() < 1e-5);
            assert!((none.at(none.z(x)) - x).abs() < 1e-12);
        }
    }
}

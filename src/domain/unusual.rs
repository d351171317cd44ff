//! Measurements that are possible but unlike what is known of the child, to be measured again before the page is left. This
//! only asks: it stores nothing, blocks nothing and is no follow-up. It knows no text.

use chrono::NaiveDate;

use crate::calendar::days_between;
use crate::child::Child;
use crate::growth::Indicator;
use crate::growth::Measured;
use crate::growth::Scores;
use crate::growth::adjusted_length;
use crate::growth::growth_age;
use crate::growth::outside_limits;
use crate::growth::scores;
use crate::protocol::Protocol;
use crate::visit::Measurement;
use crate::visit::Visit;

/// In arm circumference a change of this many times what two measurers may differ by is asked about (our own choice).
const ARM_TOLERANCES: i32 = 4;

/// Why a measurement is unusual.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Odd {
    /// Beyond what is plausible for age, sex and length.
    OutsideGrowth,
    /// Far above or below the line since the last weight.
    Jump,
    /// Less than last time by more than two measurers differ.
    Less,
    /// Very different from last time.
    Changed,
}

/// An unusual measurement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unusual {
    /// Which.
    pub measurement: Measurement,
    /// Why.
    pub odd: Odd,
    /// The day of the value it differs from, if it is about that.
    pub since: Option<NaiveDate>,
}

/// What is unusual about the measurements of a visit that were not confirmed, at most one reason for each, in the order of the form.
///
/// Every limit is one of the protocol: its tolerances, and what its rules call a jump.
#[must_use]
pub fn unusual(child: &Child, visits: &[Visit], visit: &Visit, protocol: &Protocol) -> Vec<Unusual> {
    let mut earlier: Vec<&Visit> = visits.iter().filter(|v| v.on < visit.on && v.id != visit.id).collect();
    earlier.sort_by_key(|v| v.on);
    let seen = Seen { child, earlier: &earlier, visit, z: scores_at(child, visit), protocol };
    [(Measurement::Weight, seen.weight()), (Measurement::Length, seen.length()), (Measurement::Muac, seen.arm())]
        .into_iter()
        .filter(|(measurement, _)| !visit.confirmed.contains(measurement))
        .filter_map(|(measurement, found)| found.map(|(odd, since)| Unusual { measurement, odd, since }))
        .collect()
}

fn scores_at(child: &Child, visit: &Visit) -> Scores {
    scores(&Measured {
        sex: child.sex,
        age_days: growth_age(child, visit.on).days,
        weight: visit.weight,
        length: visit.length,
        position: visit.position,
        muac: visit.muac,
        head: visit.head,
        oedema: visit.oedema,
    })
}

struct Seen<'a> {
    child: &'a Child,
    earlier: &'a [&'a Visit],
    visit: &'a Visit,
    z: Scores,
    protocol: &'a Protocol,
}

type Found = Option<(Odd, Option<NaiveDate>)>;

impl Seen<'_> {
    fn outside(&self, indicator: Indicator) -> bool {
        self.z.get(indicator).rounded().is_some_and(|z| outside_limits(indicator, z))
    }

    fn weight(&self) -> Found {
        let now = i64::from(self.visit.weight?.grams());
        if self.outside(Indicator::Waz) || self.outside(Indicator::Wlz) {
            return Some((Odd::OutsideGrowth, None));
        }
        if self.visit.oedema == Some(true) {
            return None;
        }
        let before = self.earlier.iter().rev().find(|v| v.weight.is_some() && v.oedema != Some(true))?;
        let days = days_between(before.on, self.visit.on);
        let gain = now - i64::from(before.weight?.grams());
        let line = scores_at(self.child, before).waz.rounded().zip(self.z.waz.rounded()).map(|(was, is)| is.since(was).abs());
        let limits = &self.protocol.rules.data_weight_jump.limits;
        let jump = days <= limits.within_days
            && growth_age(self.child, before.on).days >= limits.earlier_from_growth_days
            && line.is_some_and(|z| z >= limits.change_z.hundredths());
        let fast = days >= limits.gain_over_days && gain > i64::from(limits.gain_above_g_per_day) * i64::from(days);
        if jump || fast {
            return Some((Odd::Jump, Some(before.on)));
        }
        // In the first two weeks every baby loses some weight.
        let settled = growth_age(self.child, before.on).days >= self.protocol.rules.weight_loss.limits.earlier_from_age_days;
        (settled && -gain > self.protocol.tolerance.weight_g).then_some((Odd::Less, Some(before.on)))
    }

    fn length(&self) -> Found {
        let now = self.visit.length?;
        if self.outside(Indicator::Laz) || self.outside(Indicator::Wlz) {
            return Some((Odd::OutsideGrowth, None));
        }
        let before = self.earlier.iter().rev().find(|v| v.length.is_some())?;
        let age = |v: &Visit| growth_age(self.child, v.on).days;
        let mm = |v: &Visit| v.length.map(|l| i32::from(adjusted_length(l, v.position, age(v)).mm()));
        let now_mm = i32::from(adjusted_length(now, self.visit.position, age(self.visit)).mm());
        if now_mm < mm(before)? - self.protocol.tolerance.length_mm {
            return Some((Odd::Less, Some(before.on)));
        }
        let line = scores_at(self.child, before).laz.rounded().zip(self.z.laz.rounded()).map(|(was, is)| is.since(was).abs());
        let limits = &self.protocol.rules.data_length_jump.limits;
        let near = days_between(before.on, self.visit.on) <= limits.within_days;
        (near && line.is_some_and(|z| z >= limits.change_z.hundredths())).then_some((Odd::Jump, Some(before.on)))
    }

    fn arm(&self) -> Found {
        let now = i32::from(self.visit.muac?.mm());
        let before = self.earlier.iter().rev().find(|v| v.muac.is_some())?;
        let change = now - i32::from(before.muac?.mm());
        // The protocol has no such rule for the arm: the time is that of a jump of weight (our own choice).
        let near = days_between(before.on, self.visit.on) <= self.protocol.rules.data_weight_jump.limits.within_days;
        (near && change.abs() >= ARM_TOLERANCES * self.protocol.tolerance.muac_mm).then_some((Odd::Changed, Some(before.on)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::ChildStatus;
    use crate::child::Sex;
    use crate::ids::VisitId;
    use crate::protocol_toml::default_protocol;
    use crate::units::Length;
    use crate::units::Muac;
    use crate::units::Weight;
    use crate::visit::Contact;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn boy(born: &str) -> Child {
        Child {
            sex: Sex::Male,
            born: d(born),
            birth_day_known: true,
            gestation_days: None,
            birth_weight: None,
            registered_on: d(born),
            ever_breastfed: None,
            severe_eczema: None,
            known_food_allergy: None,
            status: ChildStatus::Active,
            looks_like_another: false,
        }
    }

    fn visit(id: u128, on: &str, grams: u32, mm: u16, arm: u16) -> Visit {
        let mut v = Visit::empty(VisitId(id), d(on), Contact::Home);
        v.weight = Weight::from_grams(grams).ok();
        v.length = Length::from_mm(mm).ok();
        v.muac = Muac::from_mm(arm).ok();
        v
    }

    fn odd(child: &Child, before: &[Visit], now: &Visit) -> Vec<(Measurement, Odd)> {
        unusual(child, before, now, default_protocol()).into_iter().map(|u| (u.measurement, u.odd)).collect()
    }

    #[test]
    fn a_weight_far_above_the_line_is_asked_about_until_confirmed() {
        // 7.00 kg, then 12.4 typed for 7.4 a month later: inside the plausible limits, but 159 g a day.
        let child = boy("2025-05-30");
        let before = [visit(1, "2025-10-01", 7000, 0, 0)];
        let mut now = visit(2, "2025-11-04", 12_400, 0, 0);
        assert_eq!(
            unusual(&child, &before, &now, default_protocol()),
            [Unusual { measurement: Measurement::Weight, odd: Odd::Jump, since: Some(d("2025-10-01")) }]
        );
        now.confirmed.insert(Measurement::Weight);
        assert!(unusual(&child, &before, &now, default_protocol()).is_empty());
        assert!(odd(&child, &before, &visit(2, "2025-11-04", 7400, 0, 0)).is_empty());
    }

    #[test]
    fn a_loss_counts_beyond_what_two_measurers_differ_by() {
        let child = boy("2024-12-01");
        let before = [visit(1, "2025-10-15", 7500, 0, 0)];
        assert!(odd(&child, &before, &visit(2, "2025-11-20", 7400, 0, 0)).is_empty(), "100 g is the tolerance");
        assert_eq!(odd(&child, &before, &visit(2, "2025-11-20", 7399, 0, 0)), [(Measurement::Weight, Odd::Less)]);
        let newborn = boy("2025-11-01");
        let birth = [visit(1, "2025-11-02", 3200, 0, 0)];
        assert!(odd(&newborn, &birth, &visit(2, "2025-11-06", 3000, 0, 0)).is_empty(), "every newborn loses some");
    }

    #[test]
    fn beyond_the_plausible_limits_asks_for_both_measurements_of_weight_for_length() {
        let child = boy("2025-01-01");
        assert_eq!(odd(&child, &[], &visit(1, "2025-11-01", 3000, 0, 0)), [(Measurement::Weight, Odd::OutsideGrowth)]);
        let both = odd(&child, &[], &visit(1, "2025-11-01", 5900, 800, 0));
        assert_eq!(both, [(Measurement::Weight, Odd::OutsideGrowth), (Measurement::Length, Odd::OutsideGrowth)]);
    }

    #[test]
    fn a_child_does_not_shrink() {
        let child = boy("2025-01-01");
        let before = [visit(1, "2025-10-01", 8500, 712, 0)];
        assert!(odd(&child, &before, &visit(2, "2025-11-01", 8700, 705, 0)).is_empty(), "0.7 cm is the tolerance");
        assert_eq!(odd(&child, &before, &visit(2, "2025-11-01", 8700, 704, 0)), [(Measurement::Length, Odd::Less)]);
        assert_eq!(odd(&child, &before, &visit(2, "2025-11-01", 8700, 775, 0)), [(Measurement::Length, Odd::Jump)]);
    }

    #[test]
    fn an_arm_changes_slowly() {
        let child = boy("2025-01-01");
        let before = [visit(1, "2025-10-01", 8500, 0, 140)];
        assert!(odd(&child, &before, &visit(2, "2025-11-01", 8700, 0, 121)).is_empty());
        assert_eq!(odd(&child, &before, &visit(2, "2025-11-01", 8700, 0, 120)), [(Measurement::Muac, Odd::Changed)]);
        assert!(odd(&child, &before, &visit(2, "2026-01-01", 8700, 0, 120)).is_empty(), "long ago");
    }

    #[test]
    fn only_earlier_visits_count_and_never_the_visit_itself() {
        let child = boy("2024-12-01");
        let stored = visit(2, "2025-11-20", 8500, 0, 0);
        assert!(odd(&child, &[stored], &visit(2, "2025-11-20", 7000, 0, 0)).is_empty());
        assert!(odd(&child, &[visit(1, "2025-11-21", 8500, 0, 0)], &visit(2, "2025-11-20", 7000, 0, 0)).is_empty());
    }

    #[test]
    fn the_limits_are_those_of_the_protocol() {
        let child = boy("2024-12-01");
        let before = [visit(1, "2025-10-15", 7500, 700, 140)];
        let now = visit(2, "2025-11-20", 7440, 697, 130);
        assert!(unusual(&child, &before, &now, default_protocol()).is_empty());
        // A programme with a finer scale, board and tape.
        let mut finer = default_protocol().clone();
        finer.tolerance.weight_g = 50;
        finer.tolerance.length_mm = 2;
        finer.tolerance.muac_mm = 2;
        let found: Vec<_> = unusual(&child, &before, &now, &finer).into_iter().map(|u| (u.measurement, u.odd)).collect();
        assert_eq!(found, [(Measurement::Weight, Odd::Less), (Measurement::Length, Odd::Less), (Measurement::Muac, Odd::Changed)]);
        // A programme that asks about smaller jumps.
        let mut stricter = default_protocol().clone();
        stricter.rules.data_weight_jump.limits.gain_above_g_per_day = 20;
        let grown = visit(2, "2025-11-20", 8300, 0, 0);
        assert!(unusual(&child, &before, &grown, default_protocol()).is_empty());
        assert_eq!(unusual(&child, &before, &grown, &stricter).first().map(|u| u.odd), Some(Odd::Jump));
    }
}

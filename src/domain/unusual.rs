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
use crate::visit::Measurement;
use crate::visit::Visit;

/// The largest allowed difference between two measurers in the WHO growth study (de Onis 2004, from memory): 100 g.
const WEIGHT_TOLERANCE_G: i64 = 100;
/// The same for length: 0.7 cm.
const LENGTH_TOLERANCE_MM: i32 = 7;
/// A change of the line by two z within this many days is more often a slip than growth (our own choice).
const JUMP_Z_HUNDREDTHS: i32 = 200;
const WEIGHT_JUMP_DAYS: i32 = 61;
const LENGTH_JUMP_DAYS: i32 = 92;
/// No infant gains more than this a day over three days and more (our own choice).
const MOST_GAIN_G_A_DAY: i64 = 100;
/// The earlier weight counts from this growth age on: before it children lose and regain.
const JUMP_FROM_DAY: i32 = 28;
/// Four times what two measurers may differ by (5 mm, WHO growth study, from memory); within two months (our own choice).
const ARM_CHANGE_MM: i32 = 20;

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
#[must_use]
pub fn unusual(child: &Child, visits: &[Visit], visit: &Visit) -> Vec<Unusual> {
    let mut earlier: Vec<&Visit> = visits.iter().filter(|v| v.on < visit.on && v.id != visit.id).collect();
    earlier.sort_by_key(|v| v.on);
    let seen = Seen { child, earlier: &earlier, visit, z: scores_at(child, visit) };
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
        let jump = days <= WEIGHT_JUMP_DAYS
            && growth_age(self.child, before.on).days >= JUMP_FROM_DAY
            && line.is_some_and(|z| z >= JUMP_Z_HUNDREDTHS);
        let fast = days >= 3 && gain > MOST_GAIN_G_A_DAY * i64::from(days);
        if jump || fast {
            return Some((Odd::Jump, Some(before.on)));
        }
        // In the first two weeks every baby loses some weight.
        let settled = growth_age(self.child, before.on).days >= 14;
        (settled && -gain > WEIGHT_TOLERANCE_G).then_some((Odd::Less, Some(before.on)))
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
        if now_mm < mm(before)? - LENGTH_TOLERANCE_MM {
            return Some((Odd::Less, Some(before.on)));
        }
        let line = scores_at(self.child, before).laz.rounded().zip(self.z.laz.rounded()).map(|(was, is)| is.since(was).abs());
        let near = days_between(before.on, self.visit.on) <= LENGTH_JUMP_DAYS;
        (near && line.is_some_and(|z| z >= JUMP_Z_HUNDREDTHS)).then_some((Odd::Jump, Some(before.on)))
    }

    fn arm(&self) -> Found {
        let now = i32::from(self.visit.muac?.mm());
        let before = self.earlier.iter().rev().find(|v| v.muac.is_some())?;
        let change = now - i32::from(before.muac?.mm());
        let near = days_between(before.on, self.visit.on) <= WEIGHT_JUMP_DAYS;
        (near && change.abs() >= ARM_CHANGE_MM).then_some((Odd::Changed, Some(before.on)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::child::ChildStatus;
    use crate::child::Sex;
    use crate::ids::VisitId;
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
        unusual(child, before, now).into_iter().map(|u| (u.measurement, u.odd)).collect()
    }

    #[test]
    fn a_weight_far_above_the_line_is_asked_about_until_confirmed() {
        // 7.00 kg, then 12.4 typed for 7.4 a month later: inside the plausible limits, but 159 g a day.
        let child = boy("2025-05-30");
        let before = [visit(1, "2025-10-01", 7000, 0, 0)];
        let mut now = visit(2, "2025-11-04", 12_400, 0, 0);
        assert_eq!(
            unusual(&child, &before, &now),
            [Unusual { measurement: Measurement::Weight, odd: Odd::Jump, since: Some(d("2025-10-01")) }]
        );
        now.confirmed.insert(Measurement::Weight);
        assert!(unusual(&child, &before, &now).is_empty());
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
}

//! Growth of the children seen in a month: how many were measured, how many are low. It knows no child by itself and no rule.

use crate::report::choose::{Seen, seen};
use crate::report::counted::Counted;
use crate::report::csv_table::{Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation, Rest};
use crate::report::layout::{Areas, FEEDING_BANDS, GROWTH_BANDS, band_code, band_of, sex_code, sex_level};
use crate::report::period::Period;
use crate::report::rows::{ReportVisit, ReportZ};
use crate::report::sheet::{Axis, Dimension};
use crate::report::system::System;

crate::report::measures! {
    /// Counted columns, in order.
    MEASURES = children_visited VISITED, weight_n WEIGHT, length_n LENGTH, muac_n MUAC, waz_n WAZ, waz_lt_m2 WAZ_M2, waz_lt_m3 WAZ_M3,
    wlz_n WLZ, wlz_lt_m2 WLZ_M2, wlz_lt_m3 WLZ_M3, laz_n LAZ, laz_lt_m2 LAZ_M2, laz_lt_m3 LAZ_M3, wlz_gt_2 WLZ_P2, wlz_gt_3 WLZ_P3,
    muac_den_6_23 MUAC_DEN, muac_lt_115 MUAC_LOW, muac_115_124 MUAC_MID, oedema_n OEDEMA, sam_any SAM, mam_any MAM, u6_risk_any U6_RISK,
    slow_or_lost_n SLOW, slow_or_lost_den SLOW_DEN, preterm_corrected_n CORRECTED
}

/// The variable of the children visited, from the first.
pub(crate) const VISITED_VARIABLE: usize = VISITED;

/// Bands from 6 months on.
const FROM_6_MONTHS: &[usize] = &[1, 2];
/// The band under 6 months.
const UNDER_6_MONTHS: &[usize] = &[0];
/// Measures that exist from 6 months on only, and under 6 months only.
const ONLY_FROM_6: &[usize] = &[MUAC_DEN, MUAC_LOW, MUAC_MID, SAM, MAM];
const ONLY_UNDER_6: &[usize] = &[U6_RISK];
const SEX: usize = 1;
const BAND: usize = 2;

/// Least arm circumference (mm) that is not severe wasting from 6 months on (WHO and UNICEF, joint statement 2009).
const MUAC_SEVERE_MM: u16 = 115;
/// Least arm circumference (mm) that is not moderate wasting (WHO 2013, from memory).
const MUAC_MODERATE_MM: u16 = 125;
/// Least arm circumference (mm) that is no risk from 42 days to 6 months (WHO 2023, from memory).
const MUAC_YOUNG_MM: u16 = 110;
/// From this age in days the young limit holds (6 weeks; WHO 2023, from memory).
const MUAC_YOUNG_FROM_DAYS: i32 = 42;
const M2: i32 = -200;
const M3: i32 = -300;

/// What `growth.csv` of a month is printed from.
pub(crate) struct Growth {
    cube: Cube,
}

/// Counts the children seen in a month.
///
/// Below −2 includes below −3 (WHO's convention). A child with swelling of both feet has no weight-based z-score but counts
/// as below −3 of weight-for-age and weight-for-length, in numerator and denominator (WHO/UNICEF 2019 recommendations for
/// data on anthropometry, from memory). Implausible z-scores do not count unless measured again and kept.
pub(crate) fn count(period: Period, areas: &Areas, visits: &[ReportVisit]) -> Growth {
    let mut cube = Cube::new(&[areas.len(), 2, GROWTH_BANDS.len()], MEASURES.len());
    for child in seen(visits, period, GROWTH_BANDS) {
        let last = child.last();
        let levels = [areas.level(last.area), Some(sex_level(last.sex)), Some(child.band)];
        cube.add_child(&levels, measures_of(&child));
    }
    Growth { cube }
}

impl Growth {
    /// The place of the children visited at a position, from the first figure.
    pub(crate) fn visited(&self, position: &[usize]) -> usize {
        self.cube.place(position, VISITED)
    }

    /// Places of arms measured in everybody, from 6 months on, and under 6 months, for an area and a sex.
    pub(crate) fn arms(&self, area: usize, sex: usize) -> [usize; 3] {
        let all = self.cube.total(BAND);
        [(all, MUAC), (all, MUAC_DEN), (UNDER_6_MONTHS[0], MUAC)].map(|(band, measure)| self.cube.place(&[area, sex, band], measure))
    }

    /// Every row.
    pub(crate) fn positions(&self) -> Vec<Vec<usize>> {
        self.cube.positions()
    }
}

impl Counted for Growth {
    fn put(&self, system: &mut System) -> Put {
        let by_band = FEEDING_BANDS.iter().map(|band| band_of(GROWTH_BANDS, band.from)).collect();
        let axes = [
            Axis::of(Dimension::Area, self.cube.total(0)),
            Axis::of(Dimension::Sex, 2),
            Axis { dimension: Dimension::Band, level_of: by_band },
        ];
        self.cube.put(system, &Bonds { impossible: &foreign, of_much_worth: &[VISITED, WAZ, WAZ_M2], ..Bonds::new(&axes, &relations()) })
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let mut table = Table::new("growth", &[&["sex", "age_band_at_visit"], MEASURES].concat());
        for position in self.cube.told(withheld) {
            let mut cells = vec![Cell::text(sex_code(position[SEX])), Cell::text(band_code(GROWTH_BANDS, position[BAND]))];
            let shown = |m| if foreign(&position, m) { Cell::Empty } else { self.cube.shown(withheld, &position, m) };
            cells.extend((0..MEASURES.len()).map(shown));
            table.push(release, areas.code(position[0]), cells);
        }
        vec![table]
    }
}

/// Whether nobody at this place can be counted in a measure, by age.
fn foreign(position: &[usize], measure: usize) -> bool {
    (ONLY_FROM_6.contains(&measure) && UNDER_6_MONTHS.contains(&position[BAND]))
        || (ONLY_UNDER_6.contains(&measure) && FROM_6_MONTHS.contains(&position[BAND]))
}

/// A weight-based state: swelling, or a z-score in hundredths.
#[derive(Clone, Copy)]
enum State {
    Swollen,
    Z(i32),
}

impl State {
    /// Swelling counts as below every limit.
    const fn below(self, limit: i32) -> bool {
        match self {
            Self::Swollen => true,
            Self::Z(z) => z < limit,
        }
    }

    const fn above(self, limit: i32) -> bool {
        match self {
            Self::Swollen => false,
            Self::Z(z) => z > limit,
        }
    }
}

fn plausible(z: Option<ReportZ>) -> Option<i32> {
    z.filter(|z| z.counts()).map(|z| z.hundredths)
}

/// Whether what the z-score rests on is not in doubt.
fn sound(z: Option<ReportZ>) -> bool {
    z.is_none_or(ReportZ::counts)
}

fn weight_for_age(visit: &ReportVisit) -> Option<State> {
    if visit.oedema == Some(true) { Some(State::Swollen) } else { plausible(visit.waz).map(State::Z) }
}

fn weight_for_length(visit: &ReportVisit) -> Option<State> {
    if visit.oedema == Some(true) {
        return Some(State::Swollen);
    }
    // An implausible weight-for-age puts the weight in doubt, an implausible length-for-age the length.
    if sound(visit.waz) && sound(visit.laz) { plausible(visit.wlz).map(State::Z) } else { None }
}

/// The columns in which a child counts.
fn measures_of(child: &Seen<'_>) -> Vec<usize> {
    let latest_muac = child.latest(|v| v.muac.map(|muac| (muac.mm(), v.days()))).map(|(found, _)| found);
    let waz = child.latest(weight_for_age).map(|(state, _)| state);
    let wlz = child.latest(weight_for_length).map(|(state, _)| state);
    let laz = child.latest(|v| if sound(v.laz) { plausible(v.laz) } else { None }).map(|(z, _)| State::Z(z));
    let swollen = child.latest(|v| v.oedema).is_some_and(|(swollen, _)| swollen);
    let slow = child.latest(|v| v.slow_or_lost).map(|(slow, _)| slow);
    let from_6_months = FROM_6_MONTHS.contains(&child.band);
    let mut found = vec![VISITED];
    let mut count = |measure, holds: bool| {
        if holds {
            found.push(measure);
        }
    };
    // A z-score has a measurement behind it.
    count(WEIGHT, waz.is_some() || child.latest(|v| v.weight).is_some());
    count(LENGTH, laz.is_some() || child.latest(|v| v.length).is_some());
    count(MUAC, latest_muac.is_some());
    for (state, n, below_2, below_3) in [(waz, WAZ, WAZ_M2, WAZ_M3), (wlz, WLZ, WLZ_M2, WLZ_M3), (laz, LAZ, LAZ_M2, LAZ_M3)] {
        count(n, state.is_some());
        count(below_2, state.is_some_and(|s| s.below(M2)));
        count(below_3, state.is_some_and(|s| s.below(M3)));
    }
    count(WLZ_P2, wlz.is_some_and(|s| s.above(200)));
    count(WLZ_P3, wlz.is_some_and(|s| s.above(300)));
    count(OEDEMA, swollen);
    count(SLOW_DEN, slow.is_some());
    count(SLOW, slow == Some(true));
    count(CORRECTED, child.last().age_corrected);
    if from_6_months {
        let muac = latest_muac.map(|(mm, _)| mm);
        let low = muac.is_some_and(|mm| mm < MUAC_SEVERE_MM);
        let middling = muac.is_some_and(|mm| (MUAC_SEVERE_MM..MUAC_MODERATE_MM).contains(&mm));
        let severe = low || swollen || wlz.is_some_and(|s| s.below(M3));
        count(MUAC_DEN, muac.is_some());
        count(MUAC_LOW, low);
        count(MUAC_MID, middling);
        count(SAM, severe);
        count(MAM, !severe && (middling || wlz.is_some_and(|s| s.below(M2))));
    } else {
        let thin_arm = latest_muac.is_some_and(|(mm, days)| mm < MUAC_YOUNG_MM && days >= MUAC_YOUNG_FROM_DAYS);
        count(U6_RISK, thin_arm || swollen || slow == Some(true) || waz.is_some_and(|s| s.below(M2)));
    }
    found
}

/// What everybody knows to hold between the columns.
fn relations() -> Vec<Relation> {
    use Rest::{Free, Guarded};
    let mut relations: Vec<Relation> =
        [WEIGHT, LENGTH, MUAC, WAZ, WLZ, LAZ, OEDEMA, SLOW_DEN, CORRECTED].iter().map(|n| Relation::within(VISITED, &[*n], Free)).collect();
    // Who was weighed or measured and has no z-score is swollen, not yet at the due date, or doubted: a small group like any other.
    for (taken, scored) in [(WEIGHT, WAZ), (LENGTH, LAZ)] {
        relations.push(Relation::within(taken, &[scored], Guarded));
    }
    // Also those between −3 and −2, and those at −2 or above, are groups that may be small.
    for (whole, part) in [
        (WAZ, WAZ_M2),
        (WAZ_M2, WAZ_M3),
        (WLZ, WLZ_M2),
        (WLZ_M2, WLZ_M3),
        (LAZ, LAZ_M2),
        (LAZ_M2, LAZ_M3),
        (WLZ, WLZ_P2),
        (WLZ_P2, WLZ_P3),
        (MUAC_DEN, MUAC_LOW),
        (MUAC_DEN, MUAC_MID),
        (SLOW_DEN, SLOW),
    ] {
        relations.push(Relation::within(whole, &[part], Guarded));
    }
    relations.push(Relation::within(WLZ, &[WLZ_M2, WLZ_P2], Free));
    relations.push(Relation::within(MUAC_DEN, &[MUAC_LOW, MUAC_MID], Free));
    relations.push(Relation::equal(&[MUAC], &[MUAC_DEN]).only_at(BAND, FROM_6_MONTHS));
    for part in [MUAC_LOW, WLZ_M3, OEDEMA] {
        relations.push(Relation::within(SAM, &[part], Free).only_at(BAND, FROM_6_MONTHS));
    }
    relations.push(Relation::within(VISITED, &[SAM, MAM], Free).only_at(BAND, FROM_6_MONTHS));
    for part in [WAZ_M2, OEDEMA, SLOW] {
        relations.push(Relation::within(U6_RISK, &[part], Free).only_at(BAND, UNDER_6_MONTHS));
    }
    relations.push(Relation::within(VISITED, &[U6_RISK], Free).only_at(BAND, UNDER_6_MONTHS));
    relations
}

#[cfg(test)]
#[path = "growth_tests.rs"]
mod tests;

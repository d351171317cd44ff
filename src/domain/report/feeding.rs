//! Feeding of the children seen in a month: one row an indicator, with who could not be counted. Not a survey: the table
//! describes children who were visited. It knows the indicators, not how an answer was asked.

use crate::calendar::completed_months;
use crate::report::choose::seen;
use crate::report::counted::Counted;
use crate::report::csv_table::{Cell, Release, Table};
use crate::report::cube::{Bonds, Cube, Put, Relation, Rest};
use crate::report::indicator::{Indicator, Judged, of_registration, of_visits};
use crate::report::layout::{Areas, FEEDING_BANDS, band_code, band_of, sex_code, sex_level};
use crate::report::period::Period;
use crate::report::rows::{ReportChild, ReportVisit};
use crate::report::sheet::{Axis, Dimension};
use crate::report::system::System;

/// Own columns, in order.
pub const COLUMNS: &[&str] = &["sex", "age_band_at_visit", "indicator", "n", "den", "pct", "missing_n", "visits_used_not_last"];

const N: usize = 0;
const DEN: usize = 1;
const MISSING: usize = 2;
const EARLIER: usize = 3;
/// Counts of an indicator.
const PER: usize = 4;
const BAND: usize = 2;

fn measure(indicator: Indicator, which: usize) -> usize {
    Indicator::ALL.iter().position(|listed| *listed == indicator).map_or(which, |at| at * PER + which)
}

/// Children seen in the month; never printed here, but every denominator and its missing answers make them up.
pub(crate) fn visited() -> usize {
    Indicator::ALL.len() * PER
}

/// Children registered in the month; never printed here.
pub(crate) fn registered() -> usize {
    visited() + 1
}

/// Whether the programme's row alone tells the count: it says how an indicator was counted, not how children fare. Every row
/// that told it would tie all indicators together, so that nearly all of them would have to be withheld.
const fn is_outline(which: usize) -> bool {
    matches!(which, MISSING | EARLIER)
}

/// What `feeding.csv` of a month is printed from.
pub(crate) struct Feeding {
    cube: Cube,
}

/// Counts a month. `children` are those registered in it or before; only the former are counted.
pub(crate) fn count(period: Period, areas: &Areas, children: &[ReportChild], visits: &[ReportVisit]) -> Feeding {
    let mut cube = Cube::new(&[areas.len(), 2, FEEDING_BANDS.len()], registered() + 1);
    for child in seen(visits, period, FEEDING_BANDS) {
        let last = child.last();
        let levels = [areas.level(last.area), Some(sex_level(last.sex)), Some(child.band)];
        let mut counted = vec![visited()];
        for indicator in Indicator::ALL.iter().filter(|indicator| !indicator.is_of_registration()) {
            let (judged, earlier) = of_visits(*indicator, &child);
            counted.extend(measures_of(*indicator, judged, earlier));
        }
        cube.add_child(&levels, counted);
    }
    for child in children.iter().filter(|child| period.contains(child.registered_on)) {
        let months = completed_months(child.born, child.registered_on).unwrap_or(0);
        let Some(band) = band_of(FEEDING_BANDS, months) else { continue };
        let area = child.place_on(child.registered_on).and_then(|place| areas.level(place.area));
        let levels = [area, Some(sex_level(child.sex)), Some(band)];
        let mut counted = vec![registered()];
        for indicator in Indicator::ALL.iter().filter(|indicator| indicator.is_of_registration()) {
            counted.extend(measures_of(*indicator, of_registration(*indicator, child), false));
        }
        cube.add_child(&levels, counted);
    }
    Feeding { cube }
}

impl Feeding {
    /// The place of the children seen at a position, from the first figure.
    pub(crate) fn visited(&self, position: &[usize]) -> usize {
        self.cube.place(position, visited())
    }

    /// The place of the children registered at a position, from the first figure.
    pub(crate) fn registered(&self, position: &[usize]) -> usize {
        self.cube.place(position, registered())
    }
}

impl Counted for Feeding {
    fn put(&self, system: &mut System) -> Put {
        let axes =
            [Axis::of(Dimension::Area, self.cube.total(0)), Axis::of(Dimension::Sex, 2), Axis::of(Dimension::Band, FEEDING_BANDS.len())];
        let relations = relations();
        let of_programme: Vec<usize> = (0..visited()).filter(|measure| is_outline(*measure % PER)).collect();
        let bonds = Bonds {
            unprinted: &[visited(), registered()],
            of_programme: &of_programme,
            of_much_worth: &[measure(Indicator::Mdd, N), measure(Indicator::Mdd, DEN)],
            impossible: &foreign,
            ..Bonds::new(&axes, &relations)
        };
        self.cube.put(system, &bonds)
    }

    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table> {
        let mut table = Table::new("feeding", COLUMNS);
        for position in self.cube.told(withheld) {
            for indicator in Indicator::ALL.iter().filter(|indicator| !foreign(&position, measure(**indicator, N))) {
                let programme = position.iter().enumerate().all(|(split, level)| *level == self.cube.total(split));
                let shown = |which: usize| match programme || !is_outline(which) {
                    true => self.cube.shown(withheld, &position, measure(*indicator, which)),
                    false => Cell::Empty,
                };
                let (n, den) = (shown(N), shown(DEN));
                let pct = Cell::percent(&n, &den);
                let codes = [sex_code(position[1]), band_code(FEEDING_BANDS, position[BAND]), indicator.code()];
                let mut cells: Vec<Cell> = codes.iter().map(|code| Cell::text(code)).collect();
                cells.extend([n, den, pct, shown(MISSING), shown(EARLIER)]);
                table.push(release, areas.code(position[0]), cells);
            }
        }
        vec![table]
    }
}

/// The counts of an indicator that a child stands in.
fn measures_of(indicator: Indicator, judged: Judged, earlier: bool) -> Vec<usize> {
    let counts: &[usize] = match (judged, earlier) {
        (Judged::NotEligible, _) => &[],
        (Judged::Missing, _) => &[MISSING],
        (Judged::Known(true), true) => &[DEN, N, EARLIER],
        (Judged::Known(true), false) => &[DEN, N],
        (Judged::Known(false), true) => &[DEN, EARLIER],
        (Judged::Known(false), false) => &[DEN],
    };
    counts.iter().map(|which| measure(indicator, *which)).collect()
}

/// The bands in which an indicator can count anybody.
fn bands_of(indicator: Indicator) -> Vec<usize> {
    let (from, to) = indicator.months();
    (0..FEEDING_BANDS.len()).filter(|at| FEEDING_BANDS[*at].from <= to && from < FEEDING_BANDS[*at].to).collect()
}

/// Whether nobody at this place can be counted in a measure, by age; nor is an answer at registration ever taken from a visit.
fn foreign(position: &[usize], measure: usize) -> bool {
    let Some(indicator) = Indicator::ALL.get(measure / PER) else { return false };
    let by_age = position[BAND] < FEEDING_BANDS.len() && !bands_of(*indicator).contains(&position[BAND]);
    by_age || (indicator.is_of_registration() && measure % PER == EARLIER)
}

/// What everybody who knows the definitions knows to hold between the rows.
fn relations() -> Vec<Relation> {
    use Indicator as I;
    use Rest::{Free, Guarded};
    let n = |indicator| measure(indicator, N);
    let den = |indicator| measure(indicator, DEN);
    let missing = |indicator| measure(indicator, MISSING);
    let mut relations = Vec::new();
    for indicator in I::ALL {
        relations.push(Relation::within(den(*indicator), &[n(*indicator)], Guarded));
        relations.push(Relation::within(den(*indicator), &[measure(*indicator, EARLIER)], Free));
        let answered_or_not = [den(*indicator), missing(*indicator)];
        if indicator.is_of_registration() {
            relations.push(Relation::equal(&[registered()], &answered_or_not));
        } else if indicator.is_of_everybody() {
            relations.push(Relation::equal(&[visited()], &answered_or_not).only_at(BAND, &bands_of(*indicator)));
        }
        if indicator.group().is_some() || matches!(indicator, I::Eff | I::Zvf) {
            // All rest on the one question about food groups.
            relations.push(Relation::equal(&[den(I::Mdd)], &[den(*indicator)]));
        }
    }
    for which in [N, DEN] {
        let parts = [I::MmfBf6To8, I::MmfBf9To23, I::MmfNbf].map(|part| measure(part, which));
        relations.push(Relation::equal(&[measure(I::Mmf, which)], &parts));
        for whole in [I::Mdd, I::Mmf] {
            relations.push(Relation::within(measure(whole, which), &[measure(I::Mad, which)], Free));
        }
    }
    relations.push(Relation::equal(&[den(I::MmfNbf), missing(I::MmfNbf)], &[den(I::Mmff), missing(I::Mmff)]));
    let second_year = [FEEDING_BANDS.len() - 1];
    relations.push(Relation::equal(&[den(I::Cbf)], &[n(I::Cbf), den(I::Mmff), missing(I::Mmff)]).only_at(BAND, &second_year));
    relations.push(Relation::equal(&[n(I::Cbf)], &[den(I::MmfBf9To23), missing(I::MmfBf9To23)]).only_at(BAND, &second_year));
    for part in [I::GroupEggs, I::GroupFlesh] {
        relations.push(Relation::within(n(I::Eff), &[n(part)], Free));
    }
    relations.push(Relation { whole: vec![n(I::GroupEggs), n(I::GroupFlesh)], parts: vec![n(I::Eff)], rest: Free, only: None });
    for part in [I::GroupVitA, I::GroupOtherFv] {
        relations.push(Relation::within(den(I::Zvf), &[n(I::Zvf), n(part)], Free));
    }
    relations
}

#[cfg(test)]
#[path = "feeding_tests.rs"]
mod tests;

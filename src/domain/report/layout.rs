//! How the public files are split: areas, sexes and age bands, each with its total. It knows no measure.

use crate::child::Sex;
use crate::ids::AreaId;
use crate::report::csv_table::ALL;
use crate::report::rows::ReportArea;

/// An age band in completed months.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Band {
    /// Its permanent code.
    pub code: &'static str,
    /// First month in it.
    pub from: u32,
    /// First month after it.
    pub to: u32,
}

const fn band(code: &'static str, from: u32, to: u32) -> Band {
    Band { code, from, to }
}

/// Bands of growth tables.
pub const GROWTH_BANDS: &[Band] = &[band("0-5", 0, 6), band("6-11", 6, 12), band("12-23", 12, 24)];

/// Bands of feeding tables (WHO/UNICEF 2021 split 6–8, 9–11 and 12–23 months).
pub const FEEDING_BANDS: &[Band] = &[band("0-5", 0, 6), band("6-8", 6, 9), band("9-11", 9, 12), band("12-23", 12, 24)];

/// Bands of enrolment: as growth, and those who have reached the exit age of 24 months.
pub const ENROLMENT_BANDS: &[Band] = &[band("0-5", 0, 6), band("6-11", 6, 12), band("12-23", 12, 24), band("24+", 24, u32::MAX)];

/// The place of the band that holds an age.
#[must_use]
pub fn band_of(bands: &[Band], months: u32) -> Option<usize> {
    bands.iter().position(|band| (band.from..band.to).contains(&months))
}

/// Fewest areas for which figures by area are published; with fewer, one area comes out of the total (common practice).
const FEWEST_AREAS: usize = 3;

/// The areas of a release in order of their codes.
#[derive(Debug, Clone)]
pub struct Areas {
    listed: Vec<ReportArea>,
}

impl Areas {
    /// Orders the areas; keeps only the total when there are fewer than 3.
    #[must_use]
    pub fn new(areas: &[ReportArea]) -> Self {
        let mut listed = if areas.len() < FEWEST_AREAS { Vec::new() } else { areas.to_vec() };
        listed.sort_by(|a, b| (&a.code, a.id).cmp(&(&b.code, b.id)));
        Self { listed }
    }

    /// How many are published.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.listed.len()
    }

    /// Whether only the total is published.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.listed.is_empty()
    }

    /// The level of an area.
    #[must_use]
    pub fn level(&self, area: AreaId) -> Option<usize> {
        self.listed.iter().position(|listed| listed.id == area)
    }

    /// The code of a level; of the total, `all`.
    #[must_use]
    pub fn code(&self, level: usize) -> &str {
        self.listed.get(level).map_or(ALL, |area| &area.code)
    }
}

/// The level of a sex.
#[must_use]
pub const fn sex_level(sex: Sex) -> usize {
    match sex {
        Sex::Female => 0,
        Sex::Male => 1,
    }
}

/// The code of a level of sex; of the total, `all`.
#[must_use]
pub fn sex_code(level: usize) -> &'static str {
    Sex::ALL.get(level).map_or(ALL, |sex| sex.code())
}

/// The code of a level of a band; of the total, `all`.
#[must_use]
pub fn band_code(bands: &[Band], level: usize) -> &'static str {
    bands.get(level).map_or(ALL, |band| band.code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_hold_each_age_once() {
        for bands in [GROWTH_BANDS, FEEDING_BANDS, ENROLMENT_BANDS] {
            for months in 0..24 {
                assert_eq!(bands.iter().filter(|band| (band.from..band.to).contains(&months)).count(), 1, "{months}");
            }
        }
        assert_eq!(band_of(FEEDING_BANDS, 8).map(|at| FEEDING_BANDS[at].code), Some("6-8"));
        assert_eq!(band_of(FEEDING_BANDS, 9).map(|at| FEEDING_BANDS[at].code), Some("9-11"));
        assert_eq!(band_of(FEEDING_BANDS, 24), None);
    }

    #[test]
    fn two_areas_are_published_as_one_total() {
        let area = |id: u128, code: &str| ReportArea { id: AreaId(id), code: code.to_owned() };
        assert!(Areas::new(&[area(1, "Ulopi"), area(2, "Sanga Point")]).is_empty());
        let areas = Areas::new(&[area(1, "Ulopi"), area(2, "Sanga Point"), area(3, "Mbiro Hill")]);
        assert_eq!((areas.code(0), areas.code(3)), ("Mbiro Hill", "all"));
    }
}

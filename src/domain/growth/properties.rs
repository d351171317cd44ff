//! Properties that hold for every child, not only for the check values.

use chrono::{Days, NaiveDate};
use proptest::prelude::*;

use super::{Figures, Indicator, ReferenceTable, growth_age, reference_range, scores_of, table_value};
use crate::child::{Child, ChildStatus, Sex};

fn sexes() -> impl Strategy<Value = Sex> {
    prop::sample::select(Sex::ALL)
}

fn infant(sex: Sex, age_days: i32, weight_kg: f64, length_mm: f64) -> Figures {
    let (muac_mm, head_mm) = (None, None);
    Figures { sex, age_days, weight_kg: Some(weight_kg), length_mm: Some(length_mm), position: None, muac_mm, head_mm, oedema: false }
}

proptest! {
    // No file of failed cases: a failure prints its case, and the mended defect gets a test of its own.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn z_rises_with_weight(sex in sexes(), age in 0..=1856, grams in 500_u32..25_000, more in 1_u32..2_000, mm in 650_u16..=1100) {
        let at = |grams: u32| scores_of(&infant(sex, age, f64::from(grams) / 1000.0, f64::from(mm)));
        let (light, heavy) = (at(grams), at(grams + more));
        for indicator in [Indicator::Waz, Indicator::Wlz, Indicator::Bmiz] {
            let (less, more) = (light.get(indicator).value().expect("a value"), heavy.get(indicator).value().expect("a value"));
            prop_assert!(more.value() > less.value(), "{indicator:?}: {less:?} then {more:?}");
        }
        prop_assert_eq!(light.laz, heavy.laz);
    }

    #[test]
    fn the_measurement_of_a_z_has_that_z(sex in sexes(), age in 91..=1856, mm in 650..=1100, z in -4.5_f64..6.0) {
        let key = |indicator| if indicator == Indicator::Wlz { mm } else { age };
        for indicator in Indicator::ALL {
            let table = ReferenceTable::of(*indicator, age);
            let Some(x) = table_value(table, sex, key(*indicator), z) else { continue };
            let mut figures = infant(sex, age, x, f64::from(mm));
            match indicator {
                Indicator::Laz => figures.length_mm = Some(x * 10.0),
                Indicator::Bmiz => {
                    figures.weight_kg = Some(x);
                    figures.length_mm = Some(1000.0);
                }
                Indicator::Mauz => figures.muac_mm = Some(x * 10.0),
                Indicator::Hcz => figures.head_mm = Some(x * 10.0),
                Indicator::Waz | Indicator::Wlz => {}
            }
            let back = scores_of(&figures).get(*indicator).value().expect("a value");
            prop_assert!((back.value() - z).abs() < 1e-7, "{indicator:?} {x}: {back:?} for {z}");
        }
    }

    #[test]
    fn curves_never_cross(sex in sexes(), age in 91..=1856, z in -5.0_f64..5.0, gap in 0.001_f64..1.0) {
        for table in [ReferenceTable::WeightForAge, ReferenceTable::LengthForAge, ReferenceTable::BmiForAge, ReferenceTable::ArmForAge] {
            let (_, last) = reference_range(table);
            prop_assert_eq!(last, 1856);
            if let (Some(low), Some(high)) = (table_value(table, sex, age, z), table_value(table, sex, age, z + gap)) {
                prop_assert!(high > low);
            }
        }
    }

    #[test]
    fn born_at_37_weeks_or_later_is_never_corrected(gestation in 259_u16..320, age in 0_u64..1_000) {
        let born = NaiveDate::from_ymd_opt(2025, 1, 31).expect("a date");
        let child = Child {
            sex: Sex::Male,
            born,
            birth_day_known: true,
            gestation_days: Some(gestation),
            birth_weight: None,
            registered_on: born,
            ever_breastfed: None,
            severe_eczema: None,
            known_food_allergy: None,
            status: ChildStatus::Active,
            looks_like_another: false,
        };
        let age_on = growth_age(&child, born + Days::new(age));
        prop_assert_eq!((age_on.days, age_on.corrected_by_days), (age as i32, 0));
        // And a day less of pregnancy is corrected, by as many days as are missing to 40 weeks, until 24 months.
        let early = growth_age(&Child { gestation_days: Some(258), ..child }, born + Days::new(age));
        prop_assert_eq!(early.corrected_by_days, if age < 730 { 22 } else { 0 });
    }
}

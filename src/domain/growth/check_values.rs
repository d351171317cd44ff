//! Outside check values: measurements with known z-scores, printed field tables, and the edges of every table.

use super::{
    AdjustedLength, Figures, Indicator, Measured, NotComputable, Score, Scores, VisitScores, WeighedAndMeasured, adjusted_length,
    outside_limits, reference_value, scores, scores_of, three_indices,
};
use crate::child::Sex;
use crate::units::{HeadCircumference, Length, Muac, Weight};
use crate::visit::Position;

/// 400 measurements with z-scores, made outside this project from the WHO Child Growth Standards 2006 and 2007.
const MEASUREMENTS: &str = include_str!("../../../tests/data/growth/golden_public.csv");

/// 98 figures of WHO's simplified field tables (2006), recalled from memory.
const FIELD_TABLES: &str = include_str!("../../../tests/data/growth/field_table_checks.csv");

/// 60 z-scores of head circumference that rcpchgrowth 4.6.5 gave, from birth to day 1856.
const HEADS: &str = include_str!("../../../tests/data/growth/head_checks.csv");

fn rows(text: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    text.lines().skip(1).map(|line| line.split(',').collect())
}

fn number(text: &str) -> Option<f64> {
    (!text.is_empty()).then(|| text.parse().expect("a number"))
}

fn figures(row: &[&str]) -> Figures {
    let [_, sex, age, weight, length, measured, muac, oedema, ..] = row else { panic!("short row {row:?}") };
    Figures {
        sex: Sex::from_code(sex).expect("a sex"),
        age_days: age.parse().expect("days"),
        weight_kg: number(weight),
        length_mm: number(length).map(|cm| (cm * 10.0).round()),
        position: match *measured {
            "L" => Some(Position::Lying),
            "H" => Some(Position::Standing),
            _ => None,
        },
        muac_mm: number(muac),
        head_mm: None,
        oedema: *oedema == "1",
    }
}

#[test]
fn every_check_value_agrees_to_four_decimals() {
    let mut values = 0;
    for row in rows(MEASUREMENTS) {
        let scores = scores_of(&figures(&row));
        let mut flags = Vec::new();
        for (indicator, expected) in Indicator::ALL.iter().zip(&row[8..13]) {
            let score = scores.get(*indicator);
            let got = score.value().map_or(String::new(), |z| format!("{:.4}", z.value()));
            assert_eq!(got, *expected, "{} {}", row[0], indicator.code());
            if score.rounded().is_some_and(|z| outside_limits(*indicator, z)) {
                flags.push(indicator.code());
            }
            values += usize::from(score.value().is_some());
        }
        assert_eq!(flags.join(";"), row[13], "{} flags", row[0]);
    }
    assert!(values > 1500, "only {values} values compared");
}

#[test]
fn every_printed_field_table_value_agrees_to_its_digit() {
    let mut compared = 0;
    for row in rows(FIELD_TABLES) {
        let [indicator, sex, months, z, printed] = row.as_slice() else { panic!("short row {row:?}") };
        let indicator = if *indicator == "wfa" { Indicator::Waz } else { Indicator::Laz };
        let (sex, z) = (Sex::from_code(sex).expect("a sex"), z.parse().expect("a z"));
        // WHO prints whole months of 30.4375 days: mostly between two days of the table.
        let age = months.parse::<f64>().expect("months") * 30.4375;
        let on = |day: f64| reference_value(indicator, sex, day as i32, z).expect("a value");
        let value = on(age.floor()) + age.fract() * (on(age.ceil()) - on(age.floor()));
        assert_eq!(format!("{:.1}", (value * 10.0).round() / 10.0), *printed, "{row:?}");
        compared += 1;
    }
    assert_eq!(compared, 98);
}

#[test]
fn every_head_circumference_agrees_with_an_outside_library_to_four_decimals() {
    let mut compared = 0;
    for row in rows(HEADS) {
        let [sex, age, mm, expected] = row.as_slice() else { panic!("short row {row:?}") };
        let figures = Figures {
            sex: Sex::from_code(sex).expect("a sex"),
            age_days: age.parse().expect("days"),
            head_mm: number(mm),
            weight_kg: None,
            length_mm: None,
            position: None,
            muac_mm: None,
            oedema: false,
        };
        let z = scores_of(&figures).get(Indicator::Hcz).value().expect("an age of the table");
        assert_eq!(format!("{:.4}", z.value()), *expected, "{row:?}");
        compared += 1;
    }
    assert_eq!(compared, 60);
}

fn boy(age_days: i32, mm: u16) -> Measured {
    Measured {
        sex: Sex::Male,
        age_days,
        weight: Weight::from_grams(9_000).ok(),
        length: Length::from_mm(mm).ok(),
        position: None,
        muac: Muac::from_mm(140).ok(),
        head: None,
        oedema: None,
    }
}

fn wlz(measured: &Measured) -> Score {
    scores(measured).wlz
}

#[test]
fn the_weight_for_length_table_ends_where_it_ends() {
    let outside = Score::None(NotComputable::LengthOutsideTable);
    // Under 731 days: lying, 45.0-110.0 cm. The typed length cannot go above 110.0 cm; standing, it becomes 110.7.
    assert_eq!(wlz(&boy(730, 449)), outside);
    assert!(wlz(&boy(730, 450)).value().is_some());
    assert!(wlz(&boy(730, 1100)).value().is_some());
    assert_eq!(wlz(&Measured { position: Some(Position::Standing), ..boy(730, 1094) }), outside);
    assert!(wlz(&Measured { position: Some(Position::Standing), ..boy(730, 1093) }).value().is_some());
    // From 731 days: standing, 65.0-120.0 cm.
    assert_eq!(wlz(&boy(731, 649)), outside);
    assert!(wlz(&boy(731, 650)).value().is_some());
    let tall = |mm| scores_of(&Figures { length_mm: Some(mm), ..Figures::from(&boy(731, 1000)) }).wlz;
    assert!(tall(1200.0).value().is_some());
    assert_eq!(tall(1201.0), outside);
    assert_eq!(tall(1200.5), outside);
}

#[test]
fn position_is_corrected_by_seven_millimetres_and_the_scale_changes_at_day_731() {
    let adjusted = |position, age| adjusted_length(Length::from_mm(860).expect("a length"), position, age);
    let mm = |position, age| AdjustedLength::mm(adjusted(position, age));
    assert_eq!((mm(None, 730), mm(None, 731)), (860, 860));
    assert_eq!((mm(Some(Position::Lying), 730), mm(Some(Position::Lying), 731)), (860, 853));
    assert_eq!((mm(Some(Position::Standing), 730), mm(Some(Position::Standing), 731)), (867, 860));
    assert_eq!((adjusted(None, 730).position(), adjusted(None, 731).position()), (Position::Lying, Position::Standing));
    // The corrected length goes into all three indices that use a length.
    let (lying, standing) = (scores(&boy(730, 867)), scores(&Measured { position: Some(Position::Standing), ..boy(730, 860) }));
    assert_eq!((lying.laz, lying.wlz, lying.bmiz), (standing.laz, standing.wlz, standing.bmiz));
}

#[test]
fn ages_outside_the_tables_say_so() {
    let all = |age| {
        let Scores { waz, laz, wlz, bmiz, mauz, .. } = scores(&boy(age, 700));
        [waz, laz, wlz, bmiz, mauz].map(Score::reason)
    };
    let outside = Some(NotComputable::AgeOutsideTable);
    assert_eq!(all(-1), [Some(NotComputable::BeforeDueDate); 5]);
    assert_eq!(all(0), [None, None, None, None, outside]);
    assert_eq!(all(90), [None, None, None, None, outside]);
    assert_eq!(all(91), [None; 5]);
    assert_eq!(all(1856), [None; 5]);
    assert_eq!(all(1857), [outside; 5]);
}

#[test]
fn oedema_takes_away_what_depends_on_weight_and_nothing_else() {
    let swollen = scores(&Measured { oedema: Some(true), ..boy(300, 700) });
    for score in [swollen.waz, swollen.wlz, swollen.bmiz] {
        assert_eq!(score, Score::None(NotComputable::Oedema));
    }
    assert!(swollen.laz.value().is_some() && swollen.mauz.value().is_some());
    // Not asked counts as no.
    assert_eq!(scores(&boy(300, 700)), scores(&Measured { oedema: Some(false), ..boy(300, 700) }));
}

#[test]
fn what_is_missing_is_named() {
    use NotComputable::{NoLength, NoWeight, NotMeasured};
    let reasons = |measured: Measured| {
        let all = scores(&measured);
        [all.waz, all.laz, all.wlz, all.bmiz, all.mauz, all.hcz].map(Score::reason)
    };
    let whole = boy(300, 700);
    assert_eq!(reasons(whole), [None, None, None, None, None, Some(NotMeasured)]);
    let (weight, length) = (None, None);
    assert_eq!(reasons(Measured { weight, ..whole }), [Some(NoWeight), None, Some(NoWeight), Some(NoWeight), None, Some(NotMeasured)]);
    assert_eq!(reasons(Measured { length, ..whole }), [None, Some(NoLength), Some(NoLength), Some(NoLength), None, Some(NotMeasured)]);
    let nothing = Measured { weight, length, muac: None, ..whole };
    let missing = Some(NotMeasured);
    assert_eq!(reasons(nothing), [Some(NoWeight), Some(NoLength), missing, missing, missing, missing]);
    // With oedema and no length, the length is still what is asked for.
    assert_eq!(scores(&Measured { length, oedema: Some(true), ..whole }).wlz.reason(), Some(NoLength));
}

#[test]
fn many_at_once_are_the_same_as_one_by_one() {
    let mut children = Vec::new();
    for row in rows(MEASUREMENTS) {
        let figures = figures(&row);
        let weight = figures.weight_kg.and_then(|kg| Weight::from_grams((kg * 1000.0).round() as u32).ok());
        let length = figures.length_mm.and_then(|mm| Length::from_mm(mm as u16).ok());
        if let (Some(weight), Some(length)) = (weight, length) {
            children.push(WeighedAndMeasured { sex: figures.sex, age_days: figures.age_days, weight, length });
        }
    }
    assert!(children.len() > 250, "only {} rows", children.len());
    for (child, [waz, laz, wlz]) in children.iter().zip(three_indices(&children)) {
        let alone = scores(&Measured {
            sex: child.sex,
            age_days: child.age_days,
            weight: Some(child.weight),
            length: Some(child.length),
            position: None,
            muac: None,
            head: None,
            oedema: None,
        });
        assert_eq!((waz, laz, wlz), (alone.waz, alone.laz, alone.wlz), "{child:?}");
    }
}

#[test]
fn an_index_worked_out_when_asked_is_the_one_worked_out_at_once() {
    let head = HeadCircumference::from_mm(450).ok();
    let whole = Measured { head, ..boy(300, 700) };
    let (weight, length, muac) = (None, None, None);
    for measured in [
        whole,
        boy(300, 700),
        Measured { weight, ..whole },
        Measured { length, ..whole },
        Measured { muac, head: None, weight, length, ..whole },
        Measured { oedema: Some(true), ..whole },
        Measured { position: Some(Position::Standing), ..whole },
        Measured { age_days: -1, ..whole },
        Measured { age_days: 90, ..whole },
        Measured { age_days: 1857, ..whole },
    ] {
        let (asked, at_once) = (VisitScores::of(measured), scores(&measured));
        for indicator in Indicator::ALL {
            assert_eq!(asked.get(*indicator), at_once.get(*indicator), "{} of {measured:?}", indicator.code());
        }
    }
}

//! What is drawn of published figures, and what is not.

use super::*;
use crate::ids::{AreaId, PersonId};
use crate::report::counted::alone;
use crate::report::layout::Areas;
use crate::report::rows::{ReportSlot, SlotEnd};
use crate::report::sample::{d, october, villages};
use crate::report::suppress::Reason;
use crate::report::visits;

const REASONS: [Reason; 2] = [Reason::Private, Reason::Few];

#[test]
fn what_is_withheld_is_never_a_number_whatever_the_reason() {
    for reason in REASONS {
        let hidden = Cell::Withheld(reason);
        assert_eq!(published(&hidden), Published::Withheld);
        for part in [Part::of_cells(&hidden, &Cell::Count(40)), Part::of_cells(&Cell::Count(7), &hidden), Part::of_cells(&hidden, &hidden)]
        {
            assert_eq!(part.share, Share::Private, "{part:?}");
        }
    }
    assert_eq!(published(&Cell::Count(0)), Published::Shown(0));
    assert_eq!(published(&Cell::Empty), Published::Nothing);
}

#[test]
fn a_share_is_drawn_where_the_tables_print_a_percentage_and_nowhere_else() {
    for (n, den) in [(12, 45), (0, 10), (10, 10), (1, 16), (9, 9), (0, 0), (3, 7), (49, 202)] {
        let (cells, part) = (Cell::percent(&Cell::Count(n), &Cell::Count(den)), Part::of_cells(&Cell::Count(n), &Cell::Count(den)));
        match (cells, part.share) {
            (Cell::Percent(printed), Share::Drawn { tenths, interval }) => {
                assert_eq!(tenths, printed, "{n} of {den}");
                assert_eq!(Some(interval), wilson(u32::try_from(n).expect("small"), u32::try_from(den).expect("small")));
            }
            (Cell::Withheld(_), Share::Few) => assert!(den < 10),
            (Cell::Empty, Share::Nobody) => assert_eq!(den, 0),
            other => panic!("{n} of {den}: {other:?}"),
        }
    }
    // Inside a team a share of few is drawn, with its wide interval.
    assert!(matches!(Part::inside(3, 7).share, Share::Drawn { tenths: 429, interval } if interval.high - interval.low > 0.5));
    assert_eq!(Part::inside(0, 0).share, Share::Nobody);
}

#[test]
fn measures_are_the_cells_of_the_tables() {
    let slot = |area: u128, end: SlotEnd| ReportSlot {
        area: AreaId(area),
        worker: PersonId(1),
        slot: "m06".to_owned(),
        closes: d("2025-10-20"),
        end,
    };
    let mut slots: Vec<ReportSlot> = Vec::new();
    for area in 0..4 {
        slots.extend((0..12).map(|_| slot(area, SlotEnd::OnTime)));
        slots.extend((0..6).map(|_| slot(area, SlotEnd::EarlyOrLate)));
        slots.extend((0..7).map(|_| slot(area, SlotEnd::Overdue)));
    }
    let areas = Areas::new(&villages());
    let table = alone::in_full(&visits::count(october().period, &areas, &["m06".to_owned()], &slots, &[]), &october(), &areas).remove(0);
    let tables = [table];
    let here = measures(&tables, "Ulopi").expect("published");
    assert_eq!((here.visits.n, here.visits.den), (Published::Shown(18), Published::Shown(25)));
    assert_eq!(here.visits.share, Part::inside(18, 25).share);
    assert_eq!(measures(&tables, ALL).map(|all| all.visits.n), Some(Published::Shown(72)));
    // Tables that are not there, and areas that are not published, have nothing to draw.
    assert_eq!(here.underweight, Part { n: Published::Nothing, den: Published::Nothing, share: Share::Nobody });
    assert_eq!(measures(&tables, "Lake shore"), None);
    assert_eq!(measures(&[], ALL), None);
}

#[test]
fn every_measure_has_a_code_of_its_own() {
    for measure in Measure::ALL {
        assert_eq!(Measure::from_code(measure.code()), Some(measure));
    }
    assert_eq!(Measure::from_code("rank"), None);
}

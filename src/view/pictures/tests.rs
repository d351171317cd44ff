//! A drawing says what its figures say: places invert to values, and no value stands where there is none.

use domain::calendar::Month;
use domain::report::csv_table::Cell;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Measures;
use domain::report::picture::Part;
use domain::report::picture::by_class;
use domain::report::suppress::Reason;
use scraper::Html;
use scraper::Selector;

use crate::i18n::Lang;
use crate::i18n::words;
use crate::view::pictures::trend;
use crate::view::pictures::trend::Column;
use crate::view::pictures::trend::Shown;
use crate::view::pictures::trend::Trend;

/// Numbers that look random and are the same every time.
struct Dice(u64);

impl Dice {
    fn up_to(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    fn part(&mut self) -> Part {
        let den = self.up_to(200);
        let cell = |count: u64, hide: u64| if hide == 0 { Cell::Withheld(Reason::Private) } else { Cell::Count(count) };
        let n = self.up_to(den + 1);
        Part::of_cells(&cell(n, self.up_to(6)), &cell(den, self.up_to(6)))
    }

    fn known(&mut self) -> Known {
        match self.up_to(8) {
            0 => Known::NotCounted,
            1 => Known::BeforeStart,
            2 => Known::NotPublished,
            _ => {
                let part = self.part();
                let measures =
                    Measures { visits: part, overdue: part, overdue_by_class: by_class(|_| part), underweight: part, diversity: part };
                Known::Figures(Box::new(measures))
            }
        }
    }
}

fn of(page: &Html, css: &str, name: &str) -> Vec<String> {
    page.select(&Selector::parse(css).expect("a selector")).map(|e| e.attr(name).unwrap_or_default().to_owned()).collect()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|_| panic!("{text} is no number"))
}

/// Tops of the closed bars in a path: the `V` in `M… H… V… H… z`.
fn tops(path: &str) -> Vec<f64> {
    path.split('z')
        .filter(|bar| !bar.is_empty())
        .map(|bar| number(bar.split('V').nth(1).and_then(|v| v.split('H').next()).expect("a top")))
        .collect()
}

#[test]
fn places_invert_to_values_and_gaps_stay_gaps() {
    let w = words(Lang::En);
    let mut dice = Dice(11);
    let mut seen = (0, 0, 0);
    for round in 0..1_000 {
        let months: Vec<(Month, Known)> =
            std::iter::successors(Month::new(2025, 11), |month| Some(month.next())).take(12).map(|month| (month, dice.known())).collect();
        let measure = Measure::ALL[round % 4];
        let shown = Shown { measure, class: None };
        let canvas = [trend::LARGE, trend::SMALL, trend::WALL][round % 3];
        let svg =
            Trend { w, id: "a".to_owned(), shown, months: &months, canvas, top: Some(if measure.is_of_children() { 1.0 } else { 200.0 }) }
                .drawing()
                .0;
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        let page = Html::parse_fragment(&svg);
        let (height, most) = (canvas.base - canvas.top, if measure.is_of_children() { 1.0 } else { 200.0 });
        let value = |y: f64| (canvas.base - y) / height * most;
        let columns: Vec<Column> = months.iter().map(|(_, known)| shown.column(known)).collect();
        // Half a unit of the canvas is less than half a pixel on a phone of 320 pixels.
        let half = 0.5 / height * most;
        let drawn: Vec<f64> = if measure.is_of_children() {
            of(&page, "circle", "cy").iter().map(|y| value(number(y))).collect()
        } else {
            of(&page, "path.bar-done", "d").iter().flat_map(|d| tops(d)).map(value).collect()
        };
        let wanted: Vec<f64> = columns
            .iter()
            .filter_map(|column| match column {
                Column::Bar(n, _) => Some(f64::from(u32::try_from(*n).expect("small"))),
                Column::Dot(share, _) => Some(*share),
                Column::Gap(_) => None,
            })
            .collect();
        assert_eq!(drawn.len(), wanted.len(), "{columns:?}");
        for (drawn, wanted) in drawn.iter().zip(&wanted) {
            // The lowest bar is a line on the ground, a little over one unit high.
            let least = if measure.is_of_children() { 0.0 } else { 1.2 / height * most };
            assert!((drawn - wanted.max(least)).abs() <= half, "{drawn} for {wanted}");
        }
        let runs = columns.chunk_by(|a, b| a == b).filter(|run| matches!(run[0], Column::Gap(_))).count();
        assert_eq!(of(&page, "rect.gap", "x").len(), runs, "{columns:?}");
        assert_eq!(of(&page, "text.word", "x").len(), runs, "a gap has a word");
        // A line joins only months side by side that both have a value.
        let pieces = columns.split(|column| matches!(column, Column::Gap(_))).filter(|piece| piece.len() > 1).count();
        assert_eq!(of(&page, "path.through", "d").len(), if measure.is_of_children() { pieces } else { 0 });
        seen = (seen.0 + wanted.len(), seen.1 + runs, seen.2 + pieces);
    }
    assert!(seen.0 > 3_000 && seen.1 > 1_000 && seen.2 > 500, "{seen:?}");
}

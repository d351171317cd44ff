//! Tests of the growth chart: places, gaps, scales, and that no series can break the drawing.

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;
use proptest::prelude::*;
use scraper::ElementRef;
use scraper::Html;
use scraper::Selector;

fn point(age_days: i32, value: Option<f64>) -> Point {
    Point { age_days, value, error: None, age: format!("{age_days} days"), date: "20 November".to_owned(), said: format!("{value:?}") }
}

fn chart(points: Vec<Point>) -> GrowthChart<'static> {
    let months = axis_months(points.iter().map(|p| p.age_days).max().unwrap_or(0));
    GrowthChart {
        w: words(Lang::En),
        id: "weight",
        title: "Oku: weight for age".to_owned(),
        finding: "Lost 100 g in 36 days.".to_owned(),
        unit: "kg".to_owned(),
        value_name: "Weight".to_owned(),
        points,
        bars: None,
        curves: curves(Indicator::Waz, Sex::Male, months),
        closer: None,
    }
}

fn drawn(chart: &GrowthChart<'_>) -> Html {
    Html::parse_fragment(&chart.render().0)
}

fn all<'a>(page: &'a Html, css: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(css).expect("a selector")).collect()
}

fn number(element: ElementRef<'_>, name: &str) -> f64 {
    element.value().attr(name).expect("the attribute").parse().expect("a number")
}

/// The line through the printed ticks of an axis: from a place back to a value, as a reader's eye does it.
fn axis(page: &Html, css: &str, place: &str, shift: f64) -> impl Fn(f64) -> f64 {
    let ticks: Vec<(f64, f64)> =
        all(page, css).into_iter().map(|t| (number(t, place) - shift, t.text().collect::<String>().parse().expect("a number"))).collect();
    let ((p0, v0), (p1, v1)) = (ticks[0], ticks[ticks.len() - 1]);
    move |p| v0 + (p - p0) / (p1 - p0) * (v1 - v0)
}

#[test]
fn every_point_reads_back_to_its_age_and_value() {
    let values = [(0, 2.9), (35, 4.25), (83, 5.7), (180, 6.9), (318, 7.5), (354, 7.4)];
    let page = drawn(&chart(values.iter().map(|&(day, kg)| point(day, Some(kg))).collect()));
    let (month_at, kg_at) = (axis(&page, "text.x", "x", 0.0), axis(&page, "text.y", "y", 4.5));
    let circles = all(&page, "circle.pt");
    assert_eq!(circles.len(), values.len());
    // Half a pixel in the units of each axis.
    let (half_kg, half_month) = ((kg_at(0.5) - kg_at(0.0)).abs(), (month_at(0.5) - month_at(0.0)).abs());
    for (circle, (day, kg)) in circles.into_iter().zip(values) {
        let (x, y) = (month_at(number(circle, "cx")), kg_at(number(circle, "cy")));
        assert!((y - kg).abs() < half_kg, "{kg} kg drawn at {y}");
        assert!((x - f64::from(day) / 30.4375).abs() < half_month, "day {day} drawn at {x} months");
    }
}

#[test]
fn a_bar_reads_back_to_how_far_another_weighing_could_have_lain() {
    let with_error = |day, kg, error| Point { error, ..point(day, kg) };
    let points = vec![
        with_error(30, Some(4.0), Some(0.1)),
        with_error(60, None, Some(0.1)),
        with_error(90, Some(4.5), Some(0.2)),
        with_error(120, Some(4.6), None),
        with_error(150, Some(6.5), Some(0.1)),
    ];
    let whole = drawn(&chart(points.clone()));
    assert!(all(&whole, "path.err").len() < 2, "on the whole chart 100 g are less than a dot");
    let page = drawn(&GrowthChart { closer: Some((20, 130)), ..chart(points) });
    let (month_at, kg_at) = (axis(&page, "text.x", "x", 0.0), axis(&page, "text.y", "y", 4.5));
    let half_kg = (kg_at(0.5) - kg_at(0.0)).abs();
    let bars: Vec<(f64, f64, f64)> = all(&page, "path.err")
        .into_iter()
        .map(|bar| {
            // M x low V high M ...
            let d = bar.value().attr("d").expect("a path");
            let (x, rest) = d[1..].split_once(' ').expect("a place");
            let (low, rest) = rest.split_once('V').expect("a bar");
            let (high, _) = rest.split_once('M').expect("caps");
            let number = |text: &str| text.parse::<f64>().expect("a number");
            (month_at(number(x)), kg_at(number(low)), kg_at(number(high)))
        })
        .collect();
    assert_eq!(bars.len(), 2, "no bar where nothing was measured, without an error, or outside the days shown");
    for ((month, low, high), (day, kg, error)) in bars.into_iter().zip([(30.0, 4.0, 0.1), (90.0, 4.5, 0.2)]) {
        assert!((month - day / 30.4375).abs() < 0.02, "{month}");
        assert!((low - (kg - error)).abs() < half_kg && (high - (kg + error)).abs() < half_kg, "{low} to {high} for {kg} ± {error}");
    }
    assert_eq!(all(&page, "circle.pt").len(), 3, "only what was measured in those days");
}

#[test]
fn a_closer_chart_cuts_the_curves_where_they_leave_it() {
    let points = vec![Point { error: Some(0.1), ..point(200, Some(7.0)) }, Point { error: Some(0.1), ..point(240, Some(6.95)) }];
    let page = drawn(&GrowthChart { closer: Some((190, 250)), ..chart(points) });
    let mut drawn_curves = 0;
    for css in ["polyline.z0", "polyline.z1", "polyline.z2", "polyline.z3"] {
        for curve in all(&page, css) {
            drawn_curves += 1;
            for place in curve.value().attr("points").expect("points").split(' ') {
                let (x, y) = place.split_once(',').expect("a place");
                let (x, y): (f64, f64) = (x.parse().expect("x"), y.parse().expect("y"));
                assert!((LEFT - 0.1..=RIGHT + 0.1).contains(&x) && (TOP - 0.1..=BOTTOM + 0.1).contains(&y), "{css} runs out at {place}");
            }
        }
    }
    assert!(drawn_curves > 0, "the curve -1 of boys passes 7 kg there");
}

#[test]
fn a_missing_weight_is_a_gap() {
    let page = drawn(&chart(vec![
        point(0, Some(3.0)),
        point(30, Some(4.0)),
        point(60, None),
        point(90, Some(5.5)),
        point(120, Some(6.0)),
        point(150, None),
        point(170, Some(6.5)),
    ]));
    let lines: Vec<usize> =
        all(&page, "polyline.kid").iter().map(|l| l.value().attr("points").unwrap_or_default().split(' ').count()).collect();
    assert_eq!(lines, [2, 2], "the line must break at each missing weight");
    assert_eq!(all(&page, "circle.pt").len(), 5);
    assert_eq!(all(&page, "circle.last").len(), 1);
}

#[test]
fn the_table_has_every_visit_also_the_one_without_a_weight() {
    let page = drawn(&chart(vec![point(0, Some(3.0)), point(30, None), point(60, Some(5.0))]));
    let rows = all(&page, "tbody tr");
    assert_eq!(rows.len(), 3);
    assert!(rows[1].text().collect::<String>().contains("not measured"));
}

#[test]
fn the_axis_is_the_shortest_that_holds_the_child_plus_a_month() {
    for (days, months) in [(0, 6), (152, 6), (153, 12), (334, 12), (336, 18), (500, 18), (520, 24), (731, 24), (900, 24)] {
        assert_eq!(axis_months(days), months, "{days} days");
    }
}

#[test]
fn curves_lie_closer_where_they_bend_and_reach_the_end() {
    for months in AXES {
        let curves = curves(Indicator::Waz, Sex::Female, months);
        assert_eq!(curves.iter().map(|c| c.z).collect::<Vec<_>>(), [-3, -2, -1, 0, 1, 2, 3]);
        for curve in &curves {
            let early = curve.points.iter().filter(|(day, _)| *day < 30.0).count();
            assert!(early >= 14, "{early} points in the first month");
            let end = curve.points.last().map_or(0.0, |(day, _)| *day);
            assert!((end - f64::from(months) * 30.44).abs() < 1.5, "{months} months end at day {end}");
        }
        assert!(curves.windows(2).all(|pair| pair[0].points.iter().zip(&pair[1].points).all(|(low, high)| low.1 < high.1)));
    }
}

#[test]
fn curves_are_told_apart_by_stroke_and_label() {
    let page = drawn(&chart(vec![point(100, Some(6.0))]));
    let labels: Vec<String> = all(&page, "svg > text:not(.sub)").iter().map(|t| t.text().collect()).collect();
    assert_eq!(labels, ["−3", "−2", "−1", "0", "+1", "+2", "+3"]);
    for (class, count) in [("z0", 1), ("z1", 2), ("z2", 2), ("z3", 2)] {
        assert_eq!(all(&page, &format!("polyline.{class}")).len(), count);
    }
}

#[test]
fn it_says_what_it_shows_to_those_who_do_not_see_it() {
    let page = drawn(&chart(vec![point(100, Some(6.0))]));
    let svg = all(&page, "svg")[0];
    for id in svg.value().attr("aria-labelledby").expect("labels").split(' ') {
        assert_eq!(all(&page, &format!("#{id}")).len(), 1, "{id}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_series_breaks_the_drawing(
        series in prop::collection::vec((-40..900_i32, prop::option::of(prop::num::f64::ANY)), 0..40)
    ) {
        let html = chart(series.into_iter().map(|(day, value)| point(day, value.map(|v| if v.is_finite() { v % 30.0 } else { v }))).collect());
        let page = drawn(&html);
        for circle in all(&page, "circle") {
            let (x, y) = (number(circle, "cx"), number(circle, "cy"));
            prop_assert!((LEFT - 0.1..=RIGHT + 0.1).contains(&x) && (TOP - 0.1..=BOTTOM + 0.1).contains(&y), "{x} {y}");
        }
        let svg = all(&page, "svg")[0].html();
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        prop_assert!(all(&page, "text.y").len() <= 21);
    }
}

//! Growth on a child's page: the finding in a line, the chart of weight, the chart of length, and every number in one table.

use chrono::NaiveDate;
use domain::growth::Indicator;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::i18n::scale;
use crate::view::chart;
use crate::view::chart::GrowthChart;
use crate::view::chart::Point;
use crate::view::child::ChildPage;
use crate::view::parts::Cell;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::Table;
use crate::view::parts::details;
use crate::view::parts::note;

/// The closer chart shows so many weights at most, none older than so many days before the last.
const CLOSER: usize = 4;
const CLOSER_DAYS: i32 = 122;

/// What was measured on a day.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredOn {
    /// The day.
    pub on: NaiveDate,
    /// The day of birth: no visit.
    pub at_birth: bool,
    /// Age in days as the curves count it, corrected for early birth.
    pub growth_days: i32,
    /// Weight in grams.
    pub weight_g: Option<u32>,
    /// Length in mm.
    pub length_mm: Option<u16>,
    /// Arm in mm.
    pub arm_mm: Option<u16>,
    /// Weight for age, length for age, weight for length, in hundredths of z.
    pub z: [Option<i32>; 3],
    /// A weight to be taken again.
    pub weight_suspect: bool,
    /// A length to be taken again.
    pub length_suspect: bool,
    /// Something unusual was measured again and kept.
    pub confirmed: bool,
    /// How far two careful measurements may lie apart on that day.
    pub error: MeasuringError,
}

/// How far two careful measurements of one child lie apart by error alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MeasuringError {
    /// Weight, grams.
    pub weight_g: u16,
    /// Length, mm.
    pub length_mm: u16,
    /// Arm, mm.
    pub arm_mm: u16,
}

/// The part of the page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        h2 { (w.say("child-growth")) }
        @if page.before_due_date() {
            (note(NoteWeight::Plain, Icon::Info, &html! { p { (w.say("child-before-due-date")) } }))
        } @else if page.measured.iter().all(|m| m.weight_g.is_none()) {
            p { (w.say("child-no-weight")) }
        } @else {
            (weight_chart(w, page).figure())
            (last_weights(w, page))
            @if page.measured.iter().filter(|m| m.length_mm.is_some()).count() > 1 {
                (details(&w.say("child-length-chart"), false, &length_chart(w, page).figure()))
            }
        }
        @if !page.measured.is_empty() { (details(&w.say("child-numbers"), false, &numbers(w, page))) }
    }
}

/// The last weights closer up: open where they hardly rose or fell and the error of weighing matters, else within one tap.
fn last_weights(w: &Words, page: &ChildPage<'_>) -> Markup {
    let Some((change, tolerance)) = last_change(page) else { return Markup::default() };
    let said = html! { p { (scale::beside_change(w, change, tolerance)) } };
    match closer(w, page) {
        Some(closer) if change <= tolerance => html! { h3 { (w.say("scale-closer")) } (closer.figure()) },
        Some(closer) => html! { (said) (details(&w.say("scale-closer"), false, &closer.figure())) },
        None => said,
    }
}

fn weight_chart<'a>(w: &'a Words, page: &ChildPage<'_>) -> GrowthChart<'a> {
    let title = w.say_with("child-chart-title", args!["name" => page.who.name, "index" => codes::indicator(w, Indicator::Waz)]);
    let points = points(
        w,
        page,
        |m| m.weight_g.filter(|_| !m.weight_suspect).map(|g| f64::from(g) / 1000.0),
        |m| m.weight_g.map(|g| format::kg(w, i64::from(g))),
        |m| f64::from(m.error.weight_g) / 1000.0,
    );
    let bars = largest(page, |m| m.error.weight_g).map(|g| w.say_with("scale-bars-weight", args!["error" => format::g(w, i64::from(g))]));
    chart_of(w, page, "weight", Indicator::Waz, (title, finding(w, page)), bars, points)
}

fn length_chart<'a>(w: &'a Words, page: &ChildPage<'_>) -> GrowthChart<'a> {
    let title = w.say_with("child-chart-title", args!["name" => page.who.name, "index" => codes::indicator(w, Indicator::Laz)]);
    let points = points(
        w,
        page,
        |m| m.length_mm.filter(|_| !m.length_suspect).map(|mm| f64::from(mm) / 10.0),
        |m| m.length_mm.map(|mm| format::cm(w, i64::from(mm))),
        |m| f64::from(m.error.length_mm) / 10.0,
    );
    let bars =
        largest(page, |m| m.error.length_mm).map(|mm| w.say_with("scale-bars-length", args!["error" => format::cm(w, i64::from(mm))]));
    let last = page.measured.iter().rev().find(|m| m.length_mm.is_some());
    let finding = last.and_then(|m| m.z[1]).map_or_else(String::new, |z| band(w, z));
    chart_of(w, page, "length", Indicator::Laz, (title, finding), bars, points)
}

fn chart_of<'a>(
    w: &'a Words,
    page: &ChildPage<'_>,
    id: &'a str,
    indicator: Indicator,
    (title, finding): (String, String),
    bars: Option<String>,
    points: Vec<Point>,
) -> GrowthChart<'a> {
    let oldest = points.iter().map(|p| p.age_days).max().unwrap_or(0);
    let unit = w.say(if indicator == Indicator::Laz { "child-cm" } else { "child-kg" });
    GrowthChart {
        w,
        id,
        title,
        finding,
        unit,
        value_name: w.say("common-chart-value"),
        points,
        bars,
        curves: chart::curves(indicator, page.who.sex, chart::axis_months(oldest)),
        closer: None,
    }
}

fn points(
    w: &Words,
    page: &ChildPage<'_>,
    value: impl Fn(&MeasuredOn) -> Option<f64>,
    said: impl Fn(&MeasuredOn) -> Option<String>,
    error: impl Fn(&MeasuredOn) -> f64,
) -> Vec<Point> {
    page.measured
        .iter()
        .map(|m| Point {
            age_days: m.growth_days,
            value: value(m),
            error: value(m).map(|_| error(m)),
            age: format::age(w, page.who.born, m.on),
            date: format::day_short(w, m.on),
            said: said(m).unwrap_or_default(),
        })
        .collect()
}

/// The last weights so large that the error of weighing can be seen beside their differences.
fn closer<'a>(w: &'a Words, page: &ChildPage<'_>) -> Option<GrowthChart<'a>> {
    let weights = weights(page);
    let last = weights.last()?.growth_days;
    let near: Vec<&&MeasuredOn> = weights.iter().rev().take(CLOSER).filter(|m| m.growth_days >= (last - CLOSER_DAYS).max(0)).collect();
    let first = near.last()?.growth_days;
    if near.len() < 2 {
        return None;
    }
    let (change, tolerance) = last_change(page)?;
    let title = w.say_with("scale-closer-title", args!["name" => page.who.name]);
    let finding = scale::beside_change(w, change, tolerance);
    let whole = weight_chart(w, page);
    Some(GrowthChart { id: "closer", title, finding, closer: Some((first - 10, last + 10)), ..whole })
}

/// The greatest error of all points; a programme that changed its scale has points of two kinds.
fn largest(page: &ChildPage<'_>, error: impl Fn(&MeasuredOn) -> u16) -> Option<u16> {
    page.measured.iter().map(error).max().filter(|error| *error > 0)
}

/// The weights that count, oldest first.
fn weights<'a>(page: &'a ChildPage<'_>) -> Vec<&'a MeasuredOn> {
    page.measured.iter().filter(|m| m.weight_g.is_some() && !m.weight_suspect).collect()
}

fn grams_since(before: &MeasuredOn, m: &MeasuredOn) -> i64 {
    i64::from(m.weight_g.unwrap_or(0)) - i64::from(before.weight_g.unwrap_or(0))
}

/// Grams between the last two weights, and how far two weighings may lie apart.
fn last_change(page: &ChildPage<'_>) -> Option<(i64, i64)> {
    match weights(page).as_slice() {
        [.., before, last] => Some((grams_since(before, last), i64::from(last.error.weight_g))),
        _ => None,
    }
}

/// The chart of weight alone, for a page that says what it shows in words of its own.
pub(in crate::view) fn drawing(w: &Words, page: &ChildPage<'_>, said: &str) -> Markup {
    GrowthChart { finding: said.to_owned(), ..weight_chart(w, page) }.bare()
}

/// The finding in words: what changed since the last weight, and between which lines the last one lies.
pub(super) fn finding(w: &Words, page: &ChildPage<'_>) -> String {
    let weights = weights(page);
    let Some(last) = weights.last() else { return w.say("child-no-weight") };
    let change = match weights.len().checked_sub(2).and_then(|at| weights.get(at)) {
        Some(before) => changed(w, before, last),
        None => w.say_with("child-first-weight", args!["weight" => format::kg(w, i64::from(last.weight_g.unwrap_or(0)))]),
    };
    match last.z[0] {
        Some(z) => w.say_with("child-finding", args!["change" => change, "band" => band(w, z)]),
        None => change,
    }
}

fn changed(w: &Words, before: &MeasuredOn, last: &MeasuredOn) -> String {
    let grams = grams_since(before, last);
    let days = domain::calendar::days_between(before.on, last.on).max(0);
    let weight = format::weight_change(w, grams.abs());
    match grams {
        0 => w.say_with("child-same-weight", args!["count" => days]),
        lost if lost < 0 => w.say_with("child-lost", args!["weight" => weight, "count" => days]),
        _ => w.say_with("child-gained", args!["weight" => weight, "count" => days]),
    }
}

/// `Now between −2 and −1.`
fn band(w: &Words, z_hundredths: i32) -> String {
    let low = z_hundredths.div_euclid(100);
    let line = |z: i32| match z {
        0 => "0".to_owned(),
        up if up > 0 => format!("+{up}"),
        down => format!("−{}", down.unsigned_abs()),
    };
    match low {
        below if below < -3 => w.say("child-band-below"),
        above if above >= 3 => w.say("child-band-above"),
        // On a line it is at that line, not between two.
        exact if z_hundredths == exact * 100 => w.say_with("child-band-on", args!["line" => line(exact)]),
        low => w.say_with("child-band", args!["low" => line(low), "high" => line(low + 1)]),
    }
}

/// Every number, newest first.
fn numbers(w: &Words, page: &ChildPage<'_>) -> Markup {
    let table = Table::scrolling(w.say("child-numbers-caption"))
        .column(w.say("common-chart-date"), false)
        .column(w.say("common-chart-age"), false)
        .column(w.say("child-kg"), true)
        .column(w.say("scale-change"), true)
        .column(w.say("child-cm"), true)
        .column(w.say("child-arm-mm"), true)
        .column(w.say("child-waz"), true)
        .column(w.say("child-laz"), true)
        .column(w.say("child-wlz"), true)
        .column(w.say("child-remark"), false);
    page.measured.iter().rev().fold(table, |table, m| table.row(row(w, page, m))).render()
}

fn plus_minus(w: &Words, value: &str, error: &str) -> String {
    w.say_with("scale-plus-minus", args!["value" => value, "error" => error])
}

/// The change since the weight before, and whether it may be the scale alone.
fn change_to(w: &Words, page: &ChildPage<'_>, m: &MeasuredOn) -> Option<String> {
    let weights = weights(page);
    let at = weights.iter().position(|other| std::ptr::eq(*other, m))?;
    let grams = grams_since(weights.get(at.checked_sub(1)?)?, m);
    let change = scale::signed_weight(w, grams);
    let may_be = domain::follow_up::may_be_error(grams, i64::from(m.error.weight_g));
    Some(if may_be { w.say_with("scale-change-may-be", args!["change" => change]) } else { change })
}

fn row(w: &Words, page: &ChildPage<'_>, m: &MeasuredOn) -> Vec<Cell> {
    let absent = || "–".to_owned();
    let mut cells =
        vec![
            Cell::text(&format::day_short(w, m.on)),
            Cell::text(&format::age(w, page.who.born, m.on)),
            Cell::number(&m.weight_g.map_or_else(absent, |g| {
                plus_minus(w, &format::kg_bare(w, i64::from(g)), &format::kg_bare(w, i64::from(m.error.weight_g)))
            })),
            Cell::number(&change_to(w, page, m).unwrap_or_else(absent)),
            Cell::number(&m.length_mm.map_or_else(absent, |mm| {
                plus_minus(w, &format::cm_bare(w, i64::from(mm)), &format::cm_bare(w, i64::from(m.error.length_mm)))
            })),
            Cell::number(&m.arm_mm.map_or_else(absent, |mm| plus_minus(w, &mm.to_string(), &m.error.arm_mm.to_string()))),
        ];
    cells.extend(m.z.iter().map(|z| Cell::number(&z.map_or_else(absent, |z| format::z(w, z)))));
    let remark = match (m.at_birth, m.weight_suspect || m.length_suspect, m.confirmed) {
        (true, ..) => w.say("child-at-birth"),
        (_, true, _) => w.say("child-suspect"),
        (_, false, true) => w.say("child-confirmed"),
        (_, false, false) => String::new(),
    };
    cells.push(Cell::text(&remark));
    cells
}

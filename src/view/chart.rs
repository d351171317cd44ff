//! A growth chart as inline drawing: curves of the standard, the child's line, and the same numbers in a table.
//! Knows scales and strokes; what is normal it does not know.

use domain::child::Sex;
use domain::growth::Indicator;
use domain::growth::reference_value;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::i18n::Words;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::details;

/// Mean length of a calendar month in days, for the ticks of the axis.
const DAYS_A_MONTH: f64 = 30.4375;
/// Lengths of the axis in months: the shortest that holds the child plus a month.
const AXES: [u32; 4] = [6, 12, 18, 24];

const LEFT: f64 = 34.0;
const RIGHT: f64 = 324.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = 296.0;
/// Height from which a bar of error shows beside its dot.
const BAR_FROM: f64 = 6.0;

/// One visit on the chart.
#[derive(Debug, Clone)]
pub struct Point {
    /// Age in days, corrected as the curves are.
    pub age_days: i32,
    /// The measurement in the unit of the chart; none: a gap in the line.
    pub value: Option<f64>,
    /// How far another careful measurement could have lain, up or down, in the unit of the chart.
    pub error: Option<f64>,
    /// The age in words, for the table.
    pub age: String,
    /// The date in words, for the table.
    pub date: String,
    /// The measurement in words, for the table.
    pub said: String,
}

/// One curve of the standard.
#[derive(Debug, Clone)]
pub struct Curve {
    /// Its z: −3 to 3.
    pub z: i8,
    /// Age in days and value, by age.
    pub points: Vec<(f64, f64)>,
}

/// A growth chart.
pub struct GrowthChart<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// Sets the ids of one chart apart from another's on the page.
    pub id: &'a str,
    /// What it shows: `Oku: weight for age`.
    pub title: String,
    /// The finding in words.
    pub finding: String,
    /// The unit, over the axis.
    pub unit: String,
    /// The head of the table's last column.
    pub value_name: String,
    /// The visits by age.
    pub points: Vec<Point>,
    /// What the bars at the points say; none: no point has a bar.
    pub bars: Option<String>,
    /// The curves.
    pub curves: Vec<Curve>,
    /// Shows only these days of age, first and last, and only the weights between them, so large that bars can be read.
    pub closer: Option<(i32, i32)>,
}

/// The length of the axis in months for a child of this age.
#[must_use]
pub fn axis_months(oldest_days: i32) -> u32 {
    let needed = f64::from(oldest_days.max(0)) / DAYS_A_MONTH + 1.0;
    AXES.into_iter().find(|months| f64::from(*months) >= needed).unwrap_or(24)
}

/// The curves −3 to 3 of an index by age, over an axis of this length. Points lie closer where the curves bend: every day
/// in the first two weeks, weekly to three months, then twice a month.
#[must_use]
pub fn curves(indicator: Indicator, sex: Sex, months: u32) -> Vec<Curve> {
    let last = i32::try_from(months).unwrap_or(24).min(24) * 3044 / 100;
    let mut days: Vec<i32> = (0..14).chain((14..91).step_by(7)).chain((91..last).step_by(15)).take_while(|day| *day < last).collect();
    days.push(last);
    (-3..=3)
        .map(|z| Curve {
            z,
            points: days
                .iter()
                .filter_map(|day| reference_value(indicator, sex, *day, f64::from(z)).map(|value| (f64::from(*day), value)))
                .collect(),
        })
        .collect()
}

/// From ages and values to places on the canvas.
struct Scale {
    /// Length of the whole axis.
    months: u32,
    /// First and last day shown.
    from: f64,
    to: f64,
    least: f64,
    most: f64,
    step: f64,
}

impl Scale {
    fn of(chart: &GrowthChart<'_>) -> Self {
        let months = axis_months(chart.points.iter().map(|p| p.age_days).max().unwrap_or(0));
        let (from, to) = chart
            .closer
            .filter(|(from, to)| from < to)
            .map_or((0.0, f64::from(months) * DAYS_A_MONTH), |(from, to)| (f64::from(from), f64::from(to)));
        let inside = |day: f64| (from..=to).contains(&day);
        // Closer, the child's own weights fill the height; the curves pass through where they do.
        let curves = if chart.closer.is_some() { &[][..] } else { &chart.curves[..] };
        let drawn = curves.iter().flat_map(|c| &c.points).filter(|(day, _)| inside(*day)).map(|(_, value)| *value);
        let own = chart.points.iter().filter(|p| inside(f64::from(p.age_days))).filter_map(ends).flatten();
        let (least, most) = drawn.chain(own).filter(|v| v.is_finite()).fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)));
        let (least, most) = if least <= most { (least, most) } else { (0.0, 1.0) };
        let step = step_for(most - least);
        let least = (least / step).floor() * step;
        Self { months, from, to, least, most: ((most / step).ceil() * step).max(least + step), step }
    }

    fn x(&self, days: f64) -> f64 {
        LEFT + (days - self.from) / (self.to - self.from) * (RIGHT - LEFT)
    }

    fn y(&self, value: f64) -> f64 {
        BOTTOM - (value - self.least) / (self.most - self.least) * (BOTTOM - TOP)
    }

    fn holds(&self, days: i32) -> bool {
        days >= 0 && (self.from..=self.to).contains(&f64::from(days))
    }

    /// Months of age with a line.
    fn month_lines(&self) -> Vec<u32> {
        let whole = self.from <= 0.0 && self.months > 6;
        let step = if !whole {
            1
        } else if self.months > 12 {
            3
        } else {
            self.months / 6
        };
        let inside = |month: &u32| (self.from..=self.to).contains(&(f64::from(*month) * DAYS_A_MONTH));
        (0..=self.months.max(24)).filter(|month| month % step == 0).filter(inside).collect()
    }

    /// The part of a curve inside the days and values shown, cut where it leaves them.
    fn shown(&self, curve: &Curve) -> Vec<(f64, f64)> {
        let by_day = |(a, b): ((f64, f64), (f64, f64)), day: f64| (day, a.1 + (b.1 - a.1) * (day - a.0) / (b.0 - a.0));
        let by_value = |(a, b): ((f64, f64), (f64, f64)), value: f64| (a.0 + (b.0 - a.0) * (value - a.1) / (b.1 - a.1), value);
        let finite: Vec<(f64, f64)> = curve.points.iter().copied().filter(|(day, value)| day.is_finite() && value.is_finite()).collect();
        let mut shown: Vec<(f64, f64)> = Vec::new();
        for piece in finite.windows(2) {
            let (mut a, mut b) = (piece[0], piece[1]);
            // Curves run on in days; a piece of no length has nothing to cut.
            if b.0 <= a.0 || b.0 < self.from || a.0 > self.to {
                continue;
            }
            if a.0 < self.from {
                a = by_day((a, b), self.from);
            }
            if b.0 > self.to {
                b = by_day((a, b), self.to);
            }
            if a.1.max(b.1) < self.least || a.1.min(b.1) > self.most {
                continue;
            }
            for edge in [self.least, self.most] {
                if (a.1 < edge) != (b.1 < edge) && a.1 != b.1 {
                    let cut = by_value((a, b), edge);
                    let outside = |p: (f64, f64)| p.1 < self.least || p.1 > self.most;
                    if outside(a) {
                        a = cut
                    } else if outside(b) {
                        b = cut
                    }
                }
            }
            if shown.last() != Some(&a) {
                shown.push(a);
            }
            shown.push(b);
        }
        shown
    }

    fn ticks(&self) -> Vec<f64> {
        // At most nine steps, by the choice of the step.
        (0..=20).map(|n| self.least + f64::from(n) * self.step).take_while(|v| *v <= self.most + self.step / 2.0).collect()
    }
}

/// A round step that makes at most nine lines.
fn step_for(range: f64) -> f64 {
    [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0].into_iter().find(|step| range / step <= 7.0).unwrap_or(range.max(1.0))
}

/// The value of a point that can be drawn: a number, measured.
fn drawable(point: &Point) -> Option<f64> {
    point.value.filter(|v| v.is_finite() && point.age_days >= 0)
}

/// Where the bar of a point ends below and above; without an error both are the point.
fn ends(point: &Point) -> Option<[f64; 2]> {
    let (value, error) = (drawable(point)?, point.error.filter(|e| e.is_finite()).map_or(0.0, f64::abs));
    Some([value - error, value + error])
}

/// A place on the canvas, to a tenth of its unit.
fn at(place: f64) -> String {
    format!("{place:.1}")
}

impl GrowthChart<'_> {
    /// The child's line in pieces: a visit without a measurement parts it.
    fn pieces(&self, scale: &Scale) -> Vec<Vec<(f64, f64)>> {
        let mut points: Vec<&Point> = self.points.iter().filter(|p| scale.holds(p.age_days)).collect();
        points.sort_by_key(|p| p.age_days);
        let mut pieces = vec![Vec::new()];
        for point in points {
            match (drawable(point), pieces.last_mut()) {
                (Some(value), Some(piece)) => piece.push((scale.x(f64::from(point.age_days)), scale.y(value))),
                _ => pieces.push(Vec::new()),
            }
        }
        pieces.retain(|piece| !piece.is_empty());
        pieces
    }

    fn grid(&self, scale: &Scale) -> Markup {
        html! {
            @for value in scale.ticks() {
                path.grid d={ "M" (LEFT) " " (at(scale.y(value))) "H" (RIGHT) } {}
                text.sub.y x=(LEFT - 6.0) y=(at(scale.y(value) + 4.5)) text-anchor="end" { (tick(value, scale.step)) }
            }
            @for month in scale.month_lines() {
                @let x = at(scale.x(f64::from(month) * DAYS_A_MONTH));
                path.grid d={ "M" (x) " " (BOTTOM) "V" (TOP) } {}
                text.sub.x x=(x) y="313" text-anchor="middle" { (month) }
            }
            path.axis d={ "M" (LEFT) " " (TOP) "V" (BOTTOM) "H" (RIGHT) } fill="none" {}
        }
    }

    fn curve(scale: &Scale, curve: &Curve) -> Markup {
        let inside = scale.shown(curve);
        html! {
            @if inside.len() > 1 {
                polyline class={ "z" (curve.z.unsigned_abs().min(3)) } points=(line(inside.iter().map(|(day, v)| (scale.x(*day), scale.y(*v))))) {}
            }
            @match inside.last() {
                // A curve that leaves through the top is named there.
                Some((day, _)) if *day < scale.to - 1.0 => { text x=(at(scale.x(*day))) y=(TOP - 5.0) text-anchor="middle" { (z_name(curve.z)) } }
                Some((_, last)) => { text x="329" y=(at(scale.y(*last) + 4.5)) { (z_name(curve.z)) } }
                None => {}
            }
        }
    }

    /// Places of the bars of error, bottom and top, that are taller than the dots; a smaller one would be hidden behind its dot.
    fn errors(&self, scale: &Scale) -> Vec<(f64, [f64; 2])> {
        let measured = self.points.iter().filter(|p| scale.holds(p.age_days) && p.error.is_some());
        let bars = measured.filter_map(|p| Some((scale.x(f64::from(p.age_days)), ends(p)?.map(|value| scale.y(value)))));
        bars.filter(|(_, [low, high])| low - high >= BAR_FROM).collect()
    }

    fn bars(&self, scale: &Scale) -> Markup {
        html! {
            @for (x, [low, high]) in self.errors(scale) {
                @let (left, x, low, high) = (at(x - 8.0), at(x), at(low), at(high));
                path.err d={ "M" (x) " " (low) "V" (high) "M" (left) " " (low) "h16M" (left) " " (high) "h16" } {}
            }
        }
    }

    fn drawing(&self, scale: &Scale) -> Markup {
        let pieces = self.pieces(scale);
        let count: usize = pieces.iter().map(Vec::len).sum();
        html! {
            svg.chart viewBox="0 0 360 330" role="img" aria-labelledby={ (self.id) "-title " (self.id) "-desc" } {
                title id={ (self.id) "-title" } { (self.title) }
                desc id={ (self.id) "-desc" } { (self.finding) }
                (self.grid(scale))
                @for curve in &self.curves { (Self::curve(scale, curve)) }
                (self.bars(scale))
                @for piece in &pieces { @if piece.len() > 1 { polyline.kid points=(line(piece.iter().copied())) {} } }
                @for (n, (x, y)) in pieces.iter().flatten().enumerate() {
                    @if n + 1 == count {
                        circle.pt.last cx=(at(*x)) cy=(at(*y)) r="5.5" {}
                    } @else {
                        circle.pt cx=(at(*x)) cy=(at(*y)) r="3.5" {}
                    }
                }
                text.sub x="179" y="328" text-anchor="middle" { (self.w.say("common-chart-months")) }
                text.sub x=(LEFT - 6.0) y="11" text-anchor="end" { (self.unit) }
            }
        }
    }

    /// The chart with its caption and key, for a page that has the numbers in a table of its own.
    #[must_use]
    pub fn figure(&self) -> Markup {
        let scale = Scale::of(self);
        let bars = self.bars.as_ref().filter(|_| !self.errors(&scale).is_empty());
        html! {
            figure {
                figcaption { (self.finding) }
                (self.drawing(&scale))
            }
            // A closer chart stands below a whole one that has said the rest.
            p.quiet { @if self.closer.is_none() { (self.w.say("common-chart-note")) " " } @if let Some(bars) = bars { (bars) } }
        }
    }

    /// The drawing alone.
    #[must_use]
    pub fn bare(&self) -> Markup {
        html! { figure { (self.drawing(&Scale::of(self))) } }
    }

    fn numbers(&self) -> Markup {
        let w = self.w;
        let table = Table::scrolling(self.title.as_str())
            .column(w.say("common-chart-age"), false)
            .column(w.say("common-chart-date"), false)
            .column(self.value_name.as_str(), true);
        let table = self.points.iter().rev().fold(table, |table, point| {
            let value = if point.value.is_some() { point.said.clone() } else { w.say("common-chart-not-measured") };
            table.row(vec![Cell::text(&point.age), Cell::text(&point.date), Cell::number(&value)])
        });
        details(&w.say("common-chart-numbers"), false, &table.render())
    }
}

impl Render for GrowthChart<'_> {
    fn render(&self) -> Markup {
        html! {
            (self.figure())
            (self.numbers())
        }
    }
}

fn line(points: impl Iterator<Item = (f64, f64)>) -> String {
    points.map(|(x, y)| format!("{x:.1},{y:.1}")).collect::<Vec<_>>().join(" ")
}

fn tick(value: f64, step: f64) -> String {
    if step < 1.0 { format!("{value:.1}") } else { format!("{value:.0}") }
}

fn z_name(z: i8) -> String {
    match z {
        0 => "0".to_owned(),
        up if up > 0 => format!("+{up}"),
        down => format!("−{}", down.unsigned_abs()),
    }
}

#[cfg(test)]
mod tests;

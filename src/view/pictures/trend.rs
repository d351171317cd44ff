//! Twelve months of one measure as a drawing: bars for what happened, dots with their intervals for shares of children. What is
//! private, or was never counted, is a gap with a word in it; no line runs across a gap. It knows no page.

use domain::calendar::Month;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::pictures::scale;
use crate::view::pictures::words;
use crate::view::pictures::words::Gap;

/// How large a drawing is; places in its own units.
#[derive(Debug, Clone, Copy)]
pub(super) struct Canvas {
    width: f64,
    height: f64,
    left: f64,
    right: f64,
    pub(super) top: f64,
    pub(super) base: f64,
    /// What a letter takes at most on average.
    letter: f64,
    class: &'static str,
}

/// A picture of its own.
pub(super) const LARGE: Canvas =
    Canvas { width: 360.0, height: 200.0, left: 46.0, right: 356.0, top: 14.0, base: 166.0, letter: 8.5, class: "chart" };
/// One of several that belong together.
pub(super) const SMALL: Canvas =
    Canvas { width: 220.0, height: 144.0, left: 30.0, right: 216.0, top: 12.0, base: 116.0, letter: 7.4, class: "chart mini" };
/// For the wall: flat and wide.
pub(super) const WALL: Canvas =
    Canvas { width: 360.0, height: 150.0, left: 46.0, right: 356.0, top: 12.0, base: 120.0, letter: 8.5, class: "chart walled" };

/// What stands in the column of a month.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Column {
    /// How many, and of how many where that is drawn.
    Bar(u64, Option<u64>),
    /// A share and the ends of its interval, between 0 and 1.
    Dot(f64, [f64; 2]),
    /// Nothing to draw, and why.
    Gap(Gap),
}

/// What a trend shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shown {
    /// The measure.
    pub measure: Measure,
    /// Of follow-ups: those of one class; `None` = all.
    pub class: Option<Class>,
}

impl Shown {
    /// The part of the measures that is shown.
    pub(super) fn part(self, known: &Known) -> Option<Part> {
        let Known::Figures(measures) = known else { return None };
        match self.class {
            None => Some(measures.part(self.measure)),
            Some(class) => measures.overdue_by_class.iter().find(|(listed, _)| *listed == class).map(|(_, part)| *part),
        }
    }

    /// What is drawn of a month.
    pub(super) fn column(self, known: &Known) -> Column {
        let part = match (known, self.part(known)) {
            (_, Some(part)) => part,
            (Known::NotCounted, None) => return Column::Gap(Gap::NotCounted),
            (Known::BeforeStart, None) => return Column::Gap(Gap::BeforeStart),
            (_, None) => return Column::Gap(Gap::NotPublished),
        };
        match (self.measure, part.share) {
            (Measure::Underweight | Measure::Diversity, Share::Drawn { tenths, interval }) => {
                Column::Dot(f64::from(tenths) / 1000.0, [interval.low, interval.high])
            }
            (Measure::Underweight | Measure::Diversity, Share::Private) => Column::Gap(Gap::Private),
            (Measure::Underweight | Measure::Diversity, Share::Few) => Column::Gap(Gap::Few),
            (Measure::Underweight | Measure::Diversity, Share::Nobody) => Column::Gap(Gap::Nobody),
            (Measure::Visits, _) => match (part.n, part.den) {
                (Published::Shown(n), Published::Shown(den)) => Column::Bar(n, Some(den)),
                (Published::Withheld, _) | (_, Published::Withheld) => Column::Gap(Gap::Private),
                _ => Column::Gap(Gap::Nobody),
            },
            (Measure::Overdue, _) => match part.n {
                Published::Shown(n) => Column::Bar(n, None),
                Published::Withheld => Column::Gap(Gap::Private),
                Published::Nothing => Column::Gap(Gap::Nobody),
            },
        }
    }
}

/// A drawing of twelve months.
pub(super) struct Trend<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// Sets its ids apart from another's on the page.
    pub id: String,
    /// What it shows.
    pub shown: Shown,
    /// The months.
    pub months: &'a [(Month, Known)],
    /// What is drawn on.
    pub canvas: Canvas,
    /// The top of the scale, where several share one.
    pub top: Option<f64>,
}

/// The highest value that columns reach: a count, or a share between 0 and 1.
pub(super) fn reach(columns: impl Iterator<Item = Column>) -> f64 {
    columns
        .map(|column| match column {
            Column::Bar(n, den) => scale::float(den.unwrap_or(n).max(n)),
            Column::Dot(_, [_, high]) => high,
            Column::Gap(_) => 0.0,
        })
        .fold(0.0, f64::max)
}

impl Trend<'_> {
    fn columns(&self) -> Vec<Column> {
        self.months.iter().map(|(_, known)| self.shown.column(known)).collect()
    }

    fn is_share(&self) -> bool {
        self.shown.measure.is_of_children()
    }

    /// The top of the scale.
    fn most(&self) -> f64 {
        self.top.unwrap_or_else(|| {
            let reach = reach(self.columns().into_iter());
            if self.is_share() { scale::share_top(reach) } else { scale::count_top(reach) }
        })
    }

    fn pitch(&self) -> f64 {
        (self.canvas.right - self.canvas.left) / scale::float(self.months.len().max(1) as u64)
    }

    fn middle(&self, at: usize) -> f64 {
        self.canvas.left + self.pitch() * (scale::float(at as u64) + 0.5)
    }

    fn y(&self, value: f64) -> f64 {
        self.canvas.base - (self.canvas.base - self.canvas.top) * (value / self.most()).clamp(0.0, 1.0)
    }

    /// The title, the finding in words for those who do not see it, and the drawing.
    pub(super) fn drawing(&self) -> Markup {
        let (w, canvas) = (self.w, self.canvas);
        let columns = self.columns();
        html! {
            svg class=(canvas.class) viewBox={ "0 0 " (canvas.width) " " (canvas.height) } role="img" aria-labelledby={ (self.id) "-title " (self.id) "-desc" } {
                title id={ (self.id) "-title" } { (words::title(w, self.shown.measure, self.shown.class)) }
                desc id={ (self.id) "-desc" } { (words::trend(w, self.shown, self.months)) }
                (self.grid(columns.iter().any(|column| !matches!(column, Column::Gap(_)))))
                (self.gaps(&columns))
                @if self.is_share() { (self.dots(&columns)) } @else { (self.bars(&columns)) }
                (self.ends())
            }
        }
    }

    /// Lines with their values, where anything is drawn.
    fn grid(&self, drawn: bool) -> Markup {
        let (c, most) = (self.canvas, self.most());
        let tick =
            |value: f64| if self.is_share() { format::percent_whole(self.w, value * 100.0) } else { format::number(self.w, value, 0) };
        html! {
            @for value in [0.0, most / 2.0, most].into_iter().filter(|_| drawn) {
                @if value > 0.0 { path.grid d={ "M" (c.left) " " (at(self.y(value))) "H" (c.right) } {} }
                text.sub x=(c.left - 5.0) y=(at(self.y(value) + 4.5)) text-anchor="end" { (tick(value)) }
            }
        }
    }

    /// The ground, with the first and the last month by name.
    fn ends(&self) -> Markup {
        let (c, y) = (self.canvas, self.canvas.base + 20.0);
        let named = |month: Option<&(Month, Known)>| month.map(|(month, _)| words::month_short(self.w, *month)).unwrap_or_default();
        html! {
            path.axis d={ "M" (c.left) " " (c.base) "H" (c.right) } {}
            text.sub x=(c.left) y=(y) { (named(self.months.first())) }
            text x=(c.right) y=(y) text-anchor="end" { (named(self.months.last())) }
        }
    }

    fn bars(&self, columns: &[Column]) -> Markup {
        let wide = self.pitch() - 4.0;
        let (mut done, mut due) = (String::new(), String::new());
        for (column, x) in columns.iter().zip((0..).map(|n| self.middle(n) - wide / 2.0)) {
            let Column::Bar(n, den) = column else { continue };
            let (base, y) = (self.canvas.base, self.y(scale::float(*n)));
            // Nought is a line on the ground: somebody counted, and there was none. So nothing is lower.
            done.push_str(&format!("M{} {}H{}V{}H{}z", at(x), at(base), at(x + wide), at(y.min(base - 1.2)), at(x)));
            if let Some(den) = den {
                due.push_str(&format!("M{} {}V{}H{}V{}", at(x), at(base), at(self.y(scale::float(*den))), at(x + wide), at(base)));
            }
        }
        html! {
            @if !done.is_empty() { path.bar-done d=(done) {} }
            @if !due.is_empty() { path.bar-due d=(due) {} }
        }
    }

    fn dots(&self, columns: &[Column]) -> Markup {
        let mut bars = String::new();
        let (mut dots, mut pieces) = (Vec::new(), vec![Vec::new()]);
        for (n, column) in columns.iter().enumerate() {
            let Column::Dot(share, [low, high]) = column else {
                pieces.push(Vec::new());
                continue;
            };
            let (x, y) = (self.middle(n), self.y(*share));
            let (low, high) = (self.y(*low), self.y(*high));
            bars.push_str(&format!(
                "M{x} {}V{}M{} {}h8M{} {}h8",
                at(low),
                at(high),
                at(x - 4.0),
                at(low),
                at(x - 4.0),
                at(high),
                x = at(x)
            ));
            dots.push((n + 1 == columns.len(), x, y));
            if let Some(piece) = pieces.last_mut() {
                piece.push(format!("{} {}", at(x), at(y)));
            }
        }
        html! {
            @for piece in pieces.iter().filter(|piece| piece.len() > 1) { path.through d={ "M" (piece.join("L")) } {} }
            @if !bars.is_empty() { path.err.wide d=(bars) {} }
            @for (last, x, y) in dots { circle.pt.last[last] cx=(at(x)) cy=(at(y)) r=(if last { "5" } else { "4" }) {} }
        }
    }

    /// Months without a value side by side and for one reason are one gap with one word.
    fn gaps(&self, columns: &[Column]) -> Markup {
        let mut runs: Vec<(Gap, usize, usize)> = Vec::new();
        for (n, column) in columns.iter().enumerate() {
            let Column::Gap(gap) = column else { continue };
            match runs.last_mut() {
                Some((before, _, end)) if before == gap && *end == n => *end = n + 1,
                _ => runs.push((*gap, n, n + 1)),
            }
        }
        let c = self.canvas;
        html! {
            @for (gap, from, to) in runs {
                @let (x, wide) = (c.left + self.pitch() * scale::float(from as u64), self.pitch() * scale::float((to - from) as u64));
                @let (middle, half) = (x + wide / 2.0, c.base - (c.base - c.top) / 2.0);
                @let word = words::gap(self.w, gap);
                rect class=(if gap == Gap::Private { "gap private" } else { "gap" }) x=(at(x + 1.0)) y=(at(c.top)) width=(at(wide - 2.0)) height=(at(c.base - c.top)) {}
                @if scale::float(word.chars().count() as u64) * c.letter < wide {
                    text.word x=(at(middle)) y=(at(half + 4.5)) text-anchor="middle" { (word) }
                } @else {
                    text.word x=(at(middle)) y=(at(half)) text-anchor="middle" transform={ "rotate(-90 " (at(middle)) " " (at(half)) ")" } dy="4.5" { (word) }
                }
            }
        }
    }
}

/// A place on the canvas, to a tenth of its unit.
pub(super) fn at(place: f64) -> String {
    format!("{place:.1}")
}

/// The key under a picture: how to read it.
pub(super) fn key(w: &Words, measure: Measure) -> String {
    w.say(match measure {
        Measure::Visits => "pic-key-visits",
        Measure::Overdue => "pic-key-overdue",
        Measure::Underweight | Measure::Diversity => "pic-key-share",
    })
}

/// The name of the trend of a place.
pub(super) fn heading(w: &Words, place: &str) -> String {
    w.say_with("pic-trend-heading", args!["place" => place])
}

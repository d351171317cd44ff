//! One place, or one worker, in one month as a card: four strips under each other, in the same order and on the same scales on
//! every card of a page. It knows no page.

use domain::report::picture::Measure;
use domain::report::picture::Measures;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Icon;
use crate::view::pictures::scale;
use crate::view::pictures::trend::at;
use crate::view::pictures::words;
use crate::view::pictures::words::Gap;
use crate::view::pieces::list::class_css;

const LEFT: f64 = 4.0;
const RIGHT: f64 = 356.0;
/// Where the bars of the classes begin: behind the longest word.
const CLASS_FROM: f64 = 212.0;
const CLASS_TO: f64 = 316.0;

/// What the cards of a page share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scales {
    visits: f64,
    late: f64,
}

impl Scales {
    /// Scales that hold all these.
    pub(super) fn of<'a>(cards: impl Iterator<Item = &'a Measures> + Clone) -> Self {
        let most = |figures: &dyn Fn(&Measures) -> u64| cards.clone().map(figures).max().unwrap_or(0);
        let shown = |figure: Published| figure.count().unwrap_or(0);
        let visits = most(&|m| shown(m.visits.n).max(shown(m.visits.den)));
        let late = most(&|m| m.overdue_by_class.iter().map(|(_, part)| shown(part.n)).max().unwrap_or(0));
        Self { visits: scale::count_top(scale::float(visits)), late: scale::count_top(scale::float(late)) }
    }
}

/// The card's drawing; `id` sets its ids apart, `title` says whose it is.
pub(super) fn drawing(w: &Words, id: &str, title: &str, measures: &Measures, scales: Scales) -> Markup {
    html! {
        svg.chart.strips viewBox="0 0 360 352" role="img" aria-labelledby={ (id) "-title " (id) "-desc" } {
            title id={ (id) "-title" } { (title) }
            desc id={ (id) "-desc" } { (words::card(w, measures)) }
            (visits(w, &measures.visits, scales.visits))
            (overdue(w, measures, scales.late))
            (share(w, Measure::Underweight, &measures.underweight, 236.0))
            (share(w, Measure::Diversity, &measures.diversity, 296.0))
        }
    }
}

/// The name of a strip and its numbers over it.
fn label(words: &str, numbers: &str, y: f64) -> Markup {
    html! {
        text.name x=(LEFT) y=(y) { (words) }
        text x=(RIGHT) y=(y) text-anchor="end" { (numbers) }
    }
}

/// How many of how many, as far as it is shown.
fn told(w: &Words, part: &Part) -> String {
    match (part.n, part.den) {
        (Published::Shown(n), Published::Shown(den)) => {
            w.say_with("pic-n-of-den", args!["n" => format::count(w, n), "den" => format::count(w, den)])
        }
        (Published::Withheld, _) | (_, Published::Withheld) => words::gap(w, Gap::Private),
        _ => words::gap(w, Gap::Nobody),
    }
}

fn private(x: f64, y: f64, wide: f64, high: f64) -> Markup {
    html! { rect.gap.private x=(at(x)) y=(at(y)) width=(at(wide)) height=(at(high)) {} }
}

fn visits(w: &Words, part: &Part, most: f64) -> Markup {
    let wide = |count: u64| (RIGHT - LEFT) * scale::float(count) / most;
    html! {
        (label(&words::short(w, Measure::Visits), &told(w, part), 15.0))
        @match (part.n, part.den) {
            (Published::Shown(n), Published::Shown(den)) => {
                rect.bar-done x=(LEFT) y="23" width=(at(wide(n))) height="13" {}
                rect.bar-due x=(LEFT) y="22" width=(at(wide(den).max(1.0))) height="15" {}
            }
            (Published::Withheld, _) | (_, Published::Withheld) => { (private(LEFT, 22.0, RIGHT - LEFT, 15.0)) }
            _ => {}
        }
    }
}

fn overdue(w: &Words, measures: &Measures, most: f64) -> Markup {
    html! {
        (label(&words::short(w, Measure::Overdue), &told(w, &measures.overdue), 64.0))
        @for (at_line, (class, part)) in measures.overdue_by_class.iter().enumerate() {
            @let y = 74.0 + 23.0 * scale::float(at_line as u64);
            use class=(class_css(*class)) href={ "#" (Icon::of_class(*class).id()) } x=(LEFT) y=(at(y)) width="17" height="17" {}
            text.sub x="27" y=(at(y + 13.5)) { (codes::class_word(w, *class)) }
            @match part.n {
                Published::Shown(n) => {
                    rect.bar-done x=(CLASS_FROM) y=(at(y + 3.0)) width=(at((CLASS_TO - CLASS_FROM) * scale::float(n) / most)) height="11" {}
                    text x=(RIGHT) y=(at(y + 13.5)) text-anchor="end" { (format::count(w, n)) }
                }
                Published::Withheld => {
                    (private(CLASS_FROM, y + 1.0, RIGHT - CLASS_FROM, 16.0))
                    text.word x=(at((CLASS_FROM + RIGHT) / 2.0)) y=(at(y + 13.5)) text-anchor="middle" { (words::gap(w, Gap::Private)) }
                }
                Published::Nothing => {}
            }
        }
    }
}

/// A share on a line from none to all, with its interval.
fn share(w: &Words, measure: Measure, part: &Part, y: f64) -> Markup {
    // Room for the dot at either end.
    let place = |share: f64| LEFT + 3.0 + (RIGHT - LEFT - 6.0) * share;
    let line = y + 20.0;
    let numbers = match part.share {
        Share::Drawn { tenths, .. } => {
            w.say_with("pic-share-of", args!["share" => format::percent_whole(w, f64::from(tenths) / 10.0), "of" => told(w, part)])
        }
        Share::Few => w.say_with("pic-share-of", args!["share" => words::gap(w, Gap::Few), "of" => told(w, part)]),
        Share::Private | Share::Nobody => told(w, part),
    };
    html! {
        (label(&words::short(w, measure), &numbers, y + 4.0))
        @if part.share == Share::Private { (private(LEFT, line - 8.0, RIGHT - LEFT, 15.0)) } @else {
            path.axis d={ "M" (LEFT) " " (at(line)) "H" (RIGHT) } {}
            @for tick in [0.0, 0.5, 1.0] { path.axis d={ "M" (at(place(tick))) " " (at(line - 4.0)) "v8" } {} }
        }
        @if let Share::Drawn { tenths, interval } = part.share {
            path.interval d={ "M" (at(place(interval.low))) " " (at(line)) "H" (at(place(interval.high))) } {}
            circle.pt.last cx=(at(place(f64::from(tenths) / 1000.0))) cy=(at(line)) r="5.5" {}
        }
        text.sub x=(LEFT) y=(at(line + 18.0)) { (format::percent_whole(w, 0.0)) }
        text.sub x=(at(place(0.5))) y=(at(line + 18.0)) text-anchor="middle" { (format::percent_whole(w, 50.0)) }
        text.sub x=(RIGHT) y=(at(line + 18.0)) text-anchor="end" { (format::percent_whole(w, 100.0)) }
    }
}

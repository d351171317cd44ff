//! A sheet for the wall: the programme's year on one page of A4, in figures that can be read across a room.

use domain::calendar::Month;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::parts::back;
use crate::view::pictures::hatch;
use crate::view::pictures::trend;
use crate::view::pictures::trend::Shown;
use crate::view::pictures::trend::Trend;
use crate::view::pictures::words;
use crate::view::pictures::words::Gap;

/// What the sheet shows.
#[derive(Debug, Clone)]
pub struct WallSheet<'a> {
    /// The programme's name.
    pub programme: &'a str,
    /// The name of the area shown; `None`: the whole programme.
    pub area: Option<&'a str>,
    /// The month.
    pub month: Month,
    /// Whether its figures stand, in words.
    pub state: &'a str,
    /// Twelve months, the month last.
    pub trend: &'a [(Month, Known)],
    /// The pictures it was made from.
    pub pictures: String,
}

/// The sheet.
#[must_use]
pub fn page(w: &Words, p: &WallSheet<'_>) -> Markup {
    html! {
        (hatch())
        (back(w, &p.pictures, &w.say("pic-title")))
        p.noprint { (w.say("pic-wall-how")) }
        div.wall {
            h1 { (w.say_with("pic-caption", args!["what" => p.area.unwrap_or(p.programme), "place" => format::month(w, p.month)])) }
            p.wall-state { (p.state) }
            @for measure in Measure::ALL {
                @let drawn = Trend { w, id: format!("wall-{}", measure.code()), shown: Shown { measure, class: None }, months: p.trend, canvas: trend::WALL, top: None };
                section {
                    div {
                        h2 { (words::short(w, measure)) }
                        (figure(w, measure, p.trend.last().and_then(|(_, known)| drawn.shown.part(known))))
                    }
                    (drawn.drawing())
                }
            }
            ul { @for caution in ["survey", "rounded", "late", "age", "missing"] { li { (w.say(&format!("report-caution-{caution}"))) } } }
            p { (w.say("pic-wall-key")) }
        }
    }
}

/// The figure of the month, large, and what it is in smaller words.
fn figure(w: &Words, measure: Measure, part: Option<Part>) -> Markup {
    let large = |text: String, under: String| html! { p.huge { (text) } p { (under) } };
    let words = |text: String, under: String| html! { p.large { (text) } p { (under) } };
    let none = |gap| words(words::gap(w, gap), w.say(if gap == Gap::Private { "pic-wall-private" } else { "pic-wall-nothing" }));
    let Some(part) = part else { return none(Gap::NotPublished) };
    let (n, den) = match (part.n, part.den) {
        (Published::Shown(n), Published::Shown(den)) => (n, den),
        (Published::Withheld, _) | (_, Published::Withheld) => return none(Gap::Private),
        _ => return none(Gap::Nobody),
    };
    let counts = args!["n" => format::count(w, n), "den" => format::count(w, den)];
    match (measure, part.share) {
        (Measure::Visits, _) => large(w.say_with("pic-n-of-den", counts), w.say("pic-wall-visits")),
        (Measure::Overdue, _) => large(format::count(w, n), w.say_with("pic-wall-overdue", args!["den" => format::count(w, den)])),
        (_, Share::Drawn { tenths, interval }) => {
            let whole = |share: f64| format::number(w, share * 100.0, 0);
            let told = args![
                "n" => format::count(w, n), "den" => format::count(w, den),
                "low" => whole(interval.low), "high" => whole(interval.high)
            ];
            large(format::percent_whole(w, f64::from(tenths) / 10.0), w.say_with("pic-wall-share", told))
        }
        (_, Share::Few) => words(words::gap(w, Gap::Few), w.say_with("pic-wall-few", counts)),
        (_, Share::Private) => none(Gap::Private),
        (_, Share::Nobody) => none(Gap::Nobody),
    }
}

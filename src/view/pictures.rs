//! The reports in pictures: twelve months of a place, and each village in one month. Every picture has its numbers in a table
//! under it, and as a file. It works out nothing: what it is given is drawn, what is private is a gap with a word.

mod numbers;
mod scale;
mod strips;
pub mod team;
#[cfg(test)]
mod tests;
mod trend;
pub mod wall;
mod words;

use domain::calendar::Month;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Measures;
use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::parts::Select;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::cls;
use crate::view::parts::name;
use crate::view::pictures::strips::Scales;
use crate::view::pictures::trend::Shown;
use crate::view::pictures::trend::Trend;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct PicturesPage<'a> {
    /// The month.
    pub month: Month,
    /// Months that can be chosen, latest first.
    pub months: Vec<Month>,
    /// Whether the month's figures stand, in words.
    pub state: String,
    /// Code of the area chosen; empty: the whole programme.
    pub area: String,
    /// Areas that can be chosen: code and name.
    pub areas: Vec<(String, String)>,
    /// Twelve months of the place, the month last.
    pub trend: &'a [(Month, Known)],
    /// Each area published for the month: code, name, figures.
    pub villages: &'a [(String, String, Measures)],
}

impl PicturesPage<'_> {
    fn place(&self, w: &Words) -> String {
        let named = self.areas.iter().find(|(code, _)| *code == self.area);
        named.map_or_else(|| w.say("report-all-areas"), |(_, name)| name.clone())
    }

    /// The address of a picture's numbers.
    fn file(&self, picture: &str) -> String {
        format!("{}&picture={picture}", self.address("/reports/pictures.csv"))
    }

    /// The address of a page of this month and area.
    fn address(&self, path: &str) -> String {
        let area = if self.area.is_empty() { String::new() } else { format!("&area={}", self.area) };
        format!("{path}?period={}{area}", self.month)
    }
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &PicturesPage<'_>) -> Markup {
    let report =
        if p.area.is_empty() { format!("/reports?period={}", p.month) } else { format!("/reports?period={}&area={}", p.month, p.area) };
    html! {
        (hatch())
        (back(w, &report, &w.say("common-nav-reports")))
        h1 { (heading(w, p.month, p.trend)) }
        p.quiet { (w.say_with("pic-under", args!["place" => p.place(w), "state" => &p.state])) }
        (sieve(w, p))
        p { a.link href=(p.address("/reports/wall")) { (w.say("pic-wall-link")) } }
        (trends(w, p))
        (not_counted(w, p.trend))
        (villages(w, p))
        h2 { (w.say("report-cautions")) }
        (cautions(w))
    }
}

/// The hatch of what is private, once a page.
fn hatch() -> Markup {
    html! {
        svg.vh width="0" height="0" aria-hidden="true" {
            pattern id="pic-hatch" width="7" height="7" patternUnits="userSpaceOnUse" { rect.ground width="7" height="7" {} path.hatch d="M-1 1l2-2M0 7l7-7M6 8l2-2" {} }
        }
    }
}

/// The answer first, as on the report.
fn heading(w: &Words, month: Month, trend: &[(Month, Known)]) -> String {
    let named = format::month(w, month);
    match trend.last() {
        Some((_, Known::Figures(measures))) => match (measures.visits.n.count(), measures.visits.den.count()) {
            (Some(n), Some(den)) => {
                w.say_with("report-heading-done", args!["month" => named, "done" => format::count(w, n), "due" => format::count(w, den)])
            }
            _ => w.say_with("report-heading", args!["month" => named]),
        },
        _ => w.say_with("report-heading", args!["month" => named]),
    }
}

fn sieve(w: &Words, p: &PicturesPage<'_>) -> Markup {
    let months = p.months.iter().map(|month| (month.to_string(), format::month(w, *month)));
    html! {
        form.sieve method="get" action="/reports/pictures" aria-label=(w.say("report-sieve")) {
            (Select::new("period", w.say("common-month")).options(months).value(p.month.to_string()))
            (Select::new("area", w.say("report-area")).option("", w.say("report-all-areas")).options(p.areas.clone()).value(&p.area))
            (button(&w.say("common-show"), true))
        }
    }
}

fn trends(w: &Words, p: &PicturesPage<'_>) -> Markup {
    let place = p.place(w);
    html! {
        h2 id="year" { (trend::heading(w, &place)) }
        div.pics {
            @for measure in Measure::ALL {
                @let drawn = Trend { w, id: format!("year-{}", measure.code()), shown: Shown { measure, class: None }, months: p.trend, canvas: trend::LARGE, top: None };
                section.pic {
                    h3 { (words::measure(w, measure)) }
                    figure {
                        figcaption { (words::trend(w, drawn.shown, p.trend)) }
                        (drawn.drawing())
                    }
                    p.quiet { (trend::key(w, measure)) }
                    (numbers::of_trend(w, measure, &place, p.trend, &p.file(measure.code())))
                }
            }
        }
        (by_class(w, p, &place))
    }
}

/// A small drawing for each class, all on one scale.
fn by_class(w: &Words, p: &PicturesPage<'_>, place: &str) -> Markup {
    let months = p.trend;
    let shown = |class| Shown { measure: Measure::Overdue, class: Some(class) };
    let all = Class::ALL.iter().flat_map(|class| months.iter().map(|(_, known)| shown(*class).column(known)));
    let top = scale::count_top(trend::reach(all));
    html! {
        section.pic {
            h3 { (w.say("pic-by-class")) }
            div.multi.classes {
                @for class in Class::ALL {
                    figure {
                        figcaption { (cls(w, *class)) }
                        (Trend { w, id: format!("year-class-{}", class.code()), shown: shown(*class), months, canvas: trend::SMALL, top: Some(top) }.drawing())
                    }
                }
            }
            p.quiet { (w.say("pic-key-class")) }
            (numbers::of_classes(w, place, months, &p.file("overdue")))
        }
    }
}

/// Months that were never counted, each a way to its report, which counts it.
fn not_counted(w: &Words, trend: &[(Month, Known)]) -> Markup {
    let months: Vec<Month> = trend.iter().filter(|(_, known)| *known == Known::NotCounted).map(|(month, _)| *month).collect();
    html! {
        @if !months.is_empty() {
            h2 { (w.say_with("pic-months-not-counted", args!["count" => months.len()])) }
            p { (w.say("pic-count-them")) }
            p.jump { @for month in months.iter().rev() { a href={ "/reports?period=" (month) } { (format::month(w, *month)) } } }
        }
    }
}

fn villages(w: &Words, p: &PicturesPage<'_>) -> Markup {
    let scales = Scales::of(p.villages.iter().map(|(_, _, measures)| measures));
    let month = format::month(w, p.month);
    html! {
        h2 id="villages" { (w.say_with("pic-villages-heading", args!["month" => &month])) }
        @if p.villages.is_empty() { p { (w.say("report-few-areas")) } } @else { p.quiet { (w.say("pic-villages-lede")) " " (w.say("pic-key-card")) } }
        div.multi.cards {
            @for (at, (code, called, measures)) in p.villages.iter().enumerate() {
                @let title = w.say_with("pic-caption", args!["what" => called, "place" => &month]);
                section {
                    h3 { (name(called)) }
                    figure { (strips::drawing(w, &format!("village-{at}"), &title, measures, scales)) }
                    (numbers::of_card(w, &title, measures, &format!("/reports/pictures.csv?period={}&picture=month&area={code}", p.month)))
                }
            }
        }
    }
}

fn cautions(w: &Words) -> Markup {
    html! { ul { @for caution in ["survey", "rounded", "late", "age", "missing", "definitions"] { li { (w.say(&format!("report-caution-{caution}"))) } } } }
}

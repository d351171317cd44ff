//! The pictures of a supervisor's team: a card each worker, in the order of names. Nothing is withheld here, and the page says
//! that it stays inside.

use domain::report::period::Period;
use domain::report::picture::Measures;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::Select;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::pictures::hatch;
use crate::view::pictures::numbers;
use crate::view::pictures::strips;
use crate::view::pictures::strips::Scales;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct TeamPicturesPage<'a> {
    /// The month or quarter.
    pub period: Period,
    /// Those that can be chosen.
    pub periods: Vec<Period>,
    /// Everybody together.
    pub all: &'a Measures,
    /// Sign-in name, full name and figures, by full name.
    pub workers: Vec<(&'a str, &'a str, &'a Measures)>,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &TeamPicturesPage<'_>) -> Markup {
    let when = format::period(w, p.period);
    let periods = p.periods.iter().map(|period| (period.to_string(), format::period(w, *period)));
    let scales = Scales::of(p.workers.iter().map(|(_, _, measures)| *measures));
    let (n, den) = (p.all.visits.n.count().unwrap_or(0), p.all.visits.den.count().unwrap_or(0));
    let counts = args!["month" => &when, "done" => format::count(w, n), "due" => format::count(w, den)];
    html! {
        (hatch())
        (back(w, "/team", &w.say("team-title")))
        h1 { (w.say_with("report-heading-done", counts)) }
        (note(NoteWeight::Plain, Icon::Info, &html! { p { b { (w.say("pic-team-inside")) } " " (w.say("pic-team-support")) } }))
        form.sieve method="get" action="/team-pictures" aria-label=(w.say("pic-team-sieve")) {
            (Select::new("period", w.say("pic-team-period")).options(periods).value(p.period.to_string()))
            (button(&w.say("common-show"), true))
        }
        p { (w.say("pic-team-who")) " " (w.say("pic-key-card")) }
        h2 { (w.say("pic-team-all")) }
        section.alone { (card(w, p, "all", &html! {}, (&w.say("pic-team-all"), "", p.all), Scales::of(std::iter::once(p.all)))) }
        h2 { (w.say("pic-team-each")) }
        @if p.workers.is_empty() { p { (w.say("pic-team-nobody")) } }
        div.multi.cards {
            @for (at, (sign_in, full, measures)) in p.workers.iter().enumerate() {
                section { (card(w, p, &format!("worker-{at}"), &html! { h3 { (name(full)) } }, (full, sign_in, measures), scales)) }
            }
        }
        p.quiet { (w.say("report-caution-missing")) " " (w.say("report-caution-age")) }
    }
}

/// One card: whose it is, the drawing, its numbers and their file.
fn card(
    w: &Words,
    p: &TeamPicturesPage<'_>,
    id: &str,
    head: &Markup,
    (whose, sign_in, measures): (&str, &str, &Measures),
    scales: Scales,
) -> Markup {
    let title = w.say_with("pic-caption", args!["what" => whose, "place" => format::period(w, p.period)]);
    let worker = if sign_in.is_empty() { String::new() } else { format!("&worker={sign_in}") };
    html! {
        (head)
        figure { (strips::drawing(w, id, &title, measures, scales)) }
        (numbers::of_card(w, &title, measures, &format!("/team-pictures.csv?period={}{worker}", p.period)))
    }
}

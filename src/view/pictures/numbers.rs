//! The numbers of a picture, in a table under it, and the way to the same as a file. It draws nothing.

use domain::calendar::Month;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Measures;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use domain::rule::Class;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::details;
use crate::view::pictures::trend::Column;
use crate::view::pictures::trend::Shown;
use crate::view::pictures::words;
use crate::view::pictures::words::Gap;

/// The folded numbers: a table and a link to the file. `of` names what they belong to, for those who hear links one by one.
fn folded(w: &Words, of: &str, table: &Table, file: &str) -> Markup {
    let body = html! {
        (table.render())
        p.noprint { a.link href=(file) download { (w.say_with("pic-file", args!["what" => of])) } }
    };
    details(&w.say("pic-numbers"), false, &body)
}

fn count(w: &Words, figure: Published) -> Cell {
    match figure {
        Published::Shown(count) => Cell::number(&format::count(w, count)),
        Published::Withheld => Cell::kept(&words::gap(w, Gap::Private)),
        Published::Nothing => Cell::number(""),
    }
}

fn share(w: &Words, part: &Part) -> Cell {
    match part.share {
        Share::Drawn { tenths, .. } => Cell::number(&format::number(w, f64::from(tenths) / 10.0, 1)),
        Share::Private => Cell::kept(&words::gap(w, Gap::Private)),
        Share::Few => Cell::kept(&words::gap(w, Gap::Few)),
        Share::Nobody => Cell::number(""),
    }
}

fn between(w: &Words, part: &Part) -> Cell {
    match part.share {
        Share::Drawn { interval, .. } => {
            let end = |share: f64| format::number(w, share * 100.0, 1);
            Cell::number(&w.say_with("pic-range", args!["low" => end(interval.low), "high" => end(interval.high)]))
        }
        Share::Private | Share::Few | Share::Nobody => Cell::number(""),
    }
}

/// The numbers of a trend, the latest month first.
pub(super) fn of_trend(w: &Words, measure: Measure, place: &str, months: &[(Month, Known)], file: &str) -> Markup {
    let title = w.say_with("pic-caption", args!["what" => words::measure(w, measure), "place" => place]);
    let table = Table::scrolling(title.as_str()).column(w.say("pic-col-month"), false);
    let head = |part: &str| w.say(&format!("pic-col-{part}-{}", measure.code()));
    let mut table = table.column(head("n"), true).column(head("den"), true);
    if measure != Measure::Overdue {
        table = table.column(w.say("report-percent"), true);
    }
    if measure.is_of_children() {
        table = table.column(w.say("pic-col-between"), true);
    }
    let cells = |part: &Part| {
        let mut cells = vec![count(w, part.n), count(w, part.den)];
        if measure != Measure::Overdue {
            cells.push(share(w, part));
        }
        if measure.is_of_children() {
            cells.push(between(w, part));
        }
        cells
    };
    let shown = Shown { measure, class: None };
    let blank = cells(&Part::NONE).len();
    let row = |month: Month, known: &Known| {
        shown.part(known).map_or_else(|| without(w, shown, month, known, blank), |part| with(w, month, cells(&part)))
    };
    let table = months.iter().rev().fold(table, |table, (month, known)| table.row(row(*month, known)));
    folded(w, &title, &table, file)
}

/// The numbers of the classes of late follow-ups, the latest month first.
pub(super) fn of_classes(w: &Words, place: &str, months: &[(Month, Known)], file: &str) -> Markup {
    let title = w.say_with("pic-caption", args!["what" => w.say("pic-by-class"), "place" => place]);
    let table = Table::scrolling(title.as_str()).column(w.say("pic-col-month"), false);
    let table = Class::ALL.iter().fold(table, |table, class| table.column(codes::class_word(w, *class), true));
    let shown = Shown { measure: Measure::Overdue, class: None };
    let row = |month: Month, known: &Known| match known {
        Known::Figures(measures) => with(w, month, measures.overdue_by_class.iter().map(|(_, part)| count(w, part.n)).collect()),
        Known::NotCounted | Known::BeforeStart | Known::NotPublished => without(w, shown, month, known, Class::ALL.len()),
    };
    let table = months.iter().rev().fold(table, |table, (month, known)| table.row(row(*month, known)));
    folded(w, &title, &table, file)
}

fn with(w: &Words, month: Month, cells: Vec<Cell>) -> Vec<Cell> {
    std::iter::once(Cell::text(&format::month(w, month))).chain(cells).collect()
}

/// A month without figures: why, in the place of the first.
fn without(w: &Words, shown: Shown, month: Month, known: &Known, blank: usize) -> Vec<Cell> {
    let why = match shown.column(known) {
        Column::Gap(gap) => words::gap(w, gap),
        Column::Bar(..) | Column::Dot(..) => String::new(),
    };
    let why = Cell::of(html! { span.quiet { (why) } });
    with(w, month, std::iter::once(why).chain((1..blank).map(|_| Cell::number(""))).collect())
}

/// The numbers of a card.
pub(super) fn of_card(w: &Words, of: &str, measures: &Measures, file: &str) -> Markup {
    let table = Table::scrolling(of).column(w.say("pic-col-what"), false).column(w.say("pic-col-n"), true);
    let table = table.column(w.say("pic-col-den"), true).column(w.say("report-percent"), true).column(w.say("pic-col-between"), true);
    let line = |words: Markup, part: &Part, measure: Measure| {
        let blank = || Cell::number("");
        let pct = if measure == Measure::Overdue { blank() } else { share(w, part) };
        let range = if measure.is_of_children() { between(w, part) } else { blank() };
        vec![Cell::of(words), count(w, part.n), count(w, part.den), pct, range]
    };
    let whole = |measure: Measure| line(html! { (words::measure(w, measure)) }, &measures.part(measure), measure);
    let table = table.row(whole(Measure::Visits)).row(whole(Measure::Overdue));
    let table = measures
        .overdue_by_class
        .iter()
        .fold(table, |table, (class, part)| table.row(line(crate::view::parts::cls(w, *class), part, Measure::Overdue)));
    folded(w, of, &table.row(whole(Measure::Underweight)).row(whole(Measure::Diversity)), file)
}

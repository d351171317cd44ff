//! What a picture says, in words: its title, the finding, and why something is not drawn. It draws nothing.

use domain::calendar::Month;
use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Measures;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use domain::rule::Class;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::pictures::trend::Column;
use crate::view::pictures::trend::Shown;

/// Why there is nothing to draw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Gap {
    /// A figure is kept private.
    Private,
    /// Too few children for a share.
    Few,
    /// Nobody was counted.
    Nobody,
    /// The month was never counted.
    NotCounted,
    /// Before the programme.
    BeforeStart,
    /// The place is not published.
    NotPublished,
}

impl Gap {
    const ALL: [Self; 6] = [Self::Private, Self::Few, Self::Nobody, Self::NotCounted, Self::BeforeStart, Self::NotPublished];

    const fn code(self) -> &'static str {
        match self {
            Self::Private => "private",
            Self::Few => "few",
            Self::Nobody => "nobody",
            Self::NotCounted => "not-counted",
            Self::BeforeStart => "before-start",
            Self::NotPublished => "not-published",
        }
    }
}

/// The word in a gap.
pub(super) fn gap(w: &Words, gap: Gap) -> String {
    w.say(&format!("pic-gap-{}", gap.code()))
}

/// The name of a measure, whole.
pub(super) fn measure(w: &Words, measure: Measure) -> String {
    w.say(&format!("pic-{}", measure.code()))
}

/// The name of a measure where there is little room.
pub(super) fn short(w: &Words, measure: Measure) -> String {
    w.say(&format!("pic-short-{}", measure.code()))
}

/// The name of a measure, of one class where only that is shown.
pub(super) fn title(w: &Words, of: Measure, class: Option<Class>) -> String {
    match class {
        None => measure(w, of),
        Some(class) => w.say_with("pic-of-class", args!["what" => measure(w, of), "class" => codes::class_word(w, class)]),
    }
}

/// `Nov 2025`
pub(super) fn month_short(w: &Words, month: Month) -> String {
    let name = w.say(&format!("month-short-{}", month.number()));
    w.say_with("pic-month-short", args!["month" => name, "year" => month.year().to_string()])
}

/// What a part says, as a sentence of a time (or of anything that stands before a colon).
pub(super) fn found(w: &Words, when: &str, of: Measure, part: &Part) -> String {
    let (n, den) = match (part.n, part.den) {
        (Published::Shown(n), Published::Shown(den)) => (n, den),
        (Published::Withheld, _) | (_, Published::Withheld) => return w.say_with("pic-found-private", args!["when" => when]),
        _ => return w.say_with("pic-found-nobody", args!["when" => when]),
    };
    let counts = args!["when" => when, "n" => format::count(w, n), "den" => format::count(w, den)];
    match (of, part.share) {
        (Measure::Visits, _) => w.say_with("pic-found-visits", counts),
        (Measure::Overdue, _) => w.say_with("pic-found-overdue", counts),
        (_, Share::Drawn { tenths, interval }) => {
            let whole = |share: f64| format::number(w, share * 100.0, 0);
            let told = args![
                "when" => when,
                "n" => format::count(w, n),
                "den" => format::count(w, den),
                "share" => format::percent(w, f64::from(tenths) / 10.0),
                "low" => whole(interval.low),
                "high" => whole(interval.high)
            ];
            w.say_with(if of == Measure::Underweight { "pic-found-underweight" } else { "pic-found-diversity" }, told)
        }
        (_, Share::Few) => w.say_with("pic-found-few", counts),
        (_, Share::Private) => w.say_with("pic-found-private", args!["when" => when]),
        (_, Share::Nobody) => w.say_with("pic-found-nobody", args!["when" => when]),
    }
}

/// What a trend says: its last month, then how many months are gaps and why.
pub(super) fn trend(w: &Words, shown: Shown, months: &[(Month, Known)]) -> String {
    let mut sentences = Vec::new();
    if let Some((month, known)) = months.last() {
        let when = format::month(w, *month);
        sentences.push(match shown.part(known) {
            Some(part) => found(w, &when, shown.measure, &part),
            None => w.say_with("pic-found-nobody", args!["when" => when]),
        });
    }
    for gap in Gap::ALL {
        let count = months.iter().filter(|(_, known)| shown.column(known) == Column::Gap(gap)).count();
        if count > 0 {
            sentences.push(w.say_with(&format!("pic-months-{}", gap.code()), args!["count" => count]));
        }
    }
    sentences.join(" ")
}

/// What a card says of a place or a worker.
pub(super) fn card(w: &Words, measures: &Measures) -> String {
    let told = Measure::ALL.map(|measure| found(w, &short(w, measure), measure, &measures.part(measure)));
    told.join(" ")
}

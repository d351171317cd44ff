//! The numbers of a picture as CSV, in the form of the report files: UTF-8, CRLF, one header row; a private figure is empty, and
//! the last column says which. It counts nothing and withholds nothing.

use domain::report::picture::Known;
use domain::report::picture::Measure;
use domain::report::picture::Part;
use domain::report::picture::Published;
use domain::report::picture::Share;
use domain::rule::Class;

use crate::files::csv_text;

const COLUMNS: [&str; 11] = ["period", "place", "measure", "class", "n", "den", "pct", "low_pct", "high_pct", "state", "withheld"];

/// A line of the file.
#[derive(Debug, Clone, PartialEq)]
pub struct PictureLine<'a> {
    /// The period's code.
    pub period: String,
    /// Code of the area, or sign-in name of the worker; `all` for everybody.
    pub place: &'a str,
    /// The measure.
    pub measure: Measure,
    /// The urgency of follow-ups; `None` = all classes.
    pub class: Option<Class>,
    /// How many of how many, or why there is nothing.
    pub part: Result<Part, State>,
}

/// Why a month has no figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Never counted.
    NotCounted,
    /// Before the programme.
    BeforeStart,
    /// The place is not published.
    NotPublished,
}

impl State {
    const fn code(self) -> &'static str {
        match self {
            Self::NotCounted => "not_counted",
            Self::BeforeStart => "before_start",
            Self::NotPublished => "not_published",
        }
    }
}

/// The lines of what is known of a place: those of one measure, or of all. Follow-ups have a line a class, and one for all of them.
#[must_use]
pub fn lines<'a>(period: &str, place: &'a str, known: &Known, only: Option<Measure>) -> Vec<PictureLine<'a>> {
    let mut lines = Vec::new();
    for measure in Measure::ALL.into_iter().filter(|measure| only.is_none_or(|only| only == *measure)) {
        let mut line = |class, part| lines.push(PictureLine { period: period.to_owned(), place, measure, class, part });
        match known {
            Known::Figures(measures) => {
                line(None, Ok(measures.part(measure)));
                if measure == Measure::Overdue {
                    measures.overdue_by_class.iter().for_each(|(class, part)| line(Some(*class), Ok(*part)));
                }
            }
            Known::NotCounted => line(None, Err(State::NotCounted)),
            Known::BeforeStart => line(None, Err(State::BeforeStart)),
            Known::NotPublished => line(None, Err(State::NotPublished)),
        }
    }
    lines
}

/// The bytes of the file.
///
/// # Errors
/// What the writing failed of.
pub fn write(lines: &[PictureLine<'_>]) -> Result<Vec<u8>, csv::Error> {
    let mut csv = csv_text::writer(Vec::new());
    csv.write_record(COLUMNS)?;
    for line in lines {
        csv.write_record(record(line))?;
    }
    csv.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

fn record(line: &PictureLine<'_>) -> [String; 11] {
    let (mut figures, mut state, mut withheld) = (<[String; 5]>::default(), "shown", Vec::new());
    match &line.part {
        Err(why) => state = why.code(),
        Ok(part) => {
            for (name, figure, at) in [("n", part.n, 0), ("den", part.den, 1)] {
                match figure {
                    Published::Shown(count) => figures[at] = count.to_string(),
                    Published::Withheld => withheld.push(format!("{name}:private")),
                    Published::Nothing => {}
                }
            }
            // Follow-ups are no share of anybody; see the measure.
            if line.measure != Measure::Overdue {
                match part.share {
                    Share::Drawn { tenths, interval } => {
                        figures[2] = format!("{}.{}", tenths / 10, tenths % 10);
                        if line.measure.is_of_children() {
                            figures[3] = format!("{:.1}", interval.low * 100.0);
                            figures[4] = format!("{:.1}", interval.high * 100.0);
                        }
                    }
                    Share::Private => withheld.push("pct:private".to_owned()),
                    Share::Few => withheld.push("pct:few".to_owned()),
                    Share::Nobody => {}
                }
            }
        }
    }
    let [n, den, pct, low, high] = figures;
    let class = line.class.map_or(domain::report::csv_table::ALL, Class::code);
    [
        line.period.clone(),
        csv_text::text(line.place),
        line.measure.code().to_owned(),
        class.to_owned(),
        n,
        den,
        pct,
        low,
        high,
        state.to_owned(),
        csv_text::text(&withheld.join(";")),
    ]
}

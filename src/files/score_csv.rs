//! The CSV of measurements that `spoonround score` reads and the CSV of z-scores it writes. It knows neither files nor the terminal.

use std::fmt;
use std::io::{Read, Write};

use csv::ByteRecord;
use domain::child::Sex;
use domain::growth::{Figures, Indicator, Score, Scores, outside_limits};
use domain::number_text::{NumberFault, parse_scaled};
use domain::visit::Position;

/// The columns that are read. All but `head_mm` are written again, in this order.
const INPUT: [&str; 9] = ["id", "sex", "age_days", "weight_kg", "length_cm", "measured", "muac_mm", "oedema", "head_mm"];
const ID: usize = 0;
const SEX: usize = 1;
const AGE_DAYS: usize = 2;
const WEIGHT_KG: usize = 3;
const LENGTH_CM: usize = 4;
const MEASURED: usize = 5;
const MUAC_MM: usize = 6;
const OEDEMA: usize = 7;
const HEAD_MM: usize = 8;

/// How many of [`INPUT`] are written again.
const ECHOED: usize = HEAD_MM;

/// The columns that are added.
const ADDED: [&str; 8] = ["waz", "laz", "wlz", "bmiz", "mauz", "flags", "hcz", "reasons"];

/// Decimals read of a weight in kg, a length in cm and a circumference in mm.
const DECIMALS: u32 = 6;

/// Why the first line cannot be used; every fault of it at once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum HeaderFault {
    /// There is nothing in the file.
    Empty,
    /// A column that each row needs is not named.
    Missing(&'static str),
    /// None of the columns that hold a measurement is named.
    NoMeasurement,
    /// Two columns have the same name.
    Twice(&'static str),
    /// The cells are parted by semicolons.
    Semicolons,
}

impl fmt::Display for HeaderFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "there is nothing in it. Its first line must name the columns: {}", INPUT.join(",")),
            Self::Missing(column) => write!(f, "line 1: the column {column} is missing. Add it, or rename the column that holds it"),
            Self::NoMeasurement => {
                write!(f, "line 1: there is no measurement. Name at least one column weight_kg, length_cm, muac_mm or head_mm")
            }
            Self::Twice(column) => write!(f, "line 1: two columns are named {column}. Remove or rename one of them"),
            Self::Semicolons => write!(f, "line 1: the columns are parted by semicolons. Save the file with commas between the columns"),
        }
    }
}

/// What is wrong with one cell, or with a row as a whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CellFault {
    /// The column; `None` for the row as a whole.
    pub column: Option<&'static str>,
    /// What was found.
    pub found: String,
    /// What to do, as a sentence.
    pub advice: &'static str,
}

/// Every fault of one row. The row is written all the same, without values.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowFault {
    /// Line of the input, from 1.
    pub line: u64,
    /// The row's `id`, if it has one.
    pub id: String,
    /// The faults; never empty.
    pub faults: Vec<CellFault>,
}

impl fmt::Display for RowFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (number, fault) in self.faults.iter().enumerate() {
            if number > 0 {
                writeln!(f)?;
            }
            write!(f, "line {}", self.line)?;
            if !self.id.is_empty() {
                write!(f, " (id {})", self.id)?;
            }
            if let Some(column) = fault.column {
                write!(f, ", column {column}")?;
            }
            write!(f, ": {:?}. {}", fault.found, fault.advice)?;
        }
        Ok(())
    }
}

/// One row of the input: its cells in the order of the output, and what they say.
pub struct Row {
    cells: [String; INPUT.len()],
    /// The measurements, or what is wrong with the row.
    pub figures: Result<Figures, RowFault>,
}

/// Reads measurements row by row.
pub struct MeasurementReader<R> {
    csv: csv::Reader<R>,
    /// Where each of [`INPUT`] stands in the file.
    places: [Option<usize>; INPUT.len()],
    width: usize,
    record: ByteRecord,
    unused: Vec<String>,
}

impl<R: Read> MeasurementReader<R> {
    /// Reads the first line.
    ///
    /// # Errors
    /// The faults of the first line, or what the reading itself failed of.
    pub fn new(input: R) -> Result<Result<Self, Vec<HeaderFault>>, csv::Error> {
        let mut csv = csv::ReaderBuilder::new().flexible(true).from_reader(input);
        let header = csv.byte_headers()?.clone();
        if header.iter().all(<[u8]>::is_empty) {
            return Ok(Err(vec![HeaderFault::Empty]));
        }
        let mut places = [None; INPUT.len()];
        let (mut faults, mut unused) = (Vec::new(), Vec::new());
        for (place, name) in header.iter().enumerate() {
            let name = String::from_utf8_lossy(name);
            let name = name.trim_start_matches('\u{feff}').trim().to_lowercase();
            match INPUT.iter().position(|column| *column == name) {
                Some(column) if places[column].is_some() => faults.push(HeaderFault::Twice(INPUT[column])),
                Some(column) => places[column] = Some(place),
                None if ADDED.contains(&name.as_str()) => {}
                None => unused.push(name),
            }
        }
        for column in [SEX, AGE_DAYS] {
            if places[column].is_none() {
                faults.push(HeaderFault::Missing(INPUT[column]));
            }
        }
        if [WEIGHT_KG, LENGTH_CM, MUAC_MM, HEAD_MM].iter().all(|column| places[*column].is_none()) {
            faults.push(HeaderFault::NoMeasurement);
        }
        if !faults.is_empty() {
            let semicolons = header.len() == 1 && header.get(0).is_some_and(|cell| cell.contains(&b';'));
            return Ok(Err(if semicolons { vec![HeaderFault::Semicolons] } else { faults }));
        }
        Ok(Ok(Self { csv, places, width: header.len(), record: ByteRecord::new(), unused }))
    }

    /// Columns of the input that are neither read nor of the output: perhaps misspelt.
    pub fn unused(&self) -> &[String] {
        &self.unused
    }

    /// The next row; `None` at the end.
    ///
    /// # Errors
    /// What the reading failed of. A row with faults is no error.
    pub fn next_row(&mut self) -> Result<Option<Row>, csv::Error> {
        if !self.csv.read_byte_record(&mut self.record)? {
            return Ok(None);
        }
        let mut faults = Vec::new();
        let cells = self.places.map(|place| {
            let cell = place.and_then(|place| self.record.get(place)).unwrap_or_default();
            String::from_utf8_lossy(cell).trim().to_owned()
        });
        for (cell, column) in cells.iter().zip(INPUT) {
            if cell.contains('\u{fffd}') {
                faults.push(fault(Some(column), cell, "Save the file in the encoding UTF-8"));
            }
        }
        if self.record.len() != self.width {
            let found = format!("{} cells instead of {}", self.record.len(), self.width);
            faults.push(fault(
                None,
                &found,
                "Give the row as many cells as the first line has; a comma inside a cell needs quotation marks",
            ));
        } else if self.record.iter().any(|cell| cell.contains(&b'\n')) {
            faults.push(fault(None, "a cell of several lines", "Close the quotation mark; the lines it swallowed were not read"));
        }
        let figures = match figures(&cells, &mut faults) {
            Some(figures) if faults.is_empty() => Ok(figures),
            _ => Err(RowFault { line: self.record.position().map_or(0, csv::Position::line), id: cells[ID].clone(), faults }),
        };
        Ok(Some(Row { cells, figures }))
    }
}

fn fault(column: Option<&'static str>, found: &str, advice: &'static str) -> CellFault {
    CellFault { column, found: found.to_owned(), advice }
}

/// Reads every cell, also after a fault, so that all of them are named at once. `None` only together with a fault.
fn figures(cells: &[String; INPUT.len()], faults: &mut Vec<CellFault>) -> Option<Figures> {
    let mut word = |column: usize, words: &[(&str, usize)], advice| {
        let found = words.iter().position(|(word, _)| word.eq_ignore_ascii_case(&cells[column]));
        if found.is_none() {
            faults.push(fault(Some(INPUT[column]), &cells[column], advice));
        }
        found.map(|index| words[index].1)
    };
    let sex = word(SEX, &[("F", 0), ("M", 1)], "Write F for a girl or M for a boy");
    let position = word(
        MEASURED,
        &[("", 0), ("L", 1), ("H", 2)],
        "Write L for lying, H for standing, or leave it empty for the usual one at this age",
    );
    let oedema = word(OEDEMA, &[("", 0), ("0", 0), ("1", 1)], "Write 1 if both feet are swollen, else 0, or leave it empty if not asked");
    let age_days = whole_days(&cells[AGE_DAYS]);
    if age_days.is_none() {
        faults.push(fault(Some(INPUT[AGE_DAYS]), &cells[AGE_DAYS], "Write the age in whole days, such as 202; it is needed"));
    }
    let weight_kg = measure(WEIGHT_KG, cells, faults, "Write kilograms with at most 6 decimals, such as 7.35, or leave it empty");
    let length_cm = measure(LENGTH_CM, cells, faults, "Write centimetres with at most 6 decimals, such as 65.5, or leave it empty");
    let muac_mm = measure(MUAC_MM, cells, faults, "Write millimetres, such as 138, or leave it empty");
    let head_mm = measure(HEAD_MM, cells, faults, "Write millimetres, such as 431, or leave it empty");
    Some(Figures {
        sex: if sex? == 0 { Sex::Female } else { Sex::Male },
        age_days: age_days?,
        // A division of two whole numbers is rounded once: 65.3 cm are 653 mm and nothing beside.
        weight_kg: weight_kg.map(|scaled| scaled / 1e6),
        length_mm: length_cm.map(|scaled| scaled / 1e5),
        position: [None, Some(Position::Lying), Some(Position::Standing)][position?],
        muac_mm: muac_mm.map(|scaled| scaled / 1e6),
        head_mm: head_mm.map(|scaled| scaled / 1e6),
        oedema: oedema? == 1,
    })
}

/// A positive number scaled by `10^DECIMALS`; whole and below 2^53, so exact.
fn measure(column: usize, cells: &[String; INPUT.len()], faults: &mut Vec<CellFault>, advice: &'static str) -> Option<f64> {
    let cell = &cells[column];
    if cell.is_empty() {
        return None;
    }
    let scaled =
        parse_scaled(cell, DECIMALS).and_then(|value| if value > 0 && value < 1 << 53 { Ok(value) } else { Err(NumberFault::TooLong) });
    match scaled {
        Ok(value) => Some(value as f64),
        Err(_) => {
            faults.push(fault(Some(INPUT[column]), cell, advice));
            None
        }
    }
}

/// Whole days; negative for a corrected age before the due date.
fn whole_days(cell: &str) -> Option<i32> {
    let (sign, digits) = cell.strip_prefix('-').map_or((1, cell), |digits| (-1, digits));
    i32::try_from(parse_scaled(digits, 0).ok()?).ok().map(|days| sign * days)
}

/// Writes rows with their z-scores, flags and reasons.
pub struct ScoreWriter<W: Write> {
    csv: csv::Writer<W>,
    /// One row as text, kept to save allocating it anew.
    text: String,
}

impl<W: Write> ScoreWriter<W> {
    /// Writes the first line.
    ///
    /// # Errors
    /// What the writing failed of.
    pub fn new(output: W) -> Result<Self, csv::Error> {
        let mut csv = csv::Writer::from_writer(output);
        csv.write_record(INPUT[..ECHOED].iter().chain(&ADDED))?;
        Ok(Self { csv, text: String::new() })
    }

    /// Writes one row. A row with faults has no value, and `column:bad_value` (or `row:bad_value`) as its reasons.
    ///
    /// # Errors
    /// What the writing failed of.
    pub fn write(&mut self, row: &Row, scores: Option<&Scores>) -> Result<(), csv::Error> {
        for cell in &row.cells[..ECHOED] {
            self.csv.write_field(cell)?;
        }
        let indicators = [Indicator::Waz, Indicator::Laz, Indicator::Wlz, Indicator::Bmiz, Indicator::Mauz];
        let score = |indicator| scores.map(|scores| scores.get(indicator));
        for indicator in indicators {
            self.value(score(indicator))?;
        }
        self.text.clear();
        for indicator in Indicator::ALL {
            if score(*indicator).and_then(Score::rounded).is_some_and(|z| outside_limits(*indicator, z)) {
                join(&mut self.text, &[indicator.code()]);
            }
        }
        self.csv.write_field(&self.text)?;
        self.value(score(Indicator::Hcz))?;
        self.text.clear();
        for indicator in Indicator::ALL {
            if let Some(reason) = score(*indicator).and_then(Score::reason) {
                join(&mut self.text, &[indicator.code(), ":", reason.code()]);
            }
        }
        if let Err(fault) = &row.figures {
            for cell in &fault.faults {
                join(&mut self.text, &[cell.column.unwrap_or("row"), ":bad_value"]);
            }
        }
        self.csv.write_field(&self.text)?;
        self.csv.write_record(None::<&[u8]>)
    }

    fn value(&mut self, score: Option<Score>) -> Result<(), csv::Error> {
        use std::fmt::Write as _;
        self.text.clear();
        if let Some(z) = score.and_then(Score::value) {
            // Writing to a text cannot fail.
            let _ = write!(self.text, "{:.4}", z.value());
            if self.text == "-0.0000" {
                self.text.remove(0);
            }
        }
        self.csv.write_field(&self.text)
    }

    /// Writes what is left.
    ///
    /// # Errors
    /// What the writing failed of.
    pub fn finish(mut self) -> std::io::Result<()> {
        self.csv.flush()
    }
}

fn join(text: &mut String, parts: &[&str]) {
    if !text.is_empty() {
        text.push(';');
    }
    parts.iter().for_each(|part| text.push_str(part));
}

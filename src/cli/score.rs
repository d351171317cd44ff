//! `spoonround score`: measurements in, z-scores out, row by row. It knows no database and no child.

use std::io::{Read, Write};

use domain::growth::scores_of;

use crate::files::score_csv::{HeaderFault, MeasurementReader, RowFault, ScoreWriter};

/// What a run did.
#[derive(Debug, Default)]
pub struct Summary {
    /// Rows read and written.
    pub rows: u64,
    /// The rows that were not scored, and why.
    pub faults: Vec<RowFault>,
    /// Columns of the input that were not used: perhaps misspelt.
    pub unused_columns: Vec<String>,
}

impl Summary {
    /// Tells what happened, to be read by a person: each fault with its line, and the counts at the end.
    ///
    /// # Errors
    /// What the writing failed of.
    pub fn report(&self, mut to: impl Write) -> std::io::Result<()> {
        if !self.unused_columns.is_empty() {
            writeln!(to, "note: columns not used: {}", self.unused_columns.join(", "))?;
        }
        for fault in &self.faults {
            writeln!(to, "{fault}")?;
        }
        writeln!(to, "{} rows scored, {} not scored", self.rows - self.faults.len() as u64, self.faults.len())
    }

    /// Whether every row was scored: exit status 0, else 1.
    #[must_use]
    pub fn all_scored(&self) -> bool {
        self.faults.is_empty()
    }
}

/// Why a run ended before its input did.
#[derive(Debug, thiserror::Error)]
pub enum ScoreError {
    /// The first line does not name the columns.
    #[error("the input cannot be used:\n{}", lines(.0))]
    Header(Vec<HeaderFault>),
    /// Reading failed.
    #[error("the input could not be read: {0}. Rows before it were written")]
    Read(csv::Error),
    /// Writing failed.
    #[error("the output could not be written: {0}. Check the space left and that nothing closed it")]
    Write(std::io::Error),
}

fn lines(faults: &[HeaderFault]) -> String {
    faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

/// Scores a CSV of measurements. A row with faults is written without values, and named in the summary.
///
/// # Errors
/// [`ScoreError`] if the first line cannot be used, or reading or writing fails.
pub fn run(input: impl Read, output: impl Write) -> Result<Summary, ScoreError> {
    let mut reader = MeasurementReader::new(input).map_err(ScoreError::Read)?.map_err(ScoreError::Header)?;
    let mut writer = ScoreWriter::new(output).map_err(write_error)?;
    let mut summary = Summary { unused_columns: reader.unused().to_vec(), ..Summary::default() };
    loop {
        let row = match reader.next_row() {
            Ok(Some(row)) => row,
            Ok(None) => break,
            Err(error) => {
                writer.finish().map_err(ScoreError::Write)?;
                return Err(ScoreError::Read(error));
            }
        };
        let scores = row.figures.as_ref().ok().map(scores_of);
        writer.write(&row, scores.as_ref()).map_err(write_error)?;
        summary.rows += 1;
        if let Err(fault) = row.figures {
            summary.faults.push(fault);
        }
    }
    writer.finish().map_err(ScoreError::Write)?;
    Ok(summary)
}

fn write_error(error: csv::Error) -> ScoreError {
    ScoreError::Write(match error.into_kind() {
        csv::ErrorKind::Io(error) => error,
        other => std::io::Error::other(format!("{other:?}")),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 400 measurements with z-scores, made outside this project from the WHO Child Growth Standards 2006 and 2007.
    const CHECK_VALUES: &str = include_str!("../../tests/data/growth/golden_public.csv");

    fn score(input: &str) -> (String, Summary) {
        let mut output = Vec::new();
        let summary = run(input.as_bytes(), &mut output).expect("a usable first line");
        (String::from_utf8(output).expect("text"), summary)
    }

    #[test]
    fn the_check_values_come_out_as_they_are() {
        let input: String = CHECK_VALUES.lines().map(|line| line.split(',').take(8).collect::<Vec<_>>().join(",") + "\n").collect();
        let (output, summary) = score(&input);
        assert!(summary.all_scored() && summary.unused_columns.is_empty());
        assert_eq!(summary.rows, 400);
        let mut compared = 0;
        for (line, expected) in output.lines().zip(CHECK_VALUES.lines()) {
            let cells: Vec<&str> = line.split(',').collect();
            assert_eq!(cells.len(), 16, "{line}");
            assert_eq!(cells[..14].join(","), expected);
            compared += 1;
        }
        assert_eq!(compared, 401);
        // Its own output is an input too.
        assert_eq!(score(&output).0, output);
    }

    #[test]
    fn every_empty_value_has_its_reason() {
        let (output, _) = score(CHECK_VALUES);
        for line in output.lines().skip(1) {
            let cells: Vec<&str> = line.split(',').collect();
            for (code, cell) in ["waz", "laz", "wlz", "bmiz", "mauz"].iter().zip(&cells[8..13]).chain([(&"hcz", &cells[14])]) {
                assert_eq!(cell.is_empty(), cells[15].split(';').any(|reason| reason.starts_with(&format!("{code}:"))), "{line}");
            }
        }
    }

    #[test]
    fn columns_may_stand_in_any_order_and_head_circumference_is_scored() {
        let (output, summary) = score("\u{feff}Head_mm, AGE_days,sex,village,weight_kg\n\"431\",202,f,Ulopi,7.10\n");
        assert_eq!(summary.unused_columns, ["village"]);
        assert!(summary.all_scored());
        let row = output.lines().nth(1).expect("a row");
        // Girl, day 202: M 42.6117 cm, S 0.03079 (WHO 2007), so (43.1 / M - 1) / S; 7.10 kg is z -0.48 (WHO 2006).
        assert!(row.starts_with(",f,202,7.10,,,,,-0.4751,,,,,,0.3722,"), "{row}");
        assert!(row.ends_with(",laz:no_length;wlz:no_length;bmiz:no_length;mauz:not_measured"), "{row}");
    }

    #[test]
    fn a_bad_row_is_named_and_the_others_are_scored() {
        let (output, summary) = score(
            "id,sex,age_days,weight_kg,length_cm,measured,muac_mm,oedema\n\
             A,F,202,7.10,65.5,L,138,0\n\
             B,X,20.5,7.3.5,-65,Z,0,2\n\
             C,F,202\n\
             D,M,-3,3.2,,,,\n\
             E,F,202,7.10,65.5,L,138,0\n",
        );
        assert_eq!((summary.rows, summary.faults.len()), (5, 2));
        let columns: Vec<_> = summary.faults[0].faults.iter().filter_map(|fault| fault.column).collect();
        assert_eq!(columns, ["sex", "measured", "oedema", "age_days", "weight_kg", "length_cm", "muac_mm"]);
        assert_eq!((summary.faults[0].line, summary.faults[0].id.as_str(), summary.faults[1].line), (3, "B", 4));
        let rows: Vec<&str> = output.lines().collect();
        assert_eq!(rows[1].replace("A,", "E,"), rows[5]);
        assert!(rows[1].starts_with("A,F,202,7.10,65.5,L,138,0,-0.4") && rows[1].ends_with(",,,hcz:not_measured"), "{}", rows[1]);
        assert!(rows[2].starts_with("B,X,20.5,7.3.5,-65,Z,0,2,,,,,,,,sex:bad_value;"), "{}", rows[2]);
        assert!(rows[3].ends_with("row:bad_value"), "{}", rows[3]);
        assert!(rows[4].contains("waz:before_due_date"), "{}", rows[4]);
        let mut report = Vec::new();
        summary.report(&mut report).expect("written");
        let report = String::from_utf8(report).expect("text");
        assert!(report.contains("line 3 (id B), column weight_kg: \"7.3.5\". Write kilograms"), "{report}");
        assert!(report.contains("line 4 (id C): \"3 cells instead of 8\""), "{report}");
        assert!(report.ends_with("3 rows scored, 2 not scored\n"), "{report}");
    }

    #[test]
    fn an_open_quotation_mark_does_not_swallow_rows_in_silence() {
        let (output, summary) = score("sex,age_days,weight_kg,id\nF,202,7.1,\"A\nF,202,7.2,B\nF,202,7.3,C\n");
        assert_eq!((summary.rows, summary.faults.len()), (1, 1));
        assert_eq!((summary.faults[0].line, summary.faults[0].faults[0].found.as_str()), (2, "a cell of several lines"));
        assert!(output.contains("row:bad_value"));
    }

    #[test]
    fn bytes_that_are_no_text_are_a_fault_of_their_row() {
        let mut output = Vec::new();
        let summary = run(&b"id,sex,age_days,weight_kg\nJos\xe9,M,202,7.1\nB,M,202,7.1\n"[..], &mut output).expect("a usable first line");
        assert_eq!((summary.rows, summary.faults.len()), (2, 1));
        assert_eq!(summary.faults[0].faults[0].column, Some("id"));
    }

    #[test]
    fn a_first_line_that_cannot_be_used_says_why() {
        let faults = |input: &str| match run(input.as_bytes(), Vec::new()) {
            Err(ScoreError::Header(faults)) => faults,
            other => panic!("{other:?}"),
        };
        assert_eq!(faults(""), [HeaderFault::Empty]);
        assert_eq!(faults("id;sex;age_days;weight_kg\n"), [HeaderFault::Semicolons]);
        assert_eq!(
            faults("id,weight_kg,Weight_kg\n"),
            [HeaderFault::Twice("weight_kg"), HeaderFault::Missing("sex"), HeaderFault::Missing("age_days")]
        );
        assert_eq!(faults("id,sex,age_days,weight\n"), [HeaderFault::NoMeasurement]);
    }

    #[test]
    fn a_full_disk_is_an_error() {
        struct Full;
        impl Write for Full {
            fn write(&mut self, _: &[u8]) -> std::io::Result<usize> {
                Err(std::io::Error::other("no space left"))
            }
            fn flush(&mut self) -> std::io::Result<()> {
                Ok(())
            }
        }
        assert!(matches!(run(&b"sex,age_days,weight_kg\nF,202,7.1\n"[..], Full), Err(ScoreError::Write(_))));
    }

    #[test]
    fn a_value_that_rounds_to_nothing_has_no_sign() {
        // Boy, day 0 (WHO 2006): M 3.3464 kg, S 0.14602; a hundredth of a gram below the median is z -0.00002.
        let (output, _) = score("sex,age_days,weight_kg\nM,0,3.34639\n");
        assert_eq!(output.lines().nth(1).and_then(|row| row.split(',').nth(8)), Some("0.0000"));
    }
}

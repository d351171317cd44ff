//! Texts in CSV files as people open them: no text becomes a formula, and none falls into two cells, whichever separator a spreadsheet
//! takes. Numbers are no texts and stay numbers.

use std::io::Write;

/// What begins a formula (OWASP, "CSV injection": = + - @, a tab or a line break; their full-width look-alikes from memory).
const BEGINS_FORMULA: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
/// What a spreadsheet may take for the end of a cell: by itself (tab, comma and semicolon), by its language, or when asked to.
const ENDS_CELL: [char; 6] = [',', ';', '\t', '|', '\r', '\n'];

/// A writer of lines whose texts went through [`text`]: nothing is quoted a second time. Rows of different length are refused.
pub fn writer<W: Write>(into: W) -> csv::Writer<W> {
    csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).quote_style(csv::QuoteStyle::Never).from_writer(into)
}

/// A text as it is written: an apostrophe before whatever would begin a formula in a cell, and quoted if it holds a separator.
#[must_use]
pub fn text(text: &str) -> String {
    let harmless = harmless(text);
    if harmless.contains(ENDS_CELL) || harmless.contains('"') { format!("\"{}\"", harmless.replace('"', "\"\"")) } else { harmless }
}

/// Spaces and quotes do not hide what follows them: a spreadsheet may take them away.
fn harmless(text: &str) -> String {
    let mut harmless = String::with_capacity(text.len());
    let mut at_beginning = true;
    for c in text.chars() {
        if at_beginning && BEGINS_FORMULA.contains(&c) {
            harmless.push('\'');
        }
        harmless.push(c);
        at_beginning = ENDS_CELL.contains(&c) || (at_beginning && (c.is_whitespace() || c == '"'));
    }
    harmless
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_would_begin_a_formula_gets_an_apostrophe() {
        for (given, written) in [
            ("=1+1", "'=1+1"),
            ("+1", "'+1"),
            ("-1", "'-1"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("＝1", "'＝1"),
            ("－1", "'－1"),
            (" =1", " '=1"),
            ("\u{a0}=1", "\u{a0}'=1"),
            ("\t=1", "\"'\t'=1\""),
            ("\r=1", "\"'\r'=1\""),
            ("\n=1", "\"'\n'=1\""),
            ("a;=1;b", "\"a;'=1;b\""),
            ("a, -1", "\"a, '-1\""),
            ("\"=1", "\"\"\"'=1\""),
        ] {
            assert_eq!(text(given), written, "{given:?}");
        }
    }

    #[test]
    fn honest_texts_stay_as_they_are() {
        for given in ["", "mbiro-hill", "Kesara Lake and Tenzu hills", "2026-Q3", "0-5", "24+", "n:small", "'quoted'", "Côte d’en bas"] {
            assert_eq!(text(given), given);
        }
        assert_eq!(text("Sanga \"Point\", lower"), "\"Sanga \"\"Point\"\", lower\"");
        assert_eq!(text("n:small;pct:small"), "\"n:small;pct:small\"");
    }

    #[test]
    fn lines_read_back_with_their_apostrophes() {
        let given = ["=1", "a;\"b\",c", "", "two\r\nlines", "-5"];
        let mut csv = writer(Vec::new());
        csv.write_record(given.map(text)).expect("written");
        let bytes = csv.into_inner().expect("whole");
        assert!(bytes.ends_with(b"\r\n"));
        let mut read = csv::ReaderBuilder::new().has_headers(false).from_reader(bytes.as_slice());
        let record = read.records().next().expect("a row").expect("read");
        assert_eq!(record.iter().collect::<Vec<_>>(), given.map(harmless));
    }
}

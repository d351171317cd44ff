//! How measuring goes as the internal file `quality.csv`, in the form of the report files: UTF-8, CRLF, one header row. A figure of
//! too few measurements is empty. It counts nothing.

use chrono::NaiveDateTime;
use domain::quality::Item;
use domain::quality::figures::Figures;
use domain::report::csv_table::DEFINITIONS_VERSION;

use crate::files::csv_text;

/// What is the same in every line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QualityHead<'a> {
    /// The programme.
    pub programme: &'a str,
    /// The month, or the days from and to.
    pub period: &'a str,
    /// The protocol in force at its end.
    pub protocol: (&'a str, &'a str),
    /// The instant, UTC.
    pub generated_at: NaiveDateTime,
}

/// A line: an area and a worker, `all` for each of them.
#[derive(Debug, Clone, PartialEq)]
pub struct QualityLine<'a> {
    /// Code of the area.
    pub area: &'a str,
    /// Sign-in name of the worker.
    pub worker: &'a str,
    /// The figures.
    pub figures: &'a Figures,
}

const COLUMNS: [&str; 37] = [
    "programme",
    "period",
    "area",
    "protocol_id",
    "protocol_version",
    "generated_at",
    "definitions_version",
    "worker_code",
    "visits_n",
    "n_weight",
    "n_length",
    "n_muac",
    "complete_weight_pct",
    "complete_length_pct",
    "complete_muac_pct",
    "dob_day_known_pct",
    "dob_15th_pct",
    "digit_spread_weight",
    "digit_spread_length",
    "digit_spread_muac",
    "mean_waz",
    "sd_waz",
    "flag_pct_waz",
    "mean_laz",
    "sd_laz",
    "flag_pct_laz",
    "mean_wlz",
    "sd_wlz",
    "flag_pct_wlz",
    "flag_pct_any",
    "repeat_exact_pct",
    "jump_n",
    "corrected_n",
    "sync_lag_median_d",
    "sex_ratio",
    "age_ratio_6_11_to_12_17",
    "look_again",
];

/// The bytes of the file.
///
/// # Errors
/// What the writing failed of.
pub fn write(head: &QualityHead<'_>, lines: &[QualityLine<'_>]) -> Result<Vec<u8>, csv::Error> {
    let mut csv = csv_text::writer(Vec::new());
    csv.write_record(COLUMNS)?;
    for line in lines {
        csv.write_record(record(head, line))?;
    }
    csv.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

fn record(head: &QualityHead<'_>, line: &QualityLine<'_>) -> Vec<String> {
    let of = line.figures;
    let figure = |value: Option<f64>, digits: usize| value.map_or_else(String::new, |value| fixed(value, digits));
    let item = |item: Item| figure(of.of(item), 1);
    let mut cells = vec![
        csv_text::text(head.programme),
        csv_text::text(head.period),
        csv_text::text(line.area),
        csv_text::text(head.protocol.0),
        csv_text::text(head.protocol.1),
        head.generated_at.format("%Y-%m-%dT%H:%M:%SZ").to_string(),
        DEFINITIONS_VERSION.to_owned(),
        csv_text::text(line.worker),
        of.quality.visits.to_string(),
    ];
    cells.extend(of.measured.map(|count| count.to_string()));
    cells.extend([Item::CompleteWeight, Item::CompleteLength, Item::CompleteArm].map(item));
    cells.extend([of.birth_day_known_pct, of.excess_1st_15th_pct].map(|value| figure(value, 1)));
    cells.extend([Item::DigitsWeight, Item::DigitsLength, Item::DigitsArm].map(item));
    for spread in &of.spread {
        cells.extend([figure(spread.mean, 2), figure(spread.sd, 2), figure(spread.outside_pct, 1)]);
    }
    cells.extend([Item::Outside, Item::Repeated].map(item));
    cells.extend([of.jumps, of.quality.corrected].map(|count| count.to_string()));
    cells.push(of.quality.arrival_days.map_or_else(String::new, |days| days.to_string()));
    cells.extend([of.sex_ratio, of.age_ratio].map(|value| figure(value, 2)));
    cells.push(csv_text::text(&of.look_again().map(Item::code).collect::<Vec<_>>().join(";")));
    cells
}

/// With so many digits after the point; a nought has no sign.
fn fixed(value: f64, digits: usize) -> String {
    let text = format!("{value:.digits$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|b| matches!(b, b'0' | b'.')) => rest.to_owned(),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_has_a_cell_for_each_column_and_a_nought_no_sign() {
        let figures = domain::quality::figures::figures(&[]);
        let at = chrono::NaiveDate::from_ymd_opt(2026, 12, 1).and_then(|day| day.and_hms_opt(8, 0, 0)).expect("an instant");
        let head = QualityHead { programme: "Kesara", period: "2026-11", protocol: ("kesara-tenzu", "1.1.0"), generated_at: at };
        let bytes = write(&head, &[QualityLine { area: "all", worker: "all", figures: &figures }]).expect("written");
        let text = String::from_utf8(bytes).expect("text");
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines[1], "Kesara,2026-11,all,kesara-tenzu,1.1.0,2026-12-01T08:00:00Z,2,all,0,0,0,0,,,,,,,,,,,,,,,,,,,,0,0,,,,");
        assert_eq!((fixed(-0.04, 1), fixed(-0.05, 2), fixed(1.005, 1)), ("0.0".to_owned(), "-0.05".to_owned(), "1.0".to_owned()));
    }
}

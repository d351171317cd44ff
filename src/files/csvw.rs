//! What a file holds, for machines: a description beside each table (CSV on the Web, W3C recommendation of 17 December 2015,
//! "Metadata Vocabulary for Tabular Data"). It knows which columns hold what, and no words: those are given to it.

use domain::report::csv_table::Table;
use domain::report::definitions::Holds;
use domain::report::definitions::SPLITS;
use domain::report::definitions::holds;
use domain::report::period::Period;
use serde_json::Value;
use serde_json::json;

/// A text in each language: its code and the text.
pub type Texts = Vec<(&'static str, String)>;

/// The words for a table.
pub struct Described<'a> {
    /// What the table holds.
    pub table: Texts,
    /// What a column holds.
    pub column: &'a dyn Fn(&str) -> Texts,
}

/// The name of the description of a table's file.
#[must_use]
pub fn name(table: &Table) -> String {
    format!("{}.csv-metadata.json", table.name)
}

/// The bytes of the description, the same every time.
#[must_use]
pub fn write(table: &Table, period: Period, words: &Described<'_>) -> Vec<u8> {
    let columns: Vec<Value> = table.columns.iter().map(|column| described(column, period, (words.column)(column))).collect();
    let key: Vec<&str> = table.columns.iter().copied().filter(|column| SPLITS.contains(column)).collect();
    let whole = json!({
        "@context": "http://www.w3.org/ns/csvw",
        "url": format!("{}.csv", table.name),
        "dc:description": texts(words.table.clone()),
        "dialect": { "encoding": "utf-8", "header": true, "delimiter": ",", "quoteChar": "\"", "lineTerminators": ["\r\n"] },
        "tableSchema": { "columns": columns, "primaryKey": key },
    });
    let mut bytes = serde_json::to_vec_pretty(&whole).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

fn texts(texts: Texts) -> Value {
    texts.into_iter().map(|(language, text)| json!({ "@value": text, "@language": language })).collect()
}

fn described(column: &str, period: Period, words: Texts) -> Value {
    let held = holds(column);
    // A figure may be private, or there may be nobody to count; nothing else is ever empty but the list of private ones.
    let may_be_empty = matches!(held, Some(Holds::Count | Holds::Days | Holds::Percent | Holds::Withheld) | None);
    json!({
        "name": column,
        "titles": column,
        "dc:description": texts(words),
        "datatype": datatype(column, held, period),
        "null": "",
        "required": !may_be_empty,
    })
}

fn datatype(column: &str, held: Option<Holds>, period: Period) -> Value {
    let code = |format: &str| json!({ "base": "string", "format": format });
    match held {
        Some(Holds::Count | Holds::Days) => json!({ "base": "integer", "minimum": 0 }),
        Some(Holds::Percent) => json!({ "base": "decimal", "minimum": 0, "maximum": 100 }),
        Some(Holds::Instant) => json!("dateTime"),
        Some(Holds::Period) => match period {
            Period::Month(_) => json!("gYearMonth"),
            Period::Quarter(_) => code("[0-9]{4}-Q[1-4]"),
            Period::Year(_) => json!("gYear"),
        },
        Some(Holds::Withheld) => code("[a-z0-9_]+:[a-z]+(;[a-z0-9_]+:[a-z]+)*"),
        Some(Holds::Split) => match column {
            "area" => json!("string"),
            "sex" => code("F|M|all"),
            "age_band_at_visit" | "age_band_at_period_end" => code("[0-9]+-[0-9]+|24\\+|all"),
            _ => code("[A-Za-z0-9_.]+"),
        },
        Some(Holds::Code) => code("\\S+"),
        Some(Holds::Name) | None => json!("string"),
    }
}

#[cfg(test)]
mod tests {
    use domain::report::csv_table::Cell;
    use domain::report::csv_table::Release;

    use super::*;

    #[test]
    fn a_table_is_described_column_by_column() {
        let period = Period::parse("2026-10").expect("a month");
        let release = Release {
            programme: "kesara".to_owned(),
            period,
            protocol_id: "default".to_owned(),
            protocol_version: "1".to_owned(),
            generated_at: "2026-11-10T06:00:00".parse().expect("an instant"),
        };
        let mut table = Table::new("visits", &["slot", "due", "coverage_pct"]);
        table.push(&release, "ulopi", vec![Cell::text("m06"), Cell::Count(12), Cell::Empty]);
        let words = |column: &str| vec![("en", format!("The {column}")), ("fr", format!("Le {column}"))];
        let bytes = write(&table, period, &Described { table: words("table"), column: &words });
        let read: Value = serde_json::from_slice(&bytes).expect("JSON");
        assert_eq!(read["url"], "visits.csv");
        assert_eq!(read["tableSchema"]["primaryKey"], json!(["area", "slot"]));
        let columns = read["tableSchema"]["columns"].as_array().expect("columns");
        let named: Vec<&str> = columns.iter().filter_map(|column| column["titles"].as_str()).collect();
        assert_eq!(named, table.columns);
        let due = columns.iter().find(|column| column["name"] == "due").expect("a column");
        assert_eq!((&due["datatype"], &due["required"]), (&json!({ "base": "integer", "minimum": 0 }), &json!(false)));
        assert_eq!(due["dc:description"][1], json!({ "@value": "Le due", "@language": "fr" }));
    }
}

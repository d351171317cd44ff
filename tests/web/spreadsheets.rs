//! The files as a spreadsheet opens them: LibreOffice, told to take formulas for formulas, finds none in the files of a programme whose
//! name and villages were chosen to be some. Needs the Debian package `libreoffice-calc`; run with `--features spreadsheet-tests`.

use std::collections::BTreeMap;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use domain::ids::AreaId;
use domain::report::csv_table::Cell;
use domain::report::csv_table::Table;
use domain::report::definitions::Holds;
use domain::report::definitions::holds;
use domain::rule::Class;
use domain::rule::RuleId;
use roxmltree::Document;
use roxmltree::Node;
use spoonround::files::late_csv;
use spoonround::files::late_csv::LateRow;
use spoonround::files::report_csv;
use spoonround::store::areas;
use spoonround::store::areas::AreaRecord;
use spoonround::store::testing::day;

use crate::exports::fill;
use crate::site::Site;

/// What would be a formula at the beginning of a cell, or after what may end one.
const HOSTILE: [&str; 16] = [
    "=1+1",
    "+SUM(A1)",
    "-2+3",
    "@cmd",
    "＝1+1",
    " =1+1",
    "\"=1+1",
    "=HYPERLINK(\"x\";\"y\")",
    "a,=1+1",
    "a;=1+1;b",
    "a\",=1+1,\"b",
    "a|=1+1",
    "\t=1+1",
    "a\t=1+1",
    "\r=1+1",
    "a\n=1+1",
];
/// Few are enough: what is withheld is empty, and the rest are numbers.
const CHILDREN: u128 = 60;
/// Codes of villages.
const VILLAGES: [&str; 4] = ["=1+1", "-2+3", " @SUM(A1)", "a\",=1+1;=2+2"];
/// The programme's name, typed into the settings: each separator once.
const NAME: &str = "=1+1;=2+2,=3+3|=4+4 \"=5+5";
/// A file that holds a formula: if none is found in it, the others prove nothing.
const CONTROL: &str = "area,n\r\n=1+1,7\r\n";

/// Options of LibreOffice's filter for texts: separators, quotation mark, UTF-8, from the first line, …; the eleventh takes spaces away
/// at both ends, the last has formulas taken for formulas. The first is how the files are written.
const AS_WRITTEN: &str = "44,34,76,1,,0,false,false,false,false,false,0,true";
/// What the window for importing offers (comma, semicolon, tab); and a semicolon, as where the comma is for decimals, or a bar.
const OTHERWISE: [&str; 2] =
    ["44/59/9,34,76,1,,0,false,false,false,false,true,0,true", "59/124,34,76,1,,0,false,false,false,false,true,0,true"];

/// A cell as it arrived.
#[derive(Debug)]
struct Arrived {
    kind: String,
    value: Option<f64>,
    text: String,
}

/// An opened file: its rows, and the formulas in it.
struct Opened {
    rows: Vec<Vec<Arrived>>,
    formulas: Vec<String>,
}

/// Has LibreOffice open all files with these options.
fn opened(files: &BTreeMap<String, Vec<u8>>, place: &Path, options: &str) -> BTreeMap<String, Opened> {
    let (from, into) = (place.join("csv"), place.join("opened"));
    let _ = std::fs::remove_dir_all(&into);
    std::fs::create_dir_all(&from).expect("a folder");
    let paths: Vec<PathBuf> = files.keys().map(|name| from.join(name)).collect();
    paths.iter().zip(files.values()).for_each(|(path, bytes)| std::fs::write(path, bytes).expect("written"));
    let ran = Command::new("soffice")
        // A profile of its own: no setting of this machine's user counts, and nobody's running office is in the way.
        .arg(format!("-env:UserInstallation=file://{}", place.join("profile").display()))
        .args(["--headless", "--norestore", "--convert-to", "fods", "--outdir"])
        .arg(&into)
        .arg(format!("--infilter=Text - txt - csv (StarCalc):{options}"))
        .args(&paths)
        .output()
        .expect("soffice, of the Debian package libreoffice-calc");
    assert!(ran.status.success(), "{ran:?}");
    let read = |name: &String| {
        let path = into.join(name).with_extension("fods");
        let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}: {ran:?}", path.display()));
        (name.clone(), sheet(&Document::parse(&text).expect("XML")))
    };
    files.keys().map(read).collect()
}

fn attribute<'a>(node: Node<'a, '_>, name: &str) -> Option<&'a str> {
    node.attributes().find(|attribute| attribute.name() == name).map(|attribute| attribute.value())
}

fn sheet(document: &Document<'_>) -> Opened {
    let formulas = document.descendants().filter_map(|node| attribute(node, "formula")).map(str::to_owned).collect();
    let mut rows = Vec::new();
    for row in document.descendants().filter(|node| node.tag_name().name() == "table-row") {
        let mut cells = Vec::new();
        for cell in row.children().filter(|node| node.tag_name().name() == "table-cell") {
            let repeated = attribute(cell, "number-columns-repeated").map_or(1, |times| times.parse().expect("a number"));
            // What follows the last cell is one empty cell repeated to the end of the sheet.
            for _ in 0..if repeated > 1_000 { 0 } else { repeated } {
                let kind = attribute(cell, "value-type").unwrap_or_default().to_owned();
                let value = attribute(cell, "value").map(|value| value.parse().expect("a number"));
                cells.push(Arrived { kind, value, text: text(cell) });
            }
        }
        while cells.last().is_some_and(|cell| cell.kind.is_empty()) {
            cells.pop();
        }
        let repeated = attribute(row, "number-rows-repeated").map_or(1, |times| times.parse().expect("a number"));
        assert!(cells.is_empty() || repeated == 1, "no two rows of a file are alike");
        if !cells.is_empty() {
            rows.push(cells);
        }
    }
    Opened { rows, formulas }
}

/// The text of a cell; whatever stands for spaces, tabs and line breaks is a space.
fn text(cell: Node<'_, '_>) -> String {
    let paragraphs = cell.children().filter(|node| node.tag_name().name() == "p");
    let whole: String = paragraphs
        .flat_map(|p| p.descendants())
        .map(|node| match node.tag_name().name() {
            "s" | "tab" | "line-break" | "p" => " ",
            _ if node.is_text() => node.text().unwrap_or_default(),
            _ => "",
        })
        .collect();
    spaced(&whole)
}

fn spaced(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// All files of a month of a programme with such villages and name, in both flavours, over HTTP.
async fn of_a_month() -> BTreeMap<String, Vec<u8>> {
    let site = Site::new().await;
    fill(&site, CHILDREN).await;
    // The form for areas takes letters and digits only; these came in another way.
    for (n, code) in (0..).zip(VILLAGES) {
        let id = AreaId(site.ulopi.0 + 1_000 + n);
        let area = AreaRecord { id, code: code.to_owned(), name: code.to_owned(), parent: None, active: true, walk_minutes: None };
        areas::insert(site.db.db.direct(), &area).await.expect("kept");
    }
    let mut office = site.signed_in("teveli").await;
    office.open("/settings").await.submit("main form", &[("programme_name", NAME)]).await.is(200);
    let mut manager = site.signed_in("bemu").await;
    manager.open("/reports?period=2026-10").await.is(200);
    let links = manager.attrs("ul.plain a", "href");
    let mut files = BTreeMap::new();
    for link in links.iter().filter(|link| link.ends_with(".csv")) {
        manager.open(link).await.is(200);
        files.insert(link.rsplit('/').next().expect("a name").to_owned(), manager.bytes.clone());
    }
    assert_eq!(files.len(), 9 * 2, "{:?}", files.keys());
    files
}

/// A table and a list of late follow-ups whose every text is hostile.
fn made_by_hand() -> [(String, Vec<u8>); 3] {
    let rows = (0..).zip(HOSTILE).map(|(n, text)| vec![Cell::text(text), Cell::Count(n), Cell::Percent(267), Cell::text(text)]).collect();
    let table = Table { name: "enrolment", columns: vec!["area", "n", "pct", "withheld"], rows };
    let late: Vec<LateRow<'_>> = HOSTILE
        .iter()
        .map(|text| LateRow {
            child_code: text,
            village: text,
            worker: text,
            what: Some((RuleId::WeightLow, Class::Week, day("2026-11-20"))),
            days_late: 5,
            unanswered: false,
        })
        .collect();
    [
        ("hostile.csv".to_owned(), report_csv::write(&table).expect("written")),
        ("hostile-spreadsheet.csv".to_owned(), report_csv::write_for_spreadsheet(&table).expect("written")),
        ("late.csv".to_owned(), late_csv::write(&late).expect("written")),
    ]
}

/// Each cell is the one that was written: counts and shares as numbers, texts as texts, with their apostrophes.
fn arrived_as_written(name: &str, bytes: &[u8], found: &Opened) -> (usize, usize) {
    let (mut numbers, mut texts) = (0, 0);
    let bytes = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes);
    let mut csv = csv::ReaderBuilder::new().has_headers(false).from_reader(bytes);
    let written: Vec<csv::StringRecord> = csv.records().map(|row| row.expect("a row")).collect();
    assert_eq!(written.len(), found.rows.len(), "{name}");
    let columns = written[0].clone();
    for (line, (row, cells)) in written.iter().zip(&found.rows).enumerate() {
        for (at, (column, field)) in columns.iter().zip(row).enumerate() {
            let told = || format!("{name}, line {}, {column}: {field:?} became {:?}", line + 1, cells.get(at));
            if field.is_empty() {
                assert!(cells.get(at).is_none_or(|cell| cell.kind.is_empty()), "{}", told());
                continue;
            }
            let cell = cells.get(at).unwrap_or_else(|| panic!("{}", told()));
            let number = matches!(holds(column), Some(Holds::Count | Holds::Days | Holds::Percent)) || column == "days_late";
            if number && line > 0 {
                assert_eq!((cell.kind.as_str(), cell.value), ("float", field.parse().ok()), "{}", told());
                numbers += 1;
            } else if line == 0 || matches!(holds(column), Some(Holds::Name | Holds::Split | Holds::Withheld)) || field.starts_with('\'') {
                assert_eq!((cell.kind.as_str(), &cell.text), ("string", &spaced(field)), "{}", told());
                texts += 1;
            }
        }
    }
    (numbers, texts)
}

#[actix_web::test]
async fn no_text_of_a_file_becomes_a_formula_and_every_number_stays_one() {
    let mut files = of_a_month().await;
    files.extend(made_by_hand());
    let place = tempfile::tempdir().expect("a folder");
    let control = ("control.csv".to_owned(), CONTROL.as_bytes().to_vec());
    let holds_formulas = BTreeMap::from([control.clone()]);
    let mut all = files.clone();
    all.extend([control.clone()]);
    let found = opened(&all, place.path(), AS_WRITTEN);
    let (mut numbers, mut texts) = (0, 0);
    for (name, opened) in &found {
        if holds_formulas.contains_key(name) {
            assert_eq!(opened.formulas, ["of:=1+1"], "LibreOffice takes formulas for formulas");
            continue;
        }
        assert!(opened.formulas.is_empty(), "{name}: {:?}", opened.formulas);
        let (n, t) = arrived_as_written(name, &files[name], opened);
        (numbers, texts) = (numbers + n, texts + t);
    }
    assert!(numbers > 1_000 && texts > 1_000, "{numbers} numbers, {texts} texts");
    for options in OTHERWISE {
        let separators = options.split(',').next().unwrap_or_default();
        let control = CONTROL.replace(',', ";");
        let mut all = files.clone();
        all.insert("control.csv".to_owned(), control.into_bytes());
        for (name, opened) in opened(&all, place.path(), options) {
            if holds_formulas.contains_key(&name) {
                assert_eq!(opened.formulas, ["of:=1+1"], "{options}");
                continue;
            }
            assert!(opened.formulas.is_empty(), "{options} {name}: {:?}", opened.formulas);
            // Where the comma is one of the separators, no text falls into two cells.
            if separators.contains("44") {
                let wide = opened.rows[0].len();
                assert!(opened.rows.iter().all(|row| row.len() <= wide), "{name}: a row is wider than its head");
            }
        }
    }
}

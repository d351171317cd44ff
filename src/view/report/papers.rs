//! Two papers beside the files: what every column means, and one page of totals. Plain text, for whoever opens a folder.

use std::collections::BTreeSet;

use domain::feeding::ReactionLevel;
use domain::food::Allergen;
use domain::food::FoodGroup;
use domain::report::compare;
use domain::report::csv_table::ALL;
use domain::report::csv_table::Cell;
use domain::report::csv_table::DEFINITIONS_VERSION;
use domain::report::csv_table::Table;
use domain::report::definitions::Holds;
use domain::report::definitions::holds;
use domain::report::indicator::Indicator;
use domain::report::visits;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::label;
use crate::view::report::files::Bundle;
use crate::view::report::files::for_machines;

/// Changes told since the period before.
const LARGEST: usize = 5;
/// One missing answer in so many children is worth a warning (our own choice).
const MISSING_ONE_IN: u64 = 10;
const CAUTIONS: [&str; 6] = ["survey", "rounded", "late", "age", "missing", "definitions"];

fn id(code: &str) -> String {
    code.to_lowercase().replace('_', "-")
}

/// What a table holds.
pub(super) fn table_words(w: &Words, table: &str) -> String {
    w.say(&format!("report-file-{}", id(table)))
}

/// What a column holds.
pub(super) fn column_words(w: &Words, column: &str) -> String {
    w.say(&format!("file-column-{}", id(column)))
}

fn heading(lines: &mut Vec<String>, text: String) {
    lines.extend([String::new(), text.clone(), "-".repeat(text.chars().count())]);
}

fn head(w: &Words, b: Bundle<'_>) -> Vec<String> {
    let release = b.release;
    let title = w.say_with("paper-title", args!["programme" => &release.programme, "period" => format::period(w, release.period)]);
    let at = release.generated_at.format("%Y-%m-%d %H:%M:%S").to_string();
    let state = match b.revision {
        Some(revision) => w.say_with("paper-release", args!["revision" => revision, "at" => at]),
        None => format!("{} {}", w.say("paper-provisional"), w.say_with("paper-counted", args!["at" => at])),
    };
    let protocol = args!["id" => &release.protocol_id, "version" => &release.protocol_version, "definitions" => DEFINITIONS_VERSION];
    let rule = "=".repeat(title.chars().count());
    vec![title, rule, state, w.say_with("paper-protocol", protocol), w.say("paper-not-survey")]
}

fn text(lines: &[String]) -> String {
    // Opened with a double click on any system.
    lines.join("\r\n") + "\r\n"
}

/// What every file and column means.
pub(super) fn readme(w: &Words, b: Bundle<'_>) -> String {
    let mut lines = head(w, b);
    heading(&mut lines, w.say("readme-how"));
    lines.extend(["readme-csv", "readme-empty"].map(|id| w.say(id)));
    lines.push(w.say_with("readme-private", args!["most" => b.threshold - 1]));
    lines.push(w.say("readme-rows"));
    lines.extend(["readme-all", "readme-no-names"].map(|id| w.say(id)));
    for table in b.tables {
        heading(&mut lines, format!("{} – {}", for_machines(table), table_words(w, table.name)));
        lines.extend(table.columns.iter().map(|column| format!("{} {}", label(w, column), column_words(w, column))));
    }
    heading(&mut lines, w.say("readme-indicators"));
    lines.extend(Indicator::ALL.iter().map(|i| format!("{} {}", label(w, i.code()), w.say(&format!("file-indicator-{}", id(i.code()))))));
    for column in ["area", "class", "rule", "food_group", "allergen"] {
        let codes = codes_of(w, b, column);
        if !codes.is_empty() {
            heading(&mut lines, w.say_with("readme-codes", args!["column" => column]));
            lines.extend(codes);
        }
    }
    heading(&mut lines, w.say("report-cautions"));
    lines.extend(CAUTIONS.map(|caution| w.say(&format!("report-caution-{caution}"))));
    text(&lines)
}

/// The codes that stand in a column of the files, each with its words.
fn codes_of(w: &Words, b: Bundle<'_>, column: &str) -> Vec<String> {
    let cells = b.tables.iter().flat_map(|table| table.rows.iter().filter_map(move |row| table.cell(row, column)));
    let used: BTreeSet<&str> = cells.filter_map(|cell| if let Cell::Text(text) = cell { Some(text.as_str()) } else { None }).collect();
    let words = |code: &str| match column {
        "area" => b.areas.iter().find(|(of, _)| of == code).map(|(_, name)| name.clone()),
        "class" => Class::from_code(code).map(|class| codes::class_word(w, class)).ok().or_else(|| {
            let level = ReactionLevel::from_code(code).ok()?;
            Some(codes::reaction_level(w, level))
        }),
        "rule" => RuleId::from_code(code).map(|rule| codes::rule_name(w, rule)).ok(),
        "food_group" => FoodGroup::from_code(code).map(|group| codes::food_group(w, group)).ok(),
        _ => Allergen::from_code(code).map(|allergen| codes::allergen(w, allergen)).ok(),
    };
    used.into_iter().filter_map(|code| Some(format!("{code}: {}", words(code)?))).collect()
}

/// One page: totals, what changed most, what is private, what to look out for.
pub(super) fn summary(w: &Words, b: Bundle<'_>) -> String {
    let mut lines = head(w, b);
    heading(&mut lines, w.say("summary-totals"));
    totals(w, b, &mut lines);
    let before = format::period(w, b.release.period.previous());
    heading(&mut lines, w.say_with("summary-moves", args!["period" => &before]));
    match b.before {
        None => lines.push(w.say_with("summary-no-before", args!["period" => before])),
        Some(tables) => moves(w, tables, b, &mut lines),
    }
    if b.revision.is_some_and(|revision| revision > 0) {
        heading(&mut lines, w.say("summary-changes"));
        lines.push(w.say_with("summary-changes-count", args!["count" => b.changes.len()]));
    }
    heading(&mut lines, w.say("summary-private"));
    for table in b.tables {
        let (count, of) = private(table);
        let told = args!["file" => for_machines(table), "count" => format::count(w, count), "of" => format::count(w, of)];
        lines.push(w.say_with("summary-private-line", told));
    }
    heading(&mut lines, w.say("summary-warnings"));
    let warnings = warnings(w, b);
    if warnings.is_empty() {
        lines.push(w.say("summary-no-warnings"))
    } else {
        lines.extend(warnings)
    }
    heading(&mut lines, w.say("report-cautions"));
    lines.extend(CAUTIONS.map(|caution| w.say(&format!("report-caution-{caution}"))));
    lines.extend([String::new(), w.say_with("summary-contact", args!["programme" => &b.release.programme])]);
    text(&lines)
}

/// The figure of the whole programme in a column; of a table with indicators, that of one.
fn whole<'a>(b: Bundle<'a>, table: &str, column: &str, indicator: Option<&str>) -> Option<&'a Cell> {
    let table = b.tables.iter().find(|other| other.name == table)?;
    let is_whole = |row: &&Vec<Cell>| {
        domain::report::definitions::key(table, row).iter().all(|(split, code)| match *split {
            "indicator" => Some(*code) == indicator,
            _ => *code == ALL,
        })
    };
    table.rows.iter().find(is_whole).and_then(|row| table.cell(row, column))
}

fn said(w: &Words, cell: Option<&Cell>) -> String {
    match cell {
        Some(Cell::Count(count)) => format::count(w, *count),
        Some(Cell::Withheld(_)) => w.say("summary-kept"),
        _ => w.say("release-nothing"),
    }
}

fn totals(w: &Words, b: Bundle<'_>, lines: &mut Vec<String>) {
    let figure = |table, column| whole(b, table, column, None);
    let done = visits::done(|column| figure("visits", column).cloned().unwrap_or(Cell::Empty));
    let done = Some(&done).filter(|done| **done != Cell::Empty);
    let mut line = |what: &str, n: Option<&Cell>, of: Option<Option<&Cell>>| {
        let told = args!["what" => w.say(what), "figure" => said(w, n)];
        lines.push(match of {
            None => w.say_with("summary-line", told),
            Some(of) => w.say_with("summary-share", told.with("of", said(w, of))),
        });
    };
    line("summary-active", figure("enrolment", "active_end"), None);
    line("summary-visits", done, Some(figure("visits", "due")));
    line("summary-visited", figure("growth", "children_visited"), None);
    line("summary-low", figure("growth", "waz_lt_m2"), Some(figure("growth", "waz_n")));
    line("summary-follow-ups", figure("followups", "opened"), None);
    line("summary-referrals", figure("referrals", "made"), None);
}

fn moves(w: &Words, before: &[Table], b: Bundle<'_>, lines: &mut Vec<String>) {
    let moves = compare::largest_moves(before, b.tables, LARGEST);
    if moves.is_empty() {
        lines.push(w.say("summary-no-moves"));
    }
    for change in moves {
        // What it is in words, and where it stands in the files.
        let indicator = change.row.iter().find(|(split, _)| *split == "indicator").map(|(_, code)| code.as_str());
        let plain = |sentence: String| sentence.trim_end_matches('.').to_owned();
        let table = match indicator {
            Some(code) => plain(w.say(&format!("file-indicator-{}", id(code)))),
            None => table_words(w, change.table),
        };
        let code = format!("{}.csv{} {}", change.table, indicator.map_or_else(String::new, |code| format!(" {code}")), change.column);
        let told = args!["table" => table, "column" => plain(column_words(w, change.column)), "code" => code];
        let place = w.say_with("summary-move-place", told);
        let told = args!["place" => place, "was" => said(w, Some(&change.was)), "now" => said(w, Some(&change.now))];
        lines.push(w.say_with("summary-move", told));
    }
}

/// How many figures of a table are private, and how many there are.
fn private(table: &Table) -> (u64, u64) {
    let figures = table.rows.iter().flat_map(|row| table.columns.iter().zip(row)).filter(|(column, _)| holds(column) == Some(Holds::Count));
    figures.fold((0, 0), |(private, all), (_, cell)| (private + u64::from(matches!(cell, Cell::Withheld(_))), all + 1))
}

fn warnings(w: &Words, b: Bundle<'_>) -> Vec<String> {
    let mut warnings = Vec::new();
    if b.revision.is_none() {
        warnings.push(w.say("summary-warning-provisional"));
    }
    let areas = b.tables.iter().find(|table| table.name == "visits");
    let only_all = areas.is_some_and(|table| table.rows.iter().all(|row| table.cell(row, "area") == Some(&Cell::text(ALL))));
    if only_all {
        warnings.push(w.say("summary-warning-areas"));
    }
    let den = |indicator| whole(b, "feeding", "den", Some(indicator));
    if den("MAD") != den("MDD") || den("MAD") != den("MMF") {
        warnings.push(w.say("summary-warning-mad"));
    }
    for indicator in Indicator::ALL {
        let code = indicator.code();
        let figures = (whole(b, "feeding", "missing_n", Some(code)), den(code));
        let (Some(Cell::Count(missing)), Some(Cell::Count(den))) = figures else { continue };
        let meant = missing + den;
        if missing * MISSING_ONE_IN > meant {
            let told = args!["indicator" => code, "missing" => format::count(w, *missing), "of" => format::count(w, meant)];
            warnings.push(w.say_with("summary-warning-missing", told));
        }
    }
    warnings
}

#[cfg(test)]
mod tests {
    use domain::report::definitions::TABLES;
    use domain::report::month::MonthRows;
    use domain::report::month::tables;
    use domain::report::period::Period;
    use domain::report::suppress::Threshold;

    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn every_column_and_every_indicator_is_explained_in_every_language() {
        let release = domain::report::csv_table::Release {
            programme: "Kesara Lake".to_owned(),
            period: Period::parse("2026-10").expect("a month"),
            protocol_id: "default".to_owned(),
            protocol_version: "1".to_owned(),
            generated_at: "2026-11-10T06:00:00".parse().expect("an instant"),
        };
        let tables = tables(&release, Threshold::LEAST, &MonthRows::default());
        assert_eq!(tables.iter().map(|table| table.name).collect::<Vec<_>>(), TABLES);
        let bundle = Bundle { release: &release, revision: Some(0), threshold: 5, tables: &tables, changes: &[], areas: &[], before: None };
        for lang in Lang::OFFERED {
            let w = words(*lang);
            for text in [readme(w, bundle), summary(w, bundle)] {
                assert!(!text.contains(['{', '}']), "{}: {text}", lang.code());
                assert!(text.contains("Kesara Lake") && text.contains("2026-11-10 06:00:00"), "{text}");
            }
            assert!(readme(w, bundle).lines().count() > 150);
        }
        // What changed is told in words, with its place in the files behind.
        let mut before = tables.clone();
        for table in before.iter_mut().filter(|table| table.name == "followups_stock") {
            let at = table.columns.iter().position(|column| *column == "late_0").expect("a column");
            table.rows.iter_mut().for_each(|row| row[at] = Cell::Count(9));
        }
        let told = summary(words(Lang::En), Bundle { before: Some(&before), ..bundle });
        let line = "follow-ups open at the end, by area and urgency – Of these, not late (followups_stock.csv late_0): 9 → 0";
        assert!(told.contains(line), "{told}");
        assert!(summary(words(Lang::En), bundle).contains("no figures of September 2026"), "{}", summary(words(Lang::En), bundle));
    }
}

//! The tables of the report, one function each. They know which columns of which file they show, and words for them.

use domain::feeding::ReactionLevel;
use domain::food::Allergen;
use domain::food::FoodGroup;
use domain::report::csv_table::Cell as Figure;
use domain::report::picture::Part;
use domain::report::picture::Share;
use domain::report::suppress::Reason;
use domain::report::visits as visit_counts;
use domain::rule::Class;
use domain::rule::RuleId;
use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::name;
use crate::view::report::ALL;
use crate::view::report::ReportPage;
use crate::view::report::shown;

/// A grid of numbers: a row for each area, and all of them below. `figures` gives those of an area.
fn by_area(w: &Words, p: &ReportPage<'_>, caption: &str, columns: &[String], figures: &dyn Fn(&str) -> Vec<Figure>) -> Markup {
    let cells = |first: Cell, area: &str| {
        let figures = figures(area);
        std::iter::once(first).chain(figures.iter().map(|figure| shown(w, figure))).collect::<Vec<_>>()
    };
    let table = Table::scrolling(w.say(caption)).headed().column(w.say("report-village"), false);
    let table = columns.iter().fold(table, |table, column| table.column(column, true));
    let table = p.places().into_iter().fold(table, |table, (code, called)| table.row(cells(Cell::of(name(called)), code)));
    let table = table.foot(cells(Cell::text(&w.say("report-all")), ALL));
    html! { h2 { (w.say(caption)) } (table) }
}

/// Visits due and done.
pub(super) fn visits(w: &Words, p: &ReportPage<'_>) -> Markup {
    let columns =
        ["report-due", "report-done", "report-on-time", "report-skipped", "report-not-done", "report-coverage"].map(|id| w.say(id));
    by_area(w, p, "report-visits", &columns, &|area| {
        let figure = |column| p.figure("visits", &[("area", area), ("slot", ALL)], column);
        let done = visit_counts::done(figure);
        let others = ["done_on_time", "skipped", "overdue_at_end", "coverage_pct"].map(figure);
        [vec![figure("due"), done], others.to_vec()].concat()
    })
}

/// Low weight for age by area and sex.
pub(super) fn low_weight(w: &Words, p: &ReportPage<'_>) -> Markup {
    let columns: Vec<String> = ["report-girls", "report-boys", "report-both"]
        .iter()
        .flat_map(|who| {
            ["report-low", "report-weighed", "report-percent"]
                .map(|what| w.say_with("report-column", crate::args!["who" => w.say(who), "what" => w.say(what)]))
        })
        .collect();
    by_area(w, p, "report-low-weight", &columns, &|area| {
        ["F", "M", ALL]
            .iter()
            .flat_map(|sex| {
                let row = [("area", area), ("sex", *sex), ("age_band_at_visit", ALL)];
                let told = p.table("growth").is_none_or(|table| table.find(&row).is_some());
                // Villages by sex are left out of the table when many of their figures are small.
                let figure = |column| if told { p.figure("growth", &row, column) } else { Figure::Withheld(Reason::Private) };
                let (low, of) = (figure("waz_lt_m2"), figure("waz_n"));
                let share = Figure::percent(&low, &of);
                [low, of, share]
            })
            .collect()
    })
}

/// Growth findings of the area: column of those found, column of those looked at or the age bands of those seen, words.
const GROWTH: &[(&str, &str, &str)] = &[
    ("waz_lt_m2", "waz_n", "report-waz-low"),
    ("waz_lt_m3", "waz_n", "report-waz-very-low"),
    ("wlz_lt_m2", "wlz_n", "report-wlz-low"),
    ("wlz_lt_m3", "wlz_n", "report-wlz-very-low"),
    ("laz_lt_m2", "laz_n", "report-laz-low"),
    ("wlz_gt_2", "wlz_n", "report-wlz-high"),
    ("muac_lt_115", "muac_den_6_23", "report-muac-low"),
    ("muac_115_124", "muac_den_6_23", "report-muac-middle"),
    ("oedema_n", "children_visited", "report-oedema"),
    ("sam_any", "6-11 12-23", "report-sam"),
    ("mam_any", "6-11 12-23", "report-mam"),
    ("u6_risk_any", "0-5", "report-u6"),
    ("slow_or_lost_n", "slow_or_lost_den", "report-slow"),
];

/// A grid of findings: how many, of how many, percent.
fn findings(w: &Words, caption: &str, first: &str, lines: Vec<(String, Vec<Cell>)>, columns: &[&str]) -> Markup {
    let table = Table::scrolling(w.say(caption)).headed().column(w.say(first), false);
    let table = columns.iter().fold(table, |table, column| table.column(w.say(column), true));
    let table =
        lines.into_iter().fold(table, |table, (words, cells)| table.row(std::iter::once(Cell::text(&words)).chain(cells).collect()));
    html! { h2 { (w.say(caption)) } (table) }
}

fn all_shown(w: &Words, figures: &[Figure]) -> Vec<Cell> {
    figures.iter().map(|figure| shown(w, figure)).collect()
}

/// Where a share could truly lie, if it may be told at all.
fn interval(w: &Words, n: &Figure, den: &Figure) -> Cell {
    let Share::Drawn { interval, .. } = Part::of_cells(n, den).share else { return Cell::number("") };
    let end = |share: f64| format::number(w, share * 100.0, 0);
    let range = w.say_with("pic-range", crate::args!["low" => end(interval.low), "high" => end(interval.high)]);
    // A dash is a place to break a line, but not here.
    Cell::number(&range.replace('–', "\u{2060}–\u{2060}"))
}

/// Growth of the children seen.
pub(super) fn growth(w: &Words, p: &ReportPage<'_>) -> Markup {
    let lines = GROWTH.iter().map(|(found, of, words)| {
        let figure = |column| p.figure("growth", &[("area", p.place()), ("sex", ALL), ("age_band_at_visit", ALL)], column);
        let seen = |band| p.figure("growth", &[("area", p.place()), ("sex", ALL), ("age_band_at_visit", band)], "children_visited");
        let by_age = of.starts_with(|c: char| c.is_ascii_digit());
        let of = if by_age {
            // A band of one village may be left out of the table: then it is as private as a withheld one.
            let told = |figure| if figure == Figure::Empty { Figure::Withheld(Reason::Private) } else { figure };
            of.split(' ').map(|band| told(seen(band))).reduce(|all, band| all.plus(&band)).unwrap_or(Figure::Empty)
        } else {
            figure(of)
        };
        let found = figure(found);
        let share = Figure::percent(&found, &of);
        let truly = interval(w, &found, &of);
        (w.say(words), all_shown(w, &[found, of, share]).into_iter().chain([truly]).collect())
    });
    findings(
        w,
        "report-growth",
        "report-children-with",
        lines.collect(),
        &["report-children", "report-of", "report-percent", "report-interval"],
    )
}

/// Who is in the programme, who came and who went; for the whole programme also why.
pub(super) fn enrolment(w: &Words, p: &ReportPage<'_>) -> Markup {
    const COLUMNS: [(&str, &str); 6] = [
        ("active_start", "report-start"),
        ("joined", "report-joined"),
        ("left", "report-left"),
        ("area_in", "report-moved-in"),
        ("area_out", "report-moved-out"),
        ("active_end", "report-end"),
    ];
    let words = COLUMNS.map(|(_, words)| w.say(words));
    let grid = by_area(w, p, "report-enrolment", &words, &|area| {
        COLUMNS.map(|(column, _)| p.figure("enrolment", &[("area", area), ("sex", ALL), ("age_band_at_period_end", ALL)], column)).to_vec()
    });
    let reasons = ["transferred_out", "moved", "refused", "withdrawn", "aged_out", "died", "severe_reactions"];
    let line = |reason: &&str| {
        (w.say(&format!("report-reason-{}", reason.replace('_', "-"))), vec![shown(w, &p.figure("programme", &[], reason))])
    };
    html! {
        (grid)
        @if p.area.is_empty() {
            (findings(w, "report-reasons", "report-reason", reasons.iter().map(line).collect(), &["report-children"]))
        }
    }
}

/// Feeding indicators shown, with the months that each is meant for.
const FEEDING: &[(&str, &str)] = &[
    ("EvBF", "0–23"),
    ("EIBF", "0–23"),
    ("EBF", "0–5"),
    ("CBF", "12–23"),
    ("ISSSF", "6–8"),
    ("MDD", "6–23"),
    ("MMF", "6–23"),
    ("MMFF", "6–23"),
    ("MAD", "6–23"),
    ("EFF", "6–23"),
    ("ZVF", "6–23"),
    ("SwB", "6–23"),
    ("UFC", "6–23"),
    ("BoF", "0–23"),
    ("texture_on_stage", "6–23"),
    ("lumps_by_9m", "9"),
    ("lumps_by_10m", "10"),
];

/// Feeding the day before the visit.
pub(super) fn feeding(w: &Words, p: &ReportPage<'_>) -> Markup {
    let lines = FEEDING.iter().map(|(indicator, months)| {
        let row = [("area", p.place()), ("sex", ALL), ("age_band_at_visit", ALL), ("indicator", *indicator)];
        let [n, den, share, missing] = ["n", "den", "pct", "missing_n"].map(|column| p.figure("feeding", &row, column));
        let truly = interval(w, &n, &den);
        let figures = [all_shown(w, &[Figure::text(months), n, den, share]), vec![truly, shown(w, &missing)]].concat();
        (w.say(&format!("report-ind-{}", indicator.to_lowercase().replace('_', "-"))), figures)
    });
    let columns = ["report-months", "report-yes", "report-of", "report-percent", "report-interval", "report-missing"];
    findings(w, "report-feeding", "report-children-who", lines.collect(), &columns)
}

/// Follow-ups opened in the month, those open at its end, and referrals.
pub(super) fn follow_ups(w: &Words, p: &ReportPage<'_>) -> Markup {
    const COLUMNS: [(&str, &str); 6] = [
        ("opened", "report-opened"),
        ("met_on_time", "report-met-on-time"),
        ("met_late", "report-met-late"),
        ("still_open_overdue", "report-open-late"),
        ("median_days_to_check", "report-median"),
        ("coverage_pct", "report-coverage"),
    ];
    let rows = p.table("followups").map_or(&[][..], |table| &table.rows);
    let text = |cells: &[Figure], column: &str| match p.table("followups").and_then(|table| table.cell(cells, column)) {
        Some(Figure::Text(text)) => text.clone(),
        _ => String::new(),
    };
    let here = rows.iter().filter(|cells| text(cells, "area") == p.place());
    let lines = here.map(|cells| {
        let (rule, class) = (text(cells, "rule"), text(cells, "class"));
        let words = match (RuleId::from_code(&rule), Class::from_code(&class)) {
            (Ok(rule), Ok(class)) => {
                w.say_with("report-rule-class", crate::args!["rule" => codes::rule_name(w, rule), "class" => codes::class_word(w, class)])
            }
            _ => w.say("report-all"),
        };
        let row = [("area", p.place()), ("rule", rule.as_str()), ("class", class.as_str())];
        (words, all_shown(w, &COLUMNS.map(|(column, _)| p.figure("followups", &row, column))))
    });
    let stock = ["open", "late_0", "late_1_7", "late_8_14", "late_15_30", "late_over_30"];
    let stock_columns = stock.map(|column| w.say(&format!("report-stock-{}", column.replace('_', "-"))));
    let sent = ["made", "reached_same_day", "outcome_known_7d"];
    let sent_columns = sent.map(|column| w.say(&format!("report-referral-{}", column.replace('_', "-"))));
    html! {
        (findings(w, "report-follow-ups", "report-about", lines.collect(), &COLUMNS.map(|(_, words)| words)))
        div.people {
            div { (by_area(w, p, "report-stock", &stock_columns, &|area| {
                stock.map(|column| p.figure("followups_stock", &[("area", area), ("class", ALL)], column)).to_vec()
            })) }
            div { (by_area(w, p, "report-referrals", &sent_columns, &|area| {
                sent.map(|column| p.figure("referrals", &[("area", area)], column)).to_vec()
            })) }
        }
    }
}

/// Reactions to foods told in the month.
pub(super) fn reactions(w: &Words, p: &ReportPage<'_>) -> Markup {
    const COLUMNS: [(&str, &str); 3] =
        [("n", "report-reaction-told"), ("referred_n", "report-reaction-referred"), ("outcome_known_n", "report-reaction-known")];
    // A release made before there was this table has none.
    let Some(table) = p.table("reactions") else { return html! {} };
    let text = |cells: &[Figure], column: &str| match table.cell(cells, column) {
        Some(Figure::Text(text)) => text.clone(),
        _ => String::new(),
    };
    let lines = table.rows.iter().filter(|cells| text(cells, "area") == p.place()).map(|cells| {
        let [group, allergen, class] = ["food_group", "allergen", "class"].map(|column| text(cells, column));
        let level = ReactionLevel::from_code(&class).ok().map(|level| codes::reaction_level(w, level));
        let group = FoodGroup::from_code(&group).map_or_else(|_| w.say("report-reaction-no-group"), |group| codes::food_group(w, group));
        let food = match Allergen::from_code(&allergen).map(|allergen| codes::allergen(w, allergen)) {
            Ok(allergen) if allergen.to_lowercase() != group.to_lowercase() => {
                w.say_with("report-reaction-of", crate::args!["group" => group, "allergen" => allergen])
            }
            _ => group,
        };
        let words = match level {
            None => w.say("report-reaction-all"),
            Some(_) if allergen == ALL => w.say("report-reaction-severe"),
            Some(level) => w.say_with("report-reaction-kind", crate::args!["food" => food, "level" => level]),
        };
        (words, all_shown(w, &COLUMNS.map(|(column, _)| table.cell(cells, column).cloned().unwrap_or(Figure::Empty))))
    });
    findings(w, "report-reactions", "report-reaction-after", lines.collect(), &COLUMNS.map(|(_, words)| words))
}

//! The page of a month: hidden figures, cautions, files.

use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;

fn figures(area: &str, values: [Figure; 2]) -> Vec<Figure> {
    let [low, of] = values;
    vec![Figure::text(area), Figure::text("all"), Figure::text("all"), low, of]
}

fn page_of(area: &str) -> Markup {
    let growth = Figures {
        name: "growth",
        columns: vec!["area", "sex", "age_band_at_visit", "waz_lt_m2", "waz_n"],
        rows: vec![
            figures("ulopi", [Figure::Withheld(Reason::Small), Figure::Count(21)]),
            figures("sanga", [Figure::Withheld(Reason::Linked), Figure::Count(24)]),
            figures("mbiro", [Figure::Count(8), Figure::Count(9)]),
            figures("all", [Figure::Count(1_212), Figure::Count(4_545)]),
        ],
    };
    let visits = Figures {
        name: "visits",
        columns: vec!["area", "slot", "due", "done_on_time", "done_early_late"],
        rows: ["ulopi", "sanga", "mbiro", "all"]
            .iter()
            .map(|area| vec![Figure::text(area), Figure::text("all"), Figure::Count(223), Figure::Count(190), Figure::Count(4)])
            .collect(),
    };
    let tables = [visits, growth];
    let shown_page = ReportPage {
        month: Month::parse("2026-10").expect("a month"),
        months: vec![Month::parse("2026-10").expect("a month")],
        area: area.to_owned(),
        areas: [("mbiro", "Mbiro Hill"), ("sanga", "Sanga Point"), ("ulopi", "Ulopi")].map(|(c, n)| (c.to_owned(), n.to_owned())).to_vec(),
        provisional_until: None,
        threshold: 5,
        tables: &tables,
    };
    page(words(Lang::En), &shown_page)
}

fn texts(markup: &Markup, selector: &str) -> Vec<String> {
    let html = Html::parse_fragment(&markup.0);
    let selector = Selector::parse(selector).expect("a selector");
    html.select(&selector).map(|e| e.text().collect::<String>().trim().to_owned()).collect()
}

#[test]
fn the_heading_is_the_answer() {
    let heading = texts(&page_of(""), "h1").remove(0);
    assert!(heading.contains("October 2026") && heading.contains("194") && heading.contains("223"), "{heading}");
}

#[test]
fn private_figures_are_hatched_signs_and_never_empty() {
    let kept = texts(&page_of(""), "td.kept");
    // Ulopi: low and percent small; Sanga linked; Mbiro: a percentage of nine children.
    let low: Vec<&str> = kept.iter().map(String::as_str).filter(|text| !text.is_empty()).collect();
    assert!(low.contains(&"<5") && low.contains(&"s") && low.contains(&"too few"), "{kept:?}");
    assert_eq!(low.len(), kept.len(), "no private cell is empty: {kept:?}");
}

#[test]
fn an_area_alone_leaves_the_others_out() {
    let villages = texts(&page_of("ulopi"), "tbody th");
    assert!(villages.iter().any(|v| v == "Ulopi") && !villages.iter().any(|v| v == "Sanga Point"), "{villages:?}");
}

#[test]
fn every_file_has_a_link() {
    let links = texts(&page_of(""), "ul.plain a");
    assert_eq!(links, ["visits.csv", "growth.csv"]);
}

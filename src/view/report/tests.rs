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
    released_page(area, Shown::Released { revision: 0, on: "10 November 2026".to_owned() }, &[], &[])
}

fn released_page(area: &str, state: Shown, revisions: &[(u32, &str)], changes: &[Change]) -> Markup {
    let growth = Figures {
        name: "growth",
        columns: vec!["area", "sex", "age_band_at_visit", "waz_lt_m2", "waz_n"],
        rows: vec![
            figures("ulopi", [Figure::Withheld(Reason::Private), Figure::Count(21)]),
            figures("sanga", [Figure::Withheld(Reason::Private), Figure::Count(24)]),
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
        programme: "Kesara Lake",
        period: Period::parse("2026-10").expect("a month"),
        periods: vec![Period::parse("2026-10").expect("a month")],
        area: area.to_owned(),
        areas: [("mbiro", "Mbiro Hill"), ("sanga", "Sanga Point"), ("ulopi", "Ulopi")].map(|(c, n)| (c.to_owned(), n.to_owned())).to_vec(),
        state,
        revisions: revisions.iter().map(|(revision, on)| (*revision, (*on).to_owned())).collect(),
        changes,
        next_on: "10 December".to_owned(),
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
    // Ulopi and Sanga: low and percent; Mbiro: a percentage of nine children.
    let low: Vec<&str> = kept.iter().map(String::as_str).filter(|text| !text.is_empty()).collect();
    assert!(low.contains(&"s") && low.contains(&"too few"), "{kept:?}");
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
    let (spreadsheet, machines) = ("for a spreadsheet", "description for machines");
    assert_eq!(links, ["all.zip", "summary.txt", "README.txt", "visits.csv", spreadsheet, machines, "growth.csv", spreadsheet, machines]);
}

#[test]
fn paper_begins_with_the_programme_and_leaves_the_files_out() {
    assert_eq!(texts(&page_of(""), ".paper"), ["Kesara Lake"]);
    assert_eq!(texts(&page_of(""), ".noprint #files").len(), 1);
}

#[test]
fn a_provisional_page_says_until_when() {
    let page = released_page("", Shown::Provisional("9 November".to_owned()), &[], &[]);
    assert!(texts(&page, ".note").concat().contains("Provisional until 9 November"), "{}", page.0);
}

#[test]
fn a_revision_lists_what_it_changed_and_an_older_one_names_itself_in_every_link() {
    let change = |now: Figure| Change {
        table: "growth",
        row: vec![("area", "ulopi".to_owned()), ("sex", "F".to_owned())],
        column: "waz_n",
        was: Figure::Count(7),
        now,
    };
    let changes = [change(Figure::Count(12)), change(Figure::Withheld(Reason::Few))];
    let revisions = [(1, "10 December 2026"), (0, "10 November 2026")];
    let page = released_page("ulopi", Shown::Released { revision: 1, on: "10 December 2026".to_owned() }, &revisions, &changes);
    let told = texts(&page, "main, body").concat() + &page.0;
    for part in
        ["Revision 1, released on 10 December 2026", "What revision 1 changed", "2 figures shown before", "growth.csv · ulopi · F · waz_n"]
    {
        assert!(told.contains(part), "{part}: {}", page.0);
    }
    assert!(page.0.contains("/reports?period=2026-10&amp;area=ulopi&amp;revision=0") && !page.0.contains(".csv?revision"), "{}", page.0);
    let older = released_page("", Shown::Released { revision: 0, on: "10 November 2026".to_owned() }, &revisions, &[]);
    assert!(older.0.contains("A later one has been released") && older.0.contains("visits.csv?revision=0"), "{}", older.0);
}

//! The registration page keeps what was typed, names every fault, and shows likely duplicates before anything is saved.

use domain::draft::child::read_child;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;

fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

const TYPED: [(&str, &str); 16] = [
    ("name", "Neruka \"Neru\" & co"),
    ("known_as", "Neru"),
    ("sex", "F"),
    ("born_day", "14"),
    ("born_month", "3"),
    ("born_year", "2026"),
    ("birth_weight", "3,10"),
    ("weeks", "38"),
    ("weeks_days", "2"),
    ("gestation_source", "card"),
    ("caregiver", "Teveli"),
    ("phone", "000 111"),
    ("area", "ulopi"),
    ("directions", "behind the <mill>"),
    ("consent", "yes"),
    ("ever_breastfed", "yes"),
];

fn filled() -> Filled {
    Filled(TYPED.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect())
}

fn page(lang: Lang, filled: &Filled, faults: &Faults, check: Option<Check<'_>>) -> String {
    body(&RegisterForm {
        w: words(lang),
        token: "t",
        key: "k",
        today: d("2026-11-25"),
        home: None,
        areas: &[("ulopi".to_owned(), "Ulopi".to_owned()), ("mbiro".to_owned(), "Mbiro Hill".to_owned())],
        workers: &[],
        filled,
        faults,
        check,
    })
    .into_string()
}

/// What a browser would send back of this page.
fn sent(page: &str) -> Vec<(String, String)> {
    let page = scraper::Html::parse_document(page);
    let all = scraper::Selector::parse("input, select, textarea").expect("a selector");
    let mut pairs = Vec::new();
    for element in page.select(&all) {
        let Some(name) = element.attr("name") else { continue };
        let value = match (element.value().name(), element.attr("type")) {
            ("textarea", _) => Some(element.text().collect()),
            ("select", _) => {
                let chosen = scraper::Selector::parse("option[selected]").expect("a selector");
                element.select(&chosen).next().and_then(|o| o.attr("value")).map(str::to_owned)
            }
            (_, Some("radio" | "checkbox")) => element.attr("checked").map(|_| element.attr("value").unwrap_or_default().to_owned()),
            _ => element.attr("value").map(str::to_owned),
        };
        pairs.extend(value.map(|value| (name.to_owned(), value)));
    }
    pairs
}

#[test]
fn everything_typed_comes_back() {
    let back = sent(&page(Lang::En, &filled(), &Faults::one("consent_by", domain::fault::Fault::TooLong { most: 120 }), None));
    for (name, value) in TYPED {
        assert!(back.contains(&(name.to_owned(), value.to_owned())), "{name} is lost: {back:?}");
    }
}

#[test]
fn every_fault_stands_in_the_summary_in_page_order_and_at_its_field() {
    let empty = Filled::default();
    let faults = read_child(&[], d("2026-11-25")).expect_err("an empty form");
    let text = page(Lang::En, &empty, &faults, None);
    let html = scraper::Html::parse_document(&text);
    let links = scraper::Selector::parse("#summary a").expect("a selector");
    let hrefs: Vec<&str> = html.select(&links).filter_map(|a| a.attr("href")).collect();
    assert_eq!(hrefs, ["#name", "#sex", "#born-month", "#caregiver", "#area", "#consent"]);
    for href in hrefs {
        let target = scraper::Selector::parse(href).expect("a selector");
        assert!(html.select(&target).next().is_some(), "{href} leads nowhere");
    }
    let beside = scraper::Selector::parse("p.fault").expect("a selector");
    assert_eq!(html.select(&beside).count(), faults.iter().count());
}

#[test]
fn what_was_understood_and_who_is_similar_stand_above_the_form() {
    let filled = filled();
    let child = read_child(&filled.0, d("2026-11-25")).expect("read");
    let similar = [Similar {
        code: "CDEF".to_owned(),
        name: "Neruka".to_owned(),
        born: d("2026-03-14"),
        caregiver: "Teveli".to_owned(),
        in_scope: true,
    }];
    let text = page(Lang::En, &filled, &Faults::new(), Some(Check { child: &child, area: "Ulopi", similar: &similar }));
    assert!(text.contains("3.10 kg") && text.contains("38 weeks and 2 days") && text.contains("14 March 2026"), "{text}");
    assert!(text.contains("/children/CDEF") && text.contains("name=\"other_child\""));
    assert!(sent(&text).contains(&("understood".to_owned(), understood(&child))));
    let none = page(Lang::En, &filled, &Faults::new(), Some(Check { child: &child, area: "Ulopi", similar: &[] }));
    assert!(!none.contains("other_child"));
}

#[test]
fn every_word_is_there_in_every_language() {
    for lang in [Lang::En, Lang::Fr] {
        let faults = read_child(&[], d("2026-11-25")).expect_err("an empty form");
        let text = page(lang, &filled(), &faults, None);
        assert!(!text.contains('{') && !text.contains('}'), "{}: {text}", lang.code());
    }
}

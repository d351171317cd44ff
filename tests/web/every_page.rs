//! What holds for every page of the map, whoever sees it: sound structure, and no word that never passed a translator.

use std::collections::BTreeSet;

use domain::role::Role;
use domain::rule::RuleId;
use scraper::ElementRef;
use spoonround::files::protocol_toml::default_protocol;
use spoonround::store::people;
use spoonround::web::routes::TABLE;

use crate::checks;
use crate::harness::Browser;
use crate::harness::selector;
use crate::reach::address;
use crate::reach::allowed;
use crate::reach::two_corners;
use crate::site::Site;

const PEOPLE: [(Role, &str); 4] =
    [(Role::Worker, "mireni"), (Role::Supervisor, "olani"), (Role::Manager, "bemu"), (Role::Administrator, "teveli")];

pub async fn speak(site: &Site, name: &str, language: &str) {
    let mut person = people::by_sign_in_name(site.db.db.direct(), name).await.expect("read").expect("there");
    person.language = Some(language.to_owned());
    site.db.db.write(async |tx| people::update(tx, &person).await).await.expect("written");
}

/// What no translator gets: names of the site's people and villages, each language's name in itself, foods and coaching lines,
/// whose texts carry their languages in the protocol file, which the programme owns, and the sources of its rules.
pub fn no_words(text: &str) -> bool {
    const NAMES: [&str; 10] = ["Ulopi", "Mbiro Hill", "Mireni", "Tamsi", "Olani", "Hembo", "Bemu", "Teveli", "English", "Français"];
    let text = text.trim_matches(|c: char| !c.is_alphabetic());
    // A file is called the same in every language.
    let line = |known: &domain::protocol::CoachingLine| known.text.trim_matches(|c: char| !c.is_alphabetic()) == text;
    [".csv", ".txt", ".zip"].iter().any(|end| text.ends_with(end))
        || NAMES.contains(&text)
        || default_protocol().coaching.iter().any(line)
        || RuleId::ALL.iter().any(|rule| default_protocol().rules.source(*rule).trim_matches(|c: char| !c.is_alphabetic()) == text)
        || default_protocol().foods.iter().any(|food| {
            food.name("en").eq_ignore_ascii_case(text)
                || food.name("en").split(',').next().is_some_and(|name| name.eq_ignore_ascii_case(text))
        })
}

/// Forms that could be sent from elsewhere, or twice. Signing out and choosing a language have no key, each for a reason that stands
/// beside it; rehearsing a protocol changes nothing.
fn without_key(browser: &Browser) -> Vec<String> {
    let page = browser.page();
    let has = |form: ElementRef<'_>, name: &str| {
        form.select(&selector(&format!("input[name={name}]"))).any(|input| input.attr("value").is_some_and(|value| !value.is_empty()))
    };
    page.select(&selector("form[method=post]"))
        .map(|form| (form, form.attr("action").unwrap_or_default().to_owned()))
        .filter(|(form, action)| {
            let keyless = matches!(action.as_str(), "/sign-out" | "/language" | "/protocol/rehearse");
            !has(*form, "token") || !keyless && !has(*form, "key")
        })
        .map(|(_, action)| action)
        .collect()
}

#[actix_web::test]
async fn every_page_is_sound_and_speaks_through_the_translator() {
    let site = Site::new().await;
    let [corner, _] = two_corners(&site).await;
    let mut seen = BTreeSet::new();
    let mut faults = Vec::new();
    for (role, name) in PEOPLE {
        speak(&site, name, "en-x-pseudo").await;
        let mut browser = site.signed_in(name).await;
        for route in TABLE.iter().filter(|route| route.method == "GET" && allowed(route, role)) {
            let address = address(route.pattern, &corner, "none");
            browser.peek(&address).await;
            if browser.status.as_u16() != 200 || !browser.headers.get("content-type").is_some_and(|t| t.starts_with("text/html")) {
                continue;
            }
            seen.insert(route.pattern);
            // Otherwise the whole page would count as quoted English, and nothing would be looked at.
            assert_eq!(browser.attrs("html", "lang"), ["en-x-pseudo"], "{address}");
            faults.extend(checks::structure(&browser.body).into_iter().map(|fault| format!("{address} for {name}: {fault}")));
            faults.extend(without_key(&browser).into_iter().map(|form| format!("{address} for {name}: no token or key in {form}")));
            let literal = checks::literal_words(&browser.body).into_iter().filter(|text| !no_words(text));
            faults.extend(literal.map(|text| format!("{address} for {name}: never translated: {text}")));
        }
    }
    // All but files and what only leads on; the page of signing in is read beside those of its faults.
    let no_pages = |pattern: &str| {
        matches!(pattern, "/" | "/assets/{name}" | "/health" | "/sign-in" | "/reports/{month}/{file}" | "/protocol/adopted/{seq}/file")
            || [".csv", ".txt"].iter().any(|end| pattern.ends_with(end))
    };
    let missed: Vec<&str> =
        TABLE.iter().filter(|r| r.method == "GET").map(|r| r.pattern).filter(|p| !no_pages(p) && !seen.contains(p)).collect();
    assert_eq!(missed, Vec::<&str>::new(), "pages that were not seen");
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

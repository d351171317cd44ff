//! What holds for every page of the map, whoever sees it: sound structure, and no word that never passed a translator.

use domain::role::Role;
use spoonround::files::protocol_toml::default_protocol;
use spoonround::store::people;
use spoonround::web::routes::TABLE;
use spoonround::web::routes::Who;

use crate::access::example;
use crate::checks;
use crate::site::Site;

const PEOPLE: [(Role, &str); 4] =
    [(Role::Worker, "mireni"), (Role::Supervisor, "olani"), (Role::Manager, "bemu"), (Role::Administrator, "teveli")];

async fn speak(site: &Site, name: &str, language: &str) {
    let mut person = people::by_sign_in_name(site.db.db.direct(), name).await.expect("read").expect("there");
    person.language = Some(language.to_owned());
    site.db.db.write(async |tx| people::update(tx, &person).await).await.expect("written");
}

/// Addresses that this role may open, with the parts of a real child where there is one.
fn addresses(role: Role, code: &str, seq: &str) -> Vec<String> {
    TABLE
        .iter()
        .filter(|route| route.method == "GET" && !route.pattern.contains("/assets/") && !route.pattern.contains(".csv"))
        .filter(|route| match route.who {
            Who::Anyone => route.pattern != "/health" && route.pattern != "/sign-in",
            Who::SignedIn => true,
            Who::Roles(roles) => roles.contains(&role),
        })
        .map(|route| example(&route.pattern.replace("{code}", code).replace("{seq}", seq)))
        .collect()
}

/// What no translator gets: names of the site's people and villages, each language's name in itself, and foods and coaching
/// lines, whose texts carry their languages in the protocol file, which the programme owns.
fn no_words(text: &str) -> bool {
    const NAMES: [&str; 10] = ["Ulopi", "Mbiro Hill", "Mireni", "Tamsi", "Olani", "Hembo", "Bemu", "Teveli", "English", "Français"];
    let text = text.trim_matches(|c: char| !c.is_alphabetic());
    // A file is called the same in every language.
    let line = |known: &domain::protocol::CoachingLine| known.text.trim_matches(|c: char| !c.is_alphabetic()) == text;
    text.ends_with(".csv")
        || NAMES.contains(&text)
        || default_protocol().coaching.iter().any(line)
        || default_protocol().foods.iter().any(|food| food.name("en").eq_ignore_ascii_case(text))
}

#[actix_web::test]
async fn every_page_is_sound_and_speaks_through_the_translator() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let mut seen = 0;
    let mut faults = Vec::new();
    for (role, name) in PEOPLE {
        speak(&site, name, "en-x-pseudo").await;
        let mut browser = site.signed_in(name).await;
        for address in addresses(role, &code, &seq) {
            browser.open(&address).await;
            if browser.status.as_u16() != 200 || !browser.headers.get("content-type").is_some_and(|t| t.starts_with("text/html")) {
                continue;
            }
            seen += 1;
            // Otherwise the whole page would count as quoted English, and nothing would be looked at.
            assert_eq!(browser.attrs("html", "lang"), ["en-x-pseudo"], "{address}");
            faults.extend(checks::structure(&browser.body).into_iter().map(|fault| format!("{address} for {name}: {fault}")));
            let literal = checks::literal_words(&browser.body).into_iter().filter(|text| !no_words(text));
            faults.extend(literal.map(|text| format!("{address} for {name}: never translated: {text}")));
        }
    }
    assert!(seen >= 20, "only {seen} pages were seen");
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

//! Every address for nobody and for each role: what the map says is what happens.

use actix_web::test::TestRequest;
use domain::role::Role;
use spoonround::web::guard::HEADERS;
use spoonround::web::routes::TABLE;
use spoonround::web::routes::Who;

use crate::site::Site;

const SIGN_IN_NAMES: [(Role, &str); 4] =
    [(Role::Worker, "mireni"), (Role::Supervisor, "olani"), (Role::Manager, "bemu"), (Role::Administrator, "teveli")];

/// An address that fits the pattern; the thing it names need not exist.
fn example(pattern: &str) -> String {
    pattern
        .replace("{code}", "22222222")
        .replace("{seq}", "1")
        .replace("{rule}", "weight.low")
        .replace("{name}", "nothing")
        .replace("{month}", "2026-10")
        .replace("{file}", "growth.csv")
        .replace("{area}", "ulopi")
        .replace("{note}", "00000000000070008000000000000001")
        .replace("{recipe}", "millet_bean_fish")
}

#[actix_web::test]
async fn every_address_answers_each_role_as_the_map_says() {
    let site = Site::new().await;
    let mut checked = 0;
    for route in TABLE {
        let path = example(route.pattern);
        assert!(!path.contains('{'), "give an example for {}", route.pattern);
        let mut nobody = site.browser();
        if route.method == "GET" {
            nobody.peek(&path).await;
            if route.who == Who::Anyone {
                assert!(matches!(nobody.status.as_u16(), 200 | 303 | 404), "{path} for nobody: {}", nobody.status);
            } else {
                assert_eq!(nobody.status.as_u16(), 303, "{path} asks nobody to sign in");
            }
        }
        for (role, name) in SIGN_IN_NAMES {
            let allowed = match route.who {
                Who::Anyone | Who::SignedIn => true,
                Who::Roles(roles) => roles.contains(&role),
            };
            let mut browser = site.signed_in(name).await;
            if route.method == "GET" {
                browser.peek(&path).await;
            } else {
                let token = browser.attrs("input[name=token]", "value").first().cloned().unwrap_or_default();
                let request = TestRequest::post().uri(&path).set_form([("token", token)]).insert_header(("sec-fetch-site", "same-origin"));
                browser.request(request, &path).await;
            }
            let status = browser.status.as_u16();
            if route.pattern == "/sign-in" && route.method == "POST" {
                // Its token is anchored in the door cookie, not in a session.
                assert_eq!(status, 403, "POST {path} with a session's token");
            } else if allowed {
                assert!(matches!(status, 200 | 303 | 400 | 404 | 422), "{} {path} for {name}: {status}\n{}", route.method, browser.text());
            } else {
                assert_eq!(status, 403, "{} {path} for {name}", route.method);
            }
            checked += 1;
        }
    }
    assert_eq!(checked, TABLE.len() * 4);
}

#[actix_web::test]
async fn a_form_without_a_fitting_token_or_from_elsewhere_is_refused_everywhere() {
    let site = Site::new().await;
    let mut other = site.signed_in("mireni").await;
    other.open("/password").await;
    let foreign_token = other.attrs("input[name=token]", "value").remove(0);
    for route in TABLE.iter().filter(|r| r.method == "POST" && !matches!(r.pattern, "/sign-in")) {
        let name = match route.who {
            Who::Roles(roles) => SIGN_IN_NAMES.iter().find(|(role, _)| roles.contains(role)).map_or("mireni", |(_, n)| *n),
            _ => "tamsi",
        };
        let path = example(route.pattern);
        let browser = site.signed_in(name).await;
        let own_token = browser.attrs("input[name=token]", "value").remove(0);
        for (what, token, headers) in [
            ("no token", "", vec![("sec-fetch-site", "same-origin")]),
            ("no token, old browser", "", vec![]),
            ("another session's token", foreign_token.as_str(), vec![("sec-fetch-site", "same-origin")]),
            ("cross-site", own_token.as_str(), vec![("sec-fetch-site", "cross-site")]),
            ("another origin", own_token.as_str(), vec![("origin", "https://elsewhere.example")]),
        ] {
            let mut browser = browser.clone();
            let mut request = TestRequest::post().uri(&path).set_form([("token", token), ("language", "fr")]);
            for header in headers {
                request = request.insert_header(header);
            }
            browser.request(request, &path).await;
            assert_eq!(browser.status.as_u16(), 403, "{path} with {what}");
        }
    }
}

#[actix_web::test]
async fn every_answer_carries_the_headers() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    for path in ["/password", "/no-such-page", "/sign-in", "/people"] {
        browser.peek(path).await;
        for (name, value) in HEADERS {
            assert_eq!(browser.headers.get(name).map(String::as_str), Some(value), "{name} on {path}");
        }
        for banned in ["style=", "<script", " onclick", " onload"] {
            assert!(!browser.body.contains(banned), "{banned} on {path}");
        }
    }
}

#[actix_web::test]
async fn no_page_of_ours_is_a_dead_end() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.peek("/no-such-page").await.is(404);
    assert!(browser.attrs("main a", "href").iter().any(|href| href.starts_with('/')), "a way out: {}", browser.text());
}

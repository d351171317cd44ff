//! What there is answers those in whose reach it is; what there is for others is not found. The whole map is walked with things that exist.

use std::collections::BTreeMap;

use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::role::Role;
use spoonround::web::routes::Route;
use spoonround::web::routes::TABLE;
use spoonround::web::routes::Who;

use crate::families::child;
use crate::families::code;
use crate::families::register;
use crate::site::Site;

/// Somebody who works with a village, and one of its children.
pub struct Corner {
    /// Worker and supervisor.
    pub people: [&'static str; 2],
    /// The child's code.
    pub code: String,
    /// The number of its visit.
    pub visit: String,
    /// What the child is called; on no page of others.
    pub called: &'static str,
}

/// Everybody, with the number of their corner where they have one.
const PEOPLE: [(&str, Role, Option<usize>); 6] = [
    ("mireni", Role::Worker, Some(0)),
    ("tamsi", Role::Worker, Some(1)),
    ("olani", Role::Supervisor, Some(0)),
    ("hembo", Role::Supervisor, Some(1)),
    ("bemu", Role::Manager, None),
    ("teveli", Role::Administrator, None),
];

/// A child in each village, registered before the last whole month, with a visit of today that opened a follow-up.
pub async fn two_corners(site: &Site) -> [Corner; 2] {
    [
        corner(site, 1, "Fanuri", (site.ulopi, site.mireni), ["mireni", "olani"]).await,
        corner(site, 2, "Selome", (site.mbiro, site.tamsi), ["tamsi", "hembo"]).await,
    ]
}

async fn corner(site: &Site, n: u128, called: &'static str, at: (AreaId, PersonId), people: [&'static str; 2]) -> Corner {
    register(site, &child(n, called, at.0, at.1), |line| line).await;
    let code = code(n);
    let mut worker = site.signed_in(people[0]).await;
    worker
        .open(&format!("/children/{code}/visits/new"))
        .await
        .submit("main form", &[("weight", "7,10"), ("arm", "113"), ("breastfed", "yes"), ("meals", "1")])
        .await
        .is(200);
    let visit = worker.path.split('/').nth(4).unwrap_or_else(|| panic!("saved: {} {}", worker.path, worker.text())).to_owned();
    Corner { people, code, visit, called }
}

/// What the variable parts of an address name.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Names {
    /// Nothing that could be missing.
    Nothing,
    /// Something of one corner, which others do not have.
    OfACorner,
    /// Something that everybody has who may ask at all.
    OfAll,
}

fn names(pattern: &str) -> Names {
    match pattern {
        _ if pattern.contains("{code}") || pattern.starts_with("/team/{name}") => Names::OfACorner,
        "/assets/{name}" | "/recipes/{recipe}" | "/reports/{month}/{file}" | "/people/{name}" | "/areas/{area}" => Names::OfAll,
        _ if pattern.starts_with("/protocol/adopted/{seq}") => Names::OfAll,
        _ => {
            assert!(!pattern.contains('{'), "say of {pattern} whether what it names is of one village or of all");
            Names::Nothing
        }
    }
}

/// The address of what there is in this corner.
pub fn address(pattern: &str, corner: &Corner, asset: &str) -> String {
    let name = match pattern.split('/').nth(1) {
        Some("assets") => asset,
        _ => corner.people[0],
    };
    // A file of one picture says which.
    let asked = if pattern == "/reports/pictures.csv" { "?picture=month" } else { "" };
    let address = pattern
        .replace("{code}", &corner.code)
        .replace("{rule}", "wasting.severe")
        .replace("/visits/{seq}", &format!("/visits/{}", corner.visit))
        .replace("{seq}", "1")
        .replace("{name}", name)
        .replace("{month}", "2026-10")
        .replace("{file}", "growth.csv")
        .replace("{area}", "ulopi")
        .replace("{recipe}", "millet_bean_fish");
    assert!(!address.contains('{'), "give {pattern} something that exists");
    format!("{address}{asked}")
}

/// Where a page leads that is no page of its own.
fn leads_to(pattern: &str, role: Role) -> Option<&'static str> {
    let first = match role {
        Role::Worker => "/round",
        Role::Supervisor => "/late",
        Role::Manager => "/reports",
        Role::Administrator => "/people",
    };
    matches!(pattern, "/" | "/sign-in").then_some(first)
}

/// Whether the map lets this role ask.
pub fn allowed(route: &Route, role: Role) -> bool {
    match route.who {
        Who::Anyone | Who::SignedIn => true,
        Who::Roles(roles) => roles.contains(&role),
    }
}

#[actix_web::test]
async fn what_there_is_answers_in_reach_and_is_not_found_out_of_reach() {
    let site = Site::new().await;
    let corners = two_corners(&site).await;
    let mut seen = BTreeMap::<&str, [u32; 3]>::new();
    for (name, role, own) in PEOPLE {
        let mut browser = site.signed_in(name).await;
        let sheet = browser.attrs("link[rel=stylesheet]", "href").remove(0);
        let asset = sheet.strip_prefix("/assets/").expect("a sheet of ours");
        for route in TABLE.iter().filter(|route| route.method == "GET" && allowed(route, role)) {
            let counts = seen.entry(route.pattern).or_default();
            let here = own.map_or(&corners[0], |own| &corners[own]);
            let path = address(route.pattern, here, asset);
            browser.peek(&path).await;
            match leads_to(route.pattern, role) {
                Some(place) => {
                    browser.is(303);
                    assert_eq!(browser.headers.get("location").map(String::as_str), Some(place), "{path} for {name}");
                }
                None => _ = browser.is(200),
            }
            counts[0] += 1;
            let Some(own) = own.filter(|_| names(route.pattern) == Names::OfACorner) else { continue };
            let other = &corners[1 - own];
            let path = address(route.pattern, other, asset);
            browser.peek(&path).await.is(404);
            assert!(!browser.body.contains(other.called), "{path} tells {name} of a child of others: {}", browser.text());
            counts[1] += 1;
            if route.pattern.contains("/visits/{seq}") {
                // Nor does a visit of another child answer under one's own child.
                browser.peek(&path.replace(&other.code, &here.code)).await.is(404);
            }
        }
        // What nobody has, for everybody who may ask.
        for route in TABLE.iter().filter(|route| route.method == "GET" && allowed(route, role) && names(route.pattern) == Names::OfAll) {
            let path = route
                .pattern
                .replace("{name}", "nothing")
                .replace("{recipe}", "nothing")
                .replace("{month}/{file}", "2026-10/nothing.csv")
                .replace("{area}", "nothing")
                .replace("{seq}", "77");
            browser.peek(&path).await.is(404);
            seen.entry(route.pattern).or_default()[2] += 1;
        }
    }
    // No line of the map is left out, whatever is added to it.
    for route in TABLE.iter().filter(|route| route.method == "GET") {
        let [answered, hidden, missing] = seen.get(route.pattern).copied().unwrap_or_default();
        let those = u32::try_from(PEOPLE.iter().filter(|(_, role, _)| allowed(route, *role)).count()).expect("few");
        assert!(those > 0 && answered == those, "{}: {answered} of {those} got an answer", route.pattern);
        match names(route.pattern) {
            Names::Nothing => assert_eq!((hidden, missing), (0, 0), "{}", route.pattern),
            Names::OfACorner => assert_eq!((hidden, missing), (those, 0), "{}", route.pattern),
            Names::OfAll => assert_eq!((hidden, missing), (0, those), "{}", route.pattern),
        }
    }
}

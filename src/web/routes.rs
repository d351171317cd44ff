//! The whole map of addresses, read top to bottom: method, address, who may, and which page answers.
//!
//! What is not in this list does not exist; who is not in a line is refused before the page is asked.

use actix_web::web;
use domain::role::Role;
use domain::role::Role::Administrator;
use domain::role::Role::Manager;
use domain::role::Role::Supervisor;
use domain::role::Role::Worker;

use crate::web::pages;

/// Who may ask for a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Who {
    /// Everybody, signed in or not.
    Anyone,
    /// Whoever is signed in.
    SignedIn,
    /// These roles.
    Roles(&'static [Role]),
}

/// One line of the map.
#[derive(Debug, Clone, Copy)]
pub struct Route {
    /// `GET` or `POST`.
    pub method: &'static str,
    /// The address with its variable parts in braces.
    pub pattern: &'static str,
    /// Who may.
    pub who: Who,
}

macro_rules! routes {
    ($($method:ident $pattern:literal $who:expr => $handler:path;)+) => {
        /// Every address there is.
        pub const TABLE: &[Route] = &[$(Route { method: stringify!($method), pattern: $pattern, who: $who }),+];

        /// Gives each address its page.
        pub fn configure(service: &mut web::ServiceConfig) {
            $(service.route($pattern, web::method(
                actix_web::http::Method::from_bytes(stringify!($method).as_bytes()).unwrap_or_default()
            ).to($handler));)+
        }
    };
}

const FIELD: Who = Who::Roles(&[Worker, Supervisor]);
const TEAM: Who = Who::Roles(&[Supervisor]);
const FIGURES: Who = Who::Roles(&[Manager, Supervisor]);
const OFFICE: Who = Who::Roles(&[Administrator]);

routes! {
    GET "/" Who::SignedIn => pages::home::show;
    GET "/assets/{name}" Who::Anyone => pages::assets::show;
    GET "/health" Who::Anyone => pages::home::health;
    GET "/sign-in" Who::Anyone => pages::sign_in::show;
    POST "/sign-in" Who::Anyone => pages::sign_in::enter;
    POST "/sign-out" Who::SignedIn => pages::sign_in::leave;
    GET "/password" Who::SignedIn => pages::password::show;
    POST "/password" Who::SignedIn => pages::password::change;
    GET "/round" FIELD => pages::round::show;
    GET "/round/print" FIELD => pages::round::print;
    POST "/language" Who::Anyone => pages::language::choose;
}

/// The line for a request's method and address pattern.
#[must_use]
pub fn line(method: &str, pattern: &str) -> Option<&'static Route> {
    TABLE.iter().find(|route| route.method == method && route.pattern == pattern)
}

/// Keeps the constants used while the pages that need them are added.
#[must_use]
pub const fn audiences() -> [Who; 4] {
    [FIELD, TEAM, FIGURES, OFFICE]
}

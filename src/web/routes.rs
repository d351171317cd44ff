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
const CHANGERS: Who = Who::Roles(&[Supervisor, Administrator]);
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
    GET "/children/new" FIELD => pages::register::show;
    POST "/children/new" FIELD => pages::register::save;
    GET "/children/{code}/emergency" FIELD => pages::visit::emergency;
    GET "/children/{code}/visits/new" FIELD => pages::visit::show;
    POST "/children/{code}/visits/new" FIELD => pages::visit::save;
    GET "/children/{code}/visits/{seq}/correct" FIELD => pages::visit::amend::show;
    POST "/children/{code}/visits/{seq}/correct" FIELD => pages::visit::amend::save;
    GET "/children/{code}/visits/{seq}/void" FIELD => pages::correction::show_void;
    POST "/children/{code}/visits/{seq}/void" FIELD => pages::correction::void;
    GET "/children/{code}/visits/{seq}/move" FIELD => pages::correction::moving::show_move;
    POST "/children/{code}/visits/{seq}/move" FIELD => pages::correction::moving::move_visit;
    GET "/children/{code}/merge" TEAM => pages::merge::show;
    POST "/children/{code}/merge" TEAM => pages::merge::save;
    GET "/children/{code}/visits/{seq}/now" FIELD => pages::result::show;
    GET "/children/{code}/home" FIELD => pages::household::show;
    POST "/children/{code}/home/link" FIELD => pages::household::link;
    POST "/children/{code}/home/unlink" FIELD => pages::household::unlink;
    GET "/round" FIELD => pages::round::show;
    GET "/round/print" FIELD => pages::round::print;
    GET "/find" FIELD => pages::find::show;
    GET "/children/{code}" FIELD => pages::child::show;
    GET "/children/{code}/card" FIELD => pages::child::card;
    GET "/children/{code}/referral" FIELD => pages::referrals::note;
    GET "/children/{code}/visits" FIELD => pages::child::visits;
    GET "/recipes" FIELD => pages::recipes::list;
    GET "/recipes/{recipe}" FIELD => pages::recipes::card;
    GET "/children/{code}/recipes" FIELD => pages::recipes::list_for_child;
    GET "/children/{code}/recipes/{recipe}" FIELD => pages::recipes::card_for_child;
    POST "/language" Who::Anyone => pages::language::choose;
    GET "/late" TEAM => pages::supervise::show;
    GET "/late/meeting" TEAM => pages::supervise::meeting::show;
    GET "/late/meeting.csv" TEAM => pages::supervise::meeting::file;
    GET "/late/urgent" TEAM => pages::supervise::whole::urgent;
    GET "/late/unseen" TEAM => pages::supervise::whole::unseen;
    GET "/late/held" TEAM => pages::supervise::whole::held;
    GET "/referrals" TEAM => pages::referrals::list;
    GET "/quality" TEAM => pages::quality::show;
    GET "/quality.csv" TEAM => pages::quality::file;
    GET "/team-pictures" TEAM => pages::team_pictures::show;
    GET "/team-pictures.csv" TEAM => pages::team_pictures::file;
    GET "/agreed-steps" TEAM => pages::agreed_steps::show;
    GET "/team" TEAM => pages::team::show;
    GET "/team/{name}" TEAM => pages::caseload::show;
    POST "/team/{name}/give" TEAM => pages::caseload::give;
    POST "/team/{name}/cover" TEAM => pages::caseload::add_cover;
    POST "/team/{name}/cover/end" TEAM => pages::caseload::end_cover;
    POST "/team/{name}/code" TEAM => pages::team::code;
    GET "/children/{code}/why/{rule}/{seq}" FIELD => pages::why::show;
    GET "/children/{code}/why/{rule}/{seq}/aloud" FIELD => pages::why::read_aloud;
    GET "/children/{code}/why/{rule}/{seq}/aloud.txt" FIELD => pages::why::plain;
    POST "/children/{code}/why/{rule}/{seq}/close" TEAM => pages::why::close;
    GET "/children/{code}/move" TEAM => pages::placing::show_move;
    POST "/children/{code}/move" TEAM => pages::placing::move_child;
    GET "/children/{code}/note" TEAM => pages::desk_note::show;
    POST "/children/{code}/note" TEAM => pages::desk_note::write;
    POST "/children/{code}/note/{note}/done" FIELD => pages::desk_note::done;
    GET "/children/{code}/leave" FIELD => pages::placing::show_leave;
    POST "/children/{code}/leave" FIELD => pages::placing::leave;
    GET "/reports" FIGURES => pages::report::show;
    GET "/reports/pictures" FIGURES => pages::pictures::show;
    GET "/reports/pictures.csv" FIGURES => pages::pictures::file;
    GET "/reports/wall" FIGURES => pages::pictures::wall;
    GET "/reports/{month}/{file}" FIGURES => pages::report::file;
    GET "/protocol" Who::SignedIn => pages::protocol::show;
    GET "/protocol/adopted/{seq}" Who::SignedIn => pages::protocol::adopted;
    GET "/protocol/adopted/{seq}/file" CHANGERS => pages::protocol::text;
    GET "/protocol/rehearse" CHANGERS => pages::protocol::rehearse::show;
    POST "/protocol/rehearse" CHANGERS => pages::protocol::rehearse::rehearse;
    POST "/protocol/adopt" OFFICE => pages::protocol::rehearse::adopt;
    GET "/people" OFFICE => pages::people::list;
    GET "/people/new" OFFICE => pages::people::new;
    POST "/people/new" OFFICE => pages::people::add;
    GET "/people/{name}" OFFICE => pages::people::show;
    POST "/people/{name}" OFFICE => pages::people::change;
    POST "/people/{name}/code" OFFICE => pages::people::access::code;
    POST "/people/{name}/sign-out" OFFICE => pages::people::access::sign_out;
    POST "/people/{name}/deactivate" OFFICE => pages::people::access::deactivate;
    POST "/people/{name}/activate" OFFICE => pages::people::access::activate;
    POST "/people/{name}/cover" OFFICE => pages::people::access::cover;
    POST "/people/{name}/cover/end" OFFICE => pages::people::access::end_cover;
    GET "/areas" OFFICE => pages::areas::list;
    POST "/areas" OFFICE => pages::areas::add;
    GET "/areas/{area}" OFFICE => pages::areas::show;
    POST "/areas/{area}" OFFICE => pages::areas::change;
    GET "/settings" OFFICE => pages::settings::show;
    POST "/settings" OFFICE => pages::settings::change;
}

/// The pages that show a past day when asked; all others show today, whatever the address says.
pub const SHOW_PAST_DAYS: [&str; 19] = [
    "/round",
    "/round/print",
    "/children/{code}",
    "/children/{code}/card",
    "/children/{code}/referral",
    "/children/{code}/visits",
    "/children/{code}/recipes",
    "/children/{code}/recipes/{recipe}",
    "/children/{code}/why/{rule}/{seq}",
    "/children/{code}/why/{rule}/{seq}/aloud",
    "/children/{code}/why/{rule}/{seq}/aloud.txt",
    "/recipes",
    "/recipes/{recipe}",
    "/late",
    "/late/meeting",
    "/late/meeting.csv",
    "/late/urgent",
    "/late/unseen",
    "/late/held",
];

/// The line for a request's method and address pattern.
#[must_use]
pub fn line(method: &str, pattern: &str) -> Option<&'static Route> {
    TABLE.iter().find(|route| route.method == method && route.pattern == pattern)
}

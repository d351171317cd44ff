//! The first page after signing in depends on what one is; and a page that says the server lives.

use actix_web::HttpResponse;
use actix_web::web;
use domain::role::Role;

use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::see_other;
use crate::web::state::App;

/// The page each role starts from.
#[must_use]
pub const fn first_page(role: Role) -> &'static str {
    match role {
        Role::Worker => "/round",
        Role::Supervisor => "/late",
        Role::Manager => "/reports",
        Role::Administrator => "/people",
    }
}

/// `GET /`
pub async fn show(signed: Signed) -> HttpResponse {
    see_other(first_page(signed.actor.role))
}

/// `GET /health`: whether the database answers.
///
/// # Errors
/// [`Failure`] when it does not.
pub async fn health(app: web::Data<App>) -> Result<HttpResponse, Failure> {
    app.reload_settings().await?;
    Ok(HttpResponse::Ok().content_type("text/plain; charset=utf-8").body("ok\n"))
}

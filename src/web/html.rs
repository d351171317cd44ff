//! Sends a page: maud's markup as an answer, so that views need not know the web framework.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::Responder;
use actix_web::body::BoxBody;
use actix_web::http::StatusCode;
use actix_web::http::header;
use maud::Markup;

/// A page with its status.
pub struct Html(pub StatusCode, pub Markup);

impl Html {
    /// A page that went well.
    #[must_use]
    pub const fn ok(page: Markup) -> Self {
        Self(StatusCode::OK, page)
    }

    /// A form with faults: everything typed is in it.
    #[must_use]
    pub const fn unprocessable(page: Markup) -> Self {
        Self(StatusCode::UNPROCESSABLE_ENTITY, page)
    }

    /// As a response.
    #[must_use]
    pub fn response(self) -> HttpResponse {
        HttpResponse::build(self.0)
            .insert_header((header::CONTENT_TYPE, "text/html; charset=utf-8"))
            .insert_header((header::CACHE_CONTROL, "no-store"))
            .body(self.1.into_string())
    }
}

impl Responder for Html {
    type Body = BoxBody;

    fn respond_to(self, _: &HttpRequest) -> HttpResponse {
        self.response()
    }
}

/// Sends the visitor on after a change, so that reloading repeats nothing.
#[must_use]
pub fn see_other(path: &str) -> HttpResponse {
    HttpResponse::SeeOther().insert_header((header::LOCATION, path)).insert_header((header::CACHE_CONTROL, "no-store")).finish()
}

//! What every request passes: where it comes from, what every answer carries, and that a panic stays one page's trouble.

use std::panic::AssertUnwindSafe;

use actix_web::Error;
use actix_web::HttpRequest;
use actix_web::ResponseError;
use actix_web::body::BoxBody;
use actix_web::body::MessageBody;
use actix_web::dev::ServiceRequest;
use actix_web::dev::ServiceResponse;
use actix_web::http::Method;
use actix_web::http::header;
use actix_web::http::header::HeaderName;
use actix_web::http::header::HeaderValue;
use actix_web::middleware::Next;
use actix_web::web;
use futures_util::FutureExt;

use crate::web::extract::ErrorVisitor;
use crate::web::failure::Failure;
use crate::web::state::App;

/// Sent with every answer. No script, no frame, nothing from elsewhere; links hold children's codes, so no referrer.
pub const HEADERS: [(&str, &str); 7] = [
    (
        "content-security-policy",
        "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "camera=(), geolocation=(), microphone=()"),
    ("x-frame-options", "DENY"),
];

/// Adds the headers, turns a panic into an error page, and dresses every failure as a page in the visitor's language.
///
/// # Errors
/// None of its own: what comes from inside is passed on dressed.
pub async fn around(req: ServiceRequest, next: Next<impl MessageBody + 'static>) -> Result<ServiceResponse<BoxBody>, Error> {
    // The request itself must not be held while it is routed; what an answer needs in the worst case is read before.
    let secure = req.app_data::<web::Data<App>>().is_some_and(|app| app.secure_cookies);
    let stranger = ErrorVisitor::stranger(req.request());
    let response = match same_origin(req.request()) {
        Err(failure) => req.into_response(failure.error_response()),
        Ok(()) => match AssertUnwindSafe(next.call(req)).catch_unwind().await {
            Ok(Ok(response)) => response.map_into_boxed_body(),
            Ok(Err(error)) => return Err(without_request(&stranger, &error.to_string(), secure)),
            Err(_) => return Err(without_request(&stranger, "a handler panicked", secure)),
        },
    };
    let mut response = crate::web::failure::dress(response).await;
    add_headers(response.headers_mut(), secure);
    Ok(response)
}

/// The page for trouble so deep that not even the request is left.
fn without_request(stranger: &ErrorVisitor, text: &str, secure: bool) -> Error {
    let failure = Failure::Broken(text.to_owned());
    let mut response = crate::web::failure::page_of(&failure, stranger, "");
    add_headers(response.headers_mut(), secure);
    actix_web::error::InternalError::from_response(failure, response).into()
}

fn add_headers(headers: &mut header::HeaderMap, secure: bool) {
    for (name, value) in HEADERS {
        headers.insert(HeaderName::from_static(name), HeaderValue::from_static(value));
    }
    if secure {
        headers.insert(header::STRICT_TRANSPORT_SECURITY, HeaderValue::from_static("max-age=31536000; includeSubDomains"));
    }
}

/// A request that changes something must come from our own pages. Old phone browsers may send neither header; then the
/// form's token, which every form carries, decides alone.
fn same_origin(req: &HttpRequest) -> Result<(), Failure> {
    if matches!(*req.method(), Method::GET | Method::HEAD | Method::OPTIONS) {
        return Ok(());
    }
    let text = |name: &str| req.headers().get(name).and_then(|v| v.to_str().ok());
    if let Some(site) = text("sec-fetch-site") {
        return if matches!(site, "same-origin" | "none") { Ok(()) } else { Err(Failure::ForeignForm) };
    }
    if let Some(origin) = text("origin") {
        let own = req.app_data::<web::Data<App>>().and_then(|app| app.public_origin.clone());
        let fits = match own {
            Some(own) => own == origin,
            None => text("host").is_some_and(|host| origin == format!("http://{host}") || origin == format!("https://{host}")),
        };
        return if fits { Ok(()) } else { Err(Failure::ForeignForm) };
    }
    Ok(())
}

//! Cookies: the session key, the door (a token's anchor before sign-in) and the language of those not signed in.

use actix_web::HttpRequest;
use actix_web::cookie::Cookie;
use actix_web::cookie::SameSite;
use actix_web::cookie::time::Duration;

const LANGUAGE: &str = "language";
const DOOR: &str = "door";

/// `__Host-` ties a cookie to this host and to TLS; browsers refuse it on plain loopback.
const fn session_name(secure: bool) -> &'static str {
    if secure { "__Host-session" } else { "session" }
}

/// The session key sent with a request.
#[must_use]
pub fn cookie_value(req: &HttpRequest, secure: bool) -> Option<String> {
    req.cookie(session_name(secure)).map(|c| c.value().to_owned()).filter(|v| !v.is_empty())
}

/// A cookie that holds the session key until the browser's end or the server's limit.
#[must_use]
pub fn session_cookie(key: &str, secure: bool, days: i64) -> Cookie<'static> {
    base(session_name(secure), key.to_owned(), secure).max_age(Duration::days(days)).finish()
}

/// Takes the session cookie back.
#[must_use]
pub fn ended_cookie(secure: bool) -> Cookie<'static> {
    base(session_name(secure), String::new(), secure).max_age(Duration::ZERO).finish()
}

/// The anchor of the sign-in form's token.
#[must_use]
pub fn door_value(req: &HttpRequest) -> Option<String> {
    req.cookie(DOOR).map(|c| c.value().to_owned()).filter(|v| v.len() >= 32)
}

/// A cookie that anchors the sign-in form's token.
#[must_use]
pub fn door_cookie(value: &str, secure: bool) -> Cookie<'static> {
    base(DOOR, value.to_owned(), secure).max_age(Duration::days(1)).finish()
}

/// The language chosen before sign-in.
#[must_use]
pub fn language_cookie(req: &HttpRequest) -> Option<String> {
    req.cookie(LANGUAGE).map(|c| c.value().to_owned())
}

/// Keeps a language for a year.
#[must_use]
pub fn keep_language(code: &str, secure: bool) -> Cookie<'static> {
    base(LANGUAGE, code.to_owned(), secure).max_age(Duration::days(365)).finish()
}

fn base(name: &'static str, value: String, secure: bool) -> actix_web::cookie::CookieBuilder<'static> {
    Cookie::build(name, value).path("/").http_only(true).secure(secure).same_site(SameSite::Lax)
}

//! Everything that can go wrong with a request, logged once, here; the visitor sees a page with a way out and a short
//! reference number, never the inner text.

use std::sync::Arc;

use actix_web::HttpResponse;
use actix_web::ResponseError;
use actix_web::body::BoxBody;
use actix_web::dev::ServiceResponse;
use actix_web::http::StatusCode;
use actix_web::http::header;

use crate::service::Refusal;
use crate::store::StoreError;
use crate::view::filled::Filled;
use crate::view::trouble;
use crate::web::extract::ErrorVisitor;
use crate::web::extract::Visitor;
use crate::web::html::Html;

/// Why a request was not answered as asked.
#[derive(Debug, Clone, thiserror::Error)]
pub enum Failure {
    /// No such page, or not in this person's scope.
    #[error("not found")]
    NotFound,
    /// Not for this role.
    #[error("not allowed for the role")]
    NotAllowed,
    /// Nobody is signed in; a page was asked for.
    #[error("sign-in needed")]
    SignInNeeded {
        /// Where to go afterwards.
        next: String,
    },
    /// The session ended while a form was filled in; the form is kept.
    #[error("session ended in mid-form")]
    SessionEnded {
        /// The form's address.
        path: String,
        /// Everything typed.
        filled: Filled,
    },
    /// Signed in with a one-time code: a password must be set first.
    #[error("a password must be set first")]
    PasswordFirst,
    /// The page was opened in an earlier session of this browser; what was typed is kept.
    #[error("page from an earlier session")]
    OldPage {
        /// The form's address.
        path: String,
        /// Everything typed.
        filled: Filled,
    },
    /// The form does not come from a page of ours.
    #[error("form from elsewhere or without a fitting token")]
    ForeignForm,
    /// The form cannot be read.
    #[error("unreadable form")]
    BadForm,
    /// The address has a part that cannot be read, such as an impossible day.
    #[error("unreadable address part {0}")]
    BadAddress(&'static str),
    /// The form is larger than any form of ours.
    #[error("form too large")]
    TooLarge,
    /// It was saved before, with other content; the saved one can be seen there.
    #[error("already saved, differently")]
    Conflict(String),
    /// Too much at once; try again.
    #[error("busy")]
    Busy,
    /// Our own trouble.
    #[error("broken: {0}")]
    Broken(String),
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Busy => Self::Busy,
            other => Self::Broken(chain(&other)),
        }
    }
}

impl From<Refusal> for Failure {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::NotFound => Self::NotFound,
            Refusal::Forbidden => Self::NotAllowed,
            Refusal::Conflict(path) => Self::Conflict(path),
            // A page that shows faults catches them itself; here they mean a form that no page of ours sends.
            Refusal::Invalid(_) => Self::BadForm,
            Refusal::Broken(text) => Self::Broken(text),
            Refusal::Store(error) => error.into(),
        }
    }
}

fn chain(error: &dyn std::error::Error) -> String {
    let mut text = error.to_string();
    let mut inner = error.source();
    while let Some(error) = inner {
        text.push_str(": ");
        text.push_str(&error.to_string());
        inner = error.source();
    }
    text
}

impl ResponseError for Failure {
    fn status_code(&self) -> StatusCode {
        match self {
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::NotAllowed | Self::ForeignForm | Self::OldPage { .. } => StatusCode::FORBIDDEN,
            Self::SignInNeeded { .. } | Self::PasswordFirst => StatusCode::SEE_OTHER,
            Self::SessionEnded { .. } => StatusCode::UNAUTHORIZED,
            Self::BadForm | Self::BadAddress(_) => StatusCode::BAD_REQUEST,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Conflict(_) => StatusCode::CONFLICT,
            Self::Busy => StatusCode::SERVICE_UNAVAILABLE,
            Self::Broken(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    fn error_response(&self) -> HttpResponse {
        let mut response = HttpResponse::new(self.status_code());
        if let Self::SignInNeeded { next } = self {
            let place = if next == "/" { "/sign-in".to_owned() } else { format!("/sign-in?next={}", encoded(next)) };
            if let Ok(place) = header::HeaderValue::from_str(&place) {
                response.headers_mut().insert(header::LOCATION, place);
            }
        }
        if matches!(self, Self::PasswordFirst) {
            response.headers_mut().insert(header::LOCATION, header::HeaderValue::from_static("/password"));
        }
        // This method is given no request and so no language; `dress` finds the failure here and writes the page.
        response.extensions_mut().insert(Arc::new(self.clone()));
        response
    }
}

/// Percent-encodes what may not stand in a query value.
#[must_use]
pub fn encoded(text: &str) -> String {
    text.bytes().fold(String::with_capacity(text.len()), |mut out, byte| {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'.' | b'/') {
            out.push(char::from(byte));
        } else {
            out.push_str(&format!("%{byte:02X}"));
        }
        out
    })
}

/// Writes the error page into an answer that has none yet.
pub async fn dress(response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
    let status = response.status();
    let noted = response.response().extensions().get::<Arc<Failure>>().cloned();
    if noted.is_none() && (!status.is_client_error() && !status.is_server_error() || has_page(&response)) {
        return response;
    }
    let failure = noted.map_or_else(
        || match status {
            StatusCode::NOT_FOUND | StatusCode::METHOD_NOT_ALLOWED => Failure::NotFound,
            StatusCode::PAYLOAD_TOO_LARGE => Failure::TooLarge,
            s if s.is_client_error() => Failure::BadForm,
            s => Failure::Broken(format!("status {s} without a page")),
        },
        |f| (*f).clone(),
    );
    if matches!(failure, Failure::SignInNeeded { .. } | Failure::PasswordFirst) {
        return response;
    }
    let request = response.request().clone();
    let visitor = Visitor::of(&request).await;
    let route = request.match_pattern().unwrap_or_default();
    let http = match &failure {
        Failure::SessionEnded { path, filled } => {
            let (title, body) = crate::web::pages::sign_in::carried_form(&request, &visitor, path, filled).await;
            Html(failure.status_code(), visitor.page(&title, body)).response()
        }
        other => page_of(other, &visitor, &route),
    };
    response.into_response(http)
}

/// The page of a failure, noted in the log.
#[must_use]
pub fn page_of(failure: &Failure, visitor: &ErrorVisitor, route: &str) -> HttpResponse {
    let reference = reference();
    match failure {
        Failure::Broken(text) => tracing::error!(reference, route, "request failed: {text}"),
        other => tracing::info!(reference, route, "request refused: {other}"),
    }
    let w = visitor.words();
    let (title, body) = match failure {
        Failure::NotAllowed => trouble::not_allowed(w),
        Failure::OldPage { path, filled } => trouble::old_page(w, path, filled, &visitor.token()),
        Failure::ForeignForm => trouble::foreign_form(w),
        Failure::BadForm => trouble::bad_form(w),
        Failure::BadAddress(part) => trouble::bad_address(w, part),
        Failure::TooLarge => trouble::too_large(w),
        Failure::Conflict(path) => trouble::conflict(w, path),
        Failure::Busy => trouble::busy(w),
        Failure::Broken(_) => trouble::broken(w, &reference),
        Failure::NotFound | Failure::SignInNeeded { .. } | Failure::PasswordFirst | Failure::SessionEnded { .. } => trouble::not_found(w),
    };
    let mut http = Html(failure.status_code(), visitor.page(&title, body)).response();
    if matches!(failure, Failure::Busy) {
        http.headers_mut().insert(header::RETRY_AFTER, header::HeaderValue::from_static("5"));
    }
    http
}

fn has_page(response: &ServiceResponse<BoxBody>) -> bool {
    response.headers().get(header::CONTENT_TYPE).and_then(|v| v.to_str().ok()).is_some_and(|t| t.starts_with("text/html"))
}

/// A short number for the log and the page; random, so that it says nothing.
fn reference() -> String {
    crate::web::secret::random_bytes::<4>().map_or_else(|| "0".to_owned(), |b| crate::web::secret::to_hex(&b))
}

//! The body of a form as pairs of text, exactly as typed. Parsing is the domain's work, so that every fault comes back at
//! once and nothing typed is lost.

use actix_web::FromRequest;
use actix_web::HttpRequest;
use actix_web::dev::Payload;
use actix_web::web;

use crate::view::filled::Filled;
use crate::web::failure::Failure;

/// The most a form may weigh. A visit with every food and sign ticked is under 8 kB.
pub const FORM_LIMIT_BYTES: usize = 64 * 1024;

/// Reads the pairs of a form body.
///
/// # Errors
/// [`Failure::TooLarge`] or [`Failure::BadForm`].
pub async fn read_pairs(req: &HttpRequest, payload: &mut Payload) -> Result<Filled, Failure> {
    web::Form::<Vec<(String, String)>>::from_request(req, payload).await.map(|form| Filled(form.into_inner())).map_err(|error| {
        match error.as_error::<actix_web::error::UrlencodedError>() {
            Some(actix_web::error::UrlencodedError::Overflow { .. }) => Failure::TooLarge,
            _ => Failure::BadForm,
        }
    })
}

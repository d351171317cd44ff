//! The body of a form as pairs of text, exactly as typed. Parsing is the domain's work, so that every fault comes back at
//! once and nothing typed is lost.

use actix_web::HttpRequest;
use actix_web::dev::Payload;
use actix_web::dev::UrlEncoded;
use actix_web::error::UrlencodedError;

use crate::view::filled::Filled;
use crate::web::failure::Failure;

/// The most a form may weigh. A visit with every food and sign ticked is under 8 kB.
pub const FORM_LIMIT_BYTES: usize = 64 * 1024;

/// The most a form with a protocol file may weigh. The built-in file is under 100 kB, and a form makes it heavier by half.
const PROTOCOL_LIMIT_BYTES: usize = 1024 * 1024;

/// Reads the pairs of a form body.
///
/// # Errors
/// [`Failure::TooLarge`] or [`Failure::BadForm`].
pub async fn read_pairs(req: &HttpRequest, payload: &mut Payload) -> Result<Filled, Failure> {
    let limit = if req.path().starts_with("/protocol/") { PROTOCOL_LIMIT_BYTES } else { FORM_LIMIT_BYTES };
    match UrlEncoded::<Vec<(String, String)>>::new(req, payload).limit(limit).await {
        Ok(pairs) => Ok(Filled(pairs)),
        Err(UrlencodedError::Overflow { .. }) => Err(Failure::TooLarge),
        Err(_) => Err(Failure::BadForm),
    }
}

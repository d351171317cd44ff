//! The body of a form as pairs of text, exactly as typed. Parsing is the domain's work, so that every fault comes back at
//! once and nothing typed is lost.

use actix_multipart::Field;
use actix_multipart::Multipart;
use actix_web::HttpRequest;
use actix_web::dev::Payload;
use actix_web::dev::UrlEncoded;
use actix_web::error::PayloadError;
use actix_web::error::UrlencodedError;
use actix_web::http::header;
use domain::ids::SubmissionKey;
use futures_util::StreamExt;

use crate::view::filled::Filled;
use crate::web::failure::Failure;

/// The most a form may weigh. A visit with every food and sign ticked is under 8 kB.
pub const FORM_LIMIT_BYTES: usize = 64 * 1024;

/// The most a protocol file may weigh. The built-in file is under 100 kB.
pub const FILE_LIMIT_BYTES: usize = 512 * 1024;

/// The most a form with the text of a protocol may weigh: a form writes a byte as three at worst.
const PROTOCOL_LIMIT_BYTES: usize = 4 * FILE_LIMIT_BYTES;

/// The most that is read of a form with a file, so that one that is too large is told of with the page still at hand.
const UPLOAD_LIMIT_BYTES: usize = 8 * FILE_LIMIT_BYTES;

/// Names of the pairs that a chosen file becomes: its text, its name, and why its text could not be had.
pub const FILE: &str = "file";
pub const FILE_NAME: &str = "file_name";
pub const FILE_FAULT: &str = "file_fault";
/// The file weighs too much.
pub const TOO_LARGE: &str = "too_large";
/// The file is not text in UTF-8.
pub const NOT_TEXT: &str = "not_text";

/// Reads the pairs of a form body; on the pages of the protocol a form may carry a file.
///
/// # Errors
/// [`Failure::TooLarge`] or [`Failure::BadForm`].
pub async fn read_body(req: &HttpRequest, payload: &mut Payload) -> Result<Filled, Failure> {
    let protocol = req.path().starts_with("/protocol/");
    let content = req.headers().get(header::CONTENT_TYPE).and_then(|value| value.to_str().ok()).unwrap_or_default();
    if protocol && content.starts_with("multipart/form-data") {
        return read_parts(req, payload).await;
    }
    let limit = if protocol { PROTOCOL_LIMIT_BYTES } else { FORM_LIMIT_BYTES };
    match UrlEncoded::<Vec<(String, String)>>::new(req, payload).limit(limit).await {
        Ok(pairs) => Ok(Filled(pairs)),
        Err(UrlencodedError::Overflow { .. }) => Err(Failure::TooLarge),
        Err(_) => Err(Failure::BadForm),
    }
}

async fn read_parts(req: &HttpRequest, payload: &mut Payload) -> Result<Filled, Failure> {
    let mut left = UPLOAD_LIMIT_BYTES;
    let bounded = payload.take().map(move |chunk| {
        let chunk = chunk?;
        left = left.checked_sub(chunk.len()).ok_or(PayloadError::Overflow)?;
        Ok(chunk)
    });
    let mut parts = Multipart::new(req.headers(), bounded);
    let mut pairs = Vec::new();
    while let Some(part) = parts.next().await {
        read_part(part.map_err(cut_off)?, &mut pairs).await?;
    }
    Ok(Filled(pairs))
}

async fn read_part(mut part: Field, pairs: &mut Vec<(String, String)>) -> Result<(), Failure> {
    let name = part.name().unwrap_or_default().to_owned();
    let file = part.content_disposition().and_then(|about| about.get_filename()).map(str::to_owned);
    let bytes = match part.bytes(FILE_LIMIT_BYTES).await {
        Ok(read) => Some(read.map_err(cut_off)?),
        Err(_) => None,
    };
    let Some(file) = file else {
        let text = String::from_utf8(bytes.ok_or(Failure::TooLarge)?.to_vec()).map_err(|_| Failure::BadForm)?;
        pairs.push((name, text));
        return Ok(());
    };
    // A browser sends the part of a file also where none was chosen, without a name.
    if file.is_empty() || name != FILE {
        return Ok(());
    }
    pairs.push((FILE_NAME.to_owned(), file));
    let text = bytes.ok_or(TOO_LARGE).and_then(|bytes| String::from_utf8(bytes.to_vec()).map_err(|_| NOT_TEXT));
    pairs.push(match text {
        Ok(text) => (FILE.to_owned(), text),
        Err(fault) => (FILE_FAULT.to_owned(), fault.to_owned()),
    });
    Ok(())
}

fn cut_off(fault: actix_multipart::MultipartError) -> Failure {
    match fault {
        actix_multipart::MultipartError::Payload(PayloadError::Overflow) => Failure::TooLarge,
        _ => Failure::BadForm,
    }
}

/// The submission key of a form.
///
/// # Errors
/// [`Failure::BadForm`] if there is none: no page of ours sends such a form.
pub fn submission_key(form: &Filled) -> Result<SubmissionKey, Failure> {
    uuid::Uuid::parse_str(form.one("key")).map(|u| SubmissionKey(u.as_u128())).map_err(|_| Failure::BadForm)
}

//! The stylesheet and the mark, inside the binary and named by their content, so that a phone asks for each once.

use std::sync::LazyLock;

use actix_web::HttpResponse;
use actix_web::http::header;
use actix_web::web;

use crate::view::layout::assets;
use crate::web::failure::Failure;

/// `GET /assets/{name}`
///
/// # Errors
/// [`Failure::NotFound`].
pub async fn show(name: web::Path<String>) -> Result<HttpResponse, Failure> {
    static ALL: LazyLock<Vec<assets::Asset>> = LazyLock::new(assets::all);
    let asset = ALL.iter().find(|asset| asset.name == *name).ok_or(Failure::NotFound)?;
    Ok(HttpResponse::Ok()
        .content_type(asset.media_type)
        .insert_header((header::CACHE_CONTROL, "public, max-age=31536000, immutable"))
        .body(asset.body))
}

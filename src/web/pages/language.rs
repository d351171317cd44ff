//! The language switch on every page.

use actix_web::FromRequest;
use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;

use crate::i18n::Lang;
use crate::service::sign_in;
use crate::web::extract::Visitor;
use crate::web::failure::Failure;
use crate::web::form::read_body;
use crate::web::html::see_other;
use crate::web::session;

/// `POST /language`: keeps the choice with the person, or in a cookie before sign-in. The form has no submission key: chosen twice,
/// a language is chosen, and before sign-in there is nobody to remember a key of.
///
/// # Errors
/// [`Failure::BadForm`] for a language there is none of.
pub async fn choose(req: HttpRequest, payload: web::Payload) -> Result<HttpResponse, Failure> {
    let visitor = Visitor::extract(&req).await?;
    let form = read_body(&req, &mut payload.into_inner()).await?;
    if visitor.actor.is_some() && !visitor.token_fits(form.one("token")) {
        return Err(Failure::ForeignForm);
    }
    let lang = Lang::from_code(form.one("language")).ok_or(Failure::BadForm)?;
    if let Some(actor) = &visitor.actor {
        sign_in::choose_language(&visitor.app().db, actor.person, lang.code()).await?;
    }
    let mut response = see_other(own_path(form.one("back")));
    let cookie = session::keep_language(lang.code(), visitor.app().secure_cookies);
    response.add_cookie(&cookie).map_err(|e| Failure::Broken(e.to_string()))?;
    Ok(response)
}

/// A path on this server, or the start: a form must not send anybody elsewhere.
#[must_use]
pub fn own_path(path: &str) -> &str {
    let fine = path.starts_with('/') && !path.starts_with("//") && !path.contains(['\\', '\r', '\n']) && path.is_ascii();
    if fine { path } else { "/" }
}

#[cfg(test)]
mod tests {
    use super::own_path;

    #[test]
    fn nobody_is_sent_elsewhere() {
        assert_eq!(own_path("/round?as_of=2026-01-02"), "/round?as_of=2026-01-02");
        for foreign in ["//elsewhere", "https://elsewhere", "/\\elsewhere", "", "/a\r\nX: y"] {
            assert_eq!(own_path(foreign), "/", "{foreign:?}");
        }
    }
}

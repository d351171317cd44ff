//! Changing one's password.

use actix_web::HttpResponse;

use domain::fault::Faults;

use crate::service::Refusal;
use crate::service::change_password::PasswordDraft;
use crate::service::change_password::Session;
use crate::service::change_password::change_password;
use crate::view::layout;
use crate::view::sign_in as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::home::first_page;

/// `GET /password`
pub async fn show(signed: Signed) -> Html {
    Html::ok(page(&signed, &Faults::new(), &fresh_key()))
}

fn page(signed: &Signed, faults: &Faults, key: &str) -> maud::Markup {
    let title = signed.words().say("password-title");
    let body = view::password_body(signed.words(), faults, signed.visitor.must_change_password(), &signed.visitor.token(), key);
    let mut shell = signed.shell(&title);
    // The bar would lie over the form on a small phone, and leads nowhere before a first password is chosen.
    shell.without_reach = true;
    layout::page(&shell, body)
}

/// `POST /password`
///
/// # Errors
/// [`Failure`].
pub async fn change(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let draft = PasswordDraft { present: form.one("present"), new: form.one("new"), again: form.one("again") };
    let by_code = signed.visitor.must_change_password();
    let session = Session { hash: signed.visitor.session_hash().ok_or(Failure::NotFound)?, by_code, key };
    match change_password(&signed.context(), session, &draft).await {
        Ok(()) => Ok(see_other(first_page(signed.actor.role))),
        Err(Refusal::Invalid(faults)) => Ok(Html::unprocessable(page(&signed, &faults, form.one("key"))).response()),
        Err(other) => Err(other.into()),
    }
}

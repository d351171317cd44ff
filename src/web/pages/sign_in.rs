//! Signing in and out. A form that was open when a session ended travels through the sign-in page, sealed, and is
//! offered again afterwards to the same person.

use actix_web::FromRequest;
use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::fault::Fault;
use maud::Markup;

use crate::service::sign_in;
use crate::service::sign_in::Entered;
use crate::view::filled::Filled;
use crate::view::sign_in as view;
use crate::view::sign_in::Written;
use crate::web::extract::ErrorVisitor;
use crate::web::extract::Posted;
use crate::web::extract::Visitor;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::form::read_body;
use crate::web::form::submission_key;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::home::first_page;
use crate::web::pages::language::own_path;
use crate::web::secret::random_bytes;
use crate::web::secret::to_hex;
use crate::web::session;

/// What a carried form is sealed for.
const CARRIED: &str = "carried form";

/// `GET /sign-in`
///
/// # Errors
/// [`Failure`] when the database cannot tell.
pub async fn show(req: HttpRequest) -> Result<HttpResponse, Failure> {
    let visitor = Visitor::extract(&req).await?;
    if let Some(actor) = &visitor.actor {
        return Ok(see_other(first_page(actor.role)));
    }
    let next = query_value(&req, "next").unwrap_or_default();
    let form = view::SignInPage { name: "", fault: None, wait_seconds: None, next: own_path(&next), written: Written::Nothing };
    with_door(&req, &visitor, StatusCode::OK, &form)
}

/// Shows the form with a token; the first time with a cookie that anchors it.
fn with_door(req: &HttpRequest, visitor: &Visitor, status: StatusCode, form: &view::SignInPage<'_>) -> Result<HttpResponse, Failure> {
    let secure = visitor.app().secure_cookies;
    let (door, fresh) = match session::door_value(req) {
        Some(door) => (door, false),
        None => (random_bytes::<32>().map(|b| to_hex(&b)).ok_or_else(|| Failure::Broken("no random numbers".to_owned()))?, true),
    };
    let token = visitor.app().secret.token(door.as_bytes());
    let title = visitor.words().say("sign-in-title");
    let page = visitor.page(&title, view::body(visitor.words(), form, &token, &fresh_key()));
    let mut response = Html(status, page).response();
    if fresh {
        response.add_cookie(&session::door_cookie(&door, secure)).map_err(|e| Failure::Broken(e.to_string()))?;
    }
    Ok(response)
}

/// `POST /sign-in`
///
/// # Errors
/// [`Failure`].
pub async fn enter(req: HttpRequest, payload: web::Payload) -> Result<HttpResponse, Failure> {
    let visitor = Visitor::extract(&req).await?;
    let form = read_body(&req, &mut payload.into_inner()).await?;
    let door = session::door_value(&req).unwrap_or_default();
    let carried = Some(form.one("carried")).filter(|c| !c.is_empty());
    let again = |fault, wait_seconds| view::SignInPage {
        name: form.one("name"),
        fault,
        wait_seconds,
        next: own_path(form.one("next")),
        written: carried.map_or(Written::Nothing, Written::Carried),
    };
    // A missing door cookie is an old bookmark or a cleared phone, not an attack worth a dead end: show the form again.
    if door.is_empty() || !visitor.app().secret.token_fits(door.as_bytes(), form.one("token")) {
        return with_door(&req, &visitor, StatusCode::FORBIDDEN, &again(None, None));
    }
    // Before signing in there is nobody to look for a key of: what was sent before is found by whoever's name and code it is.
    let key = submission_key(&form).ok();
    let outcome = sign_in::enter(&visitor.app().db, visitor.now, key, form.one("name"), form.one("password").to_owned())
        .await
        .map_err(|e| Failure::Broken(e.to_string()))?;
    match outcome {
        Entered::Wrong => with_door(&req, &visitor, StatusCode::UNPROCESSABLE_ENTITY, &again(Some(Fault::WrongSignIn), None)),
        Entered::Wait { seconds } => with_door(&req, &visitor, StatusCode::TOO_MANY_REQUESTS, &again(None, Some(seconds))),
        Entered::In { key, actor } => {
            // The old session of this browser, if any, ends: a new key at every sign-in.
            if let Some(old) = session::cookie_value(&req, visitor.app().secure_cookies) {
                sign_in::leave(&visitor.app().db, &old).await?;
            }
            let days = sign_in::lifetime(actor.role).1.num_days().max(1);
            let cookie = session::session_cookie(&key, visitor.app().secure_cookies, days);
            let kept = carried.and_then(|c| open_carried(&visitor, c)).filter(|kept| kept.person == actor.person.0.to_string());
            let mut response = match kept {
                Some(kept) => {
                    let token = visitor.app().secret.token(&sign_in::key_hash(&key));
                    let body = view::carried_again(visitor.words(), &kept.path, &kept.filled, &token);
                    Html::ok(visitor.page(&visitor.words().say("sign-in-carried-title"), body)).response()
                }
                None => {
                    let next = own_path(form.one("next"));
                    see_other(if next == "/" { first_page(actor.role) } else { next })
                }
            };
            response.add_cookie(&cookie).map_err(|e| Failure::Broken(e.to_string()))?;
            Ok(response)
        }
    }
}

/// `POST /sign-out`. The form has no submission key: after the first time there is no session to which a key could belong, and whoever
/// is out is where they wanted to be. Sent again, it leads to the same page.
///
/// # Errors
/// [`Failure`].
pub async fn leave(req: HttpRequest, posted: Result<Posted, Failure>) -> Result<HttpResponse, Failure> {
    let visitor = match posted {
        Ok(posted) => posted.signed.visitor,
        Err(Failure::SessionEnded { .. }) => Visitor::extract(&req).await?,
        Err(other) => return Err(other),
    };
    let secure = visitor.app().secure_cookies;
    if let Some(key) = session::cookie_value(&req, secure) {
        sign_in::leave(&visitor.app().db, &key).await?;
    }
    let mut response = see_other("/sign-in");
    response.add_cookie(&session::ended_cookie(secure)).map_err(|e| Failure::Broken(e.to_string()))?;
    response.headers_mut().insert(
        actix_web::http::header::HeaderName::from_static("clear-site-data"),
        actix_web::http::header::HeaderValue::from_static("\"cache\", \"storage\""),
    );
    Ok(response)
}

struct Kept {
    person: String,
    path: String,
    filled: Filled,
}

/// The sign-in page that carries a form whose session ended. Only a form whose owner is known is carried: it is given
/// back to nobody else.
pub async fn carried_form(req: &HttpRequest, visitor: &ErrorVisitor, path: &str, filled: &Filled) -> (String, Markup) {
    let words = visitor.words();
    let title = words.say("sign-in-title");
    let ErrorVisitor::Known(visitor) = visitor else {
        return crate::view::trouble::busy(words);
    };
    let app = visitor.app();
    let owner = match session::cookie_value(req, app.secure_cookies) {
        Some(key) => sign_in::owner(&app.db, &key).await.ok().flatten(),
        None => None,
    };
    let carried = owner.and_then(|owner| seal(visitor, &owner.0.to_string(), path, filled));
    let door = session::door_value(req).unwrap_or_default();
    let token = app.secret.token(door.as_bytes());
    let written = carried.as_deref().map_or(Written::Lost, Written::Carried);
    let form = view::SignInPage { name: "", fault: None, wait_seconds: None, next: "/", written };
    (title, view::body(words, &form, &token, &fresh_key()))
}

fn seal(visitor: &Visitor, person: &str, path: &str, filled: &Filled) -> Option<String> {
    let mut lines = vec![person.to_owned(), path.to_owned()];
    lines.extend(filled.0.iter().filter(|(k, _)| k != "token").map(|(k, v)| {
        // Line breaks inside values are escaped so that each pair stays one line.
        format!("{}={}", k, v.replace('\\', "\\\\").replace('\n', "\\n").replace('\r', "\\r"))
    }));
    visitor.app().secret.hide(CARRIED, &lines.join("\n"))
}

fn open_carried(visitor: &Visitor, carried: &str) -> Option<Kept> {
    let text = visitor.app().secret.reveal(CARRIED, carried)?;
    let mut lines = text.split('\n');
    let person = lines.next()?.to_owned();
    let path = lines.next()?.to_owned();
    let pairs = lines.filter_map(|line| line.split_once('=')).map(|(k, v)| (k.to_owned(), unescaped(v))).collect();
    Some(Kept { person, path, filled: Filled(pairs) })
}

fn unescaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        match (c, if c == '\\' { chars.next() } else { None }) {
            ('\\', Some('n')) => out.push('\n'),
            ('\\', Some('r')) => out.push('\r'),
            ('\\', Some(other)) => out.push(other),
            (c, _) => out.push(c),
        }
    }
    out
}

//! The small forms of a person's page: one-time code, sessions, signing in, standing in.

use actix_web::HttpResponse;
use actix_web::web;
use chrono::DateTime;
use chrono::Timelike;
use chrono::Utc;
use domain::draft::office::read_cover;
use domain::fault::Faults;
use maud::Markup;

use crate::args;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::once::Sent;
use crate::service::people::access as service;
use crate::service::people::access::Act;
use crate::service::people::access::Code;
use crate::service::people::cover as covers;
use crate::service::people::path;
use crate::store::people::PersonRecord;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::people as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::caseload::with_stand_in;
use crate::web::pages::people::Wrong;
use crate::web::pages::people::person_page;

/// An instant in words, in the programme's time.
pub(crate) fn moment(signed: &Signed, at: DateTime<Utc>) -> String {
    let there = at.with_timezone(&signed.visitor.settings.time_zone);
    format::day_and_time(signed.words(), there.date_naive(), there.hour(), there.minute())
}

/// The page that shows a code once.
pub(crate) fn code_page(signed: &Signed, person: &PersonRecord, code: &Code, back: &str) -> Markup {
    let w = signed.words();
    let until = moment(signed, code.until);
    let page = view::CodePage { full_name: &person.full_name, sign_in_name: &person.sign_in_name, code: &code.signs, until: &until, back };
    let title = w.say_with("code-title", args!["name" => &person.full_name]);
    let mut shell = signed.shell(&title);
    shell.protocol = None;
    layout::page(&shell, view::code(w, &page))
}

/// The page after the same form was sent again.
pub(crate) fn code_gone(signed: &Signed, person: &PersonRecord, back: &str) -> Markup {
    let w = signed.words();
    let title = w.say("code-gone-title");
    layout::page(&signed.shell(&title), view::code_gone(w, back, &person.full_name))
}

/// `POST /people/{name}/code`: answers with the code, which is shown only here.
///
/// # Errors
/// [`Failure`].
pub async fn code(posted: Posted, name: web::Path<String>) -> Result<Html, Failure> {
    let sent = Sent::of(posted.key()?, &posted.form.0);
    let (person, code) = service::new_code(&posted.signed.context(), sent, &name).await?;
    let back = path(&person);
    Ok(Html::ok(match code {
        Some(code) => code_page(&posted.signed, &person, &code, &back),
        None => code_gone(&posted.signed, &person, &back),
    }))
}

async fn act(posted: Posted, name: &str, act: Act, done: &str) -> Result<HttpResponse, Failure> {
    let sent = Sent::of(posted.key()?, &posted.form.0);
    match service::act(&posted.signed.context(), sent, name, act).await {
        Ok(path) => Ok(see_other(&format!("{path}?done={done}"))),
        Err(Refusal::Invalid(faults)) => {
            let wrong = Wrong { cover: Some((Filled::default(), faults)), ..Wrong::default() };
            Ok(Html::unprocessable(person_page(&posted.signed, name, None, wrong).await?).response())
        }
        Err(other) => Err(other.into()),
    }
}

/// `POST /people/{name}/sign-out`
///
/// # Errors
/// [`Failure`].
pub async fn sign_out(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    act(posted, &name, Act::SignOut, "signed-out").await
}

/// `POST /people/{name}/deactivate`
///
/// # Errors
/// [`Failure`].
pub async fn deactivate(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    act(posted, &name, Act::Deactivate, "deactivated").await
}

/// `POST /people/{name}/activate`
///
/// # Errors
/// [`Failure`].
pub async fn activate(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    act(posted, &name, Act::Activate, "activated").await
}

/// `POST /people/{name}/cover`
///
/// # Errors
/// [`Failure`].
pub async fn cover(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let faults: Faults = match read_cover(&form.0, signed.visitor.today) {
        Ok(cover) => match covers::add(&signed.context(), Sent::of(key, &form.0), &name, &cover).await {
            Ok(path) => return Ok(see_other(&with_stand_in(&path, &cover))),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    let wrong = Wrong { cover: Some((form, faults)), ..Wrong::default() };
    Ok(Html::unprocessable(person_page(&signed, &name, None, wrong).await?).response())
}

/// `POST /people/{name}/cover/end`
///
/// # Errors
/// [`Failure`].
pub async fn end_cover(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let sent = Sent::of(posted.key()?, &posted.form.0);
    let from = posted.form.one("from").parse().map_err(|_| Failure::BadForm)?;
    let path = covers::end(&posted.signed.context(), sent, &name, posted.form.one("covered_by"), from).await?;
    Ok(see_other(&format!("{path}?done=cover-ended")))
}

//! A supervisor's words to the worker about a child.

use actix_web::HttpResponse;
use actix_web::web;
use domain::fault::Faults;
use maud::Markup;

use crate::args;
use crate::clock::day_in;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::child_file::ChildFile;
use crate::service::desk_notes as service;
use crate::service::once::Sent;
use crate::store::children::ChildRecord;
use crate::view::desk_note as view;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::parts::not_saved_title;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;

/// The notes on a child's page.
///
/// # Errors
/// [`Failure`].
pub async fn waiting(signed: &Signed, file: &ChildFile) -> Result<Vec<view::NoteLine>, Failure> {
    let w = signed.words();
    let notes = service::waiting(&signed.context(), file).await?;
    let line = |(note, by): (crate::store::desk_notes::DeskNote, String)| view::NoteLine {
        by,
        on: format::day(w, day_in(signed.visitor.settings.time_zone, note.at)),
        words: note.words,
        together: note.together_on.map(|day| format::weekday(w, day)),
        aside: format!("/children/{}/note/{}/done", file.record.code, uuid::Uuid::from_u128(note.id).simple()),
        token: signed.visitor.token(),
        key: fresh_key(),
    };
    Ok(notes.into_iter().map(line).collect())
}

/// What was read lately, each note in a sentence.
///
/// # Errors
/// [`Failure`].
pub async fn read(signed: &Signed, file: &ChildFile) -> Result<Vec<String>, Failure> {
    let w = signed.words();
    let said = |(note, by, reader): (crate::store::desk_notes::ReadNote, String, String)| {
        let date = format::day(w, day_in(signed.visitor.settings.time_zone, note.read_at));
        w.say_with("desk-note-read", args!["by" => by, "words" => note.words, "reader" => reader, "date" => date])
    };
    Ok(service::read_lately(&signed.context(), file).await?.into_iter().map(said).collect())
}

fn form_page(signed: &Signed, child: &ChildRecord, wrong: Option<(&Filled, &Faults)>) -> Markup {
    let w = signed.words();
    let called = child.known_as.as_deref().unwrap_or(&child.name);
    let (stored, none, fresh) = (Filled::default(), Faults::new(), fresh_key());
    let (filled, faults) = wrong.unwrap_or((&stored, &none));
    let page = view::NotePage {
        child_path: &format!("/children/{}", child.code),
        called,
        filled,
        faults,
        token: &signed.visitor.token(),
        key: wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key")),
    };
    let title = w.say_with("desk-note-title", args!["name" => called]);
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    layout::page(&signed.shell(&title), view::page(w, &page))
}

/// `GET /children/{code}/note`
///
/// # Errors
/// [`Failure`].
pub async fn show(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let child = service::about(&signed.context(), &code).await?;
    Ok(Html::ok(form_page(&signed, &child, None)))
}

/// `POST /children/{code}/note`
///
/// # Errors
/// [`Failure`].
pub async fn write(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    match service::write(&ctx, Sent::of(key, &form.0), &code, &form.0).await {
        Ok(path) => Ok(see_other(&path)),
        Err(Refusal::Invalid(faults)) => {
            let child = service::about(&ctx, &code).await?;
            Ok(Html::unprocessable(form_page(&signed, &child, Some((&form, &faults)))).response())
        }
        Err(other) => Err(other.into()),
    }
}

/// `POST /children/{code}/note/{note}/done`
///
/// # Errors
/// [`Failure`].
pub async fn done(posted: Posted, path: web::Path<(String, String)>) -> Result<HttpResponse, Failure> {
    let (code, note) = path.into_inner();
    let note = uuid::Uuid::parse_str(&note).map_err(|_| Failure::NotFound)?.as_u128();
    let sent = Sent::of(posted.key()?, &posted.form.0);
    Ok(see_other(&service::set_aside(&posted.signed.context(), sent, &code, note).await?))
}

//! A child's page, and all its visits.

mod answers;
pub(super) mod shown;
mod thickness;
mod versions;

use std::collections::BTreeMap;

use actix_web::HttpRequest;
use actix_web::web;
use domain::child_code::ChildCode;
use domain::food::FoodCode;

use crate::args;
use crate::service::Context;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::child_visits;
use crate::service::corrections;
use crate::service::household;
use crate::view::child as view;
use crate::view::layout;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::correction;
use crate::web::pages::desk_note;
use crate::web::pages::household::also;
use crate::web::pages::people::done;

/// `GET /children/{code}`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn show(req: HttpRequest, signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let ctx = signed.context();
    let code = child_code(&code)?;
    let file = child_file::open(&ctx, &code, signed.as_of).await?;
    let names = child_visits::recorders(&ctx, &file).await?;
    let w = signed.words();
    let food = |code: &str| file.assessment.now.protocol.food_name(&FoodCode(code.to_owned()), w.lang().code()).to_owned();
    let query = query(&signed);
    let corrections = correction::history(&signed, corrections::history(&ctx, &file).await?);
    let mut page = shown::page(&file, &names, &signed, &query, &food, corrections);
    // The lists know the others as they are today.
    if signed.as_of == signed.visitor.today {
        page.here = also(&signed, &household::others(&ctx, &file, signed.as_of).await?, signed.as_of);
    }
    page.twin = twin(&ctx, &file).await?;
    page.desk_notes = desk_note::waiting(&signed, &file).await?;
    page.notes_read = desk_note::read(&signed, &file).await?;
    let mut shell = signed.shell(&file.record.name);
    shell.wide = true;
    shell.urgent = page.is_emergency();
    // Said until the first visit of the day: whoever just registered the child sees that it was saved.
    let new = signed.as_of == signed.visitor.today && file.record.facts.registered_on == signed.as_of && file.visits.is_empty();
    let registered = new.then(|| w.say_with("register-flash", args!["name" => file.called()]));
    let corrected =
        done(&req, &[("voided", "void-done"), ("moved", "move-visit-done"), ("merged", "merge-done"), ("noted", "desk-note-done")])
            .map(|id| w.say(id));
    // A code that was merged leads here: the printed card still says the old one.
    let led_here = (code.as_str() != file.record.code && corrected.is_none())
        .then(|| w.say_with("merge-led-here", args!["code" => crate::web::pages::find::printed(code.as_str())]));
    shell.flash = corrected.as_deref().or(led_here.as_deref()).or(registered.as_deref());
    Ok(Html::ok(layout::page(&shell, view::body(w, &page))))
}

/// `GET /children/{code}/card`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn card(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let file = child_file::open(&signed.context(), &child_code(&code)?, signed.as_of).await?;
    let w = signed.words();
    let food = |code: &str| file.assessment.now.protocol.food_name(&FoodCode(code.to_owned()), w.lang().code()).to_owned();
    let (names, query) = (BTreeMap::new(), query(&signed));
    let page = shown::page(&file, &names, &signed, &query, &food, Vec::new());
    let title = w.say_with("card-title", args!["name" => file.called()]);
    Ok(Html::ok(layout::page(&signed.shell(&title), crate::view::card::body(w, &page))))
}

/// The record that may be the same child, while nobody has decided and the reader may see it.
async fn twin(ctx: &Context, file: &ChildFile) -> Result<Option<(String, String)>, Failure> {
    let Some(other) = file.record.looks_like.filter(|_| !file.record.different_child_decided) else { return Ok(None) };
    let other = child_file::by_id(ctx, other).await?.filter(|other| other.id != file.record.id);
    Ok(other.map(|other| (other.code, other.name)))
}

/// `GET /children/{code}/visits`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn visits(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let ctx = signed.context();
    let file = child_file::open(&ctx, &child_code(&code)?, signed.as_of).await?;
    let replaced = child_visits::replaced(&ctx, &file).await?;
    let history = corrections::history(&ctx, &file).await?;
    let w = signed.words();
    let query = query(&signed);
    let page = versions::visits(&file, &replaced, &history, &signed, &query);
    let mut shell = signed.shell(&file.record.name);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::all_visits(w, &page))))
}

fn child_code(text: &str) -> Result<ChildCode, Failure> {
    ChildCode::parse(text).map_err(|_| Failure::NotFound)
}

/// What links carry on: the past day shown.
pub(super) fn query(signed: &Signed) -> String {
    if signed.as_of == signed.visitor.today { String::new() } else { format!("?as_of={}", signed.as_of) }
}

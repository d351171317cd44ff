//! Villages and other areas, for the administrator.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;
use domain::draft::office::read_area;
use domain::fault::Faults;
use maud::Markup;

use crate::args;
use crate::service::Refusal;
use crate::service::areas as service;
use crate::service::once::Sent;
use crate::store::areas::AreaRecord;
use crate::view::areas as view;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::html::see_other;

fn line(depth: usize, area: &AreaRecord, children: u64) -> view::AreaLine {
    let (code, name) = (area.code.clone(), area.name.clone());
    view::AreaLine { code, name, depth, active: area.active, children, walk_minutes: area.walk_minutes }
}

fn framed(signed: &Signed, title: &str, flash: Option<&str>, body: Markup) -> Markup {
    let mut shell = signed.shell(title);
    shell.here = Some(Nav::Areas);
    shell.flash = flash;
    shell.protocol = None;
    layout::page(&shell, body)
}

async fn list_page(signed: &Signed, filled: &Filled, faults: &Faults, key: &str, done: Option<(&str, String)>) -> Result<Markup, Failure> {
    let w = signed.words();
    let tree = service::tree(&signed.context()).await?;
    let left = service::left_behind(&signed.context(), &tree).await?;
    // The name comes from what is stored, not from the address.
    let flash = done.and_then(|(id, code)| {
        let area = tree.iter().find(|(_, a)| a.code == code)?;
        match left.get(&area.1.id) {
            Some(count) if !area.1.active => Some(w.say_with("areas-saved-children", args!["name" => &area.1.name, "count" => *count])),
            _ => Some(w.say_with(id, args!["name" => &area.1.name])),
        }
    });
    let lines: Vec<_> = tree.iter().map(|(depth, area)| line(*depth, area, left.get(&area.id).copied().unwrap_or(0))).collect();
    let typed = view::Typed { filled, faults, token: &signed.visitor.token(), key };
    let title = w.say("areas-title");
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    Ok(framed(signed, &title, flash.as_deref(), view::list(w, &lines, typed)))
}

/// `GET /areas`
///
/// # Errors
/// [`Failure`].
pub async fn list(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let done = query_value(&req, "added")
        .map(|code| ("areas-added", code))
        .or_else(|| query_value(&req, "changed").map(|code| ("areas-saved", code)));
    Ok(Html::ok(list_page(&signed, &Filled::default(), &Faults::new(), &fresh_key(), done).await?))
}

/// `POST /areas`
///
/// # Errors
/// [`Failure`].
pub async fn add(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let faults = match read_area(&form.0, true) {
        Ok(area) => match service::add(&signed.context(), Sent::of(key, &form.0), &area).await {
            Ok(()) => return Ok(see_other(&format!("/areas?added={}", encoded(area.code.as_deref().unwrap_or_default())))),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    Ok(Html::unprocessable(list_page(&signed, &form, &faults, form.one("key"), None).await?).response())
}

async fn area_page(signed: &Signed, code: &str, wrong: Option<(&Filled, &Faults)>) -> Result<Markup, Failure> {
    let w = signed.words();
    let (area, possible) = service::open(&signed.context(), code).await?;
    let parent = area.parent.and_then(|id| possible.iter().find(|a| a.id == id)).map_or("", |a| a.code.as_str());
    let stored =
        Filled::default().with("name", area.name.clone()).with("parent", parent).with("active", if area.active { "yes" } else { "no" });
    let stored = area.walk_minutes.map_or(stored.clone(), |minutes| stored.with("walk", minutes.to_string()));
    let (no_faults, fresh) = (Faults::new(), fresh_key());
    let (filled, faults) = wrong.unwrap_or((&stored, &no_faults));
    let key = wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key"));
    let typed = view::Typed { filled, faults, token: &signed.visitor.token(), key };
    let possible: Vec<_> = possible.iter().map(|a| line(0, a, 0)).collect();
    let title = w.say_with("areas-change-title", args!["name" => &area.name]);
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    Ok(framed(signed, &title, None, view::change(w, &line(0, &area, 0), &possible, typed)))
}

/// `GET /areas/{area}`
///
/// # Errors
/// [`Failure`].
pub async fn show(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    Ok(Html::ok(area_page(&signed, &code, None).await?))
}

/// `POST /areas/{area}`
///
/// # Errors
/// [`Failure`].
pub async fn change(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let faults = match read_area(&form.0, false) {
        Ok(area) => match service::change(&signed.context(), Sent::of(key, &form.0), &code, &area).await {
            Ok(()) => return Ok(see_other(&format!("/areas?changed={}", encoded(&code)))),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    Ok(Html::unprocessable(area_page(&signed, &code, Some((&form, &faults))).await?).response())
}

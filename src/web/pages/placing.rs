//! A child moves to another worker or village, or leaves the programme.

use actix_web::HttpResponse;
use actix_web::web;
use domain::child::ChildStatus;
use domain::fault::Faults;
use domain::role::Action;
use domain::role::may;
use maud::Markup;

use crate::args;
use crate::i18n::codes;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::change_status;
use crate::service::move_child as moving;
use crate::service::move_child::Moved;
use crate::service::move_child::Places;
use crate::service::once::Sent;
use crate::store::children::ChildRecord;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::leave as leave_view;
use crate::view::move_child as move_view;
use crate::view::parts::not_saved_title;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::people::with_day;

fn called(child: &ChildRecord) -> &str {
    child.known_as.as_deref().unwrap_or(&child.name)
}

fn framed(signed: &Signed, title: String, faults: &Faults, body: Markup) -> Markup {
    let title = if faults.is_empty() { title } else { not_saved_title(signed.words(), &title) };
    layout::page(&signed.shell(&title), body)
}

fn move_page(signed: &Signed, places: &Places, wrong: Option<(&Filled, &Faults)>, changed: bool) -> Markup {
    let w = signed.words();
    let child = &places.child;
    let worker = places.workers.iter().find(|p| p.id == child.worker).map_or("", |p| p.sign_in_name.as_str());
    let area = places.areas.iter().find(|a| a.id == child.area).map_or("", |a| a.code.as_str());
    let stored = Filled::default().with("worker", worker).with("area", area);
    let (stored, none, fresh) = (with_day(stored, "from", Some(signed.visitor.today)), Faults::new(), fresh_key());
    let (filled, faults) = wrong.unwrap_or((&stored, &none));
    // After a change by somebody else it is another form: what was sent had no effect.
    let key = wrong.filter(|_| !changed).map_or(fresh.as_str(), |(filled, _)| filled.one("key"));
    let page = move_view::MovePage {
        child_path: &format!("/children/{}", child.code),
        called: called(child),
        version: child.version,
        places: places
            .history
            .iter()
            .map(|(place, village, worker)| move_view::Place {
                village: village.clone(),
                worker: worker.clone(),
                from: format::day_and_year(w, place.from_on),
                to: place.to_on.map(|day| format::day_and_year(w, day)),
            })
            .collect(),
        workers: places.workers.iter().map(|p| (p.sign_in_name.clone(), p.full_name.clone())).collect(),
        areas: places.areas.iter().map(|a| (a.code.clone(), a.name.clone())).collect(),
        filled,
        faults,
        changed,
        token: &signed.visitor.token(),
        key,
    };
    let title = w.say_with("move-title", args!["name" => called(child)]);
    framed(signed, title, faults, move_view::page(w, &page))
}

/// `GET /children/{code}/move`
///
/// # Errors
/// [`Failure`].
pub async fn show_move(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let places = moving::open(&signed.context(), &code).await?;
    Ok(Html::ok(move_page(&signed, &places, None, false)))
}

/// `POST /children/{code}/move`
///
/// # Errors
/// [`Failure`].
pub async fn move_child(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let version: u32 = form.one("version").parse().map_err(|_| Failure::BadForm)?;
    let ctx = signed.context();
    let (faults, changed) = match moving::move_child(&ctx, Sent::of(key, &form.0), &code, version, &form.0).await {
        Ok(Moved::Done(path)) => return Ok(see_other(&path)),
        Ok(Moved::Changed) => (Faults::new(), true),
        Err(Refusal::Invalid(faults)) => (faults, false),
        Err(other) => return Err(other.into()),
    };
    let places = moving::open(&ctx, &code).await?;
    let page = move_page(&signed, &places, Some((&form, &faults)), changed);
    Ok(if changed { Html(actix_web::http::StatusCode::CONFLICT, page) } else { Html::unprocessable(page) }.response())
}

fn leave_page(signed: &Signed, child: &ChildRecord, wrong: Option<(&Filled, &Faults)>) -> Markup {
    let w = signed.words();
    let (stored, none, fresh) = (Filled::default(), Faults::new(), fresh_key());
    let (filled, faults) = wrong.unwrap_or((&stored, &none));
    if child.facts.status != ChildStatus::Active && wrong.is_none() {
        let how = codes::child_status(w, child.facts.status);
        let on = child.left_on.map_or_else(String::new, |day| format::day_and_year(w, day));
        let body = leave_view::left(w, called(child), child.facts.status == ChildStatus::Died, &how, &on);
        return signed.visitor.page(called(child), body);
    }
    let page = leave_view::LeavePage {
        child_path: &format!("/children/{}", child.code),
        called: called(child),
        records_death: may(signed.actor.role, Action::Supervise),
        filled,
        faults,
        token: &signed.visitor.token(),
        key: wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key")),
    };
    let title = w.say_with("leave-title", args!["name" => called(child)]);
    framed(signed, title, faults, leave_view::page(w, page))
}

/// `GET /children/{code}/leave`: the form, or how the child left.
///
/// # Errors
/// [`Failure`].
pub async fn show_leave(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let child = change_status::open(&signed.context(), &code).await?;
    Ok(Html::ok(leave_page(&signed, &child, None)))
}

/// `POST /children/{code}/leave`
///
/// # Errors
/// [`Failure`].
pub async fn leave(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    match change_status::leave(&ctx, Sent::of(key, &form.0), &code, &form.0).await {
        Ok(()) => Ok(see_other(&format!("/children/{}/leave", code.as_str()))),
        Err(Refusal::Invalid(faults)) => {
            let child = change_status::open(&ctx, &code).await?;
            Ok(Html::unprocessable(leave_page(&signed, &child, Some((&form, &faults)))).response())
        }
        Err(other) => Err(other.into()),
    }
}

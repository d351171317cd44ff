//! Moving a visit to another child over HTTP: choosing the child, looking at what changes, moving.

use std::collections::BTreeMap;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;
use domain::fault::Faults;
use domain::record::Doubt;
use domain::record::Obstacle;
use maud::Markup;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::corrections::move_visit;
use crate::service::corrections::move_visit::Target;
use crate::service::corrections::move_visit::ToMove;
use crate::service::once::Sent;
use crate::view::correction::Sending;
use crate::view::filled::Filled;
use crate::view::move_visit as view;
use crate::view::pick_child::PickChild;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::correction::Wrong;
use crate::web::pages::correction::effect;
use crate::web::pages::correction::framed;
use crate::web::pages::correction::gone;
use crate::web::pages::correction::recorder;
use crate::web::pages::correction::version_of;
use crate::web::pages::correction::visit_line;
use crate::web::pages::find::found;
use crate::web::pages::find::looked_for;
use crate::web::pages::visit::code_of;

fn who(signed: &Signed, target: &Target) -> String {
    let w = signed.words();
    let record = &target.file.record;
    let age = format::age(w, record.facts.born, signed.visitor.today);
    let who = w.say_with("find-child", args!["sex" => codes::sex(w, record.facts.sex), "age" => age]);
    format!("{who} · {} · {}", target.file.area_name, w.say_with("find-mother", args!["name" => &record.caregiver_name]))
}

fn doubt(w: &Words, signed: &Signed, target: &Target, doubt: &Doubt) -> String {
    let called = target.file.called();
    match doubt {
        Doubt::OtherSex => w.say_with("doubt-other-sex", args!["name" => called, "sex" => target.file.record.facts.sex.code()]),
        Doubt::AfterLeaving(day) => {
            w.say_with("doubt-left", args!["name" => called, "date" => format::day_near(w, *day, signed.visitor.today)])
        }
        Doubt::SameDay => w.say_with("doubt-same-day", args!["name" => called]),
        Doubt::Unusual(unusual) => {
            w.say_with("doubt-unusual", args!["name" => called, "what" => codes::measurement(w, unusual.measurement)])
        }
    }
}

fn obstacle(w: &Words, called: &str, obstacle: Obstacle) -> String {
    match obstacle {
        Obstacle::BeforeBirth(day) => w.say_with("obstacle-before-birth", args!["name" => called, "date" => format::day_and_year(w, day)]),
        Obstacle::AfterDeath(day) => w.say_with("obstacle-after-death", args!["name" => called, "date" => format::day_and_year(w, day)]),
    }
}

fn shown<'a>(signed: &Signed, open: &'a ToMove, target: &'a Target) -> view::Target<'a> {
    let w = signed.words();
    let called = target.file.called();
    view::Target {
        code: &target.file.record.code,
        name: &target.file.record.name,
        called,
        who: who(signed, target),
        obstacle: target.against.as_ref().err().map(|o| obstacle(w, called, *o)),
        doubts: target.against.iter().flatten().map(|d| doubt(w, signed, target, d)).collect(),
        leaves: effect(signed, open.file.called(), &target.leaves),
        arrives: effect(signed, called, &target.arrives),
    }
}

async fn page(signed: &Signed, open: &ToMove, asked: &str, wrong: Option<&Wrong<'_>>) -> Result<Markup, Failure> {
    let w = signed.words();
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let by = recorder(signed, &open.file, &open.visit).await?;
    let date = format::day_near(w, open.visit.visit.on, signed.visitor.today);
    let faults = wrong.map_or(&none, |wrong| &wrong.faults);
    let path = format!("/children/{}/visits/{}/move", open.file.record.code, open.visit.entry_seq);
    let (rows, more) = if open.target.is_none() { looked_for(signed, asked, open.file.record.id).await? } else { (Vec::new(), false) };
    let to = match &open.target {
        Some(target) => Ok(shown(signed, open, target)),
        None => Err(PickChild {
            path: &path,
            choice: "to",
            asked,
            found: rows.iter().map(|row| found(row, signed.actor.role, &BTreeMap::new())).collect(),
            more,
            day: signed.visitor.today,
        }),
    };
    let page = view::MoveVisitPage {
        code: &open.file.record.code,
        called: open.file.called(),
        visit: visit_line(&open.visit, &by),
        date: date.clone(),
        to,
        sending: Sending {
            filled: wrong.map_or(&empty, |wrong| wrong.filled),
            faults,
            version: open.visit.version,
            changed: wrong.is_some_and(|wrong| wrong.changed),
            token: &token,
            key: wrong.filter(|wrong| !wrong.changed).map_or(fresh.as_str(), |wrong| wrong.filled.one("key")),
        },
    };
    let title = w.say_with("move-visit-title", args!["name" => open.file.called(), "date" => date]);
    Ok(framed(signed, title, faults, view::page(w, &page)))
}

/// `GET /children/{code}/visits/{seq}/move`
///
/// # Errors
/// [`Failure`].
pub async fn show_move(req: HttpRequest, path: web::Path<(String, i64)>, signed: Signed) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let to = query_value(&req, "to").map(|to| code_of(&to)).transpose()?;
    let asked = query_value(&req, "q").unwrap_or_default();
    match move_visit::open(&signed.context(), &code, seq, to.as_ref()).await? {
        None => Ok(gone(&signed, &code)),
        Some(open) => Ok(Html::ok(page(&signed, &open, asked.trim(), None).await?).response()),
    }
}

/// `POST /children/{code}/visits/{seq}/move`
///
/// # Errors
/// [`Failure`].
pub async fn move_visit(path: web::Path<(String, i64)>, posted: Posted) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let (about, to) = (About { code: &code, seq, version: version_of(&form)? }, code_of(form.one("to"))?);
    let ctx = signed.context();
    let (faults, changed) = match move_visit::move_visit(&ctx, Sent::of(key, &form.0), about, &to, &form.0).await {
        Ok(Done::At(path)) => return Ok(see_other(&path)),
        Ok(Done::Gone) => return Ok(gone(&signed, &code)),
        Ok(Done::Changed) => (Faults::new(), true),
        Err(Refusal::Invalid(faults)) => (faults, false),
        Err(other) => return Err(other.into()),
    };
    let wrong = Wrong { filled: &form, faults, changed };
    match move_visit::open(&ctx, &code, seq, Some(&to)).await? {
        None => Ok(gone(&signed, &code)),
        Some(open) => Ok(Html(wrong.status(), page(&signed, &open, "", Some(&wrong)).await?).response()),
    }
}

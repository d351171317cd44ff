//! The people of the programme, for the administrator.

pub mod access;

use std::collections::BTreeMap;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;
use chrono::Datelike;
use chrono::NaiveDate;
use domain::draft::office::read_person;
use domain::fault::Faults;
use maud::Markup;

use crate::clock::day_in;
use crate::i18n::Lang;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::once::Sent;
use crate::service::people as service;
use crate::service::people::Added;
use crate::service::people::PersonFile;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::view::people as view;
use crate::view::people::covers::CoverLine;
use crate::view::people::person;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::caseload::stands_in;

/// What has just been done, from the address after a change.
pub(crate) fn done(req: &HttpRequest, known: &[(&'static str, &'static str)]) -> Option<&'static str> {
    let done = query_value(req, "done")?;
    known.iter().find(|(code, _)| *code == done).map(|(_, id)| *id)
}

/// Codes of the languages offered.
pub(crate) fn languages() -> Vec<&'static str> {
    Lang::OFFERED.iter().map(|l| l.code()).collect()
}

/// A form's three boxes filled with a day.
pub(crate) fn with_day(filled: Filled, name: &str, day: Option<NaiveDate>) -> Filled {
    match day {
        None => filled,
        Some(day) => filled
            .with(&format!("{name}_day"), day.day().to_string())
            .with(&format!("{name}_month"), day.month().to_string())
            .with(&format!("{name}_year"), day.year().to_string()),
    }
}

fn framed(signed: &Signed, title: &str, flash: Option<&str>, wide: bool, body: Markup) -> Markup {
    let mut shell = signed.shell(title);
    shell.here = Some(Nav::People);
    shell.flash = flash;
    shell.wide = wide;
    shell.protocol = None;
    layout::page(&shell, body)
}

/// `GET /people`
///
/// # Errors
/// [`Failure`].
pub async fn list(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after = query_value(&req, "after");
    let found = service::list(&signed.context(), after.as_deref()).await?;
    let w = signed.words();
    let names: BTreeMap<_, _> = found.people.iter().map(|p| (p.id, p.full_name.clone())).collect();
    let today = signed.visitor.today;
    let people: Vec<view::PersonLine> = found
        .people
        .iter()
        .map(|p| view::PersonLine {
            sign_in_name: p.sign_in_name.clone(),
            full_name: p.full_name.clone(),
            role: p.role,
            active: p.active,
            code_out: p.one_time_code_expires_at.is_some_and(|until| until > signed.visitor.now),
            no_password: p.password_hash.is_none(),
            away: found
                .covers
                .iter()
                .find(|c| c.worker == p.id && c.from_on <= today)
                .and_then(|c| Some((names.get(&c.covered_by)?.clone(), format::day(w, c.to_on)))),
        })
        .collect();
    let next = if found.more { people.last().map(|p| format!("/people?after={}", p.sign_in_name)) } else { None };
    let page = view::PeoplePage { whole: after.is_none() && !found.more, people, next };
    Ok(Html::ok(framed(&signed, &w.say("people-title"), None, false, view::list(w, &page))))
}

fn offered(offered: &service::Offered) -> person::Offered {
    person::Offered {
        areas: offered.areas.iter().map(|a| (a.code.clone(), a.name.clone())).collect(),
        workers: offered.workers.iter().map(|p| (p.sign_in_name.clone(), p.full_name.clone())).collect(),
    }
}

async fn new_page(signed: &Signed, filled: &Filled, faults: &Faults, key: &str) -> Result<Markup, Failure> {
    let w = signed.words();
    let offered = offered(&service::offered(&signed.context()).await?);
    let typed = person::Typed { filled, faults, token: &signed.visitor.token(), key };
    let title = w.say("person-new-title");
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    Ok(framed(signed, &title, None, false, person::new(w, &offered, typed)))
}

/// `GET /people/new`
///
/// # Errors
/// [`Failure`].
pub async fn new(signed: Signed) -> Result<Html, Failure> {
    let filled = with_day(Filled::default(), "start", Some(signed.visitor.today));
    Ok(Html::ok(new_page(&signed, &filled, &Faults::new(), &fresh_key()).await?))
}

/// `POST /people/new`: answers with the code, which is shown only here.
///
/// # Errors
/// [`Failure`].
pub async fn add(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let faults = match read_person(&form.0, &languages()) {
        Ok(person) => match service::add(&signed.context(), Sent::of(key, &form.0), &person).await {
            Ok(Added::Now(person, code)) => {
                return Ok(Html::ok(access::code_page(&signed, &person, &code, &service::path(&person))).response());
            }
            Ok(Added::Before(path)) => return Ok(see_other(&path)),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    Ok(Html::unprocessable(new_page(&signed, &form, &faults, form.one("key")).await?).response())
}

/// A person's form as stored.
fn filled_from(file: &PersonFile) -> Filled {
    let p = &file.person;
    let mut filled = Filled::default()
        .with("full_name", p.full_name.clone())
        .with("sign_in_name", p.sign_in_name.clone())
        .with("role", p.role.code())
        .with("phone", p.phone.clone().unwrap_or_default())
        .with("language", p.language.clone().unwrap_or_default());
    filled = with_day(filled, "start", Some(p.started_on));
    filled = with_day(filled, "end", p.ended_on);
    for area in file.offered.areas.iter().filter(|a| file.areas.contains(&a.id)) {
        filled = filled.with("areas", area.code.clone());
    }
    for worker in file.offered.workers.iter().filter(|p| file.workers.contains(&p.id)) {
        filled = filled.with("workers", worker.sign_in_name.clone());
    }
    filled
}

/// Which form of a person's page has faults, and what was typed into it.
#[derive(Default)]
pub(crate) struct Wrong {
    pub(crate) person: Option<(Filled, Faults)>,
    pub(crate) cover: Option<(Filled, Faults)>,
    pub(crate) key: Option<String>,
}

pub(crate) async fn person_page(signed: &Signed, name: &str, flash: Option<&str>, wrong: Wrong) -> Result<Markup, Failure> {
    let file = service::open(&signed.context(), name).await?;
    let w = signed.words();
    let has_faults = wrong.person.is_some() || wrong.cover.is_some();
    let (filled, faults) = wrong.person.unwrap_or_else(|| (filled_from(&file), Faults::new()));
    let (cover_filled, cover_faults) = wrong.cover.unwrap_or_default();
    let p = &file.person;
    let zone = signed.visitor.settings.time_zone;
    let moment = |at| format::day(w, day_in(zone, at));
    let page = person::PersonPage {
        sign_in_name: &p.sign_in_name,
        full_name: &p.full_name,
        active: p.active,
        code_until: p.one_time_code_expires_at.filter(|until| *until > signed.visitor.now).map(|at| access::moment(signed, at)),
        has_password: p.password_hash.is_some(),
        locked_until: p.locked_until.filter(|until| *until > signed.visitor.now).map(moment),
        sessions: file.sessions,
        is_worker: p.role == domain::role::Role::Worker,
        covers: file
            .covers
            .iter()
            .map(|(cover, colleague)| CoverLine {
                sign_in_name: colleague.sign_in_name.clone(),
                full_name: colleague.full_name.clone(),
                from: cover.from_on.to_string(),
                days: [format::day(w, cover.from_on), format::day(w, cover.to_on)],
            })
            .collect(),
        colleagues: file
            .offered
            .workers
            .iter()
            .filter(|other| other.id != p.id && other.works_on(signed.visitor.today))
            .map(|other| (other.sign_in_name.clone(), other.full_name.clone()))
            .collect(),
        offered: offered(&file.offered),
        cover_filled: &cover_filled,
        cover_faults: &cover_faults,
    };
    let key = wrong.key.unwrap_or_else(fresh_key);
    let typed = person::Typed { filled: &filled, faults: &faults, token: &signed.visitor.token(), key: &key };
    let title = if has_faults { not_saved_title(w, &p.full_name) } else { p.full_name.clone() };
    Ok(framed(signed, &title, flash, true, person::page(w, &page, typed, &fresh_key)))
}

/// `GET /people/{name}`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed, name: web::Path<String>) -> Result<Html, Failure> {
    let known = [
        ("saved", "person-saved"),
        ("signed-out", "person-sessions-ended"),
        ("deactivated", "person-deactivated"),
        ("activated", "person-activated"),
        ("cover-ended", "cover-ended"),
    ];
    let mut flash = done(&req, &known).map(|id| signed.words().say(id));
    if flash.is_none() && query_value(&req, "stands_in").is_some() {
        flash = stands_in(&req, &signed, &service::open(&signed.context(), &name).await?.covers);
    }
    Ok(Html::ok(person_page(&signed, &name, flash.as_deref(), Wrong::default()).await?))
}

/// `POST /people/{name}`
///
/// # Errors
/// [`Failure`].
pub async fn change(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let faults = match read_person(&form.0, &languages()) {
        Ok(person) => match service::change(&signed.context(), Sent::of(key, &form.0), &name, &person).await {
            Ok(path) => return Ok(see_other(&format!("{path}?done=saved"))),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    let wrong = Wrong { key: Some(form.one("key").to_owned()), person: Some((form, faults)), cover: None };
    Ok(Html::unprocessable(person_page(&signed, &name, None, wrong).await?).response())
}

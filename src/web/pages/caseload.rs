//! A worker of the team: the children, giving several away, somebody standing in.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::child::both_names;
use domain::draft::office::CoverForm;
use domain::draft::office::read_cover;
use domain::errand::Errand;
use domain::fault::Faults;
use maud::Markup;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::caseload as service;
use crate::service::caseload::Caseload;
use crate::service::caseload::Given;
use crate::service::once::Sent;
use crate::service::people::cover;
use crate::service::round::errand_of;
use crate::store::lists::RoundRow;
use crate::store::lists::week::Load;
use crate::store::people::CoverRecord;
use crate::store::people::PersonRecord;
use crate::view::caseload as view;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::people::covers::CoverLine;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::html::see_other;

/// What was typed and could not be done.
#[derive(Default)]
struct Wrong {
    give: (Filled, Faults),
    cover: (Filled, Faults),
    changed: Option<String>,
}

fn page_of(signed: &Signed, load: &Caseload, wrong: &Wrong, flash: Option<&str>) -> Markup {
    let w = signed.words();
    let of = |id| load.loads.get(&id).copied().unwrap_or_default();
    let own = of(load.worker.id);
    let colleague = |p: &PersonRecord| {
        let has = of(p.id);
        let words = w.say_with("caseload-colleague", args!["name" => &p.full_name, "children" => has.children, "due" => has.due]);
        let words = way(w, has).map_or(words.clone(), |way| format!("{words}, {way}"));
        let villages = load.villages.get(&p.id).filter(|names| !names.is_empty()).map(|names| format::list(w, names));
        let words =
            villages.map_or(words.clone(), |list| w.say_with("caseload-colleague-where", args!["words" => words, "villages" => list]));
        let until = load.away.get(&p.id).map(|until| format::day(w, *until));
        let words = until.map_or(words.clone(), |date| w.say_with("caseload-colleague-away", args!["words" => words, "date" => date]));
        (p.sign_in_name.clone(), words)
    };
    let page = view::CaseloadPage {
        sign_in_name: &load.worker.sign_in_name,
        full_name: &load.worker.full_name,
        load: [own.children, own.due],
        way: way(w, own),
        children: load.children.iter().map(|(row, version)| child(signed, row, *version)).collect(),
        colleagues: load.colleagues.iter().map(colleague).collect(),
        covers: (load.covers.iter())
            .map(|(cover, by)| CoverLine {
                sign_in_name: by.sign_in_name.clone(),
                full_name: by.full_name.clone(),
                from: cover.from_on.to_string(),
                days: [format::day(w, cover.from_on), format::day(w, cover.to_on)],
            })
            .collect(),
        give: (&wrong.give.0, &wrong.give.1),
        cover: (&wrong.cover.0, &wrong.cover.1),
        changed: wrong.changed.as_deref(),
        token: &signed.visitor.token(),
    };
    let title = load.worker.full_name.clone();
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    shell.flash = flash;
    layout::page(&shell, view::page(w, &page, &fresh_key))
}

/// The hours of walking to what is due, in words; `None` when nothing is due.
fn way(w: &Words, load: Load) -> Option<String> {
    // Half an hour and more counts as an hour.
    let hours = (load.walk_minutes + 30) / 60;
    let word = match (load.due, load.way_unknown) {
        (0, _) => return None,
        (due, unknown) if due == unknown => "caseload-way-unknown",
        (_, 0) => "caseload-way",
        _ => "caseload-way-least",
    };
    Some(w.say_with(word, args!["hours" => hours]))
}

fn child(signed: &Signed, row: &RoundRow, version: u32) -> view::ChildLine {
    let w = signed.words();
    let today = signed.visitor.today;
    let due = match errand_of(row, today) {
        Some(Errand::FollowUp { first, .. }) => {
            w.say_with("caseload-check", args!["what" => codes::class_word(w, first.class), "date" => format::day(w, first.due_on)])
        }
        Some(visit @ Errand::Visit(_)) => {
            w.say_with("caseload-due", args!["what" => w.say("class-visit"), "date" => format::day(w, visit.day())])
        }
        None => w.say("caseload-nothing-due"),
    };
    let about = [format::age(w, row.born, today), row.area_name.clone(), due].join(" · ");
    view::ChildLine { value: format!("{}~{version}", row.code), called: both_names(&row.name, row.known_as.as_deref()), about }
}

/// The page of a worker, told who stands in since the form was sent.
pub(crate) fn with_stand_in(path: &str, typed: &CoverForm) -> String {
    format!("{path}?stands_in={}&from={}", encoded(&typed.covered_by), typed.from_on)
}

/// Who has just been found to stand in, and for which days: both come from what is stored, not from the address.
pub(crate) fn stands_in(req: &HttpRequest, signed: &Signed, covers: &[(CoverRecord, PersonRecord)]) -> Option<String> {
    let (by, from) = (query_value(req, "stands_in")?, query_value(req, "from")?);
    let (cover, person) = covers.iter().find(|(cover, person)| person.sign_in_name == by && cover.from_on.to_string() == from)?;
    let w = signed.words();
    let (from, to) = (format::day(w, cover.from_on), format::day(w, cover.to_on));
    Some(w.say_with("cover-saved", args!["name" => &person.full_name, "from" => from, "to" => to]))
}

/// `GET /team/{name}`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed, name: web::Path<String>) -> Result<Html, Failure> {
    let load = service::open(&signed.context(), &name).await?;
    let w = signed.words();
    // Who took them comes from what is stored, not from the address.
    let to = query_value(&req, "to").and_then(|to| load.colleagues.iter().find(|p| p.sign_in_name == to));
    let given = query_value(&req, "given").and_then(|count| count.parse::<u32>().ok()).zip(to);
    let given = given.map(|(count, to)| w.say_with("caseload-given", args!["count" => count, "name" => &to.full_name]));
    let flash = given.or_else(|| stands_in(&req, &signed, &load.covers));
    Ok(Html::ok(page_of(&signed, &load, &Wrong::default(), flash.as_deref())))
}

/// `POST /team/{name}/give`
///
/// # Errors
/// [`Failure`].
pub async fn give(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    let (status, wrong) = match service::give(&ctx, Sent::of(key, &form.0), &name, &form.0).await {
        Ok(Given::Done(path)) => return Ok(see_other(&path)),
        Ok(Given::Changed(child)) => {
            (StatusCode::CONFLICT, Wrong { give: (form, Faults::new()), changed: Some(child), ..Wrong::default() })
        }
        Err(Refusal::Invalid(faults)) => (StatusCode::UNPROCESSABLE_ENTITY, Wrong { give: (form, faults), ..Wrong::default() }),
        Err(other) => return Err(other.into()),
    };
    let load = service::open(&ctx, &name).await?;
    Ok(Html(status, page_of(&signed, &load, &wrong, None)).response())
}

/// `POST /team/{name}/cover`
///
/// # Errors
/// [`Failure`].
pub async fn add_cover(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    let faults = match read_cover(&form.0, signed.visitor.today) {
        Ok(typed) => match cover::add(&ctx, Sent::of(key, &form.0), &name, &typed).await {
            Ok(path) => return Ok(see_other(&with_stand_in(&path, &typed))),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    let load = service::open(&ctx, &name).await?;
    let wrong = Wrong { cover: (form, faults), ..Wrong::default() };
    Ok(Html::unprocessable(page_of(&signed, &load, &wrong, None)).response())
}

/// `POST /team/{name}/cover/end`
///
/// # Errors
/// [`Failure`].
pub async fn end_cover(posted: Posted, name: web::Path<String>) -> Result<HttpResponse, Failure> {
    let sent = Sent::of(posted.key()?, &posted.form.0);
    let from = posted.form.one("from").parse().map_err(|_| Failure::BadForm)?;
    Ok(see_other(&cover::end(&posted.signed.context(), sent, &name, posted.form.one("covered_by"), from).await?))
}

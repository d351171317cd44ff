//! Why a follow-up is there, today or on a past day; the text to read to a clinician; and closing it.

mod aloud;
mod told;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::http::header;
use actix_web::web;
use domain::draft::desk::CloseCategory;
use domain::draft::desk::read_close;
use domain::fault::Faults;
use domain::role::Role;
use domain::rule::RuleId;
use maud::Markup;

use crate::args;
use crate::i18n::Voice;
use crate::i18n::Words;
use crate::i18n::closing as closing_words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::i18n::number_line;
use crate::i18n::rule_in_words;
use crate::service::Refusal;
use crate::service::close_follow_up as closing;
use crate::service::close_follow_up::Closed;
use crate::service::once::Sent;
use crate::service::why as service;
use crate::service::why::Explained;
use crate::service::why::Which;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpEvent;
use crate::view::aloud as view_aloud;
use crate::view::aloud::Aloud;
use crate::view::close;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::view::why as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::find::printed;
use crate::web::pages::people::done;
use crate::web::pages::supervise::food_name;

/// Code of the child, code of the rule, number or `open`.
type Place = (String, String, String);

fn read((code, rule, which): &Place) -> Result<(&str, RuleId, Which), Failure> {
    let rule = RuleId::from_code(rule).map_err(|_| Failure::NotFound)?;
    Ok((code, rule, Which::read(which).ok_or(Failure::NotFound)?))
}

fn child_path(found: &Explained) -> String {
    format!("/children/{}", found.file.record.code)
}

/// What links carry on: the past day shown.
fn query(signed: &Signed) -> String {
    if signed.as_of == signed.visitor.today { String::new() } else { format!("?as_of={}", signed.as_of) }
}

/// Whether an event says more than the visits do: what a correction changed or opened again. Without a judgement all of them do.
fn of_the_record(found: &Explained, event: &FollowUpEvent) -> bool {
    found.steps.is_empty() || matches!(event.kind, EventKind::Changed | EventKind::Reopened)
}

fn happened(w: &Words, found: &Explained, event: &FollowUpEvent) -> view::Happened {
    let (on, what) = told::of_record(w, event);
    let by = event.by.and_then(|id| found.names.get(&id)).map(|name| w.say_with("why-by", args!["name" => name]));
    (on, by.map_or_else(|| what.clone(), |by| format!("{what}, {by}")))
}

fn ended(w: &Words, found: &Explained) -> Option<view::Ended> {
    let closing = found.follow_up.closing.as_ref()?;
    let category = closing.category.as_deref().and_then(|c| CloseCategory::from_code(c).ok()).map(|c| codes::close_category(w, c));
    let by = closing.by.and_then(|id| found.names.get(&id));
    let decided = match (by, category, &closing.note) {
        (Some(name), Some(category), Some(note)) => Some((name.clone(), category, note.clone())),
        _ => None,
    };
    Some(view::Ended { on: format::day_and_year(w, closing.on), reason: codes::close_reason(w, closing.reason), decided })
}

/// The page, with the closing form as typed if it has faults.
fn page(signed: &Signed, found: &Explained, flash: Option<&str>, wrong: Option<(&Filled, &Faults)>) -> Markup {
    let w = signed.words();
    let f = &found.follow_up;
    let child_path = child_path(found);
    let called = found.file.called();
    let food = food_name(signed);
    let supervisor = signed.actor.role == Role::Supervisor;
    let query = query(signed);
    let close_path = format!("{child_path}/why/{}/{}/close", f.rule.code(), found.number);
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let (filled, faults) = wrong.unwrap_or((&empty, &none));
    let key = wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key"));
    let form = close::CloseForm { path: &close_path, filled, faults, token: &token, key };
    let measured = found.visit(f.last_fired_visit).map(|v| {
        let who = found.names.get(&v.recorded_by).cloned().unwrap_or_default();
        let contact = codes::contact(w, v.visit.contact).to_lowercase();
        w.say_with("why-measured-at", args!["date" => format::day(w, v.visit.on), "where" => contact, "who" => who])
    });
    let why = explain(f.rule, &f.evidence, w, &food);
    let page = view::WhyPage {
        child_path: &child_path,
        query: &query,
        called,
        class: f.class,
        measured,
        check_by: format::weekday(w, f.due_on),
        numbers: f.evidence.lines().iter().map(|(key, told)| number_line(Voice::Written, f.rule, (*key, told), w, &food)).collect(),
        scale: found.scale,
        // In the figures of the protocol that judged it; where only the record is left, in those of the built-in one.
        source: found.judged.as_ref().map_or_else(|| codes::rule_explain(w, f.rule), |judged| rule_in_words(w, &judged.protocol, f.rule)),
        protocol_source: found.judged.as_ref().map(|judged| judged.protocol.rules.source(f.rule).to_owned()),
        rule: [f.rule.code().to_owned(), f.protocol_id.clone(), f.protocol_version.clone()],
        advice: codes::rule_do(w, f.rule),
        needs_outcome: found.needs_outcome,
        closing: found.to_close.as_ref().map(|to_close| closing_words(w, Voice::Written, f.rule, to_close, f.last_fired_on, signed.as_of)),
        also: f.also_true.iter().map(|rule| told::also(w, found, *rule, &food)).collect(),
        steps: found.steps.iter().map(|step| told::step(w, found, step, &food)).collect(),
        history: found.history.iter().filter(|event| of_the_record(found, event)).map(|event| happened(w, found, event)).collect(),
        ended: ended(w, found),
        whom: found.worker.as_ref().filter(|_| supervisor).map(|p| view::Whom { name: p.full_name.clone(), phone: p.phone.clone() }),
        close: (found.may_close || wrong.is_some()).then_some(form),
        move_path: (supervisor && f.closing.is_none() && query.is_empty()).then(|| format!("{child_path}/move")),
        aloud_path: format!("{child_path}/why/{}/{}/aloud", f.rule.code(), found.number),
        why,
    };
    let title = w.say_with("why-title", args!["name" => called, "class" => codes::class_word(w, f.class)]);
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    let mut shell = signed.shell(&title);
    shell.here = supervisor.then_some(Nav::Late);
    shell.flash = flash;
    layout::page(&shell, view::page(w, &page))
}

/// `GET /children/{code}/why/{rule}/{seq}`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed, place: web::Path<Place>) -> Result<Html, Failure> {
    let (code, rule, which) = read(&place)?;
    let found = service::open(&signed.context(), code, rule, which, signed.as_of).await?;
    let flash = done(&req, &[("closed", "close-done")]).map(|id| signed.words().say(id));
    Ok(Html::ok(page(&signed, &found, flash.as_deref(), None)))
}

/// The text of a follow-up, with what was found.
async fn aloud_of(signed: &Signed, place: &Place) -> Result<(Explained, Aloud), Failure> {
    let (code, rule, which) = read(place)?;
    let found = service::open(&signed.context(), code, rule, which, signed.as_of).await?;
    let past = signed.as_of < signed.visitor.today;
    let text = aloud::text(signed.words(), &found, past, &food_name(signed));
    Ok((found, text))
}

/// `GET /children/{code}/why/{rule}/{seq}/aloud`
///
/// # Errors
/// [`Failure`].
pub async fn read_aloud(signed: Signed, place: web::Path<Place>) -> Result<Html, Failure> {
    let (found, text) = aloud_of(&signed, &place).await?;
    let w = signed.words();
    let why = format!("{}/why/{}/{}", child_path(&found), found.follow_up.rule.code(), found.number);
    let query = query(&signed);
    let body = view_aloud::page(w, &text, &format!("{why}{query}"), &format!("{why}/aloud.txt{query}"));
    let title = w.say_with("aloud-title", args!["code" => printed(&found.file.record.code)]);
    Ok(Html::ok(layout::page(&signed.shell(&title), body)))
}

/// `GET /children/{code}/why/{rule}/{seq}/aloud.txt`
///
/// # Errors
/// [`Failure`].
pub async fn plain(signed: Signed, place: web::Path<Place>) -> Result<HttpResponse, Failure> {
    let (_, text) = aloud_of(&signed, &place).await?;
    Ok(HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, "text/plain; charset=utf-8"))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(text.plain(signed.words())))
}

/// `POST /children/{code}/why/{rule}/{seq}/close`
///
/// # Errors
/// [`Failure`].
pub async fn close(posted: Posted, place: web::Path<Place>) -> Result<HttpResponse, Failure> {
    let (code, rule, which) = read(&place)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let w = signed.words();
    let faults = match read_close(&form.0) {
        Ok(decision) => match closing::close(&signed.context(), Sent::of(key, &form.0), code, rule, which, &decision).await {
            Ok(Closed::Done(path)) => return Ok(see_other(&format!("{path}?done=closed"))),
            Ok(Closed::Before { closing, by }) => {
                let date = format::day(w, closing.on);
                let sentence = match by {
                    Some(name) => w.say_with("close-already", args!["name" => name, "date" => date]),
                    None => {
                        w.say_with("close-already-by-itself", args!["date" => date, "reason" => codes::close_reason(w, closing.reason)])
                    }
                };
                let path = format!("/children/{code}/why/{}/{}", rule.code(), place.2);
                // The reason that was typed is shown and can be left as a note: it may hold what the other one did not know.
                let typed = Filled::default().with("words", decision.note.clone());
                let (note, token, fresh) = (format!("/children/{code}/note"), signed.visitor.token(), fresh_key());
                let category = Some(decision.category);
                let kept = close::Kept { path: &note, category, filled: &typed, token: &token, key: &fresh };
                let body = close::already(w, &sentence, &path, kept);
                return Ok(Html(StatusCode::CONFLICT, signed.visitor.page(&sentence, body)).response());
            }
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    let found = service::open(&signed.context(), code, rule, which, signed.as_of).await?;
    Ok(Html::unprocessable(page(&signed, &found, None, Some((&form, &faults)))).response())
}

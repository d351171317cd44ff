//! Why a follow-up is there, and closing it.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::draft::desk::CloseCategory;
use domain::draft::desk::read_close;
use domain::fault::Faults;
use domain::role::Role;
use domain::rule::RuleId;
use maud::Markup;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::close_follow_up as closing;
use crate::service::close_follow_up::Closed;
use crate::service::once::Sent;
use crate::service::why as service;
use crate::service::why::Explained;
use crate::service::why::Which;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpEvent;
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
use crate::web::pages::people::done;
use crate::web::pages::supervise::food_name;

/// Code of the child, code of the rule, number or `open`.
type Place = (String, String, String);

fn read((code, rule, which): &Place) -> Result<(&str, RuleId, Which), Failure> {
    let rule = RuleId::from_code(rule).map_err(|_| Failure::NotFound)?;
    Ok((code, rule, Which::read(which).ok_or(Failure::NotFound)?))
}

fn class_phrase(w: &Words, event: &FollowUpEvent) -> crate::i18n::Args {
    args!["class" => codes::class_word(w, event.class), "due" => format::day(w, event.due_on)]
}

fn happened(w: &Words, found: &Explained, event: &FollowUpEvent) -> view::Happened {
    let what = match event.kind {
        EventKind::Opened => w.say_with("why-event-opened", class_phrase(w, event)),
        EventKind::Refreshed => w.say_with("why-event-refreshed", class_phrase(w, event)),
        EventKind::Raised => w.say_with("why-event-raised", class_phrase(w, event)),
        EventKind::Changed => w.say("why-event-changed"),
        EventKind::Outcome => w.say("why-event-outcome"),
        EventKind::Reopened => w.say("why-event-reopened"),
        EventKind::Closed => {
            let reason = event.reason.map_or_else(String::new, |r| codes::close_reason(w, r));
            w.say_with("why-event-closed", args!["reason" => reason])
        }
    };
    let by = event.by.and_then(|id| found.names.get(&id)).map(|name| w.say_with("why-by", args!["name" => name]));
    (format::day_and_year(w, event.on), by.map_or_else(|| what.clone(), |by| format!("{what}, {by}")))
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
    let child_path = format!("/children/{}", found.child.code);
    let called = found.child.known_as.as_deref().unwrap_or(&found.child.name);
    let food = food_name(signed);
    let supervisor = signed.actor.role == Role::Supervisor;
    let close_path = format!("{child_path}/why/{}/{}/close", f.rule.code(), found.number);
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let (filled, faults) = wrong.unwrap_or((&empty, &none));
    let key = wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key"));
    let form = close::CloseForm { path: &close_path, filled, faults, token: &token, key };
    let measured = found.visit.as_ref().map(|v| {
        let who = found.names.get(&v.recorded_by).cloned().unwrap_or_default();
        let contact = codes::contact(w, v.visit.contact).to_lowercase();
        w.say_with("why-measured-at", args!["date" => format::day(w, v.visit.on), "where" => contact, "who" => who])
    });
    let why = explain(f.rule, &f.evidence, w, &food);
    let page = view::WhyPage {
        child_path: &child_path,
        called,
        class: f.class,
        measured,
        check_by: format::weekday(w, f.due_on),
        numbers: f
            .evidence
            .0
            .iter()
            .map(|(key, quantity)| (codes::evidence_name(w, *key), crate::i18n::quantity(*key, quantity, w, &food)))
            .collect(),
        source: codes::rule_explain(w, f.rule),
        rule: [f.rule.code().to_owned(), f.protocol_id.clone(), f.protocol_version.clone()],
        advice: codes::rule_do(w, f.rule),
        needs_outcome: found.needs_outcome,
        also: f.also_true.iter().map(|rule| codes::rule_name(w, *rule)).collect(),
        history: found.history.iter().map(|event| happened(w, found, event)).collect(),
        ended: ended(w, found),
        whom: found.worker.as_ref().filter(|_| supervisor).map(|p| view::Whom { name: p.full_name.clone(), phone: p.phone.clone() }),
        close: (found.may_close || wrong.is_some()).then_some(form),
        move_path: (supervisor && f.closing.is_none()).then(|| format!("{child_path}/move")),
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
    let found = service::open(&signed.context(), code, rule, which).await?;
    let flash = done(&req, &[("closed", "close-done")]).map(|id| signed.words().say(id));
    Ok(Html::ok(page(&signed, &found, flash.as_deref(), None)))
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
                let body = close::already(w, &sentence, &path);
                return Ok(Html(StatusCode::CONFLICT, signed.visitor.page(&sentence, body)).response());
            }
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    let found = service::open(&signed.context(), code, rule, which).await?;
    Ok(Html::unprocessable(page(&signed, &found, None, Some((&form, &faults)))).response())
}

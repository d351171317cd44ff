//! Rehearsing a protocol and adopting the one rehearsed. The text travels with the form: nothing is kept until it is adopted.

use actix_web::HttpResponse;
use domain::draft::adopt::AdoptForm;
use domain::draft::adopt::read_adopt;
use domain::fault::Faults;
use domain::protocol::Protocol;
use domain::role::Action;
use domain::role::may;
use domain::rule::Class;
use domain::rule::RuleId;
use maud::Markup;

use crate::args;
use crate::files::protocol_toml::ProtocolFault;
use crate::files::protocol_toml::parse_protocol;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::file_fault;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::adopt_protocol;
use crate::service::once::Sent;
use crate::service::rehearse as service;
use crate::service::rehearse::Change;
use crate::service::rehearse::Entry;
use crate::service::rehearse::Kind;
use crate::service::rehearse::Rehearsal;
use crate::service::rehearse::Tally;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::view::rehearse as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::form::FILE;
use crate::web::form::FILE_FAULT;
use crate::web::form::FILE_LIMIT_BYTES;
use crate::web::form::FILE_NAME;
use crate::web::form::TOO_LARGE;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::protocol::active_file;

/// The name of a text that came with a form, in its faults.
const SENT: &str = "protocol";

fn framed(signed: &Signed, title: &str, wide: bool, body: Markup) -> Markup {
    let mut shell = signed.shell(title);
    shell.here = Some(Nav::Protocol);
    shell.wide = wide;
    layout::page(&shell, body)
}

/// The form with what was sent and what is wrong with it.
async fn form(signed: &Signed, sent: &Filled, text: &str, faults: &[ProtocolFault]) -> Result<Markup, Failure> {
    let w = signed.words();
    let file = active_file(signed).await?;
    let most_kilobytes = FILE_LIMIT_BYTES / 1024;
    let unreadable = file_fault_id(sent).map(|id| w.say_with(id, args!["kilobytes" => most_kilobytes]));
    let wrong = unreadable.is_some() || !faults.is_empty();
    let page = view::RehearsePage {
        text,
        file: &file,
        faults: (faults.iter())
            .map(|f| view::FileFaultLine { line: f.line, key: f.key.clone(), what: file_fault(w, &f.what), parser: f.parser.clone() })
            .collect(),
        chosen: Some(sent.one(FILE_NAME)).filter(|name| !name.is_empty()),
        unreadable,
        most_kilobytes,
        token: &signed.visitor.token(),
    };
    let title = w.say("rehearse-title");
    let title = if !wrong { title } else { not_saved_title(w, &title) };
    Ok(framed(signed, &title, false, view::page(w, &page)))
}

/// The text of the file chosen, or else the one pasted, as its author saved it: a form sends line ends of its own.
fn text_of(form: &Filled) -> String {
    let chosen = !form.one(FILE_NAME).is_empty() && form.one(FILE_FAULT).is_empty();
    form.one(if chosen { FILE } else { "text" }).replace("\r\n", "\n")
}

/// The sentence on a chosen file that is no text.
fn file_fault_id(form: &Filled) -> Option<&'static str> {
    match form.one(FILE_FAULT) {
        "" => None,
        TOO_LARGE => Some("rehearse-file-too-large"),
        _ => Some("rehearse-file-not-text"),
    }
}

/// `GET /protocol/rehearse`
///
/// # Errors
/// [`Failure`].
pub async fn show(signed: Signed) -> Result<Html, Failure> {
    Ok(Html::ok(form(&signed, &Filled::default(), "", &[]).await?))
}

/// `POST /protocol/rehearse`: what would change; every fault of a file that cannot be used.
///
/// # Errors
/// [`Failure`].
pub async fn rehearse(posted: Posted) -> Result<HttpResponse, Failure> {
    let Posted { signed, form: sent } = posted;
    let text = text_of(&sent);
    if file_fault_id(&sent).is_some() {
        return Ok(Html::unprocessable(form(&signed, &sent, &text, &[]).await?).response());
    }
    match parse_protocol(&text, SENT) {
        Ok(new) => Ok(Html::ok(result(&signed, &new, &text, None).await?).response()),
        Err(faults) => Ok(Html::unprocessable(form(&signed, &sent, &text, &faults).await?).response()),
    }
}

/// `POST /protocol/adopt`: adopts the text sent, with the approver's name, the first day and the reason.
///
/// # Errors
/// [`Failure`].
pub async fn adopt(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form: sent } = posted;
    let text = text_of(&sent);
    let new = match parse_protocol(&text, SENT) {
        Ok(new) => new,
        Err(faults) => return Ok(Html::unprocessable(form(&signed, &sent, &text, &faults).await?).response()),
    };
    let faults = match read_adopt(&sent.0, signed.visitor.today) {
        Ok(wish) => match adopted(&signed, Sent::of(key, &sent.0), &new, &text, &wish).await {
            Ok(()) => return Ok(see_other("/protocol?done=adopted")),
            Err(Refusal::Invalid(faults)) => faults,
            Err(other) => return Err(other.into()),
        },
        Err(faults) => faults,
    };
    Ok(Html::unprocessable(result(&signed, &new, &text, Some((&sent, &faults))).await?).response())
}

async fn adopted(signed: &Signed, sent: Sent, new: &Protocol, text: &str, wish: &AdoptForm) -> Result<(), Refusal> {
    adopt_protocol::adopt_by_form(&signed.context(), sent, new, text, wish).await?;
    Ok(signed.visitor.app().reload_protocols().await?)
}

async fn result(signed: &Signed, new: &Protocol, text: &str, wrong: Option<(&Filled, &Faults)>) -> Result<Markup, Failure> {
    let w = signed.words();
    let found = service::open(&signed.context(), new).await?;
    let sees_children = may(signed.actor.role, Action::SeeChildren);
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let (filled, faults) = wrong.unwrap_or((&empty, &none));
    let key = wrong.map_or(fresh.as_str(), |(filled, _)| filled.one("key"));
    let adopt = view::AdoptPart { text, filled, faults, token: &token, key };
    let day = format::day_and_year(w, found.as_of);
    let page = view::ResultPage {
        heading: heading(w, &found),
        compared: w.say_with("rehearse-as-of", args!["date" => day, "id" => &found.from.0, "version" => &found.from.1]),
        numbers: (!found.changes_nothing()).then(|| numbers(&found)),
        children: sees_children.then(|| children(w, &found)),
        adopt: may(signed.actor.role, Action::Administer).then_some(adopt),
    };
    let title = w.say("rehearse-title");
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    Ok(framed(signed, &title, true, view::result(w, &page)))
}

fn heading(w: &Words, r: &Rehearsal) -> String {
    let (id, version) = (&r.to.0, &r.to.1);
    if r.changes_nothing() {
        return w.say_with("rehearse-nothing", args!["id" => id, "version" => version, "count" => r.children]);
    }
    let touched = format::count(w, r.touched);
    w.say_with("rehearse-heading", args!["id" => id, "version" => version, "touched" => touched, "count" => r.children])
}

fn counts(t: &Tally) -> view::Counts {
    // Counts of follow-ups are far below 2^32, where a float holds every whole number.
    let a_week = |n: u64| f64::from(u32::try_from(n).unwrap_or(u32::MAX)) / f64::from(service::WEEKS);
    view::Counts {
        list: [t.now, t.opened, t.closed, t.raised, t.lowered, t.moved, t.then],
        a_week: [a_week(t.new_now), a_week(t.new_then)],
    }
}

fn numbers(r: &Rehearsal) -> view::Numbers {
    view::Numbers {
        children: [r.on_list.0, r.on_list.1],
        all: counts(&r.all),
        by_class: Class::ALL.iter().filter_map(|class| r.by_class.get(class).map(|(now, then)| (*class, [*now, *then]))).collect(),
        by_rule: r.by_rule.iter().map(|(rule, tally)| (*rule, counts(tally))).collect(),
        by_area: r.by_area.iter().map(|(name, tally)| (name.clone(), counts(tally))).collect(),
        by_worker: r.by_worker.iter().map(|(name, tally)| (name.clone(), counts(tally))).collect(),
    }
}

fn children(w: &Words, r: &Rehearsal) -> Vec<(RuleId, Vec<view::ChildLine>)> {
    let mut by_rule: Vec<(RuleId, Vec<view::ChildLine>)> = Vec::new();
    for change in &r.changes {
        let what = what(w, change);
        let line = view::ChildLine {
            path: format!("/children/{}", change.child),
            called: change.called.clone(),
            what: w.say_with("rehearse-child-line", args!["area" => &change.area, "worker" => &change.worker, "what" => what]),
        };
        match by_rule.last_mut() {
            Some((rule, lines)) if *rule == change.rule => lines.push(line),
            _ => by_rule.push((change.rule, vec![line])),
        }
    }
    by_rule
}

fn what(w: &Words, change: &Change) -> String {
    let class = |entry: Option<Entry>| match entry {
        Some((Some(class), _)) => codes::class_word(w, class),
        _ => w.say("rehearse-kind-list"),
    };
    let day = |entry: Option<Entry>| entry.map_or_else(String::new, |(_, due)| format::day_and_year(w, due));
    let (now, then) = (class(change.now), class(change.then));
    match change.kind {
        Kind::Opened => w.say_with("rehearse-kind-opened", args!["then" => then]),
        Kind::Closed => w.say_with("rehearse-kind-closed", args!["now" => now]),
        Kind::Raised => w.say_with("rehearse-kind-raised", args!["now" => now, "then" => then]),
        Kind::Lowered => w.say_with("rehearse-kind-lowered", args!["now" => now, "then" => then]),
        Kind::Moved => w.say_with("rehearse-kind-moved", args!["date" => day(change.then), "before" => day(change.now)]),
    }
}

//! The protocol in force and the versions adopted before and after it, and their files.

pub mod rehearse;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::header;
use actix_web::web;
use domain::role::Action;
use domain::role::may;

use crate::args;
use crate::i18n::format;
use crate::service::adopt_protocol as service;
use crate::service::adopt_protocol::Adopted;
use crate::service::protocols;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::protocol as view;
use crate::view::protocol_doc;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::people::access::moment;
use crate::web::pages::people::done;

/// Every adopted version, numbered from 1 in the order of adoption, which never changes.
async fn numbered(signed: &Signed) -> Result<Vec<(usize, Adopted)>, Failure> {
    let mut all = service::all(&signed.context()).await?;
    all.sort_by(|a, b| {
        let key = |one: &Adopted| (one.record.adopted_at, one.record.id.clone(), one.record.version.clone());
        key(a).cmp(&key(b))
    });
    Ok((1..).zip(all).collect())
}

/// The number of the version in force today.
fn in_force(signed: &Signed, all: &[(usize, Adopted)]) -> Option<usize> {
    let active = signed.visitor.protocol();
    all.iter().find(|(_, one)| one.record.id == active.id && one.record.version == active.version).map(|(number, _)| *number)
}

fn path(number: usize) -> String {
    format!("/protocol/adopted/{number}")
}

fn file(number: usize) -> String {
    format!("/protocol/adopted/{number}/file")
}

/// Where the file in force is.
pub(super) async fn active_file(signed: &Signed) -> Result<String, Failure> {
    let all = numbered(signed).await?;
    Ok(file(in_force(signed, &all).unwrap_or(1)))
}

fn line(signed: &Signed, number: usize, one: &Adopted, in_force: Option<usize>) -> view::VersionLine {
    let w = signed.words();
    let record = &one.record;
    let state = if in_force == Some(number) {
        Some(w.say("protocol-in-force"))
    } else {
        (record.effective_from > signed.visitor.today).then(|| w.say("protocol-to-come"))
    };
    let by = match &one.by {
        Some(name) => w.say_with("common-list-comma", args!["most" => moment(signed, record.adopted_at), "next" => name]),
        None if record.reason.is_empty() => w.say("protocol-by-program"),
        None => w.say("protocol-by-command"),
    };
    view::VersionLine {
        path: path(number),
        name: format!("{} {}", record.id, record.version),
        from: format::day_and_year(w, record.effective_from),
        state,
        approved_by: Some(record.approved_by.clone()).filter(|name| !name.is_empty()),
        adopted: by,
        reason: record.reason.clone(),
    }
}

/// `GET /protocol`: the one in force today.
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let w = signed.words();
    let all = numbered(&signed).await?;
    let active = in_force(&signed, &all);
    let may_rehearse = may(signed.actor.role, Action::RehearseProtocol);
    let page = view::ProtocolPage {
        document: protocol_doc::document(w, signed.visitor.protocol()),
        file: may_rehearse.then(|| file(active.unwrap_or(1))),
        in_force: true,
        versions: all.iter().map(|(number, one)| line(&signed, *number, one, active)).collect(),
        may_rehearse,
    };
    // The last one adopted: from its day on it counts, and only then the lists change.
    let from = all.iter().max_by_key(|(number, _)| *number).map(|(_, one)| one.record.effective_from);
    let to_come = from.filter(|from| *from > signed.visitor.today).map(|from| format::day_and_year(w, from));
    let flash = done(&req, &[("adopted", "protocol-done-adopted")])
        .map(|id| to_come.map_or_else(|| w.say(id), |from| w.say_with("protocol-done-adopted-from", args!["date" => from])));
    let title = w.say("doc-page-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Protocol);
    shell.wide = true;
    shell.flash = flash.as_deref();
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

async fn version(signed: &Signed, number: &str) -> Result<(usize, Adopted), Failure> {
    let number: usize = number.parse().map_err(|_| Failure::NotFound)?;
    numbered(signed).await?.into_iter().find(|(n, _)| *n == number).ok_or(Failure::NotFound)
}

/// `GET /protocol/adopted/{seq}`: any adopted version.
///
/// # Errors
/// [`Failure`].
pub async fn adopted(signed: Signed, seq: web::Path<String>) -> Result<Html, Failure> {
    let w = signed.words();
    let (number, one) = version(&signed, &seq).await?;
    let protocol = protocols::read(&one.record).map_err(|faults| Failure::Broken(format!("{faults:?}")))?;
    let page = view::ProtocolPage {
        document: protocol_doc::document(w, &protocol),
        file: may(signed.actor.role, Action::RehearseProtocol).then(|| file(number)),
        in_force: false,
        versions: Vec::new(),
        may_rehearse: false,
    };
    let title = w.say("doc-page-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Protocol);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

/// `GET /protocol/adopted/{seq}/file`: its text as adopted, to be changed and rehearsed.
///
/// # Errors
/// [`Failure`].
pub async fn text(signed: Signed, seq: web::Path<String>) -> Result<HttpResponse, Failure> {
    let (_, one) = version(&signed, &seq).await?;
    let safe = |text: &str| text.chars().filter(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '.')).collect::<String>();
    let disposition = format!("attachment; filename=\"{}-{}.toml\"", safe(&one.record.id), safe(&one.record.version));
    Ok(HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, "text/plain; charset=utf-8"))
        .insert_header((header::CONTENT_DISPOSITION, disposition))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(one.record.body))
}

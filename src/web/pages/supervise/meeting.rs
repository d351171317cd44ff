//! The late follow-ups for the weekly meeting: a sheet to print and the same as a file.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::header;
use domain::calendar::days_between;

use crate::files::late_csv;
use crate::files::late_csv::LateRow;
use crate::service::supervise as service;
use crate::service::supervise::DeskChild;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::supervise::meeting as view;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::supervise::address;
use crate::web::pages::supervise::page_of;
use crate::web::pages::supervise::sieve_of;

/// `GET /late/meeting`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let sieve = sieve_of(&req)?;
    let desk = service::meeting(&signed.context(), &sieve, signed.as_of).await?;
    let page = page_of(&signed, &desk, &sieve, false);
    let sheet = view::MeetingSheet {
        day: page.day,
        urgent: page.urgent.lines,
        late: page.late,
        more: desk.next.is_some() || desk.urgent.next.is_some(),
        list: address(&signed, "/late", &sieve, None),
        file: address(&signed, "/late/meeting.csv", &sieve, None),
    };
    let w = signed.words();
    let title = w.say("meeting-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Late);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &sheet))))
}

/// `GET /late/meeting.csv`: noted in the audit.
///
/// # Errors
/// [`Failure`].
pub async fn file(req: HttpRequest, signed: Signed) -> Result<HttpResponse, Failure> {
    let desk = service::meeting_file(&signed.context(), &sieve_of(&req)?, signed.as_of).await?;
    let of = |child: &'_ DeskChild| {
        let village = desk.team.areas.get(&child.area).map_or("", |area| &area.code);
        (village, desk.team.workers.get(&child.worker).map_or("", |worker| &worker.sign_in_name))
    };
    let urgent = desk.urgent.lines.iter().map(|line| {
        let (village, worker) = of(&line.child);
        let reason = line.reason.as_ref();
        LateRow {
            child_code: &line.child.code,
            village,
            worker,
            what: reason.map(|reason| (reason.rule, reason.class, reason.due_on)),
            days_late: reason.map_or(0, |reason| days_between(reason.due_on, signed.as_of).max(0)),
            unanswered: true,
        }
    });
    let late = desk.late.iter().map(|line| {
        let (village, worker) = of(&line.child);
        let what = Some((line.reason.rule, line.reason.class, line.reason.due_on));
        LateRow { child_code: &line.child.code, village, worker, what, days_late: line.days, unanswered: false }
    });
    let rows: Vec<LateRow<'_>> = urgent.chain(late).collect();
    let bytes = late_csv::write(&rows).map_err(|e| Failure::Broken(format!("writing the late follow-ups: {e}")))?;
    let disposition = format!("attachment; filename=\"late-{}.csv\"", signed.as_of);
    Ok(HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, "text/csv; charset=utf-8; header=present"))
        .insert_header((header::CONTENT_DISPOSITION, disposition))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(bytes))
}

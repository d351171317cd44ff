//! The manager's month: the page and its files.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::header;
use actix_web::web;
use domain::calendar::Month;
use domain::calendar::add_days;

use crate::i18n::format;
use crate::service::month_report as service;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::report as view;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;

/// `GET /reports`: the last month that has ended, or the one asked for.
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let today = signed.visitor.today;
    let asked = query_value(&req, "month").filter(|text| !text.is_empty());
    let month = match asked {
        Some(text) => Month::parse(&text).ok_or(Failure::BadAddress("month"))?,
        None => service::last_whole_month(today),
    };
    let area = query_value(&req, "area").unwrap_or_default();
    let report = service::open(&signed.context(), &signed.visitor.settings, month).await?;
    if !area.is_empty() && !report.areas.iter().any(|listed| listed.code == area) {
        return Err(Failure::NotFound);
    }
    let w = signed.words();
    let mut months = service::months(today);
    if !months.contains(&month) {
        months.push(month);
    }
    let page = view::ReportPage {
        month,
        months,
        area,
        areas: report.areas.iter().map(|area| (area.code.clone(), area.name.clone())).collect(),
        provisional_until: report.provisional.then(|| format::day(w, add_days(service::stands_from(month), -1))),
        threshold: report.threshold,
        tables: &report.tables,
    };
    let title = format::month(w, month);
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Reports);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

/// `GET /reports/{month}/{file}`: one file, noted in the audit.
///
/// # Errors
/// [`Failure`].
pub async fn file(signed: Signed, path: web::Path<(String, String)>) -> Result<HttpResponse, Failure> {
    let (month, file) = path.into_inner();
    let month = Month::parse(&month).ok_or(Failure::NotFound)?;
    let bytes = service::download(&signed.context(), &signed.visitor.settings, month, &file).await?;
    // The name is one of ours: letters, digits, underscore and point.
    let disposition = format!("attachment; filename=\"{month}-{file}\"");
    Ok(HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, "text/csv; charset=utf-8; header=present"))
        .insert_header((header::CONTENT_DISPOSITION, disposition))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(bytes))
}

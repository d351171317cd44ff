//! The manager's month, quarter or year: the page and its files.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::http::header;
use actix_web::web;
use chrono::DateTime;
use chrono::Utc;
use domain::report::checks::Fault;
use domain::report::csv_table::Table;
use domain::report::period::Period;

use crate::args;
use crate::clock::day_in;
use crate::i18n::format;
use crate::service::report as service;
use crate::service::report::Office;
use crate::service::report::Report;
use crate::service::report::State;
use crate::service::report::Trouble;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::report as view;
use crate::view::report::files;
use crate::view::report::files::Bundle;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;

/// `GET /reports`: the last month that has ended, or the period and revision asked for.
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let today = signed.visitor.today;
    let asked = query_value(&req, "period").or_else(|| query_value(&req, "month")).filter(|text| !text.is_empty());
    let period = match &asked {
        Some(text) => match Period::parse(text) {
            Some(period) => period,
            None => return Ok(unknown_period(&signed, text)),
        },
        None => Period::Month(service::last_whole_month(today)),
    };
    let revision = revision(&req)?;
    let area = query_value(&req, "area").unwrap_or_default();
    let ctx = signed.context();
    let office = Office::of(&ctx, &signed.visitor.settings)?;
    let report = match service::open(office, period, revision).await {
        Ok(report) => report,
        // Whoever asked for no month in particular is told that there is none yet; that is no wrong address.
        Err(trouble) if req.query_string().is_empty() => {
            let mut page = told(&signed, period, trouble)?;
            if page.0 == StatusCode::NOT_FOUND {
                page.0 = StatusCode::OK;
            }
            return Ok(page);
        }
        Err(trouble) => return told(&signed, period, trouble),
    };
    if !area.is_empty() && !report.areas.iter().any(|listed| listed.code == area) {
        return Err(Failure::NotFound);
    }
    let w = signed.words();
    let areas: Vec<_> = report.named_areas().into_iter().filter(|(code, _)| service::stands_in(&report.tables, code)).collect();
    if let Some(absent) = report.areas.iter().find(|listed| listed.code == area && !areas.iter().any(|(code, _)| *code == area)) {
        let sentence = w.say_with("report-no-area", args!["area" => &absent.name, "period" => format::period(w, period)]);
        return Ok(without(&signed, StatusCode::NOT_FOUND, &sentence, period, &[]));
    }
    let day = |at: DateTime<Utc>| format::day_and_year(w, day_in(signed.visitor.settings.time_zone, at));
    let mut periods = service::periods(today);
    if !periods.contains(&period) {
        periods.push(period);
    }
    let page = view::ReportPage {
        programme: &report.release.programme,
        period,
        periods,
        area,
        areas,
        state: match report.state {
            State::Provisional { until } => view::Shown::Provisional(format::day(w, until)),
            State::Released { revision } => view::Shown::Released { revision, on: day(report.release.generated_at.and_utc()) },
        },
        revisions: report.revisions.iter().map(|(revision, at)| (*revision, day(*at))).collect(),
        changes: &report.changes,
        next_on: format::day(w, service::next_release_day(today)),
        threshold: report.threshold,
        tables: &report.tables,
    };
    Ok(framed(&signed, StatusCode::OK, &format::period(w, period), view::page(w, &page)))
}

/// `GET /reports/{month}/{file}`: one file or the archive of them all, noted in the audit before it is given out.
///
/// # Errors
/// [`Failure`].
pub async fn file(req: HttpRequest, signed: Signed, path: web::Path<(String, String)>) -> Result<HttpResponse, Failure> {
    let (text, name) = path.into_inner();
    let Some(period) = Period::parse(&text) else { return Ok(unknown_period(&signed, &text).response()) };
    let revision = revision(&req)?;
    let ctx = signed.context();
    let office = Office::of(&ctx, &signed.visitor.settings)?;
    let report = match service::open(office, period, revision).await {
        Ok(report) => report,
        Err(trouble) => return Ok(told(&signed, period, trouble)?.response()),
    };
    let before = service::before(office, &report).await.map_err(|trouble| Failure::Broken(trouble.to_string()))?;
    let areas = report.named_areas();
    let bundle = bundle(&report, &areas, before.as_deref());
    let file = files::file(signed.words(), bundle, &name).map_err(Failure::Broken)?.ok_or(Failure::NotFound)?;
    service::download::note(office, &report, &[&name]).await?;
    // The name is one of ours: letters, digits, hyphen, underscore and point.
    let disposition = if name == files::ARCHIVE {
        format!("attachment; filename=\"{}-{}.zip\"", files::folder(bundle), signed.words().lang().code())
    } else {
        format!("attachment; filename=\"{}-{name}\"", files::folder(bundle))
    };
    Ok(HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, file.media))
        .insert_header((header::CONTENT_DISPOSITION, disposition))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(file.bytes))
}

/// What the files of a report are made from.
fn bundle<'a>(report: &'a Report, areas: &'a [(String, String)], before: Option<&'a [Table]>) -> Bundle<'a> {
    Bundle {
        release: &report.release,
        revision: report.revision(),
        threshold: report.threshold,
        tables: &report.tables,
        changes: &report.changes,
        areas,
        before,
    }
}

/// The revision asked for; none: the latest.
fn revision(req: &HttpRequest) -> Result<Option<u32>, Failure> {
    match query_value(req, "revision").filter(|text| !text.is_empty()) {
        None => Ok(None),
        Some(text) => text.parse().map(Some).map_err(|_| Failure::BadAddress("revision")),
    }
}

pub(super) fn framed(signed: &Signed, status: StatusCode, title: &str, body: maud::Markup) -> Html {
    let mut shell = signed.shell(title);
    shell.here = Some(Nav::Reports);
    shell.wide = true;
    Html(status, layout::page(&shell, body))
}

fn without(signed: &Signed, status: StatusCode, sentence: &str, period: Period, faults: &[Fault]) -> Html {
    let w = signed.words();
    let mut periods = service::periods(signed.visitor.today);
    if !periods.contains(&period) {
        periods.push(period);
    }
    framed(signed, status, &w.say("release-trouble"), view::trouble(w, sentence, period, &periods, faults))
}

fn unknown_period(signed: &Signed, text: &str) -> Html {
    // As much of it as helps to see the slip.
    let text: String = text.chars().take(40).collect();
    let sentence = signed.words().say_with("release-unknown-period", args!["text" => text]);
    let last = Period::Month(service::last_whole_month(signed.visitor.today));
    without(signed, StatusCode::UNPROCESSABLE_ENTITY, &sentence, last, &[])
}

/// Why there is no report, as a page with another time to choose.
pub(super) fn told(signed: &Signed, period: Period, trouble: Trouble) -> Result<Html, Failure> {
    let w = signed.words();
    let named = format::period(w, period);
    let last = service::last_whole_month(signed.visitor.today);
    let none = |sentence: &str| Ok(without(signed, StatusCode::NOT_FOUND, sentence, Period::Month(last), &[]));
    match trouble {
        Trouble::NotEnded(_) => none(&w.say_with("release-not-ended", args!["period" => named, "last" => format::month(w, last)])),
        Trouble::BeforeStart { first: Some(first), .. } => {
            none(&w.say_with("release-before-start", args!["period" => named, "first" => format::month(w, first)]))
        }
        Trouble::BeforeStart { first: None, .. } => none(&w.say("release-nobody")),
        Trouble::NoRevision { revision, .. } => none(&w.say_with("release-no-revision", args!["period" => named, "revision" => revision])),
        Trouble::Faults { period: faulty, ref faults } => {
            tracing::error!("not released: {trouble}");
            Ok(without(signed, StatusCode::INTERNAL_SERVER_ERROR, "", faulty, faults))
        }
        Trouble::Broken(text) => Err(Failure::Broken(text)),
        Trouble::Store(error) => Err(error.into()),
    }
}

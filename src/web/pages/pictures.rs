//! The reports in pictures, their numbers as files, and the sheet for the wall.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::http::header;
use domain::calendar::Month;
use domain::report::csv_table::ALL;
use domain::report::period::Period;
use domain::report::picture::Known;
use domain::report::picture::Measure;

use crate::args;
use crate::clock::day_in;
use crate::files::pictures_csv;
use crate::i18n::format;
use crate::service::report;
use crate::service::report::Office;
use crate::service::report::State;
use crate::service::report::Trouble;
use crate::service::report::pictures as service;
use crate::service::report::pictures::Pictures;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::pictures as view;
use crate::view::pictures::wall;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::report::framed;
use crate::web::pages::report::told;

/// What was asked for, and what became of it: pictures, or a page that says why there are none.
struct Asked {
    month: Month,
    area: String,
    found: Result<Pictures, Trouble>,
}

async fn asked(req: &HttpRequest, signed: &Signed) -> Result<Asked, Failure> {
    let month = match query_value(req, "period").filter(|text| !text.is_empty()) {
        Some(text) => Month::parse(&text).ok_or(Failure::BadAddress("period"))?,
        None => report::last_whole_month(signed.visitor.today),
    };
    let area = query_value(req, "area").unwrap_or_default();
    let ctx = signed.context();
    let office = Office::of(&ctx, &signed.visitor.settings)?;
    let found = match service::open(office, month, &area).await {
        Ok(Some(pictures)) => Ok(pictures),
        Ok(None) => return Err(Failure::NotFound),
        Err(trouble) => Err(trouble),
    };
    Ok(Asked { month, area, found })
}

/// Why there are no pictures. Whoever asked for no month in particular is told that there is none yet; that is no wrong address.
fn none(req: &HttpRequest, signed: &Signed, month: Month, trouble: Trouble) -> Result<Html, Failure> {
    let mut page = told(signed, Period::Month(month), trouble)?;
    if req.query_string().is_empty() && page.0 == StatusCode::NOT_FOUND {
        page.0 = StatusCode::OK;
    }
    Ok(page)
}

fn state(signed: &Signed, pictures: &Pictures) -> String {
    let w = signed.words();
    match pictures.report.state {
        State::Provisional { until } => w.say_with("pic-state-provisional", args!["date" => format::day(w, until)]),
        State::Released { .. } => {
            let on = day_in(signed.visitor.settings.time_zone, pictures.report.release.generated_at.and_utc());
            w.say_with("pic-state-released", args!["date" => format::day_and_year(w, on)])
        }
    }
}

/// `GET /reports/pictures`: the last month that has ended, or the one asked for, and the year before it.
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let Asked { month, area, found } = asked(&req, &signed).await?;
    let pictures = match found {
        Ok(pictures) => pictures,
        Err(trouble) => return none(&req, &signed, month, trouble),
    };
    let w = signed.words();
    let months = report::periods(signed.visitor.today).into_iter().filter_map(|period| match period {
        Period::Month(month) => Some(month),
        Period::Quarter(_) | Period::Year(_) => None,
    });
    let mut months: Vec<Month> = months.collect();
    if !months.contains(&month) {
        months.push(month);
    }
    let page = view::PicturesPage {
        month,
        months,
        state: state(&signed, &pictures),
        area,
        areas: pictures.report.areas.iter().map(|area| (area.code.clone(), area.name.clone())).collect(),
        trend: &pictures.trend,
        villages: &pictures.areas,
    };
    Ok(framed(&signed, StatusCode::OK, &w.say("pic-title"), view::page(w, &page)))
}

/// `GET /reports/wall`: a sheet to print.
///
/// # Errors
/// [`Failure`].
pub async fn wall(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let Asked { month, area, found } = asked(&req, &signed).await?;
    let pictures = match found {
        Ok(pictures) => pictures,
        Err(trouble) => return none(&req, &signed, month, trouble),
    };
    let w = signed.words();
    let state = state(&signed, &pictures);
    let at = if area.is_empty() { String::new() } else { format!("&area={area}") };
    let sheet = wall::WallSheet {
        programme: &pictures.report.release.programme,
        area: pictures.report.areas.iter().find(|listed| listed.code == area).map(|listed| listed.name.as_str()),
        month,
        state: &state,
        trend: &pictures.trend,
        pictures: format!("/reports/pictures?period={month}{at}"),
    };
    let title = w.say("pic-wall-link");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Reports);
    Ok(Html::ok(layout::page(&shell, wall::page(w, &sheet))))
}

/// `GET /reports/pictures.csv`: the numbers of one picture, noted in the audit before they are given out. `picture` is a measure,
/// for twelve months of a place, or `month`, for all measures of a place in the month.
///
/// # Errors
/// [`Failure`].
pub async fn file(req: HttpRequest, signed: Signed) -> Result<HttpResponse, Failure> {
    let picture = query_value(&req, "picture").unwrap_or_default();
    let measure = Measure::from_code(&picture);
    if measure.is_none() && picture != "month" {
        return Err(Failure::BadAddress("picture"));
    }
    let Asked { month, area, found } = asked(&req, &signed).await?;
    let pictures = match found {
        Ok(pictures) => pictures,
        Err(trouble) => return Ok(told(&signed, Period::Month(month), trouble)?.response()),
    };
    let months: &[(Month, Known)] =
        if measure.is_some() { &pictures.trend } else { pictures.trend.last().map_or(&[], std::slice::from_ref) };
    let lines: Vec<_> =
        months.iter().flat_map(|(month, known)| pictures_csv::lines(&month.to_string(), &pictures.place, known, measure)).collect();
    let bytes = pictures_csv::write(&lines).map_err(|e| Failure::Broken(format!("writing the numbers of a picture: {e}")))?;
    let name = format!("picture-{picture}-{}.csv", if area.is_empty() { ALL } else { &area });
    let ctx = signed.context();
    report::download::note(Office::of(&ctx, &signed.visitor.settings)?, &pictures.report, &[&name]).await?;
    Ok(attached(&format!("{month}-{name}"), bytes))
}

/// A CSV file to keep. What of its name is not a letter, digit, point or hyphen is left out.
pub(super) fn attached(name: &str, bytes: Vec<u8>) -> HttpResponse {
    let name: String = name.chars().filter(|c| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '_')).collect();
    HttpResponse::Ok()
        .insert_header((header::CONTENT_TYPE, "text/csv; charset=utf-8; header=present"))
        .insert_header((header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")))
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(bytes)
}

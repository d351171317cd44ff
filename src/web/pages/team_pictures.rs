//! The pictures of a supervisor's team, and their numbers as files.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use domain::report::csv_table::ALL;
use domain::report::period::Period;
use domain::report::picture::Known;

use crate::files::pictures_csv;
use crate::service::team_pictures as service;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::pictures::team as view;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::pictures::attached;

fn period(req: &HttpRequest) -> Result<Option<Period>, Failure> {
    let asked = query_value(req, "period").filter(|text| !text.is_empty());
    asked.map(|text| Period::parse(&text).ok_or(Failure::BadAddress("period"))).transpose()
}

/// `GET /team-pictures`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let ctx = signed.context();
    let found = service::open(&ctx, period(&req)?).await?;
    let w = signed.words();
    let page = view::TeamPicturesPage {
        period: found.period,
        periods: service::times(&ctx),
        all: &found.all,
        workers: found.workers.iter().map(|of| (of.sign_in_name.as_str(), of.full_name.as_str(), &of.measures)).collect(),
    };
    let title = w.say("pic-team-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

/// `GET /team-pictures.csv`: of one worker, or of everybody together; noted in the audit before it is given out.
///
/// # Errors
/// [`Failure`].
pub async fn file(req: HttpRequest, signed: Signed) -> Result<HttpResponse, Failure> {
    let worker = query_value(&req, "worker").filter(|name| !name.is_empty());
    let (period, measures) = service::for_file(&signed.context(), period(&req)?, worker.as_deref()).await?;
    let whose = worker.as_deref().unwrap_or(ALL);
    let lines = pictures_csv::lines(&period.to_string(), whose, &Known::Figures(Box::new(measures)), None);
    let bytes = pictures_csv::write(&lines).map_err(|e| Failure::Broken(format!("writing the numbers of a team: {e}")))?;
    Ok(attached(&format!("internal-{period}-{whose}.csv"), bytes))
}

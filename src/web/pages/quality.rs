//! How well measuring goes in a supervisor's team.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use domain::calendar::Month;
use domain::report::csv_table::ALL;

use crate::files::quality_csv;
use crate::files::quality_csv::QualityHead;
use crate::files::quality_csv::QualityLine;
use crate::i18n::format;
use crate::service::quality as service;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::quality as view;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::pictures::attached;

/// Months that can be chosen.
const MONTHS: usize = 12;

fn month(req: &HttpRequest) -> Result<Option<Month>, Failure> {
    let asked = query_value(req, "month").filter(|text| !text.is_empty());
    asked.map(|text| Month::parse(&text).ok_or(Failure::BadAddress("month"))).transpose()
}

/// `GET /quality`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let month = month(&req)?;
    let found = service::open(&signed.context(), &signed.visitor.settings, month).await?;
    let w = signed.words();
    let months = std::iter::successors(Some(Month::of(signed.visitor.today)), |month| Some(month.previous())).take(MONTHS);
    let page = view::QualityPage {
        days: [format::day_and_year(w, found.days.0), format::day_and_year(w, found.days.1)],
        months: months.map(|month| (month.to_string(), format::month(w, month))).collect(),
        month: month.map(|month| month.to_string()).unwrap_or_default(),
        all: &found.all,
        workers: found.workers.iter().map(|of| (of.full_name.as_str(), &of.figures)).collect(),
    };
    let title = w.say("quality-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

/// `GET /quality.csv`: by area and by worker, inside the programme only; noted in the audit before it is given out.
///
/// # Errors
/// [`Failure`].
pub async fn file(req: HttpRequest, signed: Signed) -> Result<HttpResponse, Failure> {
    let ctx = signed.context();
    let month = month(&req)?;
    let period = month.map_or_else(|| format!("to-{}", ctx.today), |month| month.to_string());
    let settings = &signed.visitor.settings;
    let found = service::for_file(&ctx, settings, month, &period).await?;
    let protocol = ctx.protocols.on(found.days.1);
    let head = QualityHead {
        programme: &settings.programme_name,
        period: &period,
        protocol: (&protocol.id, &protocol.version),
        generated_at: ctx.now.naive_utc(),
    };
    let mut lines = vec![QualityLine { area: ALL, worker: ALL, figures: &found.all }];
    lines.extend(found.areas.iter().map(|(area, figures)| QualityLine { area, worker: ALL, figures }));
    lines.extend(found.workers.iter().map(|of| QualityLine { area: ALL, worker: &of.sign_in_name, figures: &of.figures }));
    let bytes = quality_csv::write(&head, &lines).map_err(|e| Failure::Broken(format!("writing how measuring goes: {e}")))?;
    Ok(attached(&format!("internal-quality-{period}.csv"), bytes))
}
